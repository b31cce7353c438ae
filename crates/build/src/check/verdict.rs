//! Does a trigger fire, not fire, or can it not be told?

use groundhold_quantity::Length;

use crate::{Condition, ExcavationFacts, Near, PadFacts, Trigger, WallFacts};

/// Three answers, of which the third names what is missing.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Verdict {
    No,
    Fires,
    NotTold(Vec<&'static str>),
}

/// One condition.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Holds {
    No,
    Yes,
    NotTold(&'static str),
}

fn is(b: bool) -> Holds {
    if b { Holds::Yes } else { Holds::No }
}

fn nearer(near: Near, than: Length, what: &'static str) -> Holds {
    match near {
        Near::NotTold => Holds::NotTold(what),
        Near::Nothing => Holds::No,
        Near::At(d) => is(d < than),
    }
}

const BOUNDARY: &str = "the distance to the boundary";
const BUILDING: &str = "the distance to the nearest building";
const STREET: &str = "the distance to the nearest street";
const EASEMENT: &str = "the distance to the nearest easement, sewer or main";
const FOUNDATION: &str = "how deep the neighbour's foundation goes";

/// Ground steeper than this counts as a load behind: 1:6 (Timber Queensland data sheet 8 ends its table there).
const STEEP: f64 = 1.0 / 6.0;

fn wall_holds(c: Condition, w: &WallFacts) -> Holds {
    match c {
        Condition::BoundaryWithin(d) => nearer(w.boundary, d, BOUNDARY),
        Condition::BoundaryWithinHeight => nearer(w.boundary, w.retained, BOUNDARY),
        Condition::BuildingWithin(d) => nearer(w.building, d, BUILDING),
        Condition::BuildingWithinHeights(n) => nearer(w.building, w.retained * n, BUILDING),
        Condition::StreetWithin(d) => nearer(w.street, d, STREET),
        Condition::EasementWithin(d) => nearer(w.easement, d, EASEMENT),
        Condition::WallWithin(d) => is(w.beside.iter().any(|b| b.distance < d)),
        Condition::WallWithinHeights(n) => is(w.beside.iter().any(|b| b.distance < lower(w, b) * n)),
        Condition::Surcharge => is(w.surcharge.to_pa() > 0.0 || w.vehicles || w.slope_behind.to_ratio() > STEEP + 1e-9),
        Condition::Vehicles => is(w.vehicles),
        Condition::Fence => is(w.fence > Length::ZERO),
        Condition::HoldsFill => is(w.holds_fill),
        Condition::BelowFoundation => Holds::No,
    }
}

/// Retained height of the lower of two walls.
pub(crate) fn lower(w: &WallFacts, b: &crate::WallBeside) -> Length {
    if b.is_lower { b.retained } else { w.retained }
}

fn pad_holds(c: Condition, p: &PadFacts) -> Holds {
    match c {
        Condition::BoundaryWithin(d) => nearer(p.boundary, d, BOUNDARY),
        Condition::BoundaryWithinHeight => nearer(p.boundary, p.cut.max(p.fill), BOUNDARY),
        _ => Holds::No,
    }
}

fn excavation_holds(c: Condition, e: &ExcavationFacts) -> Holds {
    match c {
        Condition::BuildingWithin(d) => nearer(e.neighbour_building, d, "the distance to the neighbour's building"),
        Condition::BuildingWithinHeights(n) => {
            nearer(e.neighbour_building, e.depth * n, "the distance to the neighbour's building")
        }
        Condition::BelowFoundation => e.below_its_foundation.map_or(Holds::NotTold(FOUNDATION), is),
        _ => Holds::No,
    }
}

fn verdict(t: &Trigger, measure: Option<Length>, holds: impl Fn(Condition) -> Holds) -> Verdict {
    // A tenth of a millimetre: heights come from levels, and the rule's limit itself is not above it.
    let fits = Length::mm(0.1);
    let fires = measure.is_some_and(|m| if t.at_least { t.above - fits <= m } else { t.above + fits < m });
    if !fires {
        return Verdict::No;
    }
    let mut missing = vec![];
    for c in t.when {
        match holds(*c) {
            Holds::No => return Verdict::No,
            Holds::Yes => {}
            Holds::NotTold(what) => missing.push(what),
        }
    }
    if missing.is_empty() { Verdict::Fires } else { Verdict::NotTold(missing) }
}

/// The measure of a wall that a trigger looks at; `None` where it looks at something else.
pub(crate) fn measure_of_wall(t: &Trigger, w: &WallFacts) -> Option<Length> {
    use crate::Measured as M;
    match t.measured {
        M::Retained => Some(w.retained),
        M::Exposed => Some(w.exposed),
        M::TotalFromBase => Some(w.total),
        M::WallAndFence => Some(w.exposed + w.fence),
        M::CombinedTiers => {
            let near = w.beside.iter().filter(|b| b.distance < lower(w, b) * 2.0);
            Some(w.retained + near.map(|b| b.retained).sum::<Length>())
        }
        M::Cut | M::Fill | M::LevelChange | M::ExcavationDepth => None,
    }
}

pub(crate) fn on_wall(t: &Trigger, w: &WallFacts) -> Verdict {
    verdict(t, measure_of_wall(t, w), |c| wall_holds(c, w))
}

pub(crate) fn measure_of_pad(t: &Trigger, p: &PadFacts) -> Option<Length> {
    use crate::Measured as M;
    match t.measured {
        M::Cut => Some(p.cut),
        M::Fill => Some(p.fill),
        M::LevelChange => Some(p.cut.max(p.fill)),
        _ => None,
    }
}

pub(crate) fn on_pad(t: &Trigger, p: &PadFacts) -> Verdict {
    verdict(t, measure_of_pad(t, p), |c| pad_holds(c, p))
}

pub(crate) fn measure_of_excavation(t: &Trigger, e: &ExcavationFacts) -> Option<Length> {
    (t.measured == crate::Measured::ExcavationDepth).then_some(e.depth)
}

pub(crate) fn on_excavation(t: &Trigger, e: &ExcavationFacts) -> Verdict {
    verdict(t, measure_of_excavation(t, e), |c| excavation_holds(c, e))
}
