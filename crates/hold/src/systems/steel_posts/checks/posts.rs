//! Does each steel post carry its moment and shear when its years are over, and how far does its top move?

use groundhold_member::steel::{Exposure, Rules, Shape, check_steel, loss_per_side};
use groundhold_quantity::{Force, Length, Moment};
use groundhold_working::{Refused, Trace, Unit};

use crate::posted::bent::{Bent, bent, movement};
use crate::posted::embedment::over;
use crate::posted::loads;
use crate::systems::steel_posts::{SteelPost, SteelPostSpec};
use crate::workings::{ZINC_LIFE, zinc_life};
use crate::{Check, CheckKind, Layout, LoadCase, Post, WallCase};

/// Modulus of elasticity of steel, EN 1993-1-1:2005 3.2.6.
const STIFFNESS_MPA: f64 = 210_000.0;
/// EN 1990:2002 Table A1.2(B), expression 6.10.
const PERMANENT: f64 = 1.35;
const VARIABLE: f64 = 1.5;

/// Yearly loss of zinc, µm. In air the upper end of the category C3 (2.1) and, near the sea, of C5 (8.4) of EN ISO 14713-1
/// Table 2; in soil 5 to 10 as it is more or less aggressive, from the same standard's remarks on soil. From memory.
fn zinc_rate(exposure: Exposure) -> f64 {
    match exposure {
        Exposure::Air => 2.1,
        Exposure::SeaAir => 8.4,
        Exposure::Natural | Exposure::Fill => 5.0,
        Exposure::Polluted | Exposure::Aggressive | Exposure::AggressiveFill => 10.0,
    }
}

/// What is left of a section when its years are over, with the workings of zinc and rust.
///
/// # Errors
/// Where rust has used it up.
pub(crate) fn left(spec: &SteelPostSpec, post: &SteelPost) -> Result<(Shape, Vec<Trace>), Refused> {
    let (zinc, years, rate) = (f64::from(spec.zinc_um), f64::from(spec.years), zinc_rate(spec.exposure));
    let (_, bare) = zinc_life(zinc, rate, years);
    let (loss, rust) = loss_per_side(spec.exposure, bare)?;
    let shape = post.profile.shape.less(loss).ok_or_else(|| Refused::NoAnswer {
        working: groundhold_member::steel::CORROSION.name,
        why: format!("after {years} years rust has used up {}", post.profile.name),
    })?;
    Ok((shape, vec![Trace::new(&ZINC_LIFE, vec![zinc.into(), rate.into(), years.into()]), rust]))
}

/// Factors on what stays and on what comes and goes in a state, under the rules of this steel.
pub(crate) fn factors(case: &WallCase, state: LoadCase, rules: Rules) -> (f64, f64) {
    match rules {
        Rules::En1993 if !loads::is_accident(case, state) => (PERMANENT, VARIABLE),
        _ => (1.0, 1.0),
    }
}

/// The rules in words.
pub(crate) fn words(rules: Rules) -> &'static str {
    match rules {
        Rules::En1993 => "EN 1993-1-1, with what rust leaves",
        Rules::Aisc => "ANSI/AISC 360, allowable, with what rust leaves",
    }
}

/// Bending, shear and movement of one post in every state. A corner post takes the whole of both half bays along its web.
///
/// # Errors
/// As the pressure theory, the embedment method or the rules for steel refuse.
pub(crate) fn of_post(
    case: &WallCase,
    spec: &SteelPostSpec,
    layout: &Layout,
    post: &Post,
) -> Result<Vec<Check>, Refused> {
    let each = loads::states(case).into_iter().map(|s| in_state(case, spec, layout, post, s));
    Ok(each.collect::<Result<Vec<_>, _>>()?.concat())
}

/// Bending, shear and, outside accidents, movement of one post in one state.
///
/// # Errors
/// As [`of_post`].
pub(crate) fn in_state(
    case: &WallCase,
    spec: &SteelPostSpec,
    layout: &Layout,
    post: &Post,
    state: LoadCase,
) -> Result<Vec<Check>, Refused> {
    let case = &*loads::in_state(case, state);
    let (wall, of) = (spec.posted(), spec.post_of(post, layout.posts.len()));
    let (shape, rust) = left(spec, of)?;
    let Some(bent) = bent(case, &wall, &layout.bays, post, state)? else { return Ok(vec![]) };
    let mut all = strength(case, of, &shape, &rust, post, state, &bent)?.to_vec();
    if loads::is_accident(case, state) {
        return Ok(all);
    }
    let (figures, _) = shape.figures()?;
    let stiff = (STIFFNESS_MPA, figures.inertia, 1.0);
    all.extend(movement(case, &wall, &layout.bays, post, &bent, stiff)?.map(|m| Check {
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
        governs: loads::governs(case, state),
    }));
    Ok(all)
}

fn strength(
    case: &WallCase,
    of: &SteelPost,
    shape: &Shape,
    rust: &[Trace],
    post: &Post,
    state: LoadCase,
    bent: &Bent,
) -> Result<[Check; 2], Refused> {
    let (stays, goes) = factors(case, state, of.rules);
    let raised = |variable: f64| stays * (1.0 - variable) + goes * variable;
    let moment: Moment = bent.moment.0 * raised(bent.push.variable_moment);
    let shear: Force = bent.shear.0 * raised(bent.push.variable_force);
    // Panels between the flanges and concrete hold the pressed flange.
    let found = check_steel(shape, of.steel, of.rules, (moment, shear), Length::ZERO)?;
    let check = |kind, demand, capacity, unit, utilisation, traces: Vec<Trace>| Check {
        kind,
        on: format!("post {}", post.number),
        case: state,
        method: words(of.rules),
        basis: case.basis.key,
        demand,
        capacity,
        unit,
        utilisation,
        traces: [traces, vec![found.section.clone()], rust.to_vec(), bent.push.traces.clone()].concat(),
        governs: crate::loads::governs(case, state),
    };
    let (b, s) = (&found.bending, &found.shear);
    Ok([
        check(
            CheckKind::PostBending,
            b.demand.to_knm(),
            b.capacity.to_knm(),
            Unit::KNM,
            b.utilisation,
            vec![b.trace.clone(), bent.moment.1.clone()],
        ),
        check(
            CheckKind::PostShear,
            s.demand.to_kn(),
            s.capacity.to_kn(),
            Unit::KN,
            s.utilisation,
            vec![s.trace.clone(), bent.shear.1.clone()],
        ),
    ])
}
