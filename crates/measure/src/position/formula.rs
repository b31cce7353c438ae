//! How does a position follow from ties and offsets? The formulas, and workings that show the fit.

use groundhold_quantity::Point;
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::adjust::{Fit, adjust};
use super::observation::{Against, End, Observation};
use crate::TEXT;

/// Distance of two points, in plan.
///
/// # Source
/// Geometry (Pythagoras).
/// # Symbols
/// | x, y | the point | m | – |
/// | x_p, y_p | the peg | m | – |
/// # Gives
/// D = √((x − x_p)² + (y − y_p)²).
/// # Not for
/// Distances so long that the earth's curve shows.
/// # Errors
/// None.
/// # By hand
/// (3, 4) from (0, 0): 5 m.
pub(super) fn tie<N: Number>(x: N, y: N, px: N, py: N) -> N {
    ((x - px).squared() + (y - py).squared()).sqrt()
}

/// Distance along a base line, and square off it to the left.
///
/// # Source
/// Geometry: products of the vector from A to the point with the unit vector along A–B, and across it.
/// # Symbols
/// | x, y | the point | m | – |
/// | A, B | pegs of the base line | m | – |
/// # Gives
/// l = (P − A)·u and o = u × (P − A), positive to the left of A–B.
/// # Not for
/// A base line without length.
/// # Errors
/// None.
/// # By hand
/// A (0, 0), B (10, 0), P (3, 4): l = 3, o = 4.
pub(super) fn along<N: Number>([x, y, ax, ay, bx, by]: [N; 6]) -> N {
    ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / tie(bx, by, ax, ay)
}

/// See [`along`].
pub(super) fn off<N: Number>([x, y, ax, ay, bx, by]: [N; 6]) -> N {
    ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / tie(bx, by, ax, ay)
}

/// A point from its distance along a base line and square off it.
///
/// # Source
/// Geometry: P = A + l·u + o·n, u along A–B, n a quarter turn to its left.
/// # Symbols
/// | A, B | pegs of the base line | m | ±1 000 000 (ours) |
/// | l, o | along, and off to the left | m | ±500 (ours) |
/// # Gives
/// x and y of the point.
/// # Not for
/// A base line without length.
/// # Errors
/// A and B in one place.
/// # By hand
/// A (0, 0), B (0, 10), l = 3, o = 2: (−2, 3).
fn from_offset<N: Number>([ax, ay, bx, by, along, off]: [N; 6]) -> (N, N) {
    let length = tie(bx, by, ax, ay).named("L", Unit::M);
    let ux = ((bx - ax) / length).named("u_x", Unit::NONE);
    let uy = ((by - ay) / length).named("u_y", Unit::NONE);
    ((ax + ux * along - uy * off).named("x", Unit::M), (ay + uy * along + ux * off).named("y", Unit::M))
}

/// Along and off of a point tied to both ends of a line.
///
/// # Source
/// Geometry: the cosine rule; x = (d₁² − d₂² + L²)/(2L), y = √(d₁² − x²).
/// # Symbols
/// | L | distance of the pegs | m | 0.1 to 500 (ours) |
/// | d₁, d₂ | distances from the pegs | m | 0.01 to 500 (ours) |
/// # Gives
/// x along the line from the first peg, y square off it; the mirror image on the other side fits as well.
/// # Not for
/// More than two ties: use `position/ties`, which checks them.
/// # Errors
/// Distances that do not meet.
/// # By hand
/// Reference case LV-10.
fn two_ties<N: Number>(base: N, first: N, second: N) -> Option<(N, N)> {
    let x = ((first.squared() - second.squared() + base.squared()) / (base * 2.0)).named("x", Unit::M);
    let across = first.squared() - x.squared();
    (across.value() >= 0.0).then(|| (x, across.sqrt().named("y", Unit::M)))
}

/// A residual on the sheet: computed less read.
fn residual<'s>(
    o: &Observation,
    x: Shown<'s>,
    y: Shown<'s>,
    put: &impl Fn(&'static str, f64) -> Shown<'s>,
) -> Shown<'s> {
    let line = |a: Point, b: Point| [x, y, put("x_A", a.x), put("y_A", a.y), put("x_B", b.x), put("y_B", b.y)];
    let computed = match o.against {
        Against::Tie(e) => {
            let p = e.at(&[]);
            tie(x, y, put("x_p", p.x), put("y_p", p.y)).named("D", Unit::M)
        }
        Against::Along(a, b) => along(line(a, b)).named("l", Unit::M),
        Against::Off(a, b) => off(line(a, b)).named("o", Unit::M),
    };
    (computed - put("d", o.read)).named("v", Unit::M)
}

/// Solves for one point and writes the check a person can follow: every distance from the point found, every residual,
/// and the standard deviation of unit weight.
fn fit_on_sheet<'s>(g: &Given<'s>, observations: &[Observation], start: Point) -> Result<Vec<Found<'s>>> {
    if observations.len() < 2 {
        return Err(g.no_answer(format!("{} reading(s), expected at least two", observations.len())));
    }
    let fit: Fit = adjust(observations, &[start])
        .map_err(|_| g.no_answer("the point can slide across its readings, expected ties from another direction"))?;
    let put = |symbol, v: f64| g.sheet().put(symbol, v, Unit::M);
    g.sheet().remark("The position with the least Σ(v/s)² is found by Gauss–Newton steps; it is checked here.");
    let x = put("x", fit.at[0].x).named("x", Unit::M);
    let y = put("y", fit.at[0].y).named("y", Unit::M);
    let residuals: Vec<Shown<'s>> = observations.iter().map(|o| residual(o, x, y, &put)).collect();
    let sum = residuals
        .iter()
        .zip(observations)
        .map(|(v, o)| (*v / put("s", o.sigma)).squared())
        .reduce(|a, b| a + b)
        .unwrap_or_else(|| put("Σ", 0.0));
    let sum = sum.named("Σ(v/s)²", Unit::NONE);
    let sigma0 = if fit.redundancy > 0 {
        Found::One((sum / fit.redundancy as f64).sqrt().named("s₀", Unit::NONE))
    } else {
        Found::Word("no reading to spare".into())
    };
    let (sx, sy) = fit.sigmas(0);
    Ok(vec![
        Found::One(x),
        Found::One(y),
        Found::Many(residuals),
        sigma0,
        Found::One(put("s_x", sx).named("s_x", Unit::M)),
        Found::One(put("s_y", sy).named("s_y", Unit::M)),
    ])
}

const PLACE: Limits = Limits::ours(-1e6, 1e6);
const TAPE: Limits = Limits::ours(0.01, 500.0);
const SIGMA: Limits = Limits::ours(1e-5, 10.0);

const fn place(key: &'static str, symbol: &'static str, words: &'static str) -> Input {
    Input::new(key, symbol, words, Unit::M, PLACE)
}
const fn metres(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::M }
}
const FITTED: &[Output] = &[
    metres("x", "east"),
    metres("y", "north"),
    metres("residuals", "computed less read, for each reading"),
    Output { key: "sigma0", words: "standard deviation of unit weight", unit: Unit::NONE },
    metres("sigma_x", "standard deviation to the east, all other ends held"),
    metres("sigma_y", "standard deviation to the north, all other ends held"),
];
const LEAST_SQUARES: Source = Source {
    work: "from memory: Ghilani, Adjustment Computations; Gauss–Newton with the damping of Levenberg 1944 and Marquardt 1963",
    place: "least squares of distances",
};

/// A point from two ties.
pub static TWO_TIES: Working = Working {
    name: "position/two-ties",
    title: "Where along a line and how far off it does a point lie, tied to both its ends?",
    source: Source { work: "geometry: the cosine rule", place: "" },
    not_for: "more than two ties (use position/ties); which side of the line it is",
    inputs: &[
        Input::new("base", "L", "distance of the pegs", Unit::M, Limits::ours(0.1, 500.0)),
        Input::new("first", "d₁", "distance from the first peg", Unit::M, TAPE),
        Input::new("second", "d₂", "distance from the second peg", Unit::M, TAPE),
    ],
    outputs: &[metres("along", "along the line from the first peg"), metres("off", "square off the line, either side")],
    run: |g| {
        let (base, first, second) = (g.one("base")?, g.one("first")?, g.one("second")?);
        let (x, y) = two_ties(base, first, second).ok_or_else(|| {
            let (l, a, b) = (base.value(), first.value(), second.value());
            g.no_answer(format!("{a} m and {b} m do not meet with the pegs {l} m apart"))
        })?;
        Ok(vec![Found::One(x), Found::One(y)])
    },
};

/// A point from ties.
pub static TIES: Working = Working {
    name: "position/ties",
    title: "Where does a point lie, tied to two or more pegs?",
    source: LEAST_SQUARES,
    not_for: "tapes along a slope: reduce them to plan first (survey/plan-distance)",
    inputs: &[
        place("peg_x", "x_p", "east of each peg"),
        place("peg_y", "y_p", "north of each peg"),
        Input::new("tape", "d", "distance from each peg, in plan", Unit::M, TAPE),
        Input::new("sigma", "s", "standard deviation of each distance, or one for all", Unit::M, SIGMA).or(1.0),
        place("start_x", "x₀", "about where the point lies, east"),
        place("start_y", "y₀", "about where the point lies, north"),
    ],
    outputs: FITTED,
    run: |g| {
        let list = |key| g.many(key).map(|v| v.into_iter().map(Shown::value).collect::<Vec<f64>>());
        let (xs, ys, tapes, sigmas) = (list("peg_x")?, list("peg_y")?, list("tape")?, list("sigma")?);
        let n = tapes.len();
        if xs.len() != n || ys.len() != n || (sigmas.len() != n && sigmas.len() != 1) {
            return Err(g.no_answer("lists of unlike length, expected one x, y and sigma for each distance"));
        }
        let observations: Vec<Observation> = (0..n)
            .map(|i| Observation {
                point: End::Sought(0),
                against: Against::Tie(End::Known(Point::m(xs[i], ys[i]))),
                read: tapes[i],
                sigma: *sigmas.get(i).unwrap_or(&sigmas[0]),
                reading: i,
            })
            .collect();
        fit_on_sheet(g, &observations, Point::m(g.one("start_x")?.value(), g.one("start_y")?.value()))
    },
};

/// A point from one offset.
pub static OFFSET: Working = Working {
    name: "position/offset",
    title: "Where does a point lie, measured along a base line and square off it?",
    source: Source { work: "geometry of the right angle", place: "" },
    not_for: "a base line without length",
    inputs: &[
        place("from_x", "x_A", "east of the first peg"),
        place("from_y", "y_A", "north of the first peg"),
        place("to_x", "x_B", "east of the second peg"),
        place("to_y", "y_B", "north of the second peg"),
        Input::new("along", "l", "along the line from the first peg", Unit::M, Limits::ours(-500.0, 500.0)),
        Input::new("off", "o", "square off it, positive to the left", Unit::M, Limits::ours(-500.0, 500.0)),
    ],
    outputs: &[metres("x", "east"), metres("y", "north")],
    run: |g| {
        let one = |k| g.one(k);
        let given = [one("from_x")?, one("from_y")?, one("to_x")?, one("to_y")?, one("along")?, one("off")?];
        let [ax, ay, bx, by, ..] = given.map(Shown::value);
        if tie(bx, by, ax, ay) < 0.1 {
            return Err(g.no_answer("the base line has no length, expected pegs at least 0.1 m apart"));
        }
        let (x, y) = from_offset(given);
        Ok(vec![Found::One(x), Found::One(y)])
    },
};

/// A point from readings of any kind.
pub static READINGS: Working = Working {
    name: "position/readings",
    title: "Where does a point lie, from ties and offsets together?",
    source: LEAST_SQUARES,
    not_for: "tapes along a slope: reduce them to plan first (survey/plan-distance)",
    inputs: &[
        Input::new(
            "readings",
            "readings",
            "`tie X Y D S; along AX AY BX BY L S; off AX AY BX BY O S`, metres, S the standard deviation",
            Unit::NONE,
            TEXT,
        ),
        place("start_x", "x₀", "about where the point lies, east"),
        place("start_y", "y₀", "about where the point lies, north"),
    ],
    outputs: FITTED,
    run: |g| {
        let observations = read_readings(g.word("readings")?).map_err(|why| g.no_answer(why))?;
        fit_on_sheet(g, &observations, Point::m(g.one("start_x")?.value(), g.one("start_y")?.value()))
    },
};

/// Readings of one point as text, every other end at its place; read again by `position/readings`.
pub(super) fn write_readings(observations: &[Observation]) -> String {
    let write = |o: &Observation| {
        let line = |word: &str, a: Point, b: Point| format!("{word} {} {} {} {}", a.x, a.y, b.x, b.y);
        let head = match o.against {
            Against::Tie(e) => {
                let p = e.at(&[]);
                format!("tie {} {}", p.x, p.y)
            }
            Against::Along(a, b) => line("along", a, b),
            Against::Off(a, b) => line("off", a, b),
        };
        format!("{head} {} {}", o.read, o.sigma)
    };
    observations.iter().map(write).collect::<Vec<_>>().join("; ")
}

fn read_readings(text: &str) -> std::result::Result<Vec<Observation>, String> {
    text.split(';').map(str::trim).filter(|t| !t.is_empty()).enumerate().map(|(i, t)| read_reading(i, t)).collect()
}

fn read_reading(i: usize, text: &str) -> std::result::Result<Observation, String> {
    let wrong = |why: &str| format!("reading {} `{text}`: {why}", i + 1);
    let mut words = text.split_whitespace();
    let kind = words.next().unwrap_or("");
    let figures: Vec<f64> = words
        .map(|w| w.replace('−', "-").parse::<f64>().ok().filter(|v| v.abs() <= 1e6))
        .collect::<Option<_>>()
        .ok_or_else(|| wrong("expected numbers in metres up to 1 000 000"))?;
    let (against, read, sigma) = match (kind, figures.as_slice()) {
        ("tie", [x, y, d, s]) => (Against::Tie(End::Known(Point::m(*x, *y))), *d, *s),
        ("along", [ax, ay, bx, by, l, s]) => (Against::Along(Point::m(*ax, *ay), Point::m(*bx, *by)), *l, *s),
        ("off", [ax, ay, bx, by, o, s]) => (Against::Off(Point::m(*ax, *ay), Point::m(*bx, *by)), *o, *s),
        _ => return Err(wrong("expected `tie X Y D S`, `along AX AY BX BY L S` or `off AX AY BX BY O S`")),
    };
    if !(SIGMA.least..=SIGMA.most).contains(&sigma) {
        return Err(wrong("expected a standard deviation from 0.00001 m to 10 m"));
    }
    if let Against::Along(a, b) | Against::Off(a, b) = against
        && (b - a).length() < 0.1
    {
        return Err(wrong("the base line has no length"));
    }
    Ok(Observation { point: End::Sought(0), against, read, sigma, reading: i })
}
