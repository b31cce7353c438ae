//! Where exactly? Base line, pegs, tapes, diagonals, the post table and the strings.

use groundhold_plan::Plan;
use groundhold_quantity::{Angle, Length, Units, trim};
use groundhold_setout::{TOLERANCES, Tie};

use crate::earthwork_schedule::whole;
use crate::flow::Flow;
use crate::leaf::Leaf;
use crate::paper_size::Paper;
use crate::table::{Table, figures, sentences, words};
use crate::wall_schedule::{m, metres, mm, short};

pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let u = plan.job.about.units;
    let s = &plan.setout;
    let mut flow = Flow::new(Paper::A4, "Setting out", "Setting out");
    flow.title("Setting out");
    let base = match &s.base {
        Some((a, b, l)) => format!(
            "Base line from peg {a} to peg {b}, {}. Along is measured from {a}; off is positive to the left of the line.",
            u.run(*l)
        ),
        None => "There are no two known pegs, so there is no base line: give two pegs.".into(),
    };
    flow.paragraph(&format!(
        "{base} Tapes are held level. Staff columns are made for a reading of {} on the datum; whoever reads differently adds the difference.",
        u.run(s.staff_on_datum)
    ));
    pegs(&mut flow, plan, u);
    flow.heading("Points");
    flow.table(&points(plan, u));
    checks(&mut flow, plan, u);
    posts(&mut flow, plan, u);
    flow.heading("Tolerances");
    let mut t = Table::new(vec![sentences("Of what"), figures("Within"), sentences(""), sentences("Source")]);
    for tol in TOLERANCES {
        t.row([tol.what.into(), format!("± {}", u.length(tol.within)), tol.over.into(), tol.source.into()]);
    }
    flow.table(&t);
    flow.finish()
}

fn pegs(flow: &mut Flow, plan: &Plan, u: Units) {
    flow.heading("Known pegs");
    let datum = plan.job.measure.datum.as_ref();
    let mut t = Table::new(vec![
        words("Peg"),
        figures(&format!("East{}", m(u))),
        figures(&format!("North{}", m(u))),
        figures("Level"),
        sentences("Note"),
    ]);
    for p in &plan.setout.pegs {
        let note = datum.filter(|d| d.peg == p.id).map_or(String::new(), |d| format!("datum: {}", d.note));
        let level = p.level.map_or("–".into(), |l| u.level(l));
        t.row([p.id.clone(), metres(Length::m(p.at.x), u), metres(Length::m(p.at.y), u), level, note]);
    }
    flow.table(&t);
}

fn tapes(ties: &Option<(Tie, Tie)>, u: Units) -> (String, String) {
    let one = |t: &Tie| format!("{} {}", t.peg, metres(t.reads, u));
    ties.as_ref().map_or(("–".into(), "–".into()), |(a, b)| (one(a), one(b)))
}

fn optional(l: Option<Length>, u: Units) -> String {
    l.map_or("–".into(), |l| metres(l, u))
}

fn points(plan: &Plan, u: Units) -> Table {
    let m = m(u);
    let mut t = Table::new(vec![
        words("Point"),
        sentences("What"),
        figures(&format!("Along{m}")),
        figures(&format!("Off{m}")),
        figures(&format!("First tape{m}")),
        figures(&format!("Second tape{m}")),
        figures("They cross at"),
        figures(&format!("Check{m}")),
        figures("Level wanted"),
        figures(&format!("Dig (+) or fill (−){}", mm(u))),
        figures(&format!("Staff{m}")),
    ]);
    for r in &plan.setout.rows {
        let (a, b) = tapes(&r.ties, u);
        let crossing = r.crossing.map_or("–".into(), |c: Angle| format!("{}°", trim(c.to_deg(), 0)));
        t.row([
            r.mark.id.clone(),
            r.mark.what.clone(),
            optional(r.offset.map(|o| o.0), u),
            optional(r.offset.map(|o| o.1), u),
            a,
            b,
            crossing,
            r.check.as_ref().map_or("–".into(), |t| format!("{} {}", t.peg, metres(t.reads, u))),
            r.mark.wanted.map_or("–".into(), |l| u.level(l)),
            r.dig.map_or("–".into(), |d| short(d, u)),
            optional(r.staff, u),
        ]);
    }
    t
}

fn checks(flow: &mut Flow, plan: &Plan, u: Units) {
    let s = &plan.setout;
    if !s.diagonals.is_empty() {
        flow.heading("Diagonals");
        let mut t = Table::new(vec![
            words("Element"),
            words("From"),
            words("To"),
            figures(&format!("Reads{}", m(u))),
            sentences(""),
        ]);
        for d in &s.diagonals {
            let remark = if d.equal { "both diagonals read the same" } else { "the other diagonal reads differently" };
            t.row([whole(&d.element), d.between.0.clone(), d.between.1.clone(), metres(d.length, u), remark.into()]);
        }
        flow.table(&t);
    }
    if !s.squares.is_empty() {
        flow.heading("Right angles by tape");
        let mut t = Table::new(vec![
            words("At"),
            figures(&format!("Along one side{}", m(u))),
            figures(&format!("Along the other{}", m(u))),
            figures(&format!("Across{}", m(u))),
        ]);
        for q in &s.squares {
            t.row([q.corner.clone(), metres(q.a, u), metres(q.b, u), metres(q.across, u)]);
        }
        flow.table(&t);
    }
    if !s.offset_pegs.is_empty() {
        flow.heading("Pegs outside the dig");
        let mut t = Table::new(vec![
            words("Peg"),
            words("Line of"),
            figures(&format!("East{}", m(u))),
            figures(&format!("North{}", m(u))),
            figures(&format!("Beyond the end{}", m(u))),
        ]);
        for p in &s.offset_pegs {
            t.row([
                p.id.clone(),
                p.wall.clone(),
                metres(Length::m(p.at.x), u),
                metres(Length::m(p.at.y), u),
                metres(p.beyond, u),
            ]);
        }
        flow.table(&t);
    }
}

fn posts(flow: &mut Flow, plan: &Plan, u: Units) {
    if plan.setout.posts.is_empty() {
        return;
    }
    let (m, mm) = (m(u), mm(u));
    flow.heading("Post table");
    flow.small("Centres of posts. The running tape is held at the first post of each straight. Staff readings on the bottom of the hole and on the top of the post.");
    let mut t = Table::new(vec![
        words("Post"),
        figures(&format!("Along{m}")),
        figures(&format!("Off{m}")),
        figures(&format!("First tape{m}")),
        figures(&format!("Second tape{m}")),
        figures(&format!("To the last{mm}")),
        figures(&format!("Running tape{m}")),
        figures("String level"),
        figures(&format!("Hole below ground now{mm}")),
        figures(&format!("Hole below front{mm}")),
        figures(&format!("Staff, bottom{m}")),
        figures(&format!("Staff, top{m}")),
    ]);
    let mut wall = "";
    for p in &plan.setout.posts {
        if p.post.wall != wall {
            wall = &p.post.wall;
            t.group(format!("Wall {wall}"));
        }
        let (a, b) = tapes(&p.ties, u);
        t.row([
            format!("{} post {}{}", p.post.wall, p.post.number, if p.post.built { " stands" } else { "" }),
            optional(p.offset.map(|o| o.0), u),
            optional(p.offset.map(|o| o.1), u),
            a,
            b,
            p.spacing.map_or("–".into(), |l| short(l, u)),
            metres(p.running, u),
            u.level(p.string),
            p.hole_below_ground.map_or("–".into(), |l| short(l, u)),
            short(p.hole_below_front, u),
            optional(p.staff_bottom, u),
            optional(p.staff_top, u),
        ]);
    }
    flow.table(&t);
}
