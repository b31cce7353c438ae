//! In what order? Tasks with their days, hold points with what is looked at.

use groundhold_plan::Plan;
use groundhold_quantity::trim;

use crate::flow::Flow;
use crate::leaf::{Leaf, Style};
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

/// The order of work and its hold points.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let p = &plan.programme;
    let mut flow = Flow::new(Paper::A4, "Order of work", "Order of work");
    flow.title("Order of work");
    let (low, likely, high) = p.length_days;
    flow.paragraph(&format!(
        "{} people: {} working days, {} when all goes well, {} when it does not. With people enough for everything at once it would still take {} days. Person-hours: {} ({} to {}).",
        trim(plan.job.order.people, 1),
        trim(likely, 1),
        trim(low, 1),
        trim(high, 1),
        trim(p.shortest_days, 1),
        trim(p.hours.likely.to_h(), 0),
        trim(p.hours.low.to_h(), 0),
        trim(p.hours.high.to_h(), 0),
    ));
    flow.small("Days are working days counted from the first morning. Float is how many days a task may slip without moving the end. Numbers under After are the tasks that come first.");
    let mut t = Table::new(vec![
        figures(""),
        sentences("Task"),
        figures("Quantity"),
        figures("Crew"),
        figures("Person-\nhours"),
        words("Days"),
        figures("Wait after"),
        figures("Float"),
        sentences("After"),
    ]);
    for (i, task) in p.tasks.iter().enumerate() {
        let held = task.hold_point.map_or(String::new(), |h| format!("Hold point H{h} first. "));
        let what = format!("{}\n{held}{}", task.name, task.how).trim_end().to_string();
        let days = if task.first_day() == task.last_day() {
            format!("{}", task.first_day())
        } else {
            format!("{}–{}", task.first_day(), task.last_day())
        };
        let number = |id: &str| p.tasks.iter().position(|k| k.id == id).map_or(id.to_string(), |n| (n + 1).to_string());
        let after: Vec<String> = task.needs.iter().map(|n| number(&n.task)).collect();
        t.row([
            format!("{}", i + 1),
            what,
            format!("{} {}", trim(task.quantity, 2), task.unit).trim().to_string(),
            task.people.to_string(),
            trim(task.hours.likely.to_h(), 1),
            days,
            if task.wait_days > 0.0 { format!("{} d", trim(task.wait_days, 1)) } else { "–".into() },
            if task.critical { "none".into() } else { format!("{} d", trim(task.float, 1)) },
            after.join(", "),
        ]);
    }
    flow.table(&t);
    hold_points(&mut flow, plan);
    flow.finish()
}

fn hold_points(flow: &mut Flow, plan: &Plan) {
    let p = &plan.programme;
    if p.hold_points.is_empty() {
        return;
    }
    flow.heading("Hold points");
    flow.small("Look, measure and write down before the work goes on.");
    let style = Style::BODY;
    for h in &p.hold_points {
        flow.need(style.leading() * (h.checks.len() as f64 + 1.0).min(6.0));
        let of = if h.element.is_empty() { String::new() } else { format!(", {}", h.element) };
        flow.hanging(&format!("H{}", h.number), &style.bold(), &format!("Before {}{of}", h.name), 11.0, &style.bold());
        for c in &h.checks {
            flow.hanging_at(11.0, "☐", &style, c, 16.0, &style);
        }
        flow.lines_of(&format!("Source: {}", h.source), 16.0, &Style::SMALL);
        flow.gap(1.6);
    }
}
