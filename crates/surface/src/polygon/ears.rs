//! Which triangles together are a polygon?

use groundhold_quantity::Point;

/// Ear clipping (Meisters, "Polygons have ears", American Mathematical Monthly 82 (1975) 648–651; from memory):
/// triangles as indices into the corners of a simple anticlockwise ring, each anticlockwise and with area.
/// A corner in a straight side stays a corner of some triangle.
pub(crate) fn ears(corners: &[Point]) -> Vec<[usize; 3]> {
    let mut left: Vec<usize> = (0..corners.len()).collect();
    let mut triangles = Vec::with_capacity(corners.len().saturating_sub(2));
    let mut from = 0;
    while left.len() > 3 {
        let n = left.len();
        let ear = (0..n).map(|k| (from + k) % n).find(|&i| is_ear(corners, &left, i));
        // Rounding can hide every ear of a ring thinner than the rounding; then the sharpest left turn goes.
        let i = ear.unwrap_or_else(|| widest_turn(corners, &left));
        let t = around(&left, i);
        if turn(corners, t) > 0.0 {
            triangles.push(t);
        }
        left.remove(i);
        // Going on beyond the ear keeps the triangles from fanning out of one corner.
        from = (i + 1) % left.len();
    }
    if let [a, b, c] = left[..]
        && turn(corners, [a, b, c]) > 0.0
    {
        triangles.push([a, b, c]);
    }
    triangles
}

fn around(left: &[usize], i: usize) -> [usize; 3] {
    let n = left.len();
    [left[(i + n - 1) % n], left[i], left[(i + 1) % n]]
}

/// Twice the area of the triangle, positive when anticlockwise.
fn turn(corners: &[Point], [a, b, c]: [usize; 3]) -> f64 {
    (corners[b] - corners[a]).cross(corners[c] - corners[a])
}

/// Sine of the turn at the middle corner.
fn sine(corners: &[Point], t: [usize; 3]) -> f64 {
    let (u, v) = (corners[t[1]] - corners[t[0]], corners[t[2]] - corners[t[1]]);
    u.cross(v) / (u.length() * v.length())
}

fn is_ear(corners: &[Point], left: &[usize], i: usize) -> bool {
    let t = around(left, i);
    if sine(corners, t) <= 1e-12 {
        return false;
    }
    let [a, b, c] = t;
    // A corner on the new side would be cut off from its neighbours, so the border counts as inside.
    left.iter()
        .filter(|k| !t.contains(k))
        .all(|&k| turn(corners, [a, b, k]) < 0.0 || turn(corners, [b, c, k]) < 0.0 || turn(corners, [c, a, k]) < 0.0)
}

fn widest_turn(corners: &[Point], left: &[usize]) -> usize {
    let sine_at = |i: usize| sine(corners, around(left, i));
    (0..left.len()).fold(0, |best, i| if sine_at(i) > sine_at(best) { i } else { best })
}
