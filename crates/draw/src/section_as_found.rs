//! How does a wall that stands look in section as it was found: its lean, its belly, its foot, and how far to keep away?

use groundhold_hold::standing::{AsFound, BelowIt, Cause, Need, keep_clear};
use groundhold_plan::{OldWallPlan, Plan};
use groundhold_quantity::{Length, Point};

use crate::clip::clip;
use crate::dimension::{dimension, figure};
use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLACK, BLUE, BUILT_WASH, EARTH, EARTH_WASH, FINE, HIDDEN, MEDIUM, RED, SMALL, STONE_WASH, THICK, THIN, area, line,
    stroke,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Pen, Scene};
use crate::site_section::{foot, footer};
use crate::view::{View, scale_among};

/// Body where nobody measured it, metres.
const GUESSED: f64 = 0.3;
/// Points up the face.
const FACE: u32 = 24;

/// A standing wall in section; an empty sheet for an unknown one. Front is to the right; the foot of its face is 0, 0.
pub(crate) fn section_as_found(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("{wall} as found"));
    let Some(old) = plan.old_walls.iter().find(|w| w.id == wall) else { return scene };
    let frame = Frame::new(10.0, 10.0, width - 10.0, height - foot(width) - 4.0);
    if frame.width() < 25.0 || frame.height() < 20.0 {
        return scene;
    }
    let s = &old.found.seen;
    let (h, below) = (s.height.to_m(), s.below.map_or(0.25, |b| b.to_m()));
    let (left, right) = (-(h * 1.3 + 0.6), h * 1.3 + 0.4);
    let (low, high) = (-(below + 0.3), h + 0.4);
    let scale = scale_among(&crate::view::SCALES, right - left, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(left, low), Point::m(right, high), &frame);
    let window = Frame::new(view.xy(left, 0.0).x, view.xy(0.0, high).y, view.xy(right, 0.0).x, view.xy(0.0, low).y);
    let mut items = clip(ground_and_body(&old.found, &view, (left, right, low)), &window);
    items.extend(water(old, &view, left));
    items.extend(measures(&old.found, &view, plan));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, height - foot(width)));
    placer.heed(&items, 2.0);
    let labels = placer.place(wishes(old, &view));
    scene.scale = view.words();
    scene.items = items;
    scene.items.extend(labels);
    footer(&mut scene, &view, plan.job.about.units, &format!("{wall} as found, {}", s.made.words()));
    scene
}

/// Where the face stands out at a height: the lean grows evenly, the belly is a hump about its own height.
fn face(w: &AsFound, y: f64) -> f64 {
    let s = &w.seen;
    let h = s.height.to_m();
    let lean = s.lean.to_m() * y / h;
    let belly = s.bulge.map_or(0.0, |(size, at)| {
        let (at, reach) = (at.to_m().clamp(0.01, h), h / 2.0);
        let off = ((y - at) / reach).clamp(-1.0, 1.0);
        size.to_m() * (1.0 - off * off) * (1.0 - off * off)
    });
    lean + belly
}

fn ground_and_body(w: &AsFound, view: &View, (left, right, low): (f64, f64, f64)) -> Vec<Item> {
    let s = &w.seen;
    let h = s.height.to_m();
    let thick = s.posts.map_or(s.thickness.map_or(GUESSED, |t| t.to_m()), |p| p.depth.to_m());
    let below = s.below.map_or(0.0, |b| b.to_m());
    let dug = s.dug.map_or(0.0, |d| d.to_m());
    let up = |back: f64| -> Vec<At> {
        (0..=FACE).map(|k| h * f64::from(k) / f64::from(FACE)).map(|y| view.xy(face(w, y) - back, y)).collect()
    };
    let (front, back) = (up(0.0), up(thick));
    let mut behind: Vec<At> = vec![view.xy(left, low), view.xy(left, h)];
    behind.extend(back.iter().rev().copied());
    behind.extend([view.xy(-thick, low)]);
    let before = vec![view.xy(-thick, low), view.xy(-thick, -dug), view.xy(right, -dug), view.xy(right, low)];
    let mut items = vec![];
    for ring in [&behind, &before] {
        items.push(area(ring.clone(), None, Some(EARTH_WASH)));
        items.extend(hatch::ground(ring, 7.0, EARTH));
    }
    items.push(stroke(view.xy(left, h), back[back.len() - 1], Pen::new(THICK, BLACK)));
    items.push(stroke(view.xy(0.0, -dug), view.xy(right, -dug), Pen::new(THICK, BLACK)));
    if dug > 0.0 || s.beneath.contains(&BelowIt::DugAway) {
        items.push(stroke(view.xy(0.0, 0.0), view.xy(right, 0.0), Pen::new(THIN, EARTH).dashed(HIDDEN)));
    }
    let mut body = vec![view.xy(-thick, -below), view.xy(0.0, -below)];
    body.extend(front);
    body.extend(back.iter().rev().copied());
    let wash = if s.made.is_timber() { BUILT_WASH } else { STONE_WASH };
    let pen = Pen::new(MEDIUM, BLACK);
    // A foot that nobody has seen is not drawn as if somebody had.
    let pen = if s.below.is_none() { pen.dashed(HIDDEN) } else { pen };
    items.push(area(body.clone(), Some(pen), Some(wash)));
    if !s.made.is_timber() {
        items.extend(hatch::stones(&body, 3.0));
    }
    items.push(stroke(view.xy(0.0, 0.0), view.xy(0.0, h + 0.15), Pen::new(FINE, RED).dashed(HIDDEN)));
    items
}

/// The water that would bring it to its limit.
fn needed_water(old: &OldWallPlan) -> Option<f64> {
    let h = old.back.hypotheses.iter().find(|h| h.cause == Cause::Water)?;
    let Need::At(x) = h.need else { return None };
    let below =
        if old.found.seen.posts.is_some() { Length::ZERO } else { old.found.seen.below.unwrap_or(Length::ZERO) };
    Some(x - below.to_m()).filter(|y| *y > 0.0)
}

fn water(old: &OldWallPlan, view: &View, left: f64) -> Vec<Item> {
    let Some(y) = needed_water(old) else { return vec![] };
    vec![line(vec![view.xy(left * 0.95, y), view.xy(-0.35, y)], Pen::new(MEDIUM, BLUE).dashed(HIDDEN))]
}

fn measures(w: &AsFound, view: &View, plan: &Plan) -> Vec<Item> {
    let (s, u) = (&w.seen, plan.job.about.units);
    let h = s.height.to_m();
    let side = view.xy(h * 0.8 + 0.2, 0.0).x;
    let mut items =
        dimension(At::mm(side, view.xy(0.0, h).y), At::mm(side, view.xy(0.0, 0.0).y), 0.0, &figure(u, s.height));
    if s.lean > Length::ZERO {
        let y = h + 0.2;
        items.extend(dimension(view.xy(0.0, y), view.xy(s.lean.to_m(), y), 0.0, &figure(u, s.lean)));
    }
    items
}

fn wishes(old: &OldWallPlan, view: &View) -> Vec<Wish> {
    let (w, u) = (&old.found, old.found.units);
    let s = &w.seen;
    let h = s.height.to_m();
    let (least, most) = keep_clear(w);
    let mut all = vec![
        Wish::new(view.xy(h * 0.9, 0.0), format!("keep {} to {} away", u.run(least), u.run(most))).size(SMALL).ink(RED),
    ];
    if let Some((size, at)) = s.bulge {
        let y = at.to_m();
        let words = format!("bellies out {} at {}", u.length(size), u.length(at));
        all.push(Wish::new(view.xy(face(w, y), y), words).size(SMALL));
    }
    if let Some(y) = needed_water(old) {
        let words = format!("water here brings it to its limit: {}", u.length(Length::m(y)));
        all.push(Wish::new(view.xy(-0.6 * h - 0.3, y), words).size(SMALL).ink(BLUE));
    }
    if s.below.is_none() {
        all.push(Wish::new(view.xy(-0.1, 0.0), "foot not seen").size(SMALL));
    }
    all
}
