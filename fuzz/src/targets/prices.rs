//! Any text as a price list.

use super::demo;

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    for problem in demo::read(demo::JOB, Some(("prices.csv", text))).problems {
        assert!(!problem.to_string().is_empty());
    }
}
