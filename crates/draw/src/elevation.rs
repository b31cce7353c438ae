//! How does a wall look from the front, developed along its chainage, with what stands below the ground?

use groundhold_hold::{FacePiece, Line, Refusal, Stuff, Tick};
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
    ticks: Vec<Tick>,
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
}

/// A wall seen from the front; an empty sheet for an unknown wall.
pub(crate) fn elevation(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Elevation of {wall}"));
    let Some(wall) = plan.wall(wall) else { return scene };
    let faces = &wall.layout.faces;
    if wall.case.stations.len() < 2 || faces.is_empty() {
        return scene;
    }
    let corners = || faces.iter().flat_map(|f| f.outline.iter());
    let least = |v: &mut dyn Iterator<Item = f64>| v.fold(f64::INFINITY, f64::min);
    let most = |v: &mut dyn Iterator<Item = f64>| v.fold(f64::NEG_INFINITY, f64::max);
    let start = least(&mut corners().map(|c| c.0.to_m())).min(0.0) - 0.15;
    let end = most(&mut corners().map(|c| c.0.to_m())).max(wall.layout.length.to_m()) + 0.15;
    let low = least(&mut corners().map(|c| c.1.to_m()));
    let line = Line::new(&wall.case.stations);
    let behind = wall.case.stations.iter().map(|s| s.behind.to_m());
    let high = most(&mut behind.chain(corners().map(|c| c.1.to_m())));
    // Room for the scale of levels, post numbers above, chainages and depths below.
    let frame = Frame::new(16.0, 13.0, width - 5.0, height - foot(width) - 19.0);
    if frame.width() < 20.0 || frame.height() < 10.0 {
        return scene;
    }
    let scale = scale_for(end - start, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(start, low), Point::m(end, high), &frame);
    let ticks = wall.layout.ticks();
    let face = Face { plan, wall, ticks, view, units: plan.job.about.units, low, high, start, end };
    scene.scale = view.words();
    let mut items = pieces(&face);
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

/// Every piece as the layout orders them: what is hidden below the ground first. Pieces of one element that follow each
/// other stand in one group.
fn pieces(f: &Face) -> Vec<Item> {
    let mut groups: Vec<(&FacePiece, Vec<Item>)> = vec![];
    for piece in &f.wall.layout.faces {
        let items = one(f, piece);
        let same = |g: &&mut (&FacePiece, Vec<Item>)| g.0.element == piece.element && g.0.hidden == piece.hidden;
        match groups.last_mut().filter(same) {
            Some(g) => g.1.extend(items),
            None => groups.push((piece, items)),
        }
    }
    let named =
        groups.into_iter().map(|(p, items)| group(format!("{} {}", f.wall.id, p.element), p.title.clone(), items));
    let refused = f.wall.case.refusals.iter().map(|r| rock(f, r));
    named.chain(refused).collect()
}

fn one(f: &Face, piece: &FacePiece) -> Vec<Item> {
    let ring: Vec<At> = piece.outline.iter().map(|(c, l)| f.at(c.to_m(), l.to_m())).collect();
    let weight = match (piece.hidden, piece.upright) {
        (true, true) => THIN,
        (true, false) => FINE,
        (false, true) => MEDIUM,
        (false, false) => THIN,
    };
    let pen = Pen::new(weight, BLACK);
    let pen = if piece.hidden { pen.dashed(HIDDEN) } else { pen };
    let wash = match piece.stuff {
        Stuff::Timber if piece.built => Some(BUILT_WASH),
        Stuff::Timber => Some(TIMBER_WASH),
        Stuff::Rammed => None,
        _ => Some(STONE_WASH),
    };
    let mut items = vec![area(ring.clone(), Some(pen), wash)];
    items.extend(texture(piece, ring));
    items
}

fn texture(piece: &FacePiece, ring: Vec<At>) -> Vec<Item> {
    match piece.stuff {
        Stuff::Timber if piece.built && piece.upright => hatch::lines(&[ring], 45.0, 0.9, &Pen::new(HAIR, BLACK)),
        Stuff::Timber if piece.upright => vec![],
        Stuff::Timber => grain(&ring),
        Stuff::Concrete => hatch::concrete(&ring, if piece.hidden { 2.4 } else { 5.0 }),
        Stuff::Rammed => hatch::ground(&ring, 3.4, GREY),
        Stuff::Gravel => hatch::stones(&ring, 1.4),
        Stuff::Basket => hatch::stones(&ring, 2.2),
        Stuff::Stone => hatch::stones(&ring, 3.0),
        Stuff::Steel | Stuff::Block | Stuff::Grid => vec![],
    }
}

/// A little grain along a board.
fn grain(ring: &[At]) -> Vec<Item> {
    let Some(b) = Frame::around(ring) else { return vec![] };
    let one = |k: f64| {
        let y = b.bottom - b.height() * k;
        let inset = b.width() * 0.06;
        stroke(At::mm(b.left + inset, y), At::mm(b.right - inset * (1.0 + k), y), Pen::new(0.06, GREY))
    };
    [0.3, 0.62].map(one).into()
}

/// Half the width at which a rock is drawn where no post stands in its hole any more.
const ROCK: Length = Length::mm(225.0);

/// Rock: a jagged line across the hole that it refused, where it is, with a post in that hole or none.
fn rock(f: &Face, refusal: &Refusal) -> Item {
    let x = refusal.chainage.to_m();
    let l = Line::new(&f.wall.case.stations).at(refusal.chainage).front.to_m() - refusal.depth.to_m();
    let r = f.wall.layout.holes.first().map_or(ROCK, |h| h.diameter / 2.0).to_m();
    let jag: Vec<At> = (0..=8)
        .map(|k| f.at(x - r * 1.3 + r * 2.6 * f64::from(k) / 8.0, l + if k % 2 == 0 { 0.0 } else { 0.05 }))
        .collect();
    let title = format!("{} at chainage {}", refusal.what, f.units.run(refusal.chainage));
    group(format!("{} refused", f.wall.id), title, vec![line(jag, Pen::new(THICK, RED))])
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

/// Numbers of posts or of steps in rings above.
fn posts_named(f: &Face) -> Vec<Item> {
    let y = f.at(0.0, f.high).y - 7.5;
    let mut out = vec![];
    let mut last = f64::NEG_INFINITY;
    for t in &f.ticks {
        let x = f.at(t.chainage.to_m(), 0.0).x;
        let top = f.at(0.0, t.top.to_m()).y;
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
        items.push(Label::new(At::mm(x, y + shift + 0.85), t.name.clone(), FIGURE).middle().bold().into());
        let title = if t.on.is_empty() { format!("step {}", t.name) } else { t.on.clone() };
        out.push(group(format!("{} {}", f.wall.id, t.on).trim_end(), title, items));
        last = if crowded { last } else { x };
    }
    out
}

/// Chainages, spacings and depths under the wall.
fn rulers(f: &Face) -> Vec<Item> {
    let y = f.at(0.0, f.low).y;
    let mut out = vec![];
    let xs: Vec<f64> = f.ticks.iter().map(|p| f.at(p.chainage.to_m(), 0.0).x).collect();
    // Spacings.
    for (w, p) in xs.windows(2).zip(f.ticks.windows(2)) {
        let text = figure(f.units, p[1].chainage - p[0].chainage);
        let fits = type_metrics::width(&text, FIGURE, Weight::Regular) + 1.0 <= w[1] - w[0];
        let size = if fits { FIGURE } else { SMALL * 0.9 };
        let small_fits = type_metrics::width(&text, size, Weight::Regular) + 0.4 <= w[1] - w[0];
        let text = if small_fits { text } else { String::new() };
        out.extend(sized(At::mm(w[0], y + 6.0), At::mm(w[1], y + 6.0), 0.0, &text, size));
    }
    // Chainage and depth in two rows, turned where they stand close.
    let (unit, sign) = ground_unit(f.units);
    let close = xs.windows(2).any(|w| w[1] - w[0] < 8.2);
    let mut last = f64::NEG_INFINITY;
    for (t, x) in f.ticks.iter().zip(&xs) {
        if *x - last < 3.0 {
            continue;
        }
        last = *x;
        let ch = format!("{:.2}", t.chainage.to_m() / unit);
        let l = |row: f64, t: String| {
            let base = Label::new(At::mm(*x, y + row), t, SMALL).ink(GREY);
            if close { Label { at: At::mm(*x + 0.7, y + row - 2.0), ..base }.end().turned(90.0) } else { base.middle() }
        };
        out.push(l(10.0, ch).into());
        if !close {
            out.push(l(13.2, format!("↓{}", figure(f.units, t.front - t.bottom))).ink(BLACK).into());
        }
    }
    if !xs.is_empty() {
        let what = if f.wall.layout.posts.is_empty() { "base" } else { "post" };
        let depth = if close { String::new() } else { format!(", ↓ depth of {what}") };
        let words = format!("chainage {sign}{depth}");
        out.push(Label::new(At::mm(4.0, y + 17.4), words, SMALL).ink(GREY).into());
    }
    out
}

fn wishes(f: &Face) -> Vec<Wish> {
    let mut out = vec![];
    // Marks, on the pieces that have one.
    for p in f.wall.layout.faces.iter().filter(|p| !p.label.is_empty()) {
        let levels = || p.outline.iter().map(|c| c.1.to_m());
        let (low, top) = (levels().fold(f64::INFINITY, f64::min), levels().fold(f64::NEG_INFINITY, f64::max));
        let (a, b) = (p.room.0.to_m(), p.room.1.to_m());
        let mid = f.at((a + b) / 2.0, (low + top) / 2.0);
        let size = SMALL.min(f.view.mm(top - low) * 0.8);
        if size >= 1.3 && type_metrics::width(&p.label, size, Weight::Regular) + 1.0 < f.view.mm(b - a) {
            let wish = Wish::new(mid, p.label.clone()).size(size).rank(80).clear(0.0);
            out.push(wish.of(&format!("{} {}", f.wall.id, p.element)).over());
        }
    }
    // Levels of the top where it steps, and of the ground in front at both ends.
    let mut before = f64::NAN;
    for bay in &f.wall.layout.strips {
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
    if let Some(h) = f.wall.layout.highest() {
        let line = Line::new(&f.wall.case.stations).at(h);
        let x = h.to_m();
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
