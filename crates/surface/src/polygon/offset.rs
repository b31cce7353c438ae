//! Where does an outline run when every side moves by the same distance?
//!
//! Each side is a line that moves along its normal. The corners between neighbours then move evenly, so a side's length
//! changes evenly with the distance, and the distance at which it vanishes is known. Sides are taken out in the order
//! in which they vanish (the edge events of a straight skeleton, Aichholzer et al., "A novel type of skeleton for
//! polygons", Journal of Universal Computer Science 1 (1995) 752–761; from memory).

use groundhold_quantity::{Point, Vector};

use super::{Polygon, around};
use crate::{SAME_PLACE, ring};

/// A mitre reaches at most this many times the distance from its corner.
pub(super) const MITRE_MOST: f64 = 3.0;

/// A side that moves along its normal.
#[derive(Clone, Copy)]
struct Moving {
    /// A point of its line before it moves.
    from: Point,
    /// Its direction, one metre long.
    along: Vector,
    /// How far its line moves for each metre that the outline moves: 1 for a side, more for the cut of a mitre.
    speed: f64,
}

impl Moving {
    /// A point of the line after the outline has moved by `by` outwards.
    fn at(&self, by: f64) -> Point {
        self.from - self.along.left() * (self.speed * by)
    }
}

/// Moved outwards. Where a side would vanish or the moved outline cross itself, the way around everything is taken.
pub(super) fn outwards(polygon: &Polygon, by: f64) -> Polygon {
    let lines = moving_sides(&polygon.corners, by);
    let simply = corners_at(&lines, by).filter(|moved| {
        let n = moved.len();
        (0..n).all(|i| (moved[(i + 1) % n] - moved[i]).dot(lines[i].along) > 0.0)
    });
    simply
        .and_then(|moved| Polygon::new(moved).ok())
        .or_else(|| Polygon::new(around::around_strips(&polygon.corners, by)).ok())
        .unwrap_or_else(|| polygon.clone())
}

/// Moved inwards; `None` where nothing is left or it falls into parts.
pub(super) fn inwards(polygon: &Polygon, by: f64) -> Option<Polygon> {
    let moved = moved(&polygon.corners, -by)?;
    let within = ring::signed_area(&moved) > SAME_PLACE * ring::perimeter(&moved) / 2.0;
    if within { Polygon::new(moved).ok() } else { None }
}

/// Moved inwards by `by`, or by the most that leaves an outline with area.
pub(super) fn inwards_as_far_as_it_goes(polygon: &Polygon, by: f64) -> Polygon {
    if let Some(p) = inwards(polygon, by) {
        return p;
    }
    let (mut good, mut bad, mut best) = (0.0, by, polygon.clone());
    for _ in 0..60 {
        let middle = (good + bad) / 2.0;
        match inwards(polygon, middle) {
            Some(p) => (good, best) = (middle, p),
            None => bad = middle,
        }
    }
    best
}

/// The corners after every side has moved by `by` (negative: inwards); `None` where fewer than three sides are left.
fn moved(corners: &[Point], by: f64) -> Option<Vec<Point>> {
    let mut lines = moving_sides(corners, by);
    let mut now = 0.0;
    while lines.len() >= 3 {
        let (start, end) = (corners_at(&lines, now)?, corners_at(&lines, by)?);
        match first_to_vanish(&lines, &start, &end) {
            None => return Some(end),
            Some((i, share)) => {
                now += (by - now) * share;
                lines.remove(i);
                lines = without_straight_joins(lines, now);
            }
        }
    }
    None
}

/// One moving line per side, and one for the cut of each corner whose mitre would be too long.
fn moving_sides(corners: &[Point], by: f64) -> Vec<Moving> {
    let sides: Vec<Moving> =
        ring::sides(corners).map(|(a, b)| Moving { from: a, along: (b - a).unit(), speed: 1.0 }).collect();
    let sides = without_straight_joins(sides, 0.0);
    let n = sides.len();
    let mut lines = Vec::with_capacity(n);
    for i in 0..n {
        let (before, side) = (sides[(i + n - 1) % n], sides[i]);
        let outer = before.along.cross(side.along) * by > 0.0;
        // The mitre is 1/cos(half the turn) long; the sum of the two directions is twice that cosine long.
        let half_turn_cosine = (before.along + side.along).length() / 2.0;
        if outer && half_turn_cosine * MITRE_MOST < 1.0 {
            let along = (before.along + side.along).unit();
            lines.push(Moving { from: side.from, along, speed: MITRE_MOST });
        }
        lines.push(side);
    }
    lines
}

/// Takes out every line that goes on straight from the one before.
fn without_straight_joins(lines: Vec<Moving>, by: f64) -> Vec<Moving> {
    let n = lines.len();
    let straight = |i: usize| {
        let (before, line) = (lines[(i + n - 1) % n], lines[i]);
        let same_direction = before.along.cross(line.along).abs() < 1e-9 && before.along.dot(line.along) > 0.0;
        let offset = (line.at(by) - before.at(by)).cross(before.along).abs();
        same_direction && offset < SAME_PLACE && before.speed == line.speed
    };
    (0..n).filter(|&i| !straight(i)).map(|i| lines[i]).collect()
}

/// The start of each line: where it meets the line before. `None` where two neighbours never meet.
fn corners_at(lines: &[Moving], by: f64) -> Option<Vec<Point>> {
    let n = lines.len();
    (0..n)
        .map(|i| {
            let (before, line) = (lines[(i + n - 1) % n], lines[i]);
            let (p, q) = (before.at(by), line.at(by));
            let det = before.along.cross(line.along);
            if det.abs() < 1e-12 {
                return None;
            }
            Some(p + before.along * ((q - p).cross(line.along) / det))
        })
        .collect()
}

/// The side whose length is the first to reach zero on the way from one set of corners to the other, and the share of
/// the way at which it does.
fn first_to_vanish(lines: &[Moving], start: &[Point], end: &[Point]) -> Option<(usize, f64)> {
    let n = lines.len();
    let length = |corners: &[Point], i: usize| (corners[(i + 1) % n] - corners[i]).dot(lines[i].along);
    (0..n)
        .filter_map(|i| {
            let (before, after) = (length(start, i), length(end, i));
            let vanishes = after < 0.0 && before > after;
            vanishes.then(|| (i, (before / (before - after)).clamp(0.0, 1.0)))
        })
        .fold(None, |first: Option<(usize, f64)>, v| match first {
            Some(f) if f.1 <= v.1 => Some(f),
            _ => Some(v),
        })
}
