//! Do stem, toe and heel of a strip carry what bends them, and are their bars covered and anchored?

use groundhold_earth::Combination;
use groundhold_member::concrete::{ACI_HOOK, AciHook, EN2_LAP, En2Lap, aci_hook, en2_lap};
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace, Unit};

use super::body::Laid;
use super::effects;
use super::steel::{self, Bars, Part, Steel};
use crate::gravity::{Asked, Spot};
use crate::{Check, CheckKind, LoadCase, WallCase};

/// Words of the rules of a section.
fn method(case: &WallCase, laid: &Laid, part: Part) -> &'static str {
    let block = part == Part::Stem && laid.spec.made == super::Made::Block;
    match (laid.spec.by_eurocode(case), block) {
        (true, false) => "EN 1992-1-1",
        (true, true) => "EN 1996-1-1",
        (false, false) => "ACI 318",
        (false, true) => "TMS 402",
    }
}

/// All checks of the sections of a strip, in one state with one set of factors.
///
/// # Errors
/// As the pressure theory refuses.
pub(crate) fn checks(
    case: &WallCase,
    laid: &Laid,
    bars: &Steel,
    spot: &Spot,
    state: LoadCase,
    c: &'static Combination,
) -> Result<Vec<Check>, Refused> {
    let e = effects::of(case, laid, spot, state, c)?;
    let parts = [
        (Part::Stem, bars.stem, e.stem, CheckKind::StemBending, CheckKind::StemShear),
        (Part::Toe, bars.toe, e.toe, CheckKind::ToeBending, CheckKind::ToeShear),
        (Part::Heel, bars.heel, e.heel, CheckKind::HeelBending, CheckKind::HeelShear),
    ];
    let mut all: Vec<Asked> = vec![];
    let mut scant: Option<(f64, f64, Vec<Trace>)> = None;
    for (part, bars, effect, bending, shear) in parts {
        let method = method(case, laid, part);
        let asked = |kind, unit, (demand, capacity): (f64, f64), traces: Vec<Trace>| Asked {
            kind,
            method,
            demand,
            capacity,
            unit,
            traces,
        };
        let Ok(j) = steel::judge(laid.spec, case, part, bars, &effect) else {
            let over = Asked {
                method: "the section is too thin for its moment",
                ..asked(bending, Unit::KNM, (effect.moment, 0.0), effect.traces.clone())
            };
            all.push(over);
            continue;
        };
        let with = |first: usize| -> Vec<Trace> {
            j.traces.get(first).cloned().into_iter().chain(effect.traces.iter().cloned()).collect()
        };
        all.push(asked(bending, Unit::KNM, j.bending, with(0)));
        all.push(asked(shear, Unit::KN, j.shear, with(1)));
        if scant.as_ref().is_none_or(|(d, c, _)| j.least.0 / j.least.1 > d / c) {
            scant = Some((j.least.0, j.least.1, with(0)));
        }
    }
    if let Some((demand, capacity, traces)) = scant {
        let method = method(case, laid, Part::Toe);
        all.push(Asked { kind: CheckKind::LeastSteel, method, demand, capacity, unit: Unit::MM2, traces });
    }
    if state == LoadCase::Drained {
        all.push(anchorage(case, laid, bars.stem)?);
        all.extend(covered(case, laid));
    }
    Ok(all.into_iter().map(|x| x.check(&spot.strip.on, case, state, c.key)).collect())
}

/// The cover that was given, against the least of the rules.
fn covered(case: &WallCase, laid: &Laid) -> Option<Asked> {
    let given = laid.spec.cover?;
    let least = steel::cover(laid.spec, case, Part::Stem);
    Some(Asked {
        kind: CheckKind::Cover,
        method: method(case, laid, Part::Stem),
        demand: least.to_mm(),
        capacity: given.to_mm(),
        unit: Unit::MM,
        traces: vec![],
    })
}

/// Length of the starter in the footing: upright down to the bars of the toe, then along them under toe and stem.
pub(crate) fn legs(case: &WallCase, laid: &Laid, bars: Bars) -> (Length, Length) {
    let s = laid.spec;
    let cover = steel::cover(s, case, Part::Toe);
    let down = (s.footing - cover - bars.bar).max(Length::ZERO);
    let along = (s.toe + s.stem - cover * 2.0).max(Length::ZERO);
    (down, along)
}

/// What the starters need in the footing against what they have: along the bend by EN 1992-1-1 8.4.1, down to the hook by
/// ACI 318 25.4.3.
///
/// # Errors
/// As the working refuses.
fn anchorage(case: &WallCase, laid: &Laid, bars: Bars) -> Result<Asked, Refused> {
    let s = laid.spec;
    let (down, along) = legs(case, laid, bars);
    let (needed, has, trace, method) = if s.by_eurocode(case) {
        let (i, trace) = En2Lap {
            bar: bars.bar.to_mm(),
            stress: s.yield_stress.to_mpa() / 1.15,
            strength: s.strength.to_mpa(),
            position: 1.0,
            together: 1.0,
            gamma_c: 1.5,
        }
        .traced(&EN2_LAP)?;
        (en2_lap(&i).anchorage, down + along, trace, "EN 1992-1-1 8.4, along the bend")
    } else {
        let (i, trace) = AciHook {
            bar: bars.bar.to_mm(),
            yield_stress: s.yield_stress.to_mpa(),
            strength: s.strength.to_mpa(),
            close: if bars.every.to_mm() < 6.0 * bars.bar.to_mm() { 1.6 } else { 1.0 },
            place: 1.25,
        }
        .traced(&ACI_HOOK)?;
        (aci_hook(&i).length, down, trace, "ACI 318 25.4.3, to the hook")
    };
    Ok(Asked {
        kind: CheckKind::Anchorage,
        method,
        demand: needed,
        capacity: has.to_mm(),
        unit: Unit::MM,
        traces: vec![trace],
    })
}
