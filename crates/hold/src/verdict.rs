//! Will the wall stand? Each check with demand, capacity and working; the margin by every method; what is wrong.

use groundhold_earth::situation::{Situation, situation};
use groundhold_finding::Finding;
use groundhold_quantity::{Force, Length, Level, LineForce, Moment, Pressure};
use groundhold_working::{Trace, Unit};

/// A state in which the wall is checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoadCase {
    /// Earth and loads, the drain works.
    Drained,
    /// Earth and loads, the drain is blocked and water stands behind.
    DrainBlocked,
    /// Earth and loads with wind on the fence.
    Wind,
    /// Just built: clay that has not drained yet pushes and stands on its undrained strength.
    JustBuilt,
    /// A wet winter: some water behind a drained wall, clay softened.
    WetWinter,
    /// A small machine works behind the wall.
    MachineBehind,
    /// The ground shakes.
    Earthquake,
}

impl LoadCase {
    /// The words on a sheet.
    pub fn words(self) -> &'static str {
        match self {
            LoadCase::Drained => "drained",
            LoadCase::DrainBlocked => "drain blocked",
            LoadCase::Wind => "with wind on the fence",
            LoadCase::JustBuilt => "just built",
            LoadCase::WetWinter => "wet winter",
            LoadCase::MachineBehind => "machine behind",
            LoadCase::Earthquake => "earthquake",
        }
    }
    /// How a job names it.
    pub fn key(self) -> &'static str {
        match self {
            LoadCase::Drained => "drained",
            LoadCase::DrainBlocked => "drain-blocked",
            LoadCase::Wind => "wind",
            LoadCase::JustBuilt => "end-of-construction",
            LoadCase::WetWinter => "wet-winter",
            LoadCase::MachineBehind => "machine-behind",
            LoadCase::Earthquake => "earthquake",
        }
    }
    /// Those that a job may ask to be met, besides every day, wind and the drain.
    pub const ON_REQUEST: [LoadCase; 4] =
        [LoadCase::JustBuilt, LoadCase::WetWinter, LoadCase::MachineBehind, LoadCase::Earthquake];
    /// What it changes against every day, where that is told as a situation.
    pub(crate) fn situation(self) -> Option<&'static Situation> {
        LoadCase::ON_REQUEST.contains(&self).then(|| situation(self.key())).flatten()
    }
}

/// What is checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckKind {
    /// The post turns over in the ground.
    Embedment,
    /// The post breaks in bending.
    PostBending,
    /// The post breaks in shear.
    PostShear,
    /// The post's top moves.
    PostDeflection,
    /// A board breaks in bending.
    BoardBending,
    /// A board breaks in shear.
    BoardShear,
    /// A board bows.
    BoardBow,
    /// Boards in front are pushed off their screws.
    Screws,
    /// The whole bank slides along a circle under the posts.
    Slip,
    /// The wall slides on its underside.
    Sliding,
    /// The wall turns over about its toe.
    Overturning,
    /// The resultant leaves the part of the base in which it should stay.
    Eccentricity,
    /// The ground under the base gives way.
    Bearing,
    /// A course slides on the one below it.
    JointSliding,
    /// A joint opens at its back.
    JointEccentricity,
    /// What the wall is built of is crushed at the front of a joint.
    Crushing,
    /// The flange of a steel post bends under the panel that it holds.
    FlangeBending,
    /// A concrete panel breaks in bending.
    PanelBending,
    /// A concrete panel breaks in shear.
    PanelShear,
    /// A panel is crushed where it sits against the flange, or reaches too little over it.
    Seat,
    /// A tie pulls its cross piece through the bank.
    DeadmanPull,
    /// A cross piece lies too near behind the wall.
    DeadmanPlace,
    /// A tie tears.
    TieTension,
    /// The screws at the head or at the end of a tie give way.
    TieFixing,
    /// A cross piece breaks in bending.
    CrossBending,
    /// A cross piece breaks in shear.
    CrossShear,
    /// A course is pushed off the one below it.
    CourseShear,
    /// What stands above a joint turns over and pulls its screws.
    CourseOpening,
    /// The timber that holds the ties breaks in bending.
    TimberBending,
    /// It breaks in shear.
    TimberShear,
    /// It bows between its ties.
    TimberBow,
    /// The stem breaks in bending at its foot.
    StemBending,
    /// The stem breaks in shear at its foot.
    StemShear,
    /// The toe of the footing breaks in bending.
    ToeBending,
    /// The toe of the footing breaks in shear.
    ToeShear,
    /// The heel of the footing breaks in bending.
    HeelBending,
    /// The heel of the footing breaks in shear.
    HeelShear,
    /// There is less steel than the rules want at least.
    LeastSteel,
    /// Less concrete covers the steel than the rules want.
    Cover,
    /// The bars of the stem pull out of the footing.
    Anchorage,
    /// A layer of grid tears.
    GridStrength,
    /// A layer of grid is pulled out of the ground behind the slip wedge.
    GridPullout,
    /// A layer of grid is pulled from between the blocks.
    GridConnection,
    /// The reinforced fill slides on a layer of grid.
    GridSliding,
}

impl CheckKind {
    /// The words on a sheet.
    pub fn words(self) -> &'static str {
        match self {
            CheckKind::Embedment => "embedment of the post",
            CheckKind::PostBending => "bending of the post",
            CheckKind::PostShear => "shear of the post",
            CheckKind::PostDeflection => "movement of the post's top",
            CheckKind::BoardBending => "bending of the board",
            CheckKind::BoardShear => "shear of the board",
            CheckKind::BoardBow => "bow of the board",
            CheckKind::Screws => "screws in withdrawal",
            CheckKind::Slip => "slip of the bank",
            CheckKind::Sliding => "sliding on the base",
            CheckKind::Overturning => "overturning about the toe",
            CheckKind::Eccentricity => "resultant in the base",
            CheckKind::Bearing => "bearing of the ground",
            CheckKind::JointSliding => "sliding in a joint",
            CheckKind::JointEccentricity => "resultant in a joint",
            CheckKind::Crushing => "crushing in a joint",
            CheckKind::FlangeBending => "bending of the flange",
            CheckKind::PanelBending => "bending of the panel",
            CheckKind::PanelShear => "shear of the panel",
            CheckKind::Seat => "seat of the panel",
            CheckKind::DeadmanPull => "pull on the cross piece",
            CheckKind::DeadmanPlace => "distance of the cross piece",
            CheckKind::TieTension => "tension in the tie",
            CheckKind::TieFixing => "screws of the tie",
            CheckKind::CrossBending => "bending of the cross piece",
            CheckKind::CrossShear => "shear of the cross piece",
            CheckKind::CourseShear => "screws between courses",
            CheckKind::CourseOpening => "turning over a joint",
            CheckKind::TimberBending => "bending of the timber",
            CheckKind::TimberShear => "shear of the timber",
            CheckKind::TimberBow => "bow of the timber",
            CheckKind::StemBending => "bending of the stem",
            CheckKind::StemShear => "shear of the stem",
            CheckKind::ToeBending => "bending of the toe",
            CheckKind::ToeShear => "shear of the toe",
            CheckKind::HeelBending => "bending of the heel",
            CheckKind::HeelShear => "shear of the heel",
            CheckKind::LeastSteel => "least steel",
            CheckKind::Cover => "cover to the steel",
            CheckKind::Anchorage => "anchorage in the footing",
            CheckKind::GridStrength => "strength of the grid",
            CheckKind::GridPullout => "pull-out of the grid",
            CheckKind::GridConnection => "grip of the blocks on the grid",
            CheckKind::GridSliding => "sliding on a layer of grid",
        }
    }
    /// In a word or two, after a percentage: `98 % in the ground`.
    pub fn short(self) -> &'static str {
        match self {
            CheckKind::Embedment => "in the ground",
            CheckKind::PostBending => "post bending",
            CheckKind::PostShear => "post shear",
            CheckKind::PostDeflection => "lean",
            CheckKind::BoardBending => "board bending",
            CheckKind::BoardShear => "board shear",
            CheckKind::BoardBow => "bow",
            CheckKind::Screws => "screws",
            CheckKind::Slip => "slip",
            CheckKind::Sliding => "sliding",
            CheckKind::Overturning => "overturning",
            CheckKind::Eccentricity => "out of middle",
            CheckKind::Bearing => "bearing",
            CheckKind::JointSliding => "joint sliding",
            CheckKind::JointEccentricity => "joint opening",
            CheckKind::Crushing => "crushing",
            CheckKind::FlangeBending => "flange",
            CheckKind::PanelBending => "panel bending",
            CheckKind::PanelShear => "panel shear",
            CheckKind::Seat => "seat",
            CheckKind::DeadmanPull => "pull-out",
            CheckKind::DeadmanPlace => "reach",
            CheckKind::TieTension => "tie",
            CheckKind::TieFixing => "tie screws",
            CheckKind::CrossBending => "cross piece",
            CheckKind::CrossShear => "cross shear",
            CheckKind::CourseShear => "course shear",
            CheckKind::CourseOpening => "joint turning",
            CheckKind::TimberBending => "timber bending",
            CheckKind::TimberShear => "timber shear",
            CheckKind::TimberBow => "timber bow",
            CheckKind::StemBending => "stem bending",
            CheckKind::StemShear => "stem shear",
            CheckKind::ToeBending => "toe bending",
            CheckKind::ToeShear => "toe shear",
            CheckKind::HeelBending => "heel bending",
            CheckKind::HeelShear => "heel shear",
            CheckKind::LeastSteel => "least steel",
            CheckKind::Cover => "cover",
            CheckKind::Anchorage => "anchorage",
            CheckKind::GridStrength => "grid strength",
            CheckKind::GridPullout => "grid pull-out",
            CheckKind::GridConnection => "grid connection",
            CheckKind::GridSliding => "grid sliding",
        }
    }
}

/// One check at one place in one load case by one method.
#[derive(Debug, Clone)]
pub struct Check {
    /// What.
    pub kind: CheckKind,
    /// `post 3`, `bay 2`, or empty for the whole wall.
    pub on: String,
    /// In which state.
    pub case: LoadCase,
    /// By which method: `Broms 1964, sand`.
    pub method: &'static str,
    /// Which combination of the basis, or the basis itself.
    pub basis: &'static str,
    /// What is asked, in `unit`.
    pub demand: f64,
    /// What is there, in `unit`, with the factors of the basis already in it.
    pub capacity: f64,
    /// Of demand and capacity.
    pub unit: Unit,
    /// Demand over capacity; infinite when there is no capacity.
    pub utilisation: f64,
    /// The workings behind it: first the one that compares or resists, then where the demand comes from.
    pub traces: Vec<Trace>,
    /// True when this check decides; false when it is shown beside.
    pub governs: bool,
}

impl Check {
    /// True when it decides and asks more than is there.
    pub fn fails(&self) -> bool {
        self.governs && self.utilisation > 1.0
    }
}

/// How one method sees the embedment of one post.
#[derive(Debug, Clone)]
pub struct MethodMargin {
    /// Number of the post.
    pub post: usize,
    /// In which state.
    pub case: LoadCase,
    /// `Broms 1964, sand`, `IBC 1807.3.2.1`, `rule of thumb: depth = retained height`.
    pub method: &'static str,
    /// The depth it asks for, with the margin the method itself needs; none when it finds none.
    pub depth: Option<Length>,
    /// Capacity over unfactored demand at the depth there is; none for a rule of thumb.
    pub factor: Option<f64>,
    /// The factor wanted.
    pub wanted: f64,
    /// True when the basis accepts or refuses by this method.
    pub governs: bool,
    /// Its working.
    pub trace: Option<Trace>,
    /// A remark, or empty.
    pub note: String,
}

/// One line of the load on a post, so that a drawing can show it.
#[derive(Debug, Clone, PartialEq)]
pub struct PressurePoint {
    /// Below the ground behind, at the plane on which it acts.
    pub depth: Length,
    /// From the soil, horizontal.
    pub soil: Pressure,
    /// From loads on the ground, horizontal.
    pub load: Pressure,
    /// From water.
    pub water: Pressure,
}

/// How hard the ground pushes at the wall's highest place, with loads and soil as they are, by one theory.
#[derive(Debug, Clone)]
pub struct Push {
    /// In which state.
    pub case: LoadCase,
    /// `Rankine` or `Coulomb`.
    pub method: &'static str,
    /// Horizontal thrust per metre of wall.
    pub horizontal: LineForce,
    /// Thrust down the back of the wall, per metre.
    pub vertical: LineForce,
    /// Height of the thrust above `foot`.
    pub arm: Length,
    /// Where the pressure begins: the ground behind, at the plane on which it acts.
    pub head: Level,
    /// Where it ends: the ground in front of a post, the underside of a base.
    pub foot: Level,
    /// The place, as findings name it: `post 4`, `strip 2`.
    pub on: String,
    /// Where that is along the wall line.
    pub chainage: Length,
    /// Horizontal force on the post there, with wind where the state has it; none where no post stands.
    pub force: Option<Force>,
    /// Moment on that post about the ground in front.
    pub moment: Option<Moment>,
    /// True for the theory by which the wall is checked.
    pub governs: bool,
    /// Its working.
    pub trace: Trace,
}

/// What there is to say about one wall.
#[derive(Debug, Clone)]
pub struct Verdict {
    /// The wall.
    pub wall: String,
    /// Every check, the governing ones and those shown beside.
    pub checks: Vec<Check>,
    /// Embedment by every method, per post and state.
    pub margins: Vec<MethodMargin>,
    /// Push at the highest place by each theory, per state.
    pub pushes: Vec<Push>,
    /// Pressure on the wall at its highest place, per state, by the theory that governs.
    pub pressures: Vec<(LoadCase, Vec<PressurePoint>)>,
    /// The critical slip circle, where one was found.
    pub slip: Option<SlipCircle>,
    /// What speaks against it.
    pub findings: Vec<Finding>,
}

/// A slip circle in the section through the wall: x is positive towards the open side from the wall line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlipCircle {
    /// Chainage of the section.
    pub chainage: Length,
    /// Centre from the wall line, positive towards the open side.
    pub centre_x: Length,
    /// Level of the centre.
    pub centre_level: Level,
    /// Radius.
    pub radius: Length,
    /// Resisting over driving moment, with the soil's strength as the basis takes it.
    pub factor: f64,
    /// Where it comes out, from the wall line, positive on the open side.
    pub exit_x: Length,
    /// Where it begins, negative behind the wall.
    pub entry_x: Length,
}

impl Verdict {
    /// The governing check of a kind with the highest utilisation.
    pub fn worst(&self, kind: CheckKind) -> Option<&Check> {
        self.checks
            .iter()
            .filter(|c| c.governs && c.kind == kind)
            .max_by(|a, b| a.utilisation.total_cmp(&b.utilisation))
    }
    /// The highest utilisation among the governing checks; zero when there are none.
    pub fn utilisation(&self) -> f64 {
        self.checks.iter().filter(|c| c.governs).map(|c| c.utilisation).fold(0.0, f64::max)
    }
}
