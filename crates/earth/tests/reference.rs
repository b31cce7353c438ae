//! Do the workings of this crate still give the published figures?

use groundhold_earth::WORKINGS;
use groundhold_reference::complaints;

#[test]
fn earth_pressures_agree_with_the_published_cases() {
    let said = complaints(include_str!("../../../reference/pressure.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn slopes_and_slips_agree_with_the_published_cases() {
    let said = complaints(include_str!("../../../reference/slope.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn walls_by_weight_agree_with_the_published_cases() {
    let said = complaints(include_str!("../../../reference/walls.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn bearing_agrees_with_the_published_cases() {
    let said = complaints(include_str!("../../../reference/bearing.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn settlement_agrees_with_the_published_cases() {
    let said = complaints(include_str!("../../../reference/settlement.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}
