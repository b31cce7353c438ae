//! What does the ground look like to a circle: heights, weights, water, always rising to the right?

use groundhold_quantity::{Angle, Point, WATER, math};

use super::{Pore, Section};
/// A place in the section, metres.
pub(super) type At = (f64, f64);

pub(super) struct Soil {
    pub gamma: f64,
    pub gamma_sat: f64,
    pub tan_phi: f64,
    pub c: f64,
    pub top: Vec<At>,
}

/// A straight piece of a line: its height where the piece begins, and its slope.
#[derive(Clone, Copy)]
struct Straight {
    at: f64,
    slope: f64,
}

impl Straight {
    /// The piece of a line over the middle of a stretch; level beyond the line's ends.
    fn of(line: &[At], from: f64, to: f64) -> Straight {
        let middle = 0.5 * (from + to);
        for pair in line.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            if a.0 <= middle && middle <= b.0 && b.0 > a.0 {
                let slope = (b.1 - a.1) / (b.0 - a.0);
                return Straight { at: a.1 + slope * (from - a.0), slope };
            }
        }
        Straight { at: height(line, middle), slope: 0.0 }
    }
    fn height(self, dx: f64) -> f64 {
        self.at + self.slope * dx
    }
}

/// A stretch of the section in which every line is straight, worked out once for all circles.
struct Stretch {
    from: f64,
    to: f64,
    ground: Straight,
    table: Option<Straight>,
    /// Tops of the second and further soils.
    tops: Vec<Straight>,
    load: f64,
}

pub(super) enum Water {
    Dry,
    Ratio(f64),
    Table(Vec<At>),
}

/// The section turned so that it rises to the right.
pub(super) struct Profile {
    pub ground: Vec<At>,
    pub soils: Vec<Soil>,
    pub water: Water,
    /// (q, from, to).
    pub loads: Vec<(f64, f64, f64)>,
    pub hard: f64,
    pub crack: f64,
    pub crack_water: f64,
    /// Slices end where a stretch does.
    stretches: Vec<Stretch>,
    mirrored: bool,
}

/// A circle from where it comes out to where it begins.
#[derive(Debug, Clone, Copy)]
pub(super) struct Arc {
    pub exit: At,
    pub entry: At,
    pub centre: At,
    pub radius: f64,
    /// One over the radius.
    pub curvature: f64,
}

/// One slice above an arc.
#[derive(Debug, Clone, Copy)]
pub(super) struct Slice<N> {
    pub weight: N,
    pub width: N,
    pub pore: N,
    pub sin: N,
    pub cos: N,
    pub tan_phi: N,
    pub c: N,
}

/// Slices of every circle, at least.
const SLICES: f64 = 40.0;

impl Profile {
    /// `radians` reads a friction angle: a sheet holds it in radians already, the typed way goes through degrees to the
    /// same bits.
    pub(super) fn of(section: &Section, radians: fn(Angle) -> f64) -> Result<Profile, String> {
        let ground = line(&section.ground, "the ground line", 2)?;
        if section.layers.is_empty() {
            return Err("there is no layer of soil in the section".into());
        }
        let mut soils = vec![];
        for (i, layer) in section.layers.iter().enumerate() {
            let top = if i == 0 { vec![] } else { line(&layer.top, "the top of a layer", 1)? };
            let s = &layer.soil;
            soils.push(Soil {
                gamma: s.unit_weight.to_kn_per_m3(),
                gamma_sat: s.unit_weight_saturated.to_kn_per_m3(),
                tan_phi: math::tan(radians(s.phi)),
                c: s.cohesion.to_kpa(),
                top,
            });
        }
        let water = match &section.pore {
            Pore::Dry => Water::Dry,
            Pore::Ratio(r) => Water::Ratio(*r),
            Pore::Table(points) => Water::Table(line(points, "the water table", 1)?),
        };
        let (first, last) = (ground[0], ground[ground.len() - 1]);
        let mut profile = Profile {
            ground,
            soils,
            water,
            loads: section.loads.iter().map(|l| (l.value.to_kpa(), l.from.to_m(), l.to.to_m())).collect(),
            hard: section.hard.map_or(f64::NEG_INFINITY, |l| l.to_m()),
            crack: section.crack.map_or(0.0, |c| c.depth.to_m()),
            crack_water: section.crack.map_or(0.0, |c| c.water.to_m()),
            stretches: vec![],
            mirrored: first.1 > last.1,
        };
        if profile.crack_water > profile.crack {
            return Err("the water in the crack stands higher than the crack is deep".into());
        }
        if profile.mirrored {
            profile.mirror();
        }
        profile.stretches = profile.all_stretches();
        Ok(profile)
    }
    fn mirror(&mut self) {
        let turn = |points: &mut Vec<At>| {
            points.reverse();
            points.iter_mut().for_each(|p| p.0 = -p.0);
        };
        turn(&mut self.ground);
        self.soils.iter_mut().for_each(|s| turn(&mut s.top));
        if let Water::Table(t) = &mut self.water {
            turn(t);
        }
        self.loads.iter_mut().for_each(|l| *l = (l.0, -l.2, -l.1));
    }
    fn all_stretches(&self) -> Vec<Stretch> {
        let (lo, hi) = self.ends();
        let breaks = self.breaks();
        let inside = breaks.windows(2).filter(|w| lo <= w[0] && w[1] <= hi);
        inside.map(|w| self.stretch(w[0], w[1])).collect()
    }
    fn stretch(&self, from: f64, to: f64) -> Stretch {
        let middle = 0.5 * (from + to);
        Stretch {
            from,
            to,
            ground: Straight::of(&self.ground, from, to),
            table: match &self.water {
                Water::Table(t) => Some(Straight::of(t, from, to)),
                _ => None,
            },
            tops: self.soils[1..].iter().map(|s| Straight::of(&s.top, from, to)).collect(),
            load: self.loads.iter().filter(|l| l.1 < middle && middle < l.2).map(|l| l.0).sum(),
        }
    }
    fn breaks(&self) -> Vec<f64> {
        let mut xs: Vec<f64> = self.ground.iter().chain(self.soils.iter().flat_map(|s| &s.top)).map(|p| p.0).collect();
        if let Water::Table(t) = &self.water {
            xs.extend(t.iter().map(|p| p.0));
        }
        xs.extend(self.loads.iter().flat_map(|l| [l.1, l.2]).filter(|x| x.is_finite()));
        xs.sort_by(f64::total_cmp);
        xs.dedup();
        xs
    }
    /// From the section's own x to the turned one; the same the other way.
    pub(super) fn inward(&self, x: f64) -> f64 {
        if self.mirrored { -x } else { x }
    }
    pub(super) fn outward(&self, p: At) -> Point {
        Point::m(self.inward(p.0), p.1)
    }
    pub(super) fn ends(&self) -> (f64, f64) {
        (self.ground[0].0, self.ground[self.ground.len() - 1].0)
    }
    /// Where a slip comes out at this x: the lowest ground there.
    pub(super) fn exit_at(&self, x: f64) -> At {
        let on_face = self.ground.iter().filter(|p| p.0 == x).map(|p| p.1);
        (x, on_face.fold(None, |a: Option<f64>, y| Some(a.map_or(y, |a| a.min(y)))).unwrap_or(height(&self.ground, x)))
    }
    /// Where a slip begins at this x: the highest ground there, less the crack.
    pub(super) fn entry_at(&self, x: f64) -> At {
        let on_face = self.ground.iter().filter(|p| p.0 == x).map(|p| p.1);
        let top = on_face.fold(None, |a: Option<f64>, y| Some(a.map_or(y, |a| a.max(y))));
        (x, top.unwrap_or(height(&self.ground, x)) - self.crack)
    }
    /// The arc of this radius between two x, its centre above.
    pub(super) fn arc(&self, exit: f64, entry: f64, radius: f64) -> Option<Arc> {
        let (lo, hi) = self.ends();
        if !(lo <= exit && exit < entry && entry <= hi) {
            return None;
        }
        arc_between(self.exit_at(exit), self.entry_at(entry), radius)
    }
    /// Cuts the ground above an arc into slices; false where the arc is no possible slip. `deepest` is the greatest
    /// depth below ground met.
    pub(super) fn slices(&self, arc: &Arc, out: &mut Vec<Slice<f64>>) -> Option<f64> {
        self.slices_of(arc, SLICES, out)
    }
    /// The same in about `count` slices.
    pub(super) fn slices_of(&self, arc: &Arc, count: f64, out: &mut Vec<Slice<f64>>) -> Option<f64> {
        out.clear();
        let overhangs = arc.centre.1 < arc.entry.1 || arc.centre.1 < arc.exit.1;
        let bottoms_out = arc.exit.0 < arc.centre.0 && arc.centre.1 - arc.radius < self.hard - 1e-9;
        if overhangs || bottoms_out || arc.exit.1 < self.hard - 1e-9 {
            return None;
        }
        let per_m = count / (arc.entry.0 - arc.exit.0);
        let first = self.stretches.partition_point(|s| s.to <= arc.exit.0);
        let mut deepest = 0.0_f64;
        for stretch in &self.stretches[first..] {
            if stretch.from >= arc.entry.0 {
                break;
            }
            let (from, to) = (stretch.from.max(arc.exit.0), stretch.to.min(arc.entry.0));
            let n = (per_m * (to - from)).ceil().max(1.0);
            let b = (to - from) / n;
            for i in 0..n as usize {
                let (slice, depth) = self.slice(arc, stretch, from + (i as f64 + 0.5) * b, b)?;
                deepest = deepest.max(depth);
                out.push(slice);
            }
        }
        Some(deepest)
    }
    fn slice(&self, arc: &Arc, stretch: &Stretch, x: f64, b: f64) -> Option<(Slice<f64>, f64)> {
        let sin = (x - arc.centre.0) * arc.curvature;
        let cos = (1.0 - sin * sin).max(0.0).sqrt();
        let y = arc.centre.1 - arc.radius * cos;
        let dx = x - stretch.from;
        let top = stretch.ground.height(dx);
        if top - y < -1e-9 {
            return None;
        }
        let table = stretch.table.map_or(f64::NEG_INFINITY, |t| t.height(dx).min(top));
        let (mut above, mut at_base) = (0.0, &self.soils[0]);
        let mut upper = top;
        for (i, soil) in self.soils.iter().enumerate() {
            let lower = stretch.tops.get(i).map_or(y, |next| next.height(dx).min(upper).max(y));
            let wet = (table.min(upper) - lower).max(0.0);
            above += soil.gamma * (upper - lower - wet) + soil.gamma_sat * wet;
            at_base = soil;
            upper = lower;
            if upper <= y {
                break;
            }
        }
        let pore = match &self.water {
            Water::Dry => 0.0,
            Water::Ratio(r) => r * above,
            Water::Table(_) => WATER.to_kn_per_m3() * (table - y).max(0.0),
        };
        let weight = (above + stretch.load) * b;
        let slice = Slice { weight, width: b, pore, sin, cos, tan_phi: at_base.tan_phi, c: at_base.c };
        Some((slice, top - y))
    }
    /// Driving force at the circle from water in the crack, per metre run: moment about the centre over the radius.
    pub(super) fn crack_push(&self, arc: &Arc) -> f64 {
        let w = self.crack_water;
        0.5 * WATER.to_kn_per_m3() * w * w * (arc.centre.1 - (arc.entry.1 + w / 3.0)) / arc.radius
    }
}

/// The arc of this radius between two places, its centre above.
pub(super) fn arc_between(a: At, b: At, radius: f64) -> Option<Arc> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let chord = math::hypot(dx, dy);
    let under = radius * radius - chord * chord / 4.0;
    if under < 0.0 || chord == 0.0 {
        return None;
    }
    let up = under.sqrt();
    let centre = (0.5 * (a.0 + b.0) - up * dy / chord, 0.5 * (a.1 + b.1) + up * dx / chord);
    Some(Arc { exit: a, entry: b, centre, radius, curvature: 1.0 / radius })
}

/// Height of a line at x, level beyond its ends.
pub(super) fn height(line: &[At], x: f64) -> f64 {
    if x <= line[0].0 {
        return line[0].1;
    }
    for pair in line.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if x <= b.0 {
            return if b.0 > a.0 { a.1 + (b.1 - a.1) * ((x - a.0) / (b.0 - a.0)) } else { b.1 };
        }
    }
    line[line.len() - 1].1
}

fn line(points: &[Point], what: &str, least: usize) -> Result<Vec<At>, String> {
    if points.len() < least {
        return Err(format!("{what} has {} points, expected at least {least}", points.len()));
    }
    if let Some(p) = points.iter().find(|p| !p.x.is_finite() || !p.y.is_finite()) {
        return Err(format!("{what} has a point {}, {} that is not a place", p.x, p.y));
    }
    if let Some(w) = points.windows(2).find(|w| w[1].x < w[0].x) {
        return Err(format!("{what} turns back at x = {} m; its x should never fall", w[1].x));
    }
    Ok(points.iter().map(|p| (p.x, p.y)).collect())
}
