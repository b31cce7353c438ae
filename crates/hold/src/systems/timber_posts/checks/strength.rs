//! Does each post carry its moment and shear, and how far does its top move?

use groundhold_member::timber::{Effects, Section, check_member, creep_factor, stiffness};
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace, Unit};

use crate::posted::bent::{Bent, bent, movement};
use crate::posted::embedment::over;
use crate::posted::loads;
use crate::systems::timber_posts::TimberPostSpec;
use crate::timber_rules as timber;
use crate::{Check, CheckKind, Layout, LoadCase, Post, WallCase};

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
    let Some(bent) = bent(case, &spec.posted(), &layout.bays, post, state)? else { return Ok(vec![]) };
    let mut all = strength(case, spec, post, state, &bent)?.to_vec();
    if !loads::is_accident(case, state) {
        all.extend(moves(case, spec, layout, post, state, &bent)?);
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
        if let Some(bent) = bent(case, &spec.posted(), &layout.bays, post, state)? {
            all.extend(moves(case, spec, layout, post, state, &bent)?);
        }
    }
    Ok(all)
}

fn section(spec: &TimberPostSpec) -> Section {
    Section::rectangle(spec.post.breadth, spec.post.depth)
}

fn strength(
    case: &WallCase,
    spec: &TimberPostSpec,
    post: &Post,
    state: LoadCase,
    bent: &Bent,
) -> Result<[Check; 2], Refused> {
    let ((moment, moment_trace), (shear, shear_trace)) = (bent.moment.clone(), bent.shear.clone());
    let push = &bent.push;
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
fn moves(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    state: LoadCase,
    bent: &Bent,
) -> Result<Option<Check>, Refused> {
    let code = timber::code(case, state, spec.post.grade);
    let creep = 1.0 + (creep_factor(&code) - 1.0) * (1.0 - bent.push.variable_moment);
    let section = section(spec);
    let stiff = (stiffness(spec.post.grade, &section, &code).to_mpa(), section.inertia_mm4(), creep);
    let found = movement(case, &spec.posted(), &layout.bays, post, bent, stiff)?;
    Ok(found.map(|m| Check {
        kind: CheckKind::PostDeflection,
        on: format!("post {}", post.number),
        case: state,
        method: "lean in the ground and bend above it",
        basis: "height over 50",
        demand: m.top_mm,
        capacity: m.allowed_mm,
        unit: Unit::MM,
        utilisation: over(m.top_mm, m.allowed_mm),
        traces: m.traces,
        governs: crate::loads::governs(case, state),
    }))
}
