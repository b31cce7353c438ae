//! Steps and ramps: after the ground they lead to, from the far end backwards to the way out.

use super::draft::{Book, Draft, Kind};
use crate::rates::{self, Rate, barrow, scaled, together};
use crate::{DigBy, FlightWorks, RampWorks};

fn digging(book: &Book) -> Rate {
    let job = book.works;
    match job.dig {
        DigBy::Machine => rates::DIG_MACHINE,
        DigBy::Hand => together("dig and wheel away", &[rates::dig_hand(job.ground), barrow(job.access.haul)]),
    }
}

fn basing() -> Rate {
    together("place and compact base", &[rates::STONE, rates::COMPACT])
}

/// Hours of several quantities as one rate for one quantity.
fn mixed(what: &'static str, unit: &'static str, quantity: f64, main: &Rate, others: &[(f64, Rate)]) -> Rate {
    let of = |f: fn(&Rate) -> f64| f(main) + others.iter().map(|(q, r)| q * f(r)).sum::<f64>() / quantity;
    Rate { what, unit, low: of(|r| r.low), likely: of(|r| r.likely), high: of(|r| r.high), ..*main }
}

/// After the pad it leads to, and the walls beside that pad, are filled.
fn reached(book: &Book, draft: Draft, toward: &str) -> Draft {
    let mut draft = book.site_ready(draft).after(book.up_to(toward, Kind::Fill));
    for w in book.works.walls.iter().filter(|w| w.holds_fill_of.iter().any(|p| p == toward)) {
        draft = draft.after(book.up_to(&w.id, Kind::Backfill));
    }
    draft
}

/// A flight of steps.
pub(crate) fn steps(book: &mut Book, f: &FlightWorks) {
    if f.complete || f.risers == 0 {
        return;
    }
    let risers = f.risers as f64;
    // The builder's rate is for steps of about a metre; wider ones take more in proportion.
    let width = if f.width.to_m() > 1.0 { f.width.to_m() } else { 1.0 };
    let others = [(f.cut.to_m3(), digging(book)), (f.base.to_m3(), basing())];
    let rate = mixed("dig and build steps", "riser", risers, &scaled(&rates::RISER, width), &others);
    let draft = Draft::new(Kind::Steps, &f.id, format!("Build steps {}", f.id), risers, &rate).how(format!(
        "{} equal risers for {} of rise, from the bottom up; check the running height at each.",
        f.risers,
        book.works.units.length(f.rise)
    ));
    let draft = reached(book, draft, &f.toward);
    book.put(draft);
}

/// A ramp or path.
pub(crate) fn ramp(book: &mut Book, r: &RampWorks) {
    let area = r.surface.to_m2();
    if r.complete || (area <= 0.0 && r.cut.to_m3() <= 0.0 && r.fill.to_m3() <= 0.0 && r.base.to_m3() <= 0.0) {
        return;
    }
    let run = if r.length.to_m() >= 0.1 { r.length.to_m() } else { 1.0 };
    let none = Rate { low: 0.0, likely: 0.0, high: 0.0, ..rates::SURFACE };
    let filling = together(
        "load, wheel, spread and compact",
        &[rates::LOAD, barrow(book.works.access.haul), rates::SPREAD, rates::COMPACT],
    );
    let others =
        [(area, rates::SURFACE), (r.cut.to_m3(), digging(book)), (r.fill.to_m3(), filling), (r.base.to_m3(), basing())];
    let rate = mixed("shape and surface a ramp", "m", run, &none, &others);
    let draft = Draft::new(Kind::Ramp, &r.id, format!("Build ramp {}", r.id), run, &rate).how(format!(
        "{} wide; check the gradient with a board and level at every metre.",
        book.works.units.run(r.width)
    ));
    let draft = reached(book, draft, &r.toward);
    book.put(draft);
}
