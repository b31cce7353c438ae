//! At which level is the dig cheapest, when tipping, bringing and carrying all cost?

use groundhold_quantity::{Length, Level};

/// Levels tried first, evenly over the range.
const TRIED: u32 = 16;
/// A level is found to this.
const FINE: Length = Length::mm(1.0);

/// The cheapest level between two, its cost, and how often the cost was worked out. The range is tried at even steps; round
/// the best of them the search closes in by the golden section (Kiefer, Proc. Amer. Math. Soc. 4 (1953) 502–506). Where the
/// cost has several hollows narrower than a sixteenth of the range, one of them may be missed. `None` where the levels are
/// not two ordinary ones in order, or no cost is an ordinary number.
pub fn cheapest(
    mut cost: impl FnMut(Level) -> Option<f64>,
    lowest: Level,
    highest: Level,
) -> Option<(Level, f64, u32)> {
    let (a, b) = (lowest.to_m(), highest.to_m());
    if !(a.is_finite() && b.is_finite() && a <= b) {
        return None;
    }
    let mut trials = 0;
    let mut at = |level: f64| {
        trials += 1;
        cost(Level::m(level)).filter(|c| c.is_finite()).unwrap_or(f64::INFINITY)
    };
    let step = (b - a) / f64::from(TRIED);
    let mut best = (a, f64::INFINITY);
    for k in 0..=TRIED {
        let level = a + step * f64::from(k);
        let c = at(level);
        if c < best.1 {
            best = (level, c);
        }
    }
    if !best.1.is_finite() {
        return None;
    }
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    let (mut low, mut high) = ((best.0 - step).max(a), (best.0 + step).min(b));
    let (mut x, mut y) = (high - golden * (high - low), low + golden * (high - low));
    let (mut cx, mut cy) = (at(x), at(y));
    while high - low > FINE.to_m() {
        if cx <= cy {
            (high, y, cy) = (y, x, cx);
            x = high - golden * (high - low);
            cx = at(x);
        } else {
            (low, x, cx) = (x, y, cy);
            y = low + golden * (high - low);
            cy = at(y);
        }
        for (level, c) in [(x, cx), (y, cy)] {
            if c < best.1 {
                best = (level, c);
            }
        }
    }
    Some((Level::m(best.0), best.1, trials))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bottom_of_a_hollow_is_found_to_a_millimetre_also_at_an_end() {
        let at = |bottom: f64| cheapest(|l| Some((l.to_m() - bottom).abs()), Level::m(99.0), Level::m(101.0)).unwrap();
        for bottom in [99.0, 100.2, 101.0] {
            assert!((at(bottom).0.to_m() - bottom).abs() < 1.1e-3, "{bottom}");
        }
        assert!(at(100.2).2 < 60);
    }

    #[test]
    fn without_a_cost_or_a_range_there_is_no_level() {
        assert!(cheapest(|_| None, Level::m(99.0), Level::m(101.0)).is_none());
        assert!(cheapest(|_| Some(1.0), Level::m(101.0), Level::m(99.0)).is_none());
    }
}
