//! The drawings on A3, each in its place on the sheet.

use groundhold_draw::{self as draw, Item, Scene};
use groundhold_plan::Plan;

use crate::leaf::Leaf;
use crate::paper_size::{Frame, Paper};

const PART: &str = "Drawings";
/// Between two drawings on one sheet.
const BETWEEN: f64 = 8.0;

/// Name, scene made for a width and a height.
type Wanted<'a> = (String, Box<dyn Fn(f64, f64) -> Scene + 'a>);

/// All drawings of the plan.
pub(crate) fn leaves(plan: &Plan) -> Vec<Leaf> {
    let mut all = vec![];
    all.extend(alone("Plan", Box::new(|w, h| draw::plan_view(plan, w, h))));
    all.extend(alone("Section through the site", Box::new(|w, h| draw::site_section(plan, w, h))));
    let ids: Vec<(&str, String)> = plan.walls.iter().map(|w| (w.id.as_str(), wall_name(plan, &w.id, &w.of))).collect();
    let elevations: Vec<Wanted> = ids
        .iter()
        .map(|(id, name)| -> Wanted {
            (format!("Elevation of {name}"), Box::new(move |w, h| draw::elevation(plan, id, w, h)))
        })
        .collect();
    all.extend(together("Elevations", elevations, 1, 2));
    let sections = ids
        .iter()
        .map(|(id, name)| -> Wanted {
            (format!("Section of {name}"), Box::new(move |w, h| draw::section(plan, id, w, h)))
        })
        .collect();
    all.extend(together("Sections with pressures", sections, 2, 1));
    let drains = plan
        .drained
        .pipes
        .iter()
        .map(|p| -> Wanted {
            (format!("Drain of {}", p.wall), Box::new(move |w, h| draw::drain_long_section(plan, &p.wall, w, h)))
        })
        .collect();
    all.extend(together("Drains, long sections", drains, 1, 2));
    let found = plan.old_walls.iter().map(|old| -> Wanted {
        (format!("{} as found", old.id), Box::new(move |w, h| draw::section_as_found(plan, &old.id, w, h)))
    });
    all.extend(together("Walls as found", found.collect(), 2, 1));
    let mut details: Vec<Wanted> = vec![];
    for f in &plan.shaped.flights {
        details.push((format!("Steps {}", f.id), Box::new(move |w, h| draw::steps_detail(plan, &f.id, w, h))));
    }
    for r in &plan.shaped.ramps {
        details.push((format!("Ramp {}", r.id), Box::new(move |w, h| draw::ramp_section(plan, &r.id, w, h))));
    }
    all.extend(together("Steps and ramps", details, 1, 2));
    all.extend(cutting(plan));
    all.extend(alone("Programme", Box::new(|w, h| draw::programme_bars(plan, w, h))));
    all
}

/// `W1 uphill wall`.
pub(crate) fn wall_name(plan: &Plan, id: &str, of: &str) -> String {
    let name = plan.job.walls.iter().find(|w| w.id == of).map_or("", |w| w.name.as_str());
    format!("{id} {name}").trim_end().to_string()
}

fn has_something(scene: &Scene) -> bool {
    fn drawn(i: &Item) -> bool {
        match i {
            Item::Group { items, .. } => items.iter().any(drawn),
            _ => true,
        }
    }
    scene.items.iter().any(drawn)
}

/// One drawing on a sheet of its own.
fn alone(name: &str, make: Box<dyn Fn(f64, f64) -> Scene + '_>) -> Option<Leaf> {
    let f = Paper::A3.content();
    let scene = make(f.width(), f.height());
    if !has_something(&scene) {
        return None;
    }
    let mut leaf = Leaf::new(Paper::A3, PART, name);
    place(&mut leaf, &scene, f);
    leaf.scale = scene.scale;
    Some(leaf)
}

/// Several drawings to a sheet, each with the name it gives itself: so many side by side and so many under each other. A sheet that is not
/// full gives its drawings all the room.
fn together(title: &str, wanted: Vec<Wanted>, across: usize, down: usize) -> Vec<Leaf> {
    let f = Paper::A3.content();
    let mut leaves = vec![];
    for group in wanted.chunks(across * down) {
        let across = across.min(group.len());
        let down = down.min(group.len().div_ceil(across));
        let width = (f.width() - BETWEEN * (across - 1) as f64) / across as f64;
        let height = (f.height() - BETWEEN * (down - 1) as f64) / down as f64;
        let name = if let [(only, _)] = group { only.clone() } else { title.to_string() };
        let mut leaf = Leaf::new(Paper::A3, PART, name);
        let mut scales = vec![];
        for (i, (_, make)) in group.iter().enumerate() {
            let scene = make(width, height);
            if !has_something(&scene) {
                continue;
            }
            let left = f.left + (width + BETWEEN) * (i % across) as f64;
            let top = f.top + (height + BETWEEN) * (i / across) as f64;
            place(&mut leaf, &scene, Frame { left, top, right: left + width, bottom: top + height });
            if !scene.scale.is_empty() && !scales.contains(&scene.scale) {
                scales.push(scene.scale);
            }
        }
        leaf.scale = scales.join(", ");
        if !leaf.items.is_empty() {
            leaves.push(leaf);
        }
    }
    leaves
}

/// The cutting list in two columns.
fn cutting(plan: &Plan) -> Vec<Leaf> {
    let f = Paper::A3.content();
    let half = (f.width() - BETWEEN) / 2.0;
    let scenes: Vec<Scene> = draw::cutting_bars(plan, half, f.height()).into_iter().filter(has_something).collect();
    let made = scenes.chunks(2).map(|pair| {
        let mut leaf = Leaf::new(Paper::A3, PART, "Cutting list");
        for (i, scene) in pair.iter().enumerate() {
            let left = f.left + (half + BETWEEN) * i as f64;
            place(&mut leaf, scene, Frame { left, right: left + half, ..f });
        }
        leaf.scale = pair[0].scale.clone();
        leaf
    });
    made.collect()
}

fn place(leaf: &mut Leaf, scene: &Scene, frame: Frame) {
    leaf.items.extend(scene.items.iter().map(|i| i.moved(frame.left, frame.top)));
}
