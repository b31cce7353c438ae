//! What a formula may do with a number, and the unit a figure is written in.

use std::ops::{Add, Div, Mul, Neg, Sub};

use groundhold_quantity::math;

/// The unit in which a figure of a working is written. Formulas use these units as they stand (kN, m, kPa; N, mm, MPa for
/// timber); only degrees are turned into radians on the way in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unit(pub &'static str);

#[allow(missing_docs)]
impl Unit {
    pub const NONE: Unit = Unit("");
    pub const DEG: Unit = Unit("°");
    pub const M: Unit = Unit("m");
    pub const MM: Unit = Unit("mm");
    pub const M2: Unit = Unit("m²");
    pub const MM2: Unit = Unit("mm²");
    pub const MM3: Unit = Unit("mm³");
    pub const MM4: Unit = Unit("mm⁴");
    pub const M3: Unit = Unit("m³");
    pub const KN: Unit = Unit("kN");
    pub const N: Unit = Unit("N");
    pub const KN_M: Unit = Unit("kN/m");
    pub const KNM: Unit = Unit("kNm");
    pub const NMM: Unit = Unit("Nmm");
    pub const KPA: Unit = Unit("kPa");
    pub const KPA_M: Unit = Unit("kPa/m");
    pub const MPA: Unit = Unit("MPa");
    pub const KN_M3: Unit = Unit("kN/m³");
    pub const KG: Unit = Unit("kg");
    pub const KG_M3: Unit = Unit("kg/m³");
    pub const L_S: Unit = Unit("l/s");
    pub const M3_S: Unit = Unit("m³/s");
    pub const MM_H: Unit = Unit("mm/h");
    pub const M_S: Unit = Unit("m/s");
    pub const H: Unit = Unit("h");
    pub const PERCENT: Unit = Unit("%");
    pub const FT: Unit = Unit("ft");
    pub const INCH: Unit = Unit("in");
    pub const LB: Unit = Unit("lb");
    pub const PSF: Unit = Unit("psf");
    pub const PCF: Unit = Unit("pcf");
    pub const PSI: Unit = Unit("psi");
}

/// One bound for every formula: `f64` for speed, [`crate::Shown`] for a sheet.
pub trait Number:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
{
    /// A constant of the formula.
    fn constant(value: f64) -> Self;
    /// A constant angle, written in degrees, held in radians.
    fn degrees(value: f64) -> Self;
    /// The bare value (angles in radians). For comparisons and branches, never to hide a step.
    fn value(self) -> f64;
    /// Notes this result as a line `symbol = formula = numbers put in = result unit`; from here on it is known by its symbol.
    fn named(self, symbol: &'static str, unit: Unit) -> Self;
    /// Sine.
    fn sin(self) -> Self;
    /// Cosine.
    fn cos(self) -> Self;
    /// Tangent.
    fn tan(self) -> Self;
    /// Inverse sine, an angle.
    fn asin(self) -> Self;
    /// Inverse cosine, an angle.
    fn acos(self) -> Self;
    /// Inverse tangent, an angle.
    fn atan(self) -> Self;
    /// Square root.
    fn sqrt(self) -> Self;
    /// e to this power.
    fn exp(self) -> Self;
    /// Natural logarithm.
    fn ln(self) -> Self;
    /// To a power.
    fn powf(self, exponent: f64) -> Self;
    /// Squared.
    fn squared(self) -> Self;
    /// Cubed.
    fn cubed(self) -> Self;
    /// Without its sign.
    fn abs(self) -> Self;
    /// The smaller of two.
    fn min(self, other: Self) -> Self;
    /// The larger of two.
    fn max(self, other: Self) -> Self;
}

impl Number for f64 {
    fn constant(value: f64) -> f64 {
        value
    }
    fn degrees(value: f64) -> f64 {
        value.to_radians()
    }
    fn value(self) -> f64 {
        self
    }
    fn named(self, _: &'static str, _: Unit) -> f64 {
        self
    }
    fn sin(self) -> f64 {
        math::sin(self)
    }
    fn cos(self) -> f64 {
        math::cos(self)
    }
    fn tan(self) -> f64 {
        math::tan(self)
    }
    fn asin(self) -> f64 {
        math::asin(self)
    }
    fn acos(self) -> f64 {
        math::acos(self)
    }
    fn atan(self) -> f64 {
        math::atan(self)
    }
    fn sqrt(self) -> f64 {
        f64::sqrt(self)
    }
    fn exp(self) -> f64 {
        math::exp(self)
    }
    fn ln(self) -> f64 {
        math::ln(self)
    }
    fn powf(self, exponent: f64) -> f64 {
        math::powf(self, exponent)
    }
    fn squared(self) -> f64 {
        self * self
    }
    fn cubed(self) -> f64 {
        self * self * self
    }
    fn abs(self) -> f64 {
        f64::abs(self)
    }
    fn min(self, other: f64) -> f64 {
        if other < self { other } else { self }
    }
    fn max(self, other: f64) -> f64 {
        if other > self { other } else { self }
    }
}
