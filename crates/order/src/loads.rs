//! How many loads does the vehicle carry, or the barrow?

use groundhold_quantity::{Mass, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::packs::up;

/// What a vehicle, a skip or a barrow carries.
#[derive(Debug, Clone, PartialEq)]
pub struct Vehicle {
    /// What it is.
    pub name: String,
    /// How heavy it may be laden.
    pub payload: Mass,
    /// How much fits in it.
    pub volume: Volume,
}

/// A barrow level full: 70 l and 120 kg. Common practice, no source.
pub fn barrow() -> Vehicle {
    Vehicle { name: "barrow".into(), payload: Mass::kg(120.0), volume: Volume::litre(70.0) }
}

/// How many loads.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// Loads by mass, as a fraction.
    pub by_mass: f64,
    /// Loads by volume, as a fraction.
    pub by_volume: f64,
    /// Whole loads.
    pub loads: f64,
    /// The working.
    pub trace: Trace,
}

/// Loads of a vehicle: what is reached first, its payload or its volume.
///
/// # Source
/// Common practice, no source: division by both, the larger counts.
/// # Symbols
/// | m | mass to carry | ≥ 0 |
/// | V | volume to carry, loose | ≥ 0 |
/// | P | payload | ≥ 1 kg |
/// | C | volume that fits | ≥ 0.001 m³ |
/// # Gives
/// Loads by mass and by volume as fractions, and whole loads.
/// # Not for
/// Pieces longer than the load bed.
/// # Errors
/// None of its own; [`LOADS`] checks the limits.
/// # By hand
/// 7.2 m³ in the bank is 9.0 m³ loose; in barrows of 70 l: 128.6, so 129.
fn count_loads<N: Number>(mass: N, volume: N, payload: N, space: N) -> (N, N, N) {
    let by_mass = (mass / payload).named("n_m", Unit::NONE);
    let by_volume = (volume / space).named("n_V", Unit::NONE);
    let whole = up(by_mass.max(by_volume).named("n₀", Unit::NONE)).named("n", Unit::NONE);
    (by_mass, by_volume, whole)
}

/// `order/loads`: loads of a vehicle or barrow.
pub static LOADS: Working = Working {
    name: "order/loads",
    title: "Loads of a vehicle or barrow, by mass and by volume.",
    source: Source { work: "Common practice, no source", place: "the larger of loads by mass and by volume" },
    not_for: "Pieces longer than the load bed.",
    inputs: &[
        Input::new("mass", "m", "mass to carry", Unit::KG, Limits::ours(0.0, 1e9)).or(0.0),
        Input::new("volume", "V", "volume to carry, loose", Unit::M3, Limits::ours(0.0, 1e6)).or(0.0),
        Input::new("payload", "P", "payload", Unit::KG, Limits::ours(1.0, 1e6)),
        Input::new("space", "C", "volume that fits", Unit::M3, Limits::ours(0.001, 1e4)),
    ],
    outputs: &[
        Output { key: "by_mass", words: "loads by mass", unit: Unit::NONE },
        Output { key: "by_volume", words: "loads by volume", unit: Unit::NONE },
        Output { key: "loads", words: "whole loads", unit: Unit::NONE },
    ],
    run: |g| {
        let (a, b, c) = count_loads(g.one("mass")?, g.one("volume")?, g.one("payload")?, g.one("space")?);
        Ok(vec![Found::One(a), Found::One(b), Found::One(c)])
    },
};

/// Loads of `vehicle` for a mass and a loose volume.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`LOADS`].
pub fn loads(mass: Mass, volume: Volume, vehicle: &Vehicle) -> Result<Loads> {
    let given = [mass.to_kg(), volume.to_m3(), vehicle.payload.to_kg(), vehicle.volume.to_m3()];
    LOADS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(LOADS.name, row, v))?;
    let (by_mass, by_volume, whole) = count_loads(given[0], given[1], given[2], given[3]);
    let trace = Trace::new(&LOADS, given.iter().map(|v| (*v).into()).collect());
    Ok(Loads { by_mass, by_volume, loads: whole, trace })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_barrow_counts_by_volume_for_soil_and_by_mass_for_stone() {
        let soil = loads(Mass::t(11.5), Volume::m3(9.0), &Vehicle { payload: Mass::kg(150.0), ..barrow() }).unwrap();
        assert_eq!(soil.loads, 129.0);
        let stone = loads(Mass::t(1.6), Volume::m3(0.7), &barrow()).unwrap();
        assert_eq!(stone.loads, 14.0);
        assert!(loads(Mass::kg(-1.0), Volume::ZERO, &barrow()).is_err());
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn more_to_carry_is_never_fewer_loads(m in 0.0f64..1e5, v in 0.0f64..50.0, more in 0.0f64..1e4) {
            let van = Vehicle { name: "van".into(), payload: Mass::t(2.5), volume: Volume::m3(2.0) };
            let a = loads(Mass::kg(m), Volume::m3(v), &van).unwrap().loads;
            let b = loads(Mass::kg(m + more), Volume::m3(v), &van).unwrap().loads;
            prop_assert!(a <= b);
            prop_assert!(a * 2500.0 >= m - 1e-3 && a * 2.0 >= v - 1e-6);
        }
    }
}
