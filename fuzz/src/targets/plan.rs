//! The demo with any of its numbers changed, planned: it is refused in words, or the plan holds together.

use groundhold_plan::{check, plan};

use super::demo;

/// At most so many numbers are changed: more of them only make the first error come sooner.
const MOST: usize = 12;

pub fn run(data: &[u8]) {
    let mut text = demo::JOB.to_string();
    for change in data.chunks_exact(4).take(MOST) {
        text = changed(&text, usize::from(change[0]) | usize::from(change[1]) << 8, change[2], change[3]);
    }
    let Ok(job) = demo::read(&text).whole() else { return };
    match plan(&job) {
        Err(troubles) => assert!(troubles.iter().all(|t| !t.says.is_empty()), "{text}"),
        Ok(plan) => {
            let violated = check(&plan);
            assert!(violated.is_empty(), "{violated:?}\n{text}");
        }
    }
}

/// The text with one of its numbers, all of which stand in quotes, made another.
fn changed(text: &str, which: usize, how: u8, by: u8) -> String {
    let numbers: Vec<(usize, usize)> = numbers(text);
    let Some(&(from, to)) = numbers.get(which % numbers.len().max(1)) else { return text.into() };
    let old: f64 = text[from..to].parse().unwrap_or(0.0);
    let new = match how % 6 {
        0 => old * f64::from(by) / 128.0,
        1 => -old,
        2 => old + (f64::from(by) - 128.0) / 64.0,
        3 => f64::from(by),
        4 => old * 10f64.powi(i32::from(by % 9) - 4),
        _ => 0.0,
    };
    format!("{}{new}{}", &text[..from], &text[to..])
}

/// Where numbers begin and end: after a quote, or after the colon of a slope.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    let bytes = text.as_bytes();
    let part = |b: u8| b.is_ascii_digit() || b == b'.' || b == b'-';
    let begins = |i: usize| i > 0 && (bytes[i - 1] == b'"' || bytes[i - 1] == b':') && part(bytes[i]);
    let ends = |i: usize| (i..bytes.len()).find(|j| !part(bytes[*j])).unwrap_or(bytes.len());
    (0..bytes.len()).filter(|i| begins(*i)).map(|i| (i, ends(i))).collect()
}
