//! What really happened, what lies buried, and what is still to be written down?

use groundhold_plan::job::{AsBuilt, BuiltPost, Event, Find, NearKind};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Point, Units, trim};

use crate::earthwork_schedule::whole;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

/// What the record says: built, found, noted.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let u = plan.job.about.units;
    let mut flow = Flow::new(Paper::A4, "Record", "Record");
    flow.title("Record");
    flow.paragraph("What was found and what was built, in the order in which it was written down. Entries are added, never changed. Keep this sheet with the house papers for the next person who digs here.");
    let mut diary = Table::new(vec![words("When"), words("What"), sentences("With which measures"), sentences("Note")]);
    for e in &plan.job.record {
        let (what, measures) = match &e.event {
            Event::Built(b) => (format!("built {}", whole(&b.element)), built(b, u)),
            Event::Note => ("note".into(), String::new()),
            Event::Find(Find::Rock { wall, post, chainage, at, depth }) => {
                let along = chainage.map_or(String::new(), |c| format!(" at {}", u.run(c)));
                let place = at.map_or(String::new(), |p| format!(", {} (east / north)", place(p, u)));
                let deep = u.length(*depth);
                ("found rock".into(), format!("{wall} post {post}{along}{place}, {deep} below the ground in front"))
            }
            Event::Find(Find::Service { what, line, depth }) => {
                let places: Vec<String> = line.iter().map(|p| place(*p, u)).collect();
                (
                    "found a service".into(),
                    format!("{what}, {} deep, at {} (east / north)", u.length(*depth), places.join(", ")),
                )
            }
            Event::Find(Find::Water { element, depth }) => {
                ("found water".into(), format!("at {}, {} below the ground", whole(element), u.length(*depth)))
            }
            Event::Find(Find::LevelError { point, level }) => {
                ("level put right".into(), format!("point {point} is {}", u.level(*level)))
            }
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
    let mut t = Table::new(vec![
        words("Post or strip"),
        figures("Planned top"),
        figures("Planned hole or base depth"),
        words("Top as built"),
        words("Hole as dug"),
        words("Date, who"),
    ]);
    for w in plan.walls.iter().filter(|w| !w.layout.posts.is_empty()) {
        t.group(format!("Wall {}", w.id));
        for p in &w.layout.posts {
            let hole = w.layout.holes.iter().find(|h| h.post == p.number).map_or("–".into(), |h| u.length(h.depth));
            let blank = || "______________".to_string();
            let (top, dug, when) = as_built(plan, w, p.chainage)
                .map_or((blank(), blank(), blank()), |(b, when)| (u.level(b.top), u.length(b.depth), when));
            t.row([format!("{} post {}", w.id, p.number), u.level(p.top), hole, top, dug, when]);
        }
    }
    for w in plan.walls.iter().filter(|w| w.layout.posts.is_empty()) {
        t.group(format!("Wall {}", w.id));
        for s in &w.layout.strips {
            let blank = || "______________".to_string();
            let depth = u.length(s.front - s.base);
            t.row([format!("{} {}", w.id, s.on), u.level(s.top), depth, blank(), blank(), blank()]);
        }
    }
    flow.table(&t);
    flow.finish()
}

/// East and north of a place.
fn place(p: Point, u: Units) -> String {
    format!("{} / {}", u.run(Length::m(p.x)), u.run(Length::m(p.y)))
}

/// A post is the one in the record when it stands this near to it along the wall.
const SAME_POST: Length = Length::mm(50.0);

/// What the record says of the post at a chainage, and when it was written down.
fn as_built(plan: &Plan, wall: &WallPlan, chainage: Length) -> Option<(BuiltPost, String)> {
    let posts = plan.job.record.iter().rev().filter_map(|e| match &e.event {
        Event::Built(b) if b.element == wall.of || b.element == wall.id => {
            Some(b.posts.iter().map(move |p| (*p, e.at.replace('T', " "))))
        }
        _ => None,
    });
    posts.flatten().find(|(p, _)| (p.chainage - chainage).abs() < SAME_POST)
}

fn built(b: &AsBuilt, u: Units) -> String {
    let posts: Vec<String> = b
        .posts
        .iter()
        .map(|p| {
            format!(
                "post {}: top {}, hole {} deep, ⌀ {}",
                p.number,
                u.level(p.top),
                u.length(p.depth),
                u.length(p.diameter)
            )
        })
        .collect();
    if posts.is_empty() { b.says.clone() } else { posts.join("; ") }
}

fn buried(plan: &Plan) -> Table {
    let u = plan.job.about.units;
    let mut t = Table::new(vec![
        words("Id"),
        sentences("What"),
        sentences("Where, east / north"),
        figures("Depth"),
        figures("Keep clear"),
        sentences("Known from"),
    ]);
    for n in &plan.job.near {
        let what = match &n.kind {
            NearKind::Service(s) => s.clone(),
            NearKind::Tree { trunk } => format!("tree, trunk {}", u.length(*trunk)),
            NearKind::Boundary => "boundary".into(),
            NearKind::Footing(s) | NearKind::Other(s) => s.clone(),
            NearKind::Street => "street or public path".into(),
        };
        let places: Vec<String> = n.line.iter().map(|p| place(*p, u).replace(' ', "\u{a0}")).collect();
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
