//! Does each part carry what is asked of it? All checks of a wall of steel posts with panels and the findings that follow.

pub(crate) mod panels;
pub(crate) mod posts;
mod said;

pub(crate) use said::LEAST_SEAT;

use std::collections::BTreeMap;

use groundhold_finding::{Finding, Place};
use groundhold_working::Refused;

use super::SteelPostSpec;
use crate::posted::{embedment, highest, loads, margins, shown};
use crate::stand::Stand;
use crate::{Layout, Verdict, WallCase, findings, slip};

/// Everything there is to say about a wall of steel posts; without other methods beside and without remedies where not
/// `thorough`.
pub(crate) fn judge(case: &WallCase, spec: &SteelPostSpec, layout: &Layout, thorough: bool) -> Verdict {
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
    let (wall, most) = (spec.posted(), highest(layout));
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
            let all = most.is_some_and(|p| p.number == post.number) && !loads::is_accident(case, state);
            match margins::margins(case, &wall, &layout.bays, post, state, all) {
                Ok(m) => verdict.margins.extend(m),
                Err(why) => note(place(), why),
            }
        }
        match posts::of_post(case, spec, layout, post) {
            Ok(c) => verdict.checks.extend(c),
            Err(why) => note(place(), why),
        }
    }
    match panels::checks(case, spec, layout) {
        Ok(c) => verdict.checks.extend(c),
        Err(why) => note("panels".into(), why),
    }
    let highest_place = most.map(|p| Stand::of_post(layout, p));
    match slip::checks(case, highest_place.as_ref()) {
        Ok((checks, circle)) => {
            verdict.checks.extend(checks);
            verdict.slip = circle;
        }
        Err(why) => note("the bank".into(), why),
    }
    if let Some(post) = most {
        if thorough {
            // A theory may refuse a situation that need not be met; then there is no figure to show.
            for state in loads::beside(case) {
                verdict.checks.extend(embedment::checks(case, &wall, &layout.bays, post, state).unwrap_or_default());
                verdict.checks.extend(posts::in_state(case, spec, layout, post, state).unwrap_or_default());
            }
        }
        shown::pushes(case, post, &mut verdict);
    }
    verdict.findings = said::findings(case, spec, layout, &verdict, thorough);
    verdict.findings.extend(said::around(case, spec, layout));
    if thorough {
        verdict.findings.extend(crate::said::situations(case, &verdict));
    }
    verdict.findings.extend(said::of_layout(case, spec, layout));
    verdict.findings.extend(refused.into_iter().map(|(why, place)| {
        Finding::new(&findings::CANNOT_CHECK, Place::on(&case.id, place), format!("A check could not be made: {why}."))
    }));
    verdict.findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.kind.code.cmp(b.kind.code)));
    verdict
}
