//! What may soil be presumed to bear sideways where nobody has tested it?

use groundhold_quantity::{Pressure, UnitWeight};
use groundhold_working::Source;

/// One class of material of the presumptive table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Presumptive {
    /// As a job names it.
    pub name: &'static str,
    /// Words for people, with the group symbols of ASTM D2487.
    pub words: &'static str,
    /// Allowable bearing under a foundation.
    pub vertical: Pressure,
    /// Allowable lateral bearing per metre of depth below natural grade (kPa per metre is kN/m³).
    pub lateral: UnitWeight,
    /// Allowable lateral sliding friction coefficient; zero where cohesion is given instead.
    pub friction: f64,
    /// Allowable lateral sliding cohesion; zero where friction is given instead.
    pub cohesion: Pressure,
}

/// Where [`PRESUMPTIVE`] comes from.
pub const PRESUMPTIVE_SOURCE: Source =
    Source { work: "International Building Code, 2012 to 2021", place: "Table 1806.2; doubling by 1806.3.4" };

/// Pounds per square foot per foot of depth.
const fn psf_per_ft(value: f64) -> UnitWeight {
    UnitWeight::n_per_m3(Pressure::psf(value).to_pa() / 0.3048)
}
const fn row(
    name: &'static str,
    words: &'static str,
    vertical: f64,
    lateral: f64,
    friction: f64,
    cohesion: f64,
) -> Presumptive {
    Presumptive {
        name,
        words,
        vertical: Pressure::psf(vertical),
        lateral: psf_per_ft(lateral),
        friction,
        cohesion: Pressure::psf(cohesion),
    }
}

/// Presumptive values by class of material, from strong to weak. Not for mud, organic silt, peat or unprepared fill:
/// there the code asks for a report by a licensed person.
pub const PRESUMPTIVE: &[Presumptive] = &[
    row("bedrock", "crystalline bedrock", 12000.0, 1200.0, 0.70, 0.0),
    row("foliated rock", "sedimentary and foliated rock", 4000.0, 400.0, 0.35, 0.0),
    row("gravel", "sandy gravel and gravel (GW, GP)", 3000.0, 200.0, 0.35, 0.0),
    row(
        "sand",
        "sand, silty or clayey sand, silty or clayey gravel (SW, SP, SM, SC, GM, GC)",
        2000.0,
        150.0,
        0.25,
        0.0,
    ),
    row("clay", "clay, sandy or silty clay, silt (CL, ML, MH, CH)", 1500.0, 100.0, 0.0, 130.0),
];

/// A row of [`PRESUMPTIVE`] by its name; `None` where the table has none.
pub fn presumptive(name: &str) -> Option<&'static Presumptive> {
    PRESUMPTIVE.iter().find(|p| p.name.eq_ignore_ascii_case(name.trim()))
}
