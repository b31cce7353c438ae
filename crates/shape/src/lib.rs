//! What should the ground become? Pads, walls, flights, ramps and batters from wishes, and what each wall then retains.
//!
//! [`shape`] takes the surveyed ground and a [`Wish`] and gives [`Shaped`]: convex planar pieces of finished ground that
//! do not overlap, and for every wall the levels behind and in front along its line. Where two elements meet, treads
//! come before ramps, ramps before pads, pads before batters. Walls stand between pieces and are vertical.

pub mod alignment;
mod barrier;
mod batter;
pub mod build_flight;
mod choose_flight;
pub mod findings;
mod flight;
mod flight_turned;
mod gradient;
mod guard;
mod index;
mod memory;
mod mosaic;
mod outline;
mod pad;
mod profile;
mod ramp;
mod reach;
mod ribbon;
mod shape;
mod shaped;
pub mod steps;
mod switchback;
mod wall;
mod whole;
mod wish;

pub use alignment::{Alignment, AlignmentError, Bend, CHORD_ERROR, Course, Curve, Way};
pub use findings::FINDINGS;
pub use gradient::{GROUND_GRADIENT, Gradient, RAMP_GRADIENT, RAMP_LENGTH, gradient, ground_gradient, ramp_length};
pub use memory::Memory;
pub use shape::{shape, shape_again};
pub use shaped::{
    EndFound, Flight, Ground, GroundKind, Meeting, Pad, Ramp, Shaped, Station, TopLine, Tread, WallProfile,
};
pub use whole::Flaw;
pub use wish::{
    Batter, Bench, Beside, End, FlightWish, GuardTrigger, Landings, Limits, PadWish, RampLimits, RampWish, Side,
    StepLimits, Top, WallPart, WallWish, Wish,
};

use groundhold_working::Working;

/// Every working of this stage.
pub static WORKINGS: &[&Working] = &[
    &gradient::GROUND_GRADIENT,
    &gradient::RAMP_GRADIENT,
    &gradient::RAMP_LENGTH,
    &steps::FLIGHT,
    &steps::CHOOSE,
    &steps::SPLIT,
    &build_flight::CONCRETE_FLIGHT,
];
