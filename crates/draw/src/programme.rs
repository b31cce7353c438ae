//! In what order is it built, on which working days, and where is it looked at before going on?

use groundhold_build::Task;
use groundhold_plan::Plan;

use crate::pens::{
    BLACK, EARTH, FIGURE, FINE, GREY, HAIR, MEDIUM, PALE, RED, SMALL, THIN, WHITE, area, group, line, oblong, stroke,
};
use crate::scene::{At, Ink, Item, Label, Pen, Scene, Weight};
use crate::type_metrics;

/// Fill of an ordinary bar.
const BAR: Ink = Ink(0xd9, 0xcf, 0xbd);

/// The order of work as bars over working days.
pub(crate) fn programme_bars(plan: &Plan, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, "Order of work");
    let p = &plan.programme;
    if p.tasks.is_empty() || width < 80.0 || height < 30.0 {
        return scene;
    }
    let days = p.tasks.iter().map(|t| t.finish + t.wait_days).fold(0.0, f64::max).ceil().max(1.0);
    let names = (width * 0.34).min(96.0);
    let (left, right, top) = (names + 4.0, width - 4.0, 12.0);
    let step = ((height - top - 13.0) / p.tasks.len() as f64).min(7.2);
    let day = (right - left) / days;
    let x = |d: f64| left + d * day;
    let y = |i: usize| top + 2.0 + i as f64 * step;
    scene.items.extend(calendar(days, &x, top, y(p.tasks.len()), day));
    scene.items.extend(ties(&p.tasks, &x, &y, step));
    for (i, t) in p.tasks.iter().enumerate() {
        scene.items.push(row(t, i, y(i), step, left, names, &x));
    }
    let foot = height - 3.0;
    scene.items.extend(key(foot, width));
    scene
}

/// Columns of working days.
fn calendar(days: f64, x: &dyn Fn(f64) -> f64, top: f64, bottom: f64, day: f64) -> Vec<Item> {
    let every = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0].into_iter().find(|e| e * day >= 5.0).unwrap_or(500.0);
    let mut items = vec![Label::new(At::mm(x(0.0), top - 6.5), "working day", SMALL).ink(GREY).into()];
    let mut d = 0.0;
    while d <= days + 1e-9 && items.len() < 2000 {
        items.push(stroke(At::mm(x(d), top - 1.0), At::mm(x(d), bottom), Pen::new(HAIR, PALE)));
        if d < days {
            let at = At::mm(x(d) + every.min(days - d) * day / 2.0, top - 1.8);
            let text =
                if every > 1.0 { format!("{}–{}", d + 1.0, (d + every).min(days)) } else { format!("{}", d + 1.0) };
            let wide = type_metrics::width(&text, SMALL, Weight::Regular) < every.min(days - d) * day - 0.4;
            if wide {
                items.push(Label::new(at, text, SMALL).middle().into());
            }
        }
        d += every;
    }
    items.push(line(vec![At::mm(x(0.0), top), At::mm(x(days), top)], Pen::new(THIN, BLACK)));
    items
}

/// Which task waits for which: only the needs that decide, so that the picture can be read.
fn ties(tasks: &[Task], x: &dyn Fn(f64) -> f64, y: &dyn Fn(usize) -> f64, step: f64) -> Vec<Item> {
    let mut items = vec![];
    for (i, t) in tasks.iter().enumerate() {
        for n in &t.needs {
            let Some(k) = tasks.iter().position(|o| o.id == n.task) else { continue };
            let o = &tasks[k];
            let decides = (o.finish + n.wait_days - t.start).abs() < 0.02;
            if !decides || k >= i {
                continue;
            }
            let (from, to) = (At::mm(x(o.finish), y(k) + step * 0.5), At::mm(x(t.start), y(i) + step * 0.14));
            let bend = At::mm(to.x, from.y);
            items.push(line(vec![from, bend, to], Pen::new(FINE, GREY)));
            let tip = vec![to, At::mm(to.x - 0.5, to.y - 1.0), At::mm(to.x + 0.5, to.y - 1.0)];
            items.push(area(tip, None, Some(GREY)));
        }
    }
    items
}

fn row(t: &Task, i: usize, y: f64, step: f64, left: f64, names: f64, x: &dyn Fn(f64) -> f64) -> Item {
    let size = FIGURE.min(step * 0.62);
    let base = y + step * 0.5 + size * 0.36;
    let mut items = vec![];
    items.push(Label::new(At::mm(1.0, base), format!("{}", i + 1), size).ink(GREY).into());
    let name = shortened(&t.name, size, names - 8.0);
    let label = Label::new(At::mm(7.5, base), name, size);
    items.push(if t.critical { label.bold() } else { label }.into());
    let (a, b) = (x(t.start), x(t.finish).max(x(t.start) + 0.5));
    let (top, bottom) = (y + step * 0.18, y + step * 0.82);
    let fill = if t.critical { EARTH } else { BAR };
    items.push(area(oblong(a, top, b, bottom), Some(Pen::new(THIN, BLACK)), Some(fill)));
    // What it may slip, as a thin tail; what must be waited for, as dots.
    if t.float > 0.01 && !t.critical {
        let m = (top + bottom) / 2.0;
        let end = x(t.finish + t.float);
        items.push(stroke(At::mm(b, m), At::mm(end, m), Pen::new(FINE, GREY)));
        items.push(stroke(At::mm(end, m - 0.8), At::mm(end, m + 0.8), Pen::new(FINE, GREY)));
    }
    if t.wait_days > 0.0 {
        let m = bottom - 0.2;
        items.push(stroke(
            At::mm(b, m),
            At::mm(x(t.finish + t.wait_days), m),
            Pen::new(MEDIUM, EARTH).dashed(crate::pens::DOTS),
        ));
    }
    if let Some(h) = t.hold_point {
        let c = At::mm((a - 2.1).max(left - 1.8), y + step * 0.5);
        let r = (step * 0.42).min(2.1);
        let diamond = vec![At::mm(c.x, c.y - r), At::mm(c.x + r, c.y), At::mm(c.x, c.y + r), At::mm(c.x - r, c.y)];
        items.push(area(diamond, Some(Pen::new(THIN, RED)), Some(WHITE)));
        let s = r * 0.95;
        items.push(Label::new(At::mm(c.x, c.y + s * 0.36), h.to_string(), s).middle().bold().ink(RED).into());
    }
    group(t.element.clone(), format!("{}: day {} to {}", t.name, t.first_day(), t.last_day()), items)
}

/// As much of a text as fits, with an ellipsis.
fn shortened(text: &str, size: f64, most: f64) -> String {
    if type_metrics::width(text, size, Weight::Bold) <= most {
        return text.to_string();
    }
    let mut s = String::new();
    for c in text.chars() {
        s.push(c);
        if type_metrics::width(&format!("{s}…"), size, Weight::Bold) > most {
            s.pop();
            break;
        }
    }
    format!("{}…", s.trim_end())
}

fn key(y: f64, width: f64) -> Vec<Item> {
    let mut items = vec![];
    let mut x = 2.0;
    let put = |draw: Vec<Item>, words: &str, wide: f64, x: &mut f64, items: &mut Vec<Item>| {
        let next = *x + wide + 6.0 + type_metrics::width(words, SMALL, Weight::Regular);
        // A narrow sheet has room for the first signs only.
        if next - 4.0 > width {
            return;
        }
        items.extend(draw.iter().map(|i| i.moved(*x, y)));
        items.push(Label::new(At::mm(*x + wide + 1.5, y), words, SMALL).into());
        *x = next;
    };
    let bar = |fill| vec![area(oblong(0.0, -2.4, 8.0, 0.4), Some(Pen::new(THIN, BLACK)), Some(fill))];
    put(bar(EARTH), "may not slip (bold)", 8.0, &mut x, &mut items);
    let mut slack = bar(BAR);
    slack.push(stroke(At::mm(8.0, -1.0), At::mm(12.0, -1.0), Pen::new(FINE, GREY)));
    slack.push(stroke(At::mm(12.0, -1.8), At::mm(12.0, -0.2), Pen::new(FINE, GREY)));
    put(slack, "may slip as far as the tail", 12.0, &mut x, &mut items);
    let dots = vec![stroke(At::mm(0.0, -0.8), At::mm(8.0, -0.8), Pen::new(MEDIUM, EARTH).dashed(crate::pens::DOTS))];
    put(dots, "waits", 8.0, &mut x, &mut items);
    let c = At::mm(2.1, -0.9);
    let diamond = vec![At::mm(c.x, c.y - 1.9), At::mm(c.x + 1.9, c.y), At::mm(c.x, c.y + 1.9), At::mm(c.x - 1.9, c.y)];
    put(
        vec![area(diamond, Some(Pen::new(THIN, RED)), Some(WHITE))],
        "hold point: look before you go on",
        4.2,
        &mut x,
        &mut items,
    );
    items
}
