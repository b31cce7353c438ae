//! What happens when nobody listens to the end?
#![allow(clippy::unwrap_used, missing_docs)]

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

/// Runs the program, reads so many lines and goes away; gives its exit code and what it complained.
fn heard(args: &[&str], lines: usize) -> (Option<i32>, String) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_groundhold"))
        .args(args)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut out = BufReader::with_capacity(64, child.stdout.take().unwrap());
    for _ in 0..lines {
        out.read_line(&mut String::new()).unwrap();
    }
    drop(out);
    let done = child.wait_with_output().unwrap();
    (done.status.code(), String::from_utf8_lossy(&done.stderr).into_owned())
}

#[test]
fn a_listener_who_goes_away_ends_the_program_quietly() {
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo");
    for args in [&["plan", demo][..], &["--json", "plan", demo], &["explain"], &["schema"], &["work"]] {
        for lines in [0, 3] {
            assert_eq!(heard(args, lines), (Some(0), String::new()), "{args:?} after {lines} lines");
        }
    }
}
