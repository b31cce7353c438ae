//! The first sheet: the ground in plan, the figures that matter, and what else is in the set.

use groundhold_draw::{self as draw, Align};
use groundhold_finding::Severity;
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, trim};

use crate::drawings::wall_name;
use crate::finding_sheets::{WEIGHTS, ink};
use crate::leaf::{BLACK, GREY, HAIR, Leaf, Style};
use crate::paper_size::{Frame, Paper};
use crate::typeface::cut_to;
use crate::wrap::lines;

/// Width of the column with the figures.
const COLUMN: f64 = 118.0;
/// Most lines of the list of findings that the first sheet shows.
const MOST_FINDINGS: usize = 6;

/// A text column that is filled downwards.
struct Column<'a> {
    leaf: &'a mut Leaf,
    frame: Frame,
    y: f64,
}

impl Column<'_> {
    fn says(&mut self, text: &str, indent: f64, style: &Style) {
        for line in lines(text, self.frame.width() - indent, style) {
            if self.y + style.leading() > self.frame.bottom {
                return;
            }
            self.leaf.text(&line, self.frame.left + indent, self.y, Align::Start, style);
            self.y += style.leading();
        }
    }
    fn heading(&mut self, text: &str) {
        self.y += 3.0;
        if self.y + 12.0 > self.frame.bottom {
            self.y = self.frame.bottom;
            return;
        }
        self.leaf.rule((self.frame.left, self.y), (self.frame.right, self.y), 0.15, HAIR);
        self.y += 1.4;
        self.says(text, 0.0, &Style::BODY.bold().sized(3.5));
        self.y += 0.6;
    }
    fn fact(&mut self, word: &str, says: &str) {
        const INDENT: f64 = 34.0;
        let style = Style::BODY;
        if self.y + style.leading() > self.frame.bottom {
            return;
        }
        let word = cut_to(word, INDENT - 2.0, style.size, style.weight);
        self.leaf.text(&word, self.frame.left, self.y, Align::Start, &style.ink(GREY));
        self.says(says, INDENT, &style);
    }
}

/// The cover. `sheets` are part, title and number of all the others.
pub(crate) fn leaf(plan: &Plan, sheets: &[(&'static str, String, usize)]) -> Leaf {
    let mut leaf = Leaf::new(Paper::A3, "Summary", "Summary");
    let f = Paper::A3.content();
    let left = Frame { right: f.right - COLUMN - 8.0, ..f };
    let about = &plan.job.about;
    let large = Style::BODY.bold().sized(8.0);
    leaf.text(&cut_to(&about.name, left.width(), large.size, large.weight), left.left, left.top, Align::Start, &large);
    let under = format!("{}  ·  for {}", about.place, about.client);
    let grey = Style::BODY.sized(3.6);
    leaf.text(
        &cut_to(&under, left.width(), grey.size, grey.weight),
        left.left,
        left.top + 11.5,
        Align::Start,
        &Style::BODY.sized(3.6).ink(GREY),
    );
    let head = 20.0;
    let scene = draw::plan_view(plan, left.width(), left.height() - head);
    leaf.items.extend(scene.items.iter().map(|i| i.moved(left.left, left.top + head)));
    leaf.scale = scene.scale;
    let frame = Frame { left: f.right - COLUMN, ..f };
    leaf.rule((frame.left - 4.0, f.top), (frame.left - 4.0, f.bottom), 0.15, HAIR);
    let mut column = Column { leaf: &mut leaf, frame, y: frame.top };
    verdict(&mut column, plan);
    figures(&mut column, plan);
    contents(&mut column, sheets);
    leaf
}

fn verdict(c: &mut Column, plan: &Plan) {
    let count = |s: Severity| plan.findings.iter().filter(|f| f.severity == s).count();
    let words = match plan.gravest() {
        Some(Severity::Stop) => "Do not build this yet",
        Some(Severity::Ask) => "Ask before this is built",
        Some(Severity::Watch) => "Needs care",
        Some(Severity::Note) | None => "Nothing speaks against it in what was checked",
    };
    let colour = plan.gravest().map_or(BLACK, ink);
    c.says(words, 0.0, &Style::BODY.bold().sized(5.6).ink(colour));
    c.y += 1.0;
    let counted: Vec<String> = WEIGHTS.iter().map(|(s, _)| format!("{} {}", count(*s), s.word())).collect();
    c.says(&format!("Findings: {}.", counted.join(", ")), 0.0, &Style::BODY);
    c.y += 1.0;
    for f in plan.findings.iter().filter(|f| f.severity >= Severity::Ask).take(MOST_FINDINGS) {
        c.says(
            &format!("{}  {}: {}", f.kind.code, f.place, f.kind.name),
            0.0,
            &Style::BODY.sized(2.8).ink(ink(f.severity)),
        );
    }
    let grave = count(Severity::Stop) + count(Severity::Ask);
    if grave > MOST_FINDINGS {
        c.says(&format!("and {} more on the sheets of findings", grave - MOST_FINDINGS), 0.0, &Style::SMALL);
    }
}

fn figures(c: &mut Column, plan: &Plan) {
    let u = plan.job.about.units;
    c.heading("Figures");
    for pad in &plan.shaped.pads {
        let name = plan.job.pads.iter().find(|p| p.id == pad.id).map_or("", |p| p.name.as_str());
        let middle = groundhold_quantity::Point::m(
            pad.polygon.corners().iter().map(|p| p.x).sum::<f64>() / pad.polygon.corners().len().max(1) as f64,
            pad.polygon.corners().iter().map(|p| p.y).sum::<f64>() / pad.polygon.corners().len().max(1) as f64,
        );
        c.fact(
            format!("{} {name}", pad.id).trim_end(),
            &format!("{} at level {}", u.area(pad.area), u.level(pad.plane.level_at(middle))),
        );
    }
    for w in &plan.walls {
        let l = &w.layout;
        let says = format!(
            "{} long, retains at most {}, {}{}",
            u.run(l.length),
            u.length(l.retained),
            l.made_of,
            most_used(w)
        );
        c.fact(&wall_name(plan, &w.id, &w.of), &says);
    }
    for s in &plan.shaped.flights {
        c.fact(
            &format!("Steps {}", s.id),
            &format!("{} risers of {}, going {}", s.risers, u.length(s.riser), u.length(s.going)),
        );
    }
    for r in &plan.shaped.ramps {
        c.fact(&format!("Ramp {}", r.id), &format!("{} long at {}", u.run(r.length), u.slope(r.gradient)));
    }
    let d = &plan.dug;
    c.fact("Dig", &format!("{} in the bank; {} loads away", u.volume(d.dug()), d.loads_away()));
    let p = &plan.programme;
    c.fact(
        "Time",
        &format!("{} working days with {} people", trim(p.length_days.1, 1), trim(plan.job.order.people, 0)),
    );
    let q = &plan.quote;
    let missing =
        if q.is_complete() { String::new() } else { format!(", without {} items that have no price", q.missing.len()) };
    c.fact("Price", &format!("{} {} with tax{missing}", plan.job.about.currency.0, q.total.shown()));
    let near = plan.job.near.iter().filter(|n| n.clear.is_some_and(|d| d > Length::ZERO)).count();
    if near > 0 {
        c.fact("Near", &format!("{near} to keep clear of: see the record"));
    }
}

/// The check that uses most of what is there.
fn most_used(w: &WallPlan) -> String {
    let governing = w.verdict.checks.iter().filter(|c| c.governs);
    let most = governing.reduce(|a, b| if b.utilisation > a.utilisation { b } else { a });
    most.map_or(String::new(), |c| format!("; most used: {}, {} %", c.kind.words(), trim(c.utilisation * 100.0, 0)))
}

fn contents(c: &mut Column, sheets: &[(&'static str, String, usize)]) {
    c.heading("Sheets");
    let style = Style::BODY.sized(2.8);
    let mut i = 0;
    while let Some((part, title, first)) = sheets.get(i) {
        let run = sheets[i..].iter().take_while(|s| s.0 == *part && s.1 == *title).count();
        let numbers = if run == 1 { format!("{first}") } else { format!("{first}–{}", first + run - 1) };
        if c.y + style.leading() > c.frame.bottom {
            return;
        }
        let (x, y) = (c.frame.left, c.y);
        c.leaf.text(&numbers, x + 14.0, y, Align::End, &style.ink(GREY));
        c.says(title, 17.0, &style);
        i += run;
    }
}
