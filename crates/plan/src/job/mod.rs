//! What is known and what is wished for: the whole job as data, before anything is computed.
//!
//! A job is what a person wrote. Nothing in it is derived. Ids are short, are said aloud, and never change.

mod old_wall;
mod record;

use groundhold_quantity::{
    Angle, Currency, Length, Level, Mass, Point, Pressure, RainIntensity, Share, Slope, Time, Units, Vector, Volume,
};

pub use groundhold_hold::timber_text as timber;
pub use groundhold_shape::{Bench, Bend, Beside as Alongside, Landings, Side, Way};
pub use old_wall::OldWall;
pub use record::{AsBuilt, BuiltPost, Entry, Event, Find};

/// The whole job.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Job {
    /// Title block and choices that hold for all of it.
    pub about: About,
    /// How the ground was measured.
    pub measure: Measure,
    /// Turf, topsoil and the soil below.
    pub ground: GroundWish,
    /// Slopes of batters where no wall stands.
    pub batter: Batter,
    /// Level areas.
    pub pads: Vec<PadWish>,
    /// Low walls.
    pub walls: Vec<WallWish>,
    /// Flights of steps.
    pub flights: Vec<FlightWish>,
    /// Ramps.
    pub ramps: Vec<RampWish>,
    /// What lies or stands near: services, trees, boundaries, buildings.
    pub near: Vec<Near>,
    /// Walls that stand already, as found.
    pub standing: Vec<OldWall>,
    /// Loads on finished ground.
    pub loads: Vec<Load>,
    /// Rain, outlet, drain fill.
    pub drain: DrainWish,
    /// Prices, waste, tax, crew.
    pub order: OrderWish,
    /// What happened on site, in the order in which it was written down.
    pub record: Vec<Entry>,
}

/// Title block and choices that hold for the whole job.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct About {
    /// What the job is called.
    pub name: String,
    /// Where it is.
    pub place: String,
    /// For whom.
    pub client: String,
    /// Code of the region pack.
    pub region: String,
    /// Name of the design basis.
    pub basis: String,
    /// Currency of the prices.
    pub currency: Currency,
    /// Units for people.
    pub units: Units,
    /// True where the data are invented: said on every sheet.
    pub demo: bool,
}

/// A known peg.
#[derive(Debug, Clone, PartialEq)]
pub struct Peg {
    /// Its letter.
    pub id: String,
    /// Where it stands.
    pub at: Point,
}

/// How the ground was measured: by a survey, or in two numbers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Measure {
    /// The peg that carries the datum, and its level.
    pub datum: Option<Datum>,
    /// Known pegs; the first two are the base line.
    pub pegs: Vec<Peg>,
    /// The level book, row by row.
    pub book: Vec<groundhold_measure::level_book::Booking>,
    /// Tolerance of the misclose: this much, times the root of the number of set-ups.
    pub misclose_per_setup: Option<Length>,
    /// Readings for position, row by row.
    pub positions: Vec<PositionRow>,
    /// Points with position and level written down as they are.
    pub spots: Vec<Spot>,
    /// Lines along which the ground changes slope, by point.
    pub break_lines: Vec<Vec<String>>,
    /// Outline of the survey by point; empty for the hull.
    pub boundary: Vec<String>,
    /// A slope in two numbers, where there is no survey.
    pub quick: Option<QuickSlope>,
}

/// The datum.
#[derive(Debug, Clone, PartialEq)]
pub struct Datum {
    /// The peg that carries it.
    pub peg: String,
    /// Its level.
    pub level: Level,
    /// How to find it again.
    pub note: String,
}

/// One row of the position book.
#[derive(Debug, Clone, PartialEq)]
pub struct PositionRow {
    /// Line in the file, for messages.
    pub row: usize,
    /// The point.
    pub point: String,
    /// Along and off the base line (left of A to B is positive).
    pub offset: Option<(Length, Length)>,
    /// Tape distances from pegs or other points.
    pub ties: Vec<(String, Length)>,
    /// Which side of the base line, where two ties alone leave two answers: `left` or `right`.
    pub left: Option<bool>,
}

/// A point with position and level as given.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// Its name.
    pub id: String,
    /// Where.
    pub at: Point,
    /// How high.
    pub level: Level,
}

/// A plane slope in two numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct QuickSlope {
    /// Fall over the run.
    pub fall: Length,
    /// Plan length over which it falls.
    pub over: Length,
    /// Width along the contour.
    pub width: Length,
    /// Level of the foot.
    pub foot: Level,
}

/// Turf, topsoil and what lies below.
#[derive(Debug, Clone, PartialEq)]
pub struct GroundWish {
    /// Thickness of turf.
    pub turf: Length,
    /// Thickness of topsoil below the turf.
    pub topsoil: Length,
    /// Name of the soil class told by hand.
    pub soil: String,
    /// Overrides of the class, where somebody measured.
    pub measured: MeasuredSoil,
    /// Water standing in the ground, below the surface; `None` where none was seen.
    pub water_depth: Option<Length>,
    /// How deep the ground freezes at the place, where somebody asked.
    pub frost: Option<Length>,
    /// A sieve test of the soil; empty where there is none.
    pub sieves: groundhold_drain::Sieves,
    /// Moisture as found, mass of water over mass of dry soil.
    pub moisture: Option<Share>,
    /// Probes down to rock: where, and how deep below the ground.
    pub rock: Vec<(Point, Length)>,
    /// Situations that every wall must meet besides every day, wind and its water.
    pub must_meet: Vec<groundhold_hold::LoadCase>,
    /// How hard the ground shakes sideways, as a share of gravity, and who says so.
    pub shaking: Option<(Share, String)>,
}

impl Default for GroundWish {
    fn default() -> Self {
        GroundWish {
            turf: Length::ZERO,
            topsoil: Length::ZERO,
            soil: String::new(),
            measured: MeasuredSoil::default(),
            water_depth: None,
            frost: None,
            sieves: vec![],
            moisture: None,
            rock: vec![],
            must_meet: vec![],
            shaking: None,
        }
    }
}

/// Soil parameters that were measured or given by an engineer, in place of those of the class.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MeasuredSoil {
    /// Unit weight.
    pub unit_weight: Option<groundhold_quantity::UnitWeight>,
    /// Effective friction angle.
    pub friction: Option<Angle>,
    /// Effective cohesion.
    pub cohesion: Option<Pressure>,
    /// Undrained strength.
    pub undrained: Option<Pressure>,
    /// Who says so.
    pub source: String,
}

/// Slopes of banks where no wall stands, rise over run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Batter {
    /// In cut.
    pub cut: Slope,
    /// In fill.
    pub fill: Slope,
    /// Benches that break a high bank.
    pub bench: Option<groundhold_shape::Bench>,
}

impl Default for Batter {
    fn default() -> Self {
        Batter { cut: Slope::one_in(2.0), fill: Slope::one_in(2.0), bench: None }
    }
}

/// How high a pad lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PadLevel {
    /// At this level.
    At(Level),
    /// Where cut and fill balance.
    Balance,
    /// Where tipping, bringing and digging cost least.
    Cheapest,
}

/// A level area.
#[derive(Debug, Clone, PartialEq)]
pub struct PadWish {
    /// Its id.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// Corners in order.
    pub corners: Vec<Point>,
    /// Where its outline is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// Finished level at the middle.
    pub level: PadLevel,
    /// Lowest and highest level that will do, where the level is solved for.
    pub between: Option<(Level, Level)>,
    /// Fall for drainage and its direction.
    pub fall: Option<(Slope, Vector)>,
    /// Level strip round it.
    pub apron: Length,
    /// Thickness of stone and paving under the finished level.
    pub build_up: Length,
    /// Banks from its edge, where they differ from those of the job.
    pub batter: Option<Batter>,
}

/// How an end of a wall is found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WallEnd {
    /// Where its top meets the ground.
    Fade,
    /// At the point given.
    At,
    /// It turns square into the bank there, for this long or until its top meets the ground.
    Return(Option<Length>),
    /// At the face of a post or pier of this breadth.
    Post(Length),
}

/// Where the top of a wall runs.
#[derive(Debug, Clone, PartialEq)]
pub enum WallTop {
    /// Above the ground it holds.
    FollowGround {
        /// By this much.
        above: Length,
    },
    /// Level.
    At(Level),
    /// Above a pad.
    AbovePad {
        /// The pad's id.
        pad: String,
        /// By this much.
        by: Length,
    },
    /// Straight from one level to another.
    Raked {
        /// At its first point.
        from: Level,
        /// At its last point.
        to: Level,
    },
    /// Level in stretches over the ground it holds.
    Stepped {
        /// By this much at least.
        above: Length,
        /// Height of a step.
        by: Length,
        /// Shortest stretch that stands out.
        least: Length,
    },
    /// Through these levels, by chainage along its line.
    Line(Vec<(Length, Level)>),
}

/// A stretch of a wall that is made otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct WallPart {
    /// From this chainage along its line as given.
    pub from: Length,
    /// To this one.
    pub to: Length,
    /// Of what it is made there.
    pub spec: groundhold_hold::Spec,
}

/// A low wall.
#[derive(Debug, Clone, PartialEq)]
pub struct WallWish {
    /// Its id.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// Its line in plan; empty where it runs beside another wall.
    pub line: Vec<Point>,
    /// Where its line is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// In place of a line of its own: that of another wall, moved.
    pub alongside: Option<Alongside>,
    /// How each end is found.
    pub ends: [WallEnd; 2],
    /// True when the ground it holds lies to the left of the line.
    pub retains_left: bool,
    /// Where its top runs.
    pub top: WallTop,
    /// Of what it is made.
    pub spec: groundhold_hold::Spec,
    /// Stretches in which it is made otherwise.
    pub parts: Vec<WallPart>,
    /// A fence on top.
    pub fence: Option<FenceWish>,
    /// What is grown or done right beside it.
    pub beside: Option<Beside>,
    /// Posts that differ by decision.
    pub changes: Vec<groundhold_hold::PostChange>,
}

/// What is grown or done right beside a wall, so that hands, roots and mouths come near its timber.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beside {
    /// A bed in which food grows.
    FoodBed,
    /// A place where children play.
    PlayArea,
}

/// A fence or screen on a wall.
#[derive(Debug, Clone, PartialEq)]
pub struct FenceWish {
    /// Its height above the wall's top.
    pub height: Length,
    /// Wind pressure on it.
    pub wind: Pressure,
    /// Share of its face that is solid.
    pub solid: Share,
    /// Where the wind pressure is from.
    pub source: String,
}

/// A flight of steps.
#[derive(Debug, Clone, PartialEq)]
pub struct FlightWish {
    /// Its id.
    pub id: String,
    /// Somewhere below; the flight finds its own foot.
    pub from: Point,
    /// The pad it leads to.
    pub to: String,
    /// Clear width.
    pub width: Length,
    /// Going, or chosen.
    pub going: Option<Length>,
    /// Middles of the landings on which it turns, from the pad down.
    pub turns: Vec<Point>,
}

/// A ramp.
#[derive(Debug, Clone, PartialEq)]
pub struct RampWish {
    /// Its id.
    pub id: String,
    /// Middle line from the bottom up.
    pub path: Vec<Point>,
    /// Where its path is curved or its corners are rounded.
    pub bends: Vec<Bend>,
    /// The pad it leads to.
    pub to: String,
    /// Width.
    pub width: Length,
    /// Steepest slope that will do.
    pub steepest: Slope,
    /// Fall across and the side to which it goes down.
    pub crossfall: Option<(Slope, Side)>,
    /// Level landings on the way.
    pub landings: Option<Landings>,
    /// Outline within which it may be led to and fro.
    pub within: Vec<Point>,
}

/// What kind of thing lies or stands near.
#[derive(Debug, Clone, PartialEq)]
pub enum NearKind {
    /// A buried pipe or cable: what runs in it.
    Service(String),
    /// A tree, with its trunk's diameter at breast height.
    Tree {
        /// Trunk diameter.
        trunk: Length,
    },
    /// The boundary of the plot.
    Boundary,
    /// A building, a wall or a fence with a footing, and how deep that reaches.
    Footing(String),
    /// A street or a public path.
    Street,
    /// Something else, in words.
    Other(String),
}

/// A thing that lies or stands near.
#[derive(Debug, Clone, PartialEq)]
pub struct Near {
    /// Its id.
    pub id: String,
    /// What it is.
    pub kind: NearKind,
    /// Where: a point or a line.
    pub line: Vec<Point>,
    /// Depth of its top or of its footing below the ground.
    pub depth: Option<Length>,
    /// Distance to keep to each side.
    pub clear: Option<Length>,
    /// Where that is known from.
    pub source: String,
    /// Age of that knowledge in days.
    pub age_days: Option<f64>,
    /// Its finished level, for what stays and is met: a driveway, a path, a terrace.
    pub level: Option<Level>,
    /// What is known of a wall that stands there and holds ground.
    pub holds: Option<StandingWall>,
}

/// A wall that stands already and holds ground. What nobody has looked at is not told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StandingWall {
    /// How much it retains.
    pub retained: Length,
    /// Whether there is clean stone with a pipe or weep holes behind it.
    pub drained: Option<bool>,
    /// Whether a filter or fabric keeps the soil out of that stone.
    pub filter: Option<bool>,
}

/// A load on finished ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// The element it stands on; or `behind W1`.
    pub on: String,
    /// What it is.
    pub what: String,
    /// How much.
    pub value: Pressure,
}

/// Rain, outlet and drain fill.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DrainWish {
    /// Design rain and where it is from.
    pub rain: Option<(RainIntensity, String)>,
    /// Its intensity by duration, shortest first; empty where only one intensity is known.
    pub rain_curve: Vec<(Time, RainIntensity)>,
    /// Outlet.
    pub outlet: Option<(Point, Level)>,
    /// Further outlets.
    pub more_outlets: Vec<(Point, Level)>,
    /// A soakaway.
    pub soakaway: Option<groundhold_drain::SoakawayWish>,
    /// Swales above walls.
    pub swales: Vec<groundhold_drain::SwaleWish>,
    /// Weep holes through the walls.
    pub weeps: Option<groundhold_drain::WeepWish>,
    /// Row of the runoff table.
    pub surface: String,
    /// Slope length above the survey.
    pub uphill: Length,
    /// Class of drain fill.
    pub fill: String,
    /// Inside diameter of the pipe; the smallest that does where none is given.
    pub pipe: Option<Length>,
    /// False where the drain is left out on purpose.
    pub wanted: bool,
}

/// Prices and what a quote needs.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OrderWish {
    /// The price list.
    pub prices: Vec<groundhold_order::Price>,
    /// Width of a saw cut.
    pub kerf: Length,
    /// Allowance for waste.
    pub waste: Share,
    /// Tax on the sum.
    pub tax: Share,
    /// Overhead and profit.
    pub margin: Share,
    /// People in the crew.
    pub people: f64,
    /// Working hours in a day.
    pub hours_per_day: Time,
    /// What the vehicle carries.
    pub payload: Mass,
    /// What fits in it.
    pub load_volume: Volume,
    /// Bought so far, all of it: boards and posts with the length in which they came. What stands has used up its part.
    pub bought: Vec<groundhold_order::OnHand>,
}

impl Job {
    /// Every id in use, in the order of the document.
    pub fn ids(&self) -> Vec<&str> {
        let pads = self.pads.iter().map(|e| e.id.as_str());
        let walls = self.walls.iter().map(|e| e.id.as_str());
        let flights = self.flights.iter().map(|e| e.id.as_str());
        let ramps = self.ramps.iter().map(|e| e.id.as_str());
        let near = self.near.iter().map(|e| e.id.as_str());
        let standing = self.standing.iter().map(|e| e.id.as_str());
        pads.chain(walls).chain(flights).chain(ramps).chain(near).chain(standing).collect()
    }
}
