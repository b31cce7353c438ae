//! How long must the grid be and how close its layers, so that every strip stands?

use groundhold_quantity::Length;

use super::body::Laid;
use super::{DryBlockSpec, face};
use crate::gravity::{self, Coursing};
use crate::{CaseError, Layout, Strip, WallCase};

/// Lengths of grid are solved in steps of this: what is cut with a tape.
const STEP: Length = Length::mm(100.0);
/// Shortest grid, whatever the height: so much lies behind the slip wedge. FHWA-NHI-10-024 (2009), 4.4.7: 1 m.
const SHORTEST: Length = Length::m(1.0);
/// Share of the height that a grid is long at least. FHWA-NHI-10-024 (2009), chapter 2: 0.7.
const OF_HEIGHT: f64 = 0.7;
/// Longest grid that is tried, beyond the shortest.
const MORE: usize = 40;

/// The strips of a wall, in whole courses on a base that steps in whole courses at half blocks; without widths.
///
/// # Errors
/// A height or a length that cannot be meant.
pub(crate) fn strips(case: &WallCase, spec: &DryBlockSpec) -> Result<Vec<Strip>, CaseError> {
    let mut lower = case.clone();
    for s in &mut lower.stations {
        s.wanted_top = s.wanted_top - spec.cap;
    }
    let coursing = Coursing {
        unit: spec.length / 2.0,
        whole_units: true,
        step: spec.height,
        course: Some(spec.height),
        below: Length::ZERO,
        bury: spec.bury,
    };
    let mut all = gravity::strips(&lower, &coursing)?;
    face::check_count(case, spec, &all)?;
    for s in &mut all {
        s.top = s.top + spec.cap;
        *s = placed(spec, s, spec.depth);
    }
    Ok(all)
}

/// A strip with its width; what rests against the blocks begins at their back.
fn placed(spec: &DryBlockSpec, strip: &Strip, width: Length) -> Strip {
    Strip { width, back: spec.depth, ..strip.clone() }
}

/// The sizes with layers this far apart.
fn every<'a>(case: &WallCase, spec: &'a DryBlockSpec, every: usize) -> Laid<'a> {
    Laid { spec, every, fill: case.retained_soil.unit_weight, bare: false }
}

/// Distances of layers to try, the furthest apart first.
fn distances(spec: &DryBlockSpec) -> Vec<usize> {
    match spec.grid.every {
        Some(n) => vec![n as usize],
        None => (1..=spec.most_courses()).rev().collect(),
    }
}

/// True where every strip passes its checks; the case is one that was seen.
fn all_stand(case: &WallCase, laid: &Laid, strips: &[Strip]) -> bool {
    strips.iter().all(|s| gravity::stands(case, laid, s))
}

/// Gives every strip the length of its grid, and finds the layers: as few as do, then as short as do.
pub(crate) fn solve<'a>(case: &WallCase, spec: &'a DryBlockSpec, strips: &mut [Strip]) -> Laid<'a> {
    let bare = every(case, spec, 1);
    if !spec.grid.laid {
        return bare;
    }
    let seen = gravity::seen(case, &bare);
    let needs: Vec<bool> =
        strips.iter().map(|s| spec.grid.length.is_some() || !gravity::stands(&seen, &bare, s)).collect();
    for n in distances(spec) {
        let found = every(case, spec, n);
        for (s, needs) in strips.iter_mut().zip(&needs) {
            let width = if *needs { width(&seen, &found, s) } else { spec.depth };
            *s = placed(spec, s, width);
        }
        if all_stand(&seen, &found, strips) {
            break;
        }
    }
    // As it is read from the strips again.
    apart(case, spec, strips)
}

/// The layers of a wall that was laid out.
pub(crate) fn laid<'a>(case: &WallCase, spec: &'a DryBlockSpec, layout: &Layout) -> Laid<'a> {
    apart(case, spec, &layout.strips)
}

/// Layers as far apart as the strips stand with.
fn apart<'a>(case: &WallCase, spec: &'a DryBlockSpec, strips: &[Strip]) -> Laid<'a> {
    let tries = distances(spec);
    let last = every(case, spec, tries.last().copied().unwrap_or(1));
    if !spec.grid.laid || tries.len() == 1 {
        return last;
    }
    let seen = gravity::seen(case, &last);
    tries.into_iter().map(|n| every(case, spec, n)).find(|l| all_stand(&seen, l, strips)).unwrap_or(last)
}

/// The shortest grid with which a strip stands.
fn width(case: &WallCase, laid: &Laid, strip: &Strip) -> Length {
    let spec = laid.spec;
    if let Some(given) = spec.grid.length {
        return given;
    }
    let least = SHORTEST.max((strip.top - strip.base) * OF_HEIGHT).max(spec.depth + STEP);
    let first = STEP * (least / STEP - 1e-9).ceil();
    let fails = |i: usize| gravity::fails(case, laid, &placed(spec, strip, first + STEP * i as f64));
    first + STEP * gravity::first(MORE, fails) as f64
}
