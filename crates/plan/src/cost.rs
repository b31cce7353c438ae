//! What would a remedy cost? Each is applied to the job, the job is planned anew, and the prices are compared.

use groundhold_finding::Whose;

use crate::change::apply;
use crate::job::Job;
use crate::plan::{Plan, plan};

/// Fills in the cost of every remedy that is ours, and whether a new plan shows the finding gone.
pub(crate) fn price_remedies(job: &Job, planned: &mut Plan) {
    let total = planned.quote.total;
    let count = |all: &[groundhold_finding::Finding], code: &str, element: &str| {
        all.iter().filter(|f| f.kind.code == code && f.place.element == element).count()
    };
    let before = planned.findings.clone();
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
            // Posts may be renumbered by it: gone is where the element has fewer of the kind than before.
            remedy.proven = count(&after.findings, code, &place.element) < count(&before, code, &place.element);
        }
    }
}
