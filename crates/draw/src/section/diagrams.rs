//! What presses on the wall: earth, load and water over the depth, drained and with the drain blocked, and their thrust.

use groundhold_hold::{LoadCase, PressurePoint};
use groundhold_quantity::Pressure;

use super::Cut;
use crate::frame::Frame;
use crate::hatch;
use crate::pens::{
    BLACK, BLUE, BLUE_WASH, EARTH, EARTH_WASH, FIGURE, FINE, GREY, HAIR, HIDDEN, MEDIUM, SMALL, THIN, area, group,
    line, stroke,
};
use crate::scene::{At, Item, Label, Pen};
use crate::view::arrow;

/// The diagrams side by side at the height of the section, one for each state.
pub(crate) fn draw(cut: &Cut, room: &Frame, window: &Frame) -> Vec<Item> {
    let states = &cut.wall.verdict.pressures;
    let shown: Vec<&(LoadCase, Vec<PressurePoint>)> = states.iter().filter(|s| s.1.len() > 1).take(3).collect();
    if shown.is_empty() {
        return vec![];
    }
    let most =
        shown.iter().flat_map(|s| &s.1).map(|p| (p.soil + p.load + p.water).to_kpa()).fold(0.0, f64::max).max(0.1);
    let each = room.width() / shown.len() as f64;
    // The widest pressure fills the column but for a margin.
    let mm_per_kpa = (each - 9.0).max(4.0) / most;
    let mut items = vec![];
    for (i, state) in shown.iter().enumerate() {
        let axis = room.left + each * i as f64 + 3.0;
        items.push(group(
            "",
            format!("pressure on {}, {}", cut.wall.id, state.0.words()),
            one(cut, axis, each, mm_per_kpa, state),
        ));
    }
    // The two levels between which it acts, carried over from the section.
    let (head, foot) = levels(cut);
    for l in [head, foot] {
        let y = cut.at(0.0, l).y;
        let right = room.left + each * (shown.len() as f64 - 1.0) + 3.0;
        items.push(stroke(At::mm(window.right + 15.0, y), At::mm(right, y), Pen::new(HAIR, GREY).dashed(HIDDEN)));
    }
    items
}

/// Where the pressure begins and ends.
fn levels(cut: &Cut) -> (f64, f64) {
    let pushed = cut.wall.verdict.pushes.iter().find(|p| p.governs);
    pushed.map_or((cut.cross.behind.to_m(), cut.cross.front.to_m()), |p| (p.head.to_m(), p.foot.to_m()))
}

fn one(cut: &Cut, axis: f64, each: f64, k: f64, state: &(LoadCase, Vec<PressurePoint>)) -> Vec<Item> {
    let (case, points) = state;
    let head = levels(cut).0;
    let y = |p: &PressurePoint| cut.at(0.0, head - p.depth.to_m()).y;
    let edge = |f: &dyn Fn(&PressurePoint) -> Pressure| -> Vec<At> {
        points.iter().map(|p| At::mm(axis + f(p).to_kpa() * k, y(p))).collect()
    };
    let zero: Vec<At> = points.iter().map(|p| At::mm(axis, y(p))).collect();
    let soil = edge(&|p| p.soil);
    let load = edge(&|p| p.soil + p.load);
    let all = edge(&|p| p.soil + p.load + p.water);
    let between = |a: &[At], b: &[At]| a.iter().copied().chain(b.iter().rev().copied()).collect::<Vec<_>>();
    let dashed = *case == LoadCase::DrainBlocked;
    let pen = |ink| if dashed { Pen::new(THIN, ink).dashed(HIDDEN) } else { Pen::new(THIN, ink) };
    let mut items = vec![area(between(&zero, &soil), Some(pen(EARTH)), Some(EARTH_WASH))];
    items.extend(hatch::lines(&[between(&zero, &soil)], 0.0, 1.6, &Pen::new(HAIR, EARTH)));
    if points.iter().any(|p| p.load.to_kpa() > 1e-6) {
        let ring = between(&soil, &load);
        items.push(area(ring.clone(), Some(pen(EARTH)), None));
        items.extend(hatch::lines(&[ring], 45.0, 1.2, &Pen::new(HAIR, EARTH)));
    }
    if points.iter().any(|p| p.water.to_kpa() > 1e-6) {
        let ring = between(&load, &all);
        items.push(area(ring.clone(), Some(pen(BLUE)), Some(BLUE_WASH)));
        items.extend(hatch::lines(&[ring], 0.0, 1.6, &Pen::new(HAIR, BLUE).dashed(&[1.0, 0.6])));
    }
    if let (Some(a), Some(b)) = (zero.first(), zero.last()) {
        items.push(line(vec![*a, *b], Pen::new(MEDIUM, BLACK)));
        items.push(Label::new(At::mm(axis - 1.0, a.y - 7.0), case.words(), FIGURE).bold().into());
    }
    items.extend(figures(cut, axis, k, points, &zero));
    items.extend(thrust(cut, axis, each, *case));
    items
}

/// The pressures at the foot, part by part, under the diagram.
fn figures(cut: &Cut, axis: f64, k: f64, points: &[PressurePoint], zero: &[At]) -> Vec<Item> {
    let units = cut.plan.job.about.units;
    let (Some(last), Some(foot)) = (points.last(), zero.last()) else { return vec![] };
    let total = last.soil + last.load + last.water;
    let mut items = vec![];
    let end = At::mm(axis + total.to_kpa() * k, foot.y);
    items.push(stroke(*foot, end, Pen::new(FINE, BLACK)));
    items.push(Label::new(At::mm(axis, foot.y + 3.2), units.pressure(total), FIGURE).bold().into());
    let mut y = foot.y + 6.4;
    for (what, p) in [("earth", last.soil), ("load", last.load), ("water", last.water)] {
        if p.to_kpa().abs() > 1e-6 {
            items.push(Label::new(At::mm(axis, y), format!("{what} {}", units.pressure(p)), SMALL).ink(GREY).into());
            y += 2.8;
        }
    }
    // At the top, where a load presses from the ground on.
    if let (Some(first), Some(top)) = (points.first(), zero.first()) {
        let p = first.soil + first.load + first.water;
        if p.to_kpa() > 1e-6 {
            let at = At::mm(axis + p.to_kpa() * k + 1.0, top.y - 1.0);
            items.push(Label::new(at, units.pressure(p), SMALL).into());
        }
    }
    items
}

/// The thrust as an arrow at its height.
fn thrust(cut: &Cut, axis: f64, each: f64, case: LoadCase) -> Vec<Item> {
    let Some(p) = cut.wall.verdict.pushes.iter().find(|p| p.governs && p.case == case) else { return vec![] };
    let foot = p.foot.to_m();
    let y = cut.at(0.0, foot + p.arm.to_m()).y;
    let from = At::mm(axis + each - 5.0, y);
    let mut items = arrow(&[from, At::mm(axis, y)], Pen::new(MEDIUM, BLACK));
    let kn = format!("{:.2} kN/m", p.horizontal.to_kn_per_m());
    let arm = format!("at {}", cut.plan.job.about.units.length(p.arm));
    let method = p.method.to_string();
    let base = cut.at(0.0, foot).y + 15.8;
    for (i, t) in [format!("thrust {kn}"), arm, method].into_iter().enumerate() {
        let l = Label::new(At::mm(axis, base + i as f64 * 2.9), t, SMALL);
        items.push(if i == 0 { l.bold() } else { l }.into());
    }
    items
}
