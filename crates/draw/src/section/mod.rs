//! What does the governing cross-section of a wall look like, and what presses on it?

mod diagrams;
mod ground;
mod members;

use groundhold_hold::{Cross, Line};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Point};

use crate::clip::clip;
use crate::dimension::{dimension, figure, hanging, level_mark};
use crate::frame::Frame;
use crate::naming::{level, section_letter, section_place};
use crate::pens::{EARTH, SMALL};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Scene};
use crate::site_section::{foot, footer};
use crate::view::{View, scale_among};

/// What is cut, and the ground there. Metres from the wall line, positive to the open side.
pub(crate) struct Cut<'a> {
    pub plan: &'a Plan,
    pub wall: &'a WallPlan,
    pub cross: Cross,
    pub view: View,
    /// The drawn stretch: from behind to in front, and from the lowest to the highest level.
    pub from: f64,
    pub to: f64,
    pub low: f64,
    pub high: f64,
}

impl Cut<'_> {
    /// Finished level at a distance from the wall line.
    pub fn finished(&self, x: f64) -> f64 {
        let p = &self.cross;
        let slopes = Line::new(&self.wall.case.stations).at(p.chainage);
        let p_at = |x: f64| p.at + p.facing * x;
        let shaped = self.plan.shaped.level_at(&self.plan.survey.ground, p_at(x)).map(|l| l.to_m());
        if x > 0.0 {
            let near = p.toe.to_m() + 0.05;
            if x < near { p.front.to_m() } else { shaped.unwrap_or(p.front.to_m() - x * slopes.slope_front.to_ratio()) }
        } else if x > p.back.to_m().min(-0.05) - 0.05 {
            p.behind.to_m()
        } else {
            shaped.unwrap_or(p.behind.to_m() - x * slopes.slope_behind.to_ratio())
        }
    }
    /// Existing level there, where it is known.
    pub fn existing(&self, x: f64) -> Option<f64> {
        self.plan.survey.ground.level_at(self.cross.at + self.cross.facing * x).map(|l| l.to_m())
    }
    /// A rectangle.
    pub fn rect(&self, x0: f64, x1: f64, y0: f64, y1: f64) -> Vec<At> {
        let at = |x, y| self.view.at(Point::m(x, y));
        vec![at(x0, y1), at(x1, y1), at(x1, y0), at(x0, y0)]
    }
    pub fn at(&self, x: f64, y: f64) -> At {
        self.view.at(Point::m(x, y))
    }
}

/// The governing cross-section with what presses on it; an empty sheet for an unknown wall.
pub(crate) fn section(plan: &Plan, wall: &str, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Section of {wall}"));
    let Some(wall) = plan.wall(wall) else { return scene };
    let Some(cross) = section_place(wall) else { return scene };
    if wall.case.stations.len() < 2 || width < 90.0 || height < 60.0 {
        return scene;
    }
    // The least that is shown to either side; more where the scale leaves room.
    let retained = cross.retained.to_m();
    let (back, toe) = (cross.back.min(cross.heel).to_m(), cross.toe.to_m());
    // Grid and rods reach further back than the body.
    let ends = cross.parts.iter().flat_map(|p| &p.outline).map(|c| c.0.to_m());
    let reach = ends.fold(0.0, f64::min) - 0.15;
    let (from, to) =
        ((-(retained * 0.9).max(0.75)).min(back - 0.35).min(reach), (retained * 0.5).max(0.55).max(toe + 0.35));
    let low = cross.lowest.to_m() - 0.08;
    let top = cross.top.to_m();
    // A narrow frame has no room for the diagrams.
    let diagram_room = if width < 150.0 { 0.0 } else { (width * 0.30).min(120.0) };
    let frame = Frame::new(4.0, 6.0, width - diagram_room - 4.0, height - foot(width) - 1.0);
    let draft = View { scale: 20.0, ground: Point::m(0.0, low), paper: At::default() };
    let mut cut = Cut { plan, wall, cross, view: draft, from, to, low, high: top };
    let highest = cut.finished(from).max(top).max(cut.existing(from).unwrap_or(low));
    cut.high = highest + 0.06;
    // Chains of dimensions stand at both sides.
    let scale = scale_among(
        &[5.0, 10.0, 20.0, 25.0, 50.0, 100.0],
        to - from,
        cut.high - low,
        frame.width() - 40.0,
        frame.height(),
    );
    // Wider ground where the scale leaves room.
    let spare = ((frame.width() - 40.0) * scale / 1000.0 - (to - from)).max(0.0);
    cut.from -= spare * 0.6;
    cut.to += spare * 0.4;
    let highest = cut.finished(cut.from).max(top).max(cut.existing(cut.from).unwrap_or(low));
    cut.high = cut.high.max((highest + 0.06).min(low + frame.height() * scale / 1000.0));
    let inner = Frame::new(frame.left + 20.0, frame.top, frame.right - 20.0, frame.bottom);
    cut.view = View::centred(scale, Point::m(cut.from, low), Point::m(cut.to, cut.high), &inner);
    draw(&cut, &mut scene, &Frame::new(frame.right + 4.0, frame.top, width - 4.0, frame.bottom));
    scene
}

fn draw(cut: &Cut, scene: &mut Scene, room: &Frame) {
    let window_points = [cut.at(cut.from, cut.high), cut.at(cut.to, cut.low)];
    let Some(window) = Frame::around(&window_points) else { return };
    let mut items = ground::layers(cut);
    items.extend(ground::drain_zone(cut));
    items.extend(members::parts(cut));
    items.extend(ground::lines(cut));
    let mut items = clip(items, &window);
    items.extend(chains(cut, &window));
    if room.width() > 20.0 {
        items.extend(diagrams::draw(cut, room, &window));
    }
    let mut placer = Placer::new(Frame::new(0.5, 0.5, scene.width - 0.5, scene.height - foot(scene.width)));
    if room.width() > 20.0 {
        placer.block(*room);
    }
    placer.heed(&items, 2.0);
    members::bodies(cut).into_iter().chain(ground::zone_body(cut)).for_each(|f| placer.block(f));
    let labels = placer.place(wishes(cut, &window));
    scene.scale = cut.view.words();
    scene.items = items;
    scene.items.extend(labels);
    let letter = section_letter(cut.plan, &cut.wall.id);
    let title = format!(
        "Section {letter}–{letter}, {} {}, chainage {}",
        cut.wall.id,
        cut.cross.place,
        cut.plan.job.about.units.run(cut.cross.chainage)
    );
    footer(scene, &cut.view, cut.plan.job.about.units, &title);
}

/// Dimension chains: what is retained, exposed and in all; the widths under it.
fn chains(cut: &Cut, window: &Frame) -> Vec<Item> {
    let units = cut.plan.job.about.units;
    let p = &cut.cross;
    let f = |a: f64, b: f64| figure(units, Length::m((b - a).abs()));
    let (top, front, behind, bottom) = (p.top.to_m(), p.front.to_m(), p.behind.to_m(), p.bottom.to_m());
    let right = window.right;
    let y = |l: f64| cut.at(0.0, l).y;
    let upright = |x: f64, a: f64, b: f64| (At::mm(x, y(a)), At::mm(x, y(b)));
    let mut out = vec![];
    let mut one = |x: f64, a: f64, b: f64, what: &str| {
        let (p, q) = upright(x, a, b);
        out.extend(dimension(q, p, 0.0, &format!("{what} {}", f(a, b))));
    };
    one(right + 5.0, front, top, "exposed");
    one(right + 13.0, bottom, top, "total");
    one(window.left - 6.0, front, behind, "retained");
    let (p, q) = upright(right + 5.0, front, bottom);
    out.extend(hanging(p, q, &format!("depth {}", f(bottom, front))));
    // Widths under it.
    for (i, span) in cut.cross.spans.iter().enumerate() {
        let (x0, x1, l) = (span.x.0.to_m(), span.x.1.to_m(), span.level.to_m());
        let (a, b) = (cut.at(x0, l), cut.at(x1, l));
        let text = format!("{} {}", span.word, f(x0, x1));
        out.extend(dimension(a, b, -3.5 - 5.0 * i as f64, text.trim_start()));
    }
    // Level marks on the ground in front and behind.
    let mark = |x: f64, l: f64| level_mark(cut.at(x, l), &level(units, groundhold_quantity::Level::m(l)), x < 0.0);
    out.extend(mark(cut.to * 0.62, cut.finished(cut.to * 0.62)));
    out.extend(mark(cut.from * 0.72, cut.finished(cut.from * 0.72)));
    out
}

fn wishes(cut: &Cut, window: &Frame) -> Vec<Wish> {
    let units = cut.plan.job.about.units;
    let mut out = vec![];
    for note in &cut.cross.notes {
        let mut says = note.says.iter();
        let Some(first) = says.next() else { continue };
        let at = cut.at(note.at.0.to_m(), note.at.1.to_m());
        let wish = says.fold(Wish::new(at, first.clone()), |w, line| w.and(line.clone()));
        out.push(wish.rank(note.rank as i32).clear(note.clear).lean(note.lean.0, note.lean.1));
    }
    out.extend(ground::wishes(cut));
    if let Some(x) = [0.9, 0.8, 0.95].iter().map(|k| cut.from * k).find(|x| cut.existing(*x).is_some()) {
        let l = cut.existing(x).unwrap_or(cut.low);
        let at = cut.at(x, l);
        if window.contains(at) {
            out.push(
                Wish::new(at, "existing ground")
                    .size(SMALL)
                    .ink(EARTH)
                    .rank(20)
                    .clear(1.0)
                    .lean(0.0, -1.0)
                    .optional(30.0),
            );
        }
    }
    if let Some(at) = cut.cross.refused_at {
        let l = cut.cross.front.to_m() - at.to_m();
        out.push(Wish::new(cut.at(0.1, l), format!("stopped at {}", units.length(at))).rank(70).clear(2.0));
    }
    out
}
