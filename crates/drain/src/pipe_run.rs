//! Where does the pipe of a wall lie, down to its outlet, and how large is it?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Flow, Length, Level, Point, Slope, Volume, trim};
use groundhold_working::Trace;

use crate::findings::{FALL_SMALL, OUTLET_TOO_HIGH, OUTLET_UNKNOWN};
use crate::grade::grade_line;
use crate::outlet_leg::Leg;
use crate::pipe_size::size;
use crate::reach::{Node, Reach, nodes, reaches};
use crate::way::{Target, downhill_way, fall_that_reaches, points};
use crate::{DrainCase, Outlet, PipeMaterial, WallLine};

/// A place along the pipe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InvertPoint {
    /// Along the pipe from its high end.
    pub chainage: Length,
    /// In plan: behind the wall on its line, then on the way to the outlet.
    pub at: Point,
    /// Inside bottom of the pipe.
    pub invert: Level,
    /// Chainage on the wall, while it runs behind it.
    pub wall_chainage: Option<Length>,
}

/// The trench from the wall to the outlet.
#[derive(Debug, Clone, PartialEq)]
pub struct PipeTrench {
    /// Its length.
    pub length: Length,
    /// Greatest depth.
    pub deepest: Length,
    /// Dug from existing ground, bank.
    pub dug: Volume,
    /// Stone around the pipe.
    pub stone: Volume,
    /// Put back above the stone, compacted.
    pub put_back: Volume,
    /// Length over which the ground is not known; nothing is counted there.
    pub beyond_survey: Length,
}

/// The pipe of one wall.
#[derive(Debug, Clone, PartialEq)]
pub struct PipeRun {
    /// The wall it drains.
    pub wall: String,
    /// From the high end to the outlet (or to the end of the wall where there is none), falling all the way.
    pub points: Vec<InvertPoint>,
    /// Least fall of any stretch.
    pub fall: Slope,
    /// Inside diameter.
    pub diameter: Length,
    /// Material.
    pub material: PipeMaterial,
    /// Flow in the design rain; `None` where no rain was given.
    pub flow: Option<Flow>,
    /// What it carries, full.
    pub capacity: Flow,
    /// Flow over what it carries filled to three quarters.
    pub utilisation: Option<f64>,
    /// Depth of water over diameter at the flow; `None` where the flow is not known or too much.
    pub filled: Option<f64>,
    /// Velocity at the flow, metres a second.
    pub velocity_m_per_s: Option<f64>,
    /// Length in all.
    pub length: Length,
    /// Length of slotted pipe behind the wall.
    pub behind_wall: Length,
    /// The outlet.
    pub outlet: Option<Outlet>,
    /// Invert at which the pipe arrives when it is laid at the wished fall. The outlet must not lie above it.
    pub arrives: Level,
    /// The wall whose pipe it runs into, where it does not go to an outlet of its own.
    pub joins: Option<String>,
    /// Walls whose pipes run into it at its low end.
    pub receives: Vec<String>,
    /// Stretch by stretch: fall, flow, depth of water.
    pub reaches: Vec<Reach>,
    /// Where it is looked into, turns, is joined and ends, from the high end.
    pub nodes: Vec<Node>,
    /// The trench to the outlet.
    pub trench: PipeTrench,
    /// Workings: capacity, depth of flow.
    pub traces: Vec<Trace>,
}

/// A pipe that is laid and not yet sized.
pub(crate) struct Laid {
    pub target: Option<Target>,
    pub points: Vec<InvertPoint>,
    /// True where it reaches its target at the least fall or more.
    pub reaches: bool,
    /// Invert at which it arrives at the wished fall.
    arrives: Level,
    fall: Slope,
    said: Vec<Finding>,
}

impl Laid {
    /// Where the stretch behind the wall ends: another pipe may join there.
    pub(crate) fn low_end(&self) -> Option<InvertPoint> {
        self.points.iter().rev().find(|p| p.wall_chainage.is_some()).copied()
    }
}

/// Lays the pipe behind a wall that has been checked to be one, down to its target.
pub(crate) fn lay(case: &DrainCase, wall: &WallLine, target: Option<Target>) -> Laid {
    let mut said = vec![];
    let way = downhill_way(case, wall, target.as_ref());
    let (fall, shortage) = fall_that_reaches(case, &way, target.as_ref());
    let line = grade_line(&way.base, fall.to_ratio());
    let arrives = way.arrives(case.pipe.fall);
    let points = points(&way, &line, fall, shortage.is_none(), target.as_ref());
    match (&target, shortage) {
        (None, _) => said.push(outlet_unknown(case, wall, &points, fall)),
        (Some(t), Some(short)) => said.push(outlet_too_high(case, wall, t, short)),
        (Some(_), None) if fall < case.pipe.fall => said.push(fall_small(case, wall, fall, arrives)),
        _ => {}
    }
    Laid { reaches: target.is_some() && shortage.is_none(), target, points, arrives, fall, said }
}

/// What comes into a pipe from the pipes that join it.
#[derive(Default)]
pub(crate) struct Joined {
    pub walls: Vec<String>,
    pub flow: Option<Flow>,
    pub diameter: Length,
}

/// Sizes a laid pipe for its own flow, which grows along the wall, and for what joins it at the wall's low end.
pub(crate) fn sized(
    case: &DrainCase,
    wall: &WallLine,
    laid: Laid,
    own: Option<Flow>,
    joined: Joined,
) -> (PipeRun, Vec<Finding>) {
    let Laid { target, points, arrives, fall, mut said, .. } = laid;
    let slopes = points.windows(2).map(|w| (w[0].invert - w[1].invert) / (w[1].chainage - w[0].chainage));
    let least = slopes.fold(f64::INFINITY, f64::min);
    let least = Slope::ratio(if least.is_finite() { least } else { fall.to_ratio() });
    let flows = crate::reach::flows(&points, own, joined.flow);
    let governing = crate::reach::governing(&points, &flows, case.pipe.material);
    let (flow, slope) = governing.map_or((own, least), |(q, s)| (Some(q), s));
    let chosen = size(case, wall, flow, slope, joined.diameter, &mut said);
    let leg = Leg::of(&points);
    let trench = leg.trench(case, chosen.diameter);
    let joins = target.as_ref().and_then(|t| t.joins.clone());
    said.extend(leg.remarks(case, wall, &trench, joins.is_some(), chosen.diameter));
    let length = points.last().map_or(Length::ZERO, |p| p.chainage);
    let outlet = target.filter(|t| t.joins.is_none()).map(|t| Outlet { at: t.at, level: t.level });
    let run = PipeRun {
        wall: wall.id.clone(),
        fall: least,
        diameter: chosen.diameter,
        material: case.pipe.material,
        flow: flows.last().copied().flatten(),
        capacity: chosen.capacity,
        utilisation: chosen.utilisation,
        filled: chosen.filled,
        velocity_m_per_s: chosen.velocity,
        length,
        behind_wall: wall.length(),
        outlet,
        arrives,
        reaches: reaches(&points, &flows, chosen.diameter, case.pipe.material),
        nodes: nodes(case, &points, joins.as_deref(), outlet.is_some(), &joined.walls),
        joins,
        receives: joined.walls,
        trench,
        traces: chosen.traces,
        points,
    };
    (run, said)
}

fn outlet_unknown(case: &DrainCase, wall: &WallLine, points: &[InvertPoint], fall: Slope) -> Finding {
    let level = points.last().map_or(Level::m(0.0), |p| p.invert);
    let says = format!(
        "The pipe leaves the wall at {}; where its outlet is has not been said. It must lie at least 1 in {} lower than that for its distance.",
        case.units.level(level),
        trim(fall.to_one_in(), 0)
    );
    Finding::new(&OUTLET_UNKNOWN, Place::of(&wall.id), says)
}

fn outlet_too_high(case: &DrainCase, wall: &WallLine, outlet: &Target, short: Length) -> Finding {
    let needed = outlet.level - short;
    let says = format!(
        "The outlet at {} is {} too high: laid at 1:{}, the pipe arrives at {}.",
        case.units.level(outlet.level),
        case.units.length(short),
        trim(case.pipe.fall_least.to_one_in(), 0),
        case.units.level(needed)
    );
    let lower = (needed.to_m() * 100.0).floor() / 100.0;
    let change = Adjust { element: "drain".into(), field: "outlet.level".into(), value: format!("{lower:.3} m") };
    Finding::new(&OUTLET_TOO_HIGH, Place::of(&wall.id), says)
        .with_remedy(Remedy::ours(
            format!("The outlet at {} or lower.", case.units.level(Level::m(lower))),
            vec![change],
        ))
        .with_remedy(Remedy::theirs(format!(
            "The wall's lowest board {} higher where it is lowest, if the ground in front allows it.",
            case.units.length(short)
        )))
}

fn fall_small(case: &DrainCase, wall: &WallLine, fall: Slope, arrives: Level) -> Finding {
    let says = format!(
        "To reach the outlet the pipe is laid at 1:{} instead of 1:{}.",
        trim(fall.to_one_in(), 0),
        trim(case.pipe.fall.to_one_in(), 0)
    );
    let lower = (arrives.to_m() * 100.0).floor() / 100.0;
    let change = Adjust { element: "drain".into(), field: "outlet.level".into(), value: format!("{lower:.3} m") };
    Finding::new(&FALL_SMALL, Place::of(&wall.id), says)
        .with_utilisation(case.pipe.fall.to_ratio() / fall.to_ratio())
        .with_remedy(Remedy::ours(
            format!("The outlet at {} or lower.", case.units.level(Level::m(lower))),
            vec![change],
        ))
}
