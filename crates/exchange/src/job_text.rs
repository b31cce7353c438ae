//! Job text.

use groundhold_plan::job::Job;

/// Job text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobTexts;

/// Job text.
pub fn job_text(_job: &Job) -> JobTexts {
    JobTexts
}
