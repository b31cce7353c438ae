//! What in a file cannot be understood: where it stands, what was found, what was expected, and the line itself.

use std::fmt;
use std::ops::Range;

/// One thing that is wrong with a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Name of the file as the job names it.
    pub file: String,
    /// Line, counted from 1; 0 for the whole file.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// How many characters are meant.
    pub width: usize,
    /// The line as it stands, shortened.
    pub excerpt: String,
    /// What was found and what was expected.
    pub says: String,
}

impl Problem {
    /// About a whole file.
    pub fn whole(file: &str, says: impl Into<String>) -> Problem {
        Problem { file: file.into(), line: 0, column: 0, width: 0, excerpt: String::new(), says: says.into() }
    }

    /// About a span of bytes in a text.
    pub fn at(file: &str, text: &str, span: Range<usize>, says: impl Into<String>) -> Problem {
        let start = floor(text, span.start);
        let before = &text[..start];
        let line = before.matches('\n').count() + 1;
        let line_start = before.rfind('\n').map_or(0, |i| i + 1);
        let whole = text[line_start..].lines().next().unwrap_or("");
        let column = text[line_start..start].chars().count() + 1;
        let end = floor(text, span.end.min(line_start + whole.len()).max(start));
        let width = text[start..end].chars().count().max(1);
        Problem { file: file.into(), line, column, width, excerpt: shorten(whole), says: says.into() }
    }

    /// About a line of a table.
    pub fn in_line(file: &str, line: usize, column: usize, excerpt: &str, says: impl Into<String>) -> Problem {
        Problem { file: file.into(), line, column, width: 1, excerpt: shorten(excerpt), says: says.into() }
    }
}

/// Lines longer than this are cut in a message.
const LONGEST: usize = 110;

fn shorten(line: &str) -> String {
    let clean: String = line.chars().map(|c| if c.is_control() { '·' } else { c }).collect();
    if clean.chars().count() <= LONGEST { clean } else { clean.chars().take(LONGEST).chain("…".chars()).collect() }
}

/// The nearest start of a character at or before `at`.
fn floor(text: &str, at: usize) -> usize {
    (0..=at.min(text.len())).rev().find(|i| text.is_char_boundary(*i)).unwrap_or(0)
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.line == 0 {
            return write!(f, "{}: {}", self.file, self.says);
        }
        write!(f, "{}:{}:{}: {}", self.file, self.line, self.column, self.says)?;
        if self.excerpt.is_empty() {
            return Ok(());
        }
        let number = self.line.to_string();
        let gap = " ".repeat(number.len());
        write!(f, "\n  {number} │ {}", self.excerpt)?;
        if self.column <= LONGEST {
            let marks = "^".repeat(self.width.min(LONGEST + 1 - self.column));
            write!(f, "\n  {gap} │ {}{marks}", " ".repeat(self.column - 1))?;
        }
        Ok(())
    }
}

/// The nearest of the known words, if one is near enough to be a slip of the finger.
pub(crate) fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    known.map(|k| (slips(word, k), k)).filter(|(d, k)| *d <= 1 + k.len() / 4).min_by_key(|(d, _)| *d).map(|(_, k)| k)
}

/// How many letters to change, add or drop to come from one word to the other (Levenshtein 1966).
fn slips(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.chars().take(60).enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, cb) in b.iter().enumerate() {
            let changed = diagonal + usize::from(ca != *cb);
            diagonal = row[j + 1];
            row[j + 1] = changed.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_problem_shows_its_line_with_marks_under_the_place() {
        let text = "a = 1\nlevel = \"101\"\n";
        let p = Problem::at("job.toml", text, 14..19, "level: the unit is missing");
        assert_eq!(
            p.to_string(),
            "job.toml:2:9: level: the unit is missing\n  2 │ level = \"101\"\n    │         ^^^^^"
        );
    }

    #[test]
    fn a_place_inside_a_character_or_past_the_end_does_not_panic() {
        let _ = Problem::at("x", "é", 1..9, "").to_string();
        let _ = Problem::at("x", "", 7..9, "").to_string();
    }

    #[test]
    fn a_slip_of_the_finger_finds_the_word_meant() {
        assert_eq!(nearest("aprn", ["apron", "level"].into_iter()), Some("apron"));
        assert_eq!(nearest("colour", ["apron", "level"].into_iter()), None);
    }
}
