//! What does each post stand in, how high is it, and how much wall does it carry?

use groundhold_quantity::{Length, Level, Vector};

use super::along::MEANT;
use super::{CoursedBay, Mark, Posted};
use crate::{Bay, FixedPost, Ground, Line, Post, PostChange, Refusal, WallCase};

/// The bays on either side of a post, counted from 0.
pub(crate) fn beside<T>(bays: &[T], post: usize) -> impl Iterator<Item = &T> {
    let first = post.saturating_sub(1);
    bays[first.min(bays.len())..(post + 1).min(bays.len())].iter()
}

/// How far the underside of the lowest board beside a post lies below the ground in front of it.
pub(crate) fn cover(bays: &[Bay], post: &Post) -> Length {
    beside(bays, post.number - 1)
        .map(|b| post.front - b.bottom)
        .reduce(Length::max)
        .unwrap_or_default()
        .max(Length::ZERO)
}

/// All posts, with no depth yet.
pub(crate) fn posts(case: &WallCase, wall: &Posted, marks: &[Mark], bays: &[CoursedBay]) -> Vec<Post> {
    let line = Line::new(&case.stations);
    let mut all: Vec<Post> = (0..marks.len()).map(|i| post(wall, marks, bays, &line, i)).collect();
    for refusal in &case.refusals {
        if let Some(p) = nearest(&mut all, refusal.chainage) {
            p.refused_at = Some(p.refused_at.map_or(refusal.depth, |d| d.min(refusal.depth)));
        }
    }
    for change in &case.changes {
        if let (Some(p), Some(d)) = (nearest(&mut all, change.chainage), change.hole_diameter) {
            p.hole_diameter = d;
        }
    }
    for (p, mark) in all.iter_mut().zip(marks) {
        if let Some(b) = mark.built.and_then(|b| case.built.get(b)) {
            p.hole_diameter = b.hole_diameter;
            p.stands_to = b.top;
            // What stands keeps its length: it can be cut down, not drawn out.
            p.top = b.top.map_or(p.top, |top| p.top.min(top));
        }
    }
    all
}

/// The post that is meant by a chainage, if one stands near enough.
fn nearest(posts: &mut [Post], chainage: Length) -> Option<&mut Post> {
    let away = |p: &Post| (p.chainage - chainage).abs();
    posts.iter_mut().min_by(|a, b| away(a).to_m().total_cmp(&away(b).to_m())).filter(|p| away(p) <= MEANT)
}

/// The depth that is fixed for a post before anything is solved: as built, as changed, or as the spec says.
pub(crate) fn fixed_depth(case: &WallCase, wall: &Posted, mark: &Mark, post: &Post) -> Option<Length> {
    let built = mark.built.and_then(|b| case.built.get(b)).map(|b| depth_of(wall, b, post));
    let near = |c: &&PostChange| (c.chainage - post.chainage).abs() <= MEANT;
    let changed = case.changes.iter().filter(near).filter_map(|c| c.depth).next_back();
    built.or(changed).or(wall.hole.depth)
}

/// What a record in millimetres may be off by, in a level and a length together.
const ROUNDED: Length = Length::mm(2.0);

/// How deep a post that stands reaches below the ground in front as it will be: where its top and its length were written
/// down, its underside is where it is, whatever becomes of the ground.
fn depth_of(wall: &Posted, built: &FixedPost, post: &Post) -> Length {
    let Some((top, length)) = built.top.zip(built.length) else { return built.depth };
    let lean = wall.lean.to_ratio();
    let depth = post.front - (top - length / (1.0 + lean * lean).sqrt());
    if (depth - built.depth).abs() <= ROUNDED { built.depth } else { depth.max(Length::ZERO) }
}

/// What stopped the hole of a post.
pub(crate) fn refusal<'a>(case: &'a WallCase, post: &Post) -> Option<&'a Refusal> {
    let away = |r: &Refusal| (r.chainage - post.chainage).abs();
    let near = case.refusals.iter().filter(|r| away(r) <= MEANT && post.refused_at == Some(r.depth));
    near.min_by(|a, b| away(a).to_m().total_cmp(&away(b).to_m()))
}

fn post(wall: &Posted, marks: &[Mark], bays: &[CoursedBay], line: &Line, i: usize) -> Post {
    let mark = &marks[i];
    let from = if i == 0 { line.start() } else { (marks[i - 1].centre + mark.centre) / 2.0 };
    let to = if i + 1 == marks.len() { line.end() } else { (mark.centre + marks[i + 1].centre) / 2.0 };
    let here = line.at(mark.centre);
    let retained = line.over(from, to).iter().map(Ground::retained).reduce(Length::max).unwrap_or_default();
    let top = beside(bays, i).map(|b| b.bay.top).reduce(Level::max).unwrap_or_default();
    let facing = line.facing(mark.joint);
    let shift: Vector = facing * (wall.depth.to_m() * wall.out);
    Post {
        number: i + 1,
        chainage: mark.centre,
        face: here.at,
        at: here.at + shift,
        facing,
        top,
        front: here.front,
        behind: here.behind,
        retained,
        exposed: (top - here.front).max(Length::ZERO),
        total: Length::ZERO,
        tributary: to - from,
        depth: Length::ZERO,
        bottom: here.front,
        length: Length::ZERO,
        hole_diameter: wall.hole.diameter,
        corner: mark.corner,
        built: mark.built.is_some(),
        stands_to: None,
        extra: mark.extra,
        refused_at: None,
    }
}

/// Sets a post's depth and what follows from it.
pub(crate) fn set_depth(wall: &Posted, post: &mut Post, depth: Length) {
    post.depth = depth;
    post.bottom = post.front - depth;
    post.total = post.top - post.bottom;
    let lean = wall.lean.to_ratio();
    post.length = post.total * (1.0 + lean * lean).sqrt();
}
