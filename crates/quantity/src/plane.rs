//! Points and directions in plan, in metres in the job's own grid: x to the east, y to the north.

use std::ops::{Add, Mul, Sub};

use crate::Length;

/// A point in plan. `x` east and `y` north, both in metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// East, metres.
    pub x: f64,
    /// North, metres.
    pub y: f64,
}

/// A direction or displacement in plan, metres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Vector {
    /// East, metres.
    pub x: f64,
    /// North, metres.
    pub y: f64,
}

impl Point {
    /// From metres east and north.
    pub const fn m(x: f64, y: f64) -> Point {
        Point { x, y }
    }
    /// The point a share `t` of the way to `other`.
    pub fn towards(self, other: Point, t: f64) -> Point {
        Point::m(self.x + (other.x - self.x) * t, self.y + (other.y - self.y) * t)
    }
}

impl Vector {
    /// From metres east and north.
    pub const fn m(x: f64, y: f64) -> Vector {
        Vector { x, y }
    }
    /// Its length in metres.
    pub fn length(self) -> f64 {
        (self.x * self.x + self.y * self.y).sqrt()
    }
    /// The same direction, one metre long; zero stays zero.
    pub fn unit(self) -> Vector {
        let l = self.length();
        if l > 0.0 { Vector::m(self.x / l, self.y / l) } else { self }
    }
    /// A quarter turn to the left.
    pub fn left(self) -> Vector {
        Vector::m(-self.y, self.x)
    }
    /// Scalar product.
    pub fn dot(self, o: Vector) -> f64 {
        self.x * o.x + self.y * o.y
    }
    /// Positive when `o` lies to the left.
    pub fn cross(self, o: Vector) -> f64 {
        self.x * o.y - self.y * o.x
    }
}

impl Sub for Point {
    type Output = Vector;
    fn sub(self, o: Point) -> Vector {
        Vector::m(self.x - o.x, self.y - o.y)
    }
}
impl Add<Vector> for Point {
    type Output = Point;
    fn add(self, v: Vector) -> Point {
        Point::m(self.x + v.x, self.y + v.y)
    }
}
impl Sub<Vector> for Point {
    type Output = Point;
    fn sub(self, v: Vector) -> Point {
        Point::m(self.x - v.x, self.y - v.y)
    }
}
impl Add for Vector {
    type Output = Vector;
    fn add(self, v: Vector) -> Vector {
        Vector::m(self.x + v.x, self.y + v.y)
    }
}
impl Sub for Vector {
    type Output = Vector;
    fn sub(self, v: Vector) -> Vector {
        Vector::m(self.x - v.x, self.y - v.y)
    }
}
impl Mul<f64> for Vector {
    type Output = Vector;
    fn mul(self, k: f64) -> Vector {
        Vector::m(self.x * k, self.y * k)
    }
}

/// Distance between two points.
pub fn distance(a: Point, b: Point) -> Length {
    Length::m((b - a).length())
}

/// The nearest point to `p` on the segment `a`–`b`, and how far along it lies as a share of its length.
pub fn nearest_on_segment(p: Point, a: Point, b: Point) -> (Point, f64) {
    let ab = b - a;
    let l2 = ab.dot(ab);
    let t = if l2 > 0.0 { ((p - a).dot(ab) / l2).clamp(0.0, 1.0) } else { 0.0 };
    (a.towards(b, t), t)
}

/// Distance from `p` to the segment `a`–`b`.
pub fn distance_to_segment(p: Point, a: Point, b: Point) -> Length {
    distance(p, nearest_on_segment(p, a, b).0)
}

/// Where the segments `a`–`b` and `c`–`d` cross in their insides: shares along each, or nothing. Touching ends do not cross.
pub fn segments_cross(a: Point, b: Point, c: Point, d: Point) -> Option<(f64, f64)> {
    let (r, s) = (b - a, d - c);
    let det = r.cross(s);
    if det == 0.0 {
        return None;
    }
    let t = (c - a).cross(s) / det;
    let u = (c - a).cross(r) / det;
    let inside = |v: f64| 1e-12 < v && v < 1.0 - 1e-12;
    (inside(t) && inside(u)).then_some((t, u))
}
