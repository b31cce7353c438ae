//! Where does a line of straights, arcs and smooth curves run, point by point?
//!
//! A person gives corners and says how the way leads from one to the next, and how a corner is rounded. [`Alignment::course`]
//! makes of it points that lie on the line, so near together that no chord is farther from it than [`CHORD_ERROR`].

mod arc;
mod course;
mod ease;
mod smooth;

pub use course::{Course, Curve};
use groundhold_quantity::{Length, Point, Vector};

use crate::Side;

/// A chord between two points of a course is nowhere farther from the line than this (ours: half of what a line of pegs
/// can be set to).
pub const CHORD_ERROR: Length = Length::mm(2.0);

/// Two places nearer than this are one.
const SAME: f64 = 1e-3;

/// A line in plan as a person gives it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Alignment {
    /// Its corners in order.
    pub points: Vec<Point>,
    /// Where it is not straight from corner to corner with sharp turns.
    pub bends: Vec<Bend>,
}

/// How the way to a corner leads, and how the corner is rounded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bend {
    /// Which corner, counted from 0. In a closed line the way to corner 0 comes from the last one.
    pub at: usize,
    /// How the way leads to it from the corner before.
    pub way: Way,
    /// Radius with which the corner is rounded; nothing for a sharp one.
    pub round: Length,
    /// Length of the transition before and after the round, in which its curvature grows evenly; nothing without.
    pub ease: Length,
}

/// How the way leads from one corner to the next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way {
    /// Straight.
    Straight,
    /// On the arc of a circle through this place.
    Through(Point),
    /// On the shorter arc of this radius that turns to this side.
    Radius(Length, Side),
    /// On a smooth curve, together with the ways before and after that are smooth too.
    Smooth,
}

impl From<Vec<Point>> for Alignment {
    fn from(points: Vec<Point>) -> Alignment {
        Alignment { points, bends: vec![] }
    }
}

/// Why an alignment has no course.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum AlignmentError {
    /// Fewer than two different points.
    #[error("its line needs at least {} different points", if *least == 2 { "two" } else { "three" })]
    TooFew {
        /// How many it needs.
        least: usize,
    },
    /// A coordinate is infinite or undefined.
    #[error("a point of its line is not an ordinary position")]
    NotFinite,
    /// A bend names a corner that is not there.
    #[error("a bend names corner {at}, the line has {has}")]
    NoSuchCorner {
        /// Counted from 1.
        at: usize,
        /// How many there are.
        has: usize,
    },
    /// The radius is too small to reach from corner to corner.
    #[error("the arc to corner {at} has a radius of {radius:.3} m; its ends are {chord:.3} m apart, which needs at least {:.3} m", chord / 2.0)]
    RadiusTooSmall {
        /// Counted from 1.
        at: usize,
        /// As wished, metres.
        radius: f64,
        /// Between its ends, metres.
        chord: f64,
    },
    /// The place to pass through gives no arc.
    #[error("the arc to corner {at} should pass through x {:.3} m, y {:.3} m, which is one of its ends or lies beyond them on the same line", through.x, through.y)]
    NoArc {
        /// Counted from 1.
        at: usize,
        /// As wished.
        through: Point,
    },
    /// A corner beside a curve cannot be rounded.
    #[error("corner {at} lies at the end of a curve; only a corner between two straights can be rounded")]
    RoundBesideCurve {
        /// Counted from 1.
        at: usize,
    },
    /// The round does not fit between its neighbours.
    #[error("corner {at} cannot be rounded with a radius of {radius:.3} m{}: that takes {takes:.3} m of a straight that has {has:.3} m left; a radius of {fits:.3} m fits",
        if *ease > 0.0 { format!(" and transitions of {ease:.3} m") } else { String::new() })]
    RoundTooLarge {
        /// Counted from 1.
        at: usize,
        /// As wished, metres.
        radius: f64,
        /// Length of each transition, metres.
        ease: f64,
        /// Length of straight that it takes, metres.
        takes: f64,
        /// What there is, metres.
        has: f64,
        /// The largest radius that fits, metres.
        fits: f64,
    },
    /// The transitions turn farther than the corner.
    #[error(
        "the transitions of corner {at} are {ease:.3} m long and alone turn farther than the corner; at most {most:.3} m fit its radius"
    )]
    EaseTooLong {
        /// Counted from 1.
        at: usize,
        /// As wished, metres.
        ease: f64,
        /// The longest that fit, metres.
        most: f64,
    },
    /// The line turns back on itself, so that no offset line follows it.
    #[error("{by:.3} m to the side it would turn back on itself at x {:.2} m, y {:.2} m; less than {most:.3} m to that side fits", at.x, at.y)]
    OffsetTooWide {
        /// As wished, metres.
        by: f64,
        /// Where.
        at: Point,
        /// The widest that fits, metres.
        most: f64,
    },
}

impl Alignment {
    /// True where every way is straight and no corner is rounded.
    pub fn is_straight(&self) -> bool {
        self.bends.iter().all(|b| b.way == Way::Straight && b.round <= Length::ZERO)
    }

    /// The points of an open line.
    ///
    /// # Errors
    /// [`AlignmentError`] says which corner, and what would fit.
    pub fn course(&self) -> Result<Course, AlignmentError> {
        course::course(self, false)
    }

    /// The points of a closed line, the first not repeated.
    ///
    /// # Errors
    /// As [`Alignment::course`].
    pub fn closed(&self) -> Result<Course, AlignmentError> {
        course::course(self, true)
    }

    /// The bend at a corner; straight and sharp where none is given.
    fn bend(&self, at: usize) -> Bend {
        let plain = Bend { at, way: Way::Straight, round: Length::ZERO, ease: Length::ZERO };
        self.bends.iter().rev().find(|b| b.at == at).copied().unwrap_or(plain)
    }
}

/// A vector turned to the left by an angle.
fn turned(v: Vector, angle: f64) -> Vector {
    let (s, c) = (groundhold_quantity::math::sin(angle), groundhold_quantity::math::cos(angle));
    Vector::m(v.x * c - v.y * s, v.x * s + v.y * c)
}
