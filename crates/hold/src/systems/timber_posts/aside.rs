//! Where a hole was refused, can the wall do without a post in that place: left out, moved along, or two posts beside it?

use groundhold_finding::Remedy;
use groundhold_quantity::Length;

use super::TimberPostSpec;
use super::remedies::{ASIDE, CLOSEST, Trial, adjust, trial};
use crate::posted::along::MEANT;
use crate::posted::embedment;
use crate::{CheckKind, Layout, LoadCase, Post, PostChange, WallCase};

/// New places are tried in steps of this: what a tape on site shows at a glance. Common practice, no source.
const STEP: Length = Length::mm(50.0);
/// Bank left between the holes of two posts. Common practice, no source.
const BETWEEN: Length = Length::mm(50.0);

/// What must not become worse where posts stand further apart.
const KINDS: [CheckKind; 6] = [
    CheckKind::PostBending,
    CheckKind::PostShear,
    CheckKind::PostDeflection,
    CheckKind::BoardBending,
    CheckKind::BoardShear,
    CheckKind::BoardBow,
];

/// What a try is measured against: checks that hold now, and posts that do not stand now for another reason.
struct Now {
    held: Vec<CheckKind>,
    lost: Vec<Length>,
}

/// The wall without a post in the refused hole. Each way was laid out again with boards that end on posts, and passes; for
/// an end, a corner or a post that stands there is none.
pub(crate) fn remedies(
    case: &WallCase,
    spec: &TimberPostSpec,
    layout: &Layout,
    post: &Post,
    states: &[LoadCase],
) -> Vec<Remedy> {
    let (Some(before), Some(after)) = (layout.post(post.number - 1), layout.post(post.number + 1)) else {
        return vec![];
    };
    if post.corner || post.built {
        return vec![];
    }
    let now = now(case, spec, layout, post, states);
    let passes = |places: &[Length]| {
        let put = |c: &mut WallCase| {
            c.changes.push(PostChange::without(post.chainage));
            c.changes.extend(places.iter().copied().map(PostChange::more));
        };
        trial(case, spec.clone(), put).is_some_and(|t| as_good(&t, &now, states))
    };
    let places = |towards: f64, end: &Post| -> Vec<Length> {
        beside(case, spec, post, towards, (end.chainage - post.chainage).abs())
    };
    let (back, on) = (places(-1.0, before), places(1.0, after));
    let mut all = vec![];
    let exact = |c: Length| format!("{:.3} m", c.to_m());
    if passes(&[]) {
        let says = format!(
            "Post {} left out: the boards reach from chainage {} to {}, and the posts there carry its share.",
            post.number,
            case.units.run(before.chainage),
            case.units.run(after.chainage)
        );
        all.push(Remedy::ours(says, adjust(case, "posts.left_out", exact(post.chainage))));
    }
    let mut singly: Vec<Length> = back.iter().chain(&on).copied().collect();
    singly.sort_by(|a, b| (*a - post.chainage).abs().to_m().total_cmp(&(*b - post.chainage).abs().to_m()));
    if let Some(c) = singly.into_iter().find(|c| passes(&[*c])) {
        let says = format!(
            "Post {} moved by {} to chainage {}; probe with a bar before digging.",
            post.number,
            case.units.length((c - post.chainage).abs()),
            case.units.run(c)
        );
        let value = format!("{} to {}", exact(post.chainage), exact(c));
        all.push(Remedy::ours(says, adjust(case, "posts.moved", value)));
    }
    if let Some((a, b)) = back.into_iter().zip(on).find(|(a, b)| passes(&[*a, *b])) {
        let says = format!(
            "Post {} left out and two beside it, at chainage {} and {}; probe with a bar before digging.",
            post.number,
            case.units.run(a),
            case.units.run(b)
        );
        let value = format!("{} to {}, {}", exact(post.chainage), exact(a), exact(b));
        all.push(Remedy::ours(says, adjust(case, "posts.moved", value)));
    }
    all
}

/// Places to one side of a refused hole, nearest first, clear of it, of other refused holes and of the next post's hole.
fn beside(case: &WallCase, spec: &TimberPostSpec, post: &Post, towards: f64, room: Length) -> Vec<Length> {
    let clear = (post.hole_diameter / 2.0 + ASIDE).max(MEANT + Length::mm(1.0));
    let apart = CLOSEST.max(spec.hole.diameter + BETWEEN);
    let (first, last) = ((clear / STEP).ceil() as i64, ((room - apart) / STEP + 1e-6).floor() as i64);
    let place = |n: i64| Length::mm((post.chainage + STEP * (n as f64 * towards)).to_mm().round());
    let others = |c: &Length| case.refusals.iter().all(|r| (r.chainage - *c).abs() > MEANT);
    (first..=last).map(place).filter(others).collect()
}

fn lost(t: &Trial, states: &[LoadCase]) -> Vec<Length> {
    let used = |p: &Post| {
        embedment::utilisation_at(&t.case, &t.spec.posted(), &t.layout.bays, p, states.iter().copied(), p.depth)
    };
    t.layout.posts.iter().filter(|p| used(p) > 1.0).map(|p| p.chainage).collect()
}

fn now(case: &WallCase, spec: &TimberPostSpec, layout: &Layout, post: &Post, states: &[LoadCase]) -> Now {
    let t = Trial { case: case.clone(), spec: spec.clone(), layout: layout.clone() };
    let mut lost = lost(&t, states);
    lost.retain(|c| (*c - post.chainage).abs() > Length::mm(1.0));
    Now { held: KINDS.into_iter().filter(|k| t.carries(&[*k])).collect(), lost }
}

/// True where no post fails that stood before, and nothing else fails that held before.
fn as_good(t: &Trial, now: &Now, states: &[LoadCase]) -> bool {
    let known = |c: &Length| now.lost.iter().any(|l| (*l - *c).abs() < Length::mm(1.0));
    lost(t, states).iter().all(known) && now.held.iter().all(|k| t.carries(&[*k]))
}
