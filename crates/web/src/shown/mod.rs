//! What is shown of a job: the plan as it stands or the last one that could be made, what is wrong, and the figures.

mod costs;
mod figures;

pub use costs::{Cost, costs, read_costs};
pub use figures::{Figure, figures, money, severities};

use std::sync::Arc;

use groundhold_plan::job::Job;
use groundhold_plan::{Plan, Trouble, plan, plan_quick, replan, replan_quick};

use crate::job::Files;

/// How thoroughly it is planned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// In full.
    Whole,
    /// As fast as a finger moves.
    Quick,
}

/// Something that stops the plan, with its place in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wrong {
    /// `job.toml, line 12` or an element's id; empty for the whole job.
    pub place: String,
    /// What was found and what was expected.
    pub says: String,
    /// The line as it stands; may be empty.
    pub excerpt: String,
}

/// What is shown.
#[derive(Debug, Clone, Default)]
pub struct Shown {
    /// The texts.
    pub files: Files,
    /// The job, as far as it is understood.
    pub job: Option<Arc<Job>>,
    /// The plan; where `wrong` is not empty, the last one that could be made.
    pub plan: Option<Arc<Plan>>,
    /// What stops the plan.
    pub wrong: Vec<Wrong>,
}

impl Shown {
    /// Reads and plans some texts. Where that cannot be done, the last plan stays in sight.
    pub fn of(files: &Files, pace: Pace, last: Option<&Arc<Plan>>) -> Shown {
        let read = files.read();
        let mut wrong: Vec<Wrong> = read.problems.iter().map(from_problem).collect();
        let job = read.job.map(Arc::new);
        let mut fresh = None;
        if let (Some(job), true) = (&job, wrong.is_empty()) {
            let made = match (pace, last) {
                (Pace::Whole, Some(before)) => replan(before, job),
                (Pace::Whole, None) => plan(job),
                (Pace::Quick, Some(before)) => replan_quick(before, job),
                (Pace::Quick, None) => plan_quick(job),
            };
            match made {
                Ok(p) => fresh = Some(Arc::new(p)),
                Err(troubles) => wrong.extend(troubles.iter().map(from_trouble)),
            }
        }
        Shown { files: files.clone(), job, plan: fresh.or_else(|| last.cloned()), wrong }
    }
    /// True when the plan is that of the texts.
    pub fn is_current(&self) -> bool {
        self.wrong.is_empty() && self.plan.is_some()
    }
}

fn from_problem(p: &groundhold_exchange::Problem) -> Wrong {
    let place = if p.line == 0 { p.file.clone() } else { format!("{}, line {}", p.file, p.line) };
    Wrong { place, says: p.says.clone(), excerpt: p.excerpt.clone() }
}

fn from_trouble(t: &Trouble) -> Wrong {
    use groundhold_plan::Part;
    let part = match &t.of {
        Part::LevelBook => "level book".to_string(),
        Part::Positions => "positions".to_string(),
        Part::Survey => "survey".to_string(),
        Part::Element(id) => id.clone(),
        Part::Choice(field) => (*field).to_string(),
    };
    let place = t.row.map_or(part.clone(), |r| format!("{part}, line {r}"));
    Wrong { place, says: t.says.clone(), excerpt: String::new() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{JOB, demo};

    #[test]
    fn a_broken_text_is_told_with_its_line_and_the_last_plan_stays_in_sight() {
        let good = Shown::of(&demo(), Pace::Quick, None);
        assert!(good.is_current());
        let text = good.files.job().replace("\"101.080 m\"", "\"101.080\"");
        let bad = Shown::of(&good.files.with(JOB, &text), Pace::Quick, good.plan.as_ref());
        assert!(!bad.is_current() && bad.plan.is_some());
        assert!(
            bad.wrong[0].place.starts_with("job.toml, line ") && bad.wrong[0].says.contains("unit"),
            "{:?}",
            bad.wrong
        );
    }

    #[test]
    fn a_quick_plan_has_the_ground_walls_and_holes_of_the_whole_one() {
        let (quick, whole) = (Shown::of(&demo(), Pace::Quick, None), Shown::of(&demo(), Pace::Whole, None));
        let (q, w) = (quick.plan.unwrap(), whole.plan.unwrap());
        assert_eq!(q.shaped, w.shaped);
        for (a, b) in q.walls.iter().zip(&w.walls) {
            assert_eq!(a.layout, b.layout);
        }
        assert_eq!(q.dug.dug(), w.dug.dug());
    }
}
