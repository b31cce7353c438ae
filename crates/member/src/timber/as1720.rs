//! What does timber carry by AS 1720.1?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::{
    Duration, Grade, Section,
    en1995::{AREA, CAP_MOMENT, CAP_SHEAR, MODULUS, MOMENT, SHEAR, USED},
};
use crate::given::given;

given! {
    /// Slenderness of a rectangular beam held sideways at points; mm.
    AsSlender {
        /// Breadth.
        breadth,
        /// Depth.
        depth,
        /// Distance of the points that hold it sideways; 0 where it is held all along.
        unheld,
        /// Material constant.
        rho,
    }
}
given! {
    /// Bending by AS 1720.1; kNm, mm³, MPa.
    AsBending {
        /// Design moment.
        moment,
        /// Section modulus.
        modulus,
        /// Characteristic bending strength.
        strength,
        /// Capacity factor.
        phi,
        /// Duration.
        k1,
        /// Moisture.
        k4,
        /// Temperature.
        k6,
        /// Strength sharing.
        k9,
        /// Stability.
        k12,
    }
}
given! {
    /// Shear by AS 1720.1; kN, mm², MPa.
    AsShear {
        /// Design shear force.
        shear,
        /// Cross-section.
        area,
        /// Greatest shear stress over mean shear stress.
        shape,
        /// Characteristic shear strength.
        strength,
        /// Capacity factor.
        phi,
        /// Duration.
        k1,
        /// Moisture.
        k4,
        /// Temperature.
        k6,
    }
}

/// Slenderness and stability factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AsStability<N> {
    /// Slenderness coefficient.
    pub s1: N,
    /// Slenderness coefficient times the material constant.
    pub rho_s1: N,
    /// Stability factor.
    pub k12: N,
}

/// Capacity against demand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AsCapacity<N> {
    /// Moment (kNm) or shear force (kN) that the section carries.
    pub capacity: N,
    /// Demand over it.
    pub utilisation: N,
}

/// Duration factor for strength, AS 1720.1-2010 Table 2.3: 0.57 for 50 years, 0.80 five months, 0.94 five days, 0.97 five
/// hours, 1.00 five minutes. Long takes the 50-year value, short five days, instant five minutes.
pub fn k1(duration: Duration) -> f64 {
    [0.57, 0.57, 0.80, 0.94, 1.00][duration.place()]
}

/// Moisture factor, AS 1720.1-2010 2.4.2: seasoned timber that stands wet 0.70; unseasoned grades carry their wet
/// values already.
pub fn k4(grade: &Grade, wet: bool) -> f64 {
    if wet && grade.seasoned { 0.70 } else { 1.0 }
}

/// Final over first bow under load that stays for years, AS 1720.1-2010 Table 2.4, j₂: 3 where the timber starts wet, 2
/// where it is seasoned and stays dry (from memory).
pub fn j2(wet: bool) -> f64 {
    if wet { 3.0 } else { 2.0 }
}

/// Material constant of beams, AS 1720.1-2010 Table 3.1 and Appendix E: 14.71 (E/f'_b)^−0.480 r^−0.061 for seasoned,
/// 11.63 (E/f'_b)^−0.435 r^−0.110 for unseasoned timber, r = 0.25 the share of load that comes and goes (from memory).
pub fn rho(grade: &Grade) -> f64 {
    let powf = groundhold_quantity::math::powf;
    let ratio = grade.stiffness / grade.bending;
    if grade.seasoned {
        14.71 * powf(ratio, -0.480) * powf(0.25, -0.061)
    } else {
        11.63 * powf(ratio, -0.435) * powf(0.25, -0.110)
    }
}

/// Stability factor of a rectangular beam that is held sideways at points of its compression edge.
///
/// # Source
/// AS 1720.1-2010, 3.2.3.2 (S₁ = 1.25 (d/b)(L_ay/d)^0.5) and 3.2.4 (k₁₂).
/// # Symbols
/// b breadth, d depth, L_ay distance of the points, ρ_b material constant, S_ρ = ρ_b S₁.
/// # Gives
/// k₁₂: 1 up to ρS₁ = 10, 1.5 − 0.05 ρS₁ up to 20, 200/(ρS₁)² above.
/// # Not for
/// Rounds and flat boards: they do not tip; k₁₂ is 1.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 240 × 45, L_ay 2000, ρ 0.98: S₁ 19.25, k₁₂ 0.557 (TI-03).
pub fn as_stability<N: Number>(i: &AsSlender<N>) -> AsStability<N> {
    let n = N::constant;
    let s1 = (n(1.25) * (i.depth / i.breadth) * (i.unheld / i.depth).sqrt()).named("S₁", Unit::NONE);
    let rho_s1 = (i.rho * s1).named("S_ρ", Unit::NONE);
    let k12 = match rho_s1.value() {
        s if s <= 10.0 => N::constant(1.0),
        s if s <= 20.0 => n(1.5) - n(0.05) * rho_s1,
        _ => N::constant(200.0) / rho_s1.squared(),
    };
    AsStability { s1, rho_s1, k12: k12.named("k₁₂", Unit::NONE) }
}

/// Bending capacity.
///
/// # Source
/// AS 1720.1-2010, 3.2.1: M_d = φ k₁ k₄ k₆ k₉ k₁₂ f'_b Z.
/// # Symbols
/// As in the source.
/// # Gives
/// Capacity and utilisation.
/// # Not for
/// Sections deeper than 300 mm (size reduction); bending in two directions.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 240 × 45 F17: 0.95·0.557·42·432 000 = 9.60 kNm (TI-03).
pub fn as_bending<N: Number>(i: &AsBending<N>) -> AsCapacity<N> {
    let factors = i.phi * i.k1 * i.k4 * i.k6 * i.k9 * i.k12;
    let capacity = (factors * i.strength * i.modulus / 1e6).named("M_d", Unit::KNM);
    AsCapacity { capacity, utilisation: (i.moment / capacity).named("M*/M_d", Unit::NONE) }
}

/// Shear capacity.
///
/// # Source
/// AS 1720.1-2010, 3.2.5: V_d = φ k₁ k₄ k₆ f'_s A_s, A_s = 2/3 A of a rectangle, 3/4 A of a round.
/// # Symbols
/// As in the source; κ = A/A_s.
/// # Gives
/// Capacity and utilisation.
/// # Not for
/// Notched ends.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 200 × 75 F7, k₁ 0.57, φ 0.9: 0.9·0.57·1.9·10 000 = 9.75 kN.
pub fn as_shear<N: Number>(i: &AsShear<N>) -> AsCapacity<N> {
    let sheared = (i.area / i.shape).named("A_s", Unit::MM2);
    let capacity = (i.phi * i.k1 * i.k4 * i.k6 * i.strength * sheared / 1000.0).named("V_d", Unit::KN);
    AsCapacity { capacity, utilisation: (i.shear / capacity).named("V*/V_d", Unit::NONE) }
}

/// Slenderness of a section where it is held sideways at points this far apart; `None` where it cannot tip.
pub(super) fn slender(section: &Section, unheld_mm: f64, rho: f64) -> Option<AsSlender<f64>> {
    let (b, d) = (section.breadth().to_mm(), section.depth().to_mm());
    (!section.is_round() && b < d && 0.0 < unheld_mm).then_some(AsSlender {
        breadth: b,
        depth: d,
        unheld: unheld_mm,
        rho,
    })
}

const WORK: &str = "AS 1720.1-2010";
const fn factor(key: &'static str, symbol: &'static str, words: &'static str, least: f64, most: f64) -> Input {
    Input::new(key, symbol, words, Unit::NONE, Limits::ours(least, most))
}
const PHI: Input = factor("phi", "φ", "capacity factor", 0.3, 1.0);
const K1: Input = factor("k1", "k₁", "duration factor", 0.5, 1.0).or(1.0);
const K4: Input = factor("k4", "k₄", "moisture factor", 0.3, 1.2).or(1.0);
const K6: Input = factor("k6", "k₆", "temperature factor", 0.5, 1.0).or(1.0);

/// Working of [`as_stability`].
pub static AS_STABILITY: Working = Working {
    name: "timber/stability-as1720",
    title: "Stability factor of a rectangular beam held sideways at points (AS 1720.1).",
    source: Source { work: WORK, place: "3.2.3.2, 3.2.4" },
    not_for: "rounds and flat boards, which do not tip",
    inputs: &[
        Input::new("breadth", "b", "breadth", Unit::MM, Limits::ours(10.0, 1000.0)),
        Input::new("depth", "d", "depth", Unit::MM, Limits::ours(10.0, 1000.0)),
        Input::new(
            "unheld",
            "L_ay",
            "distance of the points that hold it sideways",
            Unit::MM,
            Limits::ours(0.0, 20_000.0),
        ),
        factor("rho", "ρ_b", "material constant", 0.5, 1.5),
    ],
    outputs: &[
        Output { key: "s1", words: "slenderness coefficient", unit: Unit::NONE },
        Output { key: "rho_s1", words: "slenderness times material constant", unit: Unit::NONE },
        Output { key: "k12", words: "stability factor", unit: Unit::NONE },
    ],
    run: |g| {
        let s = as_stability(&AsSlender::put(g)?);
        Ok(vec![Found::One(s.s1), Found::One(s.rho_s1), Found::One(s.k12)])
    },
};

/// Working of [`as_bending`].
pub static AS_BENDING: Working = Working {
    name: "timber/bending-as1720",
    title: "Bending capacity of sawn timber by AS 1720.1.",
    source: Source { work: WORK, place: "3.2.1, Tables 2.1, 2.3, 2.5" },
    not_for: "sections deeper than 300 mm; bending in two directions",
    inputs: &[
        MOMENT,
        MODULUS,
        Input::new("strength", "f'_b", "characteristic bending strength", Unit::MPA, Limits::ours(3.0, 120.0)),
        PHI,
        K1,
        K4,
        K6,
        factor("k9", "k₉", "strength sharing factor", 1.0, 1.4).or(1.0),
        factor("k12", "k₁₂", "stability factor", 0.01, 1.0).or(1.0),
    ],
    outputs: &[CAP_MOMENT, USED],
    run: |g| {
        let c = as_bending(&AsBending::put(g)?);
        Ok(vec![Found::One(c.capacity), Found::One(c.utilisation)])
    },
};

/// Working of [`as_shear`].
pub static AS_SHEAR: Working = Working {
    name: "timber/shear-as1720",
    title: "Shear capacity of sawn timber by AS 1720.1.",
    source: Source { work: WORK, place: "3.2.5, Tables 2.1, 2.3, 2.5" },
    not_for: "notched ends",
    inputs: &[
        SHEAR,
        AREA,
        super::en1995::SHAPE,
        Input::new("strength", "f'_s", "characteristic shear strength", Unit::MPA, Limits::ours(0.3, 20.0)),
        PHI,
        K1,
        K4,
        K6,
    ],
    outputs: &[CAP_SHEAR, USED],
    run: |g| {
        let c = as_shear(&AsShear::put(g)?);
        Ok(vec![Found::One(c.capacity), Found::One(c.utilisation)])
    },
};
