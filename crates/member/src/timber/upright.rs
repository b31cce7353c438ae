//! How far does the top of a post bend forward between the ground and its top?

use groundhold_quantity::{Length, LineForce, Pressure};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use super::Section;
use crate::given::given;

given! {
    /// A post as a cantilever; kN/m, m, MPa, mm⁴.
    Upright {
        /// Load at the foot that falls to nothing at the top.
        triangle,
        /// Load that is even over the height.
        even,
        /// Height.
        height,
        /// Modulus of elasticity.
        stiffness,
        /// Second moment of area.
        inertia,
        /// Final over first bend.
        creep,
    }
}

/// How far a post bends at its top.
#[derive(Debug, Clone, PartialEq)]
pub struct Bend {
    /// At first.
    pub first: Length,
    /// In the end, with creep.
    pub last: Length,
    /// Its working.
    pub trace: Trace,
}

/// Bend of the top of a post that is held at its foot, in mm: at first and in the end.
///
/// # Source
/// Elastic beam theory; e.g. Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., Table 8.1, cases 2a and 2d:
/// q H⁴/8EI for an even load, t H⁴/30EI for a load that falls from t at the foot to nothing at the top.
/// # Symbols
/// t triangle at the foot, q even load, H height, E, I, c creep.
/// # Gives
/// Bend of the timber alone; add the movement of the foot (`embed/deflection-…`).
/// # Not for
/// A push near the foot only; a post tied back.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// t 7.2 kN/m, H 1 m, E 11 000, I 42.2e6: 7.2·10¹²/(30·11 000·42.2e6) = 0.52 mm.
pub fn upright<N: Number>(i: &Upright<N>) -> (N, N) {
    let n = N::constant;
    let height = (n(1000.0) * i.height).named("H", Unit::MM);
    let load = i.triangle / 30.0 + i.even / 8.0;
    let first = (load * height.powf(4.0) / (i.stiffness * i.inertia)).named("w₀", Unit::MM);
    (first, (first * i.creep).named("w_∞", Unit::MM))
}

/// Bend of a post's top under soil that pushes along it: `at_foot` falls to nothing at the top, `even` is even.
///
/// # Errors
/// Where a value is out of range.
pub fn bend_of_post(
    section: &Section,
    stiffness: Pressure,
    height: Length,
    (at_foot, even): (LineForce, LineForce),
    creep: f64,
) -> Result<Bend> {
    let (i, trace) = Upright {
        triangle: at_foot.to_kn_per_m(),
        even: even.to_kn_per_m(),
        height: height.to_m(),
        stiffness: stiffness.to_mpa(),
        inertia: section.inertia_mm4(),
        creep,
    }
    .traced(&POST_BEND)?;
    let (first, last) = upright(&i);
    Ok(Bend { first: Length::mm(first), last: Length::mm(last), trace })
}

/// Working of [`upright`].
pub static POST_BEND: Working = Working {
    name: "timber/post-bend",
    title: "Bend of a post's top above the ground, at first and in the end.",
    source: Source {
        work: "Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed.",
        place: "Table 8.1, cases 2a and 2d, cantilever",
    },
    not_for: "a push near the foot only; a post tied back; the foot's own movement (embed/deflection-sand, -clay)",
    inputs: &[
        Input::new("triangle", "t", "load at the foot, nothing at the top", Unit::KN_M, Limits::ours(0.0, 1000.0)),
        Input::new("even", "q", "load even over the height", Unit::KN_M, Limits::ours(0.0, 1000.0)).or(0.0),
        Input::new("height", "h", "height of the post above the ground", Unit::M, Limits::ours(0.01, 10.0)),
        Input::new("stiffness", "E", "modulus of elasticity", Unit::MPA, Limits::ours(500.0, 250_000.0)),
        Input::new("inertia", "I", "second moment of area", Unit::MM4, Limits::ours(1.0, 1e12)),
        Input::new("creep", "c", "final over first bend", Unit::NONE, Limits::ours(1.0, 5.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "first", words: "first bend", unit: Unit::MM },
        Output { key: "last", words: "final bend", unit: Unit::MM },
    ],
    run: |g| {
        let (first, last) = upright(&Upright::put(g)?);
        Ok(vec![Found::One(first), Found::One(last)])
    },
};
