//! How does a wall look from the front, developed along its chainage, with what stands below the ground?

use groundhold_hold::systems::timber_posts::{Fill, TimberPostSpec};
use groundhold_hold::{Line, Post, Refusal, Role, Spec};
use groundhold_plan::job::{Event, Find};
use groundhold_plan::{Plan, WallPlan, rock_along};
use groundhold_quantity::{Length, Point, Units};

use crate::dimension::{figure, sized};
use crate::frame::Frame;
use crate::hatch;
use crate::naming::level_short;
use crate::pens::{
    BLACK, BUILT_WASH, EARTH, EXISTING, FIGURE, FINE, GREEN, GREY, HAIR, HIDDEN, MEDIUM, RED, SMALL, STONE_WASH, THICK,
    THIN, TIMBER_WASH, area, group, line, stroke,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Label, Pen, Scene, Weight};
use crate::site_section::{foot, footer};
use crate::type_metrics;
use crate::view::{View, ground_unit, level_scale, scale_for};

/// A wall while it is drawn.
struct Face<'a> {
    plan: &'a Plan,
    wall: &'a WallPlan,
    spec: &'a TimberPostSpec,
    view: View,
    units: Units,
    low: f64,
    high: f64,
    start: f64,
    end: f64,
}

impl Face<'_> {
    fn at(&self, chainage: f64, level: f64) -> At {
        self.view.at(Point::m(chainage, level))
    }
    fn rect(&self, x0: f64, x1: f64, y0: f64, y1: f64) -> Vec<At> {
        vec![self.at(x0, y1), self.at(x1, y1), self.at(x1, y0), self.at(x0, y0)]
    }
}

/// A wall seen from the front; an empty sheet for an unknown wall.
pub(crate) fn elevation(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Elevation of {wall}"));
    let Some(wall) = plan.wall(wall) else { return scene };
    let posts = &wall.layout.posts;
    let (Some(first), Some(last)) = (posts.first(), posts.last()) else { return scene };
    if wall.case.stations.len() < 2 {
        return scene;
    }
    let Spec::TimberPosts(spec) = &wall.case.spec;
    let gravel = spec.hole.gravel_base.to_m();
    let hole = |p: &Post| p.hole_diameter.to_m() / 2.0;
    let start = (first.chainage.to_m() - hole(first)).min(0.0) - 0.15;
    let end = (last.chainage.to_m() + hole(last)).max(wall.layout.length.to_m()) + 0.15;
    let low = posts.iter().map(|p| p.bottom.to_m()).fold(f64::INFINITY, f64::min) - gravel;
    let line = Line::new(&wall.case.stations);
    let high = wall
        .case
        .stations
        .iter()
        .map(|s| s.behind.to_m())
        .chain(posts.iter().map(|p| p.top.to_m()))
        .fold(f64::NEG_INFINITY, f64::max);
    // Room for the scale of levels, post numbers above, chainages and depths below.
    let frame = Frame::new(16.0, 13.0, width - 5.0, height - foot(width) - 19.0);
    if frame.width() < 20.0 || frame.height() < 10.0 {
        return scene;
    }
    let scale = scale_for(end - start, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(start, low), Point::m(end, high), &frame);
    let face = Face { plan, wall, spec, view, units: plan.job.about.units, low, high, start, end };
    scene.scale = view.words();
    let mut items = below(&face);
    items.extend(timber(&face));
    items.extend(grounds(&face, &line));
    items.extend(level_scale(&view, face.units, view.xy(start, low).x - 1.5, low, high));
    items.extend(posts_named(&face));
    items.extend(rulers(&face));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, height - foot(width)));
    placer.heed(&items, 1.5);
    let labels = placer.place(wishes(&face));
    scene.items = items;
    scene.items.extend(labels);
    let name = plan.job.walls.iter().find(|w| w.id == wall.of).map_or("", |w| w.name.as_str());
    let title = format!("Elevation of {} {name}, seen from the front, laid out flat", wall.id);
    footer(&mut scene, &view, face.units, &title);
    scene
}

/// What stands below the ground: holes, what fills them, gravel, the buried part of posts.
fn below(f: &Face) -> Vec<Item> {
    let mut out = vec![];
    for (p, hole) in f.wall.layout.posts.iter().zip(&f.wall.layout.holes) {
        let (x, r) = (p.chainage.to_m(), hole.diameter.to_m() / 2.0);
        let (front, bottom, base) = (p.front.to_m(), p.bottom.to_m(), hole.bottom.to_m());
        let body = f.rect(x - r, x + r, bottom, front);
        let edge = Pen::new(FINE, BLACK).dashed(HIDDEN);
        let mut items = vec![];
        match f.spec.hole.fill {
            Fill::Concrete => {
                items.push(area(body.clone(), Some(edge.clone()), Some(STONE_WASH)));
                items.extend(hatch::concrete(&body, 2.4));
            }
            Fill::Rammed => {
                items.push(area(body.clone(), Some(edge.clone()), None));
                items.extend(hatch::ground(&body, 3.4, GREY));
            }
        }
        if base < bottom {
            let bed = f.rect(x - r, x + r, base, bottom);
            items.push(area(bed.clone(), Some(edge), Some(STONE_WASH)));
            items.extend(hatch::stones(&bed, 1.4));
        }
        let b = f.spec.post.breadth.to_m() / 2.0;
        items.push(area(
            f.rect(x - b, x + b, bottom, front),
            Some(Pen::new(THIN, BLACK).dashed(HIDDEN)),
            Some(TIMBER_WASH),
        ));
        out.push(group(format!("{} post {}", f.wall.id, p.number), format!("hole of post {}", p.number), items));
    }
    out.extend(f.wall.case.refusals.iter().map(|r| rock(f, r)));
    out
}

/// Rock: a jagged line across the hole that it refused, where it is, with a post in that hole or none.
fn rock(f: &Face, refusal: &Refusal) -> Item {
    let x = refusal.chainage.to_m();
    let l = Line::new(&f.wall.case.stations).at(refusal.chainage).front.to_m() - refusal.depth.to_m();
    let r = f.spec.hole.diameter.to_m() / 2.0;
    let jag: Vec<At> = (0..=8)
        .map(|k| f.at(x - r * 1.3 + r * 2.6 * f64::from(k) / 8.0, l + if k % 2 == 0 { 0.0 } else { 0.05 }))
        .collect();
    let title = format!("{} at chainage {}", refusal.what, f.units.run(refusal.chainage));
    group(format!("{} refused", f.wall.id), title, vec![line(jag, Pen::new(THICK, RED))])
}

/// Boards and posts above the ground. Boards behind the posts are drawn first.
fn timber(f: &Face) -> Vec<Item> {
    let mut boards = vec![];
    let mut posts = vec![];
    for piece in &f.wall.layout.pieces {
        let (x0, x1) = (piece.chainage.0.to_m(), piece.chainage.1.to_m());
        let (y0, y1) = (piece.level.0.to_m(), piece.level.1.to_m());
        let wash = if piece.built { BUILT_WASH } else { TIMBER_WASH };
        match piece.role {
            Role::Post => {
                let b = f.spec.post.breadth.to_m() / 2.0;
                let (x, front) =
                    (piece.chainage.0.to_m().midpoint(piece.chainage.1.to_m()), ground_front(f, piece.bay));
                let mut items =
                    vec![area(f.rect(x - b, x + b, front.min(y1), y1), Some(Pen::new(MEDIUM, BLACK)), Some(wash))];
                if piece.built {
                    items.extend(hatch::lines(
                        &[f.rect(x - b, x + b, front.min(y1), y1)],
                        45.0,
                        0.9,
                        &Pen::new(HAIR, BLACK),
                    ));
                }
                posts.push(group(format!("{} post {}", f.wall.id, piece.bay), piece.mark.clone(), items));
            }
            Role::Board | Role::Capping => {
                let ring = f.rect(x0, x1, y0, y1);
                let mut items = vec![area(ring, Some(Pen::new(THIN, BLACK)), Some(wash))];
                // A little grain.
                for k in [0.3, 0.62] {
                    let y = y0 + (y1 - y0) * k;
                    let inset = (x1 - x0) * 0.06;
                    items.push(stroke(f.at(x0 + inset, y), f.at(x1 - inset * (1.0 + k), y), Pen::new(0.06, GREY)));
                }
                boards.push(group(format!("{} {}", f.wall.id, piece.mark), piece.mark.clone(), items));
            }
        }
    }
    match f.spec.boards {
        groundhold_hold::systems::timber_posts::Boards::Behind => {
            boards.extend(posts);
            boards
        }
        groundhold_hold::systems::timber_posts::Boards::InFront => {
            posts.extend(boards);
            posts
        }
    }
}

fn ground_front(f: &Face, post: usize) -> f64 {
    f.wall.layout.post(post).map_or(f.low, |p| p.front.to_m())
}

/// Ground in front (thick, with the ground's sign under it) and behind (dashed, since it is hidden).
fn grounds(f: &Face, line_of: &Line) -> Vec<Item> {
    let mut cs: Vec<f64> = f.wall.case.stations.iter().map(|s| s.chainage.to_m()).collect();
    cs.insert(0, f.start);
    cs.push(f.end);
    let levels: Vec<_> = cs.iter().map(|c| line_of.at(Length::m(*c))).collect();
    let front: Vec<At> = cs.iter().zip(&levels).map(|(c, g)| f.at(*c, g.front.to_m())).collect();
    let behind: Vec<At> = cs.iter().zip(&levels).map(|(c, g)| f.at(*c, g.behind.to_m())).collect();
    let mut items = vec![];
    // Slanting strokes under the ground line, in threes.
    let total = front.len();
    if total > 1 {
        let mut x = front[0].x + 2.0;
        while x < front[total - 1].x - 2.0 {
            for k in 0..3 {
                let px = x + f64::from(k) * 0.9;
                if let Some(y) = height_at(&front, px) {
                    items.push(stroke(At::mm(px, y + 0.3), At::mm(px - 0.9, y + 1.5), Pen::new(HAIR, EARTH)));
                }
            }
            x += 9.0;
        }
    }
    items.push(line(behind, Pen::new(THIN, GREEN).dashed(EXISTING)));
    items.push(line(front, Pen::new(THICK, BLACK)));
    items
}

fn height_at(points: &[At], x: f64) -> Option<f64> {
    points
        .windows(2)
        .find(|w| w[0].x <= x && x <= w[1].x && w[1].x > w[0].x)
        .map(|w| w[0].y + (w[1].y - w[0].y) * (x - w[0].x) / (w[1].x - w[0].x))
}

/// Post numbers in rings above, with the level of the top where there is room.
fn posts_named(f: &Face) -> Vec<Item> {
    let y = f.at(0.0, f.high).y - 7.5;
    let mut out = vec![];
    let mut last = f64::NEG_INFINITY;
    for p in &f.wall.layout.posts {
        let x = f.at(p.chainage.to_m(), 0.0).x;
        let top = f.at(0.0, p.top.to_m()).y;
        let element = format!("{} post {}", f.wall.id, p.number);
        let mut items = vec![];
        let crowded = x - last < 5.4;
        let shift = if crowded { -5.4 } else { 0.0 };
        items.push(stroke(At::mm(x, top - 0.5), At::mm(x, y + shift + 2.3), Pen::new(HAIR, GREY)));
        items.push(crate::pens::circle(
            At::mm(x, y + shift),
            2.3,
            Some(Pen::new(FINE, BLACK)),
            Some(crate::pens::WHITE),
        ));
        items.push(Label::new(At::mm(x, y + shift + 0.85), p.number.to_string(), FIGURE).middle().bold().into());
        out.push(group(element, format!("post {}", p.number), items));
        last = if crowded { last } else { x };
    }
    out
}

/// Chainages, spacings and depths under the wall.
fn rulers(f: &Face) -> Vec<Item> {
    let y = f.at(0.0, f.low).y;
    let posts = &f.wall.layout.posts;
    let mut out = vec![];
    let xs: Vec<f64> = posts.iter().map(|p| f.at(p.chainage.to_m(), 0.0).x).collect();
    // Spacings.
    for (w, p) in xs.windows(2).zip(posts.windows(2)) {
        let text = figure(f.units, p[1].chainage - p[0].chainage);
        let fits = type_metrics::width(&text, FIGURE, Weight::Regular) + 1.0 <= w[1] - w[0];
        let size = if fits { FIGURE } else { SMALL * 0.9 };
        let small_fits = type_metrics::width(&text, size, Weight::Regular) + 0.4 <= w[1] - w[0];
        let text = if small_fits { text } else { String::new() };
        out.extend(sized(At::mm(w[0], y + 6.0), At::mm(w[1], y + 6.0), 0.0, &text, size));
    }
    // Chainage and depth in two rows, turned where the posts stand close.
    let (unit, sign) = ground_unit(f.units);
    let close = xs.windows(2).any(|w| w[1] - w[0] < 8.2);
    let mut last = f64::NEG_INFINITY;
    for (p, x) in posts.iter().zip(&xs) {
        if *x - last < 3.0 {
            continue;
        }
        last = *x;
        let ch = format!("{:.2}", p.chainage.to_m() / unit);
        let l = |row: f64, t: String| {
            let base = Label::new(At::mm(*x, y + row), t, SMALL).ink(GREY);
            if close { Label { at: At::mm(*x + 0.7, y + row - 2.0), ..base }.end().turned(90.0) } else { base.middle() }
        };
        if close {
            out.push(l(10.0, ch).into());
        } else {
            out.push(l(10.0, ch).into());
            out.push(l(13.2, format!("↓{}", figure(f.units, p.depth))).ink(BLACK).into());
        }
    }
    if !xs.is_empty() {
        let depth = if close { "" } else { ", ↓ depth of post" };
        let words = format!("chainage {sign}{depth}");
        out.push(Label::new(At::mm(4.0, y + 17.4), words, SMALL).ink(GREY).into());
    }
    out
}

fn wishes(f: &Face) -> Vec<Wish> {
    let mut out = vec![];
    // Board marks, on the boards.
    for b in &f.wall.layout.boards {
        // In the first bay of the board, so that no post stands before it.
        let start = b.chainage.0.to_m();
        let end = f.wall.layout.post(b.from_post + 1).map_or(b.chainage.1, |p| p.chainage).min(b.chainage.1).to_m();
        let mid = f.at((start + end) / 2.0, (b.bottom.to_m() + b.top.to_m()) / 2.0);
        let wide = f.view.mm(end - start - f.spec.post.breadth.to_m());
        let high = f.view.mm((b.top - b.bottom).to_m());
        let size = SMALL.min(high * 0.8);
        if size >= 1.3 && type_metrics::width(&b.mark, size, Weight::Regular) + 1.0 < wide {
            out.push(
                Wish::new(mid, b.mark.clone())
                    .size(size)
                    .rank(80)
                    .clear(0.0)
                    .of(&format!("{} {}", f.wall.id, b.mark))
                    .over(),
            );
        }
    }
    // Levels of the top where it steps, and of the ground in front at both ends.
    let bays = &f.wall.layout.bays;
    let mut before = f64::NAN;
    for bay in bays {
        let top = bay.top.to_m();
        if (top - before).abs() > 0.005 || before.is_nan() {
            let at = f.at((bay.chainage.0.to_m() + bay.chainage.1.to_m()) / 2.0, top);
            out.push(
                Wish::new(at, format!("▽ {}", level_short(f.units, bay.top)))
                    .size(SMALL)
                    .rank(30)
                    .clear(0.9)
                    .lean(0.0, -1.0)
                    .optional(25.0),
            );
        }
        before = top;
    }
    if let Some(h) = f.wall.layout.posts.iter().reduce(|a, b| if b.retained > a.retained { b } else { a }) {
        let line = Line::new(&f.wall.case.stations).at(h.chainage);
        let x = h.chainage.to_m();
        out.push(
            Wish::new(f.at(x + 0.3, line.front.to_m()), "ground in front")
                .size(SMALL)
                .rank(10)
                .clear(1.2)
                .optional(20.0),
        );
        out.push(
            Wish::new(f.at(x - 0.3, line.behind.to_m()), "ground behind")
                .size(SMALL)
                .ink(GREEN)
                .rank(10)
                .clear(1.0)
                .lean(0.0, -1.0)
                .optional(20.0),
        );
    }
    for (i, entry) in f.plan.job.record.iter().enumerate() {
        let Event::Find(find @ Find::Rock { depth, .. }) = &entry.event else { continue };
        let Some(c) = rock_along(find, f.wall) else { continue };
        let l = Line::new(&f.wall.case.stations).at(c).front.to_m() - depth.to_m();
        let w =
            Wish::new(f.at(c.to_m(), l), format!("F{} rock at {}", i + 1, f.units.length(*depth))).ink(RED).rank(60);
        out.push(w.clear(3.0));
    }
    out
}
