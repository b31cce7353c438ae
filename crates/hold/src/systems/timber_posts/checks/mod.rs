//! Does each part carry what is asked of it? All checks of a wall and the findings that follow.

mod around;
pub(crate) mod boards;
mod fit;
mod said;
mod screws;
pub(crate) mod strength;

use std::collections::BTreeMap;

use groundhold_finding::{Finding, Place};
use groundhold_working::Refused;

use super::{TimberPostSpec, ageing};
use crate::posted::{embedment, highest, loads, margins, shown};
use crate::stand::Stand;
use crate::{Check, Layout, LoadCase, Post, Verdict, WallCase, findings, slip};

/// Everything there is to say about a wall of timber posts and boards.
pub(crate) fn judge(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, true)
}

/// The checks that decide, without remedies and without other methods beside them.
pub(crate) fn judge_quick(case: &WallCase, spec: &TimberPostSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, false)
}

fn judged(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, thorough: bool) -> Verdict {
    let new = spec;
    let (then, worn) = match ageing::in_its_year(new) {
        Ok(then) => (then, None),
        Err(why) => (new.clone(), Some(why)),
    };
    let spec = &then;
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
    worn.into_iter().for_each(|why| note("posts and boards".into(), why));
    let wall = spec.posted();
    let most = highest(layout).map(|p| p.number);
    for post in &layout.posts {
        let place = || format!("post {}", post.number);
        for state in loads::states(case) {
            match embedment::checks(case, &wall, &layout.bays, post, state) {
                Ok(c) => verdict.checks.extend(c),
                Err(why) => note(place(), why),
            }
            if !thorough {
                continue;
            }
            let all = most == Some(post.number) && !loads::is_accident(case, state);
            match margins::margins(case, &wall, &layout.bays, post, state, all) {
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
        if thorough {
            verdict.checks.extend(loads::beside(case).into_iter().flat_map(|s| other(case, spec, layout, highest, s)));
        }
        shown::pushes(case, highest, &mut verdict);
    }
    // What is offered changes the wall as it is built new, so for a later year nothing is.
    verdict.findings = said::findings(case, spec, layout, &verdict, thorough && new.ageing.years == 0);
    if thorough {
        verdict.findings.extend(ageing::findings(case, new, layout));
    }
    verdict.findings.extend(around::findings(case, spec, layout));
    verdict.findings.extend(fit::findings(case, spec, layout));
    verdict.findings.extend(refused.into_iter().map(|(why, place)| {
        Finding::new(&findings::CANNOT_CHECK, Place::on(&case.id, place), format!("A check could not be made: {why}."))
    }));
    verdict.findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.kind.code.cmp(b.kind.code)));
    verdict
}

/// Embedment and strength of one post in a situation that need not be met; nothing where a theory refuses it.
fn other(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, post: &Post, state: LoadCase) -> Vec<Check> {
    let held = embedment::checks(case, &spec.posted(), &layout.bays, post, state).unwrap_or_default();
    held.into_iter().chain(strength::in_state(case, spec, layout, post, state).unwrap_or_default()).collect()
}
