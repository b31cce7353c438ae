//! What is there to say against what moves?

use groundhold_finding::{Adjust, Finding, Kind, Place, Remedy, Severity};
use groundhold_quantity::{Area, Length, Volume};

use crate::findings::{
    CUT_TRIGGER_UNKNOWN, FACE_RUNS, FILL_IN_LAYERS, FILL_TO_BE_CHECKED, HEAP_NEAR_CREST, HEAP_SPACE_SHORT,
    MATERIAL_SHORT, ROCK_BROKEN, SOIL_NOT_FIT_FOR_FILL, SPOIL_LEFT_OVER, TOPSOIL_AS_FILL, TOPSOIL_SHORT, TRENCH_DEEP,
    UNSUPPORTED_CUT,
};
use crate::heap::back_from_crest;
use crate::{DigCase, Dug, ElementKind, Excavated, Import, Stream};

/// Below this a volume is not worth a word: ten litres.
const NOTHING: Volume = Volume::litre(10.0);
/// Heights that differ by less meet: a micrometre, far above rounding and far below any staff.
const HAIR: Length = Length::mm(1e-3);
/// Height of an open face below which nothing is said when the local rule is unknown.
const KNEE_HIGH: Length = Length::mm(500.0);

pub(crate) fn remarks(case: &DigCase, dug: &Dug) -> Vec<Finding> {
    let mut said = vec![];
    said.extend(dug.streams().into_iter().filter(|s| s.over > NOTHING).map(|s| left_over(case, s)));
    said.extend(fill(case, dug));
    if dug.topsoil.short > NOTHING {
        let loose = dug.topsoil.factors.loose_of_compacted(dug.topsoil.short);
        let says = format!(
            "{} of topsoil is short where it is to be spread; order {} loose.",
            case.units.volume(dug.topsoil.short),
            case.units.volume(loose)
        );
        said.push(finding(&TOPSOIL_SHORT, says));
    }
    said.extend(open_cuts(case));
    said.extend(faces(case));
    said.extend(trenches(case));
    if dug.rock.dug > NOTHING {
        let says = format!(
            "{} of rock is broken out, {} loose; none of it is reckoned as fill.",
            case.units.volume(dug.rock.dug),
            case.units.volume(dug.rock.over_loose)
        );
        said.push(finding(&ROCK_BROKEN, says));
    }
    said.extend(heaps(case, dug));
    said
}

fn finding(kind: &'static Kind, says: impl Into<String>) -> Finding {
    Finding::new(kind, Place::job(), says)
}

fn left_over(case: &DigCase, s: &Stream) -> Finding {
    let away = match &s.loads {
        Some(l) => format!(
            "{} {} of {} or {} ({} fills it first)",
            l.count,
            if l.count == 1 { "load" } else { "loads" },
            case.units.mass(case.vehicle.payload),
            case.units.volume(case.vehicle.volume),
            if l.mass_limits { "the mass" } else { "the room" }
        ),
        None => "the loads are not known, since the vehicle's payload and room are not countable".into(),
    };
    let says = format!(
        "{} of {} is left over, {} loose, about {}: {away}.",
        case.units.volume(s.over),
        s.earth.words(),
        case.units.volume(s.over_loose),
        case.units.mass(s.over_mass)
    );
    let mut found = finding(&SPOIL_LEFT_OVER, says);
    if let Some(l) = &s.loads {
        found = found.with_trace(l.trace.clone());
    }
    if s.earth == crate::Earth::Subsoil {
        found.remedies.extend(balance_remedy(case));
    }
    found
}

/// The one pad whose level can be solved for, where there is just one.
fn balance_remedy(case: &DigCase) -> Option<Remedy> {
    let mut pads = case.moved.iter().filter(|m| m.kind == ElementKind::Pad);
    let pad = pads.next()?;
    pads.next().is_none().then(|| {
        let change = Adjust { element: pad.element.clone(), field: "level".into(), value: "balance".into() };
        Remedy::ours(format!("{} at the level where cut and fill balance.", pad.element), vec![change])
    })
}

fn fill(case: &DigCase, dug: &Dug) -> Vec<Finding> {
    let mut said = vec![];
    let s = &dug.subsoil;
    let short = s.short > NOTHING;
    if !case.fit_for_fill && s.placed > NOTHING {
        let says = format!(
            "{} of fill is wanted, but the soil dug ({}) is not fit for it; all of it is left over and the fill is brought.",
            case.units.volume(s.placed),
            s.factors.name
        );
        said.push(finding(&SOIL_NOT_FIT_FOR_FILL, says));
    }
    if short {
        let brought = dug.bring.iter().find(|b| b.what == "fill");
        let order = brought.map_or(String::new(), |b| {
            format!("; order {} loose, about {}", case.units.volume(b.loose), case.units.mass(b.mass))
        });
        let says = format!("{} of fill, compacted, is short{order}.", case.units.volume(s.short));
        let mut found = finding(&MATERIAL_SHORT, says);
        found.trace = s.traces.first().cloned();
        found.remedies.extend(balance_remedy(case));
        said.push(found);
    }
    if s.placed > NOTHING {
        said.push(topsoil_as_fill(case, dug, short));
        let says = format!(
            "{} of fill goes in by layers of 150 to 200 mm loose, each compacted before the next.",
            case.units.volume(s.placed)
        );
        said.push(finding(&FILL_IN_LAYERS, says));
    }
    if short && matches!(case.import, Import::Free | Import::Unstated) {
        let what = if case.import == Import::Free { "The free fill" } else { "Fill that is offered free" };
        let says = format!(
            "{what} is looked at before it is tipped, load by load: where is it from, what was there, is it tested?"
        );
        said.push(finding(&FILL_TO_BE_CHECKED, says));
    }
    if case.made_ground {
        let says = format!(
            "The ground was filled or built on before: {} dug from it may hold rubble or worse, and is tested before it is moved off the plot.",
            case.units.volume(dug.dug())
        );
        said.push(finding(&FILL_TO_BE_CHECKED, says));
    }
    said
}

fn topsoil_as_fill(case: &DigCase, dug: &Dug, short: bool) -> Finding {
    let placed = case.units.volume(dug.subsoil.placed);
    let (severity, says) = match case.import {
        Import::Topsoil if short => (
            Severity::Stop,
            format!(
                "{placed} of fill is to be topsoil; it settles. Subsoil or stone below, topsoil in the last 150 to 300 mm only."
            ),
        ),
        _ if short => (
            Severity::Watch,
            format!("The {placed} of fill is not made up with topsoil, which is for the last 150 to 300 mm only."),
        ),
        _ => (Severity::Note, format!("The {placed} of fill is subsoil; topsoil is for the last 150 to 300 mm only.")),
    };
    finding(&TOPSOIL_AS_FILL, says).weighing(severity)
}

fn open_cuts(case: &DigCase) -> Vec<Finding> {
    let Some(trigger) = &case.unsupported else {
        let deepest = case.open_cuts.iter().max_by(|a, b| a.depth.to_m().total_cmp(&b.depth.to_m()));
        return deepest
            .filter(|c| c.depth + HAIR >= KNEE_HIGH)
            .map(|c| {
                let says = format!(
                    "A face {} high stands open; from which height it needs support or notice here is not known to the tool.",
                    case.units.length(c.depth)
                );
                Finding::new(&CUT_TRIGGER_UNKNOWN, Place::on(&c.element, c.on.as_str()), says)
            })
            .into_iter()
            .collect();
    };
    let above = case.open_cuts.iter().filter(|c| c.depth + HAIR >= trigger.most);
    above
        .map(|c| {
            let says = format!(
                "A face {} high stands open; from {} on ({}) nobody works below it unless it is laid back, shored or passed by a licensed person.",
                case.units.length(c.depth),
                case.units.length(trigger.most),
                trigger.source
            );
            let found = Finding::new(&UNSUPPORTED_CUT, Place::on(&c.element, c.on.as_str()), says)
                .with_utilisation(c.depth / trigger.most);
            match case.excavated.iter().find(|e| e.element == c.element && !e.ways.is_empty()) {
                Some(e) => ways(case, found, e),
                None => found.with_remedy(Remedy::theirs(format!(
                    "Cut the face in short bays, each held before the next, or lay it back {} from the foot at 45°.",
                    case.units.run(c.depth)
                ))),
            }
        })
        .collect()
}

/// With what is done instead of leaving the face open, and with the section as it is laid back.
fn ways(case: &DigCase, found: Finding, e: &Excavated) -> Finding {
    let says = |w: &crate::Instead| w.says(&|l| case.units.run(l));
    let with = e.ways.iter().fold(found, |f, w| f.with_remedy(Remedy::theirs(says(w))));
    with.with_trace(e.trace.clone())
}

/// A trench is a grave from this depth on where no other rule is known: 5 ft, 29 CFR 1926.652(a).
const GRAVE: Length = Length::ft(5.0);

fn trenches(case: &DigCase) -> Vec<Finding> {
    let most = case.unsupported.as_ref().map_or(GRAVE, |t| t.most.min(GRAVE));
    let deep = case.trenches.iter().filter(|t| t.deepest + HAIR >= most);
    deep.map(|t| {
        let says = format!("The trench ({}) is up to {} deep; from {} on nobody goes in without a box or sides laid back.", t.what, case.units.length(t.deepest), case.units.length(most));
        Finding::new(&TRENCH_DEEP, Place::on("", t.what.as_str()), says)
            .with_utilisation(t.deepest / most)
            .with_remedy(Remedy::theirs("Lay the sides back, or have a trench box put in by a competent person; or lay the pipe from the surface."))
    })
    .collect()
}

/// Ground that runs, or a face laid back: said where no trigger says it already.
fn faces(case: &DigCase) -> Vec<Finding> {
    let limit = case.unsupported.as_ref().map(|t| t.most);
    let spoken = |e: &Excavated| {
        limit.is_some_and(|l| e.height + HAIR >= l) || (limit.is_none() && e.height + HAIR >= KNEE_HIGH)
    };
    let quiet = case.excavated.iter().filter(|e| !e.ways.is_empty() && !spoken(e));
    quiet
        .map(|e| {
            let says = format!(
                "The face behind {} is {} high in ground of class {} ({}), which does not stand upright.",
                e.element,
                case.units.length(e.height),
                e.class.name,
                e.class.words
            );
            ways(case, Finding::new(&FACE_RUNS, Place::of(&e.element), says), e)
        })
        .collect()
}

fn heaps(case: &DigCase, dug: &Dug) -> Vec<Finding> {
    let mut said = vec![];
    let footprint: Area = dug.heaps.iter().map(|h| h.footprint).sum();
    if let Some(room) = case.heap.area.filter(|room| footprint > *room) {
        let says = format!(
            "The heaps to be kept cover {}, and there is {} for them.",
            case.units.area(footprint),
            case.units.area(room)
        );
        let mut found = finding(&HEAP_SPACE_SHORT, says).with_utilisation(footprint / room.max(Area::m2(1e-6)));
        found.trace = dug.heaps.first().map(|h| h.trace.clone());
        said.push(found);
    }
    let depth = case.open_cuts.iter().map(|c| c.depth).fold(Length::ZERO, Length::max);
    let back = back_from_crest(depth);
    if depth > Length::ZERO && dug.dug() > NOTHING {
        match case.heap.from_crest {
            None => {
                let says = format!(
                    "Heaps stay {} or more back from the crest of the {} cut.",
                    case.units.run(back),
                    case.units.length(depth)
                );
                said.push(finding(&HEAP_NEAR_CREST, says).weighing(Severity::Note));
            }
            Some(d) if d + HAIR < back => {
                let says = format!(
                    "The heap's toe stands {} from the crest of a {} cut; it should be {} or more.",
                    case.units.run(d),
                    case.units.length(depth),
                    case.units.run(back)
                );
                said.push(finding(&HEAP_NEAR_CREST, says).with_utilisation(back / d.max(Length::mm(1.0))));
            }
            Some(_) => {}
        }
    }
    said
}
