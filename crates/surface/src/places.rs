//! Which points are in the same place?

use std::collections::BTreeMap;

use groundhold_quantity::Point;

use crate::SAME_PLACE;

/// Places numbered in the order in which they are first seen; points within a micrometre are one place.
#[derive(Debug, Default)]
pub(crate) struct Places {
    cells: BTreeMap<(i64, i64), Vec<usize>>,
    points: Vec<Point>,
}

impl Places {
    /// The number of the place of `p`, and whether it was seen before.
    pub(crate) fn number(&mut self, p: Point) -> (usize, bool) {
        let (i, j) = cell(p);
        for di in -1..=1 {
            for dj in -1..=1 {
                let near = |k: &&usize| (self.points[**k] - p).length() <= SAME_PLACE;
                if let Some(&k) = self.cells.get(&(i + di, j + dj)).and_then(|c| c.iter().find(near)) {
                    return (k, true);
                }
            }
        }
        self.points.push(p);
        self.cells.entry((i, j)).or_default().push(self.points.len() - 1);
        (self.points.len() - 1, false)
    }
}

/// Cells as wide as a place, so that points in one place are in neighbouring cells.
fn cell(p: Point) -> (i64, i64) {
    ((p.x / SAME_PLACE).floor() as i64, (p.y / SAME_PLACE).floor() as i64)
}
