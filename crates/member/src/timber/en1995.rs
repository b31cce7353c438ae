//! What does timber carry by EN 1995-1-1?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::Duration;
use crate::given::given;

given! {
    /// Bending by EN 1995-1-1; kNm, mm³, mm, MPa.
    EnBending {
        /// Design moment.
        moment,
        /// Section modulus.
        modulus,
        /// Depth of the section in bending.
        depth,
        /// Characteristic bending strength.
        strength,
        /// Modification factor for duration and moisture.
        kmod,
        /// Partial factor for the material.
        gamma_m,
    }
}
given! {
    /// Shear by EN 1995-1-1; kN, mm², MPa.
    EnShear {
        /// Design shear force.
        shear,
        /// Cross-section.
        area,
        /// Greatest shear stress over mean shear stress.
        shape,
        /// Characteristic shear strength.
        strength,
        /// Modification factor for duration and moisture.
        kmod,
        /// Partial factor for the material.
        gamma_m,
        /// Factor for cracks.
        kcr,
    }
}

/// Stress against strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stressed<N> {
    /// Stress, MPa.
    pub stress: N,
    /// Design or allowable strength, MPa.
    pub strength: N,
    /// Moment (kNm) or shear force (kN) at which they are equal.
    pub capacity: N,
    /// Stress over strength.
    pub utilisation: N,
}

/// Partial factor for solid timber, EN 1995-1-1 Table 2.3.
pub const GAMMA_M: f64 = 1.3;
/// Crack factor of solid timber, EN 1995-1-1/A1 6.1.7.
pub const KCR: f64 = 0.67;

/// Modification factor of solid timber, EN 1995-1-1:2004 Table 3.1. `service_class` above 3 counts as 3, 0 as 1.
pub fn kmod(service_class: u8, duration: Duration) -> f64 {
    let dry = [0.60, 0.70, 0.80, 0.90, 1.10];
    let open = [0.50, 0.55, 0.65, 0.70, 0.90];
    let row = if service_class < 3 { dry } else { open };
    row[duration.place()]
}

/// Deformation factor of solid timber, EN 1995-1-1:2004 Table 3.2.
pub fn kdef(service_class: u8) -> f64 {
    match service_class {
        0 | 1 => 0.6,
        2 => 0.8,
        _ => 2.0,
    }
}

/// Bending of solid timber.
///
/// # Source
/// EN 1995-1-1:2004+A1, 6.1.6 (f_m,d = k_mod k_h f_m,k/γ_M) and 3.2 (k_h = min((150/h)^0.2, 1.3) for h < 150 mm).
/// # Symbols
/// M design moment, W section modulus, h depth in bending, f_m,k, k_mod, γ_M.
/// # Gives
/// Stress, design strength, the moment that uses it up, utilisation.
/// # Not for
/// Narrow deep beams that may tip sideways (6.3.3); bending in two directions; glued timber.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 200 × 50 flat C24, k_mod 0.5: k_h 1.246, f_m,d 11.50 MPa (TI-04).
pub fn en_bending<N: Number>(i: &EnBending<N>) -> Stressed<N> {
    let n = N::constant;
    let kh = if i.depth.value() < 150.0 {
        (N::constant(150.0) / i.depth).powf(0.2).min(N::constant(1.3))
    } else {
        N::constant(1.0)
    };
    let strength = (i.kmod * kh * i.strength / i.gamma_m).named("f_m,d", Unit::MPA);
    let stress = (n(1e6) * i.moment / i.modulus).named("σ_m,d", Unit::MPA);
    let capacity = (strength * i.modulus / 1e6).named("M_R,d", Unit::KNM);
    Stressed { stress, strength, capacity, utilisation: (stress / strength).named("σ/f", Unit::NONE) }
}

/// Shear of solid timber.
///
/// # Source
/// EN 1995-1-1:2004+A1, 6.1.7: τ_d ≤ f_v,d with the width reduced by k_cr = 0.67 for cracks.
/// # Symbols
/// V design shear, A cross-section, κ 1.5 (rectangle) or 4/3 (round), f_v,k, k_mod, γ_M, k_cr.
/// # Gives
/// Stress, design strength, the shear that uses it up, utilisation.
/// # Not for
/// Notched ends (6.5).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// V 0.972 kN, A 10 000: 1.5·972/(0.67·10 000) = 0.2176 MPa (TI-04).
pub fn en_shear<N: Number>(i: &EnShear<N>) -> Stressed<N> {
    let n = N::constant;
    let strength = (i.kmod * i.strength / i.gamma_m).named("f_v,d", Unit::MPA);
    let stress = (n(1000.0) * i.shape * i.shear / (i.kcr * i.area)).named("τ_d", Unit::MPA);
    let capacity = (strength * i.kcr * i.area / (n(1000.0) * i.shape)).named("V_R,d", Unit::KN);
    Stressed { stress, strength, capacity, utilisation: (stress / strength).named("τ/f", Unit::NONE) }
}

pub(super) const MOMENT: Input = Input::new("moment", "M", "bending moment", Unit::KNM, Limits::ours(0.0, 10_000.0));
pub(super) const MODULUS: Input = Input::new("modulus", "W", "section modulus", Unit::MM3, Limits::ours(100.0, 1e9));
pub(super) const SHEAR: Input = Input::new("shear", "V", "shear force", Unit::KN, Limits::ours(0.0, 10_000.0));
pub(super) const AREA: Input = Input::new("area", "A", "cross-section", Unit::MM2, Limits::ours(50.0, 1e7));
pub(super) const SHAPE: Input = Input::new(
    "shape",
    "κ",
    "greatest over mean shear stress: 1.5 rectangle, 1.333 round",
    Unit::NONE,
    Limits::ours(1.0, 2.0),
)
.or(1.5);
const KMOD: Input =
    Input::new("kmod", "k_mod", "modification factor for duration and moisture", Unit::NONE, Limits::author(0.5, 1.1));
const GAMMA: Input =
    Input::new("gamma_m", "γ_M", "partial factor for the material", Unit::NONE, Limits::ours(1.0, 2.0)).or(GAMMA_M);
pub(super) const USED: Output = Output { key: "utilisation", words: "stress over strength", unit: Unit::NONE };
pub(super) const STRESS: Output = Output { key: "stress", words: "stress", unit: Unit::MPA };
pub(super) const STRENGTH: Output = Output { key: "strength", words: "design strength", unit: Unit::MPA };
pub(super) const CAP_MOMENT: Output =
    Output { key: "capacity", words: "moment that uses the strength up", unit: Unit::KNM };
pub(super) const CAP_SHEAR: Output =
    Output { key: "capacity", words: "shear force that uses the strength up", unit: Unit::KN };

pub(super) fn found(s: Stressed<groundhold_working::Shown<'_>>) -> Vec<Found<'_>> {
    [s.stress, s.strength, s.capacity, s.utilisation].into_iter().map(Found::One).collect()
}

/// Working of [`en_bending`].
pub static EN_BENDING: Working = Working {
    name: "timber/bending-en1995",
    title: "Bending of solid timber by EN 1995-1-1.",
    source: Source { work: "EN 1995-1-1:2004+A1:2008", place: "6.1.6, 3.2(3), Table 3.1, Table 2.3" },
    not_for: "deep narrow beams that may tip sideways; bending in two directions; glued timber",
    inputs: &[
        MOMENT,
        MODULUS,
        Input::new("depth", "h", "depth of the section in bending", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("strength", "f_m,k", "characteristic bending strength", Unit::MPA, Limits::ours(5.0, 100.0)),
        KMOD,
        GAMMA,
    ],
    outputs: &[STRESS, STRENGTH, CAP_MOMENT, USED],
    run: |g| Ok(found(en_bending(&EnBending::put(g)?))),
};

/// Working of [`en_shear`].
pub static EN_SHEAR: Working = Working {
    name: "timber/shear-en1995",
    title: "Shear of solid timber by EN 1995-1-1.",
    source: Source { work: "EN 1995-1-1:2004+A1:2008", place: "6.1.7, Table 3.1, Table 2.3" },
    not_for: "notched ends",
    inputs: &[
        SHEAR,
        AREA,
        SHAPE,
        Input::new("strength", "f_v,k", "characteristic shear strength", Unit::MPA, Limits::ours(0.5, 20.0)),
        KMOD,
        GAMMA,
        Input::new("kcr", "k_cr", "factor for cracks", Unit::NONE, Limits::ours(0.3, 1.0)).or(KCR),
    ],
    outputs: &[STRESS, STRENGTH, CAP_SHEAR, USED],
    run: |g| Ok(found(en_shear(&EnShear::put(g)?))),
};
