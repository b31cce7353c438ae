//! How much harder does soil push when the ground shakes?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::{coulomb, rankine};
use crate::rows;

/// Active coefficient under a steady sideways and upward share of gravity.
///
/// # Source
/// Okabe (1926), Mononobe and Matsuo (1929); as in Das, Principles of Geotechnical Engineering, 7th ed., Ex. 13.9.
/// # Symbols
/// | φ, δ, θ, α | as Coulomb | angle | |
/// | k_h, k_v | shares of gravity sideways and upward | – | 0–0.5, ±0.5 (ours) |
/// # Gives
/// (K_AE, ψ) with P_AE = ½ γ H² (1 − k_v) K_AE. With k_h = 0 it is Coulomb's.
/// # Not for
/// φ − ψ − α < 0, where the ground itself slides; callers refuse that.
/// # Errors
/// None here.
/// # By hand
/// φ = 30°, δ = 15°, k_h = 0.2: ψ = 11.31°, K_AE = 0.452 (reference case EP-15).
pub fn kae<N: Number>(phi: N, delta: N, theta: N, alpha: N, kh: N, kv: N) -> (N, N) {
    let one = N::constant(1.0);
    let psi = (kh / (one - kv)).atan().named("ψ", Unit::DEG);
    let lean = (delta + theta + psi).cos();
    let under = (delta + phi).sin() * rows::not_below_zero((phi - psi - alpha).sin());
    let root = (under / (lean * (theta - alpha).cos())).sqrt().named("r", Unit::NONE);
    let top = (phi - theta - psi).cos().squared();
    let k = top / (psi.cos() * theta.cos().squared() * lean * (one + root).squared());
    (k.named("K_AE", Unit::NONE), psi)
}

/// Active force in an earthquake.
pub static MONONOBE_OKABE: Working = Working {
    name: "earth-pressure/mononobe-okabe",
    title: "How hard does soil push on a wall while the ground shakes, and how high?",
    source: Source {
        work: "Okabe, J. Japanese Soc. Civ. Eng. 12(1), 1926; Mononobe and Matsuo, World Engineering Congress, Tokyo, 1929",
        place: "height of the force after Seed and Whitman, 1970: the added part at 0.6 H",
    },
    not_for: "ground that slides by itself under this shaking; saturated loose sand",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::PHI,
        rows::DELTA,
        rows::THETA,
        rows::SLOPE,
        Input::new("kh", "k_h", "horizontal share of gravity", Unit::NONE, Limits::ours(0.0, 0.5)),
        Input::new("kv", "k_v", "upward share of gravity", Unit::NONE, Limits::ours(-0.5, 0.5)).or(0.0),
    ],
    outputs: &[
        Output { key: "psi", words: "angle of the shaken gravity", unit: Unit::DEG },
        Output { key: "kae", words: "active coefficient while shaking", unit: Unit::NONE },
        Output { key: "pae", words: "active force while shaking", unit: Unit::KN_M },
        Output { key: "ka", words: "active coefficient at rest of the ground", unit: Unit::NONE },
        Output { key: "pa", words: "active force at rest of the ground", unit: Unit::KN_M },
        Output { key: "z", words: "height of the force above the base", unit: Unit::M },
    ],
    run: |g| {
        let (h, gamma, phi, delta) = (g.one("height")?, g.one("gamma")?, g.one("phi")?, g.one("delta")?);
        let (theta, alpha, kh, kv) = (g.one("theta")?, g.one("alpha")?, g.one("kh")?, g.one("kv")?);
        let (k, psi) = kae(phi, delta, theta, alpha, kh, kv);
        if phi.value() - psi.value() - alpha.value() < -1e-9 {
            return Err(g.no_answer("the ground behind slides by itself under this shaking: φ − ψ − β is below zero"));
        }
        let ka = coulomb::ka(phi, delta, theta, alpha);
        let pa = rankine::triangle(ka, gamma, h, "P_a");
        let pae =
            (gamma * h.squared() * (groundhold_working::Shown::constant(1.0) - kv) * k * 0.5).named("P_AE", Unit::KN_M);
        let z = ((pa * h / 3.0 + (pae - pa) * h * 0.6) / pae).named("z", Unit::M);
        Ok([psi, k, pae, ka, pa, z].into_iter().map(Found::One).collect())
    },
};
