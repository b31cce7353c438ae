//! What does the timber that holds the heads of the ties carry, and how far does it bow?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// A timber held by ties at equal spacing whose ends reach half a spacing beyond the last tie.
///
/// # Source
/// Statics and elastic beam theory, e.g. Timoshenko, Strength of Materials, Part I: a beam on two supports with overhangs of
/// half the span; with more ties no moment is greater, as the overhangs alone fix the first.
/// # Symbols
/// | w | load | kN/m | s | from tie to tie | m | E | stiffness | MPa | I | second moment of area | mm⁴ | c | creep factor | – |
/// # Gives
/// M = w s²/8 over a tie, V = w s/2, T = w s in a tie, and the bow of the free ends 7/384 w s⁴/EI, in kNm, kN, kN, mm.
/// # Not for
/// A timber on one tie, which turns about it.
/// # Errors
/// None but the limits.
/// # By hand
/// w 4, s 1.2: 0.72 kNm, 2.4 kN, 4.8 kN; 150x150 of 11 000 MPa, c 1: 7/384·4·2.0736/464.1·1000 = 0.326 mm (case `STK-03`).
pub fn tied_timber<N: Number>(load: N, spacing: N, stiffness: N, inertia: N, creep: N) -> (N, N, N, N) {
    let moment = (load * spacing.squared() / 8.0).named("M", Unit::KNM);
    let pull = (load * spacing).named("T", Unit::KN);
    let rigidity = (stiffness * inertia * 1e-9).named("EI", Unit("kNm²"));
    let bow = creep * load * spacing.squared().squared() * (7.0 / 384.0) / rigidity * 1000.0;
    (moment, (pull / 2.0).named("V", Unit::KN), pull, bow.named("y", Unit::MM))
}

/// See [`tied_timber`].
pub static TIED_TIMBER: Working = Working {
    name: "wall/tied-timber",
    title: "What does the timber that holds the ties carry?",
    source: Source {
        work: "statics; elastic beam theory, e.g. Timoshenko, Strength of Materials, Part I",
        place: "beam on two supports with overhangs of half the span",
    },
    not_for: "a timber on one tie, which turns about it",
    inputs: &[
        Input::new("load", "w", "load along the timber", Unit::KN_M, Limits::ours(0.0, 1000.0)),
        Input::new("spacing", "s", "from tie to tie", Unit::M, Limits::ours(0.05, 6.0)),
        Input::new("stiffness", "E", "modulus of elasticity", Unit::MPA, Limits::ours(500.0, 30_000.0)),
        Input::new("inertia", "I", "second moment of area", Unit::MM4, Limits::ours(1.0, 1e12)),
        Input::new("creep", "c", "final over first movement", Unit::NONE, Limits::ours(1.0, 5.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "moment", words: "moment over a tie", unit: Unit::KNM },
        Output { key: "shear", words: "shear beside a tie", unit: Unit::KN },
        Output { key: "pull", words: "pull in a tie", unit: Unit::KN },
        Output { key: "bow", words: "bow of the free ends", unit: Unit::MM },
    ],
    run: |g| {
        let (m, v, t, y) =
            tied_timber(g.one("load")?, g.one("spacing")?, g.one("stiffness")?, g.one("inertia")?, g.one("creep")?);
        Ok([m, v, t, y].map(Found::One).into())
    },
};
