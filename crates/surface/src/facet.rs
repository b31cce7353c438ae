//! Where does a planar piece of finished ground lie above or below the existing ground?

use groundhold_quantity::{Area, Point, Vector};

use crate::plane::Patch;
use crate::{MEETS, Plane, SAME_PLACE, Tin, clip, ring};

/// A convex planar piece of ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Facet {
    /// Its corners in plan, convex, anticlockwise, the first not repeated.
    pub ring: Vec<Point>,
    /// The plane it lies in.
    pub plane: Plane,
}

impl Facet {
    /// Its area in plan.
    pub fn area(&self) -> Area {
        Area::m2(ring::signed_area(&self.ring).abs())
    }

    /// True inside and on the border (within a micrometre).
    pub fn contains(&self, p: Point) -> bool {
        self.ring.len() >= 3 && ring::depth_inside(p, &clip::anticlockwise(&self.ring)) >= -SAME_PLACE
    }
}

/// The parts of a facet that lie below the existing ground, where ground is cut: convex pieces in the facet's plane.
/// Where facet and ground coincide there is neither a piece below nor above.
pub fn pieces_below(existing: &Tin, facet: &Facet) -> Vec<Facet> {
    pieces(existing, facet, 1.0)
}

/// The parts of a facet that lie above the existing ground, where ground is filled: convex pieces in the facet's plane.
pub fn pieces_above(existing: &Tin, facet: &Facet) -> Vec<Facet> {
    pieces(existing, facet, -1.0)
}

fn pieces(existing: &Tin, facet: &Facet, sign: f64) -> Vec<Facet> {
    let mut found = Vec::new();
    each_overlap(existing, &facet.ring, patch_of(facet), |o| {
        let over = |p: Point| sign * o.difference(p);
        let piece = clip::half(&o.ring, over);
        if piece.iter().any(|&p| over(p) > MEETS) {
            let ring = clip::tidy(piece.iter().map(|&p| p + o.origin).collect());
            if !ring.is_empty() {
                found.push(Facet { ring, plane: facet.plane });
            }
        }
    });
    found
}

/// The plane of a facet, seen from its first corner.
pub(crate) fn patch_of(facet: &Facet) -> Patch {
    let at = facet.ring.first().copied().unwrap_or_default();
    Patch { at, level_m: facet.plane.level_at(at).to_m(), grade: facet.plane.grade() }
}

/// A convex piece of finished ground over one triangle of existing ground, in coordinates relative to `origin`.
pub(crate) struct Overlap {
    pub(crate) ring: Vec<Point>,
    pub(crate) origin: Vector,
    existing: Patch,
    finished: Patch,
}

impl Overlap {
    /// Existing minus finished level in metres: positive in cut. Linear.
    pub(crate) fn difference(&self, p: Point) -> f64 {
        self.existing.level_m(p) - self.finished.level_m(p)
    }
}

/// Calls for each triangle that a convex piece of finished ground overlaps, in the order of the triangles.
pub(crate) fn each_overlap(existing: &Tin, finished: &[Point], patch: Patch, mut call: impl FnMut(Overlap)) {
    let Some(&origin) = finished.first() else { return };
    let near = |p: Point| Point::default() + (p - origin);
    let local: Vec<Point> = clip::anticlockwise(finished).iter().map(|&p| near(p)).collect();
    let reach = ring::bounds(&local);
    for t in existing.triangles_under(finished) {
        let corners = existing.corners_of(t).map(near);
        if ring::apart(reach, ring::bounds(&corners)) {
            continue;
        }
        let Some(ground) = existing.patch(t) else { continue };
        let ring = clip::overlap(&local, &corners);
        if !ring.is_empty() {
            call(Overlap {
                ring,
                origin: origin - Point::default(),
                existing: ground.seen_from(origin),
                finished: patch.seen_from(origin),
            });
        }
    }
}
