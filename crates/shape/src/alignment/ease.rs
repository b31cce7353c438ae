//! How is a corner rounded, by an arc alone or by an arc between two transitions?
//!
//! A transition is a clothoid: its curvature grows evenly from nothing to that of the arc. Source: W. Schofield and
//! M. Breach, Engineering Surveying, 6th edition, 2007, chapter 10 (from memory): transition angle L/(2R), shift
//! S = Y − R·(1 − cos φ), tangent length (R + S)·tan(Δ/2) + X − R·sin φ. X and Y are integrated, not taken from a series.

use groundhold_quantity::{Point, Vector, math};

use super::arc::Arc;
use super::turned;

/// A rounded corner.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Round {
    /// Length of straight that it takes on either side of the corner.
    pub takes: f64,
    /// Places with the heading there, from the straight before to the straight after.
    pub places: Vec<(Point, Vector)>,
    /// The arc in its middle.
    pub arc: Arc,
}

/// Angle that both transitions turn together.
pub(super) fn angle_of_ease(ease: f64, radius: f64) -> f64 {
    ease / radius
}

/// End of a clothoid that begins at the origin along x and turns left to a curvature of 1/R after a length: along and off.
fn clothoid(length: f64, radius: f64, s: f64) -> (f64, f64) {
    // Gauss–Legendre with five places on each of eight parts; the heading is s²/(2·R·L), smooth and below a half turn.
    const GAUSS: [(f64, f64); 5] = [
        (0.0, 128.0 / 225.0),
        (0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (-0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
        (0.906_179_845_938_664, 0.236_926_885_056_189_08),
        (-0.906_179_845_938_664, 0.236_926_885_056_189_08),
    ];
    let parts = 8;
    let h = s / f64::from(parts) / 2.0;
    let (mut x, mut y) = (0.0, 0.0);
    for k in 0..parts {
        let middle = (2.0 * f64::from(k) + 1.0) * h;
        for (t, w) in GAUSS {
            let at = middle + h * t;
            let heading = at * at / (2.0 * radius * length);
            x += w * h * math::cos(heading);
            y += w * h * math::sin(heading);
        }
    }
    (x, y)
}

/// Length of straight that a round of this radius and these transitions takes at a corner that turns by an angle.
pub(super) fn tangent_length(turn: f64, radius: f64, ease: f64) -> f64 {
    let half = math::tan(turn.abs() / 2.0);
    if ease <= 0.0 {
        return radius * half;
    }
    let phi = ease / (2.0 * radius);
    let (x, y) = clothoid(ease, radius, ease);
    let shift = y - radius * (1.0 - math::cos(phi));
    (radius + shift) * half + x - radius * math::sin(phi)
}

/// Rounds the corner at which `along` turns by `turn` (left positive).
pub(super) fn round(corner: Point, along: Vector, turn: f64, radius: f64, ease: f64, error: f64) -> Round {
    let takes = tangent_length(turn, radius, ease);
    let side = if turn < 0.0 { -1.0 } else { 1.0 };
    let onward = turned(along, turn);
    let (start, end) = (corner - along * takes, corner + onward * takes);
    // From either end towards the middle: the way in along `along`, the way out seen backwards.
    let place = |from: Point, way: Vector, bends: f64, s: f64| {
        let (x, y) = clothoid(ease, radius, s);
        from + way * x + way.left() * (y * bends)
    };
    let phi = if ease > 0.0 { ease / (2.0 * radius) } else { 0.0 };
    let steps = ease_steps(ease, radius, error);
    let mut places = vec![];
    if ease > 0.0 {
        for k in 0..steps {
            let s = ease * k as f64 / steps as f64;
            places.push((place(start, along, side, s), turned(along, side * s * s / (2.0 * radius * ease))));
        }
    }
    let (from, to) = if ease > 0.0 {
        (place(start, along, side, ease), place(end, onward * -1.0, -side, ease))
    } else {
        (start, end)
    };
    let heading = turned(along, side * phi);
    let centre = from + heading.left() * (radius * side);
    let arc = Arc { from, to, centre, radius, turn: turn - 2.0 * phi * side };
    let n = arc.parts(error);
    for k in 0..=n {
        let angle = arc.turn * k as f64 / n as f64;
        let p = if k == 0 {
            from
        } else if k == n {
            to
        } else {
            arc.at(angle)
        };
        places.push((p, arc.heading(angle)));
    }
    if ease > 0.0 {
        for k in (0..steps).rev() {
            let s = ease * k as f64 / steps as f64;
            let back = turned(onward * -1.0, -side * s * s / (2.0 * radius * ease));
            places.push((place(end, onward * -1.0, -side, s), back * -1.0));
        }
    }
    Round { takes, places, arc }
}

/// Parts of a transition whose chords stay within an error: nowhere is it more curved than the arc.
fn ease_steps(ease: f64, radius: f64, error: f64) -> usize {
    let chord = (8.0 * radius * error).sqrt();
    (ease / chord).ceil().clamp(1.0, 4000.0) as usize
}
