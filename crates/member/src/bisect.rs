//! Where does a quantity that only grows first reach what is wanted?

/// The least `x` between `least` and `most` for which `enough(x)` is true, where `enough` turns from false to true once.
/// The answer itself is always enough. `None` where even `most` is not.
pub(crate) fn least_enough(least: f64, most: f64, enough: impl Fn(f64) -> bool) -> Option<f64> {
    if enough(least) {
        return Some(least);
    }
    if !enough(most) {
        return None;
    }
    let (mut short, mut long) = (least, most);
    // 80 halvings take any interval of this crate below the spacing of its numbers.
    for _ in 0..80 {
        let middle = short + (long - short) / 2.0;
        if middle <= short || long <= middle {
            break;
        }
        if enough(middle) {
            long = middle;
        } else {
            short = middle;
        }
    }
    Some(long)
}

#[cfg(test)]
mod tests {
    use super::least_enough;

    #[test]
    fn the_answer_is_enough_and_a_hair_less_is_not() {
        let root = least_enough(0.0, 10.0, |x| 2.0 <= x * x).unwrap();
        assert!(2.0 <= root * root && (root - 2f64.sqrt()).abs() < 1e-12);
        assert_eq!(least_enough(0.0, 1.0, |x| 2.0 <= x * x), None);
        assert_eq!(least_enough(3.0, 4.0, |x| 2.0 <= x * x), Some(3.0));
    }
}
