//! Text, headings and tables, one under the other, over as many pages as they need.

use groundhold_draw::{Align, Ink};

use crate::leaf::{BLACK, GREY, HAIR, Leaf, RULE, Style, WASH};
use crate::paper_size::{Frame, Paper};
use crate::table::{Fitted, PAD, Row, Table};
use crate::wrap::lines;

/// A part of the set that runs over pages.
pub(crate) struct Flow {
    paper: Paper,
    part: &'static str,
    title: String,
    /// Columns of text side by side on each page, and the one that is being filled.
    columns: (usize, usize),
    leaves: Vec<Leaf>,
    y: f64,
}

/// The row that a row must stay on one page with: a line that begins a group keeps its first row, and neither the last
/// row nor a sum stands alone.
fn kept_to(rows: &[Row], from: usize) -> usize {
    let keeps = |i: usize| {
        matches!(rows[i], Row::Group(_)) || i + 2 == rows.len() || matches!(rows.get(i + 1), Some(Row::Sum(_)))
    };
    let mut last = from;
    while last + 1 < rows.len() && keeps(last) {
        last += 1;
    }
    last
}

/// Between columns of text.
const BETWEEN: f64 = 8.0;

impl Flow {
    pub fn new(paper: Paper, part: &'static str, title: &str) -> Flow {
        let y = paper.content().top;
        let first = Leaf::new(paper, part, title);
        Flow { paper, part, title: title.into(), columns: (1, 0), leaves: vec![first], y }
    }
    /// The same in columns of text.
    pub fn in_columns(mut self, count: usize) -> Flow {
        self.columns = (count.max(1), 0);
        self
    }
    /// Where the present column stands.
    fn frame(&self) -> Frame {
        let all = self.paper.content();
        let n = self.columns.0 as f64;
        let width = (all.width() - BETWEEN * (n - 1.0)) / n;
        let left = all.left + (width + BETWEEN) * self.columns.1 as f64;
        Frame { left, right: left + width, ..all }
    }
    fn leaf(&mut self) -> &mut Leaf {
        if self.leaves.is_empty() {
            self.leaves.push(Leaf::new(self.paper, self.part, self.title.clone()));
        }
        let last = self.leaves.len() - 1;
        &mut self.leaves[last]
    }
    fn at_top(&self) -> bool {
        self.y <= self.paper.content().top + 1e-9
    }
    /// Goes to the next column or page.
    pub fn turn(&mut self) {
        self.y = self.paper.content().top;
        if self.columns.1 + 1 < self.columns.0 {
            self.columns.1 += 1;
        } else {
            self.columns.1 = 0;
            self.leaves.push(Leaf::new(self.paper, self.part, self.title.clone()));
        }
    }
    /// Turns the page unless so much room is left.
    pub fn need(&mut self, height: f64) {
        if !self.at_top() && self.y + height > self.paper.content().bottom + 1e-9 {
            self.turn();
        }
    }
    pub fn gap(&mut self, height: f64) {
        if !self.at_top() {
            self.y = (self.y + height).min(self.paper.content().bottom);
        }
    }
    /// The title of the part, on top of its first page.
    pub fn title(&mut self, text: &str) {
        self.lines_of(text, 0.0, &Style::BODY.bold().sized(5.6));
        self.gap(1.6);
    }
    /// A heading that stays with what follows it.
    pub fn heading(&mut self, text: &str) {
        self.gap(4.0);
        self.need(24.0);
        self.lines_of(text, 0.0, &Style::BODY.bold().sized(3.7));
        self.gap(0.8);
    }
    pub fn paragraph(&mut self, text: &str) {
        self.lines_of(text, 0.0, &Style::BODY);
        self.gap(1.2);
    }
    pub fn small(&mut self, text: &str) {
        self.lines_of(text, 0.0, &Style::SMALL);
        self.gap(1.0);
    }
    /// Lines of a text, moved in by so much.
    pub fn lines_of(&mut self, text: &str, indent: f64, style: &Style) {
        let room = self.frame().width() - indent;
        for line in lines(text, room, style) {
            self.need(style.leading());
            let (left, y) = (self.frame().left + indent, self.y);
            self.leaf().text(&line, left, y, Align::Start, style);
            self.y += style.leading();
        }
    }
    /// A text with a word hanging to its left, such as a label or a number.
    pub fn hanging(&mut self, word: &str, word_style: &Style, text: &str, indent: f64, style: &Style) {
        self.hanging_at(0.0, word, word_style, text, indent, style);
    }
    /// The same with the word moved in.
    pub fn hanging_at(&mut self, word_in: f64, word: &str, word_style: &Style, text: &str, indent: f64, style: &Style) {
        let room = self.frame().width() - indent;
        for (i, line) in lines(text, room, style).iter().enumerate() {
            self.need(style.leading());
            let (left, y) = (self.frame().left, self.y);
            if i == 0 {
                let lowered = y + style.ascent() - word_style.ascent();
                self.leaf().text(word, left + word_in, lowered, Align::Start, word_style);
            }
            self.leaf().text(line, left + indent, y, Align::Start, style);
            self.y += style.leading();
        }
    }
    /// How wide the present column is.
    pub fn width(&self) -> f64 {
        self.frame().width()
    }
    /// One line with a word before it, each moved in by so much.
    pub fn beside(&mut self, word: &str, word_in: f64, text: &str, text_in: f64, style: &Style) {
        self.need(style.leading());
        let (left, y) = (self.frame().left, self.y);
        self.leaf().text(word, left + word_in, y, Align::Start, style);
        self.leaf().text(text, left + text_in, y, Align::Start, style);
        self.y += style.leading();
    }
    /// A rule across, but not at the top of a page or column.
    pub fn rule(&mut self, width: f64, ink: Ink) {
        self.need(1.0);
        if self.at_top() {
            return;
        }
        let (f, y) = (self.frame(), self.y);
        self.leaf().rule((f.left, y), (f.right, y), width, ink);
    }
    /// A table, its head again on every page that it reaches.
    pub fn table(&mut self, table: &Table) {
        if table.is_empty() {
            return;
        }
        let fitted = table.fitted(self.frame().width());
        let heads = fitted.heads();
        self.need(self.begins(table));
        self.head(&fitted, &heads);
        for (i, row) in table.rows.iter().enumerate() {
            let height: f64 = (i..=kept_to(&table.rows, i)).map(|k| self.height_of(&fitted, &table.rows[k])).sum();
            if !self.at_top() && self.y + height > self.paper.content().bottom + 1e-9 {
                self.turn();
                self.head(&fitted, &heads);
            }
            self.row(&fitted, row);
        }
        self.gap(2.4);
    }
    /// Height of what of a table is never parted from what stands over it: its head and two rows.
    pub fn begins(&self, table: &Table) -> f64 {
        let fitted = table.fitted(self.frame().width());
        let rows: f64 = table.rows.iter().take(2).map(|r| self.height_of(&fitted, r)).sum();
        self.head_height(&fitted, &fitted.heads()) + rows
    }
    /// A table under a heading and a line of explanation, never parted from its first rows.
    pub fn titled(&mut self, heading: &str, explained: &str, table: &Table) {
        if table.is_empty() {
            return;
        }
        let small = lines(explained, self.frame().width(), &Style::SMALL).len() as f64 * Style::SMALL.leading();
        self.need(12.0 + small + self.begins(table));
        self.heading(heading);
        if !explained.is_empty() {
            self.small(explained);
        }
        self.table(table);
    }
    fn head_height(&self, fitted: &Fitted, heads: &[Vec<String>]) -> f64 {
        let most = heads.iter().map(Vec::len).max().unwrap_or(0);
        if fitted.table.columns.iter().all(|c| c.head.is_empty()) {
            0.0
        } else {
            most as f64 * fitted.head_style().leading() + 1.6
        }
    }
    fn head(&mut self, fitted: &Fitted, heads: &[Vec<String>]) {
        let height = self.head_height(fitted, heads);
        if height == 0.0 {
            return;
        }
        let style = fitted.head_style();
        let bottom = self.y + height - 1.0;
        for (i, (lines, column)) in heads.iter().zip(&fitted.table.columns).enumerate() {
            // Heads stand on the rule.
            let top = bottom - lines.len() as f64 * style.leading();
            self.cell(fitted, i, lines, top, column.align, &style);
        }
        let (f, y) = (self.frame(), self.y + height - 0.4);
        self.leaf().rule((f.left, y), (f.left + fitted.width(), y), 0.3, RULE);
        self.y += height;
    }
    fn style_of(&self, fitted: &Fitted, row: &Row) -> Style {
        match row {
            Row::Cells(_) => fitted.style,
            Row::Group(_) | Row::Sum(_) => fitted.style.bold(),
        }
    }
    fn height_of(&self, fitted: &Fitted, row: &Row) -> f64 {
        let style = self.style_of(fitted, row);
        let count = match row {
            Row::Cells(c) | Row::Sum(c) => fitted.cells(c, &style).iter().map(Vec::len).max().unwrap_or(1),
            Row::Group(t) => lines(t, fitted.width(), &style).len(),
        };
        count as f64 * style.leading() + 2.0 * PAD * fitted.style.size
    }
    fn row(&mut self, fitted: &Fitted, row: &Row) {
        let style = self.style_of(fitted, row);
        let height = self.height_of(fitted, row);
        let (f, y) = (self.frame(), self.y);
        let (right, pad) = (f.left + fitted.width(), PAD * fitted.style.size);
        match row {
            Row::Group(text) => {
                let wash = Frame { left: f.left, top: y, right, bottom: y + height };
                self.leaf().fill(wash, WASH);
                for (i, line) in lines(text, fitted.width() - 2.0, &style).iter().enumerate() {
                    self.leaf().text(line, f.left + 1.0, y + pad + i as f64 * style.leading(), Align::Start, &style);
                }
            }
            Row::Cells(cells) | Row::Sum(cells) => {
                if matches!(row, Row::Sum(_)) {
                    self.leaf().rule((f.left, y), (right, y), 0.25, RULE);
                }
                for (i, (lines, column)) in fitted.cells(cells, &style).iter().zip(&fitted.table.columns).enumerate() {
                    self.cell(fitted, i, lines, y + pad, column.align, &style);
                }
            }
        }
        self.y += height;
        let y = self.y;
        self.leaf().rule((f.left, y), (right, y), 0.1, HAIR);
    }
    fn cell(&mut self, fitted: &Fitted, i: usize, lines: &[String], top: f64, align: Align, style: &Style) {
        let left = self.frame().left + fitted.left(i);
        let x = match align {
            Align::Start => left,
            Align::Middle => left + fitted.widths[i] / 2.0,
            Align::End => left + fitted.widths[i],
        };
        for (k, line) in lines.iter().enumerate() {
            self.leaf().text(line, x, top + k as f64 * style.leading(), align, style);
        }
    }
    /// Pairs of a word and a figure, one under the other.
    pub fn facts(&mut self, facts: &[(String, String)]) {
        let style = Style::BODY;
        let indent =
            facts.iter().map(|(w, _)| style.width(w)).fold(0.0, f64::max).min(self.frame().width() * 0.45) + 4.0;
        for (word, says) in facts {
            self.need(style.leading());
            let words = lines(word, indent - 4.0, &style.ink(GREY));
            let (left, y) = (self.frame().left, self.y);
            for (k, w) in words.iter().enumerate() {
                self.leaf().text(w, left, y + k as f64 * style.leading(), Align::Start, &style.ink(GREY));
            }
            self.lines_of(says, indent, &style.ink(BLACK));
            self.y = self.y.max(y + words.len() as f64 * style.leading()).min(self.paper.content().bottom);
        }
        self.gap(1.2);
    }
    pub fn finish(self) -> Vec<Leaf> {
        self.leaves.into_iter().filter(|l| !l.items.is_empty()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::table::{figures, sentences, words};

    fn long_flow() -> Vec<Leaf> {
        let mut flow = Flow::new(Paper::A4, "part", "title");
        flow.title("A title");
        flow.paragraph(&"Some words that fill a line and then another one. ".repeat(9));
        for k in 0..4 {
            flow.heading(&format!("Heading {k}"));
            let mut t = Table::new(vec![words("mark"), sentences("what"), figures("length mm")]);
            t.group("a group");
            for i in 0..90 {
                t.row([format!("B{k}-{i}"), "words ".repeat(i % 60), format!("{}", i * 37)]);
            }
            t.sum([String::new(), "sum".into(), "1".into()]);
            flow.table(&t);
            flow.facts(&[("a word".into(), "a fact ".repeat(40)), ("b".into(), "c".into())]);
        }
        flow.finish()
    }

    #[test]
    fn every_row_stands_on_a_page_once_inside_the_margins_and_nothing_is_printed_over_another() {
        let leaves = long_flow();
        assert!(leaves.len() > 3);
        let all: Vec<&str> = leaves.iter().flat_map(|l| l.blocks.iter().map(|b| b.text.as_str())).collect();
        for k in 0..4 {
            for i in 0..90 {
                let mark = format!("B{k}-{i}");
                assert_eq!(all.iter().filter(|t| **t == mark).count(), 1, "{mark}");
            }
        }
        for leaf in &leaves {
            crate::tests::nothing_collides(leaf);
        }
    }

    #[test]
    fn the_head_of_a_table_stands_on_every_page_that_the_table_reaches() {
        let leaves = long_flow();
        let with_rows = leaves.iter().filter(|l| l.blocks.iter().any(|b| b.text.starts_with('B')));
        assert!(with_rows.clone().count() > 3);
        assert!(with_rows.into_iter().all(|l| l.blocks.iter().any(|b| b.text == "mark")));
    }

    #[test]
    fn columns_are_filled_before_the_page_is_turned() {
        let mut flow = Flow::new(Paper::A3, "part", "title").in_columns(3);
        (0..100).for_each(|i| flow.paragraph(&format!("{i} {}", "words ".repeat(12))));
        let leaves = flow.finish();
        assert_eq!(leaves.len(), 1);
        crate::tests::nothing_collides(&leaves[0]);
    }
}
