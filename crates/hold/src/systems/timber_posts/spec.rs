//! Which sizes does a wall of timber posts and boards have?

use groundhold_member::timber::Grade;
use groundhold_quantity::{Length, Slope};

/// On which side of the posts the boards stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Boards {
    /// On the soil side: the soil presses them onto the posts.
    Behind,
    /// On the open side: they hang on their screws.
    InFront,
}

/// From where the courses are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseFit {
    /// The lowest board is buried exactly as deep as wanted; the top comes out where whole boards put it.
    FromBury,
    /// The highest wanted top is met exactly; the lowest board is buried at least as deep as wanted.
    FromTop,
}

/// A post's timber.
#[derive(Debug, Clone, PartialEq)]
pub struct PostTimber {
    /// Along the wall line.
    pub breadth: Length,
    /// In the direction of the load.
    pub depth: Length,
    /// Strength class.
    pub grade: &'static Grade,
    /// Treatment or use class as ordered: `H5`, `UC4`.
    pub treatment: String,
}

/// A board's timber.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardTimber {
    /// In the direction of the load.
    pub thickness: Length,
    /// Upright in the wall: the height of a course.
    pub height: Length,
    /// Strength class.
    pub grade: &'static Grade,
    /// Treatment or use class as ordered: `H4`.
    pub treatment: String,
}

/// A board laid flat on top of the posts and boards.
#[derive(Debug, Clone, PartialEq)]
pub struct Capping {
    /// Across the wall.
    pub width: Length,
    /// Upright.
    pub thickness: Length,
    /// Strength class and treatment as ordered: `H4 C24`.
    pub quality: String,
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
#[derive(Debug, Clone, PartialEq)]
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

/// The screws through the boards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScrewSpec {
    /// Outer diameter of the thread.
    pub diameter: Length,
    /// Length under the head.
    pub length: Length,
    /// Per board and post.
    pub per_joint: usize,
}

/// All sizes of a wall of timber posts and boards.
#[derive(Debug, Clone, PartialEq)]
pub struct TimberPostSpec {
    /// Posts.
    pub post: PostTimber,
    /// Boards.
    pub board: BoardTimber,
    /// Most distance between post centres.
    pub spacing: Length,
    /// On which side of the posts the boards stand.
    pub boards: Boards,
    /// Lengths in which boards are sold.
    pub stock: Vec<Length>,
    /// Most bays one board may pass; as many as the longest stock allows where none is given.
    pub bays_per_board: Option<usize>,
    /// Holes.
    pub hole: HoleSpec,
    /// How far the lowest board goes below the ground in front, at least.
    pub bury: Length,
    /// From where the courses are counted.
    pub fit: CourseFit,
    /// Open gap between courses, for water.
    pub board_gap: Length,
    /// A board on top, if there is one.
    pub capping: Option<Capping>,
    /// Screws.
    pub screws: ScrewSpec,
    /// Ground in front that is not counted on: disturbed, soft, or dug over by the next person.
    pub neglect_top: Length,
    /// Lean of the face towards the retained ground, run over rise.
    pub lean: Slope,
    /// A board may bow by its span over this.
    pub bow_limit: f64,
}

impl PostTimber {
    /// Key of the material: `post 100x75 H5 C24`.
    pub fn material(&self) -> String {
        material("post", self.breadth, self.depth, &self.treatment, self.grade.name)
    }
}

impl BoardTimber {
    /// Key of the material: `board 200x50 H4 C24`.
    pub fn material(&self) -> String {
        material("board", self.height, self.thickness, &self.treatment, self.grade.name)
    }
}

impl Capping {
    /// Key of the material: `board 150x50 H4 C24`.
    pub fn material(&self) -> String {
        material("board", self.width, self.thickness, &self.quality, "")
    }
}

impl ScrewSpec {
    /// Key of the material: `screw 6x100`.
    pub fn material(&self) -> String {
        format!("screw {}x{}", self.diameter.to_mm().round(), self.length.to_mm().round())
    }
}

fn material(what: &str, a: Length, b: Length, treatment: &str, grade: &str) -> String {
    let (large, small) = (a.max(b).to_mm().round(), a.min(b).to_mm().round());
    format!("{what} {large}x{small} {treatment} {grade}").trim_end().to_string()
}
