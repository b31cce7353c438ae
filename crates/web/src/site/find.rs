//! "It is not so": what was found instead, as it is entered, and the entry of the diary it becomes.

use groundhold_plan::Plan;
use groundhold_plan::job::{Entry, Event, Find};
use groundhold_quantity::{Length, Level, Point, Quantity, parse};

/// What can be found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FindKind {
    /// Rock stops a post hole.
    #[default]
    Rock,
    /// A pipe that nobody knew of.
    Pipe,
    /// A cable that nobody knew of.
    Cable,
    /// Water.
    Water,
    /// A level that was read wrong.
    Level,
    /// Words only.
    Note,
}

impl FindKind {
    /// All of them.
    pub const ALL: [FindKind; 6] =
        [FindKind::Rock, FindKind::Pipe, FindKind::Cable, FindKind::Water, FindKind::Level, FindKind::Note];
    /// The word on its button.
    pub fn word(self) -> &'static str {
        match self {
            FindKind::Rock => "Rock",
            FindKind::Pipe => "Pipe",
            FindKind::Cable => "Cable",
            FindKind::Water => "Water",
            FindKind::Level => "Level wrong",
            FindKind::Note => "Something else",
        }
    }
}

/// A find, as typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FindEntry {
    /// What.
    pub kind: FindKind,
    /// The element: `W1`, or with the post `W1 post 3`.
    pub element: String,
    /// How deep below the ground there.
    pub depth: String,
    /// Where, for a pipe or cable.
    pub at: Option<Point>,
    /// The point whose level was wrong.
    pub point: String,
    /// What its level really is.
    pub level: String,
    /// In words.
    pub note: String,
}

fn read<Q: Quantity>(what: &str, text: &str) -> Result<Q, String> {
    parse::<Q>(text).map_err(|e| format!("{what}: {e}"))
}

impl FindEntry {
    /// The entry of the diary.
    ///
    /// # Errors
    /// Which part was not understood, and what was expected.
    pub fn entry(&self, plan: &Plan, at: &str) -> Result<Entry, String> {
        let (wall, post) = match self.element.split_once(" post ") {
            Some((w, n)) => (w, n.parse::<usize>().ok()),
            None => (self.element.as_str(), None),
        };
        let depth = || read::<Length>("depth", &self.depth);
        let event = match self.kind {
            FindKind::Rock => {
                let layout = plan.wall(wall).map(|w| &w.layout).ok_or("post: expected a post such as W1 post 3")?;
                let number = post.ok_or("post: expected a post such as W1 post 3")?;
                let at = layout.post(number).ok_or(format!("post: {wall} has posts 1 to {}", layout.posts.len()))?;
                let (chainage, place) = (Some(at.chainage), Some(at.face));
                Event::Find(Find::Rock { wall: wall.into(), post: number, chainage, at: place, depth: depth()? })
            }
            FindKind::Pipe | FindKind::Cable => {
                let word = if self.kind == FindKind::Pipe { "unknown pipe" } else { "unknown cable" };
                let place = self.at.or_else(|| crate::live::place_of(plan, &self.element, ""));
                let place = place.ok_or("where: expected a place, or an element near which it lies")?;
                Event::Find(Find::Service { what: word.into(), line: vec![place], depth: depth()? })
            }
            FindKind::Water if wall.is_empty() => return Err("where: expected the element at which it stood".into()),
            FindKind::Water => Event::Find(Find::Water { element: wall.into(), depth: depth()? }),
            FindKind::Level => {
                let point = self.point.trim();
                if !plan.survey.points.iter().any(|p| p.id == point) {
                    return Err(format!("point: there is no measured point `{point}`"));
                }
                Event::Find(Find::LevelError { point: point.into(), level: read::<Level>("level", &self.level)? })
            }
            FindKind::Note if self.note.trim().is_empty() => return Err("words: expected a few words".into()),
            FindKind::Note => Event::Note,
        };
        Ok(Entry { at: at.into(), event, note: self.note.trim().replace(['\n', '\r'], " ") })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT: &str = "2026-05-11T10:20:00";

    #[test]
    fn rock_in_a_hole_becomes_an_entry_that_plans_and_changes_the_post() {
        let files = crate::job::demo();
        let plan = groundhold_plan::plan(&files.read().whole().unwrap()).unwrap();
        let find = FindEntry { element: "W1 post 3".into(), depth: "450 mm".into(), ..FindEntry::default() };
        let after = crate::job::append(&files, &find.entry(&plan, AT).unwrap());
        let again = groundhold_plan::plan(&after.read().whole().unwrap()).unwrap();
        assert!(!groundhold_plan::compare(&plan, &again).is_empty());
    }

    #[test]
    fn each_kind_says_what_it_still_needs() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        for kind in FindKind::ALL {
            let why = FindEntry { kind, ..FindEntry::default() }.entry(&plan, AT).unwrap_err();
            assert!(why.contains("expected") || why.contains("no measured point"), "{kind:?}: {why}");
        }
        let deep = FindEntry { element: "W1 post 99".into(), depth: "450 mm".into(), ..FindEntry::default() };
        assert!(deep.entry(&plan, AT).unwrap_err().contains("posts 1 to"));
        for kind in [FindKind::Pipe, FindKind::Cable, FindKind::Water] {
            let f = FindEntry { kind, element: "W1".into(), depth: "1 ft".into(), ..FindEntry::default() };
            let after = crate::job::append(&crate::job::demo(), &f.entry(&plan, AT).unwrap()).read();
            assert_eq!(after.problems, [], "{kind:?}");
        }
    }
}
