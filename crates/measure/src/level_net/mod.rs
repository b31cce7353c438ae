//! What levels fit a net of levelled lines best?

use std::collections::{BTreeMap, BTreeSet};

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, trim};
use groundhold_working::{Number, Trace};

use crate::LEVEL_LINE_DOES_NOT_FIT;
use crate::least_squares::{Cholesky, Equation, FITS, UNCHECKED, normals, redundancy_number};
use crate::level_book::Benchmark;

mod sheet;
mod wrong;

pub use sheet::LEVEL_NET;
pub use wrong::NetError;

/// A levelled height difference between two stations.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its line in the file.
    pub row: usize,
    /// From.
    pub from: String,
    /// To.
    pub to: String,
    /// Level of `to` above `from`.
    pub rise: Length,
    /// Its standard deviation.
    pub sigma: Length,
}

/// A line and how it fits.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedLine {
    /// Its line in the file.
    pub row: usize,
    /// From.
    pub from: String,
    /// To.
    pub to: String,
    /// Computed minus measured.
    pub residual: Length,
    /// Residual over its own standard deviation; `None` where nothing checks the line.
    pub normalised: Option<f64>,
}

/// A station of the net.
#[derive(Debug, Clone, PartialEq)]
pub struct NetLevel {
    /// Its name.
    pub station: String,
    /// Its level.
    pub level: Level,
    /// Standard deviation against the benchmarks, from the stated ones, stretched where the residuals are larger.
    pub sigma: Length,
}

/// An adjusted net.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelNet {
    /// Unknown stations, in the order in which the lines name them.
    pub stations: Vec<NetLevel>,
    /// Each line.
    pub lines: Vec<FittedLine>,
    /// Lines beyond what is needed.
    pub redundancy: usize,
    /// Standard deviation of unit weight, a ratio to the stated ones; `None` without redundancy.
    pub sigma0: Option<f64>,
    /// Lines that do not fit.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub trace: Trace,
}

/// A line inside: ends by number or fixed level.
#[derive(Clone, Copy)]
struct Inner {
    from: Known,
    to: Known,
    rise: f64,
    sigma: f64,
}

#[derive(Clone, Copy)]
enum Known {
    Fixed(f64),
    Sought(usize),
}

impl Known {
    fn at(self, levels: &[f64]) -> f64 {
        match self {
            Known::Fixed(h) => h,
            Known::Sought(i) => levels[i],
        }
    }
}

struct Fit {
    levels: Vec<f64>,
    sigmas: Vec<f64>,
    residuals: Vec<f64>,
    normalised: Vec<Option<f64>>,
    misfit: f64,
    redundancy: usize,
}

/// Weighted least squares of height differences.
///
/// # Source
/// Mikhail and Gracie, Analysis and Adjustment of Survey Measurements; worked net in Mikhail, Observations and Least
/// Squares, Table 7-1.
/// # Symbols
/// | H | levels sought | m | – |
/// | h | measured rise of a line | m | −1000 to 1000 (ours) |
/// | s | its standard deviation; its weight is 1/s² | m | 0.00001 to 10 (ours) |
/// # Gives
/// The levels with the least Σ((H_to − H_from − h)/s)², residuals as computed less measured, and their spread.
/// # Not for
/// A single run without a loop: reduce it as a book.
/// # Errors
/// A station that no line joins to a known level.
/// # By hand
/// Reference case LV-08.
fn solve(unknowns: usize, lines: &[Inner]) -> Result<Fit, usize> {
    let zero = vec![0.0; unknowns];
    let equation = |l: &Inner| {
        let mut slopes = vec![];
        if let Known::Sought(i) = l.to {
            slopes.push((i, 1.0));
        }
        if let Known::Sought(i) = l.from {
            slopes.push((i, -1.0));
        }
        Equation { slopes, left: l.rise - (l.to.at(&zero) - l.from.at(&zero)), sigma: l.sigma }
    };
    let equations: Vec<Equation> = lines.iter().map(equation).collect();
    let (matrix, right) = normals(unknowns, &equations);
    let factor = Cholesky::of(unknowns, &matrix)?;
    let (levels, q) = (factor.solve(&right), factor.inverse());
    let residuals: Vec<f64> = lines.iter().map(|l| residual(l.from.at(&levels), l.to.at(&levels), l.rise)).collect();
    let misfit: f64 = residuals.iter().zip(lines).map(|(v, l)| (v / l.sigma) * (v / l.sigma)).sum();
    let redundancy = lines.len().saturating_sub(unknowns);
    let stretch = if redundancy > 0 { (misfit / redundancy as f64).sqrt().max(1.0) } else { 1.0 };
    let normalised = equations
        .iter()
        .zip(&residuals)
        .map(|(e, v)| {
            let r = redundancy_number(unknowns, &q, e);
            (r > UNCHECKED).then(|| v / (e.sigma * r.sqrt()))
        })
        .collect();
    let sigmas = (0..unknowns).map(|i| q[i * unknowns + i].max(0.0).sqrt() * stretch).collect();
    Ok(Fit { levels, sigmas, residuals, normalised, misfit, redundancy })
}

fn residual<N: Number>(from: N, to: N, rise: N) -> N {
    to - from - rise
}

/// More unknown stations than this are not solved together: the normal equations are dense.
const MOST: usize = 400;

/// Numbers the unknown stations in the order of the lines and checks that each hangs on a benchmark.
fn number<'a>(known: &BTreeMap<&'a str, f64>, lines: &'a [Line]) -> Result<(Vec<&'a str>, Vec<Inner>), NetError> {
    let mut names: Vec<&str> = vec![];
    let mut numbers: BTreeMap<&str, usize> = BTreeMap::new();
    let mut inner = vec![];
    for l in lines {
        let mut end = |name: &'a str| match known.get(name.trim()) {
            Some(h) => Known::Fixed(*h),
            None => Known::Sought(*numbers.entry(name.trim()).or_insert_with(|| {
                names.push(name.trim());
                names.len() - 1
            })),
        };
        inner.push(Inner { from: end(&l.from), to: end(&l.to), rise: l.rise.to_m(), sigma: l.sigma.to_m() });
    }
    if names.len() > MOST {
        return Err(NetError::TooLarge { stations: names.len(), most: MOST });
    }
    match adrift(names.len(), &inner) {
        None => Ok((names, inner)),
        Some(i) => Err(NetError::Adrift {
            station: names[i].into(),
            known: match known.keys().map(|k| format!("`{k}`")).collect::<Vec<_>>().join(", ") {
                none if none.is_empty() => "the benchmarks, of which there are none".into(),
                some => some,
            },
        }),
    }
}

/// The first unknown that no chain of lines joins to a fixed level.
fn adrift(unknowns: usize, lines: &[Inner]) -> Option<usize> {
    let mut held: BTreeSet<usize> = BTreeSet::new();
    loop {
        let before = held.len();
        for l in lines {
            let is_held = |k: Known, held: &BTreeSet<usize>| match k {
                Known::Fixed(_) => true,
                Known::Sought(i) => held.contains(&i),
            };
            if is_held(l.from, &held) || is_held(l.to, &held) {
                for k in [l.from, l.to] {
                    if let Known::Sought(i) = k {
                        held.insert(i);
                    }
                }
            }
        }
        if held.len() == before {
            return (0..unknowns).find(|i| !held.contains(i));
        }
    }
}

/// Adjusts a net by weighted least squares, benchmarks held fixed.
///
/// # Errors
/// All that is wrong with it.
pub fn adjust(known: &[Benchmark], lines: &[Line]) -> Result<LevelNet, Vec<NetError>> {
    let mut wrong = vec![];
    let mut fixed: BTreeMap<&str, f64> = BTreeMap::new();
    for b in known {
        let again = fixed.insert(b.station.trim(), b.level.to_m()).is_some_and(|h| h != b.level.to_m());
        if again || !b.level.is_finite() {
            wrong.push(NetError::Benchmark { station: b.station.clone() });
        }
    }
    wrong.extend(lines.iter().flat_map(line_complaints));
    if lines.is_empty() {
        wrong.push(NetError::Empty);
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let (names, inner) = number(&fixed, lines).map_err(|e| vec![e])?;
    let fit = solve(names.len(), &inner)
        .map_err(|i| vec![NetError::Adrift { station: names[i].into(), known: "the benchmarks".into() }])?;
    Ok(LevelNet {
        stations: names
            .iter()
            .enumerate()
            .map(|(i, n)| NetLevel {
                station: (*n).into(),
                level: Level::m(fit.levels[i]),
                sigma: Length::m(fit.sigmas[i]),
            })
            .collect(),
        findings: findings(lines, &inner, &fit),
        lines: lines
            .iter()
            .enumerate()
            .map(|(i, l)| FittedLine {
                row: l.row,
                from: l.from.clone(),
                to: l.to.clone(),
                residual: Length::m(fit.residuals[i]),
                normalised: fit.normalised[i],
            })
            .collect(),
        redundancy: fit.redundancy,
        sigma0: (fit.redundancy > 0).then(|| (fit.misfit / fit.redundancy as f64).sqrt()),
        trace: {
            let (known, lines) = sheet::write(&fixed, &names, lines);
            Trace::new(&LEVEL_NET, vec![known.as_str().into(), lines.as_str().into(), 0.0.into()])
        },
    })
}

fn line_complaints(l: &Line) -> Vec<NetError> {
    let mut wrong = vec![];
    if l.from.trim() == l.to.trim() {
        wrong.push(NetError::ToItself { row: l.row, station: l.from.clone() });
    }
    let (rise, sigma) = (l.rise.to_m(), l.sigma.to_m());
    let mut check = |what, value: f64, fine: bool, expected| {
        if !fine {
            wrong.push(NetError::OutOfRange { row: l.row, what, value, expected });
        }
    };
    check("the rise", rise, rise.abs() <= 1000.0, "−1000 m to 1000 m");
    check("the standard deviation", sigma, (1e-5..=10.0).contains(&sigma), "0.01 mm to 10 m");
    wrong
}

/// Names the line without which the rest fit, or all lines that would do as well.
fn findings(lines: &[Line], inner: &[Inner], fit: &Fit) -> Vec<Finding> {
    let worst = fit.normalised.iter().flatten().map(|w| w.abs()).fold(0.0, f64::max);
    if worst <= FITS {
        return vec![];
    }
    // Leaving out one reading of a linear net lowers the sum of squares by its normalised residual squared, and the rest
    // predict it to be out by its residual over its redundancy number: v/r with w = v/(s·√r).
    let mut trials: Vec<(f64, usize, f64)> = fit
        .normalised
        .iter()
        .enumerate()
        .filter_map(|(i, w)| Some((i, (*w)?)))
        .map(|(i, w)| {
            let v = fit.residuals[i];
            let r = (v / (w * inner[i].sigma)) * (v / (w * inner[i].sigma));
            (fit.misfit - w * w, i, if r > 0.0 { v / r } else { 0.0 })
        })
        .collect();
    trials.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let best = trials.first().map_or(0.0, |t| t.0);
    let alike: Vec<String> = trials
        .iter()
        .filter(|t| t.0 - best < 9.0)
        .map(|(_, i, by)| {
            let (l, more) = (&lines[*i], if *by > 0.0 { "more" } else { "less" });
            format!(
                "row {}, `{}` to `{}`, {:.3} m (by the others {} mm {more})",
                l.row,
                l.from,
                l.to,
                l.rise.to_m(),
                trim(by.abs() * 1000.0, 1)
            )
        })
        .collect();
    let says = match alike.as_slice() {
        [one] => format!("A levelled line does not fit: {one}. Level it again."),
        many => format!(
            "One of these levelled lines does not fit, and nothing says which: {}. Level them again.",
            many.join("; ")
        ),
    };
    vec![Finding::new(&LEVEL_LINE_DOES_NOT_FIT, Place::of("level net"), says).with_utilisation(worst / FITS)]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(row: usize, from: &str, to: &str, rise: f64) -> Line {
        Line { row, from: from.into(), to: to.into(), rise: Length::m(rise), sigma: Length::mm(2.0) }
    }
    fn at(station: &str, level: f64) -> Benchmark {
        Benchmark { station: station.into(), level: Level::m(level) }
    }

    #[test]
    fn the_trace_gives_the_same_levels_even_for_names_with_spaces() {
        let lines = [line(1, "gate post", "B", 1.0), line(2, "B", "C", 0.5), line(3, "C", "gate post", -1.503)];
        let net = adjust(&[at("gate post", 100.0)], &lines).unwrap();
        let levels: Vec<f64> = net.stations.iter().map(|s| s.level.to_m()).collect();
        assert_eq!(net.trace.sheet().unwrap().values[0], levels.into());
        assert_eq!((net.redundancy, net.findings.len()), (1, 0));
    }

    #[test]
    fn a_misread_line_in_a_net_of_several_loops_is_named_by_its_row() {
        let true_level = |n: &str| match n {
            "A" => 100.0,
            "B" => 101.2,
            "C" => 99.7,
            _ => 102.4,
        };
        let mut lines = vec![];
        for (i, (a, b)) in [("A", "B"), ("B", "C"), ("C", "D"), ("D", "A"), ("A", "C"), ("B", "D")].iter().enumerate() {
            lines.push(line(i + 2, a, b, true_level(b) - true_level(a)));
        }
        lines[3].rise += Length::mm(100.0);
        let net = adjust(&[at("A", 100.0)], &lines).unwrap();
        assert!(net.findings[0].says.contains("row 5, `D` to `A`"), "{}", net.findings[0].says);
        assert!(net.findings[0].says.contains("100 mm less"), "{}", net.findings[0].says);
    }

    #[test]
    fn a_station_without_a_way_to_a_benchmark_is_named() {
        let wrong = adjust(&[at("A", 1.0)], &[line(1, "A", "B", 1.0), line(2, "C", "D", 1.0)]).unwrap_err();
        assert!(wrong[0].to_string().contains("`C` is not joined"), "{wrong:?}");
        assert_eq!(adjust(&[], &[]).unwrap_err(), [NetError::Empty]);
        let wrong = adjust(&[at("A", 1.0)], &[line(1, "A", "A", f64::NAN)]).unwrap_err();
        assert_eq!(wrong.len(), 2, "{wrong:?}");
    }
}
