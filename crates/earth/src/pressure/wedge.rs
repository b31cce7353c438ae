//! Which wedge pushes hardest, when the ground behind is broken, loaded in strips, or has cohesion?

use groundhold_quantity::{Angle, Length, LineForce, math};
use groundhold_working::{
    Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working,
};

use super::{Spread, Strip, thrust};
use crate::rows;
use crate::soil::Soil;

/// A wall, and the ground behind it as a line of straight pieces.
#[derive(Debug, Clone, PartialEq)]
pub struct Broken {
    /// One soil.
    pub soil: Soil,
    /// From the top of the back face to its heel.
    pub height: Length,
    /// Points of the ground as (distance behind the top of the back face, rise above it), first (0, 0), distance rising.
    /// The last piece goes on at its slope.
    pub ground: Vec<(Length, Length)>,
    /// δ.
    pub wall_friction: Angle,
    /// θ: back face from vertical, positive when the soil rests on it.
    pub lean: Angle,
    /// Loads on the ground; whether they stay makes no difference here.
    pub strips: Vec<Strip>,
    /// Depth of an open crack in the ground, dry.
    pub crack: Length,
    /// True to count cohesion on the slip plane.
    pub counts_cohesion: bool,
}

/// The wedge that pushes hardest.
#[derive(Debug, Clone, PartialEq)]
pub struct Wedge {
    /// Thrust in its own direction, δ + θ below horizontal.
    pub thrust: LineForce,
    /// Its horizontal part.
    pub horizontal: LineForce,
    /// Its part down the wall.
    pub vertical: LineForce,
    /// Slip plane above horizontal.
    pub plane: Angle,
    /// Where the plane meets the ground: distance behind the top of the back face.
    pub reach: Length,
    /// Height above the heel at which a line through the wedge's centre of weight, parallel to the plane, meets the back.
    pub arm: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// In m, kN and radians. Heel at the origin, x into the soil.
pub(super) struct Case {
    pub(super) height: f64,
    pub(super) gamma: f64,
    pub(super) phi: f64,
    pub(super) c: f64,
    pub(super) delta: f64,
    pub(super) lean: f64,
    pub(super) crack: f64,
    /// From the top of the back face on, with a far last point.
    ground: Vec<(f64, f64)>,
    /// (q, from, to), x from the top of the back face.
    strips: Vec<(f64, f64, f64)>,
}

/// One candidate.
#[derive(Clone, Copy)]
pub(super) struct Cut {
    pub(super) plane: f64,
    pub(super) weight: f64,
    pub(super) length: f64,
    pub(super) reach: f64,
    /// Where the plane ends above the heel, at the foot of the crack.
    pub(super) end: f64,
    /// Centre of weight, loads counted.
    centre: (f64, f64),
}

/// Thrust of one wedge on a plane at ρ, from the triangle of forces.
///
/// # Source
/// Coulomb (1776); with cohesion on the plane as in NAVFAC DM-7.02 (1986), chapter 3 (place from memory).
/// # Symbols
/// | W, C | weight with loads, cohesion times length of the plane | kN/m | |
/// | ρ, φ | plane above horizontal, friction angle | angle | ρ > φ |
/// | ω | direction of the thrust below horizontal, δ + θ | angle | |
/// # Gives
/// P = (W sin(ρ − φ) − C cos φ)/cos(ρ − φ − ω).
/// # Not for
/// Curved slips: where δ is large and the wall pushes the soil.
/// # Errors
/// None here.
/// # By hand
/// Smooth wall, ρ = 45° + φ/2: P = ½ K_a γ H² (case TW-01).
fn thrust_of<N: Number>(weight: N, cohesion: N, plane: N, phi: N, direction: N) -> N {
    let slip = plane - phi;
    ((weight * slip.sin() - cohesion * phi.cos()) / (slip - direction).cos()).named("P", Unit::KN_M)
}

impl Case {
    fn top(&self) -> (f64, f64) {
        (-self.height * math::tan(self.lean), self.height)
    }
    /// Ground in heel coordinates, lowered by the crack.
    fn lowered(&self, i: usize) -> (f64, f64) {
        let (t, g) = (self.top(), self.ground[i]);
        (t.0 + g.0, t.1 + g.1 - self.crack)
    }
    /// Cuts along a plane through the heel, where it reaches the ground.
    fn cut(&self, plane: f64) -> Option<Cut> {
        let tan = math::tan(plane);
        let above = |p: (f64, f64)| p.1 - p.0 * tan;
        let mut i = 0;
        while i + 1 < self.ground.len() && above(self.lowered(i + 1)) > 0.0 {
            i += 1;
        }
        if i + 1 == self.ground.len() || above(self.lowered(0)) <= 0.0 {
            return None;
        }
        let (a, b) = (self.lowered(i), self.lowered(i + 1));
        let t = above(a) / (above(a) - above(b));
        let end = (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
        let mut outline = vec![(0.0, 0.0), end, (end.0, end.1 + self.crack)];
        let (tx, ty) = self.top();
        outline.extend((0..=i).rev().map(|k| (tx + self.ground[k].0, ty + self.ground[k].1)));
        let (area, cx, cy) = area_and_centre(&outline);
        if area <= 0.0 {
            return None;
        }
        let (mut weight, mut mx, mut my) = (area * self.gamma, area * self.gamma * cx, area * self.gamma * cy);
        for (q, from, to) in &self.strips {
            let (lo, hi) = (from + tx, (to + tx).min(end.0));
            if hi > lo {
                let w = q * (hi - lo);
                weight += w;
                mx += w * 0.5 * (lo + hi);
                my += w * self.ground_at(0.5 * (lo + hi));
            }
        }
        let length = math::hypot(end.0, end.1);
        let centre = (mx / weight, my / weight);
        Some(Cut { plane, weight, length, reach: end.0 - tx, end: end.1, centre })
    }
    fn ground_at(&self, x: f64) -> f64 {
        let (tx, ty) = self.top();
        let at = self.ground.windows(2).find(|w| x - tx <= w[1].0).or(self.ground.windows(2).last());
        at.map_or(ty, |w| ty + w[0].1 + (w[1].1 - w[0].1) * (x - tx - w[0].0) / (w[1].0 - w[0].0))
    }
    fn thrust(&self, cut: &Cut) -> f64 {
        thrust_of(cut.weight, self.c * cut.length, cut.plane, self.phi, self.delta + self.lean)
    }
    /// The worst plane: every quarter of a degree, then a golden section around the worst.
    fn worst(&self) -> Option<Cut> {
        self.worst_by(|cut| self.thrust(cut))
    }
    /// The same by a thrust of another kind.
    pub(super) fn worst_by(&self, thrust: impl Fn(&Cut) -> f64) -> Option<Cut> {
        let (least, most) = (self.phi.to_degrees() + 0.05, (90.0 + self.lean.to_degrees()).min(89.9) - 0.05);
        let value = |deg: f64| self.cut(deg.to_radians()).map(|c| (thrust(&c), c));
        let better = |a: Option<(f64, Cut)>, b: Option<(f64, Cut)>| match (a, b) {
            (Some(x), Some(y)) => Some(if y.0 > x.0 { y } else { x }),
            (x, y) => x.or(y),
        };
        let steps = ((most - least) / 0.25).ceil().max(1.0) as usize;
        let mut best = (0..=steps).map(|i| value(least + (most - least) * i as f64 / steps as f64)).fold(None, better);
        let middle = best?.1.plane.to_degrees();
        let (mut a, mut b) = ((middle - 0.3).max(least), (middle + 0.3).min(most));
        const GOLDEN: f64 = 0.618_033_988_749_894_8;
        for _ in 0..40 {
            let (x1, x2) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
            let (f1, f2) = (value(x1), value(x2));
            let at = |f: &Option<(f64, Cut)>| f.as_ref().map_or(f64::NEG_INFINITY, |f| f.0);
            if at(&f1) >= at(&f2) {
                b = x2
            } else {
                a = x1
            }
            best = better(best, better(f1, f2));
        }
        best.map(|b| b.1)
    }
}

fn area_and_centre(outline: &[(f64, f64)]) -> (f64, f64, f64) {
    let (mut area, mut cx, mut cy) = (0.0, 0.0, 0.0);
    for (i, p) in outline.iter().enumerate() {
        let q = outline[(i + 1) % outline.len()];
        let cross = p.0 * q.1 - q.0 * p.1;
        area += 0.5 * cross;
        cx += cross * (p.0 + q.0) / 6.0;
        cy += cross * (p.1 + q.1) / 6.0;
    }
    if area > 0.0 { (area, cx / area, cy / area) } else { (0.0, 0.0, 0.0) }
}

/// Reads the lists of the working into a case, or says what is wrong with them.
pub(super) fn read(g: &Values) -> std::result::Result<Case, String> {
    if g.xs.len() != g.ys.len() || g.xs.len() < 2 {
        return Err("the ground needs at least two points, with as many `ys` as `xs`".into());
    }
    if g.xs[0] != 0.0 || g.ys[0] != 0.0 {
        return Err("the ground begins at the top of the back face: its first point should be 0, 0".into());
    }
    if g.xs.windows(2).any(|w| w[1] <= w[0]) {
        return Err("the distances `xs` of the ground should rise from point to point".into());
    }
    if g.q.len() != g.from.len() || g.q.len() != g.to.len() {
        return Err("`strip_q`, `strip_from` and `strip_to` should have the same number of values".into());
    }
    let mut ground: Vec<_> = g.xs.iter().copied().zip(g.ys.iter().copied()).collect();
    let (a, b) = (ground[ground.len() - 2], ground[ground.len() - 1]);
    let last = (b.1 - a.1) / (b.0 - a.0);
    if math::atan(last) > g.phi + 1e-9 {
        return Err(format!(
            "the last piece of the ground rises at {:.1}° without end, steeper than the friction angle of {:.1}°",
            math::atan(last).to_degrees(),
            g.phi.to_degrees()
        ));
    }
    if g.delta > g.phi + 1e-9 {
        return Err("wall friction δ is larger than the soil's friction angle φ".into());
    }
    ground.push((b.0 + thrust::FAR, b.1 + last * thrust::FAR));
    Ok(Case {
        height: g.height,
        gamma: g.gamma,
        phi: g.phi,
        c: g.c,
        delta: g.delta,
        lean: g.lean,
        crack: g.crack,
        ground,
        strips: (0..g.q.len()).map(|i| (g.q[i], g.from[i], g.to[i])).collect(),
    })
}

pub(super) struct Values {
    pub(super) height: f64,
    pub(super) gamma: f64,
    pub(super) phi: f64,
    pub(super) c: f64,
    pub(super) delta: f64,
    pub(super) lean: f64,
    pub(super) crack: f64,
    pub(super) xs: Vec<f64>,
    pub(super) ys: Vec<f64>,
    pub(super) q: Vec<f64>,
    pub(super) from: Vec<f64>,
    pub(super) to: Vec<f64>,
}

pub(super) const NO_WEDGE: &str = "no plane from the heel reaches the ground; nothing pushes as a wedge here";

impl Broken {
    /// How the horizontal thrust is spread over the height: the thrust down to each depth by its own worst wedge, and what
    /// each step adds to it, as in USACE EM 1110-2-2502, Retaining and Flood Walls (1989), 3-15 (place from memory). Even
    /// in each of `pieces` steps; the sum is the thrust of the whole height.
    ///
    /// # Errors
    /// As [`Broken::active`].
    pub fn spread(&self, pieces: usize) -> Result<Spread> {
        let pieces = pieces.clamp(1, 200);
        let (mut spread, mut above, mut top) = (Spread::default(), LineForce::ZERO, Length::ZERO);
        for i in 1..=pieces {
            let depth = self.height * (i as f64 / pieces as f64);
            // Above the foot of a crack nothing pushes.
            let thrust = if depth <= self.crack { LineForce::ZERO } else { self.down_to(depth)?.max(above) };
            let pressure = (thrust - above) / (depth - top);
            spread.ordinates.extend([(top, pressure), (depth, pressure)]);
            (above, top) = (thrust, depth);
        }
        Ok(spread)
    }
    fn down_to(&self, height: Length) -> Result<LineForce> {
        Broken { height, ..self.clone() }.active().map(|w| w.horizontal)
    }
    /// In the units of the working.
    pub(super) fn values(&self) -> Values {
        let c = if self.counts_cohesion { self.soil.cohesion.to_kpa() } else { 0.0 };
        Values {
            height: self.height.to_m(),
            gamma: self.soil.unit_weight.to_kn_per_m3(),
            phi: rows::radians(self.soil.phi),
            c,
            delta: rows::radians(self.wall_friction),
            lean: rows::radians(self.lean),
            crack: self.crack.to_m(),
            xs: self.ground.iter().map(|p| p.0.to_m()).collect(),
            ys: self.ground.iter().map(|p| p.1.to_m()).collect(),
            q: self.strips.iter().map(|s| s.value.to_kpa()).collect(),
            from: self.strips.iter().map(|s| s.from.to_m()).collect(),
            to: self.strips.iter().map(|s| s.to.to_m().min(thrust::FAR)).collect(),
        }
    }
    /// One value per row of [`TRIAL_WEDGE`].
    pub(super) fn given(&self, v: &Values) -> Vec<Value> {
        vec![
            v.height.into(),
            v.gamma.into(),
            self.soil.phi.to_deg().into(),
            v.c.into(),
            self.wall_friction.to_deg().into(),
            self.lean.to_deg().into(),
            v.crack.into(),
            v.xs.clone().into(),
            v.ys.clone().into(),
            Value::Many(v.q.clone()),
            Value::Many(v.from.clone()),
            Value::Many(v.to.clone()),
        ]
    }
    /// The wedge that pushes hardest, found among planes through the heel.
    ///
    /// # Errors
    /// [`Refused`] where the ground cannot be, where it rises without end steeper than φ, or where a figure lies
    /// outside the working's limits.
    pub fn active(&self) -> Result<Wedge> {
        let v = self.values();
        let given = self.given(&v);
        rows::check(&TRIAL_WEDGE, &given)?;
        let no = |why: String| Refused::NoAnswer { working: TRIAL_WEDGE.name, why };
        let case = read(&v).map_err(no)?;
        let cut = case.worst().ok_or_else(|| no(NO_WEDGE.into()))?;
        let direction = case.delta + case.lean;
        let thrust = LineForce::kn_per_m(case.thrust(&cut).max(0.0));
        Ok(Wedge {
            thrust,
            horizontal: thrust * math::cos(direction),
            vertical: thrust * math::sin(direction),
            plane: Angle::rad(cut.plane),
            reach: Length::m(cut.reach),
            arm: Length::m(arm(&case, &cut)),
            trace: Trace::new(&TRIAL_WEDGE, given),
        })
    }
}

/// Where a line through the centre of weight, parallel to the plane, meets the back face: height above the heel.
fn arm(case: &Case, cut: &Cut) -> f64 {
    let tan = math::tan(cut.plane);
    let (x, y) = cut.centre;
    // Back face: x = −y tan θ.
    ((y - x * tan) / (1.0 + math::tan(case.lean) * tan)).clamp(0.0, case.height)
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let (phi, c, delta, lean) = (g.one("phi")?, g.one("c")?, g.one("delta")?, g.one("theta")?);
    let v = Values {
        height: g.one("height")?.value(),
        gamma: g.one("gamma")?.value(),
        phi: phi.value(),
        c: c.value(),
        delta: delta.value(),
        lean: lean.value(),
        crack: g.one("crack")?.value(),
        xs: list("xs")?,
        ys: list("ys")?,
        q: list("strip_q")?,
        from: list("strip_from")?,
        to: list("strip_to")?,
    };
    let case = read(&v).map_err(|why| g.no_answer(why))?;
    let cut = case.worst().ok_or_else(|| g.no_answer(NO_WEDGE))?;
    g.sheet().remark("worst of the planes through the heel, tried every quarter of a degree and then closer");
    let plane = g.sheet().put("ρ", cut.plane.to_degrees(), Unit::DEG);
    let weight = g.sheet().put("W", cut.weight, Unit::KN_M);
    let length = g.sheet().put("L", cut.length, Unit::M);
    let p = thrust_of(weight, c * length, plane, phi, delta + lean);
    let p = rows::not_below_zero(p);
    let ph = (p * (delta + lean).cos()).named("P_h", Unit::KN_M);
    let pv = (p * (delta + lean).sin()).named("P_v", Unit::KN_M);
    let reach = g.sheet().put("r", cut.reach, Unit::M);
    let arm = g.sheet().put("a", arm(&case, &cut), Unit::M);
    Ok([p, ph, pv, plane, reach, arm].map(Found::One).into())
}

/// The trial wedge.
pub static TRIAL_WEDGE: Working = Working {
    name: "earth-pressure/trial-wedge",
    title: "Which wedge pushes hardest where the ground behind is broken or loaded in strips?",
    source: Source {
        work: "Coulomb, Essai sur une application des règles de maximis et minimis, Paris, 1776, by trial as Culmann, Die graphische Statik, Zürich, 1866",
        place: "height of the thrust by a line through the centre of weight parallel to the slip: NAVFAC DM-7.02, 1986, chapter 3, from memory",
    },
    not_for: "water in the ground, layers, curved slips",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::PHI,
        rows::COHESION,
        rows::DELTA,
        rows::THETA,
        Input::new("crack", "z_c", "depth of an open, dry crack", Unit::M, Limits::ours(0.0, 20.0)).or(0.0),
        Input::new(
            "xs",
            "x",
            "ground: distances behind the top of the back face, first 0",
            Unit::M,
            Limits::ours(0.0, 1000.0),
        ),
        Input::new(
            "ys",
            "y",
            "ground: rises above the top of the back face, first 0",
            Unit::M,
            Limits::ours(-100.0, 1000.0),
        ),
        Input::new("strip_q", "q_s", "loads on strips of the ground", Unit::KPA, Limits::ours(0.0, 5000.0)).or(0.0),
        Input::new("strip_from", "a", "their near edges", Unit::M, Limits::ours(0.0, thrust::FAR)).or(0.0),
        Input::new("strip_to", "b", "their far edges", Unit::M, Limits::ours(0.0, thrust::FAR)).or(0.0),
    ],
    outputs: &[
        Output { key: "p", words: "force", unit: Unit::KN_M },
        Output { key: "ph", words: "its horizontal part", unit: Unit::KN_M },
        Output { key: "pv", words: "its part down the wall", unit: Unit::KN_M },
        Output { key: "plane", words: "slip plane above horizontal", unit: Unit::DEG },
        Output { key: "reach", words: "where it meets the ground, behind the top", unit: Unit::M },
        Output { key: "arm", words: "height of the force above the heel", unit: Unit::M },
    ],
    run,
};
