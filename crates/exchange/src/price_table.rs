//! The price list: item, unit, price, pack, mass, what one unit holds, density, stock length, section, supplier, note.

use groundhold_order::{Measured, Price, SoldBy};
use groundhold_quantity::{Area, Density, Length, Mass, Money, Quantity, Volume, parse};

use crate::tables::{Row, Rows, Table};

/// Dearest price that is taken for a price and not for a slip.
const DEAREST: f64 = 1e7;

/// Reads a price list.
pub fn prices(file: &str, text: &str) -> Rows<Price> {
    let known = ["item", "unit", "price", "pack", "mass", "holds", "density", "length", "section", "supplier", "note"];
    let mut table = Table::read(file, text, &known[..3], &|c| known.contains(&c), &known);
    let rows = std::mem::take(&mut table.rows);
    let list = rows.iter().filter_map(|row| price(&mut table, row)).collect();
    (list, table.problems)
}

fn price(table: &mut Table, row: &Row) -> Option<Price> {
    let before = table.problems.len();
    let item = table.cell(row, "item").to_string();
    if item.is_empty() {
        table.complain_of(row, "item", "it is empty; what is it the price of?");
    }
    let unit = SoldBy::parse(table.cell(row, "unit"));
    if let Err(e) = &unit {
        table.complain_of(row, "unit", e);
    }
    let amount = number(table, row, "price", 0.0, DEAREST);
    if amount.is_none() && table.cell(row, "price").is_empty() {
        table.complain_of(row, "price", format!("`{item}` has no price; leave the row out until there is one"));
    }
    let pack = number(table, row, "pack", 1e-6, 1e6).unwrap_or(1.0);
    let price = Price {
        mass: quantity::<Mass>(table, row, "mass"),
        holds: holds(table, row),
        density: quantity::<Density>(table, row, "density"),
        stock_length: quantity::<Length>(table, row, "length").filter(|l| *l > Length::ZERO),
        section: section(table, row),
        supplier: table.cell(row, "supplier").to_string(),
        note: table.cell(row, "note").to_string(),
        item,
        unit: unit.ok()?,
        price: Money::of(amount?),
        pack,
    };
    (table.problems.len() == before).then_some(price)
}

fn number(table: &mut Table, row: &Row, name: &str, least: f64, most: f64) -> Option<f64> {
    let text = table.cell(row, name).to_string();
    if text.is_empty() {
        return None;
    }
    match text.parse::<f64>() {
        Ok(v) if (least..=most).contains(&v) => Some(v),
        Ok(_) => {
            table.complain_of(row, name, format!("found {text}, expected from {least} to {most}"));
            None
        }
        Err(_) => {
            table.complain_of(row, name, format!("found `{text}`, expected a number such as 19.80"));
            None
        }
    }
}

fn quantity<Q: Quantity>(table: &mut Table, row: &Row, name: &str) -> Option<Q> {
    let text = table.cell(row, name).to_string();
    if text.is_empty() {
        return None;
    }
    match parse::<Q>(&text) {
        Ok(q) if q.in_si() >= 0.0 => Some(q),
        Ok(_) => {
            table.complain_of(row, name, format!("found {text}, expected no less than nothing"));
            None
        }
        Err(e) => {
            table.complain_of(row, name, e);
            None
        }
    }
}

fn holds(table: &mut Table, row: &Row) -> Option<Measured> {
    let text = table.cell(row, "holds").to_string();
    if text.is_empty() {
        return None;
    }
    let read = parse::<Volume>(&text)
        .map(Measured::Volume)
        .or_else(|_| parse::<Area>(&text).map(Measured::Area))
        .or_else(|_| parse::<Length>(&text).map(Measured::Length))
        .or_else(|_| parse::<Mass>(&text).map(Measured::Mass))
        .ok()
        .or_else(|| text.parse::<f64>().ok().filter(|v| *v > 0.0).map(Measured::Count));
    if read.is_none() {
        let says =
            format!("found `{text}`, expected what one unit holds: 9.3 l, 100 m2, 25 m, 20 kg or a number of pieces");
        table.complain_of(row, "holds", says);
    }
    read
}

fn section(table: &mut Table, row: &Row) -> Option<(Length, Length)> {
    let text = table.cell(row, "section").to_string();
    if text.is_empty() {
        return None;
    }
    let sides = text.split_once(['x', '×']).map(|(a, b)| (a.trim().parse::<f64>(), b.trim().parse::<f64>()));
    match sides {
        Some((Ok(a), Ok(b))) if (1.0..=2000.0).contains(&a) && (1.0..=2000.0).contains(&b) => {
            Some((Length::mm(a), Length::mm(b)))
        }
        _ => {
            table.complain_of(row, "section", format!("found `{text}`, expected two sizes in mm, such as 200x50"));
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_missing_a_negative_and_a_strange_price_are_each_named() {
        let text = "item,unit,price\nboard,each,\npost,each,-3\nstone,heap,38\nbag,bag,5.20\n";
        let (list, problems) = prices("p.csv", text);
        assert_eq!(list.len(), 1);
        let said: Vec<&str> = problems.iter().map(|p| p.says.as_str()).collect();
        assert!(said[0].contains("has no price"), "{said:?}");
        assert!(said[1].contains("found -3, expected from 0"));
        assert!(said[2].contains("found `heap`, expected one of each, bag"));
    }
}
