//! Why can these points not become a surface?

use groundhold_quantity::{Level, Point};

use crate::PolygonError;

/// Why points, break lines and boundary give no surface. Points are named by their ids.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SurfaceError {
    /// Fewer than three places.
    #[error("a surface needs at least 3 points in different places, found {found}")]
    TooFewPoints {
        /// How many different places there are.
        found: usize,
    },
    /// All points in one line in plan.
    #[error("all points lie in one line in plan; a surface needs at least one point beside it")]
    AllInLine,
    /// A coordinate or level is infinite, undefined, or further than 10 000 km from the origin.
    #[error("point {id} has no ordinary position and level: x {} m, y {} m, level {} m; each must lie within ±10 000 km", at.x, at.y, level.to_m())]
    NotAPlace {
        /// The point.
        id: String,
        /// Its position as given.
        at: Point,
        /// Its level as given.
        level: Level,
    },
    /// Two points in the same place with different levels.
    #[error("points {a} and {b} are in the same place (x {:.3} m, y {:.3} m) but their levels differ: {:.3} m and {:.3} m; keep one of them, or move one if there is a step", at.x, at.y, level_a.to_m(), level_b.to_m())]
    SamePlace {
        /// One point.
        a: String,
        /// The other.
        b: String,
        /// Where.
        at: Point,
        /// Level of the one.
        level_a: Level,
        /// Level of the other.
        level_b: Level,
    },
    /// Two break lines, or a break line and the boundary, cross between their points.
    #[error("the lines {}–{} and {}–{} cross at x {:.3} m, y {:.3} m, where there is no point; measure one there and put it in both lines, or end one line before the other", a.0, a.1, b.0, b.1, at.x, at.y)]
    BreakLinesCross {
        /// Ids of the ends of one stretch.
        a: (String, String),
        /// Ids of the ends of the other.
        b: (String, String),
        /// Where they cross.
        at: Point,
    },
    /// The boundary crosses or touches itself.
    #[error("the boundary crosses or touches itself: its sides {}–{} and {}–{} meet at x {:.3} m, y {:.3} m; list its points in the order in which one walks around the ground", a.0, a.1, b.0, b.1, at.x, at.y)]
    BoundaryCrosses {
        /// Ids of the ends of one side.
        a: (String, String),
        /// Ids of the ends of the other.
        b: (String, String),
        /// Where they meet.
        at: Point,
    },
    /// A line names a point that is not there.
    #[error("{line} names point number {index}, but there are only {points} points (numbered from 0)")]
    UnknownPoint {
        /// `break line 2` or `the boundary`.
        line: String,
        /// The index given.
        index: usize,
        /// How many points there are.
        points: usize,
    },
    /// The boundary has too few places or no area.
    #[error("the boundary does not enclose ground: {0}")]
    Boundary(#[from] PolygonError),
    /// The boundary leaves no ground.
    #[error("there is no ground inside the boundary")]
    NothingInside,
}
