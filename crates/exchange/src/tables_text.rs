//! The tables that a job names, written so that they read back as the same rows.

use groundhold_measure::level_book::Booking;
use groundhold_order::{Measured, Price};
use groundhold_plan::job::{PositionRow, Spot};
use groundhold_quantity::Length;

use crate::grid::line;
use crate::spelled as say;

/// A number of metres, to the millimetre where that is exact.
fn metres(v: f64) -> String {
    let short = format!("{v:.3}");
    if short.parse() == Ok(v) { short } else { format!("{v}") }
}
fn length(l: Option<Length>) -> String {
    l.map_or(String::new(), |l| metres(l.to_m()))
}
/// A spelled quantity without its quotes, as a cell wants it.
fn cell(spelled: Option<String>) -> String {
    spelled.map_or(String::new(), |s| s.trim_matches('"').to_string())
}

fn table<const N: usize>(head: [&str; N], rows: impl Iterator<Item = [String; N]>) -> String {
    let mut out = line(head.into_iter().map(String::from));
    rows.for_each(|r| out.push_str(&line(r.into_iter())));
    out
}

/// The level book.
pub(crate) fn level_book(book: &[Booking]) -> String {
    let rows = book.iter().map(|b| {
        [b.station.clone(), length(b.backsight), length(b.intermediate), length(b.foresight), b.remark.clone()]
    });
    table(["station", "backsight", "intermediate", "foresight", "remark"], rows)
}

/// Offsets and tapes, with one column for each peg in the order in which they first appear.
pub(crate) fn positions(rows: &[PositionRow]) -> String {
    let mut pegs: Vec<&str> = vec![];
    for (peg, _) in rows.iter().flat_map(|r| &r.ties) {
        if !pegs.contains(&peg.as_str()) {
            pegs.push(peg);
        }
    }
    let tapes = pegs.iter().map(|p| format!("from {p}"));
    let head = ["point", "along", "off"].map(String::from).into_iter().chain(tapes).chain(["side".to_string()]);
    let mut out = line(head);
    for r in rows {
        let tape = |peg: &&str| length(r.ties.iter().find(|(p, _)| p == peg).map(|(_, l)| *l));
        let side = r.left.map_or("", |left| if left { "left" } else { "right" });
        let first = [r.point.clone(), length(r.offset.map(|o| o.0)), length(r.offset.map(|o| o.1))];
        out.push_str(&line(first.into_iter().chain(pegs.iter().map(tape)).chain([side.to_string()])));
    }
    out
}

/// Points with position and level.
pub(crate) fn spots(spots: &[Spot]) -> String {
    let rows = spots.iter().map(|s| [s.id.clone(), metres(s.at.x), metres(s.at.y), metres(s.level.to_m())]);
    table(["point", "east", "north", "level"], rows)
}

/// The price list.
pub(crate) fn prices(prices: &[Price]) -> String {
    let head = ["item", "unit", "price", "pack", "mass", "holds", "density", "length", "section", "supplier", "note"];
    let rows = prices.iter().map(|p| {
        [
            p.item.clone(),
            p.unit.word().into(),
            amount(p.price.amount()),
            say::number(p.pack),
            cell(p.mass.map(say::mass)),
            holds(p.holds.as_ref()),
            cell(p.density.map(say::density)),
            cell(p.stock_length.map(say::length)),
            p.section.map_or(String::new(), |(a, b)| say::sizes(a, b)),
            p.supplier.clone(),
            p.note.clone(),
        ]
    });
    table(head, rows)
}

/// To the cent, and finer only where the price is.
fn amount(v: f64) -> String {
    let cents = format!("{v:.2}");
    if cents.parse() == Ok(v) { cents } else { say::number(v) }
}

/// What one unit holds. Pieces and hours are never in a price list.
fn holds(holds: Option<&Measured>) -> String {
    match holds {
        Some(Measured::Count(n)) => say::number(*n),
        Some(Measured::Length(l)) => cell(Some(say::length(*l))),
        Some(Measured::Area(a)) => format!("{} m2", a.to_m2()),
        Some(Measured::Volume(v)) => cell(Some(say::volume(*v))),
        Some(Measured::Mass(m)) => cell(Some(say::mass(*m))),
        Some(Measured::Time(_) | Measured::Pieces(_)) | None => String::new(),
    }
}
