//! At which value does a quantity that only falls come down to nothing?

/// Where a falling function crosses zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Crossing {
    /// Here.
    At(f64),
    /// It is below zero from the start.
    Before,
    /// It is above zero to the end, or not a number there.
    After,
}

/// Halvings: enough for the last bit of a metre.
const ROUNDS: usize = 60;

/// The crossing of a function that falls between two values; halving keeps the root between them. The function must not rise.
pub(super) fn crossing(from: f64, to: f64, f: impl Fn(f64) -> f64) -> Crossing {
    if f(from) <= 0.0 {
        return Crossing::Before;
    }
    let last = f(to);
    if last > 0.0 || last.is_nan() {
        return Crossing::After;
    }
    let (mut low, mut high) = (from, to);
    for _ in 0..ROUNDS {
        let middle = 0.5 * (low + high);
        if f(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Crossing::At(0.5 * (low + high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crossing_is_found_or_it_is_said_on_which_side_it_lies() {
        let Crossing::At(x) = crossing(0.0, 4.0, |x| 2.0 - x * x) else { panic!("no crossing") };
        assert!((x * x - 2.0).abs() < 1e-12);
        assert_eq!(crossing(2.0, 4.0, |x| 2.0 - x * x), Crossing::Before);
        assert_eq!(crossing(0.0, 1.0, |x| 2.0 - x * x), Crossing::After);
        assert_eq!(crossing(0.0, 1.0, |x| if x > 0.5 { f64::NAN } else { 1.0 }), Crossing::After);
    }
}
