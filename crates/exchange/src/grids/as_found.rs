//! How were walls found that stand already, and which causes fit?

use groundhold_plan::Plan;

use crate::grid::Grid;

/// One row for each cause of each wall.
pub(crate) fn walls_as_found(plan: &Plan) -> Grid {
    let columns = [
        ("wall", 0),
        ("made", 0),
        ("height_m", 3),
        ("lean_mm", 0),
        ("bulge_mm", 0),
        ("factor_drained", 2),
        ("factor_water_to_top", 2),
        ("cause", 0),
        ("verdict", 0),
        ("needs", 0),
        ("seen_or_can_be", 0),
        ("signs_for", 0),
        ("signs_against", 0),
    ];
    let mut grid = Grid::new("walls-as-found", &columns);
    for wall in &plan.old_walls {
        let seen = &wall.found.seen;
        for h in &wall.back.hypotheses {
            let signs = |of: fn(i8) -> bool| {
                let all: Vec<&str> = h.signs.iter().filter(|r| of(r.weight)).map(|r| r.sign.words()).collect();
                all.join(", ")
            };
            grid.rows.push(vec![
                (&wall.id).into(),
                seen.made.words().into(),
                Some(seen.height.to_m()).into(),
                Some(seen.lean.to_mm()).into(),
                seen.bulge.map(|(size, _)| size.to_mm()).into(),
                wall.back.factor.into(),
                wall.back.factor_wet.into(),
                h.cause.words().into(),
                h.verdict.words().into(),
                (&h.needs).into(),
                (&h.seen).into(),
                signs(|w| w > 0).into(),
                signs(|w| w < 0).into(),
            ]);
        }
    }
    grid
}
