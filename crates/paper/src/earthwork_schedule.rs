//! What moves, from where to where, and how many loads is it?

use groundhold_dig::{Earth, Stream};
use groundhold_plan::Plan;
use groundhold_quantity::{Units, Volume, trim};

use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let u = plan.job.about.units;
    let d = &plan.dug;
    let mut flow = Flow::new(Paper::A4, "Schedules", "Earthworks");
    flow.title("Earthworks");
    flow.paragraph(&format!(
        "Bank is ground as it lies, loose is ground as it is carried, compacted is ground as it is put in place. Subsoil: {}; one of bank gives {} loose and {} compacted ({}).",
        plan.soil.name,
        trim(plan.factors.bank_to_loose, 2),
        trim(plan.factors.bank_to_compacted, 2),
        plan.factors.source.work,
    ));
    flow.titled(
        "Account of the dig",
        "Lines of less than 5 litres are left out; they are in the sum.",
        &account(plan, u),
    );
    flow.heading("Balance");
    flow.table(&balance(d.streams(), u));
    if !d.keep.is_empty() {
        flow.heading("Keep on site");
        let mut t = Table::new(vec![words("Earth"), sentences("For"), figures("Bank"), figures("Loose"), words("How")]);
        for k in &d.keep {
            let how = if k.heaped { "in a heap" } else { "straight from cut to fill" };
            t.row([k.earth.words().into(), k.purpose.into(), u.volume(k.bank), u.volume(k.loose), how.into()]);
        }
        flow.table(&t);
    }
    if !d.bring.is_empty() {
        flow.heading("Bring to site");
        let mut t = Table::new(vec![
            sentences("What"),
            words("For"),
            figures("In place"),
            figures("Loose"),
            figures("Mass"),
            figures("Loads"),
        ]);
        for b in &d.bring {
            let loads = b.loads.as_ref().map_or("–".into(), |l| l.count.to_string());
            t.row([b.what.clone(), whole(&b.element), u.volume(b.in_place), u.volume(b.loose), u.mass(b.mass), loads]);
        }
        flow.table(&t);
    }
    heaps_and_hands(&mut flow, plan, u);
    carries(&mut flow, plan, u);
    faces(&mut flow, plan, u);
    flow.finish()
}

pub(crate) fn whole(element: &str) -> String {
    if element.is_empty() { "whole job".into() } else { element.into() }
}

fn account(plan: &Plan, u: Units) -> Table {
    let mut t = Table::new(vec![
        words("Element"),
        sentences("What"),
        words("Earth"),
        figures("Dug, bank"),
        figures("Placed, compacted"),
    ]);
    for r in plan.dug.rows.iter().filter(|r| shows(r.dug) || shows(r.placed)) {
        t.row([
            whole(&r.element),
            r.what.into(),
            r.earth.words().into(),
            volume_or_dash(r.dug, u),
            volume_or_dash(r.placed, u),
        ]);
    }
    let sum = |f: fn(&groundhold_dig::Row) -> Volume| plan.dug.rows.iter().map(f).sum::<Volume>();
    t.sum(["All".into(), String::new(), String::new(), u.volume(sum(|r| r.dug)), u.volume(sum(|r| r.placed))]);
    t
}

/// Less than this is not worth a line.
const LEAST: Volume = Volume::litre(5.0);

fn shows(v: Volume) -> bool {
    v >= LEAST || v <= -LEAST
}

fn volume_or_dash(v: Volume, u: Units) -> String {
    if shows(v) { u.volume(v).replace('-', "−") } else { "–".into() }
}

fn balance(streams: Vec<&Stream>, u: Units) -> Table {
    let mut t = Table::new(vec![
        words("Earth"),
        figures("Dug, bank"),
        figures("Placed, compacted"),
        figures("Used, bank"),
        figures("Over, bank"),
        figures("Over, loose"),
        figures("Over, mass"),
        figures("Loads away"),
        figures("Short, compacted"),
    ]);
    for s in streams {
        let name = match s.earth {
            Earth::Turf => "Turf",
            Earth::Topsoil => "Topsoil",
            Earth::Subsoil => "Subsoil",
            Earth::Rock => "Rock",
        };
        t.row([
            name.into(),
            volume_or_dash(s.dug, u),
            volume_or_dash(s.placed, u),
            volume_or_dash(s.used, u),
            volume_or_dash(s.over, u),
            volume_or_dash(s.over_loose, u),
            u.mass(s.over_mass),
            s.loads.as_ref().map_or("–".into(), |l| l.count.to_string()),
            volume_or_dash(s.short, u),
        ]);
    }
    t
}

/// Who fills what, along which way, with the proof that no less work does.
fn carries(flow: &mut Flow, plan: &Plan, u: Units) {
    if let Some(t) = &plan.dug.turves {
        let over =
            if t.pieces_over >= 0 { format!("{} over", t.pieces_over) } else { format!("{} short", -t.pieces_over) };
        flow.small(&format!(
            "Turves of {} × {}: {} cut, {} laid again with one in ten broken, {over}.",
            u.length(t.size.0),
            u.length(t.size.1),
            t.pieces_cut,
            t.pieces_laid
        ));
    }
    let Some(c) = plan.groundwork.carried.as_ref().filter(|c| !c.carries.is_empty()) else { return };
    flow.heading("Who fills what");
    let known = plan.groundwork.gate.is_some_and(|g| g.1);
    let gate = if known {
        "The gate is the nearest place on the street."
    } else {
        "Where soil leaves is not told; a ramp's foot or the lowest corner stands for it."
    };
    flow.small(&format!(
        "Carried with the least work: {} m³·m in the bank, a metre up counted as ten along; no other way of sharing out has less than {}. {gate}",
        trim(c.work, 1),
        trim(c.bound, 1)
    ));
    let mut t =
        Table::new(vec![words("Earth"), words("From"), words("To"), figures("Bank"), figures("Way"), figures("Up")]);
    for x in c.carries.iter().filter(|x| shows(x.bank)) {
        let up = x.way.as_ref().map_or("lifted over".into(), |w| u.length(w.climbs));
        t.row([x.earth.words().into(), x.from.clone(), x.to.clone(), u.volume(x.bank), u.run(x.length), up]);
    }
    flow.table(&t);
}

/// How the face behind each wall is dug.
fn faces(flow: &mut Flow, plan: &Plan, u: Units) {
    if plan.dug.excavated.is_empty() {
        return;
    }
    flow.heading("Faces while they stand open");
    let mut t =
        Table::new(vec![words("Wall"), words("Class"), figures("Height"), figures("More dug"), sentences("How")]);
    for e in &plan.dug.excavated {
        let how = match e.ways.as_slice() {
            [] => "It may stand upright for the day; watch it after rain.".to_string(),
            ways => ways.iter().map(|w| w.says(&|l| u.run(l))).collect::<Vec<_>>().join(" Or: "),
        };
        t.row([e.element.clone(), e.class.name.into(), u.length(e.height), u.volume(e.more), how]);
    }
    flow.table(&t);
    flow.small("Classes and slopes: 29 CFR 1926 Subpart P, Appendix B, Table B-1 (United States). A competent person on the spot decides; local rules come first.");
}

fn heaps_and_hands(flow: &mut Flow, plan: &Plan, u: Units) {
    let d = &plan.dug;
    if !d.heaps.is_empty() {
        flow.heading("Heaps");
        let mut t = Table::new(vec![
            sentences("What lies in it"),
            figures("Loose"),
            figures("Height"),
            figures("Radius"),
            figures("Ground it takes"),
        ]);
        for h in &d.heaps {
            t.row([h.what.clone(), u.volume(h.volume), u.length(h.height), u.length(h.radius), u.area(h.footprint)]);
        }
        flow.table(&t);
    }
    if !d.tasks.is_empty() {
        flow.heading("By hand");
        flow.small(&format!("When everything is wheeled: {} barrows.", d.barrows));
        let mut t = Table::new(vec![
            sentences("Work"),
            figures("Volume"),
            figures("Person-days"),
            sentences("Where the rate is from"),
        ]);
        for k in &d.tasks {
            let (low, high) = k.person_days;
            t.row([
                k.what.clone(),
                u.volume(k.volume),
                format!("{} to {}", trim(low, 1), trim(high, 1)),
                k.source.into(),
            ]);
        }
        flow.table(&t);
    }
}
