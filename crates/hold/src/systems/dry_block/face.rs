//! How do the blocks lie in the face, course by course in half bond, and how many of each are there?

use groundhold_quantity::{Length, Level};

use super::{BESIDE, DryBlockSpec};
use crate::{CaseError, FacePiece, Layout, Strip, Stuff, WallCase};

/// Lengths that differ by less are one.
const SAME: Length = Length::mm(1.0);
/// More blocks than this are a slip of the pen.
const MOST: f64 = 100_000.0;

/// A block as it lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Laid {
    /// Counted from 0 at the lowest base of the wall.
    pub course: usize,
    /// Along the wall line.
    pub chainage: (Length, Length),
}

/// How many blocks lie in the face.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Count {
    /// Whole ones.
    pub whole: usize,
    /// Halves, two of which are split from one.
    pub halves: usize,
    /// Cut to another length, each from one.
    pub cut: usize,
}

impl Count {
    /// As many as are bought.
    pub fn bought(self) -> usize {
        self.whole + self.halves.div_ceil(2) + self.cut
    }
    /// As many as lie there.
    pub fn pieces(self) -> usize {
        self.whole + self.halves + self.cut
    }
}

/// Refuses a wall of more blocks than can be meant.
///
/// # Errors
/// How many there would be.
pub(crate) fn check_count(case: &WallCase, spec: &DryBlockSpec, strips: &[Strip]) -> Result<(), CaseError> {
    let n: f64 = strips.iter().map(|s| s.courses as f64 * (s.length() / spec.length + 1.0)).sum();
    if n > MOST {
        return Err(case.wrong("the number of blocks", format!("{n:.0}"), "at most 100 000"));
    }
    Ok(())
}

/// Lowest and first course above the highest of a strip, counted from the lowest base.
fn rows(spec: &DryBlockSpec, lowest: Level, s: &Strip) -> (usize, usize) {
    let first = ((s.base - lowest) / spec.height).round().max(0.0) as usize;
    (first, first + s.courses)
}

/// Stretches in which a course runs through without a corner.
fn runs(case: &WallCase, spec: &DryBlockSpec, strips: &[Strip], lowest: Level, course: usize) -> Vec<(Length, Length)> {
    let mut all: Vec<(Length, Length)> = vec![];
    for s in strips {
        let (from, to) = rows(spec, lowest, s);
        if !(from..to).contains(&course) {
            continue;
        }
        let corner = case.corners.iter().any(|x| (*x - s.chainage.0).abs() < SAME);
        match all.last_mut().filter(|r| !corner && (r.1 - s.chainage.0).abs() < SAME) {
            Some(r) => r.1 = s.chainage.1,
            None => all.push(s.chainage),
        }
    }
    all
}

/// Every block: joints stand over the middle of the blocks below, counted from the start of each straight.
pub(crate) fn blocks(case: &WallCase, spec: &DryBlockSpec, strips: &[Strip]) -> Vec<Laid> {
    let Some(lowest) = strips.iter().map(|s| s.base).reduce(Level::min) else { return vec![] };
    let top = strips.iter().map(|s| rows(spec, lowest, s).1).max().unwrap_or(0);
    let start = strips[0].chainage.0;
    let mut all = vec![];
    for course in 0..top {
        for (a, b) in runs(case, spec, strips, lowest, course) {
            let straight = case.corners.iter().copied().filter(|x| *x <= a + SAME).fold(start, Length::max);
            let shift = if course % 2 == 1 { spec.length / 2.0 } else { Length::ZERO };
            let joints = joints(a, b, straight + shift, spec.length);
            all.extend(joints.windows(2).map(|w| Laid { course, chainage: (w[0], w[1]) }));
        }
    }
    all
}

/// Joints from `a` to `b` on a raster; a rest shorter than a quarter of a block is shared with the block before it.
fn joints(a: Length, b: Length, anchor: Length, long: Length) -> Vec<Length> {
    let mut all = vec![a];
    let first = ((a - anchor + SAME) / long).floor() + 1.0;
    let mut i = 0.0;
    loop {
        let at = anchor + long * (first + i);
        if b - SAME <= at {
            break;
        }
        all.push(at);
        i += 1.0;
    }
    let n = all.len();
    if n > 1 && b - all[n - 1] < long / 4.0 {
        all[n - 1] = (all[n - 2] + b) / 2.0;
    }
    all.push(b);
    all
}

/// Whole, half and cut blocks.
pub(crate) fn count(spec: &DryBlockSpec, blocks: &[Laid]) -> Count {
    let mut c = Count::default();
    for b in blocks {
        let long = b.chainage.1 - b.chainage.0;
        match () {
            () if (long - spec.length).abs() < SAME => c.whole += 1,
            () if (long - spec.length / 2.0).abs() < SAME => c.halves += 1,
            () => c.cut += 1,
        }
    }
    c
}

/// Pad, blocks and cap as they are seen; what lies below the ground in front is hidden.
pub(crate) fn fill(case: &WallCase, spec: &DryBlockSpec, layout: &mut Layout) {
    let strips = &layout.strips;
    let Some(lowest) = strips.iter().map(|s| s.base).reduce(Level::min) else { return };
    let (mut hidden, mut seen) = (vec![], vec![]);
    for s in strips.iter().filter(|_| spec.pad > Length::ZERO) {
        let title = format!("pad, {}", s.on);
        let level = (s.base - spec.pad, s.base);
        let piece = FacePiece::rectangle(s.on.clone(), Stuff::Gravel, s.chainage, level);
        hidden.push(FacePiece { hidden: true, title, ..piece });
    }
    let mut put = |chainage: (Length, Length), level: (Level, Level), stuff, title: String| {
        let middle = (chainage.0 + chainage.1) / 2.0;
        let Some(s) = layout.strip(middle) else { return };
        let piece = |level| FacePiece {
            title: format!("{title}, {}", s.on),
            ..FacePiece::rectangle(s.on.clone(), stuff, chainage, level)
        };
        if level.0 < s.front {
            hidden.push(FacePiece { hidden: true, ..piece((level.0, level.1.min(s.front))) });
        }
        if level.1 > s.front {
            seen.push(piece((level.0.max(s.front), level.1)));
        }
    };
    for b in blocks(case, spec, strips) {
        let low = lowest + spec.height * b.course as f64;
        put(b.chainage, (low, low + spec.height), Stuff::Block, format!("course {}", b.course + 1));
    }
    for (a, b, top) in caps(spec, strips) {
        put((a, b), (top - spec.cap, top), Stuff::Concrete, "cap".into());
    }
    hidden.extend(seen);
    layout.faces = hidden;
}

/// Cap by cap: as long as a block, each run from its start.
pub(crate) fn caps(spec: &DryBlockSpec, strips: &[Strip]) -> Vec<(Length, Length, Level)> {
    if spec.cap <= Length::ZERO {
        return vec![];
    }
    let each = strips.iter().flat_map(|s| {
        let joints = joints(s.chainage.0, s.chainage.1, s.chainage.0, spec.length);
        let pairs: Vec<_> = joints.windows(2).map(|w| (w[0], w[1], s.top)).collect();
        pairs
    });
    each.collect()
}

/// Width of the pad across the wall.
pub(crate) fn pad_width(spec: &DryBlockSpec) -> Length {
    spec.depth + BESIDE * 2.0
}
