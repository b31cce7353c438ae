//! Does the post stay upright in the ground, and how deep must it go?

use groundhold_earth::soil::{Kind, presumptive};
use groundhold_earth::{Combination, Method as Theory};
use groundhold_member::embed::{self, Ground, Method};
use groundhold_quantity::{Length, UnitWeight};
use groundhold_working::{Refused, Trace, Unit};

use super::loads::{self, PostPush};
use super::place::cover;
use super::{DEPTH_STEP, LEAST_DEPTH, MOST_DEPTH, Posted};
use crate::{Bay, Check, CheckKind, Line, LoadCase, Post, WallCase};

/// The methods by which a post is accepted or refused: Broms in sand for soil of grains; for fines both Broms in clay,
/// while the load is new, and the drained soil with its friction (and what cohesion was given), for good.
pub(crate) fn deciding(case: &WallCase) -> &'static [Method] {
    let soil = &case.founding_soil;
    match (soil.kind, soil.undrained.is_some(), soil.cohesion.si() > 0.0) {
        (Kind::Coarse, _, false) => &[Method::BromsSand],
        (Kind::Coarse, _, true) | (Kind::Fine, false, true) => &[Method::BrinchHansen],
        (Kind::Fine, true, false) => &[Method::BromsClay, Method::BromsSand],
        (Kind::Fine, true, true) => &[Method::BromsClay, Method::BrinchHansen],
        (Kind::Fine, false, false) => &[Method::BromsSand],
    }
}

fn ground(soil: &groundhold_earth::Soil, method: Method) -> Ground {
    match (method, soil.undrained) {
        (Method::BromsClay, Some(strength)) => Ground::Clay { strength, unit_weight: soil.unit_weight },
        (Method::BrinchHansen, _) => {
            Ground::Mixed { phi: soil.phi, cohesion: soil.cohesion, unit_weight: soil.unit_weight }
        }
        _ => Ground::Sand { phi: soil.phi, unit_weight: soil.unit_weight },
    }
}

/// Ground in front of a post that is not counted on: the layer of the wall, and at least down to the lowest board.
fn neglected(wall: &Posted, bays: &[Bay], post: &Post) -> Length {
    wall.neglect_top.max(cover(bays, post))
}

/// A post as the member formulas see it.
pub(crate) fn member_case(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    combination: &Combination,
    push: &PostPush,
    method: Method,
) -> embed::Case {
    let soil = combination.soil(&case.founding_soil);
    let bearing = case.founding_soil.class.and_then(|c| presumptive(c.uscs)).map(|p| p.lateral);
    let by_kind = || presumptive(if case.founding_soil.kind == Kind::Fine { "CL" } else { "SP" }).map(|p| p.lateral);
    embed::Case {
        force: push.force,
        arm: push.arm,
        width: loads::bearing_width(wall, post),
        ground: ground(&soil, method),
        presumptive: bearing.or_else(by_kind).or(Some(UnitWeight::kn_per_m3(15.7))),
        may_move: true,
        held_at_ground: false,
        neglected: neglected(wall, bays, post),
        front_fall: Line::new(&case.stations).at(post.chainage).slope_front,
        spacing: None,
        retained: Some(post.retained),
        factor: combination.wanted.embedment * combination.earth_resistance,
    }
}

/// One judgement of one post.
#[derive(Debug, Clone)]
pub(crate) struct Judged {
    pub method: Method,
    pub combination: &'static Combination,
    /// Push that acts, factored, kN.
    pub demand: f64,
    /// Push that is allowed, kN.
    pub capacity: f64,
    /// Resistance, push, pressure, and the soil's design strength where it is factored.
    pub traces: Vec<Trace>,
}

impl Judged {
    pub fn utilisation(&self) -> f64 {
        over(self.demand, self.capacity)
    }
}

/// Demand over capacity; nothing asked is nothing used.
pub(crate) fn over(demand: f64, capacity: f64) -> f64 {
    match () {
        () if demand <= 0.0 => 0.0,
        () if capacity <= 0.0 => f64::INFINITY,
        () => demand / capacity,
    }
}

/// Working of the founding soil's design strength, where it differs from its own.
fn design_strength(case: &WallCase, combination: &Combination) -> Vec<Trace> {
    if combination.tan_phi == 1.0 { vec![] } else { vec![combination.soil_trace(&case.founding_soil)] }
}

/// What decides over a post at a depth in one state, by every deciding method and combination.
///
/// # Errors
/// As the pressure theory or the method refuses.
pub(crate) fn judge_post(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    state: LoadCase,
    depth: Length,
) -> Result<Vec<Judged>, Refused> {
    let case = &*loads::in_state(case, state);
    let mut all = vec![];
    for combination in loads::combinations(case, state) {
        let push = loads::on_post(case, combination, state, Theory::Rankine, post)?;
        for method in deciding(case) {
            let member = member_case(case, wall, bays, post, combination, &push, *method);
            let resistance = embed::resistance(&member, *method, depth)?;
            all.push(Judged {
                method: *method,
                combination,
                demand: push.force.to_kn(),
                capacity: resistance.force.to_kn() / member.factor,
                traces: [vec![resistance.trace], push.traces.clone(), design_strength(case, combination)].concat(),
            });
        }
    }
    Ok(all)
}

/// The states for which a depth is solved: those that must be met; the others are shown and reported.
pub(crate) fn solved_states(case: &WallCase) -> impl Iterator<Item = LoadCase> {
    loads::states(case).into_iter().filter(|s| loads::governs(case, *s))
}

/// What a post must carry in some states, by every deciding method and combination; found once, asked at many depths.
struct Demands {
    asked: Vec<(embed::Case, Method)>,
}

impl Demands {
    /// # Errors
    /// As the pressure theory refuses.
    fn of(
        case: &WallCase,
        wall: &Posted,
        bays: &[Bay],
        post: &Post,
        states: impl IntoIterator<Item = LoadCase>,
    ) -> Result<Demands, Refused> {
        let mut asked = vec![];
        for state in states {
            let case = &*loads::in_state(case, state);
            for combination in loads::combinations(case, state) {
                let push = loads::on_post(case, combination, state, Theory::Rankine, post)?;
                for method in deciding(case) {
                    asked.push((member_case(case, wall, bays, post, combination, &push, *method), *method));
                }
            }
        }
        Ok(Demands { asked })
    }
    /// The highest utilisation at a depth; infinite where a method refuses.
    fn utilisation(&self, depth: Length) -> f64 {
        let of = |(member, method): &(embed::Case, Method)| match embed::push_taken(member, *method, depth) {
            Ok(taken) => over(member.force.to_kn(), taken.to_kn() / member.factor),
            Err(_) => f64::INFINITY,
        };
        self.asked.iter().map(of).fold(0.0, f64::max)
    }
}

/// The highest utilisation of a post at a depth over the given states; infinite where something refuses.
pub(crate) fn utilisation_at(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    states: impl IntoIterator<Item = LoadCase>,
    depth: Length,
) -> f64 {
    Demands::of(case, wall, bays, post, states).map_or(f64::INFINITY, |d| d.utilisation(depth))
}

/// The least depth in whole steps at which a post passes in the given states; none up to the deepest hole.
pub(crate) fn least_depth(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    states: &[LoadCase],
) -> Option<Length> {
    let demands = Demands::of(case, wall, bays, post, states.iter().copied()).ok()?;
    let passes = |steps: i64| demands.utilisation(DEPTH_STEP * steps as f64) <= 1.0;
    let (mut short, mut deep) = ((LEAST_DEPTH / DEPTH_STEP).round() as i64, (MOST_DEPTH / DEPTH_STEP).round() as i64);
    if passes(short) {
        return Some(DEPTH_STEP * short as f64);
    }
    if !passes(deep) {
        return None;
    }
    while 1 < deep - short {
        let middle = (short + deep) / 2;
        if passes(middle) { deep = middle } else { short = middle }
    }
    Some(DEPTH_STEP * deep as f64)
}

/// The depth that is solved for a post: the least in whole steps at which it passes in all states but accidents; the
/// deepest hole where none passes (a finding then says so).
pub(crate) fn solved_depth(case: &WallCase, wall: &Posted, bays: &[Bay], post: &Post) -> Length {
    // A post reaches below the lowest board beside it, whatever it holds.
    let least = LEAST_DEPTH.max(DEPTH_STEP * ((cover(bays, post) / DEPTH_STEP).ceil() + 2.0)).min(MOST_DEPTH);
    if post.retained < loads::NOTHING && case.fence.is_none() {
        return least;
    }
    let states: Vec<LoadCase> = solved_states(case).collect();
    let none_passes = || if refuses(case, wall, bays, post) { least } else { MOST_DEPTH };
    least_depth(case, wall, bays, post, &states).unwrap_or_else(none_passes)
}

/// True where no depth can be found because the formulas do not apply at all.
fn refuses(case: &WallCase, wall: &Posted, bays: &[Bay], post: &Post) -> bool {
    solved_states(case).any(|s| judge_post(case, wall, bays, post, s, MOST_DEPTH).is_err())
}

/// The checks of one post in one state; what refuses instead.
///
/// # Errors
/// As [`judge_post`].
pub(crate) fn checks(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    state: LoadCase,
) -> Result<Vec<Check>, Refused> {
    let judged = judge_post(case, wall, bays, post, state, post.depth)?;
    let check = |j: Judged| Check {
        kind: CheckKind::Embedment,
        on: format!("post {}", post.number),
        case: state,
        method: j.method.words(),
        basis: j.combination.key,
        demand: j.demand,
        capacity: j.capacity,
        unit: Unit::KN,
        utilisation: j.utilisation(),
        traces: j.traces,
        governs: loads::governs(case, state),
    };
    Ok(judged.into_iter().map(check).collect())
}
