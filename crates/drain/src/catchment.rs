//! Which ground drains to which wall?

use groundhold_quantity::{Area, Length, Point, Vector, distance_to_segment};
use groundhold_surface::Tin;

use crate::WallLine;
use crate::hill::{Go, Hill};

/// Ground that drains to a wall: water from it, running down the steepest way, meets this wall first, from behind.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Catchment {
    /// Within the survey.
    pub surveyed: Area,
    /// Width of the survey's edge, square to the flow, over which water comes in from outside.
    pub cut_edge: Length,
    /// Beyond the survey: that width times how far the ground goes on rising.
    pub beyond: Area,
    /// Longest way of water to the wall, with what lies beyond the survey.
    pub way: Length,
    /// How far that way falls.
    pub fall: Length,
}

impl Catchment {
    /// All of it.
    pub fn area(&self) -> Area {
        self.surveyed + self.beyond
    }
}

/// Above so many triangles each drains as its middle does; below, triangles are split where the answer changes inside
/// them.
const MANY: usize = 4000;
/// About so many pieces at most before halving; a survey of 3000 m² has them a metre long.
const PIECES: f64 = 3000.0;
/// Faces this near to a triangle are looked at with it, m.
const TOUCH: f64 = 1e-6;
/// About so many triangles are started from for the longest way.
const STARTS: usize = 1000;
/// How often a piece is halved where the answer changes inside it.
const HALVINGS: u32 = 2;

/// The catchment of each wall, in their order, on existing ground.
///
/// Water is followed from points of every triangle down the steepest way (across triangles, along valley edges, from
/// corner to corner) to the first wall that it meets from behind. Pieces of a metre and a half or less (larger on more than 3000
/// m²) are halved twice where their points do not agree, so the edge of a catchment is found to about 400 mm;
/// on surfaces of more than 4000 triangles to about a triangle.
/// `uphill` is how far the ground goes on rising beyond the survey; `None` counts as nothing there.
pub fn catchments(ground: &Tin, walls: &[WallLine], uphill: Option<Length>) -> Vec<Catchment> {
    let drain = Drainage::of(Hill::of(ground), walls.iter().enumerate().flat_map(faces).collect());
    let step = walls.iter().map(|w| 0.5 * w.length().to_m()).fold(1.5, f64::min).max(0.25);
    let step = step.max((ground.area().to_m2() / PIECES).sqrt());
    let mut areas = vec![0.0; walls.len()];
    if drain.hill.triangles() > MANY {
        drain.whole_triangles(&mut areas);
    } else {
        for t in 0..drain.hill.triangles() {
            drain.split(t, step, &mut areas);
        }
    }
    let mut edges = vec![0.0; walls.len()];
    drain.inflow(0.25 * step, &mut edges);
    let ways = drain.longest(walls.len());
    let uphill = uphill.unwrap_or(Length::ZERO).max(Length::ZERO);
    let all = areas.into_iter().zip(edges).zip(ways);
    all.map(|((area, edge), (way, fall))| {
        let more = if edge > 0.0 { uphill } else { Length::ZERO };
        let steep = if way > 0.0 { fall / way } else { 0.0 };
        Catchment {
            surveyed: Area::m2(area),
            cut_edge: Length::m(edge),
            beyond: Length::m(edge) * uphill,
            way: Length::m(way) + more,
            fall: Length::m(fall) + more * steep,
        }
    })
    .collect()
}

/// A straight piece of a wall.
struct Face {
    wall: usize,
    from: Point,
    to: Point,
    facing: Vector,
}

struct Drainage {
    hill: Hill,
    faces: Vec<Face>,
    /// Faces that may stand in each triangle.
    within: Vec<Vec<usize>>,
}

impl Drainage {
    fn of(hill: Hill, faces: Vec<Face>) -> Drainage {
        let stands = |t: usize| {
            let ring = hill.ring(t);
            let span = |of: fn(&Point) -> f64| {
                ring.iter().map(of).fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| (a.min(v), b.max(v)))
            };
            let ((x0, x1), (y0, y1)) = (span(|p| p.x), span(|p| p.y));
            let meets = move |f: &Face| {
                f.from.x.max(f.to.x) >= x0 - TOUCH
                    && f.from.x.min(f.to.x) <= x1 + TOUCH
                    && f.from.y.max(f.to.y) >= y0 - TOUCH
                    && f.from.y.min(f.to.y) <= y1 + TOUCH
            };
            faces.iter().enumerate().filter(|(_, f)| meets(f)).map(|(i, _)| i).collect()
        };
        let within = (0..hill.triangles()).map(stands).collect();
        Drainage { hill, faces, within }
    }

    /// The wall that water from `p` in triangle `t` meets first.
    fn wall_below(&self, p: Point, t: usize) -> Option<usize> {
        let mut met = None;
        self.hill.run_down(p, t, |from, to, inside| {
            met = self.first_face(from, to, inside);
            if met.is_some() { Go::Stop } else { Go::On }
        });
        met
    }

    /// The wall met first from behind on the straight way between two points, in a triangle or along an edge.
    fn first_face(&self, from: Point, to: Point, inside: Option<usize>) -> Option<usize> {
        let mut first: Option<(f64, usize)> = None;
        let mut look = |face: &Face| {
            if let Some(t) = face.met(from, to)
                && first.is_none_or(|(least, _)| t < least)
            {
                first = Some((t, face.wall));
            }
        };
        match inside {
            Some(t) => self.within[t].iter().for_each(|i| look(&self.faces[*i])),
            None => self.faces.iter().for_each(look),
        }
        first.map(|f| f.1)
    }

    /// For each wall, length and fall of the longest way of water to it, from corners and middles of triangles (of every
    /// so many where there are more than a thousand).
    fn longest(&self, walls: usize) -> Vec<(f64, f64)> {
        let mut found = vec![(0.0, 0.0); walls];
        let every = self.hill.triangles().div_ceil(STARTS).max(1);
        for t in (0..self.hill.triangles()).step_by(every) {
            let [a, b, c] = self.hill.ring(t);
            let middle = Point::m((a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0);
            for start in [middle, a.towards(middle, 0.01), b.towards(middle, 0.01), c.towards(middle, 0.01)] {
                let (mut met, mut long, mut end) = (None, 0.0, start);
                self.hill.run_down(start, t, |from, to, inside| {
                    met = self.first_face(from, to, inside);
                    long += (to - from).length();
                    end = to;
                    if met.is_some() { Go::Stop } else { Go::On }
                });
                let Some(w) = met else { continue };
                if long > found[w].0 {
                    found[w] = (long, (self.hill.level(t, start) - self.hill.level_near(end, t)).max(0.0));
                }
            }
        }
        found
    }

    fn split(&self, t: usize, step: f64, areas: &mut [f64]) {
        let ring = self.hill.ring(t);
        let longest = (0..3).map(|i| (ring[(i + 1) % 3] - ring[i]).length()).fold(0.0, f64::max);
        let n = (longest / step).ceil().clamp(1.0, 100.0) as usize;
        let (u, v) = ((ring[1] - ring[0]) * (1.0 / n as f64), (ring[2] - ring[0]) * (1.0 / n as f64));
        let at = |i: usize, j: usize| ring[0] + u * i as f64 + v * j as f64;
        for i in 0..n {
            for j in 0..n - i {
                self.share_out([at(i, j), at(i + 1, j), at(i, j + 1)], t, HALVINGS, areas);
                if i + j + 2 <= n {
                    self.share_out([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)], t, HALVINGS, areas);
                }
            }
        }
    }

    fn share_out(&self, piece: [Point; 3], t: usize, halvings: u32, areas: &mut [f64]) {
        let [a, b, c] = piece;
        let middle = Point::m((a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0);
        let wall = self.wall_below(middle, t);
        let agree = || piece.iter().all(|p| self.wall_below(p.towards(middle, 0.01), t) == wall);
        if halvings == 0 || agree() {
            if let Some(w) = wall {
                areas[w] += 0.5 * (b - a).cross(c - a);
            }
            return;
        }
        let (ab, bc, ca) = (a.towards(b, 0.5), b.towards(c, 0.5), c.towards(a, 0.5));
        for part in [[a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]] {
            self.share_out(part, t, halvings - 1, areas);
        }
    }

    /// Each triangle as its middle goes, from the lowest up, so that a way ends where it enters a triangle already
    /// known.
    fn whole_triangles(&self, areas: &mut [f64]) {
        let mut order: Vec<usize> = (0..self.hill.triangles()).collect();
        order.sort_by(|a, b| self.hill.mean_level(*a).total_cmp(&self.hill.mean_level(*b)));
        let mut known: Vec<Option<Option<usize>>> = vec![None; order.len()];
        for t in order {
            let [a, b, c] = self.hill.ring(t);
            let middle = Point::m((a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0);
            let mut met = None;
            self.hill.run_down(middle, t, |from, to, inside| {
                if let Some(label) = inside.and_then(|i| known[i]) {
                    met = label;
                    return Go::Stop;
                }
                met = self.first_face(from, to, inside);
                if met.is_some() { Go::Stop } else { Go::On }
            });
            known[t] = Some(met);
            if let Some(w) = met {
                areas[w] += 0.5 * (b - a).cross(c - a);
            }
        }
    }

    /// Width of the outer edge, square to the flow, over which water comes in that runs to each wall.
    fn inflow(&self, step: f64, edges: &mut [f64]) {
        for edge in self.hill.inflows() {
            let [a, b] = edge.ends;
            let length = (b - a).length();
            let n = (length / step).ceil().clamp(1.0, 4000.0) as usize;
            let inwards = (b - a).unit().left() * 1e-6;
            for i in 0..n {
                let p = a.towards(b, (i as f64 + 0.5) / n as f64) + inwards;
                if let Some(w) = self.wall_below(p, edge.triangle) {
                    edges[w] += length / n as f64 * edge.share;
                }
            }
        }
    }
}

impl Face {
    /// How far along the way from `from` to `to` it is met from behind, both ends of the face included.
    fn met(&self, from: Point, to: Point) -> Option<f64> {
        let apart = |a: f64, b: f64, c: f64, d: f64| a.max(b) < c.min(d) || c.max(d) < a.min(b);
        if apart(from.x, to.x, self.from.x, self.to.x) || apart(from.y, to.y, self.from.y, self.to.y) {
            return None;
        }
        let (way, face) = (to - from, self.to - self.from);
        let det = way.cross(face);
        if way.dot(self.facing) <= 0.0 || det == 0.0 {
            return None;
        }
        let t = (self.from - from).cross(face) / det;
        let u = (self.from - from).cross(way) / det;
        let inside = |v: f64| (-1e-9..=1.0 + 1e-9).contains(&v);
        (inside(t) && inside(u)).then_some(t)
    }
}

/// The straight pieces of a wall: stations in one line (to a millimetre) are taken together.
fn faces((wall, line): (usize, &WallLine)) -> Vec<Face> {
    let s = &line.stations;
    let mut found = vec![];
    let mut start = 0;
    while start + 1 < s.len() {
        let mut end = start + 1;
        let straight =
            |e: usize| (start + 1..e).all(|k| distance_to_segment(s[k].at, s[start].at, s[e].at) <= Length::mm(1.0));
        while end + 1 < s.len() && straight(end + 1) {
            end += 1;
        }
        let (from, to) = (s[start].at, s[end].at);
        let across = (to - from).unit().left();
        let towards: f64 = s[start..=end].iter().map(|k| k.facing.dot(across)).sum();
        if (to - from).length() > 0.0 {
            found.push(Face { wall, from, to, facing: across * if towards < 0.0 { -1.0 } else { 1.0 } });
        }
        start = end;
    }
    found
}
