//! Is this riser with this going within the limits, and which of two is the better step?

use groundhold_quantity::{Length, math};

use crate::StepLimits;

/// The 2R+G that a comfortable step has, 630 mm: the middle of 600–660 mm for steps outdoors (check table GE-T1; from
/// memory, common practice).
pub const COMFORT: Length = Length::mm(630.0);

/// The riser preferred among equally comfortable ones, 150 mm (common practice for gardens, no source: 140–165 mm).
pub const COMFORT_RISER: Length = Length::mm(150.0);

/// Limits in millimetres, as formulas use them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct StepLimitsMm {
    pub riser: (f64, f64),
    pub going: (f64, f64),
    pub sum: (f64, f64),
    pub pitch_most_rad: f64,
}

impl From<&StepLimits> for StepLimitsMm {
    fn from(l: &StepLimits) -> StepLimitsMm {
        let mm = |p: (Length, Length)| (p.0.to_mm(), p.1.to_mm());
        StepLimitsMm {
            riser: mm(l.riser),
            going: mm(l.going),
            sum: mm(l.two_r_plus_g),
            pitch_most_rad: l.pitch_most.to_rad(),
        }
    }
}

/// What of a step is out of its limits; each is how far outside, in its unit, and nothing where it is inside.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Proportion {
    pub riser_mm: f64,
    pub going_mm: f64,
    pub sum_mm: f64,
    pub pitch_rad: f64,
}

/// Figures that differ by less are the same on the ground, mm.
const SAME: f64 = 1e-6;

impl StepLimitsMm {
    /// Which limits a step of this riser and going leaves. Without treads (one riser) only the riser counts.
    pub fn check(&self, riser: f64, going: f64, risers: usize) -> Proportion {
        let out = |v: f64, (least, most): (f64, f64)| {
            if v < least - SAME {
                v - least
            } else if v > most + SAME {
                v - most
            } else {
                0.0
            }
        };
        let riser_mm = out(riser, self.riser);
        if risers < 2 {
            return Proportion { riser_mm, ..Proportion::default() };
        }
        let pitch = math::atan2(riser, going);
        Proportion {
            riser_mm,
            going_mm: out(going, self.going),
            sum_mm: out(2.0 * riser + going, self.sum),
            pitch_rad: (pitch - self.pitch_most_rad - 1e-9).max(0.0),
        }
    }

    /// The goings that fit a riser, least and most; least above most where none does.
    pub fn goings(&self, riser: f64) -> (f64, f64) {
        let steep = riser / math::tan(self.pitch_most_rad).max(1e-6);
        let least = self.going.0.max(self.sum.0 - 2.0 * riser).max(steep);
        (least, self.going.1.min(self.sum.1 - 2.0 * riser))
    }
}

impl Proportion {
    /// True when nothing is out of its limits.
    pub fn fits(&self) -> bool {
        *self == Proportion::default()
    }
    /// How far out in all, in millimetres of riser as it were: a riser counts twice as much as a going, as in 2R+G.
    pub fn amount(&self) -> f64 {
        2.0 * self.riser_mm.abs() + self.going_mm.abs() + self.sum_mm.abs() + self.pitch_rad.abs() * 200.0
    }
}

/// Orders steps, the better first: nearer to [`COMFORT`] in classes of 5 mm, then nearer to [`COMFORT_RISER`].
pub(crate) fn rank(riser: f64, going: f64) -> (i64, f64) {
    let off = (2.0 * riser + going - COMFORT.to_mm()).abs();
    ((off / 5.0 + 1e-9).floor().min(1e9) as i64, (riser - COMFORT_RISER.to_mm()).abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_step_within_the_limits_fits_and_the_next_does_not() {
        let l = StepLimitsMm::from(&StepLimits::OUTDOOR_COMFORT);
        assert!(l.check(170.0, 300.0, 4).fits());
        assert!(!l.check(170.1, 300.0, 4).fits());
        assert!(l.check(120.0, 420.0, 4).fits());
        assert!(!l.check(119.9, 420.3, 4).fits());
        assert!((l.check(150.0, 361.0, 4).sum_mm - 1.0).abs() < 1e-9);
        assert!(l.check(150.0, 2000.0, 1).fits(), "one riser has no going");
    }
}
