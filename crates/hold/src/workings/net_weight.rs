//! What is left of a wall's weight where water lifts its underside?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Weight less uplift, and its distance from the toe.
///
/// # Source
/// Equilibrium; pore pressure under the base falling in a straight line from the head behind to nothing at the toe, as in
/// Das, Principles of Foundation Engineering, 7th ed. (2011), for seepage under low structures; from memory.
/// # Symbols
/// | V_i, x_i | weights and their distances from the toe | kN/m, m | |
/// | U, u | uplift and its distance from the toe | kN/m, m | |
/// # Gives
/// (V, x): what presses on the ground, and where. V below zero: it floats.
/// # Not for
/// A base on rock with open joints, where the full head may stand under all of it.
/// # Errors
/// None.
/// # By hand
/// 20 kN/m at 0.5 m, uplift 5 kN/m at 0.667 m: 15 kN/m at (10 − 3.33)/15 = 0.444 m.
pub fn net_weight<N: Number>(weights: &[(N, N)], uplift: N, at: N) -> (N, N) {
    let zero = N::constant(0.0);
    let add = |terms: Vec<N>| terms.into_iter().reduce(|a, b| a + b).unwrap_or(zero);
    let down = add(weights.iter().map(|w| w.0).collect()).named("ΣV", Unit::KN_M);
    let moment = add(weights.iter().map(|w| w.0 * w.1).collect()).named("ΣV·x", Unit::KNM);
    let v = (down - uplift).named("V", Unit::KN_M);
    (v, ((moment - uplift * at) / v).named("x", Unit::M))
}

/// Weight less uplift.
pub static NET_WEIGHT: Working = Working {
    name: "walls/net-weight",
    title: "What is left of a wall's weight where water lifts its underside?",
    source: Source {
        work: "equilibrium; uplift falling in a straight line from heel to toe",
        place: "from memory, Das, Principles of Foundation Engineering, 7th ed., 2011",
    },
    not_for: "a base on rock with open joints",
    inputs: &[
        Input::new("weights", "V", "weights", Unit::KN_M, Limits::ours(0.0, 1e5)),
        Input::new("arms", "x", "their distances from the toe", Unit::M, Limits::ours(0.0, 100.0)),
        Input::new("uplift", "U", "uplift", Unit::KN_M, Limits::ours(0.0, 1e5)).or(0.0),
        Input::new("uplift_arm", "u", "its distance from the toe", Unit::M, Limits::ours(0.0, 100.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "v", words: "weight that presses on the ground", unit: Unit::KN_M },
        Output { key: "x", words: "its distance from the toe", unit: Unit::M },
    ],
    run: |g| {
        let (w, x) = (g.many("weights")?, g.many("arms")?);
        if w.len() != x.len() {
            return Err(g.no_answer("every weight needs its arm"));
        }
        let weights: Vec<_> = w.into_iter().zip(x).collect();
        let (v, x) = net_weight(&weights, g.one("uplift")?, g.one("uplift_arm")?);
        Ok([v, x].map(Found::One).into())
    },
};
