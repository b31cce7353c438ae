//! Walls that stand already: what was seen, which causes fit, with their workings, and what is done first.

use groundhold_hold::standing::{FIRST_SOURCE, SIGN_SOURCE};
use groundhold_plan::{OldWallPlan, Plan};
use groundhold_quantity::{Length, trim};

use crate::calculation::Calculations;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, sentences, words};

const PART: &str = "Walls as found";

/// One run of sheets for each wall; nothing where none stands.
pub(crate) fn leaves(plan: &Plan, calculations: &mut Calculations) -> Vec<Leaf> {
    let mut all = vec![];
    for wall in &plan.old_walls {
        let mut flow = Flow::new(Paper::A4, PART, &format!("{} as found", wall.id));
        sheet(&mut flow, plan, wall, calculations);
        all.extend(flow.finish());
    }
    all
}

fn sheet(flow: &mut Flow, plan: &Plan, wall: &OldWallPlan, calculations: &mut Calculations) {
    let job = plan.job.standing.iter().find(|o| o.id == wall.id);
    let name = job.map_or("", |o| o.name.as_str());
    flow.title(format!("{} {name}", wall.id).trim_end());
    flow.facts(&measured(plan, wall));
    let factors = match (wall.back.factor, wall.back.factor_wet) {
        (Some(dry), Some(wet)) => format!(
            "By the soil of this job its factor is {} drained and {} with water to the ground behind ({}). Below 1 a wall of these sizes would not stand: the ground is then better than its class.",
            trim(dry, 2),
            trim(wet, 2),
            calculations.numbers(&wall.back.traces, &format!("{} as found", wall.id))
        ),
        _ => "Too little was measured to say how it stands.".into(),
    };
    flow.paragraph(&factors);
    flow.heading("Causes");
    flow.paragraph("What each cause would need to bring the wall to its limit, against what was seen or can be. A cause fits where that can be and the signs speak for it. Two causes may work together.");
    let mut t = Table::new(vec![
        sentences("Cause"),
        words("Comes out"),
        sentences("Needs"),
        sentences("Seen, or can be"),
        sentences("Signs"),
        words("Working"),
    ]);
    for h in &wall.back.hypotheses {
        let signs: Vec<String> =
            h.signs.iter().map(|r| format!("{} {}", if r.weight > 0 { "+" } else { "−" }, r.sign.words())).collect();
        let numbers = calculations.numbers(&h.traces, &format!("{}, {}", wall.id, h.cause.words()));
        t.row([
            h.cause.words().into(),
            h.verdict.words().into(),
            h.needs.clone(),
            h.seen.clone(),
            if signs.is_empty() { "none".into() } else { signs.join("; ") },
            if numbers.is_empty() { "–".into() } else { numbers },
        ]);
    }
    flow.table(&t);
    flow.small(&format!("Signs: {} ({}).", SIGN_SOURCE.work, SIGN_SOURCE.place));
    flow.heading("What is done first");
    for (i, step) in wall.first.iter().enumerate() {
        flow.paragraph(&format!("{}. {step}", i + 1));
    }
    flow.small(&format!("From: {FIRST_SOURCE}."));
    flow.heading("What takes its place");
    flow.paragraph(&wall.replaced);
}

fn measured(plan: &Plan, wall: &OldWallPlan) -> Vec<(String, String)> {
    let (s, u) = (&wall.found.seen, wall.found.units);
    let length = |l: Option<Length>| l.map_or("not measured".to_string(), |l| u.length(l));
    let job = plan.job.standing.iter().find(|o| o.id == wall.id);
    let mut facts = vec![("Made of".to_string(), s.made.words().to_string()), ("Holds".into(), u.length(s.height))];
    if let Some(p) = &s.posts {
        let posts = format!(
            "{} by {}, every {}, in holes of {}",
            u.length(p.breadth),
            u.length(p.depth),
            u.length(p.spacing),
            u.length(p.hole)
        );
        facts.push(("Posts".into(), posts));
        facts.push(("Soft at the ground".into(), length(p.soft)));
    } else {
        facts.push(("Thickness".into(), length(s.thickness)));
    }
    facts.push(("Foot below the ground in front".into(), length(s.below)));
    facts.push(("Lean".into(), u.length(s.lean)));
    if let Some((size, at)) = s.bulge {
        facts.push(("Belly".into(), format!("{} at {}", u.length(size), u.length(at))));
    }
    if let Some(age) = s.age {
        facts.push(("Age".into(), format!("{} years", trim(age, 0))));
    }
    let signs: Vec<&str> = wall.back.signs.iter().map(|s| s.words()).collect();
    facts.push(("Signs".into(), if signs.is_empty() { "none".into() } else { signs.join(", ") }));
    if let Some(o) = job {
        let when = if o.looked_at.is_empty() { "day not told" } else { o.looked_at.as_str() };
        facts.push(("Looked at".into(), when.into()));
        if !o.note.is_empty() {
            facts.push(("Note".into(), o.note.clone()));
        }
    }
    facts
}
