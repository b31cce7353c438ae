//! What is to be built, in plain facts: how many, how long, how deep, how heavy?

use groundhold_quantity::{Area, Length, Mass, Share, Slope, Time, Units, Volume};

/// The whole job as the sequence needs to know it. Elements that do not exist are left out; quantities of zero make no task.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Works {
    /// Walls. Which stands lower is told by [`WallWorks::base_above_lowest`].
    pub walls: Vec<WallWorks>,
    /// Level areas.
    pub pads: Vec<PadWorks>,
    /// Flights of steps.
    pub flights: Vec<FlightWorks>,
    /// Ramps and paths.
    pub ramps: Vec<RampWorks>,
    /// Turf and topsoil that are taken off first.
    pub stripped: Stripped,
    /// Drains of the whole job: collector to the outlet.
    pub drainage: Drainage,
    /// True where a buried service is known on the plot or may lie there.
    pub services_near: bool,
    /// Distance of the nearest known service from the nearest dig, where known.
    pub service_clearance: Option<Length>,
    /// A tree near the works.
    pub tree: Option<TreeNear>,
    /// Height of the tallest face that stands open while people work below it.
    pub deepest_open_cut: Length,
    /// Mass of the heaviest single piece.
    pub heaviest_piece: Mass,
    /// What the heaviest piece is, in words: "post of W1".
    pub heaviest_what: String,
    /// True where cut timber is preservative-treated.
    pub treated_timber: bool,
    /// True where stone, concrete or brick is cut, ground or broken on the job.
    pub cuts_stone: bool,
    /// True where an existing footing, fence post or building stands near the dig.
    pub footing_near: bool,
    /// True where children, or the public, come onto the plot while the work goes on.
    pub public_near: bool,
    /// Slope of the ground a machine or barrow works on.
    pub ground_slope: Slope,
    /// How the ground digs.
    pub ground: GroundClass,
    /// How it is dug.
    pub dig: DigBy,
    /// How things get to the place.
    pub access: Access,
    /// True where an approval, an engineer or a neighbour is to be asked before work (from `check_region`).
    pub approval_needed: bool,
    /// In which units its sentences speak.
    pub units: Units,
}

/// One wall of posts and boards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WallWorks {
    /// Its spoken id, `W1`.
    pub id: String,
    /// Its length.
    pub length: Length,
    /// Largest retained height.
    pub retained: Length,
    /// Largest exposed height.
    pub exposed: Length,
    /// Largest height from the underside of the base to the top.
    pub total: Length,
    /// Height of its lowest point above the lowest of the job: the lowest wall is built first.
    pub base_above_lowest: Length,
    /// Posts, all of them, also those that stand already.
    pub posts: usize,
    /// Holes, all of them, also those that are already dug and filled.
    pub holes: usize,
    /// Depth of the deepest hole.
    pub hole_depth: Length,
    /// Diameter of the holes.
    pub hole_diameter: Length,
    /// Bank volume of all holes.
    pub holes_volume: Volume,
    /// Pieces of board to be cut and fixed.
    pub boards: usize,
    /// Bank volume of the trench for its base; none without.
    pub base_dug: Volume,
    /// Deepest trench of the base below the ground in front.
    pub base_depth: Length,
    /// What is laid: its base and its courses.
    pub laid: Vec<Laid>,
    /// Concrete in the holes.
    pub concrete: Volume,
    /// Bank volume of the trench or working room behind the wall, not in the pads' cut.
    pub trench: Volume,
    /// Drainage stone behind it, in place.
    pub drain_stone: Volume,
    /// Subsoil pipe.
    pub pipe: Length,
    /// Geotextile.
    pub fabric: Area,
    /// Fill behind it, compacted, not in the pads' fill.
    pub backfill: Volume,
    /// Length of capping boards; zero without.
    pub capping: Length,
    /// Length of guard or fence on it; zero without.
    pub guard: Length,
    /// Pads whose fill lies behind it: it is built before they are filled.
    pub holds_fill_of: Vec<String>,
    /// Pads in whose cut it stands: how long that face is open is told, and their surface waits for it.
    pub stands_in_cut_of: Vec<String>,
    /// Share of its posts that stand already (0 to 1).
    pub built: Share,
    /// Posts that stand higher than planned now, in words with by how much: "post 3 by 50 mm".
    pub cut_down: Vec<String>,
    /// True when all of it is built and drained and filled behind.
    pub complete: bool,
    /// True where water came into the trench or a hole and has not been led away.
    pub water_found: bool,
}

/// When something of a wall is laid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LaidStep {
    /// First, in the trench.
    Base,
    /// Then, course by course.
    Courses,
}

/// Something that is laid, with the hours it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Laid {
    /// When.
    pub step: LaidStep,
    /// In words, without the wall.
    pub name: String,
    /// How much.
    pub amount: f64,
    /// Its unit.
    pub unit: &'static str,
    /// Hours of one person a unit: when all goes well, likely, when it does not.
    pub hours: [f64; 3],
    /// Most people who can usefully work on it together.
    pub people_most: u32,
    /// Where the hours are known from.
    pub source: &'static str,
    /// How it is done.
    pub how: String,
    /// What is looked at before it begins; empty for no hold point.
    pub checks: Vec<String>,
    /// Days that must pass after it before fill is placed against it.
    pub sets_days: f64,
}

/// A level area.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PadWorks {
    /// Its spoken id, `P1`.
    pub id: String,
    /// Its area.
    pub area: Area,
    /// Bank volume cut.
    pub cut: Volume,
    /// Compacted volume filled.
    pub fill: Volume,
    /// Topsoil put back on it, in place.
    pub topsoil: Volume,
    /// Turf or seed laid on it; zero where it is paved or bare.
    pub turf: Area,
    /// Paving or stone surface laid on it; zero where it is planted.
    pub paving: Area,
    /// Deepest cut.
    pub cut_depth: Length,
    /// Deepest fill.
    pub fill_depth: Length,
    /// True when it is finished.
    pub complete: bool,
}

/// A flight of steps.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlightWorks {
    /// Its spoken id, `S1`.
    pub id: String,
    /// Risers in all its flights.
    pub risers: usize,
    /// Width.
    pub width: Length,
    /// Rise from foot to top.
    pub rise: Length,
    /// Bank volume cut.
    pub cut: Volume,
    /// Compacted volume of base and fill.
    pub base: Volume,
    /// The pad it leads to; empty where none.
    pub toward: String,
    /// True when it is finished.
    pub complete: bool,
}

/// A ramp or path.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RampWorks {
    /// Its spoken id, `R1`.
    pub id: String,
    /// Length along its centre line.
    pub length: Length,
    /// Width.
    pub width: Length,
    /// Bank volume cut.
    pub cut: Volume,
    /// Compacted volume filled.
    pub fill: Volume,
    /// Compacted volume of its base.
    pub base: Volume,
    /// Surface laid.
    pub surface: Area,
    /// The pad it leads to; empty where none.
    pub toward: String,
    /// True when it is finished.
    pub complete: bool,
}

/// What is taken off first and kept apart.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stripped {
    /// Area stripped.
    pub area: Area,
    /// Bank volume of turf.
    pub turf: Volume,
    /// Bank volume of topsoil.
    pub topsoil: Volume,
    /// True when it is done.
    pub complete: bool,
}

/// Where the water of the whole job goes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drainage {
    /// Pipe from the walls to the outlet.
    pub collector: Length,
    /// Bank volume of its trench.
    pub trench: Volume,
    /// The outlet in words: "to the ditch by the gate"; `None` where nobody has said.
    pub outlet: Option<String>,
    /// True when outlet and collector are built.
    pub complete: bool,
}

/// A tree near the works.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TreeNear {
    /// Its name on the job.
    pub id: String,
    /// Diameter of its trunk at 1.5 m.
    pub trunk: Length,
    /// Distance of the nearest dig from its trunk.
    pub distance: Length,
}

/// How the ground digs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum GroundClass {
    /// Spade alone.
    Soft,
    /// Spade with some fork or mattock.
    #[default]
    Firm,
    /// Mattock.
    Hard,
    /// Pick.
    VeryHard,
    /// Bar and hammer.
    Rock,
}

/// How it is dug.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DigBy {
    /// By spade; holes by spade and bar.
    #[default]
    Hand,
    /// A small excavator of 1.5 to 1.8 t, with an auger.
    Machine,
}

/// How things get to the place.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Access {
    /// Distance from the heap or the road to the middle of the works.
    pub haul: Length,
    /// Narrowest place on the way, where measured.
    pub narrowest: Option<Length>,
}

/// Who builds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crew {
    /// People, 1 to 50.
    pub people: u32,
    /// Working hours of a day, 1 h to 16 h.
    pub day: Time,
}

impl Default for Crew {
    /// Two people, 8 h a day.
    fn default() -> Crew {
        Crew { people: 2, day: Time::h(8.0) }
    }
}
