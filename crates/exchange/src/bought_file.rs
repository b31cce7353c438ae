//! What was bought already, as people say it: `8 of board 200x50 H4 C24 at 4.8 m`.

use groundhold_order::OnHand;
use groundhold_quantity::{Length, parse};
use toml_edit::Item;

use crate::page::Node;
use crate::spelled as say;

const EXPECTED: &str = "expected how many of which item, and for boards and posts their length, such as \"8 of board 200x50 UC4 C24 at 4.8 m\"";

/// The list of a job file, or the table of older ones: `{ "concrete bag 20 kg" = 30 }`.
pub(crate) fn read(n: &Node) -> Vec<OnHand> {
    if !n.has("bought") {
        return vec![];
    }
    let item = n.raw("bought");
    let wrong = |found: Result<OnHand, String>| found.map_err(|says| n.complain("bought", says)).ok();
    if let Some(list) = item.and_then(Item::as_array) {
        let texts =
            list.iter().map(|v| v.as_str().ok_or_else(|| format!("found {}, {EXPECTED}", v.to_string().trim())));
        return texts.filter_map(|t| wrong(t.and_then(bought))).collect();
    }
    let Some(table) = item.and_then(Item::as_table_like) else {
        n.complain("bought", format!("{EXPECTED}, in a list"));
        return vec![];
    };
    let row = |(item, v): (&str, &Item)| {
        let number = v.as_float().or(v.as_integer().map(|i| i as f64));
        let units = number.filter(|x| *x >= 0.0 && x.is_finite());
        let units = units.ok_or_else(|| format!("`{item}`: expected a number that is not negative"));
        wrong(units.and_then(|units| of_length(item, units)))
    };
    table.iter().filter_map(row).collect()
}

/// One purchase in words.
///
/// # Errors
/// What was expected.
pub fn bought(text: &str) -> Result<OnHand, String> {
    let parted = text.trim().split_once(" of ").map(|(n, item)| (n.trim().parse::<f64>(), item.trim()));
    match parted {
        Some((Ok(units), item)) if units >= 0.0 && units.is_finite() && !item.is_empty() => of_length(item, units),
        _ => Err(format!("found `{text}`, {EXPECTED}")),
    }
}

/// An item with ` at ` and a length behind it, where it has one.
fn of_length(text: &str, units: f64) -> Result<OnHand, String> {
    let Some((item, length)) = text.rsplit_once(" at ") else {
        return Ok(OnHand { item: text.into(), stock_length: None, units });
    };
    match parse::<Length>(length) {
        Ok(l) if (0.05..=20.0).contains(&l.to_m()) => {
            Ok(OnHand { item: item.trim().into(), stock_length: Some(l), units })
        }
        Ok(_) => Err(format!("found `{text}`, expected a length from 50 mm to 20 m")),
        Err(e) => Err(format!("found `{text}`: {e}")),
    }
}

/// A purchase as [`bought`] reads it.
pub(crate) fn spelled(o: &OnHand) -> String {
    let length = o.stock_length.map_or(String::new(), |l| format!(" at {}", say::length(l).trim_matches('"')));
    format!("{} of {}{length}", say::number(o.units), o.item)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_purchase_reads_back_as_it_was_spelled() {
        for text in ["8 of board 200x50 UC4 C24 at 4.8 m", "30 of concrete bag 20 kg", "0.5 of stone 10-20"] {
            assert_eq!(bought(text).map(|o| spelled(&o)), Ok(text.to_string()));
        }
    }

    #[test]
    fn a_purchase_without_number_item_or_a_length_that_can_be_is_refused() {
        for text in ["board 200x50", "-1 of board", "of board", "8 of ", "NaN of x", "8 of b at 4.8", "8 of b at 90 m"]
        {
            assert!(bought(text).is_err(), "{text}");
        }
    }
}
