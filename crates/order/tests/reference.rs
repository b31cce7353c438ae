//! Do the workings of this crate give the figures of the reference cases?

use groundhold_order::{FINDINGS, WORKINGS};

#[test]
fn every_reference_case_agrees() {
    let said = groundhold_reference::complaints(include_str!("../../../reference/order.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn every_working_has_a_case() {
    let cases = groundhold_reference::read(include_str!("../../../reference/order.toml")).unwrap();
    let without: Vec<&str> =
        WORKINGS.iter().map(|w| w.name).filter(|name| !cases.iter().any(|c| c.working == *name)).collect();
    assert!(without.is_empty(), "{without:?}");
}

#[test]
fn no_code_of_a_finding_is_used_twice() {
    let mut codes: Vec<&str> = FINDINGS.iter().map(|k| k.code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), FINDINGS.len());
    assert!(codes.iter().all(|c| c.starts_with("O-") && c.len() == 5));
}
