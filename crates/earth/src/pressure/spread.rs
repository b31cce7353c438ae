//! How is a pressure spread over the height of a wall, and what does it come to?

use groundhold_quantity::{Length, LineForce, Moment, Pressure};

/// A pressure over depth, straight between its ordinates. Two ordinates at one depth mark a jump.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Spread {
    /// (depth below the ground at the wall, pressure), depth never falling.
    pub ordinates: Vec<(Length, Pressure)>,
}

impl Spread {
    /// From depths and pressures in m and kPa, in the order of depth.
    pub(crate) fn of(depths: &[f64], pressures: &[f64]) -> Spread {
        let at = depths.iter().zip(pressures).map(|(z, p)| (Length::m(*z), Pressure::kpa(*p)));
        Spread { ordinates: at.collect() }
    }
    /// Sum of the pressures per metre run.
    pub fn force(&self) -> LineForce {
        self.pieces().map(|(a, b)| (a.1 + b.1) * 0.5 * (b.0 - a.0)).sum()
    }
    /// Moment of the pressures about a depth, per metre run; positive where they lie above it.
    pub fn moment_about(&self, depth: Length) -> Moment {
        let of = |(a, b): ((Length, Pressure), (Length, Pressure))| {
            let thick = (b.0 - a.0).to_m();
            let (pa, pb) = (a.1.to_kpa(), b.1.to_kpa());
            // A trapezium: its force at its lower end, and its own moment about that end.
            let force = 0.5 * (pa + pb) * thick;
            force * (depth - b.0).to_m() + (2.0 * pa + pb) * thick * thick / 6.0
        };
        Moment::knm(self.pieces().map(of).sum())
    }
    /// Height of the force above a depth; nothing where there is no force.
    pub fn arm_above(&self, depth: Length) -> Length {
        let force = self.force().to_kn_per_m();
        if force > 0.0 { Length::m(self.moment_about(depth).to_knm() / force) } else { Length::ZERO }
    }
    /// Pressure at a depth; at a jump, the larger. Outside, nothing.
    pub fn at(&self, depth: Length) -> Pressure {
        let here = |(a, b): ((Length, Pressure), (Length, Pressure))| {
            let share = if b.0 > a.0 { (depth - a.0) / (b.0 - a.0) } else { 1.0 };
            (a.0 <= depth && depth <= b.0).then(|| a.1 + (b.1 - a.1) * share)
        };
        self.pieces().filter_map(here).fold(Pressure::ZERO, Pressure::max)
    }
    /// The same with every pressure times a factor.
    pub fn times(&self, factor: f64) -> Spread {
        Spread { ordinates: self.ordinates.iter().map(|(z, p)| (*z, *p * factor)).collect() }
    }
    fn pieces(&self) -> impl Iterator<Item = ((Length, Pressure), (Length, Pressure))> + '_ {
        self.ordinates.windows(2).map(|w| (w[0], w[1]))
    }
}

/// Even depths from 0 to a height: enough that a curved pressure is caught by straight pieces.
pub(crate) fn even(height: f64, pieces: usize) -> Vec<f64> {
    (0..=pieces).map(|i| height * i as f64 / pieces as f64).collect()
}

/// Force, and its height above the base, of pressures that are straight between depths. In m and kPa.
pub(crate) fn sum_of(height: f64, depths: &[f64], pressures: &[f64]) -> (f64, f64) {
    let s = Spread::of(depths, pressures);
    (s.force().to_kn_per_m(), s.arm_above(Length::m(height)).to_m())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_triangle_has_its_force_at_a_third_and_a_jump_counts_once() {
        let s = Spread::of(&[0.0, 3.0], &[0.0, 12.0]);
        assert!((s.force().to_kn_per_m() - 18.0).abs() < 1e-12);
        assert!((s.arm_above(Length::m(3.0)).to_m() - 1.0).abs() < 1e-12);
        let jump = Spread::of(&[0.0, 1.0, 1.0, 2.0], &[2.0, 2.0, 5.0, 5.0]);
        assert!((jump.force().to_kn_per_m() - 7.0).abs() < 1e-12);
        assert_eq!(jump.at(Length::m(1.0)).to_kpa(), 5.0);
        assert_eq!(jump.at(Length::m(2.5)).to_kpa(), 0.0);
    }
}
