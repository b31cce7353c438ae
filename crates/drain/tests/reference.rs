//! Do the water workings give the published figures?

#[test]
fn every_water_case_agrees_or_is_a_known_miss() {
    let said =
        groundhold_reference::complaints(include_str!("../../../reference/drain.toml"), groundhold_drain::WORKINGS);
    assert!(said.is_empty(), "{said:#?}");
}
