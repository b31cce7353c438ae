//! What has the ground become? Finished pieces, pads, flights, ramps and the profile of every wall.

use groundhold_finding::Finding;
use groundhold_quantity::{Angle, Area, Length, Level, Point, Slope, Vector};
use groundhold_surface::{Facet, Plane, Polygon, Tin};
use groundhold_working::Trace;

use crate::index::FacetIndex;
use crate::{Batter, Curve};

/// The finished ground and what stands in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Shaped {
    /// Pads that could be shaped, in the order of the wish.
    pub pads: Vec<Pad>,
    /// Finished ground in convex planar pieces; no two overlap. Elsewhere the existing ground stays.
    pub grounds: Vec<Ground>,
    /// Walls that could be shaped.
    pub walls: Vec<WallProfile>,
    /// Where walls meet.
    pub meetings: Vec<Meeting>,
    /// Flights that could be shaped.
    pub flights: Vec<Flight>,
    /// Ramps that could be shaped.
    pub ramps: Vec<Ramp>,
    /// What is to be said against it.
    pub findings: Vec<Finding>,
    pub(crate) index: FacetIndex,
}

/// What a piece of finished ground belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GroundKind {
    /// A tread of a flight.
    Tread,
    /// A ramp, its landings included.
    Ramp,
    /// A pad with its apron.
    Pad,
    /// A batter from the edge of a pad or ramp to daylight.
    Batter,
}

/// A piece of finished ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// Its ring in plan and its plane.
    pub facet: Facet,
    /// The element it belongs to.
    pub of: String,
    /// What it is.
    pub kind: GroundKind,
}

/// A pad as shaped.
#[derive(Debug, Clone, PartialEq)]
pub struct Pad {
    /// Its id.
    pub id: String,
    /// Its outline, anticlockwise.
    pub polygon: Polygon,
    /// The outline with its apron, before walls cut it.
    pub finished: Polygon,
    /// Its plane.
    pub plane: Plane,
    /// Area of `polygon`.
    pub area: Area,
    /// Its corners as given; the points of `polygon` between them lie on its curves.
    pub corners: Vec<Point>,
    /// Arcs in its outline as given, in order.
    pub curves: Vec<Curve>,
    /// Thickness of what is laid between the formation and the finished level.
    pub build_up: Length,
    /// Batters from its edge, where they differ from those of the job.
    pub batter: Option<Batter>,
    /// Least and greatest coordinates of `finished`.
    pub(crate) bounds: (Point, Point),
}

/// A flight as shaped.
#[derive(Debug, Clone, PartialEq)]
pub struct Flight {
    /// Its id.
    pub id: String,
    /// The pad it leads to.
    pub toward: String,
    /// Middle of the top riser, at the pad's edge or the face of the wall there.
    pub top: Point,
    /// Level of the pad at `top`.
    pub top_level: Level,
    /// Middle of the bottom riser.
    pub foot: Point,
    /// Level of the ground at `foot`.
    pub foot_level: Level,
    /// Unit vector from top to foot.
    pub outward: Vector,
    /// Unit vector from the last riser on: that of `outward` unless the flight turns.
    pub foot_outward: Vector,
    /// Clear width.
    pub width: Length,
    /// Number of risers, at least 1.
    pub risers: usize,
    /// Height of each riser; all are equal.
    pub riser: Length,
    /// Going of each tread.
    pub going: Length,
    /// From the top riser to the bottom riser in plan, landings included.
    pub run: Length,
    /// From the foot to the pad.
    pub rise: Length,
    /// Twice the riser and the going.
    pub two_r_plus_g: Length,
    /// Pitch of the nosing line inside a flight; that of riser over going.
    pub pitch: Angle,
    /// Treads from the top down, landings among them; one fewer than risers. The pad is the last step and not among them.
    pub treads: Vec<Tread>,
    /// Which of the treads are landings, deeper than the going; none where one flight fits the ground.
    pub landings: Vec<usize>,
    /// Middle of each nosing from the top (the pad's edge) down, with its level; one for each riser.
    pub nosings: Vec<(Point, Level)>,
    /// How riser, 2R+G and pitch were worked out.
    pub trace: Trace,
}

/// A level tread.
#[derive(Debug, Clone, PartialEq)]
pub struct Tread {
    /// Its corners, anticlockwise.
    pub ring: Vec<Point>,
    /// Its level.
    pub level: Level,
}

/// A ramp as shaped.
#[derive(Debug, Clone, PartialEq)]
pub struct Ramp {
    /// Its id.
    pub id: String,
    /// The pad it leads to.
    pub toward: String,
    /// Its centre line from the foot to the edge of the pad's apron.
    pub path: Vec<Point>,
    /// For each point of `path` whether it turns sharply there or ends; the others lie on its curves.
    pub corner: Vec<bool>,
    /// Arcs in its path as given, in order.
    pub curves: Vec<Curve>,
    /// How many level landings it has, turns not counted.
    pub landings: usize,
    /// Thickness of what is laid between the formation and the finished level.
    pub build_up: Length,
    /// Width.
    pub width: Length,
    /// Level of the existing ground at its foot.
    pub foot_level: Level,
    /// Level at its end on the pad.
    pub top_level: Level,
    /// Difference of the two, positive uphill.
    pub rise: Length,
    /// Length in plan along the centre line on which it rises; level turns are not counted.
    pub run: Length,
    /// Length in plan along the centre line, level turns included.
    pub length: Length,
    /// Rise over run, always positive.
    pub gradient: Slope,
    /// How it was worked out.
    pub trace: Trace,
}

/// A wall as it meets the finished ground.
#[derive(Debug, Clone, PartialEq)]
pub struct WallProfile {
    /// Its id.
    pub id: String,
    /// Its centre line as built, with what the ends go on or stop short.
    pub line: Vec<Point>,
    /// For each point of `line` whether the wall turns sharply there or ends; the others lie on its curves.
    pub corner: Vec<bool>,
    /// Arcs in its line as given, in order.
    pub curves: Vec<Curve>,
    /// Where the line as given begins, along the line as built; negative where the wall ends before.
    pub given_from: Length,
    /// Length along `line`.
    pub length: Length,
    /// Distance between its faces.
    pub thickness: Length,
    /// From the start to the end; at corners, where the ground changes, and no more than 0.25 m apart.
    pub stations: Vec<Station>,
    /// How it ends at the start and at the end.
    pub ends: [EndFound; 2],
    /// Where its top is wanted.
    pub top: TopLine,
    /// Chainages from and to, where a ramp passes through.
    pub openings: Vec<(Length, Length)>,
}

/// A place where two walls meet.
#[derive(Debug, Clone, PartialEq)]
pub struct Meeting {
    /// The wall that ends there.
    pub wall: String,
    /// The wall that it meets.
    pub meets: String,
    /// True where the other ends there too and both make a corner; false where it goes on.
    pub corner: bool,
    /// Where.
    pub at: Point,
}

/// How an end of a wall was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum EndFound {
    /// Its top meets the ground there.
    Faded {
        /// Along the wished line; negative before its start, beyond its length after its end.
        chainage: Length,
        /// In plan.
        at: Point,
    },
    /// The given point was kept.
    Given,
    /// At the face of a post or pier.
    AtPost,
    /// The ground was not met within reach or within the survey; the wall ends at the given point.
    NeverFades,
}

/// Where a wall's top is wanted.
#[derive(Debug, Clone, PartialEq)]
pub enum TopLine {
    /// It follows the ground behind.
    FollowsGround {
        /// Upstand above it.
        above: Length,
    },
    /// One level.
    Level(Level),
    /// It lies in a falling plane.
    Plane(Plane),
    /// Straight between these levels, by chainage along the line as built; two at one chainage are a step.
    Along(Vec<(Length, Level)>),
}

/// A place along a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Along the line as built.
    pub chainage: Length,
    /// On the centre line.
    pub at: Point,
    /// Finished ground just off the back face.
    pub behind: Level,
    /// Finished ground just off the front face.
    pub front: Level,
    /// `behind` − `front`; may be nothing or negative at the ends.
    pub retained: Length,
    /// Ground behind, rising away from the wall positive; measured over the retained height, at least 0.5 m.
    pub slope_behind: Slope,
    /// Ground in front, falling away from the wall positive; measured likewise.
    pub slope_front: Slope,
    /// Where the top is wanted.
    pub wanted_top: Level,
    /// Unit vector across the wall towards its front.
    pub facing: Vector,
    /// How far its face goes back for each unit that it rises.
    pub lean: Slope,
}

impl Station {
    /// Wanted top above the ground in front.
    pub fn exposed(&self) -> Length {
        self.wanted_top - self.front
    }
    /// Middle of the wall at its wanted top: behind `at` where its face leans.
    pub fn top_at(&self) -> Point {
        self.at - self.facing * (self.lean.to_ratio() * self.exposed().to_m().max(0.0))
    }
}

impl WallProfile {
    /// The station with the largest retained height; the first of equals.
    pub fn highest(&self) -> Option<&Station> {
        self.stations.iter().reduce(|best, s| if s.retained > best.retained { s } else { best })
    }
    /// The largest retained height; nothing without stations.
    pub fn retained_most(&self) -> Length {
        self.highest().map_or(Length::ZERO, |s| s.retained)
    }
    /// The largest height of the wanted top above the ground in front.
    pub fn exposed_most(&self) -> Length {
        self.stations.iter().map(Station::exposed).reduce(Length::max).unwrap_or(Length::ZERO)
    }
    /// Chainages of the corners of the line as built, its ends included; points on curves are none.
    pub fn corners(&self) -> Vec<Length> {
        let mut sum = Length::ZERO;
        let mut out = vec![sum];
        for (i, pair) in self.line.windows(2).enumerate() {
            sum += groundhold_quantity::distance(pair[0], pair[1]);
            if self.corner.get(i + 1).copied().unwrap_or(true) {
                out.push(sum);
            }
        }
        out
    }
    /// Levels behind and in front at a chainage, straight between stations; the nearest end outside the wall.
    pub fn levels_at(&self, chainage: Length) -> Option<(Level, Level)> {
        let after = self.stations.iter().position(|s| chainage <= s.chainage);
        let Some(i) = after else { return self.stations.last().map(|s| (s.behind, s.front)) };
        let b = &self.stations[i];
        let Some(a) = i.checked_sub(1).map(|k| &self.stations[k]) else { return Some((b.behind, b.front)) };
        let step = b.chainage - a.chainage;
        let t = if step > Length::ZERO { (chainage - a.chainage) / step } else { 1.0 };
        Some((a.behind + (b.behind - a.behind) * t, a.front + (b.front - a.front) * t))
    }
}

impl Shaped {
    /// The finished piece of ground at a place; nothing where the existing ground stays.
    pub fn ground_at(&self, p: Point) -> Option<&Ground> {
        self.index.find(p, |i| self.grounds[i].facet.contains(p)).map(|i| &self.grounds[i])
    }
    /// Finished level at a place: of the piece there, else of the existing ground; nothing outside the survey.
    pub fn level_at(&self, existing: &Tin, p: Point) -> Option<Level> {
        self.ground_at(p).map(|g| g.facet.plane.level_at(p)).or_else(|| existing.level_at(p))
    }
    /// The finished pieces of an element, in the order of `grounds`.
    pub fn grounds_of<'a>(&'a self, element: &'a str) -> impl Iterator<Item = &'a Ground> {
        self.grounds.iter().filter(move |g| g.of == element)
    }
    /// All finished pieces, for volumes and contours.
    pub fn facets(&self) -> Vec<Facet> {
        self.grounds.iter().map(|g| g.facet.clone()).collect()
    }
}
