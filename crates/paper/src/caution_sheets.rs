//! What can hurt somebody on this job, and what does the place ask for?

use groundhold_build::Cautioned;
use groundhold_plan::Plan;

use crate::flow::Flow;
use crate::leaf::{GREY, HAIR, Leaf, Style};
use crate::paper_size::Paper;
use crate::table::{Table, sentences, words};

/// The cautions that bite on this job.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let cautions = &plan.programme.cautions;
    let mut flow = Flow::new(Paper::A4, "Cautions", "Cautions");
    flow.title("Cautions");
    flow.paragraph(
        "Walls fall on people, trenches close, buried services kill. This page is a reminder for those who know the work; it does not replace training, local rules or a person on site who may stop the work.",
    );
    for c in cautions {
        caution(&mut flow, plan, c);
    }
    let region = plan.region;
    flow.heading(&format!("What the place asks for: {}", region.name));
    flow.small(&format!("A snapshot of {}, never complete; the local office decides.", region.date_read));
    if region.triggers.is_empty() {
        flow.paragraph("No triggers are known for this place. Ask the local office before the work begins.");
    } else {
        let mut t = Table::new(vec![sentences("Rule in our words"), words("How far confirmed"), sentences("Source")]);
        for g in region.triggers {
            t.row([g.says.into(), g.status.words().into(), g.source.into()]);
        }
        flow.table(&t);
    }
    for n in region.notes {
        flow.paragraph(n);
    }
    flow.finish()
}

fn caution(flow: &mut Flow, plan: &Plan, c: &Cautioned) {
    let style = Style::BODY;
    flow.need(style.leading() * 5.0);
    flow.rule(0.15, HAIR);
    flow.gap(1.2);
    flow.lines_of(c.caution.title, 0.0, &style.bold().sized(3.5));
    flow.lines_of(c.caution.says, 0.0, &style);
    if !c.here.is_empty() {
        flow.lines_of(&format!("Here: {}", c.here), 0.0, &style.bold());
    }
    flow.lines_of(&format!("Otherwise: {}", c.caution.why), 0.0, &style.ink(GREY));
    let tasks = c
        .tasks
        .iter()
        .map(|id| plan.programme.tasks.iter().find(|t| t.id == *id).map_or(id.as_str(), |t| t.name.as_str()));
    let tasks: Vec<&str> = tasks.collect();
    if !tasks.is_empty() {
        flow.lines_of(&format!("At: {}.", tasks.join("; ")), 0.0, &Style::SMALL);
    }
    flow.lines_of(&format!("Source: {}", c.caution.source), 0.0, &Style::SMALL);
    flow.gap(1.6);
}
