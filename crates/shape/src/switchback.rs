//! Where does a ramp go to and fro when the straight way is too steep?
//!
//! Legs of equal length lie beside each other, parallel to the pad's edge, joined by level turns at their ends; the top
//! leg ends on a short way square onto the pad. For every number of legs and both hands the length of a leg follows from
//! the rise to the ground at the foot and the steepest slope, by repeating until the foot stands still; what leaves the
//! wished outline or the survey, or reaches the pad, is left out. The shortest way that remains is taken.

use groundhold_quantity::{Level, Point, Slope, Vector, distance};
use groundhold_surface::Polygon;

use crate::outline::outward;
use crate::{Alignment, Pad, RampWish};

/// Most legs that are tried (ours).
const LEGS: usize = 12;
/// Clear ground between two legs, metres (ours: room for an edging and a rail).
const BETWEEN: f64 = 0.3;
/// Shortest slope of a leg, metres (ours).
const SHORTEST: f64 = 1.0;
/// How far apart places along the pad's edge are tried, metres (ours).
const EVERY: f64 = 0.5;

/// A way to and fro that keeps the slope.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Switchback {
    /// From the foot up to the pad's edge.
    pub path: Vec<Point>,
    pub legs: usize,
    /// Length along it, metres.
    pub length: f64,
    /// The slope that it has.
    pub slope: Slope,
}

/// Legs of one switchback, seen from where it leaves the pad.
struct Try<'a> {
    head: Point,
    /// Along the pad's edge, the way in which the top leg leads down.
    along: Vector,
    out: Vector,
    width: f64,
    pad: &'a Pad,
    within: Option<&'a Polygon>,
    steepest: f64,
    below: &'a dyn Fn(Point) -> Option<Level>,
}

/// The shortest way to and fro to the pad side on which the ramp arrives.
pub(crate) fn switchback(w: &RampWish, pad: &Pad, below: &dyn Fn(Point) -> Option<Level>) -> Option<Switchback> {
    let within = Polygon::new(w.within.clone()).ok();
    let (end, before) = (*w.path.last()?, *w.path.get(w.path.len().checked_sub(2)?)?);
    let ring = pad.finished.corners();
    let sides = (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]));
    // The side that the ramp runs against, nearest to its end.
    let came = (before - end).unit();
    let facing = sides.filter(|(a, b)| outward(*a, *b).dot(came) > 0.3);
    let (a, b) = facing.min_by(|x, y| {
        let far = |s: &(Point, Point)| groundhold_quantity::distance_to_segment(end, s.0, s.1).to_m();
        far(x).total_cmp(&far(y))
    })?;
    let (long, u, out, width) = (distance(a, b).to_m(), (b - a).unit(), outward(a, b), w.width.to_m());
    let room = width / 2.0;
    let n = ((long - width) / EVERY).floor().clamp(0.0, 400.0) as usize;
    let mut best: Option<Switchback> = None;
    for k in 0..=n {
        let s = if long > width { room + (long - width) * k as f64 / n.max(1) as f64 } else { long / 2.0 };
        for along in [u, u * -1.0] {
            let t = Try {
                head: a + u * s,
                along,
                out,
                width,
                pad,
                within: within.as_ref(),
                steepest: w.steepest.to_ratio(),
                below,
            };
            for legs in 1..=LEGS {
                if let Some(found) = t.with(legs).filter(|f| best.as_ref().is_none_or(|b| f.length < b.length - 1e-6)) {
                    best = Some(found);
                }
            }
        }
    }
    best
}

impl Try<'_> {
    /// From the pad down: where the middle line runs with so many legs of this length between turns.
    fn path(&self, legs: usize, leg: f64) -> Vec<Point> {
        let apart = self.width + BETWEEN;
        let first = self.width / 2.0 + BETWEEN;
        let mut at = self.head + self.out * first;
        let mut down = vec![self.head, at];
        let mut way = self.along;
        for k in 0..legs {
            at = at + way * leg;
            down.push(at);
            if k + 1 < legs {
                at = at + self.out * apart;
                down.push(at);
                way = way * -1.0;
            }
        }
        down.reverse();
        down
    }

    fn with(&self, legs: usize) -> Option<Switchback> {
        let top = self.pad.plane.level_at(self.head);
        let mut leg = SHORTEST + self.width;
        for _ in 0..30 {
            let path = self.path(legs, leg);
            let rise = (top - (self.below)(path[0])?).to_m().abs();
            let run = self.run(&path)?;
            // A hair gentler than the steepest, so that rounding to the millimetre keeps it.
            let short = (rise / self.steepest * 1.0005 - run) / legs as f64;
            let next = (leg + short).max(SHORTEST + self.width);
            if (next - leg).abs() < 1e-4 {
                return self.kept(path, legs, rise, run);
            }
            leg = next;
        }
        None
    }

    /// Length on which it slopes.
    fn run(&self, path: &[Point]) -> Option<f64> {
        let course = Alignment::from(path.to_vec()).course().ok()?;
        Some(crate::ribbon::Ribbon::new(&course, self.width / 2.0, None, None).ok()?.run())
    }

    fn kept(&self, path: Vec<Point>, legs: usize, rise: f64, run: f64) -> Option<Switchback> {
        if rise > run * self.steepest * (1.0 + 1e-9) {
            return None;
        }
        let half = self.width / 2.0;
        for p in &path[..path.len() - 1] {
            for (x, y) in [(half, half), (half, -half), (-half, half), (-half, -half)] {
                let corner = *p + self.along * x + self.out * y;
                let free = !self.pad.finished.contains(corner) && (self.below)(corner).is_some();
                if !free || self.within.is_some_and(|o| !o.contains(corner)) {
                    return None;
                }
            }
        }
        let length = path.windows(2).map(|p| distance(p[0], p[1]).to_m()).sum();
        Some(Switchback { path, legs, length, slope: Slope::ratio(rise / run) })
    }
}
