//! The column beside the plan: north, scale, what the lines mean, what speaks against it.

use groundhold_finding::{Finding, Severity};
use groundhold_plan::Plan;
use groundhold_plan::job::{Event, NearKind};

use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLACK, BLUE, CHAIN, EARTH, EXISTING, FIGURE, GREEN, GREY, HAIR, HIDDEN, MEDIUM, NAME, RED, SMALL, STONE_WASH,
    THICK, THIN, TIMBER_WASH, area, circle, line, oblong, stroke,
};
use crate::scene::{At, Item, Label, Pen, Weight};
use crate::type_metrics::width;
use crate::view::{View, north, scale_bar};

pub(crate) fn column(plan: &Plan, view: &View, f: &Frame, noted: &[&Finding], out: &mut Vec<Item>) {
    out.extend(north(At::mm(f.left + 6.0, f.top + 13.0), 16.0));
    out.push(Label::new(At::mm(f.left + 16.0, f.top + 9.0), format!("Scale {}", view.words()), NAME).bold().into());
    let (bar, _) = scale_bar(view, plan.job.about.units, At::mm(f.left + 16.0, f.top + 13.0));
    let wide = Frame::around(&texts(&bar)).is_some_and(|b| b.right + 6.0 > f.right);
    if wide {
        // Too long to stand beside the needle.
        let (bar, _) = scale_bar(view, plan.job.about.units, At::mm(f.left + 1.5, f.top + 24.0));
        out.extend(bar);
    } else {
        out.extend(bar);
    }
    let mut y = f.top + 35.0;
    y = lines_key(plan, f, y, out);
    let metric = plan.job.about.units == groundhold_quantity::Units::Metric;
    let words = if metric {
        "Dimensions in mm, levels and coordinates in m."
    } else {
        "Dimensions in feet and inches, levels and coordinates in ft."
    };
    out.push(Label::new(At::mm(f.left, y + 1.0), words, SMALL).ink(GREY).into());
    y += 7.0;
    against(f, y, noted, out);
}

fn texts(items: &[Item]) -> Vec<At> {
    items.iter().filter_map(|i| if let Item::Text(l) = i { Some(l.at) } else { None }).collect()
}

/// What a sign means, whether it is used, and how it is drawn at a height.
type Row<'a> = (&'a str, bool, &'a dyn Fn(f64) -> Vec<Item>);

/// One sample line for each kind of sign that is used.
fn lines_key(plan: &Plan, f: &Frame, mut y: f64, out: &mut Vec<Item>) -> f64 {
    let near = groundhold_plan::everything_near(&plan.job);
    let has = |k: &dyn Fn(&NearKind) -> bool| near.iter().any(|n| k(&n.kind));
    let rows: [Row; 14] = [
        ("existing contour", true, &|y| vec![sample(f, y, Pen::new(THIN, EARTH).dashed(EXISTING))]),
        ("pad edge, nosing, ramp edge", true, &|y| vec![sample(f, y, Pen::new(MEDIUM, BLACK))]),
        (
            "batter, strokes run downhill",
            plan.shaped.grounds.iter().any(|g| g.kind == groundhold_shape::GroundKind::Batter),
            &|y| {
                let top = Pen::new(THIN, EARTH);
                let mut v = vec![stroke(At::mm(f.left, y - 2.2), At::mm(f.left + 11.0, y - 2.2), top)];
                for k in 0..8 {
                    let x = f.left + 0.8 + f64::from(k) * 1.4;
                    let deep = if k % 2 == 0 { 2.9 } else { 1.3 };
                    v.push(stroke(At::mm(x, y - 2.2), At::mm(x, y - 2.2 + deep), Pen::new(HAIR, EARTH)));
                }
                v
            },
        ),
        ("wall: boards, post, hole", plan.walls.iter().any(|w| !w.layout.posts.is_empty()), &|y| {
            let post = oblong(f.left + 4.2, y - 0.5, f.left + 6.8, y + 1.2);
            let mut v = vec![
                circle(At::mm(f.left + 5.5, y + 0.2), 2.2, Some(Pen::new(HAIR, GREY).dashed(&[0.9, 0.6])), None),
                area(oblong(f.left, y - 1.5, f.left + 11.0, y - 0.5), Some(Pen::new(MEDIUM, BLACK)), Some(TIMBER_WASH)),
                area(post.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(TIMBER_WASH)),
            ];
            v.extend(hatch::end_grain(&post, BLACK));
            v
        }),
        ("wall of stone or concrete", plan.walls.iter().any(|w| w.layout.posts.is_empty()), &|y| {
            let ring = oblong(f.left, y - 1.8, f.left + 11.0, y + 0.8);
            let mut v = vec![area(ring.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(STONE_WASH))];
            v.extend(hatch::stones(&ring, 2.2));
            v
        }),
        ("post already built", plan.walls.iter().any(|w| w.layout.posts.iter().any(|p| p.built)), &|y| {
            vec![area(oblong(f.left + 4.2, y - 2.0, f.left + 6.8, y + 0.6), None, Some(BLACK))]
        }),
        ("wall as found, arrow as it leans", !plan.job.standing.is_empty(), &|y| {
            let body = oblong(f.left, y - 1.5, f.left + 11.0, y);
            vec![area(body, Some(Pen::new(MEDIUM, BLACK).dashed(HIDDEN)), Some(crate::pens::STONE_WASH))]
        }),
        ("drain, arrow with the flow", !plan.drained.pipes.is_empty(), &|y| {
            vec![sample(f, y, Pen::new(MEDIUM, BLUE).dashed(CHAIN))]
        }),
        ("service", has(&|k| matches!(k, NearKind::Service(_))), &|y| vec![sample(f, y, Pen::new(MEDIUM, RED))]),
        (
            "strip to keep clear",
            near.iter().any(|n| n.clear.is_some() && matches!(n.kind, NearKind::Service(_))),
            &|y| hatch::lines(&[oblong(f.left, y - 2.4, f.left + 11.0, y + 0.6)], 135.0, 1.6, &Pen::new(HAIR, RED)),
        ),
        ("boundary", has(&|k| *k == NearKind::Boundary), &|y| {
            vec![sample(f, y, Pen::new(THICK, BLACK).dashed(&[4.0, 1.2, 0.8, 1.2]))]
        }),
        ("roots protected", has(&|k| matches!(k, NearKind::Tree { .. })), &|y| {
            vec![sample(f, y, Pen::new(THIN, GREEN).dashed(HIDDEN))]
        }),
        ("known peg; peg to be set", !plan.setout.pegs.is_empty(), &|y| {
            let mut v = vec![circle(At::mm(f.left + 2.0, y - 0.8), 1.2, Some(Pen::new(MEDIUM, BLACK)), None)];
            for x in [2.0, 8.0] {
                v.push(stroke(
                    At::mm(f.left + x - 1.7, y - 0.8),
                    At::mm(f.left + x + 1.7, y - 0.8),
                    Pen::new(THIN, BLACK),
                ));
                v.push(stroke(At::mm(f.left + x, y - 2.5), At::mm(f.left + x, y + 0.9), Pen::new(THIN, BLACK)));
            }
            v
        }),
        ("found on site", plan.job.record.iter().any(|e| matches!(e.event, Event::Find(_))), &|y| {
            super::marks::find_mark(At::mm(f.left + 5.5, y - 0.4), 1)
        }),
    ];
    for (words, used, draw) in rows {
        if !used {
            continue;
        }
        out.extend(draw(y));
        out.push(Label::new(At::mm(f.left + 14.0, y), words, FIGURE).into());
        y += 5.2;
    }
    y
}

fn sample(f: &Frame, y: f64, pen: Pen) -> Item {
    line(vec![At::mm(f.left, y - 0.8), At::mm(f.left + 11.0, y - 0.8)], pen)
}

/// The gravest findings, numbered as on the drawing.
fn against(f: &Frame, mut y: f64, noted: &[&Finding], out: &mut Vec<Item>) {
    if noted.is_empty() || y + 12.0 > f.bottom {
        return;
    }
    out.push(Label::new(At::mm(f.left, y), "Marked on the drawing", FIGURE).bold().into());
    y += 4.4;
    for (i, n) in noted.iter().enumerate() {
        let sign = if n.severity == Severity::Stop { "!" } else { "?" };
        let place = n.place.to_string();
        let text = format!("{}, {place} ({})", n.kind.name, n.kind.code);
        let lines = wrap(&text, SMALL, f.width() - 8.0);
        if y + lines.len() as f64 * 2.8 + 3.0 > f.bottom && i + 1 < noted.len()
            || y + lines.len() as f64 * 2.8 > f.bottom
        {
            let more = format!("and {} more, see the findings", noted.len() - i);
            out.push(Label::new(At::mm(f.left, y), more, SMALL).ink(GREY).into());
            return;
        }
        let number = Label::new(At::mm(f.left, y), format!("{sign}{}", i + 1), SMALL).bold().ink(RED);
        out.push(number.into());
        for l in lines {
            out.push(Label::new(At::mm(f.left + 7.0, y), l, SMALL).into());
            y += 2.8;
        }
        y += 0.7;
    }
}

/// Breaks a text into lines no wider than so many millimetres.
pub(crate) fn wrap(text: &str, size: f64, most: f64) -> Vec<String> {
    let mut lines: Vec<String> = vec![];
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(l) if width(&format!("{l} {word}"), size, Weight::Regular) <= most => {
                l.push(' ');
                l.push_str(word);
            }
            _ => lines.push(word.to_string()),
        }
    }
    lines
}
