//! Does the summary of the demo still say the same? The kept text lies in `tests/documents`, to be read in review.
//!
//! `GROUNDHOLD_RENEW=1 cargo test -p groundhold-cli --test documents` writes it anew.
#![allow(clippy::unwrap_used, missing_docs)]

use std::path::Path;
use std::process::Command;

#[test]
fn the_summary_of_the_demo_is_the_kept_one() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let said =
        Command::new(env!("CARGO_BIN_EXE_groundhold")).arg("plan").arg(here.join("../../demo")).output().unwrap();
    assert!(said.status.success());
    let now = String::from_utf8(said.stdout).unwrap().replace("\r\n", "\n");
    let file = here.join("tests/documents/summary.txt");
    if std::env::var_os("GROUNDHOLD_RENEW").is_some() {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(&file, &now).unwrap();
    }
    let before = std::fs::read_to_string(&file).unwrap_or_default().replace("\r\n", "\n");
    let differs = before.lines().zip(now.lines()).find(|(b, n)| b != n);
    assert!(before == now, "kept and now differ, first in {differs:?}; GROUNDHOLD_RENEW=1 keeps what is now");
}
