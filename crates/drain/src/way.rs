//! Along the wall and to the outlet: in which direction does the pipe run, and at which fall does it get there?

use groundhold_quantity::{Length, Level, Point, Slope, distance};

use crate::grade::{GradeLine, grade_line};
use crate::{DrainCase, InvertPoint, WallLine};

/// Where a pipe goes: to an outlet in the open, or into the pipe of another wall at its low end.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Target {
    /// In plan.
    pub at: Point,
    /// Invert there.
    pub level: Level,
    /// The wall whose pipe it joins.
    pub joins: Option<String>,
}

/// A way along the wall, seen from the high end.
pub(crate) struct Way {
    /// Distance from the high end and highest invert allowed, m.
    pub base: Vec<(f64, f64)>,
    /// Distance from the high end, place and wall chainage of each station.
    places: Vec<(f64, Point, Length)>,
    /// From the low end to the outlet, m.
    pub leg: f64,
}

impl Way {
    pub(crate) fn arrives(&self, fall: Slope) -> Level {
        let line = grade_line(&self.base, fall.to_ratio());
        Level::m(line.last().map_or(f64::NEG_INFINITY, |p| p.1) - fall.to_ratio() * self.leg)
    }
    pub(crate) fn low_end(&self) -> Option<Point> {
        self.places.last().map(|p| p.1)
    }
}

fn way(case: &DrainCase, wall: &WallLine, backwards: bool, target: Option<&Target>) -> Way {
    let first = wall.stations.first().map_or(Length::ZERO, |s| s.chainage);
    let length = wall.length();
    let from_high = |c: Length| if backwards { (length - (c - first)).to_m() } else { (c - first).to_m() };
    let mut stations: Vec<_> = wall.stations.iter().collect();
    if backwards {
        stations.reverse();
    }
    let below = case.pipe.below_base.max(Length::ZERO);
    let mut way = Way {
        base: stations.iter().map(|s| (from_high(s.chainage), (s.base - below).to_m())).collect(),
        places: stations.iter().map(|s| (from_high(s.chainage), s.at, s.chainage)).collect(),
        leg: 0.0,
    };
    way.leg = match (target, way.low_end()) {
        (Some(t), Some(end)) => distance(end, t.at).to_m(),
        _ => 0.0,
    };
    way
}

/// The direction in which the pipe arrives highest; of two that arrive within a millimetre, the shorter.
pub(crate) fn downhill_way(case: &DrainCase, wall: &WallLine, target: Option<&Target>) -> Way {
    let (on, back) = (way(case, wall, false, target), way(case, wall, true, target));
    let gain = back.arrives(case.pipe.fall) - on.arrives(case.pipe.fall);
    let better = if gain.abs() <= Length::mm(1.0) { back.leg < on.leg } else { gain > Length::ZERO };
    if better { back } else { on }
}

/// The fall at which the pipe is laid: the wished one if the outlet can be reached with it, else the largest that
/// reaches it, not below the least; then also by how much the outlet is too high at the least.
pub(crate) fn fall_that_reaches(case: &DrainCase, way: &Way, target: Option<&Target>) -> (Slope, Option<Length>) {
    let (wished, least) = (case.pipe.fall, case.pipe.fall_least.min(case.pipe.fall));
    let Some(outlet) = target else { return (wished, None) };
    if way.arrives(wished) >= outlet.level {
        return (wished, None);
    }
    if way.arrives(least) < outlet.level {
        return (least, Some(outlet.level - way.arrives(least)));
    }
    let (mut low, mut high) = (least.to_ratio(), wished.to_ratio());
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if way.arrives(Slope::ratio(middle)) >= outlet.level { low = middle } else { high = middle }
    }
    (Slope::ratio(low), None)
}

/// The points of a grade line along a way, and the outlet where there is one.
pub(crate) fn points(
    way: &Way,
    line: &GradeLine,
    fall: Slope,
    reaches: bool,
    target: Option<&Target>,
) -> Vec<InvertPoint> {
    let mut stops: Vec<(f64, f64)> = line.to_vec();
    for d in turns(&way.places) {
        if stops.iter().all(|s| (s.0 - d).abs() > 1e-3) {
            let z = crate::linear::along(&stops, d);
            let at = stops.iter().position(|s| s.0 > d).unwrap_or(stops.len());
            stops.insert(at, (d, z));
        }
    }
    let mut points: Vec<InvertPoint> = stops
        .into_iter()
        .map(|(d, z)| {
            let (at, chainage) = place(&way.places, d);
            InvertPoint { chainage: Length::m(d), at, invert: Level::m(z), wall_chainage: Some(chainage) }
        })
        .collect();
    if let (Some(o), Some(&last)) = (target, points.last())
        && way.leg > 1e-3
    {
        let at_fall = last.invert - Length::m(fall.to_ratio() * way.leg);
        // Into a shaft it drops at the end; to an open end it is laid evenly.
        let invert = if reaches && o.joins.is_none() { o.level.min(at_fall) } else { at_fall };
        points.push(InvertPoint {
            chainage: last.chainage + Length::m(way.leg),
            at: o.at,
            invert,
            wall_chainage: None,
        });
    }
    points
}

/// Distances from the high end at which the wall turns.
fn turns(places: &[(f64, Point, Length)]) -> Vec<f64> {
    let way = |a: &(f64, Point, Length), b: &(f64, Point, Length)| (b.1 - a.1).unit();
    places.windows(3).filter(|w| way(&w[0], &w[1]).cross(way(&w[1], &w[2])).abs() > 0.02).map(|w| w[1].0).collect()
}

fn place(places: &[(f64, Point, Length)], d: f64) -> (Point, Length) {
    let i = places.iter().position(|p| p.0 >= d).unwrap_or(places.len().saturating_sub(1));
    let (d1, at1, c1) = places[i];
    if i == 0 || d1 <= places[i - 1].0 {
        return (at1, c1);
    }
    let (d0, at0, c0) = places[i - 1];
    let t = (d - d0) / (d1 - d0);
    (at0.towards(at1, t), c0 + (c1 - c0) * t)
}
