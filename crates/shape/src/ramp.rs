//! Which ground does a ramp take, and how steep is it?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, Slope, Vector, distance, math, segments_cross};
use groundhold_surface::{Facet, Plane};

use crate::barrier::take_away;
use crate::findings::{RAMP_CANNOT_BE_SHAPED, RAMP_NOT_SELF_PROPELLED, RAMP_OVER_LIMIT, RAMP_TOO_STEEP};
use crate::gradient::{gradient, ramp_length};
use crate::outline::anticlockwise;
use crate::pad::convex_pieces;
use crate::reach::Platform;
use crate::{Pad, Ramp, RampWish, Wish};

/// How far a path may end short of its pad's apron, metres; it is led on straight (ours).
const SHORT_OF_PAD: f64 = 1.0;

/// A ramp with the ground it takes and its edge.
pub(crate) struct Laid {
    pub ramp: Ramp,
    pub facets: Vec<Facet>,
    pub edge: Vec<(Point, Level)>,
}

/// Shapes a ramp; `below` gives the ground at its foot.
pub(crate) fn ramp(
    w: &RampWish,
    pads: &[Pad],
    wish: &Wish,
    below: impl Fn(Point) -> Option<Level>,
    findings: &mut Vec<Finding>,
) -> Option<Laid> {
    match shaped(w, pads, below) {
        Ok(laid) => {
            findings.extend(judged(w, wish, &laid.ramp));
            Some(laid)
        }
        Err(why) => {
            findings.push(Finding::new(&RAMP_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            None
        }
    }
}

fn shaped(w: &RampWish, pads: &[Pad], below: impl Fn(Point) -> Option<Level>) -> Result<Laid, String> {
    let pad = pads.iter().find(|p| p.id == w.toward).ok_or(format!("there is no pad {} to lead to", w.toward))?;
    let width = w.width.to_m();
    if !(0.1..=50.0).contains(&width) {
        return Err(format!("its width is {width:.3} m, expected 0.1 m to 50 m"));
    }
    let (path, threshold) = up_to_pad(&tidy(&w.path)?, width / 2.0, pad)?;
    let foot_level = below(path[0]).ok_or("its foot lies outside the surveyed ground")?;
    let top_level = pad.plane.level_at(path[path.len() - 1]);
    let strip = Strip::new(path, width / 2.0)?;
    let (run, rise) = (strip.run(), top_level - foot_level);
    let g = gradient(rise.abs(), Length::m(run)).map_err(|e| e.to_string())?;
    let mut facets = strip.facets(foot_level, top_level);
    let mut rest = vec![threshold];
    for hole in convex_pieces(&pad.finished) {
        rest = take_away(rest, &hole);
    }
    facets.extend(rest.into_iter().map(|ring| Facet { ring, plane: pad.plane }));
    let edge = strip.edge(foot_level, top_level);
    let length = strip.path.windows(2).map(|p| distance(p[0], p[1])).sum();
    let ramp = Ramp {
        id: w.id.clone(),
        toward: w.toward.clone(),
        path: strip.path,
        width: w.width,
        foot_level,
        top_level,
        rise,
        run: Length::m(run),
        length,
        gradient: g.slope,
        trace: g.trace,
    };
    Ok(Laid { ramp, facets, edge })
}

/// The path without repeated points.
fn tidy(path: &[Point]) -> Result<Vec<Point>, String> {
    if path.iter().any(|p| !(p.x.is_finite() && p.y.is_finite())) {
        return Err("a point of its path is not an ordinary position".into());
    }
    let mut out: Vec<Point> = vec![];
    for p in path {
        if out.last().is_none_or(|q| distance(*q, *p).to_mm() > 1.0) {
            out.push(*p);
        }
    }
    if out.len() < 2 { Err("its path needs at least two different points".into()) } else { Ok(out) }
}

/// The path up to where the first corner of the strip touches the pad's edge, and the level piece from there to where
/// its last corner is inside.
fn up_to_pad(path: &[Point], half: f64, pad: &Pad) -> Result<(Vec<Point>, Vec<Point>), String> {
    let ring = pad.finished.corners();
    if pad.finished.contains(path[0]) {
        return Err(format!("its foot already lies on {}", pad.id));
    }
    let meets = |a: Point, b: Point| {
        (0..ring.len())
            .filter_map(|i| segments_cross(a, b, ring[i], ring[(i + 1) % ring.len()]))
            .map(|(t, _)| t * (b - a).length())
            .reduce(f64::min)
    };
    for i in 0..path.len() - 1 {
        let (a, b) = (path[i], path[i + 1]);
        let u = (b - a).unit();
        let last = i + 2 == path.len();
        let end = if last { b + u * SHORT_OF_PAD } else { b };
        // A hair aside, so that a path through a corner of the pad meets one of its sides.
        let hair = u.left() * 1e-7;
        let Some(middle) = meets(a, end).or_else(|| meets(a + hair, end + hair)) else { continue };
        let sides = [half, -half].map(|h| u.left() * h);
        let found = sides.map(|s| meets(a + s, end + u * (2.0 * half) + s));
        let first = found.iter().flatten().fold(middle, |x, y| x.min(*y));
        let full = found.iter().flatten().fold(middle, |x, y| x.max(*y)).min(first + 2.0 * half);
        if first < 0.05 {
            return Err(format!("its last stretch has no length before it meets {}", pad.id));
        }
        let mut kept = path[..=i].to_vec();
        kept.push(a + u * first);
        let at = |s: f64, side: Vector| a + u * s + side;
        let threshold =
            anticlockwise(vec![at(first, sides[0]), at(first, sides[1]), at(full, sides[1]), at(full, sides[0])]);
        return Ok((kept, threshold));
    }
    Err(format!("its path does not reach {}; expected its last point on the pad's edge", pad.id))
}

/// A strip of constant width along a path, level where it turns.
struct Strip {
    path: Vec<Point>,
    half: f64,
    /// Turn at each point of the path, radians, left positive; nothing at the ends.
    turn: Vec<f64>,
}

impl Strip {
    fn new(path: Vec<Point>, half: f64) -> Result<Strip, String> {
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
    fn run(&self) -> f64 {
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

    fn facets(&self, foot: Level, top: Level) -> Vec<Facet> {
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
    fn edge(&self, foot: Level, top: Level) -> Vec<(Point, Level)> {
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

impl Laid {
    /// Its edge as a platform; no batter starts at its top.
    pub fn platform(&self, walls: &[crate::barrier::Barrier]) -> Platform {
        let inner: Vec<Point> = self.edge.iter().map(|(p, _)| *p).collect();
        let mut p = Platform::new(&self.ramp.id, self.edge.clone(), &inner, walls);
        let top = self.edge.iter().position(|(p, _)| {
            let end = self.ramp.path[self.ramp.path.len() - 1];
            (distance(*p, end).to_m() - self.ramp.width.to_m() / 2.0).abs() < 1e-6
        });
        if let Some(i) = top {
            p.lit[i].clear();
        }
        p
    }
}

fn judged(w: &RampWish, wish: &Wish, r: &Ramp) -> Vec<Finding> {
    let u = wish.units;
    let mut said = vec![];
    let mut too_steep = |kind, most: Slope, whose: String| {
        if r.gradient.to_ratio() <= most.to_ratio() + 1e-9 {
            return;
        }
        let says = format!(
            "{} climbs {} over {}: {}, where {whose} is {}.",
            r.id,
            u.length(r.rise.abs()),
            u.run(r.run),
            u.slope(r.gradient),
            u.slope(most)
        );
        let mut f =
            Finding::new(kind, Place::of(&r.id), says).with_utilisation(r.gradient / most).with_trace(r.trace.clone());
        if let Ok(needed) = ramp_length(r.rise.abs(), most) {
            f = f.with_remedy(Remedy::theirs(format!(
                "Lead its path {} longer: {} at {} needs {}, level turns not counted.",
                u.run(needed.run - r.run),
                u.length(r.rise.abs()),
                u.slope(most),
                u.run(needed.run)
            )));
        }
        let sign = if r.rise.to_m() < 0.0 { -1.0 } else { 1.0 };
        let level = r.foot_level + r.run * (most.to_ratio() * sign);
        let by = level - r.top_level;
        f = f.with_remedy(Remedy::ours(
            format!("{} {} {}.", r.toward, u.length(by.abs()), if by.to_m() < 0.0 { "lower" } else { "higher" }),
            vec![Adjust {
                element: r.toward.clone(),
                field: "level".into(),
                value: format!("{:.3} m", pad_level(wish, &r.toward, by)),
            }],
        ));
        said.push(f);
    };
    too_steep(&RAMP_TOO_STEEP, w.steepest, "the steepest wished for".to_string());
    let limit = wish.limits.ramp;
    too_steep(&RAMP_OVER_LIMIT, limit.steepest, format!("the limit ({})", limit.source));
    if r.gradient.to_ratio() > 1.0 / 12.0 + 1e-9 {
        let says = format!(
            "{} is {}; steeper than 1:12 it cannot be climbed in a self-propelled wheelchair.",
            r.id,
            u.slope(r.gradient)
        );
        said.push(
            Finding::new(&RAMP_NOT_SELF_PROPELLED, Place::of(&r.id), says)
                .with_utilisation(r.gradient.to_ratio() * 12.0)
                .with_trace(r.trace.clone()),
        );
    }
    said
}

/// The wished level of a pad moved by `by`, metres.
pub(crate) fn pad_level(wish: &Wish, pad: &str, by: Length) -> f64 {
    wish.pads.iter().find(|p| p.id == pad).map_or(0.0, |p| (p.level + by).to_m())
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
