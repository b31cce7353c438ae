//! Which ground does a strip of constant width along a path take, level where it turns?

use groundhold_quantity::{Length, Level, Point, Slope, Vector, distance, math};
use groundhold_surface::{Facet, Plane};

use crate::outline::anticlockwise;

/// A strip of constant width along a path, level where it turns.
pub(crate) struct Strip {
    pub path: Vec<Point>,
    half: f64,
    /// Turn at each point of the path, radians, left positive; nothing at the ends.
    turn: Vec<f64>,
}

impl Strip {
    pub fn new(path: Vec<Point>, half: f64) -> Result<Strip, String> {
        let n = path.len();
        let mut turn = vec![0.0; n];
        for i in 1..n - 1 {
            let (u, v) = (path[i] - path[i - 1], path[i + 1] - path[i]);
            turn[i] = math::atan2(u.cross(v), u.dot(v));
            if turn[i].abs() > 2.1 {
                return Err(format!("its path turns back on itself at x {:.2} m, y {:.2} m", path[i].x, path[i].y));
            }
        }
        let strip = Strip { path, half, turn };
        for i in 0..n - 1 {
            if strip.sloped(i) < 0.01 {
                let (a, b) = (strip.path[i], strip.path[i + 1]);
                return Err(format!(
                    "the stretch of {:.2} m from x {:.2} m, y {:.2} m is too short for its turns at a width of {:.2} m",
                    distance(a, b).to_m(),
                    a.x,
                    a.y,
                    2.0 * half
                ));
            }
        }
        Ok(strip)
    }

    /// How far before and after a point the level turn reaches.
    fn setback(&self, i: usize) -> f64 {
        self.half * math::tan(self.turn[i].abs() / 2.0)
    }
    fn along(&self, i: usize) -> Vector {
        (self.path[i + 1] - self.path[i]).unit()
    }
    /// Length of the sloping part of stretch `i`.
    fn sloped(&self, i: usize) -> f64 {
        (self.path[i + 1] - self.path[i]).length() - self.setback(i) - self.setback(i + 1)
    }
    pub fn run(&self) -> f64 {
        (0..self.path.len() - 1).map(|i| self.sloped(i)).sum()
    }
    /// Level at the start of the sloping part of each stretch, and at the top.
    fn levels(&self, foot: Level, top: Level) -> Vec<Level> {
        let g = (top - foot).to_m() / self.run();
        let mut levels = vec![foot];
        let mut gone = 0.0;
        for i in 0..self.path.len() - 1 {
            gone += self.sloped(i);
            levels.push(foot + Length::m(g * gone));
        }
        levels
    }
    /// The four places about the turn at point `i`: where the stretch before ends (left, right), where the next begins.
    fn about(&self, i: usize) -> [Point; 4] {
        let (k, t) = (self.path[i], self.setback(i));
        let (u, v) = (self.along(i - 1), self.along(i));
        let (a, b) = (k - u * t, k + v * t);
        let side = |p: Point, d: Vector, s: f64| p + d.left() * (self.half * s);
        [side(a, u, 1.0), side(a, u, -1.0), side(b, v, 1.0), side(b, v, -1.0)]
    }
    /// The outer corner of the turn at point `i`.
    fn outer(&self, i: usize) -> Point {
        let u = self.along(i - 1);
        let side = if self.turn[i] > 0.0 { -self.half } else { self.half };
        self.path[i] + u * self.setback(i) + u.left() * side
    }

    pub fn facets(&self, foot: Level, top: Level) -> Vec<Facet> {
        let levels = self.levels(foot, top);
        let slope = (top - foot).to_m() / self.run();
        let mut out = vec![];
        for i in 0..self.path.len() - 1 {
            let u = self.along(i);
            let (a, b) = (self.path[i] + u * self.setback(i), self.path[i + 1] - u * self.setback(i + 1));
            let side = u.left() * self.half;
            let plane = Plane::rising(a, levels[i], u, Slope::ratio(slope));
            out.push(Facet { ring: vec![a - side, b - side, b + side, a + side], plane });
            if i + 2 < self.path.len() && self.setback(i + 1) > 1e-6 {
                let [l0, r0, l1, r1] = self.about(i + 1);
                let o = self.outer(i + 1);
                let ring = if self.turn[i + 1] > 0.0 { vec![l0, r0, o, r1] } else { vec![r0, l0, o, l1] };
                out.push(Facet { ring: anticlockwise(ring), plane: Plane::level(levels[i + 1]) });
            }
        }
        out
    }

    /// The edge anticlockwise: up the right side, across the top, down the left side.
    pub fn edge(&self, foot: Level, top: Level) -> Vec<(Point, Level)> {
        let levels = self.levels(foot, top);
        let n = self.path.len();
        let end = |i: usize, u: Vector, s: f64| self.path[i] + u.left() * (self.half * s);
        let mut right = vec![(end(0, self.along(0), -1.0), foot)];
        let mut left = vec![(end(0, self.along(0), 1.0), foot)];
        for (i, z) in levels.iter().copied().enumerate().take(n - 1).skip(1) {
            let [l0, r0, l1, r1] = self.about(i);
            let o = self.outer(i);
            let turns = self.turn[i];
            if turns.abs() < 1e-9 {
                right.push((r0, z));
                left.push((l0, z));
            } else if turns > 0.0 {
                right.extend([(r0, z), (o, z), (r1, z)]);
                left.push((l0, z));
            } else {
                right.push((r0, z));
                left.extend([(l0, z), (o, z), (l1, z)]);
            }
        }
        right.push((end(n - 1, self.along(n - 2), -1.0), top));
        left.push((end(n - 1, self.along(n - 2), 1.0), top));
        left.reverse();
        right.extend(left);
        right
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outline::area;

    #[test]
    fn a_turned_strip_has_the_area_of_its_parts_and_a_closed_edge() {
        let path = [(0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (9.0, 7.0)].map(|(x, y)| Point::m(x, y)).to_vec();
        let s = Strip::new(path, 0.5).unwrap();
        let (foot, top) = (Level::m(10.0), Level::m(11.0));
        let facets = s.facets(foot, top);
        let sum: f64 = facets.iter().map(|f| area(&f.ring)).sum();
        let edge = s.edge(foot, top);
        let ring: Vec<Point> = edge.iter().map(|(p, _)| *p).collect();
        assert!((sum - area(&ring)).abs() < 1e-9, "{sum} {}", area(&ring));
        assert!(facets.iter().all(|f| area(&f.ring) > 0.0));
        // Every corner of the edge lies in the plane of a facet that holds it.
        for (p, z) in edge {
            let near = facets
                .iter()
                .filter(|f| f.ring.iter().any(|q| (*q - p).length() < 1e-9))
                .map(|f| (f.plane.level_at(p) - z).to_m().abs())
                .fold(f64::INFINITY, f64::min);
            assert!(near < 1e-9, "{p:?} {near}");
        }
        let right_angle = 0.5;
        assert!(((5.0 + 4.0 + 5.0) - s.run() - 2.0 * (right_angle + s.setback(2))).abs() < 1e-9);
    }
}
