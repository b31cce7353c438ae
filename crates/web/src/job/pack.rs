//! A whole job as one text: each file under a line with its name and its length in bytes, so that nothing in it can be
//! mistaken for the next.

use super::{Files, JOB};

const FIRST: &str = "groundhold job 1";
/// Largest text that is taken in.
const LARGEST: usize = 80 << 20;

/// A text that is not a job in one file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotAPack {
    /// Line, counted from 1; 0 for the whole text.
    pub line: usize,
    /// What was found and what was expected.
    pub says: String,
}

impl std::fmt::Display for NotAPack {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.line == 0 { write!(f, "{}", self.says) } else { write!(f, "line {}: {}", self.line, self.says) }
    }
}

/// The job as one text.
pub fn pack(files: &Files) -> String {
    let mut out = format!("{FIRST}\n");
    for (name, text) in files.all() {
        out.push_str(&format!("== {} {name}\n{text}\n", text.len()));
    }
    out
}

/// The job from one text: what [`pack`] wrote, or a bare job file.
///
/// # Errors
/// Where it stops being a job, and what was expected there.
pub fn unpack(text: &str) -> Result<Files, NotAPack> {
    let at = |rest: &str| text[..text.len() - rest.len()].matches('\n').count() + 1;
    let wrong = |line: usize, says: String| NotAPack { line, says };
    if text.len() > LARGEST {
        return Err(wrong(0, format!("the file has {} bytes; at most {LARGEST} are read", text.len())));
    }
    let text_in = text.strip_prefix('\u{feff}').unwrap_or(text);
    let Some(mut rest) = text_in.strip_prefix(FIRST) else {
        let bare = text_in.lines().any(|l| l.trim_start().starts_with("schema"));
        if bare {
            return Ok(Files::default().with(JOB, text_in));
        }
        let found: String = text_in.lines().next().unwrap_or("").chars().take(60).collect();
        return Err(wrong(1, format!("found `{found}`, expected `{FIRST}` or a job file that begins with its schema")));
    };
    rest = rest.trim_start_matches(['\r', '\n']);
    let mut files = Files::default();
    while !rest.trim().is_empty() {
        let (head, body) = rest.split_once('\n').unwrap_or((rest, ""));
        let named = head.strip_prefix("== ").and_then(|h| h.trim_end().split_once(' '));
        let sized = named.and_then(|(n, name)| Some((n.parse::<usize>().ok()?, name)));
        let Some((size, name)) = sized else {
            let found: String = head.chars().take(60).collect();
            return Err(wrong(at(rest), format!("found `{found}`, expected `== 1234 name-of-file`")));
        };
        if name.is_empty() || name.contains(['/', '\\']) || name.starts_with('.') {
            return Err(wrong(at(rest), format!("found the name `{name}`, expected a plain file name")));
        }
        let Some(content) = body.get(..size) else {
            return Err(wrong(at(rest), format!("`{name}` should have {size} bytes, but the text ends before that")));
        };
        files = files.with(name, content);
        rest = body[size..].trim_start_matches(['\r', '\n']);
    }
    if files.job().is_empty() {
        return Err(wrong(0, format!("there is no `{JOB}` in it")));
    }
    Ok(files)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_demo_comes_back_out_as_it_went_in() {
        let demo = super::super::demo();
        assert_eq!(unpack(&pack(&demo)), Ok(demo));
    }

    #[test]
    fn what_is_not_a_job_is_refused_with_its_line() {
        assert_eq!(unpack("hello").unwrap_err().line, 1);
        assert_eq!(unpack("groundhold job 1\n== 4 job.toml\nabcd\nnonsense\n").unwrap_err().line, 4);
        assert!(unpack("groundhold job 1\n== 99 job.toml\nabcd\n").unwrap_err().says.contains("99 bytes"));
        assert!(unpack("groundhold job 1\n== 1 ../x\na\n").unwrap_err().says.contains("plain file name"));
        assert!(unpack("groundhold job 1\n== 1 x.csv\na\n").unwrap_err().says.contains("job.toml"));
        assert_eq!(unpack("schema = 1\n").unwrap().job(), "schema = 1\n");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn any_text_is_answered_without_a_panic(t in "(groundhold job 1\n)?(== [0-9]{0,3} [a-z./é]{0,6}\n?.{0,9}\n?){0,4}") {
            let _ = unpack(&t);
        }
    }
}
