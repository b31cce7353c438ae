//! What does it cost in all, and how do two ways of doing it compare?

use std::collections::BTreeMap;

use groundhold_quantity::{Length, Money, Share};

use crate::{Head, Line, SoldBy, apportion::share_out, stores::length_key};

/// What is added to the net sum.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Terms {
    /// Overhead, a share of the net sum.
    pub overhead: Share,
    /// Margin for profit and risk, added on net sum and overhead (a mark-up, not a share of the price).
    pub margin: Share,
    /// Tax on all of it.
    pub tax: Share,
}

/// One line of a quote.
#[derive(Debug, Clone, PartialEq)]
pub struct QuoteLine {
    /// Under which head.
    pub head: Head,
    /// The item.
    pub item: String,
    /// Length of the bars, where it is sold so.
    pub stock_length: Option<Length>,
    /// What it is for.
    pub what: String,
    /// How many units.
    pub quantity: f64,
    /// The unit.
    pub unit: SoldBy,
    /// Price of one.
    pub rate: Option<Money>,
    /// To the cent; `None` where a price is missing.
    pub amount: Option<Money>,
    /// The amount by element; what is left of it counts for the whole job.
    pub elements: Vec<(String, Money)>,
}

impl From<&Line> for QuoteLine {
    fn from(l: &Line) -> QuoteLine {
        QuoteLine {
            head: l.head,
            item: l.item.clone(),
            stock_length: l.stock_length,
            what: l.what.clone(),
            quantity: if l.amount.is_some() { l.bought } else { l.gross },
            unit: l.unit,
            rate: l.rate,
            amount: l.amount,
            elements: l.elements.clone(),
        }
    }
}

impl QuoteLine {
    /// A lump sum: a provisional sum, a fee, a delivery at a fixed price.
    pub fn lump(head: Head, item: &str, element: &str, amount: Money) -> QuoteLine {
        let amount = amount.to_cents();
        QuoteLine {
            head,
            item: item.into(),
            stock_length: None,
            what: String::new(),
            quantity: 1.0,
            unit: SoldBy::Sum,
            rate: Some(amount),
            amount: Some(amount),
            elements: vec![(element.into(), amount)],
        }
    }
}

/// What one element costs.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its id; empty for the whole job.
    pub element: String,
    /// Its lines.
    pub net: Money,
    /// With its share of overhead, margin and tax.
    pub total: Money,
}

/// A quote. All sums are exact to the cent.
#[derive(Debug, Clone, PartialEq)]
pub struct Quote {
    /// The lines, by head, item and stock length.
    pub lines: Vec<QuoteLine>,
    /// Sum of the lines by head, every head that has a line.
    pub heads: Vec<(Head, Money)>,
    /// Sum of the lines.
    pub net: Money,
    /// Overhead on it.
    pub overhead: Money,
    /// Margin on both.
    pub margin: Money,
    /// All of that.
    pub before_tax: Money,
    /// Tax on it.
    pub tax: Money,
    /// What is paid.
    pub total: Money,
    /// By element; nets add up to `net`, totals to `total`.
    pub parts: Vec<Part>,
    /// Items without a price. Not empty means the quote is incomplete.
    pub missing: Vec<String>,
    /// The terms.
    pub terms: Terms,
}

impl Quote {
    /// True where every line has a price.
    pub fn is_complete(&self) -> bool {
        self.missing.is_empty()
    }
}

/// Adds up the lines. Their order does not matter.
pub fn quote(mut lines: Vec<QuoteLine>, terms: &Terms) -> Quote {
    lines.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| (&a.what, a.amount).cmp(&(&b.what, b.amount))));
    for l in &mut lines {
        l.amount = l.amount.map(Money::to_cents);
    }
    let mut heads: BTreeMap<Head, Money> = BTreeMap::new();
    let mut nets: BTreeMap<String, Money> = BTreeMap::new();
    for l in &lines {
        let amount = l.amount.unwrap_or(Money::ZERO);
        *heads.entry(l.head).or_default() += amount;
        let mut rest = amount;
        for (element, part) in l.elements.iter().filter(|_| l.amount.is_some()) {
            *nets.entry(element.clone()).or_default() += *part;
            rest = rest - *part;
        }
        if rest != Money::ZERO || (l.elements.is_empty() && l.amount.is_some()) {
            *nets.entry(String::new()).or_default() += rest;
        }
    }
    let share = |m: Money, s: Share| (m * s.to_fraction()).to_cents();
    let net: Money = heads.values().copied().sum();
    let overhead = share(net, terms.overhead);
    let margin = share(net + overhead, terms.margin);
    let before_tax = net + overhead + margin;
    let tax = share(before_tax, terms.tax);
    let total = before_tax + tax;
    let mut missing: Vec<String> = lines.iter().filter(|l| l.amount.is_none()).map(|l| l.item.clone()).collect();
    missing.dedup();
    Quote {
        parts: parts(nets, total),
        heads: heads.into_iter().collect(),
        lines,
        net,
        overhead,
        margin,
        before_tax,
        tax,
        total,
        missing,
        terms: *terms,
    }
}

fn parts(nets: BTreeMap<String, Money>, total: Money) -> Vec<Part> {
    let weights: Vec<f64> = nets.values().map(|m| m.amount()).collect();
    let totals = share_out(total, &weights);
    nets.into_iter().zip(totals).map(|((element, net), total)| Part { element, net, total }).collect()
}

type Key = (Head, String, i64);

fn key(l: &QuoteLine) -> Key {
    (l.head, l.item.clone(), -length_key(l.stock_length))
}

/// One line on one side of a comparison.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Side {
    /// How many units.
    pub quantity: f64,
    /// The unit.
    pub unit: SoldBy,
    /// To the cent; `None` where the price is missing.
    pub amount: Option<Money>,
}

/// What differs between two quotes in one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// The head; `None` for overhead, margin and tax.
    pub head: Option<Head>,
    /// The item, or "overhead", "margin", "tax".
    pub item: String,
    /// Length of the bars, where it is sold so.
    pub stock_length: Option<Length>,
    /// In the first quote.
    pub before: Option<Side>,
    /// In the second.
    pub after: Option<Side>,
    /// Second less first; what has no price counts as nothing.
    pub difference: Money,
}

/// Lays two quotes side by side, line by line; only what differs. The differences add up to that of the totals.
pub fn compare(a: &Quote, b: &Quote) -> Vec<Change> {
    let (before, after) = (sides(a), sides(b));
    let mut keys: Vec<&Key> = before.keys().chain(after.keys()).collect();
    keys.sort();
    keys.dedup();
    let mut changes: Vec<Change> = keys.into_iter().filter_map(|k| change(k, before.get(k), after.get(k))).collect();
    for (item, x, y) in [("overhead", a.overhead, b.overhead), ("margin", a.margin, b.margin), ("tax", a.tax, b.tax)] {
        if x != y {
            let side = |m: Money| Some(Side { quantity: 1.0, unit: SoldBy::Sum, amount: Some(m) });
            changes.push(Change {
                head: None,
                item: item.into(),
                stock_length: None,
                before: side(x),
                after: side(y),
                difference: y - x,
            });
        }
    }
    changes
}

fn sides(q: &Quote) -> BTreeMap<Key, (Side, Option<Length>)> {
    let mut all: BTreeMap<Key, (Side, Option<Length>)> = BTreeMap::new();
    for l in &q.lines {
        let side = Side { quantity: l.quantity, unit: l.unit, amount: l.amount };
        all.entry(key(l))
            .and_modify(|(s, _)| {
                s.quantity += side.quantity;
                s.amount = s.amount.zip(side.amount).map(|(x, y)| x + y).or(s.amount).or(side.amount);
            })
            .or_insert((side, l.stock_length));
    }
    all
}

fn change(k: &Key, before: Option<&(Side, Option<Length>)>, after: Option<&(Side, Option<Length>)>) -> Option<Change> {
    if before == after {
        return None;
    }
    let money = |s: Option<&(Side, Option<Length>)>| s.and_then(|(s, _)| s.amount).unwrap_or(Money::ZERO);
    Some(Change {
        head: Some(k.0),
        item: k.1.clone(),
        stock_length: before.or(after).and_then(|(_, l)| *l),
        before: before.map(|(s, _)| *s),
        after: after.map(|(s, _)| *s),
        difference: money(after) - money(before),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn line(item: &str, element: &str, amount: f64) -> QuoteLine {
        QuoteLine::lump(Head::Materials, item, element, Money::of(amount))
    }

    #[test]
    fn a_line_without_a_price_makes_the_quote_incomplete_and_adds_nothing() {
        let open = QuoteLine { amount: None, rate: None, ..line("pipe", "W1", 9.0) };
        let q = quote(vec![line("stone", "W1", 100.0), open], &Terms::default());
        assert_eq!(
            (q.total, q.missing.as_slice(), q.is_complete()),
            (Money::of(100.0), &["pipe".to_string()][..], false)
        );
    }

    #[test]
    fn overhead_margin_and_tax_stand_on_each_other() {
        let terms = Terms { overhead: Share::percent(10.0), margin: Share::percent(12.0), tax: Share::percent(21.0) };
        let q = quote(vec![line("stone", "W1", 1000.0)], &terms);
        assert_eq!((q.overhead, q.margin, q.tax), (Money::of(100.0), Money::of(132.0), Money::of(258.72)));
        assert_eq!(q.total, Money::of(1490.72));
    }

    fn lines() -> impl Strategy<Value = Vec<QuoteLine>> {
        prop::collection::vec((0u8..6, 0u8..4, 0i64..500_000, 0u8..3), 0..12).prop_map(|rows| {
            let of = |(item, element, cents, head): (u8, u8, i64, u8)| QuoteLine {
                head: Head::ALL[head as usize],
                ..line(&format!("item {item}"), &format!("W{element}"), cents as f64 / 100.0)
            };
            rows.into_iter().map(of).collect()
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn elements_heads_and_changes_add_up_to_the_cent(
            a in lines(), b in lines(), o in 0.0f64..20.0, m in 0.0f64..30.0, t in 0.0f64..25.0,
        ) {
            let terms = Terms { overhead: Share::percent(o), margin: Share::percent(m), tax: Share::percent(t) };
            let mut turned = a.clone();
            turned.reverse();
            let (qa, qb) = (quote(a, &terms), quote(b, &terms));
            prop_assert_eq!(quote(turned, &terms), qa.clone());
            prop_assert_eq!(qa.heads.iter().map(|h| h.1).sum::<Money>(), qa.net);
            prop_assert_eq!(qa.parts.iter().map(|p| p.net).sum::<Money>(), qa.net);
            if !qa.parts.is_empty() {
                prop_assert_eq!(qa.parts.iter().map(|p| p.total).sum::<Money>(), qa.total);
            }
            prop_assert_eq!(qa.net + qa.overhead + qa.margin + qa.tax, qa.total);
            let difference: Money = compare(&qa, &qb).iter().map(|c| c.difference).sum();
            prop_assert_eq!(difference, qb.total - qa.total);
            prop_assert!(compare(&qa, &qa).is_empty());
        }
    }
}
