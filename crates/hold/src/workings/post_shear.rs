//! How large does the shear in a post become below the ground?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Greatest shear in a short rigid post, above or below the ground in front.
///
/// # Source
/// Derived here from equilibrium with a reaction n_h z y per metre of depth, as Broms 1964 (cohesionless soils) takes for
/// the movement of a short free-headed pile under working load.
/// # Symbols
/// | P | push | kN | e | its height above the ground that is counted on | m | L | depth below that ground | m |
/// # Gives
/// V = P max(1, 27/16 a³/b² − 1) with a = 1 + 4e/3L and b = 1 + 3e/2L: the shear below ground exceeds the push where e
/// is more than about a fifth of L.
/// # Not for
/// A post that bends in the ground. Concrete around the post carries a part of it, which is not counted.
/// # Errors
/// None but the limits.
/// # By hand
/// e = L/3: a = 1.444, b = 1.5, 27/16·3.014/2.25 = 2.260, V = 1.26 P (case `WP-07`).
pub fn post_shear<N: Number>(force: N, arm: N, depth: N) -> N {
    let ratio = (arm / depth).named("e/L", Unit::NONE);
    let a = (ratio * 4.0 / 3.0 + 1.0).named("a", Unit::NONE);
    let b = (ratio * 1.5 + 1.0).named("b", Unit::NONE);
    let below = (a.cubed() / b.squared() * 27.0 / 16.0 - 1.0).named("V_below/P", Unit::NONE);
    (force * below.max(N::constant(1.0))).named("V", Unit::KN)
}

/// See [`post_shear`].
pub static POST_SHEAR: Working = Working {
    name: "wall/post-shear",
    title: "How large does the shear in a post become below the ground?",
    source: Source {
        work: "equilibrium with a reaction that grows with depth, as in Broms, Lateral Resistance of Piles in Cohesionless Soils, ASCE J. Soil Mech. Found. Div. 90 (SM3), 1964",
        place: "derived here; movement of short free-headed piles",
    },
    not_for: "a post that bends in the ground",
    inputs: &[
        Input::new("force", "P", "push on the post", Unit::KN, Limits::ours(0.0, 10_000.0)),
        Input::new("arm", "e", "its height above the ground that is counted on", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("depth", "L", "depth below that ground", Unit::M, Limits::ours(0.05, 30.0)),
    ],
    outputs: &[Output { key: "shear", words: "greatest shear", unit: Unit::KN }],
    run: |g| Ok(vec![Found::One(post_shear(g.one("force")?, g.one("arm")?, g.one("depth")?))]),
};
