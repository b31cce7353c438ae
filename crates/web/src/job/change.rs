//! A change: which stretch of which text gives way to which. Applied and taken back by the same function.

use serde::{Deserialize, Serialize};

use super::Files;

/// One stretch of one file's text, replaced.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Splice {
    /// The file.
    pub file: String,
    /// Where the stretch begins, in bytes.
    pub at: usize,
    /// What stood there.
    pub gone: String,
    /// What stands there now.
    pub came: String,
}

/// One thing a person did, as splices of texts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Change {
    /// What was done, in words: "P1 level 101.130 m".
    pub says: String,
    /// The splices; at most one for each file.
    pub splices: Vec<Splice>,
}

/// A change that does not fit the texts it is applied to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Misfit {
    /// The file.
    pub file: String,
    /// The change.
    pub says: String,
}

impl std::fmt::Display for Misfit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "the change \"{}\" does not fit the text of {}", self.says, self.file)
    }
}

impl Change {
    /// The change that leads from one state to another; `None` where they are equal.
    pub fn between(says: impl Into<String>, before: &Files, after: &Files) -> Option<Change> {
        let mut names: Vec<&str> = before.names().chain(after.names()).collect();
        names.sort_unstable();
        names.dedup();
        let splices: Vec<Splice> = names.iter().filter_map(|n| splice(n, before.text(n), after.text(n))).collect();
        (!splices.is_empty()).then(|| Change { says: says.into(), splices })
    }

    /// The texts with the change made.
    ///
    /// # Errors
    /// [`Misfit`] where a text is not what the change was made from; nothing is changed then.
    pub fn apply(&self, files: &Files) -> Result<Files, Misfit> {
        let mut out = files.clone();
        for s in &self.splices {
            let text = out.text(&s.file);
            let end = s.at.checked_add(s.gone.len());
            let there = end.and_then(|e| text.get(s.at..e)).is_some_and(|t| t == s.gone);
            let (Some(head), Some(tail), true) = (text.get(..s.at), end.and_then(|e| text.get(e..)), there) else {
                return Err(Misfit { file: s.file.clone(), says: self.says.clone() });
            };
            let text = format!("{head}{}{tail}", s.came);
            out = out.with(&s.file, &text);
        }
        Ok(out)
    }

    /// The change that takes this one back.
    #[must_use]
    pub fn inverse(&self) -> Change {
        let back = |s: &Splice| Splice { gone: s.came.clone(), came: s.gone.clone(), ..s.clone() };
        Change { says: self.says.clone(), splices: self.splices.iter().map(back).collect() }
    }
}

/// The shortest single stretch in which two texts differ.
fn splice(file: &str, before: &str, after: &str) -> Option<Splice> {
    if before == after {
        return None;
    }
    let at = common(before.char_indices(), after.char_indices(), before.len().min(after.len()));
    let (b, a) = (&before[at..], &after[at..]);
    let tail: usize = b.chars().rev().zip(a.chars().rev()).take_while(|(x, y)| x == y).map(|(x, _)| x.len_utf8()).sum();
    Some(Splice { file: file.into(), at, gone: b[..b.len() - tail].into(), came: a[..a.len() - tail].into() })
}

/// How many bytes two texts have in common from their beginning, in whole characters.
fn common(a: impl Iterator<Item = (usize, char)>, b: impl Iterator<Item = (usize, char)>, shorter: usize) -> usize {
    a.zip(b).find(|((_, x), (_, y))| x != y).map_or(shorter, |((i, _), _)| i)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn a_change_made_and_taken_back_leaves_the_texts_as_they_were(
            a in "[aäb\n]{0,12}", b in "[aäb\n]{0,12}", c in "[aäb]{0,6}", d in "[aäb]{0,6}"
        ) {
            let before = Files::default().with("x", &a).with("y", &c);
            let after = Files::default().with("x", &b).with("y", &d);
            match Change::between("edit", &before, &after) {
                None => prop_assert_eq!(&before, &after),
                Some(change) => {
                    prop_assert_eq!(&change.apply(&before).unwrap(), &after);
                    prop_assert_eq!(&change.inverse().apply(&after).unwrap(), &before);
                }
            }
        }
    }

    #[test]
    fn a_change_that_does_not_fit_says_which_file_and_changes_nothing() {
        let change = Change::between("grow", &Files::of(&[("x", "abc")]), &Files::of(&[("x", "abXc")])).unwrap();
        let wrong = change.inverse().apply(&Files::of(&[("x", "other")])).unwrap_err();
        assert_eq!(wrong.to_string(), "the change \"grow\" does not fit the text of x");
        assert!(change.apply(&Files::of(&[("x", "a")])).is_err());
        assert!(change.apply(&Files::of(&[("x", "aé")])).is_err(), "not inside a letter");
    }
}
