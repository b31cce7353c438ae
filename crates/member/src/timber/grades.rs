//! Which values stand in the published tables of timber grades?

use groundhold_quantity::{Density, Length, Pressure};
use groundhold_working::Source;

use super::{Family, Grade};

/// Every row of every table, in the order EN, NDS, AS.
pub(super) fn all() -> impl Iterator<Item = &'static Grade> {
    EN_338.iter().chain(NDS).chain(AS_1720).chain(NZ)
}

const ANY: (Length, Length) = (Length::ZERO, Length::m(2.0));

/// Bending, tension, compression along, compression across, shear in MPa; mean stiffness in GPa; densities in kg/m³.
const fn en(name: &'static str, strengths: [f64; 5], stiffness: f64, char_mean: [f64; 2]) -> Grade {
    let [bending, tension, compression, bearing, shear] = strengths;
    Grade {
        name,
        family: Family::En338,
        widths: ANY,
        thicknesses: ANY,
        bending: Pressure::mpa(bending),
        shear: Pressure::mpa(shear),
        tension: Pressure::mpa(tension),
        compression: Pressure::mpa(compression),
        bearing: Pressure::mpa(bearing),
        stiffness: Pressure::mpa(stiffness * 1000.0),
        density_char: Density::kg_per_m3(char_mean[0]),
        density_mean: Density::kg_per_m3(char_mean[1]),
        gravity: 0.0,
        seasoned: true,
        source: Source { work: "EN 338:2016", place: "Table 1, softwood; seen in part, rest from memory" },
    }
}

/// EN 338:2016 softwood classes.
pub static EN_338: &[Grade] = &[
    en("C14", [14.0, 7.2, 16.0, 2.0, 3.0], 7.0, [290.0, 350.0]),
    en("C16", [16.0, 8.5, 17.0, 2.2, 3.2], 8.0, [310.0, 370.0]),
    en("C18", [18.0, 10.0, 18.0, 2.2, 3.4], 9.0, [320.0, 380.0]),
    en("C20", [20.0, 11.5, 19.0, 2.3, 3.6], 9.5, [330.0, 400.0]),
    en("C22", [22.0, 13.0, 20.0, 2.4, 3.8], 10.0, [340.0, 410.0]),
    en("C24", [24.0, 14.5, 21.0, 2.5, 4.0], 11.0, [350.0, 420.0]),
    en("C27", [27.0, 16.5, 22.0, 2.5, 4.0], 11.5, [360.0, 430.0]),
    en("C30", [30.0, 19.0, 24.0, 2.7, 4.0], 12.0, [380.0, 460.0]),
    en("C35", [35.0, 22.5, 25.0, 2.7, 4.0], 13.0, [390.0, 470.0]),
    en("C40", [40.0, 26.0, 27.0, 2.8, 4.0], 14.0, [400.0, 480.0]),
];

/// Pounds per square inch.
const fn psi(value: f64) -> Pressure {
    Pressure::psf(value * 144.0)
}

/// Real sizes of nominal ones: a 2 × 6 is 1.5 × 5.5 in, so limits stand between the sizes.
const fn inches(least: f64, most: f64) -> (Length, Length) {
    (Length::inch(least), Length::inch(most))
}
const DIMENSION: (Length, Length) = inches(1.4, 4.49);

/// F_b, F_t, F_v, F_c⊥, F_c and E in psi.
const fn nds(
    name: &'static str,
    family: Family,
    thick_wide: [(Length, Length); 2],
    psi_values: [f64; 6],
    gravity: f64,
) -> Grade {
    let [bending, tension, shear, bearing, compression, stiffness] = psi_values;
    Grade {
        name,
        family,
        widths: thick_wide[1],
        thicknesses: thick_wide[0],
        bending: psi(bending),
        shear: psi(shear),
        tension: psi(tension),
        compression: psi(compression),
        bearing: psi(bearing),
        stiffness: psi(stiffness),
        density_char: Density::ZERO,
        density_mean: Density::ZERO,
        gravity,
        seasoned: true,
        source: Source {
            work: "NDS Supplement, Design Values for Wood Construction, 2015 and 2018",
            place: "Tables 4A, 4B, 4D; specific gravity NDS Table 12.3.3A; seen in part, rest from memory",
        },
    }
}

const PINE: Family = Family::NdsSouthernPine;
const TIMBERS: Family = Family::NdsTimbers;
/// NDS reference design values. Specific gravity 0.55 Southern Pine, 0.50 Douglas Fir-Larch, 0.43 Hem-Fir.
pub static NDS: &[Grade] = &[
    nds("SP No.2", PINE, [DIMENSION, inches(1.4, 4.49)], [1100.0, 675.0, 175.0, 565.0, 1450.0, 1.4e6], 0.55),
    nds("SP No.2", PINE, [DIMENSION, inches(4.49, 6.49)], [1000.0, 600.0, 175.0, 565.0, 1400.0, 1.4e6], 0.55),
    nds("SP No.2", PINE, [DIMENSION, inches(6.49, 8.49)], [925.0, 550.0, 175.0, 565.0, 1350.0, 1.4e6], 0.55),
    nds("SP No.2", PINE, [DIMENSION, inches(8.49, 10.49)], [800.0, 475.0, 175.0, 565.0, 1300.0, 1.4e6], 0.55),
    nds("SP No.2", PINE, [DIMENSION, inches(10.49, 12.49)], [750.0, 450.0, 175.0, 565.0, 1250.0, 1.4e6], 0.55),
    nds("SP No.2", TIMBERS, [inches(4.49, 40.0), inches(4.49, 40.0)], [850.0, 550.0, 165.0, 375.0, 525.0, 1.2e6], 0.55),
    nds(
        "DF-L No.2",
        Family::NdsDimension,
        [DIMENSION, inches(1.4, 16.49)],
        [900.0, 575.0, 180.0, 625.0, 1350.0, 1.6e6],
        0.50,
    ),
    nds(
        "Hem-Fir No.2",
        Family::NdsDimension,
        [DIMENSION, inches(1.4, 16.49)],
        [850.0, 525.0, 150.0, 405.0, 1300.0, 1.3e6],
        0.43,
    ),
];

/// f'_b, f'_t of softwood, f'_s, f'_c and E in MPa.
const fn stress_grade(name: &'static str, values: [f64; 5], seasoned: bool, source: Source) -> Grade {
    let [bending, tension, shear, compression, stiffness] = values;
    Grade {
        name,
        family: Family::As1720,
        widths: ANY,
        thicknesses: ANY,
        bending: Pressure::mpa(bending),
        shear: Pressure::mpa(shear),
        tension: Pressure::mpa(tension),
        compression: Pressure::mpa(compression),
        bearing: Pressure::ZERO,
        stiffness: Pressure::mpa(stiffness),
        density_char: Density::ZERO,
        density_mean: Density::ZERO,
        gravity: 0.0,
        seasoned,
        source,
    }
}
const H2_1: Source =
    Source { work: "AS 1720.1-2010", place: "Table H2.1, F-grades; F17 bending seen, rest from memory" };

/// AS 1720.1 F-grades, taken as seasoned (wet service lowers them).
pub static AS_1720: &[Grade] = &[
    stress_grade("F4", [12.0, 5.8, 1.3, 8.6, 6100.0], true, H2_1),
    stress_grade("F5", [14.0, 7.3, 1.6, 11.0, 6900.0], true, H2_1),
    stress_grade("F7", [18.0, 8.9, 1.9, 13.0, 7900.0], true, H2_1),
    stress_grade("F8", [22.0, 12.0, 2.2, 18.0, 9100.0], true, H2_1),
    stress_grade("F11", [31.0, 15.0, 2.8, 22.0, 10500.0], true, H2_1),
    stress_grade("F14", [36.0, 19.0, 3.3, 27.0, 12000.0], true, H2_1),
    stress_grade("F17", [42.0, 22.0, 3.6, 34.0, 14000.0], true, H2_1),
    stress_grade("F22", [55.0, 29.0, 4.2, 42.0, 16000.0], true, H2_1),
    stress_grade("F27", [67.0, 34.0, 5.1, 51.0, 18500.0], true, H2_1),
];

const SG: Source = Source {
    work: "NZS 3603:1993, visual and machine stress grades",
    place: "SG8 dry and wet: bending, shear and stiffness seen; tension and compression are not given here",
};
/// New Zealand grades that are stated dry and wet.
pub static NZ: &[Grade] = &[
    stress_grade("SG8", [14.0, 0.0, 3.8, 0.0, 8000.0], true, SG),
    stress_grade("SG8 wet", [11.7, 0.0, 2.4, 0.0, 6500.0], false, SG),
];
