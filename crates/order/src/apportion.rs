//! How is an amount shared out so that the parts add up to it to the cent?

use groundhold_quantity::Money;

/// Shares `total` out by weight, in whole cents where `total` is, so that the parts add up to it exactly.
/// The largest remainders get the odd cents; of equal ones the first. Weights at or below zero get nothing; without
/// any weight the first part gets all.
///
/// # Source
/// Hamilton's method of largest remainders: Balinski and Young, *Fair Representation*, 2nd ed. (2001), chapter 2.
pub(crate) fn share_out(total: Money, weights: &[f64]) -> Vec<Money> {
    let cent = Money::of(0.01);
    let weights: Vec<f64> = weights.iter().map(|w| if w.is_finite() && *w > 0.0 { *w } else { 0.0 }).collect();
    let sum: f64 = weights.iter().sum();
    if weights.is_empty() {
        return vec![];
    }
    let cents = (total.to_cents().amount() * 100.0).round();
    let exact: Vec<f64> = weights.iter().map(|w| if sum > 0.0 { cents * (w / sum) } else { 0.0 }).collect();
    let mut parts: Vec<f64> = exact.iter().map(|x| x.trunc()).collect();
    let mut order: Vec<usize> = (0..weights.len()).filter(|&i| weights[i] > 0.0 || sum == 0.0).collect();
    order.sort_by(|&a, &b| (exact[b] - parts[b]).abs().total_cmp(&(exact[a] - parts[a]).abs()).then(a.cmp(&b)));
    if sum == 0.0 {
        order.truncate(1);
    }
    let mut rest = cents - parts.iter().sum::<f64>();
    let mut turn = 0;
    while rest != 0.0 {
        let give = if sum == 0.0 { rest } else { rest.signum() };
        parts[order[turn % order.len()]] += give;
        rest -= give;
        turn += 1;
    }
    let mut parts: Vec<Money> = parts.into_iter().map(|p| cent * p).collect();
    let odd = total - total.to_cents();
    parts[order[0]] += odd;
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn ten_cents_among_three_is_four_three_three() {
        let parts = share_out(Money::of(0.10), &[1.0, 1.0, 1.0]);
        assert_eq!(parts, [Money::of(0.04), Money::of(0.03), Money::of(0.03)]);
        assert_eq!(share_out(Money::of(5.0), &[0.0, 0.0]), [Money::of(5.0), Money::ZERO]);
        assert_eq!(share_out(Money::of(5.0), &[f64::NAN, 2.0]), [Money::ZERO, Money::of(5.0)]);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn the_parts_add_up(total in -1_000_000i64..1_000_000, w in prop::collection::vec(0.0f64..9.0, 1..9)) {
            let total = Money::of(total as f64 / 1e4);
            let parts = share_out(total, &w);
            prop_assert_eq!(parts.iter().copied().sum::<Money>(), total);
        }
    }
}
