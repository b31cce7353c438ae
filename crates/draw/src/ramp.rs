//! How does a ramp rise along its middle line, and what is cut and filled under it?

use groundhold_plan::Plan;
use groundhold_quantity::{Length, Point};
use groundhold_shape::Ramp;

use crate::dimension::{dimension, figure, level_mark};
use crate::frame::Frame;
use crate::hatch;
use crate::naming::{along, fall, level};
use crate::pens::{
    BLACK, CUT_WASH, EARTH, EARTH_WASH, EXISTING, FILL_WASH, FINE, GREEN, GREY, HAIR, MEDIUM, STONE_WASH, THICK, THIN,
    area, line,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Pen, Scene};
use crate::site_section::{foot, footer};
use crate::view::{View, arrow, level_scale, scale_for};

/// Stone under a ramp, as the dig reckons with it, metres.
pub(crate) const BUILD_UP: f64 = groundhold_plan::RAMP_BUILD_UP.to_m();

/// Places along a ramp: chainage, finished, existing.
fn places(plan: &Plan, r: &Ramp) -> Vec<(f64, f64, Option<f64>)> {
    let long: f64 = r.path.windows(2).map(|w| (w[1] - w[0]).length()).sum();
    (0..=240)
        .filter_map(|k| {
            let t = f64::from(k) / 240.0;
            let (p, _) = along(&r.path, t)?;
            let new = match k {
                0 => r.foot_level.to_m(),
                240 => r.top_level.to_m(),
                _ => plan.shaped.level_at(&plan.survey.ground, p)?.to_m(),
            };
            Some((long * t, new, plan.survey.ground.level_at(p).map(|l| l.to_m())))
        })
        .collect()
}

/// A ramp cut along its middle line, laid out straight; an empty sheet for an unknown ramp.
pub(crate) fn ramp_section(plan: &Plan, ramp: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Ramp {ramp}"));
    let Some(r) = plan.shaped.ramps.iter().find(|r| r.id == ramp) else { return scene };
    let ps = places(plan, r);
    let (Some(first), Some(last)) = (ps.first(), ps.last()) else { return scene };
    let frame = Frame::new(16.0, 16.0, width - 8.0, height - foot(width) - 15.0);
    if frame.width() < 20.0 || frame.height() < 12.0 {
        return scene;
    }
    let lows = ps.iter().map(|p| p.2.unwrap_or(p.1).min(p.1)).fold(f64::INFINITY, f64::min);
    let high = ps.iter().map(|p| p.2.unwrap_or(p.1).max(p.1)).fold(f64::NEG_INFINITY, f64::max);
    let low = lows - 0.25;
    let scale = scale_for(last.0 - first.0, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(first.0, low), Point::m(last.0, high), &frame);
    scene.scale = view.words();
    let mut items = body(&view, &ps, low);
    items.extend(level_scale(&view, plan.job.about.units, view.xy(first.0, low).x - 1.0, low, high));
    items.extend(measures(plan, r, &view, &ps, low));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, height - foot(width)));
    placer.heed(&items, 2.0);
    let labels = placer.place(wishes(plan, r, &view, &ps));
    scene.items = items;
    scene.items.extend(labels);
    let title = format!(
        "Ramp {}, cut along its middle line, laid out straight; {} wide",
        r.id,
        plan.job.about.units.run(r.width)
    );
    footer(&mut scene, &view, plan.job.about.units, &title);
    scene
}

fn body(view: &View, ps: &[(f64, f64, Option<f64>)], low: f64) -> Vec<Item> {
    let new: Vec<At> = ps.iter().map(|p| view.xy(p.0, p.1)).collect();
    let mut ring = new.clone();
    if let (Some(a), Some(b)) = (ps.first(), ps.last()) {
        ring.push(view.xy(b.0, low));
        ring.push(view.xy(a.0, low));
    }
    let mut items = vec![area(ring, None, Some(EARTH_WASH))];
    for w in ps.windows(2) {
        let (Some(a), Some(b)) = (w[0].2, w[1].2) else { continue };
        let mid = (a + b - w[0].1 - w[1].1) / 2.0;
        let quad = vec![view.xy(w[0].0, a), view.xy(w[1].0, b), view.xy(w[1].0, w[1].1), view.xy(w[0].0, w[0].1)];
        let (wash, angle, ink) = if mid > 0.0 { (CUT_WASH, 45.0, EARTH) } else { (FILL_WASH, 135.0, GREEN) };
        items.push(area(quad.clone(), None, Some(wash)));
        items.extend(hatch::lines(&[quad], angle, 1.8, &Pen::new(HAIR, ink)));
    }
    let mut stone = new.clone();
    stone.extend(ps.iter().rev().map(|p| view.xy(p.0, p.1 - BUILD_UP)));
    items.push(area(stone.clone(), Some(Pen::new(FINE, GREY)), Some(STONE_WASH)));
    items.extend(hatch::stones(&stone, (view.mm(BUILD_UP) * 0.55).clamp(0.8, 2.0)));
    let old: Vec<At> = ps.iter().filter_map(|p| Some(view.xy(p.0, p.2?))).collect();
    items.push(line(old, Pen::new(THIN, EARTH).dashed(EXISTING)));
    items.push(line(new, Pen::new(THICK, BLACK)));
    items
}

fn measures(plan: &Plan, r: &Ramp, view: &View, ps: &[(f64, f64, Option<f64>)], low: f64) -> Vec<Item> {
    let units = plan.job.about.units;
    let mut out = vec![];
    let (Some(first), Some(last)) = (ps.first(), ps.last()) else { return out };
    let y = view.xy(0.0, low).y + 6.0;
    // The bends of the path, and its length in all.
    let mut at = vec![first.0];
    let mut sum = 0.0;
    for w in r.path.windows(2) {
        sum += (w[1] - w[0]).length();
        at.push(sum);
    }
    let p = |x: f64| At::mm(view.xy(x, 0.0).x, y);
    if at.len() > 2 {
        for w in at.windows(2) {
            out.extend(dimension(p(w[0]), p(w[1]), 0.0, &figure(units, Length::m(w[1] - w[0]))));
        }
    }
    let down = if at.len() > 2 { -5.0 } else { 0.0 };
    out.extend(dimension(p(first.0), p(last.0), down, &figure(units, r.length)));
    out.extend(level_mark(view.xy(last.0 - view.metres(4.0), last.1), &level(units, r.top_level), true));
    out.extend(level_mark(
        view.xy(first.0 + view.metres(4.0), first.1 + r.gradient.to_ratio() * view.metres(4.0)),
        &level(units, r.foot_level),
        false,
    ));
    let n = ps.len();
    if n > 10 {
        let up = |i: usize| {
            let q = view.xy(ps[i].0, ps[i].2.unwrap_or(ps[i].1).max(ps[i].1));
            At::mm(q.x, q.y - 3.5)
        };
        out.extend(arrow(&[up(n * 4 / 10), up(n * 6 / 10)], Pen::new(MEDIUM, BLACK)));
    }
    out
}

fn wishes(plan: &Plan, r: &Ramp, view: &View, ps: &[(f64, f64, Option<f64>)]) -> Vec<Wish> {
    let units = plan.job.about.units;
    let mut out = vec![];
    let at = |i: usize| view.xy(ps[i].0, ps[i].2.unwrap_or(ps[i].1).max(ps[i].1));
    let n = ps.len();
    let w = Wish::new(at(n / 2), format!("up {}", fall(r.gradient))).bold();
    out.push(
        w.and(format!("rises {} over {}", units.length(r.rise), units.run(r.run))).rank(60).clear(5.0).lean(0.0, -1.0),
    );
    let stone = Wish::new(
        view.xy(ps[n / 4].0, ps[n / 4].1 - BUILD_UP * 0.6),
        format!("stone {} thick", units.length(Length::m(BUILD_UP))),
    );
    out.push(stone.rank(40).clear(1.0).lean(0.2, 1.0));
    let gap = |p: &(f64, f64, Option<f64>)| p.2.map_or(0.0, |o| o - p.1);
    let cut = ps.iter().max_by(|a, b| gap(a).total_cmp(&gap(b)));
    let fill = ps.iter().min_by(|a, b| gap(a).total_cmp(&gap(b)));
    for (p, word) in [(cut, "cut"), (fill, "fill")] {
        if let Some(p) = p.filter(|p| if word == "cut" { gap(p) > 0.02 } else { gap(p) < -0.02 }) {
            let text = format!("{word} {}", units.length(Length::m(gap(p).abs())));
            out.push(Wish::new(view.xy(p.0, p.1 + gap(p) / 2.0), text).rank(45).clear(1.5));
        }
    }
    if let Some(p) = ps.get(n / 7).filter(|p| p.2.is_some()) {
        out.push(Wish::new(view.xy(p.0, p.2.unwrap_or(p.1)), "existing ground").ink(EARTH).rank(20).clear(1.0));
    }
    out
}
