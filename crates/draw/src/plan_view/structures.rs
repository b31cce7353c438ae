//! Walls with their posts and holes, flights, ramps, and the measures of their runs.

use groundhold_hold::Stuff;
use groundhold_plan::WallPlan;
use groundhold_quantity::{Length, Point, Vector, distance};

use super::Board;
use crate::dimension::{dimension, figure};
use crate::naming::{along, beside, fall, level_short, open_side, reading, wall_course, wall_line};
use crate::pens::{
    BLACK, FIGURE, FINE, GREY, HAIR, HIDDEN, MEDIUM, NAME, SMALL, STONE_WASH, TIMBER_WASH, area, circle, group, line,
    stroke,
};
use crate::placer::Wish;
use crate::scene::{Item, Label, Pen};
use crate::view::arrow;

pub(crate) fn walls(b: &mut Board) {
    let plan = b.plan;
    for wall in &plan.walls {
        wall_itself(b, wall);
        wall_labels(b, wall);
    }
}

fn wall_itself(b: &mut Board, wall: &WallPlan) {
    let points: Vec<Point> = wall_course(wall);
    if points.len() < 2 {
        return;
    }
    // What holds the soil stands on the soil side of the wall line, or on the open side.
    let (near, far) = wall.case.spec.system().body();
    let least = b.view.metres(0.9);
    let side = open_side(wall);
    let (near, far) = match (near.to_m(), far.to_m()) {
        (n, f) if f <= 0.0 => (n.min(f - least), f),
        (n, f) => (n, f.max(n + least)),
    };
    let ring: Vec<Point> =
        beside(&points, side * far).into_iter().chain(beside(&points, side * near).into_iter().rev()).collect();
    let timber = wall.layout.faces.iter().all(|f| f.stuff == Stuff::Timber || f.hidden);
    let wash = if timber { TIMBER_WASH } else { STONE_WASH };
    let mut items = vec![];
    for hole in &wall.layout.holes {
        let r = b.view.mm(hole.diameter.to_m() / 2.0);
        items.push(circle(b.view.at(hole.at), r, Some(Pen::new(HAIR, GREY).dashed(&[0.9, 0.6])), None));
    }
    let paper = b.view.line(&ring);
    items.push(area(paper.clone(), Some(Pen::new(MEDIUM, BLACK)), Some(wash)));
    if !timber {
        items.extend(crate::hatch::stones(&paper, 2.2));
    }
    for post in &wall.layout.posts {
        let (breadth, depth) = post_size(wall, post.number);
        let corners = square(post.at, post.facing, breadth, depth, b.view.metres(1.2));
        let fill = if post.built { BLACK } else { TIMBER_WASH };
        let paper = b.view.line(&corners);
        let cross = if post.built { vec![] } else { crate::hatch::end_grain(&paper, BLACK) };
        let mut one = vec![area(paper, Some(Pen::new(MEDIUM, BLACK)), Some(fill))];
        one.extend(cross);
        items.push(group(
            format!("{} post {}", wall.id, post.number),
            format!("{} post {}", wall.id, post.number),
            one,
        ));
    }
    b.add(&wall.id, &format!("Wall {}", wall.id), items);
}

/// Of a post, along the wall and across it.
fn post_size(wall: &WallPlan, number: usize) -> (Length, Length) {
    let post = |p: &&groundhold_hold::Piece| p.role == groundhold_hold::Role::Post && p.bay == number;
    wall.layout.pieces.iter().find(post).map_or((Length::ZERO, Length::ZERO), |p| p.section)
}

fn square(at: Point, facing: Vector, breadth: Length, depth: Length, least: f64) -> Vec<Point> {
    let (u, v) = (facing.left() * (breadth.to_m().max(least) / 2.0), facing * (depth.to_m().max(least) / 2.0));
    vec![at + u + v, at - u + v, at - u - v, at + u - v]
}

fn wall_labels(b: &mut Board, wall: &WallPlan) {
    let plan = b.plan;
    let units = plan.job.about.units;
    let line = wall_line(wall);
    let side = open_side(wall);
    // The name stands behind the longest straight.
    let longest = line.windows(2).max_by(|a, c| (a[1].0 - a[0].0).si().total_cmp(&(c[1].0 - c[0].0).si()));
    if let Some(w) = longest {
        let back = (w[1].1 - w[0].1).unit().left() * -side;
        let name = plan.job.walls.iter().find(|x| x.id == wall.of).map_or(String::new(), |x| x.name.clone());
        let at = w[0].1.towards(w[1].1, 0.5);
        let wish = Wish::new(b.view.at(at), format!("{} {name}", wall.id)).size(NAME).bold();
        let wish = wish.and(format!("retains up to {}", units.length(wall.layout.retained)));
        b.wishes.push(wish.rank(70).clear(13.0).lean(back.x, -back.y).of(&wall.id));
    }
    if b.quiet {
        return;
    }
    ends_of_strips(b, wall);
    let n = wall.layout.posts.len();
    for (i, post) in wall.layout.posts.iter().enumerate() {
        let f = post.facing;
        let element = format!("{} post {}", wall.id, post.number);
        let number = Wish::new(b.view.at(post.at), post.number.to_string()).size(SMALL).rank(50).clear(2.0);
        b.wishes.push(number.lean(f.x, -f.y).of(&element).optional(22.0));
        if i == 0 || i + 1 == n || post.corner {
            let top = format!("top {}", level_short(units, post.top));
            let front = format!("foot {}", level_short(units, post.front));
            let w = Wish::new(b.view.at(post.at), top).and(front).size(SMALL).rank(25).clear(2.2).of(&element);
            b.wishes.push(w.optional(60.0));
        }
    }
}

/// Top and underside at the ends and steps of a wall without posts.
fn ends_of_strips(b: &mut Board, wall: &WallPlan) {
    if !wall.layout.posts.is_empty() || wall.case.stations.len() < 2 {
        return;
    }
    let units = b.plan.job.about.units;
    let line = groundhold_hold::Line::new(&wall.case.stations);
    for t in wall.layout.ticks() {
        let top = format!("top {}", level_short(units, t.top));
        let base = format!("base {}", level_short(units, t.bottom));
        let wish = Wish::new(b.view.at(line.at(t.chainage).at), top).and(base).size(SMALL).rank(25).clear(2.2);
        b.wishes.push(wish.of(&wall.id).optional(60.0));
    }
}

/// Dimensions along the straights of walls, on the soil side.
pub(crate) fn runs(b: &mut Board) {
    let plan = b.plan;
    for wall in &plan.walls {
        let side = open_side(wall);
        let mut items = vec![];
        for w in wall_line(wall).windows(2).filter(|w| w[1].0 - w[0].0 > Length::mm(300.0)) {
            let text = figure(plan.job.about.units, w[1].0 - w[0].0);
            items.extend(dimension(b.view.at(w[0].1), b.view.at(w[1].1), -side * 9.0, &text));
        }
        b.add(&wall.id, "", items);
    }
}

pub(crate) fn flights(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    for f in &plan.shaped.flights {
        let mut items: Vec<Item> = vec![];
        for t in &f.treads {
            items.push(area(b.view.line(&t.ring), Some(Pen::new(FINE, BLACK)), None));
        }
        let half = f.outward.left() * (f.width.to_m() / 2.0);
        for (p, _) in &f.nosings {
            items.push(stroke(b.view.at(*p + half), b.view.at(*p - half), Pen::new(MEDIUM, BLACK)));
        }
        items.extend(arrow(&[b.view.at(f.foot), b.view.at(f.top)], Pen::new(MEDIUM, BLACK)));
        items.push(circle(b.view.at(f.foot), 0.7, None, Some(BLACK)));
        b.add(&f.id, &format!("Flight {} up", f.id), items);
        let w = Wish::new(b.view.at(f.foot.towards(f.top, 0.35)), format!("{} up", f.id)).bold();
        let w = w.and(format!("{} risers of {}", f.risers, units.length(f.riser)));
        let w = w.and(format!("going {}, width {}", units.length(f.going), units.length(f.width)));
        b.wishes.push(w.rank(65).clear(b.view.mm(f.width.to_m() / 2.0) + 1.0).of(&f.id));
    }
}

pub(crate) fn ramps(b: &mut Board) {
    let plan = b.plan;
    let units = plan.job.about.units;
    for r in &plan.shaped.ramps {
        if r.path.len() < 2 {
            continue;
        }
        let half = r.width.to_m() / 2.0;
        let mut items = vec![];
        for side in [half, -half] {
            items.push(line(b.view.line(&beside(&r.path, side)), Pen::new(MEDIUM, BLACK)));
        }
        let paper = b.view.line(&r.path);
        items.push(line(paper.clone(), Pen::new(HAIR, GREY).dashed(HIDDEN)));
        let longest = r.path.windows(2).max_by(|a, c| distance(a[0], a[1]).si().total_cmp(&distance(c[0], c[1]).si()));
        if let Some(w) = longest {
            let (p, q) = (b.view.at(w[0].towards(w[1], 0.3)), b.view.at(w[0].towards(w[1], 0.7)));
            items.extend(arrow(&[p, q], Pen::new(MEDIUM, BLACK)));
            let v = (w[1] - w[0]).unit();
            let at = w[0].towards(w[1], 0.5)
                + v.left() * b.view.metres(1.2) * if reading(v).abs() < 90.0 && v.x < 0.0 { -1.0 } else { 1.0 };
            let text = format!("up {}", fall(r.gradient));
            items.push(Label::new(b.view.at(at), text, FIGURE).middle().bold().turned(reading(v)).halo().into());
        }
        b.add(&r.id, &format!("Ramp {} up {}", r.id, fall(r.gradient)), items);
        if let Some((p, _)) = along(&r.path, 0.3) {
            let w = Wish::new(b.view.at(p), format!("{} ramp {}", r.id, fall(r.gradient))).bold();
            let w = w.and(format!("{} long, {} wide", units.run(r.length), units.run(r.width)));
            let w = w.and(format!("from {} to {}", level_short(units, r.foot_level), level_short(units, r.top_level)));
            b.wishes.push(w.rank(64).clear(b.view.mm(half) + 1.0).of(&r.id));
        }
    }
}
