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
    /// Where slices must end.
    breaks: Vec<f64>,
    mirrored: bool,
}

/// A circle from where it comes out to where it begins.
#[derive(Debug, Clone, Copy)]
pub(super) struct Arc {
    pub exit: At,
    pub entry: At,
    pub centre: At,
    pub radius: f64,
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
            breaks: vec![],
            mirrored: first.1 > last.1,
        };
        if profile.crack_water > profile.crack {
            return Err("the water in the crack stands higher than the crack is deep".into());
        }
        if profile.mirrored {
            profile.mirror();
        }
        profile.breaks = profile.all_breaks();
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
    fn all_breaks(&self) -> Vec<f64> {
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
        let (a, b) = (self.exit_at(exit), self.entry_at(entry));
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let chord = math::hypot(dx, dy);
        let under = radius * radius - chord * chord / 4.0;
        if under < 0.0 || chord == 0.0 {
            return None;
        }
        let up = under.sqrt();
        let centre = (0.5 * (a.0 + b.0) - up * dy / chord, 0.5 * (a.1 + b.1) + up * dx / chord);
        Some(Arc { exit: a, entry: b, centre, radius })
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
        let total = arc.entry.0 - arc.exit.0;
        let mut deepest = 0.0_f64;
        let mut from = arc.exit.0;
        let inner = self.breaks.iter().copied().filter(|x| arc.exit.0 < *x && *x < arc.entry.0);
        for to in inner.chain([arc.entry.0]) {
            let n = (count * (to - from) / total).ceil().max(1.0) as usize;
            let b = (to - from) / n as f64;
            for i in 0..n {
                let x = from + (i as f64 + 0.5) * b;
                let (slice, depth) = self.slice(arc, x, b)?;
                deepest = deepest.max(depth);
                out.push(slice);
            }
            from = to;
        }
        Some(deepest)
    }
    fn slice(&self, arc: &Arc, x: f64, b: f64) -> Option<(Slice<f64>, f64)> {
        let sin = (x - arc.centre.0) / arc.radius;
        let cos = (1.0 - sin * sin).max(0.0).sqrt();
        let y = arc.centre.1 - arc.radius * cos;
        let top = height(&self.ground, x);
        if top - y < -1e-9 {
            return None;
        }
        let table = match &self.water {
            Water::Table(t) => height(t, x).min(top),
            _ => f64::NEG_INFINITY,
        };
        let (mut soil_weight, mut at_base) = (0.0, &self.soils[0]);
        let mut upper = top;
        for (i, soil) in self.soils.iter().enumerate() {
            let lower = self.soils.get(i + 1).map_or(y, |next| height(&next.top, x).min(upper).max(y));
            let wet = (table.min(upper) - lower).max(0.0);
            soil_weight += (soil.gamma * (upper - lower - wet) + soil.gamma_sat * wet) * b;
            at_base = soil;
            upper = lower;
            if upper <= y {
                break;
            }
        }
        let load: f64 = self.loads.iter().filter(|l| l.1 < x && x < l.2).map(|l| l.0 * b).sum();
        let pore = match &self.water {
            Water::Dry => 0.0,
            Water::Ratio(r) => r * soil_weight / b,
            Water::Table(_) => WATER.to_kn_per_m3() * (table - y).max(0.0),
        };
        let slice =
            Slice { weight: soil_weight + load, width: b, pore, sin, cos, tan_phi: at_base.tan_phi, c: at_base.c };
        Some((slice, top - y))
    }
    /// Driving force at the circle from water in the crack, per metre run: moment about the centre over the radius.
    pub(super) fn crack_push(&self, arc: &Arc) -> f64 {
        let w = self.crack_water;
        0.5 * WATER.to_kn_per_m3() * w * w * (arc.centre.1 - (arc.entry.1 + w / 3.0)) / arc.radius
    }
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
