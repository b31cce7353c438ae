//! From which sides and corners do batters start, and what lies between a pad's edge and the wall along it?

use groundhold_quantity::{Level, Point, Vector};

use crate::Batter;
use crate::barrier::{Barrier, Light, MEETS, NOTHING, wall_passes};
use crate::outline::{anticlockwise, area, clip_segment, mitre, outward};

/// A wall that runs along a pad's edge no farther than this from it stands at that edge, metres (ours).
pub(crate) const ALONG: f64 = 0.6;
/// It runs along when it turns away by no more than this, metres per metre (20°, ours).
const TURNS_AWAY: f64 = 0.364;

/// A raised or sunken area with an edge from which batters start.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Platform {
    /// The element it belongs to.
    pub of: String,
    /// Its edge, anticlockwise, with levels.
    pub ring: Vec<(Point, Level)>,
    /// For each side the stretches from which a batter may start, in metres from its first corner.
    pub lit: Vec<Vec<(f64, f64)>>,
    /// For each corner whether a fan may start there.
    pub corner_lit: Vec<bool>,
    /// Batters from it, where they differ from those of the job.
    pub batter: Option<Batter>,
}

impl Platform {
    /// A side: its ends with their levels.
    pub fn side(&self, i: usize) -> [(Point, Level); 2] {
        [self.ring[i], self.ring[(i + 1) % self.ring.len()]]
    }
    /// Unit vector out of a side.
    pub fn out(&self, i: usize) -> Vector {
        let [(a, _), (b, _)] = self.side(i);
        outward(a, b)
    }
    /// With batters from every side and corner that no wall passes; `inner` is the ring that the edge was moved out from.
    pub fn new(of: &str, ring: Vec<(Point, Level)>, inner: &[Point], walls: &[Barrier]) -> Platform {
        let n = ring.len();
        let mut p = Platform { of: of.into(), ring, lit: vec![], corner_lit: vec![], batter: None };
        for i in 0..n {
            let [(a, _), (b, _)] = p.side(i);
            let apron = [inner[i], inner[(i + 1) % n], b, a];
            p.lit.push(light(&apron, walls));
            let m = mitre(p.out((i + n - 1) % n), p.out(i)) * 1e-4;
            p.corner_lit.push(!wall_passes(inner[i] - m, p.ring[i].0, walls));
        }
        p
    }
}

/// The trapezoid between a side of an anticlockwise ring and the same side moved out: [inner, inner, outer, outer], which
/// turns clockwise.
struct Trapezoid<'a>(&'a [Point; 4]);

impl Trapezoid<'_> {
    fn is_flat(&self) -> bool {
        area(self.0).abs() <= NOTHING || (self.0[3] - self.0[0]).length() < MEETS
    }
    /// The part of a segment inside, its border included.
    fn part(&self, a: Point, b: Point) -> Option<(Point, Point)> {
        let ring = self.0;
        (0..4).try_fold((a, b), |(a, b), i| {
            let (p, q) = (ring[i], ring[(i + 1) % 4]);
            let into = outward(p, q);
            clip_segment(a, b, |x| MEETS + (x - p).dot(into))
        })
    }
    /// Where the flow line through a place meets the outer side, as a share of that side.
    fn onto_outer(&self, p: Point) -> f64 {
        let [c0, c1, f1, f0] = *self.0;
        let out = outward(c0, c1);
        let v = ((p - c0).dot(out) / (f0 - c0).dot(out)).clamp(0.0, 1.0);
        let (left, right) = (c0.towards(f0, v), c1.towards(f1, v));
        let across = right - left;
        ((p - left).dot(across) / across.dot(across).max(1e-12)).clamp(0.0, 1.0)
    }
}

/// The pieces of a trapezoid [inner, inner, outer, outer] that no wall in it shades, seen from its inner side.
pub(crate) fn apron_pieces(apron: &[Point; 4], walls: &[Barrier]) -> Vec<Vec<Point>> {
    let t = Trapezoid(apron);
    if t.is_flat() {
        return vec![];
    }
    let mut lit = vec![anticlockwise(apron.to_vec())];
    for w in walls {
        let Some((p, q)) = t.part(w.a, w.b) else { continue };
        let outer = |p| apron[3].towards(apron[2], t.onto_outer(p));
        let shadow = anticlockwise(vec![p, q, outer(q), outer(p)]);
        if area(&shadow) > NOTHING {
            lit = crate::barrier::take_away(lit, &shadow);
        }
    }
    lit
}

/// The stretches of the outer side that no wall in the trapezoid shades, in metres from its start.
fn light(apron: &[Point; 4], walls: &[Barrier]) -> Vec<(f64, f64)> {
    let long = (apron[2] - apron[3]).length();
    let t = Trapezoid(apron);
    if t.is_flat() {
        return vec![(0.0, long)];
    }
    let mut dark: Vec<(f64, f64)> = walls
        .iter()
        .filter_map(|w| t.part(w.a, w.b))
        .map(|(p, q)| (t.onto_outer(p) * long, t.onto_outer(q) * long))
        .map(|(s, e)| (s.min(e), s.max(e)))
        .filter(|(s, e)| e - s > 2.0 * MEETS)
        .collect();
    dark.sort_by(|x, y| x.0.total_cmp(&y.0));
    let mut lit = vec![];
    let mut from = 0.0;
    for (s, e) in dark {
        if s > from + 1e-4 {
            lit.push((from, s));
        }
        from = from.max(e);
    }
    if long > from + 1e-4 {
        lit.push((from, long));
    }
    lit
}

/// The strip between a pad's edge and the walls that run along it: pieces that are laid in the pad's plane.
pub(crate) fn strips_to_walls(p: &Platform, walls: &[Barrier]) -> Vec<Vec<Point>> {
    let mut pieces = vec![];
    let n = p.ring.len();
    let mut held = vec![[false; 2]; n];
    for (i, ends) in held.iter_mut().enumerate() {
        let [(a, _), (b, _)] = p.side(i);
        let (long, along, out) = ((b - a).length(), (b - a).unit(), p.out(i));
        let light = Light::Side { a, b, out };
        let dark = |s: f64| !p.lit[i].iter().any(|(from, to)| *from - 1e-3 <= s && s <= to + 1e-3);
        *ends = [dark(0.0), dark(long)];
        for (k, w) in walls.iter().enumerate() {
            for (from, to) in &p.lit[i] {
                let part = clip_segment(w.a, w.b, |x| (x - a).dot(out) + MEETS)
                    .and_then(|(s, e)| clip_segment(s, e, |x| ALONG - (x - a).dot(out)))
                    .and_then(|(s, e)| clip_segment(s, e, |x| (x - a).dot(along) - from))
                    .and_then(|(s, e)| clip_segment(s, e, |x| to - (x - a).dot(along)));
                let Some((s, e)) = part else { continue };
                if ((e - s).dot(out)).abs() > TURNS_AWAY * ((e - s).dot(along)).abs() {
                    continue;
                }
                let foot = |x: Point| a + along * (x - a).dot(along);
                let (s0, e0) = ((s - a).dot(along), (e - a).dot(along));
                ends[0] |= s0.min(e0) < 1e-3;
                ends[1] |= s0.max(e0) > long - 1e-3;
                let quad = anticlockwise(vec![foot(s), foot(e), e, s]);
                if area(&quad) > NOTHING {
                    let nearer = walls.iter().enumerate().filter(|(j, _)| *j != k).map(|(_, w)| *w);
                    pieces.extend(light.reaches(&quad, nearer));
                }
            }
        }
    }
    for i in 0..n {
        let before = (i + n - 1) % n;
        if p.corner_lit[i] && held[before][1] && held[i][0] {
            pieces.extend(corner_to_walls(p, i, walls));
        }
    }
    pieces
}

/// What lies between a corner and the walls that turn round it.
fn corner_to_walls(p: &Platform, i: usize, walls: &[Barrier]) -> Vec<Vec<Point>> {
    let n = p.ring.len();
    let (from, to) = (p.out((i + n - 1) % n), p.out(i));
    if from.cross(to) < 1e-6 {
        return vec![];
    }
    let apex = p.ring[i].0;
    let light = Light::Fan { apex, from, to };
    let mut pieces = vec![];
    for (k, w) in walls.iter().enumerate() {
        let part = clip_segment(w.a, w.b, |x| from.cross(x - apex))
            .and_then(|(s, e)| clip_segment(s, e, |x| (x - apex).cross(to)));
        let Some((s, e)) = part else { continue };
        let near = |x: Point| (x - apex).length() <= ALONG * mitre(from, to).length() + MEETS;
        let triangle = anticlockwise(vec![apex, s, e]);
        if near(s) && near(e) && area(&triangle) > NOTHING {
            let nearer = walls.iter().enumerate().filter(|(j, _)| *j != k).map(|(_, w)| *w);
            pieces.extend(light.reaches(&triangle, nearer));
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::barrier::{Of, of_wall};

    fn ring(of: &[(f64, f64)]) -> Vec<Point> {
        of.iter().map(|(x, y)| Point::m(*x, *y)).collect()
    }

    #[test]
    fn a_wall_round_a_corner_inside_the_apron_shades_all_beyond_it() {
        // Apron 1 m above the side from (10, 0) to (0, 0) of a ring below; the wall stands 0.5 m out and turns down at both ends.
        let apron = [Point::m(10.0, 0.0), Point::m(0.0, 0.0), Point::m(-1.0, 1.0), Point::m(11.0, 1.0)];
        let wall: Vec<Barrier> = of_wall(&ring(&[(-0.5, -5.0), (-0.5, 0.5), (10.5, 0.5), (10.5, -5.0)])).collect();
        let lit = apron_pieces(&apron, &wall);
        let left: f64 = lit.iter().map(|p| area(p)).sum();
        assert!((left - (10.0 + 11.0) / 2.0 * 0.5).abs() < 1e-4, "{left}");
        assert!(light(&apron, &wall).is_empty());
    }

    #[test]
    fn the_strip_between_edge_and_wall_is_filled_round_the_corner() {
        let square = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
        let wall: Vec<Barrier> = of_wall(&ring(&[(4.2, 1.0), (4.2, 4.1), (-3.0, 4.1)])).collect();
        let level = square.iter().map(|p| (*p, Level::m(1.0))).collect();
        let p = Platform::new("P1", level, &square, &wall);
        assert_eq!(p.corner_lit, [true; 4]);
        let filled: f64 = strips_to_walls(&p, &wall).iter().map(|r| area(r)).sum();
        // Beside: 3.0 × 0.2; above: 4.0 × 0.1; corner: 0.2 × 0.1.
        assert!((filled - (0.6 + 0.4 + 0.02)).abs() < 1e-4, "{filled}");
    }

    #[test]
    fn a_wall_that_crosses_or_stands_far_is_not_along_the_edge() {
        let square = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
        for line in [[(5.0, -1.0), (4.1, 5.0)], [(4.61, 0.0), (4.61, 4.0)], [(4.0, 2.0), (7.0, 2.0)]] {
            let line = ring(&line);
            let wall = [Barrier { a: line[0], b: line[1], of: Of::Wall { ends: [true, true] } }];
            let level = square.iter().map(|p| (*p, Level::m(1.0))).collect();
            let p = Platform::new("P1", level, &square, &wall);
            let filled: f64 = strips_to_walls(&p, &wall).iter().map(|r| area(r)).sum();
            assert_eq!(filled > 0.0, line[0].x == 5.0, "{line:?}");
        }
    }
}
