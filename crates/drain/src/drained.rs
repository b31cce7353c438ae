//! The sum of it: for each wall its catchment, flow, pipe, stone and filter, and what stands against them.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Area, Flow, Length, Level};
use groundhold_working::Trace;

use crate::arrival::{Arrival, arrival};
use crate::findings::{
    CATCHMENT_CUT, DISCHARGE, FABRIC_NEEDED, GRADING_UNKNOWN, GROUNDWATER, NO_DRAIN, NOT_DRAINABLE, RAIN_UNKNOWN,
    STONE_TOO_FINE,
};
use crate::network::{network, outlets};
use crate::soakaway::soakaway;
use crate::swale::{dug, lines};
use crate::weep::{blocked, weeps_of};
use crate::zone::zone;
use crate::{
    Catchment, DrainCase, FilterMatch, PipeRun, Soakaway, Swale, WallLine, Weeps, Zone, catchments, filter_match,
    rational,
};

/// Edge of the survey over which less than this flows in is not worth a word.
const EDGE_NOTICED: Length = Length::mm(200.0);

/// Level to which water may stand behind a wall when its drain is blocked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blocked {
    /// Along the wall.
    pub chainage: Length,
    /// The level: above the weep holes as high as lets them pass the flow; the finished ground behind where there are none,
    /// since a board wall has no spill below it.
    pub level: Level,
}

/// Everything about one wall's water but its pipe.
#[derive(Debug, Clone, PartialEq)]
pub struct WallDrain {
    /// The wall.
    pub wall: String,
    /// Ground that drains to it.
    pub catchment: Catchment,
    /// Flow in the design rain; `None` where no rain was given.
    pub flow: Option<Flow>,
    /// Working of the flow.
    pub flow_trace: Option<Trace>,
    /// How long the water needs to the wall; `None` where no ground drains to it.
    pub arrival: Option<Arrival>,
    /// Weep holes, where they are wished for.
    pub weeps: Option<Weeps>,
    /// Stone, cap and fabric; `None` where the drain is left out.
    pub zone: Option<Zone>,
    /// How stone and soil match; `None` where the soil's grading is not known or the drain is left out.
    pub filter: Option<FilterMatch>,
    /// Where water may stand when the drain is blocked.
    pub blocked: Vec<Blocked>,
}

impl WallDrain {
    /// The water level of the blocked drain at a chainage, in a straight line between stations.
    pub fn blocked_level(&self, chainage: Length) -> Option<Level> {
        let line: Vec<(f64, f64)> = self.blocked.iter().map(|b| (b.chainage.to_m(), b.level.to_m())).collect();
        (!line.is_empty()).then(|| Level::m(crate::linear::along(&line, chainage.to_m())))
    }
}

/// Where the water goes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drained {
    /// Wall by wall, in the order given; walls that are not understood are left out.
    pub walls: Vec<WallDrain>,
    /// One pipe for each drained wall.
    pub pipes: Vec<PipeRun>,
    /// Swales above walls.
    pub swales: Vec<Swale>,
    /// The soakaway, where one is wished for and can be sized.
    pub soakaway: Option<Soakaway>,
    /// What stands against it.
    pub findings: Vec<Finding>,
}

impl Drained {
    /// A wall by its id.
    pub fn wall(&self, id: &str) -> Option<&WallDrain> {
        self.walls.iter().find(|w| w.wall == id)
    }
    /// The pipe of a wall by its id.
    pub fn pipe(&self, id: &str) -> Option<&PipeRun> {
        self.pipes.iter().find(|p| p.wall == id)
    }
}

/// Works out where the water goes. A wall that is not understood gives a finding at `stop` and is left out.
pub fn drain(case: &DrainCase) -> Drained {
    let mut out = Drained::default();
    if let Some(why) = settings_wrong(case) {
        out.findings.push(Finding::new(&NOT_DRAINABLE, Place::of("drain"), why));
        return out;
    }
    let mut case = case.clone();
    case.walls.retain(|w| match wall_wrong(w) {
        None => true,
        Some(why) => {
            out.findings.push(Finding::new(&NOT_DRAINABLE, Place::of(&w.id), why));
            false
        }
    });
    let (swales, said) = lines(&case);
    out.findings.extend(said);
    let all: Vec<WallLine> = case.walls.iter().cloned().chain(swales.iter().map(|s| s.as_wall())).collect();
    let areas = catchments(case.ground, &all, case.uphill);
    let drains: Vec<WallDrain> =
        case.walls.iter().zip(&areas).map(|(w, c)| one_wall(&case, w, *c, &mut out.findings)).collect();
    for (swale, catchment) in swales.into_iter().zip(areas.iter().skip(case.walls.len())) {
        let flow = flow_to(&case, catchment).ok().flatten();
        let (made, said) = dug(swale, *catchment, flow.as_ref().map(|f| f.1.clone()), flow.map(|f| (f.0, f.2)));
        out.findings.extend(said);
        out.swales.push(made);
    }
    out.walls = drains;
    if case.wanted {
        pipes(&case, &mut out);
    }
    out.findings.extend(whole_job(&case, &out));
    out
}

/// The pipes of all walls, the stone around them, and the soakaway that they end in.
fn pipes(case: &DrainCase, out: &mut Drained) {
    let flows: Vec<Option<Flow>> = out.walls.iter().map(|w| w.flow).collect();
    let (pipes, said) = network(case, &flows);
    out.findings.extend(said);
    for (wall, drain) in case.walls.iter().zip(&mut out.walls) {
        let pipe = pipes.iter().find(|p| p.wall == wall.id);
        let line = pipe.map(|p| {
            let mut line: Vec<(f64, f64)> =
                p.points.iter().filter_map(|q| q.wall_chainage.map(|c| (c.to_m(), q.invert.to_m()))).collect();
            line.sort_by(|a, b| a.0.total_cmp(&b.0));
            (line, p.diameter)
        });
        let invert = line.as_ref().map(|(l, d)| (l.as_slice(), *d));
        drain.zone = Some(zone(wall, &case.zone, &case.bed, invert, case.ground));
        drain.filter = case.soil.as_ref().map(|soil| filter_match(soil, &case.stone));
    }
    if let Some(wish) = &case.soakaway {
        let ends_there = |p: &&PipeRun| p.outlet.is_some_and(|o| o.at == wish.at);
        let sources = pipes.iter().filter(ends_there).flat_map(|p| std::iter::once(&p.wall).chain(&p.receives));
        let drained = |id: &String| out.walls.iter().find(|w| w.wall == *id).map_or(Area::ZERO, |w| w.catchment.area());
        let runs_off = sources.map(drained).sum::<Area>().to_m2() * case.runoff.high;
        let (found, said) = soakaway(case, runs_off);
        out.soakaway = found;
        out.findings.extend(said);
    }
    out.pipes = pipes;
}

fn one_wall(case: &DrainCase, wall: &WallLine, catchment: Catchment, said: &mut Vec<Finding>) -> WallDrain {
    let here = || Place::of(&wall.id);
    if catchment.cut_edge > EDGE_NOTICED && case.uphill.is_none() {
        let says = format!(
            "The ground goes on rising beyond the survey over {} of its edge; {} are measured, and what lies above is not in the flow.",
            case.units.run(catchment.cut_edge),
            case.units.area(catchment.surveyed)
        );
        said.push(Finding::new(&CATCHMENT_CUT, here(), says));
    }
    let found = match flow_to(case, &catchment) {
        Ok(found) => found,
        Err(why) => {
            said.push(Finding::new(&NOT_DRAINABLE, here(), why));
            None
        }
    };
    if let Some(depth) = case.groundwater
        && let Some(s) = wall.stations.iter().find(|s| s.behind - depth > s.base)
    {
        let says = format!(
            "Water was seen {} below the ground, {} above the wall's base; it is not in the flow from rain.",
            case.units.length(depth),
            case.units.length(s.behind - depth - s.base)
        );
        let place = Place::on(&wall.id, format!("chainage {}", case.units.run(s.chainage)));
        said.push(Finding::new(&GROUNDWATER, place, says));
    }
    let flow = found.as_ref().map(|f| f.0);
    let (weeps, short) = case.weeps.as_ref().map_or((None, None), |w| weeps_of(case, wall, w, flow));
    said.extend(short);
    let level = |s: &crate::Station| blocked(wall, s, case.weeps.as_ref(), flow);
    if !case.wanted {
        let says = format!(
            "{} is planned without a drain; it must carry water to the ground behind it, up to {} high.",
            wall.id,
            case.units.length(wall.retained_most())
        );
        said.push(Finding::new(&NO_DRAIN, here(), says));
    }
    let arrival = (catchment.way > Length::ZERO).then(|| arrival(catchment.way, catchment.fall, case.runoff.high));
    WallDrain {
        wall: wall.id.clone(),
        catchment,
        flow,
        flow_trace: found.map(|f| f.2),
        arrival,
        weeps,
        zone: None,
        filter: None,
        blocked: wall.stations.iter().map(|s| Blocked { chainage: s.chainage, level: level(s) }).collect(),
    }
}

/// Flow from a catchment in the design rain of the duration that its water needs, that duration, and the working.
fn flow_to(case: &DrainCase, catchment: &Catchment) -> Result<Option<(Flow, Arrival, Trace)>, String> {
    let Some(rain) = &case.rain else { return Ok(None) };
    let area = catchment.area().max(Area::mm2(1.0));
    let needs = arrival(catchment.way, catchment.fall, case.runoff.high);
    let (flow, trace) = rational(case.runoff.high, area, rain.at(needs.time)).map_err(|e| e.to_string())?;
    Ok(Some((flow, needs, trace)))
}

/// What is said once for all walls.
fn whole_job(case: &DrainCase, out: &Drained) -> Vec<Finding> {
    let mut said = vec![];
    if out.pipes.is_empty() {
        return said;
    }
    let drain = || Place::of("drain");
    if case.rain.is_none() {
        let says = "No design rain is given; the pipe is the usual one, and its reserve is not known.";
        said.push(Finding::new(&RAIN_UNKNOWN, drain(), says));
    }
    match (&case.soil, out.walls.iter().find_map(|w| w.filter.as_ref())) {
        (Some(soil), Some(m)) => {
            if !m.keeps_back {
                let says = format!(
                    "{} stone (D15 {} mm) does not keep {} back (at most {} mm): fabric with openings of {} mm at most between them.",
                    case.stone.name,
                    groundhold_quantity::trim(m.stone_d15.to_mm(), 2),
                    soil.name,
                    groundhold_quantity::trim(m.d15_most.to_mm(), 2),
                    groundhold_quantity::trim(m.fabric_opening.to_mm(), 2)
                );
                said.push(Finding::new(&FABRIC_NEEDED, drain(), says).with_trace(m.traces[0].clone()));
            }
            if !m.drains {
                let says = format!(
                    "{} (D15 {} mm) is finer than {} mm and does not drain {}.",
                    case.stone.name,
                    groundhold_quantity::trim(m.stone_d15.to_mm(), 2),
                    groundhold_quantity::trim(m.d15_least.to_mm(), 2),
                    soil.name
                );
                said.push(Finding::new(&STONE_TOO_FINE, drain(), says).with_trace(m.traces[0].clone()));
            }
        }
        _ => {
            let says = "The soil's grading is not known, so fabric is kept between soil and stone.";
            said.push(Finding::new(&GRADING_UNKNOWN, drain(), says));
        }
    }
    let open = outlets(case).into_iter().filter(|o| case.soakaway.as_ref().is_none_or(|s| s.at != o.at));
    for o in open {
        let says = format!(
            "Water leaves at x {}, y {}: say where it goes from there, and ask whoever it reaches.",
            case.units.run(Length::m(o.at.x)),
            case.units.run(Length::m(o.at.y))
        );
        said.push(Finding::new(&DISCHARGE, drain(), says));
    }
    said
}

fn settings_wrong(case: &DrainCase) -> Option<String> {
    let length = |what: &str, l: Length, most: f64| {
        (!(0.0..=most).contains(&l.to_m())).then(|| format!("{what} is {} m; expected 0 m to {most} m.", l.to_m()))
    };
    let fall = |what: &str, s: f64| {
        (!(1e-4..=1.0).contains(&s)).then(|| format!("{what} is {s}; expected a slope from 1:10000 to 1:1."))
    };
    let outlet = outlets(case).into_iter().find(|o| !(o.at.x.is_finite() && o.at.y.is_finite() && o.level.is_finite()));
    length("the width of the drainage zone", case.zone.width.unwrap_or(Length::ZERO), 5.0)
        .or_else(|| length("the soil cap", case.zone.cap, 5.0))
        .or_else(|| length("the lap of the fabric", case.zone.lap, 5.0))
        .or_else(|| length("the roll of fabric", case.zone.roll, 100.0))
        .or_else(|| length("the bed under the pipe", case.bed.under, 2.0))
        .or_else(|| length("the stone over the pipe", case.bed.over, 2.0))
        .or_else(|| length("the width of the pipe trench", case.bed.trench, 5.0))
        .or_else(|| length("the pipe's distance below the wall's base", case.pipe.below_base, 5.0))
        .or_else(|| length("the ground beyond the survey", case.uphill.unwrap_or(Length::ZERO), 10_000.0))
        .or_else(|| length("the diameter of the pipe", case.pipe.diameter.unwrap_or(Length::ZERO), 5.0))
        .or_else(|| fall("the fall wished for", case.pipe.fall.to_ratio()))
        .or_else(|| fall("the least fall", case.pipe.fall_least.to_ratio()))
        .or_else(|| case.rain.as_ref().and_then(crate::Rain::wrong))
        .or_else(|| case.swales.iter().find_map(swale_wrong))
        .or_else(|| outlet.map(|_| "the outlet is not an ordinary place with an ordinary level.".into()))
}

fn swale_wrong(s: &crate::SwaleWish) -> Option<String> {
    let within = |what: &str, v: f64, least: f64, most: f64| {
        (!(least..=most).contains(&v))
            .then(|| format!("{what} of the swale above {} is {v}; expected {least} to {most}.", s.above))
    };
    within("the bed (m)", s.bed.to_m(), 0.0, 10.0)
        .or_else(|| within("the run of the sides for one up", s.side, 0.25, 20.0))
        .or_else(|| within("the fall", s.fall.to_ratio(), 1e-3, 0.5))
        .or_else(|| within("the freeboard (m)", s.freeboard.to_m(), 0.0, 2.0))
        .or_else(|| within("the distance from the wall (m)", s.offset.to_m(), 0.0, 100.0))
}

fn wall_wrong(wall: &WallLine) -> Option<String> {
    if wall.stations.len() < 2 {
        return Some(format!("a wall needs at least two stations; this one has {}.", wall.stations.len()));
    }
    for (i, s) in wall.stations.iter().enumerate() {
        let figures = [s.behind.to_m(), s.front.to_m(), s.base.to_m(), s.chainage.to_m()];
        let places = [s.at.x, s.at.y, s.facing.x, s.facing.y];
        if !(figures.iter().all(|v| v.abs() <= 1e5) && places.iter().all(|v| v.abs() <= 1e8)) {
            return Some(format!(
                "station {} has a place, chainage or level that is not an ordinary number (levels and chainages to 100 km).",
                i + 1
            ));
        }
    }
    let back = wall.stations.windows(2).position(|w| w[1].chainage < w[0].chainage)?;
    Some(format!("station {} lies before the one in front of it; chainages must not fall.", back + 2))
}
