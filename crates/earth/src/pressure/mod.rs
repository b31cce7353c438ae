//! How hard does the ground behind push, where, and by which theory?

pub mod annex_c;
pub mod at_rest;
mod backfill;
pub mod caquot;
pub mod cohesive;
pub mod compaction;
pub mod coulomb;
pub mod crack;
pub mod creep;
pub mod heap;
pub mod layered;
pub mod log_spiral;
pub mod passive;
pub mod patch;
pub mod rankine;
pub mod seepage;
pub mod seismic;
mod spread;
pub mod strata;
pub mod surcharge;
mod thrust;
pub mod wedge;
pub mod wet_wedge;

pub use backfill::{Active, Backfill, Method, Ordinate, Part, Strip, WaterLevel};
pub use spread::Spread;
pub use thrust::{THRUST_COULOMB, THRUST_RANKINE};
