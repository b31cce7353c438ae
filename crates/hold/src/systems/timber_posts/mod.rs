//! Timber posts in holes, boards behind or before them: layout, members, checks and remedies.

mod bays;
mod boards;
mod checks;
mod members;
mod posts;
mod posts_along;
mod remedies;
mod sizes;
mod spec;

pub use spec::*;

use groundhold_quantity::Length;

use crate::{Bay, CaseError, Layout, Post, System, Verdict, WallCase};

/// The least embedment that is solved for. Common practice, no source.
pub const LEAST_DEPTH: Length = Length::mm(400.0);
/// Solved depths are rounded up to this: what a builder measures in a hole.
pub const DEPTH_STEP: Length = Length::mm(50.0);
/// No hole is solved deeper: a hand-held auger with an extension reaches no further. Common practice, no source.
pub const MOST_DEPTH: Length = Length::mm(3000.0);

impl System for TimberPostSpec {
    fn key(&self) -> &'static str {
        "timber-post-and-board"
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let marks = posts_along::posts_along(case, self)?;
        let (courses, coursed) = bays::bays(case, self, &marks)?;
        let boards = boards::boards(case, self, &marks, courses, &coursed)?;
        let cappings = boards::cappings(case, self, &marks, &coursed)?;
        let mut posts = posts::posts(case, self, &marks, &coursed);
        let bays: Vec<Bay> = coursed.into_iter().map(|b| b.bay).collect();
        for (post, mark) in posts.iter_mut().zip(&marks) {
            let depth = match posts::fixed_depth(case, self, mark, post) {
                Some(depth) => depth,
                None => checks::solved_depth(case, self, &bays, post),
            };
            let reached = post.refused_at.map_or(depth, |r| depth.min(r));
            posts::set_depth(self, post, reached);
        }
        let most = |of: fn(&Post) -> Length| posts.iter().map(of).reduce(Length::max).unwrap_or_default();
        Ok(Layout {
            wall: case.id.clone(),
            length: marks[marks.len() - 1].joint - marks[0].joint,
            pieces: members::pieces(self, &posts, &bays, &boards, &cappings),
            holes: members::holes(self, &bays, &posts),
            fixings: members::fixings(self, &boards, &cappings),
            retained: bays.iter().map(|b| b.retained).reduce(Length::max).unwrap_or_default(),
            exposed: bays.iter().map(|b| b.top - b.front).reduce(Length::max).unwrap_or_default(),
            total: most(|p| p.total),
            posts,
            bays,
            boards,
        })
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge(case, self, layout)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge_quick(case, self, layout)
    }
}
