//! The drawings, to scale, as one list of primitives that becomes SVG here and PDF in `paper`.
//!
//! Every drawing fits the frame it is given, chooses the largest standard scale that fits, and says it in [`Scene::scale`].

mod scene;
mod svg;

mod advances;
mod clip;
mod dimension;
mod frame;
mod hatch;
mod long_section;
mod naming;
#[cfg(test)]
mod overlap;
mod pens;
mod placer;
mod type_metrics;
mod view;

mod cutting;
mod drawings;
mod elevation;
mod picture;
mod plan_view;
mod programme;
mod ramp;
mod section;
mod section_as_found;
mod site_section;
mod steps;

pub use drawings::{
    cutting_bars, drain_long_section, drawings, elevation, picture, plan_view, programme_bars, ramp_section, section,
    section_as_found, site_section, steps_detail,
};
pub use scene::{Align, At, Ink, Item, Label, Pen, Scene, Weight};
pub use svg::to_svg;
pub use type_metrics::{has_letter, width as text_width};
