//! What can be wrong with ties and offsets, and what was expected?

use super::Side;

/// Something that keeps a point from being found.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PositionError {
    /// A name that is neither a peg nor a point with readings.
    #[error("row {row}: `{name}` is not a known peg or point, expected one of {known}")]
    UnknownEnd {
        /// The row.
        row: usize,
        /// What was written.
        name: String,
        /// What is known.
        known: String,
    },
    /// A peg given twice.
    #[error("the peg `{peg}` is given at two places, expected one")]
    PegTwice {
        /// The peg.
        peg: String,
    },
    /// A coordinate that is no number, or too far off to keep millimetres.
    #[error("the peg `{peg}` lies at ({x}, {y}), expected coordinates between −1000 km and 1000 km")]
    PegNowhere {
        /// The peg.
        peg: String,
        /// East.
        x: f64,
        /// North.
        y: f64,
    },
    /// A distance that no tape gives.
    #[error("row {row}: {what} is {value} m, expected {expected}")]
    OutOfRange {
        /// The row.
        row: usize,
        /// Which figure.
        what: &'static str,
        /// What it is.
        value: f64,
        /// What was expected.
        expected: &'static str,
    },
    /// The stated accuracy is no use.
    #[error("the accuracy of {what} is {value}, expected {expected}")]
    NoAccuracy {
        /// Which.
        what: &'static str,
        /// What was given.
        value: f64,
        /// What was expected.
        expected: &'static str,
    },
    /// A tie from a point to itself.
    #[error("row {row}: `{point}` is tied to itself, expected another peg or point")]
    ToItself {
        /// The row.
        row: usize,
        /// The point.
        point: String,
    },
    /// A base line without length.
    #[error("row {row}: the base line `{from}`–`{to}` has no length, expected two pegs at least 0.1 m apart")]
    NoBaseLine {
        /// The row.
        row: usize,
        /// First peg.
        from: String,
        /// Second peg.
        to: String,
    },
    /// A tape along the ground between stations without levels.
    #[error(
        "row {row}: the tape lay along the ground, but `{station}` has no level, expected levels of both ends, a height difference, or a level tape"
    )]
    NoLevel {
        /// The row.
        row: usize,
        /// The station.
        station: String,
    },
    /// A tape shorter than the height between its ends.
    #[error(
        "row {row}: the tape reads {tape:.3} m, but its ends differ in height by {rise:.3} m, expected less than the tape"
    )]
    TooSteep {
        /// The row.
        row: usize,
        /// The tape, metres.
        tape: f64,
        /// The height difference, metres.
        rise: f64,
    },
    /// Not enough readings.
    #[error(
        "`{point}` has {count} usable reading(s) ({rows}), expected at least two distances, or an offset with its distance along, to pegs or to points already fixed"
    )]
    TooFew {
        /// The point.
        point: String,
        /// How many it has.
        count: usize,
        /// Which rows.
        rows: String,
    },
    /// Too many points that hang on each other.
    #[error(
        "{count} points from `{point}` on hang on each other by ties, expected at most {most}; tie some of them to pegs instead"
    )]
    TooManyTogether {
        /// The first of them.
        point: String,
        /// How many.
        count: usize,
        /// How many can be found together.
        most: usize,
    },
    /// Two ties that cannot meet.
    #[error(
        "`{point}`: {first_read:.3} m from `{first}` (row {first_row}) and {second_read:.3} m from `{second}` (row {second_row}) do not meet: the pegs are {apart:.3} m apart and the two distances are {how} by {by:.3} m; measure both again"
    )]
    DoNotMeet {
        /// The point.
        point: String,
        /// The first peg.
        first: String,
        /// Its row.
        first_row: usize,
        /// Its distance, metres.
        first_read: f64,
        /// The second peg.
        second: String,
        /// Its row.
        second_row: usize,
        /// Its distance, metres.
        second_read: f64,
        /// Distance of the pegs, metres.
        apart: f64,
        /// `together too short`, or `too unlike`.
        how: &'static str,
        /// By how much, metres.
        by: f64,
    },
    /// Two places fit.
    #[error(
        "`{point}` could lie at ({:.3}, {:.3}) or at ({:.3}, {:.3}): its readings fit both; say on which side of {line} it lies (left or right), or tie it to a peg off that line",
        .first.0, .first.1, .second.0, .second.1
    )]
    TwoPlaces {
        /// The point.
        point: String,
        /// One place, metres east and north.
        first: (f64, f64),
        /// The other.
        second: (f64, f64),
        /// A line that tells them apart.
        line: String,
    },
    /// The stated side does not fit the readings.
    #[error("row {row}: `{point}` is said to lie {} of `{from}`–`{to}`, but its readings put it on the other side", side_word(*.side))]
    WrongSide {
        /// The row of the statement.
        row: usize,
        /// The point.
        point: String,
        /// What was said.
        side: Side,
        /// First peg of the line.
        from: String,
        /// Second peg of the line.
        to: String,
    },
    /// The readings leave the point free in some direction.
    #[error(
        "`{point}` is not held by its readings ({rows}): it can slide across them; add a tie from another direction"
    )]
    Loose {
        /// The point.
        point: String,
        /// Which rows.
        rows: String,
    },
}

fn side_word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}
