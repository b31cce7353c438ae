//! How does a drain lie along its way: ground, pipe, shafts, and the invert levels to lay it to?

use groundhold_drain::{NodeKind, PipeRun};
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Level, Point};

use crate::frame::Frame;
use crate::naming::{fall, level};
use crate::pens::{
    BLACK, BLUE, EARTH, EARTH_WASH, EXISTING, FINE, GREY, HAIR, MEDIUM, SMALL, THIN, area, line, stroke,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Label, Pen, Scene};
use crate::site_section::{foot, footer};
use crate::view::{View, level_scale, scale_for};

/// Height of one row of figures under the section, and the room for the rows' names.
const ROW: f64 = 11.0;
const NAMES: f64 = 24.0;
/// Between two columns of figures at least.
const COLUMN: f64 = 3.4;
/// Between two places at which the ground is asked, m.
const STEP: f64 = 0.1;

/// The drain of a wall cut along its way and laid out straight; an empty sheet for a wall without one.
pub(crate) fn drain_long_section(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Drain of {wall}, long section"));
    let Some(pipe) = plan.drained.pipe(wall).filter(|p| p.points.len() >= 2) else { return scene };
    let frame = Frame::new(NAMES + 14.0, 14.0, width - 6.0, height - foot(width) - 4.0 * ROW - 6.0);
    if frame.width() < 30.0 || frame.height() < 12.0 {
        return scene;
    }
    let ground = ground(plan, pipe);
    let levels = || pipe.points.iter().map(|p| p.invert.to_m()).chain(ground.iter().map(|g| g.1));
    let low = levels().fold(f64::INFINITY, f64::min) - 0.15;
    let high = levels().fold(f64::NEG_INFINITY, f64::max);
    let long = pipe.length.to_m();
    let scale = scale_for(long, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(0.0, low), Point::m(long, high), &frame);
    scene.scale = view.words();
    let mut items = body(&view, pipe, &ground, low);
    items.extend(level_scale(&view, plan.job.about.units, view.xy(0.0, low).x - 1.0, low, high));
    let top = view.xy(0.0, low).y + 4.0;
    items.extend(figures(plan, pipe, &view, top, width));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, top - 1.0));
    placer.heed(&items, 2.0);
    let labels = placer.place(wishes(plan, pipe, &view, &ground));
    scene.items = items;
    scene.items.extend(labels);
    let title = format!("Drain of {wall}, cut along its way and laid out straight");
    footer(&mut scene, &view, plan.job.about.units, &title);
    scene
}

/// Existing ground above the pipe: distance along it and level.
fn ground(plan: &Plan, pipe: &PipeRun) -> Vec<(f64, f64)> {
    let mut found = vec![];
    for w in pipe.points.windows(2) {
        let run = (w[1].chainage - w[0].chainage).to_m();
        let n = (run / STEP).ceil().clamp(1.0, 2000.0) as usize;
        for k in 0..=n {
            let t = k as f64 / n as f64;
            if let Some(l) = plan.survey.ground.level_at(w[0].at.towards(w[1].at, t)) {
                found.push((w[0].chainage.to_m() + run * t, l.to_m()));
            }
        }
    }
    found
}

fn body(view: &View, pipe: &PipeRun, ground: &[(f64, f64)], low: f64) -> Vec<Item> {
    let mut items = vec![];
    let mut ring: Vec<At> = ground.iter().map(|g| view.xy(g.0, g.1)).collect();
    if let (Some(a), Some(b)) = (ground.first(), ground.last()) {
        ring.push(view.xy(b.0, low));
        ring.push(view.xy(a.0, low));
        items.push(area(ring, None, Some(EARTH_WASH)));
        let surface: Vec<At> = ground.iter().map(|g| view.xy(g.0, g.1)).collect();
        items.push(line(surface, Pen::new(THIN, EARTH).dashed(EXISTING)));
    }
    let bore = pipe.diameter.to_m();
    let invert: Vec<At> = pipe.points.iter().map(|p| view.xy(p.chainage.to_m(), p.invert.to_m())).collect();
    let mut tube = invert.clone();
    tube.extend(pipe.points.iter().rev().map(|p| view.xy(p.chainage.to_m(), p.invert.to_m() + bore)));
    items.push(area(tube, Some(Pen::new(FINE, BLUE)), Some(crate::pens::BLUE_WASH)));
    items.push(line(invert, Pen::new(MEDIUM, BLUE)));
    for n in &pipe.nodes {
        let Some(top) = n.ground.filter(|_| !matches!(n.kind, NodeKind::Outlet | NodeKind::End | NodeKind::Bend))
        else {
            continue;
        };
        let x = n.chainage.to_m();
        items.push(stroke(view.xy(x, n.invert.to_m()), view.xy(x, top.to_m()), Pen::new(MEDIUM, BLACK)));
    }
    vec![crate::pens::group("drain", format!("drain of {}", pipe.wall), items)]
}

/// Distance, ground, invert and depth under each point of the pipe.
fn figures(plan: &Plan, pipe: &PipeRun, view: &View, top: f64, width: f64) -> Vec<Item> {
    let units = plan.job.about.units;
    let mut items = vec![];
    let names = ["along the pipe", "existing ground", "invert", "depth to invert"];
    for (k, name) in names.iter().enumerate() {
        let y = top + ROW * k as f64;
        items.push(stroke(At::mm(2.0, y), At::mm(width - 4.0, y), Pen::new(HAIR, GREY)));
        items.push(Label::new(At::mm(2.5, y + ROW / 2.0 + SMALL * 0.36), *name, SMALL).ink(GREY).into());
    }
    let mut last = NAMES;
    let count = pipe.points.len();
    for (i, p) in pipe.points.iter().enumerate() {
        // What would not stand beside its neighbours is moved on; near the right edge there is an end.
        let x = view.xy(p.chainage.to_m(), 0.0).x.max(last + COLUMN);
        if x > width - 3.0 - COLUMN * (count - 1 - i).min(1) as f64 {
            continue;
        }
        last = x;
        let ground = plan.survey.ground.level_at(p.at);
        let depth = |g: Level| units.length((g - p.invert).max(Length::ZERO));
        let texts = [
            units.run(p.chainage),
            ground.map_or("–".into(), |g| level(units, g)),
            level(units, p.invert),
            ground.map_or("–".into(), depth),
        ];
        for (k, text) in texts.into_iter().enumerate() {
            let at = At::mm(x + SMALL * 0.36, top + ROW * (k as f64 + 1.0) - 0.8);
            items.push(Label::new(at, text, SMALL).ink(if k == 2 { BLUE } else { BLACK }).turned(90.0).into());
        }
    }
    items
}

/// Pieces of pipe up to this long are fittings. Ours.
const BEND: Length = Length::mm(250.0);

fn wishes(plan: &Plan, pipe: &PipeRun, view: &View, ground: &[(f64, f64)]) -> Vec<Wish> {
    let units = plan.job.about.units;
    let mut out = vec![];
    for n in &pipe.nodes {
        let up = n.ground.filter(|g| *g > n.invert).unwrap_or(n.invert);
        let at = view.xy(n.chainage.to_m(), up.to_m());
        out.push(Wish::new(at, n.kind.words()).rank(50).clear(1.2).lean(0.0, -1.0).of("drain"));
    }
    // A piece no longer than a bend says nothing that its neighbours do not.
    for r in pipe.reaches.iter().filter(|r| BEND < r.chainage.1 - r.chainage.0) {
        let middle = 0.5 * (r.chainage.0 + r.chainage.1).to_m();
        let near = pipe.points.windows(2).find(|w| w[1].chainage.to_m() >= middle);
        let Some(w) = near else { continue };
        let invert = 0.5 * (w[0].invert.to_m() + w[1].invert.to_m());
        let bore = groundhold_quantity::trim(pipe.diameter.to_mm(), 0);
        let mut text = format!("⌀{bore}, {}, {}", fall(r.fall), units.run(r.chainage.1 - r.chainage.0));
        if let (Some(q), Some(filled)) = (r.flow, r.filled) {
            let flow = groundhold_quantity::trim(q.to_l_per_s(), 2);
            text = format!("{text}, {flow} l/s, {} % full", groundhold_quantity::trim(filled * 100.0, 0));
        }
        out.push(Wish::new(view.xy(middle, invert), text).ink(BLUE).rank(40).clear(1.5).optional(60.0).of("drain"));
    }
    if let Some(g) = ground.get(ground.len() / 7) {
        out.push(Wish::new(view.xy(g.0, g.1), "existing ground").ink(EARTH).rank(20).clear(1.0).optional(60.0));
    }
    out
}
