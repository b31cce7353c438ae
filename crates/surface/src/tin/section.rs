//! What is the ground along a line?

use groundhold_quantity::{Length, Level, Point};

use super::Tin;
use crate::{MEETS, SAME_PLACE};

/// One point of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionPoint {
    /// Distance along the line from its start.
    pub chainage: Length,
    /// Where it is in plan.
    pub at: Point,
    /// Level of the ground; `None` outside the surface.
    pub level: Option<Level>,
}

/// A part of a segment that lies in one triangle, as distances from the segment's start.
struct Span {
    from: f64,
    to: f64,
    triangle: usize,
}

pub(super) fn section(tin: &Tin, line: &[Point]) -> Vec<SectionPoint> {
    let Some(&start) = line.first() else { return vec![] };
    let mut points = vec![SectionPoint { chainage: Length::ZERO, at: start, level: tin.level_at(start) }];
    // For each stretch between neighbours: whether there is ground under it.
    let mut ground = Vec::new();
    let mut before = 0.0;
    for pair in line.windows(2) {
        let length = (pair[1] - pair[0]).length();
        // Written so that an undefined length is passed over too.
        if length > SAME_PLACE {
            along_segment(tin, pair[0], pair[1], before, &mut points, &mut ground);
            before += length;
        }
    }
    with_gaps(points, &ground)
}

/// Adds the points of one segment after its start.
fn along_segment(tin: &Tin, a: Point, b: Point, before: f64, points: &mut Vec<SectionPoint>, ground: &mut Vec<bool>) {
    let length = (b - a).length();
    let spans = spans(tin, a, b);
    let mut stops: Vec<(f64, usize)> = spans.iter().flat_map(|s| [(s.from, s.triangle), (s.to, s.triangle)]).collect();
    stops.retain(|s| SAME_PLACE < s.0 && s.0 < length - SAME_PLACE);
    stops.sort_by(|p, q| p.0.total_cmp(&q.0).then(p.1.cmp(&q.1)));
    stops.dedup_by(|next, kept| next.0 - kept.0 <= SAME_PLACE);
    let mut last = 0.0;
    let mut reached = spans.iter().peekable();
    let mut covered_to = 0.0;
    let mut covered = |from: f64, to: f64| {
        let middle = (from + to) / 2.0;
        while let Some(s) = reached.next_if(|s| s.from <= middle) {
            covered_to = f64::max(covered_to, s.to);
        }
        covered_to >= middle
    };
    for (stop, triangle) in stops {
        let at = a.towards(b, stop / length);
        let level = Some(tin.level_in(triangle, at));
        points.push(SectionPoint { chainage: Length::m(before + stop), at, level });
        ground.push(covered(last, stop));
        last = stop;
    }
    points.push(SectionPoint { chainage: Length::m(before + length), at: b, level: tin.level_at(b) });
    ground.push(covered(last, length));
}

/// The parts of a segment in each triangle, by their start.
fn spans(tin: &Tin, a: Point, b: Point) -> Vec<Span> {
    let mut spans: Vec<Span> = tin
        .triangles_under(&[a, b])
        .into_iter()
        .filter_map(|t| within(a, b, &tin.corners_of(t)).map(|(from, to)| Span { from, to, triangle: t }))
        .collect();
    spans.sort_by(|s, t| s.from.total_cmp(&t.from).then(s.triangle.cmp(&t.triangle)));
    spans
}

/// The part of a segment inside a triangle, as distances from its start; a segment along a
/// side counts as inside.
fn within(a: Point, b: Point, triangle: &[Point; 3]) -> Option<(f64, f64)> {
    let length = (b - a).length();
    let (mut from, mut to) = (0.0, length);
    for (u, v) in crate::ring::sides(triangle) {
        let (at_a, at_b) = (crate::ring::left_of(a, u, v), crate::ring::left_of(b, u, v));
        if at_a >= -SAME_PLACE && at_b >= -SAME_PLACE {
            continue;
        }
        if at_a < 0.0 && at_b < 0.0 {
            return None;
        }
        let crossing = length * (at_a / (at_a - at_b));
        if at_a < at_b { from = f64::max(from, crossing) } else { to = f64::min(to, crossing) }
    }
    (to - from > MEETS).then_some((from, to))
}

/// Puts a point without a level into each stretch without ground between two points that have one.
fn with_gaps(points: Vec<SectionPoint>, ground: &[bool]) -> Vec<SectionPoint> {
    let mut all = Vec::with_capacity(points.len());
    for (i, point) in points.iter().enumerate() {
        all.push(*point);
        let Some(next) = points.get(i + 1) else { break };
        if !ground[i] && point.level.is_some() && next.level.is_some() {
            let chainage = (point.chainage + next.chainage) / 2.0;
            all.push(SectionPoint { chainage, at: point.at.towards(next.at, 0.5), level: None });
        }
    }
    all
}
