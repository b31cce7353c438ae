//! Are the sizes of this wall ones that can be built, and if not, which is wrong?

use groundhold_quantity::{Length, math};

use super::TimberPostSpec;
use crate::{CaseError, WallCase};

impl TimberPostSpec {
    /// Checks every size.
    ///
    /// # Errors
    /// [`CaseError::Value`] names the first that cannot be built and what was expected.
    pub fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        let within = |what: &str, l: Length, least: f64, most: f64| {
            if (least..=most).contains(&l.to_mm()) {
                return Ok(());
            }
            let expected = format!("from {least} mm to {most} mm");
            Err(case.wrong(what, case.units.length(l), &expected))
        };
        within("the post's breadth", self.post.breadth, 20.0, 600.0)?;
        within("the post's depth", self.post.depth, 20.0, 600.0)?;
        within("the board's thickness", self.board.thickness, 10.0, 300.0)?;
        within("the board's height", self.board.height, 30.0, 600.0)?;
        within("the post spacing", self.spacing, 200.0, 6000.0)?;
        within("the burial of the lowest board", self.bury, 0.0, 2000.0)?;
        within("the gap between boards", self.board_gap, 0.0, 100.0)?;
        within("the ground not counted on", self.neglect_top, 0.0, 2000.0)?;
        within("the hole's diameter", self.hole.diameter, 50.0, 2000.0)?;
        within("the gravel under the post", self.hole.gravel_base, 0.0, 1000.0)?;
        if let Some(depth) = self.hole.depth {
            within("the hole's depth", depth, 50.0, 6000.0)?;
        }
        within("the screw's diameter", self.screws.diameter, 2.0, 20.0)?;
        within("the screw's length", self.screws.length, 10.0, 500.0)?;
        if let Some(c) = &self.capping {
            within("the capping's width", c.width, 30.0, 600.0)?;
            within("the capping's thickness", c.thickness, 10.0, 200.0)?;
        }
        self.check_counts(case)?;
        self.check_holes(case)
    }
    fn check_counts(&self, case: &WallCase) -> Result<(), CaseError> {
        let Some(longest) = self.stock.iter().copied().reduce(Length::max) else {
            return Err(case.wrong(
                "the list of stock lengths",
                "empty",
                "at least one length in which boards are sold",
            ));
        };
        for l in &self.stock {
            if !(0.2..=20.0).contains(&l.to_m()) {
                return Err(case.wrong("a stock length", case.units.length(*l), "from 200 mm to 20 m"));
            }
        }
        if longest < self.spacing {
            let expected = format!("at most the longest stock board, {}", case.units.length(longest));
            return Err(case.wrong("the post spacing", case.units.length(self.spacing), &expected));
        }
        if self.bays_per_board == Some(0) {
            return Err(case.wrong("the bays per board", "0", "at least 1"));
        }
        if !(1..=12).contains(&self.screws.per_joint) {
            return Err(case.wrong("the screws per joint", format!("{}", self.screws.per_joint), "from 1 to 12"));
        }
        if !(0.0..=0.5).contains(&self.lean.to_ratio()) {
            return Err(case.wrong("the lean", case.units.slope(self.lean), "from upright to 1:2 towards the soil"));
        }
        if !(20.0..=1000.0).contains(&self.bow_limit) {
            return Err(case.wrong("the bow limit", format!("span/{}", self.bow_limit), "from span/20 to span/1000"));
        }
        Ok(())
    }
    fn check_holes(&self, case: &WallCase) -> Result<(), CaseError> {
        let diagonal = Length::m(math::hypot(self.post.breadth.to_m(), self.post.depth.to_m()));
        let holes =
            case.built.iter().map(|b| b.hole_diameter).chain(case.changes.iter().filter_map(|c| c.hole_diameter));
        for d in holes.chain([self.hole.diameter]) {
            if d < diagonal {
                let expected = format!("at least the post's diagonal, {}", case.units.length(diagonal));
                return Err(case.wrong("the hole's diameter", case.units.length(d), &expected));
            }
        }
        Ok(())
    }
}
