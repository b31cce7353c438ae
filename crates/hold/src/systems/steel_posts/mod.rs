//! Steel posts in concreted holes, with panels of timber or concrete that stand between their flanges.

mod checks;
mod members;
mod panels;
mod remedies;
mod rows;
mod shown;
mod spec;

pub use spec::*;

use groundhold_quantity::{Length, Units, trim};

use crate::posted::{self, along, place};
use crate::{Bay, CaseError, Check, CheckKind, Cross, Layout, Post, System, Verdict, WallCase, by_rows};

impl System for SteelPostSpec {
    fn key(&self) -> &'static str {
        "steel-post-and-panel"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        self.panel.thickness + self.post.flange().0
    }
    fn back_to_line(&self) -> Length {
        self.panel.thickness
    }
    fn body(&self) -> (Length, Length) {
        (-self.panel.thickness, Length::ZERO)
    }
    fn end_half(&self) -> Length {
        self.at_end().profile.shape.width() / 2.0
    }
    fn riser(&self) -> Option<String> {
        (!self.panel.is_concrete()).then(|| self.panel.material())
    }
    fn treatments(&self) -> Vec<&str> {
        match &self.panel.made {
            Made::Timber { treatment, .. } if !treatment.is_empty() => vec![treatment],
            _ => vec![],
        }
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Embedment, CheckKind::PostBending]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let wall = self.posted();
        let marks = along::posts_along(case, &wall)?;
        let (courses, coursed) = posted::bays::bays(case, &wall, &marks)?;
        let boards = panels::panels(case, self, &marks, courses, &coursed)?;
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
        let least = posts.iter().map(|p| p.depth).reduce(Length::min).unwrap_or_default();
        let depths = format!("{} to {}", case.units.length(least), case.units.length(most(|p| p.depth)));
        let pieces = members::pieces(self, &posts, &boards);
        let holes = members::holes(self, &bays, &posts);
        let strips = shown::strips(case, self, &bays, &posts);
        let length = strips.iter().map(crate::Strip::length).sum();
        let mut layout = Layout {
            faces: shown::faces(self, &posts, &pieces, &holes),
            made_of: format!("{} steel posts, {} panels", posts.len(), boards.len()),
            headline: format!("{} steel posts in holes {depths}", posts.len()),
            lifts: members::lifts(case, self, &posts),
            retained: bays.iter().map(|b| b.retained).reduce(Length::max).unwrap_or_default(),
            exposed: bays.iter().map(|b| b.top - b.front).reduce(Length::max).unwrap_or_default(),
            total: most(|p| p.total),
            strips,
            pieces,
            holes,
            posts,
            bays,
            boards,
            ..Layout::empty(&case.id, length)
        };
        layout.facts = self.facts(case, &layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge(case, self, layout, true)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        checks::judge(case, self, layout, false)
    }
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        let case = WallCase { search_slip: false, ..case.clone() };
        checks::judge(&case, self, layout, false).checks
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        shown::cross(case, self, layout, chainage)
    }
}

impl SteelPostSpec {
    /// Checks what belongs together.
    ///
    /// # Errors
    /// [`CaseError::Value`] names the first size that cannot be built and what was expected.
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        let u = case.units;
        for of in [&self.post, self.at_end()] {
            let room = of.profile.shape.depth() - of.flange().0 * 2.0;
            if room < self.panel.thickness {
                let expected =
                    format!("at most {}, the room between the flanges of {}", u.length(room), of.profile.name);
                return Err(case.wrong("the thickness of a panel", u.length(self.panel.thickness), &expected));
            }
            if self.seat(of) <= Length::ZERO {
                let expected = format!("less than the flange reaches beside the web of {}", of.profile.name);
                return Err(case.wrong("the clearance at a panel's end", u.length(self.clearance), &expected));
            }
        }
        if self.panel.is_concrete() && matches!(self.panel.made, Made::Concrete { carries: None }) {
            let expected = "what its maker states, such as panel_carries = \"3.2 kNm 12 kN design\", or its steel, such as \
                            \"3x8 cover 25 C40 B500\"";
            return Err(case.wrong("what a cast panel holds", "left out", expected));
        }
        if let Made::Concrete { carries: Some(Carries::Bars { cover, diameter, .. }) } = self.panel.made
            && self.panel.thickness <= cover + diameter
        {
            let expected = "less than the thickness of the panel together with the bars";
            return Err(case.wrong("the cover of a panel's steel", u.length(cover), expected));
        }
        for l in [self.panel.length, self.panel.height, self.panel.thickness] {
            if !(0.01..=10.0).contains(&l.to_m()) {
                return Err(case.wrong("a size of the panel", u.length(l), "from 10 mm to 10 m"));
            }
        }
        let hole = self.hole.diameter;
        let widest = [&self.post, self.at_end()].map(|p| p.profile.shape.depth().max(p.profile.shape.width()));
        let holes =
            case.built.iter().map(|b| b.hole_diameter).chain(case.changes.iter().filter_map(|c| c.hole_diameter));
        match holes.chain([hole]).find(|d| *d < widest[0].max(widest[1])) {
            Some(d) => Err(case.wrong("the hole's diameter", u.length(d), "at least as wide as the post")),
            None => Ok(()),
        }
    }
    /// Posts, panels, concrete and spoil, as a schedule says them.
    fn facts(&self, case: &WallCase, l: &Layout) -> Vec<(String, String)> {
        let u = case.units;
        let concrete = match u {
            Units::Metric => format!("{} l", trim(l.concrete().to_litre(), 0)),
            Units::Feet => u.volume(l.concrete()),
        };
        let ends = match &self.end_post {
            Some(e) => format!(", at both ends {}", e.text()),
            None => String::new(),
        };
        vec![
            ("Posts".into(), format!("{} pieces, {}, zinc {} µm{ends}", l.posts.len(), self.post.text(), self.zinc_um)),
            ("Panels".into(), format!("{} pieces, {}", l.boards.len(), self.panel.material())),
            ("Concrete in holes".into(), concrete),
            ("Spoil of holes".into(), format!("{} in the bank", u.volume(l.hole_spoil()))),
        ]
    }
}
