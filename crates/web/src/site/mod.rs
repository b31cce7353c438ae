//! Site mode: one thing at a time, in the order of the work, with what has been ticked off.

mod find;
mod steps;
mod tick;

pub use find::{FindEntry, FindKind};
pub use steps::{Round, Step, steps};
pub use tick::{tick, ticks};
