//! How deep does the ground freeze, and how much does clay swell and shrink? Data for findings.

use groundhold_quantity::Share;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Depth to which ground freezes.
///
/// # Source
/// Stefan (1891), depth of ice √(2 k I/L), for ground as in US Army TM 5-852-6, Calculation Methods for Determination of
/// Depths of Freeze and Thaw in Soils (1988) (formula from memory); latent heat of water 334 MJ/m³ per share of volume.
/// # Symbols
/// | I, k, w, ρ_d | freezing index of the surface, conductivity frozen, water content, dry density | °C·days, W/(m K), –, kg/m³ | |
/// # Gives
/// Depth in m, on the deep side: heat from below and of the soil itself is not counted.
/// # Not for
/// Ground under snow or turf, which freezes less deep.
/// # Errors
/// None here.
/// # By hand
/// I = 300, k = 2, w = 15 %, ρ_d = 1700: √(2 · 2 · 300 · 86 400/(334 000 · 0.15 · 1700)) = 1.10 m (reference case FR-01).
pub fn frost_depth<N: Number>(index: N, conductivity: N, water: N, density: N) -> N {
    let latent = (water * density * 334_000.0).named("L", Unit::NONE);
    (conductivity * index * (2.0 * 86_400.0) / latent).sqrt().named("z_f", Unit::M)
}

/// Depth of frost.
pub static FROST_DEPTH: Working = Working {
    name: "ground/frost-depth",
    title: "How deep does bare ground freeze in such a winter?",
    source: Source {
        work: "Stefan, Über die Theorie der Eisbildung, Annalen der Physik 278(2), 1891",
        place: "for ground as in US Army TM 5-852-6, 1988, from memory; on the deep side",
    },
    not_for: "ground under snow or turf; what the local code says about frost goes first",
    inputs: &[
        Input::new("index", "I", "freezing index of the surface in °C·days", Unit::NONE, Limits::ours(0.0, 5000.0)),
        Input::new("conductivity", "k", "conductivity of frozen ground in W/(m K)", Unit::NONE, Limits::ours(0.1, 4.0))
            .or(2.0),
        Input::new("water", "w", "water content by mass", Unit::NONE, Limits::ours(0.01, 1.0)),
        Input::new("density", "ρ_d", "dry density", Unit::KG_M3, Limits::ours(800.0, 2400.0)),
    ],
    outputs: &[Output { key: "depth", words: "depth of frost", unit: Unit::M }],
    run: |g| {
        let (i, k) = (g.one("index")?, g.one("conductivity")?);
        Ok(vec![Found::One(frost_depth(i, k, g.one("water")?, g.one("density")?))])
    },
};

/// How much a clay moves with its water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Swell {
    /// Hardly.
    Low,
    /// Somewhat.
    Medium,
    /// Strongly.
    High,
    /// Very strongly.
    VeryHigh,
}

/// A row of the table of swelling: from this modified plasticity index on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwellClass {
    /// Least modified plasticity index, as a share.
    pub from: Share,
    /// How much it moves.
    pub swell: Swell,
    /// In a word.
    pub name: &'static str,
}

/// Where the table of swelling comes from.
pub static SWELL_SOURCE: Source = Source {
    work: "from memory: Building Research Establishment Digest 240, Low-rise buildings on shrinkable clay soils, 1993",
    place: "volume change potential by modified plasticity index, the share under 0.425 mm counted",
};

/// Rows by rising plasticity.
pub static SWELL_CLASSES: &[SwellClass] = &[
    SwellClass { from: Share::fraction(0.0), swell: Swell::Low, name: "low" },
    SwellClass { from: Share::fraction(0.2), swell: Swell::Medium, name: "medium" },
    SwellClass { from: Share::fraction(0.4), swell: Swell::High, name: "high" },
    SwellClass { from: Share::fraction(0.6), swell: Swell::VeryHigh, name: "very high" },
];

/// How much a clay moves, by its plasticity index and the share of it that is finer than 0.425 mm.
pub fn swell(plasticity: Share, finer: Share) -> &'static SwellClass {
    let modified = plasticity.to_fraction() * finer.to_fraction();
    let fits = SWELL_CLASSES.iter().take_while(|c| c.from.to_fraction() <= modified);
    fits.last().unwrap_or(&SWELL_CLASSES[0])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn swelling_changes_class_at_the_tables_edge_and_stones_make_it_less() {
        let at = |pi: f64, finer: f64| swell(Share::fraction(pi), Share::fraction(finer)).swell;
        assert_eq!(at(0.199, 1.0), Swell::Low);
        assert_eq!(at(0.2, 1.0), Swell::Medium);
        assert_eq!(at(0.6, 1.0), Swell::VeryHigh);
        assert_eq!(at(0.5, 0.5), Swell::Medium);
    }
}
