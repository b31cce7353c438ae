//! The table by which posts are set: where, how deep, how high.

use groundhold_quantity::{Length, Level, Point, distance};

use crate::along_off;
use crate::table::{Case, Tie, best_ties};

/// A post as the plan has it.
#[derive(Debug, Clone, PartialEq)]
pub struct PostMark {
    /// The wall.
    pub wall: String,
    /// Its number.
    pub number: usize,
    /// Centre of the post.
    pub at: Point,
    /// Along the wall.
    pub chainage: Length,
    /// Top of the post.
    pub top: Level,
    /// Ground before anything is dug.
    pub ground: Option<Level>,
    /// Finished ground in front.
    pub front: Level,
    /// Bottom of the hole.
    pub hole_bottom: Level,
    /// Diameter of the hole.
    pub hole_diameter: Length,
    /// It already stands.
    pub built: bool,
}

/// One row of the post table.
#[derive(Debug, Clone, PartialEq)]
pub struct PostRow {
    /// The post.
    pub post: PostMark,
    /// Along and off the base line.
    pub offset: Option<(Length, Length)>,
    /// Two tapes that cross well.
    pub ties: Option<(Tie, Tie)>,
    /// To the post before on the same wall.
    pub spacing: Option<Length>,
    /// Tape held at the first post of the straight: what it reads here.
    pub running: Length,
    /// Level of the string stretched along the tops.
    pub string: Level,
    /// Hole depth below the ground as it is before the dig.
    pub hole_below_ground: Option<Length>,
    /// Hole depth below the finished ground in front.
    pub hole_below_front: Length,
    /// Staff on the bottom of the hole.
    pub staff_bottom: Option<Length>,
    /// Staff on the top of the post.
    pub staff_top: Option<Length>,
}

pub(crate) fn rows(case: &Case) -> Vec<PostRow> {
    let mut rows: Vec<PostRow> = vec![];
    for post in &case.posts {
        let before = rows.last().filter(|r| r.post.wall == post.wall);
        let straight = before.filter(|r| !turns(case, r, post));
        let spacing = before.map(|r| distance(r.post.at, post.at));
        let running = straight.map_or(Length::ZERO, |r| r.running + distance(r.post.at, post.at));
        rows.push(PostRow {
            offset: case.base().and_then(|(a, b)| along_off(a.at, b.at, post.at)),
            ties: best_ties(case, post.at),
            spacing,
            running,
            string: post.top,
            hole_below_ground: post.ground.map(|g| g - post.hole_bottom),
            hole_below_front: post.front - post.hole_bottom,
            staff_bottom: case.staff(post.hole_bottom),
            staff_top: case.staff(post.top),
            post: post.clone(),
        });
    }
    rows
}

/// True when the wall turns at the post before, so that the tape starts anew there.
fn turns(case: &Case, before: &PostRow, post: &PostMark) -> bool {
    let earlier = case.posts.iter().rev().find(|p| p.wall == post.wall && p.number + 1 == before.post.number);
    earlier.is_some_and(|e| {
        let (u, v) = ((before.post.at - e.at).unit(), (post.at - before.post.at).unit());
        u.cross(v).abs() > 0.05
    })
}
