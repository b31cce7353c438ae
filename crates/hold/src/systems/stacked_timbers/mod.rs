//! Timbers laid up in courses and screwed together, with ties that reach into the bank and cross pieces at their ends.

mod checks;
mod courses;
mod mass;
mod remedies;
mod rows;
mod shown;
mod spec;
mod take_off;

pub use spec::*;

use groundhold_quantity::{Length, Volume};

use self::mass::Mass;
use crate::gravity::{self, Coursing};
use crate::{CaseError, Check, CheckKind, Cross, Excavation, Layout, Strip, System, Verdict, WallCase, by_rows};

/// Room dug before and behind the lowest course. Common practice, no source.
const ROOM: Length = Length::mm(200.0);

impl System for StackedTimberSpec {
    fn key(&self) -> &'static str {
        "stacked-timbers"
    }
    by_rows!(rows::ROWS);
    fn stocked(&self) -> Option<(&'static str, String)> {
        Some(("stock", self.timber.material()))
    }
    fn thickness(&self) -> Length {
        self.timber.thickness
    }
    fn back_to_line(&self) -> Length {
        self.timber.thickness
    }
    fn riser(&self) -> Option<String> {
        Some(self.timber.material())
    }
    fn treatments(&self) -> Vec<&str> {
        if self.timber.treatment.is_empty() { vec![] } else { vec![&self.timber.treatment] }
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        match self.tied {
            true => &[CheckKind::DeadmanPull, CheckKind::DeadmanPlace, CheckKind::TieFixing],
            false => &[CheckKind::Overturning, CheckKind::Sliding],
        }
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let coursing = Coursing {
            unit: self.longest(),
            whole_units: true,
            step: self.timber.height,
            course: Some(self.timber.height),
            below: Length::ZERO,
            bury: self.bury,
        };
        let mut strips = gravity::strips(case, &coursing)?;
        gravity::solve_widths(case, &Mass { spec: self, case }, &mut strips);
        for s in &mut strips {
            s.back = self.timber.thickness;
        }
        let most = |of: &dyn Fn(&Strip) -> Length| strips.iter().map(of).reduce(Length::max).unwrap_or_default();
        let wide = self.timber.thickness + ROOM * 2.0;
        let trench = strips.iter().map(|s| wide * (s.front - s.base + self.bed).max(Length::ZERO) * s.length());
        let mut layout = Layout {
            dig: Excavation { trench: trench.sum::<Volume>(), depth: most(&|s| s.front - s.base + self.bed) },
            retained: most(&|s| s.retained),
            exposed: most(&Strip::exposed),
            total: most(&|s| s.top - s.base),
            ..Layout::empty(&case.id, strips.iter().map(Strip::length).sum())
        };
        let laid = courses::laid(case, self, &strips);
        layout.faces = shown::faces(self, &strips, &laid);
        layout.strips = strips;
        take_off::fill(case, self, &laid, &mut layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge(case, self, layout)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge_quick(case, self, layout)
    }
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        checks::alone(case, self, layout)
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        shown::cross(case, self, layout, chainage)
    }
}

impl StackedTimberSpec {
    /// Checks what belongs together.
    ///
    /// # Errors
    /// [`CaseError::Value`] names the first size that cannot be built and what was expected.
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        let u = case.units;
        for (what, l) in [("the height of a timber", self.timber.height), ("its thickness", self.timber.thickness)] {
            if !(50.0..=400.0).contains(&l.to_mm()) {
                return Err(case.wrong(what, u.length(l), "from 50 mm to 400 mm"));
            }
        }
        if self.stock.is_empty() || self.stock.iter().any(|l| !(0.6..=8.0).contains(&l.to_m())) {
            return Err(case.wrong("the list of stock lengths", "empty or out of range", "lengths from 0.6 m to 8 m"));
        }
        let (least, every) = (self.timber.thickness * 2.0, self.ties.every);
        if self.tied && self.ties.spacing < least {
            return Err(case.wrong("the distance of ties", u.length(self.ties.spacing), "at least two thicknesses"));
        }
        if self.tied && (every == 0 || self.ties.screws == 0) {
            return Err(case.wrong("rows of ties and their screws", "0", "at least 1"));
        }
        if self.screws.spacing < Length::mm(50.0) {
            return Err(case.wrong("the distance of screws", u.length(self.screws.spacing), "at least 50 mm"));
        }
        Ok(())
    }
}
