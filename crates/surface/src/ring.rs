//! What are the area, the way round and the middle of a list of corners?

use groundhold_quantity::{Point, Vector};

/// Area of a ring in square metres, positive when anticlockwise. Taken from the first corner, so that far from the
/// origin no digits are lost.
pub(crate) fn signed_area(ring: &[Point]) -> f64 {
    let Some(&o) = ring.first() else { return 0.0 };
    ring.windows(2).map(|e| (e[0] - o).cross(e[1] - o)).sum::<f64>() / 2.0
}

/// Way round, metres.
pub(crate) fn perimeter(ring: &[Point]) -> f64 {
    sides(ring).map(|(a, b)| (b - a).length()).sum()
}

/// Centre of area; the middle of the corners where there is no area.
pub(crate) fn centroid(ring: &[Point]) -> Point {
    let Some(&o) = ring.first() else { return Point::default() };
    let (mut twice, mut sum) = (0.0, Vector::default());
    for e in ring.windows(2) {
        let (u, v) = (e[0] - o, e[1] - o);
        let cross = u.cross(v);
        twice += cross;
        sum = sum + (u + v) * (cross / 3.0);
    }
    if twice != 0.0 {
        return o + sum * (1.0 / twice);
    }
    o + ring.iter().fold(Vector::default(), |s, &p| s + (p - o)) * (1.0 / ring.len() as f64)
}

/// The sides in order, the last one back to the first corner.
pub(crate) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]))
}

/// Least and greatest coordinates of points; the origin twice for no points.
pub(crate) fn bounds(points: &[Point]) -> (Point, Point) {
    let Some(&first) = points.first() else { return (Point::default(), Point::default()) };
    points.iter().fold((first, first), |(lo, hi), p| {
        (Point::m(lo.x.min(p.x), lo.y.min(p.y)), Point::m(hi.x.max(p.x), hi.y.max(p.y)))
    })
}

/// True where two rectangles, each by its least and greatest coordinates, have nothing in common.
pub(crate) fn apart(a: (Point, Point), b: (Point, Point)) -> bool {
    a.1.x < b.0.x || b.1.x < a.0.x || a.1.y < b.0.y || b.1.y < a.0.y
}

/// Distance of `p` to the left of the line from `a` to `b`, metres; negative on the right. Zero for a line without length.
pub(crate) fn left_of(p: Point, a: Point, b: Point) -> f64 {
    let along = b - a;
    let length = along.length();
    if length > 0.0 { along.cross(p - a) / length } else { 0.0 }
}

/// How far inside a convex anticlockwise ring a point lies: the least of its distances to the sides, negative outside,
/// undefined for an undefined point.
pub(crate) fn depth_inside(p: Point, ring: &[Point]) -> f64 {
    // Unlike `f64::min`, this does not pass over an undefined number.
    sides(ring).map(|(a, b)| left_of(p, a, b)).fold(f64::INFINITY, |least, d| if d >= least { least } else { d })
}
