//! The live drawing, before there is a browser: layers in metres, things to take hold of, names with their places.
//!
//! `x` runs east, `y` runs south (screens count downwards), both in metres.

mod beads;
mod grips;
mod ground;
mod lettering;
mod pen;
mod places;
mod relief;
mod snap;
mod structures;
mod window;

pub use beads::{Bead, beads};
pub use grips::{Grip, Holds, grips, moved};
pub use ground::interval;
pub use lettering::{Placed, Sort, Tag, lettered};
pub use places::{bounds, place_of};
pub use relief::{Relief, relief};
pub use snap::{Snapped, snapped};
pub use window::Window;

use groundhold_plan::Plan;

/// One layer: things that belong together and are drawn anew together.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// Its name, unique in the drawing.
    pub key: String,
    /// The element it belongs to; empty for none.
    pub element: String,
    /// What a reader who cannot see it is told; empty for what only looks.
    pub title: String,
    /// SVG inside a group.
    pub svg: String,
}

/// The drawing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drawing {
    /// From the back to the front.
    pub layers: Vec<Layer>,
    /// Names and figures.
    pub tags: Vec<Tag>,
}

/// Draws a plan.
pub fn draw(plan: &Plan) -> Drawing {
    let mut d = Drawing::default();
    ground::existing(plan, &mut d);
    ground::finished(plan, &mut d);
    ground::heeded(plan, &mut d);
    structures::drains(plan, &mut d);
    structures::ramps(plan, &mut d);
    structures::flights(plan, &mut d);
    structures::walls(plan, &mut d);
    structures::pegs(plan, &mut d);
    d
}

/// The outlines of another version, to be laid over the drawing: walls, pads, steps and ramps.
pub fn outlines(plan: &Plan) -> String {
    let mut out = String::new();
    for w in &plan.walls {
        out.push_str(&pen::line(&structures::wall_line(w), "outline"));
    }
    for p in &plan.shaped.pads {
        out.push_str(&pen::area(p.polygon.corners(), "outline"));
    }
    for r in &plan.shaped.ramps {
        out.push_str(&pen::line(&r.path, "outline"));
    }
    for f in &plan.shaped.flights {
        out.push_str(&pen::line(&[f.foot, f.top], "outline"));
    }
    out
}

impl Drawing {
    fn layer(&mut self, key: impl Into<String>, element: &str, title: impl Into<String>, svg: String) {
        self.layers.push(Layer { key: key.into(), element: element.into(), title: title.into(), svg });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_element_of_the_demo_has_a_layer_and_a_name() {
        let job = crate::job::demo().read().whole().unwrap();
        let plan = groundhold_plan::plan(&job).unwrap();
        let d = draw(&plan);
        for id in job.ids() {
            assert!(d.layers.iter().any(|l| l.element == id && !l.svg.is_empty() && !l.title.is_empty()), "{id}");
            assert!(d.tags.iter().any(|t| t.element == id), "{id}");
        }
        let mut keys: Vec<&str> = d.layers.iter().map(|l| l.key.as_str()).collect();
        keys.sort_unstable();
        let all = keys.len();
        keys.dedup();
        assert_eq!(keys.len(), all);
        assert!(!d.layers.iter().any(|l| l.svg.contains("style=") || l.svg.contains("NaN")));
    }
}
