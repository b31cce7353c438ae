//! What happened on site: built, found, noted. Entries are added, never changed.

use groundhold_quantity::{Length, Level, Point};

/// One entry of the diary.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// When, as the person's clock said: `2026-05-11T10:20:00`.
    pub at: String,
    /// What happened.
    pub event: Event,
    /// In the person's words.
    pub note: String,
}

/// What happened.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// Something was built and is held fixed from then on.
    Built(AsBuilt),
    /// The ground disagreed with the plan.
    Find(Find),
    /// Words only.
    Note,
}

/// What was built, with the measures it really has.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AsBuilt {
    /// As people say it: `W2 posts 1-5`.
    pub says: String,
    /// The element.
    pub element: String,
    /// The posts of a wall, with what they really are; empty for a whole element.
    pub posts: Vec<BuiltPost>,
}

/// A post that stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BuiltPost {
    /// Its number on the wall.
    pub number: usize,
    /// Where on the wall's line, from its start on that day.
    pub chainage: Length,
    /// Where in plan, on the wall's line: by this it is found again when the wall begins elsewhere.
    pub at: Option<Point>,
    /// How deep its hole is below the ground in front.
    pub depth: Length,
    /// Diameter of the hole.
    pub diameter: Length,
    /// Level of its top.
    pub top: Level,
    /// Its cut length, from top to underside; older records do not have it.
    pub length: Option<Length>,
}

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub enum Find {
    /// Rock stops a post hole.
    Rock {
        /// The wall.
        wall: String,
        /// The post, as numbered on the plan of that day.
        post: usize,
        /// Where it stood along the wall on that day; older records have no more than this.
        chainage: Option<Length>,
        /// Where in plan, on the wall's line: by this it is found again when posts are renumbered or spaced anew, or when
        /// the wall begins elsewhere.
        at: Option<Point>,
        /// At this depth below the ground in front.
        depth: Length,
    },
    /// A pipe or cable that nobody knew of.
    Service {
        /// What it seems to be.
        what: String,
        /// Where; one point, or a line where it was followed.
        line: Vec<Point>,
        /// Depth of its top below the ground.
        depth: Length,
    },
    /// Water.
    Water {
        /// The element where it stood.
        element: String,
        /// At this depth below the ground there.
        depth: Length,
    },
    /// A level that was read wrong.
    LevelError {
        /// The point.
        point: String,
        /// What it really is.
        level: Level,
    },
}
