//! What `drain` must know about each wall, and what its answer means for the dig.

use groundhold_dig as dig;
use groundhold_drain as drain;
use groundhold_quantity::{Length, Volume};
use groundhold_surface::Tin;

use crate::job::{Event, Find, Job};
use crate::trouble::{Part, Trouble};
use crate::walls::WallPlan;

/// Runoff taken where the job names no surface: the wettest of the unpaved rows of the table.
const RUNOFF: &str = "lawn heavy steep";
/// Drain fill taken where the job names none.
const FILL: &str = "10-20 mm";

/// Works out where the water goes.
///
/// # Errors
/// Words of the job that no table knows.
pub(crate) fn drained(job: &Job, ground: &Tin, walls: &[WallPlan], soil: &str) -> Result<drain::Drained, Vec<Trouble>> {
    let w = &job.drain;
    let surface = if w.surface.is_empty() { RUNOFF } else { &w.surface };
    let fill = if w.fill.is_empty() { FILL } else { &w.fill };
    let mut troubles = vec![];
    let runoff = drain::runoff(surface).copied();
    if runoff.is_none() {
        let known: Vec<&str> = drain::RUNOFF.iter().map(|r| r.surface).collect();
        troubles.push(Trouble::new(
            Part::Choice("drain.surface"),
            format!("found `{surface}`, expected words of a row: {}", known.join("; ")),
        ));
    }
    let stone = drain::drain_fill(fill).copied();
    if stone.is_none() {
        let known: Vec<&str> = drain::DRAIN_FILLS.iter().map(|r| r.name).collect();
        troubles.push(Trouble::new(
            Part::Choice("drain.fill"),
            format!("found `{fill}`, expected one of {}", known.join(", ")),
        ));
    }
    let grading = match job.ground.sieves.as_slice() {
        [] => drain::soil_grading(soil).copied(),
        sieves => {
            drain::grading_of(sieves).map_err(|e| troubles.push(Trouble::new(Part::Choice("ground.sieves"), e))).ok()
        }
    };
    for s in &w.swales {
        if !job.walls.iter().any(|j| j.id == s.above) {
            let says = format!("a swale is wished for above `{}`, which is no wall of this job", s.above);
            troubles.push(Trouble::new(Part::Choice("drain.swale"), says));
        }
    }
    let (Some(runoff), Some(stone), true) = (runoff, stone, troubles.is_empty()) else { return Err(troubles) };
    let case = drain::DrainCase {
        ground,
        walls: walls.iter().map(line).collect(),
        wanted: w.wanted,
        rain: rain(job),
        runoff,
        uphill: (w.uphill > Length::ZERO).then_some(w.uphill),
        groundwater: water(job),
        outlets: w
            .outlet
            .iter()
            .chain(&w.more_outlets)
            .map(|(at, level)| drain::Outlet { at: *at, level: *level })
            .collect(),
        soakaway: w.soakaway.clone(),
        swales: swales(job, walls),
        weeps: w.weeps,
        footings: footings(job),
        pipe: drain::PipeWish { diameter: w.pipe, ..drain::PipeWish::default() },
        bed: drain::Bed::default(),
        zone: drain::ZoneWish::default(),
        soil: grading,
        stone,
        units: job.about.units,
    };
    Ok(drain::drain(&case))
}

fn rain(job: &Job) -> Option<drain::Rain> {
    let (intensity, source) = job.drain.rain.as_ref()?;
    Some(drain::Rain { intensity: *intensity, source: source.clone(), curve: job.drain.rain_curve.clone() })
}

/// The swales, each above the first run of its wall.
fn swales(job: &Job, walls: &[WallPlan]) -> Vec<drain::SwaleWish> {
    let run = |s: &drain::SwaleWish| walls.iter().find(|w| w.of == s.above).map(|w| w.id.clone());
    let named = job.drain.swales.iter().filter_map(|s| Some(drain::SwaleWish { above: run(s)?, ..s.clone() }));
    named.collect()
}

fn footings(job: &Job) -> Vec<(String, Vec<groundhold_quantity::Point>)> {
    let all = job.near.iter().filter_map(|n| match &n.kind {
        crate::job::NearKind::Footing(what) => Some((format!("{} ({what})", n.id), n.line.clone())),
        _ => None,
    });
    all.collect()
}

/// How high water may stand behind each wall whose drain is blocked, as a share of what it retains; all of it for a wall that
/// is not named. Only weep holes let it stand lower.
pub(crate) fn blocked(
    job: &Job,
    ground: &Tin,
    shaped: &groundhold_shape::Shaped,
) -> Vec<(String, groundhold_quantity::Share)> {
    let surface = if job.drain.surface.is_empty() { RUNOFF } else { &job.drain.surface };
    let (Some(weeps), Some(rain), Some(runoff)) = (&job.drain.weeps, rain(job), drain::runoff(surface)) else {
        return vec![];
    };
    let lines: Vec<drain::WallLine> = shaped.walls.iter().filter(|w| w.stations.len() >= 2).map(profile).collect();
    let uphill = (job.drain.uphill > Length::ZERO).then_some(job.drain.uphill);
    let areas = drain::catchments(ground, &lines, uphill);
    let share = |(line, c): (&drain::WallLine, drain::Catchment)| {
        let time = drain::arrival(c.way, c.fall, runoff.high).time;
        let flow = drain::rational(runoff.high, c.area(), rain.at(time)).ok().map(|f| f.0);
        (line.id.clone(), drain::blocked_share(line, Some(weeps), flow))
    };
    lines.iter().zip(areas).map(share).collect()
}

fn profile(wall: &groundhold_shape::WallProfile) -> drain::WallLine {
    let stations = wall.stations.iter().map(|s| drain::Station {
        chainage: s.chainage,
        at: s.at,
        behind: s.behind,
        front: s.front,
        base: s.front,
        facing: s.facing,
    });
    drain::WallLine { id: wall.id.clone(), stations: stations.collect() }
}

/// The shallowest water seen, before or during the work.
pub(crate) fn water(job: &Job) -> Option<Length> {
    let found = job.record.iter().filter_map(|e| match &e.event {
        Event::Find(Find::Water { depth, .. }) => Some(*depth),
        _ => None,
    });
    found.chain(job.ground.water_depth).reduce(Length::min)
}

/// The wall as the drain sees it: from the foot of its face back to where drain stone can rest against it.
pub(crate) fn line(wall: &WallPlan) -> drain::WallLine {
    let stations = wall.case.stations.iter().map(|s| {
        let strip = wall.layout.strip(s.chainage);
        let back = strip.map_or(Length::ZERO, |b| b.back);
        drain::Station {
            chainage: s.chainage,
            at: s.at - s.facing * back.to_m(),
            behind: s.behind,
            front: s.front,
            base: strip.map_or(s.front, |b| b.foot),
            facing: s.facing,
        }
    });
    drain::WallLine { id: wall.id.clone(), stations: stations.collect() }
}

/// What the drainage zones move.
pub(crate) fn zones(drained: &drain::Drained) -> Vec<dig::WallDug> {
    let zones = drained.walls.iter().filter_map(|w| Some((w, w.zone.as_ref()?)));
    zones
        .map(|(w, z)| dig::WallDug {
            wall: w.wall.clone(),
            zone_in_ground: z.in_ground,
            zone_in_fill: z.in_fill,
            cap: z.cap,
            stone: z.stone,
            working_room: Volume::ZERO,
        })
        .collect()
}

/// The trenches from the walls to the outlet.
pub(crate) fn trenches(drained: &drain::Drained) -> Vec<dig::Trench> {
    let dug = drained.pipes.iter().filter(|p| p.trench.dug > Volume::ZERO);
    let pipes = dug.map(|p| dig::Trench {
        what: format!("outlet pipe of {}", p.wall),
        deepest: p.trench.deepest,
        dug: p.trench.dug,
        put_back: p.trench.put_back,
        stone: p.trench.stone,
    });
    let swales = drained.swales.iter().map(|s| dig::Trench {
        what: format!("swale above {}", s.wish.above),
        deepest: Length::ZERO,
        dug: s.dug,
        put_back: Volume::ZERO,
        stone: Volume::ZERO,
    });
    let soakaway = drained.soakaway.iter().map(|s| dig::Trench {
        what: "soakaway".into(),
        deepest: s.wish.depth,
        dug: s.dug,
        put_back: Volume::ZERO,
        // Stone fills it; crates leave most of it empty.
        stone: if s.wish.empty.to_fraction() < 0.6 { s.dug } else { Volume::ZERO },
    });
    pipes.chain(swales).chain(soakaway).collect()
}
