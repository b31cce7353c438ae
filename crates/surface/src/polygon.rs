//! What does a closed line in plan enclose?

mod around;
mod ears;
mod offset;
mod simple;

pub(crate) use ears::ears;
use groundhold_quantity::{Area, Length, Point, distance_to_segment};

use crate::{SAME_PLACE, ring};

/// A simple polygon in plan: at least three corners, anticlockwise, no place twice, no side touching another.
#[derive(Debug, Clone, PartialEq)]
pub struct Polygon {
    corners: Vec<Point>,
}

/// Why a list of corners is not a simple polygon. Corners and sides are numbered from 0 in the order given (from 1 in the
/// message); side n runs from corner n to the next.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PolygonError {
    /// Fewer than three places.
    #[error("an outline needs at least 3 different corners, this one has {found}")]
    TooFew {
        /// How many different corners there are.
        found: usize,
    },
    /// A coordinate is infinite or undefined.
    #[error("corner {} of the outline is not an ordinary position", corner + 1)]
    NotFinite {
        /// Which corner.
        corner: usize,
    },
    /// Two sides cross or touch.
    #[error("sides {} and {} of the outline meet at x {:.3} m, y {:.3} m; an outline must not cross or touch itself",
        edge_a + 1, edge_b + 1, at.x, at.y)]
    Crossing {
        /// One side.
        edge_a: usize,
        /// The other.
        edge_b: usize,
        /// Where.
        at: Point,
    },
    /// All corners lie in one line.
    #[error("the corners of the outline lie in one line; it encloses nothing")]
    NoArea,
}

impl Polygon {
    /// From corners in either turning; the first may be repeated at the end. Corners that follow each other in the same
    /// place are taken once. The polygon starts at the first corner given.
    ///
    /// # Errors
    /// [`PolygonError`] says which corner or sides.
    pub fn new(corners: Vec<Point>) -> Result<Polygon, PolygonError> {
        let mut corners = simple::checked(&corners)?;
        if ring::signed_area(&corners) < 0.0 {
            corners[1..].reverse();
        }
        Ok(Polygon { corners })
    }

    /// From corners that are known to be simple and anticlockwise.
    pub(crate) fn known(corners: Vec<Point>) -> Polygon {
        Polygon { corners }
    }

    /// Its corners, anticlockwise, the first not repeated.
    pub fn corners(&self) -> &[Point] {
        &self.corners
    }

    /// The area inside.
    pub fn area(&self) -> Area {
        Area::m2(ring::signed_area(&self.corners))
    }

    /// The length around.
    pub fn perimeter(&self) -> Length {
        Length::m(ring::perimeter(&self.corners))
    }

    /// The centre of its area. It may lie outside a concave outline.
    pub fn centroid(&self) -> Point {
        ring::centroid(&self.corners)
    }

    /// True inside and on the outline (within a micrometre).
    pub fn contains(&self, p: Point) -> bool {
        if !(p.x.is_finite() && p.y.is_finite()) {
            return false;
        }
        let mut inside = false;
        for (a, b) in ring::sides(&self.corners) {
            if distance_to_segment(p, a, b).to_m() <= SAME_PLACE {
                return true;
            }
            if (a.y > p.y) != (b.y > p.y) {
                let to_left = (b - a).cross(p - a) > 0.0;
                inside ^= to_left == (b.y > a.y);
            }
        }
        inside
    }

    /// True where no corner turns right (by more than a billionth of a radian).
    pub fn is_convex(&self) -> bool {
        let n = self.corners.len();
        (0..n).all(|i| {
            let (p, q, r) = (self.corners[i], self.corners[(i + 1) % n], self.corners[(i + 2) % n]);
            (q - p).cross(r - q) >= -1e-9 * (q - p).length() * (r - q).length()
        })
    }

    /// The outline moved outwards by `by` with mitred corners; negative moves it inwards. For convex and mildly concave
    /// outlines: a notch narrower than twice `by` is closed, and a yard that closes in is filled. A mitre longer than
    /// three times `by` (corners sharper than 39°) is cut off square at that length. Corners in a straight side are left
    /// out. Moved inwards by more than it can bear, it stops at the last outline with area: ask [`Polygon::shrunk`].
    /// A distance that is not an ordinary number leaves it as it is; so does a notched outline around which rounding loses
    /// the way (none among a million random ones).
    pub fn grown(&self, by: Length) -> Polygon {
        let by = by.to_m();
        if !by.is_finite() || by == 0.0 {
            return self.clone();
        }
        if by > 0.0 { offset::outwards(self, by) } else { offset::inwards_as_far_as_it_goes(self, -by) }
    }

    /// The outline moved inwards by `by`; `None` where nothing is left or the outline would fall into parts.
    pub fn shrunk(&self, by: Length) -> Option<Polygon> {
        let by = by.to_m();
        if by > 0.0 { offset::inwards(self, by) } else { Some(self.grown(Length::m(-by))) }
    }

    /// Triangles that together are the polygon, each anticlockwise, by clipping ears.
    pub fn triangles(&self) -> Vec<[Point; 3]> {
        ears(&self.corners).into_iter().map(|t| t.map(|i| self.corners[i])).collect()
    }

    /// Its least and greatest corner coordinates.
    pub fn bounds(&self) -> (Point, Point) {
        ring::bounds(&self.corners)
    }
}
