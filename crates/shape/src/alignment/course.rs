//! Which points does an alignment pass, which of them are corners, and which line runs beside it?

use groundhold_quantity::{Length, Point, Vector, distance, math};

use super::arc::Arc;
use super::ease::{angle_of_ease, round, tangent_length};
use super::smooth::smooth;
use super::{Alignment, AlignmentError, CHORD_ERROR, SAME, Way};
use crate::outline::mitre;

/// Points on a line. Between them the line is straight, or nowhere farther from the chord than [`CHORD_ERROR`].
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Course {
    /// The points in order.
    pub points: Vec<Point>,
    /// For each point its heading before and after; they differ at a corner.
    headings: Vec<[Vector; 2]>,
    /// The arcs in it, in order.
    pub curves: Vec<Curve>,
    closed: bool,
}

/// An arc of a circle in a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Curve {
    /// Where it begins.
    pub start: Point,
    /// Where it ends.
    pub end: Point,
    /// The middle of its circle.
    pub centre: Point,
    /// Its radius, metres.
    pub radius: f64,
    /// The angle that it turns, radians, to the left positive.
    pub turn: f64,
}

/// A point at which the heading changes by more than this is a corner, radians (ours: half a degree).
const CORNER: f64 = 0.0087;

/// What leads from one corner to the next.
enum Leg {
    Straight,
    Arc(Arc),
    Smooth,
}

/// A line under construction.
struct Laying {
    corners: Vec<Point>,
    legs: Vec<Leg>,
    course: Course,
}

pub(super) fn course(a: &Alignment, closed: bool) -> Result<Course, AlignmentError> {
    if a.points.iter().any(|p| !(p.x.is_finite() && p.y.is_finite())) {
        return Err(AlignmentError::NotFinite);
    }
    if let Some(b) = a.bends.iter().find(|b| b.at >= a.points.len()) {
        return Err(AlignmentError::NoSuchCorner { at: b.at + 1, has: a.points.len() });
    }
    // Corners that follow each other in the same place are one.
    let mut which: Vec<usize> = vec![];
    for (i, p) in a.points.iter().enumerate() {
        if which.last().is_none_or(|k| (a.points[*k] - *p).length() > SAME) {
            which.push(i);
        }
    }
    if closed && which.len() > 1 && (a.points[0] - a.points[which[which.len() - 1]]).length() <= SAME {
        which.pop();
    }
    let least = if closed { 3 } else { 2 };
    let curved = a.bends.iter().any(|b| b.way != Way::Straight);
    if which.len() < if curved { 2 } else { least } {
        return Err(AlignmentError::TooFew { least });
    }
    let corners: Vec<Point> = which.iter().map(|i| a.points[*i]).collect();
    let n = corners.len();
    let count = if closed { n } else { n - 1 };
    let mut legs = vec![];
    for k in 0..count {
        let to = which[(k + 1) % n];
        legs.push(leg(a, corners[k], corners[(k + 1) % n], to)?);
    }
    let course = Course { closed, ..Course::default() };
    let mut laying = Laying { corners, legs, course };
    laying.lay(a, &which)?;
    Ok(laying.course)
}

fn leg(a: &Alignment, from: Point, to: Point, at: usize) -> Result<Leg, AlignmentError> {
    match a.bend(at).way {
        Way::Straight => Ok(Leg::Straight),
        Way::Smooth => Ok(Leg::Smooth),
        Way::Radius(radius, side) => {
            let radius = radius.to_m();
            let left = side == crate::Side::Left;
            let chord = (to - from).length();
            let small = AlignmentError::RadiusTooSmall { at: at + 1, radius, chord };
            Arc::of_radius(from, to, radius, left).map(Leg::Arc).ok_or(small)
        }
        Way::Through(by) => {
            let none = AlignmentError::NoArc { at: at + 1, through: by };
            if !(by.x.is_finite() && by.y.is_finite()) {
                return Err(AlignmentError::NotFinite);
            }
            match Arc::through(from, by, to) {
                Some(arc) => Ok(Leg::Arc(arc)),
                // A place between the ends on their line asks for no more than the straight.
                None => {
                    let t = (by - from).dot(to - from) / (to - from).dot(to - from).max(1e-12);
                    let between = 1e-9 < t && t < 1.0 - 1e-9;
                    if between { Ok(Leg::Straight) } else { Err(none) }
                }
            }
        }
    }
}

impl Laying {
    fn lay(&mut self, a: &Alignment, which: &[usize]) -> Result<(), AlignmentError> {
        let (n, closed) = (self.corners.len(), self.course.closed);
        let rounds = self.rounds(a, which)?;
        if !closed || rounds[0].is_none() {
            self.put(self.corners[0], self.heading_after(0));
        }
        let mut k = 0;
        while k < self.legs.len() {
            if let (true, Some(r)) = (k == 0, &rounds[0]) {
                // A closed line that begins with a rounded corner begins where the round ends.
                let (p, v) = r.places[r.places.len() - 1];
                self.put(p, v);
            }
            let mut next = k + 1;
            match &self.legs[k] {
                Leg::Straight => {
                    let v = (self.corners[(k + 1) % n] - self.corners[k]).unit();
                    match &rounds[(k + 1) % n] {
                        Some(r) => {
                            for (p, h) in &r.places {
                                self.put(*p, *h);
                            }
                            self.course.curves.push(r.arc.curve());
                        }
                        None => self.put(self.corners[(k + 1) % n], v),
                    }
                }
                Leg::Arc(arc) => {
                    let arc = *arc;
                    self.turn_out(arc.heading(0.0));
                    let parts = arc.parts(CHORD_ERROR.to_m());
                    for j in 1..=parts {
                        let angle = arc.turn * j as f64 / parts as f64;
                        let p = if j == parts { arc.to } else { arc.at(angle) };
                        self.put(p, arc.heading(angle));
                    }
                    self.course.curves.push(arc.curve());
                }
                Leg::Smooth => {
                    while next < self.legs.len() && matches!(self.legs[next], Leg::Smooth) {
                        next += 1;
                    }
                    let through: Vec<Point> = (k..=next).map(|i| self.corners[i % n]).collect();
                    let whole = closed && k == 0 && next == self.legs.len();
                    let beyond = |i: usize, at_end: bool| self.straight_heading(i, at_end);
                    let before =
                        if k > 0 || closed { beyond((k + self.legs.len() - 1) % self.legs.len(), true) } else { None };
                    let after =
                        if next < self.legs.len() || closed { beyond(next % self.legs.len(), false) } else { None };
                    let places = smooth(&through, before, after, whole, CHORD_ERROR.to_m());
                    self.turn_out(places[0].1);
                    places[1..].iter().for_each(|(p, v)| self.put(*p, *v));
                }
            }
            k = next;
        }
        if closed {
            self.close();
        }
        Ok(())
    }

    /// Heading of a leg that is no smooth curve.
    fn straight_heading(&self, i: usize, at_end: bool) -> Option<Vector> {
        let n = self.corners.len();
        match &self.legs[i] {
            Leg::Straight => Some((self.corners[(i + 1) % n] - self.corners[i]).unit()),
            Leg::Arc(arc) => Some(arc.heading(if at_end { arc.turn } else { 0.0 })),
            Leg::Smooth => None,
        }
    }
    fn heading_after(&self, i: usize) -> Vector {
        let n = self.corners.len();
        self.straight_heading(i, false).unwrap_or((self.corners[(i + 1) % n] - self.corners[i]).unit())
    }

    /// Adds a point that is reached with a heading.
    fn put(&mut self, p: Point, reached: Vector) {
        let c = &mut self.course;
        if let Some(last) = c.points.last() {
            if (*last - p).length() < 1e-6 {
                if let Some(h) = c.headings.last_mut() {
                    h[1] = reached;
                }
                return;
            }
            // Straight on from the last point unless something else was said.
            let straight = (p - *last).unit();
            if let Some(h) = c.headings.last_mut()
                && turn_between(h[1], straight).abs() > CORNER
                && turn_between(straight, reached).abs() <= 1e-9
            {
                h[1] = straight;
            }
        }
        c.points.push(p);
        c.headings.push([reached; 2]);
    }
    /// Says with which heading the last point is left.
    fn turn_out(&mut self, v: Vector) {
        if let Some(h) = self.course.headings.last_mut() {
            h[1] = v;
        }
    }
    /// Joins the end of a closed line to its start.
    fn close(&mut self) {
        let c = &mut self.course;
        let Some(last) = c.points.len().checked_sub(1).filter(|n| *n > 0) else { return };
        if (c.points[last] - c.points[0]).length() < 1e-6 {
            c.points.pop();
            if let Some(h) = c.headings.pop() {
                c.headings[0][0] = h[0];
            }
        } else {
            let way = (c.points[0] - c.points[last]).unit();
            c.headings[last][1] = way;
            c.headings[0][0] = way;
        }
    }

    /// Every corner that is to be rounded, once it is known that the rounds fit.
    fn rounds(&self, a: &Alignment, which: &[usize]) -> Result<Vec<Option<super::ease::Round>>, AlignmentError> {
        let (n, closed) = (self.corners.len(), self.course.closed);
        let legs = self.legs.len();
        let corner = |k: usize| (closed || (0 < k && k + 1 < n)).then(|| ((k + legs - 1) % legs, k % legs));
        let mut takes = vec![0.0; n];
        let mut wanted: Vec<Option<(Vector, f64, f64, f64)>> = vec![None; n];
        for k in 0..n {
            let b = a.bend(which[k]);
            let (radius, ease) = (b.round.to_m(), b.ease.to_m().max(0.0));
            let Some((before, after)) = corner(k).filter(|_| radius > 0.0 && radius.is_finite()) else { continue };
            if !(matches!(self.legs[before], Leg::Straight) && matches!(self.legs[after], Leg::Straight)) {
                return Err(AlignmentError::RoundBesideCurve { at: which[k] + 1 });
            }
            let (u, v) = (self.heading_after(before), self.heading_after(after));
            let turn = turn_between(u, v);
            if turn.abs() < 1e-4 {
                continue;
            }
            if ease > 0.0 && angle_of_ease(ease, radius) > turn.abs() {
                return Err(AlignmentError::EaseTooLong { at: which[k] + 1, ease, most: radius * turn.abs() });
            }
            takes[k] = tangent_length(turn, radius, ease);
            wanted[k] = Some((u, turn, radius, ease));
        }
        for k in 0..n {
            let Some((_, turn, radius, ease)) = wanted[k] else { continue };
            let Some((before, after)) = corner(k) else { continue };
            for (leg, other) in [(before, (k + n - 1) % n), (after, (k + 1) % n)] {
                let long = (self.corners[(leg + 1) % n] - self.corners[leg]).length();
                let has = long - takes[other];
                if takes[k] > has + 1e-9 {
                    // Both ends of the leg give way in the share in which they want it.
                    let room = long * takes[k] / (takes[k] + takes[other]);
                    let fits = largest_radius(turn, radius, ease, room);
                    let (at, takes) = (which[k] + 1, takes[k]);
                    return Err(AlignmentError::RoundTooLarge { at, radius, ease, takes, has, fits });
                }
            }
        }
        let error = CHORD_ERROR.to_m();
        Ok(wanted
            .into_iter()
            .enumerate()
            .map(|(k, w)| w.map(|(u, turn, radius, ease)| round(self.corners[k], u, turn, radius, ease, error)))
            .collect())
    }
}

/// The largest radius, to the millimetre below, whose round takes no more than this of the straights beside it.
fn largest_radius(turn: f64, wished: f64, ease: f64, room: f64) -> f64 {
    let (mut fits, mut not) = (0.0, wished);
    for _ in 0..40 {
        let middle = (fits + not) / 2.0;
        let turns_enough = angle_of_ease(ease, middle) <= turn.abs();
        if turns_enough && tangent_length(turn, middle, ease) > room {
            not = middle;
        } else {
            fits = middle;
        }
    }
    (fits * 1000.0 + 1e-6).floor() / 1000.0
}

/// Angle from one heading to another, left positive.
fn turn_between(u: Vector, v: Vector) -> f64 {
    math::atan2(u.cross(v), u.dot(v))
}

impl Course {
    /// Length along the chords; that of a closed one includes the way back to its start.
    pub fn length(&self) -> Length {
        let back =
            if self.closed { self.points.last().zip(self.points.first()).map(|(a, b)| distance(*a, *b)) } else { None };
        self.points.windows(2).map(|p| distance(p[0], p[1])).sum::<Length>() + back.unwrap_or(Length::ZERO)
    }

    /// The line up to its point `i` and straight on from there to `end`.
    pub(crate) fn up_to(&self, i: usize, end: Point) -> Course {
        let mut headings = self.headings[..=i].to_vec();
        let last = (end - self.points[i]).unit();
        headings.push([last; 2]);
        let mut points = self.points[..=i].to_vec();
        points.push(end);
        Course { points, headings, curves: vec![], closed: false }
    }

    /// Which points are corners, where the line turns sharply; the ends of an open line are.
    pub fn corners(&self) -> Vec<bool> {
        let last = self.points.len().saturating_sub(1);
        let end = |i: usize| !self.closed && (i == 0 || i == last);
        self.headings.iter().enumerate().map(|(i, h)| end(i) || turn_between(h[0], h[1]).abs() > CORNER).collect()
    }

    /// The line that runs beside it, to the left positive: square off every point, mitred at corners.
    ///
    /// # Errors
    /// [`AlignmentError::OffsetTooWide`] where it would turn back on itself, with the widest that does not.
    pub fn beside(&self, by: Length) -> Result<Course, AlignmentError> {
        let d = by.to_m();
        if !d.is_finite() {
            return Err(AlignmentError::NotFinite);
        }
        let off: Vec<Vector> = self.headings.iter().map(|[a, b]| mitre(a.left(), b.left())).collect();
        let points: Vec<Point> = self.points.iter().zip(&off).map(|(p, v)| *p + *v * d).collect();
        let n = self.points.len();
        let pieces = if self.closed { n } else { n.saturating_sub(1) };
        // A piece keeps its direction while its length, which changes in proportion to the offset, is positive.
        let mut most: Option<(f64, Point)> = None;
        for i in 0..pieces {
            let j = (i + 1) % n;
            let along = self.points[j] - self.points[i];
            let shorter = (off[i] - off[j]).dot(along.unit()) * d.signum();
            if shorter > 0.0 {
                let limit = along.length() / shorter;
                if most.is_none_or(|(m, _)| limit < m) {
                    most = Some((limit, self.points[i]));
                }
            }
        }
        if let Some((limit, at)) = most.filter(|(limit, _)| *limit <= d.abs()) {
            return Err(AlignmentError::OffsetTooWide { by: d, at, most: limit });
        }
        let curve = |c: &Curve| {
            let radius = c.radius - d * c.turn.signum();
            let move_out = |p: Point| c.centre + (p - c.centre) * (radius / c.radius);
            Curve { start: move_out(c.start), end: move_out(c.end), radius, ..*c }
        };
        Ok(Course {
            points,
            headings: self.headings.clone(),
            curves: self.curves.iter().map(curve).collect(),
            closed: self.closed,
        })
    }
}
