//! Which arc leads from one place to another?

use groundhold_quantity::{Point, Vector, math};

use super::course::Curve;
use super::turned;

/// An arc of a circle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Arc {
    pub from: Point,
    pub to: Point,
    pub centre: Point,
    pub radius: f64,
    /// Angle that it turns, radians, left positive.
    pub turn: f64,
}

impl Arc {
    /// Through three places; nothing where they lie in one line or two of them are one.
    pub fn through(from: Point, by: Point, to: Point) -> Option<Arc> {
        let (u, v) = (by - from, to - from);
        let det = 2.0 * u.cross(v);
        // A sine below a millionth makes an arc that no string can tell from its chord.
        if det.abs() <= 2e-6 * u.length() * v.length() || (by - to).length() < 1e-6 {
            return None;
        }
        let (uu, vv) = (u.dot(u), v.dot(v));
        let c = Vector::m((uu * v.y - vv * u.y) / det, (vv * u.x - uu * v.x) / det);
        let centre = from + c;
        let (a, b) = (from - centre, to - centre);
        let mut turn = math::atan2(a.cross(b), a.dot(b));
        // The place in between lies to the right of the chord when the arc turns left.
        let left = u.cross(v) > 0.0;
        if left && turn < 0.0 {
            turn += std::f64::consts::TAU;
        } else if !left && turn > 0.0 {
            turn -= std::f64::consts::TAU;
        }
        Some(Arc { from, to, centre, radius: c.length(), turn })
    }

    /// The shorter arc of a radius; nothing where the radius is less than half the chord.
    pub fn of_radius(from: Point, to: Point, radius: f64, left: bool) -> Option<Arc> {
        let chord = to - from;
        let half = chord.length() / 2.0;
        if !(radius.is_finite() && radius >= half && half > 0.0) {
            return None;
        }
        let high = (radius * radius - half * half).max(0.0).sqrt();
        let side = if left { 1.0 } else { -1.0 };
        let centre = from.towards(to, 0.5) + chord.unit().left() * (high * side);
        let turn = 2.0 * math::asin((half / radius).min(1.0)) * side;
        Some(Arc { from, to, centre, radius, turn })
    }

    /// Direction at an angle from the start.
    pub fn heading(&self, angle: f64) -> Vector {
        let out = turned(self.from - self.centre, angle).unit();
        if self.turn > 0.0 { out.left() } else { out.left() * -1.0 }
    }

    pub fn at(&self, angle: f64) -> Point {
        self.centre + turned(self.from - self.centre, angle)
    }

    pub fn curve(&self) -> Curve {
        Curve { start: self.from, end: self.to, centre: self.centre, radius: self.radius, turn: self.turn }
    }

    /// Equal parts whose chords stay within an error: the rise of a chord that turns by δ is R·(1 − cos(δ/2)).
    pub fn parts(&self, error: f64) -> usize {
        let most = 2.0 * math::acos((1.0 - error / self.radius).clamp(0.0, 1.0));
        (self.turn.abs() / most.max(1e-3) - 1e-9).ceil().clamp(1.0, 4000.0) as usize
    }
}
