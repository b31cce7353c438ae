//! A table to be written: columns with the unit in their name, cells of text or number; for CSV and workbook alike.

use groundhold_quantity::{Area, Length, Level, Mass, Money, Volume};

/// A table with a name.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Grid {
    /// Its file without the ending, and the name of its sheet.
    pub name: &'static str,
    pub columns: Vec<Column>,
    pub rows: Vec<Vec<Cell>>,
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Column {
    /// What stands in its head; the unit stands last.
    pub name: String,
    /// Decimals of its numbers.
    pub decimals: usize,
}

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Cell {
    Text(String),
    Number(f64),
    Empty,
}

/// A column of words, or of numbers with so many decimals.
pub(crate) fn column(name: impl Into<String>, decimals: usize) -> Column {
    Column { name: name.into(), decimals }
}

impl Grid {
    /// An empty table.
    pub fn new(name: &'static str, columns: &[(&str, usize)]) -> Grid {
        let columns = columns.iter().map(|(name, decimals)| column(*name, *decimals)).collect();
        Grid { name, columns, rows: vec![] }
    }

    /// Where a column stands.
    #[cfg(feature = "spreadsheet")]
    pub fn place(&self, name: &str) -> Option<usize> {
        self.columns.iter().position(|c| c.name == name)
    }

    /// As CSV (RFC 4180) with one head line and a line feed after each row.
    pub fn to_csv(&self) -> String {
        let mut out = line(self.columns.iter().map(|c| c.name.clone()));
        for row in &self.rows {
            out.push_str(&line(row.iter().zip(&self.columns).map(|(cell, column)| match cell {
                Cell::Text(text) => text.clone(),
                Cell::Number(v) => fixed(*v, column.decimals),
                Cell::Empty => String::new(),
            })));
        }
        out
    }
}

/// A number with so many decimals; infinity and the undefined are left empty, and nothing is written as minus nothing.
fn fixed(v: f64, decimals: usize) -> String {
    if !v.is_finite() {
        return String::new();
    }
    let text = format!("{v:.decimals$}");
    let nothing = text.starts_with('-') && text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if nothing { text.replacen('-', "", 1) } else { text }
}

/// Cells joined by commas, each in quotes where it needs them.
pub(crate) fn line(cells: impl Iterator<Item = String>) -> String {
    let quoted = cells.map(|c| {
        let plain = !c.contains([',', '"', '\n', '\r']) && c.trim() == c && !c.starts_with('#');
        if plain { c } else { format!("\"{}\"", c.replace('"', "\"\"")) }
    });
    let mut out = quoted.collect::<Vec<_>>().join(",");
    out.push('\n');
    out
}

macro_rules! cell_from {
    ($($of:ty, $v:ident => $number:expr;)*) => { $(
        impl From<$of> for Cell {
            fn from($v: $of) -> Cell { Cell::Number($number) }
        }
    )* };
}
cell_from! {
    f64, v => v;
    usize, v => v as f64;
    u32, v => f64::from(v);
    Length, v => v.to_m();
    Level, v => v.to_m();
    Area, v => v.to_m2();
    Volume, v => v.to_m3();
    Mass, v => v.to_kg();
    Money, v => v.amount();
}
impl From<&str> for Cell {
    fn from(v: &str) -> Cell {
        Cell::Text(v.into())
    }
}
impl From<&String> for Cell {
    fn from(v: &String) -> Cell {
        Cell::Text(v.clone())
    }
}
impl From<String> for Cell {
    fn from(v: String) -> Cell {
        Cell::Text(v)
    }
}
impl From<bool> for Cell {
    fn from(v: bool) -> Cell {
        Cell::Text(if v { "yes" } else { "no" }.into())
    }
}
impl<T: Into<Cell>> From<Option<T>> for Cell {
    fn from(v: Option<T>) -> Cell {
        v.map_or(Cell::Empty, Into::into)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_with_a_comma_a_quote_or_a_line_end_is_put_in_quotes() {
        let mut grid = Grid::new("t", &[("what", 0), ("length_m", 3)]);
        grid.rows.push(vec!["a, \"b\"\nc".into(), Length::mm(1234.0).into()]);
        grid.rows.push(vec!["plain".into(), (-0.0001).into()]);
        grid.rows.push(vec![Cell::Empty, f64::INFINITY.into()]);
        assert_eq!(grid.to_csv(), "what,length_m\n\"a, \"\"b\"\"\nc\",1.234\nplain,0.000\n,\n");
    }
}
