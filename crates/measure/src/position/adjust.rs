//! Which positions fit the readings best? Gauss–Newton with damping on the weighted sum of squares.

use groundhold_quantity::Point;

use super::observation::Observation;
use crate::least_squares::{Cholesky, Equation, UNCHECKED, normals, redundancy_number};

/// Positions that fit best, and how they fit.
#[derive(Debug, Clone)]
pub(super) struct Fit {
    /// The points.
    pub at: Vec<Point>,
    /// Sum of the squared residuals, each over its standard deviation.
    pub misfit: f64,
    /// Variances and covariances of the unknowns by rows, from the stated standard deviations.
    pub covariance: Vec<f64>,
    /// Computed less read, metres.
    pub residuals: Vec<f64>,
    /// Residual over its own standard deviation, `None` where nothing checks the reading.
    pub normalised: Vec<Option<f64>>,
    /// Readings beyond what is needed.
    pub redundancy: usize,
}

impl Fit {
    /// Standard deviation of unit weight; `None` without redundancy.
    pub fn sigma0(&self) -> Option<f64> {
        (self.redundancy > 0).then(|| (self.misfit / self.redundancy as f64).sqrt())
    }
    /// By which the stated standard deviations are stretched: never less than stated, more where the residuals say so.
    pub fn stretch(&self) -> f64 {
        self.sigma0().unwrap_or(1.0).max(1.0)
    }
    /// Standard deviations of a point to the east and to the north, stretched.
    pub fn sigmas(&self, i: usize) -> (f64, f64) {
        let n = 2 * self.at.len();
        let s = |k: usize| self.covariance[k * n + k].max(0.0).sqrt() * self.stretch();
        (s(2 * i), s(2 * i + 1))
    }
    /// Largest normalised residual, 0 where nothing is checked.
    pub fn worst(&self) -> f64 {
        self.normalised.iter().flatten().map(|w| w.abs()).fold(0.0, f64::max)
    }
}

/// Steps shorter than this end the search, metres.
const STILL: f64 = 1e-11;
/// More steps than any survey has needed; the damping then stands and the best so far is taken.
const STEPS: usize = 200;

fn misfit(observations: &[Observation], at: &[Point]) -> f64 {
    observations
        .iter()
        .map(|o| {
            let v = o.residual(at) / o.sigma;
            v * v
        })
        .sum()
}

fn equations(observations: &[Observation], at: &[Point]) -> Vec<Equation> {
    observations.iter().map(|o| o.equation(at)).collect()
}

/// Moves the points from `start` to where the readings fit best.
///
/// # Source
/// Gauss–Newton steps with the damping of Levenberg (Quart. Appl. Math. 2, 1944) and Marquardt (SIAM J. Appl. Math. 11,
/// 1963); from memory.
///
/// # Errors
/// The number of a point that the readings leave free.
pub(super) fn adjust(observations: &[Observation], start: &[Point]) -> Result<Fit, usize> {
    let n = 2 * start.len();
    let mut at = start.to_vec();
    let mut now = misfit(observations, &at);
    let mut damping = 0.0;
    for _ in 0..STEPS {
        let (matrix, right) = normals(n, &equations(observations, &at));
        let Some(step) = damped_step(n, &matrix, &right, damping) else {
            damping = f64::max(damping * 10.0, 1e-6);
            if damping > 1e6 {
                break;
            }
            continue;
        };
        let moved: Vec<Point> =
            at.iter().enumerate().map(|(i, p)| Point::m(p.x + step[2 * i], p.y + step[2 * i + 1])).collect();
        let then = misfit(observations, &moved);
        let longest = step.iter().fold(0.0_f64, |m, s| m.max(s.abs()));
        if then <= now {
            (at, now) = (moved, then);
            damping = if damping < 1e-9 { 0.0 } else { damping / 10.0 };
        } else {
            damping = f64::max(damping * 10.0, 1e-6);
        }
        if longest < STILL || damping > 1e9 {
            break;
        }
    }
    finish(observations, at)
}

fn damped_step(n: usize, matrix: &[f64], right: &[f64], damping: f64) -> Option<Vec<f64>> {
    let mut damped = matrix.to_vec();
    let largest = (0..n).map(|i| matrix[i * n + i]).fold(0.0, f64::max);
    for i in 0..n {
        damped[i * n + i] += damping * largest;
    }
    Some(Cholesky::of(n, &damped).ok()?.solve(right))
}

fn finish(observations: &[Observation], at: Vec<Point>) -> Result<Fit, usize> {
    let n = 2 * at.len();
    let rows = equations(observations, &at);
    let covariance = Cholesky::of(n, &normals(n, &rows).0).map_err(|free| free / 2)?.inverse();
    let residuals: Vec<f64> = observations.iter().map(|o| o.residual(&at)).collect();
    let normalised = rows
        .iter()
        .zip(&residuals)
        .map(|(e, v)| {
            let r = redundancy_number(n, &covariance, e);
            (r > UNCHECKED).then(|| v / (e.sigma * r.sqrt()))
        })
        .collect();
    Ok(Fit {
        misfit: misfit(observations, &at),
        redundancy: observations.len().saturating_sub(n),
        at,
        covariance,
        residuals,
        normalised,
    })
}
