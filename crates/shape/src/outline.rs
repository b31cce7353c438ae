//! Which way is out of a ring, and where do its corners go when its sides move out?

use groundhold_quantity::{Point, Vector};

/// Unit vector out of an anticlockwise ring, across the side from `a` to `b`.
pub(crate) fn outward(a: Point, b: Point) -> Vector {
    (b - a).unit().left() * -1.0
}

/// The displacement of the corner between sides with these outward unit vectors when both move out by one metre; no longer
/// than 3 m, so that a needle corner stays near.
pub(crate) fn mitre(before: Vector, after: Vector) -> Vector {
    let sum = before + after;
    let m = sum * (1.0 / (1.0 + before.dot(after)).max(1e-9));
    if m.length() > 3.0 { sum.unit() * 3.0 } else { m }
}

/// The corners of an anticlockwise ring with every side moved out by `by` metres; as many corners as before.
pub(crate) fn mitred(ring: &[Point], by: f64) -> Vec<Point> {
    let n = ring.len();
    let side = |i: usize| outward(ring[i % n], ring[(i + 1) % n]);
    (0..n).map(|i| ring[i] + mitre(side(i + n - 1), side(i)) * by).collect()
}

/// The part of the segment where a linear function is not negative; nothing where it has no length.
pub(crate) fn clip_segment(a: Point, b: Point, keep: impl Fn(Point) -> f64) -> Option<(Point, Point)> {
    let (fa, fb) = (keep(a), keep(b));
    if fa < 0.0 && fb < 0.0 {
        return None;
    }
    let cut = || a.towards(b, fa / (fa - fb));
    let part = match (fa < 0.0, fb < 0.0) {
        (true, _) => (cut(), b),
        (_, true) => (a, cut()),
        _ => (a, b),
    };
    ((part.1 - part.0).length() > 1e-9).then_some(part)
}

/// The ring turned anticlockwise.
pub(crate) fn anticlockwise(mut ring: Vec<Point>) -> Vec<Point> {
    if area(&ring) < 0.0 {
        ring.reverse();
    }
    ring
}

/// Area of a ring in m², positive anticlockwise.
pub(crate) fn area(ring: &[Point]) -> f64 {
    let Some(o) = ring.first() else { return 0.0 };
    ring.windows(2).map(|w| (w[0] - *o).cross(w[1] - *o)).sum::<f64>() / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_moved_out_by_one_is_three_wide() {
        let ring = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(|(x, y)| Point::m(x, y));
        let out = mitred(&ring, 1.0);
        assert_eq!(area(&out), 9.0);
        assert!((out[0] - Point::m(-1.0, -1.0)).length() < 1e-12);
    }

    #[test]
    fn a_segment_is_cut_where_the_function_changes_sign() {
        let (a, b) = (Point::m(-1.0, 0.0), Point::m(3.0, 0.0));
        assert_eq!(clip_segment(a, b, |p| p.x), Some((Point::m(0.0, 0.0), b)));
        assert_eq!(clip_segment(a, b, |p| -p.x), Some((a, Point::m(0.0, 0.0))));
        assert_eq!(clip_segment(a, b, |_| -1.0), None);
    }
}
