//! Where does the pipe of a wall lie, down to its outlet, and how large is it?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Flow, Length, Level, Point, Slope, Volume, trim};
use groundhold_working::Trace;

use crate::findings::{FALL_SMALL, OUTLET_TOO_HIGH, OUTLET_UNKNOWN};
use crate::grade::grade_line;
use crate::outlet_leg::Leg;
use crate::pipe_size::size;
use crate::way::{downhill_way, fall_that_reaches, points};
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
    /// The trench to the outlet.
    pub trench: PipeTrench,
    /// Workings: capacity, depth of flow.
    pub traces: Vec<Trace>,
}

/// The pipe behind a wall that has been checked to be one, with what stands against it.
pub(crate) fn pipe_run(case: &DrainCase, wall: &WallLine, flow: Option<Flow>) -> (PipeRun, Vec<Finding>) {
    let mut said = vec![];
    let way = downhill_way(case, wall);
    let (fall, shortage) = fall_that_reaches(case, &way);
    let line = grade_line(&way.base, fall.to_ratio());
    let arrives_wished = way.arrives(case.pipe.fall);
    let points = points(&way, &line, fall, shortage.is_none(), case.outlet);
    match (case.outlet, shortage) {
        (None, _) => said.push(outlet_unknown(case, wall, &points, fall)),
        (Some(o), Some(short)) => said.push(outlet_too_high(case, wall, o, short)),
        (Some(_), None) if fall < case.pipe.fall => said.push(fall_small(case, wall, fall, arrives_wished)),
        _ => {}
    }
    let least = points
        .windows(2)
        .map(|w| (w[0].invert - w[1].invert) / (w[1].chainage - w[0].chainage))
        .fold(f64::INFINITY, f64::min);
    let least = Slope::ratio(if least.is_finite() { least } else { fall.to_ratio() });
    let sized = size(case, wall, flow, least, &mut said);
    let leg = Leg::of(&points);
    let trench = leg.trench(case, sized.diameter);
    said.extend(leg.remarks(case, wall, &trench));
    let length = points.last().map_or(Length::ZERO, |p| p.chainage);
    let run = PipeRun {
        wall: wall.id.clone(),
        fall: least,
        diameter: sized.diameter,
        material: case.pipe.material,
        flow,
        capacity: sized.capacity,
        utilisation: sized.utilisation,
        filled: sized.filled,
        velocity_m_per_s: sized.velocity,
        length,
        behind_wall: wall.length(),
        outlet: case.outlet,
        arrives: arrives_wished,
        trench,
        traces: sized.traces,
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

fn outlet_too_high(case: &DrainCase, wall: &WallLine, outlet: Outlet, short: Length) -> Finding {
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
