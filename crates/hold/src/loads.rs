//! In which states is a wall checked, with which factors, and which loads stand behind it?

use std::borrow::Cow;

use groundhold_earth::pressure::seismic::{Shaking, shaken};
use groundhold_earth::situation::Situation;
use groundhold_earth::{Active, Backfill, Combination, Method, Ordinate, Part, Strip};
use groundhold_quantity::{Angle, Length, Moment, Share};
use groundhold_working::Refused;

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
    let asked = |s: &LoadCase| case.must_meet.contains(s) && (*s != LoadCase::Earthquake || case.shaking.is_some());
    all.extend(LoadCase::ON_REQUEST.into_iter().filter(asked));
    all
}

/// Situations that are shown beside, at the highest place alone: those that the job does not ask to be met. An earthquake
/// is among them where somebody has said how hard the ground shakes.
pub(crate) fn beside(case: &WallCase) -> Vec<LoadCase> {
    let known = |s: &LoadCase| *s != LoadCase::Earthquake || case.shaking.is_some();
    LoadCase::ON_REQUEST.into_iter().filter(|s| known(s) && !case.must_meet.contains(s)).collect()
}

/// Whether a state is an accident, for which the basis has factors of its own: a planned drain that fails (without a
/// drain, water is the rule), and an earthquake.
pub(crate) fn is_accident(case: &WallCase, state: LoadCase) -> bool {
    state == LoadCase::Earthquake || state == LoadCase::DrainBlocked && case.water.drained
}

/// Whether a state must be met; the others are shown beside.
pub(crate) fn governs(case: &WallCase, state: LoadCase) -> bool {
    match state {
        LoadCase::Drained | LoadCase::Wind => true,
        LoadCase::DrainBlocked => !case.water.drained,
        _ => case.must_meet.contains(&state),
    }
}

/// The wall with the ground it stands in as a state finds it: softened after a wet winter.
pub(crate) fn in_state(case: &WallCase, state: LoadCase) -> Cow<'_, WallCase> {
    match state.situation().filter(|s| s.softened > 1.0) {
        Some(s) => Cow::Owned(WallCase { founding_soil: s.soil(&case.founding_soil), ..case.clone() }),
        None => Cow::Borrowed(case),
    }
}

/// How high water stands behind the wall in a state, as a share of what is retained: no higher than with its drain blocked.
pub(crate) fn water(case: &WallCase, state: LoadCase) -> Share {
    let blocked = case.water.blocked;
    match state {
        LoadCase::DrainBlocked => blocked,
        s => s
            .situation()
            .map_or(Share::default(), |s| Share::fraction(s.water.to_fraction().min(blocked.to_fraction()))),
    }
}

/// The thrust of a backfill in a state. Water behind a drained wall stands no higher than with its drain blocked. Shaking
/// adds to the soil's own part; what holds the wall in front is not lowered by it.
///
/// # Errors
/// As the theory refuses, or where the ground slides by itself under this shaking.
pub(crate) fn thrust(case: &WallCase, state: LoadCase, method: Method, backfill: &Backfill) -> Result<Active, Refused> {
    let Some(s) = state.situation() else { return method.active(backfill) };
    let found = Situation { water: water(case, state), ..*s }.backfill(backfill);
    let still = method.active(&found)?;
    let Some(sideways) = case.shaking.filter(|_| s.shakes) else { return Ok(still) };
    let wall_friction = if method == Method::Rankine { Angle::ZERO } else { found.wall_friction };
    let shaking = Shaking { horizontal: sideways.to_fraction(), vertical: 0.0 };
    let shaken = shaken(&Backfill { wall_friction, ..found }, shaking)?;
    let soil = Part {
        horizontal: shaken.horizontal,
        moment: Moment::knm(shaken.horizontal.to_kn_per_m() * shaken.arm.to_m()),
    };
    let horizontal = still.horizontal - still.soil.horizontal + soil.horizontal;
    let moment = still.moment - still.soil.moment + soil.moment;
    let diagram = still.diagram.iter().map(|o| Ordinate { soil: shaken.spread.at(o.depth), ..*o }).collect();
    Ok(Active {
        soil,
        horizontal,
        moment,
        arm: Length::m(moment.to_knm() / horizontal.to_kn_per_m()),
        diagram,
        trace: shaken.trace,
        ..still
    })
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
