//! What is said of posts in the ground, whatever they are made of: a hole that was refused, a drain that is relied on, methods
//! that disagree, a fence on top, holes that stand close?

use groundhold_earth::Method as Theory;
use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, trim};

use super::loads::{self, UNFACTORED};
use super::place::refusal;
use super::{Posted, highest};
use crate::{CheckKind, Layout, LoadCase, MethodMargin, Post, Verdict, WallCase, findings};

/// Required depths further apart than this are worth a word.
const DISAGREE: f64 = 1.3;

/// As findings and checks name a post.
pub(crate) fn post_name(number: usize) -> String {
    format!("post {number}")
}

/// True where the hole of a post was stopped and the post turns over in it.
pub(crate) fn fails_refused(post: &Post, verdict: &Verdict) -> bool {
    let stopped = post.refused_at.is_some_and(|r| post.depth >= r - Length::mm(0.5));
    stopped
        && verdict.checks.iter().any(|c| c.kind == CheckKind::Embedment && c.fails() && c.on == post_name(post.number))
}

/// Of a hole that was stopped; its remedies are the system's.
pub(crate) fn hole_refused(case: &WallCase, post: &Post, verdict: &Verdict) -> Finding {
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
    f
}

/// The deciding margin of a post in the drained state with the least factor.
fn margin_of<'a>(verdict: &'a Verdict, post: &Post) -> Option<&'a MethodMargin> {
    let of_post = verdict.margins.iter().filter(|m| m.post == post.number && m.governs && m.case == LoadCase::Drained);
    of_post.min_by(|a, b| a.factor.unwrap_or(f64::MAX).total_cmp(&b.factor.unwrap_or(f64::MAX)))
}

/// Where the wall would fail with its drain blocked, though it holds with a drain that works.
pub(crate) fn drain_relied_on(
    case: &WallCase,
    verdict: &Verdict,
    keep: &str,
    deeper: impl FnOnce() -> Option<Remedy>,
) -> Option<Finding> {
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
        f.remedies.extend(deeper());
    }
    f.remedies.push(Remedy::theirs(keep));
    Some(f)
}

/// Where methods ask for depths that lie far apart.
pub(crate) fn methods_disagree(case: &WallCase, layout: &Layout, verdict: &Verdict) -> Option<Finding> {
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

/// A fence on the posts.
pub(crate) fn fence(case: &WallCase, highest: &Post) -> Option<Finding> {
    let f = case.fence.as_ref()?;
    let of = |state| loads::on_post(case, &UNFACTORED, state, Theory::Rankine, highest).ok();
    let (still, windy) = (of(LoadCase::Drained)?, of(LoadCase::Wind)?);
    let ratio = (windy.moment - still.moment) / still.moment;
    let compared = if ratio.is_finite() {
        format!("{} times the moment of the soil at post {}", trim(ratio, 1), highest.number)
    } else {
        format!("the only moment at post {}", highest.number)
    };
    let says = format!(
        "Wind of {} on the fence of {} gives {compared}; the wall is checked with it.",
        case.units.pressure(f.wind),
        case.units.length(f.height)
    );
    let remedy = Remedy::theirs("A fence on posts of its own, behind the wall and clear of its wedge.");
    let mut finding = Finding::new(&findings::FENCE_ON_TOP, Place::of(&case.id), says).with_remedy(remedy);
    finding.trace = windy.traces.into_iter().next();
    Some(finding)
}

/// Posts nearer than three bearing widths, said once, at the closest pair.
pub(crate) fn holes_close(case: &WallCase, wall: &Posted, layout: &Layout) -> Option<Finding> {
    let pairs = layout.posts.windows(2).map(|w| {
        let width = loads::bearing_width(wall, &w[0]).max(loads::bearing_width(wall, &w[1]));
        ((w[1].chainage - w[0].chainage) / width, w[0].number, w[1].chainage - w[0].chainage, width)
    });
    let closest = pairs.min_by(|a, b| a.0.total_cmp(&b.0))?;
    let (ratio, number, apart, width) = closest;
    if 3.0 <= ratio {
        return None;
    }
    let says = format!(
        "Posts {number} and {} stand {} apart, {} times the width of {} that presses on the ground; each is counted in full.",
        number + 1,
        case.units.length(apart),
        trim(ratio, 1),
        case.units.length(width)
    );
    let place = Place::on(&case.id, format!("posts {number} and {}", number + 1));
    Some(Finding::new(&findings::HOLES_CLOSE, place, says).with_utilisation(3.0 / ratio.max(1e-3)))
}
