//! What can be wrong with a level book, and what was expected?

use groundhold_quantity::Length;

use super::{Booking, Terms};
use crate::misclose::Per;

/// Something in a level book that keeps it from being reduced.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BookError {
    /// No rows.
    #[error("the level book is empty, expected a first row with a backsight on `{start}`")]
    Empty {
        /// The start station.
        start: String,
    },
    /// The start or closing level is no number.
    #[error("the level of `{station}` is {level}, expected an ordinary number of metres")]
    NoLevel {
        /// The station.
        station: String,
        /// What was given.
        level: f64,
    },
    /// A row without a name.
    #[error("row {row}: the station has no name, expected one, for example `A1`")]
    NoStation {
        /// The row.
        row: usize,
    },
    /// A row without a reading.
    #[error("row {row} ({station}): there is no reading, expected a backsight, an intermediate sight or a foresight")]
    NoReading {
        /// The row.
        row: usize,
        /// The station.
        station: String,
    },
    /// The book does not begin with a backsight.
    #[error("row {row} ({station}): the book begins with {found}, expected only a backsight on a known level first")]
    NoBacksightFirst {
        /// The row.
        row: usize,
        /// The station.
        station: String,
        /// What stands there.
        found: &'static str,
    },
    /// The first backsight is not on the start.
    #[error(
        "row {row}: the first backsight is on `{station}`, whose level is not known, expected `{start}` or a level for `{station}`"
    )]
    UnknownStart {
        /// The row.
        row: usize,
        /// What stands there.
        station: String,
        /// The start station.
        start: String,
    },
    /// An intermediate sight beside another reading.
    #[error(
        "row {row} ({station}): an intermediate sight and {other} in one row, expected the intermediate sight alone; only backsight and foresight share a row, at a change point"
    )]
    IntermediateNotAlone {
        /// The row.
        row: usize,
        /// The station.
        station: String,
        /// The other reading.
        other: &'static str,
    },
    /// The book goes on after a foresight without a new backsight.
    #[error(
        "row {row} ({station}): a foresight without a backsight, but the book goes on in row {next}; expected a backsight in row {row} too (a change point), or an intermediate sight here if the instrument was not moved"
    )]
    NoBacksightAfter {
        /// The row.
        row: usize,
        /// The station.
        station: String,
        /// The row that follows.
        next: usize,
    },
    /// A backsight in the middle of the book without a foresight.
    #[error(
        "row {row} ({station}): a backsight without a foresight in the middle of the book, expected both in one row (a change point), or a book of its own for a new start"
    )]
    NoForesightBefore {
        /// The row.
        row: usize,
        /// The station.
        station: String,
    },
    /// A reading that no staff gives.
    #[error("row {row} ({station}): the {which} is {reading} m, expected a staff reading from −5 m to 5 m")]
    NotOnStaff {
        /// The row.
        row: usize,
        /// The station.
        station: String,
        /// Which reading.
        which: &'static str,
        /// What it is.
        reading: f64,
    },
    /// The closing level belongs to a station on which the book does not end.
    #[error(
        "row {row}: the book ends with {found}, expected a foresight on `{expected}`, whose level is given as the close"
    )]
    ClosesElsewhere {
        /// The last row.
        row: usize,
        /// What stands there.
        found: String,
        /// The closing station.
        expected: String,
    },
    /// A rule by kilometres without the length of the run.
    #[error(
        "the rule `{rule}` counts kilometres, expected the length of the run (1 m to 10 000 km), or a rule that counts set-ups"
    )]
    NoRun {
        /// The rule.
        rule: &'static str,
    },
    /// The accuracy of a reading is no use.
    #[error("the standard deviation of a staff reading is {sigma} m, expected more than 0 and at most 0.1 m")]
    NoAccuracy {
        /// What was given.
        sigma: f64,
    },
}

/// Longest staff that is read, upright or upside down.
const STAFF: Length = Length::m(5.0);

/// Everything that is wrong with the rows themselves.
pub(super) fn complaints(book: &[Booking]) -> Vec<BookError> {
    let mut wrong = vec![];
    for (i, b) in book.iter().enumerate() {
        row_alone(b, &mut wrong);
        if i == 0 {
            first_row(b, &mut wrong);
        } else if b.backsight.is_some() && b.foresight.is_none() && b.intermediate.is_none() {
            wrong.push(BookError::NoForesightBefore { row: b.row, station: b.station.clone() });
        }
        if let Some(next) = book.get(i + 1)
            && b.foresight.is_some()
            && b.backsight.is_none()
        {
            wrong.push(BookError::NoBacksightAfter { row: b.row, station: b.station.clone(), next: next.row });
        }
    }
    wrong
}

fn row_alone(b: &Booking, wrong: &mut Vec<BookError>) {
    let (row, station) = (b.row, b.station.clone());
    if b.station.trim().is_empty() {
        wrong.push(BookError::NoStation { row });
    }
    let readings = [("backsight", b.backsight), ("intermediate sight", b.intermediate), ("foresight", b.foresight)];
    if readings.iter().all(|(_, r)| r.is_none()) {
        wrong.push(BookError::NoReading { row, station: station.clone() });
    }
    for (which, reading) in readings.into_iter().filter_map(|(w, r)| Some((w, r?))) {
        let on_staff = reading.abs() <= STAFF;
        if !on_staff {
            wrong.push(BookError::NotOnStaff { row, station: station.clone(), which, reading: reading.to_m() });
        }
    }
    if b.intermediate.is_some() {
        let other = match (b.backsight, b.foresight) {
            (None, None) => return,
            (Some(_), None) => "a backsight",
            (None, Some(_)) => "a foresight",
            (Some(_), Some(_)) => "a backsight and a foresight",
        };
        wrong.push(BookError::IntermediateNotAlone { row, station, other });
    }
}

fn first_row(b: &Booking, wrong: &mut Vec<BookError>) {
    let found = match (b.backsight, b.intermediate, b.foresight) {
        (Some(_), _, None) | (None, None, None) => return,
        (Some(_), _, Some(_)) => "a backsight and a foresight",
        (None, Some(_), _) => "an intermediate sight",
        (None, None, Some(_)) => "a foresight",
    };
    wrong.push(BookError::NoBacksightFirst { row: b.row, station: b.station.clone(), found });
}

/// Everything that is wrong between the book and what is known about it.
pub(super) fn complaints_with_terms(book: &[Booking], terms: &Terms) -> Vec<BookError> {
    let mut wrong = vec![];
    for k in std::iter::once(&terms.start).chain(&terms.close) {
        if !k.level.is_finite() {
            wrong.push(BookError::NoLevel { station: k.station.clone(), level: k.level.to_m() });
        }
    }
    let run_known = terms.run.is_some_and(|r| (1.0..=1e7).contains(&r.to_m()));
    if terms.rule.per == Per::Kilometre && !run_known {
        wrong.push(BookError::NoRun { rule: terms.rule.key });
    }
    let sigma = terms.reading.to_m();
    if !(0.0 < sigma && sigma <= 0.1) {
        wrong.push(BookError::NoAccuracy { sigma });
    }
    let (Some(first), Some(last)) = (book.first(), book.last()) else {
        wrong.push(BookError::Empty { start: terms.start.station.clone() });
        return wrong;
    };
    if first.backsight.is_some() && first.station.trim() != terms.start.station.trim() {
        let (station, start) = (first.station.clone(), terms.start.station.clone());
        wrong.push(BookError::UnknownStart { row: first.row, station, start });
    }
    if let Some(close) = &terms.close
        && (last.foresight.is_none() || last.station.trim() != close.station.trim())
    {
        let kind = if last.foresight.is_some() { "a foresight" } else { "no foresight" };
        let found = format!("{kind} on `{}`", last.station);
        wrong.push(BookError::ClosesElsewhere { row: last.row, found, expected: close.station.clone() });
    }
    wrong
}
