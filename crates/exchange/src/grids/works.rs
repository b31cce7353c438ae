//! What is done when, by how many, and what must be looked at before?

use groundhold_plan::Plan;

use crate::grid::{Cell, Grid};

/// The order of work. Days are working days; the first is day 1.
pub(crate) fn programme(plan: &Plan) -> Grid {
    let columns = [
        ("task", 0),
        ("element", 0),
        ("name", 0),
        ("how", 0),
        ("quantity", 2),
        ("unit", 0),
        ("people", 0),
        ("least_hours", 1),
        ("likely_hours", 1),
        ("most_hours", 1),
        ("first_day", 0),
        ("last_day", 0),
        ("float_days", 2),
        ("critical", 0),
        ("after", 0),
        ("hold_point", 0),
        ("cautions", 0),
        ("source", 0),
    ];
    let mut grid = Grid::new("programme", &columns);
    for t in &plan.programme.tasks {
        let after: Vec<&str> = t.needs.iter().map(|n| n.task.as_str()).collect();
        grid.rows.push(vec![
            (&t.id).into(),
            (&t.element).into(),
            (&t.name).into(),
            (&t.how).into(),
            t.quantity.into(),
            t.unit.into(),
            t.people.into(),
            t.hours.low.to_h().into(),
            t.hours.likely.to_h().into(),
            t.hours.high.to_h().into(),
            t.first_day().into(),
            t.last_day().into(),
            t.float.into(),
            t.critical.into(),
            after.join("; ").into(),
            Cell::from(t.hold_point),
            t.cautions.join("; ").into(),
            t.source.into(),
        ]);
    }
    grid
}
