//! In which states is a wall checked, with which factors, and which loads stand behind it?

use groundhold_earth::{Combination, Strip};
use groundhold_quantity::Length;

use crate::{LoadCase, Neighbour, NeighbourKind, Side, WallCase};

/// Less than this is not held back by anything.
pub(crate) const NOTHING: Length = Length::mm(10.0);

/// The states in which this wall is checked.
pub(crate) fn states(case: &WallCase) -> Vec<LoadCase> {
    let mut all = vec![LoadCase::Drained];
    if case.water.blocked.to_fraction() > 0.0 {
        all.push(LoadCase::DrainBlocked);
    }
    if case.fence.is_some() {
        all.push(LoadCase::Wind);
    }
    all
}

/// Whether a state is an accident: only a planned drain can fail by accident; without one, water is the rule.
pub(crate) fn is_accident(case: &WallCase, state: LoadCase) -> bool {
    state == LoadCase::DrainBlocked && case.water.drained
}

/// The sets of factors that must be met in a state.
pub(crate) fn combinations(case: &WallCase, state: LoadCase) -> &'static [Combination] {
    if is_accident(case, state) { case.basis.accidental } else { case.basis.combinations }
}

/// Loads and soil as they are.
pub(crate) const UNFACTORED: Combination = Combination {
    key: "unfactored",
    name: "loads and soil as they are",
    permanent: 1.0,
    permanent_favourable: 1.0,
    variable: 1.0,
    tan_phi: 1.0,
    cohesion: 1.0,
    undrained: 1.0,
    bearing: 1.0,
    sliding: 1.0,
    earth_resistance: 1.0,
    wanted: groundhold_earth::basis::Wanted { sliding: 1.0, overturning: 1.0, bearing: 1.0, embedment: 1.0, slip: 1.0 },
};

/// The upper wall's ground as a load: its weight, from its face backwards.
fn upper_wall(case: &WallCase, n: &Neighbour) -> Option<Strip> {
    let NeighbourKind::Wall { retained } = n.kind else { return None };
    (n.side == Side::Behind).then(|| Strip {
        value: case.retained_soil.unit_weight * retained,
        from: n.distance,
        to: Length::m(f64::INFINITY),
        permanent: true,
    })
}

/// All loads on the ground behind, an upper wall among them.
pub(crate) fn strips(case: &WallCase) -> Vec<Strip> {
    let given = case.loads.iter().map(|l| Strip { value: l.value, from: l.from, to: l.to, permanent: l.permanent });
    given.chain(case.neighbours.iter().filter_map(|n| upper_wall(case, n))).collect()
}
