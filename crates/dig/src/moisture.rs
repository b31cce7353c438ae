//! What does soil weigh wet, and how much water does it want before it is rolled?

use groundhold_quantity::Share;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::Factors;

/// Water in a soil as the table of densities has it, by its row. Common practice, no source.
fn usual(soil: &Factors) -> f64 {
    match soil.name {
        "sand or gravel" | "drain stone" => 0.06,
        "rock" => 0.02,
        "clay" | "chalk" | "topsoil" | "turf" => 0.20,
        _ => 0.15,
    }
}

/// Density of a moist soil, and the water that it wants to come to its best for rolling.
///
/// # Source
/// Das, Principles of Geotechnical Engineering, 7th ed. (2010), ch. 3 and 6: ρ = ρ_d(1 + w).
/// # Symbols
/// ρ density in the bank at the moisture w_0 of the table (kg/m³), w moisture as found, w_opt best moisture for rolling
/// (mass of water over mass of dry soil).
/// # Gives
/// ρ_d = ρ/(1+w_0), ρ_w = ρ_d(1+w) (kg/m³) and water to add for one m³ of bank, ρ_d(w_opt − w) (kg; negative: to dry).
/// # Not for
/// Saturated soil that swells.
/// # Errors
/// None of its own.
/// # By hand
/// 1800 at 0.20, found at 0.25, best 0.18: 1500, 1875, −105 kg (reference case DIG-MOIST).
pub(crate) fn moist<N: Number>(density: N, usual: N, found: N, best: N) -> [N; 3] {
    let dry = (density / (usual + 1.0)).named("ρ_d", Unit::KG_M3);
    [dry, (dry * (found + 1.0)).named("ρ_w", Unit::KG_M3), (dry * (best - found)).named("m_w", Unit::KG)]
}

/// The working of `moist`.
pub static MOIST: Working = Working {
    name: "earthwork/moisture",
    title: "What does a soil weigh at its moisture, and how much water does it want before it is rolled?",
    source: Source { work: "Das, Principles of Geotechnical Engineering, 7th ed. (2010)", place: "ch. 3 and 6" },
    not_for: "saturated soil that swells",
    inputs: &[
        Input::new("density", "ρ", "density in the bank", Unit::KG_M3, Limits::ours(500.0, 3500.0)),
        Input::new("usual", "w_0", "moisture at which that density holds", Unit::NONE, Limits::ours(0.0, 1.0)),
        Input::new("found", "w", "moisture as found", Unit::NONE, Limits::ours(0.0, 2.0)),
        Input::new("best", "w_opt", "best moisture for rolling", Unit::NONE, Limits::ours(0.0, 1.0)).or(0.15),
    ],
    outputs: &[
        Output { key: "dry", words: "dry density", unit: Unit::KG_M3 },
        Output { key: "wet", words: "density as found", unit: Unit::KG_M3 },
        Output { key: "water", words: "water to add for one m³ of bank", unit: Unit::KG },
    ],
    run: |g| {
        let found = moist(g.one("density")?, g.one("usual")?, g.one("found")?, g.one("best")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// The factors of a soil with its density at this moisture.
pub fn at_moisture(soil: &Factors, found: Share) -> Factors {
    let w = found.to_fraction();
    if !(0.0..=2.0).contains(&w) {
        return *soil;
    }
    let [_, wet, _] = moist(soil.density_bank.to_kg_per_m3(), usual(soil), w, w);
    Factors { density_bank: groundhold_quantity::Density::kg_per_m3(wet), ..*soil }
}
