//! How hard do soil, a load and standing water push a wall as it was found?

use groundhold_earth::pressure::rankine;
use groundhold_quantity::WATER;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// What pushes; m, kN, radians.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PushAsFound<N> {
    /// From the ground behind down to the base of the push.
    pub height: N,
    /// Moist unit weight.
    pub gamma: N,
    /// Saturated unit weight.
    pub gamma_sat: N,
    /// Friction angle.
    pub phi: N,
    /// Load on the ground behind.
    pub q: N,
    /// Water above the base of the push.
    pub water: N,
}

/// Push on a wall, and its moment about the base, with water standing behind it.
///
/// # Source
/// Rankine, "On the Stability of Loose Earth", Phil. Trans. R. Soc. 147 (1857); water: full hydrostatic pressure, soil under it
/// with γ_sat − γ_w, as in EN 1997-1:2004 9.6 (from memory).
/// # Symbols
/// | H, γ, γ_sat, φ, q, h_w | height, unit weights, friction angle, load, water above the base | | |
/// # Gives
/// P (kN/m) and M (kNm/m). Both grow with load and water and fall with φ.
/// # Not for
/// Sloping ground and rough backs (the wall is then pushed otherwise); seepage; cohesion.
/// # Errors
/// None here.
/// # By hand
/// H = 1.37, γ = 18, φ = 30°, dry: 1/3 · 18 · 1.37²/2 = 5.63 kN/m, M = 5.63 · 1.37/3 = 2.57 (case `SW-01`).
pub fn push_as_found<N: Number>(i: &PushAsFound<N>) -> (N, N) {
    let k = rankine::ka(i.phi).named("K_a", Unit::NONE);
    let wet = i.water.min(i.height);
    let dry = i.height - wet;
    let top = (k * i.gamma * dry.squared() / 2.0).named("P₁", Unit::KN_M);
    let load = (k * i.q * i.height).named("P₂", Unit::KN_M);
    let above = (k * i.gamma * dry * wet).named("P₃", Unit::KN_M);
    let under = (k * (i.gamma_sat - WATER.to_kn_per_m3()) * wet.squared() / 2.0).named("P₄", Unit::KN_M);
    let water = (wet.squared() * (WATER.to_kn_per_m3() / 2.0)).named("P_w", Unit::KN_M);
    let p = (top + load + above + under + water).named("P", Unit::KN_M);
    let m = top * (wet + dry / 3.0) + load * i.height / 2.0 + above * wet / 2.0 + (under + water) * wet / 3.0;
    (p, m.named("M", Unit::KNM))
}

pub(super) const HEIGHT: Input =
    Input::new("height", "H", "ground behind above the base of the push", Unit::M, Limits::ours(0.05, 20.0));
pub(super) const GAMMA: Input =
    Input::new("gamma", "γ", "moist unit weight of the soil", Unit::KN_M3, Limits::ours(8.0, 27.0));
pub(super) const GAMMA_SAT: Input =
    Input::new("gamma_sat", "γ_sat", "saturated unit weight of the soil", Unit::KN_M3, Limits::ours(9.9, 27.0));
pub(super) const PHI: Input = Input::new("phi", "φ", "friction angle of the soil", Unit::DEG, Limits::ours(0.0, 50.0));
pub(super) const LOAD: Input =
    Input::new("q", "q", "load on the ground behind", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0);
pub(super) const WATER_UP: Input =
    Input::new("water", "h_w", "water above the base of the push", Unit::M, Limits::ours(0.0, 20.0)).or(0.0);

/// Working of [`push_as_found`].
pub static PUSH_AS_FOUND: Working = Working {
    name: "standing/push",
    title: "How hard do soil, a load and standing water push a wall that stands?",
    source: Source {
        work: "Rankine, Phil. Trans. R. Soc. 147, 1857; hydrostatic water, EN 1997-1:2004",
        place: "water: 9.6, from memory",
    },
    not_for: "sloping ground, rough backs, cohesion, seepage",
    inputs: &[HEIGHT, GAMMA, GAMMA_SAT, PHI, LOAD, WATER_UP],
    outputs: &[
        Output { key: "p", words: "push on a metre", unit: Unit::KN_M },
        Output { key: "m", words: "its moment about the base, on a metre", unit: Unit::KNM },
    ],
    run: |g| {
        let (p, m) = push_as_found(&PushAsFound {
            height: g.one("height")?,
            gamma: g.one("gamma")?,
            gamma_sat: g.one("gamma_sat")?,
            phi: g.one("phi")?,
            q: g.one("q")?,
            water: g.one("water")?,
        });
        Ok(vec![Found::One(p), Found::One(m)])
    },
};
