//! Pegs, levels, section lines, finds and findings.

use groundhold_finding::{Finding, Severity};
use groundhold_plan::job::{Event, Find};
use groundhold_plan::rock_along;
use groundhold_quantity::{Length, Point};

use super::Board;
use crate::naming::{SITE, level, level_short, section_letter, section_place};
use crate::pens::{
    BLACK, EARTH, FIGURE, FINE, GREY, MEDIUM, RED, SMALL, THIN, WHITE, area, circle, group, line, stroke,
};
use crate::placer::Wish;
use crate::scene::{At, Item, Label, Pen};
use crate::view::section_mark;

/// Known pegs and the base line, and the pegs to be set.
pub(crate) fn pegs(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    let pegs = &plan.setout.pegs;
    if let [p, q, ..] = &pegs[..] {
        let pen = Pen::new(FINE, BLACK).dashed(&[8.0, 1.5, 1.5, 1.5]);
        b.items.push(line(vec![b.view.at(p.at), b.view.at(q.at)], pen));
    }
    for p in pegs {
        let at = b.view.at(p.at);
        b.add(&p.id, &format!("peg {}", p.id), cross(at, 1.5, true));
        let mut w = Wish::new(at, format!("peg {}", p.id)).bold().rank(55).clear(1.7).of(&p.id);
        if let Some(l) = p.level {
            w = w.and(level(units, l));
        }
        if b.window.contains(at) {
            b.wishes.push(w);
        } else {
            off_sheet(b, &p.id, at, p.at);
        }
    }
    for row in &plan.setout.rows {
        let at = b.view.at(row.mark.at);
        b.add(&row.mark.id, &row.mark.what, cross(at, 1.1, false));
        let mut w = Wish::new(at, row.mark.id.clone()).size(SMALL).rank(15).clear(1.2).of(&row.mark.id).optional(50.0);
        if let Some(l) = row.mark.wanted {
            w = w.and(level(units, l));
        }
        b.wishes.push(w);
    }
}

/// A peg beyond the sheet: an arrow at the edge that points to it.
fn off_sheet(b: &mut Board, id: &str, at: At, ground: Point) {
    let edge = b.window.inset(2.0);
    let middle = b.window.middle();
    let Some(end) = edge.clip_line(&[middle, at]).last().and_then(|l| l.last().copied()) else { return };
    let (dx, dy) = (at.x - middle.x, at.y - middle.y);
    let long = groundhold_quantity::math::hypot(dx, dy).max(1e-9);
    let from = At::mm(end.x - dx / long * 5.0, end.y - dy / long * 5.0);
    b.items.extend(crate::view::arrow(&[from, end], Pen::new(FINE, BLACK)));
    let words = format!("to peg {id} ({:.2}, {:.2})", ground.x, ground.y).replace('-', "−");
    b.wishes.push(Wish::new(from, words).size(SMALL).rank(54));
}

fn cross(at: At, r: f64, ring: bool) -> Vec<Item> {
    let pen = Pen::new(if ring { MEDIUM } else { THIN }, BLACK);
    let mut items = vec![
        stroke(At::mm(at.x - r * 1.4, at.y), At::mm(at.x + r * 1.4, at.y), pen.clone()),
        stroke(At::mm(at.x, at.y - r * 1.4), At::mm(at.x, at.y + r * 1.4), pen.clone()),
    ];
    if ring {
        items.insert(0, circle(at, r, Some(pen), Some(WHITE)));
    }
    items
}

/// Measured spots with their levels, where there is room.
pub(crate) fn spots(b: &mut Board) {
    let units = b.plan.job.about.units;
    for p in &b.plan.survey.points {
        if b.plan.setout.pegs.iter().any(|q| q.id == p.id) {
            continue;
        }
        let at = b.view.at(p.at);
        let pen = Pen::new(FINE, EARTH);
        b.items.push(stroke(At::mm(at.x - 0.7, at.y - 0.7), At::mm(at.x + 0.7, at.y + 0.7), pen.clone()));
        b.items.push(stroke(At::mm(at.x - 0.7, at.y + 0.7), At::mm(at.x + 0.7, at.y - 0.7), pen));
        if b.plan.shaped.ground_at(p.at).is_none() {
            let w = Wish::new(at, level_short(units, p.level)).size(1.8).ink(GREY).rank(-10).clear(0.8);
            b.wishes.push(w.optional(4.5));
        }
    }
}

/// Where the sections are cut.
pub(crate) fn section_lines(b: &mut Board) {
    let plan = b.plan;
    let mut marks: Vec<(String, Point, Point)> = vec![];
    if let Some((p, q)) = crate::site_section::line(plan) {
        marks.push((SITE.into(), p, q));
    }
    for wall in &plan.walls {
        let Some(place) = section_place(wall) else { continue };
        let reach = place.facing * b.view.metres(11.0);
        marks.push((section_letter(plan, &wall.id), place.at - reach, place.at + reach));
    }
    for (letter, p, q) in marks {
        let Some((s, e)) = ends(b, p, q) else { continue };
        let (dx, dy) = (e.x - s.x, e.y - s.y);
        let long = groundhold_quantity::math::hypot(dx, dy);
        if long < 10.0 {
            continue;
        }
        let (ux, uy) = (dx / long, dy / long);
        // Both ends look the same way, to the left of the line.
        let look = (uy, -ux);
        let mut items = vec![];
        for (at, inward) in [(s, 1.0), (e, -1.0)] {
            let foot = At::mm(at.x + ux * inward * 2.6, at.y + uy * inward * 2.6);
            let tip = At::mm(at.x + ux * inward * 7.0, at.y + uy * inward * 7.0);
            items.push(stroke(foot, tip, Pen::new(MEDIUM, BLACK)));
            items.extend(section_mark(at, &letter, look));
        }
        b.items.push(group(format!("section {letter}"), format!("section {letter}"), items));
    }
}

/// The visible part of a section line, with room for its marks.
fn ends(b: &Board, p: Point, q: Point) -> Option<(At, At)> {
    let parts = b.window.inset(6.0).clip_line(&[b.view.at(p), b.view.at(q)]);
    let part = parts.first()?;
    Some((*part.first()?, *part.last()?))
}

/// A place on a wall by chainage of its own line.
fn on_wall(b: &Board, wall: &str, chainage: Length) -> Option<Point> {
    let w = b.plan.wall(wall)?;
    (w.case.stations.len() > 1).then(|| groundhold_hold::Line::new(&w.case.stations).at(chainage).at)
}

/// What was found on site: numbered triangles, as they stand in the record.
pub(crate) fn finds(b: &mut Board) {
    let plan = b.plan;
    for (i, entry) in plan.job.record.iter().enumerate() {
        let Event::Find(find) = &entry.event else { continue };
        let (at, what) = match find {
            Find::Rock { wall, at, depth, .. } => {
                let along = || on_wall(b, wall, rock_along(find, plan.wall(wall)?)?);
                (at.or_else(along), format!("rock at {}", plan.job.about.units.length(*depth)))
            }
            Find::Service { what, line, depth } => {
                (line.first().copied(), format!("{what}, {} down", plan.job.about.units.length(*depth)))
            }
            Find::Water { element, depth } => {
                (anchor(b, element, ""), format!("water at {}", plan.job.about.units.length(*depth)))
            }
            Find::LevelError { point, level: l } => {
                let p = plan.survey.points.iter().find(|p| p.id == *point).map(|p| p.at);
                (p, format!("level is {}", level(plan.job.about.units, *l)))
            }
        };
        let Some(at) = at.map(|p| b.view.at(p)) else { continue };
        let items = find_mark(at, i + 1);
        b.add(&format!("F{}", i + 1), &what, items);
        // A pipe or cable has its label as a service.
        if !matches!(find, Find::Service { .. }) {
            b.wishes.push(Wish::new(at, format!("F{} {what}", i + 1)).ink(RED).rank(58).clear(3.6));
        }
    }
}

/// A triangle with a number in it.
pub(crate) fn find_mark(at: At, number: usize) -> Vec<Item> {
    let tri = vec![At::mm(at.x, at.y - 3.4), At::mm(at.x + 3.0, at.y + 1.8), At::mm(at.x - 3.0, at.y + 1.8)];
    vec![
        area(tri, Some(Pen::new(MEDIUM, RED)), Some(WHITE)),
        Label::new(At::mm(at.x, at.y + 1.2), number.to_string(), SMALL).middle().bold().ink(RED).into(),
    ]
}

/// Where an element is, for marks.
fn anchor(b: &Board, element: &str, on: &str) -> Option<Point> {
    let plan = b.plan;
    let shaped = &plan.shaped;
    if let Some(w) = plan.walls.iter().find(|w| w.id == element || w.of == element) {
        let post = on.strip_prefix("post ").and_then(|n| n.parse::<usize>().ok()).and_then(|n| w.layout.post(n));
        let strip = w.layout.strips.iter().find(|s| s.on == on);
        let line = |c: Length| on_wall(b, &w.id, c);
        return post.map(|p| p.at).or_else(|| strip.and_then(|s| line(s.middle()))).or_else(|| {
            crate::naming::along(&crate::naming::wall_line(w).iter().map(|p| p.1).collect::<Vec<_>>(), 0.4).map(|p| p.0)
        });
    }
    let pad = shaped.pads.iter().find(|p| p.id == element).map(|p| p.polygon.centroid());
    let flight = || shaped.flights.iter().find(|f| f.id == element).map(|f| f.foot.towards(f.top, 0.6));
    let ramp =
        || shaped.ramps.iter().find(|r| r.id == element).and_then(|r| crate::naming::along(&r.path, 0.6)).map(|p| p.0);
    let near = || plan.job.near.iter().find(|n| n.id == element).and_then(|n| n.line.first().copied());
    let drain = || (element == "drain").then(|| plan.drained.pipes.first()?.points.last().map(|p| p.at)).flatten();
    pad.or_else(flight).or_else(ramp).or_else(near).or_else(drain)
}

/// Numbered marks for what must not be built so or needs asking; gives the findings in the order of their numbers.
pub(crate) fn findings<'p>(b: &mut Board<'p>) -> Vec<&'p Finding> {
    let plan = b.plan;
    let mut noted: Vec<&Finding> = vec![];
    for f in plan.findings.iter().filter(|f| f.severity >= Severity::Ask) {
        noted.push(f);
        let Some(at) = anchor(b, &f.place.element, &f.place.on).map(|p| b.view.at(p)) else { continue };
        if b.window.contains(at) {
            let number = noted.len().to_string();
            let mark = if f.severity == Severity::Stop { format!("!{number}") } else { format!("?{number}") };
            let w = Wish::new(at, mark).size(FIGURE).bold().ink(RED).rank(57).clear(2.5).of(&f.place.element);
            b.wishes.push(w.optional(60.0));
        }
    }
    noted
}
