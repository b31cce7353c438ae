//! The highest straight-laid pipe line that stays under the wall's base and falls everywhere.

/// A grade line: (distance from the high end, invert level), in order of distance.
pub(crate) type GradeLine = Vec<(f64, f64)>;

/// The highest line under `base` that falls by at least `fall` everywhere and never steepens downstream: the lower
/// hull of the base as far as it is steeper than `fall`, then a straight line at `fall`. `base` holds (distance,
/// level) in order of distance.
pub(crate) fn grade_line(base: &[(f64, f64)], fall: f64) -> GradeLine {
    let mut hull: GradeLine = vec![];
    for &(d, z) in base {
        if hull.last().is_some_and(|l| l.0 >= d) {
            let Some(last) = hull.pop() else { continue };
            push_lower(&mut hull, (last.0, last.1.min(z)));
        } else {
            push_lower(&mut hull, (d, z));
        }
    }
    let Some(&(end, _)) = hull.last() else { return hull };
    let lift = |p: &(f64, f64)| p.1 + fall * p.0;
    let mut tangent = 0;
    for (i, p) in hull.iter().enumerate() {
        if lift(p) < lift(&hull[tangent]) {
            tangent = i;
        }
    }
    hull.truncate(tangent + 1);
    let (d, z) = hull[tangent];
    if d < end {
        hull.push((end, z - fall * (end - d)));
    }
    hull
}

fn push_lower(hull: &mut GradeLine, p: (f64, f64)) {
    while let [.., a, b] = hull.as_slice() {
        let turns = (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0);
        if turns > 0.0 {
            break;
        }
        hull.pop();
    }
    hull.push(p);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::linear::along;
    use proptest::prelude::*;

    #[test]
    fn under_a_level_base_the_pipe_starts_at_the_base_and_falls_evenly() {
        assert_eq!(grade_line(&[(0.0, 10.0), (8.0, 10.0)], 0.01), [(0.0, 10.0), (8.0, 9.92)]);
    }

    #[test]
    fn under_a_stepped_base_the_pipe_runs_through_the_lower_corners() {
        let base = [(0.0, 10.0), (4.0, 10.0), (4.0, 9.8), (8.0, 9.8)];
        let line = grade_line(&base, 0.01);
        assert_eq!(line.len(), 3);
        assert!((line[1].0 - 4.0).abs() < 1e-12 && (line[1].1 - 9.8).abs() < 1e-12);
        assert!((line[2].1 - 9.76).abs() < 1e-12);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn the_pipe_always_falls_and_never_rises_above_the_base(
            levels in proptest::collection::vec(-2.0f64..2.0, 2..12), fall in 0.005f64..0.05,
        ) {
            let base: Vec<_> = levels.iter().enumerate().map(|(i, z)| (i as f64 * 0.7, *z)).collect();
            let line = grade_line(&base, fall);
            for w in line.windows(2) {
                prop_assert!((w[0].1 - w[1].1) >= fall * (w[1].0 - w[0].0) - 1e-12);
            }
            for (d, z) in &base {
                prop_assert!(along(&line, *d) <= z + 1e-9);
            }
        }
    }
}
