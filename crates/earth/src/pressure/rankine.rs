//! How hard does cohesionless soil push on a smooth wall, after Rankine, and after Chu where wall and ground lean?

use groundhold_quantity::Angle;
use groundhold_working::{Found, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use crate::rows::{self, not_below_zero};

/// Active coefficient, level ground, smooth vertical wall.
///
/// # Source
/// Rankine, "On the Stability of Loose Earth", Phil. Trans. R. Soc. 147 (1857).
/// # Symbols
/// | φ | effective friction angle | angle | 0°–50° (ours) |
/// # Gives
/// K_a, 0 < K_a ≤ 1; falls as φ rises. With φ = 0 it is 1: at rest and active meet.
/// # Not for
/// A rough or leaning face or rising ground: `coulomb::ka`, [`ka_slope`], [`chu`].
/// # Errors
/// None.
/// # By hand
/// φ = 36°: tan² 27° = 0.2596 (reference case EP-01).
pub fn ka<N: Number>(phi: N) -> N {
    (N::degrees(45.0) - phi / 2.0).tan().squared().named("K_a", Unit::NONE)
}

/// Passive coefficient, level ground, smooth vertical wall. Source and limits as [`ka`]; K_p = tan²(45° + φ/2).
pub fn kp<N: Number>(phi: N) -> N {
    (N::degrees(45.0) + phi / 2.0).tan().squared().named("K_p", Unit::NONE)
}

/// Active coefficient on a vertical plane under sloping ground; the thrust is parallel to the ground.
///
/// # Source
/// Rankine (1857); as in Das, Principles of Foundation Engineering, 7th ed. (2011), eq. 7.21 (place from memory).
/// # Symbols
/// | φ | effective friction angle | angle | 0°–50° (ours) |
/// | β | slope of the ground, rising away | angle | 0 ≤ β ≤ φ (author) |
/// # Gives
/// K_a with P = ½ K_a γ H². Grows with β up to cos β at β = φ.
/// # Not for
/// β > φ, where the square root has no answer; callers refuse that first.
/// # Errors
/// None here.
/// # By hand
/// φ = 30°, β = 10°: 0.3495 (table EP-T2 in `reference/pressure.toml`).
pub fn ka_slope<N: Number>(phi: N, slope: N) -> N {
    if slope.value() == 0.0 {
        return ka(phi);
    }
    let cos = slope.cos();
    let s = not_below_zero(cos.squared() - phi.cos().squared()).sqrt().named("s", Unit::NONE);
    (cos * (cos - s) / (cos + s)).named("K_a", Unit::NONE)
}

/// Passive coefficient on a vertical plane under sloping ground: the same with the signs of the root changed. Falls to
/// cos β at β = φ; the same for ground that rises and ground that falls away.
pub fn kp_slope<N: Number>(phi: N, slope: N) -> N {
    if slope.value() == 0.0 {
        return kp(phi);
    }
    let cos = slope.cos();
    let s = not_below_zero(cos.squared() - phi.cos().squared()).sqrt().named("s", Unit::NONE);
    (cos * (cos + s) / (cos - s)).named("K_p", Unit::NONE)
}

/// Generalised Rankine coefficient for a leaning back and sloping ground, with the thrust's direction.
///
/// # Source
/// Chu, "Rankine's Analysis of Active and Passive Pressures in Dry Sands", Soils and Foundations 31(4) (1991); as in
/// Das, Principles of Geotechnical Engineering, 7th ed., eq. 13.19 to 13.21 (places from memory).
/// # Symbols
/// | φ, α, θ | friction angle, slope of the ground, back face from vertical | angle | 0 ≤ α ≤ φ (author) |
/// # Gives
/// (K_a, ψ, β): coefficient, auxiliary angle, angle of the thrust to the normal of the back.
/// # Not for
/// A back so flat that the thrust would need more friction than the wall has: compare β with δ.
/// # Errors
/// None here; callers refuse α > φ.
/// # By hand
/// φ = 30°, α = 20°, θ = 20°: ψ = 63.16°, K_a = 0.7758, β = 29.95° (reference case EP-07).
pub fn chu<N: Number>(phi: N, alpha: N, theta: N) -> (N, N, N) {
    let (sin_phi, sin_alpha) = (phi.sin(), alpha.sin());
    let psi = ((sin_alpha / sin_phi).asin() - alpha + theta * 2.0).named("ψ", Unit::DEG);
    let root = (sin_phi.squared() - sin_phi * psi.cos() * 2.0 + 1.0).sqrt();
    let below = theta.cos().squared() * (alpha.cos() + not_below_zero(sin_phi.squared() - sin_alpha.squared()).sqrt());
    let k = ((alpha - theta).cos() * root / below).named("K_a", Unit::NONE);
    let one = N::constant(1.0);
    let beta = (sin_phi * psi.sin() / (one - sin_phi * psi.cos())).atan().named("β_a", Unit::DEG);
    (k, psi, beta)
}

/// Force of a triangle of pressure: ½ K γ H².
pub(super) fn triangle<N: Number>(k: N, gamma: N, height: N, symbol: &'static str) -> N {
    (k * gamma * height.squared() * 0.5).named(symbol, Unit::KN_M)
}

/// The active coefficient for typed angles, with its trace.
///
/// # Errors
/// Ground steeper than φ, or an angle outside the limits.
pub fn active(phi: Angle, slope: Angle) -> Result<(f64, Trace)> {
    let given = vec![1.0.into(), 20.0.into(), phi.to_deg().into(), slope.to_deg().into()];
    rows::check(&RANKINE, &given)?;
    if slope.to_rad() > phi.to_rad() + 1e-9 {
        return Err(steep(RANKINE.name, slope.to_rad(), phi.to_rad()));
    }
    Ok((ka_slope(rows::radians(phi), rows::radians(slope).max(0.0)), Trace::new(&RANKINE, given)))
}

pub(crate) fn steep(working: &'static str, slope: f64, phi: f64) -> groundhold_working::Refused {
    groundhold_working::Refused::NoAnswer {
        working,
        why: format!(
            "the ground rises at {:.1}°, steeper than the soil's friction angle of {:.1}°; such ground has no active state and moves by itself",
            slope.to_degrees(),
            phi.to_degrees()
        ),
    }
}

/// Active and passive force on a smooth vertical wall.
pub static RANKINE: Working = Working {
    name: "earth-pressure/rankine",
    title: "How hard does cohesionless soil push on a smooth vertical wall, and how hard does it push back?",
    source: Source {
        work: "Rankine, On the Stability of Loose Earth, Phil. Trans. R. Soc. 147, 1857",
        place: "whole paper",
    },
    not_for: "rough or leaning walls (Coulomb, Chu), ground steeper than the friction angle, cohesion, water",
    inputs: &[rows::HEIGHT, rows::GAMMA, rows::PHI, rows::SLOPE],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "kp", words: "passive coefficient", unit: Unit::NONE },
        Output { key: "pa", words: "active force along the slope", unit: Unit::KN_M },
        Output { key: "pp", words: "passive force along the slope", unit: Unit::KN_M },
        Output { key: "arm", words: "height of the force above the base", unit: Unit::M },
    ],
    run: |g| {
        let (h, gamma, phi, slope) = (g.one("height")?, g.one("gamma")?, g.one("phi")?, g.one("alpha")?);
        if slope.value() > phi.value() + 1e-9 {
            return Err(steep("earth-pressure/rankine", slope.value(), phi.value()));
        }
        let slope = not_below_zero(slope);
        let (a, p) = (ka_slope(phi, slope), kp_slope(phi, slope));
        let (pa, pp) = (triangle(a, gamma, h, "P_a"), triangle(p, gamma, h, "P_p"));
        let arm = (h / 3.0).named("a", Unit::M);
        Ok([a, p, pa, pp, arm].into_iter().map(Found::One).collect())
    },
};

/// Generalised Rankine force, leaning back and sloping ground.
pub static CHU: Working = Working {
    name: "earth-pressure/rankine-chu",
    title: "How hard does cohesionless soil push where both the back of the wall and the ground lean?",
    source: Source {
        work: "Chu, Rankine's Analysis of Active and Passive Pressures in Dry Sands, Soils and Foundations 31(4), 1991",
        place: "as in Das, Principles of Geotechnical Engineering, 7th ed., 13.5",
    },
    not_for: "ground steeper than the friction angle; friction on the wall smaller than the angle found",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        groundhold_working::Input { limits: Limits::ours(1.0, 50.0), ..rows::PHI },
        rows::SLOPE,
        rows::THETA,
    ],
    outputs: &[
        Output { key: "psi", words: "auxiliary angle", unit: Unit::DEG },
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "pa", words: "active force", unit: Unit::KN_M },
        Output { key: "beta", words: "angle of the force to the normal of the back", unit: Unit::DEG },
        Output { key: "arm", words: "height of the force above the base", unit: Unit::M },
    ],
    run: |g| {
        let (h, gamma, phi) = (g.one("height")?, g.one("gamma")?, g.one("phi")?);
        let (alpha, theta) = (g.one("alpha")?, g.one("theta")?);
        if alpha.value().abs() > phi.value() + 1e-9 {
            return Err(steep("earth-pressure/rankine-chu", alpha.value().abs(), phi.value()));
        }
        let (k, psi, beta) = chu(phi, alpha, theta);
        let pa = triangle(k, gamma, h, "P_a");
        Ok([psi, k, pa, beta, (h / 3.0).named("a", Unit::M)].into_iter().map(Found::One).collect())
    },
};
