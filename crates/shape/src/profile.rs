//! What stands behind and in front of a wall at every chainage, and where does it fade out?

use groundhold_quantity::{Length, Level, Point, Slope, Vector, distance, segments_cross};
use groundhold_surface::{Plane, Tin};

use crate::index::{FacetIndex, bounds};
use crate::outline::mitre;
use crate::{Ground, Side, Station, TopLine};

/// Levels are taken this far off the faces, metres.
const OFF_FACE: f64 = 0.001;
/// Longest step between stations, metres.
const STEP: f64 = 0.25;
/// A wall that holds no more than this is as good as ended, metres.
pub(crate) const HOLDS: f64 = 0.003;
/// A wall that holds no more than this has ended, metres.
const ENDED: f64 = 1e-6;
/// Shortest length over which a slope beside a wall is measured, metres.
const SLOPE_OVER: f64 = 0.5;

/// The ground as it will be.
#[derive(Clone, Copy)]
pub(crate) struct Scene<'a> {
    pub existing: &'a Tin,
    pub grounds: &'a [Ground],
    pub index: &'a FacetIndex,
}

impl Scene<'_> {
    pub fn ground_at(&self, p: Point) -> Option<&Ground> {
        self.index.find(p, |i| self.grounds[i].facet.contains(p)).map(|i| &self.grounds[i])
    }
    pub fn level(&self, p: Point) -> Option<Level> {
        self.ground_at(p).map(|g| g.facet.plane.level_at(p)).or_else(|| self.existing.level_at(p))
    }
}

/// A wall's line with its faces.
#[derive(Debug, Clone)]
pub(crate) struct Line {
    pub points: Vec<Point>,
    /// For each point whether the line turns sharply there or ends.
    pub corner: Vec<bool>,
    /// Chainage of each point, metres.
    pub at: Vec<f64>,
    /// Half its largest thickness, metres.
    pub half: f64,
    pub retains: Side,
    pub faces: Faces,
}

/// How thick a wall is and how its face leans, along its line.
#[derive(Debug, Clone, Default)]
pub(crate) struct Faces {
    /// Half its thickness and its lean where nothing else is said.
    pub plain: (f64, f64),
    /// From and to along the line, half the thickness, lean.
    pub parts: Vec<(f64, f64, f64, f64)>,
}

impl Faces {
    /// Half the thickness and the lean at a chainage.
    pub fn at(&self, chainage: f64) -> (f64, f64) {
        let part = self.parts.iter().find(|p| p.0 <= chainage && chainage <= p.1);
        part.map_or(self.plain, |p| (p.2, p.3))
    }
    /// The same seen from another place on the line.
    pub fn moved(&self, by: f64) -> Faces {
        Faces { plain: self.plain, parts: self.parts.iter().map(|p| (p.0 + by, p.1 + by, p.2, p.3)).collect() }
    }
    pub fn widest(&self) -> f64 {
        self.parts.iter().map(|p| p.2).fold(self.plain.0, f64::max)
    }
}

/// What is found at a chainage.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spot {
    pub at: Point,
    pub facing: Vector,
    /// Just off the back face and just off the front face.
    pub faces: [Point; 2],
    /// Square to the stretches that meet there, to the front.
    pub ways: [Vector; 2],
    pub behind: Option<Level>,
    pub front: Option<Level>,
    /// What the wall holds beyond the natural fall of the ground across its thickness, metres.
    pub holds: Option<f64>,
}

impl Line {
    /// Through at least two different points.
    pub fn new(points: Vec<Point>, corner: Vec<bool>, faces: Faces, retains: Side) -> Line {
        let mut at = vec![0.0];
        let mut sum = 0.0;
        for p in points.windows(2) {
            sum += distance(p[0], p[1]).to_m();
            at.push(sum);
        }
        Line { points, corner, at, half: faces.widest(), retains, faces }
    }

    pub fn length(&self) -> f64 {
        self.at.last().copied().unwrap_or(0.0)
    }

    fn facing(&self, i: usize) -> Vector {
        let left = (self.points[i + 1] - self.points[i]).unit().left();
        match self.retains {
            Side::Left => left * -1.0,
            Side::Right => left,
        }
    }

    /// The place at a chainage, the displacement to its front face per metre off the line (mitred at corners), and the
    /// directions square to the stretches that meet there.
    fn place(&self, chainage: f64) -> (Point, Vector, [Vector; 2]) {
        let at = &self.at;
        let last = self.points.len() - 2;
        let i = at.iter().skip(1).position(|c| chainage < *c).unwrap_or(last);
        let long = at[i + 1] - at[i];
        let p = self.points[i].towards(self.points[i + 1], (chainage - at[i]) / long.max(1e-12));
        let (a, b) = if i > 0 && chainage - at[i] < 1e-6 {
            (self.facing(i - 1), self.facing(i))
        } else if i < last && at[i + 1] - chainage < 1e-6 {
            (self.facing(i), self.facing(i + 1))
        } else {
            let square = self.facing(i);
            return (p, square, [square; 2]);
        };
        (p, mitre(a, b), [a, b])
    }

    /// What is found at a chainage.
    pub fn spot(&self, scene: &Scene<'_>, chainage: f64) -> Spot {
        let (at, off, ways) = self.place(chainage);
        let (half, lean) = self.faces.at(chainage);
        let reach = half + OFF_FACE;
        let (mut b, f) = (at - off * reach, at + off * reach);
        let (mut behind, front) = (scene.level(b), scene.level(f));
        if lean > 0.0
            && let (Some(up), Some(down)) = (behind, front)
        {
            // A leaning wall meets the ground behind it farther back, by what it has leant at that height.
            b = at - off * (reach + lean * (up - down).to_m().max(0.0));
            behind = scene.level(b).or(behind);
        }
        let natural = match (scene.existing.level_at(b), scene.existing.level_at(f)) {
            (Some(b), Some(f)) => (b - f).to_m().max(0.0),
            _ => 0.0,
        };
        let holds = behind.zip(front).map(|(b, f)| (b - f).to_m() - natural);
        Spot { at, facing: off.unit(), faces: [b, f], ways, behind, front, holds }
    }

    /// Chainages at corners, where the ground changes behind or in front, and in steps of no more than 0.25 m.
    pub fn chainages_of_change(&self, scene: &Scene<'_>) -> Vec<f64> {
        let starts = &self.at;
        let mut found = starts.clone();
        for part in &self.faces.parts {
            found.extend([part.0 - OFF_FACE, part.0 + OFF_FACE, part.1 - OFF_FACE, part.1 + OFF_FACE]);
        }
        for (i, start) in starts.iter().enumerate().take(self.points.len() - 1) {
            let reach = self.faces.at((start + starts[i + 1]) / 2.0).0 + OFF_FACE;
            for side in [-reach, reach] {
                let off = self.facing(i) * side;
                let (p, q) = (self.points[i] + off, self.points[i + 1] + off);
                found.extend(changes(scene, p, q).into_iter().map(|s| start + s));
            }
        }
        let long = self.length();
        found.retain(|c| (0.0..=long).contains(c));
        found.sort_by(f64::total_cmp);
        let is_corner = |c: f64| starts.iter().any(|k| (k - c).abs() < 1e-9);
        let mut kept: Vec<f64> = vec![];
        for c in found {
            match kept.last().copied() {
                Some(k) if c - k < 0.9e-3 => {
                    if is_corner(c) && !is_corner(k) {
                        kept.pop();
                        kept.push(c);
                    }
                }
                _ => kept.push(c),
            }
        }
        let mut out: Vec<f64> = vec![];
        for c in kept {
            if let Some(k) = out.last().copied() {
                let parts = ((c - k) / STEP - 1e-9).ceil().max(1.0) as usize;
                out.extend((1..parts).map(|j| k + (c - k) * j as f64 / parts as f64));
            }
            out.push(c);
        }
        out
    }

    /// The part between two chainages.
    pub fn part(&self, from: f64, to: f64) -> Line {
        let mut points = vec![self.place(from).0];
        let mut corner = vec![true];
        for (i, c) in self.at.iter().enumerate() {
            if from + 1e-6 < *c && *c < to - 1e-6 {
                points.push(self.points[i]);
                corner.push(self.corner[i]);
            }
        }
        points.push(self.place(to).0);
        corner.push(true);
        Line::new(points, corner, self.faces.moved(-from), self.retains)
    }
}

/// Distances along a straight line where the slope or the level of the ground changes.
fn changes(scene: &Scene<'_>, p: Point, q: Point) -> Vec<f64> {
    let long = (q - p).length();
    let mut found: Vec<f64> = scene.existing.section(&[p, q]).iter().map(|s| s.chainage.to_m()).collect();
    let (lo, hi) = bounds(&[p, q]);
    for i in scene.index.touching(lo, hi) {
        let ring = &scene.grounds[i].facet.ring;
        for k in 0..ring.len() {
            let Some((t, _)) = segments_cross(p, q, ring[k], ring[(k + 1) % ring.len()]) else { continue };
            let s = t * long;
            let near = |d: f64| scene.level(p.towards(q, ((s + d) / long).clamp(0.0, 1.0)));
            match (near(-OFF_FACE), near(OFF_FACE)) {
                (Some(a), Some(b)) if (a - b).to_m().abs() > 0.005 => found.extend([s - OFF_FACE, s + OFF_FACE]),
                _ => found.push(s),
            }
        }
    }
    found
}

/// The stretch of a line that a wall takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch {
    pub from: f64,
    pub to: f64,
    /// Whether the ground was met at the start and at the end.
    pub met: [bool; 2],
}

/// From the place of the largest hold within `given` outwards to where nothing is held, or to the given end where it is
/// not to fade. Openings, and what lies within `buried` of them, are stepped over; a wall that would end there ends at
/// the opening. Nothing where no place holds anything.
pub(crate) fn fade(
    scene: &Scene<'_>,
    line: &Line,
    given: (f64, f64),
    fades: [bool; 2],
    openings: &[(f64, f64)],
    buried: f64,
) -> Option<Stretch> {
    let places = line.chainages_of_change(scene);
    let open = |c: f64| openings.iter().any(|(a, b)| a - buried <= c && c <= b + buried);
    let best = places
        .iter()
        .enumerate()
        .filter(|(_, c)| given.0 - ENDED <= **c && **c <= given.1 + ENDED && !open(**c))
        .filter_map(|(i, c)| line.spot(scene, *c).holds.map(|h| (i, h)))
        .reduce(|a, b| if b.1 > a.1 { b } else { a })
        .filter(|(_, h)| *h > HOLDS)?
        .0;
    let walk = |forward: bool, fades: bool, end: f64| {
        if !fades {
            return (end, false);
        }
        let Some(c) = end_of(scene, line, &places, best, forward, &open) else { return (end, false) };
        let stub = openings
            .iter()
            .find(|(a, b)| if forward { *a <= c && c <= b + buried } else { a - buried <= c && c <= *b });
        (stub.map_or(c, |(a, b)| if forward { *a } else { *b }), true)
    };
    let (from, met_start) = walk(false, fades[0], given.0);
    let (to, met_end) = walk(true, fades[1], given.1);
    (to > from).then_some(Stretch { from, to, met: [met_start, met_end] })
}

/// Where, going from place `start`, the wall no longer holds; nothing where the line or the survey ends first.
fn end_of(
    scene: &Scene<'_>,
    line: &Line,
    places: &[f64],
    start: usize,
    forward: bool,
    open: &impl Fn(f64) -> bool,
) -> Option<f64> {
    let order: Vec<usize> = if forward { (start..places.len()).collect() } else { (0..=start).rev().collect() };
    let mut low: Option<(f64, f64)> = None;
    let mut before = places[start];
    for c in order.into_iter().map(|i| places[i]).filter(|c| !open(*c)) {
        let held = line.spot(scene, c).holds?;
        if held > HOLDS {
            low = None;
        } else if held <= ENDED {
            return Some(turn(scene, line, before, c, ENDED));
        } else {
            let (a, b) = *low.get_or_insert((before, c));
            if (c - b).abs() > 0.5 {
                return Some(turn(scene, line, a, b, HOLDS));
            }
        }
        before = c;
    }
    None
}

/// The last place that holds more than `than` between a chainage that does and one that does not, by halving.
fn turn(scene: &Scene<'_>, line: &Line, mut holds: f64, mut not: f64, than: f64) -> f64 {
    let start = holds;
    for _ in 0..60 {
        let middle = (holds + not) / 2.0;
        if line.spot(scene, middle).holds.is_some_and(|h| h > than) {
            holds = middle;
        } else {
            not = middle;
        }
    }
    // Where the hold ends in a jump, as at a pad's corner, the end stands clear of it, so that rounding does not put it
    // beyond.
    let jumps = line.spot(scene, holds).holds.is_some_and(|h| h > HOLDS);
    if jumps { holds + CLEAR * (start - holds).signum() } else { holds }
}

/// An end stands this far from a jump of the ground, metres.
const CLEAR: f64 = 1e-5;

/// The stations of a line; nothing for those outside the survey.
pub(crate) fn stations(scene: &Scene<'_>, line: &Line, top: &TopLine) -> Vec<Option<Station>> {
    let mut all = line.chainages_of_change(scene);
    if let TopLine::Along(levels) = top {
        // Either side of a step of the top, and where its slope changes.
        let long = line.length();
        let near = |c: f64| [c - OFF_FACE, c + OFF_FACE];
        let more = levels.iter().flat_map(|(c, _)| near(c.to_m())).filter(|c| 0.0 < *c && *c < long);
        all.extend(more);
        all.sort_by(f64::total_cmp);
        all.dedup_by(|b, a| *b - *a < 0.9e-3);
    }
    all.into_iter().map(|c| station(scene, line, top, c)).collect()
}

impl TopLine {
    /// Where it runs at a chainage, above ground that lies behind at this level.
    fn level(&self, chainage: f64, at: Point, behind: Level) -> Level {
        match self {
            TopLine::FollowsGround { above } => behind + *above,
            TopLine::Level(l) => *l,
            TopLine::Plane(p) => p.level_at(at),
            TopLine::Along(levels) => {
                let c = Length::m(chainage);
                let Some(k) = levels.iter().position(|(a, _)| c < *a) else {
                    return levels.last().map_or(behind, |l| l.1);
                };
                let Some(before) = k.checked_sub(1) else { return levels[0].1 };
                let ((a, z), (b, w)) = (levels[before], levels[k]);
                z + (w - z) * ((c - a) / (b - a))
            }
        }
    }
}

/// A top in level stretches over the ground behind, each whole steps of `by` above the lowest. A stretch that stands out
/// for less than `least` is widened to that; a gap narrower than that is filled.
pub(crate) fn stepped(stations: &[Station], above: Length, by: Length, least: Length) -> TopLine {
    let wanted: Vec<(f64, Level)> = stations.iter().map(|s| (s.chainage.to_m(), s.behind + above)).collect();
    let Some(base) = wanted.iter().map(|w| w.1).reduce(Level::min) else { return TopLine::Along(vec![]) };
    let steps: Vec<i64> = wanted.iter().map(|w| ((w.1 - base) / by - 1e-6).ceil().max(0.0) as i64).collect();
    let half = least.to_m() / 2.0;
    let widened = |i: usize| {
        let near = |k: &usize| (wanted[*k].0 - wanted[i].0).abs() <= half;
        (0..wanted.len()).filter(near).map(|k| steps[k]).max().unwrap_or(0)
    };
    let high: Vec<i64> = (0..wanted.len()).map(widened).collect();
    let level = |k: i64| base + by * k as f64;
    let mut along: Vec<(Length, Level)> = vec![];
    for i in 0..high.len() {
        let c = Length::m(wanted[i].0);
        let Some(before) = i.checked_sub(1) else {
            along.push((c, level(high[i])));
            continue;
        };
        if high[i] != high[before] {
            // The step stands on the side of the lower stretch, so that the higher one covers its ground.
            let at = if high[i] > high[before] { Length::m(wanted[before].0) } else { c };
            along.extend([(at, level(high[before])), (at, level(high[i]))]);
        }
    }
    if let (Some(w), Some(h)) = (wanted.last(), high.last()) {
        along.push((Length::m(w.0), level(*h)));
    }
    TopLine::Along(along)
}

fn station(scene: &Scene<'_>, line: &Line, top: &TopLine, chainage: f64) -> Option<Station> {
    let s = line.spot(scene, chainage);
    let (behind, front) = (s.behind?, s.front?);
    let retained = behind - front;
    let over = retained.to_m().max(SLOPE_OVER);
    let slope = |face: Point, sign: f64, from: Level| {
        // At a corner the steeper of the two sides; where the survey ends sooner, over what there is.
        let one = |way: Vector| {
            let far = |d: f64| scene.level(face + way * (sign * d)).map(|z| (z - from).to_m() * -sign / d);
            [1.0, 0.5, 0.25].iter().find_map(|k| far(k * over))
        };
        s.ways.iter().filter_map(|w| one(*w)).reduce(f64::max).map_or(Slope::LEVEL, Slope::ratio)
    };
    let wanted_top = top.level(chainage, s.at, behind);
    Some(Station {
        chainage: Length::m(chainage),
        at: s.at,
        behind,
        front,
        retained,
        slope_behind: slope(s.faces[0], -1.0, behind),
        slope_front: slope(s.faces[1], 1.0, front),
        wanted_top,
        facing: s.facing,
        lean: Slope::ratio(line.faces.at(chainage).1),
    })
}

/// A plane as a top: one level where it is level.
pub(crate) fn top_in(plane: Plane, above: Length) -> TopLine {
    let raised = Plane { c: plane.c + above.to_m(), ..plane };
    if plane.a == 0.0 && plane.b == 0.0 { TopLine::Level(Level::m(raised.c)) } else { TopLine::Plane(raised) }
}
