//! How is a failing check said, whatever the wall is made of?

use groundhold_finding::{Finding, Kind, Place, Remedy};
use groundhold_quantity::{Length, trim};
use groundhold_working::Unit;

use crate::loads::beside;
use crate::{Check, CheckKind, LoadCase, Verdict, WallCase, findings};

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

/// What is said of each situation that need not be met and in which the highest place would fail, and of what a check for an
/// earthquake leaves out.
pub(crate) fn situations(case: &WallCase, verdict: &Verdict) -> Vec<Finding> {
    let worst = |s: &LoadCase| {
        let of = verdict.checks.iter().filter(|c| c.case == *s && c.utilisation > 1.0);
        of.reduce(|a, b| if b.utilisation > a.utilisation { b } else { a })
    };
    let found = beside(case).into_iter().filter_map(|s| Some(would_fail(case, s, worst(&s)?)));
    found.chain(shaken(case)).collect()
}

fn would_fail(case: &WallCase, state: LoadCase, worst: &Check) -> Finding {
    let when = match state {
        LoadCase::JustBuilt => "Just built, while its clay has not drained",
        LoadCase::WetWinter => "In a wet winter, with some water behind it and clay softened",
        LoadCase::MachineBehind => "With a small machine at work behind it",
        LoadCase::Earthquake => "In the earthquake that the job tells of",
        _ => state.words(),
    };
    let asked = match worst.utilisation.is_finite() {
        true => format!("is asked {} times what it has", trim(worst.utilisation, 1)),
        false => "has nothing against what is asked".to_string(),
    };
    let says = format!("{when}, {} ({}) {asked} ({}).", worst.on, worst.kind.words(), worst.method);
    let mut f = Finding::new(&findings::SITUATION, Place::of(&case.id), says).with_utilisation(worst.utilisation);
    f.trace = worst.traces.first().cloned();
    if state == LoadCase::MachineBehind {
        f.remedies
            .push(Remedy::theirs("Machines and loaded barrows stay back from the edge by the height of the wall."));
    }
    f.remedies.push(Remedy::theirs(format!(
        "Where that may come here, `must_meet = [\"{}\"]` under `[ground]` makes the plan meet it.",
        state.key()
    )));
    f
}

fn shaken(case: &WallCase) -> Option<Finding> {
    let sideways = case.shaking?;
    let says = format!(
        "{} is checked for a steady push of {} % of its weight. The ground in front and under it is counted in full, the ground \
         is not shaken upwards, and the slip of the bank is not searched while it shakes.",
        case.id,
        trim(sideways.to_percent(), 1)
    );
    let engineer = Remedy::theirs("Where earthquakes decide, the wall is an engineer's.");
    Some(Finding::new(&findings::SHAKEN_IN_PART, Place::of(&case.id), says).with_remedy(engineer))
}
