//! Does a closed line cross or touch itself?

use groundhold_quantity::{Point, nearest_on_segment, segments_cross};

use super::PolygonError;
use crate::{SAME_PLACE, ring};

/// The corners without repeats, if they make a simple polygon of either turning.
pub(super) fn checked(corners: &[Point]) -> Result<Vec<Point>, PolygonError> {
    if let Some(corner) = corners.iter().position(|p| !(p.x.is_finite() && p.y.is_finite())) {
        return Err(PolygonError::NotFinite { corner });
    }
    let near = |p: Point, q: Point| (p - q).length() <= SAME_PLACE;
    let mut kept: Vec<(usize, Point)> = corners.iter().copied().enumerate().collect();
    kept.dedup_by(|next, kept| {
        let repeated = near(next.1, kept.1);
        if repeated {
            // The side to the next place starts at the last of the repeats.
            kept.0 = next.0;
        }
        repeated
    });
    while kept.len() > 1 && near(kept[0].1, kept[kept.len() - 1].1) {
        kept.pop();
    }
    let places: Vec<Point> = kept.iter().map(|k| k.1).collect();
    if places.len() < 3 {
        return Err(PolygonError::TooFew { found: places.len() });
    }
    if in_one_line(&places) {
        return Err(PolygonError::NoArea);
    }
    if let Some((a, b, at)) = first_meeting(&places) {
        return Err(PolygonError::Crossing { edge_a: kept[a].0, edge_b: kept[b].0, at });
    }
    Ok(places)
}

fn in_one_line(places: &[Point]) -> bool {
    let o = places[0];
    let far = places.iter().copied().fold(o, |f, p| if (p - o).length() > (f - o).length() { p } else { f });
    places.iter().all(|&p| ring::left_of(p, o, far).abs() <= SAME_PLACE)
}

/// The first two sides that meet elsewhere than in their common corner, and where.
fn first_meeting(places: &[Point]) -> Option<(usize, usize, Point)> {
    let n = places.len();
    let side = |i: usize| (places[i], places[(i + 1) % n]);
    let boxes: Vec<(Point, Point)> = (0..n).map(|i| ring::bounds(&[side(i).0, side(i).1])).collect();
    for i in 0..n {
        for j in i + 1..n {
            if apart(boxes[i], boxes[j]) {
                continue;
            }
            let at = if j == i + 1 {
                folded_back(side(i).0, side(i).1, side(j).1)
            } else if i == 0 && j == n - 1 {
                folded_back(side(j).0, side(j).1, side(i).1)
            } else {
                meeting(side(i), side(j))
            };
            if let Some(at) = at {
                return Some((i, j, at));
            }
        }
    }
    None
}

fn apart(a: (Point, Point), b: (Point, Point)) -> bool {
    let gap = SAME_PLACE;
    a.1.x + gap < b.0.x || b.1.x + gap < a.0.x || a.1.y + gap < b.0.y || b.1.y + gap < a.0.y
}

/// The middle of three corners, where the line turns straight back on itself there.
fn folded_back(p: Point, q: Point, r: Point) -> Option<Point> {
    let (before, after) = (q - p, r - q);
    let back = before.dot(after) < 0.0;
    let thin = before.cross(after).abs() <= SAME_PLACE * before.length().min(after.length());
    (back && thin).then_some(q)
}

/// Where two sides without a common corner cross or touch.
fn meeting((a, b): (Point, Point), (c, d): (Point, Point)) -> Option<Point> {
    if let Some((t, _)) = segments_cross(a, b, c, d) {
        return Some(a.towards(b, t));
    }
    let touches = |p: Point, u: Point, v: Point| (nearest_on_segment(p, u, v).0 - p).length() <= SAME_PLACE;
    [(a, c, d), (b, c, d), (c, a, b), (d, a, b)].into_iter().find(|&(p, u, v)| touches(p, u, v)).map(|(p, _, _)| p)
}
