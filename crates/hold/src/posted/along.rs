//! Where do posts stand along the wall, so that board joints land on them and no bay is wider than allowed?

use groundhold_quantity::Length;

use super::Posted;
use crate::{CaseError, Line, WallCase};

/// A place where a post stands and boards may end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Mark {
    /// Where boards may end.
    pub joint: Length,
    /// Centre of the post; at an end half a post's breadth inside the line, and there inside the joint where boards run to
    /// the end of the line.
    pub centre: Length,
    /// The line turns here.
    pub corner: bool,
    /// The post already stands; which of the case's.
    pub built: Option<usize>,
    /// Put in by a change.
    pub extra: bool,
}

/// How far a built or changed post may stand from a place and still be meant by it. Common practice, no source.
pub(crate) const MEANT: Length = Length::mm(300.0);
/// Built posts nearer than this to a corner or end are the post there.
const SAME: Length = Length::mm(60.0);
/// More posts than this are a slip of the pen.
const MOST_POSTS: f64 = 5000.0;

/// The least bay left at the end of a run: two hole diameters, so that holes do not run into each other. A shorter rest is
/// shared with the bay before it. Common practice, no source.
fn least_bay(wall: &Posted) -> Length {
    (wall.hole.diameter * 2.0).max(Length::mm(500.0))
}

/// Posts that stand are written down to the millimetre: a stretch this much longer than whole bays is whole bays.
pub(crate) const FITS: Length = Length::mm(2.0);

/// Where a stretch is divided, without its ends.
fn divide(from: Length, to: Length, bay: Length, least: Length, fits: Length) -> Vec<Length> {
    let length = to - from;
    let whole = (length / bay + 1e-6).floor();
    let rest = length - bay * whole;
    if rest < fits && whole >= 1.0 {
        return (1..whole as usize).map(|i| from + length * (i as f64 / whole)).collect();
    }
    let mut at: Vec<Length> = (1..=whole as usize).map(|i| from + bay * i as f64).collect();
    if rest < least && whole >= 1.0 {
        at.pop();
        at.push(to - (bay + rest) / 2.0);
    }
    at
}

/// All posts of a wall in order of chainage.
pub(crate) fn posts_along(case: &WallCase, wall: &Posted) -> Result<Vec<Mark>, CaseError> {
    let line = Line::new(&case.stations);
    let bay = wall.bay;
    if (line.end() - line.start()) / bay > MOST_POSTS {
        let found = case.units.run(line.end() - line.start());
        return Err(case.wrong("the wall's length", found, "at most 5000 bays"));
    }
    let fixed = fixed_places(case, wall, &line);
    let mut marks = vec![];
    for i in 0..fixed.len() {
        marks.push(fixed[i]);
        let Some(next) = fixed.get(i + 1) else { break };
        let plain = |at| Mark { joint: at, centre: at, corner: false, built: None, extra: false };
        let stands = fixed[i].built.or(next.built).is_some();
        let fits = if stands { FITS.max(wall.fits) } else { wall.fits };
        marks.extend(divide(fixed[i].joint, next.joint, bay, least_bay(wall), fits).into_iter().map(plain));
    }
    for change in &case.changes {
        let c = change.chainage;
        if let Some(i) = change.left_out.then(|| free_to_go(&marks, c)).flatten() {
            marks.remove(i);
        }
        let inside = line.start() < c && c < line.end();
        if change.extra && inside && marks.iter().all(|m| (m.joint - c).abs() > SAME) {
            let at = marks.partition_point(|m| m.joint < c);
            marks.insert(at, Mark { joint: c, centre: c, corner: false, built: None, extra: true });
        }
    }
    Ok(marks)
}

/// The post meant by a chainage that may be left out: neither an end nor a corner, nor one that stands.
fn free_to_go(marks: &[Mark], chainage: Length) -> Option<usize> {
    let inner = 1..marks.len().saturating_sub(1);
    let away = |i: usize| (marks[i].centre - chainage).abs();
    inner
        .filter(|i| !marks[*i].corner && marks[*i].built.is_none() && away(*i) <= MEANT)
        .min_by(|a, b| away(*a).to_m().total_cmp(&away(*b).to_m()))
}

/// Ends, corners and built posts.
fn fixed_places(case: &WallCase, wall: &Posted, line: &Line) -> Vec<Mark> {
    let half = (wall.end_breadth / 2.0).min((line.end() - line.start()) / 2.0);
    let end = |joint, centre| Mark { joint, centre, corner: false, built: None, extra: false };
    let mut fixed = vec![
        end(line.start() + wall.end_joint, line.start() + half),
        end(line.end() - wall.end_joint, line.end() - half),
    ];
    for c in &case.corners {
        if line.start() + SAME < *c && *c < line.end() - SAME {
            insert(&mut fixed, Mark { joint: *c, centre: *c, corner: true, built: None, extra: false });
        }
    }
    for (i, b) in case.built.iter().enumerate() {
        let near = SAME.max(wall.breadth);
        match fixed.iter_mut().filter(|m| (m.centre - b.chainage).abs() <= near).find(|m| m.built.is_none()) {
            Some(m) => {
                if wall.end_joint > Length::ZERO {
                    m.joint += b.chainage - m.centre;
                }
                (m.built, m.centre) = (Some(i), b.chainage);
            }
            None if line.start() < b.chainage && b.chainage < line.end() => {
                let mark = Mark { joint: b.chainage, centre: b.chainage, corner: false, built: Some(i), extra: false };
                insert(&mut fixed, mark);
            }
            None => {}
        }
    }
    fixed
}

fn insert(marks: &mut Vec<Mark>, mark: Mark) {
    let at = marks.partition_point(|m| m.joint < mark.joint);
    if marks.get(at).is_none_or(|m| (m.joint - mark.joint).abs() > Length::mm(1.0)) {
        marks.insert(at, mark);
    }
}
