//! Where exactly? From the plan to pegs, tapes, strings and staff readings that a person with a tape can set out and check.
//!
//! Everything is measured from known pegs: along and off a base line, and by two tapes that cross at a good angle. Every
//! mark has a check that does not use the same two tapes.

mod curve;
mod findings;
mod formula;
mod geometry;
mod posts;
mod table;
mod tolerance;

pub use curve::{Arc, CHORD_OFFSET, CurveRow, CurveTable, TANGENT_OFFSET, curve_tables};
pub use findings::*;
pub use formula::{DIAGONAL, OFFSET, SQUARE_CHECK, STAFF_READING, TIES};
pub use geometry::{along_off, angle_between_ties, point_from_offset, points_from_ties};
pub use posts::{PostMark, PostRow};
pub use table::{Case, Corner, Diagonal, Mark, OffsetPeg, Peg, Row, SetOut, SquareCheck, Tie, set_out};
pub use tolerance::{TOLERANCES, Tolerance};

use groundhold_working::Working;

/// Every working of this stage.
pub static WORKINGS: &[&Working] =
    &[&TIES, &OFFSET, &DIAGONAL, &SQUARE_CHECK, &STAFF_READING, &CHORD_OFFSET, &TANGENT_OFFSET];
