//! The texts of one job: `job.toml` and the tables it names.

use std::collections::BTreeMap;

use groundhold_exchange::{Read, read_job};

/// Name of the job file itself.
pub const JOB: &str = "job.toml";

/// The texts of one job, by name.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Files(BTreeMap<String, String>);

impl Files {
    /// From names and texts.
    pub fn of(texts: &[(&str, &str)]) -> Files {
        Files(texts.iter().map(|(n, t)| ((*n).to_string(), (*t).to_string())).collect())
    }
    /// The text of a file; empty where there is none.
    pub fn text(&self, name: &str) -> &str {
        self.0.get(name).map_or("", String::as_str)
    }
    /// The job file.
    pub fn job(&self) -> &str {
        self.text(JOB)
    }
    /// The same with one text replaced; a file with an empty text is not kept.
    #[must_use]
    pub fn with(&self, name: &str, text: &str) -> Files {
        let mut all = self.0.clone();
        if text.is_empty() {
            all.remove(name);
        } else {
            all.insert(name.into(), text.into());
        }
        Files(all)
    }
    /// Names in order.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }
    /// Names and texts in order.
    pub fn all(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(n, t)| (n.as_str(), t.as_str()))
    }
    /// The job, as far as it is understood, and what is wrong with it.
    pub fn read(&self) -> Read {
        let open = |name: &str| match self.0.get(name) {
            Some(t) => Ok(t.clone()),
            None => Err("it is not among this job's files".to_string()),
        };
        read_job(JOB, self.job(), &open)
    }
    /// What the job is called.
    pub fn title(&self) -> String {
        let named = self.read().job.map(|j| j.about.name).unwrap_or_default();
        if named.is_empty() { "Job without a name".into() } else { named }
    }
}
