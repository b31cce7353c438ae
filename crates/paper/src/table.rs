//! Rows and columns: how wide each column is, where cells wrap, how tall a row is.

use groundhold_draw::Align;

use crate::leaf::Style;
use crate::typeface::in_our_letters;
use crate::wrap::lines;

/// One column.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Column {
    pub head: String,
    pub align: Align,
    /// True where long cells wrap and the column takes what room is left.
    pub wraps: bool,
}

/// Words, kept on one line.
pub(crate) fn words(head: &str) -> Column {
    Column { head: head.into(), align: Align::Start, wraps: false }
}
/// Figures, standing under each other.
pub(crate) fn figures(head: &str) -> Column {
    Column { head: head.into(), align: Align::End, wraps: false }
}
/// Sentences that wrap.
pub(crate) fn sentences(head: &str) -> Column {
    Column { head: head.into(), align: Align::Start, wraps: true }
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Row {
    /// One text per column.
    Cells(Vec<String>),
    /// A line across all columns that begins a group.
    Group(String),
    /// One text per column, bold under a rule.
    Sum(Vec<String>),
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Table {
    pub columns: Vec<Column>,
    pub rows: Vec<Row>,
    pub style: Style,
}

/// Between columns.
pub(crate) const GUTTER: f64 = 2.7;
/// Above and below the text of a row, as a share of the type size.
pub(crate) const PAD: f64 = 0.2;
/// Least width of a column that wraps.
const LEAST: f64 = 22.0;
/// Smallest type a crowded table is set in.
const SMALLEST: f64 = 1.9;

impl Table {
    pub fn new(columns: Vec<Column>) -> Table {
        Table { columns, rows: vec![], style: Style::BODY.sized(2.75) }
    }
    pub fn row<const N: usize>(&mut self, cells: [String; N]) {
        self.rows.push(Row::Cells(cells.to_vec()));
    }
    pub fn group(&mut self, text: impl Into<String>) {
        self.rows.push(Row::Group(text.into()));
    }
    pub fn sum<const N: usize>(&mut self, cells: [String; N]) {
        self.rows.push(Row::Sum(cells.to_vec()));
    }
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
    /// With symbols set with their indices.
    pub fn with_symbols(mut self) -> Table {
        self.style = self.style.formula();
        self
    }
    pub fn head_style(&self) -> Style {
        self.style.bold().sized(self.style.size * 0.92).ink(crate::leaf::GREY)
    }

    /// The table set for this room: type size and column widths.
    pub fn fitted(&self, room: f64) -> Fitted<'_> {
        let mut style = self.style;
        loop {
            let widths = self.widths(room, &style);
            let total = widths.iter().sum::<f64>() + GUTTER * (widths.len().saturating_sub(1)) as f64;
            if total <= room + 1e-6 || style.size <= SMALLEST {
                return Fitted { table: self, style, widths: squeezed(widths, room) };
            }
            style = style.sized(style.size - 0.1);
        }
    }

    fn widths(&self, room: f64, style: &Style) -> Vec<f64> {
        let head = style.bold().sized(style.size * 0.92);
        let natural = |i: usize, c: &Column| {
            let longest = |s: &Style, t: &str| t.split('\n').map(|l| s.width(&in_our_letters(l))).fold(0.0, f64::max);
            let cells = self.rows.iter().filter_map(|r| match r {
                Row::Cells(v) => v.get(i).map(|t| longest(style, t)),
                Row::Sum(v) => v.get(i).map(|t| longest(&style.bold(), t)),
                Row::Group(_) => None,
            });
            // A head may wrap between its words.
            let head = c.head.split([' ', '\n']).map(|w| head.width(&in_our_letters(w))).fold(0.0, f64::max);
            cells.fold(head, f64::max)
        };
        let mut widths: Vec<f64> = self.columns.iter().enumerate().map(|(i, c)| natural(i, c)).collect();
        let gutters = GUTTER * (widths.len().saturating_sub(1)) as f64;
        let over = widths.iter().sum::<f64>() + gutters - room;
        let wrapping: Vec<usize> = (0..widths.len()).filter(|i| self.columns[*i].wraps).collect();
        if over > 0.0 {
            shrink(&mut widths, &wrapping, over);
        } else if over < 0.0 {
            if wrapping.is_empty() {
                let each = (-over / widths.len() as f64).min(7.0);
                widths.iter_mut().for_each(|w| *w += each);
            } else {
                let each = -over / wrapping.len() as f64;
                wrapping.iter().for_each(|i| widths[*i] += each);
            }
        }
        widths
    }
}

/// Takes `over` away from the widest of the wrapping columns, evenly, none below [`LEAST`].
fn shrink(widths: &mut [f64], wrapping: &[usize], mut over: f64) {
    while over > 1e-6 {
        let widest = wrapping.iter().map(|i| widths[*i]).fold(0.0, f64::max);
        if widest <= LEAST {
            return;
        }
        let at: Vec<usize> = wrapping.iter().copied().filter(|i| widths[*i] > widest - 1e-9).collect();
        let next = wrapping.iter().map(|i| widths[*i]).filter(|w| *w <= widest - 1e-9).fold(LEAST, f64::max);
        let by = (widest - next).min(over / at.len() as f64);
        at.iter().for_each(|i| widths[*i] -= by);
        over -= by * at.len() as f64;
    }
}

/// Last resort: all columns by the same share, so that nothing leaves the sheet; cells are broken inside words.
fn squeezed(mut widths: Vec<f64>, room: f64) -> Vec<f64> {
    let gutters = GUTTER * (widths.len().saturating_sub(1)) as f64;
    let total: f64 = widths.iter().sum();
    if total + gutters > room {
        let share = (room - gutters) / total;
        widths.iter_mut().for_each(|w| *w *= share);
    }
    widths
}

/// A table with its widths.
pub(crate) struct Fitted<'a> {
    pub table: &'a Table,
    pub style: Style,
    pub widths: Vec<f64>,
}

impl Fitted<'_> {
    /// Width of all columns with their gutters.
    pub fn width(&self) -> f64 {
        self.widths.iter().sum::<f64>() + GUTTER * (self.widths.len().saturating_sub(1)) as f64
    }
    /// Left edge of a column from the table's own.
    pub fn left(&self, column: usize) -> f64 {
        self.widths[..column].iter().sum::<f64>() + GUTTER * column as f64
    }
    pub fn head_style(&self) -> Style {
        Style { size: self.style.size * 0.92, ..self.table.head_style() }
    }
    /// Each cell in lines.
    pub fn cells(&self, cells: &[String], style: &Style) -> Vec<Vec<String>> {
        cells
            .iter()
            .zip(&self.widths)
            .map(|(t, w)| lines(&in_our_letters_keeping_breaks(t), *w + 1e-6, style))
            .collect()
    }
    pub fn heads(&self) -> Vec<Vec<String>> {
        let heads: Vec<String> = self.table.columns.iter().map(|c| c.head.clone()).collect();
        self.cells(&heads, &self.head_style())
    }
}

fn in_our_letters_keeping_breaks(text: &str) -> String {
    text.split('\n').map(in_our_letters).collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_never_grows_wider_than_its_room() {
        let mut t = Table::new(vec![words("one"), sentences("two"), figures("a long head of a column")]);
        t.row(["unbreakablewordofgreatlength".into(), "some words ".repeat(30), "1234567.89".into()]);
        for room in [30.0, 60.0, 176.0, 400.0] {
            let f = t.fitted(room);
            assert!(f.width() <= room + 1e-6, "{room}: {:?}", f.widths);
        }
    }
}
