//! A wall that already stands: what would have to be true for it to lean, bulge or crack as it was found?
//!
//! [`AsFound`] is what a person measured on a day. [`back_analysed`] solves each cause for the value at which the wall
//! would be at its limit, compares that with what was seen or can be, and weighs it against the signs.

mod back;
mod bracket;
mod cause;
mod first;
mod push;
mod section_left;
mod signs;
mod undrained;
mod weight;

pub use back::{BackAnalysis, Hypothesis, Need, Verdict, back_analysed};
pub use cause::Cause;
pub use first::{FIRST_SOURCE, first_steps, keep_clear};
pub use push::{PUSH_AS_FOUND, PushAsFound, push_as_found};
pub use section_left::{SECTION_LEFT, section_left};
pub use signs::{SIGN_SOURCE, SIGNS, Sign, SignRow, signs_of};
pub use undrained::{PUSH_IN_CLAY, push_in_clay};
pub use weight::{BY_WEIGHT, ByWeight, Stands, by_weight};

use groundhold_earth::Soil;
use groundhold_quantity::{Length, Pressure, UnitWeight, Units};

/// What a standing wall is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// Timber posts in the ground with boards.
    TimberPosts,
    /// Stone without mortar.
    DryStone,
    /// Stone or brick in mortar.
    Mortared,
    /// Concrete without bars.
    Concrete,
    /// Blocks, laid dry or filled.
    Block,
    /// Baskets of stone.
    Gabion,
    /// Timbers laid on each other.
    StackedTimbers,
    /// Nobody can tell.
    Unknown,
}

impl Made {
    /// All of them.
    pub const ALL: [Made; 8] = [
        Made::TimberPosts,
        Made::DryStone,
        Made::Mortared,
        Made::Concrete,
        Made::Block,
        Made::Gabion,
        Made::StackedTimbers,
        Made::Unknown,
    ];
    /// As the job file spells it, and in words.
    pub fn words(self) -> &'static str {
        match self {
            Made::TimberPosts => "timber posts and boards",
            Made::DryStone => "dry stone",
            Made::Mortared => "mortared masonry",
            Made::Concrete => "mass concrete",
            Made::Block => "block",
            Made::Gabion => "gabion",
            Made::StackedTimbers => "stacked timbers",
            Made::Unknown => "unknown",
        }
    }
    /// Weight of its body with its voids. Common practice, no source; an unknown wall is taken light.
    pub fn unit_weight(self) -> UnitWeight {
        UnitWeight::kn_per_m3(match self {
            Made::DryStone => 20.0,
            Made::Mortared => 22.0,
            Made::Concrete => 24.0,
            Made::Block => 20.0,
            Made::Gabion => 17.0,
            Made::StackedTimbers => 14.0,
            Made::TimberPosts | Made::Unknown => 17.0,
        })
    }
    /// True where timber decides how long it lasts.
    pub fn is_timber(self) -> bool {
        matches!(self, Made::TimberPosts | Made::StackedTimbers)
    }
}

/// Which way a crack runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CrackRuns {
    /// Along a course.
    Horizontal,
    /// Down the joints like stairs.
    Stepped,
    /// Straight up.
    Vertical,
}

/// A crack as found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CrackFound {
    /// Which way it runs.
    pub runs: CrackRuns,
    /// How wide it gapes.
    pub width: Length,
}

/// Holes that let water through the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weeps {
    /// There are none.
    Absent,
    /// There are some and they are blocked.
    Blocked,
    /// Water runs out of them after rain.
    Running,
}

/// What is above the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AboveIt {
    /// A heap, a shed, a slab.
    Load,
    /// A vehicle drives or stands there.
    Vehicle,
    /// A fence or screen on it.
    Fence,
    /// The ground is wet, or a pipe or a roof drains there.
    WetGround,
    /// A tree.
    Tree,
}

/// What is below it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BelowIt {
    /// Ground in front was dug away.
    DugAway,
    /// A trench runs along its foot.
    Trench,
}

/// Posts of a timber wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostsFound {
    /// Along the wall.
    pub breadth: Length,
    /// In the direction of the push.
    pub depth: Length,
    /// From post to post.
    pub spacing: Length,
    /// Diameter of the concrete round them; the breadth where there is none.
    pub hole: Length,
    /// How far a blade goes into every face at the ground, where that was tried.
    pub soft: Option<Length>,
}

/// What a person saw and measured of a standing wall. What nobody has looked at is not told.
#[derive(Debug, Clone, PartialEq)]
pub struct Seen {
    /// What it is made of.
    pub made: Made,
    /// Ground behind above the ground in front.
    pub height: Length,
    /// Through the body, front to back; for posts nothing.
    pub thickness: Option<Length>,
    /// Underside, or end of the posts, below the ground in front as it was.
    pub below: Option<Length>,
    /// Posts, where it has some.
    pub posts: Option<PostsFound>,
    /// Years since it was built.
    pub age: Option<f64>,
    /// How far the top stands out from the foot; into the bank is negative.
    pub lean: Length,
    /// How far it bellies out, and how high above the ground in front.
    pub bulge: Option<(Length, Length)>,
    /// Cracks.
    pub cracks: Vec<CrackFound>,
    /// Weep holes, where somebody looked.
    pub weeps: Option<Weeps>,
    /// Whether a filter or fabric lies behind, where somebody looked.
    pub filter: Option<bool>,
    /// How high above the ground in front the face is wet or stained.
    pub wet_to: Option<Length>,
    /// What is above.
    pub above: Vec<AboveIt>,
    /// How heavy, where it was reckoned.
    pub load: Option<Pressure>,
    /// What is below.
    pub beneath: Vec<BelowIt>,
    /// How deep it was dug away, where measured.
    pub dug: Option<Length>,
}

impl Seen {
    /// A wall of which no more is known than what it is made of and what it holds.
    pub fn bare(made: Made, height: Length) -> Seen {
        Seen {
            made,
            height,
            thickness: None,
            below: None,
            posts: None,
            age: None,
            lean: Length::ZERO,
            bulge: None,
            cracks: vec![],
            weeps: None,
            filter: None,
            wet_to: None,
            above: vec![],
            load: None,
            beneath: vec![],
            dug: None,
        }
    }
}

/// A wall as a person found it, and the soil round it.
#[derive(Debug, Clone, PartialEq)]
pub struct AsFound {
    /// What was seen.
    pub seen: Seen,
    /// The soil behind and under it.
    pub soil: Soil,
    /// In which units its sentences speak.
    pub units: Units,
}
