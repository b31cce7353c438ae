//! The whole job in one pure function: `plan(&Job) -> Plan`. No clock, no file, no network, no chance, no panic.
//!
//! The nine stages run in one direction: measure, shape, hold, drain, dig, order, set out, build, record. Each gets what it
//! needs from here and knows nothing of the others.

pub mod job;

mod again;
mod as_found;
mod beside;
mod bodies;
mod change;
mod checker;
mod compare;
mod cost;
mod digging;
mod drainage;
mod earthwork;
mod existing;
mod kept_clear;
mod near;
mod needs;
mod plan;
mod programme;
mod registry;
mod replacement;
mod setting_out;
mod standing;
mod standing_water;
mod start;
mod survey;
mod trouble;
mod undermined;
mod walls;
mod wish;

pub use as_found::OldWallPlan;
pub use change::{apply, in_year, post_changes};
pub use checker::{Violation, check};
pub use compare::{Amounts, Difference, LeftOverChanged, PostChanged, PostFigures, compare};
pub use digging::Groundwork;
pub use earthwork::{Moves, RAMP_BUILD_UP, TREAD_BUILD_UP};
pub use near::everything as everything_near;
pub use plan::{Plan, balance, plan, plan_priced, plan_quick, replan, replan_quick, wished};
pub use registry::{finding_kinds, working, workings};
pub use standing::rock_along;
pub use survey::Survey;
pub use trouble::{Part, Trouble};
pub use walls::WallPlan;
