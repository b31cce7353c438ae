//! Which part of a convex piece lies inside, or outside, another?

use std::borrow::Cow;

use groundhold_quantity::Point;

use crate::MEETS;
use crate::ring::{perimeter, sides, signed_area};

/// The overlap of two convex rings, both anticlockwise; empty if they have no area in common.
pub fn clip_convex(subject: &[Point], clip: &[Point]) -> Vec<Point> {
    tidy(overlap(&anticlockwise(subject), &anticlockwise(clip)))
}

/// The part of a convex ring where a linear function is not negative; empty if it has no area.
/// `keep_where_nonneg` must be linear in x and y: its zero is found by proportion along each side.
pub fn clip_half(subject: &[Point], keep_where_nonneg: impl Fn(Point) -> f64) -> Vec<Point> {
    tidy(half(subject, keep_where_nonneg))
}

/// Convex pieces that together are `subject` without `hole`; both convex and anticlockwise. They do not overlap.
pub fn subtract_convex(subject: &[Point], hole: &[Point]) -> Vec<Vec<Point>> {
    let (subject, hole) = (anticlockwise(subject), anticlockwise(hole));
    let whole = tidy(subject.to_vec());
    if whole.is_empty() || clip_convex(&subject, &hole).is_empty() {
        return if whole.is_empty() { vec![] } else { vec![whole] };
    }
    let mut rest = whole;
    let mut pieces = Vec::new();
    for (a, b) in sides(&hole).filter(|(a, b)| a != b) {
        let outside = tidy(half(&rest, |p| -(b - a).cross(p - a)));
        if !outside.is_empty() {
            pieces.push(outside);
        }
        rest = half(&rest, |p| (b - a).cross(p - a));
    }
    pieces
}

/// The overlap of two convex anticlockwise rings, with every corner kept however near to the next: for integration.
pub(crate) fn overlap(subject: &[Point], clip: &[Point]) -> Vec<Point> {
    if subject.len() < 3 || clip.len() < 3 {
        return vec![];
    }
    // Most pairs that are asked about only touch: nothing of the one is left of some side of the other.
    let mut cuts = sides(clip).filter(|(a, b)| a != b);
    if cuts.any(|(a, b)| subject.iter().all(|&p| (b - a).cross(p - a) <= 0.0)) {
        return vec![];
    }
    let mut rest = subject.to_vec();
    for (a, b) in sides(clip).filter(|(a, b)| a != b) {
        rest = half(&rest, |p| (b - a).cross(p - a));
    }
    rest
}

/// The half of a convex ring where `keep` is not negative, untidied. Cutting by `keep` and by its negative gives the
/// same corners, bit for bit, on the cut.
pub(crate) fn half(subject: &[Point], keep: impl Fn(Point) -> f64) -> Vec<Point> {
    let values: Vec<f64> = subject.iter().map(|&p| keep(p)).collect();
    if values.iter().all(|&v| v >= 0.0) {
        return subject.to_vec();
    }
    let mut kept: Vec<Point> = Vec::with_capacity(subject.len() + 1);
    let mut push = |p: Point| {
        if kept.last() != Some(&p) {
            kept.push(p);
        }
    };
    for i in 0..subject.len() {
        let j = (i + 1) % subject.len();
        let (p, q, v, w) = (subject[i], subject[j], values[i], values[j]);
        if v >= 0.0 {
            push(p);
        }
        if (v > 0.0 && w < 0.0) || (v < 0.0 && w > 0.0) {
            push(zero_between((p, v), (q, w)));
        }
    }
    if kept.len() > 1 && kept.first() == kept.last() {
        kept.pop();
    }
    if kept.len() < 3 { vec![] } else { kept }
}

/// Where a linear function with values of opposite sign at two points is zero; the same from either end.
pub(crate) fn zero_between((p, v): (Point, f64), (q, w): (Point, f64)) -> Point {
    if (p.x, p.y) <= (q.x, q.y) { p.towards(q, v / (v - w)) } else { q.towards(p, w / (w - v)) }
}

/// Leaves out corners nearer than a nanometre to the one before; nothing remains of a ring thinner than that.
pub(crate) fn tidy(mut ring: Vec<Point>) -> Vec<Point> {
    let near = |p: Point, q: Point| (p - q).length() < MEETS;
    ring.dedup_by(|next, kept| near(*next, *kept));
    while ring.len() > 1 && near(ring[0], ring[ring.len() - 1]) {
        ring.pop();
    }
    let wide_enough = ring.len() >= 3 && 2.0 * signed_area(&ring) > MEETS * perimeter(&ring);
    if wide_enough { ring } else { vec![] }
}

/// The ring turned anticlockwise.
pub(crate) fn anticlockwise(ring: &[Point]) -> Cow<'_, [Point]> {
    if signed_area(ring) < 0.0 { Cow::Owned(ring.iter().rev().copied().collect()) } else { Cow::Borrowed(ring) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Vec<Point> {
        vec![Point::m(x, y), Point::m(x + side, y), Point::m(x + side, y + side), Point::m(x, y + side)]
    }

    #[test]
    fn squares_that_overlap_by_a_quarter_share_a_quarter() {
        let both = clip_convex(&square(0.0, 0.0, 2.0), &square(1.0, 1.0, 2.0));
        assert!((signed_area(&both) - 1.0).abs() < 1e-12);
        let pieces = subtract_convex(&square(0.0, 0.0, 2.0), &square(1.0, 1.0, 2.0));
        assert!((pieces.iter().map(|p| signed_area(p)).sum::<f64>() - 3.0).abs() < 1e-12);
    }

    #[test]
    fn squares_that_only_touch_share_nothing_and_take_nothing_away() {
        let (a, b) = (square(0.0, 0.0, 1.0), square(1.0, 0.0, 1.0));
        assert!(clip_convex(&a, &b).is_empty());
        assert_eq!(subtract_convex(&a, &b), vec![a]);
    }

    #[test]
    fn a_hole_that_covers_the_piece_leaves_nothing() {
        assert!(subtract_convex(&square(1.0, 1.0, 1.0), &square(0.0, 0.0, 3.0)).is_empty());
        assert!(subtract_convex(&square(0.0, 0.0, 3.0), &square(0.0, 0.0, 3.0)).is_empty());
    }

    #[test]
    fn a_clockwise_ring_is_taken_as_the_same_piece() {
        let mut hole = square(1.0, 1.0, 1.0);
        hole.reverse();
        let left: f64 = subtract_convex(&square(0.0, 0.0, 3.0), &hole).iter().map(|p| signed_area(p)).sum();
        assert!((left - 8.0).abs() < 1e-12);
    }

    #[test]
    fn the_two_halves_of_a_cut_meet_bit_for_bit() {
        let f = |p: Point| 0.3 * p.x + 0.7 * p.y - 1.1;
        let (keep, rest) = (clip_half(&square(0.0, 0.0, 2.0), f), clip_half(&square(0.0, 0.0, 2.0), |p| -f(p)));
        let shared = keep.iter().filter(|p| rest.contains(p)).count();
        assert_eq!(shared, 2);
    }

    #[test]
    fn nothing_clips_to_nothing() {
        assert!(clip_convex(&[], &square(0.0, 0.0, 1.0)).is_empty());
        assert!(clip_half(&square(0.0, 0.0, 1.0), |_| f64::NAN).is_empty());
        assert!(subtract_convex(&[], &square(0.0, 0.0, 1.0)).is_empty());
        assert_eq!(subtract_convex(&square(0.0, 0.0, 1.0), &[]).len(), 1);
    }
}
