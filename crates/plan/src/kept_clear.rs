//! Where does the work bury a cover that must stay open, or bank soil against something that is not built to hold it?

use groundhold_finding::{Finding, Kind, Place, Remedy, Severity};
use groundhold_quantity::{Length, Point, Vector, math};
use groundhold_shape::Shaped;
use groundhold_surface::Tin;

use crate::job::{Job, Near, NearKind};
use crate::near::along;
use crate::walls::distance_to_line;

/// A manhole or another cover lies in the work.
pub static COVER_KEPT_OPEN: Kind = Kind {
    code: "N-008",
    name: "access cover in the work",
    severity: Severity::Ask,
    why: "A drain that cannot be rodded floods the next house; a buried chamber is found again by a machine.",
    source: "common practice, no source; the owner of the chamber says what it needs",
    when_wrong: "its cover is lifted or lowered to the new ground as its owner agreed",
};

/// Soil is banked against a fence or a wall that is not of this plan.
pub static SOIL_AGAINST: Kind = Kind {
    code: "N-009",
    name: "soil against a fence or a wall of others",
    severity: Severity::Ask,
    why: "A fence is not a retaining wall: boards rot, posts lean, and the neighbour's side pays.",
    source: "common practice, no source",
    when_wrong: "an engineer found that it was built to hold that much",
};

/// A cover needs so much free and level ground round it. Common practice, no source.
const ROOM: f64 = 1.0;
/// Soil this much higher than before counts as banked against. Common practice, no source.
const BANKED: Length = Length::mm(50.0);
/// How far beside a line the new ground is looked at.
const BESIDE: f64 = 0.15;
/// Words for covers that must stay open.
const COVERS: [&str; 5] = ["manhole", "inspection", "chamber", "access cover", "valve"];

/// Covers and fences that the work comes too near to.
pub(crate) fn check(job: &Job, ground: &Tin, shaped: &Shaped) -> Vec<Finding> {
    job.near
        .iter()
        .filter_map(|near| match &near.kind {
            NearKind::Other(what) if COVERS.iter().any(|c| what.contains(c)) => cover(job, near, what, shaped),
            NearKind::Footing(what) if near.holds.is_none() => banked(job, near, what, ground, shaped),
            _ => None,
        })
        .collect()
}

fn cover(job: &Job, near: &Near, what: &str, shaped: &Shaped) -> Option<Finding> {
    let units = job.about.units;
    let at = *near.line.first()?;
    let keep = near.clear.unwrap_or(Length::m(ROOM));
    let touched = |p: Point| shaped.ground_at(p).map(|g| g.of.clone());
    let round = (0..16).map(|i| std::f64::consts::TAU * f64::from(i) / 16.0);
    let round = round.map(|a| at + Vector::m(math::cos(a), math::sin(a)) * keep.to_m());
    let element = touched(at).or_else(|| round.into_iter().find_map(touched)).or_else(|| {
        let wall = shaped.walls.iter().find(|w| {
            let line: Vec<Point> = w.stations.iter().map(|s| s.at).collect();
            distance_to_line(at, &line) < keep
        });
        wall.map(|w| w.id.clone())
    })?;
    let says = format!(
        "{element} comes within {} of {} ({what}): its cover stays in sight, at the level of the ground and free to lift.",
        units.length(keep),
        near.id
    );
    let raise = Remedy::theirs(
        "Have its frame set to the new ground, and keep it out of walls, steps and paving that cannot be lifted.",
    );
    Some(Finding::new(&COVER_KEPT_OPEN, Place::of(&near.id), says).with_remedy(raise))
}

fn banked(job: &Job, near: &Near, what: &str, ground: &Tin, shaped: &Shaped) -> Option<Finding> {
    let units = job.about.units;
    let mut most: Option<(Length, String)> = None;
    for p in along(&near.line) {
        for a in (0..8).map(|i| std::f64::consts::TAU * f64::from(i) / 8.0) {
            let q = p + Vector::m(math::cos(a), math::sin(a)) * BESIDE;
            let Some(piece) = shaped.ground_at(q) else { continue };
            let Some(before) = ground.level_at(q) else { continue };
            let higher = piece.facet.plane.level_at(q) - before;
            if higher > BANKED && most.as_ref().is_none_or(|(m, _)| higher > *m) {
                most = Some((higher, piece.of.clone()));
            }
        }
    }
    let (higher, element) = most?;
    let says = format!(
        "{element} raises the ground by {} against {} ({what}), which is not there to hold soil.",
        units.length(higher),
        near.id
    );
    let apart = Remedy::theirs(format!(
        "Hold the soil by a wall of its own with room between, or keep the ground at {} as it is.",
        near.id
    ));
    Some(Finding::new(&SOIL_AGAINST, Place::of(&near.id), says).with_remedy(apart))
}
