//! What is each wall made of? Posts and holes, boards and other pieces, fixings.

use groundhold_hold::{Amount, Role};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Units, Volume, trim};

use crate::drawings::wall_name;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};

/// Posts, holes, boards and fixings of every wall.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    if plan.walls.is_empty() {
        return vec![];
    }
    let mut flow = Flow::new(Paper::A4, "Schedules", "Posts, holes and boards");
    flow.title("Posts, holes and boards");
    flow.paragraph(
        "Levels are above the job's datum. Depths of holes are below the finished ground in front and include the gravel under the post. Lengths are cut lengths.",
    );
    for wall in &plan.walls {
        of_wall(&mut flow, plan, wall);
    }
    flow.finish()
}

fn of_wall(flow: &mut Flow, plan: &Plan, wall: &WallPlan) {
    let u = plan.job.about.units;
    let l = &wall.layout;
    flow.heading(&wall_name(plan, &wall.id, &wall.of));
    let mut facts = vec![
        ("Length".into(), u.run(l.length)),
        (
            "Heights, at most".into(),
            format!(
                "retained {}, exposed {}, from the underside {}",
                u.length(l.retained),
                u.length(l.exposed),
                u.length(l.total)
            ),
        ),
    ];
    facts.extend(l.facts.iter().cloned());
    flow.facts(&facts);
    for table in [strips(wall, u), posts(wall, u), boards(wall, u), other_pieces(wall, u), bulk(wall, u)] {
        if !table.is_empty() {
            flow.table(&table);
        }
    }
    let mut fixings = Table::new(vec![words("Fixing"), figures("Pieces"), sentences("What for")]);
    for f in &l.fixings {
        fixings.row([f.item.clone(), f.count.to_string(), f.what.clone()]);
    }
    if !fixings.is_empty() {
        flow.table(&fixings);
    }
}

/// Strips of a wall without posts: where its base and its top step.
fn strips(wall: &WallPlan, u: Units) -> Table {
    let (mm, m) = (mm(u), m(u));
    let mut t = Table::new(vec![
        words("Strip"),
        figures(&format!("From{m}")),
        figures(&format!("To{m}")),
        figures("Underside"),
        figures("Top"),
        figures("Ground in front"),
        figures(&format!("Retained{mm}")),
        figures(&format!("Base wide{mm}")),
        figures("Courses"),
    ]);
    for s in wall.layout.strips.iter().filter(|_| wall.layout.posts.is_empty()) {
        t.row([
            s.on.clone(),
            metres(s.chainage.0, u),
            metres(s.chainage.1, u),
            u.level(s.base),
            u.level(s.top),
            u.level(s.front),
            short(s.retained, u),
            short(s.width, u),
            if s.courses > 0 { s.courses.to_string() } else { "–".into() },
        ]);
    }
    t
}

/// What is bought by measure.
fn bulk(wall: &WallPlan, u: Units) -> Table {
    let mut t = Table::new(vec![sentences("Material"), figures("Net"), sentences("What for")]);
    for b in &wall.layout.bulk {
        let amount = match b.amount {
            Amount::Count(n) => trim(n, 0),
            Amount::Length(l) => u.run(l),
            Amount::Area(a) => u.area(a),
            Amount::Volume(v) => u.volume(v),
            Amount::Mass(m) => u.mass(m),
        };
        t.row([b.item.clone(), amount, b.what.clone()]);
    }
    t
}

fn litres(v: Volume, u: Units) -> String {
    match u {
        Units::Metric => format!("{} l", trim(v.to_litre(), 0)),
        Units::Feet => u.volume(v),
    }
}

/// In the table's own unit, without the unit.
pub(crate) fn short(l: Length, u: Units) -> String {
    match u {
        Units::Metric => trim(l.to_mm(), 0),
        Units::Feet => u.length(l),
    }
}

/// ` mm` in a head of metric lengths; feet and inches carry their own.
pub(crate) fn mm(u: Units) -> &'static str {
    if u == Units::Metric { " mm" } else { "" }
}

/// Metres without the unit, for tables of metric runs.
pub(crate) fn metres(l: Length, u: Units) -> String {
    match u {
        Units::Metric => format!("{:.3}", l.to_m()).replace('-', "−"),
        Units::Feet => u.run(l),
    }
}
/// ` m` in a head of metric runs.
pub(crate) fn m(u: Units) -> &'static str {
    if u == Units::Metric { " m" } else { "" }
}

fn posts(wall: &WallPlan, u: Units) -> Table {
    let (mm, m) = (mm(u), m(u));
    let mut t = Table::new(vec![
        figures("Post"),
        figures(&format!("At{m}")),
        figures(&format!("Retained{mm}")),
        figures(&format!("Exposed{mm}")),
        figures(&format!("Top{}", if u == Units::Metric { " level" } else { "" })),
        figures("Ground in front"),
        figures(&format!("Embedded{mm}")),
        figures(&format!("Cut length{mm}")),
        figures(&format!("Hole ⌀{mm}")),
        figures(&format!("Hole depth{mm}")),
        figures("Concrete"),
        sentences("Remarks"),
    ]);
    let l = &wall.layout;
    for p in &l.posts {
        let hole = l.holes.iter().find(|h| h.post == p.number);
        let level = |v: groundhold_quantity::Level| match u {
            Units::Metric => format!("{:.3}", v.to_m()),
            Units::Feet => u.level(v),
        };
        let remarks: Vec<String> = [
            p.corner.then(|| "corner".to_string()),
            p.extra.then(|| "added on site".to_string()),
            p.built.then(|| "stands".to_string()),
            p.refused_at.map(|d| format!("stopped at {}", u.length(d))),
        ]
        .into_iter()
        .flatten()
        .collect();
        t.row([
            format!("{}", p.number),
            metres(p.chainage, u),
            short(p.retained, u),
            short(p.exposed, u),
            level(p.top),
            level(p.front),
            short(p.depth, u),
            short(p.length, u),
            short(p.hole_diameter, u),
            hole.map_or("–".into(), |h| short(h.depth, u)),
            hole.map_or("–".into(), |h| litres(h.concrete, u)),
            remarks.join(", "),
        ]);
    }
    t
}

fn boards(wall: &WallPlan, u: Units) -> Table {
    let (mm, m) = (mm(u), m(u));
    let mut t = Table::new(vec![
        words("Board"),
        figures("Course"),
        words("Posts"),
        figures(&format!("From{m}")),
        figures(&format!("To{m}")),
        figures(&format!("Cut length{mm}")),
        figures(&format!("Thickness{mm}")),
        figures("Underside"),
        figures("Upper edge"),
    ]);
    for b in &wall.layout.boards {
        t.row([
            b.mark.clone(),
            b.course.to_string(),
            format!("{}–{}", b.from_post, b.to_post),
            metres(b.chainage.0, u),
            metres(b.chainage.1, u),
            short(b.length, u),
            short(b.thickness, u),
            u.level(b.bottom),
            u.level(b.top),
        ]);
    }
    t
}

fn other_pieces(wall: &WallPlan, u: Units) -> Table {
    let mut t = Table::new(vec![
        words("Piece"),
        words("Role"),
        sentences("Material"),
        figures(&format!("Cut length{}", mm(u))),
    ]);
    let others = wall.layout.pieces.iter().filter(|p| !matches!(p.role, Role::Post | Role::Board));
    for p in others {
        t.row([p.mark.clone(), p.role.word().into(), p.material.clone(), short(p.length, u)]);
    }
    t
}
