//! Does a tie hold its pull: in the bank, in its timber, in its screws, and does its cross piece?

use groundhold_earth::basis::Margin;
use groundhold_earth::soil::Kind;
use groundhold_earth::{Combination, Soil};
use groundhold_member::fix::{Joint, Rules, Screw, sheared};
use groundhold_member::timber::{Code, Duration, Effects, GAMMA_M, Section, cd, check_member, k1, k4, kmod};
use groundhold_quantity::{Density, Force, Length, Moment, WATER, math};
use groundhold_working::{Refused, Trace, Unit};

use super::loads::{Behind, Pushed, RowLoad};
use crate::loads::{UNFACTORED, combinations, is_accident};
use crate::posted::embedment::over;
use crate::systems::stacked_timbers::{StackedTimberSpec, courses};
use crate::workings::{CROSS_PIECE, CROSS_PIECE_CLAY, CrossPiece, TIE, cross_piece, cross_piece_clay, tie};
use crate::{Check, CheckKind, Layout, LoadCase, Strip, WallCase, timber_rules};

/// Wanted ratio of ultimate to pull of a cross piece with loads as they are: NAVFAC DM 7.02 (1986), chapter 3; from memory.
const WANTED: f64 = 2.0;
/// Density of softwood where the grade's table gives none: the least of EN 338, C14.
const LEAST_DENSITY: Density = Density::kg_per_m3(290.0);

/// The rules for screws in these timbers.
pub(crate) fn screw_rules(spec: &StackedTimberSpec, code: &Code) -> Rules {
    Rules::of(spec.timber.grade, code).unwrap_or(Rules::En1995 { service_class: 3, density: LEAST_DENSITY })
}

/// A screw through a timber into the one below it.
pub(crate) fn joint(spec: &StackedTimberSpec, code: &Code) -> Joint {
    let screw = Screw::usual(spec.screws.diameter, spec.screws.length);
    Joint { screw, board: spec.timber.height, rules: screw_rules(spec, code) }
}

/// What is asked with the factors of the rules, with how long it lasts: what stays alone, and with what comes and goes.
pub(crate) fn asked(code: &Code, p: Pushed, lasting: Duration) -> Vec<(f64, Duration)> {
    let l = code.loads();
    let mut all = vec![(l.permanent_alone * p.stays, Duration::Permanent)];
    if p.goes > 0.0 {
        all.push((l.permanent * p.stays + l.variable * p.goes, lasting));
    }
    all
}

/// One check of a strip.
pub(crate) fn check(
    case: &WallCase,
    strip: &Strip,
    state: LoadCase,
    kind: CheckKind,
    (method, basis): (&'static str, &'static str),
    (demand, capacity, unit): (f64, f64, Unit),
    traces: Vec<Trace>,
) -> Check {
    Check {
        kind,
        on: strip.on.clone(),
        case: state,
        method,
        basis,
        demand,
        capacity,
        unit,
        utilisation: over(demand, capacity),
        traces,
        governs: crate::loads::governs(case, state),
    }
}

/// Every row of a strip in one state.
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
    let mut all = vec![];
    for c in combinations(case, state) {
        let Some(behind) = Behind::of(case, spec, strip, c, state)? else { return Ok(all) };
        for row in behind.rows() {
            let wide = courses::widest(spec, &layout.strips, strip, row.course);
            all.push(in_the_bank(case, spec, strip, state, c, &behind, &row, wide));
        }
    }
    let Some(behind) = Behind::of(case, spec, strip, &UNFACTORED, state)? else { return Ok(all) };
    for row in behind.rows() {
        let wide = courses::widest(spec, &layout.strips, strip, row.course);
        all.extend(in_its_parts(case, spec, strip, state, &behind, row.pushed.times(wide.to_m()), wide)?);
    }
    Ok(all)
}

/// Effective weight of the ground on the middle of a cross piece.
fn pressed(case: &WallCase, state: LoadCase, behind: &Behind, depth: Length, soil: &Soil) -> f64 {
    let depth = depth.to_m().max(0.0);
    let retained = behind.ground.retained().to_m();
    let wet = match state {
        LoadCase::DrainBlocked => (depth - retained * (1.0 - case.water.blocked.to_fraction())).clamp(0.0, depth),
        _ => 0.0,
    };
    let light = (soil.unit_weight_saturated - WATER).to_kn_per_m3();
    (depth - wet) * soil.unit_weight.to_kn_per_m3() + wet * light
}

#[allow(clippy::too_many_arguments)]
fn in_the_bank(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    state: LoadCase,
    c: &Combination,
    behind: &Behind,
    row: &RowLoad,
    wide: Length,
) -> Check {
    let soil = c.soil(&case.retained_soil);
    let goes = if is_accident(case, state) { 1.0 } else { c.variable };
    let pull = (row.pushed.stays * c.permanent + row.pushed.goes * goes) * wide.to_m();
    let wanted = match case.basis.margin {
        Margin::GlobalFactors if !is_accident(case, state) => WANTED,
        _ => c.wanted.embedment,
    } * c.earth_resistance;
    // The wall's wedge at the level of the tie; what lies behind it rubs.
    let level = (behind.depth(strip.base) - row.depth).to_m().max(0.0);
    let wedge = level * math::tan((45.0 - soil.phi.to_deg() / 2.0).to_radians());
    let beyond = (strip.width - spec.timber.thickness * 2.0).to_m() - wedge;
    let pressed = pressed(case, state, behind, row.depth, &soil);
    let given = [
        pressed,
        soil.phi.to_deg(),
        spec.timber.height.to_m(),
        spec.ties.cross.min(wide).to_m(),
        spec.timber.thickness.to_m(),
        beyond.max(0.0),
        soil.delta_timber.to_deg(),
        wanted,
    ];
    let [pressed, phi, height, length, breadth, beyond, delta, factor] = given;
    let (phi, delta) = (phi.to_radians(), delta.to_radians());
    let (_, _, _, holds) = cross_piece(&CrossPiece { pressed, phi, height, length, breadth, beyond, delta, factor });
    let trace = Trace::new(&CROSS_PIECE, given.map(Into::into).to_vec());
    let mut found = ("Rankine on the cross piece, friction on the tie", holds, trace);
    if let (Kind::Fine, Some(cu)) = (soil.kind, soil.undrained) {
        let given = [cu.to_kpa(), height, length, factor];
        let (_, clay) = cross_piece_clay(given[0], given[1], given[2], given[3]);
        if clay < found.1 {
            let trace = Trace::new(&CROSS_PIECE_CLAY, given.map(Into::into).to_vec());
            found = ("twice the undrained strength on the cross piece", clay, trace);
        }
    }
    check(
        case,
        strip,
        state,
        CheckKind::DeadmanPull,
        (found.0, c.key),
        (pull, found.1, Unit::KN),
        vec![found.2, behind.trace()],
    )
}

/// Tension, screws and cross piece under a pull that is not factored.
fn in_its_parts(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    state: LoadCase,
    behind: &Behind,
    pull: Pushed,
    wide: Length,
) -> Result<Vec<Check>, Refused> {
    let grade = spec.timber.grade;
    let code = timber_rules::code(case, state, grade);
    let lasting = timber_rules::lasting(case, state);
    let of = (code.words(), case.basis.key);
    let mut all = vec![];
    for (demand, duration) in asked(&code, pull, lasting) {
        let share = match code {
            Code::En1995 { service_class, .. } => kmod(service_class, duration) / GAMMA_M,
            Code::Nds { .. } => cd(duration),
            Code::As1720 { wet, capacity, .. } => capacity * k1(duration) * k4(grade, wet),
        };
        // Two screws stand side by side.
        let given = [
            spec.timber.thickness.to_mm(),
            spec.timber.height.to_mm(),
            (spec.screws.diameter * 2.0).to_mm(),
            grade.tension.to_mpa(),
            share,
        ];
        let holds = tie(given[0], given[1], given[2], given[3], given[4]);
        let traces = vec![Trace::new(&TIE, given.map(Into::into).to_vec()), behind.trace()];
        all.push(check(case, strip, state, CheckKind::TieTension, of, (demand, holds, Unit::KN), traces));
        let one = sheared(&joint(spec, &code), duration, 90.0)?;
        let holds = one.force.to_kn() * f64::from(spec.ties.screws);
        let traces = vec![one.trace, behind.trace()];
        all.push(check(case, strip, state, CheckKind::TieFixing, of, (demand, holds, Unit::KN), traces));
    }
    // The cross piece is pressed evenly and held in its middle.
    let length = spec.ties.cross.min(wide).to_m();
    let (m, v) = (|t: f64| Moment::knm(t * length / 8.0), |t: f64| Force::kn(t / 2.0));
    let effects = Effects::permanent(m(pull.stays), v(pull.stays)).with_variable(m(pull.goes), v(pull.goes), lasting);
    let section = Section::rectangle(spec.timber.height, spec.timber.thickness);
    let found = check_member(grade, &section, &code, &effects, Length::ZERO)?;
    let (b, s) = (&found.bending, &found.shear);
    let of_bending = (b.demand.to_knm(), b.capacity.to_knm(), Unit::KNM);
    all.push(check(case, strip, state, CheckKind::CrossBending, of, of_bending, vec![b.trace.clone()]));
    let of_shear = (s.demand.to_kn(), s.capacity.to_kn(), Unit::KN);
    all.push(check(case, strip, state, CheckKind::CrossShear, of, of_shear, vec![s.trace.clone()]));
    Ok(all)
}
