//! What does timber carry by the US National Design Specification, allowable stress?

use groundhold_quantity::{Length, Pressure};
use groundhold_working::{Input, Limits, Number, Output, Source, Unit, Working};

use super::{
    Duration, Family, Grade, Section,
    en1995::{AREA, CAP_MOMENT, CAP_SHEAR, MODULUS, MOMENT, SHAPE, SHEAR, STRESS, Stressed, USED, found},
};
use crate::given::given;

given! {
    /// Bending by the NDS; kNm, mm³, MPa.
    NdsBending {
        /// Moment.
        moment,
        /// Section modulus.
        modulus,
        /// Reference bending value.
        strength,
        /// Load duration.
        cd,
        /// Wet service.
        cm,
        /// Size.
        cf,
        /// Flat use.
        cfu,
    }
}
given! {
    /// Shear by the NDS; kN, mm², MPa.
    NdsShear {
        /// Shear force.
        shear,
        /// Cross-section.
        area,
        /// Greatest shear stress over mean shear stress.
        shape,
        /// Reference shear value.
        strength,
        /// Load duration.
        cd,
        /// Wet service.
        cm,
    }
}

/// Factors that the NDS puts on one piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NdsFactors {
    /// Size, on bending.
    pub cf: f64,
    /// Flat use, on bending.
    pub cfu: f64,
    /// Wet service, on bending.
    pub cm_bending: f64,
    /// Wet service, on shear.
    pub cm_shear: f64,
    /// Wet service, on stiffness.
    pub cm_stiffness: f64,
}

/// Load duration factor, NDS 2018 Table 2.3.2: 0.9 for good, 1.0 ten years, 1.15 two months, 1.25 seven days, 1.6 ten
/// minutes. Medium takes the two-month value.
pub fn cd(duration: Duration) -> f64 {
    [0.90, 1.00, 1.15, 1.25, 1.60][duration.place()]
}

/// Factors for a grade and a section, NDS Supplement 2018 Tables 4A, 4B, 4D (from memory).
pub fn nds_factors(grade: &Grade, section: &Section, wet: bool) -> NdsFactors {
    let cf = match grade.family {
        Family::NdsDimension => size(section.wide_face()),
        // 4D: (12/d)^(1/9) for depths over 12 in.
        Family::NdsTimbers if 12.0 < section.depth().to_inch() => {
            groundhold_quantity::math::powf(12.0 / section.depth().to_inch(), 1.0 / 9.0)
        }
        _ => 1.0,
    };
    let flat = !section.is_round() && section.depth() < section.breadth();
    let dimension = matches!(grade.family, Family::NdsDimension | Family::NdsSouthernPine);
    let cfu = if flat && dimension { flat_use(section.thickness(), section.wide_face()) } else { 1.0 };
    // Dimension lumber: C_M is 1 for bending where F_b C_F does not exceed 1150 psi. Timbers: 1 throughout.
    let weak = grade.bending.to_psf() / 144.0 * cf <= 1150.0;
    let wet_dimension = wet && dimension;
    NdsFactors {
        cf,
        cfu,
        cm_bending: if wet_dimension && !weak { 0.85 } else { 1.0 },
        cm_shear: if wet_dimension { 0.97 } else { 1.0 },
        cm_stiffness: if wet_dimension { 0.90 } else { 1.0 },
    }
}

/// C_F of Table 4A by nominal width; real widths are half to three quarters of an inch less.
fn size(width: Length) -> f64 {
    match width.to_inch() {
        w if w < 4.0 => 1.5,
        w if w < 5.0 => 1.4,
        w if w < 6.5 => 1.3,
        w if w < 8.5 => 1.2,
        w if w < 10.5 => 1.1,
        w if w < 12.5 => 1.0,
        _ => 0.9,
    }
}

/// C_fu of Tables 4A and 4B by nominal thickness and width.
fn flat_use(thickness: Length, width: Length) -> f64 {
    let thin = thickness.to_inch() < 3.25;
    match width.to_inch() {
        w if w < 3.25 => 1.0,
        w if w < 4.0 => if_thin(thin, 1.1, 1.0),
        w if w < 5.0 => if_thin(thin, 1.1, 1.05),
        w if w < 8.5 => if_thin(thin, 1.15, 1.05),
        _ => if_thin(thin, 1.2, 1.1),
    }
}
fn if_thin(thin: bool, yes: f64, no: f64) -> f64 {
    if thin { yes } else { no }
}

/// Allowable bending.
///
/// # Source
/// NDS 2018, 4.3: F_b' = F_b C_D C_M C_F C_fu, with C_t = C_L = C_i = C_r = 1.
/// # Symbols
/// M moment, S section modulus, F_b reference value, C factors.
/// # Gives
/// Stress, allowable stress, the moment that uses it up, utilisation.
/// # Not for
/// Deep narrow beams that may tip sideways (C_L); incised timber (C_i 0.8); round poles.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// SP No.2 2×8, C_D 0.9: 925·0.9 = 832.5 psi before C_fu (TI-05).
pub fn nds_bending<N: Number>(i: &NdsBending<N>) -> Stressed<N> {
    let n = N::constant;
    let strength = (i.strength * i.cd * i.cm * i.cf * i.cfu).named("F_b'", Unit::MPA);
    let stress = (n(1e6) * i.moment / i.modulus).named("f_b", Unit::MPA);
    let capacity = (strength * i.modulus / 1e6).named("M'", Unit::KNM);
    Stressed { stress, strength, capacity, utilisation: (stress / strength).named("f_b/F_b'", Unit::NONE) }
}

/// Allowable shear.
///
/// # Source
/// NDS 2018, 3.4 and 4.3: F_v' = F_v C_D C_M, f_v = 3V/2A (rectangle), 4V/3A (round).
/// # Symbols
/// V shear, A cross-section, κ shape, F_v reference value, C factors.
/// # Gives
/// Stress, allowable stress, the shear that uses it up, utilisation.
/// # Not for
/// Notched ends (3.4.3).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// F_v 175, C_D 0.9, C_M 0.97: 152.8 psi (TI-05).
pub fn nds_shear<N: Number>(i: &NdsShear<N>) -> Stressed<N> {
    let n = N::constant;
    let strength = (i.strength * i.cd * i.cm).named("F_v'", Unit::MPA);
    let stress = (n(1000.0) * i.shape * i.shear / i.area).named("f_v", Unit::MPA);
    let capacity = (strength * i.area / (n(1000.0) * i.shape)).named("V'", Unit::KN);
    Stressed { stress, strength, capacity, utilisation: (stress / strength).named("f_v/F_v'", Unit::NONE) }
}

/// Final over first bow under load that stays, NDS 2018 3.5.2: 2.0 for wet or unseasoned timber, 1.5 for dry.
pub fn nds_creep(wet: bool) -> f64 {
    if wet { 2.0 } else { 1.5 }
}

/// Adjusted modulus of elasticity.
pub(super) fn nds_stiffness(grade: &Grade, factors: &NdsFactors) -> Pressure {
    grade.stiffness * factors.cm_stiffness
}

const fn factor(key: &'static str, symbol: &'static str, words: &'static str, least: f64, most: f64) -> Input {
    Input::new(key, symbol, words, Unit::NONE, Limits::ours(least, most))
}
const CD: Input = factor("cd", "C_D", "load duration factor", 0.9, 2.0);
const CM: Input = factor("cm", "C_M", "wet service factor", 0.4, 1.0).or(1.0);
const ALLOWABLE: Output = Output { key: "strength", words: "allowable stress", unit: Unit::MPA };

/// Working of [`nds_bending`].
pub static NDS_BENDING: Working = Working {
    name: "timber/bending-nds",
    title: "Allowable bending of sawn timber by the NDS.",
    source: Source { work: "National Design Specification for Wood Construction, 2018", place: "4.3, Table 4.3.1" },
    not_for: "deep narrow beams that may tip sideways; incised timber; round poles",
    inputs: &[
        MOMENT,
        MODULUS,
        Input::new("strength", "F_b", "reference bending value", Unit::MPA, Limits::ours(1.0, 50.0)),
        CD,
        CM,
        factor("cf", "C_F", "size factor", 0.5, 1.5).or(1.0),
        factor("cfu", "C_fu", "flat use factor", 0.5, 1.3).or(1.0),
    ],
    outputs: &[STRESS, ALLOWABLE, CAP_MOMENT, USED],
    run: |g| Ok(found(nds_bending(&NdsBending::put(g)?))),
};

/// Working of [`nds_shear`].
pub static NDS_SHEAR: Working = Working {
    name: "timber/shear-nds",
    title: "Allowable shear of sawn timber by the NDS.",
    source: Source { work: "National Design Specification for Wood Construction, 2018", place: "3.4, 4.3" },
    not_for: "notched ends",
    inputs: &[
        SHEAR,
        AREA,
        SHAPE,
        Input::new("strength", "F_v", "reference shear value", Unit::MPA, Limits::ours(0.2, 10.0)),
        CD,
        CM,
    ],
    outputs: &[STRESS, ALLOWABLE, CAP_SHEAR, USED],
    run: |g| Ok(found(nds_shear(&NdsShear::put(g)?))),
};
