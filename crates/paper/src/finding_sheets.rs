//! What speaks against the plan, gravest first, with what would mend it and what that costs.

use groundhold_draw::Ink;
use groundhold_finding::{Finding, Remedy, Severity, Whose};
use groundhold_plan::Plan;
use groundhold_quantity::{Money, trim};

use crate::flow::Flow;
use crate::leaf::{BLACK, GREY, HAIR, Leaf, RED, Style};
use crate::paper_size::Paper;

/// What each weight means, for the head of the sheet.
pub(crate) const WEIGHTS: [(Severity, &str); 4] = [
    (Severity::Stop, "do not build this"),
    (Severity::Ask, "needs a licensed person or an authority"),
    (Severity::Watch, "will need care"),
    (Severity::Note, "good to know"),
];

pub(crate) fn ink(s: Severity) -> Ink {
    match s {
        Severity::Stop => RED,
        Severity::Ask => Ink(150, 84, 0),
        Severity::Watch => Ink(28, 84, 140),
        Severity::Note => GREY,
    }
}

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let mut flow = Flow::new(Paper::A4, "Findings", "Findings");
    flow.title("Findings");
    let meaning: Vec<String> = WEIGHTS.iter().map(|(s, w)| format!("{}: {w}", s.word())).collect();
    flow.paragraph(&format!(
        "What the plan has to say against itself. {}. A plan without findings is not thereby proven; it has only passed what was checked. Why a kind of finding matters is said where it comes first.",
        meaning.join(" · ")
    ));
    if plan.findings.is_empty() {
        flow.paragraph("Nothing was found by what was checked.");
    }
    let mut explained: Vec<&str> = vec![];
    for f in &plan.findings {
        finding(&mut flow, plan, f, explained.contains(&f.kind.code));
        explained.push(f.kind.code);
    }
    flow.finish()
}

fn finding(flow: &mut Flow, plan: &Plan, f: &Finding, explained: bool) {
    let style = Style::BODY;
    flow.need(style.leading() * 5.0);
    flow.rule(0.15, HAIR);
    flow.gap(1.2);
    const INDENT: f64 = 25.0;
    let used = f.utilisation.map_or(String::new(), |u| {
        if u.is_finite() { format!("  ·  demand over capacity {}", trim(u, 2)) } else { "  ·  no capacity".into() }
    });
    let head = format!("{}: {}{used}", f.place, f.kind.name);
    let word = format!("{} {}", f.severity.word(), f.kind.code);
    flow.hanging(&word, &style.bold().ink(ink(f.severity)), &head, INDENT, &style.bold());
    flow.lines_of(&f.says, INDENT, &style);
    for r in &f.remedies {
        flow.lines_of(&format!("→ {}", remedy(r, plan)), INDENT, &style.ink(BLACK));
    }
    if explained {
        flow.gap(1.8);
        return;
    }
    flow.lines_of(&format!("Why: {} ({})", f.kind.why.trim_end_matches('.'), f.kind.source), INDENT, &Style::SMALL);
    flow.gap(1.8);
}

/// A remedy with its price and whether it was tried.
pub(crate) fn remedy(r: &Remedy, plan: &Plan) -> String {
    let currency = &plan.job.about.currency.0;
    let whose = if r.whose == Whose::Theirs { " (theirs to decide)" } else { "" };
    let cost = match r.cost {
        Some(c) if c == Money::ZERO => "  ·  costs the same".into(),
        Some(c) if c < Money::ZERO => format!("  ·  saves {currency} {}", (-c).shown()),
        Some(c) => format!("  ·  costs {currency} {} more", c.shown()),
        None => String::new(),
    };
    let proven = if r.proven { "  ·  planned again: the finding is gone" } else { "" };
    format!("{}{whose}{cost}{proven}", r.says)
}
