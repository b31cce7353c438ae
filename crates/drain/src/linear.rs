//! Exact integrals of what changes in straight lines between stations.

/// Integral over a stretch of length `run` of a function of values that each change in a straight line from the first
/// to the second of their pair. `f` must itself be linear except where two of the values cross (minimum, maximum):
/// there the stretch is split, so that the trapezoidal rule is exact.
pub(crate) fn integral<const K: usize>(run: f64, ends: [(f64, f64); K], f: impl Fn([f64; K]) -> f64) -> f64 {
    if run <= 0.0 {
        return 0.0;
    }
    let mut cuts = vec![0.0, 1.0];
    for i in 0..K {
        for j in i + 1..K {
            let (first, last) = (ends[i].0 - ends[j].0, ends[i].1 - ends[j].1);
            if first * last < 0.0 {
                cuts.push(first / (first - last));
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    let at = |t: f64| f(std::array::from_fn(|k| ends[k].0 + (ends[k].1 - ends[k].0) * t));
    cuts.windows(2).map(|w| (w[1] - w[0]) * run * 0.5 * (at(w[0]) + at(w[1]))).sum()
}

/// The value at `x` of a line through points in order of their first number; held beyond the ends.
pub(crate) fn along(points: &[(f64, f64)], x: f64) -> f64 {
    match points.iter().position(|p| p.0 >= x) {
        None => points.last().map_or(0.0, |p| p.1),
        Some(0) => points[0].1,
        Some(i) => {
            let ((x0, y0), (x1, y1)) = (points[i - 1], points[i]);
            if x1 > x0 { y0 + (y1 - y0) * (x - x0) / (x1 - x0) } else { y1 }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_triangle_that_is_clipped_at_zero_is_integrated_exactly() {
        let area = integral(4.0, [(-1.0, 1.0), (0.0, 0.0)], |[h, zero]| h.max(zero));
        assert!((area - 1.0).abs() < 1e-12);
        assert_eq!(integral(0.0, [(1.0, 1.0)], |[h]| h), 0.0);
    }

    #[test]
    fn a_line_is_held_beyond_its_ends() {
        let line = [(1.0, 10.0), (3.0, 20.0)];
        assert_eq!([0.0, 2.0, 9.0].map(|x| along(&line, x)), [10.0, 15.0, 20.0]);
    }
}
