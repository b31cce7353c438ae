//! How much pull does a tie of timber carry along its grain?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Tension of a timber whose section is lessened by screws.
///
/// # Source
/// EN 1995-1-1:2004+A1:2008 6.1.2 with f_t,0,d = k_mod f_t,0,k/γ_M (2.4.1); NDS 2018 3.8 with F_t′ = C_D F_t; AS 1720.1-2010 3.4
/// with φ k₁ k₄ f′_t; each as one factor `share` on the value of the grade. From memory.
/// # Symbols
/// | b, h | section | mm | d | what screws take from its breadth, together | mm | f | tension of the grade | MPa | k | share | – |
/// # Gives
/// N = k f (b − d) h, kN.
/// # Not for
/// A tie that is also bent by soil that settles on it.
/// # Errors
/// The working refuses screws that leave nothing.
/// # By hand
/// 150x150 less 20, C16 with 8.5 MPa, 0.6/1.3: 0.4615·8.5·130·150 = 76.5 kN (case `STK-04`).
pub fn tie<N: Number>(breadth: N, height: N, drilled: N, strength: N, share: N) -> N {
    let net = ((breadth - drilled) * height).named("A_net", Unit::MM2);
    (share * strength * net / 1000.0).named("N_R", Unit::KN)
}

/// See [`tie`].
pub static TIE: Working = Working {
    name: "wall/tie",
    title: "How much pull does a tie of timber carry along its grain?",
    source: Source {
        work: "EN 1995-1-1:2004+A1:2008; NDS 2018; AS 1720.1-2010",
        place: "6.1.2; 3.8; 3.4; from memory",
    },
    not_for: "a tie that is also bent by soil that settles on it",
    inputs: &[
        Input::new("breadth", "b", "breadth", Unit::MM, Limits::ours(10.0, 1000.0)),
        Input::new("height", "h", "height", Unit::MM, Limits::ours(10.0, 1000.0)),
        Input::new("drilled", "d", "what screws take from its breadth", Unit::MM, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new("strength", "f", "tension of the grade along the grain", Unit::MPA, Limits::ours(0.1, 100.0)),
        Input::new("share", "k", "factor on it by the rules", Unit::NONE, Limits::ours(0.1, 2.0)),
    ],
    outputs: &[Output { key: "holds", words: "pull that it carries", unit: Unit::KN }],
    run: |g| {
        let (b, d) = (g.one("breadth")?, g.one("drilled")?);
        if b.value() <= d.value() {
            return Err(g.no_answer("the screws leave nothing of the tie"));
        }
        Ok(vec![Found::One(tie(b, g.one("height")?, d, g.one("strength")?, g.one("share")?))])
    },
};
