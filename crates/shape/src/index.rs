//! Which pieces of ground may lie under a place? A uniform grid over their bounds.

use groundhold_quantity::Point;

/// Grid of cells with the indices of the rings that touch each.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct FacetIndex {
    lo: Point,
    cell: f64,
    columns: usize,
    rows: usize,
    cells: Vec<Vec<u32>>,
}

/// Room around every ring, so that a place on its border is found, metres.
const ROOM: f64 = 1e-5;

/// Least and greatest coordinates of a ring.
pub(crate) fn bounds(ring: &[Point]) -> (Point, Point) {
    ring.iter().fold(
        (Point::m(f64::INFINITY, f64::INFINITY), Point::m(f64::NEG_INFINITY, f64::NEG_INFINITY)),
        |(lo, hi), p| (Point::m(lo.x.min(p.x), lo.y.min(p.y)), Point::m(hi.x.max(p.x), hi.y.max(p.y))),
    )
}

impl FacetIndex {
    /// Over rings; their order is kept.
    pub fn new<'a>(rings: impl Iterator<Item = &'a [Point]> + Clone) -> FacetIndex {
        let count = rings.clone().count();
        let all = rings.clone().map(bounds).fold(None, |sum: Option<(Point, Point)>, (lo, hi)| {
            let (a, b) = sum.unwrap_or((lo, hi));
            Some((Point::m(a.x.min(lo.x), a.y.min(lo.y)), Point::m(b.x.max(hi.x), b.y.max(hi.y))))
        });
        let Some((lo, hi)) = all.filter(|(lo, hi)| (hi.x - lo.x).is_finite() && (hi.y - lo.y).is_finite()) else {
            return FacetIndex::default();
        };
        let (w, h) = (hi.x - lo.x + 4.0 * ROOM, hi.y - lo.y + 4.0 * ROOM);
        let cell = (w * h / count as f64).sqrt().max(w.max(h) / 1000.0).max(0.01);
        let (columns, rows) = ((w / cell) as usize + 1, (h / cell) as usize + 1);
        let lo = Point::m(lo.x - 2.0 * ROOM, lo.y - 2.0 * ROOM);
        let mut index = FacetIndex { lo, cell, columns, rows, cells: vec![vec![]; columns * rows] };
        for (i, ring) in rings.enumerate() {
            let (a, b) = bounds(ring);
            for c in index.touched(a, b) {
                index.cells[c].push(i as u32);
            }
        }
        index
    }

    fn touched(&self, lo: Point, hi: Point) -> impl Iterator<Item = usize> + use<> {
        let clamp = |v: f64, most: usize| (v.max(0.0) as usize).min(most.saturating_sub(1));
        let place = |v: f64, from: f64| (v - from) / self.cell;
        let (x0, y0) = (place(lo.x - ROOM, self.lo.x), place(lo.y - ROOM, self.lo.y));
        let (x1, y1) = (place(hi.x + ROOM, self.lo.x), place(hi.y + ROOM, self.lo.y));
        let outside =
            self.cells.is_empty() || x1 < 0.0 || y1 < 0.0 || x0 >= self.columns as f64 || y0 >= self.rows as f64;
        let xs = clamp(x0, self.columns)..clamp(x1, self.columns) + 1;
        let ys = clamp(y0, self.rows)..clamp(y1, self.rows) + 1;
        let columns = self.columns;
        ys.flat_map(move |y| xs.clone().map(move |x| y * columns + x)).filter(move |_| !outside)
    }

    /// The first ring, in their order, whose bounds hold the place and that `is` takes.
    pub fn find(&self, p: Point, is: impl Fn(usize) -> bool) -> Option<usize> {
        let cell = self.touched(p, p).min()?;
        // A place on a cell border may touch two cells; rings are entered with room, so each cell knows its rings.
        self.cells[cell].iter().map(|i| *i as usize).find(|i| is(*i))
    }

    /// The rings that may touch a rectangle, in their order, each once.
    pub fn touching(&self, lo: Point, hi: Point) -> Vec<usize> {
        let mut found: Vec<usize> = self.touched(lo, hi).flat_map(|c| &self.cells[c]).map(|i| *i as usize).collect();
        found.sort_unstable();
        found.dedup();
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64) -> Vec<Point> {
        vec![Point::m(x, y), Point::m(x + 1.0, y), Point::m(x + 1.0, y + 1.0), Point::m(x, y + 1.0)]
    }

    #[test]
    fn every_square_is_found_under_its_middle_and_nothing_far_away() {
        let rings: Vec<Vec<Point>> = (0..50).map(|i| square(f64::from(i % 10), f64::from(i / 10) * 1.5)).collect();
        let index = FacetIndex::new(rings.iter().map(Vec::as_slice));
        for (i, r) in rings.iter().enumerate() {
            let middle = Point::m(r[0].x + 0.5, r[0].y + 0.5);
            let holds = |k: usize| {
                let (lo, hi) = bounds(&rings[k]);
                lo.x <= middle.x && middle.x <= hi.x && lo.y <= middle.y && middle.y <= hi.y
            };
            assert_eq!(index.find(middle, holds), Some(i));
            assert!(index.touching(r[0], r[2]).contains(&i));
        }
        assert_eq!(index.find(Point::m(1e6, 0.0), |_| true), None);
        assert_eq!(FacetIndex::new([].into_iter()).find(Point::m(0.0, 0.0), |_| true), None);
    }
}
