//! How hard does soil push on a wall that cannot move?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::rows;

/// At-rest coefficient of soil that once carried more than today.
///
/// # Source
/// Jaky (1944), K₀ = 1 − sin φ; with overconsolidation Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6) (1982):
/// K₀ = (1 − sin φ) OCR^sin φ.
/// # Symbols
/// | φ, OCR | friction angle, overconsolidation ratio | angle, – | OCR 1–30 (ours) |
/// # Gives
/// K₀; not above the passive coefficient K_p.
/// # Not for
/// Sloping ground; swelling clay.
/// # Errors
/// None here.
/// # By hand
/// φ = 30°, OCR = 2: 0.5 · 2^0.5 = 0.7071 (reference case EP-12).
pub fn k0<N: Number>(phi: N, ocr: N) -> N {
    let normal = (N::constant(1.0) - phi.sin()).named("K_0nc", Unit::NONE);
    if ocr.value() == 1.0 {
        return normal;
    }
    let k = (normal * (ocr.ln() * phi.sin()).exp()).named("K_0", Unit::NONE);
    k.min(super::rankine::kp(phi))
}

pub(crate) const OCR: Input =
    Input::new("ocr", "OCR", "overconsolidation ratio", Unit::NONE, Limits::ours(1.0, 30.0)).or(1.0);

/// At-rest coefficient.
pub static AT_REST: Working = Working {
    name: "earth-pressure/at-rest",
    title: "Which share of its weight does soil at rest push sideways?",
    source: Source {
        work: "Jaky, The coefficient of earth pressure at rest, J. Soc. Hungarian Architects and Engineers, 1944; Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6), 1982",
        place: "K₀ = (1 − sin φ) OCR^sin φ",
    },
    not_for: "sloping ground, swelling clay",
    inputs: &[rows::PHI, OCR],
    outputs: &[Output { key: "k0", words: "at-rest coefficient", unit: Unit::NONE }],
    run: |g| Ok(vec![Found::One(k0(g.one("phi")?, g.one("ocr")?))]),
};
