//! The ground as it is and as it will be: contours, pads, batters.

use groundhold_quantity::{Length, Point, Vector, math};
use groundhold_shape::{Ground, GroundKind};
use groundhold_surface::contours_of_facets;

use super::Board;
use crate::hatch;
use crate::naming::{level, uphill};
use crate::pens::{EARTH, EXISTING, FIGURE, FINE, HAIR, MEDIUM, NAME, PALE, PAVED_WASH, THIN, area, line, stroke};
use crate::scene::{At, Item, Pen};

/// Distance between contours on paper, at least, in millimetres.
const APART: f64 = 8.0;

/// The finished pieces: washes, outlines of pads, hachures of batters.
pub(crate) fn pieces(b: &mut Board) {
    let grounds = &b.plan.shaped.grounds;
    let wash = |k: GroundKind| match k {
        GroundKind::Batter => crate::pens::WHITE,
        _ => PAVED_WASH,
    };
    let mut items: Vec<Item> = grounds
        .iter()
        .map(|g| area(b.view.line(&g.facet.ring), Some(Pen::new(0.05, wash(g.kind))), Some(wash(g.kind))))
        .collect();
    for g in grounds.iter().filter(|g| g.kind == GroundKind::Batter) {
        items.extend(hachures(b, g));
    }
    items.extend(edges(b));
    b.items.extend(items);
    for i in 0..b.plan.shaped.pads.len() {
        pad(b, i);
    }
}

fn pad(b: &mut Board, i: usize) {
    let plan = b.plan;
    let pad = &plan.shaped.pads[i];
    let wish = plan.job.pads.iter().find(|p| p.id == pad.id);
    let ring = b.view.line(pad.polygon.corners());
    let mut items = vec![area(ring, Some(Pen::new(MEDIUM, crate::pens::BLACK)), None)];
    let middle = b.view.at(pad.polygon.centroid());
    let name = wish.map_or(String::new(), |w| w.name.clone());
    let units = plan.job.about.units;
    let level_there = level(units, pad.plane.level_at(pad.polygon.centroid()));
    let mut lines = vec![
        (format!("{} {name}", pad.id), NAME, true),
        (format!("▽ {level_there}"), NAME, true),
        (units.area(pad.area), FIGURE, false),
    ];
    let build_up = wish.map_or(Length::ZERO, |w| w.build_up);
    if build_up > Length::ZERO {
        lines.push((format!("stone {} thick", units.length(build_up)), FIGURE, false));
    }
    for l in plan.job.loads.iter().filter(|l| l.on == pad.id) {
        lines.push((format!("{}, {}", l.what, units.pressure(l.value)), FIGURE, false));
    }
    let mut y = middle.y - 6.0;
    for (text, size, bold) in lines {
        let l = crate::scene::Label::new(At::mm(middle.x, y), text, size).middle().halo();
        items.push(if bold { l.bold() } else { l }.into());
        y += size * 1.45;
    }
    // Two sides are enough for a rectangle; of other shapes all are measured.
    let corners = pad.polygon.corners();
    let n = corners.len();
    let sides = if b.quiet || n > pad.corners.len() {
        // A curved outline is set out by its arcs.
        0
    } else if n == 4 {
        2
    } else {
        n.min(12)
    };
    for k in 0..sides {
        let (p, q) = (corners[k], corners[(k + 1) % n]);
        let text = crate::dimension::figure(units, groundhold_quantity::distance(p, q));
        items.extend(crate::dimension::dimension(b.view.at(p), b.view.at(q), 5.0, &text));
    }
    b.add(&pad.id, &format!("{} {name}, level {level_there}", pad.id), items);
}

/// Strokes down a batter, long and short by turns, from its upper edge.
fn hachures(b: &Board, g: &Ground) -> Vec<Item> {
    let down = g.facet.plane.downhill();
    if down.length() < 0.5 {
        return vec![];
    }
    let angle = math::atan2(down.y, down.x).to_degrees();
    let ring = b.view.line(&g.facet.ring);
    let rings = [ring];
    let long = hatch::strokes(&rings, angle, 2.8);
    let short = hatch::strokes(&[rings[0].iter().map(|p| shift(*p, down)).collect()], angle, 2.8);
    let pen = Pen::new(HAIR, EARTH);
    let falls = |a: At, c: At| (c.x - a.x) * down.x - (c.y - a.y) * down.y >= 0.0;
    let order = |(a, c): (At, At)| if falls(a, c) { (a, c) } else { (c, a) };
    let mut out: Vec<Item> = long.into_iter().map(order).map(|(a, c)| stroke(a, c, pen.clone())).collect();
    out.extend(short.into_iter().map(order).map(|(a, c)| {
        let (a, c) = (shift(a, down * -1.0), shift(c, down * -1.0));
        stroke(a, At::mm(a.x + (c.x - a.x) * 0.45, a.y + (c.y - a.y) * 0.45), pen.clone())
    }));
    out
}

/// Half a hachure's distance to the side.
fn shift(p: At, down: Vector) -> At {
    At::mm(p.x + down.y * 1.4, p.y + down.x * 1.4)
}

/// Edges between finished pieces of different kinds, and between finished and existing ground.
fn edges(b: &Board) -> Vec<Item> {
    let shaped = &b.plan.shaped;
    let mut out = vec![];
    for g in shaped.grounds.iter().filter(|g| matches!(g.kind, GroundKind::Batter | GroundKind::Pad | GroundKind::Ramp))
    {
        let ring = &g.facet.ring;
        for i in 0..ring.len() {
            let (p, q) = (ring[i], ring[(i + 1) % ring.len()]);
            let d = (q - p).length();
            let n = (d / 0.25).ceil().clamp(1.0, 200.0) as usize;
            let out_of = (q - p).unit().left() * -0.01;
            let mut run: Option<(Point, Point)> = None;
            for k in 0..n {
                let (a, c) = (p.towards(q, k as f64 / n as f64), p.towards(q, (k + 1) as f64 / n as f64));
                let beyond = shaped.ground_at(a.towards(c, 0.5) + out_of);
                if beyond.is_none_or(|o| o.kind != g.kind || o.of != g.of) {
                    run = Some((run.map_or(a, |r| r.0), c));
                } else if let Some((s, e)) = run.take() {
                    out.push((s, e));
                }
            }
            out.extend(run);
        }
    }
    let pen = Pen::new(FINE, EARTH);
    out.into_iter().map(|(p, q)| stroke(b.view.at(p), b.view.at(q), pen.clone())).collect()
}

/// Contours: dashed for the ground as it is, full for finished slopes.
pub(crate) fn contours(b: &mut Board) {
    let (_, steep) = uphill(b.plan);
    let (unit, sign) = crate::view::ground_unit(b.plan.job.about.units);
    let interval = [0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0]
        .into_iter()
        .map(|i| i * unit)
        .find(|i| steep < 1e-6 || b.view.mm(*i / steep) >= APART)
        .unwrap_or(500.0);
    let shaped = &b.plan.shaped;
    let mut figures = vec![];
    let mut items = vec![];
    for c in b.plan.survey.ground.contours(Length::m(interval)) {
        let mut points = c.line.clone();
        if c.closed {
            points.extend(points.first().copied());
        }
        let nth = (c.level.to_m() / interval).round() as i64;
        let main = nth % 5 == 0;
        let width = if main { THIN } else { FINE };
        for (inside, run) in runs(&points, &|p| shaped.ground_at(p).is_some()) {
            let paper = b.view.line(&run);
            let ink = if inside { PALE } else { EARTH };
            if !inside && main {
                figures.push((paper.clone(), crate::naming::level_short(b.plan.job.about.units, c.level)));
            }
            items.push(line(paper, Pen::new(width, ink).dashed(EXISTING)));
        }
    }
    let slopes: Vec<_> =
        shaped.grounds.iter().filter(|g| g.kind == GroundKind::Ramp).map(|g| g.facet.clone()).collect();
    for c in contours_of_facets(&slopes, Length::m(interval)) {
        items.push(line(b.view.line(&c.line), Pen::new(FINE, EARTH)));
    }
    b.figures = figures;
    b.items.push(crate::pens::group(
        "",
        format!("Existing contours every {} {sign}", groundhold_quantity::trim(interval / unit, 2)),
        items,
    ));
}

/// A line in runs that lie inside and outside of something.
fn runs(points: &[Point], inside: &dyn Fn(Point) -> bool) -> Vec<(bool, Vec<Point>)> {
    let mut out: Vec<(bool, Vec<Point>)> = vec![];
    for w in points.windows(2) {
        let n = ((w[1] - w[0]).length() / 0.2).ceil().clamp(1.0, 100.0) as usize;
        for k in 0..n {
            let (a, c) = (w[0].towards(w[1], k as f64 / n as f64), w[0].towards(w[1], (k + 1) as f64 / n as f64));
            let here = inside(a.towards(c, 0.5));
            match out.last_mut().filter(|l| l.0 == here) {
                Some(l) => l.1.push(c),
                None => out.push((here, vec![a, c])),
            }
        }
    }
    out
}
