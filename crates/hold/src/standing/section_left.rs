//! How hard is what rot has left of a post bent at the ground?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Bending strength over bending stress of a post that has lost the same from every face.
///
/// # Source
/// Bending of a rectangle, σ = 6M/(b h²), statics; loss from every face as in `timber/decay`.
/// # Symbols
/// | M, b, h, d, f | moment, breadth, depth, loss of every face, bending strength | kNm, mm, mm, mm, MPa | |
/// # Gives
/// f/σ; nothing where nothing is left. Falls as the loss grows.
/// # Not for
/// A core that rots first; knots at the ground; shear.
/// # Errors
/// None here.
/// # By hand
/// M = 1 kNm on 100 × 100 with 10 mm gone: 6 · 10⁶/80³ = 11.72 MPa, with f = 8: 0.683 (case `SW-05`).
pub fn section_left<N: Number>(moment: N, breadth: N, depth: N, loss: N, strength: N) -> N {
    let zero = N::constant(0.0);
    let b = (breadth - loss * 2.0).max(zero).named("b_left", Unit::MM);
    let h = (depth - loss * 2.0).max(zero).named("h_left", Unit::MM);
    let modulus = (b * h.squared() / 6.0).named("W_left", Unit::NONE);
    (strength * modulus / (moment * 1e6)).named("f/σ", Unit::NONE)
}

/// Working of [`section_left`].
pub static SECTION_LEFT: Working = Working {
    name: "standing/section-left",
    title: "How much of what it can carry is left of a post that has rotted from its faces?",
    source: Source { work: "statics: bending of a rectangle", place: "σ = 6M/(b h²)" },
    not_for: "a core that rots first, knots, shear",
    inputs: &[
        Input::new("moment", "M", "moment in the post at the ground", Unit::KNM, Limits::ours(1e-6, 1e4)),
        Input::new("breadth", "b", "along the wall, new", Unit::MM, Limits::ours(20.0, 1000.0)),
        Input::new("depth", "h", "in the direction of the push, new", Unit::MM, Limits::ours(20.0, 1000.0)),
        Input::new("loss", "d", "lost from every face", Unit::MM, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new(
            "strength",
            "f",
            "bending strength in the ground over years, MPa",
            Unit::NONE,
            Limits::ours(0.5, 100.0),
        ),
    ],
    outputs: &[Output { key: "factor", words: "strength over stress", unit: Unit::NONE }],
    run: |g| {
        let f = section_left(g.one("moment")?, g.one("breadth")?, g.one("depth")?, g.one("loss")?, g.one("strength")?);
        Ok(vec![Found::One(f)])
    },
};
