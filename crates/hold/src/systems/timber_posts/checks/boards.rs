//! Does each board carry the soil behind it, how far does it bow, and do its screws hold it?

use groundhold_earth::Method as Theory;
use groundhold_member::timber::{Board as Spanning, BoardCheck, Section, check_board};
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace, Unit};

use super::screws;
use crate::posted::carried::{Carried, carried, keep_worse};
use crate::posted::loads::{self, UNFACTORED};
use crate::systems::timber_posts::{Boards, TimberPostSpec};
use crate::timber_rules as timber;
use crate::{Bay, Board, Check, CheckKind, Layout, Line, LoadCase, WallCase};

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
                let Some(carried) = carried(case, &active, bay, board, state) else { continue };
                for check in one(case, spec, layout, bay, board, state, &carried)? {
                    keep_worse(&mut of_bay, check);
                }
            }
            all.extend(of_bay);
        }
    }
    Ok(all)
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
