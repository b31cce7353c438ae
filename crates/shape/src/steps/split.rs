//! How is a long, gentle rise split into flights with landings, so that all risers are equal and no step is too deep?

use groundhold_quantity::Length;
use groundhold_working::{
    Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working, check_range,
};

/// A rise split into flights with landings between them.
#[derive(Debug, Clone, PartialEq)]
pub struct Split {
    /// Height of each riser; all are equal.
    pub riser: Length,
    /// Going of the treads inside a flight.
    pub going: Length,
    /// The ground's share for each riser if they were spread evenly.
    pub even_going: Length,
    /// 2R+G if they were spread evenly.
    pub even_two_r_plus_g: Length,
    /// Risers of each flight from the bottom up.
    pub flights: Vec<usize>,
    /// Length of each landing between flights; nothing with one flight.
    pub landing: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// Splits `risers` equal risers over a rise and a run into as few flights as keep every landing within `landing_most`.
///
/// # Errors
/// [`Refused`] where the run is too short for the flights, or a landing longer than allowed cannot be avoided with two
/// risers in each flight.
pub fn split(rise: Length, run: Length, risers: usize, going: Length, landing_most: Length) -> Result<Split> {
    let given = [rise.to_mm(), run.to_mm(), risers as f64, going.to_mm(), landing_most.to_mm()];
    for (row, v) in SPLIT.inputs.iter().zip(given) {
        check_range(SPLIT.name, row, v)?;
    }
    let flights = flights(given[1], risers, given[3], given[4])?;
    let f = split_formula(given[0], given[1], given[2], given[3], flights as f64);
    Ok(Split {
        riser: Length::mm(f.riser),
        going,
        even_going: Length::mm(f.even_going),
        even_two_r_plus_g: Length::mm(f.even_sum),
        flights: shares(risers, flights),
        landing: Length::mm(f.landing),
        trace: Trace::new(&SPLIT, given.map(Value::One).into()),
    })
}

/// As few flights as keep each landing within `landing_most` (mm).
fn flights(run: f64, risers: usize, going: f64, landing_most: f64) -> Result<usize> {
    let refuse = |why: String| Err(Refused::NoAnswer { working: SPLIT.name, why });
    let needed = risers.saturating_sub(1) as f64 * going;
    if run < needed - 1e-9 {
        return refuse(format!(
            "{risers} risers at a going of {going:.0} mm need {needed:.0} mm, there are {run:.0} mm"
        ));
    }
    if run - needed < going {
        return Ok(1);
    }
    let landing = |f: usize| (run - (risers - f) as f64 * going) / (f - 1) as f64;
    match (2..=risers / 2).find(|f| landing(*f) <= landing_most + 1e-9) {
        Some(f) => Ok(f),
        None => refuse(format!(
            "with two risers in each flight the landings are still longer than {landing_most:.0} mm; a path with single steps or a ramp suits this ground better"
        )),
    }
}

/// Risers of each flight from the bottom up; the upper ones take what is over.
fn shares(risers: usize, flights: usize) -> Vec<usize> {
    let (each, over) = (risers / flights, risers % flights);
    (0..flights).map(|i| each + usize::from(i >= flights - over)).collect()
}

struct Parts<N> {
    riser: N,
    even_going: N,
    even_sum: N,
    sum: N,
    landing: N,
}

/// Flights with landings on a long, gentle rise.
///
/// # Source
/// Arithmetic: n risers in f flights have n − f goings; the rest of the run is shared by f − 1 landings. The number of
/// flights is the least that keeps each landing within its limit, with two risers or more in each (the rule is ours).
/// # Symbols
/// | H | whole rise | mm | 1 to 50 000 (ours) |
/// | L | run at hand | mm | 1 to 10⁶ (ours) |
/// | n | number of risers | – | 2 to 500 (ours) |
/// | G | going inside a flight | mm | 50 to 5000 (ours) |
/// | l_most | longest landing | mm | 300 to 10⁵ (ours; 2500 without) |
/// # Gives
/// Riser, the ground's share for each riser and the 2R+G it would make if spread evenly, 2R+G inside a flight, risers of
/// each flight from the bottom up, length of each landing.
/// # Not for
/// A run that the flight just fills: see `steps/choose`.
/// # Errors
/// A run shorter than the flights; landings that stay too long.
/// # By hand
/// 2.0 m over 8.02 m in 13 risers, going 330 mm: 4 + 4 + 5, landings (8020 − 10·330)/2 = 2360 mm (reference case SH-T12).
fn split_formula<N: Number>(rise: N, run: N, risers: N, going: N, flights: N) -> Parts<N> {
    let riser = (rise / risers).named("R", Unit::MM);
    let even_going = (run / risers).named("L/n", Unit::MM);
    let even_sum = (riser * 2.0 + even_going).named("2R+L/n", Unit::MM);
    let sum = (riser * 2.0 + going).named("2R+G", Unit::MM);
    let landing = if flights.value() > 1.0 {
        ((run - (risers - flights) * going) / (flights - 1.0)).named("l", Unit::MM)
    } else {
        N::constant(0.0)
    };
    Parts { riser, even_going, even_sum, sum, landing }
}

/// Flights with landings.
pub static SPLIT: Working = Working {
    name: "steps/split",
    title: "Into which flights, with which landings, is a long gentle rise split?",
    source: Source {
        work: "arithmetic; longest landing and two risers or more in each flight: common practice, no source",
        place: "",
    },
    not_for: "a run that one flight just fills: use steps/choose",
    inputs: &[
        Input::new("rise", "H", "whole rise", Unit::MM, Limits::ours(1.0, 50_000.0)),
        Input::new("run", "L", "run at hand", Unit::MM, Limits::ours(1.0, 1e6)),
        Input::new("risers", "n", "number of risers", Unit::NONE, Limits::ours(2.0, 500.0)),
        Input::new("going", "G", "going inside a flight", Unit::MM, Limits::ours(50.0, 5000.0)),
        Input::new("landing_most", "l_most", "longest landing", Unit::MM, Limits::ours(300.0, 1e5)).or(2500.0),
    ],
    outputs: &[
        Output { key: "riser", words: "height of each riser", unit: Unit::MM },
        Output { key: "even_going", words: "the ground's share for each riser, spread evenly", unit: Unit::MM },
        Output { key: "even_sum", words: "2R+G if spread evenly", unit: Unit::MM },
        Output { key: "two_r_plus_g", words: "2R+G inside a flight", unit: Unit::MM },
        Output { key: "flights", words: "risers of each flight from the bottom up", unit: Unit::NONE },
        Output { key: "landing", words: "length of each landing", unit: Unit::MM },
    ],
    run: |g| {
        let (rise, run, n) = (g.one("rise")?, g.one("run")?, g.one("risers")?);
        let (going, most) = (g.one("going")?, g.one("landing_most")?.value());
        if n.value().fract() != 0.0 {
            return Err(g.no_answer("the number of risers should be whole"));
        }
        let risers = n.value() as usize;
        let f = flights(run.value(), risers, going.value(), most)?;
        let shares = shares(risers, f);
        let said: Vec<String> = shares.iter().map(usize::to_string).collect();
        g.sheet().remark(format!("flights from the bottom up: {} risers", said.join(" + ")));
        let p = split_formula(rise, run, n, going, g.sheet().put("f", f as f64, Unit::NONE));
        let shares = shares.iter().map(|k| g.sheet().put("n_i", *k as f64, Unit::NONE)).collect();
        let [a, b, c, d] = [p.riser, p.even_going, p.even_sum, p.sum].map(Found::One);
        Ok(vec![a, b, c, d, Found::Many(shares), Found::One(p.landing)])
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    fn at(run: f64) -> Result<Split> {
        split(Length::m(2.0), Length::m(run), 13, Length::mm(330.0), Length::mm(2500.0))
    }

    #[test]
    fn two_metres_at_fourteen_degrees_take_four_and_four_and_five() {
        let s = at(8.0216).unwrap();
        assert_eq!(s.flights, [4, 4, 5]);
        assert!((s.riser.to_mm() - 153.846).abs() < 1e-3);
        assert!(s.even_two_r_plus_g > Length::mm(700.0));
        assert_eq!(s.trace.sheet().unwrap().values[5], s.landing.to_mm().into());
    }

    #[test]
    fn goings_and_landings_fill_the_run() {
        for run in [3.96, 4.2, 5.0, 7.0, 9.5, 12.0] {
            let s = at(run).unwrap();
            let goings = (s.flights.iter().sum::<usize>() - s.flights.len()) as f64;
            let used = s.going * goings + s.landing * (s.flights.len() - 1) as f64;
            let spare = Length::m(run) - used;
            assert!(spare.to_m().abs() < 1e-9 || (s.flights.len() == 1 && spare < s.going), "{run}: {spare:?}");
            assert!(s.landing <= Length::mm(2500.0));
        }
    }

    #[test]
    fn a_run_too_short_or_far_too_long_is_refused() {
        assert!(at(3.95).unwrap_err().to_string().contains("need 3960 mm"));
        assert!(at(30.0).unwrap_err().to_string().contains("longer than 2500 mm"));
    }
}
