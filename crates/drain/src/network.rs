//! Which pipe goes to which outlet, and which joins another on the way?

use groundhold_finding::Finding;
use groundhold_quantity::{Flow, Length, distance, segments_cross};

use crate::pipe_run::{Joined, Laid, lay, sized};
use crate::soakaway::line_of;
use crate::way::{Target, downhill_way};
use crate::{DrainCase, Outlet, PipeRun, WallLine};

/// A metre of trench under a wall is reckoned as this many in the open: ours.
const UNDER_A_WALL: f64 = 3.0;

/// Every outlet of the case, the soakaway among them.
pub(crate) fn outlets(case: &DrainCase) -> Vec<Outlet> {
    let soakaway = case.soakaway.as_ref().map(|s| Outlet { at: s.at, level: s.level });
    case.outlets.iter().copied().chain(soakaway).collect()
}

/// Lays and sizes the pipes of all walls. The lowest wall comes first; each pipe then goes where it can fall to by the
/// shortest trench: to an outlet, or into a pipe that is laid already, at that one's low end. Sizes follow from the top
/// down, so that every pipe carries what joins it.
pub(crate) fn network(case: &DrainCase, flows: &[Option<Flow>]) -> (Vec<PipeRun>, Vec<Finding>) {
    let base = |i: &usize| case.walls[*i].stations.iter().map(|s| s.base.to_m()).fold(f64::INFINITY, f64::min);
    let mut order: Vec<usize> = (0..case.walls.len()).collect();
    order.sort_by(|a, b| base(a).total_cmp(&base(b)));
    let mut laid: Vec<Option<Laid>> = case.walls.iter().map(|_| None).collect();
    for &i in &order {
        let target = target(case, &case.walls[i], &laid);
        laid[i] = Some(lay(case, &case.walls[i], target));
    }
    let mut joined: Vec<Joined> = case.walls.iter().map(|_| Joined::default()).collect();
    let mut runs: Vec<Option<(PipeRun, Vec<Finding>)>> = case.walls.iter().map(|_| None).collect();
    for &i in order.iter().rev() {
        let Some(pipe) = laid[i].take() else { continue };
        let wall = &case.walls[i];
        let (run, said) = sized(case, wall, pipe, flows[i], std::mem::take(&mut joined[i]));
        if let Some(k) = run.joins.as_ref().and_then(|id| case.walls.iter().position(|w| w.id == *id)) {
            let into = &mut joined[k];
            into.walls.push(wall.id.clone());
            into.diameter = into.diameter.max(run.diameter);
            into.flow = match (into.flow, run.flow) {
                (Some(a), Some(b)) => Some(a + b),
                (a, b) => a.or(b),
            };
        }
        runs[i] = Some((run, said));
    }
    let (mut pipes, mut findings) = (vec![], vec![]);
    for (run, said) in runs.into_iter().flatten() {
        pipes.push(run);
        findings.extend(said);
    }
    (pipes, findings)
}

/// The nearest place that the pipe of a wall can fall to; the nearest outlet where it can fall to none.
fn target(case: &DrainCase, wall: &WallLine, laid: &[Option<Laid>]) -> Option<Target> {
    let least = case.pipe.fall_least.min(case.pipe.fall);
    let open = outlets(case).into_iter().map(|o| Target { at: o.at, level: o.level, joins: None });
    let pipes = laid.iter().zip(&case.walls).filter_map(|(l, w)| {
        // A pipe that does not get to its own outlet takes no other.
        let l = l.as_ref().filter(|l| l.reaches)?;
        let end = l.low_end()?;
        Some(Target { at: end.at, level: end.invert, joins: Some(w.id.clone()) })
    });
    let far = |t: &Target| -> (bool, f64) {
        let way = downhill_way(case, wall, Some(t));
        let Some(from) = way.low_end() else { return (false, f64::INFINITY) };
        let crossings = case
            .walls
            .iter()
            .map(line_of)
            .filter(|line| line.windows(2).any(|s| segments_cross(from, t.at, s[0], s[1]).is_some()));
        let length = distance(from, t.at) + Length::m(UNDER_A_WALL) * crossings.count() as f64;
        (way.arrives(least) >= t.level, length.to_m())
    };
    let all: Vec<(Target, (bool, f64))> = open
        .chain(pipes)
        .map(|t| {
            let f = far(&t);
            (t, f)
        })
        .collect();
    let nearest = |reached: bool| {
        let fits = all.iter().filter(|(t, f)| f.0 == reached && (reached || t.joins.is_none()));
        fits.reduce(|best, c| if c.1.1 < best.1.1 { c } else { best }).map(|c| c.0.clone())
    };
    nearest(true).or_else(|| nearest(false))
}
