//! What must be heeded: services with their strips, boundaries, trees, footings.

use groundhold_plan::Plan;
use groundhold_plan::job::{Near, NearKind};
use groundhold_quantity::{Length, Point};
use groundhold_working::Value;

use super::Board;
use crate::hatch;
use crate::naming::{along, beside, reading};
use crate::pens::{
    BLACK, BOUNDARY, EARTH, FIGURE, GREEN, HAIR, HIDDEN, MEDIUM, RED, THICK, THIN, circle, group, line, stroke,
};
use crate::scene::{Label, Pen};

/// Everything near, finds among it.
fn near(plan: &Plan) -> Vec<Near> {
    groundhold_plan::everything_near(&plan.job)
}

/// Easement strips, lightly hatched, under everything else.
pub(crate) fn strips(b: &mut Board) {
    for n in near(b.plan) {
        let (NearKind::Service(what), Some(clear)) = (&n.kind, n.clear) else { continue };
        if n.line.len() < 2 || clear <= Length::ZERO {
            continue;
        }
        let left = beside(&n.line, clear.to_m());
        let right = beside(&n.line, -clear.to_m());
        let ring: Vec<Point> = left.iter().copied().chain(right.iter().rev().copied()).collect();
        let paper = b.window.clip_area(&b.view.line(&ring));
        let mut items = hatch::lines(&[paper], 135.0, 3.2, &Pen::new(HAIR, RED));
        for side in [&left, &right] {
            items.push(line(b.view.line(side), Pen::new(HAIR, RED).dashed(HIDDEN)));
        }
        b.add(&n.id, &format!("{what}: keep clear {}", b.plan.job.about.units.length(clear)), items);
    }
}

/// The lines and trees themselves.
pub(crate) fn lines(b: &mut Board) {
    for n in near(b.plan) {
        match &n.kind {
            NearKind::Service(what) => service(b, &n, what),
            NearKind::Boundary => boundary(b, &n),
            NearKind::Tree { trunk } => tree(b, &n, *trunk),
            NearKind::Footing(what) | NearKind::Other(what) => edge(b, &n, what),
            NearKind::Street => edge(b, &n, "street"),
        }
    }
}

fn service(b: &mut Board, n: &Near, what: &str) {
    let units = b.plan.job.about.units;
    let paper = b.view.line(&n.line);
    let mut items = vec![line(paper.clone(), Pen::new(MEDIUM, RED))];
    let letter: String = what.chars().next().map(|c| c.to_uppercase().collect()).unwrap_or_default();
    // The letter of what runs in it, every so often on the line.
    for part in b.window.inset(3.0).clip_line(&paper) {
        let pts: Vec<Point> = part.iter().map(|p| Point::m(p.x, -p.y)).collect();
        let long: f64 = pts.windows(2).map(|w| (w[1] - w[0]).length()).sum();
        let n = (long / 34.0).floor().clamp(1.0, 60.0) as usize;
        for k in 0..n {
            let Some((p, v)) = along(&pts, (k as f64 + 0.5) / n as f64) else { continue };
            let at = crate::scene::At::mm(p.x, -p.y + FIGURE * 0.36);
            items
                .push(Label::new(at, letter.clone(), FIGURE).middle().bold().ink(RED).turned(reading(v)).halo().into());
        }
    }
    if n.line.len() == 1 {
        items.push(circle(paper[0], 1.2, Some(Pen::new(MEDIUM, RED)), None));
    }
    b.add(&n.id, what, items);
    let (at, _) = seen(b, &n.line, 0.8);
    let wish = b.label(at, format!("{} {what}", n.id));
    let mut w =
        std::mem::replace(wish, crate::placer::Wish::new(Default::default(), "")).ink(RED).rank(60).of(&n.id).bold();
    if let Some(d) = n.depth {
        w = w.and(format!("top {} down", units.length(d)));
    }
    if let Some(c) = n.clear {
        w = w.and(format!("keep {} clear", units.run(c)));
    }
    *wish = w;
}

/// A place on a line within the window, at a share of its visible length.
fn seen(b: &Board, points: &[Point], share: f64) -> (Point, bool) {
    let parts = b.window.inset(4.0).clip_line(&b.view.line(points));
    let Some(part) = parts.first() else { return (points.first().copied().unwrap_or_default(), false) };
    let pts: Vec<Point> = part.iter().map(|p| b.view.back(*p)).collect();
    along(&pts, share).map_or((pts[0], true), |(p, _)| (p, true))
}

fn boundary(b: &mut Board, n: &Near) {
    let items = vec![line(b.view.line(&n.line), Pen::new(THICK, BLACK).dashed(BOUNDARY))];
    b.add(&n.id, "boundary", items);
    let (at, _) = seen(b, &n.line, 0.72);
    b.label(at, format!("{} boundary", n.id)).rank = 40;
}

fn tree(b: &mut Board, n: &Near, trunk: Length) {
    let Some(at) = n.line.first().copied() else { return };
    let units = b.plan.job.about.units;
    let p = b.view.at(at);
    let r = b.view.mm(trunk.to_m() / 2.0).max(0.8);
    let mut items = vec![circle(p, r, Some(Pen::new(MEDIUM, EARTH)), Some(EARTH))];
    // The sign of a tree: strokes out from the trunk, long and short.
    for k in 0..12 {
        let a = std::f64::consts::TAU * f64::from(k) / 12.0;
        let (c, s) = (groundhold_quantity::math::cos(a), groundhold_quantity::math::sin(a));
        let out = r + if k % 2 == 0 { 3.4 } else { 2.2 };
        let at = |d: f64| crate::scene::At::mm(p.x + c * d, p.y + s * d);
        items.push(stroke(at(r + 0.5), at(out), Pen::new(THIN, GREEN)));
    }
    let mut text = format!("trunk {}", units.length(trunk));
    if let Some(radius) = root_radius(trunk) {
        let ring = Pen::new(THIN, GREEN).dashed(HIDDEN);
        items.push(circle(p, b.view.mm(radius.to_m()), Some(ring), None));
        text = format!("{text}, roots to {}", units.run(radius));
    }
    b.items.push(group(&n.id, "tree and the ground in which its roots are protected", items));
    let w = b.label(at, format!("{} tree", n.id));
    *w = w.clone().and(text).ink(GREEN).rank(30).clear(r + 3.4).of(&n.id);
}

/// Radius of the protected roots, by the working of the plan.
fn root_radius(trunk: Length) -> Option<Length> {
    let working = groundhold_plan::working("near/root-radius")?;
    match working.work_in_order(vec![trunk.to_m().into()]).ok()?.values.first()? {
        Value::One(r) => Some(Length::m(*r)),
        _ => None,
    }
}

fn edge(b: &mut Board, n: &Near, what: &str) {
    let mut items = vec![line(b.view.line(&n.line), Pen::new(MEDIUM, BLACK))];
    if n.line.len() == 1 {
        items.push(circle(b.view.at(n.line[0]), 1.2, Some(Pen::new(MEDIUM, BLACK)), None));
    }
    b.add(&n.id, what, items);
    let (at, _) = seen(b, &n.line, 0.5);
    b.label(at, format!("{} {what}", n.id)).rank = 35;
}
