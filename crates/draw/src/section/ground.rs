//! The ground in section: turf, topsoil, subsoil, the stone of the drain, the stone under a pad.

use groundhold_drain::ZonePoint;
use groundhold_quantity::{Length, Level};
use groundhold_shape::GroundKind;

use super::{Cut, members};
use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLUE, EARTH, EARTH_WASH, EXISTING, FINE, GREEN, GREY, HAIR, MEDIUM, SMALL, STONE_WASH, THICK, THIN, TOPSOIL_WASH,
    WHITE, area, circle, group, line, stroke,
};
use crate::placer::Wish;
use crate::scene::{At, Item, Pen};

const STEP: f64 = 0.02;

fn xs(from: f64, to: f64) -> Vec<f64> {
    let n = ((to - from) / STEP).ceil().clamp(1.0, 2000.0) as usize;
    (0..=n).map(|i| from + (to - from) * i as f64 / n as f64).collect()
}

/// A band between two levels that go with x.
fn band(cut: &Cut, from: f64, to: f64, top: &dyn Fn(f64) -> f64, bottom: &dyn Fn(f64) -> f64) -> Vec<At> {
    let x = xs(from, to);
    let mut ring: Vec<At> = x.iter().map(|x| cut.at(*x, top(*x))).collect();
    ring.extend(x.iter().rev().map(|x| cut.at(*x, bottom(*x).min(top(*x)))));
    ring
}

/// Turf and topsoil together.
fn topsoil(cut: &Cut) -> f64 {
    (cut.plan.job.ground.turf + cut.plan.job.ground.topsoil).to_m()
}

/// What lies on top at a distance from the wall: stone under a pad, steps or a ramp, or turf and topsoil. Its thickness.
#[derive(Clone, Copy, PartialEq)]
enum Top {
    Stone(f64),
    Soil(f64),
}

fn top(cut: &Cut, x: f64) -> Top {
    let soil = Top::Soil(topsoil(cut));
    let Some(piece) = cut.plan.shaped.ground_at(cut.cross.at + cut.cross.facing * x) else { return soil };
    let pad = || cut.plan.job.pads.iter().find(|p| p.id == piece.of).map(|p| p.build_up);
    match piece.kind {
        GroundKind::Pad => pad().filter(|b| *b > Length::ZERO).map_or(soil, |b| Top::Stone(b.to_m())),
        GroundKind::Tread => Top::Stone(crate::steps::BUILD_UP),
        GroundKind::Ramp => Top::Stone(crate::ramp::BUILD_UP),
        GroundKind::Batter => soil,
    }
}

/// A place beside the wall, moved off it to where the ground is known: it is the same as a little farther off.
fn near(cut: &Cut, x: f64) -> f64 {
    if x < 0.0 { x.min(members::back(cut) - 0.07) } else { x.max(cut.cross.toe.to_m() + 0.05) }
}

/// Runs of one kind of top between two distances; close to the wall it is as a little farther off.
fn runs(cut: &Cut, from: f64, to: f64) -> Vec<(Top, f64, f64)> {
    let look = |x: f64| near(cut, x);
    let mut out: Vec<(Top, f64, f64)> = vec![];
    for w in xs(from, to).windows(2) {
        let here = top(cut, look((w[0] + w[1]) / 2.0));
        match out.last_mut().filter(|l| l.0 == here) {
            Some(l) => l.2 = w[1],
            None => out.push((here, w[0], w[1])),
        }
    }
    out
}

/// Behind the boards to the drawing's edge, and before the wall.
fn stretches(cut: &Cut) -> [(f64, f64); 2] {
    [(cut.from, members::back(cut)), (0.0, cut.to)]
}

fn surface(cut: &Cut, x: f64) -> f64 {
    cut.finished(near(cut, x))
}

pub(crate) fn layers(cut: &Cut) -> Vec<Item> {
    let mut items = vec![];
    let low = cut.low - 0.2;
    let level = |x: f64| surface(cut, x);
    for (from, to) in [(cut.from, -1e-6), (0.0, cut.to)] {
        let ring = band(cut, from, to, &level, &|_| low);
        items.push(area(ring.clone(), None, Some(EARTH_WASH)));
        items.extend(hatch::ground(&ring, 7.0, EARTH));
    }
    for (kind, from, to) in stretches(cut).into_iter().flat_map(|(a, b)| runs(cut, a, b)) {
        match kind {
            Top::Soil(t) if t > 0.0 => {
                let ring = band(cut, from, to, &level, &|x| level(x) - t);
                items.push(area(ring.clone(), Some(Pen::new(HAIR, EARTH)), Some(TOPSOIL_WASH)));
                items.extend(hatch::dots(&ring, 1.3, EARTH));
            }
            Top::Stone(t) if t > 0.0 => {
                let ring = band(cut, from, to, &level, &|x| level(x) - t);
                items.push(area(ring.clone(), Some(Pen::new(FINE, GREY)), Some(STONE_WASH)));
                items.extend(hatch::stones(&ring, 1.9));
            }
            _ => {}
        }
    }
    vec![group("", "ground", items)]
}

/// The zone at a chainage.
pub(crate) fn zone_at(profile: &[ZonePoint], chainage: Length) -> Option<ZonePoint> {
    let after = profile.iter().position(|z| chainage <= z.chainage)?;
    let b = profile[after];
    let Some(a) = after.checked_sub(1).map(|i| profile[i]) else { return Some(b) };
    let d = (b.chainage - a.chainage).to_m();
    let t = if d > 0.0 { (chainage - a.chainage).to_m() / d } else { 1.0 };
    let mix = |p: Level, q: Level| p + (q - p) * t;
    Some(ZonePoint {
        chainage,
        bottom: mix(a.bottom, b.bottom),
        stone_top: mix(a.stone_top, b.stone_top),
        ground: mix(a.ground, b.ground),
    })
}

fn drain(cut: &Cut) -> Option<(ZonePoint, f64)> {
    let zone = cut.plan.drained.wall(&cut.wall.id)?.zone.as_ref()?;
    Some((zone_at(&zone.profile, cut.cross.chainage)?, zone.width.to_m()))
}

/// The pipe: its invert and its inside diameter.
fn pipe(cut: &Cut) -> Option<(f64, f64)> {
    let run = cut.plan.drained.pipe(&cut.wall.id)?;
    let mut known: Vec<(f64, f64)> =
        run.points.iter().filter_map(|p| p.wall_chainage.map(|c| (c.to_m(), p.invert.to_m()))).collect();
    known.sort_by(|a, b| a.0.total_cmp(&b.0));
    let c = cut.cross.chainage.to_m();
    let i = known.iter().position(|k| c <= k.0).unwrap_or(known.len().checked_sub(1)?);
    let b = known[i];
    let a = if i > 0 { known[i - 1] } else { b };
    let t = if b.0 > a.0 { ((c - a.0) / (b.0 - a.0)).clamp(0.0, 1.0) } else { 0.0 };
    Some((a.1 + (b.1 - a.1) * t, run.diameter.to_m()))
}

/// Where the stone stands, so that no label covers it.
pub(crate) fn zone_body(cut: &Cut) -> Option<Frame> {
    let (z, wide) = drain(cut).filter(|(z, _)| z.stone_top > z.bottom)?;
    let back = members::back(cut);
    Frame::around(&cut.rect(back - wide, back, z.bottom.to_m(), z.stone_top.to_m()))
}

/// The middle of the pipe: behind the boards, past the holes, inside the stone.
fn pipe_x(cut: &Cut, wide: f64, r: f64) -> f64 {
    let back = members::back(cut);
    let hole = cut.cross.heel.to_m();
    (back - r - 0.07).min(hole - r - 0.03).max(back - wide + r + 0.02)
}

/// Stone behind the boards, fabric round it, the pipe in it.
pub(crate) fn drain_zone(cut: &Cut) -> Vec<Item> {
    let Some((z, wide)) = drain(cut) else { return vec![] };
    let back = members::back(cut);
    let (top, bottom, ground) = (z.stone_top.to_m(), z.bottom.to_m(), z.ground.to_m());
    if top <= bottom {
        return vec![];
    }
    let stone = cut.rect(back - wide, back, bottom, top);
    let mut items = vec![area(stone.clone(), None, Some(STONE_WASH))];
    items.extend(hatch::stones(&stone, 2.3));
    if ground > top {
        let cap = cut.rect(back - wide, back, top, ground);
        items.push(area(cap.clone(), Some(Pen::new(HAIR, EARTH)), Some(TOPSOIL_WASH)));
        items.extend(hatch::dots(&cap, 1.3, EARTH));
    }
    // The fabric goes round the stone on its soil side, top and underside.
    let fabric = vec![cut.at(back, top), cut.at(back - wide, top), cut.at(back - wide, bottom), cut.at(back, bottom)];
    items.push(line(fabric, Pen::new(0.5, BLUE).dashed(&[1.4, 0.7])));
    if let Some((invert, diameter)) = pipe(cut) {
        let r = diameter / 2.0;
        let centre = cut.at(pipe_x(cut, wide, r), invert + r);
        items.push(circle(centre, cut.view.mm(r) + 0.5, Some(Pen::new(MEDIUM, BLUE)), Some(WHITE)));
        items.push(circle(centre, cut.view.mm(r), Some(Pen::new(FINE, BLUE)), None));
        let d = cut.view.mm(r) * 0.7;
        items.push(stroke(
            At::mm(centre.x - d, centre.y + d * 0.4),
            At::mm(centre.x + d, centre.y + d * 0.4),
            Pen::new(FINE, BLUE),
        ));
    }
    vec![group("drain", "drainage zone with pipe and fabric", items)]
}

/// Finished ground thick, existing ground dashed, grass where it grows.
pub(crate) fn lines(cut: &Cut) -> Vec<Item> {
    let mut items = vec![];
    let behind: Vec<At> =
        xs(cut.from, members::back(cut)).iter().map(|x| cut.at(*x, cut.finished(near(cut, *x)))).collect();
    let start = cut.cross.toe.to_m();
    let front: Vec<At> = xs(start, cut.to).iter().map(|x| cut.at(*x, cut.finished(near(cut, *x)))).collect();
    for (kind, from, to) in stretches(cut).into_iter().flat_map(|(a, b)| runs(cut, a, b)) {
        if matches!(kind, Top::Soil(t) if t > 0.0) {
            let from = if from < 0.0 { from } else { from.max(start) };
            let line: Vec<At> = xs(from, to).iter().map(|x| cut.at(*x, surface(cut, *x))).collect();
            items.extend(hatch::grass(&line, GREEN));
        }
    }
    items.push(line(behind, Pen::new(THICK, crate::pens::BLACK)));
    items.push(line(front, Pen::new(THICK, crate::pens::BLACK)));
    let old: Vec<At> = xs(cut.from, cut.to).iter().filter_map(|x| Some(cut.at(*x, cut.existing(*x)?))).collect();
    items.push(line(old, Pen::new(THIN, EARTH).dashed(EXISTING)));
    items
}

pub(crate) fn wishes(cut: &Cut) -> Vec<Wish> {
    let units = cut.plan.job.about.units;
    let mut out = vec![];
    if let Some((z, wide)) = drain(cut).filter(|(z, _)| z.stone_top > z.bottom) {
        let back = members::back(cut);
        let (top, bottom) = (z.stone_top.to_m(), z.bottom.to_m());
        let fill = &cut.plan.job.drain.fill;
        let stone = if fill.is_empty() { "drain stone".to_string() } else { format!("drain stone {fill}") };
        let w = Wish::new(cut.at(back - wide * 0.75, bottom + (top - bottom) * 0.62), stone);
        out.push(
            w.and(format!("{} wide", units.length(Length::m(wide)))).ink(BLUE).rank(46).clear(1.0).lean(-1.0, 0.2),
        );
        let w = Wish::new(cut.at(back - wide, bottom + (top - bottom) * 0.3), "fabric").ink(BLUE).rank(44).clear(0.6);
        out.push(w.lean(-1.0, 0.2));
        if let Some((invert, diameter)) = pipe(cut) {
            let r = diameter / 2.0;
            let at = cut.at(pipe_x(cut, wide, r), invert + r);
            let w = Wish::new(at, format!("pipe ⌀ {}", units.length(Length::m(diameter))));
            let w = w.and(format!("invert {}", crate::naming::level(units, Level::m(invert))));
            out.push(w.ink(BLUE).rank(47).clear(cut.view.mm(r) + 0.8).lean(-1.0, 0.5));
        }
    }
    let all: Vec<_> = stretches(cut).into_iter().flat_map(|(a, b)| runs(cut, a, b)).collect();
    let widest = |want: &dyn Fn(Top) -> bool| {
        all.iter().filter(|r| want(r.0)).max_by(|a, b| (a.2 - a.1).total_cmp(&(b.2 - b.1)))
    };
    if let Some((Top::Soil(t), from, to)) = widest(&|k| matches!(k, Top::Soil(t) if t > 0.0)) {
        let (turf, soil) = (cut.plan.job.ground.turf, cut.plan.job.ground.topsoil);
        let x = (from + to) / 2.0;
        let w = Wish::new(cut.at(x, surface(cut, x) - t * 0.5), format!("turf {}", units.length(turf)));
        let w = w.and(format!("topsoil {}", units.length(soil))).size(SMALL).ink(EARTH).rank(24).clear(0.8);
        out.push(w.lean(0.0, -1.0).optional(60.0));
    }
    if let Some((Top::Stone(t), from, to)) = widest(&|k| matches!(k, Top::Stone(t) if t > 0.0)) {
        let x = from + (to - from) * 0.6;
        let text = format!("stone {}", units.length(Length::m(*t)));
        out.push(Wish::new(cut.at(x, surface(cut, x) - t * 0.5), text).rank(40).clear(1.5).lean(0.2, 1.0));
    }
    let x = cut.from * 0.62;
    let soil = &cut.plan.soil;
    let figure = |v: f64| groundhold_quantity::trim(v, 1);
    let w = Wish::new(cut.at(x, surface(cut, x) * 0.3 + cut.low * 0.7), soil.name.clone());
    let w = w.and(format!("γ {} kN/m³, φ {}°", figure(soil.unit_weight.to_kn_per_m3()), figure(soil.phi.to_deg())));
    out.push(w.ink(EARTH).rank(90).clear(0.0).over());
    out
}
