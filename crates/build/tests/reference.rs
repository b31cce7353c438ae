//! Do the workings give what was published, and are codes and names kept apart?

use groundhold_build::{CAUTIONS, FINDINGS, WORKINGS};

#[test]
fn every_reference_case_agrees() {
    let said = groundhold_reference::complaints(include_str!("../../../reference/build.toml"), WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn codes_of_findings_rise_and_begin_with_b() {
    assert!(FINDINGS.windows(2).all(|w| w[0].code < w[1].code));
    assert!(FINDINGS.iter().all(|k| k.code.starts_with("B-") && k.code.len() == 5 && !k.source.is_empty()));
}

#[test]
fn cautions_have_ids_of_their_own_and_a_source() {
    for (i, c) in CAUTIONS.iter().enumerate() {
        assert!(CAUTIONS[..i].iter().all(|o| o.id != c.id) && !c.source.is_empty(), "{}", c.id);
    }
}

#[test]
fn the_sheet_of_a_critical_path_shows_each_activity() {
    let w = WORKINGS.iter().find(|w| w.name == "build/critical-path").unwrap();
    let given = [("days", vec![1.0, 2.0].into()), ("from", vec![1.0].into()), ("to", vec![2.0].into())];
    let lines: Vec<String> = w.work(&given).unwrap().lines.iter().map(ToString::to_string).collect();
    assert!(lines.contains(&"Activity 2:".to_string()) && lines.iter().any(|l| l.starts_with("EF = ")), "{lines:?}");
    let round = [("days", vec![1.0, 2.0].into()), ("from", vec![1.0, 2.0].into()), ("to", vec![2.0, 1.0].into())];
    assert!(w.work(&round).unwrap_err().to_string().contains("circle"));
}
