//! What is done, by how many, on which working day, and what must be looked at before going on?

use groundhold_finding::Finding;
use groundhold_quantity::Time;
use groundhold_working::Trace;

use crate::{Cautioned, Crew, NotAPlan, Works};

/// Hours of one person for a task.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PersonHours {
    /// When all goes well.
    pub low: Time,
    /// What to reckon with.
    pub likely: Time,
    /// When it does not.
    pub high: Time,
}

/// Something that is looked at, measured and written down before the work goes on.
#[derive(Debug, Clone, PartialEq)]
pub struct HoldPoint {
    /// Its number on the job, from 1, in order of its task.
    pub number: usize,
    /// The element; empty for the whole job.
    pub element: String,
    /// Id of the task that waits for it.
    pub before: String,
    /// Name of what waits, in words: "concrete".
    pub name: String,
    /// What is checked, one line each, with the figures at hand.
    pub checks: Vec<String>,
    /// Where it is known from.
    pub source: &'static str,
}

/// What a task needs before it may start.
#[derive(Debug, Clone, PartialEq)]
pub struct Need {
    /// Id of the task that must be finished.
    pub task: String,
    /// Days to wait after that; a day of waiting counts as a working day.
    pub wait_days: f64,
}

/// One task of the programme.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// Stable id: element and kind, `W1/posts`; `job/strip` for the whole job.
    pub id: String,
    /// The element's id; empty for the whole job.
    pub element: String,
    /// In words: "Set and brace posts of W1".
    pub name: String,
    /// How it is done here, with the figures; may be empty.
    pub how: String,
    /// Units of work.
    pub quantity: f64,
    /// Their unit in words: `m³`, `post`; empty for a lump.
    pub unit: &'static str,
    /// Hours of one person.
    pub hours: PersonHours,
    /// Where the rate is known from, with its mark.
    pub source: &'static str,
    /// People on it.
    pub people: u32,
    /// Working days it takes with these people, from the likely hours.
    pub days: f64,
    /// Longest wait after it that another task asks for (curing), in days; 0 where none.
    pub wait_days: f64,
    /// Tasks that must be finished first, and waited for.
    pub needs: Vec<Need>,
    /// Start, in working days from the beginning of the job (0 = first morning).
    pub start: f64,
    /// Finish, in working days from the beginning of the job, without the wait.
    pub finish: f64,
    /// Working days it may slip without delaying the end, with this crew. Never negative.
    pub float: f64,
    /// True when it may not slip at all.
    pub critical: bool,
    /// Number of the hold point that stands before it.
    pub hold_point: Option<usize>,
    /// Ids of the cautions that bite here.
    pub cautions: Vec<&'static str>,
    /// Working of the likely hours.
    pub trace: Trace,
}

impl Task {
    /// First working day on which somebody works on it, counted from 1.
    pub fn first_day(&self) -> u32 {
        (self.start + 1e-9).floor() as u32 + 1
    }
    /// Last working day on which somebody works on it, counted from 1, not before the first.
    pub fn last_day(&self) -> u32 {
        ((self.finish - 1e-9).ceil() as u32).max(self.first_day())
    }
}

/// The order of work.
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    /// Tasks in order of start, those of one start in order of need.
    pub tasks: Vec<Task>,
    /// Hold points in order.
    pub hold_points: Vec<HoldPoint>,
    /// Cautions that bite, with their figures.
    pub cautions: Vec<Cautioned>,
    /// What the programme has against itself (codes `B-03x`).
    pub findings: Vec<Finding>,
    /// Working days from first start to last finish with this crew: when all goes well, likely, when it does not.
    pub length_days: (f64, f64, f64),
    /// Working days that the needs alone demand, were there people enough for everything at once.
    pub shortest_days: f64,
    /// Ids of the tasks that may not slip, in order.
    pub critical: Vec<String>,
    /// Mean and standard deviation of the critical chain in working days, by the three-point estimate.
    pub expected_days: (f64, f64),
    /// Working of it.
    pub expected_trace: Trace,
    /// Person-hours of all tasks.
    pub hours: PersonHours,
}

/// The order of work of a job.
///
/// # Errors
/// [`NotAPlan`] where the crew or a quantity is out of bounds, or where elements wait for each other in a circle.
pub fn plan_works(works: &Works, crew: &Crew) -> Result<Programme, NotAPlan> {
    crate::sequence::plan(works, crew)
}
