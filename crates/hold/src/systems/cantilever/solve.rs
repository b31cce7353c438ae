//! How long must the heel be so that the wall stands, and with which steel?

use groundhold_quantity::Length;

use super::body::Laid;
use super::{COURSE, CantileverSpec, Made, UNIT, steel};
use crate::gravity::{self, Coursing};
use crate::{CaseError, Strip, WallCase};

/// Heels are solved in steps of this.
const STEP: Length = Length::mm(50.0);
/// Longest heel that is tried, in steps.
const MOST: usize = 60;

/// The strips with the width of their base, from the wall line to the end of the heel.
///
/// # Errors
/// A height or a length that cannot be meant.
pub(crate) fn strips(case: &WallCase, spec: &CantileverSpec) -> Result<Vec<Strip>, CaseError> {
    let coursing = Coursing {
        unit: UNIT,
        whole_units: spec.made == Made::Block,
        step: COURSE,
        course: (spec.made == Made::Block).then_some(COURSE),
        below: spec.footing,
        bury: spec.bury,
    };
    let mut all = gravity::strips(case, &coursing)?;
    let laid = Laid { spec, steel: None };
    let seen = gravity::seen(case, &laid);
    for s in &mut all {
        let heel = spec.heel.unwrap_or_else(|| heel(&seen, &laid, s));
        *s = placed(spec, s, heel);
    }
    Ok(all)
}

fn placed(spec: &CantileverSpec, strip: &Strip, heel: Length) -> Strip {
    Strip { width: spec.stem + heel, back: spec.stem, ..strip.clone() }
}

/// The shortest heel with which a strip stands.
fn heel(case: &WallCase, laid: &Laid, strip: &Strip) -> Length {
    let fails = |i: usize| gravity::fails(case, laid, &placed(laid.spec, strip, STEP * i as f64));
    STEP * gravity::first(MOST, fails) as f64
}

/// The wall with the steel of its sections.
pub(crate) fn with_steel<'a>(case: &WallCase, spec: &'a CantileverSpec, strips: &[Strip]) -> Laid<'a> {
    let seen = gravity::seen(case, &Laid { spec, steel: None });
    Laid { spec, steel: Some(steel::choose(&seen, spec, strips)) }
}
