//! The whole job in one pure function: `plan(&Job) -> Plan`. No clock, no file, no network, no chance, no panic.
//!
//! The nine stages run in one direction: measure, shape, hold, drain, dig, order, set out, build, record. Each gets what it
//! needs from here and knows nothing of the others.

pub mod job;

mod change;
mod checker;
mod compare;
mod cost;
mod drainage;
mod earthwork;
mod kept_clear;
mod near;
mod needs;
mod plan;
mod programme;
mod registry;
mod setting_out;
mod standing;
mod survey;
mod trouble;
mod walls;
mod wish;

pub use change::apply;
pub use checker::{Violation, check};
pub use compare::{Amounts, Difference, PostChanged, PostFigures, compare};
pub use earthwork::Moves;
pub use near::everything as everything_near;
pub use plan::{Plan, balance, plan, plan_priced, wished};
pub use registry::{finding_kinds, working, workings};
pub use survey::Survey;
pub use trouble::{Part, Trouble};
pub use walls::WallPlan;
