//! Where do walls stand already, what do they hold, and which way do they lean?

use groundhold_hold::standing::Made;
use groundhold_quantity::{Length, Point};

use super::Board;
use crate::naming::{along, beside};
use crate::pens::{BLACK, BUILT_WASH, HIDDEN, MEDIUM, RED, STONE_WASH, THIN, area, line, stroke};
use crate::scene::{At, Item, Pen};
use crate::view::arrow;

/// Thickness where none was measured, metres.
const THIN_BODY: f64 = 0.2;
/// Between the strokes on the side of the ground, and their length, millimetres.
const STROKES: (f64, f64) = (5.0, 1.6);
/// Length of the arrow that says which way it leans, millimetres.
const LEAN: f64 = 9.0;

/// Existing walls: a dashed body, strokes into the ground they hold, an arrow the way they lean.
pub(crate) fn walls(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    for old in plan.job.standing.iter().filter(|o| o.line.len() > 1) {
        let seen = &old.seen;
        let half = seen.thickness.map_or(THIN_BODY, |t| t.to_m()) / 2.0;
        let (left, right) = (beside(&old.line, half), beside(&old.line, -half));
        let ring: Vec<Point> = left.iter().copied().chain(right.iter().rev().copied()).collect();
        let wash = if seen.made.is_timber() { BUILT_WASH } else { STONE_WASH };
        let body = b.view.line(&ring);
        let mut closed = body.clone();
        closed.extend(body.first().copied());
        let mut items = vec![area(body, None, Some(wash)), line(closed, Pen::new(MEDIUM, BLACK).dashed(HIDDEN))];
        let side = if old.retains_left { &left } else { &right };
        items.extend(strokes(b, side, old.retains_left));
        if seen.lean != Length::ZERO {
            items.extend(leaning(b, &old.line, old.retains_left, seen.lean > Length::ZERO));
        }
        b.add(&old.id, &format!("{} wall that stands", seen.made.words()), items);
        let Some((at, _)) = along(&old.line, 0.35) else { continue };
        let made = if seen.made == Made::Unknown { "old wall" } else { seen.made.words() };
        let mut wish = crate::placer::Wish::new(b.view.at(at), format!("{} {made}, as found", old.id)).bold();
        wish = wish.ink(BLACK).rank(45).of(&old.id).and(format!("holds {}", units.length(seen.height)));
        if seen.lean != Length::ZERO {
            wish = wish.and(format!("leans {}", units.length(seen.lean.abs())));
        }
        b.wishes.push(wish);
    }
}

/// Short strokes into the ground that it holds.
fn strokes(b: &Board, side: &[Point], left: bool) -> Vec<Item> {
    let long: f64 = side.windows(2).map(|w| (w[1] - w[0]).length()).sum();
    let count = (b.view.mm(long) / STROKES.0).floor().clamp(1.0, 200.0) as usize;
    let each = (0..count).filter_map(|k| {
        let (p, v) = along(side, (k as f64 + 0.5) / count as f64)?;
        let into = if left { v.unit().left() } else { v.unit().left() * -1.0 };
        Some(stroke(b.view.at(p), b.view.at(p + into * b.view.metres(STROKES.1)), Pen::new(THIN, BLACK)))
    });
    each.collect()
}

fn leaning(b: &Board, points: &[Point], left: bool, out: bool) -> Vec<Item> {
    let Some((p, v)) = along(points, 0.5) else { return vec![] };
    let open = if left { v.unit().left() * -1.0 } else { v.unit().left() };
    let way = if out { open } else { open * -1.0 };
    let (from, to): (At, At) = (b.view.at(p), b.view.at(p + way * b.view.metres(LEAN)));
    arrow(&[from, to], Pen::new(MEDIUM, RED))
}
