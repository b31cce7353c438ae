//! Every working and every kind of finding, in one list each.

use groundhold_finding::Kind;
use groundhold_working::Working;

/// Every working, by stage.
pub fn workings() -> Vec<&'static Working> {
    [
        groundhold_measure::WORKINGS,
        groundhold_shape::WORKINGS,
        groundhold_earth::WORKINGS,
        groundhold_member::WORKINGS,
        groundhold_hold::WORKINGS,
        groundhold_drain::WORKINGS,
        groundhold_dig::WORKINGS,
        groundhold_order::WORKINGS,
        groundhold_setout::WORKINGS,
        groundhold_build::WORKINGS,
        &[&crate::near::ROOTS],
    ]
    .concat()
}

/// The working of this name.
pub fn working(name: &str) -> Option<&'static Working> {
    workings().into_iter().find(|w| w.name == name)
}

/// Every kind of finding, by stage.
pub fn finding_kinds() -> Vec<&'static Kind> {
    [
        groundhold_measure::FINDINGS,
        groundhold_shape::FINDINGS,
        groundhold_hold::FINDINGS,
        groundhold_drain::FINDINGS,
        groundhold_dig::FINDINGS,
        groundhold_order::FINDINGS,
        groundhold_setout::FINDINGS,
        groundhold_build::FINDINGS,
        crate::near::FINDINGS,
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_workings_share_a_name_and_no_two_findings_a_code() {
        let mut names: Vec<&str> = workings().iter().map(|w| w.name).collect();
        names.sort_unstable();
        assert!(names.windows(2).all(|w| w[0] != w[1]), "{:?}", names.windows(2).find(|w| w[0] == w[1]));
        let mut codes: Vec<&str> = finding_kinds().iter().map(|k| k.code).collect();
        codes.sort_unstable();
        assert!(codes.windows(2).all(|w| w[0] != w[1]), "{:?}", codes.windows(2).find(|w| w[0] == w[1]));
    }

    #[test]
    fn every_working_and_finding_names_a_source() {
        for w in workings() {
            assert!(!w.source.work.is_empty() && !w.title.is_empty() && !w.not_for.is_empty(), "{}", w.name);
        }
        for k in finding_kinds() {
            assert!(!k.source.is_empty() && !k.why.is_empty() && !k.when_wrong.is_empty(), "{}", k.code);
        }
    }
}
