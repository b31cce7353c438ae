//! Which facts of the job do the rules of a place ask about?

use groundhold_quantity::{Length, Pressure, Slope, Units};

/// Distance to something that a rule asks about.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Near {
    /// Nobody has said whether there is one.
    #[default]
    NotTold,
    /// There is none that could matter.
    Nothing,
    /// At this distance in plan.
    At(Length),
}

/// All facts that the triggers of a region are held against.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Facts {
    /// In which units its sentences speak.
    pub units: Units,
    /// Walls.
    pub walls: Vec<WallFacts>,
    /// Level areas.
    pub pads: Vec<PadFacts>,
    /// Edges from which somebody could fall.
    pub edges: Vec<EdgeFacts>,
    /// Excavations that people enter or stand beside.
    pub excavations: Vec<ExcavationFacts>,
    /// Flights of steps.
    pub flights: Vec<FlightFacts>,
    /// Ramps.
    pub ramps: Vec<RampFacts>,
    /// The enquiry for buried services.
    pub enquiry: Enquiry,
    /// What the ground turned out to hold.
    pub finds: Vec<GroundFind>,
    /// How deep the ground freezes at the place, where the job says so.
    pub frost_line: Option<Length>,
}

/// What a rule may ask about a wall.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WallFacts {
    /// Its spoken id.
    pub id: String,
    /// Ground behind above ground in front, largest.
    pub retained: Length,
    /// Top of wall above ground in front, largest.
    pub exposed: Length,
    /// Top of wall above the underside of its base (post or footing), largest.
    pub total: Length,
    /// Height of a fence on top of it; zero without.
    pub fence: Length,
    /// Load on the ground behind it, within its height from it; zero without.
    pub surcharge: Pressure,
    /// True where vehicles drive or stand there.
    pub vehicles: bool,
    /// Slope of the ground behind.
    pub slope_behind: Slope,
    /// True where it holds fill, not natural ground.
    pub holds_fill: bool,
    /// To the nearest boundary of the plot.
    pub boundary: Near,
    /// To the nearest building, ours or the neighbour's.
    pub building: Near,
    /// To the nearest street or public way.
    pub street: Near,
    /// To the nearest easement, sewer or water main.
    pub easement: Near,
    /// Other walls above or below it.
    pub beside: Vec<WallBeside>,
    /// Underside of its base below the ground in front, least.
    pub base_depth: Option<Length>,
    /// Where that is: `post 3`.
    pub base_on: String,
    /// Whether the soil under it heaves in frost; `None` where that is not known.
    pub heaves: Option<bool>,
    /// Its timber in and against the ground.
    pub timbers: Vec<TimberFacts>,
}

/// Timber of a wall.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TimberFacts {
    /// Which.
    pub part: TimberPart,
    /// Treatment or class as ordered; empty where none is written.
    pub treatment: String,
}

/// What timber of a wall does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum TimberPart {
    /// It stands in the ground.
    Post,
    /// It has soil against it.
    Board,
}

/// A wall above another.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WallBeside {
    /// The other's id, or words: "the old block wall".
    pub other: String,
    /// Clear distance in plan.
    pub distance: Length,
    /// Retained height of the other.
    pub retained: Length,
    /// True where the other stands lower.
    pub is_lower: bool,
}

/// What a rule may ask about a level area.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PadFacts {
    /// Its spoken id.
    pub id: String,
    /// Deepest cut below existing ground.
    pub cut: Length,
    /// Highest fill above existing ground.
    pub fill: Length,
    /// To the nearest boundary.
    pub boundary: Near,
}

/// An edge with a drop.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct EdgeFacts {
    /// The element.
    pub element: String,
    /// The place on it: `chainage 2.40 m`.
    pub on: String,
    /// The drop.
    pub drop: Length,
    /// To the nearest place where people walk or sit; `Nothing` where nobody does.
    pub walked: Near,
    /// True where a guard or fence stands there in the plan.
    pub guarded: bool,
}

/// An excavation that people enter or stand beside. Post holes that nobody enters are not among them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ExcavationFacts {
    /// The element.
    pub element: String,
    /// The place on it.
    pub on: String,
    /// Depth below the ground beside it.
    pub depth: Length,
    /// To the nearest neighbour's building.
    pub neighbour_building: Near,
    /// Whether it goes below the underside of that building's foundation; `None` where nobody has looked.
    pub below_its_foundation: Option<bool>,
}

/// What a rule may ask about steps.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlightFacts {
    /// Its spoken id.
    pub id: String,
    /// Most risers in one flight without a landing.
    pub risers: u32,
    /// Most rise of one flight without a landing; zero where it is that of all of it.
    pub flight_rise: Length,
    /// Rise of all of it.
    pub rise: Length,
    /// Drop at its open side; zero where both sides are closed.
    pub side_drop: Length,
    /// True where a handrail is in the plan.
    pub handrail: bool,
}

/// What a rule may ask about a ramp.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RampFacts {
    /// Its spoken id.
    pub id: String,
    /// Steepest gradient.
    pub slope: Slope,
    /// Longest run in plan between landings.
    pub run: Length,
    /// Whether somebody in a wheelchair is to use it; `None` where nobody has said.
    pub wheelchair: Option<bool>,
}

/// Whether the owners of buried services have been asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Enquiry {
    /// Nobody has said.
    #[default]
    NotTold,
    /// Asked, no reply yet.
    Asked,
    /// A reply came so many days ago.
    Replied {
        /// Age of the reply in days.
        days_ago: u32,
    },
}

/// Something the ground turned out to hold.
#[derive(Debug, Clone, PartialEq)]
pub struct GroundFind {
    /// What.
    pub what: GroundFound,
    /// The element; empty where none.
    pub element: String,
    /// The place on it: `post 3`.
    pub on: String,
    /// Depth below ground, where measured.
    pub depth: Option<Length>,
    /// True once it has been dealt with.
    pub settled: bool,
}

/// Kinds of things found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum GroundFound {
    /// Water stands in a trench or a hole.
    Water,
    /// A pipe that nobody knows.
    UnknownPipe,
    /// A cable, marked or not.
    Cable,
    /// A void, a slab over a void, a well.
    Void,
    /// Rock.
    Rock,
    /// A footing that was not known.
    OldFooting,
    /// Roots thicker than a finger.
    Roots,
    /// Soft, filled or peaty ground.
    SoftGround,
    /// Rubbish, oil, something that smells or looks wrong.
    Contaminated,
}
