//! How is a level net written as text, solved and checked on a calculation sheet?

use std::collections::BTreeMap;

use groundhold_quantity::{Length, Level};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

use super::{Line, adjust, residual};
use crate::TEXT;
use crate::level_book::Benchmark;

/// A name as one word, for the text of a net; told apart by its number where it had to be changed.
fn word(name: &str, number: usize) -> String {
    if !name.is_empty() && name.chars().all(|c| !c.is_whitespace() && c != ';') {
        return name.into();
    }
    let joined: String = name.chars().map(|c| if c.is_whitespace() || c == ';' { '_' } else { c }).collect();
    format!("{joined}#{number}")
}

/// The net as text, read again by `position/level-net`: benchmarks, then lines.
pub(super) fn write(fixed: &BTreeMap<&str, f64>, names: &[&str], lines: &[Line]) -> (String, String) {
    let mut words: BTreeMap<&str, String> = BTreeMap::new();
    for (i, name) in fixed.keys().chain(names).enumerate() {
        words.insert(name, word(name, i + 1));
    }
    let known = fixed.iter().map(|(n, h)| format!("{} {h}", words[n])).collect::<Vec<_>>().join("; ");
    let line =
        |l: &Line| format!("{} {} {} {}", words[l.from.trim()], words[l.to.trim()], l.rise.to_m(), l.sigma.to_m());
    (known, lines.iter().map(line).collect::<Vec<_>>().join("; "))
}

fn read_known(text: &str) -> std::result::Result<Vec<Benchmark>, String> {
    let read = |t: &str| {
        let expected = || format!("found `{t}`, expected a station and its level in metres, for example `A 100.250`");
        let (name, level) = t.rsplit_once(char::is_whitespace).ok_or_else(expected)?;
        let level: f64 = level.replace('−', "-").parse().map_err(|_| expected())?;
        Ok(Benchmark { station: name.trim().into(), level: Level::m(level) })
    };
    text.split(';').map(str::trim).filter(|t| !t.is_empty()).map(read).collect()
}

fn read_lines(text: &str, lengths: bool) -> std::result::Result<Vec<Line>, String> {
    let read = |(i, t): (usize, &str)| {
        let expected =
            || format!("line {}: found `{t}`, expected `FROM TO RISE S`, for example `A B 1.235 0.003`", i + 1);
        let words: Vec<&str> = t.split_whitespace().collect();
        let [from, to, rise, last] = words.as_slice() else { return Err(expected()) };
        let number = |w: &str| w.replace('−', "-").parse::<f64>().map_err(|_| expected());
        let last = number(last)?;
        let sigma = if lengths { last.max(0.0).sqrt() } else { last };
        Ok(Line {
            row: i + 1,
            from: (*from).into(),
            to: (*to).into(),
            rise: Length::m(number(rise)?),
            sigma: Length::m(sigma),
        })
    };
    text.split(';').map(str::trim).filter(|t| !t.is_empty()).enumerate().map(read).collect()
}

/// The net solved, and checked on the sheet: every residual from the levels found, and the standard deviation of unit weight.
fn on_sheet<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let lengths = g.one("lengths")?.value();
    if lengths != 0.0 && lengths != 1.0 {
        return Err(g.no_answer("`lengths` should be 0 or 1"));
    }
    let known = read_known(g.word("known")?).map_err(|why| g.no_answer(why))?;
    let lines = read_lines(g.word("lines")?, lengths == 1.0).map_err(|why| g.no_answer(why))?;
    let net = adjust(&known, &lines)
        .map_err(|wrong| g.no_answer(wrong.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")))?;
    let put = |symbol, v: f64| g.sheet().put(symbol, v, Unit::M);
    g.sheet().remark("The levels with the least Σ(v/s)² are found from the normal equations; they are checked here.");
    let levels: Vec<Shown<'s>> = net.stations.iter().map(|s| put("H", s.level.to_m()).named("H", Unit::M)).collect();
    let at = |name: &str| -> Shown<'s> {
        match net.stations.iter().position(|s| s.station == name) {
            Some(i) => levels[i],
            None => put("H", known.iter().find(|b| b.station == name).map_or(0.0, |b| b.level.to_m())),
        }
    };
    let residuals: Vec<Shown<'s>> =
        lines.iter().map(|l| residual(at(&l.from), at(&l.to), put("h", l.rise.to_m())).named("v", Unit::M)).collect();
    let squares = residuals.iter().zip(&lines).map(|(v, l)| (*v / put("s", l.sigma.to_m())).squared());
    let sum = squares.reduce(|a, b| a + b).unwrap_or_else(|| put("Σ", 0.0)).named("Σ(v/s)²", Unit::NONE);
    let sigma0 = if net.redundancy > 0 {
        Found::One((sum / net.redundancy as f64).sqrt().named("s₀", Unit::NONE))
    } else {
        Found::Word("no line to spare".into())
    };
    let sigmas = net.stations.iter().map(|s| put("s_H", s.sigma.to_m())).collect();
    Ok(vec![Found::Many(levels), Found::Many(residuals), sigma0, Found::Many(sigmas)])
}

/// Levels of a net.
pub static LEVEL_NET: Working = Working {
    name: "position/level-net",
    title: "Which levels fit a net of levelled lines best?",
    source: Source {
        work: "Mikhail and Gracie, Analysis and Adjustment of Survey Measurements; Mikhail, Observations and Least Squares",
        place: "Table 7-1, p. 147 of the latter",
    },
    not_for: "a single run without a loop: reduce it as a book (level/height-of-collimation)",
    inputs: &[
        Input::new("known", "known", "stations with known levels, `A 100.250; B 98.400`, metres", Unit::NONE, TEXT),
        Input::new(
            "lines",
            "lines",
            "`FROM TO RISE S; …`, metres, S the standard deviation or, with lengths = 1, the length of the line",
            Unit::NONE,
            TEXT,
        ),
        Input::new(
            "lengths",
            "w",
            "0: S is a standard deviation; 1: S is a length, weight 1/S",
            Unit::NONE,
            Limits::ours(0.0, 1.0),
        )
        .or(0.0),
    ],
    outputs: &[
        Output {
            key: "levels",
            words: "levels of the unknown stations, in the order the lines name them",
            unit: Unit::M,
        },
        Output { key: "residuals", words: "computed less measured, for each line", unit: Unit::M },
        Output { key: "sigma0", words: "standard deviation of unit weight", unit: Unit::NONE },
        Output { key: "sigma", words: "standard deviation of each level", unit: Unit::M },
    ],
    run: on_sheet,
};
