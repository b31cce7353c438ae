//! How was this figure worked out? One working on paper: source, inputs, the lines of the hand calculation, results.

use groundhold_quantity::trim;
use groundhold_working::{Line, Trace, Unit, Value, Whose};

use crate::flow::Flow;
use crate::leaf::{BLACK, GREY, Style};
use crate::table::{Table, figures, sentences, words};
use crate::wrap;

/// Lines of one calculation that are printed; a loop over hundreds of strips is cut, and it is said.
const MOST_LINES: usize = 30;
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
        _ if !v.is_finite() => {
            return if v > 0.0 {
                "∞".into()
            } else if v < 0.0 {
                "−∞".into()
            } else {
                "no number".into()
            };
        }
        _ if a == 0.0 || a >= 1000.0 => 0,
        _ if a >= 100.0 => 1,
        _ if a >= 10.0 => 2,
        _ if a >= 1.0 => 3,
        _ if a >= 0.001 => 4,
        _ => return format!("{v:.2e}").replace('-', "−"),
    };
    trim(v, decimals)
}

/// The same, metres to the millimetre.
fn figure_in(v: f64, unit: Unit) -> String {
    if unit == Unit::M && v.abs() >= 1.0 && v.is_finite() { trim(v, 3) } else { figure(v) }
}

/// A list of values, or words such as the rows of a book, that need the room of a sentence.
fn is_long(v: &Value) -> bool {
    match v {
        Value::One(_) => false,
        Value::Many(vs) => vs.len() > 2,
        Value::Word(w) => w.chars().count() > 14,
    }
}

/// A value in its unit.
pub(crate) fn value(v: &Value, unit: Unit) -> String {
    match v {
        Value::One(v) => unit_of(figure_in(*v, unit), unit),
        Value::Many(vs) => {
            let shown: Vec<String> = vs.iter().take(MOST_VALUES).map(|v| figure_in(*v, unit)).collect();
            let more = if vs.len() > MOST_VALUES { format!("; … {} values in all", vs.len()) } else { String::new() };
            unit_of(shown.join("; "), unit) + &more
        }
        Value::Word(w) => {
            let entries: Vec<&str> = w.split("; ").collect();
            if entries.len() <= MOST_VALUES {
                return w.clone();
            }
            format!("{}; … {} entries in all", entries[..MOST_VALUES].join("; "), entries.len())
        }
    }
}

/// Where the text of a calculation begins, right of its number.
const INDENT: f64 = 9.5;

fn sheet(flow: &mut Flow, number: &str, used_for: &str, trace: &Trace) {
    let w = trace.working;
    let title = Style::BODY.bold().sized(3.0);
    let small = Style::SMALL.sized(2.25);
    let given = inputs(trace);
    flow.gap(3.0);
    flow.need(26.0 + flow.begins(&given));
    flow.rule(0.3, GREY);
    flow.gap(1.2);
    flow.hanging(number, &title, w.title, INDENT, &title);
    flow.lines_of(&format!("{}  ·  {used_for}", w.name), INDENT, &small);
    let place = if w.source.place.is_empty() { String::new() } else { format!(", {}", w.source.place) };
    flow.lines_of(&format!("Source: {}{place}", w.source.work), INDENT, &small.ink(BLACK));
    flow.lines_of(&format!("Not for: {}", w.not_for), INDENT, &small);
    flow.gap(0.8);
    flow.table(&given);
    match trace.sheet() {
        Ok(worked) => {
            for line in worked.lines.iter().take(MOST_LINES) {
                one_line(flow, line);
            }
            if worked.lines.len() > MOST_LINES {
                flow.small(&format!("… and {} lines more of the same kind.", worked.lines.len() - MOST_LINES));
            }
            flow.gap(0.8);
            let mut t = Table::new(vec![sentences("Result"), figures("")]);
            t.style = t.style.sized(2.4);
            t.columns[1].wraps = worked.values.iter().any(is_long);
            for (o, v) in w.outputs.iter().zip(&worked.values) {
                t.row([o.words.into(), value(v, o.unit)]);
            }
            flow.table(&t);
        }
        Err(refused) => flow.paragraph(&format!("No figure: {refused}.")),
    }
}

fn inputs(trace: &Trace) -> Table {
    let mut t = Table::new(vec![words(""), sentences("Put in"), figures("Value"), words("Valid")]).with_symbols();
    t.style = t.style.sized(2.4);
    for (row, v) in trace.working.inputs.iter().zip(&trace.given) {
        let l = row.limits;
        let range = format!("{} – {}", limit(l.least), unit_of(limit(l.most), row.unit));
        let valid = match (v, l.whose) {
            (Value::Word(_), _) => "–".to_string(),
            (_, Whose::Author) => format!("({range})"),
            (_, Whose::Ours) => range,
        };
        t.row([row.symbol.into(), row.words.into(), value(v, row.unit), valid]);
    }
    t.columns[2].wraps = trace.given.iter().any(is_long);
    t
}

/// A limit: large and small ones as powers of ten.
fn limit(v: f64) -> String {
    let a = v.abs();
    if !v.is_finite() || a == 0.0 || (0.001..1e5).contains(&a) {
        return figure(v);
    }
    let text = format!("{v:e}");
    let (mantissa, exponent) = text.split_once('e').unwrap_or((&text, "0"));
    let raised: String =
        exponent.chars().map(|c| if c == '-' { '⁻' } else { RAISED[c.to_digit(10).unwrap_or(0) as usize] }).collect();
    match mantissa {
        "1" => format!("10{raised}"),
        "-1" => format!("−10{raised}"),
        m => format!("{}·10{raised}", m.replace('-', "−")),
    }
}
const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];

/// `symbol = formula = numbers = result`, on one line where it fits, else each `=` under the other.
fn one_line(flow: &mut Flow, line: &Line) {
    let style = Style::BODY.sized(2.6).formula();
    if line.symbol.is_empty() {
        flow.lines_of(&line.formula, 4.0, &Style::SMALL.sized(2.4).ink(BLACK));
        return;
    }
    let text = line.to_string();
    if style.width(&text) <= flow.width() - 1.0 {
        flow.lines_of(&text, 1.0, &style);
    } else {
        let mut parts = text.split(" = ");
        let symbol = parts.next().unwrap_or_default().to_string();
        let indent = 1.0 + style.width(&symbol) + 1.2;
        for (i, part) in parts.enumerate() {
            let pieces = wrap::lines(&format!("= {part}"), flow.width() - indent - 4.0, &style);
            for (k, piece) in pieces.iter().enumerate() {
                let at = if k == 0 { indent } else { indent + 4.0 };
                let word = if i == 0 && k == 0 { symbol.as_str() } else { "" };
                flow.beside(word, 1.0, piece, at, &style);
            }
        }
    }
    flow.gap(0.5);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_written_as_powers_of_ten_where_they_are_long() {
        let said: Vec<String> = [0.0, 50.0, 1e9, -1e6, 5.6e5, 1e-9].iter().map(|v| limit(*v)).collect();
        assert_eq!(said, ["0", "50", "10⁹", "−10⁶", "5.6·10⁵", "10⁻⁹"]);
    }

    #[test]
    fn the_same_working_with_the_same_numbers_is_printed_once() {
        let trace = |h: f64| {
            Trace::new(
                &groundhold_shape::RAMP_GRADIENT,
                vec![Value::One(h); groundhold_shape::RAMP_GRADIENT.inputs.len()],
            )
        };
        let mut c = Calculations::default();
        assert_eq!(c.numbers([&trace(1.0), &trace(2.0), &trace(1.0)], "x"), "C1, C2, C1");
    }
}
