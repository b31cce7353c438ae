//! How much can clay carry and hold under a base while its water has no time to leave?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Resistance of a strip base on clay without friction, under an inclined load.
///
/// # Source
/// EN 1997-1:2004 Annex D.3 (formulas from memory), level base, strip: R/B′ = (π + 2) c_u i_c + q with
/// i_c = ½ (1 + √(1 − H/(B′ c_u))); sliding by 6.5.3(11): R_h = B′ c_u.
/// # Symbols
/// | c_u | undrained strength | kPa | 1–500 (ours) |
/// | B′ | effective width | m | 0.01–50 (ours) |
/// | q | overburden beside the underside | kPa | |
/// | H | horizontal load | kN/m | H ≤ B′ c_u |
/// # Gives
/// (i_c, R, R_h) in –, kN/m, kN/m.
/// # Not for
/// Drained soil, layers, a slope in front.
/// # Errors
/// A load that slides has no i_c; callers refuse it.
/// # By hand
/// c_u = 50 kPa, B′ = 1 m, q = 0, H = 0: 5.14 · 50 = 257 kN/m; H = 50 kN/m: half of it, 128.5 kN/m.
pub fn undrained_base<N: Number>(cu: N, width: N, q: N, h: N) -> (N, N, N) {
    let held = (width * cu).named("R_h", Unit::KN_M);
    let one = N::constant(1.0);
    let ic = ((one + (one - h / held).sqrt()) / 2.0).named("i_c", Unit::NONE);
    let r = ((cu * (std::f64::consts::PI + 2.0) * ic + q) * width).named("R", Unit::KN_M);
    (ic, r, held)
}

/// Strip base on clay, undrained.
pub static UNDRAINED_BASE: Working = Working {
    name: "walls/undrained-base",
    title: "How much can clay carry and hold under a strip base before its water leaves?",
    source: Source {
        work: "EN 1997-1:2004, Geotechnical design, general rules",
        place: "Annex D.3 and 6.5.3(11), from memory",
    },
    not_for: "drained soil, layers, a slope in front",
    inputs: &[
        Input::new("cu", "c_u", "undrained strength", Unit::KPA, Limits::ours(1.0, 500.0)),
        Input::new("width", "B'", "effective width", Unit::M, Limits::ours(0.01, 50.0)),
        Input::new("q", "q", "overburden beside the underside", Unit::KPA, Limits::ours(0.0, 1000.0)).or(0.0),
        Input::new("h", "H", "horizontal load", Unit::KN_M, Limits::ours(0.0, 1e5)).or(0.0),
    ],
    outputs: &[
        Output { key: "ic", words: "inclination factor", unit: Unit::NONE },
        Output { key: "r", words: "bearing resistance", unit: Unit::KN_M },
        Output { key: "rh", words: "sliding resistance", unit: Unit::KN_M },
    ],
    run: |g| {
        let (cu, b, q, h) = (g.one("cu")?, g.one("width")?, g.one("q")?, g.one("h")?);
        if h.value() > cu.value() * b.value() {
            return Err(g.no_answer("the horizontal load is more than the clay under the base can hold; it slides"));
        }
        let (ic, r, rh) = undrained_base(cu, b, q, h);
        Ok([ic, r, rh].map(Found::One).into())
    },
};
