//! Tables.

use groundhold_plan::Plan;

/// Every table.
pub fn tables_out(_plan: &Plan) -> Vec<(String, String)> {
    vec![]
}
