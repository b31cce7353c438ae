//! Where does the water go? The ground that drains to each wall, the flow from it, the pipe that takes it and its
//! levels down to the outlet, the stone and fabric around it, and whether the stone keeps the soil back.
//!
//! The flow is runoff from rain by the rational method. Springs and standing groundwater are not in it; where they
//! were seen a finding says so.

mod arrival;
mod case;
mod catchment;
mod channel;
mod drained;
mod filter;
mod findings;
mod grade;
mod grading;
mod hill;
mod linear;
mod manning;
mod network;
mod outlet_leg;
mod pipe_run;
mod pipe_size;
mod ponding;
mod rain;
mod reach;
mod runoff;
mod sieves;
mod soakaway;
mod swale;
mod way;
mod weep;
mod zone;

pub use arrival::{Arrival, KIRPICH, OVERLAND, SHEET_FLOW, arrival};
pub use case::{Bed, DrainCase, Outlet, PipeWish, Station, WallLine, WeepWish, ZoneWish};
pub use catchment::{Catchment, catchments};
pub use channel::{CHANNEL, CHANNEL_DEPTH, CHANNEL_SHEAR, Channelled, LININGS, Lining, channel_lining, channelled};
pub use drained::{Blocked, Drained, WallDrain, drain};
pub use filter::{FABRIC_OPENING, FilterMatch, NRCS, TERZAGHI, filter_match};
pub use findings::{FALLS_TOWARDS, FINDINGS, RAIN_UNKNOWN, WATER_STANDS};
pub use grading::{DRAIN_FILLS, Grading, SOIL_GRADINGS, drain_fill, soil_grading};
pub use manning::{
    CAPACITY, DIAMETER, PART_FULL, PipeMaterial, ROUGHNESS, Roughness, SLOPE_NEEDED, capacity, depth_of_flow,
    diameter_needed,
};
pub use pipe_run::{InvertPoint, PipeRun, PipeTrench};
pub use ponding::{Dam, Pool, pools};
pub use rain::{RAIN_BETWEEN, Rain};
pub use reach::{Node, NodeKind, Reach};
pub use runoff::{RATIONAL, RUNOFF, RUNOFF_SOURCE, Runoff, rational, runoff};
pub use sieves::{FILTER_BAND, REGRADE, Sieves, grading_of};
pub use soakaway::{INFILTRATION, SOAKAWAY, Soakaway, SoakawayWish};
pub use swale::{Swale, SwalePoint, SwaleWish};
pub use weep::{CRITICAL_GRADIENT, ORIFICE, WEEP_HEAD, Weeps, blocked_share, weeps};
pub use zone::{Zone, ZonePoint};

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[
    &CAPACITY,
    &CHANNEL,
    &CHANNEL_DEPTH,
    &CHANNEL_SHEAR,
    &CRITICAL_GRADIENT,
    &DIAMETER,
    &FABRIC_OPENING,
    &FILTER_BAND,
    &INFILTRATION,
    &KIRPICH,
    &NRCS,
    &ORIFICE,
    &OVERLAND,
    &PART_FULL,
    &RAIN_BETWEEN,
    &RATIONAL,
    &REGRADE,
    &SHEET_FLOW,
    &SLOPE_NEEDED,
    &SOAKAWAY,
    &TERZAGHI,
    &WEEP_HEAD,
];
