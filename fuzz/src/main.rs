//! One program for all targets: the variable `GROUNDHOLD_FUZZ` names the one that is run.
#![no_main]

mod targets;

use std::sync::OnceLock;

use libfuzzer_sys::fuzz_target;

static TARGET: OnceLock<fn(&[u8])> = OnceLock::new();

fuzz_target!(|data: &[u8]| {
    let run = TARGET.get_or_init(|| {
        let name = std::env::var("GROUNDHOLD_FUZZ").unwrap_or_default();
        let found = targets::TARGETS.iter().find(|(n, _)| *n == name);
        found.unwrap_or_else(|| panic!("GROUNDHOLD_FUZZ is `{name}`; `cargo xtask fuzz` lists the targets")).1
    });
    run(data);
});
