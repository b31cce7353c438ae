//! Which checks fail, what is said about it, and what would mend it?

use groundhold_finding::{Finding, Kind, Place, Remedy};
use groundhold_quantity::{Length, trim};

use super::{highest, loads};
use crate::said::failing;
use crate::systems::timber_posts::posts::refusal;
use crate::systems::timber_posts::{TimberPostSpec, remedies};
use crate::{Check, CheckKind, Layout, LoadCase, MethodMargin, Post, Verdict, WallCase, findings};

/// Required depths further apart than this are worth a word.
const DISAGREE: f64 = 1.3;

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
        all.push(hole_refused(case, spec, layout, post, verdict));
    }
    let elsewhere = |c: &Check| refused.iter().all(|p| c.on != post_name(p.number));
    let states: Vec<LoadCase> = super::solved_states(case).collect();
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
    all.extend(drain_relied_on(case, spec, layout, verdict));
    all.extend(crate::said::situations(case, verdict));
    all.extend(methods_disagree(case, layout, verdict));
    all
}

fn post_name(number: usize) -> String {
    format!("post {number}")
}

fn fails_refused(post: &Post, verdict: &Verdict) -> bool {
    let stopped = post.refused_at.is_some_and(|r| post.depth >= r - Length::mm(0.5));
    stopped
        && verdict.checks.iter().any(|c| c.kind == CheckKind::Embedment && c.fails() && c.on == post_name(post.number))
}

fn hole_refused(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, post: &Post, verdict: &Verdict) -> Finding {
    let of_post = verdict.checks.iter().filter(|c| c.fails() && c.kind == CheckKind::Embedment);
    let worst = of_post
        .filter(|c| c.on == post_name(post.number))
        .reduce(|a, b| if b.utilisation > a.utilisation { b } else { a });
    let what = refusal(case, post).map_or("rock", |r| r.what.as_str());
    let margin = margin_of(verdict, post);
    let factor = margin
        .and_then(|m| m.factor.map(|f| (f, m.wanted)))
        .map(|(f, w)| format!(" Factor {} by {}, wanted {}.", trim(f, 2), margin.map_or("", |m| m.method), trim(w, 2)));
    let says = format!(
        "Post {}: {what} at {}; the post holds {} of what it must.{}",
        post.number,
        case.units.length(post.depth),
        worst.map_or("less".into(), |c| format!("{} %", trim(100.0 / c.utilisation, 0))),
        factor.unwrap_or_default()
    );
    let place = Place::on(&case.id, post_name(post.number));
    let mut f = Finding::new(&findings::HOLE_REFUSED, place, says);
    f.utilisation = worst.map(|c| c.utilisation);
    f.trace = worst.and_then(|c| c.traces.first().cloned());
    f.remedies = remedies::refused(case, spec, layout, post);
    f
}

/// The deciding margin of a post in the drained state with the least factor.
fn margin_of<'a>(verdict: &'a Verdict, post: &Post) -> Option<&'a MethodMargin> {
    let of_post = verdict.margins.iter().filter(|m| m.post == post.number && m.governs && m.case == LoadCase::Drained);
    of_post.min_by(|a, b| a.factor.unwrap_or(f64::MAX).total_cmp(&b.factor.unwrap_or(f64::MAX)))
}

/// Where the wall would fail with its drain blocked, though it holds with a drain that works.
fn drain_relied_on(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, verdict: &Verdict) -> Option<Finding> {
    if !loads::is_accident(case, LoadCase::DrainBlocked) {
        return None;
    }
    let blocked = verdict.checks.iter().filter(|c| c.case == LoadCase::DrainBlocked && c.utilisation > 1.0);
    let worst = blocked.reduce(|a, b| if b.utilisation > a.utilisation { b } else { a })?;
    let says = format!(
        "With the drain blocked and water to the ground behind, {} is asked {} times what it has ({}).",
        if worst.on.is_empty() {
            worst.kind.words().to_string()
        } else {
            format!("{} ({})", worst.on, worst.kind.words())
        },
        trim(worst.utilisation, 1),
        worst.method
    );
    let mut f = Finding::new(&findings::DRAIN_BLOCKED, Place::of(&case.id), says).with_utilisation(worst.utilisation);
    f.trace = worst.traces.first().cloned();
    if worst.kind == CheckKind::Embedment {
        let states = loads::states(case);
        f.remedies.extend(remedies::deeper(case, spec, layout, &states));
    }
    let keep = "Rodding points and an outlet that is seen, cleaned each autumn and after the first storm; open gaps of 5 to \
                10 mm between boards on clean stone, so that water cannot stand.";
    f.remedies.push(Remedy::theirs(keep));
    Some(f)
}

fn methods_disagree(case: &WallCase, layout: &Layout, verdict: &Verdict) -> Option<Finding> {
    let post = highest(layout).filter(|p| p.retained > loads::NOTHING)?;
    let depths: Vec<(&MethodMargin, Length)> = verdict
        .margins
        .iter()
        .filter(|m| m.post == post.number && m.case == LoadCase::Drained)
        .filter_map(|m| m.depth.map(|d| (m, d)))
        .collect();
    let least = depths.iter().reduce(|a, b| if b.1 < a.1 { b } else { a })?;
    let most = depths.iter().reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    let ratio = most.1 / least.1.max(Length::mm(1.0));
    if ratio < DISAGREE {
        return None;
    }
    let decides: Vec<&str> = depths.iter().filter(|d| d.0.governs).map(|d| d.0.method).collect();
    let says = format!(
        "Post {}: {} asks for {} deep, {} for {}: {} times as much. What decides here: {}.",
        post.number,
        least.0.method,
        case.units.length(least.1),
        most.0.method,
        case.units.length(most.1),
        trim(ratio, 1),
        decides.join(" and ")
    );
    let place = Place::on(&case.id, post_name(post.number));
    let finding = Finding::new(&findings::METHODS_DISAGREE, place, says);
    Some(match &most.0.trace {
        Some(t) => finding.with_trace(t.clone()),
        None => finding,
    })
}
