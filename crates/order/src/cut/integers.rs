//! How does the job look in whole numbers: hundredths of a millimetre, and one cost that holds price and stock length?

use groundhold_quantity::{Length, Money};

use super::{Demand, Saw, Stock};

/// A length in hundredths of a millimetre, finer than any saw.
pub(crate) fn to_units(l: Length) -> i64 {
    (l.to_mm() * 100.0).round() as i64
}

/// A bar may be overrun by a tenth of a millimetre: sums of rounded lengths, not of wood.
const FORGIVEN: i64 = 10;

/// Kinds of piece, kinds of bar. Pieces longest first, bars longest first.
#[derive(Debug, Clone)]
pub(super) struct Problem {
    /// Length of each kind of piece and a saw cut.
    pub weight: Vec<i64>,
    /// How many of each.
    pub demand: Vec<u16>,
    /// What each kind of bar takes, a saw cut more than its length.
    pub space: Vec<i64>,
    /// Cost of each kind of bar: price first, then length, in one whole number.
    pub cost: Vec<i64>,
    /// How many there are of each; `u32::MAX` for no limit.
    pub supply: Vec<u32>,
    /// Every cost, and so every sum of them, is a multiple of this.
    pub step: i64,
    /// One step of price in `cost`.
    pub per_price: i64,
    /// One step of price in ten-thousandths of the currency.
    pub price_step: i64,
}

/// No limit to the supply.
pub(super) const ENOUGH: u32 = u32::MAX;

impl Problem {
    /// From checked demands and stock, both longest first.
    pub fn new(wanted: &[&Demand], had: &[&Stock], saw: &Saw) -> Problem {
        let kerf = to_units(saw.kerf);
        let (mut weight, mut demand): (Vec<i64>, Vec<u16>) = (vec![], vec![]);
        for d in wanted {
            let w = to_units(d.length) + kerf;
            if weight.last() != Some(&w) {
                weight.push(w);
                demand.push(0);
            }
            if let Some(last) = demand.last_mut() {
                *last += d.count as u16;
            }
        }
        let pieces: i64 = demand.iter().map(|&d| i64::from(d)).sum();
        let prices: Vec<i64> = had.iter().map(|s| (s.price.amount() * 1e4).round() as i64).collect();
        let lengths: Vec<i64> = had.iter().map(|s| s.length.to_mm().ceil() as i64).collect();
        let (price_step, length_step) = (divisor(&prices), divisor(&lengths));
        let per_price = 1 + pieces * lengths.iter().map(|l| l / length_step).max().unwrap_or(0);
        let cost: Vec<i64> =
            prices.iter().zip(&lengths).map(|(p, l)| p / price_step * per_price + l / length_step).collect();
        Problem {
            space: had.iter().map(|s| to_units(s.length - saw.trim) + kerf + FORGIVEN).collect(),
            supply: had.iter().map(|s| s.supply.unwrap_or(ENOUGH)).collect(),
            step: divisor(&cost),
            weight,
            demand,
            cost,
            per_price,
            price_step,
        }
    }
    /// Which kind of piece a length is.
    pub fn item_of(&self, length: Length, saw: &Saw) -> usize {
        let w = to_units(length) + to_units(saw.kerf);
        self.weight.iter().position(|&x| x == w).unwrap_or(0)
    }
    /// The price within a cost, rounded down: no list of at least this cost has a lower price.
    pub fn money(&self, cost: i64) -> Money {
        Money::of((cost / self.per_price * self.price_step) as f64 / 1e4)
    }
}

/// Greatest common divisor of all; 1 where all are zero.
fn divisor(values: &[i64]) -> i64 {
    fn two(a: i64, b: i64) -> i64 {
        if b == 0 { a } else { two(b, a % b) }
    }
    values.iter().fold(0, |d, &v| two(d, v.abs())).max(1)
}

/// One way of filling one kind of bar.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Column {
    /// The kind of bar.
    pub stock: usize,
    /// How many of each kind of piece.
    pub counts: Vec<u16>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prices_in_proportion_to_length_leave_a_coarse_step() {
        let stock =
            |m: f64| Stock { material: "b".into(), length: Length::m(m), price: Money::of(m * 8.0), supply: None };
        let stock = [stock(3.6), stock(2.4)];
        let want = [Demand {
            material: "b".into(),
            element: String::new(),
            mark: "1".into(),
            length: Length::m(1.0),
            count: 3,
        }];
        let p = Problem::new(&[&want[0]], &[&stock[0], &stock[1]], &Saw::default());
        assert_eq!(p.per_price, 1 + 3 * 3);
        assert_eq!(p.cost, [3 * 10 + 3, 2 * 10 + 2]);
        assert_eq!(p.step, 11);
        assert_eq!(p.money(55), Money::of(5.0 * 9.6));
    }
}
