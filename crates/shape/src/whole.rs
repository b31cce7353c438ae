//! Is the finished ground one surface: every place covered once, and no step inside an element?

use groundhold_quantity::{Area, Length, Point};
use groundhold_surface::{Facet, Tin, clip_convex};

use crate::barrier::{NOTHING, take_away};
use crate::index::bounds;
use crate::outline::{area, outward};
use crate::{GroundKind, Shaped};

/// What is wrong with a surface.
#[derive(Debug, Clone, PartialEq)]
pub enum Flaw {
    /// Two pieces lie on the same ground.
    Overlap {
        /// The elements they belong to.
        of: [String; 2],
        /// How much of it.
        area: Area,
        /// Where.
        at: Point,
    },
    /// Pieces and the ground that stays do not cover the survey once: too little where negative, else too much.
    Uncovered {
        /// Difference to the area of the survey.
        area: Area,
    },
    /// Two pieces of one pad or ramp that meet have different levels there.
    Step {
        /// The element.
        of: String,
        /// By how much.
        height: Length,
        /// Where.
        at: Point,
    },
}

/// Pieces that share less are apart, m² (ours: a square millimetre).
const SHARED: f64 = 1e-6;
/// Levels of neighbours may differ by rounding, metres.
const LEVEL: f64 = 1e-6;
/// Neighbours are looked for this far out of a side, metres.
const OUT: f64 = 3e-6;

impl Shaped {
    /// The whole surface as convex planar pieces: the finished ones, and what stays of the existing ground. Steps stand
    /// upright between pieces, at walls and risers.
    pub fn whole(&self, existing: &Tin) -> Vec<Facet> {
        let mut all = self.facets();
        for f in existing.facets() {
            let (lo, hi) = bounds(&f.ring);
            let mut stays = vec![f.ring.clone()];
            for i in self.index.touching(lo, hi) {
                stays = take_away(stays, &self.grounds[i].facet.ring);
            }
            all.extend(stays.into_iter().map(|ring| Facet { ring, plane: f.plane }));
        }
        all
    }

    /// What is wrong with the whole surface; nothing for one valid mesh.
    pub fn flaws(&self, existing: &Tin) -> Vec<Flaw> {
        let mut found = self.overlaps();
        let outside: f64 = {
            // What of the finished pieces lies beyond the survey is no part of its area.
            let v = groundhold_surface::cut_and_fill(existing, &self.facets());
            v.uncovered.to_m2()
        };
        let covered: f64 = self.whole(existing).iter().map(|f| area(&f.ring)).sum::<f64>() - outside;
        let off = covered - existing.area().to_m2();
        if off.abs() > SHARED * existing.area().to_m2().max(1.0) {
            found.push(Flaw::Uncovered { area: Area::m2(off) });
        }
        found.extend(self.steps());
        found
    }

    fn overlaps(&self) -> Vec<Flaw> {
        let mut found = vec![];
        for (i, g) in self.grounds.iter().enumerate() {
            let (lo, hi) = bounds(&g.facet.ring);
            for k in self.index.touching(lo, hi).into_iter().filter(|k| *k < i) {
                let other = &self.grounds[k];
                let both = clip_convex(&g.facet.ring, &other.facet.ring);
                let shared = area(&both);
                if shared > SHARED {
                    let of = [other.of.clone(), g.of.clone()];
                    found.push(Flaw::Overlap { of, area: Area::m2(shared), at: both[0] });
                }
            }
        }
        found
    }

    fn steps(&self) -> Vec<Flaw> {
        let mut found = vec![];
        for g in self.grounds.iter().filter(|g| matches!(g.kind, GroundKind::Pad | GroundKind::Ramp)) {
            let ring = &g.facet.ring;
            for i in 0..ring.len() {
                let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
                if (b - a).length() < 1e-4 || area(ring) < NOTHING {
                    continue;
                }
                let at = a.towards(b, 0.5);
                let Some(beside) = self.ground_at(at + outward(a, b) * OUT) else { continue };
                if beside.of != g.of || beside.kind != g.kind {
                    continue;
                }
                let height = (beside.facet.plane.level_at(at) - g.facet.plane.level_at(at)).abs();
                // A slope of one in ten over the distance looked out is not a step.
                if height.to_m() > LEVEL + OUT {
                    found.push(Flaw::Step { of: g.of.clone(), height, at });
                }
            }
        }
        found
    }
}
