//! Which levels of the job hang like beads on the staff beside the drawing, and what does the job say when one is slid?

use groundhold_plan::Plan;
use groundhold_plan::job::{PadLevel, WallTop};
use groundhold_quantity::{Length, Level, round_to};

use crate::job::{EditError, Files, level_text, set_field};

/// What sliding a bead writes.
#[derive(Debug, Clone, PartialEq)]
enum Writes {
    /// The level itself.
    Level,
    /// A height above something else; so much of it now.
    Above(Length),
}

/// A level that can be slid.
#[derive(Debug, Clone, PartialEq)]
pub struct Bead {
    /// The element.
    pub element: String,
    /// The field.
    pub field: &'static str,
    /// Where it is now.
    pub level: Level,
    /// In words: "P1 level", "W1 top".
    pub words: String,
    writes: Writes,
}

/// All beads of a plan, the highest first.
pub fn beads(plan: &Plan) -> Vec<Bead> {
    let job = &plan.job;
    let mut all = vec![];
    for pad in &job.pads {
        let shaped = plan.shaped.pads.iter().find(|p| p.id == pad.id);
        let level = match (pad.level, shaped) {
            (PadLevel::At(l), _) => l,
            (PadLevel::Balance | PadLevel::Cheapest, Some(s)) => s.plane.level_at(s.polygon.centroid()),
            (PadLevel::Balance | PadLevel::Cheapest, None) => continue,
        };
        let words = format!("{} level", pad.id);
        all.push(Bead { element: pad.id.clone(), field: "level", level, words, writes: Writes::Level });
    }
    for wall in &job.walls {
        let tops = plan.walls.iter().filter(|w| w.of == wall.id).flat_map(|w| w.layout.strips.iter().map(|b| b.top));
        let Some(level) = tops.reduce(Level::max) else { continue };
        let (field, writes) = match &wall.top {
            WallTop::FollowGround { above } => ("top.above", Writes::Above(*above)),
            WallTop::AbovePad { by, .. } => ("top.by", Writes::Above(*by)),
            WallTop::At(_) => ("top.at", Writes::Level),
            // A top of several levels has no one bead that could move it.
            WallTop::Raked { .. } | WallTop::Stepped { .. } | WallTop::Line(_) => continue,
        };
        all.push(Bead { element: wall.id.clone(), field, level, words: format!("{} top", wall.id), writes });
    }
    if let Some((_, level)) = job.drain.outlet {
        let words = "outlet level".to_string();
        all.push(Bead { element: "outlet".into(), field: "outlet.level", level, words, writes: Writes::Level });
    }
    all.sort_by(|a, b| b.level.to_m().total_cmp(&a.level.to_m()));
    all
}

impl Bead {
    /// The texts with the bead slid to a level, rounded to `step` metres.
    ///
    /// # Errors
    /// Where the element is no longer there.
    pub fn slid(&self, files: &Files, to: Level, step: f64) -> Result<Files, EditError> {
        let step = if step > 0.0 { step } else { 0.001 };
        let element = if self.element == "outlet" { "drain" } else { &self.element };
        let value = match &self.writes {
            Writes::Level => level_text(Level::m(round_to(to.to_m(), step))),
            Writes::Above(now) => {
                let by = *now + (to - self.level);
                format!("{} mm", groundhold_quantity::trim(round_to(by.to_m(), step) * 1000.0, 0).replace('−', "-"))
            }
        };
        set_field(files, element, self.field, &value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bead_of_the_demo_moves_its_level_by_as_much_as_it_is_slid() {
        let files = crate::job::demo();
        let plan = groundhold_plan::plan(&files.read().whole().unwrap()).unwrap();
        let all = beads(&plan);
        assert_eq!(all.len(), 4);
        for b in &all {
            let to = b.level + Length::mm(50.0);
            let after = b.slid(&files, to, 0.01).unwrap();
            let read = after.read();
            assert_eq!(read.problems, [], "{}", b.words);
            if b.field == "level" || b.field == "outlet.level" {
                let plan = groundhold_plan::plan(&read.job.unwrap()).unwrap();
                let now = beads(&plan).into_iter().find(|c| c.words == b.words).unwrap();
                assert!((now.level - to).abs() < Length::mm(6.0), "{}", b.words);
            }
        }
    }
}
