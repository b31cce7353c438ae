//! Do the published cases of levelling and position still come out?

#[test]
fn every_case_of_levelling_and_position_agrees_with_its_source() {
    let said = groundhold_reference::complaints(
        include_str!("../../../reference/levelling.toml"),
        groundhold_measure::WORKINGS,
    );
    assert!(said.is_empty(), "{said:#?}");
}
