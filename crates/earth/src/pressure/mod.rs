//! How hard does the ground behind push, where, and by which theory?

pub mod annex_c;
pub mod at_rest;
mod backfill;
pub mod cohesive;
pub mod compaction;
pub mod coulomb;
pub mod layered;
pub mod rankine;
pub mod seismic;
pub mod surcharge;
mod thrust;
pub mod wedge;

pub use backfill::{Active, Backfill, Method, Ordinate, Part, Strip, WaterLevel};
pub use thrust::{THRUST_COULOMB, THRUST_RANKINE};
