//! Which coefficients does EN 1997-1 give for rough walls and sloping ground, pushing and pushed?

use groundhold_quantity::{Angle, Slope};
use groundhold_working::{Found, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use crate::rows;

/// Whether the soil pushes the wall or the wall the soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// The soil pushes.
    Active,
    /// The wall pushes the soil.
    Passive,
}

/// Coefficient K_γ of the pressure square to a vertical wall.
///
/// # Source
/// EN 1997-1:2004 Annex C.2 (formulas from memory; for level ground the same as Lancellotta, Géotechnique 52(8) (2002)).
/// # Symbols
/// | φ | friction angle | angle | 1°–50° (ours) |
/// | δ | wall friction; positive when it turns the thrust down (active) or the resistance up (passive) | angle | 0–φ |
/// | β | slope of the ground, rising away from the wall; negative where it falls away | angle | −φ to φ |
/// # Gives
/// K_γ with σ = K_γ γ z square to the wall; the shear on it is σ tan δ. On the cautious side of exact plasticity.
/// # Not for
/// Leaning walls (θ ≠ 0 is left out here).
/// # Errors
/// None here; the working refuses angles without a slip field.
/// # By hand
/// Passive, φ = 30°, δ = 15°, β = 0: m_t = 30°, m_w = 6.91°, K_γ = 4.288 (reference case EP-11).
pub fn k_gamma<N: Number>(state: State, phi: N, delta: N, slope: N) -> N {
    let (sign, sin_phi) = match state {
        State::Passive => (1.0, phi.sin()),
        State::Active => (-1.0, -phi.sin()),
    };
    let one = N::constant(1.0);
    let m_t = (((-slope.sin() / sin_phi).acos() - phi * sign - slope) / 2.0).named("m_t", Unit::DEG);
    let m_w = (((delta.sin() / phi.sin()).acos() - phi * sign - delta * sign) / 2.0).named("m_w", Unit::DEG);
    let v = (m_t + slope - m_w).named("v", Unit::DEG);
    let up = one + sin_phi * (m_w * 2.0 + phi * sign).sin();
    let down = one - sin_phi * (m_t * 2.0 + phi * sign).sin();
    let k_n = (up / down * (v * phi.tan() * (2.0 * sign)).exp()).named("K_n", Unit::NONE);
    (k_n * slope.cos().squared()).named("K_γ", Unit::NONE)
}

/// K_γ for typed angles, with its trace. A slope in front that falls away from the wall is negative.
///
/// # Errors
/// Angles outside their limits, δ > φ, or ground steeper than φ.
pub fn coefficient(state: State, phi: Angle, delta: Angle, slope: Slope) -> Result<(f64, Trace)> {
    let working = match state {
        State::Active => &ANNEX_C_ACTIVE,
        State::Passive => &ANNEX_C_PASSIVE,
    };
    let given = vec![phi.to_deg().into(), delta.to_deg().into(), slope.to_angle().to_deg().into()];
    rows::check(working, &given)?;
    let [phi, delta, slope] = [phi, delta, slope.to_angle()].map(rows::radians);
    possible(working.name, phi, delta, slope)?;
    Ok((k_gamma(state, phi, delta, slope), Trace::new(working, given)))
}

fn possible(working: &'static str, phi: f64, delta: f64, slope: f64) -> Result<()> {
    let no = |why: &str| Err(Refused::NoAnswer { working, why: why.into() });
    if delta > phi + 1e-9 {
        return no("wall friction δ is larger than the soil's own friction angle φ; take δ = φ at most");
    }
    if slope.abs() > phi - 1e-6 {
        return no("the ground is as steep as the soil's friction angle or steeper; it has no slip field there");
    }
    Ok(())
}

fn run<'s>(state: State, g: &groundhold_working::Given<'s>) -> Result<Vec<Found<'s>>> {
    let name = match state {
        State::Active => ANNEX_C_ACTIVE.name,
        State::Passive => ANNEX_C_PASSIVE.name,
    };
    let (phi, delta, slope) = (g.one("phi")?, g.one("delta")?, g.one("alpha")?);
    possible(name, phi.value(), delta.value(), slope.value())?;
    Ok(vec![Found::One(k_gamma(state, phi, delta, slope))])
}

const INPUTS: &[groundhold_working::Input] =
    &[groundhold_working::Input { limits: Limits::ours(1.0, 50.0), ..rows::PHI }, rows::DELTA, rows::SLOPE];
const SOURCE: Source = Source {
    work: "EN 1997-1:2004, Geotechnical design, general rules",
    place: "Annex C.2, from memory; level ground as Lancellotta, Géotechnique 52(8), 2002",
};

/// Active coefficient after EN 1997-1 Annex C.2.
pub static ANNEX_C_ACTIVE: Working = Working {
    name: "earth-pressure/en1997-c2-active",
    title: "Which active coefficient does EN 1997-1 give?",
    source: SOURCE,
    not_for: "leaning walls",
    inputs: INPUTS,
    outputs: &[Output { key: "ka", words: "active coefficient, square to the wall", unit: Unit::NONE }],
    run: |g| run(State::Active, g),
};

/// Passive coefficient after EN 1997-1 Annex C.2.
pub static ANNEX_C_PASSIVE: Working = Working {
    name: "earth-pressure/en1997-c2",
    title: "Which passive coefficient does EN 1997-1 give?",
    source: SOURCE,
    not_for: "leaning walls",
    inputs: INPUTS,
    outputs: &[Output { key: "kp", words: "passive coefficient, square to the wall", unit: Unit::NONE }],
    run: |g| run(State::Passive, g),
};
