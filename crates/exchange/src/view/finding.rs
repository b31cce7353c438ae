//! What speaks against the plan, by which working, and what would mend it?

use groundhold_finding::{Adjust, Finding, Remedy, Whose};
use groundhold_working::Trace;
use serde::Serialize;

use super::figure::{Figure, money, number};

#[derive(Serialize)]
pub(super) struct FindingView<'a> {
    code: &'static str,
    name: &'static str,
    severity: &'static str,
    element: &'a str,
    place: &'a str,
    says: &'a str,
    why: &'static str,
    source: &'static str,
    utilisation: Option<f64>,
    working: Option<TraceView>,
    remedies: Vec<RemedyView<'a>>,
}

impl FindingView<'_> {
    pub fn of(f: &Finding) -> FindingView<'_> {
        FindingView {
            code: f.kind.code,
            name: f.kind.name,
            severity: f.severity.word(),
            element: &f.place.element,
            place: &f.place.on,
            says: &f.says,
            why: f.kind.why,
            source: f.kind.source,
            utilisation: f.utilisation.map(number),
            working: f.trace.as_ref().map(TraceView::of),
            remedies: f.remedies.iter().map(RemedyView::of).collect(),
        }
    }
}

/// A working and what was put in: enough to run it again.
#[derive(Serialize)]
struct TraceView {
    name: &'static str,
    given: Vec<GivenView>,
}

#[derive(Serialize)]
struct GivenView {
    key: &'static str,
    words: &'static str,
    value: Figure,
    unit: &'static str,
}

impl TraceView {
    fn of(t: &Trace) -> TraceView {
        let rows = t.working.inputs.iter().zip(&t.given);
        let given = rows.map(|(i, v)| GivenView { key: i.key, words: i.words, value: v.into(), unit: i.unit.0 });
        TraceView { name: t.working.name, given: given.collect() }
    }
}

#[derive(Serialize)]
struct RemedyView<'a> {
    says: &'a str,
    /// "ours" to apply, or "theirs" to decide.
    whose: &'static str,
    change: Vec<AdjustView<'a>>,
    /// What it costs more; negative where it saves.
    cost: Option<f64>,
    proven: bool,
}

impl RemedyView<'_> {
    fn of(r: &Remedy) -> RemedyView<'_> {
        RemedyView {
            says: &r.says,
            whose: if r.whose == Whose::Ours { "ours" } else { "theirs" },
            change: r.change.iter().map(AdjustView::of).collect(),
            cost: r.cost.map(money),
            proven: r.proven,
        }
    }
}

#[derive(Serialize)]
struct AdjustView<'a> {
    element: &'a str,
    field: &'a str,
    value: &'a str,
}

impl AdjustView<'_> {
    fn of(a: &Adjust) -> AdjustView<'_> {
        AdjustView { element: &a.element, field: &a.field, value: &a.value }
    }
}
