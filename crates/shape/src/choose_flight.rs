//! Which steps come down to the ground, when the ground's level depends on how far the steps reach?

use groundhold_quantity::{Length, Level};

use crate::StepLimits;
use crate::steps::{COMFORT, Proportion, StepLimitsMm, rank};

/// Steps of a flight that meets the ground.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Steps {
    pub risers: usize,
    pub riser: Length,
    pub going: Length,
    pub foot_level: Level,
    /// What is out of its limits.
    pub out: Proportion,
}

/// Goings are tried in steps of this, mm: what a builder sets out.
const GOING_STEP: f64 = 5.0;
/// No flight is longer than this, m.
const LONGEST: f64 = 100.0;

/// The goings to try, mm.
pub(crate) fn goings(given: Option<Length>, limits: &StepLimitsMm) -> Vec<f64> {
    if let Some(g) = given {
        return vec![g.to_mm()];
    }
    let (least, most) = (limits.going.0.max(50.0), limits.going.1.min(1000.0));
    let (first, last) = ((least / GOING_STEP - 1e-9).ceil() as usize, (most / GOING_STEP + 1e-9).floor() as usize);
    let list: Vec<f64> = (first..=last).map(|k| k as f64 * GOING_STEP).collect();
    if list.is_empty() { vec![least] } else { list }
}

/// Every number of risers with every going that reaches ground: risers, going (mm), level of the ground at the foot.
fn feet<'a>(
    ground: &'a dyn Fn(f64) -> Option<Level>,
    goings: &'a [f64],
    most: usize,
) -> impl Iterator<Item = (usize, f64, Level)> + 'a {
    (1..=most).flat_map(move |n| {
        let tried = if n == 1 { &goings[..1] } else { goings };
        tried.iter().filter_map(move |g| {
            let x = (n - 1) as f64 * g / 1000.0;
            (x <= LONGEST).then(|| ground(x)).flatten().map(|z| (n, *g, z))
        })
    })
}

/// The best steps from a level down to the ground: within the limits if any are, else the least out of them. Riser and
/// foot follow from the number of risers and the going without trial, since the foot is then known. Nothing where the
/// ground is nowhere lower.
pub(crate) fn choose_steps(
    top: Level,
    ground: &dyn Fn(f64) -> Option<Level>,
    going: Option<Length>,
    limits: &StepLimits,
) -> Option<Steps> {
    let mm = StepLimitsMm::from(limits);
    let goings = goings(going, &mm);
    let mut best: Option<(bool, f64, (i64, f64), Steps)> = None;
    for (n, g, foot_level) in feet(ground, &goings, 150) {
        let rise = (top - foot_level).to_mm();
        if rise < 10.0 {
            continue;
        }
        let riser = rise / n as f64;
        let out = mm.check(riser, g, n);
        // A single riser has no going; it is ranked by its height alone.
        let order = if n == 1 { rank(riser, COMFORT.to_mm() - 2.0 * riser) } else { rank(riser, g) };
        let better = best.as_ref().is_none_or(|(fits, amount, r, _)| match (out.fits(), *fits) {
            (true, false) => true,
            (false, true) => false,
            (true, true) => order.0 < r.0 || (order.0 == r.0 && order.1 < r.1),
            (false, false) => out.amount() < *amount,
        });
        if better {
            let steps = Steps { risers: n, riser: Length::mm(riser), going: Length::mm(g), foot_level, out };
            best = Some((out.fits(), out.amount(), order, steps));
        }
    }
    best.map(|b| b.3)
}

/// The least move of the pad, up positive, with which a number of risers fits, and that number.
pub(crate) fn nearest_pad_move(
    top: Level,
    ground: &dyn Fn(f64) -> Option<Level>,
    going: Option<Length>,
    limits: &StepLimits,
) -> Option<(Length, usize)> {
    let mm = StepLimitsMm::from(limits);
    let goings = goings(going, &mm);
    let mut best: Option<(f64, usize)> = None;
    for (n, g, z) in feet(ground, &goings, 60) {
        // The risers that this going allows.
        let by_sum = ((mm.sum.0 - g) / 2.0, (mm.sum.1 - g) / 2.0);
        let steep = g * groundhold_quantity::math::tan(mm.pitch_most_rad);
        let (least, most) =
            if n == 1 { mm.riser } else { (mm.riser.0.max(by_sum.0), mm.riser.1.min(by_sum.1).min(steep)) };
        if least > most || (n > 1 && !(mm.going.0 <= g && g <= mm.going.1)) {
            continue;
        }
        let riser = (top - z).to_mm() / n as f64;
        // A hair inside, so that rounding to the millimetre does not lose it.
        let by = ((riser.clamp(least, most) - riser) * n as f64) / 1000.0;
        if best.is_none_or(|(b, _)| by.abs() < b.abs()) {
            best = Some((by, n));
        }
    }
    best.map(|(by, n)| {
        // Rounded away to the whole millimetre.
        let mm = if by < 0.0 { (by * 1000.0 + 1e-6).floor() } else { (by * 1000.0 - 1e-6).ceil() };
        (Length::mm(mm), n)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_foot_is_found_on_falling_ground_and_all_risers_are_equal() {
        // Ground 0.6 m below the pad at its edge, falling 1:6.
        let ground = |x: f64| Some(Level::m(100.0 - 0.6 - x / 6.0));
        let s = choose_steps(Level::m(100.0), &ground, None, &StepLimits::OUTDOOR_COMFORT).unwrap();
        assert!(s.out.fits());
        let x = (s.risers - 1) as f64 * s.going.to_m();
        assert!((s.riser.to_m() * s.risers as f64 - (0.6 + x / 6.0)).abs() < 1e-12);
        assert!((2.0 * s.riser + s.going - COMFORT).to_mm().abs() < 5.0);
    }

    #[test]
    fn ground_that_never_lies_lower_gives_no_steps() {
        let ground = |_: f64| Some(Level::m(100.0));
        assert_eq!(choose_steps(Level::m(100.0), &ground, None, &StepLimits::OUTDOOR_COMFORT), None);
    }

    #[test]
    fn a_pad_moved_as_proposed_lets_the_steps_fit() {
        // 70 mm are too little for a riser of 120 mm.
        let ground = |_: f64| Some(Level::m(99.93));
        let s = choose_steps(Level::m(100.0), &ground, None, &StepLimits::OUTDOOR_COMFORT).unwrap();
        assert!(!s.out.fits());
        let (by, n) = nearest_pad_move(Level::m(100.0), &ground, None, &StepLimits::OUTDOOR_COMFORT).unwrap();
        assert_eq!((by.to_mm().round(), n), (50.0, 1));
        let moved = choose_steps(Level::m(100.0) + by, &ground, None, &StepLimits::OUTDOOR_COMFORT).unwrap();
        assert!(moved.out.fits());
    }
}
