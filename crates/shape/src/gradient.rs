//! How steep is a ramp or a piece of ground, and how long must a ramp be?

use groundhold_quantity::{Angle, Length, Slope};
use groundhold_working::{
    Found, Input, Limits, Number, Output, Refused, Result, Shown, Source, Trace, Unit, Working, check_range,
};

/// A gradient in all the ways people say it.
#[derive(Debug, Clone, PartialEq)]
pub struct Gradient {
    /// Rise over run.
    pub slope: Slope,
    /// The n of "1 in n"; infinite on level ground.
    pub one_in: f64,
    /// Angle above level.
    pub angle: Angle,
    /// Distance in plan.
    pub run: Length,
    /// Distance along the slope.
    pub incline: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// Gradient of a ramp from its rise and its run in plan.
///
/// # Errors
/// [`Refused`] for a rise outside 0 to 100 m or a run outside 0.01 to 1000 m.
pub fn gradient(rise: Length, run: Length) -> Result<Gradient> {
    by(&RAMP_GRADIENT, rise, run)
}

/// Gradient of the ground from a fall and the distance in plan.
///
/// # Errors
/// [`Refused`] for a fall outside 0 to 100 m or a run outside 0.01 to 1000 m.
pub fn ground_gradient(fall: Length, run: Length) -> Result<Gradient> {
    by(&GROUND_GRADIENT, fall, run)
}

fn by(working: &'static Working, rise: Length, run: Length) -> Result<Gradient> {
    let (h, l) = (rise.to_m(), run.to_m());
    check_range(working.name, &working.inputs[0], h)?;
    check_range(working.name, &working.inputs[1], l)?;
    let g = gradient_formula(h, l);
    Ok(Gradient {
        slope: Slope::ratio(g.slope),
        one_in: if h > 0.0 { l / h } else { f64::INFINITY },
        angle: Angle::rad(g.angle),
        run,
        incline: Length::m(g.incline),
        trace: Trace::new(working, vec![h.into(), l.into()]),
    })
}

/// Length in plan that a ramp needs to gain a rise at a gradient.
///
/// # Errors
/// [`Refused`] for a rise outside 0.001 to 100 m or a gradient outside 1:1000 to 1:1.
pub fn ramp_length(rise: Length, slope: Slope) -> Result<Gradient> {
    let (h, s) = (rise.to_m(), slope.to_ratio());
    check_range(RAMP_LENGTH.name, &RAMP_LENGTH.inputs[0], h)?;
    check_range(RAMP_LENGTH.name, &RAMP_LENGTH.inputs[1], s)?;
    let (run, incline) = length_formula(h, s);
    Ok(Gradient {
        slope,
        one_in: 1.0 / s,
        angle: slope.to_angle(),
        run: Length::m(run),
        incline: Length::m(incline),
        trace: Trace::new(&RAMP_LENGTH, vec![h.into(), s.into()]),
    })
}

struct Sloped<N> {
    slope: N,
    percent: N,
    angle: N,
    incline: N,
}

/// Gradient from rise and run.
///
/// # Source
/// Geometry of the right triangle: s = H/L, β = atan s, D = √(H² + L²).
/// # Symbols
/// | H | rise or fall | m | 0 to 100 (ours) |
/// | L | distance in plan | m | 0.01 to 1000 (ours) |
/// # Gives
/// Rise over run, per cent, angle above level, distance along the slope.
/// # Not for
/// A path whose gradient changes: it is the mean one.
/// # Errors
/// A value outside its limits.
/// # By hand
/// 0.5 m over 3 m: 0.1667, 16.7 %, 9.46° (reference case SH-T8).
fn gradient_formula<N: Number>(rise: N, run: N) -> Sloped<N> {
    let slope = (rise / run).named("s", Unit::NONE);
    let percent = (slope * 100.0).named("s_%", Unit::PERCENT);
    let angle = slope.atan().named("β", Unit::DEG);
    let incline = (rise.squared() + run.squared()).sqrt().named("D", Unit::M);
    Sloped { slope, percent, angle, incline }
}

/// Length of a ramp from rise and gradient.
///
/// # Source
/// Geometry: L = H/s, D = √(H² + L²).
/// # Symbols
/// | H | rise | m | 0.001 to 100 (ours) |
/// | s | gradient, rise over run | – | 0.001 to 1 (ours) |
/// # Gives
/// Length in plan and along the slope, landings not counted.
/// # Not for
/// The length of the whole ramp where landings are required: add them.
/// # Errors
/// A value outside its limits.
/// # By hand
/// 450 mm at 1:14: 0.45·14 = 6.3 m (reference case GE-02).
fn length_formula<N: Number>(rise: N, slope: N) -> (N, N) {
    let run = (rise / slope).named("L", Unit::M);
    let incline = (rise.squared() + run.squared()).sqrt().named("D", Unit::M);
    (run, incline)
}

const GEOMETRY: Source = Source { work: "geometry of the right triangle", place: "" };

const RUN: Input = Input::new("run", "L", "distance in plan", Unit::M, Limits::ours(0.01, 1000.0));

const SLOPED: &[Output] = &[
    Output { key: "slope", words: "rise over run", unit: Unit::NONE },
    Output { key: "one_in", words: "distance in plan for one unit of rise", unit: Unit::NONE },
    Output { key: "percent", words: "rise in per cent of the run", unit: Unit::PERCENT },
    Output { key: "angle", words: "angle above level", unit: Unit::DEG },
    Output { key: "incline", words: "distance along the slope", unit: Unit::M },
];

fn found<'s>(rise: Shown<'s>, run: Shown<'s>, refuse: impl Fn(String) -> Refused) -> Result<Vec<Found<'s>>> {
    if rise.value() <= 0.0 {
        return Err(refuse("the ground is level: there is no rise to say \"1 in n\" of".into()));
    }
    let g = gradient_formula(rise, run);
    let one_in = (run / rise).named("n", Unit::NONE);
    Ok([g.slope, one_in, g.percent, g.angle, g.incline].map(Found::One).into())
}

/// Gradient of a ramp.
pub static RAMP_GRADIENT: Working = Working {
    name: "ramp/gradient",
    title: "How steep is this ramp?",
    source: GEOMETRY,
    not_for: "a ramp whose gradient changes on the way: work each part on its own",
    inputs: &[Input::new("rise", "H", "rise of the ramp", Unit::M, Limits::ours(0.0, 100.0)), RUN],
    outputs: SLOPED,
    run: |g| found(g.one("rise")?, g.one("run")?, |w| g.no_answer(w)),
};

/// Gradient of the ground.
pub static GROUND_GRADIENT: Working = Working {
    name: "ground/gradient",
    title: "How steep is the ground between two levels?",
    source: GEOMETRY,
    not_for: "ground that is not even between its ends: the gradient is the mean one",
    inputs: &[Input::new("fall", "H", "fall between the two ends", Unit::M, Limits::ours(0.0, 100.0)), RUN],
    outputs: SLOPED,
    run: |g| found(g.one("fall")?, g.one("run")?, |w| g.no_answer(w)),
};

/// Length of a ramp.
pub static RAMP_LENGTH: Working = Working {
    name: "ramp/length",
    title: "How long must a ramp be in plan to gain this rise at this gradient?",
    source: GEOMETRY,
    not_for: "landings: they come on top",
    inputs: &[
        Input::new("rise", "H", "rise of the ramp", Unit::M, Limits::ours(0.001, 100.0)),
        Input::new("slope", "s", "gradient, rise over run", Unit::NONE, Limits::ours(0.001, 1.0)),
    ],
    outputs: &[
        Output { key: "run", words: "length in plan", unit: Unit::M },
        Output { key: "percent", words: "rise in per cent of the run", unit: Unit::PERCENT },
        Output { key: "incline", words: "length along the slope", unit: Unit::M },
    ],
    run: |g| {
        let (rise, slope) = (g.one("rise")?, g.one("slope")?);
        let percent = (slope * 100.0).named("s_%", Unit::PERCENT);
        let (run, incline) = length_formula(rise, slope);
        Ok([run, percent, incline].map(Found::One).into())
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sheet_and_the_fast_path_give_the_same_bits() {
        let g = gradient(Length::m(0.45), Length::m(6.3)).unwrap();
        assert_eq!(g.trace.sheet().unwrap().values[0], g.slope.to_ratio().into());
        let l = ramp_length(Length::m(0.45), Slope::one_in(14.0)).unwrap();
        assert_eq!(l.trace.sheet().unwrap().values[0], l.run.to_m().into());
        assert!((l.run - g.run).to_m().abs() < 1e-12);
    }

    #[test]
    fn level_ground_has_no_one_in_n_and_says_so() {
        assert!(gradient(Length::ZERO, Length::m(1.0)).unwrap().one_in.is_infinite());
        let no = RAMP_GRADIENT.work(&[("rise", 0.0.into()), ("run", 1.0.into())]).unwrap_err();
        assert!(no.to_string().contains("level"));
        assert!(gradient(Length::m(-0.001), Length::m(1.0)).is_err());
        assert!(gradient(Length::m(1.0), Length::m(0.009)).is_err());
        assert!(ramp_length(Length::m(1.0), Slope::ratio(0.0009)).is_err());
    }
}
