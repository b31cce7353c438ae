//! From the rows of a book to levels: both methods, the sums, the close, the shares of the misclose, the spread.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, trim};
use groundhold_working::Trace;

use super::formula::{
    Collimated, HEIGHT_OF_COLLIMATION, Kind, RISE_AND_FALL, Risen, Sight, by_collimation, by_rise_and_fall, correction,
    sigma,
};
use super::{BookError, Booking, Checks, Reduced, ReducedRow, Terms, stations, text::write_book, wrong};
use crate::{BOOK_NOT_CLOSED, MISCLOSE_TOO_LARGE};

/// Reduces a book by height of collimation and by rise and fall, checks its sums, closes it and distributes the misclose.
///
/// The misclose is distributed in equal shares to the set-ups, and only when it is within what the rule allows. Sights
/// take the share of the set-up they were read from.
///
/// # Errors
/// All that is wrong with the book, each with its row and what was expected.
pub fn reduce(book: &[Booking], terms: &Terms) -> Result<Reduced, Vec<BookError>> {
    let mut wrong = wrong::complaints(book);
    wrong.extend(wrong::complaints_with_terms(book, terms));
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let start = terms.start.level.to_m();
    let sights: Vec<Sight<f64>> = book.iter().map(Sight::of).collect();
    let (c, r) = (by_collimation(start, &sights), by_rise_and_fall(start, &sights));

    let set_ups = book.iter().filter(|b| b.foresight.is_some()).count();
    let misclose = known_close(book, terms).map(|known| Level::m(last(&c.levels, start)) - known);
    let allowed = terms.rule.allowed(set_ups, terms.run);
    let accepted = match (misclose, &allowed) {
        (Some(m), Some((a, _))) => m.abs() <= *a,
        _ => false,
    };
    let closing = Closing { misclose: misclose.filter(|_| accepted), set_ups, reading: terms.reading };
    let rows = rows(book, &c, &r, &closing);

    let given = vec![start.into(), write_book(book).as_str().into()];
    let mut traces = vec![Trace::new(&HEIGHT_OF_COLLIMATION, given.clone()), Trace::new(&RISE_AND_FALL, given)];
    let mut findings = vec![];
    if misclose.is_none() {
        findings.push(not_closed(book, set_ups));
    }
    if let (Some(m), Some((a, trace))) = (misclose, &allowed) {
        if !accepted {
            findings.push(too_large(m, *a, terms).with_trace(trace.clone()));
        }
        traces.push(trace.clone());
    }
    let mut reduced = Reduced {
        checks: checks(book, &c, &r, start),
        rows,
        set_ups,
        misclose,
        allowed: allowed.map(|(a, _)| a),
        accepted,
        findings,
        traces,
        benchmarks: std::iter::once(&terms.start).chain(&terms.close).cloned().collect(),
    };
    let apart = stations::at_two_levels(&reduced, terms.reading);
    reduced.findings.extend(apart);
    Ok(reduced)
}

fn last(levels: &[f64], start: f64) -> f64 {
    levels.last().copied().unwrap_or(start)
}

/// The known level of the last row, where it has one and was read by foresight.
fn known_close(book: &[Booking], terms: &Terms) -> Option<Level> {
    let last = book.last().filter(|b| b.foresight.is_some())?;
    match &terms.close {
        Some(close) => Some(close.level),
        None => (last.station.trim() == terms.start.station.trim()).then_some(terms.start.level),
    }
}

/// What closes a book: the misclose to distribute, if any.
struct Closing {
    misclose: Option<Length>,
    set_ups: usize,
    reading: Length,
}

impl Closing {
    fn correction(&self, set_up: usize) -> Length {
        self.misclose.map_or(Length::ZERO, |m| Length::mm(correction(m.to_mm(), set_up as f64, self.set_ups as f64)))
    }
    fn sigma(&self, set_up: usize, kind: Kind) -> Length {
        let run = if self.misclose.is_some() { self.set_ups } else { 0 };
        Length::mm(sigma(self.reading.to_mm(), set_up as f64, run as f64, kind))
    }
}

fn rows(book: &[Booking], c: &Collimated<f64>, r: &Risen<f64>, closing: &Closing) -> Vec<ReducedRow> {
    let mut set_up = 0;
    let mut rows = Vec::with_capacity(book.len());
    for (i, b) in book.iter().enumerate() {
        let kind = if b.intermediate.is_some() { Kind::Between } else { Kind::Fore };
        let correction = closing.correction(set_up);
        let level_raw = Level::m(c.levels[i]);
        rows.push(ReducedRow {
            row: b.row,
            station: b.station.trim().into(),
            set_up,
            collimation: b.backsight.map(|_| Level::m(c.collimations[set_up])),
            rise_fall: i.checked_sub(1).map(|before| Length::m(r.steps[before])),
            level_raw,
            correction,
            level: level_raw + correction,
            sigma: closing.sigma(set_up, kind),
            turns: b.backsight.is_some(),
        });
        set_up += usize::from(b.backsight.is_some());
    }
    rows
}

fn checks(book: &[Booking], c: &Collimated<f64>, r: &Risen<f64>, start: f64) -> Checks {
    let last_foresight = book.iter().rposition(|b| b.foresight.is_some()).unwrap_or(0);
    let apart = c.levels.iter().zip(&r.levels).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
    let m = Length::m;
    Checks {
        sum_backsights: m(c.sum_back),
        sum_foresights: m(c.sum_fore),
        // By rise and fall: another way to the same figure.
        last_minus_first: m(r.levels[last_foresight] - start),
        sum_rises: m(r.sum_rises),
        sum_falls: m(r.sum_falls),
        last_row_minus_first: m(last(&c.levels, start) - start),
        sum_levels: m(c.sum_levels),
        sum_from_collimation: m(c.sum_from_collimation),
        methods_apart: m(apart),
    }
}

fn not_closed(book: &[Booking], set_ups: usize) -> Finding {
    let end = book.last().map_or("", |b| b.station.as_str());
    let says = match set_ups {
        0 => "The book has one set-up and no foresight; a last sight on the start would show that the level was not knocked.".into(),
        n => format!("The book ends on `{end}`, whose level is not known, after {n} set-ups; nothing shows a misread change point. Level back to the start."),
    };
    let f = Finding::new(&BOOK_NOT_CLOSED, Place::of("level book"), says);
    if set_ups == 0 { f.weighing(groundhold_finding::Severity::Note) } else { f }
}

fn too_large(misclose: Length, allowed: Length, terms: &Terms) -> Finding {
    let mm = |l: Length| trim(l.to_mm(), 1);
    let mut says = format!(
        "The book misses its close by {} mm; {} allows {} mm. The levels are not adjusted: level the run again.",
        mm(misclose),
        terms.rule.words,
        mm(allowed)
    );
    if let Some(slip) = whole_slip(misclose, allowed) {
        says += &format!(" The misclose is near {slip}: look for a staff misread by as much at a change point.");
    }
    Finding::new(&MISCLOSE_TOO_LARGE, Place::of("level book"), says).with_utilisation(misclose.abs() / allowed)
}

/// A misclose near a whole metre or decimetre points to a misread figure on the staff. Common practice, no source.
fn whole_slip(misclose: Length, allowed: Length) -> Option<String> {
    let near = allowed.min(Length::mm(15.0));
    let size = misclose.abs();
    [(Length::m(1.0), "m"), (Length::m(0.1), "× 0.1 m")].into_iter().find_map(|(step, unit)| {
        let count = (size / step).round();
        ((1.0..=9.0).contains(&count) && (size - step * count).abs() <= near).then(|| format!("{count} {unit}"))
    })
}
