//! Does the demo still say the same, document by document? The kept texts lie in `tests/documents`, to be read in review.
//!
//! `GROUNDHOLD_RENEW=1 cargo test -p groundhold-cases --test documents` writes them anew; what changed is then seen in the
//! version control.
#![allow(clippy::unwrap_used, missing_docs)]

use std::path::Path;

use groundhold_cases::{demo, planned};
use groundhold_exchange::tables_out;

#[track_caller]
fn kept(name: &str, now: &str) {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/documents").join(name);
    if std::env::var_os("GROUNDHOLD_RENEW").is_some() {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(&file, now).unwrap();
    }
    let before = std::fs::read_to_string(&file).unwrap_or_default().replace("\r\n", "\n");
    let lines = |t: &str| t.lines().map(str::to_string).collect::<Vec<_>>();
    let (b, n) = (lines(&before), lines(now));
    if let Some(i) = (0..b.len().max(n.len())).find(|i| b.get(*i) != n.get(*i)) {
        let line = |all: &[String]| all.get(i).cloned().unwrap_or("(nothing)".into());
        panic!(
            "{name} line {}:\n  kept {}\n  now  {}\nGROUNDHOLD_RENEW=1 keeps what is now",
            i + 1,
            line(&b),
            line(&n)
        );
    }
}

fn table(name: &str) -> String {
    let tables = tables_out(&planned(&demo()));
    let names: Vec<&String> = tables.iter().map(|(n, _)| n).collect();
    tables
        .iter()
        .find(|(n, _)| n == name)
        .unwrap_or_else(|| panic!("no {name} among {names:?}"))
        .1
        .replace("\r\n", "\n")
}

#[test]
fn the_cutting_list_of_the_demo_is_the_kept_one() {
    kept("cutting-list.csv", &table("cutting-list.csv"));
}

#[test]
fn the_set_out_table_of_the_demo_is_the_kept_one() {
    kept("set-out.csv", &table("set-out.csv"));
}

#[test]
fn the_post_table_of_the_demo_is_the_kept_one() {
    kept("posts.csv", &table("posts.csv"));
}

#[test]
fn the_programme_of_the_demo_is_the_kept_one() {
    kept("programme.csv", &table("programme.csv"));
}
