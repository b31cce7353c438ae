//! Where do the posts that stand already lie on the wall as planned now, and does the wall reach them?

use groundhold_finding::{Finding, Kind, Place, Severity};
use groundhold_hold as hold;
use groundhold_quantity::{Length, Point, Vector, distance};
use groundhold_shape::{Shaped, WallProfile};

use crate::job::{BuiltPost, Event, Find, Job, WallEnd, WallWish};
use crate::walls::WallPlan;

/// An entry of the record names something that the plan does not have.
pub static ENTRY_FITS_NOTHING: Kind = Kind {
    code: "N-010",
    name: "entry of the record fits nothing",
    severity: Severity::Watch,
    why: "What was found or built is left out of the plan: a hole that was refused is planned again, a level that was wrong \
          stays wrong, a post that stands is ordered twice.",
    source: "geometry and the names in the job",
    when_wrong: "the element was taken out of the job on purpose",
};

/// How far a post that stands may lie off the wall's line and still belong to it. Common practice, no source.
const ON_LINE: Length = Length::mm(60.0);

/// Posts of a wall or of a run of it that were written down as built, the last word on each.
fn written<'j>(job: &'j Job, belongs: impl Fn(&str) -> bool + 'j) -> impl Iterator<Item = &'j BuiltPost> {
    let entries = job.record.iter().filter_map(|e| match &e.event {
        Event::Built(b) => Some(b),
        _ => None,
    });
    entries.filter(move |b| belongs(&b.element)).flat_map(|b| b.posts.iter())
}

/// The posts that stand in a wall, by chainage from the start that the wall has now.
pub(crate) fn posts(job: &Job, wall: &str, stations: &[hold::Station]) -> Vec<hold::FixedPost> {
    let mut posts: Vec<hold::FixedPost> = vec![];
    for p in written(job, |element| element == wall) {
        let Some(chainage) = chainage(p, stations) else { continue };
        posts.retain(|q| (q.chainage - chainage).abs() > Length::mm(10.0));
        posts.push(hold::FixedPost {
            chainage,
            depth: p.depth,
            hole_diameter: p.diameter,
            top: Some(p.top),
            length: p.length,
        });
    }
    posts.sort_by(|a, b| a.chainage.to_m().total_cmp(&b.chainage.to_m()));
    posts
}

/// A wall that fades begins elsewhere when the ground or the pad changes, so a post is found again by its place. `None`
/// where the wall does not pass it.
fn chainage(p: &BuiltPost, stations: &[hold::Station]) -> Option<Length> {
    p.at.map_or(Some(p.chainage), |at| on_line(at, stations))
}

/// The chainage of a place on a wall's line; `None` where the wall does not pass it.
pub(crate) fn on_line(at: Point, stations: &[hold::Station]) -> Option<Length> {
    let pieces = stations.windows(2).map(|w| {
        let way = w[1].at - w[0].at;
        let t = ((at - w[0].at).dot(way) / way.dot(way).max(1e-12)).clamp(0.0, 1.0);
        (distance(at, w[0].at.towards(w[1].at, t)), w[0].chainage + (w[1].chainage - w[0].chainage) * t)
    });
    let (off, chainage) = pieces.min_by(|a, b| a.0.to_m().total_cmp(&b.0.to_m()))?;
    (off <= ON_LINE).then_some(chainage)
}

/// Where along a wall, as it is planned now, a rock lies that was found at it; `None` for another find, another wall, or a
/// place that the wall does not pass now.
pub fn rock_along(find: &Find, wall: &WallPlan) -> Option<Length> {
    let Find::Rock { wall: id, post, chainage, at, .. } = find else { return None };
    let by_number = || wall.layout.post(*post).map(|p| p.chainage);
    let known = || at.map_or_else(|| chainage.or_else(by_number), |at| on_line(at, &wall.case.stations));
    (*id == wall.id).then(known).flatten()
}

/// The job with every wall led on to the posts of it that stand beyond its new end; `None` where none does.
pub(crate) fn led_on(job: &Job, shaped: &Shaped) -> Option<Job> {
    let mut led: Option<Job> = None;
    for (i, wall) in job.walls.iter().enumerate() {
        let Some(profile) = shaped.walls.iter().find(|p| p.id == wall.id) else { continue };
        for end in [0, 1] {
            if let Some(at) = beyond(job, wall, profile, end) {
                let wall = &mut led.get_or_insert_with(|| job.clone()).walls[i];
                let last = if end == 0 { 0 } else { wall.line.len().saturating_sub(1) };
                let Some(point) = wall.line.get_mut(last) else { continue };
                *point = at;
                wall.ends[end] = WallEnd::At;
            }
        }
    }
    led
}

/// Where the wall must end for its outermost standing post beyond the end of its profile.
fn beyond(job: &Job, wall: &WallWish, profile: &WallProfile, end: usize) -> Option<Point> {
    let n = wall.line.len();
    let (inner, outer, found) = match end {
        0 => (*wall.line.get(1)?, *wall.line.first()?, profile.stations.first()?.at),
        _ => (*wall.line.get(n.checked_sub(2)?)?, *wall.line.last()?, profile.stations.last()?.at),
    };
    let out: Vector = (outer - inner).unit();
    let half = wall.spec.system().end_half().to_m();
    let run = |element: &str| element == wall.id || element.strip_prefix(&wall.id).is_some_and(|r| r.starts_with('-'));
    let places =
        written(job, run).filter_map(|p| p.at).filter(|at| (*at - inner).cross(out).abs() <= profile.thickness.to_m());
    let farthest = places.map(|at| (at - inner).dot(out) + half).reduce(f64::max)?;
    (farthest > (found - inner).dot(out) + 0.001).then(|| inner + out * farthest)
}

/// Entries that name what is not there, or posts that stand where no wall passes now.
pub(crate) fn check(job: &Job, walls: &[WallPlan], points: &[groundhold_measure::spot::Surveyed]) -> Vec<Finding> {
    let mut said = vec![];
    let wall = |id: &str| walls.iter().find(|w| w.id == id);
    for entry in &job.record {
        match &entry.event {
            Event::Find(Find::LevelError { point, .. }) if !points.iter().any(|p| p.id == *point) => {
                said.push((String::new(), format!("a level at point {point}, which was not surveyed"), &entry.at));
            }
            Event::Find(Find::Rock { wall: id, post, chainage, at, .. }) => match wall(id) {
                None => {
                    said.push((id.clone(), format!("rock at {id}, and there is no such wall in the plan"), &entry.at))
                }
                Some(w) if at.is_some_and(|at| on_line(at, &w.case.stations).is_none()) => {
                    said.push((id.clone(), format!("rock at {id}, where the wall does not stand now"), &entry.at));
                }
                Some(w) if at.is_none() && chainage.is_none() && w.layout.post(*post).is_none() => {
                    let n = w.layout.posts.len();
                    said.push((
                        id.clone(),
                        format!("rock at post {post} of {id}, which has posts 1 to {n}"),
                        &entry.at,
                    ));
                }
                Some(_) => {}
            },
            Event::Built(b) => {
                let known = wall(&b.element).is_some() || job.ids().contains(&b.element.as_str());
                if !known {
                    said.push((
                        b.element.clone(),
                        format!("{} as built, and there is no {} in the plan", b.says, b.element),
                        &entry.at,
                    ));
                }
                for p in &b.posts {
                    let chainage = wall(&b.element).and_then(|w| chainage(p, &w.case.stations));
                    let there = |w: &WallPlan| {
                        w.layout
                            .posts
                            .iter()
                            .any(|q| q.built && chainage.is_some_and(|c| (q.chainage - c).abs() < ON_LINE))
                    };
                    if known && !wall(&b.element).is_some_and(there) {
                        said.push((
                            b.element.clone(),
                            format!("post {} of {} as built, where the wall does not stand now", p.number, b.element),
                            &entry.at,
                        ));
                    }
                }
            }
            _ => {}
        }
    }
    let finding = |(element, what, at): (String, String, &String)| {
        Finding::new(&ENTRY_FITS_NOTHING, Place::of(&element), format!("The record of {at} says {what}."))
    };
    said.into_iter().map(finding).collect()
}
