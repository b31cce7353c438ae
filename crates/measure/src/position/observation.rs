//! What does a reading say about the points it joins, and how does it change when they move?

use groundhold_quantity::{Point, Vector};

use super::{Part, formula};
use crate::least_squares::Equation;

/// A peg, or a point that is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum End {
    Known(Point),
    Sought(usize),
}

/// Against what the point was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Against {
    /// The other end of a tape.
    Tie(End),
    /// Along a base line from its first peg.
    Along(Point, Point),
    /// Square off a base line, to the left.
    Off(Point, Point),
}

/// One measured figure, in plan, metres.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Observation {
    pub point: End,
    pub against: Against,
    pub read: f64,
    pub sigma: f64,
    /// Which reading of the survey it belongs to.
    pub reading: usize,
}

/// Where a single figure lets its point lie when all else is known.
#[derive(Debug, Clone, Copy)]
pub(super) enum Locus {
    /// Centre, radius.
    Circle(Point, f64),
    /// Through, unit direction.
    Line(Point, Vector),
}

impl End {
    pub fn at(self, found: &[Point]) -> Point {
        match self {
            End::Known(p) => p,
            End::Sought(i) => found[i],
        }
    }
    fn sought(self) -> Option<usize> {
        match self {
            End::Known(_) => None,
            End::Sought(i) => Some(i),
        }
    }
    /// The same with points renumbered.
    pub fn renumbered(self, new: &[usize]) -> End {
        match self {
            End::Known(p) => End::Known(p),
            End::Sought(i) => End::Sought(new[i]),
        }
    }
    /// Its place, where it is known or already put down.
    fn placed(self, placed: &[Option<Point>]) -> Option<Point> {
        match self {
            End::Known(p) => Some(p),
            End::Sought(i) => placed[i],
        }
    }
}

impl Observation {
    pub fn part(&self) -> Part {
        match self.against {
            Against::Tie(_) => Part::Tie,
            Against::Along(..) => Part::Along,
            Against::Off(..) => Part::Off,
        }
    }

    /// The points it joins that are looked for.
    pub fn sought(&self) -> impl Iterator<Item = usize> {
        let other = match self.against {
            Against::Tie(e) => e.sought(),
            _ => None,
        };
        self.point.sought().into_iter().chain(other)
    }

    /// What it should read with the points where they are.
    pub fn computed(&self, found: &[Point]) -> f64 {
        let p = self.point.at(found);
        match self.against {
            Against::Tie(e) => {
                let q = e.at(found);
                formula::tie(p.x, p.y, q.x, q.y)
            }
            Against::Along(a, b) => formula::along([p.x, p.y, a.x, a.y, b.x, b.y]),
            Against::Off(a, b) => formula::off([p.x, p.y, a.x, a.y, b.x, b.y]),
        }
    }

    /// Computed less read.
    pub fn residual(&self, found: &[Point]) -> f64 {
        self.computed(found) - self.read
    }

    /// Linearised where the points are; unknown 2i is x of point i, 2i + 1 its y.
    pub fn equation(&self, found: &[Point]) -> Equation {
        let p = self.point.at(found);
        let (direction, other) = match self.against {
            Against::Tie(e) => {
                let d = p - e.at(found);
                (if d.length() > 1e-9 { d.unit() } else { Vector::m(1.0, 0.0) }, e.sought())
            }
            Against::Along(a, b) => ((b - a).unit(), None),
            Against::Off(a, b) => ((b - a).unit().left(), None),
        };
        let mut slopes = vec![];
        if let Some(i) = self.point.sought() {
            slopes.extend([(2 * i, direction.x), (2 * i + 1, direction.y)]);
        }
        if let Some(j) = other {
            slopes.extend([(2 * j, -direction.x), (2 * j + 1, -direction.y)]);
        }
        Equation { slopes, left: -self.residual(found), sigma: self.sigma }
    }

    /// Where it lets point `i` lie, if everything else it joins is placed.
    pub fn locus(&self, i: usize, placed: &[Option<Point>]) -> Option<Locus> {
        match (self.point, self.against) {
            (End::Sought(p), Against::Tie(e)) if p == i => Some(Locus::Circle(e.placed(placed)?, self.read)),
            (other, Against::Tie(End::Sought(q))) if q == i => Some(Locus::Circle(other.placed(placed)?, self.read)),
            (End::Sought(p), Against::Along(a, b)) if p == i => {
                let u = (b - a).unit();
                Some(Locus::Line(a + u * self.read, u.left()))
            }
            (End::Sought(p), Against::Off(a, b)) if p == i => {
                let u = (b - a).unit();
                Some(Locus::Line(a + u.left() * self.read, u))
            }
            _ => None,
        }
    }
}

impl Locus {
    /// How far a point lies off it.
    pub fn misses(self, p: Point) -> f64 {
        match self {
            Locus::Circle(c, r) => ((p - c).length() - r).abs(),
            Locus::Line(through, u) => u.cross(p - through).abs(),
        }
    }

    /// Where two of them meet: two places, one (a touch, a near miss or two lines), or none.
    pub fn meets(self, other: Locus) -> Vec<Point> {
        match (self, other) {
            (Locus::Circle(c, r), Locus::Circle(d, s)) => circles(c, r, d, s),
            (Locus::Circle(c, r), Locus::Line(t, u)) | (Locus::Line(t, u), Locus::Circle(c, r)) => {
                let foot = t + u * u.dot(c - t);
                either_side(foot, u, r * r - (foot - c).dot(foot - c))
            }
            (Locus::Line(t, u), Locus::Line(s, w)) => {
                let sine = u.cross(w);
                if sine.abs() < 1e-9 { vec![] } else { vec![t + u * ((s - t).cross(w) / sine)] }
            }
        }
    }
}

fn circles(c: Point, r: f64, d: Point, s: f64) -> Vec<Point> {
    let base = d - c;
    let length = base.length();
    if length < 1e-9 {
        return vec![];
    }
    let u = base.unit();
    let x = (r * r - s * s + length * length) / (2.0 * length);
    either_side(c + u * x.clamp(-r, r), u.left(), r * r - x * x)
}

fn either_side(middle: Point, direction: Vector, half_squared: f64) -> Vec<Point> {
    if half_squared <= 0.0 {
        return vec![middle];
    }
    let half = direction * half_squared.sqrt();
    vec![middle + half, middle - half]
}
