//! What is done for the whole job, before the first spade and after the last.

use groundhold_quantity::Volume;

use super::draft::{Book, Draft, Hold, Kind};
use crate::DigBy;
use crate::rates::{self, together};

/// Survey, approvals, services, protection, stripping, outlet.
pub(crate) fn begin(book: &mut Book) {
    let w = book.works;
    book.put(
        Draft::new(Kind::Survey, "", "Measure again, set datum and pegs", 1.0, &rates::SURVEY)
            .how("Datum and base line first; check the survey at three points; offset pegs out of the dig."),
    );
    if w.approval_needed {
        book.put(
            Draft::new(Kind::Approvals, "", "Wait for approvals, engineer and neighbours", 1.0, &rates::ASK)
                .how("Only the hours at the desk are counted here; how long an office takes is not known."),
        );
    }
    let (rate, name) = if w.services_near {
        (&rates::LOCATE, "Locate, mark and expose buried services")
    } else {
        (&rates::LOOK_FOR_SERVICES, "Check the records and scan for buried services")
    };
    book.put(
        Draft::new(Kind::Services, "", name, 1.0, rate)
            .how("Ask 2 to 10 working days before the start.")
            .after(book.exactly("", Kind::Survey)),
    );
    let trees = if w.tree.is_some() { "Fence the tree, protect" } else { "Protect" };
    book.put(Draft::new(Kind::Protect, "", format!("{trees} access and edges"), 1.0, &rates::PROTECT));
    strip(book);
    outlet(book);
}

fn strip(book: &mut Book) {
    let w = book.works;
    let volume = w.stripped.turf + w.stripped.topsoil;
    if w.stripped.complete || volume <= Volume::ZERO {
        return;
    }
    let rate = match w.dig {
        DigBy::Machine => rates::STRIP_MACHINE,
        DigBy::Hand => {
            together("strip by hand", &[rates::dig_hand(crate::GroundClass::Soft), rates::barrow(w.access.haul)])
        }
    };
    let name = format!("Strip turf and topsoil, {}", w.units.area(w.stripped.area));
    let draft = Draft::new(Kind::Strip, "", name, volume.to_m3(), &rate)
        .how("Turf and topsoil each to a heap of their own, out of the way of everything that follows.");
    let draft = book.site_ready(draft);
    book.put(draft);
}

/// The hold point before anybody digs, set on the digging task that comes first.
pub(crate) fn hold_first_spade(book: &mut Book) {
    let digs = [Kind::Strip, Kind::Cut, Kind::Outlet, Kind::Trench, Kind::Sump, Kind::Holes, Kind::Steps, Kind::Ramp];
    let first = digs.iter().find_map(|k| book.drafts.iter().position(|d| d.kind == *k));
    let Some(i) = first else { return };
    let checks = first_spade(book);
    book.drafts[i].hold = Some(Hold { name: "the first spade", checks });
}

/// What is looked at before anybody digs.
fn first_spade(book: &Book) -> Vec<String> {
    let w = book.works;
    let mut checks: Vec<String> = vec![
        "Reply of the services enquiry is at hand, services are marked, and everybody was shown them.".into(),
        "Datum and base line checked against a second peg.".into(),
        "Somebody knows where the spoil goes.".into(),
    ];
    if w.approval_needed {
        checks.push("Approval, engineer's answer and neighbours' answers are on file.".into());
    }
    if let Some(t) = &w.tree {
        checks.push(format!("{} is fenced at {} from its trunk.", t.id, w.units.run(t.trunk * 12.0)));
    }
    if w.drainage.outlet.is_none() {
        checks.push("The outlet is decided: nobody has said yet where the water goes.".into());
    }
    checks
}

fn outlet(book: &mut Book) {
    let d = &book.works.drainage;
    let has_pipe = book.works.walls.iter().any(|w| w.pipe.to_m() > 0.0 && !w.complete);
    if d.complete || !(has_pipe || d.collector.to_m() > 0.0) {
        return;
    }
    let w = book.works;
    let trench = if w.dig == DigBy::Machine { rates::DIG_MACHINE } else { rates::dig_hand(w.ground) };
    let mut draft = Draft::new(Kind::Outlet, "", "Build outlet and collector from the low end", 1.0, &rates::OUTLET);
    for (quantity, rate) in [(d.trench.to_m3(), &trench), (d.collector.to_m(), &rates::PIPE)] {
        let more = rates::hours_of(quantity, rate).0;
        draft.hours.low += more.low;
        draft.hours.likely += more.likely;
        draft.hours.high += more.high;
    }
    // One lump: the working shows the sum of the three as one quantity.
    draft.trace =
        rates::hours_of(1.0, &rates::scaled(&rates::OUTLET, draft.hours.likely.to_h() / rates::OUTLET.likely)).1;
    let to = d.outlet.as_deref().unwrap_or("to where it is decided");
    let draft = draft.how(format!(
        "{} of pipe, {to}; {} of trench. Outlet below every pipe, screened, in sight.",
        w.units.run(d.collector),
        w.units.volume(d.trench)
    ));
    let draft = book.site_ready(draft);
    book.put(draft);
}

/// Cleaning up and the record: after everything.
pub(crate) fn end(book: &mut Book) {
    let mut clean = Draft::new(Kind::Clean, "", "Clean up, take left-overs away", 1.0, &rates::CLEAN);
    for id in book.loose_ends() {
        clean = clean.after(Some(id));
    }
    book.put(clean);
    let record = Draft::new(Kind::Record, "", "Measure as built, photograph, write the record", 1.0, &rates::RECORD_IT)
        .how("Depth of every hole, route and level of every drain, what lies buried, batch papers, approvals.")
        .after(book.exactly("", Kind::Clean))
        .hold(
            "handing over",
            vec![
                "Water poured in at the high end comes out at the outlet.".into(),
                "Tops, lean and line measured and written down as the first reading.".into(),
                "Everything buried is on a photograph with a tape in it.".into(),
            ],
        );
    book.put(record);
}
