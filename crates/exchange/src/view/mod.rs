//! What goes out for other programs: small mirrors of plan, difference, working and cases, units last in their names.
//!
//! Lengths and levels are in metres to the micrometre, money in the job's currency. A figure that is infinite, not known
//! or does not apply is `null`. `schema` is raised when a name changes or goes; new names may come at any time.

mod difference;
mod figure;
mod finding;
mod ground;
mod head;
mod ordered;
mod plan;
mod set_out;
mod verified;
mod wall;
mod worked;
mod works;

use groundhold_plan::{Difference, Plan};
use groundhold_reference::Outcome;
use groundhold_working::{Worked, Working};
use serde::Serialize;

/// A finished plan: job, ground, walls, drains, earthworks, order, quote, set-out, order of work, findings.
pub fn plan_json(plan: &Plan) -> String {
    text(&plan::PlanView::of(plan))
}

/// What changes between two plans. Money is in the currency of the job.
pub fn difference_json(difference: &Difference) -> String {
    text(&difference::DifferenceView::of(difference))
}

/// A working that was run: source, outputs and the lines of the hand calculation.
pub fn worked_json(working: &Working, worked: &Worked) -> String {
    text(&worked::WorkedView::of(working, worked))
}

/// What became of the published cases, topic by topic, with the counts.
pub fn verify_json(report: &[(String, Vec<Outcome>)]) -> String {
    text(&verified::VerifiedView::of(report))
}

fn text(view: &impl Serialize) -> String {
    serde_json::to_string_pretty(view)
        .expect("a view has no map whose keys are not text, and writing to memory cannot fail")
}
