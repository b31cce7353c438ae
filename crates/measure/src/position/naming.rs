//! What is a reading called when people are told about it?

use super::observation::Observation;
use super::{Measured, Part, Survey};

/// `P3` from `A`, or from `A–B`.
pub(super) fn ends(survey: &Survey, o: &Observation) -> (String, String) {
    let r = &survey.readings[o.reading];
    let from = match &r.measured {
        Measured::Tie { to, .. } => to.trim().to_string(),
        Measured::Offset { from, to, .. } => format!("{}–{}", from.trim(), to.trim()),
    };
    (r.point.trim().to_string(), from)
}

/// The reading in words: `row 7, 4.230 m from P3 to A`.
pub(super) fn words(survey: &Survey, o: &Observation) -> String {
    let (point, from) = ends(survey, o);
    let row = survey.readings[o.reading].row;
    match o.part() {
        Part::Tie => format!("row {row}, {:.3} m from `{point}` to `{from}`", o.read),
        Part::Along => format!("row {row}, {:.3} m along {from} to `{point}`", o.read),
        Part::Off => format!("row {row}, {:.3} m off {from} to `{point}`", o.read),
    }
}

pub(super) fn rows(survey: &Survey, observations: &[&Observation]) -> String {
    let mut rows: Vec<usize> = observations.iter().map(|o| survey.readings[o.reading].row).collect();
    rows.sort_unstable();
    rows.dedup();
    match rows.as_slice() {
        [] => "none".into(),
        [one] => format!("row {one}"),
        many => format!("rows {}", many.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")),
    }
}
