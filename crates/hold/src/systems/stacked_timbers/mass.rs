//! How does the wall stand as a whole: the timbers alone by their weight, or with the soil that the ties hold to them?
//!
//! With ties, timbers and soil back to the cross pieces act as one mass, as in walls of reinforced soil: what lies within is
//! checked tie by tie. Without ties only the timbers count.

use groundhold_quantity::{Length, Pressure, UnitWeight, trim};

use super::StackedTimberSpec;
use super::checks::place::least_length;
use crate::gravity::{Body, Course, Gravity, Way};
use crate::{Layout, Strip, Stuff, WallCase};

/// Tangent of friction of wet sawn timber on timber. Common practice, no source.
const TIMBER_ON_TIMBER: f64 = 0.4;
/// Ties are cut in steps of this.
pub(crate) const STEP: Length = Length::mm(100.0);
/// No longer tie is tried. Common practice, no source.
const LONGEST: Length = Length::m(4.0);
/// Retained height above which guides for stacked timbers stop. Common practice, no source.
const GUIDE: Length = Length::m(1.2);

/// A wall of stacked timbers as the checks of its weight see it.
pub(crate) struct Mass<'a> {
    pub spec: &'a StackedTimberSpec,
    pub case: &'a WallCase,
}

impl Gravity for Mass<'_> {
    fn body(&self, strip: &Strip) -> Body {
        let (h, t) = (self.spec.timber.height.to_m(), self.spec.timber.thickness.to_m());
        let timber = self.spec.timber.unit_weight().to_kn_per_m3();
        let soil = self.case.retained_soil.unit_weight.to_kn_per_m3();
        let tied = self.spec.tied && !self.spec.rows(strip.courses).is_empty();
        let wide = if tied { strip.width.to_m().max(t) } else { t };
        let mean = (timber * t + soil * (wide - t)) / wide;
        let courses = (0..strip.courses.max(1)).map(|i| {
            let front = -self.spec.batter.to_ratio() * h * i as f64;
            let back = if tied { -wide } else { front - t };
            Course {
                height: (h * i as f64, h * (i + 1) as f64),
                front: (front, front),
                back: (back, back),
                unit_weight: UnitWeight::kn_per_m3(mean),
                stuff: Stuff::Timber,
                group: "timbers",
                joint_below: !tied,
            }
        });
        Body { courses: courses.collect() }
    }
    fn joint_friction(&self) -> f64 {
        TIMBER_ON_TIMBER
    }
    fn crushing(&self) -> Option<(Pressure, &'static str)> {
        None
    }
    fn drains_itself(&self) -> bool {
        false
    }
    fn guide(&self) -> (Length, &'static str) {
        (GUIDE, "walls of stacked timbers")
    }
    fn widths(&self, strip: &Strip) -> Vec<Length> {
        if !self.spec.tied || self.spec.rows(strip.courses).is_empty() {
            return vec![self.spec.timber.thickness];
        }
        let from = least_length(self.case, self.spec, strip).unwrap_or(Length::m(1.0)).min(LONGEST);
        let from = STEP * (from / STEP - 1e-6).ceil();
        let n = ((LONGEST - from) / STEP + 1e-9).floor().max(0.0) as usize;
        (0..=n).map(|i| from + STEP * i as f64).collect()
    }
    fn given_width(&self) -> Option<Length> {
        if self.spec.tied { self.spec.ties.length } else { Some(self.spec.timber.thickness) }
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        let s = self.spec;
        let mut all = vec![];
        if !s.tied {
            let says = "Ties into the bank with cross pieces at their ends.".to_string();
            all.push(Way { key: "ties", tries: vec![("into bank".into(), says)] });
            return all;
        }
        let now = layout.strips.iter().map(|x| x.width).reduce(Length::max).unwrap_or(Length::m(1.0));
        all.push(Way::lengths("tie_length", now, STEP, LONGEST, |l| format!("Ties {} m long.", trim(l.to_m(), 1))));
        all.push(Way::lengths("bury", s.bury, s.timber.height, Length::m(0.9), |l| {
            format!("The lowest course {} mm below the ground in front.", trim(l.to_mm(), 0))
        }));
        all
    }
}
