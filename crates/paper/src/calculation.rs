//! How was this figure worked out? One working on paper: source, inputs, the lines of the hand calculation, results.

use groundhold_quantity::trim;
use groundhold_working::{Line, Trace, Unit, Value, Whose};

use crate::flow::Flow;
use crate::leaf::{BLACK, GREY, Style};
use crate::table::{Table, figures, sentences, words};
use crate::wrap;

/// Lines of one calculation that are printed; a loop over hundreds of strips is cut, and it is said.
const MOST_LINES: usize = 60;
/// Values of a list that are printed.
const MOST_VALUES: usize = 16;

/// Calculations by number, each once.
#[derive(Default)]
pub(crate) struct Calculations {
    all: Vec<(Trace, String)>,
}

impl Calculations {
    /// The number of a calculation, from 1; a new one is noted with what it is first used for.
    pub fn number(&mut self, trace: &Trace, used_for: &str) -> usize {
        if let Some(i) = self.all.iter().position(|(t, _)| t == trace) {
            return i + 1;
        }
        self.all.push((trace.clone(), used_for.into()));
        self.all.len()
    }
    /// `C3, C4`.
    pub fn numbers<'a>(&mut self, traces: impl IntoIterator<Item = &'a Trace>, used_for: &str) -> String {
        let all: Vec<String> = traces.into_iter().map(|t| format!("C{}", self.number(t, used_for))).collect();
        all.join(", ")
    }
    /// Writes all of them, in order.
    pub fn write(&self, flow: &mut Flow) {
        for (i, (trace, used_for)) in self.all.iter().enumerate() {
            sheet(flow, &format!("C{}", i + 1), used_for, trace);
        }
    }
}

fn unit_of(v: String, unit: Unit) -> String {
    let gap = if matches!(unit.0, "" | "°" | "%") { "" } else { "\u{a0}" };
    format!("{v}{gap}{}", unit.0)
}

/// A figure to four digits.
fn figure(v: f64) -> String {
    let a = v.abs();
    let decimals = match a {
        _ if !v.is_finite() => return if v > 0.0 { "∞".into() } else if v < 0.0 { "−∞".into() } else { "no number".into() },
        _ if a == 0.0 || a >= 1000.0 => 0,
        _ if a >= 100.0 => 1,
        _ if a >= 10.0 => 2,
        _ if a >= 1.0 => 3,
        _ if a >= 0.001 => 4,
        _ => return format!("{v:.2e}").replace('-', "−"),
    };
    trim(v, decimals)
}

/// A value in its unit.
pub(crate) fn value(v: &Value, unit: Unit) -> String {
    match v {
        Value::One(v) => unit_of(figure(*v), unit),
        Value::Many(vs) => {
            let shown: Vec<String> = vs.iter().take(MOST_VALUES).map(|v| figure(*v)).collect();
            let more = if vs.len() > MOST_VALUES { format!("; … {} values in all", vs.len()) } else { String::new() };
            unit_of(shown.join("; "), unit) + &more
        }
        Value::Word(w) => w.clone(),
    }
}

fn sheet(flow: &mut Flow, number: &str, used_for: &str, trace: &Trace) {
    let w = trace.working;
    let style = Style::BODY;
    flow.gap(3.0);
    flow.need(46.0);
    flow.rule(0.3, GREY);
    flow.gap(1.2);
    flow.hanging(number, &style.bold().sized(3.6), w.title, 13.0, &style.bold().sized(3.4));
    flow.lines_of(&format!("{}  ·  {used_for}", w.name), 13.0, &Style::SMALL);
    let place = if w.source.place.is_empty() { String::new() } else { format!(", {}", w.source.place) };
    flow.lines_of(&format!("Source: {}{place}", w.source.work), 13.0, &Style::SMALL.ink(BLACK));
    flow.lines_of(&format!("Not for: {}", w.not_for), 13.0, &Style::SMALL);
    flow.gap(1.0);
    inputs(flow, trace);
    match trace.sheet() {
        Ok(worked) => {
            for line in worked.lines.iter().take(MOST_LINES) {
                one_line(flow, line);
            }
            if worked.lines.len() > MOST_LINES {
                flow.small(&format!("… and {} lines more of the same kind.", worked.lines.len() - MOST_LINES));
            }
            flow.gap(1.0);
            let mut t = Table::new(vec![sentences("Result"), figures("")]);
            for (o, v) in w.outputs.iter().zip(&worked.values) {
                t.row([o.words.into(), value(v, o.unit)]);
            }
            flow.table(&t);
        }
        Err(refused) => flow.paragraph(&format!("No figure: {refused}.")),
    }
}

fn inputs(flow: &mut Flow, trace: &Trace) {
    let mut t = Table::new(vec![words("Symbol"), sentences("Input"), figures("Value"), words("Valid from – to"), words("Limits by")]).with_symbols();
    t.style = t.style.sized(2.5);
    for (row, v) in trace.working.inputs.iter().zip(&trace.given) {
        let l = row.limits;
        let (range, whose) = match v {
            Value::Word(_) => ("–".to_string(), String::new()),
            _ => (
                format!("{} – {}", figure(l.least), unit_of(figure(l.most), row.unit)),
                if l.whose == Whose::Author { "the source".into() } else { "us".to_string() },
            ),
        };
        let shown = match v {
            Value::Many(vs) if vs.len() > 4 => value(v, row.unit).replace("; ", " "),
            _ => value(v, row.unit),
        };
        t.row([row.symbol.into(), row.words.into(), shown, range, whose]);
    }
    // A long list of values needs the room of a sentence.
    if trace.given.iter().any(|v| matches!(v, Value::Many(vs) if vs.len() > 4)) {
        t.columns[2].wraps = true;
    }
    flow.table(&t);
}

/// `symbol = formula = numbers = result`, on one line where it fits, else each `=` under the other.
fn one_line(flow: &mut Flow, line: &Line) {
    let style = Style::BODY.sized(2.9).formula();
    if line.symbol.is_empty() {
        flow.lines_of(&line.formula, 4.0, &Style::SMALL.ink(BLACK));
        return;
    }
    let text = line.to_string();
    if style.width(&text) <= flow.width() - 4.0 {
        flow.lines_of(&text, 4.0, &style);
    } else {
        let mut parts = text.split(" = ");
        let symbol = parts.next().unwrap_or_default().to_string();
        let indent = 4.0 + style.width(&symbol) + 1.5;
        for (i, part) in parts.enumerate() {
            let pieces = wrap::lines(&format!("= {part}"), flow.width() - indent - 4.0, &style);
            for (k, piece) in pieces.iter().enumerate() {
                let at = if k == 0 { indent } else { indent + 4.0 };
                let word = if i == 0 && k == 0 { symbol.as_str() } else { "" };
                flow.beside(word, 4.0, piece, at, &style);
            }
        }
    }
    flow.gap(0.5);
}
