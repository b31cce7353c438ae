//! How long does water need from the farthest place of a catchment to the wall?

use groundhold_quantity::{Length, Slope, Time};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

/// Minutes, as the formulas print them.
const MINUTES: Unit = Unit("min");
/// A shorter arrival is taken as five minutes: FHWA HEC-22, 3rd ed. (2009), 3.2.2.3, from memory.
pub(crate) const ARRIVES_LEAST: Time = Time::min_(5.0);

const L: Input = Input::new("length", "L", "length of the way", Unit::M, Limits::ours(0.1, 10_000.0));
const S: Input = Input::new("slope", "S", "fall of the way, rise over run", Unit::NONE, Limits::ours(0.0005, 2.0));
const MINUTES_OUT: &[Output] = &[Output { key: "time", words: "time of concentration", unit: MINUTES }];

/// Time of concentration of a small catchment with a way that water has worn.
///
/// # Source
/// Kirpich, Civil Engineering 10(6) (1940), in SI: t = 0.0195·L^0.77·S^−0.385 (constant seen in the hydraulic design
/// manual of a United States highway department, eq. 4-15).
/// # Symbols
/// L length of the way (m), S its fall over its length.
/// # Gives
/// t in minutes. Grows with L, falls with S.
/// # Not for
/// Sheets of water on grass, which are slower: use `water/overland`. Catchments over 80 ha.
/// # Errors
/// None of its own.
/// # By hand
/// 609.6 m at 0.04: 0.0195·139.44·3.453 = 9.39 min (reference case HY-TC-1).
pub(crate) fn kirpich<N: Number>(length: N, slope: N) -> N {
    (length.powf(0.77) * slope.powf(-0.385) * 0.0195).named("t_c", MINUTES)
}

/// The working of `kirpich`.
pub static KIRPICH: Working = Working {
    name: "water/kirpich",
    title: "How long does water need down a worn way?",
    source: Source { work: "Kirpich, Civil Engineering 10(6) (1940) 362", place: "in SI, constant 0.0195" },
    not_for: "sheets of water on grass: use water/overland; catchments over 80 ha",
    inputs: &[L, S],
    outputs: MINUTES_OUT,
    run: |g| Ok(vec![Found::One(kirpich(g.one("length")?, g.one("slope")?))]),
};

/// Time of concentration of overland flow by the runoff coefficient.
///
/// # Source
/// US Federal Aviation Administration, Airport Drainage, AC 150/5320-5B (1970): t = 1.8(1.1 − C)·L^½/S^⅓ with L in
/// feet and S in per cent; with L in metres the constant is 1.8/√0.3048.
/// # Symbols
/// C runoff coefficient, L length of the way (m), S its fall over its length.
/// # Gives
/// t in minutes. Grows with L, falls with S and C.
/// # Not for
/// Ways in a channel or pipe; they come on top.
/// # Errors
/// None of its own.
/// # By hand
/// C 0.35, 100 ft at 20 %: 1.8·0.75·10/2.714 = 4.97 min (reference case HY-TC-2).
pub(crate) fn overland<N: Number>(coefficient: N, length: N, slope: N) -> N {
    let constant = 1.8 / 0.3048_f64.sqrt();
    let percent = (slope * 100.0).named("S_%", Unit::PERCENT);
    ((-coefficient + 1.1) * length.sqrt() * constant / percent.powf(1.0 / 3.0)).named("t_c", MINUTES)
}

/// The working of `overland`.
pub static OVERLAND: Working = Working {
    name: "water/overland",
    title: "How long does water need over grass and paving, by the runoff coefficient?",
    source: Source {
        work: "US Federal Aviation Administration, Airport Drainage, AC 150/5320-5B (1970)",
        place: "overland flow; turned to metres",
    },
    not_for: "ways in a channel or a pipe, which come on top",
    inputs: &[Input::new("coefficient", "C", "runoff coefficient", Unit::NONE, Limits::author(0.0, 1.0)), L, S],
    outputs: MINUTES_OUT,
    run: |g| Ok(vec![Found::One(overland(g.one("coefficient")?, g.one("length")?, g.one("slope")?))]),
};

/// Travel time of a sheet of water by the kinematic wave.
///
/// # Source
/// FHWA HEC-22, 3rd ed. (2009), eq. 3-3 in SI: t = 6.92/i^0.4·(nL/√S)^0.6 (from memory; Morgali and Linsley, J. Hyd.
/// Div. ASCE 91 (1965)).
/// # Symbols
/// n roughness of the surface for sheet flow (grass 0.15 to 0.41), L length (m), i rain intensity (mm/h), S fall over
/// its length.
/// # Gives
/// t in minutes. Grows with n and L, falls with i and S.
/// # Not for
/// More than about 30 m of sheet flow: water gathers before.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-TC-3.
pub(crate) fn sheet<N: Number>(roughness: N, length: N, intensity: N, slope: N) -> N {
    let wave = (roughness * length / slope.sqrt()).named("k", Unit::NONE);
    (wave.powf(0.6) / intensity.powf(0.4) * 6.92).named("t_s", MINUTES)
}

/// The working of `sheet`.
pub static SHEET_FLOW: Working = Working {
    name: "water/sheet-flow",
    title: "How long does a sheet of water need, by the kinematic wave?",
    source: Source { work: "FHWA HEC-22, Urban Drainage Design Manual, 3rd ed. (2009)", place: "eq. 3-3, from memory" },
    not_for: "more than about 30 m of sheet flow",
    inputs: &[
        Input::new("roughness", "n", "roughness of the surface for sheet flow", Unit::NONE, Limits::author(0.01, 0.8)),
        Input::new("length", "L", "length of the sheet", Unit::M, Limits::ours(0.1, 100.0)),
        Input::new("intensity", "i", "rain intensity", Unit::MM_H, Limits::ours(0.1, 500.0)),
        S,
    ],
    outputs: MINUTES_OUT,
    run: |g| {
        let found = sheet(g.one("roughness")?, g.one("length")?, g.one("intensity")?, g.one("slope")?);
        Ok(vec![Found::One(found)])
    },
};

/// How long water needs, by the two formulas that need no rain, and the shorter of them, which the rain is read at.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrival {
    /// Length of the longest way to the wall.
    pub way: Length,
    /// How far it falls over that length.
    pub fall: Slope,
    /// By Kirpich.
    pub kirpich: Time,
    /// Over land, by the runoff coefficient.
    pub overland: Time,
    /// What the rain is read at: the shorter, not below five minutes.
    pub time: Time,
    /// Workings of both.
    pub traces: Vec<Trace>,
}

/// The arrival over a way of this length that falls by this much. Ways and falls outside the workings' limits are taken
/// at the nearest end.
pub fn arrival(way: Length, fall: Length, coefficient: f64) -> Arrival {
    let within =
        |row: &Input, v: f64| if v.is_finite() { v.clamp(row.limits.least, row.limits.most) } else { row.limits.least };
    let length = within(&L, way.to_m());
    let slope = within(&S, fall.to_m() / length);
    let c = coefficient.clamp(0.0, 1.0);
    let (k, o) = (kirpich(length, slope), overland(c, length, slope));
    Arrival {
        way,
        fall: Slope::ratio(slope),
        kirpich: Time::min_(k),
        overland: Time::min_(o),
        time: Time::min_(Number::min(k, o)).max(ARRIVES_LEAST),
        traces: vec![
            Trace::new(&KIRPICH, vec![length.into(), slope.into()]),
            Trace::new(&OVERLAND, vec![c.into(), length.into(), slope.into()]),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_steep_way_counts_as_five_minutes_and_a_long_one_as_it_is() {
        let short = arrival(Length::m(5.0), Length::m(1.0), 0.35);
        assert_eq!(short.time, Time::min_(5.0));
        let long = arrival(Length::m(400.0), Length::m(8.0), 0.2);
        assert!(long.time > Time::min_(5.0) && long.time == long.kirpich.min(long.overland));
        for t in long.traces {
            t.sheet().unwrap();
        }
    }

    #[test]
    fn a_level_way_is_taken_at_the_flattest_that_the_formulas_know() {
        assert!(arrival(Length::m(20.0), Length::ZERO, 0.3).time.is_finite());
        assert!(arrival(Length::m(f64::NAN), Length::m(f64::NAN), f64::NAN.min(1.0)).time.is_finite());
    }
}
