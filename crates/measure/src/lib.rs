//! What is the ground? From level bookings, tape ties and offsets to points with levels, positions and their uncertainty.
//!
//! - [`level_book`]: a staff-and-level book reduced by height of collimation and by rise and fall, closed and adjusted.
//! - [`level_net`]: height differences that run in more than one loop, by weighted least squares.
//! - [`position`]: where points lie in plan, from tape ties and base-line offsets, by least squares.
//! - [`spot`]: positions and levels of the same points put together.
//! - [`sight`]: the instrument itself: two-peg test, reciprocal levelling, curvature and refraction.
//! - [`fall`]: quick readings of a slope by tape, level and angle.
//!
//! Levels go up, `x` east, `y` north, an offset is positive to the left of its base line. A residual is computed minus read.

mod findings;
mod least_squares;

pub mod fall;
pub mod level_book;
pub mod level_net;
pub mod misclose;
pub mod position;
pub mod sight;
pub mod spot;

pub use findings::*;

use groundhold_working::{Limits, Working};

/// Every working of this stage.
pub static WORKINGS: &[&Working] = &[
    &level_book::HEIGHT_OF_COLLIMATION,
    &level_book::RISE_AND_FALL,
    &level_book::CORRECTION,
    &level_book::SIGMA,
    &misclose::MISCLOSE_TOLERANCE,
    &position::TWO_TIES,
    &position::TIES,
    &position::OFFSET,
    &position::READINGS,
    &level_net::LEVEL_NET,
    &sight::TWO_PEG,
    &sight::RECIPROCAL,
    &sight::CURVATURE_REFRACTION,
    &fall::FALL,
    &fall::FALL_BY_ANGLE,
    &fall::PLAN_DISTANCE,
];

/// The limits of an input that is a text.
pub(crate) const TEXT: Limits = Limits::ours(f64::NEG_INFINITY, f64::INFINITY);
