//! How many times does the vehicle go? Mass and volume both limit it.

use groundhold_quantity::{Mass, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working, check_range};

use crate::{Factors, Vehicle};

/// Loads of one soil.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// Whole loads.
    pub count: u32,
    /// Loads as a fraction, before rounding up.
    pub exact: f64,
    /// True when the mass, not the room, fills the vehicle.
    pub mass_limits: bool,
    /// Its working.
    pub trace: Trace,
}

/// Loads from bank volume: the larger of loads by room and loads by mass, rounded up.
///
/// # Source
/// Common practice, no source: arithmetic on the vehicle's two limits.
/// # Symbols
/// B bank volume (m³), k_l loose volume from one of bank, ρ density in the bank (kg/m³), P payload (kg), V what fits
/// (m³).
/// # Gives
/// Loads by room, loads by mass, whole loads.
/// # Not for
/// Mixed loads; wet soil weighs more than its class says.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case DIG-LOADS-1.
pub(crate) fn loads_of<N: Number>(bank: N, to_loose: N, density: N, payload: N, room: N) -> [N; 3] {
    let by_room = (bank * to_loose / room).named("n_room", Unit::NONE);
    let by_mass = (bank * density / payload).named("n_mass", Unit::NONE);
    [by_room, by_mass, N::constant(by_room.max(by_mass).value().ceil())]
}

/// The working of `loads_of`.
pub static LOADS: Working = Working {
    name: "dig/loads",
    title: "How many loads, when both the mass and the room limit the vehicle?",
    source: Source { work: "common practice, no source", place: "" },
    not_for: "mixed loads; wet soil weighs more than its class says",
    inputs: &[
        Input::new("bank", "B", "volume in the bank", Unit::M3, Limits::ours(0.0, 1e6)),
        Input::new("to_loose", "k_l", "loose volume from one of bank", Unit::NONE, Limits::ours(1.0, 2.0)),
        Input::new("density", "ρ", "density in the bank", Unit::KG_M3, Limits::ours(500.0, 3500.0)),
        Input::new("payload", "P", "what the vehicle may carry", Unit::KG, Limits::ours(50.0, 50_000.0)),
        Input::new("room", "V", "what fits in it, loose", Unit::M3, Limits::ours(0.02, 50.0)),
    ],
    outputs: &[
        Output { key: "by_room", words: "loads by room", unit: Unit::NONE },
        Output { key: "by_mass", words: "loads by mass", unit: Unit::NONE },
        Output { key: "loads", words: "whole loads", unit: Unit::NONE },
    ],
    run: |g| {
        let found = loads_of(g.one("bank")?, g.one("to_loose")?, g.one("density")?, g.one("payload")?, g.one("room")?);
        g.sheet().remark(format!("The larger, rounded up: {} loads.", found[2].value()));
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Loads that take this much bank soil away.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] when the vehicle or the volume is outside the working's limits: a
/// payload of nothing would never finish.
pub fn loads(bank: Volume, soil: &Factors, vehicle: Vehicle) -> groundhold_working::Result<Loads> {
    let given = [
        bank.to_m3(),
        soil.bank_to_loose,
        soil.density_bank.to_kg_per_m3(),
        vehicle.payload.to_kg(),
        vehicle.volume.to_m3(),
    ];
    LOADS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(LOADS.name, row, v))?;
    let [b, l, d, p, r] = given;
    let [by_room, by_mass, whole] = loads_of(b, l, d, p, r);
    Ok(Loads {
        count: whole as u32,
        exact: by_room.max(by_mass),
        mass_limits: by_mass > by_room,
        trace: Trace::new(&LOADS, given.map(Into::into).to_vec()),
    })
}

/// Mass of loose material that was bought by volume.
pub(crate) fn mass_of_loose(loose: Volume, soil: &Factors) -> Mass {
    soil.density_loose() * loose
}
