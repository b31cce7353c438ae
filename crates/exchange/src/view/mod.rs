//! What goes out.

use groundhold_plan::{Difference, Plan};
use groundhold_reference::Outcome;
use groundhold_working::{Worked, Working};

/// The plan.
pub fn plan_json(_plan: &Plan) -> String {
    String::new()
}
/// The difference.
pub fn difference_json(_difference: &Difference) -> String {
    String::new()
}
/// The working.
pub fn worked_json(_working: &Working, _worked: &Worked) -> String {
    String::new()
}
/// The cases.
pub fn verify_json(_report: &[(String, Vec<Outcome>)]) -> String {
    String::new()
}
