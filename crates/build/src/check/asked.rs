//! Which triggers fire, for whom is that a question, and what would keep below them?

use groundhold_finding::{Finding, Kind, Place, Remedy};
use groundhold_quantity::Length;

use super::cited;
use super::verdict::{self, Verdict};
use crate::findings::{
    DEEP_EXCAVATION, ENGINEER, FACT_NOT_TOLD, NEAR_EASEMENT, NEAR_STREET, NOTICE, PERMIT, VEHICLES_BEHIND,
};
use crate::regions::EVERYWHERE;
use crate::{Condition, Consequence, ExcavationFacts, Facts, Measured, PadFacts, Region, Trigger, WallFacts};

/// A trigger that fires: its finding's kind, its reason, demand over limit, what would mend it.
struct Reason {
    kind: &'static Kind,
    says: String,
    utilisation: Option<f64>,
    remedy: Option<Remedy>,
}

pub(super) fn wall(region: &Region, facts: &Facts, w: &WallFacts, said: &mut Vec<Finding>) {
    let (mut reasons, mut missing) = (vec![], vec![]);
    for t in region.triggers.iter().chain(EVERYWHERE) {
        if t.measured == Measured::CombinedTiers && !tells_tiers(facts, w) {
            continue;
        }
        let Some(measure) = verdict::measure_of_wall(t, w) else { continue };
        judge(region, t, measure, verdict::on_wall(t, w), &mut reasons, &mut missing);
    }
    if w.boundary == crate::Near::NotTold {
        missing.push("the distance to the boundary");
    }
    if super::frost::wall(region, facts, w, said) {
        missing.push("how deep the ground freezes here");
    }
    let asked = reasons.iter().any(|r| [PERMIT.code, ENGINEER.code].contains(&r.kind.code));
    super::timber::wall(region, w, asked, said);
    gather(region, Place::of(&w.id), reasons, missing, said);
}

/// Of two walls of the job only the upper one tells about the two.
pub(super) fn tells_tiers(facts: &Facts, w: &WallFacts) -> bool {
    let listed = |id: &str| facts.walls.iter().any(|o| o.id == id);
    w.beside.iter().any(|b| b.is_lower || !listed(&b.other))
}

pub(super) fn pad(region: &Region, p: &PadFacts, said: &mut Vec<Finding>) {
    let (mut reasons, mut missing) = (vec![], vec![]);
    for t in region.triggers {
        let Some(measure) = verdict::measure_of_pad(t, p) else { continue };
        judge(region, t, measure, verdict::on_pad(t, p), &mut reasons, &mut missing);
    }
    gather(region, Place::of(&p.id), reasons, missing, said);
}

pub(super) fn excavation(region: &Region, e: &ExcavationFacts, said: &mut Vec<Finding>) {
    let (mut reasons, mut missing) = (vec![], vec![]);
    for t in region.triggers {
        let Some(measure) = verdict::measure_of_excavation(t, e) else { continue };
        judge(region, t, measure, verdict::on_excavation(t, e), &mut reasons, &mut missing);
    }
    if let Some(rule) = region.excavation
        && rule.support_from <= e.depth
    {
        let says = format!(
            "The dig is {} deep, the mark is {}. {} {}",
            region.units.length(e.depth),
            region.units.length(rule.support_from),
            rule.says,
            cited(rule.source, rule.status, region)
        );
        let utilisation = Some(e.depth / rule.support_from);
        reasons.push(Reason { kind: &DEEP_EXCAVATION, says, utilisation, remedy: None });
    }
    super::around::beside_building(region, e, &mut missing, said);
    gather(region, Place::on(&e.element, e.on.as_str()), reasons, missing, said);
}

fn judge(
    region: &Region,
    t: &Trigger,
    measure: Length,
    verdict: Verdict,
    reasons: &mut Vec<Reason>,
    missing: &mut Vec<&'static str>,
) {
    match verdict {
        Verdict::No => {}
        Verdict::NotTold(what) => missing.extend(what),
        Verdict::Fires => reasons.push(Reason {
            kind: kind_of(t),
            says: format!(
                "{} Here the {} is {}. {}",
                t.says,
                t.measured.words(),
                region.units.length(measure),
                cited(t.source, t.status, region)
            ),
            utilisation: (t.above >= Length::mm(100.0)).then(|| measure / t.above),
            remedy: remedy(region, t, measure),
        }),
    }
}

fn kind_of(t: &Trigger) -> &'static Kind {
    let has = |f: fn(&Condition) -> bool| t.when.iter().any(f);
    match t.asks {
        _ if has(|c| matches!(c, Condition::StreetWithin(_))) => &NEAR_STREET,
        _ if has(|c| matches!(c, Condition::EasementWithin(_))) => &NEAR_EASEMENT,
        _ if has(|c| matches!(c, Condition::Vehicles)) => &VEHICLES_BEHIND,
        Consequence::Permit => &PERMIT,
        Consequence::Engineer => &ENGINEER,
        Consequence::Notice => &NOTICE,
    }
}

/// What would keep the measure at its limit, or the wall out of the distance.
fn remedy(region: &Region, t: &Trigger, measure: Length) -> Option<Remedy> {
    let units = region.units;
    let lower = (t.above >= Length::mm(100.0) && t.above < measure).then(|| {
        let (by, under) = (measure - t.above, if t.at_least { " less than" } else { "" });
        format!("{} lower, so that the {} is{under} {}", units.length(by), t.measured.words(), units.length(t.above))
    });
    let away = t.when.iter().find_map(|c| match c {
        Condition::BoundaryWithin(d) => Some(format!("{} or more from the boundary", units.length(*d))),
        Condition::BuildingWithin(d) => Some(format!("{} or more from the building", units.length(*d))),
        Condition::StreetWithin(d) => Some(format!("{} or more from the street", units.length(*d))),
        Condition::EasementWithin(d) => Some(format!("{} or more from the easement or main", units.length(*d))),
        Condition::WallWithin(d) => Some(format!("{} or more from the other wall", units.length(*d))),
        Condition::BoundaryWithinHeight => Some(format!("{} or more from the boundary", units.length(measure))),
        Condition::BuildingWithinHeights(n) => {
            Some(format!("{} or more from the building", units.length(measure * *n)))
        }
        _ => None,
    });
    let both: Vec<String> = lower.into_iter().chain(away).collect();
    (!both.is_empty()).then(|| Remedy::theirs(format!("Build it {}.", both.join(", or "))))
}

/// One finding for each kind, with all reasons; and one for what was not told.
fn gather(
    region: &Region,
    place: Place,
    reasons: Vec<Reason>,
    mut missing: Vec<&'static str>,
    said: &mut Vec<Finding>,
) {
    let mut kinds: Vec<&'static Kind> = vec![];
    for r in &reasons {
        if !kinds.iter().any(|k| k.code == r.kind.code) {
            kinds.push(r.kind);
        }
    }
    for kind in kinds {
        let mine = || reasons.iter().filter(|r| r.kind.code == kind.code);
        let says: Vec<&str> = mine().map(|r| r.says.as_str()).collect();
        let mut finding = Finding::new(kind, place.clone(), format!("{} Ask {}.", says.join(" "), who(region, kind)));
        finding.utilisation = mine().filter_map(|r| r.utilisation).reduce(f64::max);
        finding.remedies = mine().filter_map(|r| r.remedy.clone()).collect();
        said.push(finding);
    }
    missing.sort_unstable();
    missing.dedup();
    if !missing.is_empty() {
        let says = format!("Nobody has said {}; rules for {} depend on it.", missing.join(", nor "), region.name);
        said.push(Finding::new(&FACT_NOT_TOLD, place, says));
    }
}

fn who(region: &Region, kind: &Kind) -> &'static str {
    match kind.code {
        "B-002" | "B-012" => "a licensed engineer",
        "B-003" => "the neighbour, with notice in writing and in time",
        "B-011" => "the owner of the easement or main",
        _ => region.words.office,
    }
}
