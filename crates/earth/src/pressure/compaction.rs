//! How much push does a roller leave behind in compacted backfill?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::rankine;
use crate::rows;

/// Pressure locked in behind a wall that can yield, by compaction close to it.
///
/// # Source
/// Ingold, "The effects of compaction on retaining walls", Géotechnique 29(3) (1979); formula from memory.
/// # Symbols
/// | p | weight of the roller per metre width, with its centrifugal force | kN/m | 0.5–200 (ours) |
/// | γ, φ | unit weight, friction angle | kN/m³, angle | φ ≥ 5° (ours) |
/// # Gives
/// (K_a, σ_hm, z_c, h_c): coefficient, locked-in pressure √(2pγ/π), depth from which it is full, depth from which the
/// soil's own active pressure is larger.
/// # Not for
/// Walls that cannot move; clay.
/// # Errors
/// None here.
/// # By hand
/// p = 20 kN/m, γ = 20, φ = 35°: 15.96 kPa between 0.216 and 2.94 m (reference case EP-20).
pub fn locked_in<N: Number>(p: N, gamma: N, phi: N) -> (N, N, N, N) {
    let ka = rankine::ka(phi);
    let pressure = (p * gamma * 2.0 / std::f64::consts::PI).sqrt().named("σ_hm", Unit::KPA);
    let root = (p * 2.0 / (gamma * std::f64::consts::PI)).sqrt();
    (ka, pressure, (ka * root).named("z_c", Unit::M), (root / ka).named("h_c", Unit::M))
}

/// Pressure locked in by compaction.
pub static COMPACTION: Working = Working {
    name: "surcharge/compaction",
    title: "How much pressure does compaction leave behind a wall that can yield?",
    source: Source {
        work: "Ingold, The effects of compaction on retaining walls, Géotechnique 29(3), 1979",
        place: "formula from memory",
    },
    not_for: "walls that cannot move, clay",
    inputs: &[
        Input::new(
            "p",
            "p",
            "weight of the roller per metre width, with its centrifugal force",
            Unit::KN_M,
            Limits::ours(0.5, 200.0),
        ),
        rows::GAMMA,
        Input { limits: Limits::ours(5.0, 50.0), ..rows::PHI },
    ],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "sigma", words: "pressure locked in", unit: Unit::KPA },
        Output { key: "zc", words: "depth from which it is full", unit: Unit::M },
        Output { key: "hc", words: "depth from which active pressure is larger", unit: Unit::M },
    ],
    run: |g| {
        let (a, b, c, d) = locked_in(g.one("p")?, g.one("gamma")?, g.one("phi")?);
        Ok([a, b, c, d].into_iter().map(Found::One).collect())
    },
};
