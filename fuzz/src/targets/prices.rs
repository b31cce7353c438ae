//! Any text as a price list.

use groundhold_exchange::read_job;

/// A job of nothing but prices, so that the time goes into them.
const JOB: &str = "schema = 1\n[measure]\nslope = { fall = \"1 m\", over = \"7 m\" }\n[order]\nprices = \"prices\"\n";

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    for problem in read_job("job.toml", JOB, &|_| Ok(text.to_string())).problems {
        assert!(!problem.to_string().is_empty());
    }
}
