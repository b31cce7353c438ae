//! How deep must a continuous wall stand in the ground: posts side by side, sheets, panels?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::limits;
use crate::{given::given, root::first_reach};

given! {
    /// A continuous wall in dry sand.
    FixedEarth {
        /// Retained height.
        height,
        /// Friction angle.
        phi,
        /// Divides the passive coefficient.
        factor,
    }
}
given! {
    /// A continuous wall in sand with water at the same level on both sides; kN, m.
    SheetWall {
        /// Retained height above the water.
        dry,
        /// Water level above the ground in front.
        wet,
        /// Unit weight above water.
        unit_weight,
        /// Saturated unit weight below water.
        saturated,
        /// Unit weight of water.
        water,
        /// Friction angle.
        phi,
    }
}

/// Depths of the simplified method.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixedEarthDepth<N> {
    /// Down to the point about which the wall turns.
    pub turning: N,
    /// With a fifth added.
    pub depth: N,
}

/// Depth of a continuous cantilever wall in dry sand by the simplified fixed-earth method.
///
/// # Source
/// Simplified method for cantilever sheet walls, e.g. Craig, Soil Mechanics, chapter on embedded walls:
/// K_p d₀³ = K_a (H + d₀)³, d = 1.2 d₀. From memory.
/// # Symbols
/// H retained height, K_a, K_p of Rankine, F divides K_p.
/// # Gives
/// d₀ and d in m. With F = 1 there is no margin inside.
/// # Not for
/// Posts with gaps between them (Broms); water; surcharge.
/// # Errors
/// The working refuses F so large that K_p/F no longer exceeds K_a.
/// # By hand
/// φ 30°: d₀ = H/(9^(1/3) − 1) = 0.926 H (PO-10).
pub fn fixed_earth<N: Number>(i: &FixedEarth<N>) -> FixedEarthDepth<N> {
    let ka = (N::degrees(45.0) - i.phi / 2.0).tan().squared().named("K_a", Unit::NONE);
    let kp = (N::degrees(45.0) + i.phi / 2.0).tan().squared().named("K_p", Unit::NONE);
    let turning = (i.height / ((kp / (i.factor * ka)).powf(1.0 / 3.0) - 1.0)).named("d₀", Unit::M);
    FixedEarthDepth { turning, depth: (turning * 1.2).named("d", Unit::M) }
}

/// Figures of a cantilever sheet wall, per metre of wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SheetFigures<N> {
    /// Pressure at the water, kPa.
    pub at_water: N,
    /// Pressure at the ground in front, kPa.
    pub at_ground: N,
    /// Depth of zero net pressure below the ground in front, m.
    pub zero: N,
    /// Push above that depth, kN/m.
    pub push: N,
    /// Its height above that depth, m.
    pub lever: N,
    /// Depth below zero pressure that balances the wall, m.
    pub below: N,
    /// Depth below the ground in front that balances the wall, m; without margin.
    pub depth: N,
    /// Greatest moment, kNm/m.
    pub moment: N,
}

/// Net passive growth, push, lever and the pressure p₅ of the classical solution.
struct SheetParts<N> {
    grow: N,
    at_water: N,
    at_ground: N,
    zero: N,
    push: N,
    lever: N,
    back: N,
}

fn sheet_parts<N: Number>(i: &SheetWall<N>) -> SheetParts<N> {
    let ka = (N::degrees(45.0) - i.phi / 2.0).tan().squared().named("K_a", Unit::NONE);
    let kp = (N::degrees(45.0) + i.phi / 2.0).tan().squared().named("K_p", Unit::NONE);
    let light = (i.saturated - i.water).named("γ'", Unit::KN_M3);
    let at_water = (i.unit_weight * i.dry * ka).named("p₁", Unit::KPA);
    let at_ground = ((i.unit_weight * i.dry + light * i.wet) * ka).named("p₂", Unit::KPA);
    let grow = (light * (kp - ka)).named("g", Unit::KPA_M);
    let zero = (at_ground / grow).named("L₃", Unit::M);
    let (upper, middle) = (at_water * i.dry / 2.0, at_water * i.wet);
    let (lower, foot) = ((at_ground - at_water) * i.wet / 2.0, at_ground * zero / 2.0);
    let push = (upper + middle + lower + foot).named("P", Unit::KN_M);
    let turn = upper * (zero + i.wet + i.dry / 3.0)
        + middle * (zero + i.wet / 2.0)
        + lower * (zero + i.wet / 3.0)
        + foot * zero * 2.0 / 3.0;
    let lever = (turn / push).named("z̄", Unit::M);
    let back = ((i.unit_weight * i.dry + light * i.wet) * kp + grow * zero).named("p₅", Unit::KPA);
    SheetParts { grow, at_water, at_ground, zero, push, lever, back }
}

/// Left side of the quartic in L₄ that balances the wall; grows through zero at its one positive root.
fn quartic(p: &SheetParts<f64>, l: f64) -> f64 {
    let g = p.grow;
    let (a1, a2) = (p.back / g, 8.0 * p.push / g);
    let a3 = 6.0 * p.push * (2.0 * p.lever * g + p.back) / (g * g);
    let a4 = p.push * (6.0 * p.lever * p.back + 4.0 * p.push) / (g * g);
    (((l + a1) * l - a2) * l - a3) * l - a4
}

/// L₄ of the classical solution, m; `None` where 100 m are not enough.
fn balanced(p: &SheetParts<f64>) -> Option<f64> {
    // The quartic is negative at 0 and has one sign change in its coefficients: one positive root (Descartes).
    first_reach(0.0, 100.0, 1.0, |l| quartic(p, l))
}

/// Balance of a cantilever sheet wall in sand with water at one level, by the classical solution.
///
/// # Source
/// Das, Principles of Foundation Engineering, 7th ed., section 9.6 and Example 9.1: p₁, p₂, L₃, P, z̄, p₅, the quartic in
/// L₄, D = L₃ + L₄, z' = √(2P/((K_p − K_a)γ')), M = P (z̄ + z') − γ'(K_p − K_a) z'³/6.
/// # Symbols
/// L₁ height above water, L₂ water above the ground in front, γ, γ_sat, γ_w, φ; g = γ'(K_p − K_a).
/// # Gives
/// Depth without margin (the source then adds 20 to 30 %), greatest moment per metre.
/// # Not for
/// Posts with gaps; different water levels on the two sides; clay.
/// # Errors
/// `None` where 100 m of depth are not enough.
/// # By hand
/// Reference case PO-08.
pub fn sheet_wall(i: &SheetWall<f64>) -> Option<SheetFigures<f64>> {
    let p = sheet_parts(i);
    let below = balanced(&p)?;
    Some(sheet_figures(p, below))
}

fn sheet_figures<N: Number>(p: SheetParts<N>, below: N) -> SheetFigures<N> {
    let depth = (p.zero + below).named("D", Unit::M);
    let turn = (p.push * 2.0 / p.grow).sqrt().named("z'", Unit::M);
    let moment = (p.push * (p.lever + turn) - p.grow * turn.cubed() / 6.0).named("M", Unit::KNM);
    SheetFigures {
        at_water: p.at_water,
        at_ground: p.at_ground,
        zero: p.zero,
        push: p.push,
        lever: p.lever,
        below,
        depth,
        moment,
    }
}

/// Working of [`fixed_earth`].
pub static FIXED_EARTH: Working = Working {
    name: "embed/fixed-earth-depth",
    title: "Depth of a continuous cantilever wall in dry sand (simplified fixed-earth method).",
    source: Source {
        work: "Craig, Soil Mechanics, chapter on embedded walls",
        place: "simplified method, fixed-earth support; from memory",
    },
    not_for: "posts with gaps between them (embed/broms-sand-depth), water, surcharge",
    inputs: &[
        Input::new("height", "H", "retained height", Unit::M, Limits::ours(0.05, 10.0)),
        limits::PHI,
        Input::new("factor", "F", "factor that divides the passive coefficient", Unit::NONE, Limits::ours(1.0, 3.0))
            .or(1.0),
    ],
    outputs: &[
        Output { key: "turning", words: "depth of the turning point", unit: Unit::M },
        Output { key: "depth", words: "depth with a fifth added", unit: Unit::M },
    ],
    run: |g| {
        let i = FixedEarth::put(g)?;
        let f = fixed_earth(&i);
        if f.turning.value() <= 0.0 || 100.0 < f.turning.value() {
            return Err(g.no_answer("with this factor the passive side does not outgrow the active side"));
        }
        Ok(vec![Found::One(f.turning), Found::One(f.depth)])
    },
};

const fn out(key: &'static str, words: &'static str, unit: Unit) -> Output {
    Output { key, words, unit }
}

/// Working of [`sheet_wall`].
pub static SHEET_WALL: Working = Working {
    name: "embed/sheet-wall-sand",
    title: "Depth and moment of a continuous cantilever wall in sand with water (classical solution).",
    source: Source { work: "Das, Principles of Foundation Engineering, 7th ed.", place: "section 9.6, Example 9.1" },
    not_for: "posts with gaps; water levels that differ; clay",
    inputs: &[
        Input::new("dry", "L₁", "height above the water", Unit::M, Limits::ours(0.05, 10.0)),
        Input::new("wet", "L₂", "water above the ground in front", Unit::M, Limits::ours(0.0, 10.0)),
        limits::UNIT_WEIGHT,
        Input::new("saturated", "γ_sat", "saturated unit weight", Unit::KN_M3, Limits::ours(12.0, 30.0)),
        Input::new("water", "γ_w", "unit weight of water", Unit::KN_M3, Limits::ours(9.0, 11.0)).or(9.81),
        limits::PHI,
    ],
    outputs: &[
        out("at_water", "pressure at the water", Unit::KPA),
        out("at_ground", "pressure at the ground in front", Unit::KPA),
        out("zero", "depth of zero net pressure", Unit::M),
        out("push", "push above it", Unit::KN_M),
        out("lever", "height of the push above it", Unit::M),
        out("below", "depth below zero pressure", Unit::M),
        out("depth", "depth without margin", Unit::M),
        out("moment", "greatest moment per metre", Unit::KNM),
    ],
    run: |g| {
        let i = SheetWall::put(g)?;
        let p = sheet_parts(&i);
        let root = balanced(&sheet_parts(&i.values())).ok_or_else(|| g.no_answer("100 m deep is not enough"))?;
        g.sheet().remark("L₄ is the positive root of the quartic that balances the wall, found by closing in on it:");
        let _ = (p.back / p.grow).named("A₁", Unit::M);
        let below = g.sheet().put("L₄", root, Unit::M).named("L₄", Unit::M);
        let f = sheet_figures(p, below);
        Ok([f.at_water, f.at_ground, f.zero, f.push, f.lever, f.below, f.depth, f.moment]
            .into_iter()
            .map(Found::One)
            .collect())
    },
};
