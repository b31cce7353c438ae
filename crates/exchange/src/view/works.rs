//! What is done when, and what must be looked at before?

use groundhold_build::{Programme, Task};
use serde::Serialize;

use super::figure::number;

#[derive(Serialize)]
pub(super) struct ProgrammeView<'a> {
    least_days: f64,
    likely_days: f64,
    most_days: f64,
    likely_hours: f64,
    critical: &'a [String],
    tasks: Vec<TaskView<'a>>,
    hold_points: Vec<HoldPointView<'a>>,
    cautions: Vec<CautionView<'a>>,
}

#[derive(Serialize)]
struct TaskView<'a> {
    task: &'a str,
    element: &'a str,
    name: &'a str,
    how: &'a str,
    quantity: f64,
    unit: &'static str,
    people: u32,
    likely_hours: f64,
    start_days: f64,
    finish_days: f64,
    float_days: f64,
    critical: bool,
    after: Vec<&'a str>,
    hold_point: Option<usize>,
}

impl TaskView<'_> {
    fn of(t: &Task) -> TaskView<'_> {
        TaskView {
            task: &t.id,
            element: &t.element,
            name: &t.name,
            how: &t.how,
            quantity: number(t.quantity),
            unit: t.unit,
            people: t.people,
            likely_hours: number(t.hours.likely.to_h()),
            start_days: number(t.start),
            finish_days: number(t.finish),
            float_days: number(t.float),
            critical: t.critical,
            after: t.needs.iter().map(|n| n.task.as_str()).collect(),
            hold_point: t.hold_point,
        }
    }
}

#[derive(Serialize)]
struct HoldPointView<'a> {
    number: usize,
    element: &'a str,
    before: &'a str,
    name: &'a str,
    checks: &'a [String],
}

#[derive(Serialize)]
struct CautionView<'a> {
    caution: &'static str,
    title: &'static str,
    says: &'static str,
    here: &'a str,
    tasks: &'a [String],
    source: &'static str,
}

impl ProgrammeView<'_> {
    pub fn of(p: &Programme) -> ProgrammeView<'_> {
        let hold_points = p.hold_points.iter().map(|h| HoldPointView {
            number: h.number,
            element: &h.element,
            before: &h.before,
            name: &h.name,
            checks: &h.checks,
        });
        let cautions = p.cautions.iter().map(|c| CautionView {
            caution: c.caution.id,
            title: c.caution.title,
            says: c.caution.says,
            here: &c.here,
            tasks: &c.tasks,
            source: c.caution.source,
        });
        ProgrammeView {
            least_days: number(p.length_days.0),
            likely_days: number(p.length_days.1),
            most_days: number(p.length_days.2),
            likely_hours: number(p.hours.likely.to_h()),
            critical: &p.critical,
            tasks: p.tasks.iter().map(TaskView::of).collect(),
            hold_points: hold_points.collect(),
            cautions: cautions.collect(),
        }
    }
}
