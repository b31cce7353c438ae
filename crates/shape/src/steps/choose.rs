//! How many risers, how high and how deep, for a rise and the run at hand?

use groundhold_quantity::{Angle, Length};
use groundhold_working::{
    Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Value, Working, check_range,
};

use super::flight::{Figures, flight_formula};
use super::{StepLimitsMm, rank};
use crate::StepLimits;

/// A flight that was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Number of risers.
    pub risers: usize,
    /// Height of each.
    pub riser: Length,
    /// Going of each tread.
    pub going: Length,
    /// Twice the riser and the going.
    pub two_r_plus_g: Length,
    /// Pitch of the nosing line.
    pub pitch: Angle,
    /// From the first to the last riser.
    pub run: Length,
    /// How it was chosen.
    pub trace: Trace,
}

/// The flight nearest to comfort within the limits that fits the run at hand; without a run, the most comfortable.
///
/// # Errors
/// [`Refused`] where a value is out of range or no number of risers fits the limits.
pub fn choose(rise: Length, run: Option<Length>, limits: &StepLimits) -> Result<Choice> {
    let l = StepLimitsMm::from(limits);
    let run_mm = run.map_or(UNBOUNDED, Length::to_mm);
    let given = [
        rise.to_mm(),
        run_mm,
        l.riser.0,
        l.riser.1,
        l.going.0,
        l.going.1,
        l.sum.0,
        l.sum.1,
        limits.pitch_most.to_deg(),
    ];
    for (row, v) in CHOOSE.inputs.iter().zip(given) {
        check_range(CHOOSE.name, row, v)?;
    }
    let (risers, going) = pick(given[0], run_mm, &l)?;
    let f = flight_formula(given[0], risers as f64, going);
    Ok(Choice {
        risers,
        riser: Length::mm(f.riser),
        going: Length::mm(going),
        two_r_plus_g: Length::mm(f.sum),
        pitch: Angle::rad(f.pitch),
        run: Length::mm(f.run),
        trace: Trace::new(&CHOOSE, given.map(Value::One).into()),
    })
}

/// No limit to the run, mm.
const UNBOUNDED: f64 = 1e6;

/// Number of risers and going in whole millimetres where the limits leave room for that.
fn pick(rise: f64, run: f64, limits: &StepLimitsMm) -> Result<(usize, f64)> {
    let fewest = ((rise / limits.riser.1) - 1e-9).ceil().max(1.0) as usize;
    let most = ((rise / limits.riser.0) + 1e-9).floor().max(0.0) as usize;
    let mut best: Option<((i64, f64), usize, f64)> = None;
    for n in fewest..=most.min(500) {
        let riser = rise / n as f64;
        let (least, largest) = limits.goings(riser);
        let largest = if n > 1 { largest.min(run / (n - 1) as f64) } else { largest };
        if least > largest + 1e-9 {
            continue;
        }
        let wanted = (super::COMFORT.to_mm() - 2.0 * riser).clamp(least, largest.max(least));
        let whole = wanted.round();
        let going = if least <= whole && whole <= largest { whole } else { wanted };
        let r = rank(riser, going);
        if best.is_none_or(|(b, ..)| r.0 < b.0 || (r.0 == b.0 && r.1 < b.1)) {
            best = Some((r, n, going));
        }
    }
    best.map(|(_, n, g)| (n, g)).ok_or_else(|| Refused::NoAnswer {
        working: CHOOSE.name,
        why: format!(
            "no number of equal risers brings {rise:.0} mm within the limits{}",
            if run < UNBOUNDED { format!(" on a run of {run:.0} mm") } else { String::new() }
        ),
    })
}

fn limits_given(g: &Given<'_>) -> Result<StepLimitsMm> {
    let v = |key| g.one(key).map(|s| s.value());
    Ok(StepLimitsMm {
        riser: (v("riser_min")?, v("riser_max")?),
        going: (v("going_min")?, v("going_max")?),
        sum: (v("sum_min")?, v("sum_max")?),
        pitch_most_rad: v("pitch_max")?,
    })
}

const RISER: Limits = Limits::ours(10.0, 1000.0);
const GOING: Limits = Limits::ours(50.0, 5000.0);

/// Choice of risers and going.
///
/// # Source
/// Every whole number of risers whose height lies within the limits is tried; for each the going nearest to
/// 630 mm − 2R that the limits and the run leave. The best is the one whose 2R+G is nearest to 630 mm (in classes of
/// 5 mm), and among these the one whose riser is nearest to 150 mm. 630: check table GE-T1, from memory; the order of
/// preference is ours.
/// # Symbols
/// | H | whole rise | mm | 1 to 50 000 (ours) |
/// | L | run at hand | mm | 0 to 10⁶ (ours); without: no limit |
/// # Gives
/// Number of risers, riser, going, 2R+G, pitch and run.
/// # Not for
/// A run much longer than the flight needs: see `steps/split`.
/// # Errors
/// No number of risers fits the limits; a value outside its range.
/// # By hand
/// 500 mm: 3 risers of 166.7 mm, going 297 mm with limits 150–220, 220–300, 550–700 (reference case SH-T8-steps).
pub static CHOOSE: Working = Working {
    name: "steps/choose",
    title: "How many risers, how high and how deep, for this rise and run?",
    source: Source {
        work: "2R+G after F. Blondel, Cours d'architecture, 1675–1683; preference for 630 mm and for a riser of 150 mm: common practice, no source",
        place: "from memory",
    },
    not_for: "a run much longer than the flight needs: use steps/split",
    inputs: &[
        Input::new("rise", "H", "whole rise", Unit::MM, Limits::ours(1.0, 50_000.0)),
        Input::new("run", "L", "run at hand", Unit::MM, Limits::ours(0.0, UNBOUNDED)).or(UNBOUNDED),
        Input::new("riser_min", "R_min", "least riser", Unit::MM, RISER).or(120.0),
        Input::new("riser_max", "R_max", "highest riser", Unit::MM, RISER).or(170.0),
        Input::new("going_min", "G_min", "least going", Unit::MM, GOING).or(300.0),
        Input::new("going_max", "G_max", "deepest going", Unit::MM, GOING).or(450.0),
        Input::new("sum_min", "(2R+G)_min", "least 2R+G", Unit::MM, Limits::ours(100.0, 10_000.0)).or(600.0),
        Input::new("sum_max", "(2R+G)_max", "largest 2R+G", Unit::MM, Limits::ours(100.0, 10_000.0)).or(660.0),
        Input::new("pitch_max", "pitch_max", "steepest pitch", Unit::DEG, Limits::ours(5.0, 80.0)).or(42.0),
    ],
    outputs: &[
        Output { key: "risers", words: "number of risers", unit: Unit::NONE },
        Output { key: "riser", words: "height of each riser", unit: Unit::MM },
        Output { key: "going", words: "going of each tread", unit: Unit::MM },
        Output { key: "two_r_plus_g", words: "twice the riser and the going", unit: Unit::MM },
        Output { key: "pitch", words: "pitch of the nosing line", unit: Unit::DEG },
        Output { key: "run", words: "from the first to the last riser", unit: Unit::MM },
    ],
    run: |g| {
        let (rise, run) = (g.one("rise")?, g.one("run")?);
        let (n, going) = pick(rise.value(), run.value(), &limits_given(g)?)?;
        g.sheet().remark(format!(
            "{n} risers with a going of {going:.0} mm come nearest to 2R+G = 630 mm, then to a riser of 150 mm, within the limits"
        ));
        let n = g.sheet().put("n", n as f64, Unit::NONE);
        let going = g.sheet().put("G", going, Unit::MM);
        let Figures { riser, sum, pitch, run } = flight_formula(rise, n, going);
        Ok([n, riser, going, sum, pitch, run].map(Found::One).into())
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn five_hundred_millimetres_take_three_risers_and_fifty_take_none() {
        let c = choose(Length::mm(500.0), Some(Length::m(3.0)), &StepLimits::OUTDOOR_COMFORT).unwrap();
        assert_eq!((c.risers, c.going), (3, Length::mm(300.0)));
        assert_eq!(c.trace.sheet().unwrap().values[1], c.riser.to_mm().into());
        let no = choose(Length::mm(50.0), None, &StepLimits::OUTDOOR_COMFORT).unwrap_err().to_string();
        assert!(no.contains("no number of equal risers"), "{no}");
    }

    #[test]
    fn a_short_run_gives_steeper_steps_until_none_fits() {
        let at = |run| choose(Length::m(1.5), Some(Length::m(run)), &StepLimits::OUTDOOR_COMFORT);
        assert_eq!(at(3.6).unwrap().risers, 10);
        assert_eq!(at(2.56).unwrap().risers, 9);
        assert!(at(2.3).is_err());
    }
}
