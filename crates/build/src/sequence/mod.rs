//! From plain facts to tasks that need each other: what comes before what, and why.

mod bounds;
mod draft;
mod ground;
mod programmed;
mod remarks;
mod site;
mod wall;
mod ways;

pub(crate) use draft::Kind;
pub(crate) use programmed::plan;
