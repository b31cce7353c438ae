//! What is common to every wall on posts in holes, whatever posts and panels are made of: where posts stand, how many
//! courses each bay has, how hard each post is pushed, and how deep it must go?

pub(crate) mod along;
pub(crate) mod bays;
pub(crate) mod bent;
pub(crate) mod carried;
pub(crate) mod embedment;
pub(crate) mod fit;
pub(crate) mod loads;
pub(crate) mod margins;
pub(crate) mod place;
pub(crate) mod said;
pub(crate) mod shown;

pub(crate) use along::Mark;
pub(crate) use bays::{CoursedBay, Courses};
pub(crate) use embedment::{solved_depth, solved_states};

use groundhold_quantity::{Length, Slope};

use crate::{Layout, Post};

/// The least embedment that is solved for. Common practice, no source.
pub const LEAST_DEPTH: Length = Length::mm(400.0);
/// Solved depths are rounded up to this: what a builder measures in a hole.
pub const DEPTH_STEP: Length = Length::mm(50.0);
/// No hole is solved deeper: a hand-held auger with an extension reaches no further. Common practice, no source.
pub const MOST_DEPTH: Length = Length::mm(3000.0);
/// Hole diameters that augers are hired in. Common practice, no source.
pub const HOLES: [Length; 5] =
    [Length::mm(300.0), Length::mm(350.0), Length::mm(400.0), Length::mm(450.0), Length::mm(600.0)];

/// From where the courses are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseFit {
    /// The lowest board is buried exactly as deep as wanted; the top comes out where whole boards put it.
    FromBury,
    /// The highest wanted top is met exactly; the lowest board is buried at least as deep as wanted.
    FromTop,
}

/// What a hole is filled with around the post.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fill {
    /// Concrete: the hole's diameter bears on the soil.
    Concrete,
    /// Rammed stone or soil: only the post's breadth is counted on.
    Rammed,
}

/// The post holes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleSpec {
    /// Diameter.
    pub diameter: Length,
    /// Underside of the post below the ground in front; solved for each post where none is given.
    pub depth: Option<Length>,
    /// What fills it.
    pub fill: Fill,
    /// Gravel under the post.
    pub gravel_base: Length,
}

/// A wall on posts as layout and ground see it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Posted {
    /// Of a post, along the wall line.
    pub breadth: Length,
    /// Of a post, in the direction of the push.
    pub depth: Length,
    /// From the wall line to the middle of a post, in its own depths, positive to the open side.
    pub out: f64,
    /// Of an end post, along the wall line.
    pub end_breadth: Length,
    /// From the end of the line to where what spans between posts is measured from; nothing where it runs to the end.
    pub end_joint: Length,
    /// From post to post.
    pub bay: Length,
    /// A run that is this much longer than whole bays is whole bays.
    pub fits: Length,
    /// Holes.
    pub hole: HoleSpec,
    /// Height of a course.
    pub height: Length,
    /// Open gap between two courses.
    pub gap: Length,
    /// How far the lowest course goes below the ground in front, at least.
    pub bury: Length,
    /// From where the courses are counted.
    pub fit: CourseFit,
    /// Ground in front that is not counted on.
    pub neglect_top: Length,
    /// Lean of the posts into the bank, run over rise.
    pub lean: Slope,
}

/// The post that holds most: the highest, and among equals the one with the widest bays.
pub(crate) fn highest(layout: &Layout) -> Option<&Post> {
    let more = |a: &Post, b: &Post| {
        (b.retained - a.retained).to_mm() > 0.1
            || ((b.retained - a.retained).to_mm() > -0.1 && (b.tributary - a.tributary).to_mm() > 0.1)
    };
    layout.posts.iter().reduce(|a, b| if more(a, b) { b } else { a })
}
