//! Which batters need not be laid again? Those whose surroundings are as they were.
//!
//! Platforms whose batters may reach each other are laid together. What a group gives depends on its platforms, the walls
//! and the taken ground within reach, the slopes and the existing ground, and on nothing else: where all these are equal
//! to what they were, the result is taken from memory, and it is the same to the last bit.

use groundhold_quantity::Point;
use groundhold_surface::{GroundPoint, Tin};

use crate::Batter;
use crate::barrier::Barrier;
use crate::batter::{Clashes, Piece};
use crate::index::bounds;
use crate::mosaic::Mosaic;
use crate::reach::Platform;

/// Results of shaping that may serve again, for the same ground. Empty at first.
#[derive(Debug, Clone, Default)]
pub struct Memory {
    points: Vec<GroundPoint>,
    triangles: Vec<[usize; 3]>,
    batter: Batter,
    kept: Vec<Kept>,
}

/// A group of platforms and what its batters came to.
#[derive(Debug, Clone)]
struct Kept {
    around: Around,
    laid: Laid,
}

/// All that the batters of a group depend on.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Around {
    pub platforms: Vec<Platform>,
    pub barriers: Vec<Barrier>,
    /// Rings of the ground that is taken.
    pub taken: Vec<Vec<Point>>,
}

/// What the batters of a group came to; pieces name their platform within the group.
#[derive(Debug, Clone, Default)]
pub(crate) struct Laid {
    pub cut: Vec<Piece>,
    pub fill: Vec<Piece>,
    pub clashes: Clashes,
}

/// More groups are not kept (ours).
const MOST: usize = 256;

impl Memory {
    /// Forgets everything where the ground or the slopes are not those that it is about.
    pub(crate) fn about(&mut self, ground: &Tin, batter: &Batter) {
        if self.batter != *batter || self.points != ground.points() || self.triangles != ground.triangles() {
            *self = Memory {
                points: ground.points().to_vec(),
                triangles: ground.triangles().to_vec(),
                batter: *batter,
                kept: vec![],
            };
        }
    }

    pub(crate) fn recall(&mut self, around: &Around) -> Option<Laid> {
        let i = self.kept.iter().rposition(|k| k.around == *around)?;
        // What was wanted last is looked at first and forgotten last.
        let found = self.kept.remove(i);
        let laid = found.laid.clone();
        self.kept.push(found);
        Some(laid)
    }

    pub(crate) fn keep(&mut self, around: Around, laid: &Laid) {
        if self.kept.len() >= MOST {
            self.kept.remove(0);
        }
        self.kept.push(Kept { around, laid: laid.clone() });
    }
}

/// Groups of platforms whose batters may reach each other, by index, in the order of their first.
pub(crate) fn groups(boxes: &[(Point, Point)]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = vec![];
    for i in 0..boxes.len() {
        let meets = |g: &Vec<usize>| g.iter().any(|k| touch(boxes[*k], boxes[i]));
        let (near, far): (Vec<Vec<usize>>, Vec<Vec<usize>>) = groups.into_iter().partition(meets);
        groups = far;
        let mut all: Vec<usize> = near.into_iter().flatten().chain([i]).collect();
        all.sort_unstable();
        groups.push(all);
    }
    groups.sort();
    groups
}

fn touch((a, b): (Point, Point), (lo, hi): (Point, Point)) -> bool {
    a.x <= hi.x && lo.x <= b.x && a.y <= hi.y && lo.y <= b.y
}

/// What lies around a group.
pub(crate) fn around(
    group: &[usize],
    platforms: &[Platform],
    reach: &[(Point, Point)],
    barriers: &[Barrier],
    mosaic: &Mosaic,
) -> Around {
    let near = |at: (Point, Point)| group.iter().any(|i| touch(reach[*i], at));
    Around {
        platforms: group.iter().map(|i| platforms[*i].clone()).collect(),
        barriers: barriers.iter().filter(|b| near(bounds(&[b.a, b.b]))).copied().collect(),
        taken: mosaic.grounds.iter().map(|g| &g.facet.ring).filter(|r| near(bounds(r))).cloned().collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn platforms_are_grouped_by_reach_and_a_bridge_joins_two_groups() {
        let at = |x: f64| (Point::m(x - 5.0, 0.0), Point::m(x + 6.0, 1.0));
        assert_eq!(groups(&[at(0.0), at(20.0), at(5.0)]), [vec![0, 2], vec![1]]);
        assert_eq!(groups(&[at(0.0), at(20.0), at(10.0)]), [vec![0, 1, 2]]);
    }
}
