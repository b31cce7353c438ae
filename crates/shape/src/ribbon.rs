//! Which ground does a way of constant width take, with its long fall, its fall across and its landings?
//!
//! The way is a row of cross-sections. Between two of them it slopes along the way; at a sharp corner it is level from
//! where the one straight ends to where the next begins. Two sections that follow each other span one plane where their
//! ends lie in one, else triangles: neighbours share their whole border, so nothing gapes.

use groundhold_quantity::{Length, Level, Point, Vector, distance, math};
use groundhold_surface::{Facet, Plane};

use crate::outline::{anticlockwise, area, mitre};
use crate::{Course, Landings};

/// A way along a path, before its levels are known.
pub(crate) struct Ribbon {
    /// The middle of the path.
    pub path: Vec<Point>,
    half: f64,
    sections: Vec<Section>,
    /// Where the landings lie, from and to along the run that slopes and the landings together, metres.
    landings: Vec<(f64, f64)>,
    /// Fall across, towards the right positive, and the one with which the way ends.
    across: (f64, f64),
}

/// A cross-section.
#[derive(Debug, Clone, Copy)]
struct Section {
    left: Point,
    right: Point,
    /// Run up to here, level turns not counted, metres.
    run: f64,
    /// At the end of a level turn: its outer corner, and true where it turns left.
    turn: Option<(Point, bool)>,
}

/// How far before its end the fall across goes over into that of the pad, metres, and at most which share of the run.
const GOES_OVER: (f64, f64) = (1.0, 0.25);

impl Ribbon {
    /// Along a course; `across` falls to the right where positive.
    pub fn new(
        course: &Course,
        half: f64,
        landings: Option<(Landings, Length)>,
        across: Option<(f64, f64)>,
    ) -> Result<Ribbon, String> {
        let path = course.points.clone();
        let corner = course.corners();
        let mut r = Ribbon { path, half, sections: vec![], landings: vec![], across: across.unwrap_or_default() };
        r.cross_sections(&corner)?;
        r.turns_with_room()?;
        if let Some((l, rise)) = landings {
            r.place_landings(l, rise.to_m())?;
        }
        if across.is_some_and(|(all, end)| all != end) {
            let run = r.run_with_landings();
            r.cut_at(run - GOES_OVER.0.min(GOES_OVER.1 * run));
        }
        Ok(r)
    }

    fn along(&self, i: usize) -> Vector {
        (self.path[i + 1] - self.path[i]).unit()
    }

    fn cross_sections(&mut self, corner: &[bool]) -> Result<(), String> {
        let n = self.path.len();
        let section = |at: Point, off: Vector, run: f64| Section { left: at + off, right: at - off, run, turn: None };
        self.sections.push(section(self.path[0], self.along(0).left() * self.half, 0.0));
        let mut run = 0.0;
        // From where the stretch slopes.
        let mut from = self.path[0];
        for (i, sharp) in corner.iter().enumerate().take(n).skip(1) {
            let (u, p) = (self.along(i - 1), self.path[i]);
            if i == n - 1 {
                run += self.stretch(from, p, u)?;
                self.sections.push(section(p, u.left() * self.half, run));
                break;
            }
            let v = self.along(i);
            let turn = math::atan2(u.cross(v), u.dot(v));
            if !sharp {
                run += self.stretch(from, p, u)?;
                self.sections.push(section(p, mitre(u.left(), v.left()) * self.half, run));
                from = p;
                continue;
            }
            if turn.abs() > 2.1 {
                return Err(format!("its path turns back on itself at x {:.2} m, y {:.2} m", p.x, p.y));
            }
            let setback = self.half * math::tan(turn.abs() / 2.0);
            let (a, b) = (p - u * setback, p + v * setback);
            run += self.stretch(from, a, u)?;
            self.sections.push(section(a, u.left() * self.half, run));
            if setback > 1e-6 {
                let outer = a + u * setback + u.left() * if turn > 0.0 { -self.half } else { self.half };
                let mut end = section(b, v.left() * self.half, run);
                end.turn = Some((outer, turn > 0.0));
                self.sections.push(end);
            }
            from = b;
        }
        Ok(())
    }

    /// Length of a sloping stretch.
    fn stretch(&self, a: Point, b: Point, u: Vector) -> Result<f64, String> {
        let long = (b - a).dot(u);
        if long < 0.01 {
            return Err(format!(
                "the stretch of {:.2} m from x {:.2} m, y {:.2} m is too short for its turns at a width of {:.2} m",
                distance(a, b).to_m(),
                a.x,
                a.y,
                2.0 * self.half
            ));
        }
        Ok(long)
    }

    /// Both edges go forward everywhere.
    fn turns_with_room(&self) -> Result<(), String> {
        for w in self.sections.windows(2).filter(|w| w[1].turn.is_none()) {
            let middle = |s: &Section| s.left.towards(s.right, 0.5);
            let way = middle(&w[1]) - middle(&w[0]);
            if (w[1].left - w[0].left).dot(way) <= 0.0 || (w[1].right - w[0].right).dot(way) <= 0.0 {
                let at = middle(&w[0]);
                return Err(format!(
                    "its path bends with a radius of less than half its width at x {:.2} m, y {:.2} m; expected a radius above {:.2} m",
                    at.x, at.y, self.half
                ));
            }
        }
        Ok(())
    }

    fn run_with_landings(&self) -> f64 {
        self.sections.last().map_or(0.0, |s| s.run)
    }
    /// Length in plan on which it rises.
    pub fn run(&self) -> f64 {
        self.run_with_landings() - self.landings.iter().map(|(a, b)| b - a).sum::<f64>()
    }
    /// How many landings it has, level turns not counted.
    pub fn landings(&self) -> usize {
        self.landings.len()
    }

    /// Landings at equal rises, so that none of the rises between is larger than wished.
    fn place_landings(&mut self, l: Landings, rise: f64) -> Result<(), String> {
        let (every, long) = (l.every.to_m(), l.length.to_m());
        if !(every >= 0.05 && (0.1..=50.0).contains(&long)) {
            return Err(format!(
                "its landings are {long:.2} m long after every {every:.2} m, expected 0.1 m to 50 m after at least 0.05 m"
            ));
        }
        let count = ((rise.abs() / every - 1e-9).ceil().clamp(1.0, 200.0) as usize) - 1;
        let run = self.run_with_landings();
        let each = (run - long * count as f64) / (count + 1) as f64;
        if each < 0.05 {
            return Err(format!("{count} landings of {long:.2} m leave nothing of its run of {run:.2} m to rise on"));
        }
        for k in 0..count {
            let from = (each + long) * k as f64 + each;
            self.landings.push((from, from + long));
            self.cut_at(from);
            self.cut_at(from + long);
        }
        Ok(())
    }

    /// Puts a section where there is none yet.
    fn cut_at(&mut self, run: f64) {
        let Some(i) = self.sections.iter().position(|s| s.run > run + 1e-6) else { return };
        let Some(before) = i.checked_sub(1) else { return };
        let (a, b) = (self.sections[before], self.sections[i]);
        if run - a.run < 1e-6 {
            return;
        }
        let t = (run - a.run) / (b.run - a.run);
        let new = Section { left: a.left.towards(b.left, t), right: a.right.towards(b.right, t), run, turn: None };
        self.sections.insert(i, new);
    }

    /// Levels of the middle at each section.
    fn levels(&self, foot: Level, top: Level) -> Vec<Level> {
        let g = (top - foot).to_m() / self.run();
        let flat = |run: f64| self.landings.iter().map(|(a, b)| (run.min(*b) - a).max(0.0)).sum::<f64>();
        let mut all: Vec<Level> = self.sections.iter().map(|s| foot + Length::m(g * (s.run - flat(s.run)))).collect();
        if let Some(last) = all.last_mut() {
            *last = top;
        }
        all
    }

    /// Levels of left and right end at each section.
    fn ends(&self, foot: Level, top: Level) -> Vec<[Level; 2]> {
        let run = self.run_with_landings();
        let over = GOES_OVER.0.min(GOES_OVER.1 * run);
        let (all, end) = self.across;
        let across = |s: &Section| {
            let t = if over > 0.0 { ((s.run - (run - over)) / over).clamp(0.0, 1.0) } else { 0.0 };
            all + (end - all) * t
        };
        let side = |(s, z): (&Section, Level)| {
            let d = Length::m(across(s) * self.half);
            [z + d, z - d]
        };
        self.sections.iter().zip(self.levels(foot, top)).map(side).collect()
    }

    /// Its surface.
    pub fn facets(&self, foot: Level, top: Level) -> Vec<Facet> {
        let ends = self.ends(foot, top);
        let mut out = vec![];
        for i in 1..self.sections.len() {
            let (a, b) = (&self.sections[i - 1], &self.sections[i]);
            let ([al, ar], [bl, br]) = (ends[i - 1], ends[i]);
            match b.turn {
                Some((outer, left)) => {
                    // Inner end shared by both sections; the outer corner lies as high as the outer ends.
                    let ring = if left {
                        vec![(a.left, al), (a.right, ar), (outer, ar), (b.right, br)]
                    } else {
                        vec![(a.right, ar), (a.left, al), (outer, al), (b.left, bl)]
                    };
                    panel(ring, &mut out);
                }
                None => panel(vec![(a.right, ar), (b.right, br), (b.left, bl), (a.left, al)], &mut out),
            }
        }
        out
    }

    /// The edge anticlockwise: up the right side, across the top, down the left side.
    pub fn edge(&self, foot: Level, top: Level) -> Vec<(Point, Level)> {
        let mut right: Vec<(Point, Level)> = vec![];
        let mut left: Vec<(Point, Level)> = vec![];
        let put = |side: &mut Vec<(Point, Level)>, p: Point, z: Level| {
            if side.last().is_none_or(|(q, _)| (*q - p).length() > 1e-9) {
                side.push((p, z));
            }
        };
        for (s, [l, r]) in self.sections.iter().zip(self.ends(foot, top)) {
            match s.turn {
                Some((outer, true)) => put(&mut right, outer, r),
                Some((outer, false)) => put(&mut left, outer, l),
                None => {}
            }
            put(&mut right, s.right, r);
            put(&mut left, s.left, l);
        }
        let (right, mut left) = (straightened(right), straightened(left));
        left.reverse();
        let mut edge = right;
        edge.extend(left);
        edge
    }
}

/// Without points in a straight stretch of even slope.
fn straightened(side: Vec<(Point, Level)>) -> Vec<(Point, Level)> {
    let mut out: Vec<(Point, Level)> = vec![];
    for (i, (p, z)) in side.iter().copied().enumerate() {
        if let (Some((a, za)), Some((b, zb))) = (out.last().copied(), side.get(i + 1).copied()) {
            let (u, v) = (p - a, b - a);
            let t = u.dot(v) / v.dot(v).max(1e-12);
            let bent = u.cross(v).abs() / v.length().max(1e-12);
            let off = (z - za - (zb - za) * t).to_m().abs();
            if bent < 1e-9 && off < 1e-9 {
                continue;
            }
        }
        out.push((p, z));
    }
    out
}

/// One facet where the corners lie in a plane, else triangles.
fn panel(ring: Vec<(Point, Level)>, out: &mut Vec<Facet>) {
    let plan: Vec<Point> = ring.iter().map(|r| r.0).collect();
    if area(&plan).abs() < 1e-10 {
        return;
    }
    if ring.iter().all(|r| r.1 == ring[0].1) {
        out.push(Facet { ring: anticlockwise(plan), plane: Plane::level(ring[0].1) });
        return;
    }
    let of = |a: usize, b: usize, c: usize| Plane::through([ring[a], ring[b], ring[c]]);
    match of(0, 1, 2) {
        Some(plane) if (plane.level_at(ring[3].0) - ring[3].1).to_m().abs() < 1e-9 => {
            out.push(Facet { ring: anticlockwise(plan), plane });
        }
        _ => {
            // Cut along the higher diagonal, so that a ridge and not a hollow lies there; where neither is higher, about
            // the middle. So a mirrored way is cut alike.
            let mean = |a: usize, b: usize| ring[a].1 + (ring[b].1 - ring[a].1) * 0.5;
            let over = (mean(0, 2) - mean(1, 3)).to_m();
            let mut cut = |three: [(Point, Level); 3]| {
                if let Some(plane) = Plane::through(three) {
                    out.push(Facet { ring: anticlockwise(three.map(|c| c.0).to_vec()), plane });
                }
            };
            if over.abs() > 1e-9 {
                let halves = if over > 0.0 { [[0, 1, 2], [0, 2, 3]] } else { [[0, 1, 3], [1, 2, 3]] };
                halves.into_iter().for_each(|k| cut(k.map(|i| ring[i])));
            } else {
                let middle = (plan[0].towards(plan[2], 0.5).towards(plan[1].towards(plan[3], 0.5), 0.5), mean(0, 2));
                (0..4).for_each(|i| cut([middle, ring[i], ring[(i + 1) % 4]]));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Alignment, Bend, Way};

    fn near_in_a_plane(facets: &[Facet], edge: &[(Point, Level)]) {
        for (p, z) in edge {
            let near = facets
                .iter()
                .filter(|f| f.contains(*p))
                .map(|f| (f.plane.level_at(*p) - *z).to_m().abs())
                .fold(f64::INFINITY, f64::min);
            assert!(near < 1e-9, "{p:?} {near}");
        }
    }

    #[test]
    fn a_turned_strip_has_the_area_of_its_parts_and_a_closed_edge() {
        let path = [(0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (9.0, 7.0)].map(|(x, y)| Point::m(x, y)).to_vec();
        let s = Ribbon::new(&Alignment::from(path).course().unwrap(), 0.5, None, None).unwrap();
        let (foot, top) = (Level::m(10.0), Level::m(11.0));
        let facets = s.facets(foot, top);
        let sum: f64 = facets.iter().map(|f| area(&f.ring)).sum();
        let edge = s.edge(foot, top);
        let ring: Vec<Point> = edge.iter().map(|(p, _)| *p).collect();
        assert!((sum - area(&ring)).abs() < 1e-9, "{sum} {}", area(&ring));
        assert!(facets.len() == 5 && facets.iter().all(|f| area(&f.ring) > 0.0));
        near_in_a_plane(&facets, &edge);
        let setbacks = 0.5 + 0.5 * math::tan(math::atan2(4.0, 3.0) / 2.0 - 0.0);
        assert!(s.run() < 14.0 - 2.0 * 0.5 && setbacks > 0.5);
    }

    #[test]
    fn a_curved_way_with_a_fall_across_and_landings_is_continuous_and_ends_in_the_pads_plane() {
        let line = Alignment {
            points: vec![Point::m(0.0, 0.0), Point::m(6.0, 0.0), Point::m(6.0, 8.0)],
            bends: vec![Bend { at: 1, way: Way::Straight, round: Length::m(3.0), ease: Length::ZERO }],
        };
        let landings = Landings { every: Length::m(0.3), length: Length::m(1.2) };
        let course = line.course().unwrap();
        let s = Ribbon::new(&course, 0.6, Some((landings, Length::m(0.8))), Some((0.025, 0.0))).unwrap();
        assert_eq!(s.landings(), 2);
        let (foot, top) = (Level::m(10.0), Level::m(10.8));
        assert!((s.run() - (course.length().to_m() - 2.4)).abs() < 1e-9);
        let facets = s.facets(foot, top);
        let sum: f64 = facets.iter().map(|f| area(&f.ring)).sum();
        let edge = s.edge(foot, top);
        let ring: Vec<Point> = edge.iter().map(|(p, _)| *p).collect();
        assert!((sum - area(&ring)).abs() < 1e-6, "{sum} {}", area(&ring));
        near_in_a_plane(&facets, &edge);
        // Left edge of the foot is higher by the fall across the width, both ends of the top are level with the pad.
        let z = |k: usize| edge[k].1.to_m();
        assert!((z(edge.len() - 1) - z(0) - 0.03).abs() < 1e-9);
        let tops = edge.iter().filter(|(p, _)| p.y > 8.0 - 1e-9).map(|(_, z)| (*z - top).to_m().abs());
        assert!(tops.fold(0.0, f64::max) < 1e-9);
    }
}
