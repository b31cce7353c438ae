//! How much of the soil's push does one board or panel of a course carry?

use groundhold_earth::{Active, Ordinate};
use groundhold_quantity::{Length, LineForce, Pressure};
use groundhold_working::Trace;

use super::loads;
use crate::workings::BOARD_LOAD;
use crate::{Bay, Board, Check, LoadCase, WallCase};

/// What a board carries per metre, not factored.
#[derive(Debug, Clone)]
pub(crate) struct Carried {
    /// From what stays.
    pub permanent: LineForce,
    /// From what comes and goes.
    pub variable: LineForce,
    /// Its working.
    pub trace: Trace,
}

/// Keeps the worse of two checks of one kind.
pub(crate) fn keep_worse(kept: &mut Vec<Check>, check: Check) {
    match kept.iter_mut().find(|k| k.kind == check.kind) {
        Some(k) if k.utilisation < check.utilisation => *k = check,
        Some(_) => {}
        None => kept.push(check),
    }
}

/// Pressure between two depths, of one part of it, by trapezia.
pub(crate) fn integrated(active: &Active, from: Length, to: Length, of: impl Fn(&Ordinate) -> Pressure) -> LineForce {
    let mut sum = LineForce::ZERO;
    for pair in active.diagram.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        let (upper, lower) = (a.depth.max(from), b.depth.min(to));
        if upper < lower && a.depth < b.depth {
            let at = |z: Length| of(a) + (of(b) - of(a)) * ((z - a.depth) / (b.depth - a.depth));
            sum += (at(upper) + at(lower)) * 0.5 * (lower - upper);
        }
    }
    sum
}

/// The load of the soil on one board within one bay; nothing where it lies below the ground in front or above that behind.
pub(crate) fn carried(case: &WallCase, active: &Active, bay: &Bay, board: &Board, state: LoadCase) -> Option<Carried> {
    // Depths count from the ground behind, taken the retained height above the lowest ground in front.
    let ground_behind = bay.front + bay.retained;
    let upper = (ground_behind - board.top).max(Length::ZERO);
    let lower = (ground_behind - board.bottom).min(bay.retained);
    if lower - upper < Length::mm(1.0) {
        return None;
    }
    let stays = (active.permanent.horizontal, active.variable.horizontal);
    let of_loads = if stays.0 + stays.1 > LineForce::ZERO { stays.0 / (stays.0 + stays.1) } else { 1.0 };
    let soil = integrated(active, upper, lower, |o| o.soil);
    let load = integrated(active, upper, lower, |o| o.surcharge);
    let water = integrated(active, upper, lower, |o| o.water);
    let accident = loads::is_accident(case, state);
    let permanent = soil + load * of_loads + if accident { LineForce::ZERO } else { water };
    let variable = load * (1.0 - of_loads) + if accident { water } else { LineForce::ZERO };
    let height = lower - upper;
    let total = soil + load + water;
    let edges = (active.pressure_at(upper), active.pressure_at(lower));
    let by_edges = (edges.0 + edges.1) * 0.5 * height;
    let mean = total / height;
    let straight = (by_edges - total).abs() <= total * 0.01;
    let (p1, p2) = if straight { edges } else { (mean, mean) };
    let given = vec![p1.to_kpa().into(), p2.to_kpa().into(), height.to_m().into(), 1.0.into()];
    Some(Carried { permanent, variable, trace: Trace::new(&BOARD_LOAD, given) })
}
