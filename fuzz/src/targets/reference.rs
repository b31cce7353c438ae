//! Any text as published check cases, each run by its working.

pub fn run(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let Ok(cases) = groundhold_reference::read(text) else { return };
    let workings = groundhold_plan::workings();
    for case in &cases {
        let outcome = groundhold_reference::run(case, &workings);
        assert!(outcome.refused.as_ref().is_none_or(|why| !why.is_empty()));
    }
}
