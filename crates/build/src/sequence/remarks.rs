//! What does the order of work have against itself?

use groundhold_finding::{Finding, Place, Remedy, Severity};
use groundhold_quantity::{Length, Mass};

use super::draft::{Kind, id};
use crate::findings::{BACK_TO_WORK_AFTER_WATER, LONG_OPEN, NO_MACHINE_ACCESS, NOBODY_TO_LIFT, PIECE_TOO_HEAVY};
use crate::{Crew, DigBy, Programme, Task, Works};

/// Days that a cut may stand open before it is said. Ours.
const OPEN_DAYS: f64 = 5.0;
/// Width of the narrowest small excavator, millimetres (hire lists; common practice).
const NARROWEST_MACHINE: Length = Length::mm(700.0);

pub(crate) fn remarks(works: &Works, crew: &Crew, p: &Programme) -> Vec<Finding> {
    let mut said = vec![];
    lifting(works, crew, &mut said);
    if let (DigBy::Machine, Some(gate)) = (works.dig, works.access.narrowest)
        && gate < NARROWEST_MACHINE
    {
        let says = format!(
            "The way in is {} wide at its narrowest; the narrowest small excavators need about {} to {}.",
            works.units.length(gate),
            works.units.length(NARROWEST_MACHINE),
            works.units.length(Length::mm(750.0))
        );
        let by_hand = Remedy::theirs("Dig by hand, open the way for a day, or lift the machine in.");
        said.push(Finding::new(&NO_MACHINE_ACCESS, Place::job(), says).with_remedy(by_hand));
    }
    long_open(works, p, &mut said);
    for w in works.walls.iter().filter(|w| w.water_found && !w.complete) {
        let says = format!(
            "Water was met at {}: the order of work now has a sump, a lasting outlet and digging out of the soft bottom before its holes and concrete.",
            w.id
        );
        said.push(Finding::new(&BACK_TO_WORK_AFTER_WATER, Place::of(&w.id), says));
    }
    said
}

fn lifting(works: &Works, crew: &Crew, said: &mut Vec<Finding>) {
    let (mass, what) = (works.heaviest_piece, &works.heaviest_what);
    if mass > Mass::kg(50.0) {
        let says = format!("{what} weighs {:.0} kg: above 50 kg a machine, a hoist or rollers.", mass.to_kg());
        let weight = if works.dig == DigBy::Hand { Severity::Watch } else { Severity::Note };
        let lighter = Remedy::theirs("Shorter or lighter pieces, or a machine for the day they are placed.");
        said.push(Finding::new(&PIECE_TOO_HEAVY, Place::job(), says).weighing(weight).with_remedy(lighter));
    } else if mass > Mass::kg(25.0) && crew.people < 2 {
        let says = format!("{what} weighs {:.0} kg: above 25 kg two people, and the crew is one.", mass.to_kg());
        said.push(Finding::new(&NOBODY_TO_LIFT, Place::job(), says));
    }
}

/// Cuts that stand open long before the wall in them is filled behind, or drained.
fn long_open(works: &Works, p: &Programme, said: &mut Vec<Finding>) {
    let task = |id: &str| p.tasks.iter().find(|t| t.id == id);
    let last_of = |wall: &str| -> Option<&Task> {
        [Kind::Backfill, Kind::Stone, Kind::Boards].iter().find_map(|k| task(&id(wall, *k)))
    };
    for w in works.walls.iter().filter(|w| !w.complete) {
        let Some(closed) = last_of(&w.id) else { continue };
        let own = task(&id(&w.id, Kind::Trench)).into_iter();
        let cuts = w.stands_in_cut_of.iter().filter_map(|pad| task(&id(pad, Kind::Cut)));
        let Some(opened) = own.chain(cuts).map(|t| t.start).reduce(f64::min) else { continue };
        let open = closed.finish - opened;
        if open > OPEN_DAYS {
            let says = format!(
                "The face behind {} stands open for {open:.1} working days, from day {:.0} to day {:.0}; rain will find it.",
                w.id,
                opened.floor() + 1.0,
                closed.finish.ceil()
            );
            let bays = Remedy::theirs(
                "Cut and build in lengths, leave a bank of earth in place until the posts stand, or cover and lay the face back.",
            );
            said.push(
                Finding::new(&LONG_OPEN, Place::of(&w.id), says).with_utilisation(open / OPEN_DAYS).with_remedy(bays),
            );
        }
    }
}
