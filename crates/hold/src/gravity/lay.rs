//! Into which strips does a wall of courses fall: where does its base step, and where does its top?

use groundhold_quantity::{Length, Level, Volume};

use super::Gravity;
use crate::{CaseError, Excavation, Ground, Layout, Line, Strip, WallCase};

/// How a wall of this kind follows the ground.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Coursing {
    /// Longest stretch between two steps.
    pub unit: Length,
    /// True where a run is cut into whole units with a rest at its end; else it is divided evenly.
    pub whole_units: bool,
    /// Height of a step of the base.
    pub step: Length,
    /// Height of a course where the top comes out in whole ones; `None` where it is built to any level.
    pub course: Option<Length>,
    /// What lies under the courses: a footing, levelling stone that counts as the wall's.
    pub below: Length,
    /// Underside of all that, below the ground in front, least.
    pub bury: Length,
}

/// Tops that are built to any level are rounded up to this.
const TOP_STEP: Length = Length::mm(10.0);
/// A course more is not laid for less than this.
const UNSEEN: Length = Length::mm(3.0);
/// A top stands at least this much above the foot.
const LEAST: Length = Length::mm(200.0);
/// More courses or strips than this are a slip of the pen.
const MOST: f64 = 400.0;
/// A rest shorter than this is shared with the unit before it.
const SHORT: Length = Length::mm(300.0);
/// Levels that differ by less are one.
const SAME: Length = Length::mm(1.0);

/// Where the line is divided: at its ends, its corners and between.
fn joints(case: &WallCase, c: &Coursing) -> Result<Vec<Length>, CaseError> {
    let line = Line::new(&case.stations);
    let mut fixed = vec![line.start()];
    fixed.extend(case.corners.iter().copied().filter(|x| line.start() < *x && *x < line.end()));
    fixed.push(line.end());
    let long = line.end() - line.start();
    if long / c.unit > MOST * 10.0 {
        return Err(case.wrong("the wall's length", case.units.run(long), "at most 4000 units of it"));
    }
    let mut at = vec![fixed[0]];
    for w in fixed.windows(2) {
        let run = w[1] - w[0];
        let whole = (run / c.unit + 1e-6).floor();
        let rest = run - c.unit * whole;
        let n = if rest > SHORT || whole < 1.0 { whole + 1.0 } else { whole };
        for i in 1..n as usize {
            at.push(if c.whole_units { w[0] + c.unit * i as f64 } else { w[0] + run * (i as f64 / n) });
        }
        at.push(w[1]);
    }
    Ok(at)
}

/// The strips of a wall, without their widths.
///
/// # Errors
/// A height or a length that cannot be meant.
pub(crate) fn strips(case: &WallCase, c: &Coursing) -> Result<Vec<Strip>, CaseError> {
    let line = Line::new(&case.stations);
    let at = joints(case, c)?;
    let grounds: Vec<Vec<Ground>> = at.windows(2).map(|w| line.over(w[0], w[1])).collect();
    let front = |g: &[Ground]| g.iter().map(|x| x.front).reduce(Level::min).unwrap_or_default();
    let lowest = grounds.iter().map(|g| front(g)).reduce(Level::min).unwrap_or_default() - c.bury;
    let mut all: Vec<Strip> = vec![];
    for (w, ground) in at.windows(2).zip(&grounds) {
        let most = |f: fn(&Ground) -> Level| ground.iter().map(f).reduce(Level::max).unwrap_or_default();
        let low = front(ground);
        let base = lowest + c.step * ((low - c.bury - lowest) / c.step + 1e-6).floor().max(0.0);
        let foot = base + c.below;
        let (top, courses) = top(case, c, foot, most(|g| g.wanted_top))?;
        let corner = case.corners.iter().any(|x| (*x - w[0]).abs() < SAME);
        let retained = ground.iter().map(Ground::retained).reduce(Length::max).unwrap_or_default();
        let behind = most(|g| g.behind);
        match all.last_mut().filter(|s| !corner && (s.base - base).abs() < SAME && (s.top - top).abs() < SAME) {
            Some(s) => {
                s.chainage.1 = w[1];
                (s.front, s.behind, s.retained) = (s.front.min(low), s.behind.max(behind), s.retained.max(retained));
            }
            None => {
                let number = all.len() + 1;
                let (on, chainage, width, back) = (format!("strip {number}"), (w[0], w[1]), Length::ZERO, Length::ZERO);
                all.push(Strip {
                    number,
                    on,
                    chainage,
                    base,
                    foot,
                    top,
                    front: low,
                    behind,
                    retained,
                    courses,
                    width,
                    back,
                });
            }
        }
    }
    Ok(all)
}

fn top(case: &WallCase, c: &Coursing, foot: Level, wanted: Level) -> Result<(Level, usize), CaseError> {
    let high = wanted - foot;
    if high.to_m().is_nan() || high.to_m() >= 30.0 {
        return Err(case.wrong("the height of the wall", case.units.length(high), "below 30 m"));
    }
    match c.course {
        Some(course) => {
            let n = ((high - UNSEEN) / course).ceil().max(1.0);
            if n > MOST {
                return Err(case.wrong("the height of the wall", case.units.length(high), "at most 400 courses"));
            }
            Ok((foot + course * n, n as usize))
        }
        None => {
            let n = ((high - SAME) / TOP_STEP).ceil();
            Ok((foot + (TOP_STEP * n).max(LEAST), 0))
        }
    }
}

/// The parts of a layout that follow from strips with their widths.
pub(crate) fn laid_out(case: &WallCase, wall: &dyn Gravity, strips: Vec<Strip>, room: Length) -> Layout {
    let most = |of: &dyn Fn(&Strip) -> Length| strips.iter().map(of).reduce(Length::max).unwrap_or_default();
    let trench = strips.iter().map(|s| {
        let body = wall.body(s);
        let wide = Length::m(body.at(0.0).0 - body.at(0.0).1) + room * 2.0;
        wide * (s.front - s.base).max(Length::ZERO) * s.length()
    });
    let length = strips.iter().map(Strip::length).sum();
    Layout {
        dig: Excavation { trench: trench.sum::<Volume>(), depth: most(&|s| s.front - s.base) },
        retained: most(&|s| s.retained),
        exposed: most(&Strip::exposed),
        total: most(&|s| s.top - s.base),
        strips,
        ..Layout::empty(&case.id, length)
    }
}
