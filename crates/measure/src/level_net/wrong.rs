//! What can be wrong with a level net, and what was expected?

/// A net that cannot be adjusted.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NetError {
    /// No lines.
    #[error("there are no levelled lines, expected at least one")]
    Empty,
    /// A line from a station to itself.
    #[error("row {row}: the line runs from `{station}` to itself, expected two stations")]
    ToItself {
        /// The row.
        row: usize,
        /// The station.
        station: String,
    },
    /// A figure that cannot be.
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
    /// A benchmark whose level is no number, or that is given twice.
    #[error("the benchmark `{station}` has no single level, expected one ordinary number of metres")]
    Benchmark {
        /// The station.
        station: String,
    },
    /// Too many stations.
    #[error("the net has {stations} stations without a known level, expected at most {most}")]
    TooLarge {
        /// How many.
        stations: usize,
        /// How many are solved.
        most: usize,
    },
    /// Stations without a way to a benchmark.
    #[error("`{station}` is not joined to any station whose level is known, expected a line to one of {known}")]
    Adrift {
        /// The first such station.
        station: String,
        /// The benchmarks.
        known: String,
    },
}
