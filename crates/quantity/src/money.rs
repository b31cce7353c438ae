//! Money, exact to a hundredth of a cent, so that sums agree with the bill.

use std::ops::{Add, AddAssign, Mul, Neg, Sub};

/// An amount in ten-thousandths of the currency's unit. The currency is the job's and is not carried along.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Hash)]
pub struct Money(i64);

/// A currency, by its ISO 4217 code.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Currency(pub String);

impl Money {
    /// Nothing.
    pub const ZERO: Money = Money(0);
    /// From the currency's unit, rounded half away from zero to a ten-thousandth. Out of range gives the nearest end.
    pub fn of(amount: f64) -> Money {
        Money((amount * 1e4).round() as i64)
    }
    /// In the currency's unit.
    pub fn amount(self) -> f64 {
        self.0 as f64 / 1e4
    }
    /// Rounded half away from zero to a hundredth: what a bill shows.
    pub fn to_cents(self) -> Money {
        let half = if self.0 < 0 { -50 } else { 50 };
        Money((self.0.saturating_add(half)) / 100 * 100)
    }
    /// With two decimals and groups of three: `1 234.50`.
    pub fn shown(self) -> String {
        let cents = self.to_cents().0 / 100;
        let whole = (cents / 100).unsigned_abs().to_string();
        let mut grouped = String::new();
        for (i, c) in whole.chars().enumerate() {
            if i > 0 && (whole.len() - i).is_multiple_of(3) {
                grouped.push('\u{202f}');
            }
            grouped.push(c);
        }
        format!("{}{}.{:02}", if cents < 0 { "−" } else { "" }, grouped, cents.unsigned_abs() % 100)
    }
}

impl Add for Money {
    type Output = Money;
    fn add(self, o: Money) -> Money {
        Money(self.0.saturating_add(o.0))
    }
}
impl AddAssign for Money {
    fn add_assign(&mut self, o: Money) {
        *self = *self + o;
    }
}
impl Sub for Money {
    type Output = Money;
    fn sub(self, o: Money) -> Money {
        Money(self.0.saturating_sub(o.0))
    }
}
impl Neg for Money {
    type Output = Money;
    fn neg(self) -> Money {
        Money(-self.0)
    }
}
impl Mul<f64> for Money {
    type Output = Money;
    fn mul(self, k: f64) -> Money {
        Money((self.0 as f64 * k).round() as i64)
    }
}
impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Money>>(it: I) -> Money {
        it.fold(Money::ZERO, |a, b| a + b)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_is_grouped_and_keeps_its_sign() {
        assert_eq!(Money::of(-1234567.005).shown(), "−1\u{202f}234\u{202f}567.01");
        assert_eq!(Money::of(0.004).shown(), "0.00");
    }
}
