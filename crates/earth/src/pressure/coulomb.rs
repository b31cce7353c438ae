//! How hard does soil push on a rough wall, and how hard does it push back, after Coulomb?

use groundhold_quantity::Angle;
use groundhold_working::{Found, Number, Output, Result, Source, Trace, Unit, Working};

use super::rankine::{steep, triangle};
use crate::rows;

/// Active coefficient of a plane wedge.
///
/// # Source
/// Coulomb (1776), closed form by Müller-Breslau (1906); as in Das, Principles of Foundation Engineering, 7th ed. (2011),
/// eq. 7.26: K_a = cos²(φ−θ) / (cos²θ cos(δ+θ) [1 + √(sin(δ+φ) sin(φ−α) / (cos(δ+θ) cos(θ−α)))]²).
/// # Symbols
/// | φ, δ | friction in the soil, between soil and wall | angle | δ ≤ φ |
/// | θ | back face from vertical, positive when the soil rests on it | angle | −30°–40° (ours) |
/// | α | slope of the ground, rising away | angle | α ≤ φ |
/// # Gives
/// K_a with P = ½ K_a γ H² at δ + θ below horizontal. Falls with φ; equals Rankine with δ = θ = α = 0.
/// # Not for
/// Cohesion; broken ground (use the trial wedge); a wall that sinks with its backfill (take δ = 0).
/// # Errors
/// None here; callers refuse α > φ.
/// # By hand
/// φ = 30°, δ = 15°, θ = 5°, α = 10°: 0.3872 (reference case EP-09).
pub fn ka<N: Number>(phi: N, delta: N, theta: N, alpha: N) -> N {
    let one = N::constant(1.0);
    let under = rows::not_below_zero((delta + phi).sin() * (phi - alpha).sin());
    let root = (under / ((delta + theta).cos() * (theta - alpha).cos())).sqrt().named("r", Unit::NONE);
    let top = (phi - theta).cos().squared();
    (top / (theta.cos().squared() * (delta + theta).cos() * (one + root).squared())).named("K_a", Unit::NONE)
}

/// Passive coefficient of a plane wedge.
///
/// # Source
/// As [`ka`]; Das, Principles of Geotechnical Engineering, 7th ed., eq. 13.74 (place from memory):
/// K_p = cos²(φ+θ) / (cos²θ cos(δ−θ) [1 − √(sin(φ+δ) sin(φ+α) / (cos(δ−θ) cos(α−θ)))]²).
/// # Symbols
/// As [`ka`].
/// # Gives
/// K_p; grows with φ and δ.
/// # Not for
/// δ > φ/2: a plane slip overstates resistance there by half and more. Use [`super::annex_c`].
/// # Errors
/// None here; the working refuses where the bracket vanishes.
/// # By hand
/// φ = 30°, δ = 15°: 4.977 (reference case EP-11).
pub fn kp<N: Number>(phi: N, delta: N, theta: N, alpha: N) -> N {
    let one = N::constant(1.0);
    let under = rows::not_below_zero((phi + delta).sin() * (phi + alpha).sin());
    let root = (under / ((delta - theta).cos() * (alpha - theta).cos())).sqrt().named("r", Unit::NONE);
    let top = (phi + theta).cos().squared();
    (top / (theta.cos().squared() * (delta - theta).cos() * (one - root).squared())).named("K_p", Unit::NONE)
}

/// The active coefficient for typed angles, with its trace.
///
/// # Errors
/// Ground steeper than φ, or an angle outside the limits.
pub fn active(phi: Angle, delta: Angle, theta: Angle, slope: Angle) -> Result<(f64, Trace)> {
    let degrees = [phi, delta, theta, slope].map(|a| a.to_deg().into());
    let given = [1.0.into(), 20.0.into()].into_iter().chain(degrees).collect::<Vec<_>>();
    rows::check(&COULOMB, &given)?;
    if slope.to_rad() > phi.to_rad() + 1e-9 {
        return Err(steep(COULOMB.name, slope.to_rad(), phi.to_rad()));
    }
    let [phi, delta, theta, slope] = [phi, delta, theta, slope].map(rows::radians);
    Ok((ka(phi, delta, theta, slope), Trace::new(&COULOMB, given)))
}

/// Active force of a plane wedge.
pub static COULOMB: Working = Working {
    name: "earth-pressure/coulomb",
    title: "How hard does cohesionless soil push on a rough wall?",
    source: Source {
        work: "Coulomb, Essai sur une application des règles de maximis et minimis, Paris, 1776",
        place: "as in Das, Principles of Foundation Engineering, 7th ed., 2011, eq. 7.26",
    },
    not_for: "cohesion, broken ground (trial wedge), ground steeper than the friction angle",
    inputs: &[rows::HEIGHT, rows::GAMMA, rows::PHI, rows::DELTA, rows::THETA, rows::SLOPE],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "pa", words: "active force", unit: Unit::KN_M },
        Output { key: "ph", words: "its horizontal part", unit: Unit::KN_M },
        Output { key: "pv", words: "its part down the wall", unit: Unit::KN_M },
        Output { key: "arm", words: "height of the force above the base", unit: Unit::M },
    ],
    run: |g| {
        let (h, gamma, phi) = (g.one("height")?, g.one("gamma")?, g.one("phi")?);
        let (delta, theta, alpha) = (g.one("delta")?, g.one("theta")?, g.one("alpha")?);
        if alpha.value() > phi.value() + 1e-9 {
            return Err(steep("earth-pressure/coulomb", alpha.value(), phi.value()));
        }
        let k = ka(phi, delta, theta, alpha);
        let pa = triangle(k, gamma, h, "P_a");
        let ph = (pa * (delta + theta).cos()).named("P_h", Unit::KN_M);
        let pv = (pa * (delta + theta).sin()).named("P_v", Unit::KN_M);
        Ok([k, pa, ph, pv, (h / 3.0).named("a", Unit::M)].into_iter().map(Found::One).collect())
    },
};

/// Passive force of a plane wedge.
pub static COULOMB_PASSIVE: Working = Working {
    name: "earth-pressure/coulomb-passive",
    title: "How hard does soil push back on a plane wedge?",
    source: Source {
        work: "Coulomb, Essai sur une application des règles de maximis et minimis, Paris, 1776",
        place: "as in Das, Principles of Geotechnical Engineering, 7th ed., 13.13",
    },
    not_for: "wall friction above half the friction angle, where it overstates; use `earth-pressure/en1997-c2`",
    inputs: &[rows::HEIGHT, rows::GAMMA, rows::PHI, rows::DELTA, rows::THETA, rows::SLOPE],
    outputs: &[
        Output { key: "kp", words: "passive coefficient", unit: Unit::NONE },
        Output { key: "pp", words: "passive force", unit: Unit::KN_M },
    ],
    run: |g| {
        let (h, gamma, phi) = (g.one("height")?, g.one("gamma")?, g.one("phi")?);
        let (delta, theta, alpha) = (g.one("delta")?, g.one("theta")?, g.one("alpha")?);
        let k = kp(phi, delta, theta, alpha);
        if !k.value().is_finite() || k.value() > 1000.0 || -alpha.value() > phi.value() + 1e-9 {
            return Err(g.no_answer("with these angles a plane wedge has no passive resistance that can be found"));
        }
        Ok([k, triangle(k, gamma, h, "P_p")].into_iter().map(Found::One).collect())
    },
};
