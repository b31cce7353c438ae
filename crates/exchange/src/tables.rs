//! The tables a job names: level book, positions, spot levels. Each row is read or its place and fault are noted.

use groundhold_measure::level_book::Booking;
use groundhold_plan::job::{PositionRow, Spot};
use groundhold_quantity::{Length, Level, Point, Quantity, parse};

use crate::problem::{Problem, nearest};

pub use crate::price_table::prices;

/// Largest table that is read.
const LARGEST: usize = 64 << 20;
/// More columns than this are not a table of this kind.
const MOST_COLUMNS: usize = 60;
/// Problems noted before the rest is passed over: a wrong file gives one message a row.
const MOST_PROBLEMS: usize = 30;

/// Rows that were understood and what was wrong with the rest.
pub type Rows<T> = (Vec<T>, Vec<Problem>);

/// A table, cell by cell, with its header.
pub(crate) struct Table<'a> {
    pub file: &'a str,
    pub header: Vec<String>,
    pub rows: Vec<Row>,
    pub problems: Vec<Problem>,
}

/// One row and its line in the file.
pub(crate) struct Row {
    pub line: usize,
    pub cells: Vec<String>,
}

impl<'a> Table<'a> {
    /// Splits a text into cells. `must` are the columns that have to be there, `may` those that can be.
    pub fn read(file: &'a str, text: &str, must: &[&str], may: &dyn Fn(&str) -> bool, known: &[&str]) -> Table<'a> {
        let mut table = Table { file, header: vec![], rows: vec![], problems: vec![] };
        if text.len() > LARGEST {
            table
                .problems
                .push(Problem::whole(file, format!("the table has {} bytes; at most {LARGEST} are read", text.len())));
            return table;
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .trim(csv::Trim::All)
            .from_reader(text.as_bytes());
        for record in reader.records() {
            let record = match record {
                Ok(r) => r,
                Err(e) => {
                    let line = e.position().map_or(0, |p| p.line() as usize);
                    table.complain(line, 1, "", format!("this row cannot be read: {e}"));
                    break;
                }
            };
            let line = record.position().map_or(0, |p| p.line() as usize);
            let cells: Vec<String> = record.iter().map(String::from).collect();
            if cells.iter().all(String::is_empty) || cells[0].starts_with('#') {
                continue;
            }
            if table.header.is_empty() {
                table.header = cells;
                if !table.check_header(line, must, may, known) {
                    return table;
                }
                continue;
            }
            if cells.len() == table.header.len() {
                table.rows.push(Row { line, cells });
                continue;
            }
            let says = format!(
                "found {} fields, expected {}: {} (a comma inside a field needs quotes round it)",
                cells.len(),
                table.header.len(),
                table.header.join(", ")
            );
            table.complain(line, 1, &cells.join(","), says);
            if table.problems.len() >= MOST_PROBLEMS {
                table.problems.push(Problem::whole(file, "the rest of the table was passed over"));
                break;
            }
        }
        if table.header.is_empty() && table.problems.is_empty() {
            let says = format!("the table is empty, expected a first line with the columns {}", must.join(", "));
            table.problems.push(Problem::whole(file, says));
        }
        table
    }

    fn check_header(&mut self, line: usize, must: &[&str], may: &dyn Fn(&str) -> bool, known: &[&str]) -> bool {
        if self.header.len() > MOST_COLUMNS {
            let excerpt: Vec<&str> = self.header.iter().take(20).map(String::as_str).collect();
            let says = format!(
                "found {} columns, expected at most {MOST_COLUMNS}; known are {}",
                self.header.len(),
                known.join(", ")
            );
            let excerpt = excerpt.join(",");
            self.complain(line, 1, &excerpt, says);
            return false;
        }
        let header = self.header.clone();
        let before = self.problems.len();
        for (i, name) in header.iter().enumerate() {
            if header[..i].contains(name) {
                self.complain(line, i + 1, &header.join(","), format!("the column `{name}` stands twice"));
            } else if !must.contains(&name.as_str()) && !may(name) {
                let hint = match nearest(name, known.iter().copied()) {
                    Some(k) => format!("did you mean `{k}`?"),
                    None => format!("known are {}", known.join(", ")),
                };
                self.complain(line, i + 1, &header.join(","), format!("there is no column `{name}`; {hint}"));
            }
        }
        for name in must.iter().filter(|m| !header.iter().any(|h| h == *m)) {
            let says = format!("the column `{name}` is missing; known are {}", known.join(", "));
            self.complain(line, 1, &header.join(","), says);
        }
        self.problems.len() == before
    }

    pub fn complain(&mut self, line: usize, column: usize, excerpt: &str, says: impl Into<String>) {
        self.problems.push(Problem::in_line(self.file, line, column, excerpt, says));
    }

    pub fn cell<'r>(&self, row: &'r Row, name: &str) -> &'r str {
        self.header.iter().position(|h| h == name).and_then(|i| row.cells.get(i)).map_or("", String::as_str)
    }

    /// The column in characters at which a cell begins in a plainly written row.
    fn column_of(&self, row: &Row, name: &str) -> usize {
        let i = self.header.iter().position(|h| h == name).unwrap_or(0);
        row.cells.iter().take(i).map(|c| c.chars().count() + 1).sum::<usize>() + 1
    }

    pub fn complain_of(&mut self, row: &Row, name: &str, says: impl std::fmt::Display) {
        let column = self.column_of(row, name);
        let excerpt = row.cells.join(",");
        self.complain(row.line, column, &excerpt, format!("{name}: {says}"));
    }

    /// A length in metres, or with its unit; `None` where the cell is empty, and a complaint where it is not one.
    pub fn length(&mut self, row: &Row, name: &str, least: f64, most: f64) -> Option<Length> {
        self.metres::<Length>(row, name).filter(|l| {
            let fine = (least..=most).contains(&l.to_m());
            if !fine {
                let found = self.cell(row, name).to_string();
                self.complain_of(row, name, format!("found {found}, expected from {least} m to {most} m"));
            }
            fine
        })
    }

    /// A quantity that may be written as a bare number of metres.
    pub fn metres<Q: Quantity>(&mut self, row: &Row, name: &str) -> Option<Q> {
        let text = self.cell(row, name).to_string();
        if text.is_empty() {
            return None;
        }
        if let Ok(v) = text.parse::<f64>()
            && v.is_finite()
        {
            return Some(Q::from_si(v));
        }
        match parse::<Q>(&text) {
            Ok(q) => Some(q),
            Err(_) => {
                let says =
                    format!("found `{text}`, expected a number of metres such as 1.415, or a length with its unit");
                self.complain_of(row, name, says);
                None
            }
        }
    }
}

/// Farthest a tape or an offset may reach.
const FAR: f64 = 10_000.0;
/// A staff is at most this long; held upside down it reads negative.
const STAFF: f64 = 8.0;

/// Reads a level book: station, backsight, intermediate, foresight, remark.
pub fn level_book(file: &str, text: &str) -> Rows<Booking> {
    let known = ["station", "backsight", "intermediate", "foresight", "remark"];
    let mut table = Table::read(file, text, &known[..4], &|c| c == "remark", &known);
    let rows = std::mem::take(&mut table.rows);
    let mut book = vec![];
    for row in &rows {
        let station = table.cell(row, "station").to_string();
        if station.is_empty() {
            table.complain_of(row, "station", "it is empty; where did the staff stand?");
            continue;
        }
        let before = table.problems.len();
        let mut read = |name: &str| table.length(row, name, -STAFF, STAFF);
        let (backsight, intermediate, foresight) = (read("backsight"), read("intermediate"), read("foresight"));
        if table.problems.len() > before {
            continue;
        }
        let remark = table.cell(row, "remark").to_string();
        book.push(Booking { row: row.line, station, backsight, intermediate, foresight, remark });
    }
    (book, table.problems)
}

/// Reads positions: point, along and off the base line, or `from X` for tapes, and the side where two tapes leave it open.
pub fn positions(file: &str, text: &str) -> Rows<PositionRow> {
    let known = ["point", "along", "off", "from A", "side", "remark"];
    let may = |c: &str| known.contains(&c) || c.strip_prefix("from ").is_some_and(|p| !p.trim().is_empty());
    let mut table = Table::read(file, text, &["point"], &may, &known);
    let tapes: Vec<(String, String)> = table
        .header
        .iter()
        .filter_map(|h| h.strip_prefix("from ").map(|p| (h.clone(), p.trim().to_string())))
        .collect();
    let rows = std::mem::take(&mut table.rows);
    let mut read = vec![];
    for row in &rows {
        let point = table.cell(row, "point").to_string();
        if point.is_empty() {
            table.complain_of(row, "point", "it is empty; which point is it?");
            continue;
        }
        let before = table.problems.len();
        let (along, off) = (table.length(row, "along", -FAR, FAR), table.length(row, "off", -FAR, FAR));
        let mut ties = vec![];
        for (column, peg) in &tapes {
            if let Some(l) = table.length(row, column, 0.0, FAR) {
                ties.push((peg.clone(), l));
            }
        }
        let left = side(&mut table, row);
        if along.is_some() != off.is_some() {
            let name = if along.is_some() { "off" } else { "along" };
            table.complain_of(row, name, "along and off belong together, and one of them is empty");
        }
        if table.problems.len() > before {
            continue;
        }
        if along.is_none() && ties.len() < 2 {
            table.complain_of(row, "point", format!("{point} needs along and off, or at least two tapes"));
            continue;
        }
        read.push(PositionRow { row: row.line, point, offset: along.zip(off), ties, left });
    }
    (read, table.problems)
}

fn side(table: &mut Table, row: &Row) -> Option<bool> {
    match table.cell(row, "side") {
        "" => None,
        "left" => Some(true),
        "right" => Some(false),
        other => {
            let says = format!("found `{other}`, expected left or right of the base line, or nothing");
            table.complain_of(row, "side", says);
            None
        }
    }
}

/// Reads spots: point, east, north, level.
pub fn spots(file: &str, text: &str) -> Rows<Spot> {
    let known = ["point", "east", "north", "level", "remark"];
    let mut table = Table::read(file, text, &known[..4], &|c| c == "remark", &known);
    let rows = std::mem::take(&mut table.rows);
    let mut read = vec![];
    for row in &rows {
        let id = table.cell(row, "point").to_string();
        let before = table.problems.len();
        let (x, y) = (table.length(row, "east", -1e6, 1e6), table.length(row, "north", -1e6, 1e6));
        let level: Option<Level> = table.metres(row, "level");
        if let (Some(x), Some(y), Some(level), false) = (x, y, level, id.is_empty()) {
            read.push(Spot { id, at: Point::m(x.to_m(), y.to_m()), level });
        } else if table.problems.len() == before {
            table.complain_of(row, "point", "a spot needs a name, east, north and a level");
        }
    }
    (read, table.problems)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said<T>(rows: Rows<T>) -> Vec<String> {
        rows.1.iter().map(|p| p.to_string().lines().next().unwrap_or_default().to_string()).collect()
    }

    #[test]
    fn a_stray_column_and_a_stray_field_are_named_with_their_line() {
        let book = "station,backsight,intermediate,foresight,remrk\nA,1.4,,,\n";
        assert_eq!(said(level_book("l.csv", book)), ["l.csv:1:5: there is no column `remrk`; did you mean `remark`?"]);
        let book = "station,backsight,intermediate,foresight\nA,1.4,,\nB,,1.2,,,7\n";
        let (rows, problems) = level_book("l.csv", book);
        assert_eq!((rows.len(), problems.len()), (1, 1));
        assert!(problems[0].to_string().starts_with("l.csv:3:1: found 6 fields, expected 4"), "{}", problems[0]);
    }

    #[test]
    fn a_reading_may_carry_its_unit_and_must_be_a_staff_reading() {
        let book = "station,backsight,intermediate,foresight\nA,4 ft 6 in,,\nB,,142.5,\nC,,abc,\n";
        let (rows, problems) = level_book("l.csv", book);
        assert_eq!(rows[0].backsight, Some(Length::inch(54.0)));
        assert_eq!(problems.len(), 2);
        assert!(problems[0].says.contains("expected from -8 m to 8 m"), "{}", problems[0].says);
        assert!(problems[1].says.contains("found `abc`"));
        assert_eq!((problems[1].line, problems[1].column), (4, 4));
    }

    #[test]
    fn a_point_with_one_tape_is_not_fixed() {
        let (_, problems) = positions("p.csv", "point,along,off,from A,from B\n1,,,3.2,\n2,1.0,,,\n");
        assert!(problems[0].says.contains("at least two tapes"), "{:?}", problems[0]);
        assert!(problems[1].says.contains("belong together"));
    }
}
