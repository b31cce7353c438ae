//! What is the wall made of? Posts, boards, holes, fixings and the plain pieces from which drawing and take-off are made.

use groundhold_quantity::{Length, Level, Point, Vector, Volume};

use crate::{Bulk, Excavation, FacePiece, Lift, Strip, Stuff, Work};

/// One post, from its number on the drawing to its hole.
#[derive(Debug, Clone, PartialEq)]
pub struct Post {
    /// Counted from 1 at the wall's start.
    pub number: usize,
    /// Of its centre along the wall line.
    pub chainage: Length,
    /// On the wall line.
    pub face: Point,
    /// Centre of the post and of its hole in plan.
    pub at: Point,
    /// Direction from the retained side to the open side, 1 m long.
    pub facing: Vector,
    /// Its top, as cut.
    pub top: Level,
    /// Ground in front, at the post.
    pub front: Level,
    /// Ground behind, at the post.
    pub behind: Level,
    /// Largest ground difference within its tributary width: what it must hold.
    pub retained: Length,
    /// Top of the boards above the ground in front, at the post.
    pub exposed: Length,
    /// Top of the wall above the underside of the post.
    pub total: Length,
    /// Half of each neighbouring bay, and the end piece at an end.
    pub tributary: Length,
    /// Underside of the post below the ground in front.
    pub depth: Length,
    /// Underside of the post.
    pub bottom: Level,
    /// Cut length, top to underside.
    pub length: Length,
    /// Hole diameter.
    pub hole_diameter: Length,
    /// At a corner of the line.
    pub corner: bool,
    /// It already stands.
    pub built: bool,
    /// Where its top stands today, where it stands already and that was written down. Above `top`, it is still to be cut.
    pub stands_to: Option<Level>,
    /// It was put in because of a change on site, not by the layout.
    pub extra: bool,
    /// How deep the hole can go, where something stopped it.
    pub refused_at: Option<Length>,
}

/// The space between two posts.
#[derive(Debug, Clone, PartialEq)]
pub struct Bay {
    /// Counted from 1.
    pub number: usize,
    /// Post number at its start.
    pub from_post: usize,
    /// Post number at its end.
    pub to_post: usize,
    /// Where boards may end: on its two posts.
    pub chainage: (Length, Length),
    /// Underside of its lowest board.
    pub bottom: Level,
    /// Top of its highest board.
    pub top: Level,
    /// How many courses of boards.
    pub courses: usize,
    /// Lowest ground in front within it.
    pub front: Level,
    /// Highest ground behind within it.
    pub behind: Level,
    /// Largest ground difference within it.
    pub retained: Length,
}

/// One board.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    /// As painted on its end: `B2-1` is the first board of course 2.
    pub mark: String,
    /// Counted from 1 at the lowest course of the whole wall.
    pub course: usize,
    /// Post number at its start.
    pub from_post: usize,
    /// Post number at its end.
    pub to_post: usize,
    /// Where it starts and ends along the wall line.
    pub chainage: (Length, Length),
    /// Cut length along its longer edge, with what a corner adds.
    pub length: Length,
    /// Underside.
    pub bottom: Level,
    /// Upper edge.
    pub top: Level,
    /// Thickness.
    pub thickness: Length,
}

/// What a piece does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Stands in the ground.
    Post,
    /// Holds the soil.
    Board,
    /// Lies on top.
    Capping,
    /// Lies in a course of the wall.
    Course,
    /// Reaches into the bank, or lies across the end of what does.
    Tie,
}

impl Role {
    /// The word on a list.
    pub fn word(self) -> &'static str {
        match self {
            Role::Post => "post",
            Role::Board => "board",
            Role::Capping => "capping",
            Role::Course => "timber",
            Role::Tie => "tie",
        }
    }
}

/// One piece as it is cut, carried and drawn in elevation.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Its mark.
    pub mark: String,
    /// What it does.
    pub role: Role,
    /// Breadth and depth: for a post along the wall and in load direction; for a board height and thickness;
    /// for capping width and thickness.
    pub section: (Length, Length),
    /// Cut length.
    pub length: Length,
    /// Key of the material: `board 200x50 H4 C24`.
    pub material: String,
    /// What it is made of.
    pub stuff: Stuff,
    /// Where it starts and ends along the wall line.
    pub chainage: (Length, Length),
    /// Where its underside and its top are.
    pub level: (Level, Level),
    /// Number of the bay it starts in, counted from 1; for a post its own number.
    pub bay: usize,
    /// It is already built in.
    pub built: bool,
}

/// One post hole.
#[derive(Debug, Clone, PartialEq)]
pub struct Hole {
    /// Number of its post.
    pub post: usize,
    /// Centre in plan.
    pub at: Point,
    /// Diameter.
    pub diameter: Length,
    /// From the ground in front to the bottom of the hole, with the gravel.
    pub depth: Length,
    /// Bottom of the hole.
    pub bottom: Level,
    /// Concrete, net of the post; none where the fill is rammed.
    pub concrete: Volume,
    /// Rammed fill, net of the post; none where the fill is concrete.
    pub rammed: Volume,
    /// Gravel under the post.
    pub gravel: Volume,
    /// What is dug out, in the bank: the whole hole.
    pub spoil: Volume,
    /// It is already made.
    pub built: bool,
}

/// Fixings of one kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Fixing {
    /// Key of the material: `screw 6x100`.
    pub item: String,
    /// How many.
    pub count: usize,
    /// What they join: `boards to posts`.
    pub what: String,
}

/// A wall laid out in whole pieces. What every system can say comes first; posts, bays and boards are empty where a
/// system has none.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// The wall.
    pub wall: String,
    /// From its start to its end along the line.
    pub length: Length,
    /// In order of chainage, without gaps.
    pub strips: Vec<Strip>,
    /// What is seen from the front, in the order of drawing; what is hidden below the ground comes first.
    pub faces: Vec<FacePiece>,
    /// What is bought by volume, area, length, mass or count, and not cut.
    pub bulk: Vec<Bulk>,
    /// What one person must lift, beside the pieces.
    pub lifts: Vec<Lift>,
    /// What is dug for the base and put back round it; holes count by themselves.
    pub dig: Excavation,
    /// What is laid or built, in order of work, beside holes, posts and boards.
    pub works: Vec<Work>,
    /// In a few words, for a list: `9 posts, 24 boards`.
    pub made_of: String,
    /// In a few words with the sizes that were solved: `9 posts in holes 700 mm to 850 mm`.
    pub headline: String,
    /// What it is made of, line by line: what, and how much of which.
    pub facts: Vec<(String, String)>,
    /// In order of chainage.
    pub posts: Vec<Post>,
    /// In order of chainage, one fewer than posts.
    pub bays: Vec<Bay>,
    /// Course by course from the lowest.
    pub boards: Vec<Board>,
    /// Every piece that is cut from stock: posts, boards, capping.
    pub pieces: Vec<Piece>,
    /// One per post.
    pub holes: Vec<Hole>,
    /// By kind.
    pub fixings: Vec<Fixing>,
    /// Largest retained height.
    pub retained: Length,
    /// Largest exposed height.
    pub exposed: Length,
    /// Largest height from the underside of a post or of the base.
    pub total: Length,
}

/// A place along the wall that is named, numbered and set out: a post, or the end of a strip.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// What stands in its ring on a drawing.
    pub name: String,
    /// What its findings are said of, and what it is called on a drawing: `post 3`; empty for the end of a strip.
    pub on: String,
    /// Along the wall line.
    pub chainage: Length,
    /// Top of the wall there, the higher of two.
    pub top: Level,
    /// Ground in front.
    pub front: Level,
    /// Underside of what stands in the ground, the lower of two.
    pub bottom: Level,
    /// It already stands.
    pub built: bool,
}

impl Layout {
    /// A wall of which nothing is known yet but its line.
    pub fn empty(wall: &str, length: Length) -> Layout {
        Layout {
            wall: wall.into(),
            length,
            strips: vec![],
            faces: vec![],
            bulk: vec![],
            lifts: vec![],
            dig: Excavation::default(),
            works: vec![],
            made_of: String::new(),
            headline: String::new(),
            facts: vec![],
            posts: vec![],
            bays: vec![],
            boards: vec![],
            pieces: vec![],
            holes: vec![],
            fixings: vec![],
            retained: Length::ZERO,
            exposed: Length::ZERO,
            total: Length::ZERO,
        }
    }
    /// A post by its number.
    pub fn post(&self, number: usize) -> Option<&Post> {
        self.posts.get(number.checked_sub(1)?)
    }
    /// The strip at a chainage; beyond an end, the end's; at a step, the one before it.
    pub fn strip(&self, chainage: Length) -> Option<&Strip> {
        self.strips.iter().find(|s| chainage <= s.chainage.1).or(self.strips.last())
    }
    /// The place that a finding or a check names: `post 3`, `strip 2`; its chainage.
    pub fn place(&self, on: &str) -> Option<Length> {
        let post = self.posts.iter().find(|p| on == format!("post {}", p.number)).map(|p| p.chainage);
        let strip = self.strips.iter().find(|s| s.on == on).map(Strip::middle);
        post.or(strip)
    }
    /// Posts, or the ends of strips where there are none.
    pub fn ticks(&self) -> Vec<Tick> {
        if self.posts.is_empty() { self.strip_ends() } else { self.posts.iter().map(of_post).collect() }
    }
    fn strip_ends(&self) -> Vec<Tick> {
        let (Some(first), Some(last)) = (self.strips.first(), self.strips.last()) else { return vec![] };
        let joints = self.strips.windows(2).map(|w| (&w[0], &w[1], w[1].chainage.0));
        let all =
            std::iter::once((first, first, first.chainage.0)).chain(joints).chain([(last, last, last.chainage.1)]);
        all.enumerate()
            .map(|(i, (a, b, chainage))| Tick {
                name: format!("{}", i + 1),
                on: String::new(),
                chainage,
                top: a.top.max(b.top),
                front: a.front.min(b.front),
                bottom: a.base.min(b.base),
                built: false,
            })
            .collect()
    }
    /// Where it holds most: the chainage of that post, or of the middle of that strip.
    pub fn highest(&self) -> Option<Length> {
        let post = self.posts.iter().reduce(|a, b| if b.retained > a.retained { b } else { a });
        let strip = || self.strips.iter().reduce(|a, b| if b.retained > a.retained { b } else { a });
        post.map(|p| p.chainage).or_else(|| strip().map(Strip::middle))
    }
    /// The lowest level of the base, or of the lowest course.
    pub fn lowest_foot(&self) -> Option<Level> {
        self.strips.iter().map(|s| s.foot).reduce(Level::min)
    }
    /// Concrete of all holes that are not yet made.
    pub fn concrete(&self) -> Volume {
        self.holes.iter().filter(|h| !h.built).map(|h| h.concrete).sum()
    }
    /// Spoil of all holes that are not yet made, in the bank.
    pub fn hole_spoil(&self) -> Volume {
        self.holes.iter().filter(|h| !h.built).map(|h| h.spoil).sum()
    }
}

fn of_post(p: &Post) -> Tick {
    Tick {
        name: p.number.to_string(),
        on: format!("post {}", p.number),
        chainage: p.chainage,
        top: p.top,
        front: p.front,
        bottom: p.bottom,
        built: p.built,
    }
}
