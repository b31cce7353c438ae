//! Where the drains run, how they fall, and where they come out.

use super::Board;
use crate::naming::{fall, level};
use crate::pens::{BLUE, CHAIN, MEDIUM, WHITE, circle, line, stroke};
use crate::placer::Wish;
use crate::scene::{At, Pen};
use crate::view::arrow;

pub(crate) fn drains(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    for pipe in &plan.drained.pipes {
        let points: Vec<_> = pipe.points.iter().map(|p| p.at).collect();
        let paper = b.view.line(&points);
        let mut items = vec![line(paper.clone(), Pen::new(MEDIUM, BLUE).dashed(CHAIN))];
        // An arrow with the flow in every stretch long enough.
        for w in paper.windows(2).filter(|w| groundhold_quantity::math::hypot(w[1].x - w[0].x, w[1].y - w[0].y) > 14.0) {
            let at = |t: f64| At::mm(w[0].x + (w[1].x - w[0].x) * t, w[0].y + (w[1].y - w[0].y) * t);
            items.extend(arrow(&[at(0.45), at(0.55)], Pen::new(MEDIUM, BLUE)));
        }
        let (Some(first), Some(last)) = (paper.first(), paper.last()) else { continue };
        items.push(circle(*first, 0.8, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)));
        items.push(circle(*last, 1.5, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)));
        items.push(stroke(At::mm(last.x - 1.0, last.y - 1.0), At::mm(last.x + 1.0, last.y + 1.0), Pen::new(MEDIUM, BLUE)));
        items.push(stroke(At::mm(last.x - 1.0, last.y + 1.0), At::mm(last.x + 1.0, last.y - 1.0), Pen::new(MEDIUM, BLUE)));
        b.add("drain", &format!("drain of {}", pipe.wall), items);

        let longest = paper.windows(2).max_by(|u, v| length(u).total_cmp(&length(v)));
        if let Some(w) = longest {
            let at = At::mm((w[0].x + w[1].x) / 2.0, (w[0].y + w[1].y) / 2.0);
            let words = format!("drain of {} ⌀{}, {}", pipe.wall, pipe.diameter.to_mm().round(), fall(pipe.fall));
            b.wishes.push(Wish::new(at, words).ink(BLUE).rank(45).of("drain"));
        }
        if let (Some(high), Some(low)) = (pipe.points.first(), pipe.points.last()) {
            let start = format!("invert {}", level(units, high.invert));
            b.wishes.push(Wish::new(*first, start).ink(BLUE).rank(20).clear(1.2).of("drain").optional(40.0));
            let what = if pipe.outlet.is_some() { "outlet" } else { "end" };
            let end = Wish::new(*last, format!("{what}, drain of {}", pipe.wall));
            b.wishes.push(end.and(format!("invert {}", level(units, low.invert))).ink(BLUE).rank(44).clear(1.8).of("drain"));
        }
    }
}

fn length(w: &[At]) -> f64 {
    groundhold_quantity::math::hypot(w[1].x - w[0].x, w[1].y - w[0].y)
}
