//! How do existing and finished ground lie along a line straight up the slope, and where is cut and where is fill?

use groundhold_hold::Stuff;
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Point, Units};

use crate::frame::Frame;
use crate::hatch;
use crate::naming::{SITE, level, uphill};
use crate::pens::{
    BLACK, CUT_WASH, EARTH, EXISTING, FIGURE, FILL_WASH, GREEN, HAIR, MEDIUM, NAME, STONE_WASH, THICK, THIN,
    TIMBER_WASH, area, group,
};
use crate::placer::{Placer, Wish};
use crate::scene::{At, Item, Label, Pen, Scene};
use crate::view::{View, level_scale, scale_among, scale_bar};

/// Ground shown below and above the works, metres.
const BEYOND: f64 = 1.5;
/// Distance at which the ground is asked for, metres.
const STEP: f64 = 0.005;

/// The line of the site section in plan: up the slope, through the middle of the first pad or of the works.
pub(crate) fn line(plan: &Plan) -> Option<(Point, Point)> {
    let (up, _) = uphill(plan);
    let grounds = &plan.shaped.grounds;
    let mut places: Vec<Point> = grounds.iter().flat_map(|g| g.facet.ring.iter().copied()).collect();
    let through = plan.shaped.pads.first().map(|p| p.polygon.centroid());
    if places.is_empty() {
        places.extend(plan.survey.ground.points().iter().map(|p| p.at));
    }
    let first = *places.first()?;
    let through = through.unwrap_or(first);
    let reach = |p: &Point| (*p - through).dot(up);
    let low = places.iter().map(reach).fold(f64::INFINITY, f64::min);
    let high = places.iter().map(reach).fold(f64::NEG_INFINITY, f64::max);
    (low.is_finite() && high.is_finite()).then(|| (through + up * (low - BEYOND), through + up * (high + BEYOND)))
}

/// One place on the line.
#[derive(Clone, Copy)]
struct Place {
    x: f64,
    old: f64,
    new: f64,
}

fn places(plan: &Plan, from: Point, to: Point) -> Vec<Place> {
    let long = (to - from).length();
    let n = (long / STEP).ceil().clamp(2.0, 4000.0) as usize;
    (0..=n)
        .filter_map(|i| {
            let t = i as f64 / n as f64;
            let p = from.towards(to, t);
            let old = plan.survey.ground.level_at(p)?.to_m();
            let new = plan.shaped.level_at(&plan.survey.ground, p)?.to_m();
            Some(Place { x: long * t, old, new })
        })
        .collect()
}

/// Existing and finished ground along the line, with cut and fill told apart.
pub(crate) fn site_section(plan: &Plan, width: f64, height: f64) -> Scene {
    let mut scene = Scene::new(width, height, format!("Site section {SITE}–{SITE}"));
    let Some((from, to)) = line(plan) else { return scene };
    let ps = places(plan, from, to);
    let (Some(first), Some(last)) = (ps.first(), ps.last()) else { return scene };
    let mut low = ps.iter().map(|p| p.old.min(p.new)).fold(f64::INFINITY, f64::min);
    let mut high = ps.iter().map(|p| p.old.max(p.new)).fold(f64::NEG_INFINITY, f64::max);
    let cuts = wall_cuts(plan, from, to);
    for c in &cuts {
        low = low.min(c.bottom);
        high = high.max(c.top);
    }
    let frame = Frame::new(15.0, 13.0, width - 4.0, height - foot(width) - 3.0);
    if frame.width() < 20.0 || frame.height() < 15.0 {
        return scene;
    }
    let low = low - 0.15;
    let scale = scale_among(&crate::view::SCALES, last.x - first.x, high - low, frame.width(), frame.height());
    let view = View::centred(scale, Point::m(first.x, low), Point::m(last.x, high), &frame);
    scene.scale = view.words();
    let mut items = bodies(&view, &ps, low);
    items.extend(grounds(&view, &ps));
    items.extend(cuts.iter().flat_map(|c| c.draw(&view)));
    items.extend(level_scale(&view, plan.job.about.units, view.xy(first.x, low).x - 1.0, low, high));
    let mut placer = Placer::new(Frame::new(0.5, 0.5, width - 0.5, height - foot(width)));
    placer.heed(&items, 3.0);
    let wishes = wishes(plan, &view, from, to, &ps, &cuts);
    let labels = placer.place(wishes);
    scene.items = items;
    scene.items.extend(labels);
    footer(
        &mut scene,
        &view,
        plan.job.about.units,
        &format!("Section {SITE}–{SITE}, up the slope, heights and lengths to one scale"),
    );
    scene
}

/// Height of the foot of a sheet with its title and scale bar.
pub(crate) fn foot(width: f64) -> f64 {
    if width < NARROW { 17.0 } else { 11.0 }
}

/// A narrower sheet has its title above the scale bar instead of beside it.
const NARROW: f64 = 150.0;

/// Title and scale bar under a section.
pub(crate) fn footer(scene: &mut Scene, view: &View, units: Units, title: &str) {
    let y = scene.height - 6.0;
    let (bar, long) = scale_bar(view, units, At::mm(0.0, y));
    let left = scene.width - long - 12.0;
    scene.items.extend(bar.iter().map(|i| i.moved(left, 0.0)));
    let narrow = scene.width < NARROW;
    let (room, top) = if narrow { (scene.width - 6.0, y - 6.5) } else { (left - 26.0, y) };
    let wide = |size: f64| crate::type_metrics::width(title, size, crate::scene::Weight::Bold);
    let size = if wide(NAME) < room { NAME } else { FIGURE };
    // Bold letters are at most an eighth wider than the regular ones by which lines are broken.
    for (i, l) in crate::plan_view::wrap(title, size * 1.13, room).iter().take(2).enumerate() {
        scene.items.push(Label::new(At::mm(3.0, top + 1.0 + i as f64 * size * 1.3), l.clone(), size).bold().into());
    }
    scene.items.push(Label::new(At::mm(left - 4.0, y + 3.0), view.words(), NAME).end().into());
}

/// Cut and fill as hatched bodies, the ground below both as a wash.
fn bodies(view: &View, ps: &[Place], low: f64) -> Vec<Item> {
    let mut items = vec![];
    let mut body: Vec<At> = ps.iter().map(|p| view.xy(p.x, p.old.min(p.new))).collect();
    if let (Some(a), Some(b)) = (ps.first(), ps.last()) {
        body.push(view.xy(b.x, low));
        body.push(view.xy(a.x, low));
    }
    items.push(area(body, None, Some(crate::pens::EARTH_WASH)));
    let mut run: Vec<Place> = vec![];
    let mut sign = 0;
    let mut close = |run: &mut Vec<Place>, sign: i32| {
        if run.len() > 2 && sign != 0 {
            let mut ring: Vec<At> = run.iter().map(|p| view.xy(p.x, p.old)).collect();
            ring.extend(run.iter().rev().map(|p| view.xy(p.x, p.new)));
            let (wash, angle, ink) = if sign > 0 { (CUT_WASH, 45.0, EARTH) } else { (FILL_WASH, 135.0, GREEN) };
            items.push(area(ring.clone(), None, Some(wash)));
            items.extend(hatch::lines(&[ring], angle, 1.8, &Pen::new(HAIR, ink)));
        }
        run.clear();
    };
    for p in ps {
        let here = if p.old - p.new > 1e-4 {
            1
        } else if p.new - p.old > 1e-4 {
            -1
        } else {
            0
        };
        if here != sign {
            close(&mut run, sign);
            sign = here;
        }
        run.push(*p);
    }
    close(&mut run, sign);
    items
}

fn grounds(view: &View, ps: &[Place]) -> Vec<Item> {
    let old: Vec<At> = ps.iter().map(|p| view.xy(p.x, p.old)).collect();
    let new: Vec<At> = ps.iter().map(|p| view.xy(p.x, p.new)).collect();
    vec![crate::pens::line(old, Pen::new(THIN, EARTH).dashed(EXISTING)), crate::pens::line(new, Pen::new(THICK, BLACK))]
}

/// A wall where the line crosses it.
pub(crate) struct WallCut {
    id: String,
    /// Along the section, metres.
    pub x: f64,
    top: f64,
    bottom: f64,
    /// +1 where the open side lies towards larger x.
    open: f64,
    cross: groundhold_hold::Cross,
}

impl WallCut {
    pub fn draw(&self, view: &View) -> Vec<Item> {
        let solid = |p: &&groundhold_hold::SectionPart| p.outline.len() > 2 && !in_a_hole(p);
        let parts = self.cross.parts.iter().filter(solid);
        let items = parts.map(|p| {
            let ring = p.outline.iter().map(|(x, y)| view.xy(self.x + self.open * x.to_m(), y.to_m())).collect();
            let wash = if p.stuff == Stuff::Timber { TIMBER_WASH } else { STONE_WASH };
            area(ring, Some(Pen::new(MEDIUM, BLACK)), Some(wash))
        });
        vec![group(&self.id, format!("wall {}", self.id), items.collect())]
    }
}

/// What fills a post hole is not shown at this scale.
fn in_a_hole(p: &groundhold_hold::SectionPart) -> bool {
    p.group == "post hole"
}

/// Every wall that a line in plan crosses.
pub(crate) fn wall_cuts(plan: &Plan, from: Point, to: Point) -> Vec<WallCut> {
    let long = (to - from).length();
    let dir = (to - from).unit();
    let mut cuts = vec![];
    for wall in &plan.walls {
        for w in wall.case.stations.windows(2) {
            let Some((t, u)) = groundhold_quantity::segments_cross(from, to, w[0].at, w[1].at) else { continue };
            let chainage = w[0].chainage + (w[1].chainage - w[0].chainage) * u;
            let Some(cross) = groundhold_hold::cross(&wall.case, &wall.layout, chainage) else { continue };
            cuts.push(WallCut {
                id: wall.id.clone(),
                x: long * t,
                top: wall.layout.strip(chainage).map_or(cross.top, |s| s.top).to_m(),
                bottom: cross.bottom.to_m(),
                open: if w[0].facing.dot(dir) >= 0.0 { 1.0 } else { -1.0 },
                cross,
            });
        }
    }
    cuts
}

fn wishes(plan: &Plan, view: &View, from: Point, to: Point, ps: &[Place], cuts: &[WallCut]) -> Vec<Wish> {
    let units = plan.job.about.units;
    let mut out = vec![];
    for c in cuts {
        let w = Wish::new(view.xy(c.x, c.top), c.id.clone()).size(NAME).bold().rank(60).clear(1.5);
        out.push(
            w.lean(0.0, -1.0).and(format!("top {}", level(units, groundhold_quantity::Level::m(c.top)))).of(&c.id),
        );
    }
    let dir = (to - from).unit();
    for pad in &plan.shaped.pads {
        let x = (pad.polygon.centroid() - from).dot(dir);
        let l = pad.plane.level_at(pad.polygon.centroid());
        let w = Wish::new(view.xy(x, l.to_m()), format!("{} {}", pad.id, level(units, l))).bold().rank(55).clear(1.2);
        out.push(w.lean(0.0, 1.0).of(&pad.id));
    }
    // The deepest cut and the highest fill.
    let deepest = ps.iter().max_by(|a, b| (a.old - a.new).total_cmp(&(b.old - b.new)));
    let highest = ps.iter().max_by(|a, b| (a.new - a.old).total_cmp(&(b.new - b.old)));
    for (p, sign) in [(deepest, 1.0), (highest, -1.0)] {
        let Some(most) = p.map(|p| (p.old - p.new) * sign).filter(|d| *d > 0.02) else { continue };
        // The middle of where it is nearly as much.
        let near: Vec<&Place> = ps.iter().filter(|q| (q.old - q.new) * sign > most * 0.55).collect();
        let Some(p) = near.get(near.len() / 2) else { continue };
        let word = if sign > 0.0 { "cut" } else { "fill" };
        let text = format!("{word} up to {}", units.length(Length::m(most)));
        out.push(Wish::new(view.xy(p.x, (p.old + p.new) / 2.0), text).rank(50).clear(3.0).lean(0.0, -1.0));
    }
    if let Some(p) = ps.get(ps.len() / 14) {
        out.push(Wish::new(view.xy(p.x, p.old), "existing ground").ink(EARTH).rank(20).clear(1.0).lean(0.0, -1.0));
    }
    out
}
