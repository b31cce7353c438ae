//! Which figures of the works are refused?

use std::collections::BTreeSet;

use crate::{Crew, NotAPlan, Works};

fn bad(of: &str, what: &'static str, found: f64, expected: &'static str) -> NotAPlan {
    NotAPlan::OutOfBounds { of: of.into(), what, found: format!("{found}"), expected }
}

/// Refuses crews and quantities that no programme can be made of, and ids that occur twice.
pub(crate) fn check(w: &Works, crew: &Crew) -> Result<(), NotAPlan> {
    if !(1..=50).contains(&crew.people) {
        return Err(bad("the crew", "number of people", f64::from(crew.people), "1 to 50"));
    }
    if !(1.0..=16.0).contains(&crew.day.to_h()) {
        return Err(bad("the crew", "working hours a day", crew.day.to_h(), "1 to 16"));
    }
    let mut seen = BTreeSet::new();
    let ids = w.walls.iter().map(|x| &x.id).chain(w.pads.iter().map(|x| &x.id));
    for id in ids.chain(w.flights.iter().map(|x| &x.id)).chain(w.ramps.iter().map(|x| &x.id)) {
        if id.is_empty() || !seen.insert(id) {
            return Err(NotAPlan::Twice { id: if id.is_empty() { "(empty)".into() } else { id.clone() } });
        }
    }
    for (of, what, figure) in figures(w) {
        if !(figure.is_finite() && (0.0..=1e6).contains(&figure)) {
            return Err(bad(of, what, figure, "a number from 0 to 1 000 000 in m, m², m³ or kg"));
        }
    }
    match w.walls.iter().find(|x| !(0.0..=1.0).contains(&x.built.to_fraction())) {
        Some(x) => Err(bad(&x.id, "built share", x.built.to_fraction(), "0 to 1")),
        None => Ok(()),
    }
}

fn figures(w: &Works) -> Vec<(&str, &'static str, f64)> {
    let job = "the job";
    let mut all = vec![
        (job, "stripped area", w.stripped.area.to_m2()),
        (job, "turf", w.stripped.turf.to_m3()),
        (job, "topsoil", w.stripped.topsoil.to_m3()),
        (job, "collector", w.drainage.collector.to_m()),
        (job, "collector trench", w.drainage.trench.to_m3()),
        (job, "deepest open cut", w.deepest_open_cut.to_m()),
        (job, "heaviest piece", w.heaviest_piece.to_kg()),
        (job, "haul", w.access.haul.to_m()),
    ];
    for x in &w.walls {
        let of = x.id.as_str();
        all.extend([
            (of, "length", x.length.to_m()),
            (of, "retained height", x.retained.to_m()),
            (of, "posts", x.posts as f64),
            (of, "holes", x.holes as f64),
            (of, "hole depth", x.hole_depth.to_m()),
            (of, "hole diameter", x.hole_diameter.to_m()),
            (of, "volume of holes", x.holes_volume.to_m3()),
            (of, "height above the lowest", x.base_above_lowest.to_m()),
            (of, "boards", x.boards as f64),
            (of, "trench of the base", x.base_dug.to_m3()),
            (of, "depth of the base", x.base_depth.to_m()),
            (of, "concrete", x.concrete.to_m3()),
            (of, "trench", x.trench.to_m3()),
            (of, "drain stone", x.drain_stone.to_m3()),
            (of, "pipe", x.pipe.to_m()),
            (of, "fabric", x.fabric.to_m2()),
            (of, "backfill", x.backfill.to_m3()),
            (of, "capping", x.capping.to_m()),
            (of, "guard", x.guard.to_m()),
        ]);
        all.extend(x.laid.iter().flat_map(|l| {
            let hours = l.hours.iter().map(move |h| (of, "hours of what is laid", *h));
            hours.chain([(of, "amount laid", l.amount), (of, "days of setting", l.sets_days)])
        }));
    }
    for x in &w.pads {
        let of = x.id.as_str();
        all.extend([
            (of, "cut", x.cut.to_m3()),
            (of, "fill", x.fill.to_m3()),
            (of, "topsoil", x.topsoil.to_m3()),
            (of, "turf", x.turf.to_m2()),
            (of, "paving", x.paving.to_m2()),
            (of, "fill depth", x.fill_depth.to_m()),
        ]);
    }
    for x in &w.flights {
        let of = x.id.as_str();
        all.extend([
            (of, "risers", x.risers as f64),
            (of, "width", x.width.to_m()),
            (of, "cut", x.cut.to_m3()),
            (of, "base", x.base.to_m3()),
        ]);
    }
    for x in &w.ramps {
        let of = x.id.as_str();
        all.extend([
            (of, "length", x.length.to_m()),
            (of, "cut", x.cut.to_m3()),
            (of, "fill", x.fill.to_m3()),
            (of, "base", x.base.to_m3()),
            (of, "surface", x.surface.to_m2()),
        ]);
    }
    all
}
