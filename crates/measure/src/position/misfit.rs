//! Which of several places is meant, and which reading does not fit?

use groundhold_quantity::Point;

use super::adjust::{Fit, adjust};
use super::observation::{Against, End, Observation};
use super::start::{Required, starts};
use crate::least_squares::FITS;

/// Points that hang together, numbered from 0.
pub(super) struct Group {
    pub points: usize,
    pub observations: Vec<Observation>,
    pub required: Vec<Required>,
}

/// Why a group gives no position; points by their number in the group, observations by theirs.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum NoPlace {
    TooMany,
    TooFew(usize),
    Loose(usize),
    DoNotMeet(usize, usize),
    Two(usize, Point, Point),
    /// By the number of the hint.
    WrongSide(usize),
}

/// What is wrong with the fit of a group.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Verdict {
    /// Every reading fits.
    Fits,
    /// These readings do not fit; without them the rest fit within this length.
    SetAside { which: Vec<Misfit>, rest: f64 },
    /// Leaving out any one of these would do, so nothing says which is wrong.
    Undecided { which: Vec<Misfit> },
}

/// A reading that does not fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Misfit {
    /// Its number in the group.
    pub observation: usize,
    /// Its normalised residual with all readings in.
    pub normalised: f64,
    /// What it should read by the others, less what it reads, metres.
    pub by: f64,
}

/// A group, placed.
pub(super) struct Settled {
    /// The fit of the readings that count.
    pub fit: Fit,
    /// Numbers of the readings that count, in the order of the fit.
    pub counted: Vec<usize>,
    pub verdict: Verdict,
}

/// Two places are told apart when the worse one fits worse by this much: three standard deviations, and a tenth of what
/// the better one misses by (ours).
fn as_good(best: f64, other: f64) -> bool {
    other - best < 9.0 + 0.1 * best
}

/// Places of the group, the best fit first.
fn places(group: &Group, observations: &[Observation], most: usize) -> Result<Vec<Fit>, NoPlace> {
    if observations.len() < 2 * group.points {
        return Err(NoPlace::TooFew(thinnest(group.points, observations)));
    }
    let mut fits: Vec<Fit> = vec![];
    let mut loose = None;
    let starts = starts(group.points, observations, &group.required).map_err(NoPlace::TooFew)?;
    for start in starts.iter().take(most) {
        match adjust(observations, start) {
            Ok(fit) if fits.iter().all(|f| furthest(f, &fit).1 > 1e-3) => fits.push(fit),
            Ok(_) => {}
            Err(point) => loose = loose.or(Some(point)),
        }
    }
    fits.sort_by(|a, b| a.misfit.total_cmp(&b.misfit));
    if fits.is_empty() { Err(NoPlace::Loose(loose.unwrap_or(0))) } else { Ok(fits) }
}

/// The point with the fewest readings.
fn thinnest(points: usize, observations: &[Observation]) -> usize {
    (0..points).min_by_key(|i| observations.iter().filter(|o| o.sought().any(|p| p == *i)).count()).unwrap_or(0)
}

/// The point that differs most between two fits, and by how much.
fn furthest(a: &Fit, b: &Fit) -> (usize, f64) {
    let apart = a.at.iter().zip(&b.at).map(|(p, q)| (*p - *q).length());
    apart.enumerate().fold((0, 0.0), |worst, (i, d)| if d > worst.1 { (i, d) } else { worst })
}

/// Drops the places on the wrong side of a line.
fn on_their_sides(group: &Group, fits: Vec<Fit>) -> Result<Vec<Fit>, NoPlace> {
    let violated = |fit: &Fit| {
        group.required.iter().find(|r| {
            let (sx, sy) = fit.sigmas(r.point);
            r.inside(fit.at[r.point]) < -3.0 * (sx + sy)
        })
    };
    let first_wrong = fits.first().and_then(|f| violated(f).copied());
    let right: Vec<Fit> = fits.into_iter().filter(|f| violated(f).is_none()).collect();
    match (right.is_empty(), first_wrong) {
        (true, Some(r)) => Err(NoPlace::WrongSide(r.hint)),
        _ => Ok(right),
    }
}

/// The one place that is meant, or the two that fit alike.
fn the_place(group: &Group, observations: &[Observation]) -> Result<Fit, NoPlace> {
    let mut fits = on_their_sides(group, places(group, observations, usize::MAX)?)?.into_iter();
    let Some(best) = fits.next() else { return Err(NoPlace::Loose(0)) };
    for other in fits.take_while(|f| as_good(best.misfit, f.misfit)) {
        let (point, apart) = furthest(&best, &other);
        let (sx, sy) = best.sigmas(point);
        if apart > 3.0 * (sx + sy) {
            return Err(NoPlace::Two(point, best.at[point], other.at[point]));
        }
    }
    Ok(best)
}

/// Beginnings tried again when a reading is left out, beside the place found before.
const FEW: usize = 6;

/// The place nearest to one found before, among those that fit about as well as the best.
fn place_near(group: &Group, observations: &[Observation], before: &Fit) -> Option<Fit> {
    let mut fits = on_their_sides(group, places(group, observations, FEW).ok()?).ok()?;
    if let Ok(fit) = adjust(observations, &before.at) {
        fits.push(fit);
        fits.sort_by(|a, b| a.misfit.total_cmp(&b.misfit));
    }
    let best = fits.first()?.misfit;
    let near = |f: &Fit| furthest(f, before).1;
    fits.into_iter().filter(|f| as_good(best, f.misfit)).min_by(|a, b| near(a).total_cmp(&near(b)))
}

/// Two ties that alone fix a point and do not meet, beyond three standard deviations of the gap.
fn that_do_not_meet(group: &Group) -> Option<NoPlace> {
    let [a, b] = group.observations.as_slice() else { return None };
    let centre = |o: &Observation| match (o.point, o.against) {
        (End::Sought(_), Against::Tie(End::Known(p))) | (End::Known(p), Against::Tie(End::Sought(_))) => Some(p),
        _ => None,
    };
    let apart = (centre(a)? - centre(b)?).length();
    let spread = (a.sigma * a.sigma + b.sigma * b.sigma).sqrt();
    (gap(apart, a.read, b.read) > 3.0 * spread).then_some(NoPlace::DoNotMeet(0, 1))
}

/// By how much two distances fail to meet, positive for a gap.
pub(super) fn gap(apart: f64, first: f64, second: f64) -> f64 {
    (apart - first - second).max((first - second).abs() - apart)
}

/// More points than this are not found together: the normal equations are dense.
pub(super) const MOST_TOGETHER: usize = 250;

/// Places a group and judges its readings.
pub(super) fn settle(group: &Group) -> Result<Settled, NoPlace> {
    if group.points > MOST_TOGETHER {
        return Err(NoPlace::TooMany);
    }
    if let Some(no) = that_do_not_meet(group) {
        return Err(no);
    }
    let fit = the_place(group, &group.observations)?;
    let counted: Vec<usize> = (0..group.observations.len()).collect();
    if fit.worst() <= FITS {
        return Ok(Settled { fit, counted, verdict: Verdict::Fits });
    }
    Ok(judge(group, fit, counted))
}

/// A trial without one more reading.
struct Trial {
    without: usize,
    fit: Fit,
}

/// How many readings at most are tried by leaving each out, the largest normalised residuals first.
const TRIED: usize = 24;

/// Leaves out one reading after the other until the rest fit. Names them where the choice is clear; where several would
/// do about as well, keeps all and names them all.
fn judge(group: &Group, all_in: Fit, everything: Vec<usize>) -> Settled {
    let (mut fit, mut counted) = (all_in.clone(), everything.clone());
    let mut removed: Vec<usize> = vec![];
    while fit.redundancy > 0 {
        let mut trials = trials(group, &fit, &counted);
        trials.sort_by(|a, b| a.fit.misfit.total_cmp(&b.fit.misfit));
        let fitting: Vec<&Trial> = trials.iter().filter(|t| t.fit.worst() <= FITS).collect();
        if let Some(best) = fitting.first() {
            let alike: Vec<usize> =
                fitting.iter().filter(|t| t.fit.misfit - best.fit.misfit < 9.0).map(|t| t.without).collect();
            if alike.len() > 1 || best.fit.redundancy == 0 {
                removed.extend(alike);
                break;
            }
            removed.push(best.without);
            counted.retain(|i| *i != best.without);
            let rest = best.fit.residuals.iter().fold(0.0_f64, |m, v| m.max(v.abs()));
            let which = misfits(group, &all_in, &best.fit, &removed);
            return Settled { fit: best.fit.clone(), counted, verdict: Verdict::SetAside { which, rest } };
        }
        let Some(best) = trials.into_iter().next() else { break };
        removed.push(best.without);
        counted.retain(|i| *i != best.without);
        fit = best.fit;
    }
    if removed.is_empty() {
        removed = worst_first(&all_in, &everything).into_iter().take(6).collect();
    }
    let which = removed.iter().map(|i| alone(group, &all_in, &everything, *i)).collect();
    Settled { fit: all_in, counted: everything, verdict: Verdict::Undecided { which } }
}

fn worst_first(fit: &Fit, counted: &[usize]) -> Vec<usize> {
    let size = |k: usize| fit.normalised[k].map_or(0.0, f64::abs);
    let mut order: Vec<usize> = (0..counted.len()).filter(|k| fit.normalised[*k].is_some()).collect();
    order.sort_by(|a, b| size(*b).total_cmp(&size(*a)).then(a.cmp(b)));
    order.into_iter().map(|k| counted[k]).collect()
}

fn trials(group: &Group, fit: &Fit, counted: &[usize]) -> Vec<Trial> {
    worst_first(fit, counted)
        .into_iter()
        .take(TRIED)
        .filter_map(|without| {
            let rest: Vec<Observation> =
                counted.iter().filter(|i| **i != without).map(|i| group.observations[*i].clone()).collect();
            Some(Trial { without, fit: place_near(group, &rest, fit)? })
        })
        .collect()
}

fn misfits(group: &Group, all_in: &Fit, rest: &Fit, removed: &[usize]) -> Vec<Misfit> {
    let one = |i: &usize| Misfit {
        observation: *i,
        normalised: all_in.normalised[*i].unwrap_or(0.0),
        by: group.observations[*i].residual(&rest.at),
    };
    removed.iter().map(one).collect()
}

/// A reading judged by all the others.
fn alone(group: &Group, all_in: &Fit, everything: &[usize], i: usize) -> Misfit {
    let rest: Vec<Observation> =
        everything.iter().filter(|k| **k != i).map(|k| group.observations[*k].clone()).collect();
    let fit = place_near(group, &rest, all_in);
    let at = fit.as_ref().map_or(&all_in.at, |f| &f.at);
    Misfit { observation: i, normalised: all_in.normalised[i].unwrap_or(0.0), by: group.observations[i].residual(at) }
}
