//! How big must a beam be for its moment?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

given! {
    /// A single-span beam under a uniform load; kN/m, m, MPa.
    Sizing {
        /// Load along the beam.
        load,
        /// Span.
        span,
        /// Strength.
        strength,
        /// Depth over breadth.
        slim,
    }
}

/// Moment, breadth and depth of a rectangular beam over one span that uses a strength up.
///
/// # Source
/// Elementary strength of materials: M = w L²/8, Z = b d²/6, d = n b. Worked in Bhavikatti, Mechanics of Solids, Ex. 10.9.
/// # Symbols
/// w load, L span, f strength, n depth over breadth.
/// # Gives
/// M in kNm, b and d in mm.
/// # Not for
/// Bow, shear: check them after.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 5 kN/m over 6 m, f 10, n 2: M 22.5, b 150, d 300 (TI-01).
pub fn sizing<N: Number>(i: &Sizing<N>) -> (N, N, N) {
    let n = N::constant;
    let moment = (i.load * i.span.squared() / 8.0).named("M", Unit::KNM);
    let modulus = (n(1e6) * moment / i.strength).named("Z", Unit::MM3);
    let breadth = (n(6.0) * modulus / i.slim.squared()).powf(1.0 / 3.0).named("b", Unit::MM);
    (moment, breadth, (breadth * i.slim).named("d", Unit::MM))
}

/// Working of [`sizing`].
pub static SIZE: Working = Working {
    name: "timber/size-for-bending",
    title: "Size of a rectangular beam over one span for its bending moment.",
    source: Source { work: "Bhavikatti, Mechanics of Solids", place: "Ex. 10.9; elementary strength of materials" },
    not_for: "bow and shear: check them after",
    inputs: &[
        Input::new("load", "w", "load along the beam", Unit::KN_M, Limits::ours(0.0, 1000.0)),
        Input::new("span", "L", "span", Unit::M, Limits::ours(0.05, 20.0)),
        Input::new("strength", "f", "strength", Unit::MPA, Limits::ours(1.0, 100.0)),
        Input::new("slim", "n", "depth over breadth", Unit::NONE, Limits::ours(0.1, 10.0)).or(2.0),
    ],
    outputs: &[
        Output { key: "moment", words: "moment", unit: Unit::KNM },
        Output { key: "breadth", words: "breadth", unit: Unit::MM },
        Output { key: "depth", words: "depth", unit: Unit::MM },
    ],
    run: |g| {
        let (m, b, d) = sizing(&Sizing::put(g)?);
        Ok(vec![Found::One(m), Found::One(b), Found::One(d)])
    },
};
