//! What `drain` must know about each wall, and what its answer means for the dig.

use groundhold_dig as dig;
use groundhold_drain as drain;
use groundhold_quantity::{Length, Level, Volume};
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
    let (Some(runoff), Some(stone)) = (runoff, stone) else { return Err(troubles) };
    let case = drain::DrainCase {
        ground,
        walls: walls.iter().map(line).collect(),
        wanted: w.wanted,
        rain: w.rain.as_ref().map(|(intensity, source)| drain::Rain { intensity: *intensity, source: source.clone() }),
        runoff,
        uphill: (w.uphill > Length::ZERO).then_some(w.uphill),
        groundwater: water(job),
        outlet: w.outlet.map(|(at, level)| drain::Outlet { at, level }),
        pipe: drain::PipeWish { diameter: w.pipe, ..drain::PipeWish::default() },
        bed: drain::Bed::default(),
        zone: drain::ZoneWish::default(),
        soil: drain::soil_grading(soil).copied(),
        stone,
        units: job.about.units,
    };
    Ok(drain::drain(&case))
}

/// The shallowest water seen, before or during the work.
pub(crate) fn water(job: &Job) -> Option<Length> {
    let found = job.record.iter().filter_map(|e| match &e.event {
        Event::Find(Find::Water { depth, .. }) => Some(*depth),
        _ => None,
    });
    found.chain(job.ground.water_depth).reduce(Length::min)
}

pub(crate) fn line(wall: &WallPlan) -> drain::WallLine {
    let stations = wall.case.stations.iter().map(|s| drain::Station {
        chainage: s.chainage,
        at: s.at,
        behind: s.behind,
        front: s.front,
        base: base_at(wall, s.chainage).unwrap_or(s.front),
        facing: s.facing,
    });
    drain::WallLine { id: wall.id.clone(), stations: stations.collect() }
}

/// Underside of the lowest board at a chainage.
fn base_at(wall: &WallPlan, chainage: Length) -> Option<Level> {
    let bay = wall.layout.bays.iter().find(|b| chainage <= b.chainage.1).or(wall.layout.bays.last())?;
    Some(bay.bottom)
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
    dug.map(|p| dig::Trench {
        what: format!("outlet pipe of {}", p.wall),
        dug: p.trench.dug,
        put_back: p.trench.put_back,
        stone: p.trench.stone,
    })
    .collect()
}
