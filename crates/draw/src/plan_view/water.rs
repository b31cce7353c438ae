//! Where the drains run, how they fall, and where they come out.

use groundhold_drain::{InvertPoint, PipeRun};
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Point};

use super::Board;
use crate::naming::{beside, fall, level, open_side, wall_line};
use crate::pens::{BLUE, CHAIN, MEDIUM, WHITE, circle, line, stroke};
use crate::placer::Wish;
use crate::scene::{At, Pen};
use crate::view::arrow;

pub(crate) fn drains(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    for pipe in &plan.drained.pipes {
        let paper = b.view.line(&route(plan, pipe));
        let mut items = vec![line(paper.clone(), Pen::new(MEDIUM, BLUE).dashed(CHAIN))];
        // An arrow with the flow in every stretch long enough.
        for w in paper.windows(2).filter(|w| groundhold_quantity::math::hypot(w[1].x - w[0].x, w[1].y - w[0].y) > 14.0)
        {
            let at = |t: f64| At::mm(w[0].x + (w[1].x - w[0].x) * t, w[0].y + (w[1].y - w[0].y) * t);
            items.extend(arrow(&[at(0.45), at(0.55)], Pen::new(MEDIUM, BLUE)));
        }
        let (Some(first), Some(last)) = (paper.first(), paper.last()) else { continue };
        items.push(circle(*first, 0.8, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)));
        items.push(circle(*last, 1.5, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)));
        items.push(stroke(
            At::mm(last.x - 1.0, last.y - 1.0),
            At::mm(last.x + 1.0, last.y + 1.0),
            Pen::new(MEDIUM, BLUE),
        ));
        items.push(stroke(
            At::mm(last.x - 1.0, last.y + 1.0),
            At::mm(last.x + 1.0, last.y - 1.0),
            Pen::new(MEDIUM, BLUE),
        ));
        b.add("drain", &format!("drain of {}", pipe.wall), items);

        let longest = paper.windows(2).max_by(|u, v| length(u).total_cmp(&length(v)));
        if let Some(w) = longest {
            let at = At::mm((w[0].x + w[1].x) / 2.0, (w[0].y + w[1].y) / 2.0);
            let words = format!("drain of {} ⌀{}, {}", pipe.wall, pipe.diameter.to_mm().round(), fall(pipe.fall));
            b.wishes.push(Wish::new(at, words).ink(BLUE).rank(45).of("drain"));
        }
        if let (Some(high), Some(low)) = (pipe.points.first(), pipe.points.last()) {
            let start = format!("invert {}", level(units, high.invert));
            if b.quiet {
                continue;
            }
            b.wishes.push(Wish::new(*first, start).ink(BLUE).rank(20).clear(1.2).of("drain").optional(40.0));
            if pipe.joins.is_some() {
                continue;
            }
            let what = if pipe.outlet.is_some() { "outlet" } else { "end" };
            let end = Wish::new(*last, format!("{what}, drain of {}", pipe.wall));
            b.wishes.push(
                end.and(format!("invert {}", level(units, low.invert))).ink(BLUE).rank(44).clear(1.8).of("drain"),
            );
        }
    }
}

/// Stone between boards and pipe, metres, so that the pipe is drawn behind the wall it drains.
const BEHIND: f64 = 0.2;

/// The pipe in plan: behind the wall round its corners, then to the outlet.
fn route(plan: &Plan, pipe: &PipeRun) -> Vec<Point> {
    let Some(wall) = plan.wall(&pipe.wall) else { return pipe.points.iter().map(|p| p.at).collect() };
    let corners = wall_line(wall);
    let mut behind: Vec<Point> = vec![];
    let mut last: Option<Length> = None;
    for p in pipe.points.iter() {
        let Some(c) = p.wall_chainage else { continue };
        if let Some(l) = last {
            let mut between: Vec<_> = corners.iter().filter(|k| l.min(c) < k.0 && k.0 < l.max(c)).collect();
            if c < l {
                between.reverse();
            }
            behind.extend(between.iter().map(|k| k.1));
        }
        behind.push(p.at);
        last = Some(c);
    }
    let along = |w: &[InvertPoint]| Some(w[1].wall_chainage? - w[0].wall_chainage?);
    let forwards = pipe.points.windows(2).find_map(along).is_none_or(|d| d >= Length::ZERO);
    let side = if forwards { -open_side(wall) } else { open_side(wall) };
    let mut line = beside(&behind, side * BEHIND);
    line.extend(pipe.points.iter().filter(|p| p.wall_chainage.is_none()).map(|p| p.at));
    line
}

fn length(w: &[At]) -> f64 {
    groundhold_quantity::math::hypot(w[1].x - w[0].x, w[1].y - w[0].y)
}
