//! What is the way around everything near an outline?
//!
//! What lies within a distance of an outline, with mitred corners, is the inside together with a strip along each side
//! and a kite at each outer corner. The way around all of them is read from their borders, cut where they meet: from the
//! lowest corner always by the rightmost way.

use groundhold_quantity::{Point, Vector, math, nearest_on_segment, segments_cross};

use super::offset::MITRE_MOST;
use crate::{SAME_PLACE, ring};

type Segment = (Point, Point);

/// The outer border of an anticlockwise outline with strips `by` wide along its sides and kites at its outer corners.
/// Corners in straight sides are left out. Empty where rounding loses the way.
pub(super) fn around_strips(corners: &[Point], by: f64) -> Vec<Point> {
    let way = walked(&cut_at_meetings(&borders(corners, by)));
    without_straight_corners(&way)
}

/// The borders of strips and kites, less those that lie inside for certain.
fn borders(corners: &[Point], by: f64) -> Vec<Segment> {
    let n = corners.len();
    let mut borders = Vec::new();
    for i in 0..n {
        let (before, corner, after) = (corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]);
        let (along, next) = ((corner - before).unit(), (after - corner).unit());
        let (out, next_out) = (along.left() * -by, next.left() * -by);
        borders.push((before + out, corner + out));
        if along.cross(next) > 0.0 {
            let mut kite = vec![corner + out];
            kite.extend(mitre(corner, along, next, by));
            kite.push(corner + next_out);
            borders.extend(kite.windows(2).map(|w| (w[0], w[1])));
        } else {
            borders.extend([(corner, corner + out), (corner, corner + next_out)]);
        }
    }
    borders
}

/// The outer corner of a kite, or the two of one that is cut off.
fn mitre(corner: Point, along: Vector, next: Vector, by: f64) -> Vec<Point> {
    let (out, next_out) = (along.left() * -by, next.left() * -by);
    let half_turn_cosine = (along + next).length() / 2.0;
    let middle = (along - next).unit();
    if half_turn_cosine * MITRE_MOST >= 1.0 {
        // Out to where the two moved sides meet.
        let reach = by / half_turn_cosine;
        return vec![corner + (along + next).unit().left() * -reach];
    }
    let on = (MITRE_MOST * by - middle.dot(out)) / along.dot(middle);
    vec![corner + out + along * on, corner + next_out - next * on]
}

/// Segments cut wherever they meet each other.
fn cut_at_meetings(segments: &[Segment]) -> Vec<Segment> {
    let mut pieces = Vec::new();
    for (i, &(a, b)) in segments.iter().enumerate() {
        let mut on_it = vec![a, b];
        for (_, &(c, d)) in segments.iter().enumerate().filter(|(j, _)| *j != i) {
            on_it.extend(segments_cross(a, b, c, d).map(|(t, _)| a.towards(b, t)));
            on_it.extend([c, d].into_iter().filter(|&p| (nearest_on_segment(p, a, b).0 - p).length() <= SAME_PLACE));
        }
        on_it.sort_by(|p, q| (*p - a).dot(b - a).total_cmp(&(*q - a).dot(b - a)));
        on_it.dedup_by(|p, q| (*p - *q).length() <= SAME_PLACE);
        pieces.extend(on_it.windows(2).map(|w| (w[0], w[1])));
    }
    pieces
}

/// From the lowest end anticlockwise around all pieces.
fn walked(pieces: &[Segment]) -> Vec<Point> {
    let ends = || pieces.iter().flat_map(|&(a, b)| [(a, b), (b, a)]);
    let Some(start) = ends().map(|e| e.0).reduce(|l, p| if (p.y, p.x) < (l.y, l.x) { p } else { l }) else {
        return vec![];
    };
    let (mut at, mut heading, mut way) = (start, Vector::m(1.0, 0.0), Vec::new());
    for _ in 0..2 * pieces.len() {
        way.push(at);
        let ways_on =
            ends().filter(|(a, _)| (*a - at).length() <= SAME_PLACE).map(|(_, b)| (right_turn(heading, b - at), b));
        let Some((_, next)) = ways_on.reduce(|best, way| if way.0 > best.0 { way } else { best }) else {
            return vec![];
        };
        heading = next - at;
        at = next;
        if (at - start).length() <= SAME_PLACE {
            return way;
        }
    }
    vec![]
}

/// Nearly 1 for the sharpest turn to the right, 0 straight on, nearly −1 for the sharpest to the left, −2 straight back.
fn right_turn(heading: Vector, next: Vector) -> f64 {
    let turn = -math::atan2(heading.cross(next), heading.dot(next)) / std::f64::consts::PI;
    if turn.abs() > 1.0 - 1e-6 { -2.0 } else { turn }
}

/// Leaves out a corner where it and all left out before it lie on the line from the last corner kept to the next.
fn without_straight_corners(way: &[Point]) -> Vec<Point> {
    let n = way.len();
    let mut kept: Vec<usize> = Vec::new();
    for i in 0..n {
        let next = way[(i + 1) % n];
        let straight = kept
            .last()
            .is_some_and(|&last| (last + 1..=i).all(|k| ring::left_of(way[k], way[last], next).abs() <= SAME_PLACE));
        if !straight {
            kept.push(i);
        }
    }
    kept.into_iter().map(|i| way[i]).collect()
}
