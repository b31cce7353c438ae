//! Does each board carry the soil behind it, how far does it bow, and do its screws hold it?

use groundhold_earth::{Active, Method as Theory, Ordinate};
use groundhold_member::timber::{Board as Spanning, BoardCheck, Section, check_board};
use groundhold_quantity::{Length, LineForce, Pressure};
use groundhold_working::{Refused, Trace, Unit};

use super::loads::{self, UNFACTORED};
use super::{screws, timber};
use crate::systems::timber_posts::{Boards, TimberPostSpec};
use crate::workings::BOARD_LOAD;
use crate::{Bay, Board, Check, CheckKind, Layout, Line, LoadCase, WallCase};

/// What a board carries per metre, not factored.
#[derive(Debug, Clone)]
struct Carried {
    permanent: LineForce,
    variable: LineForce,
    trace: Trace,
}

/// The worst board of every bay in every state, in bending, shear and bow; in withdrawal where boards stand in front.
///
/// # Errors
/// As the pressure theory or the timber rules refuse.
pub(crate) fn checks(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Result<Vec<Check>, Refused> {
    let line = Line::new(&case.stations);
    let mut all = vec![];
    for bay in &layout.bays {
        let slope = line.at((bay.chainage.0 + bay.chainage.1) / 2.0).slope_behind;
        for state in loads::states(case).into_iter().filter(|s| *s != LoadCase::Wind) {
            let Some(active) = loads::active(case, &UNFACTORED, state, Theory::Rankine, bay.retained, slope)? else {
                continue;
            };
            let mut of_bay: Vec<Check> = vec![];
            let in_bay = |b: &&Board| b.from_post <= bay.from_post && bay.to_post <= b.to_post;
            for board in layout.boards.iter().filter(in_bay) {
                let Some(carried) = carried(case, spec, &active, bay, board, state) else { continue };
                for check in one(case, spec, layout, bay, board, state, &carried)? {
                    keep_worse(&mut of_bay, check);
                }
            }
            all.extend(of_bay);
        }
    }
    Ok(all)
}

/// Keeps the worse of two checks of one kind.
fn keep_worse(kept: &mut Vec<Check>, check: Check) {
    match kept.iter_mut().find(|k| k.kind == check.kind) {
        Some(k) if k.utilisation < check.utilisation => *k = check,
        Some(_) => {}
        None => kept.push(check),
    }
}

/// Pressure between two depths, of one part of it, by trapezia.
fn integrated(active: &Active, from: Length, to: Length, of: impl Fn(&Ordinate) -> Pressure) -> LineForce {
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
fn carried(
    case: &WallCase,
    spec: &TimberPostSpec,
    active: &Active,
    bay: &Bay,
    board: &Board,
    state: LoadCase,
) -> Option<Carried> {
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
    debug_assert!(height <= spec.board.height + Length::mm(0.01));
    let given = vec![p1.to_kpa().into(), p2.to_kpa().into(), height.to_m().into(), 1.0.into()];
    Some(Carried { permanent, variable, trace: Trace::new(&BOARD_LOAD, given) })
}

fn one(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    bay: &Bay,
    board: &Board,
    state: LoadCase,
    carried: &Carried,
) -> Result<Vec<Check>, Refused> {
    let posts = &layout.posts[board.from_post - 1..board.to_post];
    let widest = posts.windows(2).map(|p| p[1].chainage - p[0].chainage).reduce(Length::max).unwrap_or_default();
    let spanning = Spanning {
        section: Section::rectangle(spec.board.height, spec.board.thickness),
        bay: widest,
        bays: board.to_post - board.from_post,
        permanent: carried.permanent,
        variable: carried.variable,
        lasting: timber::lasting(case, state),
        bow_limit: spec.bow_limit,
    };
    let code = timber::code(case, state, spec.board.grade);
    let found: BoardCheck = check_board(&spanning, spec.board.grade, &code)?;
    let accident = loads::is_accident(case, state);
    let check = |kind, method, demand, capacity, unit, utilisation, trace: Trace| Check {
        kind,
        on: format!("bay {}", bay.number),
        case: state,
        method,
        basis: case.basis.key,
        demand,
        capacity,
        unit,
        utilisation,
        traces: vec![trace, found.effects_trace.clone(), carried.trace.clone()],
        governs: loads::governs(case, state),
    };
    let (b, s, bow) = (&found.strength.bending, &found.strength.shear, &found.bow);
    let words = code.words();
    let mut all = vec![
        check(
            CheckKind::BoardBending,
            words,
            b.demand.to_knm(),
            b.capacity.to_knm(),
            Unit::KNM,
            b.utilisation,
            b.trace.clone(),
        ),
        check(
            CheckKind::BoardShear,
            words,
            s.demand.to_kn(),
            s.capacity.to_kn(),
            Unit::KN,
            s.utilisation,
            s.trace.clone(),
        ),
    ];
    if !accident {
        let method = "final bow with creep";
        let (last, allowed) = (bow.last.to_mm(), bow.allowed.to_mm());
        all.push(check(CheckKind::BoardBow, method, last, allowed, Unit::MM, bow.utilisation, bow.trace.clone()));
    }
    if spec.boards == Boards::InFront {
        all.push(screws::check(case, spec, bay, state, found.reaction)?);
    }
    Ok(all)
}
