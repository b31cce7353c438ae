//! What stands around: boundary, other walls, the neighbour's building?

use groundhold_finding::{Finding, Place, Remedy, Severity};

use super::asked::tells_tiers;
use super::verdict::lower;
use crate::findings::{BESIDE_BUILDING, NEAR_BOUNDARY, TIERS_TOGETHER};
use crate::tiers::tier_spacing;
use crate::{ExcavationFacts, Facts, Near, Region, WallFacts};

pub(super) fn wall(region: &Region, facts: &Facts, w: &WallFacts, said: &mut Vec<Finding>) {
    let units = region.units;
    if let Near::At(d) = w.boundary
        && d < w.total
    {
        let says = format!(
            "The boundary is {} away, nearer than the wall is high from its base ({}): all of it, with base, pipe, stone and working room, stays on this side; peg the line from a survey, and talk to the neighbour before digging.",
            units.run(d),
            units.length(w.total)
        );
        let back = Remedy::theirs(format!("Build it {} or more from the boundary.", units.length(w.total)));
        said.push(
            Finding::new(&NEAR_BOUNDARY, Place::of(&w.id), says)
                .with_utilisation(w.total / d.max(MM))
                .with_remedy(back),
        );
    }
    if !tells_tiers(facts, w) {
        return;
    }
    for b in &w.beside {
        let listed = facts.walls.iter().any(|o| o.id == b.other);
        if !b.is_lower && listed {
            continue;
        }
        let (wanted, u, trace) = tier_spacing(lower(w, b), b.distance);
        if u <= 1.0 + 1e-9 {
            continue;
        }
        let (above, below) =
            if b.is_lower { (w.id.as_str(), b.other.as_str()) } else { (b.other.as_str(), w.id.as_str()) };
        let says = format!(
            "{above} stands {} behind {below}, which retains {}: nearer than {} they act together, as one wall of {}.",
            units.length(b.distance),
            units.length(lower(w, b)),
            units.length(wanted),
            units.length(w.retained + b.retained)
        );
        let apart = Remedy::theirs(format!(
            "Set {above} {} behind {below}, or have both designed as one.",
            units.length(wanted)
        ));
        said.push(
            Finding::new(&TIERS_TOGETHER, Place::of(&w.id), says)
                .with_utilisation(u)
                .with_trace(trace)
                .with_remedy(apart),
        );
    }
}

const MM: groundhold_quantity::Length = groundhold_quantity::Length::mm(1.0);

/// A dig that comes under the line of 45° from a neighbour's footing.
pub(super) fn beside_building(
    region: &Region,
    e: &ExcavationFacts,
    missing: &mut Vec<&'static str>,
    said: &mut Vec<Finding>,
) {
    let units = region.units;
    let distance = match e.neighbour_building {
        Near::Nothing => return,
        Near::NotTold => return missing.push("the distance to the neighbour's building"),
        Near::At(d) => d,
    };
    let below = e.below_its_foundation == Some(true);
    if !(below || (distance < e.depth && e.below_its_foundation.is_none())) {
        return;
    }
    let depth = if below { "below its foundation" } else { "and how deep its foundation goes is not known" };
    let says = format!(
        "The dig is {} deep, {} from the neighbour's building, {depth}: it may take away the soil that carries it.",
        units.length(e.depth),
        units.run(distance)
    );
    let look = Remedy::theirs(format!(
        "Stay {} or more away, or look first with a trial pit, ask an engineer and dig in short bays.",
        units.length(e.depth)
    ));
    let weight = if below { Severity::Stop } else { Severity::Ask };
    let place = Place::on(&e.element, e.on.as_str());
    said.push(
        Finding::new(&BESIDE_BUILDING, place, says)
            .weighing(weight)
            .with_utilisation(e.depth / distance.max(MM))
            .with_remedy(look),
    );
}
