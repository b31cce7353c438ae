//! What of an earlier plan still holds after an edit?
//!
//! Each stage is a function of what it is given, so its earlier answer holds exactly where it was given the same. Only the
//! costly stages are asked: the survey, the shape, each wall, and the drains. A test holds the whole against a plan made anew.

use groundhold_drain::Drained;
use groundhold_hold::WallCase;
use groundhold_shape::Shaped;

use crate::drainage;
use crate::job::Job;
use crate::plan::Plan;
use crate::survey::Survey;
use crate::walls::WallPlan;

/// A job, and a plan of the same job before an edit, where there is one.
pub(crate) struct Earlier<'a> {
    job: &'a Job,
    before: Option<&'a Plan>,
}

impl<'a> Earlier<'a> {
    pub fn none(job: &'a Job) -> Earlier<'a> {
        Earlier { job, before: None }
    }
    pub fn of(job: &'a Job, before: &'a Plan) -> Earlier<'a> {
        Earlier { job, before: Some(before) }
    }
    /// The earlier plan, where the ground was measured in the same way and as much was found.
    fn same_ground(&self) -> Option<&'a Plan> {
        let same = |a: &Job, b: &Job| a.measure == b.measure && a.record == b.record;
        self.before.filter(|p| same(&p.job, self.job))
    }
    /// The earlier plan, where the same was also said of the job as a whole: place, units, soil.
    fn same_site(&self) -> Option<&'a Plan> {
        self.same_ground().filter(|p| p.job.about == self.job.about && p.job.ground == self.job.ground)
    }
    pub fn survey(&self) -> Option<&'a Survey> {
        self.same_ground().map(|p| &p.survey)
    }
    pub fn shaped(&self) -> Option<&'a Shaped> {
        let same = |a: &Job, b: &Job| {
            a.pads == b.pads
                && a.walls == b.walls
                && a.flights == b.flights
                && a.ramps == b.ramps
                && a.batter == b.batter
        };
        self.same_site().filter(|p| same(&p.job, self.job)).map(|p| &p.shaped)
    }
    /// The earlier wall that was laid out and judged from the very same case, as thoroughly or more.
    pub fn wall(&self, case: &WallCase) -> Option<&'a WallPlan> {
        let thorough = WallCase { search_slip: true, ..case.clone() };
        self.before?.walls.iter().find(|w| w.id == case.id && (w.case == *case || w.case == thorough))
    }
    pub fn drained(&self, walls: &[WallPlan]) -> Option<&'a Drained> {
        let before = self.same_site().filter(|p| p.job.drain == self.job.drain && p.job.near == self.job.near)?;
        let same = before.walls.len() == walls.len()
            && before.walls.iter().zip(walls).all(|(a, b)| drainage::line(a) == drainage::line(b));
        same.then_some(&before.drained)
    }
}
