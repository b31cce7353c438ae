//! How far does the top of a post bend away from the straight?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Bend of a post held at the ground, at its top.
///
/// # Source
/// Elastic beam theory, cantilever with a point load: e.g. Timoshenko, Strength of Materials, Part I; creep by the factor
/// put in (EN 1995-1-1:2004 2.2.3: 1 + k_def).
/// # Symbols
/// | P | push | kN | e | its height above the ground that is counted on | m | h | height of the top above it | m |
/// | E | stiffness | MPa | I | second moment of area | mm⁴ | c | creep factor | – |
/// # Gives
/// y in mm at the top; the push is taken at its resultant, which is on the careful side for a load that grows downwards.
/// # Not for
/// The lean of the post in the ground, which is added.
/// # Errors
/// None but the limits.
/// # By hand
/// 2 kN at 0.3 m, top at 0.9 m, 100x100 of 11 000 MPa, c = 1: 2·0.3²·(2.7 − 0.3)/(6·11e6·8.333e-6) = 0.785 mm (case `WP-08`).
pub fn post_bend<N: Number>(force: N, arm: N, height: N, stiffness: N, inertia: N, creep: N) -> N {
    // kN, m; E I from MPa·mm⁴ to kNm²: 1e-9; from m to mm: 1e3.
    let rigidity = (stiffness * inertia * 1e-9).named("EI", Unit("kNm²"));
    let a = arm.min(height);
    (creep * force * a.squared() * (height * 3.0 - a) / (rigidity * 6.0) * 1000.0).named("y", Unit::MM)
}

/// See [`post_bend`].
pub static POST_BEND: Working = Working {
    name: "wall/post-bend",
    title: "How far does the top of a post bend away from the straight?",
    source: Source {
        work: "elastic beam theory, e.g. Timoshenko, Strength of Materials, Part I",
        place: "cantilever with a point load",
    },
    not_for: "the lean of the post in the ground, which is added to it",
    inputs: &[
        Input::new("force", "P", "push on the post", Unit::KN, Limits::ours(0.0, 10_000.0)),
        Input::new("arm", "e", "its height above the ground that is counted on", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("height", "h", "height of the top above that ground", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("stiffness", "E", "modulus of elasticity", Unit::MPA, Limits::ours(500.0, 30_000.0)),
        Input::new("inertia", "I", "second moment of area", Unit::MM4, Limits::ours(1.0, 1e12)),
        Input::new("creep", "c", "final over first movement", Unit::NONE, Limits::ours(1.0, 5.0)).or(1.0),
    ],
    outputs: &[Output { key: "bend", words: "bend at the top", unit: Unit::MM }],
    run: |g| {
        let y = post_bend(
            g.one("force")?,
            g.one("arm")?,
            g.one("height")?,
            g.one("stiffness")?,
            g.one("inertia")?,
            g.one("creep")?,
        );
        Ok(vec![Found::One(y)])
    },
};
