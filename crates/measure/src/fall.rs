//! How steep is it? Quick readings of a slope by tape, level and angle.

use groundhold_quantity::{Angle, Length, Slope};
use groundhold_working::{
    Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working, check_range,
};

/// A slope read with tape and level.
#[derive(Debug, Clone, PartialEq)]
pub struct Fall {
    /// Distance in plan.
    pub run: Length,
    /// Height difference, positive as read.
    pub rise: Length,
    /// Rise over run.
    pub slope: Slope,
    /// Its angle above level.
    pub angle: Angle,
    /// Straight distance from end to end along the slope.
    pub along: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// From steps of level distance and fall, as read with a level board or a string and a rule, one after the other.
///
/// # Errors
/// [`Refused`] where there is no step or a value is out of range.
pub fn fall(steps: &[(Length, Length)]) -> Result<Fall> {
    let (runs, falls): (Vec<f64>, Vec<f64>) = steps.iter().map(|(r, f)| (r.to_m(), f.to_m())).unzip();
    for (row, list) in FALL.inputs.iter().zip([&runs, &falls]) {
        list.iter().try_for_each(|v| check_range(FALL.name, row, *v))?;
    }
    let s = fall_formula(&runs, &falls)?;
    Ok(Fall {
        run: Length::m(s.run),
        rise: Length::m(s.rise),
        slope: Slope::ratio(s.slope),
        angle: Angle::rad(s.angle),
        along: Length::m(s.along),
        trace: Trace::new(&FALL, vec![runs.into(), falls.into()]),
    })
}

/// From a height difference and the angle of the ground.
///
/// # Errors
/// [`Refused`] for an angle outside 0.1° to 80° or a height difference out of range.
pub fn fall_by_angle(rise: Length, angle: Angle) -> Result<Fall> {
    let (h, a) = (rise.to_m(), angle.to_deg());
    check_range(FALL_BY_ANGLE.name, &FALL_BY_ANGLE.inputs[0], h)?;
    check_range(FALL_BY_ANGLE.name, &FALL_BY_ANGLE.inputs[1], a)?;
    let s = by_angle_formula(h, a.to_radians());
    Ok(Fall {
        run: Length::m(s.run),
        rise,
        slope: Slope::ratio(s.slope),
        angle,
        along: Length::m(s.along),
        trace: Trace::new(&FALL_BY_ANGLE, vec![h.into(), a.into()]),
    })
}

/// Distance in plan of a tape held along the slope.
///
/// # Errors
/// [`Refused`] where the height difference is not smaller than the taped distance, or a value is out of range.
pub fn plan_distance(tape: Length, rise: Length) -> Result<Length> {
    check_range(PLAN_DISTANCE.name, &PLAN_DISTANCE.inputs[0], tape.to_m())?;
    check_range(PLAN_DISTANCE.name, &PLAN_DISTANCE.inputs[1], rise.to_m())?;
    plan_formula(tape.to_m(), rise.to_m()).map(Length::m)
}

struct Sloped<N> {
    run: N,
    rise: N,
    slope: N,
    angle: N,
    along: N,
}

/// Slope from level distances and falls.
///
/// # Source
/// Geometry: the sum of level steps and the sum of their falls; tan β = H/L.
/// # Symbols
/// | l | level distance of a step | m | 0.01 to 500 (ours) |
/// | h | fall of the step | m | −100 to 100 (ours) |
/// # Gives
/// Distance in plan, height difference, slope, its angle, and the straight distance along it.
/// # Not for
/// Ground that is not even between its ends: the slope is the mean one.
/// # Errors
/// Lists of unlike length, an empty list, a value outside its limits.
/// # By hand
/// 600 mm over 7 m: 0.6/7 = 0.0857, that is 1:11.7 or 4.9°.
fn fall_formula<N: Number>(runs: &[N], falls: &[N]) -> Result<Sloped<N>> {
    let no = |why: String| Err(Refused::NoAnswer { working: FALL.name, why });
    if runs.len() != falls.len() {
        return no(format!("{} level distances and {} falls, expected as many of each", runs.len(), falls.len()));
    }
    let sum = |list: &[N]| list.iter().copied().reduce(|a, b| a + b);
    let (Some(run), Some(rise)) = (sum(runs), sum(falls)) else {
        return no("there is no step, expected at least one distance with its fall".into());
    };
    let (run, rise) = (run.named("L", Unit::M), rise.named("H", Unit::M));
    let slope = (rise / run).named("s", Unit::NONE);
    let angle = slope.atan().named("β", Unit::DEG);
    let along = (run.squared() + rise.squared()).sqrt().named("D", Unit::M);
    Ok(Sloped { run, rise, slope, angle, along })
}

/// Run and slope distance from a height difference and an angle.
///
/// # Source
/// Geometry: L = H/tan β, D = H/sin β.
/// # Symbols
/// | H | height difference | m | 0.001 to 100 (ours) |
/// | β | angle of the ground | ° | 0.1 to 80 (ours) |
/// # Gives
/// Distance in plan, slope, and the straight distance along it.
/// # Not for
/// An angle read by a phone laid on uneven ground: read it on a straight edge.
/// # Errors
/// A value outside its limits.
/// # By hand
/// 2 m at 14°: 2/0.2493 = 8.02 m in plan, 2/0.2419 = 8.27 m along.
fn by_angle_formula<N: Number>(rise: N, angle: N) -> Sloped<N> {
    let slope = angle.tan().named("s", Unit::NONE);
    let run = (rise / slope).named("L", Unit::M);
    let along = (rise / angle.sin()).named("D", Unit::M);
    Sloped { run, rise, slope, angle, along }
}

/// Plan distance of a sloping tape.
///
/// # Source
/// Geometry (Pythagoras): L = √(D² − H²).
/// # Symbols
/// | D | taped distance along the slope | m | 0.01 to 500 (ours) |
/// | H | height difference of its ends | m | −500 to 500 (ours) |
/// # Gives
/// Distance in plan, m.
/// # Not for
/// A tape that sags or lies over a hump.
/// # Errors
/// H as large as D or larger; a value outside its limits.
/// # By hand
/// 5 m with 3 m of rise: √(25 − 9) = 4 m.
fn plan_formula<N: Number>(tape: N, rise: N) -> Result<N> {
    if rise.value().abs() >= tape.value() {
        let why = format!(
            "the ends differ in height by {:.3} m, which is not less than the taped {:.3} m",
            rise.value().abs(),
            tape.value()
        );
        return Err(Refused::NoAnswer { working: PLAN_DISTANCE.name, why });
    }
    Ok((tape.squared() - rise.squared()).sqrt().named("L", Unit::M))
}

/// Geometry, no publication needed.
const GEOMETRY: Source = Source { work: "geometry of the right triangle", place: "" };

const SLOPED: &[Output] = &[
    Output { key: "run", words: "distance in plan", unit: Unit::M },
    Output { key: "rise", words: "height difference", unit: Unit::M },
    Output { key: "slope", words: "rise over run", unit: Unit::NONE },
    Output { key: "angle", words: "angle above level", unit: Unit::DEG },
    Output { key: "along", words: "distance along the slope", unit: Unit::M },
];

fn found(s: Sloped<groundhold_working::Shown<'_>>) -> Vec<Found<'_>> {
    [s.run, s.rise, s.slope, s.angle, s.along].map(Found::One).into()
}

/// Slope from level distances and falls.
pub static FALL: Working = Working {
    name: "survey/fall",
    title: "How steep is the ground, from level distances and falls?",
    source: GEOMETRY,
    not_for: "ground that is not even between its ends: the slope is the mean one",
    inputs: &[
        Input::new("run", "l", "level distance, or a list of steps", Unit::M, Limits::ours(0.01, 500.0)),
        Input::new("fall", "h", "fall over it, or a list of falls", Unit::M, Limits::ours(-100.0, 100.0)),
    ],
    outputs: SLOPED,
    run: |g| Ok(found(fall_formula(&g.many("run")?, &g.many("fall")?)?)),
};

/// Run from height difference and angle.
pub static FALL_BY_ANGLE: Working = Working {
    name: "survey/fall-by-angle",
    title: "How far does the ground run for this rise at this angle?",
    source: GEOMETRY,
    not_for: "an angle read on uneven ground without a straight edge",
    inputs: &[
        Input::new("rise", "H", "height difference", Unit::M, Limits::ours(0.001, 100.0)),
        Input::new("angle", "β", "angle of the ground", Unit::DEG, Limits::ours(0.1, 80.0)),
    ],
    outputs: SLOPED,
    run: |g| Ok(found(by_angle_formula(g.one("rise")?, g.one("angle")?))),
};

/// Plan distance of a sloping tape.
pub static PLAN_DISTANCE: Working = Working {
    name: "survey/plan-distance",
    title: "How far apart are two points in plan, taped along the slope?",
    source: GEOMETRY,
    not_for: "a tape that sags or lies over a hump",
    inputs: &[
        Input::new("tape", "D", "taped distance along the slope", Unit::M, Limits::ours(0.01, 500.0)),
        Input::new("rise", "H", "height difference of its ends", Unit::M, Limits::ours(-500.0, 500.0)),
    ],
    outputs: &[Output { key: "plan", words: "distance in plan", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(plan_formula(g.one("tape")?, g.one("rise")?)?)]),
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_hundred_over_seven_metres_is_one_in_eleven_point_seven() {
        let f = fall(&[(Length::m(7.0), Length::mm(600.0))]).unwrap();
        assert!((f.slope.to_one_in() - 11.666_667).abs() < 1e-6);
        assert!((f.angle.to_deg() - 4.899).abs() < 1e-3);
        assert_eq!(f.trace.sheet().unwrap().values[2], f.slope.to_ratio().into());
    }

    #[test]
    fn steps_of_a_level_board_add_up_and_an_empty_list_is_refused() {
        let step = (Length::m(2.0), Length::mm(240.0));
        let f = fall(&[step, step, (Length::m(1.0), Length::mm(-20.0))]).unwrap();
        assert!((f.run.to_m() - 5.0).abs() < 1e-12 && (f.rise.to_m() - 0.46).abs() < 1e-12);
        assert!(fall(&[]).unwrap_err().to_string().contains("at least one"));
        assert!(FALL.work(&[("run", vec![1.0, 2.0].into()), ("fall", 0.1.into())]).is_err());
    }

    #[test]
    fn the_angle_and_the_fall_describe_the_same_slope() {
        let a = fall_by_angle(Length::m(2.0), Angle::deg(14.0)).unwrap();
        assert!((a.run.to_m() - 8.0216).abs() < 1e-4 && (a.along.to_m() - 8.2671).abs() < 1e-4);
        let b = fall(&[(a.run, a.rise)]).unwrap();
        assert!((a.angle - b.angle).to_rad().abs() < 1e-12 && (a.along - b.along).to_m().abs() < 1e-12);
        assert!(fall_by_angle(Length::m(2.0), Angle::deg(80.1)).is_err());
    }

    #[test]
    fn a_tape_is_never_shorter_than_the_height_between_its_ends() {
        assert_eq!(plan_distance(Length::m(5.0), Length::m(-3.0)).unwrap(), Length::m(4.0));
        let no = plan_distance(Length::m(3.0), Length::m(3.0)).unwrap_err().to_string();
        assert!(no.contains("not less than the taped 3.000 m"), "{no}");
    }
}
