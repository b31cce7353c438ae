//! What does a wall look like where it is cut across, so that any system can be drawn?

use groundhold_quantity::{Length, Level, Point, Vector};

use crate::Stuff;

/// A part in the section. `x` is positive to the open side of the wall line.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionPart {
    /// Which group of the drawing it belongs to: `post hole`, `post and boards, cut`.
    pub group: &'static str,
    /// Corners in order; two of them are a line (a rod, a screw, a sheet of grid).
    pub outline: Vec<(Length, Level)>,
    /// Of what.
    pub stuff: Stuff,
    /// Timber cut across its grain, drawn with its diagonals; else the grain runs upright.
    pub end_grain: bool,
    /// It already stands.
    pub built: bool,
}

impl SectionPart {
    /// An upright rectangle.
    pub fn rectangle(group: &'static str, stuff: Stuff, x: (Length, Length), level: (Level, Level)) -> SectionPart {
        let ((a, b), (low, high)) = (x, level);
        let outline = vec![(a, high), (b, high), (b, low), (a, low)];
        SectionPart { group, outline, stuff, end_grain: false, built: false }
    }
    /// A line.
    pub fn line(group: &'static str, stuff: Stuff, from: (Length, Level), to: (Length, Level)) -> SectionPart {
        SectionPart { group, outline: vec![from, to], stuff, end_grain: false, built: false }
    }
}

/// Words beside a part of the section.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The place that they point at.
    pub at: (Length, Level),
    /// One or two lines.
    pub says: Vec<String>,
    /// To which side they should stand: 1 is the open side, −1 the soil, and the same upwards (−1) and downwards (1).
    pub lean: (f64, f64),
    /// The higher, the sooner it finds its place.
    pub rank: u32,
    /// Millimetres of paper between the place and the words.
    pub clear: f64,
}

/// A size across the wall that is written under the section.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// From and to.
    pub x: (Length, Length),
    /// At which level.
    pub level: Level,
    /// Sign or word before the figure: `⌀`.
    pub word: &'static str,
}

/// A wall cut across.
#[derive(Debug, Clone, PartialEq)]
pub struct Cross {
    /// Where it is cut, in words: `beside post 4`, `through strip 2`.
    pub place: String,
    /// The element of the drawing that it shows: `post 4`; empty for the wall.
    pub element: String,
    /// Along the wall line.
    pub chainage: Length,
    /// The point of the wall line through which the ground is drawn.
    pub at: Point,
    /// Square to the straight, to the open side, 1 m long.
    pub facing: Vector,
    /// Top of the wall.
    pub top: Level,
    /// Ground in front.
    pub front: Level,
    /// Ground behind.
    pub behind: Level,
    /// What is held there.
    pub retained: Length,
    /// Underside of what stands in the ground.
    pub bottom: Level,
    /// Lowest of all that is dug for it.
    pub lowest: Level,
    /// Where the ground in front begins, from the wall line.
    pub toe: Length,
    /// Where the ground or the drain stone behind begins, negative.
    pub back: Length,
    /// Soil side of the lowest part behind which a pipe must pass, negative: of the hole, of the base.
    pub heel: Length,
    /// Parts in the order of drawing.
    pub parts: Vec<SectionPart>,
    /// Words.
    pub notes: Vec<Note>,
    /// Sizes across.
    pub spans: Vec<Span>,
    /// Where digging was stopped, below the ground in front.
    pub refused_at: Option<Length>,
}
