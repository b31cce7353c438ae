//! The drawings, to scale, as one list of primitives that becomes SVG here and PDF in `paper`.

mod scene;
mod svg;

pub use scene::{Align, At, Ink, Item, Label, Pen, Scene, Weight};
pub use svg::to_svg;
