//! What is bought, and what does all of it cost?

use groundhold_plan::Plan;
use groundhold_quantity::Money;

use crate::grid::{Cell, Grid, column};

/// A column of money: the currency stands last in its name.
fn money(plan: &Plan, name: &str) -> String {
    match plan.job.about.currency.0.to_lowercase() {
        code if code.is_empty() => name.into(),
        code => format!("{name}_{code}"),
    }
}

/// Decimals of prices: to the cent, and finer only where a price is.
fn finest(rates: impl Iterator<Item = Option<Money>>) -> usize {
    if rates.flatten().all(|r| r.to_cents() == r) { 2 } else { 4 }
}

/// The order, line by line.
pub(crate) fn order(plan: &Plan) -> Grid {
    let columns = [
        ("head", 0),
        ("item", 0),
        ("stock_length_m", 3),
        ("what", 0),
        ("unit", 0),
        ("net", 2),
        ("waste", 2),
        ("gross", 2),
        ("on_hand", 2),
        ("packs", 0),
        ("bought", 2),
    ];
    let mut grid = Grid::new("order", &columns);
    let rate = finest(plan.take_off.lines.iter().map(|l| l.rate));
    let more = [(money(plan, "rate"), rate), (money(plan, "amount"), 2), ("mass_kg".into(), 1), ("supplier".into(), 0)];
    grid.columns.extend(more.into_iter().map(|(name, decimals)| column(name, decimals)));
    for l in &plan.take_off.lines {
        grid.rows.push(vec![
            l.head.word().into(),
            (&l.item).into(),
            l.stock_length.into(),
            (&l.what).into(),
            l.unit.word().into(),
            l.net.into(),
            l.waste.into(),
            l.gross.into(),
            l.on_hand.into(),
            l.packs.into(),
            l.bought.into(),
            l.rate.into(),
            l.amount.into(),
            l.mass.into(),
            (&l.supplier).into(),
        ]);
    }
    grid
}

/// The sums under a quote: what it is called, its share of the sum above where it is one, and the amount.
pub(crate) fn sums(plan: &Plan) -> [(&'static str, Option<f64>, Money); 6] {
    let q = &plan.quote;
    [
        ("net", None, q.net),
        ("overhead", Some(q.terms.overhead.to_fraction()), q.overhead),
        ("margin", Some(q.terms.margin.to_fraction()), q.margin),
        ("before tax", None, q.before_tax),
        ("tax", Some(q.terms.tax.to_fraction()), q.tax),
        ("total", None, q.total),
    ]
}

/// The quote without its sums.
pub(crate) fn quote_lines(plan: &Plan) -> Grid {
    let columns = [("head", 0), ("item", 0), ("stock_length_m", 3), ("what", 0), ("quantity", 2), ("unit", 0)];
    let mut grid = Grid::new("quote", &columns);
    let rate = finest(plan.quote.lines.iter().map(|l| l.rate));
    grid.columns.extend([column(money(plan, "rate"), rate), column(money(plan, "amount"), 2)]);
    for l in &plan.quote.lines {
        grid.rows.push(vec![
            l.head.word().into(),
            (&l.item).into(),
            l.stock_length.into(),
            (&l.what).into(),
            l.quantity.into(),
            l.unit.word().into(),
            l.rate.into(),
            l.amount.into(),
        ]);
    }
    grid
}

/// The quote with its sums.
pub(crate) fn quote(plan: &Plan) -> Grid {
    let mut grid = quote_lines(plan);
    for (name, share, amount) in sums(plan) {
        let what = share.map(|s| format!("{} %", groundhold_quantity::trim(s * 100.0, 2)));
        let mut row = vec![Cell::from("Sum"), name.into(), Cell::Empty, what.into()];
        row.extend([Cell::Empty, Cell::Empty, Cell::Empty, amount.into()]);
        grid.rows.push(row);
    }
    grid
}
