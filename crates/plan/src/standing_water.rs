//! Does rain stand on the finished ground, and does the ground fall towards a building?

use groundhold_drain::{Dam, Drained, FALLS_TOWARDS, Pool, WATER_STANDS, pools};
use groundhold_finding::{Finding, Place, Remedy, Severity};
use groundhold_quantity::{Length, Level, Point, Slope, Vector, math};
use groundhold_shape::Shaped;
use groundhold_surface::Tin;

use crate::job::{Job, NearKind};
use crate::near::along;
use crate::walls::{WallPlan, distance_to_line};

/// How far round the works water is looked for, m.
const ROUND: f64 = 1.0;
/// Shallower pools are not worth a word. Common practice, no source.
const SHALLOW: Length = Length::mm(20.0);
/// A pool this near to a building stands against it.
const AGAINST: Length = Length::mm(600.0);

/// Every pool on the finished ground and just round it. A swale takes away what comes from above it; the ground keeps its shape
/// here, so that a hollow shows whether or not much water comes to it.
pub(crate) fn standing(ground: &Tin, shaped: &Shaped, walls: &[WallPlan]) -> Vec<Pool> {
    let corners = shaped.grounds.iter().flat_map(|g| g.facet.ring.iter());
    let ends = |of: fn(&Point) -> f64| {
        corners.clone().map(of).fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(v), b.max(v)))
    };
    let ((x0, x1), (y0, y1)) = (ends(|p| p.x), ends(|p| p.y));
    if !(x0 < x1 && y0 < y1) {
        return vec![];
    }
    let level = |p: Point| shaped.level_at(ground, p);
    let dams: Vec<Dam> = walls.iter().map(dam).collect();
    let mut found = pools(Point::m(x0 - ROUND, y0 - ROUND), Point::m(x1 + ROUND, y1 + ROUND), &level, &dams);
    found.retain(|p| p.depth >= SHALLOW);
    found
}

/// A wall as water sees it: the tops of its bays.
fn dam(w: &WallPlan) -> Dam {
    let top = |c: Length| {
        let bay = w.layout.bays.iter().find(|b| c <= b.chainage.1).or(w.layout.bays.last());
        bay.map(|b| b.top)
    };
    let points = w.case.stations.iter().map(|s| (s.at, top(s.chainage).unwrap_or(s.behind).max(s.behind)));
    Dam { id: w.of.clone(), top: points.collect() }
}

/// What there is to say about the pools and about ground that falls towards buildings.
pub(crate) fn check(job: &Job, ground: &Tin, shaped: &Shaped, drained: &Drained, found: &[Pool]) -> Vec<Finding> {
    let mut said: Vec<Finding> = found.iter().map(|p| pool(job, shaped, drained, p)).collect();
    said.extend(job.near.iter().filter_map(|n| match &n.kind {
        NearKind::Footing(what) if n.holds.is_none() && is_building(what) => {
            falls(job, &n.id, what, &n.line, ground, shaped)
        }
        _ => None,
    }));
    said
}

fn is_building(what: &str) -> bool {
    ["house", "building", "garage", "shed", "extension"].iter().any(|w| what.contains(w))
}

fn pool(job: &Job, shaped: &Shaped, drained: &Drained, p: &Pool) -> Finding {
    let units = job.about.units;
    let building = job.near.iter().find(|n| match &n.kind {
        NearKind::Footing(what) => is_building(what) && distance_to_line(p.at, &n.line) <= AGAINST,
        _ => false,
    });
    let element = p.against.first().cloned().or_else(|| shaped.ground_at(p.at).map(|g| g.of.clone()));
    let against = match (building, p.against.as_slice()) {
        (Some(n), _) => format!(" against {}", n.id),
        (None, []) => String::new(),
        (None, walls) => format!(" against {}", walls.join(" and ")),
    };
    let says = format!(
        "Rain stands{against} at x {}, y {}: up to {} deep over {}, {} in all, before it runs on at {}.",
        units.run(Length::m(p.at.x)),
        units.run(Length::m(p.at.y)),
        units.length(p.depth),
        units.area(p.area),
        units.volume(p.volume),
        units.level(p.level)
    );
    let weight = match (building, p.against.is_empty()) {
        (Some(_), _) => Severity::Stop,
        (None, false) => Severity::Watch,
        (None, true) => Severity::Note,
    };
    let swale = p.against.iter().any(|w| drained.swales.iter().any(|s| s.wish.above == *w));
    let remedy = if swale || p.against.is_empty() {
        format!("Fill the hollow to {}, or give it a gully with a pipe.", units.level(p.level))
    } else {
        format!(
            "Grade the ground there up to {} so that it falls along the wall, or lead the water away by a swale above it.",
            units.level(p.level)
        )
    };
    Finding::new(&WATER_STANDS, Place { element: element.unwrap_or_default(), on: String::new() }, says)
        .weighing(weight)
        .with_remedy(Remedy::theirs(remedy))
}

/// Distance over which the ground should fall away from a building, and the fall: US International Residential Code,
/// R401.3 (6 in within 10 ft), from memory.
const AWAY: (f64, Slope) = (3.048, Slope::ratio(0.5 / 10.0));
/// Where the ground is first looked at beside a building, m.
const BESIDE: f64 = 0.15;

/// The worst place round a building where finished ground does not fall away from it.
fn falls(job: &Job, id: &str, what: &str, line: &[Point], ground: &Tin, shaped: &Shaped) -> Option<Finding> {
    let units = job.about.units;
    let mut worst: Option<(Slope, Point, Level)> = None;
    for p in along(line) {
        for a in (0..8).map(|i| std::f64::consts::TAU * f64::from(i) / 8.0) {
            let out = Vector::m(math::cos(a), math::sin(a));
            let (near, far) = (p + out * BESIDE, p + out * AWAY.0);
            // Only what points away from the building, and only ground that this job makes.
            if distance_to_line(far, line).to_m() < AWAY.0 - 1e-6 || shaped.ground_at(near).is_none() {
                continue;
            }
            let (Some(by), Some(off)) = (shaped.level_at(ground, near), shaped.level_at(ground, far)) else { continue };
            let fall = Slope::ratio((by - off).to_m() / (AWAY.0 - BESIDE));
            if fall < AWAY.1 && worst.as_ref().is_none_or(|w| fall < w.0) {
                worst = Some((fall, near, by));
            }
        }
    }
    let (fall, at, by) = worst?;
    let how = if fall < Slope::LEVEL {
        format!("rises away from it at {}", units.slope(-fall))
    } else {
        "does not fall away enough".into()
    };
    let says = format!(
        "At x {}, y {} the finished ground beside {id} ({what}) {how}; it should fall {} over {}.",
        units.run(Length::m(at.x)),
        units.run(Length::m(at.y)),
        units.slope(AWAY.1),
        units.run(Length::m(AWAY.0))
    );
    let needed = Length::m((AWAY.1 - fall).to_ratio() * (AWAY.0 - BESIDE));
    let element = shaped.ground_at(at).map(|g| g.of.clone()).unwrap_or_default();
    let lower = format!(
        "Lower the ground {} away by {} (beside the building it lies at {}), or cut a channel along the wall.",
        units.run(Length::m(AWAY.0)),
        units.length(needed),
        units.level(by)
    );
    let weight = if fall < Slope::LEVEL { Severity::Ask } else { Severity::Watch };
    Some(Finding::new(&FALLS_TOWARDS, Place::of(&element), says).weighing(weight).with_remedy(Remedy::theirs(lower)))
}
