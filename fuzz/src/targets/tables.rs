//! Any text as a level book, as a position book and as spots.

use super::demo;

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let with_spots = demo::JOB.replacen("[ground]", "spots = \"spots.csv\"\n\n[ground]", 1);
    for table in ["levels.csv", "positions.csv", "spots.csv"] {
        for problem in demo::read(&with_spots, Some((table, text))).problems {
            assert!(!problem.to_string().is_empty());
        }
    }
}
