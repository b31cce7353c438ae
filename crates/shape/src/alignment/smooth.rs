//! Which smooth curve passes through given places?
//!
//! A piecewise cubic through all places with a continuous direction, parametrised by the root of the distances
//! (centripetal). Source: C. Yuksel, S. Schaefer and J. Keyser, Parameterization and applications of Catmull–Rom curves,
//! Computer-Aided Design 43 (2011), section 2 (from memory): the tangent at a place is that of the parabola through it
//! and its neighbours. At an end the direction of the straight that leads there is kept, else the parabola's.

use groundhold_quantity::{Point, Vector};

/// Places on the curve with the heading there, the first and the last among them.
pub(super) fn smooth(
    through: &[Point],
    first: Option<Vector>,
    last: Option<Vector>,
    closed: bool,
    error: f64,
) -> Vec<(Point, Vector)> {
    let n = through.len();
    let knot = |a: Point, b: Point| (b - a).length().sqrt().max(1e-6);
    // Slope at the middle one of three places with parameter steps before and after.
    let parabola = |a: Point, b: Point, c: Point| {
        let (h, k) = (knot(a, b), knot(b, c));
        ((b - a) * (k / h) + (c - b) * (h / k)) * (1.0 / (h + k))
    };
    let ring = |i: isize| through[i.rem_euclid(n as isize - 1) as usize];
    let slope = |i: usize| -> Vector {
        if closed {
            // First and last place are one.
            return parabola(ring(i as isize - 1), ring(i as isize), ring(i as isize + 1));
        }
        let end = |given: Option<Vector>, a: Point, b: Point, c: Option<Point>| {
            let h = knot(a, b);
            let plain = (b - a) * (1.0 / h);
            match (given, c) {
                (Some(d), _) => d * plain.length(),
                (None, Some(c)) => plain * 2.0 - parabola(a, b, c),
                (None, None) => plain,
            }
        };
        if i == 0 {
            return end(first, through[0], through[1], through.get(2).copied());
        }
        if i == n - 1 {
            let back = |v: Option<Vector>| v.map(|d| d * -1.0);
            let third = n.checked_sub(3).map(|k| through[k]);
            return end(back(last), through[n - 1], through[n - 2], third) * -1.0;
        }
        parabola(through[i - 1], through[i], through[i + 1])
    };
    let mut places = vec![(through[0], slope(0).unit())];
    for i in 0..n - 1 {
        let (a, b) = (through[i], through[i + 1]);
        let h = knot(a, b);
        let piece = Cubic { a, b, u: slope(i) * h, v: slope(i + 1) * h };
        piece.sample(0.0, 1.0, error, 0, &mut places);
    }
    places
}

/// A cubic by its ends and the slopes there.
struct Cubic {
    a: Point,
    b: Point,
    u: Vector,
    v: Vector,
}

impl Cubic {
    fn at(&self, t: f64) -> Point {
        let (t2, t3) = (t * t, t * t * t);
        let (p, q) = (3.0 * t2 - 2.0 * t3, t3 - 2.0 * t2 + t);
        self.a + (self.b - self.a) * p + self.u * q + self.v * (t3 - t2)
    }
    fn heading(&self, t: f64) -> Vector {
        let t2 = t * t;
        ((self.b - self.a) * (6.0 * t - 6.0 * t2) + self.u * (3.0 * t2 - 4.0 * t + 1.0) + self.v * (3.0 * t2 - 2.0 * t))
            .unit()
    }
    /// Halves until each part's quarter places lie within the error of the chord; at least in four parts.
    fn sample(&self, from: f64, to: f64, error: f64, depth: u32, into: &mut Vec<(Point, Vector)>) {
        let (p, q) = (self.at(from), self.at(to));
        let near = [0.25, 0.5, 0.75].iter().all(|k| {
            let m = self.at(from + (to - from) * k);
            groundhold_quantity::distance_to_segment(m, p, q).to_m() <= error
        });
        if (near && depth >= 2) || depth > 10 {
            into.push((q, self.heading(to)));
            return;
        }
        let middle = (from + to) / 2.0;
        self.sample(from, middle, error, depth + 1, into);
        self.sample(middle, to, error, depth + 1, into);
    }
}
