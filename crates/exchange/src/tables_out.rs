//! Which tables does a plan give, as CSV text by file name?

use groundhold_plan::Plan;

use crate::grids;

/// Every table of a plan: file name and CSV text. Units stand last in the names of the columns; what is not known is empty.
pub fn tables_out(plan: &Plan) -> Vec<(String, String)> {
    let all = [
        grids::marks(plan),
        grids::pegs(plan),
        grids::checks(plan),
        grids::posts(plan),
        grids::boards(plan),
        grids::cutting_list(plan),
        grids::order(plan),
        grids::quote(plan),
        grids::earthworks(plan),
        grids::drainage(plan),
        grids::carries(plan),
        grids::findings(plan),
        grids::programme(plan),
        grids::walls_as_found(plan),
    ];
    // Most jobs have no wall that stands already: no empty table for them.
    let all = all.iter().filter(|grid| grid.name != "walls-as-found" || !grid.rows.is_empty());
    all.map(|grid| (format!("{}.csv", grid.name), grid.to_csv())).collect()
}
