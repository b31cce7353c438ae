//! Any field of any element set to any value: the first three lines. The rest is the job; the demo where there is none.

use groundhold_exchange::{apply_adjust, schema_json};
use groundhold_finding::Adjust;

use super::demo;

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let mut parts = text.splitn(4, '\n');
    let mut next = || parts.next().unwrap_or_default().to_string();
    let adjust = Adjust { element: next(), field: next(), value: next() };
    let rest = next();
    let job = if rest.is_empty() { demo::JOB } else { &rest };
    if let Ok((edited, back)) = apply_adjust(job, &adjust) {
        // What was edited is still a text that is read or complained about, and the way back brings back the value.
        let _ = demo::read(&edited);
        if let Some(back) = back {
            let (again, _) = apply_adjust(&edited, &back).expect("the way back is an edit of what is there");
            let _ = demo::read(&again);
        }
    }
    if data.first() == Some(&b'{') {
        assert!(schema_json().starts_with('{'));
    }
}
