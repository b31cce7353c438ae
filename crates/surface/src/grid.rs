//! Which pieces of a surface are near here? A grid of equal square cells over points, segments or triangles.

use groundhold_quantity::Point;

use crate::{SAME_PLACE, ring};

/// Items by the cells they touch. About as many cells as items.
#[derive(Debug, Clone)]
pub(crate) struct Grid {
    lo: Point,
    cell: f64,
    columns: usize,
    rows: usize,
    /// Where the items of each cell start in `items`; one more than there are cells.
    starts: Vec<usize>,
    items: Vec<usize>,
}

impl Grid {
    /// Indexes convex items, given by their corners: one for a point, two for a segment, three for a triangle.
    pub(crate) fn new<R: AsRef<[Point]>>(shapes: impl Iterator<Item = R> + Clone) -> Grid {
        let mut count = 0;
        let mut extent: Option<(Point, Point)> = None;
        for shape in shapes.clone() {
            count += 1;
            let (lo, hi) = ring::bounds(shape.as_ref());
            extent = Some(extent.map_or((lo, hi), |(l, h)| ring::bounds(&[lo, hi, l, h])));
        }
        let (lo, hi) = extent.unwrap_or_default();
        let (width, height, n) = (hi.x - lo.x, hi.y - lo.y, f64::max(f64::from(count), 1.0));
        let cell = (width * height / n).sqrt().max(width / n).max(height / n).max(SAME_PLACE);
        let cells = |length: f64| (length / cell).floor() as usize + 1;
        let mut grid = Grid { lo, cell, columns: cells(width), rows: cells(height), starts: vec![], items: vec![] };
        grid.fill(shapes);
        grid
    }

    fn fill<R: AsRef<[Point]>>(&mut self, shapes: impl Iterator<Item = R> + Clone) {
        let mut starts = vec![0; self.columns * self.rows + 1];
        for shape in shapes.clone() {
            self.each_cell(shape.as_ref(), |c| starts[c + 1] += 1);
        }
        for c in 1..starts.len() {
            starts[c] += starts[c - 1];
        }
        let mut free = starts.clone();
        let mut items = vec![0; starts[starts.len() - 1]];
        for (item, shape) in shapes.enumerate() {
            self.each_cell(shape.as_ref(), |c| {
                items[free[c]] = item;
                free[c] += 1;
            });
        }
        (self.starts, self.items) = (starts, items);
    }

    /// The items of the cell under a point, in rising order; those of the nearest cell for a point outside.
    pub(crate) fn at(&self, p: Point) -> &[usize] {
        self.in_cell(self.row(p.y) * self.columns + self.column(p.x))
    }

    /// The items whose cells a convex shape touches, each once, in rising order.
    pub(crate) fn touching(&self, shape: &[Point]) -> Vec<usize> {
        let mut found = Vec::new();
        self.each_cell(shape, |c| found.extend_from_slice(self.in_cell(c)));
        found.sort_unstable();
        found.dedup();
        found
    }

    fn in_cell(&self, c: usize) -> &[usize] {
        &self.items[self.starts[c]..self.starts[c + 1]]
    }

    fn row(&self, y: f64) -> usize {
        (((y - self.lo.y) / self.cell).max(0.0) as usize).min(self.rows - 1)
    }

    fn column(&self, x: f64) -> usize {
        (((x - self.lo.x) / self.cell).max(0.0) as usize).min(self.columns - 1)
    }

    /// Calls once for each cell that a convex shape touches, row by row; a little more than it touches, never less.
    fn each_cell(&self, shape: &[Point], mut call: impl FnMut(usize)) {
        let slack = 2.0 * SAME_PLACE;
        let (lo, hi) = ring::bounds(shape);
        for row in self.row(lo.y - slack)..=self.row(hi.y + slack) {
            let bottom = if row == 0 { f64::NEG_INFINITY } else { self.lo.y + row as f64 * self.cell - slack };
            let top =
                if row + 1 == self.rows { f64::INFINITY } else { self.lo.y + (row + 1) as f64 * self.cell + slack };
            let Some((west, east)) = extent_in_band(shape, bottom, top) else { continue };
            for column in self.column(west - slack)..=self.column(east + slack) {
                call(row * self.columns + column);
            }
        }
    }
}

/// Least and greatest x of the part of a convex shape between two values of y.
fn extent_in_band(shape: &[Point], bottom: f64, top: f64) -> Option<(f64, f64)> {
    let mut extent: Option<(f64, f64)> = None;
    let mut reach = |x: f64| extent = Some(extent.map_or((x, x), |(w, e)| (f64::min(w, x), f64::max(e, x))));
    for (a, b) in ring::sides(shape) {
        if bottom <= a.y && a.y <= top {
            reach(a.x);
        }
        for y in [bottom, top] {
            if (a.y < y) != (b.y < y) && y.is_finite() {
                reach(a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y)));
            }
        }
    }
    extent
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_thin_triangle_is_found_all_along_and_not_beside() {
        let thin = [Point::m(0.0, 0.0), Point::m(100.0, 99.0), Point::m(100.0, 100.0)];
        let dots = (0..100).map(|i| [Point::m(f64::from(i), 100.0 - f64::from(i)); 3]);
        let grid = Grid::new(std::iter::once(thin).chain(dots));
        for i in 0..=100 {
            let at = f64::from(i);
            assert!(grid.at(Point::m(at, at * 0.995)).contains(&0), "missed at {at}");
        }
        assert!(!grid.at(Point::m(90.0, 10.0)).contains(&0));
        assert!(!grid.at(Point::m(10.0, 90.0)).contains(&0));
    }

    #[test]
    fn a_grid_of_nothing_has_nothing() {
        let grid = Grid::new(std::iter::empty::<[Point; 1]>());
        assert!(grid.at(Point::m(3.0, 4.0)).is_empty());
        assert!(grid.touching(&[Point::m(-1e9, -1e9), Point::m(1e9, 1e9)]).is_empty());
    }
}
