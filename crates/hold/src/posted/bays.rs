//! How many courses of whole boards does each bay need, and where does its lowest board start?

use groundhold_quantity::{Length, Level};

use super::{CourseFit, Mark, Posted};
use crate::workings::{FITS, courses};
use crate::{Bay, CaseError, Ground, Line, WallCase};

/// A bay with its first course and the one after its last, counted from the lowest board of the wall.
#[derive(Debug, Clone)]
pub(crate) struct CoursedBay {
    pub bay: Bay,
    pub first: usize,
    pub end: usize,
}

/// Levels of the courses of the whole wall.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Courses {
    /// Underside of the lowest course.
    pub base: Level,
    /// Board height.
    pub height: Length,
    /// Board height and gap.
    pub pitch: Length,
}

impl Courses {
    /// Underside of a course counted from 0.
    pub fn bottom(&self, course: usize) -> Level {
        self.base + self.pitch * course as f64
    }
    /// Upper edge of a course counted from 0.
    pub fn top(&self, course: usize) -> Level {
        self.bottom(course) + self.height
    }
    /// How many courses from the base reach a level: the smallest whole number.
    fn reaching(&self, level: Level) -> f64 {
        courses((level - self.base).to_m(), 0.0, self.height.to_m(), (self.pitch - self.height).to_m()).up
    }
    /// The highest course that starts at or below a level.
    fn starting_below(&self, level: Level) -> f64 {
        ((level - self.base) / self.pitch + FITS).floor()
    }
}

/// More courses than this are a slip of the pen.
const MOST_COURSES: f64 = 200.0;

fn lowest_front(ground: &[Ground]) -> Level {
    ground.iter().map(|g| g.front).reduce(Level::min).unwrap_or_default()
}

/// The courses of the wall and what each bay has of them.
pub(crate) fn bays(case: &WallCase, wall: &Posted, marks: &[Mark]) -> Result<(Courses, Vec<CoursedBay>), CaseError> {
    let line = Line::new(&case.stations);
    let grounds: Vec<Vec<Ground>> = marks.windows(2).map(|m| line.over(m[0].joint, m[1].joint)).collect();
    let courses = levels(case, wall, &grounds)?;
    let mut all = vec![];
    for (i, ground) in grounds.iter().enumerate() {
        let front = lowest_front(ground);
        let wanted = ground.iter().map(|g| g.wanted_top).reduce(Level::max).unwrap_or_default();
        let first = courses.starting_below(front - wall.bury).max(0.0);
        let end = courses.reaching(wanted).max(first + 1.0);
        if end - first > MOST_COURSES || end > 10.0 * MOST_COURSES {
            let what = format!("the height between chainage {} and the next post", case.chainage(marks[i].joint));
            return Err(case.wrong(what, case.units.length(wanted - front), "at most 200 courses of boards"));
        }
        let (first, end) = (first as usize, end as usize);
        let bay = Bay {
            number: i + 1,
            from_post: i + 1,
            to_post: i + 2,
            chainage: (marks[i].joint, marks[i + 1].joint),
            bottom: courses.bottom(first),
            top: courses.top(end - 1),
            courses: end - first,
            front,
            behind: ground.iter().map(|g| g.behind).reduce(Level::max).unwrap_or_default(),
            retained: ground.iter().map(Ground::retained).reduce(Length::max).unwrap_or_default(),
        };
        all.push(CoursedBay { bay, first, end });
    }
    Ok((courses, all))
}

fn levels(case: &WallCase, wall: &Posted, grounds: &[Vec<Ground>]) -> Result<Courses, CaseError> {
    let (height, pitch) = (wall.height, wall.height + wall.gap);
    let lowest = grounds.iter().map(|g| lowest_front(g)).reduce(Level::min).unwrap_or_default() - wall.bury;
    let highest = grounds.iter().flatten().map(|g| g.wanted_top).reduce(Level::max).unwrap_or_default();
    let n = courses((highest - lowest).to_m(), 0.0, height.to_m(), wall.gap.to_m()).up.max(1.0);
    if n > 10.0 * MOST_COURSES {
        let found = case.units.length(highest - lowest);
        return Err(case.wrong("the height from the lowest ground to the highest top", found, "at most 2000 courses"));
    }
    let base = match wall.fit {
        CourseFit::FromBury => lowest,
        CourseFit::FromTop => (highest - (pitch * n - wall.gap)).min(lowest),
    };
    Ok(Courses { base, height, pitch })
}
