//! How hard does clay push that has not had time to drain, with the crack behind the wall open?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::push::{GAMMA, HEIGHT, LOAD};

/// Push of undrained clay on a wall and its moment about the base; above the depth at which it would pull, it does nothing.
///
/// # Source
/// Rankine's state with φ = 0, after Bell, The lateral pressure and resistance of clay, Min. Proc. ICE 199 (1915): σ = γz + q − 2c_u; tension cut off.
/// # Symbols
/// | H, γ, c_u, q | height, unit weight, undrained strength, load | m, kN/m³, kPa, kPa | |
/// # Gives
/// P (kN/m) and M (kNm/m); fall as c_u grows.
/// # Not for
/// Water in the crack, fissured clay, clay that has had years to drain.
/// # Errors
/// None here.
/// # By hand
/// H = 2, γ = 18, c_u = 9: crack 2 · 9/18 = 1 m, P = 18 · 1²/2 = 9 kN/m, M = 9/3 = 3 (case `SW-04`).
pub fn push_in_clay<N: Number>(height: N, gamma: N, cu: N, q: N) -> (N, N) {
    let zero = N::constant(0.0);
    let crack = ((cu * 2.0 - q) / gamma).max(zero).min(height).named("z_c", Unit::M);
    let pushed = height - crack;
    let top = (q - cu * 2.0).max(zero).named("σ_top", Unit::KPA);
    let even = top * height;
    let growing = gamma * pushed.squared() / 2.0;
    let p = (even + growing).named("P", Unit::KN_M);
    let m = (even * height / 2.0 + growing * pushed / 3.0).named("M", Unit::KNM);
    (p, m)
}

/// Working of [`push_in_clay`].
pub static PUSH_IN_CLAY: Working = Working {
    name: "standing/push-in-clay",
    title: "How hard does clay push a standing wall before it drains?",
    source: Source {
        work: "Bell, The lateral pressure and resistance of clay, Min. Proc. Institution of Civil Engineers 199, 1915",
        place: "active pressure with φ = 0; tension cut off",
    },
    not_for: "water in the crack, fissured clay, clay that had years to drain",
    inputs: &[HEIGHT, GAMMA, Input::new("cu", "c_u", "undrained strength", Unit::KPA, Limits::ours(0.0, 500.0)), LOAD],
    outputs: &[
        Output { key: "p", words: "push on a metre", unit: Unit::KN_M },
        Output { key: "m", words: "its moment about the base, on a metre", unit: Unit::KNM },
    ],
    run: |g| {
        let (p, m) = push_in_clay(g.one("height")?, g.one("gamma")?, g.one("cu")?, g.one("q")?);
        Ok(vec![Found::One(p), Found::One(m)])
    },
};
