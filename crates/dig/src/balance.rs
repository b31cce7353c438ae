//! At which level is nothing left over and nothing short?

use groundhold_quantity::{Length, Level, Volume, trim};

/// The level found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balanced {
    /// The level.
    pub level: Level,
    /// What is still left over there (negative: short).
    pub over: Volume,
    /// How often the volume was worked out.
    pub trials: u32,
}

/// Why there is no level.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoBalance<E> {
    /// Both ends have too much, or both too little.
    #[error("no level between {} m and {} m balances: {} m³ {} at the lowest, {} m³ {} at the highest",
        trim(lowest.to_m(), 3), trim(highest.to_m(), 3),
        trim(over_lowest.to_m3().abs(), 2), side(*over_lowest),
        trim(over_highest.to_m3().abs(), 2), side(*over_highest))]
    SameSide {
        /// Lowest level tried.
        lowest: Level,
        /// Highest level tried.
        highest: Level,
        /// What is left over at the lowest.
        over_lowest: Volume,
        /// What is left over at the highest.
        over_highest: Volume,
    },
    /// The limits are not two ordinary levels in order.
    #[error("the levels to search between must be ordinary numbers, the lower first")]
    Limits,
    /// The volume was not an ordinary number at a level.
    #[error("the volume left over at {} m is not an ordinary number", trim(at.to_m(), 3))]
    NotANumber {
        /// That level.
        at: Level,
    },
    /// The volume could not be worked out at a level.
    #[error("{0}")]
    Trial(E),
}

fn side(over: Volume) -> &'static str {
    if over.to_m3() < 0.0 { "short" } else { "left over" }
}

/// Volume taken as nothing: a litre.
const NOTHING: Volume = Volume::litre(1.0);
/// A level is found to a hundredth of a millimetre.
const FINE: Length = Length::mm(0.01);

/// Finds the level between `lowest` and `highest` at which `over` is zero, to a litre or a hundredth of a millimetre,
/// whichever comes first, in at most 100 trials. `over` gives what is left over at a level and must change its sign
/// between the two; it need not fall steadily. The search is the Illinois form of false position, halving the bracket
/// whenever it has not shrunk by half in three steps (Dowell and Jarratt, BIT 11 (1971) 168–174, from memory).
///
/// # Errors
/// [`NoBalance`] says which end has how much too much, or passes on what the trial refused.
///
/// ```
/// use groundhold_dig::balance;
/// use groundhold_quantity::{Level, Volume};
/// let found = balance(|l| Ok::<_, ()>(Volume::m3(27.0 * (100.2 - l.to_m()))), Level::m(99.0),
/// Level::m(101.0)).unwrap(); assert!((found.level.to_m() - 100.2).abs() < 1e-4);
/// assert!(balance(|_| Ok::<_, ()>(Volume::m3(1.0)), Level::m(99.0), Level::m(101.0)).is_err());
/// ```
pub fn balance<E>(
    mut over: impl FnMut(Level) -> Result<Volume, E>,
    lowest: Level,
    highest: Level,
) -> Result<Balanced, NoBalance<E>> {
    let (mut a, mut b) = (lowest.to_m(), highest.to_m());
    if !(a.is_finite() && b.is_finite() && a <= b) {
        return Err(NoBalance::Limits);
    }
    let mut trials = 0_u32;
    let mut at = |level: f64| -> Result<f64, NoBalance<E>> {
        trials += 1;
        let v = over(Level::m(level)).map_err(NoBalance::Trial)?.to_m3();
        if v.is_finite() { Ok(v) } else { Err(NoBalance::NotANumber { at: Level::m(level) }) }
    };
    let (mut fa, mut fb) = (at(a)?, at(b)?);
    let mut best = if fa.abs() <= fb.abs() { (a, fa) } else { (b, fb) };
    if fa * fb > 0.0 && best.1.abs() > NOTHING.to_m3() {
        return Err(NoBalance::SameSide { lowest, highest, over_lowest: Volume::m3(fa), over_highest: Volume::m3(fb) });
    }
    let mut kept = None;
    let (mut width, mut steps) = (b - a, 0);
    for _ in 0..98 {
        if best.1.abs() <= NOTHING.to_m3() || b - a <= FINE.to_m() {
            break;
        }
        let false_position = (a * fb - b * fa) / (fb - fa);
        let inside = a < false_position && false_position < b;
        let m = if inside && steps < 3 { false_position } else { 0.5 * (a + b) };
        let fm = at(m)?;
        if fm.abs() < best.1.abs() {
            best = (m, fm);
        }
        if (fm > 0.0) == (fa > 0.0) {
            (a, fa) = (m, fm);
            fb *= if kept == Some(End::B) { 0.5 } else { 1.0 };
            kept = Some(End::B);
        } else {
            (b, fb) = (m, fm);
            fa *= if kept == Some(End::A) { 0.5 } else { 1.0 };
            kept = Some(End::A);
        }
        steps += 1;
        if b - a <= 0.5 * width || steps > 3 {
            (width, steps) = (b - a, 0);
        }
    }
    Ok(Balanced { level: Level::m(best.0), over: Volume::m3(best.1), trials })
}

/// Which end of the bracket stayed where it was.
#[derive(Clone, Copy, PartialEq)]
enum End {
    A,
    B,
}
