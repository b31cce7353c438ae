//! Swales, the soakaway, shafts of the drains, and heaps: what water and soil need besides the walls.

use groundhold_drain::NodeKind;
use groundhold_quantity::{Point, Vector};

use super::Board;
use crate::naming::{fall, level};
use crate::pens::{
    BLUE, BLUE_WASH, DOTS, EARTH, EARTH_WASH, FINE, HIDDEN, MEDIUM, THIN, WHITE, area, circle, line, stroke,
};
use crate::placer::Wish;
use crate::scene::{At, Pen};
use crate::view::arrow;

pub(crate) fn heaps(b: &mut Board) {
    if b.quiet {
        return;
    }
    let units = b.plan.job.about.units;
    for h in &b.plan.groundwork.stockpiled.placed {
        let (at, radius) = (b.view.at(h.at), b.view.mm(h.radius.to_m()));
        let pen = Pen::new(FINE, EARTH).dashed(HIDDEN);
        b.add("", &format!("heap of {}", h.what), vec![circle(at, radius, Some(pen), Some(EARTH_WASH))]);
        let words = format!("heap: {}, {} loose, {} high", h.what, units.volume(h.volume), units.length(h.height));
        b.wishes.push(Wish::new(at, words).ink(EARTH).rank(12).clear(1.0).optional(40.0));
    }
}

pub(crate) fn swales(b: &mut Board) {
    for s in &b.plan.drained.swales {
        let points: Vec<Point> = s.points.iter().map(|p| p.at).collect();
        let half = s.width.to_m() / 2.0;
        let mut edges: Vec<Point> = beside(&points, half);
        edges.extend(beside(&points, -half).into_iter().rev());
        let middle = b.view.line(&points);
        let mut items = vec![
            area(b.view.line(&edges), Some(Pen::new(THIN, BLUE).dashed(DOTS)), Some(BLUE_WASH)),
            line(middle.clone(), Pen::new(MEDIUM, BLUE)),
        ];
        if let [.., from, to] = middle.as_slice() {
            items.extend(arrow(&[*from, *to], Pen::new(MEDIUM, BLUE)));
        }
        b.add("drain", &format!("swale above {}", s.wish.above), items);
        let units = b.plan.job.about.units;
        if let (Some(at), Some(end)) = (middle.get(middle.len() / 2), s.points.last()) {
            let words = format!("swale, {}, {} deep", fall(s.wish.fall), units.length(s.depth_least));
            b.wishes.push(Wish::new(*at, words).ink(BLUE).rank(42).of("drain"));
            let out = format!("swale ends, bed {}", level(units, end.invert));
            b.wishes.push(Wish::new(b.view.at(end.at), out).ink(BLUE).rank(30).clear(1.2).of("drain").optional(40.0));
        }
    }
}

/// The line moved to its left by so much, point by point.
fn beside(points: &[Point], by: f64) -> Vec<Point> {
    let n = points.len();
    let way = |i: usize| -> Vector { (points[(i + 1).min(n - 1)] - points[i.saturating_sub(1)]).unit() };
    (0..n).map(|i| points[i] + way(i).left() * by).collect()
}

pub(crate) fn shafts(b: &mut Board) {
    let units = b.plan.job.about.units;
    for pipe in &b.plan.drained.pipes {
        for n in pipe.nodes.iter().filter(|n| matches!(n.kind, NodeKind::Junction(_))) {
            let at = b.view.at(n.at);
            let ring = vec![
                At::mm(at.x - 1.2, at.y - 1.2),
                At::mm(at.x + 1.2, at.y - 1.2),
                At::mm(at.x + 1.2, at.y + 1.2),
                At::mm(at.x - 1.2, at.y + 1.2),
            ];
            let cross = stroke(At::mm(at.x - 1.2, at.y - 1.2), At::mm(at.x + 1.2, at.y + 1.2), Pen::new(FINE, BLUE));
            b.add("drain", "catch pit", vec![area(ring, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)), cross]);
            if !b.quiet {
                let words = format!("catch pit, invert {}", level(units, n.invert));
                b.wishes.push(Wish::new(at, words).ink(BLUE).rank(40).clear(1.6).of("drain").optional(40.0));
            }
        }
    }
    if let Some(s) = &b.plan.drained.soakaway {
        let (l, w) = (s.length.to_m() / 2.0, s.wish.width.to_m() / 2.0);
        let corners = [(-l, -w), (l, -w), (l, w), (-l, w)].map(|(x, y)| s.wish.at + Vector::m(x, y));
        let ring = b.view.line(&corners);
        b.add("drain", "soakaway", vec![area(ring, Some(Pen::new(MEDIUM, BLUE).dashed(HIDDEN)), Some(BLUE_WASH))]);
        let words = format!("soakaway {} × {}", units.run(s.length), units.run(s.wish.width));
        b.wishes.push(Wish::new(b.view.at(s.wish.at), words).ink(BLUE).rank(43).clear(2.0).of("drain"));
    }
}
