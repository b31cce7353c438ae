//! For how many years does the zinc on a post keep rust from its steel?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Years until the zinc is used up, and the years of bare steel that follow.
///
/// # Source
/// EN ISO 14713-1:2017, 7 and Table 2: the life of a zinc coating is its thickness over its yearly loss, which the table gives
/// by category of the place; from memory.
/// # Symbols
/// | z | zinc | µm | r | its loss in a year | µm | t | years of service | – |
/// # Gives
/// (z/r, what is left of t after that). Years without a coating are never less than nothing.
/// # Not for
/// Zinc that was scratched off or cut through and not made good; the ground line in salty ground.
/// # Errors
/// None but the limits.
/// # By hand
/// 85 µm at 2.1 µm a year, 50 years: 40.5 years, then 9.5 years of bare steel (case `SPO-01`).
pub fn zinc_life<N: Number>(zinc: N, rate: N, years: N) -> (N, N) {
    let life = (zinc / rate).named("t_z", Unit::NONE);
    (life, (years - life).max(N::constant(0.0)).named("t_s", Unit::NONE))
}

/// See [`zinc_life`].
pub static ZINC_LIFE: Working = Working {
    name: "wall/zinc-life",
    title: "For how many years does zinc keep rust from steel?",
    source: Source { work: "EN ISO 14713-1:2017", place: "clause 7 and Table 2; from memory" },
    not_for: "zinc scratched off or cut through; the ground line in salty ground",
    inputs: &[
        Input::new("zinc", "z", "thickness of the zinc, µm", Unit::NONE, Limits::ours(0.0, 500.0)),
        Input::new("rate", "r", "its loss in a year, µm", Unit::NONE, Limits::ours(0.05, 50.0)),
        Input::new("years", "t", "years of service", Unit::NONE, Limits::ours(0.0, 100.0)),
    ],
    outputs: &[
        Output { key: "life", words: "years until the zinc is used up", unit: Unit::NONE },
        Output { key: "bare", words: "years of bare steel", unit: Unit::NONE },
    ],
    run: |g| {
        let (life, bare) = zinc_life(g.one("zinc")?, g.one("rate")?, g.one("years")?);
        Ok([life, bare].map(Found::One).into())
    },
};
