//! How many barrows and person-days is it by hand?

use groundhold_quantity::{Length, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::Factors;

/// A builder's barrow, heaped: 70 litres loose. Common practice, no source.
pub const BARROW: Volume = Volume::litre(70.0);

/// How hard the ground is to dig by hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ease {
    /// Spade alone.
    Soft,
    /// Spade with some fork or mattock.
    Firm,
    /// Mattock.
    Hard,
    /// Pick.
    VeryHard,
    /// Bar and hammer.
    Rock,
}

impl Ease {
    /// Least and most that one person digs in a day, bank. The most is the norm of ILO/ASIST Technical Brief 2
    /// (1998), from memory; the least is that of the next harder ground there, and for firm ground 2 m³, common
    /// practice. For rock half the norm: ours.
    pub fn rates(self) -> (Volume, Volume) {
        let (least, most) = match self {
            Ease::Soft => (3.5, 5.0),
            Ease::Firm => (2.0, 3.5),
            Ease::Hard => (2.0, 3.0),
            Ease::VeryHard => (0.8, 2.0),
            Ease::Rock => (0.4, 0.8),
        };
        (Volume::m3(least), Volume::m3(most))
    }
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Ease::Soft => "soft ground",
            Ease::Firm => "firm ground",
            Ease::Hard => "hard ground",
            Ease::VeryHard => "very hard ground",
            Ease::Rock => "rock",
        }
    }
}

/// A task by hand, with the range of person-days.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// What is done.
    pub what: String,
    /// How much of it, in the state named in `what`.
    pub volume: Volume,
    /// Fewest and most person-days.
    pub person_days: (f64, f64),
    /// Where the rate is from.
    pub source: &'static str,
}

pub(crate) const NORMS: &str = "ILO/ASIST Technical Brief 2 (1998), from memory";

/// Bank volume that one person wheels away in a day, by distance. ILO/ASIST Technical Brief 2 (1998), from memory:
/// 8.5 m³ to 20 m, 7 to 40 m, 6.5 to 60 m, 5.5 to 80 m. Farther, half a cubic metre less for each 20 m begun, not
/// below 2 m³ (ours).
pub fn carting_rate(distance: Length) -> Volume {
    let d = distance.to_m();
    Volume::m3(match d {
        _ if d <= 20.0 => 8.5,
        _ if d <= 40.0 => 7.0,
        _ if d <= 60.0 => 6.5,
        _ if d <= 80.0 => 5.5,
        _ => Number::max(5.5 - 0.5 * ((d - 80.0) / 20.0).ceil(), 2.0),
    })
}

/// Barrows and person-days of digging by hand.
///
/// # Source
/// ILO/ASIST Technical Brief 2 (1998), from memory, for the rates; the rest is arithmetic.
/// # Symbols
/// B bank volume (m³), k_l loose volume from one of bank, ρ density in the bank (kg/m³), q least and most dug by a
/// person in a day (m³), v what a barrow holds (m³, loose).
/// # Gives
/// Loose volume, mass, barrows (not rounded), fewest and most person-days, carting not counted.
/// # Not for
/// Machines; ground with roots and rubble; trenches too narrow to swing a mattock.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case DIG-T7-low and DIG-T7-high (6 × 3 × 0.4 m).
pub(crate) fn by_hand<N: Number>(bank: N, to_loose: N, density: N, rates: [N; 2], barrow: N) -> [N; 5] {
    let loose = (bank * to_loose).named("V_loose", Unit::M3);
    [
        loose,
        (bank * density).named("m", Unit::KG),
        (loose / barrow).named("n_b", Unit::NONE),
        (bank / rates[1]).named("d_least", Unit::NONE),
        (bank / rates[0]).named("d_most", Unit::NONE),
    ]
}

/// The working of `by_hand`.
pub static BY_HAND: Working = Working {
    name: "dig/by-hand",
    title: "How many barrows and person-days, dug by hand?",
    source: Source { work: "ILO/ASIST Technical Brief 2, Productivity Norms (1998)", place: "excavation, from memory" },
    not_for: "machines; ground with roots and rubble; narrow trenches; carting is not counted",
    inputs: &[
        Input::new("bank", "B", "volume in the bank", Unit::M3, Limits::ours(0.0, 1e5)),
        Input::new("to_loose", "k_l", "loose volume from one of bank", Unit::NONE, Limits::ours(1.0, 2.0)),
        Input::new("density", "ρ", "density in the bank", Unit::KG_M3, Limits::ours(500.0, 3500.0)).or(1600.0),
        Input::new("rate_least", "q_1", "least dug by a person in a day", Unit::M3, Limits::ours(0.1, 20.0)).or(2.0),
        Input::new("rate_most", "q_2", "most dug by a person in a day", Unit::M3, Limits::ours(0.1, 20.0)).or(3.5),
        Input::new("barrow", "v", "what a barrow holds, loose", Unit::M3, Limits::ours(0.01, 1.0)).or(0.07),
    ],
    outputs: &[
        Output { key: "loose", words: "loose volume", unit: Unit::M3 },
        Output { key: "mass", words: "mass", unit: Unit::KG },
        Output { key: "barrows", words: "barrows", unit: Unit::NONE },
        Output { key: "days_least", words: "fewest person-days", unit: Unit::NONE },
        Output { key: "days_most", words: "most person-days", unit: Unit::NONE },
    ],
    run: |g| {
        let rates = [g.one("rate_least")?, g.one("rate_most")?];
        let found = by_hand(g.one("bank")?, g.one("to_loose")?, g.one("density")?, rates, g.one("barrow")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Fewest and most person-days to dig this much bank by hand, carting not counted, and the working.
pub fn person_days(bank: Volume, soil: &Factors, ease: Ease, barrow: Volume) -> ((f64, f64), Trace) {
    let (least, most) = ease.rates();
    let given = [
        bank.to_m3(),
        soil.bank_to_loose,
        soil.density_bank.to_kg_per_m3(),
        least.to_m3(),
        most.to_m3(),
        barrow.to_m3(),
    ];
    let [b, l, d, q1, q2, v] = given;
    let [_, _, _, fewest, longest] = by_hand(b, l, d, [q1, q2], v);
    ((fewest, longest), Trace::new(&BY_HAND, given.map(Into::into).to_vec()))
}
