//! How does a wall that stands by its weight stand as it was found: leaning, in wet ground, with its foot laid bare?

use groundhold_earth::pressure::rankine;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::push::{GAMMA, GAMMA_SAT, LOAD, PHI, PushAsFound, WATER_UP, push_as_found};

/// A body on the ground; m, kN, radians.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ByWeight<N> {
    /// Ground behind above the ground in front.
    pub height: N,
    /// Underside below the ground in front as it was.
    pub below: N,
    /// Ground in front that was dug away.
    pub dug: N,
    /// Front to back.
    pub width: N,
    /// How far the top stands out.
    pub lean: N,
    /// Unit weight of the body.
    pub body: N,
    /// Moist unit weight of the soil.
    pub gamma: N,
    /// Saturated unit weight.
    pub gamma_sat: N,
    /// Friction angle.
    pub phi: N,
    /// Load on the ground behind.
    pub q: N,
    /// Water above the underside.
    pub water: N,
    /// Friction under the base.
    pub mu: N,
}

/// How it stands, per metre run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stands<N> {
    /// Its weight.
    pub weight: N,
    /// Restoring over overturning moment about the toe.
    pub overturn: N,
    /// Resistance over push at the base.
    pub slide: N,
    /// From the middle of the base to the resultant, positive towards the toe.
    pub eccentricity: N,
}

/// How a wall stands by its weight as found: a block of even thickness, its middle moved out by half its lean.
///
/// # Source
/// Rigid-body equilibrium, as in Das, Principles of Foundation Engineering, 7th ed. (2011), chapter 8; push by `standing/push`;
/// Rankine's passive resistance of what is left in front, counted against sliding only.
/// # Symbols
/// | H, D, x_d, B, y | height, depth of the foot, dug away, width, lean | m | |
/// | γ_w, γ, γ_sat, φ, q, h_w, μ | body, soil, load, water above the underside, friction | | |
/// # Gives
/// Weight, factors against overturning and sliding, eccentricity. Factors fall with water, load, lean and what is dug away.
/// # Not for
/// Water under the base (it lifts); walls of separate leaves; bearing of the ground; a foot dug free below its underside.
/// # Errors
/// None here.
/// # By hand
/// 1.3716 × 0.4572 m of 23 kN/m³, soil 18 kN/m³ and 30°, dry: W 14.42, M_r 3.297, M 2.580, F_o 1.28 (case `SW-02`).
pub fn by_weight<N: Number>(i: &ByWeight<N>) -> Stands<N> {
    let total = (i.height + i.below).named("H_t", Unit::M);
    let (p, m) = push_as_found(&PushAsFound {
        height: total,
        gamma: i.gamma,
        gamma_sat: i.gamma_sat,
        phi: i.phi,
        q: i.q,
        water: i.water,
    });
    stand(i, total, p, m)
}

/// The same under a push that is known.
pub(super) fn stand<N: Number>(i: &ByWeight<N>, total: N, p: N, m: N) -> Stands<N> {
    let weight = (i.body * i.width * total).named("W", Unit::KN_M);
    let arm = (i.width / 2.0 - i.lean / 2.0).named("x", Unit::M);
    let restoring = (weight * arm).named("M_r", Unit::KNM);
    let left = (i.below - i.dug).max(N::constant(0.0)).named("D_left", Unit::M);
    let front = (i.gamma * left.squared() / (rankine::ka(i.phi) * 2.0)).named("P_p", Unit::KN_M);
    let overturn = (restoring / m).named("F_o", Unit::NONE);
    let slide = ((i.mu * weight + front) / p).named("F_s", Unit::NONE);
    let eccentricity = (i.width / 2.0 - (restoring - m) / weight).named("e", Unit::M);
    Stands { weight, overturn, slide, eccentricity }
}

/// Working of [`by_weight`].
pub static BY_WEIGHT: Working = Working {
    name: "standing/by-weight",
    title: "How does a wall that stands by its weight stand as it was found?",
    source: Source {
        work: "rigid-body equilibrium, as in Das, Principles of Foundation Engineering, 7th ed., 2011; Rankine, 1857",
        place: "chapter 8",
    },
    not_for: "water under the base, walls of separate leaves, bearing of the ground, a foot dug free",
    inputs: &[
        Input::new("height", "H", "ground behind above the ground in front", Unit::M, Limits::ours(0.05, 20.0)),
        Input::new("below", "D", "underside below the ground in front", Unit::M, Limits::ours(0.0, 10.0)).or(0.0),
        Input::new("dug", "x_d", "ground in front that was dug away", Unit::M, Limits::ours(0.0, 10.0)).or(0.0),
        Input::new("width", "B", "front to back", Unit::M, Limits::ours(0.02, 20.0)),
        Input::new("lean", "y", "how far the top stands out", Unit::M, Limits::ours(-5.0, 5.0)).or(0.0),
        Input::new("body", "γ_b", "unit weight of the body", Unit::KN_M3, Limits::ours(4.0, 30.0)),
        GAMMA,
        GAMMA_SAT,
        PHI,
        LOAD,
        WATER_UP,
        Input::new("mu", "μ", "friction under the base", Unit::NONE, Limits::ours(0.0, 1.5)),
    ],
    outputs: &[
        Output { key: "weight", words: "weight on a metre", unit: Unit::KN_M },
        Output { key: "fs_over", words: "factor against overturning", unit: Unit::NONE },
        Output { key: "fs_sliding", words: "factor against sliding", unit: Unit::NONE },
        Output { key: "e", words: "eccentricity towards the toe", unit: Unit::M },
    ],
    run: |g| {
        let s = by_weight(&ByWeight {
            height: g.one("height")?,
            below: g.one("below")?,
            dug: g.one("dug")?,
            width: g.one("width")?,
            lean: g.one("lean")?,
            body: g.one("body")?,
            gamma: g.one("gamma")?,
            gamma_sat: g.one("gamma_sat")?,
            phi: g.one("phi")?,
            q: g.one("q")?,
            water: g.one("water")?,
            mu: g.one("mu")?,
        });
        Ok([s.weight, s.overturn, s.slide, s.eccentricity].map(Found::One).into())
    },
};
