//! Where does the water go? The ground that drains to each wall, the flow from it, the pipe that takes it and its
//! levels down to the outlet, the stone and fabric around it, and whether the stone keeps the soil back.
//!
//! The flow is runoff from rain by the rational method. Springs and standing groundwater are not in it; where they
//! were seen a finding says so.

mod case;
mod catchment;
mod drained;
mod filter;
mod findings;
mod grade;
mod grading;
mod hill;
mod linear;
mod manning;
mod outlet_leg;
mod pipe_run;
mod pipe_size;
mod runoff;
mod way;
mod weep;
mod zone;

pub use case::{Bed, DrainCase, Outlet, PipeWish, Rain, Station, WallLine, ZoneWish};
pub use catchment::{Catchment, catchments};
pub use drained::{Blocked, Drained, WallDrain, drain};
pub use filter::{FABRIC_OPENING, FilterMatch, NRCS, TERZAGHI, filter_match};
pub use findings::FINDINGS;
pub use grading::{DRAIN_FILLS, Grading, SOIL_GRADINGS, drain_fill, soil_grading};
pub use manning::{
    CAPACITY, DIAMETER, PART_FULL, PipeMaterial, ROUGHNESS, Roughness, SLOPE_NEEDED, capacity, depth_of_flow,
    diameter_needed,
};
pub use pipe_run::{InvertPoint, PipeRun, PipeTrench};
pub use runoff::{RATIONAL, RUNOFF, RUNOFF_SOURCE, Runoff, rational, runoff};
pub use weep::{CRITICAL_GRADIENT, ORIFICE, Weeps, weeps};
pub use zone::{Zone, ZonePoint};

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[
    &CAPACITY,
    &CRITICAL_GRADIENT,
    &DIAMETER,
    &FABRIC_OPENING,
    &NRCS,
    &ORIFICE,
    &PART_FULL,
    &RATIONAL,
    &SLOPE_NEEDED,
    &TERZAGHI,
];
