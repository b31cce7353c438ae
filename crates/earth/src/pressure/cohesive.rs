//! How hard does soil with cohesion push, and how deep does it crack?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::rankine;
use crate::rows::{self, not_below_zero};

/// What soil with cohesion does behind a smooth vertical wall and level ground.
pub struct Cracked<N> {
    /// Active coefficient.
    pub ka: N,
    /// Depth to which it cracks.
    pub crack: N,
    /// Force while the soil still clings to the wall above the crack's depth.
    pub before: N,
    /// Force once it has cracked.
    pub after: N,
    /// Height of that force above the base.
    pub arm: N,
}

/// Active force of soil with cohesion and friction, level ground.
///
/// # Source
/// Bell, "The lateral pressure and resistance of clay", Minutes of Proc. ICE 199 (1915); as in Das, Principles of
/// Foundation Engineering, 5th ed., Ex. 7.2.
/// # Symbols
/// | H, γ, φ, c | height, unit weight, friction angle, cohesion (or φ = 0 and c_u) | m, kN/m³, angle, kPa | |
/// # Gives
/// K_a, z_c = 2c/(γ√K_a), forces before and after cracking, arm of the latter. No force where z_c ≥ H.
/// # Not for
/// Water in the crack: add it. Lasting support of a wall: cohesion is lost with time.
/// # Errors
/// None here.
/// # By hand
/// H = 6 m, γ = 17.4, φ = 26°, c = 14.36 kPa: z_c = 2.64 m, 14.6 and 38.3 kN/m at 1.12 m (reference case EP-05).
pub fn cracked<N: Number>(height: N, gamma: N, phi: N, c: N) -> Cracked<N> {
    let ka = rankine::ka(phi);
    let crack = (c * 2.0 / (gamma * ka.sqrt())).named("z_c", Unit::M);
    let base = (ka * gamma * height - c * ka.sqrt() * 2.0).named("σ_base", Unit::KPA);
    let before = (ka * gamma * height.squared() * 0.5 - c * ka.sqrt() * height * 2.0).named("P_before", Unit::KN_M);
    let depth = not_below_zero(height - crack);
    let after = (not_below_zero(base) * depth * 0.5).named("P_a", Unit::KN_M);
    Cracked { ka, crack, before, after, arm: (depth / 3.0).named("a", Unit::M) }
}

/// Stress conjugate to the vertical one under sloping ground, soil with cohesion, before tension is cut off.
///
/// # Source
/// Mazindrani and Ganjali, "Lateral earth pressure problem of cohesive backfill with inclined surface", J. Geotech.
/// Geoenviron. Eng. 123(2) (1997); as in Das, Principles of Geotechnical Engineering, 7th ed., Ex. 13.6. Multiplied
/// out with the vertical stress, so that it also holds at the surface.
/// # Symbols
/// | σ | γz, vertical stress of the overburden | kPa | ≥ 0 |
/// | c, φ, α | cohesion, friction angle, slope | kPa, angle | α ≤ φ, or any α that cohesion holds |
/// # Gives
/// K″ · σ in kPa; times cos α it is the pressure along the slope. With c = 0 it is Rankine's.
/// # Not for
/// Seepage along the slope.
/// # Errors
/// None here.
/// # By hand
/// Reference case EP-14.
pub fn on_slope<N: Number>(stress: N, c: N, phi: N, alpha: N) -> N {
    let (cos_phi, sin_phi) = (phi.cos(), phi.sin());
    let (cos2, cos2_phi) = (alpha.cos().squared(), cos_phi.squared());
    let under = cos2 * (cos2 - cos2_phi) * stress.squared() * 4.0
        + c.squared() * cos2_phi * 4.0
        + c * stress * cos2 * sin_phi * cos_phi * 8.0;
    (cos2 * stress * 2.0 + c * cos_phi * sin_phi * 2.0 - not_below_zero(under).sqrt()) / cos2_phi - stress
}

/// Active force of soil with cohesion on a smooth wall.
pub static C_PHI: Working = Working {
    name: "earth-pressure/rankine-c-phi",
    title: "How deep does soil with cohesion crack, and how hard does it push before and after?",
    source: Source {
        work: "Bell, The lateral pressure and resistance of clay, Minutes of Proceedings ICE 199, 1915",
        place: "as in Das, Principles of Foundation Engineering, 5th ed., Ex. 7.2; with φ = 0 and c_u for undrained clay",
    },
    not_for: "water in the crack; support that must last",
    inputs: &[rows::HEIGHT, rows::GAMMA, rows::PHI, rows::COHESION],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "zc", words: "depth of the crack", unit: Unit::M },
        Output { key: "pa_before", words: "force before cracking", unit: Unit::KN_M },
        Output { key: "pa_after", words: "force after cracking", unit: Unit::KN_M },
        Output { key: "arm", words: "height of the force after cracking above the base", unit: Unit::M },
    ],
    run: |g| {
        let c = cracked(g.one("height")?, g.one("gamma")?, g.one("phi")?, g.one("c")?);
        Ok([c.ka, c.crack, c.before, c.after, c.arm].into_iter().map(Found::One).collect())
    },
};

/// Active force of soil with cohesion under a slope.
pub static MAZINDRANI: Working = Working {
    name: "earth-pressure/mazindrani",
    title: "How hard does soil with cohesion push where the ground behind rises?",
    source: Source {
        work: "Mazindrani and Ganjali, Lateral earth pressure problem of cohesive backfill with inclined surface, J. Geotech. Geoenviron. Eng. 123(2), 1997",
        place: "as in Das, Principles of Geotechnical Engineering, 7th ed., Ex. 13.6",
    },
    not_for: "seepage along the slope, water in the crack",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::PHI,
        Input::new("c", "c", "cohesion", Unit::KPA, Limits::ours(0.01, 500.0)),
        rows::SLOPE,
    ],
    outputs: &[
        Output { key: "z0", words: "depth of the crack", unit: Unit::M },
        Output { key: "k", words: "coefficient at the base", unit: Unit::NONE },
        Output { key: "pa", words: "force along the slope after cracking", unit: Unit::KN_M },
    ],
    run: |g| {
        let (h, gamma, phi) = (g.one("height")?, g.one("gamma")?, g.one("phi")?);
        let (c, alpha) = (g.one("c")?, g.one("alpha")?);
        if alpha.value() > phi.value() + 1e-9 {
            return Err(rankine::steep("earth-pressure/mazindrani", alpha.value(), phi.value()));
        }
        let one = groundhold_working::Shown::constant(1.0);
        let z0 = (c * 2.0 / gamma * ((one + phi.sin()) / (one - phi.sin())).sqrt()).named("z_0", Unit::M);
        let stress = (gamma * h).named("σ", Unit::KPA);
        let k = (on_slope(stress, c, phi, alpha) / stress).named("K", Unit::NONE);
        let p = (not_below_zero(k) * stress * alpha.cos() * not_below_zero(h - z0) * 0.5).named("P_a", Unit::KN_M);
        Ok([z0, k, p].into_iter().map(Found::One).collect())
    },
};
