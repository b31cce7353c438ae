//! From which level does a wall start, and at which of its places is it begun?

use groundhold_finding::{Finding, Kind, Place, Remedy, Severity};
use groundhold_quantity::{Length, Level};

use crate::job::{Job, Near, NearKind};
use crate::walls::{WallPlan, distance_to_line};

/// The wall meets something whose level stays.
pub static LEVEL_CARRIED: Kind = Kind {
    code: "N-020",
    name: "level to be carried over",
    severity: Severity::Watch,
    why: "A wall set out by eye from a driveway ends a course too high or too low where they meet, and nothing mends it then.",
    source: "common practice, no source",
    when_wrong: "what is there now is taken up and laid anew to the wall",
};

/// The lowest boards step.
pub static BASE_STEPS: Kind = Kind {
    code: "N-021",
    name: "base in steps",
    severity: Severity::Note,
    why: "Courses meet only when they are counted from the lowest place: begun higher up, the last step is not a whole board.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// Something that stays is met by a wall within this distance. Common practice, no source.
const MEETS: Length = Length::m(1.0);
/// Words for surfaces whose level stays.
const STAYS: [&str; 7] = ["drive", "path", "patio", "terrace", "pavement", "kerb", "paving"];
/// Boards that differ by less lie in one line.
const LEVEL_TO: Length = Length::mm(5.0);

/// What is met, and where it begins.
pub(crate) fn check(job: &Job, walls: &[WallPlan]) -> Vec<Finding> {
    let stays = |n: &&Near| match &n.kind {
        NearKind::Street => true,
        NearKind::Other(what) => STAYS.iter().any(|w| what.contains(w)),
        _ => false,
    };
    let met = job.near.iter().filter(stays).flat_map(|n| walls.iter().filter_map(move |w| carried(job, n, w)));
    met.chain(walls.iter().filter_map(|w| steps(job, w))).collect()
}

fn carried(job: &Job, near: &Near, wall: &WallPlan) -> Option<Finding> {
    let units = job.about.units;
    let away = |p: &&groundhold_hold::Post| distance_to_line(p.face, &near.line);
    let post = wall.layout.posts.iter().min_by(|a, b| away(a).to_m().total_cmp(&away(b).to_m()))?;
    if away(&post) > MEETS {
        return None;
    }
    let place = Place::on(&wall.id, format!("post {}", post.number));
    let what = match &near.kind {
        NearKind::Other(what) => what.as_str(),
        _ => "street",
    };
    let Some(level) = near.level else {
        let says = format!(
            "{} meets {} ({what}) at post {}; at which level that lies is not told, and the courses are not held against it.",
            wall.id, near.id, post.number
        );
        let read = "Read its finished level with the staff where they meet, from the datum of this job, and give it as `level`.";
        return Some(Finding::new(&LEVEL_CARRIED, place, says).with_remedy(Remedy::theirs(read)));
    };
    let (joint, off) = nearest_joint(wall, post.number, level)?;
    let side = if joint >= level { "above" } else { "below" };
    let says = format!(
        "{} meets {} ({what}) at post {}: carry its level of {} to that post; the nearest joint of the boards lies {} {side} it.",
        wall.id,
        near.id,
        post.number,
        units.level(level),
        units.length(off)
    );
    let lose = format!(
        "{} to lose: bury the lowest board by so much {}, or make it up in the capping.",
        units.length(off),
        if joint >= level { "more" } else { "less" }
    );
    let finding = Finding::new(&LEVEL_CARRIED, place, says).weighing(Severity::Note);
    Some(if off > LEVEL_TO { finding.with_remedy(Remedy::theirs(lose)) } else { finding })
}

/// The edge of a board at a post that is nearest to a level, and how far it is off.
fn nearest_joint(wall: &WallPlan, post: usize, level: Level) -> Option<(Level, Length)> {
    let at = wall.layout.boards.iter().filter(|b| b.from_post <= post && post <= b.to_post);
    let edges = at.flat_map(|b| [b.bottom, b.top]).map(|l| (l, (l - level).abs()));
    edges.min_by(|a, b| a.1.to_m().total_cmp(&b.1.to_m()))
}

fn steps(job: &Job, wall: &WallPlan) -> Option<Finding> {
    let units = job.about.units;
    let bays = &wall.layout.bays;
    let steps = bays.windows(2).filter(|w| (w[1].bottom - w[0].bottom).abs() > LEVEL_TO).count();
    let lowest = bays.iter().reduce(|a, b| if b.bottom < a.bottom { b } else { a })?;
    let highest = bays.iter().map(|b| b.bottom).reduce(Level::max)?;
    let by = highest - lowest.bottom;
    if steps == 0 || by <= LEVEL_TO {
        return None;
    }
    let says = format!(
        "The lowest boards of {} rise by {} in {steps} step(s) along {}: begin in bay {}, the lowest, with a board level at {}, \
         and count every course from there.",
        wall.id,
        units.length(by),
        units.run(wall.layout.length),
        lowest.number,
        units.level(lowest.bottom)
    );
    Some(Finding::new(&BASE_STEPS, Place::on(&wall.id, format!("bay {}", lowest.number)), says))
}
