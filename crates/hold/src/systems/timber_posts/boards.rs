//! Which boards fill each course, so that every board ends on a post and joints are staggered?

use groundhold_quantity::{Length, math};

use super::{Boards, TimberPostSpec};
use crate::posted::along::FITS;
use crate::posted::{CoursedBay, Courses, Mark};
use crate::{Board, CaseError, Line, WallCase};

/// A stretch of bays that one piece covers: first bay and the one after the last, counted from 0, with its cut length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch {
    pub first: usize,
    pub end: usize,
    pub length: Length,
}

/// What fills a row of bays with pieces.
pub(crate) struct Filler<'a> {
    pub case: &'a WallCase,
    pub spec: &'a TimberPostSpec,
    pub marks: &'a [Mark],
    /// How far a piece reaches beyond the joint at a corner that turns towards the open side, by 1 m of half-angle tangent.
    pub beyond_open: Length,
    /// The same at a corner that turns towards the soil.
    pub beyond_soil: Length,
}

impl<'a> Filler<'a> {
    /// For boards: a mitre is measured along the longer edge, and the wall line is the face that touches the posts.
    pub fn of_boards(case: &'a WallCase, spec: &'a TimberPostSpec, marks: &'a [Mark]) -> Filler<'a> {
        let t = spec.board.thickness;
        let (beyond_open, beyond_soil) = match spec.boards {
            Boards::Behind => (t, Length::ZERO),
            Boards::InFront => (Length::ZERO, t),
        };
        Filler { case, spec, marks, beyond_open, beyond_soil }
    }
    fn added_at(&self, mark: &Mark) -> Length {
        if !mark.corner {
            return Length::ZERO;
        }
        let turn = Line::new(&self.case.stations).turn(mark.joint);
        let by = if turn > 0.0 { self.beyond_open } else { self.beyond_soil };
        by * math::tan(turn.abs().min(2.8) / 2.0)
    }
    /// Cut length of a piece over bays `first..end`.
    fn length(&self, first: usize, end: usize) -> Length {
        let (a, b) = (&self.marks[first], &self.marks[end]);
        b.joint - a.joint + self.added_at(a) + self.added_at(b)
    }
    /// Fills bays `first..end`, none of whose inner marks is a corner. `stagger` starts with one bay.
    pub fn fill(&self, first: usize, end: usize, stagger: bool) -> Result<Vec<Stretch>, CaseError> {
        let stock = self.spec.stock.iter().copied().reduce(Length::max).unwrap_or_default();
        // Between posts that stand, a board that is a hair too short still ends on them.
        let stands = |from: usize, to: usize| self.marks[from..=to].iter().any(|m| m.built.is_some());
        let longest = |from, to| stock + if stands(from, to) { FITS } else { Length::mm(0.5) };
        let most = self.spec.bays_per_board.unwrap_or(usize::MAX).max(1);
        let reach = |from: usize, most: usize| {
            let fits = |to: &usize| to - from <= most && self.length(from, *to) <= longest(from, *to);
            (from + 1..=end).take_while(fits).last()
        };
        let mut pieces = vec![];
        let mut at = first;
        while at < end {
            let whole = reach(at, most);
            let to = match whole {
                Some(to) if at == first && stagger && to < end => Some(at + 1),
                other => other,
            };
            let Some(to) = to else {
                let what = format!("a board from chainage {}", self.case.chainage(self.marks[at].joint));
                let found = self.case.units.length(self.length(at, at + 1));
                return Err(self.case.wrong(what, found, "no longer than the longest stock board"));
            };
            let length = self.length(at, to);
            pieces.push(Stretch {
                first: at,
                end: to,
                length: if stands(at, to) { length.min(stock) } else { length },
            });
            at = to;
        }
        Ok(pieces)
    }
    /// Rows of bays that fulfil `holds`, parted at corners.
    pub fn rows(&self, bays: &[CoursedBay], holds: impl Fn(&CoursedBay) -> bool) -> Vec<(usize, usize)> {
        let mut rows = vec![];
        let mut start = None;
        for (i, bay) in bays.iter().enumerate() {
            let open = start.filter(|_| !self.marks[i].corner && holds(bay));
            if let (None, Some(s)) = (open, start) {
                rows.push((s, i));
            }
            start = open.or(holds(bay).then_some(i));
        }
        rows.extend(start.map(|s| (s, bays.len())));
        rows
    }
}

/// All boards, course by course from the lowest.
pub(crate) fn boards(
    case: &WallCase,
    spec: &TimberPostSpec,
    marks: &[Mark],
    courses: Courses,
    bays: &[CoursedBay],
) -> Result<Vec<Board>, CaseError> {
    let filler = Filler::of_boards(case, spec, marks);
    let last = bays.iter().map(|b| b.end).max().unwrap_or(0);
    let mut all = vec![];
    for course in 0..last {
        let mut number = 0;
        for (first, end) in filler.rows(bays, |b| b.first <= course && course < b.end) {
            for s in filler.fill(first, end, course % 2 == 1)? {
                number += 1;
                all.push(Board {
                    mark: format!("B{}-{number}", course + 1),
                    course: course + 1,
                    from_post: s.first + 1,
                    to_post: s.end + 1,
                    chainage: (marks[s.first].joint, marks[s.end].joint),
                    length: s.length,
                    bottom: courses.bottom(course),
                    top: courses.top(course),
                    thickness: spec.board.thickness,
                });
            }
        }
    }
    Ok(all)
}

/// Capping over bays of one height: stretches with the bay that gives their level.
pub(crate) fn cappings(
    case: &WallCase,
    spec: &TimberPostSpec,
    marks: &[Mark],
    bays: &[CoursedBay],
) -> Result<Vec<Stretch>, CaseError> {
    let Some(capping) = &spec.capping else { return Ok(vec![]) };
    let half = capping.width / 2.0;
    let filler = Filler { case, spec, marks, beyond_open: half, beyond_soil: half };
    let mut tops: Vec<usize> = bays.iter().map(|b| b.end).collect();
    tops.sort_unstable();
    tops.dedup();
    let mut all = vec![];
    for top in tops {
        for (first, end) in filler.rows(bays, |b| b.end == top) {
            all.extend(filler.fill(first, end, false)?);
        }
    }
    all.sort_by_key(|s| s.first);
    Ok(all)
}
