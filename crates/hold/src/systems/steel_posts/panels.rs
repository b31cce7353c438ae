//! Which panels stand between the posts, how long is each, and which must be cut?

use groundhold_quantity::Length;

use super::SteelPostSpec;
use crate::posted::{CoursedBay, Courses, Mark};
use crate::{Board, CaseError, WallCase};

/// A panel shorter than this by no more goes as it is sold.
pub(crate) const AS_SOLD: Length = Length::mm(5.0);

/// Length of the panels of a bay.
pub(crate) fn length(spec: &SteelPostSpec, bay: (Length, Length)) -> Length {
    let room = bay.1 - bay.0 - spec.post.web() - spec.clearance * 2.0;
    if (room - spec.panel.length).abs() <= AS_SOLD { spec.panel.length } else { room }
}

/// All panels, course by course from the lowest.
///
/// # Errors
/// A bay into which no panel that is sold reaches.
pub(crate) fn panels(
    case: &WallCase,
    spec: &SteelPostSpec,
    marks: &[Mark],
    courses: Courses,
    bays: &[CoursedBay],
) -> Result<Vec<Board>, CaseError> {
    let last = bays.iter().map(|b| b.end).max().unwrap_or(0);
    let mut all = vec![];
    for course in 0..last {
        let here = bays.iter().enumerate().filter(|(_, b)| b.first <= course && course < b.end);
        for (number, (i, _)) in here.enumerate() {
            let chainage = (marks[i].joint, marks[i + 1].joint);
            let length = length(spec, chainage);
            if length > spec.panel.length || length < Length::mm(50.0) {
                let what = format!("the panel between chainage {} and the next post", case.chainage(chainage.0));
                let expected = format!("from 50 mm to {}", case.units.length(spec.panel.length));
                return Err(case.wrong(what, case.units.length(length), &expected));
            }
            all.push(Board {
                mark: format!("B{}-{}", course + 1, number + 1),
                course: course + 1,
                from_post: i + 1,
                to_post: i + 2,
                chainage,
                length,
                bottom: courses.bottom(course),
                top: courses.top(course),
                thickness: spec.panel.thickness,
            });
        }
    }
    Ok(all)
}
