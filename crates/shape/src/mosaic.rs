//! Who keeps the ground where two elements want it? The one that is laid first.

use groundhold_quantity::Point;
use groundhold_surface::{Facet, Plane};

use crate::barrier::{NOTHING, take_away};
use crate::index::{FacetIndex, bounds};
use crate::outline::area;
use crate::{Ground, GroundKind};

/// Pieces of finished ground laid one after the other without overlap.
#[derive(Debug, Clone, Default)]
pub(crate) struct Mosaic {
    pub grounds: Vec<Ground>,
    bounds: Vec<(Point, Point)>,
}

impl Mosaic {
    /// The parts of a convex ring that nothing laid so far covers.
    pub fn free(&self, ring: &[Point]) -> Vec<Vec<Point>> {
        let mut pieces = vec![ring.to_vec()];
        let (lo, hi) = bounds(ring);
        for (g, (a, b)) in self.grounds.iter().zip(&self.bounds) {
            if a.x < hi.x && lo.x < b.x && a.y < hi.y && lo.y < b.y {
                pieces = take_away(pieces, &g.facet.ring);
            }
        }
        pieces
    }

    /// Lays what is free of a convex ring; gives the area laid, m².
    pub fn lay(&mut self, ring: &[Point], plane: Plane, of: &str, kind: GroundKind) -> f64 {
        if area(ring) <= NOTHING {
            return 0.0;
        }
        let pieces = self.free(ring);
        let laid = pieces.iter().map(|p| area(p)).sum();
        for ring in pieces {
            self.put(Ground { facet: Facet { ring, plane }, of: of.into(), kind });
        }
        laid
    }

    /// Puts a piece that is known to be free.
    pub fn put(&mut self, ground: Ground) {
        self.bounds.push(bounds(&ground.facet.ring));
        self.grounds.push(ground);
    }

    /// An index over the pieces.
    pub fn index(&self) -> FacetIndex {
        FacetIndex::new(self.grounds.iter().map(|g| g.facet.ring.as_slice()))
    }
}

#[cfg(test)]
mod tests {
    use groundhold_quantity::Level;

    use super::*;

    #[test]
    fn the_first_keeps_the_ground_and_the_areas_add_up() {
        let square = |x: f64| [(x, 0.0), (x + 2.0, 0.0), (x + 2.0, 2.0), (x, 2.0)].map(|(x, y)| Point::m(x, y));
        let mut m = Mosaic::default();
        let plane = Plane::level(Level::m(0.0));
        assert!((m.lay(&square(0.0), plane, "A", GroundKind::Pad) - 4.0).abs() < 1e-9);
        assert!((m.lay(&square(1.0), plane, "B", GroundKind::Pad) - 2.0).abs() < 1e-9);
        assert!(m.lay(&square(0.5), plane, "C", GroundKind::Pad).abs() < 1e-9);
        assert_eq!(m.index().find(Point::m(2.5, 1.0), |i| m.grounds[i].facet.contains(Point::m(2.5, 1.0))), Some(1));
    }
}
