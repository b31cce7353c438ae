//! Any text as a job file. What is read without a problem is written and read again as the same job.

use groundhold_exchange::{job_tables, job_text, read_job};

use super::demo;

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let read = demo::read(text);
    for problem in &read.problems {
        assert!(!problem.to_string().is_empty());
    }
    let Ok(job) = read.whole() else { return };
    let (written, tables) = (job_text(&job), job_tables(&job));
    let open = |name: &str| {
        let found = tables.iter().find(|(n, _)| n == name);
        found.map(|(_, t)| t.clone()).ok_or_else(|| format!("`{name}` was not written"))
    };
    match read_job("job.toml", &written, &open).whole() {
        Ok(again) => assert_eq!(again, job, "{written}"),
        Err(problems) => panic!("{problems:#?}\n{written}"),
    }
}
