//! How is a failing check said, whatever the wall is made of?

use groundhold_finding::{Finding, Kind, Place};
use groundhold_quantity::{Length, trim};
use groundhold_working::Unit;

use crate::{Check, CheckKind, Verdict, WallCase};

/// Demand and capacity in words of their unit.
fn figure(case: &WallCase, value: f64, unit: Unit) -> String {
    match unit {
        Unit::MM => case.units.length(Length::mm(value)),
        Unit::NONE => trim(value, 2),
        u => format!("{} {}", trim(value, 2), u.0),
    }
}

/// The sentence about a check.
fn sentence(case: &WallCase, c: &Check) -> String {
    let place = if c.on.is_empty() { String::new() } else { format!("{}, ", c.on) };
    let (demand, capacity) = (figure(case, c.demand, c.unit), figure(case, c.capacity, c.unit));
    let figures = match c.kind {
        CheckKind::Slip => format!("factor {capacity}, wanted {demand}"),
        CheckKind::BoardBow
        | CheckKind::TimberBow
        | CheckKind::PostDeflection
        | CheckKind::Eccentricity
        | CheckKind::JointEccentricity => {
            format!("{demand}, limit {capacity}")
        }
        _ => format!("{demand} against {capacity}"),
    };
    format!("{place}{}, {} ({}, {}): {figures}.", c.case.words(), c.kind.words(), c.method, c.basis)
}

fn upper_first(s: String) -> String {
    let mut letters = s.chars();
    letters.next().map(|c| c.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// A finding about the worst of the failing checks of these kinds, if any fails.
pub(crate) fn failing(
    case: &WallCase,
    verdict: &Verdict,
    kinds: &[CheckKind],
    kind: &'static Kind,
    counts: impl Fn(&Check) -> bool,
) -> Option<Finding> {
    let all: Vec<&Check> =
        verdict.checks.iter().filter(|c| c.fails() && kinds.contains(&c.kind) && counts(c)).collect();
    let worst = all.iter().copied().reduce(|a, b| if b.utilisation > a.utilisation { b } else { a })?;
    let mut places: Vec<&str> = all.iter().map(|c| c.on.as_str()).collect();
    places.dedup();
    places.sort_unstable();
    places.dedup();
    let others = match places.len() {
        0 | 1 => String::new(),
        n => format!(" {} other place(s) fail too.", n - 1),
    };
    let says = upper_first(sentence(case, worst)) + &others;
    let finding = Finding::new(kind, Place::on(&case.id, worst.on.clone()), says).with_utilisation(worst.utilisation);
    Some(match worst.traces.first() {
        Some(t) => finding.with_trace(t.clone()),
        None => finding,
    })
}
