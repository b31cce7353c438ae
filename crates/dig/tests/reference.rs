//! Do the earthwork workings give the published figures?

#[test]
fn every_earthwork_case_agrees_or_is_a_known_miss() {
    let said =
        groundhold_reference::complaints(include_str!("../../../reference/earthworks.toml"), groundhold_dig::WORKINGS);
    assert!(said.is_empty(), "{said:#?}");
}
