//! What would a remedy cost? Each is applied to the job, the job is planned anew, and the prices are compared.

use groundhold_finding::Whose;

use crate::change::apply;
use crate::job::Job;
use crate::plan::{Plan, plan};

/// Fills in the cost of every remedy that is ours, and whether a new plan shows the finding gone.
pub(crate) fn price_remedies(job: &Job, planned: &mut Plan) {
    let total = planned.quote.total;
    let mut tried: Vec<(Vec<groundhold_finding::Adjust>, Option<Plan>)> = vec![];
    for finding in &mut planned.findings {
        let (code, place) = (finding.kind.code, finding.place.clone());
        for remedy in finding.remedies.iter_mut().filter(|r| r.whose == Whose::Ours && !r.change.is_empty()) {
            if !tried.iter().any(|(change, _)| *change == remedy.change) {
                let changed = remedy.change.iter().try_fold(job.clone(), |j, a| apply(&j, a).ok());
                let replanned = changed.and_then(|j| plan(&j).ok());
                tried.push((remedy.change.clone(), replanned));
            }
            let Some((_, Some(after))) = tried.iter().find(|(change, _)| *change == remedy.change) else { continue };
            remedy.cost = Some(after.quote.total - total);
            remedy.proven = !after.findings.iter().any(|f| f.kind.code == code && f.place.element == place.element);
        }
    }
}
