//! Does the timber under the heads of the ties carry, and do the screws hold course on course?

use groundhold_member::fix::{pulled_out, sheared};
use groundhold_member::timber::{Effects, Section, check_member, creep_factor, stiffness};
use groundhold_quantity::{Force, Length, Moment};
use groundhold_working::{Refused, Trace, Unit};

use super::loads::{Behind, Pushed};
use super::ties::{asked, check, joint};
use crate::loads::{UNFACTORED, is_accident};
use crate::systems::stacked_timbers::{StackedTimberSpec, courses};
use crate::workings::{OVER_JOINT, TIED_TIMBER, over_joint, tied_timber};
use crate::{Check, CheckKind, Layout, LoadCase, Strip, WallCase, timber_rules};

/// A timber may bow by the distance of its ties over this. Common practice, no source.
const BOW_LIMIT: f64 = 100.0;

/// Every row and every joint of a strip in one state.
///
/// # Errors
/// As the pressure theory or the rules refuse.
pub(crate) fn checks(
    case: &WallCase,
    spec: &StackedTimberSpec,
    layout: &Layout,
    strip: &Strip,
    state: LoadCase,
) -> Result<Vec<Check>, Refused> {
    let Some(behind) = Behind::of(case, spec, strip, &UNFACTORED, state)? else { return Ok(vec![]) };
    let mut all = vec![];
    for row in behind.rows() {
        let wide = courses::widest(spec, &layout.strips, strip, row.course);
        all.extend(held(case, spec, strip, state, &behind, row.pushed, wide)?);
    }
    all.extend(across_joints(case, spec, strip, state, &behind)?);
    all.extend(over_joints(case, spec, strip, state, &behind)?);
    Ok(all)
}

/// The timber that holds the heads of a row.
fn held(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    state: LoadCase,
    behind: &Behind,
    load: Pushed,
    wide: Length,
) -> Result<Vec<Check>, Refused> {
    let grade = spec.timber.grade;
    let code = timber_rules::code(case, state, grade);
    let section = Section::rectangle(spec.timber.height, spec.timber.thickness);
    let creep = creep_factor(&code);
    let of = |w: f64, creep: f64| {
        let given = [w, wide.to_m(), stiffness(grade, &section, &code).to_mpa(), section.inertia_mm4(), creep];
        let found = tied_timber(given[0], given[1], given[2], given[3], given[4]);
        (found, Trace::new(&TIED_TIMBER, given.map(Into::into).to_vec()))
    };
    let ((m, v, _, bow), trace) = of(load.stays, creep);
    let ((vm, vv, _, more), _) = of(load.goes, 1.0);
    let effects = Effects::permanent(Moment::knm(m), Force::kn(v)).with_variable(
        Moment::knm(vm),
        Force::kn(vv),
        timber_rules::lasting(case, state),
    );
    let found = check_member(grade, &section, &code, &effects, Length::ZERO)?;
    let with = |t: &Trace| vec![t.clone(), trace.clone(), behind.trace()];
    let by = (code.words(), case.basis.key);
    let (b, s) = (&found.bending, &found.shear);
    let bending = (b.demand.to_knm(), b.capacity.to_knm(), Unit::KNM);
    let shear = (s.demand.to_kn(), s.capacity.to_kn(), Unit::KN);
    let mut all = vec![
        check(case, strip, state, CheckKind::TimberBending, by, bending, with(&b.trace)),
        check(case, strip, state, CheckKind::TimberShear, by, shear, with(&s.trace)),
    ];
    if !is_accident(case, state) {
        let figures = (bow + more, wide.to_mm() / BOW_LIMIT, Unit::MM);
        let by = ("final bow with creep", "distance of ties over 100");
        all.push(check(case, strip, state, CheckKind::TimberBow, by, figures, vec![trace.clone(), behind.trace()]));
    }
    Ok(all)
}

/// Screws in shear in every joint: what pushes above it less what rows above it hold. A row acts on the timber that holds its
/// heads, one course below them.
fn across_joints(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    state: LoadCase,
    behind: &Behind,
) -> Result<Vec<Check>, Refused> {
    let code = timber_rules::code(case, state, spec.timber.grade);
    let rows = behind.rows();
    let per_metre = 1.0 / spec.screws.spacing.to_m();
    let mut all = vec![];
    for course in 1..strip.courses {
        let held = rows.iter().filter(|r| course < r.course).fold(Pushed::default(), |a, r| a.plus(r.pushed));
        let above = behind.above(course);
        // Lowest row and ground share what lies below; a joint below it passes what the row holds too much.
        let net = Pushed { stays: (above.stays - held.stays).abs(), goes: (above.goes - held.goes).abs() };
        for (demand, duration) in asked(&code, net, timber_rules::lasting(case, state)) {
            let one = sheared(&joint(spec, &code), duration, 90.0)?;
            let figures = (demand, one.force.to_kn() * per_metre, Unit::KN_M);
            let by = (code.words(), case.basis.key);
            let traces = vec![one.trace, behind.trace()];
            all.push(check(case, strip, state, CheckKind::CourseShear, by, figures, traces));
        }
    }
    Ok(all)
}

/// Weight and screws against turning: of what stands above the timber that holds the highest row, and of the face between two
/// rows, and between the lowest and the foot.
fn over_joints(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    state: LoadCase,
    behind: &Behind,
) -> Result<Vec<Check>, Refused> {
    let code = timber_rules::code(case, state, spec.timber.grade);
    let rows = spec.rows(strip.courses);
    let Some(top) = rows.first().copied() else { return Ok(vec![]) };
    let mut turned = vec![(behind.moment_above(top), top)];
    let held: Vec<usize> = rows.iter().map(|k| k - 1).collect();
    let level = |k: usize| behind.bottom(k) + spec.timber.height / 2.0;
    turned
        .extend(held.windows(2).map(|w| (behind.moment_between(level(w[0]), level(w[1])), (w[0] + w[1]).div_ceil(2))));
    if let Some(low) = held.last().copied().filter(|k| 0 < *k) {
        turned.push((behind.moment_between(level(low), strip.base), low.div_ceil(2)));
    }
    let (h, t) = (spec.timber.height.to_m(), spec.timber.thickness.to_m());
    let per_metre = 1.0 / spec.screws.spacing.to_m();
    let mut all = vec![];
    for (moment, joint_under) in turned {
        let weight = (strip.courses - joint_under) as f64 * h * t * spec.timber.unit_weight().to_kn_per_m3();
        for (demand, duration) in asked(&code, moment, timber_rules::lasting(case, state)) {
            let one = pulled_out(&joint(spec, &code), 1, duration)?;
            let given = [weight, per_metre, one.force.to_kn(), t];
            let holds = over_joint(given[0], given[1], given[2], given[3]);
            let traces = vec![Trace::new(&OVER_JOINT, given.map(Into::into).to_vec()), one.trace, behind.trace()];
            let by = (code.words(), case.basis.key);
            let figures = (demand, holds, Unit::KNM);
            all.push(check(case, strip, state, CheckKind::CourseOpening, by, figures, traces));
        }
    }
    Ok(all)
}
