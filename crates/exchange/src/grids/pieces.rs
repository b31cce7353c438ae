//! Which boards stand in a wall, and from which bars are the pieces cut?

use groundhold_plan::Plan;

use crate::grid::{Cell, Grid};

/// Every board of every wall, as drawn in elevation.
pub(crate) fn boards(plan: &Plan) -> Grid {
    let columns = [
        ("wall", 0),
        ("mark", 0),
        ("course", 0),
        ("from_post", 0),
        ("to_post", 0),
        ("chainage_start_m", 3),
        ("chainage_end_m", 3),
        ("length_m", 3),
        ("bottom_m", 3),
        ("top_m", 3),
        ("thickness_m", 3),
    ];
    let mut grid = Grid::new("boards", &columns);
    for w in &plan.walls {
        for b in &w.layout.boards {
            grid.rows.push(vec![
                (&w.id).into(),
                (&b.mark).into(),
                b.course.into(),
                b.from_post.into(),
                b.to_post.into(),
                b.chainage.0.into(),
                b.chainage.1.into(),
                b.length.into(),
                b.bottom.into(),
                b.top.into(),
                b.thickness.into(),
            ]);
        }
    }
    grid
}

/// Every piece on its bar, in the order of cutting; the offcut stands beside the last piece of its bar.
pub(crate) fn cutting_list(plan: &Plan) -> Grid {
    let columns = [
        ("material", 0),
        ("bar", 0),
        ("stock_m", 3),
        ("on_hand", 0),
        ("cut", 0),
        ("element", 0),
        ("mark", 0),
        ("length_m", 3),
        ("offcut_m", 3),
    ];
    let mut grid = Grid::new("cutting-list", &columns);
    for list in &plan.take_off.cutting {
        for (i, bar) in list.bars.iter().enumerate() {
            for (k, piece) in bar.pieces.iter().enumerate() {
                let offcut = (k + 1 == bar.pieces.len()).then_some(bar.offcut);
                grid.rows.push(vec![
                    (&list.material).into(),
                    (i + 1).into(),
                    bar.stock.into(),
                    bar.limited.into(),
                    (k + 1).into(),
                    (&piece.element).into(),
                    (&piece.mark).into(),
                    piece.length.into(),
                    Cell::from(offcut),
                ]);
            }
        }
    }
    grid
}
