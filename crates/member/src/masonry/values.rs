//! Which tensile strengths do the codes give masonry that nobody has tested?

use groundhold_quantity::Pressure;
use groundhold_working::Source;

/// In which direction masonry is bent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BedJoint {
    /// The wall stands like a cantilever: a bed joint opens.
    Opens,
    /// The wall spans sideways between piers: units and head joints break.
    Spans,
}

/// Characteristic flexural strengths by unit, EN 1996-1-1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlexuralEn {
    /// `clay`, `calcium silicate`, `concrete block`, `natural stone`.
    pub unit: &'static str,
    /// f_xk1, the bed joint opens: mortar under M5, M5 and stronger.
    pub opens: [Pressure; 2],
    /// f_xk2, spanning sideways: mortar under M5, M5 and stronger.
    pub spans: [Pressure; 2],
    /// f_vk0, initial shear strength: mortar M2.5 to M9, M10 and stronger.
    pub shear: [Pressure; 2],
}

/// Where [`FLEXURAL_EN`] comes from.
pub const VALUES_EN_SOURCE: Source = Source {
    work: "EN 1996-1-1:2005",
    place: "3.6.3 tables of f_xk1 and f_xk2, general purpose mortar; Table 3.4 f_vk0; from memory",
};

const fn mpa(a: f64, b: f64) -> [Pressure; 2] {
    [Pressure::mpa(a), Pressure::mpa(b)]
}

/// Flexural and shear strengths, recommended values.
pub const FLEXURAL_EN: &[FlexuralEn] = &[
    FlexuralEn { unit: "clay", opens: mpa(0.10, 0.10), spans: mpa(0.20, 0.40), shear: mpa(0.20, 0.30) },
    FlexuralEn { unit: "calcium silicate", opens: mpa(0.05, 0.10), spans: mpa(0.20, 0.40), shear: mpa(0.15, 0.20) },
    FlexuralEn { unit: "concrete block", opens: mpa(0.05, 0.10), spans: mpa(0.20, 0.40), shear: mpa(0.15, 0.20) },
    FlexuralEn { unit: "natural stone", opens: mpa(0.05, 0.10), spans: mpa(0.20, 0.40), shear: mpa(0.10, 0.15) },
];

/// Allowable flexural tension by mortar, TMS 402 allowable stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlexuralTms {
    /// `solid`, `hollow`, `hollow grouted`.
    pub unit: &'static str,
    /// The bed joint opens: Portland cement/lime or mortar cement, types M or S, then N.
    pub opens: [Pressure; 2],
}

/// Where [`FLEXURAL_TMS`] comes from.
pub const VALUES_TMS_SOURCE: Source = Source {
    work: "TMS 402-16 (ACI 530), Building Code Requirements for Masonry Structures",
    place: "Table 8.2.4.2, normal to bed joints, 53 40, 33 25, 86 84 psi; from memory",
};

const fn psi(a: f64, b: f64) -> [Pressure; 2] {
    [Pressure::psf(a * 144.0), Pressure::psf(b * 144.0)]
}

/// Allowable flexural tension, normal to bed joints.
pub const FLEXURAL_TMS: &[FlexuralTms] = &[
    FlexuralTms { unit: "solid", opens: psi(53.0, 40.0) },
    FlexuralTms { unit: "hollow", opens: psi(33.0, 25.0) },
    FlexuralTms { unit: "hollow grouted", opens: psi(86.0, 84.0) },
];

/// A row of [`FLEXURAL_EN`] by its unit.
pub fn flexural_en(unit: &str) -> Option<&'static FlexuralEn> {
    FLEXURAL_EN.iter().find(|r| r.unit.eq_ignore_ascii_case(unit.trim()))
}
/// A row of [`FLEXURAL_TMS`] by its unit.
pub fn flexural_tms(unit: &str) -> Option<&'static FlexuralTms> {
    FLEXURAL_TMS.iter().find(|r| r.unit.eq_ignore_ascii_case(unit.trim()))
}
