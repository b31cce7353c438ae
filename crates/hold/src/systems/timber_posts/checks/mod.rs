//! Does each part carry what is asked of it? All checks of a wall and the findings that follow.

mod around;
pub(crate) mod boards;
pub(crate) mod embedment;
mod fit;
mod loads;
mod margins;
mod said;
mod screws;
pub(crate) mod strength;
mod timber;

pub(crate) use embedment::{solved_depth, solved_states};

use std::collections::BTreeMap;

use groundhold_earth::Method as Theory;
use groundhold_finding::{Finding, Place};
use groundhold_working::Refused;

use self::loads::UNFACTORED;
use super::TimberPostSpec;
use crate::stand::Stand;
use crate::{Layout, Line, LoadCase, Post, PressurePoint, Push, Verdict, WallCase, findings, slip};

/// Everything there is to say about a wall of timber posts and boards.
pub(crate) fn judge(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, true)
}

/// The checks that decide, without remedies and without other methods beside them.
pub(crate) fn judge_quick(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, false)
}

fn judged(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, thorough: bool) -> Verdict {
    let mut verdict = Verdict {
        wall: case.id.clone(),
        checks: vec![],
        margins: vec![],
        pushes: vec![],
        pressures: vec![],
        slip: None,
        findings: vec![],
    };
    let mut refused = BTreeMap::new();
    let mut note = |place: String, why: Refused| {
        refused.entry(why.to_string()).or_insert(place);
    };
    let most = highest(layout).map(|p| p.number);
    for post in &layout.posts {
        let place = || format!("post {}", post.number);
        for state in loads::states(case) {
            match embedment::checks(case, spec, &layout.bays, post, state) {
                Ok(c) => verdict.checks.extend(c),
                Err(why) => note(place(), why),
            }
            if !thorough {
                continue;
            }
            let all = most == Some(post.number) && !loads::is_accident(case, state);
            match margins::margins(case, spec, &layout.bays, post, state, all) {
                Ok(m) => verdict.margins.extend(m),
                Err(why) => note(place(), why),
            }
        }
    }
    for (what, found) in
        [("posts", strength::checks(case, spec, layout)), ("boards", boards::checks(case, spec, layout))]
    {
        match found {
            Ok(c) => verdict.checks.extend(c),
            Err(why) => note(what.into(), why),
        }
    }
    let highest_place = highest(layout).map(|p| Stand::of_post(layout, p));
    match slip::checks(case, highest_place.as_ref()) {
        Ok((checks, circle)) => {
            verdict.checks.extend(checks);
            verdict.slip = circle;
        }
        Err(why) => note("the bank".into(), why),
    }
    if let Some(highest) = highest(layout) {
        show_pushes(case, highest, &mut verdict);
    }
    verdict.findings = said::findings(case, spec, layout, &verdict, thorough);
    verdict.findings.extend(around::findings(case, spec, layout));
    verdict.findings.extend(fit::findings(case, spec, layout));
    verdict.findings.extend(refused.into_iter().map(|(why, place)| {
        Finding::new(&findings::CANNOT_CHECK, Place::on(&case.id, place), format!("A check could not be made: {why}."))
    }));
    verdict.findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.kind.code.cmp(b.kind.code)));
    verdict
}

/// The post that holds most: the highest, and among equals the one with the widest bays.
pub(crate) fn highest(layout: &Layout) -> Option<&Post> {
    let more = |a: &Post, b: &Post| {
        (b.retained - a.retained).to_mm() > 0.1
            || ((b.retained - a.retained).to_mm() > -0.1 && (b.tributary - a.tributary).to_mm() > 0.1)
    };
    layout.posts.iter().reduce(|a, b| if more(a, b) { b } else { a })
}

/// Pressures and pushes at the highest place, by both theories, loads and soil as they are.
fn show_pushes(case: &WallCase, post: &Post, verdict: &mut Verdict) {
    let slope = Line::new(&case.stations).at(post.chainage).slope_behind;
    for state in loads::states(case) {
        for theory in [Theory::Rankine, Theory::Coulomb] {
            let Ok(Some(a)) = loads::active(case, &UNFACTORED, state, theory, post.retained, slope) else { continue };
            if theory == Theory::Rankine && state != LoadCase::Wind {
                let points = a.diagram.iter().map(|o| PressurePoint {
                    depth: o.depth,
                    soil: o.soil,
                    load: o.surcharge,
                    water: o.water,
                });
                verdict.pressures.push((state, points.collect()));
            }
            let Ok(on_post) = loads::on_post(case, &UNFACTORED, state, theory, post) else { continue };
            verdict.pushes.push(Push {
                case: state,
                method: theory.name(),
                horizontal: a.horizontal,
                vertical: a.vertical,
                arm: a.arm,
                head: post.behind,
                foot: post.front,
                on: format!("post {}", post.number),
                chainage: post.chainage,
                force: Some(on_post.force),
                moment: Some(on_post.moment),
                governs: theory == Theory::Rankine,
                trace: a.trace,
            });
        }
    }
}
