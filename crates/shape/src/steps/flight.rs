//! What are riser, 2R+G, pitch and run of a flight of equal risers?

use groundhold_quantity::{Angle, Length};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

/// Proportions of a flight.
#[derive(Debug, Clone, PartialEq)]
pub struct Geometry {
    /// Number of risers.
    pub risers: usize,
    /// Height of each riser.
    pub riser: Length,
    /// Going of each tread.
    pub going: Length,
    /// Twice the riser and the going.
    pub two_r_plus_g: Length,
    /// Pitch of the nosing line.
    pub pitch: Angle,
    /// From the first riser to the last in plan: one going fewer than risers.
    pub run: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// Proportions of a flight from its whole rise, its number of risers and its going.
///
/// # Errors
/// [`groundhold_working::Refused`] for a rise outside 1 mm to 50 m, risers outside 1 to 500, a going outside 50 mm to 5 m.
pub fn geometry(rise: Length, risers: usize, going: Length) -> Result<Geometry> {
    let given = [rise.to_mm(), risers as f64, going.to_mm()];
    for (row, v) in FLIGHT.inputs.iter().zip(given) {
        check_range(FLIGHT.name, row, v)?;
    }
    let f = flight_formula(given[0], given[1], given[2]);
    Ok(Geometry {
        risers,
        riser: Length::mm(f.riser),
        going,
        two_r_plus_g: Length::mm(f.sum),
        pitch: Angle::rad(f.pitch),
        run: Length::mm(f.run),
        trace: Trace::new(&FLIGHT, given.map(Into::into).into()),
    })
}

pub(crate) struct Figures<N> {
    pub riser: N,
    pub sum: N,
    pub pitch: N,
    pub run: N,
}

/// Proportions of a flight of equal risers.
///
/// # Source
/// Arithmetic: R = H/n, run = (n − 1)·G. The sum 2R+G is Blondel's rule: F. Blondel, Cours d'architecture, 1675–1683
/// (from memory).
/// # Symbols
/// | H | whole rise | mm | 1 to 50 000 (ours) |
/// | n | number of risers | – | 1 to 500 (ours) |
/// | G | going | mm | 50 to 5000 (ours) |
/// # Gives
/// Riser (mm), 2R+G (mm), pitch (angle of riser over going), run from the first to the last riser (mm).
/// # Not for
/// Winders and tapered treads.
/// # Errors
/// A value outside its limits.
/// # By hand
/// 1050 mm in 7 risers with a going of 330 mm: R = 150, 2R+G = 630, pitch 24.4°, run 1980 mm (reference case GE-01).
pub(crate) fn flight_formula<N: Number>(rise: N, risers: N, going: N) -> Figures<N> {
    let riser = (rise / risers).named("R", Unit::MM);
    let sum = (riser * 2.0 + going).named("2R+G", Unit::MM);
    let pitch = (riser / going).atan().named("pitch", Unit::DEG);
    let run = ((risers - 1.0) * going).named("run", Unit::MM);
    Figures { riser, sum, pitch, run }
}

/// Proportions of a flight.
pub static FLIGHT: Working = Working {
    name: "steps/flight",
    title: "What are riser, 2R+G, pitch and run of this flight?",
    source: Source {
        work: "arithmetic; 2R+G after F. Blondel, Cours d'architecture, 1675–1683", place: "from memory"
    },
    not_for: "winders and tapered treads",
    inputs: &[
        Input::new("rise", "H", "whole rise", Unit::MM, Limits::ours(1.0, 50_000.0)),
        Input::new("risers", "n", "number of risers", Unit::NONE, Limits::ours(1.0, 500.0)),
        Input::new("going", "G", "going of each tread", Unit::MM, Limits::ours(50.0, 5000.0)),
    ],
    outputs: &[
        Output { key: "riser", words: "height of each riser", unit: Unit::MM },
        Output { key: "two_r_plus_g", words: "twice the riser and the going", unit: Unit::MM },
        Output { key: "pitch", words: "pitch of the nosing line", unit: Unit::DEG },
        Output { key: "run", words: "from the first to the last riser", unit: Unit::MM },
    ],
    run: |g| {
        let risers = g.one("risers")?;
        if risers.value().fract() != 0.0 {
            return Err(g.no_answer("the number of risers should be whole"));
        }
        let f = flight_formula(g.one("rise")?, risers, g.one("going")?);
        Ok([f.riser, f.sum, f.pitch, f.run].map(Found::One).into())
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn risers_sum_to_the_rise_and_the_sheet_says_the_same() {
        for n in 1..=30 {
            let g = geometry(Length::m(1.234), n, Length::mm(315.0)).unwrap();
            assert!((g.riser * n as f64 - Length::m(1.234)).to_m().abs() < 1e-12);
            assert_eq!(g.trace.sheet().unwrap().values[0], g.riser.to_mm().into());
        }
    }

    #[test]
    fn half_a_riser_and_no_riser_are_refused() {
        assert!(geometry(Length::m(1.0), 0, Length::mm(300.0)).is_err());
        let no = FLIGHT.work(&[("rise", 1000.0.into()), ("risers", 6.5.into()), ("going", 300.0.into())]);
        assert!(no.unwrap_err().to_string().contains("whole"));
    }
}
