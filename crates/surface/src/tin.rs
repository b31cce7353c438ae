//! What is the level of measured ground at any point?

mod build;
mod error;
mod mesh;
mod section;

pub use error::SurfaceError;
use groundhold_quantity::{Area, Length, Level, Point};
pub use section::SectionPoint;

use crate::grid::Grid;
use crate::plane::Patch;
use crate::{Contour, Facet, Plane, Polygon, SAME_PLACE, contour, ring};

/// A measured point of the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct GroundPoint {
    /// Its name, as it is called aloud.
    pub id: String,
    /// Where it is.
    pub at: Point,
    /// Its level.
    pub level: Level,
}

/// Ground as triangles between points, with an index for finding the triangle under a point.
#[derive(Debug, Clone)]
pub struct Tin {
    points: Vec<GroundPoint>,
    triangles: Vec<[usize; 3]>,
    break_edges: Vec<(usize, usize)>,
    grid: Grid,
}

impl Tin {
    /// Triangulates points so that no triangle crosses a break line, and leaves out what lies outside the boundary.
    ///
    /// `break_lines` and `boundary` are indices into `points`; the boundary is closed by itself. Without one the ground
    /// reaches to the convex hull. A point given twice (same place and level) is taken once. A point within a
    /// micrometre of a break line becomes part of it.
    ///
    /// # Errors
    /// [`SurfaceError`] names the points and the place.
    pub fn build(
        points: &[GroundPoint],
        break_lines: &[Vec<usize>],
        boundary: Option<&[usize]>,
    ) -> Result<Tin, SurfaceError> {
        let built = build::build(points, break_lines, boundary)?;
        Ok(Tin::indexed(built.points, built.triangles, built.break_edges))
    }

    /// A plane over an outline; its points are named `1`, `2`, … in the order of the corners.
    pub fn from_plane(plane: Plane, outline: &Polygon) -> Tin {
        let point = |(i, &at): (usize, &Point)| GroundPoint { id: (i + 1).to_string(), at, level: plane.level_at(at) };
        let points = outline.corners().iter().enumerate().map(point).collect();
        Tin::indexed(points, crate::polygon::ears(outline.corners()), vec![])
    }

    fn indexed(points: Vec<GroundPoint>, triangles: Vec<[usize; 3]>, break_edges: Vec<(usize, usize)>) -> Tin {
        let grid = Grid::new(triangles.iter().map(|t| t.map(|i| points[i].at)));
        Tin { points, triangles, break_edges, grid }
    }

    /// Its points, each place once, in the order given; points outside the boundary are kept.
    pub fn points(&self) -> &[GroundPoint] {
        &self.points
    }

    /// Its triangles as indices into [`Tin::points`], anticlockwise.
    pub fn triangles(&self) -> &[[usize; 3]] {
        &self.triangles
    }

    /// Its triangles as facets, in their order. A triangle too thin to have a plane (a sine below 1e-12) is left out.
    pub fn facets(&self) -> Vec<Facet> {
        let facet = |t| self.patch(t).map(|p| Facet { ring: self.corners_of(t).to_vec(), plane: p.plane() });
        (0..self.triangles.len()).filter_map(facet).collect()
    }

    /// Its outer boundary; more than one ring where the ground is in parts that share no side.
    pub fn outline(&self) -> Vec<Polygon> {
        let neighbours = mesh::neighbours(&self.triangles);
        let rings = mesh::open_rings(&self.triangles, &neighbours);
        rings.into_iter().map(|r| Polygon::known(r.into_iter().map(|i| self.points[i].at).collect())).collect()
    }

    /// Level of the ground; `None` outside (by more than a micrometre).
    pub fn level_at(&self, p: Point) -> Option<Level> {
        self.triangle_at(p).map(|t| self.level_in(t, p))
    }

    /// Plane of the triangle under a point; `None` outside. On a side shared by two triangles, that of the first.
    pub fn plane_at(&self, p: Point) -> Option<Plane> {
        self.triangle_at(p).and_then(|t| self.patch(t)).map(|patch| patch.plane())
    }

    /// The ground along a line of points: one point at each corner of the line and at each triangle side it crosses, so
    /// that the ground is straight between neighbours. Chainages rise strictly. Over a stretch without ground stands one
    /// point without a level between the last point of the ground before it and the first after it.
    pub fn section(&self, line: &[Point]) -> Vec<SectionPoint> {
        section::section(self, line)
    }

    /// Lines of equal level at whole multiples of `interval`, lowest first, higher ground to the left. A point exactly at
    /// a level (within a nanometre) counts as above it. An interval that is not positive, or so fine that it asks for more
    /// than 10 000 levels, gives none.
    pub fn contours(&self, interval: Length) -> Vec<Contour> {
        contour::of_triangles(&self.points, &self.triangles, interval)
    }

    /// Indices of the triangles that may touch a rectangle, in rising order; none that touches it is missing.
    pub fn triangles_touching(&self, lo: Point, hi: Point) -> Vec<usize> {
        self.triangles_under(&[lo, Point::m(hi.x, lo.y), hi, Point::m(lo.x, hi.y)])
    }

    /// The triangle sides that lie on break lines, as indices into [`Tin::points`], each once, smaller index first.
    pub fn break_edges(&self) -> Vec<(usize, usize)> {
        self.break_edges.clone()
    }

    /// Area in plan.
    pub fn area(&self) -> Area {
        Area::m2((0..self.triangles.len()).map(|t| ring::signed_area(&self.corners_of(t))).sum())
    }

    pub(crate) fn corners_of(&self, t: usize) -> [Point; 3] {
        self.triangles[t].map(|i| self.points[i].at)
    }

    /// The plane of a triangle; `None` where it is too thin to have one.
    pub(crate) fn patch(&self, t: usize) -> Option<Patch> {
        Patch::through(self.triangles[t].map(|i| (self.points[i].at, self.points[i].level)))
    }

    /// Triangles that a segment or a convex ring may touch, in rising order.
    pub(crate) fn triangles_under(&self, shape: &[Point]) -> Vec<usize> {
        self.grid.touching(shape)
    }

    /// The first triangle that holds a point, or the one nearest to it within a micrometre.
    fn triangle_at(&self, p: Point) -> Option<usize> {
        let mut nearest: Option<(f64, usize)> = None;
        for &t in self.grid.at(p) {
            let depth = ring::depth_inside(p, &self.corners_of(t));
            if depth >= 0.0 {
                return Some(t);
            }
            if depth >= -SAME_PLACE && nearest.is_none_or(|n| depth > n.0) {
                nearest = Some((depth, t));
            }
        }
        nearest.map(|n| n.1)
    }

    /// Level in a triangle, taken from its nearest corner and never beyond its highest and lowest.
    fn level_in(&self, t: usize, p: Point) -> Level {
        let corners = self.triangles[t].map(|i| &self.points[i]);
        let nearer = |a, b| if distance(p, b) < distance(p, a) { b } else { a };
        let [a, b, c] = corners;
        let nearest = nearer(nearer(a, b), c);
        let grade = self.patch(t).map(|patch| patch.grade).unwrap_or_default();
        let level = nearest.level + Length::m(grade.dot(p - nearest.at));
        let (lowest, highest) = (a.level.min(b.level).min(c.level), a.level.max(b.level).max(c.level));
        level.max(lowest).min(highest)
    }
}

fn distance(p: Point, g: &GroundPoint) -> f64 {
    let d = g.at - p;
    d.dot(d)
}
