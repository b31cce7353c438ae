//! What is the ground at any chainage of the wall line, which way does the line run, and where does it turn?

use groundhold_quantity::{Length, Level, Point, Slope, Vector, math};

use crate::Station;

/// A wall line with its stations; anything between two stations is taken straight.
#[derive(Debug, Clone, Copy)]
pub struct Line<'a> {
    stations: &'a [Station],
}

/// The ground at one chainage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    /// On the wall line.
    pub at: Point,
    /// Behind.
    pub behind: Level,
    /// In front.
    pub front: Level,
    /// Ground behind, positive where it rises away.
    pub slope_behind: Slope,
    /// Ground in front, positive where it falls away.
    pub slope_front: Slope,
    /// Least level of the top.
    pub wanted_top: Level,
}

impl Ground {
    /// Ground behind above ground in front, never less than nothing.
    pub fn retained(&self) -> Length {
        (self.behind - self.front).max(Length::ZERO)
    }
}

impl<'a> Line<'a> {
    /// Over stations in order of chainage; at least two.
    pub fn new(stations: &'a [Station]) -> Line<'a> {
        debug_assert!(stations.len() >= 2);
        Line { stations }
    }
    /// Chainage of the first station.
    pub fn start(&self) -> Length {
        self.stations[0].chainage
    }
    /// Chainage of the last station.
    pub fn end(&self) -> Length {
        self.stations[self.stations.len() - 1].chainage
    }
    /// The segment that holds a chainage, counted from 0, and the share of the way along it.
    fn segment(&self, chainage: Length) -> (usize, f64) {
        let after = self.stations.partition_point(|s| s.chainage <= chainage);
        let i = after.clamp(1, self.stations.len() - 1) - 1;
        let (a, b) = (&self.stations[i], &self.stations[i + 1]);
        (i, ((chainage - a.chainage) / (b.chainage - a.chainage)).clamp(0.0, 1.0))
    }
    /// The ground at a chainage; beyond an end, the end's.
    pub fn at(&self, chainage: Length) -> Ground {
        let (i, t) = self.segment(chainage);
        let (a, b) = (&self.stations[i], &self.stations[i + 1]);
        let level = |x: Level, y: Level| x + (y - x) * t;
        let slope = |x: Slope, y: Slope| x + (y - x) * t;
        Ground {
            at: a.at.towards(b.at, t),
            behind: level(a.behind, b.behind),
            front: level(a.front, b.front),
            slope_behind: slope(a.slope_behind, b.slope_behind),
            slope_front: slope(a.slope_front, b.slope_front),
            wanted_top: level(a.wanted_top, b.wanted_top),
        }
    }
    /// The ground at both ends of a stretch and at every station inside it.
    pub fn over(&self, from: Length, to: Length) -> Vec<Ground> {
        let inside = self.stations.iter().map(|s| s.chainage).filter(|c| from < *c && *c < to);
        std::iter::once(from).chain(inside).chain(std::iter::once(to)).map(|c| self.at(c)).collect()
    }
    fn direction(&self, segment: usize) -> Vector {
        (self.stations[segment + 1].at - self.stations[segment].at).unit()
    }
    /// Directions of the line just before and just after a chainage.
    pub fn directions(&self, chainage: Length) -> (Vector, Vector) {
        let (i, t) = self.segment(chainage);
        let before = if t == 0.0 && i > 0 { i - 1 } else { i };
        let after = if t == 1.0 && i + 2 < self.stations.len() { i + 1 } else { i };
        (self.direction(before), self.direction(after))
    }
    /// Towards the open side, 1 m long, square to the line; halving the angle where the line turns.
    pub fn facing(&self, chainage: Length) -> Vector {
        let (before, after) = self.directions(chainage);
        let sum = before + after;
        let along = if sum.length() > 1e-9 { sum.unit() } else { after };
        along.left() * self.open_side(chainage)
    }
    /// 1 where the open side lies to the left of the line, −1 where it lies to the right.
    pub fn open_side(&self, chainage: Length) -> f64 {
        let (i, t) = self.segment(chainage);
        let s = &self.stations[if t < 0.5 { i } else { i + 1 }];
        if self.direction(i).cross(s.facing) >= 0.0 { 1.0 } else { -1.0 }
    }
    /// By how much the line turns at a chainage, radians, positive towards the open side.
    pub fn turn(&self, chainage: Length) -> f64 {
        let (before, after) = self.directions(chainage);
        math::atan2(before.cross(after), before.dot(after)) * self.open_side(chainage)
    }
    /// True where a station stands at this chainage, to a millimetre.
    pub fn has_station(&self, chainage: Length) -> bool {
        self.stations.iter().any(|s| (s.chainage - chainage).abs() < Length::mm(1.0))
    }
}
