//! Where on the plot do the heaps fit, off walls, services, roots and boundary?

use groundhold_quantity::{Length, Point, Slope, Volume, distance, distance_to_segment};
use groundhold_surface::Polygon;

use crate::{Heap, heap};

/// A line, a point or an outline that heaps keep off.
#[derive(Debug, Clone, PartialEq)]
pub struct KeepOff {
    /// What it is.
    pub what: String,
    /// Its points; one point alone, a line, or the corners of an outline.
    pub points: Vec<Point>,
    /// True for an outline, whose inside is kept off too.
    pub filled: bool,
    /// How far a heap's toe stays off.
    pub off: Length,
}

/// Where heaps may stand.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeapSite {
    /// Ground that is known, and belongs to the job.
    pub plots: Vec<Polygon>,
    /// What they keep off.
    pub keep_off: Vec<KeepOff>,
}

/// A heap in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedHeap {
    /// What lies in it.
    pub what: String,
    /// Its middle.
    pub at: Point,
    /// Radius at the ground.
    pub radius: Length,
    /// Height.
    pub height: Length,
    /// Loose volume.
    pub volume: Volume,
}

/// Heaps that found a place, and those that did not.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stockpiled {
    /// In their places.
    pub placed: Vec<PlacedHeap>,
    /// Without a place: what, and how much of it, loose.
    pub homeless: Vec<(String, Volume)>,
}

/// Between the toes of two heaps, for a barrow to pass.
const BETWEEN: f64 = 0.6;
/// A heap is split into so many at most.
const PARTS: u32 = 6;
/// About so many places are tried.
const TRIED: f64 = 1600.0;

/// Places each heap as near as it can be to where its soil comes from and goes to (`used` beside the heap). A heap for which
/// there is no room is split into two, three and up to six smaller ones. The largest is placed first. Places are tried on
/// a square grid, so a gap that just fits may be missed by less than its step.
pub fn stockpile(heaps: &[(Heap, Vec<Point>)], site: &HeapSite, side: Slope, height_most: Length) -> Stockpiled {
    let tries = places(site);
    let mut found = Stockpiled::default();
    let mut order: Vec<&(Heap, Vec<Point>)> = heaps.iter().collect();
    order.sort_by(|a, b| b.0.volume.to_m3().total_cmp(&a.0.volume.to_m3()));
    for (whole, used) in order {
        let parts = (1..=PARTS).find_map(|k| {
            let part = heap(&whole.what, whole.volume / f64::from(k), side, height_most);
            let mut standing = found.placed.clone();
            for _ in 0..k {
                let at = nearest(&tries, &standing, &part, used)?;
                standing.push(PlacedHeap {
                    what: part.what.clone(),
                    at,
                    radius: part.radius,
                    height: part.height,
                    volume: part.volume,
                });
            }
            Some(standing)
        });
        match parts {
            Some(standing) => found.placed = standing,
            None => found.homeless.push((whole.what.clone(), whole.volume)),
        }
    }
    found
}

/// A place that is tried, and the largest radius of a heap that stands there.
struct Place {
    at: Point,
    room: f64,
}

fn places(site: &HeapSite) -> Vec<Place> {
    let mut all = vec![];
    let area: f64 = site.plots.iter().map(|p| p.area().to_m2()).sum();
    let step = (area / TRIED).sqrt().max(0.2);
    let kept: Vec<(&KeepOff, [f64; 4])> = site.keep_off.iter().map(|k| (k, around(&k.points))).collect();
    for plot in &site.plots {
        let (low, high) = plot.bounds();
        let count = |d: f64| ((d / step).floor().max(0.0) as usize).min(400);
        for i in 0..=count(high.x - low.x) {
            for k in 0..=count(high.y - low.y) {
                let at = Point::m(low.x + i as f64 * step, low.y + k as f64 * step);
                if !plot.contains(at) {
                    continue;
                }
                let room = room(at, gap(at, plot.corners(), true), &kept);
                if room > 0.0 {
                    all.push(Place { at, room });
                }
            }
        }
    }
    all
}

/// How much of a distance to the plot's edge is left by what is kept off.
fn room(at: Point, to_edge: f64, kept: &[(&KeepOff, [f64; 4])]) -> f64 {
    let mut room = to_edge;
    for (k, [west, south, east, north]) in kept {
        if room <= 0.0 {
            break;
        }
        // No nearer than the rectangle around it.
        let (x, y) = ((west - at.x).max(at.x - east).max(0.0), (south - at.y).max(at.y - north).max(0.0));
        let reach = room + k.off.to_m();
        if x * x + y * y < reach * reach {
            room = room.min(off(at, k) - k.off.to_m());
        }
    }
    room
}

/// West, south, east and north ends of some points.
fn around(points: &[Point]) -> [f64; 4] {
    points.iter().fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |[w, s, e, n], p| {
        [w.min(p.x), s.min(p.y), e.max(p.x), n.max(p.y)]
    })
}

/// The place with room for a heap, off those that stand, from which the ways to where it is used are shortest.
fn nearest(tries: &[Place], standing: &[PlacedHeap], h: &Heap, used: &[Point]) -> Option<Point> {
    let radius = h.radius.to_m();
    let far = |p: Point| used.iter().map(|u| distance(p, *u).to_m()).sum::<f64>();
    let free = |p: Point| standing.iter().all(|s| distance(s.at, p).to_m() >= s.radius.to_m() + radius + BETWEEN);
    let mut best: Option<(f64, Point)> = None;
    for t in tries.iter().filter(|t| radius <= t.room) {
        let way = far(t.at);
        if best.is_none_or(|b| way < b.0) && free(t.at) {
            best = Some((way, t.at));
        }
    }
    best.map(|b| b.1)
}

fn off(p: Point, k: &KeepOff) -> f64 {
    if k.filled && inside(p, &k.points) {
        return -1.0;
    }
    gap(p, &k.points, k.filled)
}

/// True inside a ring, whichever way it turns.
fn inside(p: Point, ring: &[Point]) -> bool {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    sides.fold(false, |is, (a, b)| {
        let between = (a.y > p.y) != (b.y > p.y);
        let left = (*b - *a).cross(p - *a) > 0.0;
        is ^ (between && left == (b.y > a.y))
    })
}

/// Distance from a point to a line, closed or not, m.
fn gap(p: Point, line: &[Point], closed: bool) -> f64 {
    if let [q] = line {
        return distance(p, *q).to_m();
    }
    let last = if closed { line.last().zip(line.first()).map(|(a, b)| [*a, *b]) } else { None };
    let sides = line.windows(2).map(|w| [w[0], w[1]]).chain(last);
    sides.map(|[a, b]| distance_to_segment(p, a, b).to_m()).fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plot(wide: f64, deep: f64) -> HeapSite {
        let corners = [(0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)].map(|(x, y)| Point::m(x, y));
        HeapSite { plots: vec![Polygon::new(corners.to_vec()).unwrap()], keep_off: vec![] }
    }

    fn one(volume: f64, used: Point) -> Vec<(Heap, Vec<Point>)> {
        vec![(heap("topsoil", Volume::m3(volume), Slope::one_in(1.5), Length::m(1.5)), vec![used])]
    }

    fn put(heaps: &[(Heap, Vec<Point>)], site: &HeapSite) -> Stockpiled {
        stockpile(heaps, site, Slope::one_in(1.5), Length::m(1.5))
    }

    #[test]
    fn a_heap_stands_as_near_as_it_may_and_off_the_wall() {
        let mut site = plot(20.0, 10.0);
        let wall = vec![Point::m(10.0, 0.0), Point::m(10.0, 10.0)];
        site.keep_off.push(KeepOff { what: "W1".into(), points: wall.clone(), filled: false, off: Length::m(1.0) });
        let found = put(&one(3.0, Point::m(9.0, 5.0)), &site);
        let h = &found.placed[0];
        assert!(gap(h.at, &wall, false) >= h.radius.to_m() + 1.0 && gap(h.at, &wall, false) < h.radius.to_m() + 1.5);
    }

    #[test]
    fn a_heap_too_large_for_the_strip_is_split_and_nothing_is_lost() {
        let found = put(&one(6.0, Point::m(10.0, 1.0)), &plot(20.0, 3.2));
        assert!(found.placed.len() > 1 && found.homeless.is_empty());
        let sum: f64 = found.placed.iter().map(|p| p.volume.to_m3()).sum();
        assert!((sum - 6.0).abs() < 1e-9);
        for (i, a) in found.placed.iter().enumerate() {
            for b in &found.placed[..i] {
                assert!(distance(a.at, b.at) >= a.radius + b.radius);
            }
        }
    }

    #[test]
    fn a_heap_without_room_is_named() {
        let found = put(&one(50.0, Point::m(1.0, 1.0)), &plot(4.0, 4.0));
        assert!(found.placed.is_empty());
        assert_eq!(found.homeless[0].0, "topsoil");
    }
}
