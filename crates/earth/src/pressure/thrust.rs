//! How do weight, loads, cohesion and water add up behind a wall, interval by interval?

use groundhold_quantity::{Length, Pressure, WATER};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Source, Unit, Working};

use super::backfill::{Ordinate, Strip};
use super::{cohesive, coulomb, rankine, surcharge};
use crate::rows::{self, not_below_zero};

/// A strip without a far edge is taken to end here, in metres.
pub(super) const FAR: f64 = 10_000.0;

/// By which theory.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Theory {
    Rankine,
    Coulomb,
}

/// A load on part of the ground.
pub(super) struct Load<N> {
    pub q: N,
    pub from: N,
    pub to: N,
    pub permanent: bool,
}

/// What goes in, in m, kN and radians.
pub(super) struct Case<N> {
    pub height: N,
    pub gamma: N,
    pub gamma_sat: N,
    pub phi: N,
    pub c: N,
    pub slope: N,
    pub delta: N,
    pub q: N,
    /// Water above the base.
    pub water: N,
    pub strips: Vec<Load<N>>,
}

/// Horizontal pressures at one depth.
#[derive(Clone, Copy)]
pub(super) struct Pressures<N> {
    pub depth: N,
    pub soil: N,
    pub permanent: N,
    pub variable: N,
    pub water: N,
}

/// What comes out. Parts are (force, moment about the base).
pub(super) struct Thrust<N> {
    pub k: N,
    pub direction: N,
    pub horizontal: N,
    pub vertical: N,
    pub moment: N,
    pub arm: N,
    pub soil: (N, N),
    pub permanent: (N, N),
    pub variable: (N, N),
    pub water: (N, N),
    pub diagram: Vec<Pressures<N>>,
}

/// A typed strip in the formula's units.
pub(super) fn strip(s: &Strip) -> Load<f64> {
    Load { q: s.value.to_kpa(), from: s.from.to_m(), to: s.to.to_m().min(FAR), permanent: s.permanent }
}

impl Pressures<f64> {
    /// With its types.
    pub(super) fn ordinate(&self) -> Ordinate {
        Ordinate {
            depth: Length::m(self.depth),
            soil: Pressure::kpa(self.soil),
            surcharge: Pressure::kpa(self.permanent + self.variable),
            water: Pressure::kpa(self.water),
        }
    }
}

/// How pressure follows from vertical effective stress.
struct Law<'c, N> {
    case: &'c Case<N>,
    theory: Theory,
    slope: N,
    /// Horizontal part of the coefficient.
    k_h: N,
    /// Pressure of the load on all the ground, without cohesion.
    uniform: N,
    /// Below the ground at the wall.
    water_depth: N,
}

impl<N: Number> Law<'_, N> {
    fn vertical_stress(&self, z: N) -> N {
        let zw = self.water_depth;
        if self.case.water.value() <= 0.0 || z.value() <= zw.value() {
            self.case.gamma * z
        } else {
            self.case.gamma * zw + (self.case.gamma_sat - WATER.to_kn_per_m3()) * (z - zw)
        }
    }
    /// Horizontal pressure under this vertical stress, tension not yet cut off. On a slope one cosine turns the conjugate
    /// stress into pressure along the slope, the other takes its horizontal part.
    fn pressure(&self, stress: N) -> N {
        let c = self.case.c;
        if c.value() == 0.0 {
            self.k_h * stress
        } else if self.theory == Theory::Rankine && self.slope.value() != 0.0 {
            cohesive::on_slope(stress, c, self.case.phi, self.slope) * self.slope.cos().squared()
        } else {
            self.k_h * stress - N::constant(2.0) * c * self.k_h.sqrt()
        }
    }
}

/// Active thrust of one soil on a vertical wall, with loads, cohesion and water.
///
/// # Source
/// Coefficients: Rankine (1857) and Coulomb (1776), see [`rankine::ka_slope`] and [`coulomb::ka`]. Cohesion: level ground
/// K·σ′ − 2c√K (EN 1997-1:2004 Annex C.1 with a = 0); sloping ground Mazindrani and Ganjali (1997). Strips:
/// [`surcharge::strip_on_yielding_wall`] times [`surcharge::worst_wedge_ratio`]. Water: full hydrostatic pressure below its level, soil at γ_sat − γ_w there.
/// # Symbols
/// | H, γ, γ_sat, φ, c, β, δ, q, h_w | as in the rows of the working | | |
/// # Gives
/// Horizontal and vertical force, moment about the base, arm; each part by itself. Falls with φ, grows with all loads.
/// # Not for
/// Ground steeper than φ; a leaning back face (use [`coulomb::ka`] or the trial wedge); broken ground (trial wedge);
/// layers (`earth-pressure/rankine-layered`). Ground that falls away is taken as level by Rankine.
/// # Errors
/// Ground steeper than φ, in words.
/// # By hand
/// H = 1 m, γ = 18, φ = 30°: K_a = 1/3, P = ½ · 18 · 1²/3 = 3.0 kN/m at 0.333 m (case TH-01 in `reference/pressure.toml`).
pub(super) fn thrust<N: Number>(theory: Theory, case: &Case<N>) -> Result<Thrust<N>, String> {
    let (slope, phi) = (case.slope.value(), case.phi.value());
    if slope > phi + 1e-9 {
        return Err(format!(
            "the ground behind rises at {:.1}°, steeper than the soil's friction angle of {:.1}°; such ground has no active state and moves by itself",
            slope.to_degrees(),
            phi.to_degrees()
        ));
    }
    if theory == Theory::Coulomb && case.delta.value() > phi + 1e-9 {
        return Err(format!(
            "wall friction δ of {:.1}° is larger than the soil's friction angle φ of {:.1}°; take δ = φ at most",
            case.delta.value().to_degrees(),
            phi.to_degrees()
        ));
    }
    if let Some(s) = case.strips.iter().find(|s| s.to.value() <= s.from.value()) {
        return Err(format!(
            "a load on a strip from {} m should end further from the wall, found {} m",
            s.from.value(),
            s.to.value()
        ));
    }
    let slope = if theory == Theory::Rankine && slope < 0.0 { N::constant(0.0) } else { case.slope };
    let (k, direction) = match theory {
        Theory::Rankine => (rankine::ka_slope(case.phi, slope), slope),
        Theory::Coulomb => (coulomb::ka(case.phi, case.delta, N::constant(0.0), slope), case.delta),
    };
    let k_h = if direction.value() == 0.0 { k } else { (k * direction.cos()).named("K_h", Unit::NONE) };
    let cohesionless_load = case.q.value() > 0.0 && case.c.value() == 0.0;
    let uniform = if cohesionless_load { (k_h * case.q).named("σ_Q", Unit::KPA) } else { N::constant(0.0) };
    let wet = case.water.value() > 0.0;
    let water_depth = if wet { (case.height - case.water).named("z_w", Unit::M) } else { case.height };
    let law = Law { case, theory, slope, k_h, uniform, water_depth };
    let diagram = diagram(&law);
    let part = |select: fn(&Pressures<N>) -> N, force, moment| integrate(case.height, &diagram, select, force, moment);
    let soil = part(|p| p.soil, "P_γ", "M_γ");
    let permanent = part(|p| p.permanent, "P_G", "M_G");
    let variable = part(|p| p.variable, "P_Q", "M_Q");
    let water = part(|p| p.water, "P_w", "M_w");
    let add = |f: fn(&(N, N)) -> N| total([soil, permanent, variable, water].iter().map(f));
    let horizontal = add(|p| p.0).named("P_h", Unit::KN_M);
    let moment = add(|p| p.1).named("M", Unit::KNM);
    let arm = if horizontal.value() > 0.0 { moment / horizontal } else { N::constant(0.0) }.named("a", Unit::M);
    let vertical = (total([soil.0, permanent.0, variable.0].into_iter()) * direction.tan()).named("P_v", Unit::KN_M);
    Ok(Thrust { k, direction, horizontal, vertical, moment, arm, soil, permanent, variable, water, diagram })
}

fn total<N: Number>(parts: impl Iterator<Item = N>) -> N {
    parts
        .filter(|p| p.value() != 0.0)
        .fold(None, |sum: Option<N>, p| Some(sum.map_or(p, |s| s + p)))
        .unwrap_or(N::constant(0.0))
}

/// Depths at which something changes, sorted, from 0 to H.
fn depths<N: Number>(law: &Law<N>) -> Vec<N> {
    let case = law.case;
    let mut at = vec![N::constant(0.0), case.height];
    let mut put = |z: N| {
        if 0.0 < z.value() && z.value() < case.height.value() {
            at.push(z);
        }
    };
    put(law.water_depth);
    for s in &case.strips {
        let (top, bottom) = surcharge::strip_reach(case.phi, law.slope, s.from, s.to);
        put(top.named("z_1", Unit::M));
        put(bottom.named("z_2", Unit::M));
    }
    at.sort_by(|a, b| a.value().total_cmp(&b.value()));
    at.dedup_by(|a, b| a.value() == b.value());
    if case.c.value() > 0.0 { with_crossings(law, at) } else { at }
}

/// Adds the depths at which cohesion stops holding, and enough points between where the law is curved.
fn with_crossings<N: Number>(law: &Law<N>, at: Vec<N>) -> Vec<N> {
    let curved = law.theory == Theory::Rankine && law.slope.value() != 0.0;
    let pieces = if curved { 12 } else { 1 };
    let mut fine = vec![at[0]];
    for pair in at.windows(2) {
        for i in 1..=pieces {
            fine.push(if i == pieces { pair[1] } else { pair[0] + (pair[1] - pair[0]) * (i as f64 / pieces as f64) });
        }
    }
    let bare = |z: N| law.pressure(law.vertical_stress(z));
    let loaded = |z: N| law.pressure(law.vertical_stress(z) + law.case.q);
    let mut out = vec![fine[0]];
    for pair in fine.windows(2) {
        let mut between = vec![crossing(pair, bare), crossing(pair, loaded)];
        between.sort_by(|a, b| a.map(|z| z.value()).unwrap_or(0.0).total_cmp(&b.map(|z| z.value()).unwrap_or(0.0)));
        out.extend(between.into_iter().flatten());
        out.push(pair[1]);
    }
    out
}

fn crossing<N: Number>(pair: &[N], p: impl Fn(N) -> N) -> Option<N> {
    let (a, b) = (p(pair[0]), p(pair[1]));
    (a.value() < 0.0 && b.value() > 0.0)
        .then(|| (pair[0] + (pair[1] - pair[0]) * ((-a) / (b - a))).named("z_0", Unit::M))
}

fn diagram<N: Number>(law: &Law<N>) -> Vec<Pressures<N>> {
    let at = depths(law);
    let soil: Vec<N> = at.iter().map(|z| shown(not_below_zero(law.pressure(law.vertical_stress(*z))), "σ_γ")).collect();
    let spread: Vec<N> = at.iter().zip(&soil).map(|(z, soil)| uniform(law, *z, *soil)).collect();
    let water: Vec<N> = at
        .iter()
        .map(|z| {
            let below = law.case.water.value() > 0.0 && z.value() > law.water_depth.value();
            if below { ((*z - law.water_depth) * WATER.to_kn_per_m3()).named("u", Unit::KPA) } else { N::constant(0.0) }
        })
        .collect();
    let strips = strips(law);
    let mut out = Vec::with_capacity(2 * at.len());
    for i in 0..at.len() - 1 {
        let middle = 0.5 * (at[i].value() + at[i + 1].value());
        let felt = |stays: bool| {
            let here = strips.iter().filter(|s| s.permanent == stays && s.top < middle && middle < s.bottom);
            total(here.map(|s| s.pressure))
        };
        let (permanent, variable) = (felt(true), felt(false));
        for j in [i, i + 1] {
            let variable = total([spread[j], variable].into_iter());
            out.push(Pressures { depth: at[j], soil: soil[j], permanent, variable, water: water[j] });
        }
    }
    out
}

/// Pressure of the load on all the ground.
fn uniform<N: Number>(law: &Law<N>, z: N, soil: N) -> N {
    let q = law.case.q;
    if q.value() == 0.0 {
        N::constant(0.0)
    } else if law.case.c.value() == 0.0 {
        law.uniform
    } else {
        shown(not_below_zero(law.pressure(law.vertical_stress(z) + q)) - soil, "σ_Q")
    }
}

fn shown<N: Number>(p: N, symbol: &'static str) -> N {
    if p.value() == 0.0 { N::constant(0.0) } else { p.named(symbol, Unit::KPA) }
}

/// A strip as the wall feels it.
struct Felt<N> {
    top: f64,
    bottom: f64,
    pressure: N,
    permanent: bool,
}

fn strips<N: Number>(law: &Law<N>) -> Vec<Felt<N>> {
    let felt = |s: &Load<N>| {
        let (top, bottom) = surcharge::strip_reach(law.case.phi, law.slope, s.from, s.to);
        let p = surcharge::strip_on_yielding_wall(s.q, law.k_h, law.case.phi, law.slope, s.from, s.to);
        let n = surcharge::worst_wedge_ratio(s.q, s.from, s.to, law.case.gamma, law.case.phi, law.case.height);
        let p = if n.value() == 1.0 { p } else { p * n };
        let symbol = if s.permanent { "σ_G" } else { "σ_s" };
        Felt { top: top.value(), bottom: bottom.value(), pressure: shown(p, symbol), permanent: s.permanent }
    };
    law.case.strips.iter().filter(|s| s.q.value() > 0.0).map(felt).collect()
}

fn integrate<N: Number>(
    height: N,
    diagram: &[Pressures<N>],
    select: fn(&Pressures<N>) -> N,
    force: &'static str,
    moment: &'static str,
) -> (N, N) {
    let mut forces = vec![];
    let mut moments = vec![];
    for pair in diagram.chunks_exact(2) {
        let (pa, pb) = (select(&pair[0]), select(&pair[1]));
        if pa.value() == 0.0 && pb.value() == 0.0 {
            continue;
        }
        let (a, b) = (pair[0].depth, pair[1].depth);
        let f = (pa + pb) * (b - a) / 2.0;
        // A trapezium's centroid: the share of each end is (2 pa + pb) and (pa + 2 pb) over 6.
        let m = f * (height - b) + (pa * 2.0 + pb) * (b - a).squared() / 6.0;
        forces.push(f);
        moments.push(m);
    }
    if forces.is_empty() {
        return (N::constant(0.0), N::constant(0.0));
    }
    (total(forces.into_iter()).named(force, Unit::KN_M), total(moments.into_iter()).named(moment, Unit::KNM))
}

fn run<'s>(theory: Theory, g: &Given<'s>) -> groundhold_working::Result<Vec<Found<'s>>> {
    let (q, from, to, stays) = (g.many("strip_q")?, g.many("strip_from")?, g.many("strip_to")?, g.many("strip_stays")?);
    let stays = |i: usize| stays.get(i).or(stays.first()).is_some_and(|s| s.value() > 0.5);
    if q.len() != from.len() || q.len() != to.len() {
        return Err(g.no_answer("`strip_q`, `strip_from` and `strip_to` should have the same number of values"));
    }
    let strips = (0..q.len())
        .filter(|i| q[*i].value() > 0.0)
        .map(|i| Load { q: q[i], from: from[i], to: to[i], permanent: stays(i) })
        .collect::<Vec<_>>();
    let case = Case {
        height: g.one("height")?,
        gamma: g.one("gamma")?,
        gamma_sat: g.one("gamma_sat")?,
        phi: g.one("phi")?,
        c: g.one("c")?,
        slope: g.one("alpha")?,
        delta: g.one("delta")?,
        q: g.one("q")?,
        water: g.one("water")?,
        strips,
    };
    if case.water.value() > case.height.value() {
        return Err(g.no_answer("the water stands above the ground; put the rest in as a load"));
    }
    let t = thrust(theory, &case).map_err(|why| g.no_answer(why))?;
    let outputs = [t.k, t.horizontal, t.vertical, t.moment, t.arm, t.soil.0, t.permanent.0, t.variable.0, t.water.0];
    Ok(outputs.into_iter().map(Found::One).collect())
}

const INPUTS: &[Input] = &[
    Input { limits: Limits::ours(0.0, 30.0), ..rows::HEIGHT },
    rows::GAMMA,
    rows::GAMMA_SAT,
    rows::PHI,
    rows::COHESION,
    rows::SLOPE,
    rows::DELTA,
    rows::SURCHARGE,
    Input::new("water", "h_w", "height of water above the base", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
    Input::new("strip_q", "q_s", "loads on strips of the ground", Unit::KPA, Limits::ours(0.0, 5000.0)).or(0.0),
    Input::new("strip_from", "a", "their near edges, from the wall", Unit::M, Limits::ours(0.0, FAR)).or(0.0),
    Input::new("strip_to", "b", "their far edges", Unit::M, Limits::ours(0.0, FAR)).or(0.0),
    Input::new(
        "strip_stays",
        "",
        "1 where the load stays, 0 where it comes and goes",
        Unit::NONE,
        Limits::ours(0.0, 1.0),
    )
    .or(0.0),
];

const OUTPUTS: &[Output] = &[
    Output { key: "ka", words: "coefficient in the thrust's own direction", unit: Unit::NONE },
    Output { key: "ph", words: "horizontal force", unit: Unit::KN_M },
    Output { key: "pv", words: "force down the back", unit: Unit::KN_M },
    Output { key: "m", words: "moment about the base per metre run", unit: Unit::KNM },
    Output { key: "arm", words: "height of the force above the base", unit: Unit::M },
    Output { key: "p_soil", words: "part of the soil", unit: Unit::KN_M },
    Output { key: "p_permanent", words: "part of loads that stay", unit: Unit::KN_M },
    Output { key: "p_variable", words: "part of loads that come and go", unit: Unit::KN_M },
    Output { key: "p_water", words: "part of the water", unit: Unit::KN_M },
];

/// Active thrust on a smooth vertical wall, after Rankine, with loads, cohesion and water.
pub static THRUST_RANKINE: Working = Working {
    name: "earth-pressure/thrust-rankine",
    title: "How hard does this backfill push on a smooth wall, and where?",
    source: Source {
        work: "Rankine, On the Stability of Loose Earth, Phil. Trans. R. Soc. 147, 1857; cohesion on a slope: Mazindrani and Ganjali, J. Geotech. Geoenviron. Eng. 123(2), 1997",
        place: "strips: from memory, DIN 4085:2017; water: hydrostatic",
    },
    not_for: "ground steeper than the friction angle, broken ground, layers; ground falling away is taken as level",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Theory::Rankine, g),
};

/// Active thrust on a rough vertical wall, after Coulomb, with loads, cohesion and water.
pub static THRUST_COULOMB: Working = Working {
    name: "earth-pressure/thrust-coulomb",
    title: "How hard does this backfill push on a rough wall, and where?",
    source: Source {
        work: "Coulomb, Essai sur une application des règles de maximis et minimis, Paris, 1776, as in Das, Principles of Foundation Engineering, 7th ed., 2011, eq. 7.26",
        place: "cohesion: EN 1997-1:2004 Annex C.1 with a = 0; strips: from memory, DIN 4085:2017; water: hydrostatic",
    },
    not_for: "ground steeper than the friction angle, broken ground, layers, a wall that can sink with its backfill",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| run(Theory::Coulomb, g),
};
