//! What is kept, what is brought, and who handles it?

use groundhold_quantity::{Density, Volume};
use groundhold_working::Trace;

use crate::by_hand::NORMS;
use crate::loads::mass_of_loose;
use crate::{
    Bring, DigCase, Ease, Factors, Import, Keep, STONE, Stream, TOPSOIL, Task, carting_rate, factors, loads,
    person_days,
};

/// What must not be carted away, of which what waits for walls and trenches lies in a heap.
pub(crate) fn keep(case: &DigCase, turf: &Stream, topsoil: &Stream, subsoil: &Stream) -> Vec<Keep> {
    let waits: Volume = case.walls.iter().map(|w| w.working_room + w.cap).sum::<Volume>()
        + case.trenches.iter().map(|t| t.put_back).sum::<Volume>();
    let waits = subsoil.factors.bank_of_compacted(waits).min(subsoil.used);
    let row = |s: &Stream, purpose, bank: Volume, heaped| Keep {
        earth: s.earth,
        purpose,
        bank,
        loose: s.factors.loose(bank),
        heaped,
    };
    let all = [
        row(turf, "laid again", turf.used, true),
        row(topsoil, "spread back", topsoil.used, true),
        row(subsoil, "backfill of walls and trenches", waits, true),
        row(subsoil, "fill, straight from the cut", subsoil.used - waits, false),
    ];
    all.into_iter().filter(|k| k.bank > Volume::litre(1.0)).collect()
}

/// What must be brought: stone, build-up, and what the site has too little of.
pub(crate) fn bring(case: &DigCase, topsoil: &Stream, subsoil: &Stream) -> Vec<Bring> {
    let row = |what: &str, element: &str, in_place: Volume, soil: &Factors| {
        let loose = soil.loose_of_compacted(in_place);
        Bring {
            what: what.into(),
            element: element.into(),
            in_place,
            loose,
            mass: mass_of_loose(loose, soil),
            loads: loads(soil.bank_of_compacted(in_place), soil, case.vehicle).ok(),
        }
    };
    let fill = match case.import {
        Import::Clean => factors("gravel"),
        Import::Topsoil => Some(TOPSOIL),
        Import::Free | Import::Unstated => factors("loam"),
    }
    .unwrap_or(case.soil);
    let mut found: Vec<Bring> = case.walls.iter().map(|w| row("drain stone", &w.wall, w.stone, &STONE)).collect();
    found.extend(case.trenches.iter().map(|t| row("stone for the trench", &t.what, t.stone, &STONE)));
    found.extend(case.moved.iter().map(|m| {
        row("build-up, compacted stone and paving", &m.element, (m.cut_area + m.fill_area) * m.build_up, &fill_stone())
    }));
    found.push(row("fill", "", subsoil.short, &fill));
    found.push(row("topsoil", "", topsoil.short, &TOPSOIL));
    found.retain(|b| b.in_place > Volume::litre(1.0));
    found
}

/// Crushed stone that is rolled: 1.75 t/m³ loose, 2.2 compacted. Common practice, no source.
fn fill_stone() -> Factors {
    Factors { name: "crushed stone", bank_to_loose: 2200.0 / 1750.0, density_bank: Density::kg_per_m3(2200.0), ..STONE }
}

/// Work by hand with its person-days, and the workings.
pub(crate) fn tasks(case: &DigCase, streams: [&Stream; 4]) -> (Vec<Task>, Vec<Trace>) {
    let [turf, topsoil, subsoil, rock] = streams;
    let mut found = vec![];
    let mut traces = vec![];
    let stripped = turf.dug + topsoil.dug;
    for (what, volume, soil, ease) in [
        ("strip turf and topsoil", stripped, &TOPSOIL, Ease::Soft),
        ("dig subsoil", subsoil.dug, &case.soil, case.ease),
        ("break rock", rock.dug, &rock.factors, Ease::Rock),
    ] {
        if volume == Volume::ZERO && what == "break rock" {
            continue;
        }
        let (days, trace) = person_days(volume, soil, ease, case.barrow);
        found.push(Task { what: format!("{what} ({}), bank", ease.words()), volume, person_days: days, source: NORMS });
        traces.push(trace);
    }
    let wheeled = stripped + subsoil.dug + rock.dug;
    let spread: Volume = streams.iter().map(|s| s.placed).sum();
    for (what, volume, rate) in [
        ("load barrows, bank", wheeled, Volume::m3(8.5)),
        ("wheel away, bank", wheeled, carting_rate(case.carry)),
        ("spread, in place", spread, Volume::m3(13.5)),
        ("compact in layers, in place", subsoil.placed, Volume::m3(9.0)),
    ] {
        let days = volume / rate;
        found.push(Task { what: what.into(), volume, person_days: (days, days / SLOWER), source: NORMS });
    }
    found.retain(|t| t.volume > Volume::litre(1.0));
    (found, traces)
}

/// The longer figure of tasks with a single norm is taken at 70 % of it: ours.
const SLOWER: f64 = 0.7;
