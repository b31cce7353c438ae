//! The journal of a job: every deed in order, from which its texts, undo, redo and named versions follow.
//!
//! A deed is appended before it is shown, and never altered. Undo is a deed too, so that a crash forgets nothing.

use serde::{Deserialize, Serialize};

use super::{Change, Files, Misfit};

/// What was done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Deed {
    /// Something was changed.
    Did(Change),
    /// The last change still standing was taken back.
    Undid,
    /// The last change taken back was made again.
    Redid,
    /// The state was given a name.
    Named(String),
}

/// One line of the journal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Its number, counted from 1 without gaps.
    pub n: u32,
    /// When, as the device's clock said: `2026-05-11T10:20:00`.
    pub at: String,
    /// What.
    pub deed: Deed,
}

/// A state with a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Version {
    /// What it is called.
    pub name: String,
    /// When it was named.
    pub at: String,
    /// Its texts.
    pub files: Files,
}

/// A job's texts with all that led to them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct History {
    files: Files,
    next: u32,
    done: Vec<Change>,
    undone: Vec<Change>,
    versions: Vec<Version>,
}

impl History {
    /// Begins with some texts.
    pub fn new(base: Files) -> History {
        History { files: base, next: 1, ..History::default() }
    }

    /// From the texts it began with and its journal. An entry that does not fit ends the replay: what stood before it is
    /// kept, and the misfit is told.
    pub fn replay(base: Files, entries: &[Entry]) -> (History, Option<Misfit>) {
        let mut history = History::new(base);
        for e in entries {
            if let Err(misfit) = history.take(e) {
                return (history, Some(misfit));
            }
        }
        (history, None)
    }

    /// The texts now.
    pub fn files(&self) -> &Files {
        &self.files
    }
    /// The number the next entry has.
    pub fn next(&self) -> u32 {
        self.next
    }
    /// What undo would take back.
    pub fn to_undo(&self) -> Option<&str> {
        self.done.last().map(|c| c.says.as_str())
    }
    /// What redo would make again.
    pub fn to_redo(&self) -> Option<&str> {
        self.undone.last().map(|c| c.says.as_str())
    }
    /// States with a name, oldest first.
    pub fn versions(&self) -> &[Version] {
        &self.versions
    }
    /// What was done and still stands, latest first.
    pub fn standing(&self) -> impl Iterator<Item = &str> {
        self.done.iter().rev().map(|c| c.says.as_str())
    }

    /// Takes an entry up.
    ///
    /// # Errors
    /// [`Misfit`] where it does not fit; nothing is changed then.
    pub fn take(&mut self, entry: &Entry) -> Result<(), Misfit> {
        let nothing = |says: &str| Misfit { file: "the journal".into(), says: says.into() };
        match &entry.deed {
            Deed::Did(change) => {
                self.files = change.apply(&self.files)?;
                self.done.push(change.clone());
                self.undone.clear();
            }
            Deed::Undid => {
                let change = self.done.last().ok_or_else(|| nothing("undo"))?;
                self.files = change.inverse().apply(&self.files)?;
                self.undone.extend(self.done.pop());
            }
            Deed::Redid => {
                let change = self.undone.last().ok_or_else(|| nothing("redo"))?;
                self.files = change.apply(&self.files)?;
                self.done.extend(self.undone.pop());
            }
            Deed::Named(name) => {
                let version = Version { name: name.clone(), at: entry.at.clone(), files: self.files.clone() };
                self.versions.push(version);
            }
        }
        self.next = entry.n + 1;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn entry(h: &History, deed: Deed) -> Entry {
        Entry { n: h.next(), at: "2026-05-11T10:20:00".into(), deed }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn a_journal_replayed_gives_the_texts_it_was_written_from(steps in prop::collection::vec((0..4u8, "[a-c]{0,5}"), 0..30)) {
            let base = Files::of(&[("job.toml", "schema = 1\n")]);
            let mut live = History::new(base.clone());
            let mut journal = vec![];
            for (what, text) in steps {
                let deed = match what {
                    0 => Change::between(&text, live.files(), &live.files().with("job.toml", &text)).map(Deed::Did),
                    1 => live.to_undo().map(|_| Deed::Undid),
                    2 => live.to_redo().map(|_| Deed::Redid),
                    _ => Some(Deed::Named(text)),
                };
                let Some(deed) = deed else { continue };
                let e = entry(&live, deed);
                live.take(&e).unwrap();
                journal.push(e);
            }
            let stored: Vec<Entry> =
                journal.iter().map(|e| serde_json::from_str(&serde_json::to_string(e).unwrap()).unwrap()).collect();
            prop_assert_eq!(History::replay(base, &stored), (live, None));
        }
    }

    #[test]
    fn a_broken_entry_keeps_what_stood_before_it() {
        let base = Files::of(&[("job.toml", "a")]);
        let mut h = History::new(base.clone());
        let change = Change::between("b", &base, &base.with("job.toml", "b")).unwrap();
        let good = entry(&h, Deed::Did(change.clone()));
        h.take(&good).unwrap();
        let bad = entry(&h, Deed::Did(change));
        let (again, misfit) = History::replay(base, &[good, bad]);
        assert_eq!(again, h);
        assert!(misfit.is_some());
    }

    #[test]
    fn undo_has_no_end_and_a_new_deed_forgets_what_could_be_made_again() {
        let mut h = History::new(Files::default());
        for k in 0..300 {
            let change = Change::between(format!("{k}"), h.files(), &h.files().with("x", &format!("{k}"))).unwrap();
            let e = entry(&h, Deed::Did(change));
            h.take(&e).unwrap();
        }
        for _ in 0..300 {
            let e = entry(&h, Deed::Undid);
            h.take(&e).unwrap();
        }
        assert_eq!((h.files(), h.to_undo(), h.to_redo()), (&Files::default(), None, Some("0")));
        let change = Change::between("new", h.files(), &h.files().with("x", "new")).unwrap();
        let e = entry(&h, Deed::Did(change));
        h.take(&e).unwrap();
        assert_eq!(h.to_redo(), None);
    }
}
