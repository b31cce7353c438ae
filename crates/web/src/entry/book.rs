//! A level book while it is being written: every row reduces as soon as it has a reading.

use groundhold_measure::level_book::{Reduced, Terms, reduce};
use groundhold_plan::job::Job;
use groundhold_quantity::{Length, Level, parse};

use super::Rows;
use crate::job::Files;

/// Columns of a level book.
const COLUMNS: &[&str] = &["station", "backsight", "intermediate", "foresight", "remark"];
/// The book's file where the job names none.
const FILE: &str = "levels.csv";

/// Which reading a row has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kind {
    /// First of a set-up, onto a known level.
    Back,
    /// Between the first and the last.
    #[default]
    Between,
    /// Last of a set-up.
    Fore,
}

impl Kind {
    /// Its column.
    pub fn column(self) -> &'static str {
        match self {
            Kind::Back => "backsight",
            Kind::Between => "intermediate",
            Kind::Fore => "foresight",
        }
    }
    /// The word on its key.
    pub fn word(self) -> &'static str {
        match self {
            Kind::Back => "Back",
            Kind::Between => "Between",
            Kind::Fore => "Fore",
        }
    }
}

/// A level book.
#[derive(Debug, Clone, PartialEq)]
pub struct Book {
    /// Its file.
    pub file: String,
    /// Its rows as typed.
    pub rows: Rows,
}

/// What comes of a book.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Reckoned {
    /// The level of each row, where there is one.
    pub levels: Vec<Option<Level>>,
    /// What is wrong, by row; rows are counted from 0, the whole book is `None`.
    pub wrong: Vec<(Option<usize>, String)>,
    /// How far the book misses where it closes, and how far it may.
    pub misclose: Option<(Length, Length, bool)>,
}

impl Book {
    /// The book of a job.
    pub fn of(files: &Files) -> Book {
        let named = crate::job::field_text(files, "measure", "book");
        let file = named.filter(|f| !f.is_empty()).unwrap_or_else(|| FILE.into());
        let rows = Rows::read(files.text(&file), COLUMNS);
        Book { file, rows }
    }

    /// The texts with this book in them.
    ///
    /// # Errors
    /// Where the job file cannot be read.
    pub fn put_in(&self, files: &Files) -> Result<Files, String> {
        let files = files.with(&self.file, &self.rows.text());
        match crate::job::field_text(&files, "measure", "book") {
            Some(_) => Ok(files),
            None => crate::job::set_field(&files, "measure", "book", &self.file),
        }
    }

    /// Adds a reading. What is typed may carry its unit; a bare number is metres.
    ///
    /// # Errors
    /// What was expected.
    pub fn read(&mut self, station: &str, kind: Kind, reading: &str, remark: &str) -> Result<(), String> {
        let station = station.trim();
        if station.starts_with('#') {
            return Err(format!("found `{station}`: a name cannot begin with #, which begins a remark."));
        }
        if station.is_empty() {
            return Err("Where did the staff stand? Expected a name such as 14.".into());
        }
        let value = staff(reading)?;
        let text = format!("{:.3}", value.to_m());
        // A foresight and the backsight after the move stand in one row: the change point.
        let last = self.rows.rows.len().checked_sub(1);
        let turns = last.filter(|l| {
            kind == Kind::Back
                && self.rows.cell(*l, "station") == station
                && !self.rows.cell(*l, "foresight").is_empty()
                && self.rows.cell(*l, "backsight").is_empty()
        });
        let row = turns.unwrap_or_else(|| self.rows.add());
        self.rows.set(row, "station", station);
        self.rows.set(row, kind.column(), &text);
        if !remark.is_empty() {
            self.rows.set(row, "remark", remark);
        }
        Ok(())
    }

    /// Which reading comes next, most likely.
    pub fn next_kind(&self) -> Kind {
        match self.rows.rows.len().checked_sub(1) {
            None => Kind::Back,
            Some(last) => {
                let moved =
                    !self.rows.cell(last, "foresight").is_empty() && self.rows.cell(last, "backsight").is_empty();
                if moved { Kind::Back } else { Kind::Between }
            }
        }
    }

    /// Reduces the book; what is wrong is told with its row.
    pub fn reckon(&self, job: Option<&Job>) -> Reckoned {
        let n = self.rows.rows.len();
        let mut out = Reckoned { levels: vec![None; n], ..Reckoned::default() };
        let Some(datum) = job.and_then(|j| j.measure.datum.as_ref()) else {
            out.wrong.push((None, "There is no datum yet: which station has a known level?".into()));
            return out;
        };
        let text = self.rows.text();
        let booked = Files::default()
            .with(crate::job::JOB, "schema = 1\n[measure]\nbook = \"b.csv\"\n")
            .with("b.csv", &text)
            .read();
        let row_of = |line: usize| line.checked_sub(2).filter(|r| *r < n);
        out.wrong
            .extend(booked.problems.iter().filter(|p| p.file == "b.csv").map(|p| (row_of(p.line), p.says.clone())));
        let book = booked.job.map(|j| j.measure.book).unwrap_or_default();
        if book.is_empty() {
            return out;
        }
        let mut terms = Terms::from_start(&datum.peg, datum.level);
        if let Some(k) = job.and_then(|j| j.measure.misclose_per_setup) {
            let per = groundhold_measure::misclose::Per::SetUp;
            terms.rule = groundhold_measure::misclose::MiscloseRule {
                k,
                per,
                words: "as the job says",
                key: "job",
                ..terms.rule
            };
        }
        match reduce(&book, &terms) {
            Ok(reduced) => take(&mut out, &reduced, &row_of),
            Err(errors) => out.wrong.extend(errors.iter().map(|e| (None, e.to_string()))),
        }
        out
    }
}

fn take(out: &mut Reckoned, reduced: &Reduced, row_of: &dyn Fn(usize) -> Option<usize>) {
    for r in &reduced.rows {
        if let Some(level) = row_of(r.row).and_then(|i| out.levels.get_mut(i)) {
            *level = Some(r.level);
        }
    }
    out.misclose = reduced.misclose.zip(reduced.allowed).map(|(m, a)| (m, a, reduced.accepted));
}

/// A staff reading; a bare number is metres.
fn staff(text: &str) -> Result<Length, String> {
    let bare = text.trim().replace(',', ".");
    if let Ok(v) = bare.parse::<f64>()
        && v.is_finite()
    {
        if v.abs() <= 8.0 {
            return Ok(Length::m(v));
        }
        if v.abs() <= 8000.0 && v.fract() == 0.0 {
            return Err(format!("found {bare}: is that {bare} mm? Type {bare} mm, or {:.3}.", v / 1000.0));
        }
        return Err(format!("found {bare}, expected a reading of at most 8 m."));
    }
    parse::<Length>(text).map_err(|e| e.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_reading_reduces_as_it_is_booked_and_the_change_point_is_one_row() {
        let files = crate::job::fresh("x", Length::m(10.0));
        let job = files.read().job.unwrap();
        let mut b = Book::of(&files);
        assert_eq!(b.next_kind(), Kind::Back);
        b.read("A", Kind::Back, "1.415", "").unwrap();
        b.read("1", Kind::Between, "2 ft", "").unwrap();
        b.read("T", Kind::Fore, "1.2", "").unwrap();
        assert_eq!(b.next_kind(), Kind::Back);
        b.read("T", Kind::Back, "0.8", "").unwrap();
        b.read("2", Kind::Between, "1,000", "").unwrap();
        assert_eq!(b.rows.rows.len(), 4);
        let r = b.reckon(Some(&job));
        assert_eq!(r.wrong, []);
        let m: Vec<String> = r.levels.iter().flatten().map(|l| format!("{:.3}", l.to_m())).collect();
        assert_eq!(m, ["100.000", "100.805", "100.215", "100.015"]);
    }

    #[test]
    fn what_cannot_be_a_reading_is_answered_and_nothing_is_booked() {
        let mut b = Book::of(&crate::job::fresh("x", Length::m(10.0)));
        assert!(b.read("1", Kind::Between, "1415", "").unwrap_err().contains("1415 mm"));
        assert!(b.read("", Kind::Between, "1.4", "").is_err() && b.read("1", Kind::Between, "abc", "").is_err());
        assert!(b.rows.rows.is_empty());
    }

    #[test]
    fn the_demo_book_reduces_and_a_bad_row_is_told_with_its_number() {
        let files = crate::job::demo();
        let job = files.read().job.unwrap();
        let mut b = Book::of(&files);
        assert!(b.reckon(Some(&job)).levels.iter().all(Option::is_some));
        b.rows.set(3, "intermediate", "abc");
        assert_eq!(b.reckon(Some(&job)).wrong[0].0, Some(3));
    }
}
