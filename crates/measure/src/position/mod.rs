//! Where do points lie in plan, and how surely, from tape ties and offsets from base lines?

use std::collections::BTreeMap;

use groundhold_finding::Finding;
use groundhold_quantity::{Angle, Length, Level, Point, Share};
use groundhold_working::Trace;

mod adjust;
mod checked_input;
mod formula;
mod locate;
mod misfit;
mod naming;
mod observation;
mod start;
mod told;
mod why_not;
mod wrong;

pub use formula::{OFFSET, READINGS, TIES, TWO_TIES};
pub use locate::locate;
pub use wrong::PositionError;

/// A peg whose position is given and held fixed.
#[derive(Debug, Clone, PartialEq)]
pub struct Peg {
    /// Its name.
    pub id: String,
    /// Its position.
    pub at: Point,
}

/// How the tape lay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lie {
    /// Held level, or already reduced to plan.
    Level,
    /// Along a slope whose ends differ in height by this much (its sign does not matter).
    Sloping(Length),
    /// Along the ground between two stations whose levels are both in the survey.
    Ground,
}

/// What was measured.
#[derive(Debug, Clone, PartialEq)]
pub enum Measured {
    /// A distance to a peg or to another point.
    Tie {
        /// The other end.
        to: String,
        /// What the tape read.
        tape: Length,
        /// How it lay.
        lie: Lie,
    },
    /// A distance along a base line between two pegs and one square off it.
    Offset {
        /// Peg at which `along` is zero.
        from: String,
        /// Peg towards which it grows.
        to: String,
        /// Along the line.
        along: Length,
        /// Square off it, positive to the left.
        off: Length,
    },
}

/// One reading of the survey.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Its line in the file.
    pub row: usize,
    /// The point it fixes.
    pub point: String,
    /// What was measured.
    pub measured: Measured,
    /// Standard deviation, where it is known better than [`Accuracy`] says.
    pub sigma: Option<Length>,
}

/// A side of a line walked from its first peg to its second.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

/// On which side of a line a point lies, for points that two places would fit.
#[derive(Debug, Clone, PartialEq)]
pub struct Hint {
    /// Its line in the file.
    pub row: usize,
    /// The point.
    pub point: String,
    /// Its side.
    pub side: Side,
    /// First peg of the line.
    pub from: String,
    /// Second peg of the line.
    pub to: String,
}

/// How well a tape is read and a right angle is held. Common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Standard deviation of a taped distance, whatever its length.
    pub tape: Length,
    /// And in proportion to its length.
    pub tape_per_length: Share,
    /// Standard deviation of a right angle set off a base line.
    pub square: Angle,
}

impl Default for Accuracy {
    /// A builder's tape on grass: 5 mm and 0.05 %; a square by 3-4-5 or optical square: half a degree.
    fn default() -> Self {
        Accuracy { tape: Length::mm(5.0), tape_per_length: Share::percent(0.05), square: Angle::deg(0.5) }
    }
}

/// Everything that was measured in plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Survey {
    /// Known pegs.
    pub pegs: Vec<Peg>,
    /// Readings.
    pub readings: Vec<Reading>,
    /// Sides of points that two places would fit.
    pub hints: Vec<Hint>,
    /// Levels of stations, for tapes that lay along the ground.
    pub levels: BTreeMap<String, Level>,
    /// How well it was measured.
    pub accuracy: Accuracy,
}

/// A point found.
#[derive(Debug, Clone, PartialEq)]
pub struct LocatedPoint {
    /// Its name.
    pub id: String,
    /// Its position.
    pub at: Point,
    /// Standard deviation to the east.
    pub sigma_x: Length,
    /// Standard deviation to the north.
    pub sigma_y: Length,
    /// Readings beyond what its group of points needs.
    pub redundancy: usize,
    /// How it was worked out.
    pub trace: Trace,
}

impl LocatedPoint {
    /// Standard deviation of the position, √(σx² + σy²).
    pub fn sigma(&self) -> Length {
        Length::m((self.sigma_x.to_m() * self.sigma_x.to_m() + self.sigma_y.to_m() * self.sigma_y.to_m()).sqrt())
    }
}

/// Which part of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// A taped tie.
    Tie,
    /// The distance along a base line.
    Along,
    /// The distance square off it.
    Off,
}

/// A reading and how it fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitted {
    /// Its line in the file.
    pub row: usize,
    /// The point it fixes.
    pub point: String,
    /// The peg or point at the other end, or `A–B` for a base line.
    pub from: String,
    /// Which part of the reading.
    pub part: Part,
    /// What was read, in plan.
    pub read: Length,
    /// Computed minus read.
    pub residual: Length,
    /// Residual over its own standard deviation; `None` where nothing checks the reading.
    pub normalised: Option<f64>,
    /// True when it did not fit and the point was found without it.
    pub set_aside: bool,
}

/// The survey in plan, adjusted.
#[derive(Debug, Clone, PartialEq)]
pub struct Located {
    /// Points found, by name.
    pub points: Vec<LocatedPoint>,
    /// Every reading, by row.
    pub readings: Vec<Fitted>,
    /// Readings beyond what is needed.
    pub redundancy: usize,
    /// Standard deviation of unit weight, a ratio to the stated accuracy; `None` without redundancy.
    pub sigma0: Option<f64>,
    /// What it has against itself.
    pub findings: Vec<Finding>,
}
