//! What did a working give, and how would it be worked by hand?

use groundhold_working::{Line, Output, Value, Worked, Working};
use serde::Serialize;

use super::figure::Figure;
use super::plan::SCHEMA;

#[derive(Serialize)]
pub(super) struct WorkedView<'a> {
    schema: u32,
    view: &'static str,
    working: &'static str,
    title: &'static str,
    source: &'static str,
    source_place: &'static str,
    not_for: &'static str,
    outputs: Vec<OutputView>,
    lines: Vec<LineView<'a>>,
}

#[derive(Serialize)]
struct OutputView {
    key: &'static str,
    words: &'static str,
    value: Figure,
    unit: &'static str,
}

impl OutputView {
    fn of((o, v): (&Output, &Value)) -> OutputView {
        OutputView { key: o.key, words: o.words, value: v.into(), unit: o.unit.0 }
    }
}

#[derive(Serialize)]
struct LineView<'a> {
    /// Empty for a remark.
    symbol: &'static str,
    formula: &'a str,
    put_in: &'a str,
    value: Option<f64>,
    unit: &'static str,
    /// The line as a person writes it.
    text: String,
}

impl LineView<'_> {
    fn of(l: &Line) -> LineView<'_> {
        LineView {
            symbol: l.symbol,
            formula: &l.formula,
            put_in: &l.put_in,
            value: (!l.symbol.is_empty()).then_some(l.value),
            unit: l.unit.0,
            text: l.to_string(),
        }
    }
}

impl WorkedView<'_> {
    pub fn of<'a>(w: &Working, worked: &'a Worked) -> WorkedView<'a> {
        WorkedView {
            schema: SCHEMA,
            view: "working",
            working: w.name,
            title: w.title,
            source: w.source.work,
            source_place: w.source.place,
            not_for: w.not_for,
            outputs: w.outputs.iter().zip(&worked.values).map(OutputView::of).collect(),
            lines: worked.lines.iter().map(LineView::of).collect(),
        }
    }
}
