//! Which loads and bearing values does a building code presume when nobody has tested the ground?

use groundhold_quantity::{Pressure, UnitWeight};
use groundhold_working::Source;

const PSF_PER_FT: f64 = 4.448_221_615_260_5 / (0.3048 * 0.3048 * 0.3048) / 1000.0;

/// A row of the code's lateral soil loads: pressure per depth on a wall, ground level behind, drained.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LateralLoad {
    /// Group symbol of the Unified Soil Classification System.
    pub uscs: &'static str,
    /// Pressure per depth on a wall that can move.
    pub active: UnitWeight,
    /// Pressure per depth on a wall that cannot.
    pub at_rest: UnitWeight,
}

/// Where [`LATERAL_LOADS`] come from. CH, MH, OL, OH and Pt are not in it: the code calls them unsuitable as backfill.
pub const LATERAL_LOADS_SOURCE: Source = Source {
    work: "from memory: International Building Code 2018 and 2021",
    place: "Table 1610.1, psf per foot of depth",
};

const fn load(uscs: &'static str, active_psf_ft: f64, at_rest_psf_ft: f64) -> LateralLoad {
    LateralLoad {
        uscs,
        active: UnitWeight::kn_per_m3(active_psf_ft * PSF_PER_FT),
        at_rest: UnitWeight::kn_per_m3(at_rest_psf_ft * PSF_PER_FT),
    }
}

/// Lateral soil loads by group symbol.
pub static LATERAL_LOADS: &[LateralLoad] = &[
    load("GW", 30.0, 60.0),
    load("GP", 30.0, 60.0),
    load("GM", 40.0, 60.0),
    load("GC", 45.0, 60.0),
    load("SW", 30.0, 60.0),
    load("SP", 30.0, 60.0),
    load("SM", 45.0, 60.0),
    load("SC-SM", 45.0, 100.0),
    load("SC", 60.0, 100.0),
    load("ML", 45.0, 100.0),
    load("ML-CL", 60.0, 100.0),
    load("CL", 60.0, 100.0),
];

/// The row of this group symbol; `None` for a soil the code does not accept as backfill.
pub fn lateral_load(uscs: &str) -> Option<&'static LateralLoad> {
    LATERAL_LOADS.iter().find(|l| l.uscs == uscs)
}

/// A row of the code's presumptive values for footings and posts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Presumptive {
    /// The code's class of material, in short.
    pub words: &'static str,
    /// Group symbols it covers; empty for rock.
    pub uscs: &'static [&'static str],
    /// Vertical bearing pressure.
    pub vertical: Pressure,
    /// Lateral bearing pressure per depth below ground.
    pub lateral: UnitWeight,
    /// Coefficient of sliding friction; `None` where the code gives cohesion instead.
    pub friction: Option<f64>,
    /// Cohesion against sliding; `None` where the code gives friction.
    pub cohesion: Option<Pressure>,
}

/// Where [`PRESUMPTIVE`] comes from.
pub const PRESUMPTIVE_SOURCE: Source = Source {
    work: "International Building Code 2012 to 2021",
    place: "Table 1806.2; seen in a reproduction of the 2012 edition and in code change S148-07/08",
};

const fn row(
    words: &'static str,
    uscs: &'static [&'static str],
    vertical_psf: f64,
    lateral_psf_ft: f64,
    friction: Option<f64>,
    cohesion: Option<Pressure>,
) -> Presumptive {
    Presumptive {
        words,
        uscs,
        vertical: Pressure::psf(vertical_psf),
        lateral: UnitWeight::kn_per_m3(lateral_psf_ft * PSF_PER_FT),
        friction,
        cohesion,
    }
}

/// Presumptive values, rock to clay.
pub static PRESUMPTIVE: &[Presumptive] = &[
    row("crystalline bedrock", &[], 12_000.0, 1_200.0, Some(0.70), None),
    row("sedimentary and foliated rock", &[], 4_000.0, 400.0, Some(0.35), None),
    row("sandy gravel and gravel", &["GW", "GP"], 3_000.0, 200.0, Some(0.35), None),
    row(
        "sand, silty sand, clayey sand, silty gravel and clayey gravel",
        &["SW", "SP", "SM", "SC", "GM", "GC"],
        2_000.0,
        150.0,
        Some(0.25),
        None,
    ),
    row(
        "clay, sandy, silty and gravelly clay, silt",
        &["CL", "ML", "MH", "CH"],
        1_500.0,
        100.0,
        None,
        Some(Pressure::psf(130.0)),
    ),
];

/// The row that covers this group symbol.
pub fn presumptive(uscs: &str) -> Option<&'static Presumptive> {
    PRESUMPTIVE.iter().find(|p| p.uscs.contains(&uscs))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_foot_of_depth_in_pounds_is_the_same_in_kilonewtons() {
        let sand = presumptive("SP").unwrap();
        assert!((sand.lateral.to_kn_per_m3() - 23.563).abs() < 0.001);
        assert!((sand.vertical.to_kpa() - 95.76).abs() < 0.01);
        assert!(lateral_load("CH").is_none(), "fat clay is not accepted as backfill");
    }

    #[test]
    fn at_rest_is_never_below_active() {
        assert!(LATERAL_LOADS.iter().all(|l| l.at_rest >= l.active));
    }
}
