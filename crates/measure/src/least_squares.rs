//! Which unknowns fit the readings best? Normal equations and their Cholesky factor, dense and small.

/// A linearised reading: how it grows with each unknown, what is left to explain, and its standard deviation.
pub(crate) struct Equation {
    /// Unknown and derivative, at most a few.
    pub slopes: Vec<(usize, f64)>,
    /// Read minus computed.
    pub left: f64,
    /// Standard deviation of the reading.
    pub sigma: f64,
}

/// Pivots below this share of the largest diagonal element count as zero: the readings leave that unknown free.
const FREE: f64 = 1e-11;

/// The factor L of a symmetric positive definite matrix, L·Lᵀ, stored by rows.
pub(crate) struct Cholesky {
    n: usize,
    l: Vec<f64>,
}

/// Normal matrix (by rows) and right-hand side of weighted equations.
pub(crate) fn normals(n: usize, equations: &[Equation]) -> (Vec<f64>, Vec<f64>) {
    let (mut matrix, mut right) = (vec![0.0; n * n], vec![0.0; n]);
    for e in equations {
        let w = 1.0 / (e.sigma * e.sigma);
        for (i, a) in &e.slopes {
            right[*i] += a * w * e.left;
            for (j, b) in &e.slopes {
                matrix[i * n + j] += a * w * b;
            }
        }
    }
    (matrix, right)
}

impl Cholesky {
    /// Factors the matrix; the number of the first free unknown where it is singular.
    pub fn of(n: usize, matrix: &[f64]) -> Result<Cholesky, usize> {
        let largest = (0..n).map(|i| matrix[i * n + i]).fold(0.0, f64::max);
        let mut l = vec![0.0; n * n];
        for i in 0..n {
            for j in 0..=i {
                let dot: f64 = (0..j).map(|k| l[i * n + k] * l[j * n + k]).sum();
                let rest = matrix[i * n + j] - dot;
                if i > j {
                    l[i * n + j] = rest / l[j * n + j];
                } else if rest > FREE * largest {
                    l[i * n + i] = rest.sqrt();
                } else {
                    return Err(i);
                }
            }
        }
        Ok(Cholesky { n, l })
    }

    /// Solves for one right-hand side.
    pub fn solve(&self, right: &[f64]) -> Vec<f64> {
        let (n, l) = (self.n, &self.l);
        let mut x = right.to_vec();
        for i in 0..n {
            let dot: f64 = (0..i).map(|k| l[i * n + k] * x[k]).sum();
            x[i] = (x[i] - dot) / l[i * n + i];
        }
        for i in (0..n).rev() {
            let dot: f64 = (i + 1..n).map(|k| l[k * n + i] * x[k]).sum();
            x[i] = (x[i] - dot) / l[i * n + i];
        }
        x
    }

    /// The inverse: variances and covariances of the unknowns for readings of unit weight, by rows.
    pub fn inverse(&self) -> Vec<f64> {
        let n = self.n;
        let mut q = vec![0.0; n * n];
        for i in 0..n {
            let mut unit = vec![0.0; n];
            unit[i] = 1.0;
            for (j, v) in self.solve(&unit).into_iter().enumerate() {
                q[j * n + i] = v;
            }
        }
        q
    }
}

/// The share of a reading's error that shows in its own residual: 0 where nothing checks it, 1 where all the others do.
pub(crate) fn redundancy_number(n: usize, q: &[f64], e: &Equation) -> f64 {
    let explained: f64 =
        e.slopes.iter().map(|(i, a)| e.slopes.iter().map(|(j, b)| a * q[i * n + j] * b).sum::<f64>()).sum();
    (1.0 - explained / (e.sigma * e.sigma)).clamp(0.0, 1.0)
}

/// A redundancy number below this says that nothing checks the reading.
pub(crate) const UNCHECKED: f64 = 1e-6;

/// Largest normalised residual of a reading that fits: an error level of 0.001 on both sides.
///
/// # Source
/// Baarda, A testing procedure for use in geodetic networks, Netherlands Geodetic Commission, Publ. on Geodesy 2(5),
/// 1968 (from memory).
pub(crate) const FITS: f64 = 3.29;

#[cfg(test)]
mod tests {
    use super::*;

    fn equation(slopes: &[(usize, f64)], left: f64) -> Equation {
        Equation { slopes: slopes.to_vec(), left, sigma: 1.0 }
    }

    #[test]
    fn a_straight_line_through_three_points_is_the_one_of_the_textbook() {
        // y = a + b·x through (0, 1), (1, 2), (2, 4): a = 5/6, b = 3/2.
        let rows: Vec<_> = [(0.0, 1.0), (1.0, 2.0), (2.0, 4.0)].map(|(x, y)| equation(&[(0, 1.0), (1, x)], y)).into();
        let (m, r) = normals(2, &rows);
        let x = Cholesky::of(2, &m).ok().unwrap().solve(&r);
        assert!((x[0] - 5.0 / 6.0).abs() < 1e-12 && (x[1] - 1.5).abs() < 1e-12, "{x:?}");
    }

    #[test]
    fn redundancy_numbers_add_up_to_the_redundancy() {
        let rows: Vec<_> = [0.0, 1.0, 2.0, 5.0].map(|x| equation(&[(0, 1.0), (1, x)], 0.0)).into();
        let q = Cholesky::of(2, &normals(2, &rows).0).ok().unwrap().inverse();
        let sum: f64 = rows.iter().map(|e| redundancy_number(2, &q, e)).sum();
        assert!((sum - 2.0).abs() < 1e-12, "{sum}");
    }

    #[test]
    fn an_unknown_that_no_reading_touches_is_named() {
        let (m, _) = normals(2, &[equation(&[(0, 1.0)], 0.0)]);
        assert_eq!(Cholesky::of(2, &m).err(), Some(1));
    }
}
