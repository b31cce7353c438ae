//! How does the site look from above, to scale, with everything that is set out, built, drained and heeded?

mod as_found;
mod ground;
mod groundwork;
mod heeded;
mod key;
mod marks;
mod structures;
mod water;

pub(crate) use key::wrap;

use groundhold_plan::Plan;
use groundhold_quantity::Point;

use crate::clip::clip;
use crate::frame::Frame;
use crate::pens::BLACK;
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Scene};
use crate::view::{View, grid_frame, north, scale_bar, scale_for};

/// The drawing while it is made.
pub(crate) struct Board<'a> {
    pub plan: &'a Plan,
    pub view: View,
    /// The window on the ground.
    pub window: Frame,
    /// True for names only.
    pub quiet: bool,
    /// Lines and areas, from the back to the front.
    pub items: Vec<Item>,
    /// Labels that still want a place.
    pub wishes: Vec<Wish>,
    /// Contours that want a figure on them.
    pub figures: Vec<(Vec<At>, String)>,
}

/// Ground shown round the works.
const MARGIN: f64 = 0.8;

/// The site seen from above, to scale, within a frame in millimetres of paper.
pub(crate) fn plan_view(plan: &Plan, width: f64, height: f64) -> Scene {
    drawn(plan, width, height, false)
}

/// The same with names only, for a picture.
pub(crate) fn quiet(plan: &Plan, width: f64, height: f64) -> Scene {
    drawn(plan, width, height, true)
}

fn drawn(plan: &Plan, width: f64, height: f64, quiet: bool) -> Scene {
    let with_key = width >= 250.0 && height >= 150.0;
    let window = Frame::new(
        6.5,
        2.0,
        if with_key { width - 66.0 } else { width - 2.5 },
        height - if with_key { 5.5 } else { 18.0 },
    );
    let mut scene = Scene::new(width, height, format!("Plan of {}", plan.job.about.name));
    if window.width() < 20.0 || window.height() < 20.0 {
        return scene;
    }
    let view = choose(plan, &window);
    let mut b = Board { plan, view, window, quiet, items: vec![], wishes: vec![], figures: vec![] };
    heeded::strips(&mut b);
    ground::pieces(&mut b);
    ground::contours(&mut b);
    heeded::lines(&mut b);
    groundwork::heaps(&mut b);
    groundwork::swales(&mut b);
    as_found::walls(&mut b);
    water::drains(&mut b);
    groundwork::shafts(&mut b);
    structures::flights(&mut b);
    structures::ramps(&mut b);
    structures::walls(&mut b);
    marks::finds(&mut b);
    let mut noted = vec![];
    if !quiet {
        structures::runs(&mut b);
        marks::pegs(&mut b);
        marks::section_lines(&mut b);
        noted = marks::findings(&mut b);
        marks::spots(&mut b);
    }

    let Board { items, wishes, figures, .. } = b;
    let items = clip(items, &window);
    let mut placer = Placer::new(window.inset(0.8));
    placer.heed(&items, 3.0);
    let mut labels = contour_figures(&mut placer, &window, &figures);
    let seen = |w: &Wish| window.contains(w.anchor);
    labels.extend(placer.place(wishes.into_iter().filter(seen).collect()));
    scene.scale = view.words();
    scene.items = items;
    scene.items.extend(grid_frame(&view, plan.job.about.units, &window));
    scene.items.extend(labels);
    if with_key {
        key::column(plan, &view, &Frame::new(width - 61.0, 2.0, width, height), &noted, &mut scene.items);
    } else {
        let (bar, _) = scale_bar(&view, plan.job.about.units, At::mm(window.left + 16.0, height - 10.5));
        scene.items.extend(bar);
        scene.items.extend(north(At::mm(window.left + 5.0, height - 6.0), 9.0));
    }
    scene
}

/// The largest scale at which the works fit, with known pegs in view where they can be.
fn choose(plan: &Plan, window: &Frame) -> View {
    let mut works: Vec<Point> = plan.shaped.grounds.iter().flat_map(|g| g.facet.ring.iter().copied()).collect();
    works.extend(plan.walls.iter().flat_map(|w| w.layout.posts.iter().map(|p| p.at)));
    works.extend(plan.drained.pipes.iter().flat_map(|p| p.points.iter().map(|q| q.at)));
    if works.is_empty() {
        works.extend(plan.survey.ground.points().iter().map(|p| p.at));
    }
    let bounds = |ps: &[Point]| {
        let start = (Point::m(f64::INFINITY, f64::INFINITY), Point::m(f64::NEG_INFINITY, f64::NEG_INFINITY));
        ps.iter()
            .fold(start, |(lo, hi), p| (Point::m(lo.x.min(p.x), lo.y.min(p.y)), Point::m(hi.x.max(p.x), hi.y.max(p.y))))
    };
    let (lo, hi) = bounds(&works);
    let (lo, hi) = (Point::m(lo.x - MARGIN, lo.y - MARGIN), Point::m(hi.x + MARGIN, hi.y + MARGIN));
    let scale = scale_for(hi.x - lo.x, hi.y - lo.y, window.width(), window.height());
    let mut all = works;
    all.extend(plan.job.measure.pegs.iter().map(|p| p.at));
    all.extend(plan.job.near.iter().filter_map(|n| n.line.first().copied()));
    let (all_lo, all_hi) = bounds(&all);
    all.extend(plan.job.standing.iter().flat_map(|o| o.line.iter().copied()));
    // As near to the middle of everything as still shows all the works.
    let centre = |lo: f64, hi: f64, all_lo: f64, all_hi: f64, mm: f64| {
        let wide = mm * scale / 1000.0;
        ((all_lo + all_hi) / 2.0).max(hi - wide / 2.0).min(lo + wide / 2.0)
    };
    let ground = Point::m(
        centre(lo.x, hi.x, all_lo.x, all_hi.x, window.width()),
        centre(lo.y, hi.y, all_lo.y, all_hi.y, window.height()),
    );
    View { scale, ground, paper: window.middle() }
}

/// Sets the figures of contours on their lines where the fewest other lines are covered.
fn contour_figures(placer: &mut Placer, window: &Frame, figures: &[(Vec<At>, String)]) -> Vec<Item> {
    let mut out = vec![];
    for (line, text) in figures {
        for part in window.inset(2.0).clip_line(line) {
            if let Some(l) = placer.on_line(&part, text, crate::pens::SMALL, crate::pens::EARTH) {
                out.push(l.into());
            }
        }
    }
    out
}

impl Board<'_> {
    /// Adds things that belong to an element.
    pub fn add(&mut self, element: &str, title: &str, items: Vec<Item>) {
        self.items.push(crate::pens::group(element, title, items));
    }
    /// Asks for a label at a place on the ground.
    pub fn label(&mut self, at: Point, text: impl Into<String>) -> &mut Wish {
        let w = Wish::new(self.view.at(at), text).ink(BLACK);
        self.wishes.push(w);
        let last = self.wishes.len() - 1;
        &mut self.wishes[last]
    }
}
