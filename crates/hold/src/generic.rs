//! What can every wall say of itself, whatever its system? Strips, what is seen, what is bought, lifted, dug and laid.

use groundhold_quantity::{Area, Density, Length, Level, Mass, Share, Volume};

/// Of what a part is made, as far as a drawing and a list must know.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stuff {
    /// Sawn or round timber.
    Timber,
    /// Steel: posts, rods, mesh.
    Steel,
    /// Concrete cast in place or precast.
    Concrete,
    /// Stones laid by hand, dry or in mortar.
    Stone,
    /// Blocks and bricks, all of one size.
    Block,
    /// Loose stone in a basket of wire.
    Basket,
    /// A sheet of geogrid.
    Grid,
    /// Loose clean stone.
    Gravel,
    /// Rammed stone or soil.
    Rammed,
}

/// A stretch of the wall with one section: one top, one underside, one width of base.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Counted from 1 at the wall's start.
    pub number: usize,
    /// As findings name it: `bay 2`, `strip 2`.
    pub on: String,
    /// Where it starts and ends along the wall line.
    pub chainage: (Length, Length),
    /// Underside of what stands in the ground: of the base, or of the deeper post beside a bay.
    pub base: Level,
    /// Where the face begins, and the drain stone behind it: underside of the lowest board or course.
    pub foot: Level,
    /// Top of the wall.
    pub top: Level,
    /// Lowest ground in front within it.
    pub front: Level,
    /// Highest ground behind within it.
    pub behind: Level,
    /// Largest ground difference within it.
    pub retained: Length,
    /// How many courses; 0 where there are none.
    pub courses: usize,
    /// Width of the base across the wall.
    pub width: Length,
    /// From the wall line back to where soil or drain stone rests against the wall; boards count as nothing.
    pub back: Length,
}

impl Strip {
    /// The chainage of its middle.
    pub fn middle(&self) -> Length {
        (self.chainage.0 + self.chainage.1) / 2.0
    }
    /// Its length along the wall line.
    pub fn length(&self) -> Length {
        self.chainage.1 - self.chainage.0
    }
    /// Its top above the ground in front.
    pub fn exposed(&self) -> Length {
        (self.top - self.front).max(Length::ZERO)
    }
}

/// A part of the wall as it is seen from the front, developed along its chainage.
#[derive(Debug, Clone, PartialEq)]
pub struct FacePiece {
    /// What it belongs to on the drawing: `post 3`, or its own mark.
    pub element: String,
    /// Its title for a reader: `hole of post 3`.
    pub title: String,
    /// Chainage and level of its corners, in order.
    pub outline: Vec<(Length, Level)>,
    /// Of what.
    pub stuff: Stuff,
    /// Below the ground or behind something: drawn dashed.
    pub hidden: bool,
    /// It stands upright and is drawn heavier: a post.
    pub upright: bool,
    /// It already stands.
    pub built: bool,
    /// The mark that is written on it, and where from and to there is room; empty for none.
    pub label: String,
    /// Chainages between which the mark may stand.
    pub room: (Length, Length),
}

impl FacePiece {
    /// An upright rectangle.
    pub fn rectangle(element: String, stuff: Stuff, chainage: (Length, Length), level: (Level, Level)) -> FacePiece {
        let ((a, b), (low, high)) = (chainage, level);
        FacePiece {
            title: element.clone(),
            element,
            outline: vec![(a, high), (b, high), (b, low), (a, low)],
            stuff,
            hidden: false,
            upright: false,
            built: false,
            label: String::new(),
            room: chainage,
        }
    }
}

/// How much of something that is not cut from stock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// So many.
    Count(f64),
    /// So long.
    Length(Length),
    /// So large.
    Area(Area),
    /// So much room.
    Volume(Volume),
    /// So heavy.
    Mass(Mass),
}

/// Something that is bought by measure.
#[derive(Debug, Clone, PartialEq)]
pub struct Bulk {
    /// The item's name in a price list: `basket stone 100-200`.
    pub item: String,
    /// How much, net.
    pub amount: Amount,
    /// What for: `filling of the baskets`.
    pub what: String,
    /// Density as delivered, where it may be sold by mass.
    pub density: Option<Density>,
    /// Allowance for what breaks or is spilled.
    pub waste: Share,
}

/// Something that a person must lift, beside the pieces cut from stock.
#[derive(Debug, Clone, PartialEq)]
pub struct Lift {
    /// What it is.
    pub what: String,
    /// Mass of one.
    pub mass: Mass,
    /// How many.
    pub count: f64,
}

/// What is dug for a wall's base, beside post holes and the drainage zone. What the body takes up of ground and of fill is
/// counted from its section.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Excavation {
    /// Dug below the finished ground in front, in the bank: trench of the base with the room to work in it.
    pub trench: Volume,
    /// Deepest trench below the ground in front.
    pub depth: Length,
}

/// Where in the order of work something is laid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WorkStep {
    /// The base: concrete, levelling stone, foundation stones.
    Base,
    /// What stands on it, course by course.
    Courses,
}

/// Something that is laid or built, with the time it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// When.
    pub step: WorkStep,
    /// In words, without the wall: `Fill and close the baskets`.
    pub name: String,
    /// How much.
    pub amount: f64,
    /// Its unit: `m³`.
    pub unit: &'static str,
    /// Hours of one person for one unit: when all goes well, likely, when it does not.
    pub hours: [f64; 3],
    /// Most people who can usefully work on it together.
    pub people_most: u32,
    /// Where the hours are known from.
    pub source: &'static str,
    /// How it is done, in a sentence or two.
    pub how: String,
    /// What is looked at before it begins; empty for no hold point.
    pub checks: Vec<String>,
    /// Days that must pass after it before fill is placed against it.
    pub sets_days: f64,
}
