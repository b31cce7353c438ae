//! Where does a surface pass through each round level?
//!
//! A corner exactly at a level counts as above it. So every triangle is either wholly on one side or is crossed once,
//! from the side where its border falls below the level to the side where it rises above; lines neither break at
//! corners nor meet in odd numbers.

mod join;

use std::collections::BTreeMap;

use groundhold_quantity::{Length, Level, Point};
use join::Piece;

use crate::places::Places;
use crate::tin::GroundPoint;
use crate::{Facet, MEETS, clip};

/// No more levels than this are drawn.
const LEVELS_MOST: f64 = 10_000.0;

/// A line of equal level. The higher ground lies to its left.
#[derive(Debug, Clone, PartialEq)]
pub struct Contour {
    /// Its level, a whole multiple of the interval.
    pub level: Level,
    /// Its points in order; the first is not repeated at the end of a closed line.
    pub line: Vec<Point>,
    /// True where the last point joins the first.
    pub closed: bool,
}

/// Contours of planar facets, joined where the ends of their pieces meet (within a micrometre), lowest first.
/// A facet that is level at a contour's level counts as above it. An interval that is not positive, or so fine that it
/// asks for more than 10 000 levels, gives none.
pub fn contours_of_facets(facets: &[Facet], interval: Length) -> Vec<Contour> {
    let rings: Vec<Vec<Corner>> = facets.iter().map(corners_of_facet).collect();
    let mut places = Places::default();
    contours(&rings, interval, |ends| {
        // In a facet a piece is known by the places of its ends alone.
        let mut node = |e: &Crossing| (places.number(e.at).0, 0);
        let nodes = [node(&ends[0]), node(&ends[1])];
        Piece { link: nodes, node: nodes, at: [ends[0].at, ends[1].at] }
    })
}

pub(crate) fn of_triangles(points: &[GroundPoint], triangles: &[[usize; 3]], interval: Length) -> Vec<Contour> {
    let corner = |i: usize| Corner { number: i, at: points[i].at, level: points[i].level.to_m() };
    let rings: Vec<[Corner; 3]> = triangles.iter().map(|t| t.map(corner)).collect();
    contours(&rings, interval, |ends| Piece {
        link: [ends[0].side, ends[1].side],
        node: [ends[0].node, ends[1].node],
        at: [ends[0].at, ends[1].at],
    })
}

#[derive(Clone, Copy)]
struct Corner {
    number: usize,
    at: Point,
    level: f64,
}

/// Where a level crosses a side.
struct Crossing {
    /// The side, by its corners, the smaller number first.
    side: (usize, usize),
    /// The same; or twice the corner, where it crosses exactly there.
    node: (usize, usize),
    at: Point,
}

fn corners_of_facet(facet: &Facet) -> Vec<Corner> {
    let level = |p: Point| facet.plane.level_at(p).to_m();
    let ring = clip::anticlockwise(&facet.ring);
    ring.iter().enumerate().map(|(number, &at)| Corner { number, at, level: level(at) }).collect()
}

fn contours<R: AsRef<[Corner]>>(
    rings: &[R],
    interval: Length,
    mut piece: impl FnMut([Crossing; 2]) -> Piece,
) -> Vec<Contour> {
    let step = interval.to_m();
    let all = || rings.iter().flat_map(|r| r.as_ref()).map(|c| c.level);
    let (lowest, highest) = (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max));
    let sensible = step > 0.0 && (highest - lowest) / step <= LEVELS_MOST && (highest.abs() / step) < 1e15;
    if !sensible {
        return vec![];
    }
    let mut by_level: BTreeMap<i64, Vec<Piece>> = BTreeMap::new();
    for ring in rings {
        let ring = ring.as_ref();
        let lowest = ring.iter().map(|c| c.level).fold(f64::INFINITY, f64::min);
        let highest = ring.iter().map(|c| c.level).fold(f64::NEG_INFINITY, f64::max);
        for k in ((lowest - MEETS) / step).ceil() as i64..=((highest + MEETS) / step).floor() as i64 {
            if let Some(ends) = crossed(ring, k as f64 * step) {
                by_level.entry(k).or_default().push(piece(ends));
            }
        }
    }
    let lines = |(k, pieces): (i64, Vec<Piece>)| {
        let level = Level::m(k as f64 * step);
        join::joined(&pieces).into_iter().map(move |(line, closed)| Contour { level, line, closed })
    };
    by_level.into_iter().flat_map(lines).collect()
}

/// How a level crosses a convex ring: in over the side that falls below it, out over the side that rises above it.
fn crossed(ring: &[Corner], level: f64) -> Option<[Crossing; 2]> {
    let above = |c: &Corner| c.level >= level - MEETS;
    let next = |i: usize| &ring[(i + 1) % ring.len()];
    let falls = (0..ring.len()).find(|&i| above(&ring[i]) && !above(next(i)))?;
    let rises = (0..ring.len()).find(|&i| !above(&ring[i]) && above(next(i)))?;
    Some([crossing(&ring[falls], next(falls), level), crossing(next(rises), &ring[rises], level)])
}

fn crossing(high: &Corner, low: &Corner, level: f64) -> Crossing {
    let side = (high.number.min(low.number), high.number.max(low.number));
    if high.level <= level + MEETS {
        return Crossing { side, node: (high.number, high.number), at: high.at };
    }
    // From the same end for both triangles of a side, so that they get the same point, bit for bit.
    let at = high.at.towards(low.at, (high.level - level) / (high.level - low.level));
    Crossing { side, node: side, at }
}
