//! How much harder does soil push when the ground shakes?

use groundhold_quantity::{Length, LineForce};
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::{Backfill, Spread, coulomb, rankine};
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
            return Err(g.no_answer(SLIDES));
        }
        let ka = coulomb::ka(phi, delta, theta, alpha);
        let pa = rankine::triangle(ka, gamma, h, "P_a");
        let pae =
            (gamma * h.squared() * (groundhold_working::Shown::constant(1.0) - kv) * k * 0.5).named("P_AE", Unit::KN_M);
        let z = ((pa * h / 3.0 + (pae - pa) * h * 0.6) / pae).named("z", Unit::M);
        Ok([psi, k, pae, ka, pa, z].into_iter().map(Found::One).collect())
    },
};

/// Passive coefficient while the ground shakes: the least resistance, the shake turned against it.
///
/// # Source
/// Okabe (1926), Mononobe and Matsuo (1929), passive case; as in Kramer, Geotechnical Earthquake Engineering, Prentice Hall
/// (1996), 11.6.1 (formula from memory).
/// # Symbols
/// | φ, δ, θ, α, k_h, k_v | as [`kae`] | | |
/// # Gives
/// (K_PE, ψ) with P_PE = ½ γ H² (1 − k_v) K_PE. With k_h = 0 it is Coulomb's.
/// # Not for
/// δ above φ/2: a plane slip overstates the resistance, by half and more; use a coefficient of a curved slip and take off
/// the share that the shaking takes here.
/// # Errors
/// None here; callers refuse φ − ψ + α < 0.
/// # By hand
/// φ = 30°, δ = 0, k_h = 0.2: ψ = 11.31°, K_PE = 2.629 (reference case MP-01).
pub fn kpe<N: Number>(phi: N, delta: N, theta: N, alpha: N, kh: N, kv: N) -> (N, N) {
    let one = N::constant(1.0);
    let psi = (kh / (one - kv)).atan().named("ψ", Unit::DEG);
    let lean = (delta - theta + psi).cos();
    let under = (delta + phi).sin() * rows::not_below_zero((phi + alpha - psi).sin());
    let root = (under / (lean * (alpha - theta).cos())).sqrt().named("r", Unit::NONE);
    let top = (phi + theta - psi).cos().squared();
    let k = top / (psi.cos() * theta.cos().squared() * lean * (one - root).squared());
    (k.named("K_PE", Unit::NONE), psi)
}

/// How hard the ground shakes, as steady shares of gravity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shaking {
    /// Sideways.
    pub horizontal: f64,
    /// Upward.
    pub vertical: f64,
}

/// The push of a backfill while the ground shakes.
#[derive(Debug, Clone, PartialEq)]
pub struct Shaken {
    /// Coefficient while shaking, in the direction of δ.
    pub coefficient: f64,
    /// Horizontal force per metre run.
    pub horizontal: LineForce,
    /// Its height above the base.
    pub arm: Length,
    /// Horizontal pressure: the part at rest grows with depth, the part that the shaking adds is larger above.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

/// The push of a dry backfill on a vertical wall while the ground shakes. The part that shaking adds acts at 0.6 H (Seed
/// and Whitman, 1970), drawn as a trapezium whose centroid lies there. Loads and water are not counted.
///
/// # Errors
/// Ground that slides by itself under this shaking, or a value outside the working's limits.
pub fn shaken(backfill: &Backfill, shaking: Shaking) -> Result<Shaken> {
    let b = backfill;
    let (slope, delta) = (b.slope.to_angle(), b.wall_friction);
    let given = [
        b.height.to_m(),
        b.soil.unit_weight.to_kn_per_m3(),
        b.soil.phi.to_deg(),
        delta.to_deg(),
        0.0,
        slope.to_deg(),
        shaking.horizontal,
        shaking.vertical,
    ];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&MONONOBE_OKABE, &values)?;
    let [phi, delta, slope] = [b.soil.phi, delta, slope].map(rows::radians);
    let (k, psi) = kae(phi, delta, 0.0, slope, shaking.horizontal, shaking.vertical);
    if phi - psi - slope < -1e-9 {
        return Err(Refused::NoAnswer { working: MONONOBE_OKABE.name, why: SLIDES.into() });
    }
    let (h, cos) = (given[0], Number::cos(delta));
    let still = coulomb::ka(phi, delta, 0.0, slope) * given[1] * cos;
    let all = k * given[1] * cos * (1.0 - shaking.vertical);
    let (pa, pae) = (0.5 * still * h * h, 0.5 * all * h * h);
    // A trapezium with centroid at 0.6 H above the base has 1.6 times its mean above and 0.4 times below.
    let added = (pae - pa) / h;
    let spread = Spread::of(&[0.0, h], &[1.6 * added, still * h + 0.4 * added]);
    Ok(Shaken {
        coefficient: k,
        horizontal: LineForce::kn_per_m(pae),
        arm: spread.arm_above(b.height),
        spread,
        trace: Trace::new(&MONONOBE_OKABE, values),
    })
}

const SLIDES: &str = "the ground behind slides by itself under this shaking: φ − ψ − β is below zero";

/// Passive force in an earthquake.
pub static MONONOBE_OKABE_PASSIVE: Working = Working {
    name: "earth-pressure/mononobe-okabe-passive",
    title: "How hard does soil push back while the ground shakes?",
    source: Source {
        work: "Okabe, J. Japanese Soc. Civ. Eng. 12(1), 1926; Mononobe and Matsuo, World Engineering Congress, Tokyo, 1929",
        place: "passive case as in Kramer, Geotechnical Earthquake Engineering, 1996, 11.6.1, from memory",
    },
    not_for: "wall friction above half the friction angle, where a plane slip overstates the resistance",
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
        Output { key: "kpe", words: "passive coefficient while shaking", unit: Unit::NONE },
        Output { key: "ppe", words: "passive force while shaking", unit: Unit::KN_M },
        Output { key: "overstates", words: "yes where δ is above φ/2", unit: Unit::NONE },
    ],
    run: |g| {
        let (h, gamma, phi, delta) = (g.one("height")?, g.one("gamma")?, g.one("phi")?, g.one("delta")?);
        let (theta, alpha, kh, kv) = (g.one("theta")?, g.one("alpha")?, g.one("kh")?, g.one("kv")?);
        let (k, psi) = kpe(phi, delta, theta, alpha, kh, kv);
        if phi.value() - psi.value() + alpha.value() < -1e-9 {
            return Err(g.no_answer("the ground in front slides by itself under this shaking: φ − ψ + β is below zero"));
        }
        if !k.value().is_finite() || k.value() > 1000.0 {
            return Err(g.no_answer("with these angles a plane wedge has no passive resistance that can be found"));
        }
        let one = groundhold_working::Shown::constant(1.0);
        let ppe = (gamma * h.squared() * (one - kv) * k * 0.5).named("P_PE", Unit::KN_M);
        let overstates = delta.value() > phi.value() / 2.0 + 1e-12;
        if overstates {
            g.sheet().remark("δ is above φ/2: a plane slip overstates this resistance");
        }
        let word = if overstates { "yes" } else { "no" };
        Ok(vec![Found::One(psi), Found::One(k), Found::One(ppe), Found::Word(word.into())])
    },
};

/// The hardest shaking under which ground still stands by itself.
pub static HARDEST_SHAKING: Working = Working {
    name: "earth-pressure/hardest-shaking",
    title: "From which shaking on does sloping ground slide by itself, so that no push can be found?",
    source: Source {
        work: "Richards and Elms, Seismic behavior of gravity retaining walls, J. Geotech. Eng. Div. ASCE 105(GT4), 1979",
        place: "φ − ψ − β ≥ 0, so k_h ≤ (1 − k_v) tan(φ − β), from memory",
    },
    not_for: "ground with cohesion, which stands longer",
    inputs: &[
        rows::PHI,
        rows::SLOPE,
        Input::new("kv", "k_v", "upward share of gravity", Unit::NONE, Limits::ours(-0.5, 0.5)).or(0.0),
    ],
    outputs: &[Output { key: "kh", words: "hardest horizontal share of gravity", unit: Unit::NONE }],
    run: |g| {
        let (phi, slope) = (g.one("phi")?, g.one("alpha")?);
        if slope.value() > phi.value() + 1e-9 {
            return Err(rankine::steep("earth-pressure/hardest-shaking", slope.value(), phi.value()));
        }
        let one = groundhold_working::Shown::constant(1.0);
        let kh = (rows::not_below_zero((phi - slope).tan()) * (one - g.one("kv")?)).named("k_h", Unit::NONE);
        Ok(vec![Found::One(kh)])
    },
};
