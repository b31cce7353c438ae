//! Which sizes does a wall of timber posts and boards have?

use super::ageing::Ageing;
use groundhold_member::timber::Grade;
use groundhold_quantity::{Length, Slope};

use crate::posted::{CourseFit, HoleSpec, Posted};

/// On which side of the posts the boards stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Boards {
    /// On the soil side: the soil presses them onto the posts.
    Behind,
    /// On the open side: they hang on their screws.
    InFront,
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
    /// How long it lasts, and in which year it is looked at.
    pub ageing: Ageing,
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

/// The bay that whole boards of the stock divide into, the widest within the spacing; the spacing itself where no board
/// of the stock reaches over one.
pub(crate) fn bay_of(spec: &TimberPostSpec) -> Length {
    let most = spec.bays_per_board.unwrap_or(usize::MAX);
    let of_stock = |stock: Length| {
        let n = ((stock / spec.spacing) - 1e-6).ceil().max(1.0);
        (n as usize <= most).then(|| stock / n)
    };
    spec.stock.iter().filter_map(|s| of_stock(*s)).reduce(Length::max).unwrap_or(spec.spacing)
}

impl TimberPostSpec {
    /// As layout and ground see it.
    pub(crate) fn posted(&self) -> Posted {
        Posted {
            breadth: self.post.breadth,
            depth: self.post.depth,
            out: match self.boards {
                Boards::Behind => 0.5,
                Boards::InFront => -0.5,
            },
            end_breadth: self.post.breadth,
            end_joint: Length::ZERO,
            bay: bay_of(self),
            fits: bay_of(self) * 1e-5,
            hole: self.hole,
            height: self.board.height,
            gap: self.board_gap,
            bury: self.bury,
            fit: self.fit,
            neglect_top: self.neglect_top,
            lean: self.lean,
        }
    }
}
