//! In what order? Tasks with their days, hold points with what is looked at, cautions.

use groundhold_build::Cautioned;
use groundhold_plan::Plan;
use groundhold_quantity::trim;

use crate::earthwork_schedule::whole;
use crate::flow::Flow;
use crate::leaf::{GREY, HAIR, Leaf, Style};
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

/// The order of work and its hold points.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let p = &plan.programme;
    let mut flow = Flow::new(Paper::A4, "Order of work", "Order of work");
    flow.title("Order of work");
    let (low, likely, high) = p.length_days;
    flow.paragraph(&format!(
        "{} people: {} working days, {} when all goes well, {} when it does not. Without end of people it would still take {} days. Person-hours: {} ({} to {}).",
        trim(plan.job.order.people, 1),
        trim(likely, 1),
        trim(low, 1),
        trim(high, 1),
        trim(p.shortest_days, 1),
        trim(p.hours.likely.to_h(), 0),
        trim(p.hours.low.to_h(), 0),
        trim(p.hours.high.to_h(), 0),
    ));
    flow.small("Days are working days counted from the first morning. Float is how many days a task may slip without moving the end. H marks a hold point that stands before the task.");
    let mut t = Table::new(vec![
        figures(""),
        sentences("Task"),
        figures("Quantity"),
        figures("People"),
        figures("Person-hours"),
        words("Days"),
        figures("Wait after"),
        figures("Float"),
        words("H"),
        sentences("After"),
    ]);
    for (i, task) in p.tasks.iter().enumerate() {
        let what = if task.how.is_empty() { task.name.clone() } else { format!("{}\n{}", task.name, task.how) };
        let days = if task.first_day() == task.last_day() { format!("{}", task.first_day()) } else { format!("{}–{}", task.first_day(), task.last_day()) };
        let number = |id: &str| p.tasks.iter().position(|k| k.id == id).map_or(id.to_string(), |n| (n + 1).to_string());
        let after: Vec<String> = task.needs.iter().map(|n| number(&n.task)).collect();
        t.row([
            format!("{}", i + 1),
            what,
            format!("{} {}", trim(task.quantity, 2), task.unit).trim().to_string(),
            task.people.to_string(),
            trim(task.hours.likely.to_h(), 1),
            days,
            if task.wait_days > 0.0 { format!("{} d", trim(task.wait_days, 1)) } else { "–".into() },
            if task.critical { "none".into() } else { format!("{} d", trim(task.float, 1)) },
            task.hold_point.map_or(String::new(), |h| format!("H{h}")),
            after.join(", "),
        ]);
    }
    flow.table(&t);
    hold_points(&mut flow, plan);
    flow.finish()
}

fn hold_points(flow: &mut Flow, plan: &Plan) {
    let p = &plan.programme;
    if p.hold_points.is_empty() {
        return;
    }
    flow.heading("Hold points");
    flow.small("Look, measure and write down before the work goes on.");
    let style = Style::BODY;
    for h in &p.hold_points {
        flow.need(style.leading() * (h.checks.len() as f64 + 1.0).min(6.0));
        let of = if h.element.is_empty() { String::new() } else { format!(", {}", h.element) };
        flow.hanging(&format!("H{}", h.number), &style.bold(), &format!("Before {}{of}", h.name), 11.0, &style.bold());
        for c in &h.checks {
            flow.hanging("          ☐", &style, c, 11.0, &style);
        }
        flow.lines_of(&format!("Source: {}", h.source), 11.0, &Style::SMALL);
        flow.gap(1.6);
    }
}

/// The cautions that bite on this job.
pub(crate) fn cautions(plan: &Plan) -> Vec<Leaf> {
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
    let tasks = c.tasks.iter().map(|id| plan.programme.tasks.iter().find(|t| t.id == *id).map_or(id.as_str(), |t| t.name.as_str()));
    let tasks: Vec<&str> = tasks.collect();
    if !tasks.is_empty() {
        flow.lines_of(&format!("At: {}.", tasks.join("; ")), 0.0, &Style::SMALL);
    }
    flow.lines_of(&format!("Source: {}", c.caution.source), 0.0, &Style::SMALL);
    flow.gap(1.6);
}

/// What the record says: built, found, noted.
pub(crate) fn record(plan: &Plan) -> Vec<Leaf> {
    use groundhold_plan::job::{Event, Find};
    let u = plan.job.about.units;
    let mut flow = Flow::new(Paper::A4, "Record", "Record");
    flow.title("Record");
    flow.paragraph("What was found and what was built, in the order in which it was written down. Entries are added, never changed. Keep this sheet with the house papers for the next person who digs here.");
    let mut diary = Table::new(vec![words("When"), words("What"), sentences("With which measures"), sentences("Note")]);
    for e in &plan.job.record {
        let (what, measures) = match &e.event {
            Event::Built(b) => (format!("built {}", whole(&b.element)), built(b, u)),
            Event::Note => ("note".into(), String::new()),
            Event::Find(Find::Rock { wall, post, chainage, depth }) => {
                let at = chainage.map_or(String::new(), |c| format!(" at {}", u.run(c)));
                ("found rock".into(), format!("{wall} post {post}{at}, {} below the ground in front", u.length(*depth)))
            }
            Event::Find(Find::Service { what, line, depth }) => {
                let places: Vec<String> = line.iter().map(|p| format!("{:.2} / {:.2} m", p.x, p.y)).collect();
                ("found a service".into(), format!("{what}, {} deep, at {} (east / north)", u.length(*depth), places.join(", ")))
            }
            Event::Find(Find::Water { element, depth }) => ("found water".into(), format!("at {}, {} below the ground", whole(element), u.length(*depth))),
            Event::Find(Find::LevelError { point, level }) => ("level put right".into(), format!("point {point} is {}", u.level(*level))),
        };
        diary.row([e.at.replace('T', " "), what, measures, e.note.clone()]);
    }
    if diary.is_empty() {
        flow.paragraph("Nothing has been written down yet.");
    }
    flow.table(&diary);
    let services = buried(plan);
    if !services.is_empty() {
        flow.heading("What lies buried or stands near");
        flow.table(&services);
    }
    flow.heading("As built");
    flow.small("Fill in on site, or say it to the tool; what stands is held fixed when the job is planned again.");
    let mut t = Table::new(vec![words("Post"), figures("Planned top"), figures("Planned hole depth"), words("Top as built"), words("Hole as dug"), words("Date, who")]);
    for w in &plan.walls {
        t.group(format!("Wall {}", w.id));
        for p in &w.layout.posts {
            let hole = w.layout.holes.iter().find(|h| h.post == p.number).map_or("–".into(), |h| u.length(h.depth));
            let stands = |s: String| if p.built { s } else { "______________".into() };
            t.row([format!("{} post {}", w.id, p.number), u.level(p.top), hole.clone(), stands(u.level(p.top)), stands(hole), stands("in the record".into())]);
        }
    }
    flow.table(&t);
    flow.finish()
}

fn built(b: &groundhold_plan::job::AsBuilt, u: groundhold_quantity::Units) -> String {
    let posts: Vec<String> = b
        .posts
        .iter()
        .map(|p| format!("post {}: top {}, hole {} deep, ⌀ {}", p.number, u.level(p.top), u.length(p.depth), u.length(p.diameter)))
        .collect();
    if posts.is_empty() { b.says.clone() } else { posts.join("; ") }
}

fn buried(plan: &Plan) -> Table {
    use groundhold_plan::job::NearKind;
    let u = plan.job.about.units;
    let mut t = Table::new(vec![words("Id"), sentences("What"), sentences("Where, east / north in m"), figures("Depth"), figures("Keep clear"), sentences("Known from")]);
    for n in &plan.job.near {
        let what = match &n.kind {
            NearKind::Service(s) => s.clone(),
            NearKind::Tree { trunk } => format!("tree, trunk {}", u.length(*trunk)),
            NearKind::Boundary => "boundary".into(),
            NearKind::Footing(s) | NearKind::Other(s) => s.clone(),
            NearKind::Street => "street or public path".into(),
        };
        let places: Vec<String> = n.line.iter().map(|p| format!("{:.2}\u{a0}/\u{a0}{:.2}", p.x, p.y).replace('-', "−")).collect();
        let age = n.age_days.map_or(String::new(), |d| format!(", {} days old", trim(d, 0)));
        let source = if n.source.is_empty() { "not said".to_string() } else { n.source.clone() };
        let source = if source.contains("days old") { source } else { format!("{source}{age}") };
        t.row([
            n.id.clone(),
            what,
            places.join(", "),
            n.depth.map_or("–".into(), |d| u.length(d)),
            n.clear.map_or("–".into(), |d| u.length(d)),
            source,
        ]);
    }
    t
}
