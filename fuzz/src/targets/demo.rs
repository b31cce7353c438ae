//! The demo job, which most targets begin from.

use groundhold_exchange::{Read, read_job};

pub const JOB: &str = include_str!("../../../demo/job.toml");

const TABLES: [(&str, &str); 3] = [
    ("levels.csv", include_str!("../../../demo/levels.csv")),
    ("positions.csv", include_str!("../../../demo/positions.csv")),
    ("prices.csv", include_str!("../../../demo/prices.csv")),
];

/// The text of a table of the demo.
fn table(name: &str) -> Result<String, String> {
    let found = TABLES.iter().find(|(n, _)| *n == name);
    found.map(|(_, text)| (*text).to_string()).ok_or_else(|| "there is no such file".into())
}

/// Reads a job whose tables are the demo's.
pub fn read(text: &str) -> Read {
    read_job("job.toml", text, &table)
}
