//! What does the governing cross-section of a wall look like, and what presses on it?

mod diagrams;
mod ground;
mod members;

use groundhold_hold::systems::timber_posts::TimberPostSpec;
use groundhold_hold::{Bay, Board, Line, Post, Spec};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Point};

use crate::clip::clip;
use crate::dimension::{dimension, figure, level_mark};
use crate::frame::Frame;
use crate::naming::{SectionPlace, level, section_letter, section_place};
use crate::pens::{EARTH, SMALL};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Scene};
use crate::site_section::{foot, footer};
use crate::view::{View, scale_among};

/// What is cut: one post with its bay, and the ground there. Metres from the wall line, positive to the open side.
pub(crate) struct Cut<'a> {
    pub plan: &'a Plan,
    pub wall: &'a WallPlan,
    pub spec: &'a TimberPostSpec,
    pub post: &'a Post,
    pub bay: &'a Bay,
    pub place: SectionPlace<'a>,
    pub boards: Vec<&'a Board>,
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
        let p = self.post;
        let slopes = Line::new(&self.wall.case.stations).at(p.chainage);
        let p_at = |x: f64| self.place.at + self.place.facing * x;
        let shaped = self.plan.shaped.level_at(&self.plan.survey.ground, p_at(x)).map(|l| l.to_m());
        if x > 0.0 {
            let near = self.spec.post.depth.to_m() + 0.05;
            if x < near { p.front.to_m() } else { shaped.unwrap_or(p.front.to_m() - x * slopes.slope_front.to_ratio()) }
        } else if x > -0.1 {
            p.behind.to_m()
        } else {
            shaped.unwrap_or(p.behind.to_m() - x * slopes.slope_behind.to_ratio())
        }
    }
    /// Existing level there, where it is known.
    pub fn existing(&self, x: f64) -> Option<f64> {
        self.plan.survey.ground.level_at(self.place.at + self.place.facing * x).map(|l| l.to_m())
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
    let Some(place) = section_place(wall) else { return scene };
    let (post, bay) = (place.post, place.bay);
    if wall.case.stations.len() < 2 || width < 90.0 || height < 60.0 {
        return scene;
    }
    let Spec::TimberPosts(spec) = &wall.case.spec;
    let middle = (bay.chainage.0 + bay.chainage.1) / 2.0;
    let mut boards: Vec<&Board> =
        wall.layout.boards.iter().filter(|b| b.chainage.0 <= middle && middle <= b.chainage.1).collect();
    boards.sort_by(|a, b| a.bottom.to_m().total_cmp(&b.bottom.to_m()));

    let gravel = spec.hole.gravel_base.to_m();
    // The least that is shown to either side; more where the scale leaves room.
    let retained = post.retained.to_m();
    let (from, to) = (-(retained * 0.9).max(0.75), (retained * 0.5).max(0.55));
    let low = post.bottom.to_m() - gravel - 0.08;
    // A narrow frame has no room for the diagrams.
    let diagram_room = if width < 150.0 { 0.0 } else { (width * 0.30).min(120.0) };
    let frame = Frame::new(4.0, 6.0, width - diagram_room - 4.0, height - foot(width) - 1.0);
    let draft = View { scale: 20.0, ground: Point::m(0.0, low), paper: At::default() };
    let mut cut = Cut { plan, wall, spec, post, bay, place, boards, view: draft, from, to, low, high: post.top.to_m() };
    let highest = cut.finished(from).max(post.top.to_m()).max(cut.existing(from).unwrap_or(low));
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
    let highest = cut.finished(cut.from).max(post.top.to_m()).max(cut.existing(cut.from).unwrap_or(low));
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
    items.extend(members::hole(cut));
    items.extend(members::timber(cut));
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
        "Section {letter}–{letter}, {} beside post {}, chainage {}",
        cut.wall.id,
        cut.post.number,
        cut.plan.job.about.units.run(cut.post.chainage)
    );
    footer(scene, &cut.view, cut.plan.job.about.units, &title);
}

/// Dimension chains: what is retained, exposed and in all; board by board; the hole.
fn chains(cut: &Cut, window: &Frame) -> Vec<Item> {
    let units = cut.plan.job.about.units;
    let p = cut.post;
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
    one(right + 5.0, bottom, front, "depth");
    one(right + 13.0, bottom, top, "total");
    one(window.left - 6.0, front, behind, "retained");
    // The hole's width under it.
    let hole = p.hole_diameter.to_m();
    let centre = cut.spec.post.depth.to_m() / 2.0;
    let base = bottom - cut.spec.hole.gravel_base.to_m();
    let (a, b) = (cut.at(centre - hole / 2.0, base), cut.at(centre + hole / 2.0, base));
    out.extend(dimension(a, b, -3.5, &format!("⌀ {}", f(0.0, hole))));
    // Level marks on the ground in front and behind.
    let mark = |x: f64, l: f64| level_mark(cut.at(x, l), &level(units, groundhold_quantity::Level::m(l)), x < 0.0);
    out.extend(mark(cut.to * 0.62, cut.finished(cut.to * 0.62)));
    out.extend(mark(cut.from * 0.72, cut.finished(cut.from * 0.72)));
    out
}

fn wishes(cut: &Cut, window: &Frame) -> Vec<Wish> {
    let units = cut.plan.job.about.units;
    let spec = cut.spec;
    let p = cut.post;
    let mid_front = p.front.to_m() + (p.top - p.front).to_m() * 0.55;
    let mut out = vec![];
    let post = format!("post {}×{}", figure(units, spec.post.breadth), figure(units, spec.post.depth));
    let post = Wish::new(cut.at(spec.post.depth.to_m() * 0.8, mid_front), post).and(format!(
        "{} {}, {} long",
        spec.post.treatment,
        spec.post.grade.name,
        units.length(p.length)
    ));
    out.push(post.rank(60).clear(2.0).lean(1.0, 0.0));
    if let Some(b) = cut.boards.get(cut.boards.len() / 2) {
        let at = cut.at(members::board_x(cut).0, (b.bottom.to_m() + b.top.to_m()) / 2.0);
        let w = Wish::new(
            at,
            format!(
                "{} boards {}×{}",
                cut.boards.len(),
                figure(units, spec.board.height),
                figure(units, spec.board.thickness)
            ),
        );
        let w = w.and(format!("{} {}", spec.board.treatment, spec.board.grade.name));
        out.push(w.rank(58).clear(2.0).lean(-1.0, -0.6));
    }
    let hole_mid = (p.bottom.to_m() + p.front.to_m()) / 2.0;
    let fill = match spec.hole.fill {
        groundhold_hold::systems::timber_posts::Fill::Concrete => "concrete",
        groundhold_hold::systems::timber_posts::Fill::Rammed => "rammed stone or soil",
    };
    let edge = spec.post.depth.to_m() / 2.0 + p.hole_diameter.to_m() / 2.0 - 0.04;
    out.push(Wish::new(cut.at(edge, hole_mid), fill).rank(50).clear(1.5).lean(1.0, 0.3));
    if spec.hole.gravel_base > Length::ZERO {
        let at = cut.at(edge - 0.02, p.bottom.to_m() - spec.hole.gravel_base.to_m() / 2.0);
        out.push(
            Wish::new(at, format!("gravel {}", units.length(spec.hole.gravel_base))).rank(48).clear(1.2).lean(1.0, 0.3),
        );
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
    if let Some(at) = p.refused_at {
        let l = p.front.to_m() - at.to_m();
        out.push(Wish::new(cut.at(0.1, l), format!("stopped at {}", units.length(at))).rank(70).clear(2.0));
    }
    out
}
