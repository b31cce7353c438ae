//! Timber posts in holes, boards behind or before them: layout, members, checks and remedies.

mod ageing;
mod aside;
mod boards;
mod checks;
mod cross;
mod face;
mod members;
mod remedies;
mod rows;
mod sizes;
mod spec;

pub use crate::posted::{CourseFit, DEPTH_STEP, Fill, HoleSpec, LEAST_DEPTH, MOST_DEPTH};
pub use ageing::Ageing;
pub use spec::*;

use groundhold_quantity::{Length, Slope, Units, trim};

use crate::posted::{self, along, place};
use crate::{Bay, CaseError, CheckKind, Cross, Layout, Post, System, Verdict, WallCase, by_rows};

impl System for TimberPostSpec {
    fn key(&self) -> &'static str {
        "timber-post-and-board"
    }
    by_rows!(rows::ROWS);
    fn stocked(&self) -> Option<(&'static str, String)> {
        Some(("stock", self.board.material()))
    }
    fn thickness(&self) -> Length {
        self.board.thickness + self.post.depth
    }
    fn back_to_line(&self) -> Length {
        match self.boards {
            Boards::Behind => self.board.thickness,
            Boards::InFront => self.post.depth,
        }
    }
    fn body(&self) -> (Length, Length) {
        match self.boards {
            Boards::Behind => (-self.board.thickness, Length::ZERO),
            Boards::InFront => (Length::ZERO, self.board.thickness),
        }
    }
    fn end_half(&self) -> Length {
        self.post.breadth / 2.0
    }
    fn riser(&self) -> Option<String> {
        Some(self.board.material())
    }
    fn lean(&self) -> Slope {
        self.lean
    }
    fn treatments(&self) -> Vec<&str> {
        let mut all = vec![self.post.treatment.as_str(), self.board.treatment.as_str()];
        all.retain(|t| !t.is_empty());
        all.dedup();
        all
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Embedment, CheckKind::BoardBow]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let wall = self.posted();
        let marks = along::posts_along(case, &wall)?;
        let (courses, coursed) = posted::bays::bays(case, &wall, &marks)?;
        let boards = boards::boards(case, self, &marks, courses, &coursed)?;
        let cappings = boards::cappings(case, self, &marks, &coursed)?;
        let mut posts = place::posts(case, &wall, &marks, &coursed);
        let bays: Vec<Bay> = coursed.into_iter().map(|b| b.bay).collect();
        for (post, mark) in posts.iter_mut().zip(&marks) {
            let depth = match place::fixed_depth(case, &wall, mark, post) {
                Some(depth) => depth,
                None => posted::solved_depth(case, &wall, &bays, post),
            };
            let reached = post.refused_at.map_or(depth, |r| depth.min(r));
            place::set_depth(&wall, post, reached);
        }
        let most = |of: fn(&Post) -> Length| posts.iter().map(of).reduce(Length::max).unwrap_or_default();
        let pieces = members::pieces(self, &posts, &bays, &boards, &cappings);
        let holes = members::holes(self, &bays, &posts);
        let least = posts.iter().map(|p| p.depth).reduce(Length::min).unwrap_or_default();
        let depths = format!("{} to {}", case.units.length(least), case.units.length(most(|p| p.depth)));
        let mut layout = Layout {
            strips: face::strips(self, &bays, &posts),
            faces: face::faces(self, &posts, &boards, &pieces, &holes),
            made_of: format!("{} posts, {} boards", posts.len(), boards.len()),
            headline: format!("{} posts in holes {depths}", posts.len()),
            fixings: members::fixings(self, &boards, &cappings),
            retained: bays.iter().map(|b| b.retained).reduce(Length::max).unwrap_or_default(),
            exposed: bays.iter().map(|b| b.top - b.front).reduce(Length::max).unwrap_or_default(),
            total: most(|p| p.total),
            pieces,
            holes,
            posts,
            bays,
            boards,
            ..Layout::empty(&case.id, marks[marks.len() - 1].joint - marks[0].joint)
        };
        layout.facts = self.facts(case, &layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge(case, self, layout)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge_quick(case, self, layout)
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        cross::cross(case, self, layout, chainage)
    }
}

impl TimberPostSpec {
    /// Posts, boards, concrete and spoil, as a schedule says them.
    fn facts(&self, case: &WallCase, l: &Layout) -> Vec<(String, String)> {
        let u = case.units;
        let concrete = match u {
            Units::Metric => format!("{} l", trim(l.concrete().to_litre(), 0)),
            Units::Feet => u.volume(l.concrete()),
        };
        vec![
            ("Posts".into(), format!("{} pieces, {}", l.posts.len(), self.post.material())),
            ("Boards".into(), format!("{} pieces, {}", l.boards.len(), self.board.material())),
            ("Concrete in holes".into(), concrete),
            ("Spoil of holes".into(), format!("{} in the bank", u.volume(l.hole_spoil()))),
        ]
    }
}
