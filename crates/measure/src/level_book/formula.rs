//! How does a row become a level? Height of collimation, rise and fall, the share of the misclose, and the spread.

use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::{Booking, text::read_book, wrong};
use crate::TEXT;

/// The readings of a row.
pub(super) struct Sight<N> {
    pub back: Option<N>,
    pub between: Option<N>,
    pub fore: Option<N>,
}

impl Sight<f64> {
    pub(super) fn of(b: &Booking) -> Sight<f64> {
        let m = |r: Option<groundhold_quantity::Length>| r.map(|l| l.to_m());
        Sight { back: m(b.backsight), between: m(b.intermediate), fore: m(b.foresight) }
    }
}

/// A book by height of collimation, metres.
pub(super) struct Collimated<N> {
    /// Level of each row.
    pub levels: Vec<N>,
    /// Height of collimation of each set-up.
    pub collimations: Vec<N>,
    /// Sum of the backsights that a foresight follows.
    pub sum_back: N,
    /// Sum of the foresights.
    pub sum_fore: N,
    /// The former less the latter.
    pub difference: N,
    /// Sum of all levels but the first.
    pub sum_levels: N,
    /// The same from the heights of collimation.
    pub sum_from_collimation: N,
}

/// A book by rise and fall, metres.
pub(super) struct Risen<N> {
    /// Level of each row.
    pub levels: Vec<N>,
    /// Height of each row but the first above the one before.
    pub steps: Vec<N>,
    /// Sum of the rises.
    pub sum_rises: N,
    /// Sum of the falls, positive.
    pub sum_falls: N,
    /// The former less the latter.
    pub difference: N,
}

fn plus<N: Number>(sum: Option<N>, more: N) -> Option<N> {
    Some(sum.map_or(more, |s| s + more))
}
fn or_nothing<N: Number>(sum: Option<N>) -> N {
    sum.unwrap_or(N::constant(0.0))
}

/// Levels by height of collimation, with the full arithmetic check.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 5 (method); the check over all sights from memory: Uren and Price, Surveying for
/// Engineers.
/// # Symbols
/// | H | level of a row | m | – |
/// | HC | height of collimation of a set-up, level plus backsight | m | – |
/// | BS, IS, FS | staff readings, negative for a staff upside down | m | −5 to 5 (ours) |
/// # Gives
/// The level of each row. ΣBS − ΣFS is the rise from the first row to the last foresight. The sum of all levels but the
/// first is each HC times the sights from it, less ΣIS and ΣFS: a slip at an intermediate sight shows there and only there.
/// # Not for
/// Sights of very unlike length through a level that is out of adjustment: see the two-peg test.
/// # Errors
/// A book that cannot be followed, with the row.
/// # By hand
/// Reference case LV-01.
pub(super) fn by_collimation<N: Number>(start: N, sights: &[Sight<N>]) -> Collimated<N> {
    let (mut levels, mut collimations): (Vec<N>, Vec<N>) = (vec![], vec![]);
    let (mut level, mut open, mut seen) = (start, None, 0usize);
    let (mut sum_back, mut sum_fore, mut sum_levels) = (None, None, None);
    let (mut from_collimation, mut readings) = (None, None);
    for s in sights {
        if let (Some(h), Some(r)) = (collimations.last().copied(), s.between.or(s.fore)) {
            level = (h - r).named("H", Unit::M);
            sum_levels = plus(sum_levels, level);
            readings = plus(readings, r);
            seen += 1;
        }
        levels.push(level);
        if let (Some(b), Some(f)) = (open, s.fore) {
            sum_back = plus(sum_back, b);
            sum_fore = plus(sum_fore, f);
        }
        if let Some(b) = s.back {
            if let Some(h) = collimations.last().filter(|_| seen > 0) {
                from_collimation = plus(from_collimation, *h * seen as f64);
            }
            collimations.push((level + b).named("HC", Unit::M));
            (open, seen) = (Some(b), 0);
        }
    }
    if let Some(h) = collimations.last().filter(|_| seen > 0) {
        from_collimation = plus(from_collimation, *h * seen as f64);
    }
    let sum_back = or_nothing(sum_back).named("ΣBS", Unit::M);
    let sum_fore = or_nothing(sum_fore).named("ΣFS", Unit::M);
    Collimated {
        levels,
        collimations,
        sum_back,
        sum_fore,
        difference: (sum_back - sum_fore).named("ΣBS − ΣFS", Unit::M),
        sum_levels: or_nothing(sum_levels).named("ΣH", Unit::M),
        sum_from_collimation: (or_nothing(from_collimation) - or_nothing(readings)).named("Σn·HC − ΣIS − ΣFS", Unit::M),
    }
}

/// Levels by rise and fall.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 5.
/// # Symbols
/// | H | level of a row | m | – |
/// | R | rise from the row before, the reading there less the reading here | m | – |
/// | BS, IS, FS | staff readings, negative for a staff upside down | m | −5 to 5 (ours) |
/// # Gives
/// The level of each row. ΣR − ΣF is the rise from the first row to the last.
/// # Not for
/// None known.
/// # Errors
/// A book that cannot be followed, with the row.
/// # By hand
/// Reference case LV-01-RF.
pub(super) fn by_rise_and_fall<N: Number>(start: N, sights: &[Sight<N>]) -> Risen<N> {
    let (mut levels, mut steps) = (vec![], vec![]);
    let (mut level, mut before): (N, Option<N>) = (start, None);
    let (mut rises, mut falls) = (None, None);
    for s in sights {
        if let (Some(b), Some(r)) = (before, s.between.or(s.fore)) {
            let step = (b - r).named("R", Unit::M);
            if step.value() < 0.0 {
                falls = plus(falls, -step);
            } else {
                rises = plus(rises, step);
            }
            level = (level + step).named("H", Unit::M);
            steps.push(step);
        }
        levels.push(level);
        before = s.back.or(s.between).or(s.fore);
    }
    let sum_rises = or_nothing(rises).named("ΣR", Unit::M);
    let sum_falls = or_nothing(falls).named("ΣF", Unit::M);
    Risen { levels, steps, sum_rises, sum_falls, difference: (sum_rises - sum_falls).named("ΣR − ΣF", Unit::M) }
}

/// Share of the misclose for everything seen from one set-up.
///
/// # Source
/// From memory: Uren and Price, Surveying for Engineers: equal shares to the set-ups, added up along the run;
/// intermediate sights take the share of the set-up they were read from.
/// # Symbols
/// | m | misclose, found less known | mm | −10 000 to 10 000 (ours) |
/// | i | set-up, counted from 1 | – | 0 to 10 000 (ours); 0 is the start |
/// | n | set-ups of the run | – | 1 to 10 000 (ours) |
/// # Gives
/// Correction in mm, −m·i/n; at the close it takes the whole misclose away.
/// # Not for
/// A misclose larger than allowed: find the mistake instead. Loops with common lines: use `position/level-net`.
/// # Errors
/// A value outside its limits.
/// # By hand
/// 6 mm over 3 set-ups: −2, −4, −6 mm.
pub(super) fn correction<N: Number>(misclose: N, set_up: N, set_ups: N) -> N {
    (-(misclose * set_up / set_ups)).named("c", Unit::MM)
}

/// How a sight was taken, for its spread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A foresight, on a change point or the close.
    Fore,
    /// An intermediate sight.
    Between,
}

/// Standard deviation of a level seen from set-up i.
///
/// # Source
/// Propagation of variance through the reduction and the equal distribution of the misclose, every reading with the same
/// standard deviation (from memory: Ghilani, Adjustment Computations).
/// # Symbols
/// | s | standard deviation of one staff reading | mm | 0.01 to 100 (ours) |
/// | i | set-up it was seen from | – | 0 to 10 000 (ours) |
/// | n | set-ups of a closed run, 0 for an open one | – | 0 to 10 000 (ours) |
/// # Gives
/// Standard deviation in mm against the start, which counts as free of error.
/// # Not for
/// Errors that grow with the length of sight.
/// # Errors
/// A value outside its limits, or i above n in a closed run.
/// # By hand
/// Open, i = 2: s·√4 = 2·s. Closed, a foresight halfway in two set-ups: s·√(2·1·1/2) = s. At the close: 0.
pub(super) fn sigma<N: Number>(reading: N, set_up: N, set_ups: N, kind: Kind) -> N {
    let readings = if set_up.value() == 0.0 {
        N::constant(0.0)
    } else if set_ups.value() == 0.0 {
        set_up * 2.0
    } else {
        let t = set_up / set_ups;
        let rest = -t + 1.0;
        match kind {
            Kind::Fore => set_up * rest.squared() * 2.0 + (set_ups - set_up) * t.squared() * 2.0,
            Kind::Between => {
                (set_up - 1.0) * rest.squared() * 2.0
                    + rest.squared()
                    + t.squared()
                    + 1.0
                    + (set_ups - set_up) * t.squared() * 2.0
            }
        }
    };
    (reading * readings.sqrt()).named("σ", Unit::MM)
}

/// The inputs of both reductions.
const BOOK: &[Input] = &[
    Input::new("start", "H₀", "level of the first station", Unit::M, Limits::ours(-500.0, 9000.0)),
    Input::new("book", "book", "rows such as `BS 2.415; BS 3.600 FS 1.819; IS 4.680`", Unit::NONE, TEXT),
];
const fn metres(key: &'static str, words: &'static str) -> Output {
    Output { key, words, unit: Unit::M }
}

fn sights<'s>(g: &Given<'s>) -> Result<Vec<Sight<Shown<'s>>>> {
    let book = read_book(g.word("book")?).map_err(|why| g.no_answer(why))?;
    let wrong = wrong::complaints(&book);
    if !wrong.is_empty() {
        return Err(g.no_answer(wrong.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")));
    }
    if book.is_empty() {
        return Err(g.no_answer("the book is empty, expected a first row with a backsight"));
    }
    let put = |symbol, v: Option<f64>| v.map(|v| g.sheet().put(symbol, v, Unit::M));
    Ok(book
        .iter()
        .map(Sight::of)
        .map(|s| Sight { back: put("BS", s.back), between: put("IS", s.between), fore: put("FS", s.fore) })
        .collect())
}

/// A level book by height of collimation.
pub static HEIGHT_OF_COLLIMATION: Working = Working {
    name: "level/height-of-collimation",
    title: "Which levels does a level book give, by height of collimation?",
    source: Source {
        work: "Basak, Surveying and Levelling; the check over all sights from memory: Uren and Price, Surveying for Engineers",
        place: "ch. 5",
    },
    not_for: "sights of very unlike length through a level that is out of adjustment",
    inputs: BOOK,
    outputs: &[
        metres("levels", "level of each row"),
        metres("collimation", "height of collimation of each set-up"),
        metres("sum_bs", "sum of the backsights up to the last foresight"),
        metres("sum_fs", "sum of the foresights"),
        metres("difference", "rise from the first row to the last foresight"),
        metres("sum_levels", "sum of all levels but the first"),
        metres("sum_from_collimation", "the same from the heights of collimation"),
    ],
    run: |g| {
        let c = by_collimation(g.one("start")?, &sights(g)?);
        let sums = [c.sum_back, c.sum_fore, c.difference, c.sum_levels, c.sum_from_collimation];
        Ok([Found::Many(c.levels), Found::Many(c.collimations)].into_iter().chain(sums.map(Found::One)).collect())
    },
};

/// A level book by rise and fall.
pub static RISE_AND_FALL: Working = Working {
    name: "level/rise-and-fall",
    title: "Which levels does a level book give, by rise and fall?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 5" },
    not_for: "none known",
    inputs: BOOK,
    outputs: &[
        metres("levels", "level of each row"),
        metres("steps", "height of each row but the first above the one before"),
        metres("sum_rises", "sum of the rises"),
        metres("sum_falls", "sum of the falls"),
        metres("difference", "rise from the first row to the last"),
    ],
    run: |g| {
        let r = by_rise_and_fall(g.one("start")?, &sights(g)?);
        let sums = [r.sum_rises, r.sum_falls, r.difference].map(Found::One);
        Ok([Found::Many(r.levels), Found::Many(r.steps)].into_iter().chain(sums).collect())
    },
};

const fn count(key: &'static str, symbol: &'static str, words: &'static str, least: f64) -> Input {
    Input::new(key, symbol, words, Unit::NONE, Limits::ours(least, 10_000.0))
}

/// Share of the misclose.
pub static CORRECTION: Working = Working {
    name: "level/correction",
    title: "What does the distributed misclose add to a level?",
    source: Source { work: "from memory: Uren and Price, Surveying for Engineers", place: "levelling, adjustment" },
    not_for: "a misclose larger than allowed; loops with common lines (use position/level-net)",
    inputs: &[
        Input::new("misclose", "m", "found less known at the close", Unit::MM, Limits::ours(-10_000.0, 10_000.0)),
        count("set_up", "i", "set-up the point was seen from, 0 for the start", 0.0),
        count("set_ups", "n", "set-ups of the run", 1.0),
    ],
    outputs: &[Output { key: "correction", words: "what is added to the level", unit: Unit::MM }],
    run: |g| Ok(vec![Found::One(correction(g.one("misclose")?, g.one("set_up")?, g.one("set_ups")?))]),
};

/// Spread of a level.
pub static SIGMA: Working = Working {
    name: "level/sigma",
    title: "How sure is a level out of a level book?",
    source: Source { work: "from memory: Ghilani, Adjustment Computations", place: "propagation of variance" },
    not_for: "errors that grow with the length of sight",
    inputs: &[
        Input::new("reading", "s", "standard deviation of a staff reading", Unit::MM, Limits::ours(0.01, 100.0)),
        count("set_up", "i", "set-up the point was seen from, 0 for the start", 0.0),
        count("set_ups", "n", "set-ups of a closed run, 0 for an open one", 0.0),
        Input::new("sight", "sight", "`fore` or `between`", Unit::NONE, TEXT),
    ],
    outputs: &[Output { key: "sigma", words: "standard deviation against the start", unit: Unit::MM }],
    run: |g| {
        let kind = match g.word("sight")? {
            "fore" => Kind::Fore,
            "between" => Kind::Between,
            other => return Err(g.no_answer(format!("found `{other}` for `sight`, expected `fore` or `between`"))),
        };
        let (i, n) = (g.one("set_up")?, g.one("set_ups")?);
        if n.value() > 0.0 && i.value() > n.value() {
            return Err(g.no_answer(format!("set-up {} of {}, expected one of the run", i.value(), n.value())));
        }
        Ok(vec![Found::One(sigma(g.one("reading")?, i, n, kind))])
    },
};
