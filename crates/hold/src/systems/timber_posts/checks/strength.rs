//! Does each post carry its moment and shear, and how far does its top move?

use groundhold_earth::Method as Theory;
use groundhold_earth::soil::Subgrade as Stiffness;
use groundhold_member::embed::{self, Subgrade};
use groundhold_member::timber::{Effects, Section, check_member, creep_factor, stiffness};
use groundhold_quantity::{Force, Length, Moment};
use groundhold_working::{Refused, Trace, Unit};

use super::embedment::{deciding, member_case, over};
use super::loads::{self, PostPush, UNFACTORED};
use super::timber;
use crate::systems::timber_posts::TimberPostSpec;
use crate::workings::{POST_BEND, POST_SHEAR, post_bend, post_shear};
use crate::{Check, CheckKind, Layout, LoadCase, Post, WallCase};

/// A post may lean by its height over this. Common practice, no source.
const LEAN_LIMIT: f64 = 50.0;

/// Bending, shear and movement of every post in every state.
///
/// # Errors
/// As the pressure theory, the embedment method or the timber rules refuse.
pub(crate) fn checks(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Result<Vec<Check>, Refused> {
    let of_posts = layout.posts.iter().map(|p| of_post(case, spec, layout, p));
    Ok(of_posts.collect::<Result<Vec<_>, _>>()?.concat())
}

/// Bending, shear and movement of one post in every state.
///
/// # Errors
/// As [`checks`].
pub(crate) fn of_post(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
) -> Result<Vec<Check>, Refused> {
    let each = loads::states(case).into_iter().map(|s| in_state(case, spec, layout, post, s));
    Ok(each.collect::<Result<Vec<_>, _>>()?.concat())
}

/// Bending, shear and, outside accidents, movement of one post in one state.
///
/// # Errors
/// As [`checks`].
pub(crate) fn in_state(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    state: LoadCase,
) -> Result<Vec<Check>, Refused> {
    let case = &*loads::in_state(case, state);
    let push = loads::on_post(case, &UNFACTORED, state, Theory::Rankine, post)?;
    if push.force <= Force::ZERO {
        return Ok(vec![]);
    }
    let mut all = strength(case, spec, layout, post, state, &push)?.to_vec();
    if !loads::is_accident(case, state) {
        all.extend(movement(case, spec, layout, post, state, &push)?);
    }
    Ok(all)
}

/// Movement of one post's top in every state but accidents.
///
/// # Errors
/// As [`checks`].
pub(crate) fn movements(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
) -> Result<Vec<Check>, Refused> {
    let mut all = vec![];
    for state in loads::states(case).into_iter().filter(|s| !loads::is_accident(case, *s)) {
        let case = &*loads::in_state(case, state);
        let push = loads::on_post(case, &UNFACTORED, state, Theory::Rankine, post)?;
        if push.force > Force::ZERO {
            all.extend(movement(case, spec, layout, post, state, &push)?);
        }
    }
    Ok(all)
}

fn section(spec: &TimberPostSpec) -> Section {
    Section::rectangle(spec.post.breadth, spec.post.depth)
}

/// The greatest moment in the post, by the deciding method that gives most, with its working.
fn greatest_moment(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    push: &PostPush,
) -> Result<(Moment, Trace), Refused> {
    let mut most: Option<(Moment, Trace)> = None;
    for method in deciding(case) {
        let member = member_case(case, spec, &layout.bays, post, &UNFACTORED, push, *method);
        let m = embed::post_moment(&member)?;
        if most.as_ref().is_none_or(|(before, _)| *before < m.moment) {
            most = Some((m.moment, m.trace));
        }
    }
    most.ok_or(Refused::NoAnswer { working: "embed", why: "no method decides over this soil".into() })
}

fn strength(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    state: LoadCase,
    push: &PostPush,
) -> Result<[Check; 2], Refused> {
    let (moment, moment_trace) = greatest_moment(case, spec, layout, post, push)?;
    let neglected = member_case(case, spec, &layout.bays, post, &UNFACTORED, push, deciding(case)[0]).neglected;
    let shear_given = [push.force.to_kn(), (push.arm + neglected).to_m(), (post.depth - neglected).to_m().max(0.05)];
    let shear = Force::kn(post_shear(shear_given[0], shear_given[1], shear_given[2]));
    let (vm, vv) = (push.variable_moment, push.variable_force);
    let effects = Effects::permanent(moment * (1.0 - vm), shear * (1.0 - vv)).with_variable(
        moment * vm,
        shear * vv,
        timber::lasting(case, state),
    );
    let code = timber::code(case, state, spec.post.grade);
    let found = check_member(spec.post.grade, &section(spec), &code, &effects, Length::ZERO)?;
    let check = |kind, demand, capacity, unit, utilisation, traces: Vec<Trace>| Check {
        kind,
        on: format!("post {}", post.number),
        case: state,
        method: code.words(),
        basis: case.basis.key,
        demand,
        capacity,
        unit,
        utilisation,
        traces: traces.into_iter().chain(push.traces.iter().cloned()).collect(),
        governs: loads::governs(case, state),
    };
    let (b, s) = (found.bending, found.shear);
    let shear_trace = Trace::new(&POST_SHEAR, shear_given.map(Into::into).to_vec());
    Ok([
        check(
            CheckKind::PostBending,
            b.demand.to_knm(),
            b.capacity.to_knm(),
            Unit::KNM,
            b.utilisation,
            vec![b.trace, moment_trace],
        ),
        check(
            CheckKind::PostShear,
            s.demand.to_kn(),
            s.capacity.to_kn(),
            Unit::KN,
            s.utilisation,
            vec![s.trace, shear_trace],
        ),
    ])
}

/// Movement of the top: lean in the ground and bend above it; left out where the ground's stiffness is not known.
fn movement(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    state: LoadCase,
    push: &PostPush,
) -> Result<Option<Check>, Refused> {
    let member = member_case(case, spec, &layout.bays, post, &UNFACTORED, push, deciding(case)[0]);
    let ground = match case.founding_soil.subgrade {
        Some(Stiffness::WithDepth(n)) => Subgrade::Grows(n),
        Some(Stiffness::Constant(k)) => Subgrade::Even(k / member.width),
        None => return Ok(None),
    };
    if post.depth <= member.neglected || post.exposed <= Length::ZERO {
        return Ok(None);
    }
    let lean = embed::deflection(&member, post.depth, ground, post.exposed)?;
    let code = timber::code(case, state, spec.post.grade);
    let creep = 1.0 + (creep_factor(&code) - 1.0) * (1.0 - push.variable_moment);
    let given = [
        push.force.to_kn(),
        (push.arm + member.neglected).to_m(),
        (post.exposed + member.neglected).to_m(),
        stiffness(spec.post.grade, &section(spec), &code).to_mpa(),
        section(spec).inertia_mm4(),
        creep,
    ];
    let bend = post_bend(given[0], given[1], given[2], given[3], given[4], given[5]);
    let demand = lean.top.to_mm() + bend;
    let capacity = post.exposed.to_mm() / LEAN_LIMIT;
    let bent = Trace::new(&POST_BEND, given.map(Into::into).to_vec());
    Ok(Some(Check {
        kind: CheckKind::PostDeflection,
        on: format!("post {}", post.number),
        case: state,
        method: "lean in the ground and bend above it",
        basis: "height over 50",
        demand,
        capacity,
        unit: Unit::MM,
        utilisation: over(demand, capacity),
        traces: [vec![lean.trace, bent], push.traces.clone()].concat(),
        governs: true,
    }))
}
