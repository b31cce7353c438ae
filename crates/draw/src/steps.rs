//! How is a flight of steps built: risers, treads, what lies under them, and where it starts and ends?

use groundhold_plan::Plan;
use groundhold_quantity::{Length, Level, Point};
use groundhold_shape::Flight;

use crate::clip::clip;
use crate::dimension::{dimension, figure, level_mark};
use crate::frame::Frame;
use crate::hatch;
use crate::naming::level;
use crate::pens::{
    BLACK, EARTH, EARTH_WASH, EXISTING, FINE, GREY, HAIR, HIDDEN, MEDIUM, SMALL, STONE_WASH, THICK, THIN, area, group,
    line, stroke,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Pen, Scene};
use crate::site_section::{foot, footer, wall_cuts};
use crate::view::{View, arrow, scale_among};

/// Stone under the treads, as the dig reckons with it, metres.
pub(crate) const BUILD_UP: f64 = groundhold_plan::TREAD_BUILD_UP.to_m();
/// Shown beyond both ends, metres.
const BEYOND: f64 = 0.7;

/// A flight cut along its middle; an empty sheet for an unknown flight.
pub(crate) fn steps_detail(plan: &Plan, flight: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Steps {flight}"));
    let Some(f) = plan.shaped.flights.iter().find(|f| f.id == flight) else { return scene };
    let frame = Frame::new(6.0, 12.0, width - 22.0, height - foot(width) - 2.0);
    if frame.width() < 25.0 || frame.height() < 20.0 {
        return scene;
    }
    let (from, to) = (-BEYOND, f.run.to_m() + BEYOND);
    let low = f.foot_level.to_m() - 0.45;
    let high = f.top_level.to_m() + 0.35;
    let scale = scale_among(&crate::view::SCALES, to - from, high - low, frame.width(), frame.height() - 8.0);
    let view = View::centred(scale, Point::m(from, low), Point::m(to, high), &frame);
    scene.scale = view.words();
    let profile = profile(plan, f, from, to);
    let paper: Vec<At> = profile.iter().map(|p| view.at(*p)).collect();
    let window = Frame::new(view.xy(from, 0.0).x, view.xy(0.0, high).y, view.xy(to, 0.0).x, view.xy(0.0, low).y);
    let mut items = clip(body(plan, f, &view, &paper, from, to, low), &window);
    items.extend(measures(plan, f, &view, &window));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, height - foot(width)));
    placer.heed(&items, 2.0);
    let labels = placer.place(wishes(plan, f, &view, from));
    scene.items = items;
    scene.items.extend(labels);
    let units = plan.job.about.units;
    let title = format!("Steps {}, cut along the middle; {} wide, all risers alike", f.id, units.length(f.width));
    footer(&mut scene, &view, plan.job.about.units, &title);
    scene
}

/// Finished surface from above the top to below the foot: x is metres from the top riser outwards.
fn profile(plan: &Plan, f: &Flight, from: f64, to: f64) -> Vec<Point> {
    let mut out = vec![Point::m(from, f.top_level.to_m())];
    let n = f.nosings.len();
    for (i, (at, l)) in f.nosings.iter().enumerate() {
        let x = (*at - f.top).dot(f.outward);
        out.push(Point::m(x, l.to_m()));
        let below = if i + 1 < n { f.nosings[i + 1].1 } else { f.foot_level };
        out.push(Point::m(x, below.to_m()));
    }
    // Existing ground goes on from the foot.
    let foot = f.run.to_m();
    let steps = 20;
    for k in 1..=steps {
        let x = foot + (to - foot) * f64::from(k) / f64::from(steps);
        let at = f.top + f.outward * x;
        if let Some(l) = plan.shaped.level_at(&plan.survey.ground, at) {
            out.push(Point::m(x, l.to_m()));
        }
    }
    out
}

fn body(plan: &Plan, f: &Flight, view: &View, paper: &[At], from: f64, to: f64, low: f64) -> Vec<Item> {
    let mut ring = paper.to_vec();
    let end = ring.last().map_or(view.xy(to, low), |p| *p);
    ring.push(At::mm(end.x, view.xy(to, low).y));
    ring.push(view.xy(from, low));
    let mut items = vec![area(ring.clone(), None, Some(EARTH_WASH))];
    items.extend(hatch::ground(&ring, 7.0, EARTH));
    let mut starts: Vec<f64> = f.nosings.iter().map(|(p, _)| (*p - f.top).dot(f.outward)).collect();
    starts.push(f.run.to_m());
    for (i, tread) in f.treads.iter().enumerate() {
        let (Some(a), Some(b)) = (starts.get(i), starts.get(i + 1)) else { continue };
        let l = tread.level.to_m();
        let rect = |x0: f64, x1: f64, y0: f64, y1: f64| {
            vec![view.xy(x0, y1), view.xy(x1, y1), view.xy(x1, y0), view.xy(x0, y0)]
        };
        let stone = rect(*a, *b, l - BUILD_UP, l);
        let mut here = vec![area(stone.clone(), Some(Pen::new(FINE, GREY)), Some(STONE_WASH))];
        here.extend(hatch::stones(&stone, 1.8));
        items.push(group(format!("{} tread {}", f.id, i + 1), format!("tread {}", i + 1), here));
    }
    let old: Vec<At> = (0..=120)
        .filter_map(|k| {
            let x = from + (to - from) * f64::from(k) / 120.0;
            let l = plan.survey.ground.level_at(f.top + f.outward * x)?;
            Some(view.xy(x, l.to_m()))
        })
        .collect();
    items.push(line(old, Pen::new(THIN, EARTH).dashed(EXISTING)));
    items.push(line(paper.to_vec(), Pen::new(THICK, BLACK)));
    // The wall at the top of the flight, where there is one.
    for mut wall in wall_cuts(plan, f.top + f.outward * from, f.top + f.outward * to) {
        wall.x += from;
        items.extend(wall.draw(view));
    }
    // The nosing line.
    if let (Some(a), Some(b)) = (f.nosings.first(), f.nosings.last()) {
        let p = |n: &(Point, Level)| view.xy((n.0 - f.top).dot(f.outward), n.1.to_m());
        items.push(stroke(p(a), p(b), Pen::new(HAIR, GREY).dashed(HIDDEN)));
    }
    items
}

fn measures(plan: &Plan, f: &Flight, view: &View, window: &Frame) -> Vec<Item> {
    let units = plan.job.about.units;
    let mut out = vec![];
    let xs: Vec<f64> = f.nosings.iter().map(|(p, _)| (*p - f.top).dot(f.outward)).collect();
    let x_of = |x: f64| view.xy(x, 0.0).x;
    // Goings over the flight.
    let y = view.xy(0.0, f.top_level.to_m()).y - 8.0;
    for w in xs.windows(2) {
        let text = figure(units, Length::m(w[1] - w[0]));
        out.extend(dimension(At::mm(x_of(w[0]), y), At::mm(x_of(w[1]), y), 0.0, &text));
    }
    let y2 = y - 5.0;
    if xs.len() > 1 {
        out.extend(dimension(At::mm(x_of(0.0), y2), At::mm(x_of(f.run.to_m()), y2), 0.0, &figure(units, f.run)));
    }
    // Risers beside it.
    let right = window.right + 4.0;
    let mut levels: Vec<f64> = f.nosings.iter().map(|(_, l)| l.to_m()).collect();
    levels.push(f.foot_level.to_m());
    for w in levels.windows(2) {
        let (a, b) = (view.xy(0.0, w[0]).y, view.xy(0.0, w[1]).y);
        let text = figure(units, Length::m(w[0] - w[1]));
        out.extend(crate::dimension::sized(
            At::mm(right, b),
            At::mm(right, a),
            0.0,
            &text,
            if b - a > 8.0 { crate::pens::FIGURE } else { SMALL * 0.85 },
        ));
    }
    let (a, b) = (view.xy(0.0, f.top_level.to_m()).y, view.xy(0.0, f.foot_level.to_m()).y);
    out.extend(dimension(At::mm(right + 9.0, b), At::mm(right + 9.0, a), 0.0, &figure(units, f.rise)));
    out.extend(level_mark(view.xy(-BEYOND * 0.45, f.top_level.to_m()), &level(units, f.top_level), true));
    let foot = f.run.to_m() + BEYOND * 0.3;
    out.extend(level_mark(view.xy(foot, f.foot_level.to_m()), &level(units, f.foot_level), false));
    // Up.
    let (p, q) = (
        view.xy(f.run.to_m() * 0.8, f.top_level.to_m() - f.rise.to_m() * 0.62),
        view.xy(f.run.to_m() * 0.35, f.top_level.to_m() - f.rise.to_m() * 0.17),
    );
    let shift = |p: At| At::mm(p.x + 5.0, p.y - 5.0);
    out.extend(arrow(&[shift(p), shift(q)], Pen::new(MEDIUM, BLACK)));
    out
}

fn wishes(plan: &Plan, f: &Flight, view: &View, from: f64) -> Vec<Wish> {
    let units = plan.job.about.units;
    let mid = f.nosings.get(f.nosings.len() / 2);
    let mut out = vec![];
    if let Some((p, l)) = mid {
        let x = (*p - f.top).dot(f.outward);
        let w = Wish::new(
            view.xy(x + f.going.to_m() * 0.5, l.to_m() - f.riser.to_m() - BUILD_UP * 0.6),
            "tread on rolled stone",
        );
        out.push(
            w.and(format!("{} thick in all", units.length(Length::m(BUILD_UP)))).rank(40).clear(0.8).lean(-0.6, 1.0),
        );
    }
    let w = Wish::new(
        view.xy(f.run.to_m() * 0.55, f.top_level.to_m() - f.rise.to_m() * 0.3),
        format!("{} risers of {}", f.risers, units.length(f.riser)),
    )
    .and(format!("going {}, 2R + G = {}", units.length(f.going), units.length(f.two_r_plus_g)))
    .and(format!("pitch {:.1}°", f.pitch.to_deg()));
    out.push(w.rank(60).clear(8.0).lean(1.0, -1.0));
    let x = from * 0.5;
    if let Some(l) = plan.survey.ground.level_at(f.top + f.outward * x) {
        out.push(Wish::new(view.xy(x, l.to_m()), "existing ground").size(SMALL).ink(EARTH).rank(10).clear(1.0));
    }
    out
}
