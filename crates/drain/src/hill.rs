//! Which way does water run over triangles? Down the steepest line of each triangle, along valley edges, and from
//! point to point.

use std::collections::BTreeMap;

use groundhold_quantity::{Point, Vector};
use groundhold_surface::Tin;

/// Slope flatter than this is level: water keeps the way it came.
const LEVEL: f64 = 1e-9;
/// Nearer than this to a corner is at it, m.
const AT_CORNER: f64 = 1e-9;

/// The ground as water sees it.
pub(crate) struct Hill {
    corners: Vec<(Point, f64)>,
    triangles: Vec<[usize; 3]>,
    /// Across side i (from corner i to the next): the neighbour.
    across: Vec<[Option<usize>; 3]>,
    /// Steepest way down, as long as it is steep (fall per metre).
    down: Vec<Vector>,
    /// The same, one metre long; zero on the flat.
    way: Vec<Vector>,
    /// Outward unit vector square to each side.
    out: Vec<[Vector; 3]>,
    /// Triangles round each corner.
    round: Vec<Vec<usize>>,
}

/// Where the water is.
#[derive(Clone, Copy)]
enum At {
    /// Inside or on the edge of a triangle, with the way it came.
    Triangle(usize, Vector),
    /// On a side whose both triangles fall towards it, on the way to its lower corner.
    Valley(usize),
    /// At a corner.
    Corner(usize),
}

/// What a watcher of the way answers.
pub(crate) enum Go {
    /// Go on.
    On,
    /// Stop here.
    Stop,
}

/// A stretch of the outer edge over which water comes in from outside.
pub(crate) struct Inflow {
    /// Triangle inside.
    pub triangle: usize,
    /// Ends of the edge.
    pub ends: [Point; 2],
    /// Part of its length that is square to the flow.
    pub share: f64,
}

impl Hill {
    pub(crate) fn of(ground: &Tin) -> Hill {
        let corners: Vec<(Point, f64)> = ground.points().iter().map(|p| (p.at, p.level.to_m())).collect();
        let mut hill = Hill {
            triangles: ground.triangles().iter().map(|t| anticlockwise(&corners, *t)).collect(),
            across: vec![],
            down: vec![],
            way: vec![],
            out: vec![],
            round: vec![vec![]; corners.len()],
            corners,
        };
        let mut sides: BTreeMap<(usize, usize), usize> = BTreeMap::new();
        for (t, c) in hill.triangles.iter().enumerate() {
            for i in 0..3 {
                sides.insert((c[i], c[(i + 1) % 3]), t);
                hill.round[c[i]].push(t);
            }
        }
        for c in &hill.triangles {
            hill.across.push(std::array::from_fn(|i| sides.get(&(c[(i + 1) % 3], c[i])).copied()));
            let ring = c.map(|k| hill.corners[k].0);
            let down = steepest(c.map(|k| hill.corners[k]));
            hill.down.push(down);
            hill.way.push(if down.length() > LEVEL { down.unit() } else { Vector::default() });
            hill.out.push(std::array::from_fn(|i| (ring[(i + 1) % 3] - ring[i]).unit().left() * -1.0));
        }
        hill
    }

    pub(crate) fn triangles(&self) -> usize {
        self.triangles.len()
    }
    pub(crate) fn ring(&self, t: usize) -> [Point; 3] {
        self.triangles[t].map(|c| self.corners[c].0)
    }
    pub(crate) fn mean_level(&self, t: usize) -> f64 {
        self.triangles[t].iter().map(|c| self.corners[*c].1).sum::<f64>() / 3.0
    }

    /// Level of the plane of triangle `t` at a place.
    pub(crate) fn level(&self, t: usize, p: Point) -> f64 {
        let (from, level) = self.corners[self.triangles[t][0]];
        level - (p - from).dot(self.down[t])
    }
    /// Level of the ground at a place, looked for from triangle `near` on towards it; by the last plane on the way where the
    /// way leaves the ground.
    pub(crate) fn level_near(&self, p: Point, near: usize) -> f64 {
        let mut t = near;
        for _ in 0..self.triangles.len() {
            let ring = self.ring(t);
            let beyond = (0..3).filter(|i| (p - ring[*i]).dot(self.out[t][*i]) > 1e-9);
            let across = beyond.into_iter().filter_map(|i| self.across[t][i]).next();
            match across {
                Some(next) => t = next,
                None => break,
            }
        }
        self.level(t, p)
    }

    /// Sides of the outer edge over which the ground inside falls away from the edge.
    pub(crate) fn inflows(&self) -> Vec<Inflow> {
        let mut found = vec![];
        for (t, across) in self.across.iter().enumerate() {
            let ring = self.ring(t);
            for i in (0..3).filter(|i| across[*i].is_none()) {
                let ends = [ring[i], ring[(i + 1) % 3]];
                let share = -self.way[t].dot(self.out[t][i]);
                if share > 1e-9 {
                    found.push(Inflow { triangle: t, ends, share });
                }
            }
        }
        found
    }

    /// Follows water from `from` in triangle `start`. `watch` sees each straight piece of the way (from, to, and the
    /// triangle it is in, or `None` along an edge) and says whether to go on. Ends at the edge of the ground, in a
    /// hollow or on the flat.
    pub(crate) fn run_down(&self, from: Point, start: usize, mut watch: impl FnMut(Point, Point, Option<usize>) -> Go) {
        let (mut p, mut at) = (from, At::Triangle(start, Vector::default()));
        for _ in 0..4 * self.triangles.len() + 16 {
            let next = match at {
                At::Triangle(t, came) => self.through(p, t, came),
                At::Valley(c) => Some((self.corners[c].0, Some(At::Corner(c)))),
                At::Corner(c) => self.leave_corner(c),
            };
            let Some((to, then)) = next else { return };
            let inside = if let At::Triangle(t, _) = at { Some(t) } else { None };
            if to != p && matches!(watch(p, to, inside), Go::Stop) {
                return;
            }
            (p, at) = match then {
                Some(at) => (to, at),
                None => return,
            };
        }
    }

    /// From `p` through triangle `t`: where the way leaves it and what comes then; `None` where it goes nowhere.
    fn through(&self, p: Point, t: usize, came: Vector) -> Option<(Point, Option<At>)> {
        let way = if self.way[t] == Vector::default() { came } else { self.way[t] };
        if way == Vector::default() {
            return None;
        }
        let ring = self.ring(t);
        let mut leave: Option<(f64, usize)> = None;
        for (i, out) in self.out[t].into_iter().enumerate() {
            let speed = way.dot(out);
            if speed > 1e-12 {
                let s = ((ring[i] - p).dot(out) / speed).max(0.0);
                if leave.is_none_or(|(least, _)| s < least) {
                    leave = Some((s, i));
                }
            }
        }
        let (s, side) = leave?;
        let to = p + way * s;
        let [a, b] = [side, (side + 1) % 3].map(|i| self.triangles[t][i]);
        for c in [a, b] {
            if (self.corners[c].0 - to).length() < AT_CORNER {
                return Some((self.corners[c].0, Some(At::Corner(c))));
            }
        }
        let Some(next) = self.across[t][side] else { return Some((to, None)) };
        let onward = self.way[next].dot(self.out[t][side]);
        if self.way[next] == Vector::default() || onward > 1e-12 {
            return Some((to, Some(At::Triangle(next, way))));
        }
        Some((to, self.lower_end(a, b).map(At::Valley)))
    }

    fn lower_end(&self, a: usize, b: usize) -> Option<usize> {
        let (za, zb) = (self.corners[a].1, self.corners[b].1);
        if za == zb { None } else { Some(if za < zb { a } else { b }) }
    }

    /// The steepest way on from a corner: into a triangle or along a side.
    fn leave_corner(&self, c: usize) -> Option<(Point, Option<At>)> {
        let (p, z) = self.corners[c];
        let mut best: Option<(f64, Point, At)> = None;
        let mut offer = |slope: f64, to: Point, at: At| {
            if slope > LEVEL && best.is_none_or(|(most, _, _)| slope > most) {
                best = Some((slope, to, at));
            }
        };
        for &t in &self.round[c] {
            let k = self.triangles[t].iter().position(|x| *x == c)?;
            let [next, previous] = [1, 2].map(|i| self.triangles[t][(k + i) % 3]);
            let down = self.down[t];
            let first = (self.corners[next].0 - p).cross(down);
            let second = down.cross(self.corners[previous].0 - p);
            if first > 0.0 && second > 0.0 {
                offer(down.length(), p, At::Triangle(t, down.unit()));
            }
            for other in [next, previous] {
                let (q, low) = self.corners[other];
                offer((z - low) / (q - p).length(), q, At::Corner(other));
            }
        }
        best.map(|(_, to, at)| (to, Some(at)))
    }
}

fn anticlockwise(corners: &[(Point, f64)], t: [usize; 3]) -> [usize; 3] {
    let [a, b, c] = t.map(|k| corners[k].0);
    if (b - a).cross(c - a) < 0.0 { [t[0], t[2], t[1]] } else { t }
}

/// Direction of steepest fall, as long as the fall per metre; zero on a sliver without area.
fn steepest([(a, za), (b, zb), (c, zc)]: [(Point, f64); 3]) -> Vector {
    let (u, v) = (b - a, c - a);
    let det = u.cross(v);
    if det.abs() < 1e-18 {
        return Vector::default();
    }
    let (p, q) = (zb - za, zc - za);
    Vector::m(-(p * v.y - q * u.y) / det, -(q * u.x - p * v.x) / det)
}
