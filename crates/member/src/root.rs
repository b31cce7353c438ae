//! Where does a quantity that only grows first reach zero?

/// A root is known when its bracket is no wider than this share of it: the last few bits of a number.
const TIGHT: f64 = 8.0 * f64::EPSILON;
/// No bracket of this crate needs more; halving alone would be through after 80.
const MOST_ROUNDS: usize = 200;

/// The least `x` from `least` to `most` at which `f`, continuous and growing, is no longer below zero. The answer itself
/// is never below zero. The bracket starts `step` wide and doubles. `None` where `f` is still below zero at `most`.
pub(crate) fn first_reach(least: f64, most: f64, step: f64, f: impl Fn(f64) -> f64) -> Option<f64> {
    let (mut low, mut f_low) = (least, f(least));
    if 0.0 <= f_low {
        return Some(least);
    }
    let mut width = step;
    loop {
        let high = (low + width).min(most);
        let f_high = f(high);
        if 0.0 <= f_high {
            return Some(within((low, f_low), (high, f_high), f));
        }
        if most <= high || f_high.is_nan() {
            return None;
        }
        (low, f_low, width) = (high, f_high, width * 2.0);
    }
}

/// A root between a point below zero and one that is not, by inverse quadratic interpolation where that is sound and by
/// halving where not: Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function
/// without using derivatives, Advances in Engineering Software 28 (1997) 145-149. Gives the end that is not below zero.
fn within(below: (f64, f64), above: (f64, f64), f: impl Fn(f64) -> f64) -> f64 {
    let ((mut a, mut fa), (mut b, mut fb)) = (above, below);
    let mut share = fa / (fa - fb);
    for _ in 0..MOST_ROUNDS {
        let x = a + share * (b - a);
        let fx = f(x);
        let (c, fc);
        if (0.0 <= fx) == (0.0 <= fa) {
            (c, fc) = (a, fa);
        } else {
            (c, fc) = (b, fb);
            (b, fb) = (a, fa);
        }
        (a, fa) = (x, fx);
        let nearest = (TIGHT * a.abs().max(b.abs())).max(f64::MIN_POSITIVE) / (b - a).abs();
        if fa == 0.0 || 0.5 <= nearest || !fx.is_finite() {
            break;
        }
        let (xi, phi) = ((a - b) / (c - b), (fa - fb) / (fc - fb));
        let sound = phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi;
        share = if sound {
            fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
        } else {
            0.5
        };
        share = share.clamp(nearest, 1.0 - nearest);
    }
    if 0.0 <= fa { a } else { b }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;

    use super::first_reach;

    #[test]
    fn the_answer_is_enough_and_a_hair_less_is_not() {
        let root = first_reach(0.0, 10.0, 1.0, |x| x * x - 2.0).unwrap();
        assert!(2.0 <= root * root && (root - 2f64.sqrt()).abs() < 1e-14);
        assert_eq!(first_reach(0.0, 1.0, 0.5, |x| x * x - 2.0), None);
        assert_eq!(first_reach(3.0, 4.0, 0.5, |x| x * x - 2.0), Some(3.0));
        assert_eq!(first_reach(0.0, 1.0, 0.5, |_| f64::NAN), None);
    }

    #[test]
    fn a_cubic_a_flat_start_and_a_kink_are_found_in_few_looks() {
        let power = |x: f64, times: usize| (0..times).map(|_| x).product::<f64>();
        for (times, target) in [(1, 3.0), (3, 5.0), (7, 0.01)] {
            let looks = Cell::new(0);
            let f = |x: f64| {
                looks.set(looks.get() + 1);
                power(x.max(0.3) - 0.3, times) - target
            };
            let root = first_reach(0.0, 30.0, 0.5, f).unwrap();
            assert!((power(root - 0.3, times) / target - 1.0).abs() < 1e-12, "{root}");
            assert!(looks.get() < 30, "{}", looks.get());
        }
    }
}
