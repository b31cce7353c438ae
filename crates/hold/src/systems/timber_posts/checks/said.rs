//! Which checks fail, what is said about it, and what would mend it?

use groundhold_finding::{Finding, Kind, Remedy};

use crate::posted::said::{drain_relied_on, fails_refused, hole_refused, methods_disagree, post_name};
use crate::posted::{loads, solved_states};
use crate::said::failing;
use crate::systems::timber_posts::{TimberPostSpec, remedies};
use crate::{Check, CheckKind, Layout, LoadCase, Post, Verdict, WallCase, findings};

/// Which checks make which finding, embedment apart.
const ROWS: [(&[CheckKind], &Kind); 6] = [
    (&[CheckKind::PostBending, CheckKind::PostShear], &findings::POST_OVERSTRESSED),
    (&[CheckKind::PostDeflection], &findings::POST_MOVES),
    (&[CheckKind::BoardBending, CheckKind::BoardShear], &findings::BOARD_OVERSTRESSED),
    (&[CheckKind::BoardBow], &findings::BOARD_BOWS),
    (&[CheckKind::Screws], &findings::SCREWS_PULL),
    (&[CheckKind::Slip], &findings::SLIP),
];

/// What mends failing checks of these kinds.
fn mend(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, kinds: &[CheckKind]) -> Vec<Remedy> {
    match kinds.first() {
        Some(CheckKind::PostDeflection) => remedies::leaning(case, spec, layout, kinds),
        Some(CheckKind::PostBending | CheckKind::PostShear) => remedies::post(case, spec, kinds),
        Some(CheckKind::BoardBending | CheckKind::BoardShear | CheckKind::BoardBow) => {
            remedies::board(case, spec, kinds)
        }
        Some(CheckKind::Screws) => remedies::screws(case, spec),
        Some(CheckKind::Slip) => crate::slip::remedies(),
        // Embedment has its own; walls that stand by weight have none here.
        _ => vec![],
    }
}

/// One finding per kind of failing check, with the worst place; one per refused hole; one where the drain is relied on. Remedies are
/// solved for only where `mended`.
pub(crate) fn findings(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    verdict: &Verdict,
    mended: bool,
) -> Vec<Finding> {
    let mut all = vec![];
    let refused: Vec<&Post> = layout.posts.iter().filter(|p| fails_refused(p, verdict)).collect();
    for post in &refused {
        let mut f = hole_refused(case, post, verdict);
        f.remedies = remedies::refused(case, spec, layout, post);
        all.push(f);
    }
    let elsewhere = |c: &Check| refused.iter().all(|p| c.on != post_name(p.number));
    let states: Vec<LoadCase> = solved_states(case).collect();
    if let Some(f) = failing(case, verdict, &[CheckKind::Embedment], &findings::EMBEDMENT_SHALLOW, elsewhere) {
        let remedies = if mended { remedies::embedment(case, spec, layout, &states) } else { vec![] };
        all.push(remedies.into_iter().fold(f, Finding::with_remedy));
    }
    for (kinds, kind) in ROWS {
        if let Some(f) = failing(case, verdict, kinds, kind, |_| true) {
            let remedies = if mended { mend(case, spec, layout, kinds) } else { vec![] };
            all.push(remedies.into_iter().fold(f, Finding::with_remedy));
        }
    }
    let deeper = || remedies::deeper(case, spec, layout, &loads::states(case));
    all.extend(drain_relied_on(case, verdict, KEEP, deeper));
    all.extend(crate::said::situations(case, verdict));
    all.extend(methods_disagree(case, layout, verdict));
    all
}

/// What a wall of boards needs so that its drain stays one.
const KEEP: &str = "Rodding points and an outlet that is seen, cleaned each autumn and after the first storm; open gaps of 5 to \
                    10 mm between boards on clean stone, so that water cannot stand.";
