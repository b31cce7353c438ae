//! What is left of a section after years in the ground?

use groundhold_quantity::Length;
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::Section;
use crate::given::given;

given! {
    /// Decay that goes inward from every face; mm, years.
    Decay {
        /// Loss of every face in a year once decay has begun.
        rate,
        /// Years of service.
        years,
        /// Years before decay begins.
        lag,
    }
}

/// Depth of timber lost on every face.
///
/// # Source
/// Common practice, no source: a lag, then an even rate. The rate is for the person to give; it depends on species,
/// treatment, climate and soil.
/// # Symbols
/// r rate, t years, t₀ lag.
/// # Gives
/// d = r max(t − t₀, 0), mm.
/// # Not for
/// Timber whose core rots first; promises about life.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 0.5 mm a year after 10 years, at 30 years: 10 mm a face.
pub fn decay<N: Number>(i: &Decay<N>) -> N {
    (i.rate * (i.years - i.lag).max(N::constant(0.0))).named("d", Unit::MM)
}

/// A section after years of decay on every face, with the working of the loss.
///
/// # Errors
/// Where a value is out of range, or nothing is left.
pub fn after_years(section: &Section, rate_per_year: Length, years: f64, lag_years: f64) -> Result<(Section, Trace)> {
    let (i, trace) = Decay { rate: rate_per_year.to_mm(), years, lag: lag_years }.traced(&DECAY)?;
    let loss = decay(&i);
    let left = section.less(Length::mm(loss)).ok_or_else(|| Refused::NoAnswer {
        working: DECAY.name,
        why: format!("after {years} years nothing is left of the section"),
    })?;
    Ok((left, trace))
}

/// Working of [`decay`].
pub static DECAY: Working = Working {
    name: "timber/decay",
    title: "Timber lost on every face after years in the ground.",
    source: Source { work: "common practice, no source", place: "" },
    not_for: "timber whose core rots first; promises about life",
    inputs: &[
        Input::new("rate", "r", "loss of every face in a year, mm", Unit::MM, Limits::ours(0.0, 20.0)),
        Input::new("years", "t", "years of service", Unit::NONE, Limits::ours(0.0, 200.0)),
        Input::new("lag", "t₀", "years before decay begins", Unit::NONE, Limits::ours(0.0, 200.0)).or(0.0),
    ],
    outputs: &[Output { key: "loss", words: "loss on every face", unit: Unit::MM }],
    run: |g| Ok(vec![Found::One(decay(&Decay::put(g)?))]),
};
