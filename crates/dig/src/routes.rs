//! By which way does a barrow get from one place to another, round the walls and up the ramps?

use groundhold_quantity::{Length, Point, Vector, distance};

/// A way on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Its corners.
    pub points: Vec<Point>,
    /// Its length in plan.
    pub length: Length,
    /// What it climbs in all; ways down are not counted.
    pub climbs: Length,
    /// Length that counts as work: ten metres more for each metre climbed.
    pub works: Length,
}

/// A metre up is as much work as this many on the level: ours, near the ratio of a loaded barrow's weight to what rolls it
/// on firm ground.
const LIFT: f64 = 10.0;
/// How far ways keep from the ends and corners of walls, m.
const ROUND: f64 = 0.45;
/// Most walls' corners that are gone round.
const CORNERS: usize = 80;

/// Walls to go round, places worth passing, and the levels of the ground.
pub struct Field<'a> {
    /// Lines that are not crossed.
    pub walls: &'a [Vec<Point>],
    /// Places to pass: feet and heads of ramps.
    pub via: &'a [Point],
    /// Finished level at a place, m; `None` where nothing is known.
    pub level: &'a dyn Fn(Point) -> Option<f64>,
}

impl Field<'_> {
    /// The way of least work between two places, straight from corner to corner; `None` where walls shut it off.
    pub fn way(&self, from: Point, to: Point) -> Option<Way> {
        let open = |a: Point, b: Point| !self.walls.iter().any(|w| w.windows(2).any(|s| shut(a, b, s[0], s[1])));
        if open(from, to) {
            // No other way is shorter, and none climbs less than the places differ in level.
            let (length, levels) = (distance(from, to), (self.level)(from).zip((self.level)(to)));
            let climbs = Length::m(levels.map_or(0.0, |(a, b)| (b - a).max(0.0)));
            return Some(Way { points: vec![from, to], length, climbs, works: length + climbs * LIFT });
        }
        let mut nodes = vec![from, to];
        nodes.extend(self.corners());
        nodes.extend(self.via);
        let levels: Vec<Option<f64>> = nodes.iter().map(|p| (self.level)(*p)).collect();
        let climb = |a: usize, b: usize| levels[a].zip(levels[b]).map_or(0.0, |(x, y)| (y - x).max(0.0));
        let mut best = vec![f64::INFINITY; nodes.len()];
        let mut before = vec![usize::MAX; nodes.len()];
        let mut done = vec![false; nodes.len()];
        best[0] = 0.0;
        for _ in 0..nodes.len() {
            let open_nodes = (0..nodes.len()).filter(|i| !done[*i] && best[*i].is_finite());
            let here = open_nodes.min_by(|a, b| best[*a].total_cmp(&best[*b]))?;
            if here == 1 {
                break;
            }
            done[here] = true;
            for next in (0..nodes.len()).filter(|i| !done[*i]) {
                let d = best[here] + distance(nodes[here], nodes[next]).to_m() + LIFT * climb(here, next);
                if d < best[next] && open(nodes[here], nodes[next]) {
                    (best[next], before[next]) = (d, here);
                }
            }
        }
        if !best[1].is_finite() {
            return None;
        }
        let mut order = vec![1];
        while let Some(last) = order.last().filter(|i| **i != 0) {
            order.push(before[*last]);
        }
        order.reverse();
        let points: Vec<Point> = order.iter().map(|i| nodes[*i]).collect();
        let length: Length = points.windows(2).map(|w| distance(w[0], w[1])).sum();
        let climbs = Length::m(order.windows(2).map(|w| climb(w[0], w[1])).sum());
        Some(Way { points, length, climbs, works: Length::m(best[1]) })
    }

    /// Places just off the ends of the walls and outside their corners.
    fn corners(&self) -> Vec<Point> {
        let mut found = vec![];
        for w in self.walls.iter().filter(|w| w.len() >= 2) {
            let n = w.len();
            found.push(w[0] + (w[0] - w[1]).unit() * ROUND);
            found.push(w[n - 1] + (w[n - 1] - w[n - 2]).unit() * ROUND);
            for k in 1..n - 1 {
                let (a, b) = ((w[k] - w[k - 1]).unit(), (w[k + 1] - w[k]).unit());
                if a.cross(b).abs() > 0.05 {
                    let out: Vector = (a - b).unit();
                    found.extend([w[k] + out * ROUND, w[k] - out * ROUND]);
                }
            }
        }
        found.truncate(CORNERS);
        found
    }
}

/// True where a straight way from `a` to `b` meets the wall from `c` to `d`, the wall's ends included.
fn shut(a: Point, b: Point, c: Point, d: Point) -> bool {
    let (way, wall) = (b - a, d - c);
    let det = way.cross(wall);
    if det == 0.0 {
        return false;
    }
    let t = (c - a).cross(wall) / det;
    let u = (c - a).cross(way) / det;
    (0.0..=1.0).contains(&t) && (-1e-9..=1.0 + 1e-9).contains(&u)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn way(walls: &[Vec<Point>], to: Point) -> Option<Way> {
        let level = |p: Point| Some(0.1 * p.y);
        Field { walls, via: &[], level: &level }.way(Point::m(0.0, 0.0), to)
    }

    #[test]
    fn without_walls_the_way_is_straight_and_climbing_is_work() {
        let w = way(&[], Point::m(0.0, 10.0)).unwrap();
        assert_eq!(w.points.len(), 2);
        assert!((w.length.to_m() - 10.0).abs() < 1e-12 && (w.climbs.to_m() - 1.0).abs() < 1e-12);
        assert!((w.works.to_m() - 20.0).abs() < 1e-12);
    }

    #[test]
    fn a_wall_is_gone_round_its_nearer_end_and_a_closed_ring_is_not_left() {
        let wall = vec![Point::m(-1.0, 5.0), Point::m(8.0, 5.0)];
        let w = way(&[wall], Point::m(0.0, 10.0)).unwrap();
        assert_eq!(w.points.len(), 3);
        assert!(w.points[1].x < -1.0 && w.length.to_m() < 11.0, "{w:?}");
        let ring = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0)].map(|(x, y)| Point::m(x, y));
        assert!(way(&[ring.to_vec()], Point::m(0.0, 10.0)).is_none());
    }
}
