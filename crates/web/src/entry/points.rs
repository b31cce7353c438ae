//! A point as it is entered: tapped on the drawing, by offset from the base line, by two tapes, or with its level.

use groundhold_plan::job::Job;
use groundhold_quantity::{Length, Level, Point, parse};

use super::Rows;
use crate::job::{Files, field_text, set_field};

/// One point, as typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PointEntry {
    /// Its name.
    pub name: String,
    /// Along the base line from its first peg.
    pub along: String,
    /// Off the base line; positive to the left.
    pub off: String,
    /// Tapes: peg and reading.
    pub ties: Vec<(String, String)>,
    /// Its level, where it is known and not in the level book.
    pub level: String,
}

/// A length where a bare number is metres.
fn metres(what: &str, text: &str) -> Result<Length, String> {
    let bare = text.trim().replace(',', ".");
    match bare.parse::<f64>() {
        Ok(v) if v.is_finite() && v.abs() < 10_000.0 => Ok(Length::m(v)),
        _ => parse::<Length>(text).map_err(|e| format!("{what}: {e}")),
    }
}

impl PointEntry {
    /// From a place tapped on the drawing.
    pub fn tapped(job: &Job, at: Point, name: String) -> PointEntry {
        let (along, off) = along_off(job, at);
        PointEntry { name, along: format!("{along:.2}"), off: format!("{off:.2}"), ..PointEntry::default() }
    }

    /// The texts with the point in them: in the table of spots where its level is given, else in that of positions.
    ///
    /// # Errors
    /// Which part was not understood, and what was expected.
    pub fn put_in(&self, files: &Files, job: &Job) -> Result<Files, String> {
        let name = self.name.trim();
        if name.is_empty() {
            return Err("name: expected a short name for the point, such as 24".into());
        }
        let offset = match (self.along.trim(), self.off.trim()) {
            ("", "") => None,
            (a, o) => Some((metres("along", a)?, metres("off", o)?)),
        };
        let mut ties = vec![];
        for (peg, text) in self.ties.iter().filter(|(_, t)| !t.trim().is_empty()) {
            ties.push((peg.clone(), metres(&format!("from {peg}"), text)?));
        }
        if offset.is_none() && ties.len() < 2 {
            return Err("expected along and off the base line, or tapes from at least two pegs".into());
        }
        if self.level.trim().is_empty() {
            return position(files, name, offset, &ties);
        }
        let level = match self.level.trim().replace(',', ".").parse::<f64>() {
            Ok(v) if v.is_finite() => Level::m(v),
            _ => parse::<Level>(&self.level).map_err(|e| format!("level: {e}"))?,
        };
        let Some((along, off)) = offset else {
            return Err("level: a point with tapes takes its level from the level book; leave this empty".into());
        };
        spot(files, name, on_ground(job, along, off), level)
    }
}

fn table(files: &Files, field: &str, usual: &str, columns: &[&str]) -> (String, Rows) {
    let file = field_text(files, "measure", field).filter(|f| !f.is_empty()).unwrap_or_else(|| usual.into());
    let rows = Rows::read(files.text(&file), columns);
    (file, rows)
}

fn put_back(files: &Files, field: &str, file: &str, rows: &Rows) -> Result<Files, String> {
    let files = files.with(file, &rows.text());
    match field_text(&files, "measure", field) {
        Some(_) => Ok(files),
        None => set_field(&files, "measure", field, file),
    }
}

fn row_named(rows: &mut Rows, name: &str) -> usize {
    let there = (0..rows.rows.len()).find(|i| rows.cell(*i, "point") == name);
    there.unwrap_or_else(|| {
        let i = rows.add();
        rows.set(i, "point", name);
        i
    })
}

fn position(
    files: &Files,
    name: &str,
    offset: Option<(Length, Length)>,
    ties: &[(String, Length)],
) -> Result<Files, String> {
    let (file, mut rows) = table(files, "positions", "positions.csv", &["point", "along", "off"]);
    let row = row_named(&mut rows, name);
    if let Some((along, off)) = offset {
        rows.column_made("along");
        rows.column_made("off");
        rows.set(row, "along", &format!("{:.3}", along.to_m()));
        rows.set(row, "off", &format!("{:.3}", off.to_m()));
    }
    for (peg, reads) in ties {
        let column = format!("from {peg}");
        rows.column_made(&column);
        rows.set(row, &column, &format!("{:.3}", reads.to_m()));
    }
    put_back(files, "positions", &file, &rows)
}

fn spot(files: &Files, name: &str, at: Point, level: Level) -> Result<Files, String> {
    let (file, mut rows) = table(files, "spots", "spots.csv", &["point", "east", "north", "level"]);
    let row = row_named(&mut rows, name);
    for (column, v) in [("east", at.x), ("north", at.y), ("level", level.to_m())] {
        rows.column_made(column);
        rows.set(row, column, &format!("{v:.3}"));
    }
    put_back(files, "spots", &file, &rows)
}

/// Along and off the base line; east and north where there are no two pegs.
fn along_off(job: &Job, at: Point) -> (f64, f64) {
    match &job.measure.pegs[..] {
        [a, b, ..] if (b.at - a.at).length() > 1e-6 => {
            let u = (b.at - a.at).unit();
            ((at - a.at).dot(u), (at - a.at).dot(u.left()))
        }
        _ => (at.x, at.y),
    }
}

fn on_ground(job: &Job, along: Length, off: Length) -> Point {
    match &job.measure.pegs[..] {
        [a, b, ..] if (b.at - a.at).length() > 1e-6 => {
            let u = (b.at - a.at).unit();
            a.at + u * along.to_m() + u.left() * off.to_m()
        }
        _ => Point::m(along.to_m(), off.to_m()),
    }
}

/// A name that no point has yet: the number after the highest.
pub fn next_name(job: &Job) -> String {
    let m = &job.measure;
    let names = m
        .book
        .iter()
        .map(|b| &b.station)
        .chain(m.positions.iter().map(|p| &p.point))
        .chain(m.spots.iter().map(|s| &s.id));
    let highest = names.filter_map(|n| n.parse::<u32>().ok()).filter(|n| *n < 1_000_000).max();
    (highest.unwrap_or(0) + 1).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn demo() -> (Files, Job) {
        let files = crate::job::demo();
        let job = files.read().job.unwrap();
        (files, job)
    }

    #[test]
    fn a_tapped_point_with_a_level_becomes_a_spot_where_it_was_tapped() {
        let (files, job) = demo();
        let mut p = PointEntry::tapped(&job, Point::m(4.0, 11.0), next_name(&job));
        p.level = "102.31 m".into();
        let after = p.put_in(&files, &job).unwrap().read().whole().unwrap();
        assert_eq!(after.measure.spots[0].at, Point::m(4.0, 11.0));
        assert!(groundhold_plan::plan(&after).unwrap().survey.points.iter().any(|q| q.id == p.name));
    }

    #[test]
    fn a_point_by_two_tapes_is_added_to_the_table_of_positions_and_one_tape_is_not_enough() {
        let (files, job) = demo();
        let tie = |peg: &str, t: &str| (peg.to_string(), t.to_string());
        let mut p =
            PointEntry { name: "99".into(), ties: vec![tie("A", "5.2"), tie("B", "31 ft")], ..PointEntry::default() };
        let after = p.put_in(&files, &job).unwrap().read();
        assert_eq!(after.problems, []);
        let row = after.job.unwrap().measure.positions.into_iter().find(|r| r.point == "99").unwrap();
        assert_eq!(row.ties[0], ("A".into(), Length::m(5.2)));
        p.ties.pop();
        assert!(p.put_in(&files, &job).unwrap_err().contains("two pegs"));
        p.along = "abc".into();
        assert!(p.put_in(&files, &job).unwrap_err().starts_with("along"));
    }
}
