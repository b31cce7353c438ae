//! Does each part carry what is asked of it? All checks of a wall of stacked timbers and the findings that follow.

mod loads;
pub(crate) mod place;
mod said;
mod ties;
mod timbers;

use groundhold_finding::{Finding, Place};
use groundhold_working::Refused;

use super::StackedTimberSpec;
use super::mass::Mass;
use crate::loads::{governs, states};
use crate::posted::carried::keep_worse;
use crate::{Check, Layout, Strip, Verdict, WallCase, findings, gravity};

/// Everything there is to say about it.
pub(crate) fn judge(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, true)
}

/// The checks that decide, without remedies for ties and screws.
pub(crate) fn judge_quick(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout) -> Verdict {
    judged(case, spec, layout, false)
}

fn judged(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout, thorough: bool) -> Verdict {
    let mut verdict = gravity::judge(case, &Mass { spec, case }, layout);
    let (checks, refused) = within(case, spec, layout);
    verdict.checks.extend(checks);
    let more = said::findings(case, spec, layout, &verdict, thorough);
    // What relies on the drain is said once, of the worst of all checks.
    verdict.findings.retain(|f| f.kind.code != findings::DRAIN_BLOCKED.code);
    verdict.findings.extend(more);
    verdict.findings.extend(refused.into_iter().map(|(place, why)| {
        Finding::new(&findings::CANNOT_CHECK, Place::on(&case.id, place), format!("A check could not be made: {why}."))
    }));
    verdict.findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.kind.code.cmp(b.kind.code)));
    verdict
}

/// All checks, without what is said of them.
pub(crate) fn alone(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout) -> Vec<Check> {
    let mut all = gravity::checks(case, &Mass { spec, case }, layout);
    all.extend(within(case, spec, layout).0);
    all
}

type Refusals = Vec<(String, String)>;

/// Ties, timbers and screws of every strip in every state, and what could not be checked.
fn within(case: &WallCase, spec: &StackedTimberSpec, layout: &Layout) -> (Vec<Check>, Refusals) {
    let (mut all, mut refused): (Vec<Check>, Refusals) = (vec![], vec![]);
    for strip in layout.strips.iter().filter(|s| !spec.rows(s.courses).is_empty()) {
        match place::checks(case, spec, strip) {
            Ok(c) => all.extend(c),
            Err(why) => note(&mut refused, strip, &why),
        }
        for state in states(case) {
            let found =
                [ties::checks(case, spec, layout, strip, state), timbers::checks(case, spec, layout, strip, state)];
            for found in found {
                match found {
                    Ok(checks) => {
                        let mut of_strip: Vec<Check> = vec![];
                        checks.into_iter().for_each(|c| keep_worse(&mut of_strip, c));
                        all.extend(of_strip);
                    }
                    // In an accident soil may give way by theory: that is a figure, not a check left out.
                    Err(_) if !governs(case, state) => {}
                    Err(why) => note(&mut refused, strip, &why),
                }
            }
        }
    }
    (all, refused)
}

fn note(refused: &mut Refusals, strip: &Strip, why: &Refused) {
    let why = why.to_string();
    if refused.iter().all(|r| r.1 != why) {
        refused.push((strip.on.clone(), why));
    }
}
