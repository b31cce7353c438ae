//! How much ground lies between two surfaces?
//!
//! Over each overlap of a piece of finished ground and a triangle of existing ground both are planes, so their difference
//! is linear. The overlap is split where it is zero; on each side the volume is the sum over a fan of triangles of area
//! times the mean of the differences at the three corners (the truncated triangular prism; elementary geometry, exact).

use groundhold_quantity::{Area, Level, Point, Volume};

use crate::facet::{Overlap, each_overlap, patch_of};
use crate::{Facet, MEETS, Plane, Polygon, Tin, clip, ring};

/// Volumes between an existing and a finished surface, in place (bank for cut, placed for fill), and the areas in plan.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CutFill {
    /// Volume where the existing ground lies above the finished.
    pub cut: Volume,
    /// Volume where the finished ground lies above the existing.
    pub fill: Volume,
    /// Area in plan that is cut.
    pub cut_area: Area,
    /// Area in plan that is filled. Where both surfaces coincide (within a nanometre) there is neither cut nor fill.
    pub fill_area: Area,
    /// Area asked about over which one of the surfaces has no ground.
    pub uncovered: Area,
}

impl std::ops::Add for CutFill {
    type Output = CutFill;
    fn add(self, o: CutFill) -> CutFill {
        CutFill {
            cut: self.cut + o.cut,
            fill: self.fill + o.fill,
            cut_area: self.cut_area + o.cut_area,
            fill_area: self.fill_area + o.fill_area,
            uncovered: self.uncovered + o.uncovered,
        }
    }
}

impl std::iter::Sum for CutFill {
    fn sum<I: Iterator<Item = CutFill>>(parts: I) -> CutFill {
        parts.fold(CutFill::default(), |sum, part| sum + part)
    }
}

/// Cut and fill over all facets, which must not overlap each other.
pub fn cut_and_fill(existing: &Tin, finished: &[Facet]) -> CutFill {
    finished.iter().map(|f| over_facet(existing, f)).sum()
}

/// Cut and fill over each facet, in their order.
pub fn cut_and_fill_each(existing: &Tin, finished: &[Facet]) -> Vec<CutFill> {
    finished.iter().map(|f| over_facet(existing, f)).collect()
}

/// Cut and fill between two triangulated surfaces over a polygon.
pub fn between(existing: &Tin, finished: &Tin, over: &Polygon) -> CutFill {
    let mut tally = Tally::default();
    for ear in over.triangles() {
        for t in finished.triangles_under(&ear) {
            let Some(patch) = finished.patch(t) else { continue };
            let piece = clip::overlap(&ear, &finished.corners_of(t));
            each_overlap(existing, &piece, patch, |o| tally.add(&o));
        }
    }
    tally.over(over.area().to_m2())
}

/// What lies above a level over a polygon (cut), and what is missing up to it (fill).
pub fn volume_above(tin: &Tin, level: Level, over: &Polygon) -> CutFill {
    let plane = Plane::level(level);
    over.triangles().iter().map(|ear| over_facet(tin, &Facet { ring: ear.to_vec(), plane })).sum()
}

fn over_facet(existing: &Tin, facet: &Facet) -> CutFill {
    let mut tally = Tally::default();
    each_overlap(existing, &facet.ring, patch_of(facet), |o| tally.add(&o));
    tally.over(facet.area().to_m2())
}

/// Volumes in cubic metres and areas in square metres, as they add up.
#[derive(Default)]
struct Tally {
    cut: f64,
    fill: f64,
    cut_area: f64,
    fill_area: f64,
    covered: f64,
}

impl Tally {
    fn add(&mut self, o: &Overlap) {
        self.covered += ring::signed_area(&o.ring);
        let difference = |p: Point| o.difference(p);
        if o.ring.iter().all(|&p| difference(p).abs() <= MEETS) {
            return;
        }
        let (volume, area) = prism(&clip::half(&o.ring, difference), difference);
        self.cut += volume;
        self.cut_area += area;
        let (volume, area) = prism(&clip::half(&o.ring, |p| -difference(p)), |p| -difference(p));
        self.fill += volume;
        self.fill_area += area;
    }

    fn over(&self, asked: f64) -> CutFill {
        let uncovered = asked - self.covered;
        CutFill {
            cut: Volume::m3(self.cut),
            fill: Volume::m3(self.fill),
            cut_area: Area::m2(self.cut_area),
            fill_area: Area::m2(self.fill_area),
            // What rounding leaves is not ground.
            uncovered: Area::m2(if uncovered > 1e-9 * asked { uncovered } else { 0.0 }),
        }
    }
}

/// Volume under a linear height over a convex ring, and its area.
fn prism(ring: &[Point], height: impl Fn(Point) -> f64) -> (f64, f64) {
    let Some(&o) = ring.first() else { return (0.0, 0.0) };
    let at_first = height(o);
    ring.windows(2).skip(1).fold((0.0, 0.0), |(volume, area), side| {
        let triangle = (side[0] - o).cross(side[1] - o) / 2.0;
        let mean = (at_first + height(side[0]) + height(side[1])) / 3.0;
        (volume + triangle * mean, area + triangle)
    })
}
