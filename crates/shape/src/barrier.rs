//! Which part of a batter or an apron lies behind a wall or behind another element, as seen from where it starts?
//!
//! A batter or apron reaches out from a side in parallel, or from a corner like a fan. A barrier is a segment that it
//! cannot pass; what lies beyond it, in the direction of reach, is in its shadow and is taken away exactly.

use groundhold_quantity::{Point, Vector, distance_to_segment, segments_cross};
use groundhold_surface::subtract_convex;

use crate::outline::{anticlockwise, area, clip_segment};

/// Two places nearer than this are one, metres.
pub(crate) const MEETS: f64 = 1e-6;
/// Pieces smaller than this are dropped, m²: a hundredth of a square millimetre.
pub(crate) const NOTHING: f64 = 1e-8;
/// Farther than any reach, metres.
const FAR: f64 = 60.0;

/// What a barrier belongs to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Of {
    /// A wall; whether its ends are ends of the whole line.
    Wall { ends: [bool; 2] },
    /// Side `side` of platform `platform`, which has `sides` of them.
    Platform { platform: usize, side: usize, sides: usize },
    /// The bottom riser of a flight.
    Foot,
}

/// A segment that batters and aprons cannot pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Barrier {
    pub a: Point,
    pub b: Point,
    pub of: Of,
}

/// Where a reach starts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Light {
    /// From the side `a`–`b` straight out along the unit vector `out`.
    Side { a: Point, b: Point, out: Vector },
    /// From `apex` between two directions, the second to the left of the first, less than half a turn apart.
    Fan { apex: Point, from: Vector, to: Vector },
}

impl Light {
    /// The shadow of a segment, convex and anticlockwise; empty where it throws none.
    fn shadow(&self, a: Point, b: Point) -> Vec<Point> {
        match *self {
            Light::Side { a: start, b: end, out } => {
                let along = (end - start).unit();
                let long = (end - start).length();
                let part = clip_segment(a, b, |p| (p - start).dot(out) + MEETS)
                    .and_then(|(a, b)| clip_segment(a, b, |p| (p - start).dot(along) + MEETS))
                    .and_then(|(a, b)| clip_segment(a, b, |p| long - (p - start).dot(along) + MEETS));
                let Some((p, q)) = part.filter(|(p, q)| (*q - *p).cross(out).abs() > 1e-5) else { return vec![] };
                anticlockwise(vec![p, q, q + out * FAR, p + out * FAR])
            }
            Light::Fan { apex, from, to } => {
                if distance_to_segment(apex, a, b).to_m() < MEETS {
                    return vec![];
                }
                let part = clip_segment(a, b, |p| from.cross(p - apex))
                    .and_then(|(a, b)| clip_segment(a, b, |p| (p - apex).cross(to)));
                let Some((p, q)) = part else { return vec![] };
                let (u, v) = (p - apex, q - apex);
                if u.cross(v).abs() < 1e-12 {
                    return vec![];
                }
                let k = FAR / distance_to_segment(apex, p, q).to_m().max(1e-3);
                anticlockwise(vec![p, q, apex + v * (1.0 + k), apex + u * (1.0 + k)])
            }
        }
    }

    /// The convex pieces of `ring` that no barrier shades.
    pub fn reaches(&self, ring: &[Point], barriers: impl Iterator<Item = Barrier>) -> Vec<Vec<Point>> {
        let mut lit = vec![ring.to_vec()];
        for b in barriers {
            let shadow = self.shadow(b.a, b.b);
            if area(&shadow) > NOTHING {
                lit = take_away(lit, &shadow);
            }
        }
        lit
    }
}

/// Convex pieces without a convex hole.
pub(crate) fn take_away(pieces: Vec<Vec<Point>>, hole: &[Point]) -> Vec<Vec<Point>> {
    let (lo, hi) = crate::index::bounds(hole);
    let mut left = vec![];
    for piece in pieces {
        let (a, b) = crate::index::bounds(&piece);
        if a.x >= hi.x || b.x <= lo.x || a.y >= hi.y || b.y <= lo.y {
            left.push(piece);
        } else {
            left.extend(subtract_convex(&piece, hole).into_iter().filter(|r| area(r) > NOTHING));
        }
    }
    left
}

/// The segments of a wall's line as barriers.
pub(crate) fn of_wall(line: &[Point]) -> impl Iterator<Item = Barrier> {
    let last = line.len().saturating_sub(2);
    line.windows(2).enumerate().map(move |(i, w)| Barrier {
        a: w[0],
        b: w[1],
        of: Of::Wall { ends: [i == 0, i == last] },
    })
}

/// True where a wall stands across the way from `from` to `to`, or at `to` without ending there.
pub(crate) fn wall_passes(from: Point, to: Point, walls: &[Barrier]) -> bool {
    walls.iter().any(|w| {
        let Of::Wall { ends } = w.of else { return false };
        let end_at = |p: Point, is_end: bool| is_end && (p - to).length() < 2e-3;
        if end_at(w.a, ends[0]) || end_at(w.b, ends[1]) {
            return false;
        }
        segments_cross(from, to, w.a, w.b).is_some()
            || [w.a, w.b].iter().any(|p| distance_to_segment(*p, from, to).to_m() < MEETS)
            || [from, to].iter().any(|p| distance_to_segment(*p, w.a, w.b).to_m() < MEETS)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wall(a: (f64, f64), b: (f64, f64)) -> Barrier {
        Barrier { a: Point::m(a.0, a.1), b: Point::m(b.0, b.1), of: Of::Wall { ends: [true, true] } }
    }
    fn left(pieces: &[Vec<Point>]) -> f64 {
        pieces.iter().map(|p| area(p)).sum()
    }

    #[test]
    fn a_wall_across_a_strip_leaves_what_lies_before_it() {
        let p = |x, y| Point::m(x, y);
        let strip = [p(0.0, 0.0), p(4.0, 0.0), p(4.0, 6.0), p(0.0, 6.0)];
        let light = Light::Side { a: p(0.0, 0.0), b: p(4.0, 0.0), out: Vector::m(0.0, 1.0) };
        let lit = light.reaches(&strip, [wall((-1.0, 2.0), (1.0, 2.0))].into_iter());
        assert!((left(&lit) - (24.0 - 4.0)).abs() < 1e-4);
        assert!((left(&light.reaches(&strip, [wall((-1.0, -0.1), (5.0, -0.1))].into_iter())) - 24.0).abs() < 1e-9);
        assert!(left(&light.reaches(&strip, [wall((-1.0, 0.0), (5.0, 0.0))].into_iter())) < 1e-4);
        assert!((left(&light.reaches(&strip, [wall((2.0, 1.0), (2.0, 5.0))].into_iter())) - 24.0).abs() < 1e-9);
    }

    #[test]
    fn a_wall_before_a_fan_shades_the_rays_that_meet_it() {
        let p = |x, y| Point::m(x, y);
        let fan = [p(0.0, 0.0), p(6.0, 0.0), p(0.0, 6.0)];
        let light = Light::Fan { apex: fan[0], from: Vector::m(1.0, 0.0), to: Vector::m(0.0, 1.0) };
        // From (1, 0) to (1, 1): half the quarter turn, beyond x = 1.
        let lit = light.reaches(&fan, [wall((1.0, -1.0), (1.0, 1.0))].into_iter());
        let shaded = 9.0 - 0.5;
        assert!((left(&lit) - (18.0 - shaded)).abs() < 1e-9);
    }

    #[test]
    fn a_wall_passes_a_corner_unless_it_ends_there() {
        let (c, m) = (Point::m(0.0, 0.0), Point::m(1.0, 1.0));
        assert!(wall_passes(c, m, &[wall((0.0, 1.0), (2.0, 1.0))]));
        assert!(!wall_passes(c, m, &[wall((0.0, 1.0), (1.0, 1.0))]));
        assert!(wall_passes(c, m, &[wall((0.0, 0.5), (1.0, 0.5))]));
        assert!(!wall_passes(c, m, &[wall((0.0, 1.1), (2.0, 1.1))]));
    }
}
