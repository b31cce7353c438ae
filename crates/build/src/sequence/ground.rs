//! Level areas: cut from the top down, filled when what holds the fill stands, surfaced last.

use groundhold_quantity::{Area, Length, Volume};

use super::draft::{Book, Draft, Kind};
use super::wall;
use crate::rates::{self, barrow, together};
use crate::{DigBy, PadWorks};

/// Digging of every pad.
pub(crate) fn cut(book: &mut Book, p: &PadWorks) {
    if p.complete || p.cut <= Volume::ZERO {
        return;
    }
    let job = book.works;
    let rate = match job.dig {
        DigBy::Machine => rates::DIG_MACHINE,
        DigBy::Hand => together("dig and wheel away", &[rates::dig_hand(job.ground), barrow(job.access.haul)]),
    };
    let draft = Draft::new(Kind::Cut, &p.id, format!("Cut {}", p.id), p.cut.to_m3(), &rate).how(format!(
        "From the top down, up to {} deep; leave the last {} until it is surfaced; check the level often.",
        job.units.run(p.cut_depth),
        job.units.length(Length::mm(50.0))
    ));
    let draft = book.site_ready(draft);
    book.put(draft);
}

/// Filling of a pad: after every cut that feeds it, and after the walls that hold it.
pub(crate) fn fill(book: &mut Book, p: &PadWorks) {
    if p.complete || p.fill <= Volume::ZERO {
        return;
    }
    let haul = barrow(book.works.access.haul);
    let rate = together("load, wheel, spread and compact", &[rates::LOAD, haul, rates::SPREAD, rates::COMPACT]);
    let layers = (p.fill_depth.to_m() / 0.15).ceil().max(1.0);
    let mut draft = Draft::new(Kind::Fill, &p.id, format!("Fill {} in layers", p.id), p.fill.to_m3(), &rate)
        .how(format!("About {layers} layers of 150 to 200 mm loose, each compacted before the next."));
    draft = book.site_ready(draft).after(book.exactly(&p.id, Kind::Cut));
    let mut held = false;
    for w in book.works.walls.iter().filter(|w| w.holds_fill_of.contains(&p.id)) {
        held = held || !w.complete;
        draft = draft.after(book.up_to(&w.id, Kind::Backfill));
        draft = draft.after_wait(book.exactly(&w.id, Kind::Concrete), wall::fill_waits());
    }
    if held {
        draft = draft.hold("filling behind", wall::before_fill(true));
    }
    book.put(draft);
}

/// Paving, topsoil and turf of a pad: after its walls are filled behind and its steps and ramps are done.
pub(crate) fn surface(book: &mut Book, p: &PadWorks) {
    if p.complete {
        return;
    }
    let haul = barrow(book.works.access.haul);
    let topsoil = together("load, wheel and spread", &[rates::LOAD, haul, rates::SPREAD]);
    let ready = |book: &Book, draft: Draft| {
        let mut draft = book.site_ready(draft).after(book.up_to(&p.id, Kind::Fill));
        for w in
            book.works.walls.iter().filter(|w| w.holds_fill_of.contains(&p.id) || w.stands_in_cut_of.contains(&p.id))
        {
            draft = draft.after(book.up_to(&w.id, Kind::Guard));
        }
        let flights = book.works.flights.iter().filter(|f| f.toward == p.id).map(|f| (&f.id, Kind::Steps));
        let ramps = book.works.ramps.iter().filter(|r| r.toward == p.id).map(|r| (&r.id, Kind::Ramp));
        flights.chain(ramps).fold(draft, |d, (id, kind)| d.after(book.exactly(id, kind)))
    };
    if p.paving > Area::ZERO {
        let name = format!("Surface {}", p.id);
        let draft = Draft::new(Kind::Pave, &p.id, name, p.paving.to_m2(), &rates::PAVE)
            .hold("covering the formation", formation());
        let draft = ready(book, draft);
        book.put(draft);
    }
    if p.topsoil > Volume::ZERO {
        let draft =
            Draft::new(Kind::Topsoil, &p.id, format!("Spread topsoil on {}", p.id), p.topsoil.to_m3(), &topsoil)
                .how("100 to 150 mm, not when wet; loosen what machines have pressed.");
        let draft = ready(book, draft);
        book.put(draft);
    }
    if p.turf > Area::ZERO {
        let draft = Draft::new(Kind::Turf, &p.id, format!("Turf or seed {}", p.id), p.turf.to_m2(), &rates::TURF)
            .how("Turf the day it comes, across the slope; water at once; keep off 2 to 3 weeks.");
        let draft = ready(book, draft).after(book.up_to(&p.id, Kind::Topsoil));
        book.put(draft);
    }
}

fn formation() -> Vec<String> {
    vec![
        "Fill compacted in layers; a heel leaves no print.".into(),
        "Formation within 15 mm, falling away from walls and buildings.".into(),
        "Everything buried is recorded.".into(),
    ]
}
