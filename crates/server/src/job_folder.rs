//! What lies in the job's folder, and how is it changed so that nothing is lost?

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use thiserror::Error;

use crate::earlier;
use crate::tag::tag;

/// The job file's own name.
const JOB: &str = "job.toml";
/// Endings of the tables a job may name.
const TABLES: &[&str] = &["csv", "tsv", "txt"];
/// So many files at most in one job.
const MOST_FILES: usize = 64;

/// A job's folder. All files are read and written below it, never by a link that leads out.
pub struct JobFolder {
    root: PathBuf,
    writing: Mutex<()>,
}

/// The job's files as they lie there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Texts by path.
    pub files: BTreeMap<String, String>,
    /// Their entity tag.
    pub tag: String,
    /// Where the texts before the last save were copied to, if there was one.
    pub earlier: Option<String>,
}

/// Somebody else wrote meanwhile.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Conflict(pub Kept);

/// Why files were not kept.
#[derive(Debug, Error)]
pub enum NotKept {
    /// Somebody else wrote meanwhile.
    #[error("the job was changed meanwhile by somebody else")]
    Conflict(Box<Conflict>),
    /// The text is not a job's files.
    #[error("{0}")]
    Wrong(String),
    /// The file system refused; the files are as they were.
    #[error("{path}: {error}; the job is as it was, {hint}")]
    Disk {
        /// Which file.
        path: String,
        /// What the system says.
        error: io::Error,
        /// What to do.
        hint: &'static str,
    },
}

impl JobFolder {
    /// Opens a job by its folder or its job file.
    ///
    /// # Errors
    /// When there is no job file.
    pub fn open(path: &Path) -> Result<JobFolder, String> {
        let folder = if path.is_dir() { path } else { path.parent().unwrap_or(path) };
        let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
        let root = fs::canonicalize(folder).map_err(|e| format!("{}: {e}", path.display()))?;
        let job = JobFolder { root, writing: Mutex::default() };
        match job.read() {
            Ok(_) => Ok(job),
            Err(e) => Err(format!("{}: {e}; `groundhold new` writes a first one", path.display())),
        }
    }

    /// The job file and the tables it names, as far as they are there.
    ///
    /// # Errors
    /// Which file is not text or cannot be read.
    pub fn read(&self) -> Result<Kept, String> {
        let text = self.read_one(JOB)?.ok_or(format!("there is no `{JOB}` here"))?;
        let mut files = BTreeMap::new();
        for name in tables_named(&text).into_iter().filter(|n| allowed(n)).take(MOST_FILES) {
            if let Some(text) = self.read_one(&name)? {
                files.insert(name, text);
            }
        }
        files.insert(JOB.to_string(), text);
        let tag = tag(files.iter().flat_map(|(n, t)| [n.as_bytes(), t.as_bytes()]));
        Ok(Kept { files, tag, earlier: None })
    }

    fn read_one(&self, name: &str) -> Result<Option<String>, String> {
        let path = match fs::canonicalize(self.root.join(name)) {
            Ok(path) => path,
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(e) => return Err(format!("`{name}`: {e}")),
        };
        if !path.starts_with(&self.root) || !path.is_file() {
            return Err(format!("`{name}` is not a file of the job's own folder"));
        }
        let bytes = fs::read(&path).map_err(|e| format!("`{name}`: {e}"))?;
        String::from_utf8(bytes).map(Some).map_err(|e| {
            let at = e.utf8_error().valid_up_to() + 1;
            format!("`{name}`: byte {at} is not UTF-8; expected a plain text file")
        })
    }

    /// Writes those files that differ, if the job still is what `expected` says. What was there goes to `earlier/` first.
    ///
    /// # Errors
    /// A conflict, a text that is no job, or a full disk. The job is then as it was.
    pub fn write(&self, files: &BTreeMap<String, String>, expected: &str) -> Result<Kept, NotKept> {
        check(files)?;
        // A panic while writing cannot happen half-way through a rename, so a poisoned lock is as good as a fresh one.
        let _alone = self.writing.lock().unwrap_or_else(PoisonError::into_inner);
        let before = self.read().map_err(NotKept::Wrong)?;
        if before.tag != expected && expected != "*" {
            return Err(NotKept::Conflict(Box::new(Conflict(before))));
        }
        let changed: Vec<(&String, &String)> = files.iter().filter(|(n, t)| before.files.get(*n) != Some(t)).collect();
        if changed.is_empty() {
            return Ok(before);
        }
        let disk = |name: &str| {
            let path = name.to_string();
            move |error: io::Error| {
                let full = error.kind() == io::ErrorKind::StorageFull;
                let hint = if full { "make room and save again" } else { "look at the folder and save again" };
                NotKept::Disk { path, error, hint }
            }
        };
        let kept = earlier::keep(&self.root, &before.files).map_err(disk(earlier::EARLIER))?;
        let mut ready = vec![];
        for (name, text) in &changed {
            match self.write_beside(name, text) {
                Ok(pair) => ready.push(pair),
                Err(error) => {
                    ready.iter().for_each(|(part, _)| drop(fs::remove_file(part)));
                    return Err(disk(name)(error));
                }
            }
        }
        // The job file last: until it is there, the tables it names are.
        ready.sort_by_key(|(_, to)| to.file_name().is_some_and(|n| n == JOB));
        for (part, to) in &ready {
            fs::rename(part, to).map_err(disk(&to.file_name().unwrap_or_default().to_string_lossy()))?;
        }
        let _ = fs::File::open(&self.root).and_then(|d| d.sync_all());
        let after = self.read().map_err(NotKept::Wrong)?;
        Ok(Kept { earlier: Some(kept), ..after })
    }

    /// Writes a text beside its place, safely on the disk: where it lies and where it goes.
    fn write_beside(&self, name: &str, text: &str) -> io::Result<(PathBuf, PathBuf)> {
        let to = self.root.join(name);
        let parent = fs::canonicalize(to.parent().unwrap_or(&self.root))?;
        if !parent.starts_with(&self.root) {
            return Err(io::Error::other("it lies outside the job's folder"));
        }
        if fs::symlink_metadata(&to).is_ok_and(|m| !m.is_file()) {
            return Err(io::Error::other("it is a link or a folder"));
        }
        let part = parent.join(format!(".{}.part", to.file_name().unwrap_or_default().to_string_lossy()));
        let done = fs::File::create(&part).and_then(|mut f| {
            io::Write::write_all(&mut f, text.as_bytes())?;
            f.sync_all()
        });
        match done {
            Ok(()) => Ok((part, to)),
            Err(e) => {
                let _ = fs::remove_file(&part);
                Err(e)
            }
        }
    }
}

fn check(files: &BTreeMap<String, String>) -> Result<(), NotKept> {
    if !files.contains_key(JOB) {
        return Err(NotKept::Wrong(format!("there is no `{JOB}` among the files")));
    }
    if files.len() > MOST_FILES {
        return Err(NotKept::Wrong(format!("found {} files, expected at most {MOST_FILES}", files.len())));
    }
    match files.keys().find(|n| !allowed(n)) {
        Some(name) => Err(NotKept::Wrong(format!(
            "found the file `{name}`, expected `{JOB}` or a table ({}) of the job's own folder",
            TABLES.join(", ")
        ))),
        None => Ok(()),
    }
}

/// A name that may be read and written: the job file, or a table below the job's folder.
fn allowed(name: &str) -> bool {
    if name == JOB {
        return true;
    }
    let plain = |part: &str| {
        let fine = |c: char| c.is_alphanumeric() || matches!(c, '.' | '-' | '_' | ' ' | '+' | '(' | ')');
        !part.is_empty()
            && part.len() <= 120
            && !part.starts_with('.')
            && !part.ends_with(['.', ' '])
            && part.chars().all(fine)
    };
    let parts: Vec<&str> = name.split('/').collect();
    let ending = name.rsplit_once('.').map_or("", |(_, e)| e);
    parts.len() <= 3
        && parts[0] != earlier::EARLIER
        && parts.iter().all(|p| plain(p))
        && TABLES.contains(&ending)
        && Path::new(name).components().all(|c| matches!(c, Component::Normal(_)))
}

/// The tables that a job file asks for; what can be understood of a half-written one.
fn tables_named(text: &str) -> Vec<String> {
    let asked = RefCell::new(vec![]);
    let _ = groundhold_exchange::read_job(JOB, text, &|name: &str| {
        asked.borrow_mut().push(name.to_string());
        Err("not read here".into())
    });
    let mut names = asked.into_inner();
    names.sort();
    names.dedup();
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_leave_the_folder_or_hide_in_it_are_not_allowed() {
        for name in ["job.toml", "levels.csv", "tables/levels 2.csv", "höhen.csv"] {
            assert!(allowed(name), "{name}");
        }
        for name in [
            "",
            "..",
            "../x.csv",
            "/x.csv",
            "a/../x.csv",
            ".x.csv",
            "a//x.csv",
            "x.csv/",
            "a\\x.csv",
            "c:x.csv",
            "x.exe",
            "x",
            "earlier/0001/levels.csv",
            "other.toml",
            "a/b/c/d.csv",
            "x\0.csv",
            "x.csv\n",
            "./x.csv",
        ] {
            assert!(!allowed(name), "{name:?}");
        }
    }

    #[test]
    fn the_tables_of_the_demo_are_found_in_its_text() {
        let names = tables_named(include_str!("../../../demo/job.toml"));
        assert_eq!(names, ["levels.csv", "positions.csv", "prices.csv"]);
        assert!(tables_named("no toml at all [").is_empty());
    }
}
