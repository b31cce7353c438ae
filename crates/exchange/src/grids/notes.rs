//! What speaks against the plan, and what would mend it?

use groundhold_finding::{Remedy, Whose};
use groundhold_plan::Plan;

use crate::grid::Grid;

/// A remedy in one line, with what it costs and whether a re-plan has shown that it works.
fn remedy(plan: &Plan, r: &Remedy) -> String {
    let mut notes = vec![];
    if let Some(cost) = r.cost {
        notes.push(format!("{:+.2} {}", cost.amount(), plan.job.about.currency.0).trim().to_string());
    }
    if r.proven {
        notes.push("proven by planning again".into());
    }
    if r.whose == Whose::Theirs {
        notes.push("for a person to decide".into());
    }
    if notes.is_empty() { r.says.clone() } else { format!("{} ({})", r.says, notes.join(", ")) }
}

/// Findings, gravest first.
pub(crate) fn findings(plan: &Plan) -> Grid {
    let columns = [
        ("severity", 0),
        ("code", 0),
        ("name", 0),
        ("element", 0),
        ("place", 0),
        ("says", 0),
        ("utilisation", 2),
        ("remedies", 0),
        ("source", 0),
    ];
    let mut grid = Grid::new("findings", &columns);
    for f in &plan.findings {
        let remedies: Vec<String> = f.remedies.iter().map(|r| remedy(plan, r)).collect();
        grid.rows.push(vec![
            f.severity.word().into(),
            f.kind.code.into(),
            f.kind.name.into(),
            (&f.place.element).into(),
            (&f.place.on).into(),
            (&f.says).into(),
            f.utilisation.into(),
            remedies.join(" | ").into(),
            f.kind.source.into(),
        ]);
    }
    grid
}
