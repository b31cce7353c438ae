//! What does the ground before a key under a footing hold?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Passive resistance on a key, with what lies over it taken as no more than ground as thick as the footing.
///
/// # Source
/// Rankine, "On the Stability of Loose Earth", Phil. Trans. R. Soc. 147 (1857), as used for keys in Das, Principles of
/// Foundation Engineering, 7th ed. (2011), 8.6; half of it counted, since all of it wants more movement than a wall
/// should make: common practice, no source.
/// # Symbols
/// | γ, φ | unit weight and friction angle of the ground under the footing | kN/m³, angle |
/// | t, d | thickness of the footing, depth of the key | m | | s | share that is counted | – |
/// # Gives
/// P in kN/m, before any factor.
/// # Not for
/// Clay, whose face softens; ground in front that is dug away below the footing.
/// # Errors
/// None but the limits.
/// # By hand
/// γ 18, φ 30°, t 0.25, d 0.3: K_p 3, 3·(18·0.25·0.3 + ½·18·0.09) = 6.48, half of it 3.24 kN/m (case `KEY-01`).
pub fn key<N: Number>(gamma: N, phi: N, thick: N, deep: N, share: N) -> N {
    let kp = (N::degrees(45.0) + phi / 2.0).tan().squared().named("K_p", Unit::NONE);
    let full = (kp * gamma * (thick * deep + deep.squared() / 2.0)).named("P_p", Unit::KN_M);
    (full * share).named("P", Unit::KN_M)
}

/// See [`key`].
pub static KEY: Working = Working {
    name: "walls/key",
    title: "What does the ground before a key under a footing hold?",
    source: Source {
        work: "Rankine 1857, as in Das, Principles of Foundation Engineering, 7th ed., 2011; half counted: common practice",
        place: "8.6; from memory",
    },
    not_for: "clay; ground in front that is dug away below the footing",
    inputs: &[
        Input::new("unit_weight", "γ", "unit weight of the ground", Unit::KN_M3, Limits::ours(5.0, 30.0)),
        Input::new("phi", "φ", "friction angle of the ground", Unit::DEG, Limits::ours(0.0, 50.0)),
        Input::new("thick", "t", "thickness of the footing", Unit::M, Limits::ours(0.0, 2.0)),
        Input::new("deep", "d", "depth of the key below it", Unit::M, Limits::ours(0.0, 2.0)),
        Input::new("share", "s", "share that is counted", Unit::NONE, Limits::ours(0.0, 1.0)).or(0.5),
    ],
    outputs: &[Output { key: "held", words: "what holds the key", unit: Unit::KN_M }],
    run: |g| {
        let held = key(g.one("unit_weight")?, g.one("phi")?, g.one("thick")?, g.one("deep")?, g.one("share")?);
        Ok(vec![Found::One(held)])
    },
};
