//! What levels does a staff-and-level book give, do its sums agree, and how well does it close?

use groundhold_finding::Finding;
use groundhold_quantity::{Length, Level};
use groundhold_working::Trace;

use crate::misclose::MiscloseRule;

mod formula;
mod reduction;
mod stations;
mod text;
mod wrong;

pub use formula::{CORRECTION, HEIGHT_OF_COLLIMATION, RISE_AND_FALL, SIGMA};
pub use reduction::reduce;
pub use stations::compare_booked;
pub use text::{read_book, write_book};
pub use wrong::BookError;

/// One row of a level book. A staff held upside down reads negative.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Booking {
    /// Its line in the file it came from.
    pub row: usize,
    /// Where the staff stood.
    pub station: String,
    /// First reading of a set-up, onto a known level.
    pub backsight: Option<Length>,
    /// A reading between the first and the last of a set-up.
    pub intermediate: Option<Length>,
    /// Last reading of a set-up. With a backsight in the same row the station is a change point.
    pub foresight: Option<Length>,
    /// What was noted beside it.
    pub remark: String,
}

/// A station whose level is known.
#[derive(Debug, Clone, PartialEq)]
pub struct Benchmark {
    /// Its name in the book.
    pub station: String,
    /// Its level.
    pub level: Level,
}

/// What a reduction needs beside the book.
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// Where the book starts.
    pub start: Benchmark,
    /// The known level on which it ends. Without one, a book that ends on its start closes there.
    pub close: Option<Benchmark>,
    /// How far it may miss.
    pub rule: MiscloseRule,
    /// Length of the whole run, for rules that count kilometres.
    pub run: Option<Length>,
    /// Standard deviation of one staff reading.
    pub reading: Length,
}

/// Standard deviation of one reading of a staff in centimetre blocks through a builder's level within 40 m, staff held
/// by eye: 2 mm. Common practice, no source.
pub const READING: Length = Length::mm(2.0);

impl Terms {
    /// From a start; closing on the start if the book ends there, by the usual rule and [`READING`].
    pub fn from_start(station: &str, level: Level) -> Terms {
        Terms {
            start: Benchmark { station: station.into(), level },
            close: None,
            rule: MiscloseRule::default(),
            run: None,
            reading: READING,
        }
    }
}

/// One row, reduced.
#[derive(Debug, Clone, PartialEq)]
pub struct ReducedRow {
    /// Its line in the file.
    pub row: usize,
    /// Where the staff stood.
    pub station: String,
    /// The set-up it was seen from, counted from 1 and 0 for the first row; for a change point the one of its foresight.
    pub set_up: usize,
    /// Height of collimation of the set-up that begins here, where one does.
    pub collimation: Option<Level>,
    /// Height above the row before, positive for a rise; `None` in the first row.
    pub rise_fall: Option<Length>,
    /// Level before the misclose is distributed.
    pub level_raw: Level,
    /// What the distribution of the misclose adds.
    pub correction: Length,
    /// The level.
    pub level: Level,
    /// Its standard deviation against the start.
    pub sigma: Length,
    /// True for a backsight in the first row or beside a foresight: the instrument was moved here.
    pub turns: bool,
}

/// The sums a surveyor writes under the columns. Each pair agrees to rounding, or the reduction is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Checks {
    /// Sum of the backsights, up to the last foresight.
    pub sum_backsights: Length,
    /// Sum of the foresights.
    pub sum_foresights: Length,
    /// Level of the last foresight above the start.
    pub last_minus_first: Length,
    /// Sum of the rises of the whole book.
    pub sum_rises: Length,
    /// Sum of the falls of the whole book, positive.
    pub sum_falls: Length,
    /// Level of the last row above the start, by rise and fall.
    pub last_row_minus_first: Length,
    /// Sum of all levels but the first.
    pub sum_levels: Length,
    /// Each height of collimation times the sights from it, less the intermediate sights and foresights.
    pub sum_from_collimation: Length,
    /// Largest difference of a level by the two methods.
    pub methods_apart: Length,
}

/// A level book, reduced.
#[derive(Debug, Clone, PartialEq)]
pub struct Reduced {
    /// Each row.
    pub rows: Vec<ReducedRow>,
    /// The sums.
    pub checks: Checks,
    /// Set-ups that were closed by a foresight.
    pub set_ups: usize,
    /// Level found at the close less its known level; `None` for a book that does not close.
    pub misclose: Option<Length>,
    /// The largest misclose allowed; `None` for a book without a foresight.
    pub allowed: Option<Length>,
    /// True when it closes within what is allowed; only then is the misclose distributed.
    pub accepted: bool,
    /// What it has against itself.
    pub findings: Vec<Finding>,
    /// The reduction by height of collimation, by rise and fall, and the allowed misclose.
    pub traces: Vec<Trace>,
    /// Stations whose level was known: the start and, where one was given, the close.
    pub benchmarks: Vec<Benchmark>,
}

/// What a station is in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Its level was known before.
    Benchmark,
    /// The instrument was moved while the staff stood there.
    ChangePoint,
    /// A point that was only read.
    Spot,
}

/// A station with its level.
#[derive(Debug, Clone, PartialEq)]
pub struct Levelled {
    /// Its name.
    pub station: String,
    /// Its level: the known one, or the mean of its readings weighted by their variance.
    pub level: Level,
    /// Standard deviation against the start; that of the best reading where there are several.
    pub sigma: Length,
    /// What it is.
    pub role: Role,
    /// The rows it was read in.
    pub rows: Vec<usize>,
}
