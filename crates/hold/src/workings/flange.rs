//! Does the flange of a steel post hold the panel that leans on it?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Bending of a flange along which panels press with an even force per length.
///
/// # Source
/// Statics of a cantilever plate: the panel's force is put at the tip of the flange, where a bent panel presses; the lever runs
/// to 0.8 of the root radius from the web, as in EN 1993-1-8:2005 6.2.4 (Figure 6.8; from memory). Plastic moment of a plate
/// t² f_y/4 per length with γ_M0 = 1 (EN 1993-1-1:2005 6.2.5); `share` is 1 with factored force, 0.6 with force as it is
/// (ANSI/AISC 360-16, 1/1.67).
/// # Symbols
/// | w | force of the panels on one flange side per length of post | kN/m | a | lever | mm | t | flange, less rust | mm |
/// | f_y | yield strength | MPa | k | share of it that may be used | – |
/// # Gives
/// (m, m_R) in kNm per metre of post (kN).
/// # Not for
/// A panel that is wedged close to the web, which asks less.
/// # Errors
/// None but the limits.
/// # By hand
/// 6 kN/m at 67 mm: 0.402 kNm/m; 6.8 mm of S275: 6.8²·275/4 = 3179 Nmm/mm = 3.18 kNm/m (case `SPO-02`).
pub fn flange<N: Number>(force: N, lever: N, thickness: N, yield_stress: N, share: N) -> (N, N) {
    let asked = (force * lever / 1000.0).named("m", Unit::KNM);
    let holds = (share * thickness.squared() * yield_stress / 4.0 / 1000.0).named("m_R", Unit::KNM);
    (asked, holds)
}

/// See [`flange`].
pub static FLANGE: Working = Working {
    name: "wall/flange",
    title: "Does the flange of a steel post hold the panel that leans on it?",
    source: Source {
        work: "statics; EN 1993-1-1:2005, EN 1993-1-8:2005; ANSI/AISC 360-16",
        place: "6.2.5; 6.2.4 for the lever; F1; from memory",
    },
    not_for: "a panel that is wedged close to the web, which asks less",
    inputs: &[
        Input::new(
            "force",
            "w",
            "force of the panels on one side, per metre of post",
            Unit::KN_M,
            Limits::ours(0.0, 1000.0),
        ),
        Input::new("lever", "a", "from the root to the tip of the flange", Unit::MM, Limits::ours(1.0, 300.0)),
        Input::new("thickness", "t", "thickness of the flange", Unit::MM, Limits::ours(0.5, 60.0)),
        Input::new("yield_stress", "f_y", "yield strength", Unit::MPA, Limits::ours(150.0, 500.0)),
        Input::new("share", "k", "share of yield that may be used", Unit::NONE, Limits::ours(0.4, 1.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "asked", words: "moment along the root, per metre", unit: Unit::KNM },
        Output { key: "holds", words: "moment that the flange holds, per metre", unit: Unit::KNM },
    ],
    run: |g| {
        let (m, r) =
            flange(g.one("force")?, g.one("lever")?, g.one("thickness")?, g.one("yield_stress")?, g.one("share")?);
        Ok([m, r].map(Found::One).into())
    },
};
