//! Any text as entries of the diary. What is read is written and read again as the same entries.

use groundhold_exchange::append_entry;

use super::demo;

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let read = demo::read(&format!("{}\n{text}", demo::JOB));
    let Ok(job) = read.whole() else { return };
    let written = job.record.iter().fold(demo::JOB.to_string(), |all, entry| append_entry(&all, entry));
    let again = match demo::read(&written).whole() {
        Ok(job) => job,
        Err(problems) => panic!("{problems:#?}\n{written}"),
    };
    // An entry is written to the millimetre: what was written once reads and writes the same from then on.
    assert_eq!(again.record.len(), job.record.len(), "{written}");
    let twice = again.record.iter().fold(demo::JOB.to_string(), |all, entry| append_entry(&all, entry));
    assert_eq!(twice, written);
}
