//! How is a level book written as one line of text, for a calculation sheet or a reference case?

use groundhold_quantity::Length;

use super::Booking;

/// Reads a book such as `A BS 2.415; CP1 BS 3.600 FS 1.819; P1 IS 4.680; A FS 2.101`: rows parted by semicolons or line
/// ends, readings in metres, the station's name before them if it has one (else the row's number).
///
/// # Errors
/// Names the row and what was expected.
///
/// ```
/// let book = groundhold_measure::level_book::read_book("A BS 2.415; IS -1.5; B FS 1.2").unwrap();
/// assert_eq!((book[1].station.as_str(), book[1].intermediate.unwrap().to_m()), ("2", -1.5));
/// ```
pub fn read_book(text: &str) -> Result<Vec<Booking>, String> {
    text.split([';', '\n'])
        .map(str::trim)
        .filter(|t| !t.is_empty())
        .enumerate()
        .map(|(i, t)| read_row(i + 1, t))
        .collect()
}

fn read_row(row: usize, text: &str) -> Result<Booking, String> {
    let mut booking = Booking { row, ..Booking::default() };
    let mut words = text.split_whitespace().peekable();
    let mut name = vec![];
    while let Some(word) = words.next() {
        let Some((kind, glued)) = kind_of(word) else {
            name.push(word);
            continue;
        };
        let number = if glued.is_empty() { words.next().unwrap_or("") } else { glued };
        let value = number.replace('−', "-").parse::<f64>().map_err(|_| {
            format!("row {row}: found `{number}` after {kind}, expected a staff reading in metres, for example `{kind} 1.250`")
        })?;
        let place = match kind {
            "BS" => &mut booking.backsight,
            "IS" => &mut booking.intermediate,
            _ => &mut booking.foresight,
        };
        if place.replace(Length::m(value)).is_some() {
            return Err(format!("row {row}: {kind} stands twice, expected it once"));
        }
    }
    booking.station = if name.is_empty() { row.to_string() } else { name.join(" ") };
    Ok(booking)
}

/// `BS`, `IS` or `FS` at the head of a word that goes on with a number or not at all.
fn kind_of(word: &str) -> Option<(&'static str, &str)> {
    ["BS", "IS", "FS"].into_iter().find_map(|kind| {
        let rest = word.strip_prefix(kind)?;
        rest.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | '−')).then_some((kind, rest))
    })
}

/// Writes a book so that [`read_book`] reads the same readings; stations are left out.
pub fn write_book(book: &[Booking]) -> String {
    let row = |b: &Booking| {
        let readings = [("BS", b.backsight), ("IS", b.intermediate), ("FS", b.foresight)];
        let written = readings.iter().filter_map(|(kind, r)| r.map(|r| format!("{kind} {}", r.to_m())));
        written.collect::<Vec<_>>().join(" ")
    };
    book.iter().map(row).collect::<Vec<_>>().join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again() {
        let text = "BS 2.415; BS 3.6 FS 1.819; IS -1.5; FS 0.9";
        assert_eq!(write_book(&read_book(text).unwrap()), text);
    }

    #[test]
    fn a_missing_number_is_named_with_its_row() {
        assert_eq!(
            read_book("BS 1.2; FS").unwrap_err(),
            "row 2: found `` after FS, expected a staff reading in metres, for example `FS 1.250`"
        );
        assert!(read_book("BS 1.2 BS 1.3").unwrap_err().contains("stands twice"));
    }

    #[test]
    fn a_station_whose_name_begins_like_a_reading_keeps_its_name() {
        let book = read_book("BSX BS 1.0; FS-peg by gate IS1.25").unwrap();
        assert_eq!(book[0].station, "BSX");
        assert_eq!((book[1].station.as_str(), book[1].intermediate), ("FS-peg by gate", Some(Length::m(1.25))));
    }
}
