//! Do the cross pieces lie behind the soil that would slide with the wall?

use groundhold_earth::Combination;
use groundhold_member::anchor::{PLACE, Placed, placed};
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace, Unit};

use super::loads::spot;
use crate::loads::{NOTHING, combinations};
use crate::posted::embedment::over;
use crate::systems::stacked_timbers::StackedTimberSpec;
use crate::systems::stacked_timbers::mass::STEP;
use crate::{Check, CheckKind, Ground, LoadCase, Strip, WallCase};

/// Friction angles for which the wedges are drawn: those of the working.
const PHI: (f64, f64) = (15.0, 45.0);
/// No longer tie is looked for.
const FURTHEST: Length = Length::m(8.0);

/// Room between the back of the face and the front of a cross piece at the end of a tie of this length.
fn room(spec: &StackedTimberSpec, length: Length) -> Length {
    length - spec.timber.thickness * 2.0
}

/// Distance that a cross piece in a course must have behind the face, where the ground rises with what that adds, with its
/// working.
fn wanted(
    case: &WallCase,
    spec: &StackedTimberSpec,
    strip: &Strip,
    here: &Ground,
    c: &Combination,
    (course, length): (usize, Length),
) -> Result<(Length, Trace), Refused> {
    let rise = length * here.slope_behind.to_ratio().max(0.0);
    let bottom = strip.base + spec.timber.height * course as f64;
    let phi = c.soil(&case.retained_soil).phi.to_deg().clamp(PHI.0, PHI.1);
    let high = |l: Length| l.to_m().max(0.1);
    let wall = high(here.behind + rise - strip.base);
    let foot = high(here.behind + rise - bottom);
    let (i, trace) = Placed { wall, foot, phi }.traced(&PLACE)?;
    Ok((Length::m(placed(&i).back), trace))
}

/// The least length of ties with which every row of a strip lies behind both wedges; none up to the longest.
pub(crate) fn least_length(case: &WallCase, spec: &StackedTimberSpec, strip: &Strip) -> Option<Length> {
    let here = spot(case, strip);
    if here.retained() < NOTHING {
        return Some(Length::m(0.6).max(spec.timber.thickness * 4.0));
    }
    let n = (FURTHEST / STEP) as usize;
    (1..=n).map(|i| STEP * i as f64).find(|length| {
        let fits = |course: usize| {
            combinations(case, LoadCase::Drained).iter().all(|c| {
                wanted(case, spec, strip, &here, c, (course, *length)).is_ok_and(|(w, _)| w <= room(spec, *length))
            })
        };
        spec.rows(strip.courses).into_iter().all(fits)
    })
}

/// The row of a strip that wants most, by each set of factors.
///
/// # Errors
/// As the working refuses.
pub(crate) fn checks(case: &WallCase, spec: &StackedTimberSpec, strip: &Strip) -> Result<Vec<Check>, Refused> {
    let here = spot(case, strip);
    let mut all = vec![];
    if here.retained() < NOTHING {
        return Ok(all);
    }
    for c in combinations(case, LoadCase::Drained) {
        let mut most: Option<(Length, Trace)> = None;
        for course in spec.rows(strip.courses) {
            let w = wanted(case, spec, strip, &here, c, (course, strip.width))?;
            if most.as_ref().is_none_or(|m| m.0 < w.0) {
                most = Some(w);
            }
        }
        let Some((wanted, trace)) = most else { continue };
        let (demand, capacity) = (wanted.to_mm(), room(spec, strip.width).to_mm());
        all.push(Check {
            kind: CheckKind::DeadmanPlace,
            on: strip.on.clone(),
            case: LoadCase::Drained,
            method: "wedges of wall and cross piece apart",
            basis: c.key,
            demand,
            capacity,
            unit: Unit::MM,
            utilisation: over(demand, capacity),
            traces: vec![trace],
            governs: true,
        });
    }
    Ok(all)
}
