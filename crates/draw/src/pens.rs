//! Which pens, inks and sizes of type is everything drawn with?

use crate::scene::{At, Ink, Item, Pen};

/// Nearly black.
pub(crate) const BLACK: Ink = Ink(0x1e, 0x1c, 0x19);
/// For what stands behind: grids, extension lines, small print.
pub(crate) const GREY: Ink = Ink(0x6b, 0x67, 0x60);
/// For what is only just there.
pub(crate) const PALE: Ink = Ink(0xb9, 0xb3, 0xa8);
/// Ground.
pub(crate) const EARTH: Ink = Ink(0x86, 0x5a, 0x30);
/// Ground as an area.
pub(crate) const EARTH_WASH: Ink = Ink(0xf3, 0xea, 0xdd);
/// Topsoil as an area.
pub(crate) const TOPSOIL_WASH: Ink = Ink(0xe3, 0xd5, 0xc0);
/// Timber as an area.
pub(crate) const TIMBER_WASH: Ink = Ink(0xf2, 0xdd, 0xb4);
/// Timber already built, as an area.
pub(crate) const BUILT_WASH: Ink = Ink(0xc9, 0xb2, 0x86);
/// Grass and trees.
pub(crate) const GREEN: Ink = Ink(0x3f, 0x6b, 0x35);
/// Water and drains.
pub(crate) const BLUE: Ink = Ink(0x1d, 0x5c, 0x8a);
/// Water as an area.
pub(crate) const BLUE_WASH: Ink = Ink(0xe2, 0xee, 0xf5);
/// Services and what must be heeded.
pub(crate) const RED: Ink = Ink(0xa8, 0x26, 0x1f);
/// Cut as an area.
pub(crate) const CUT_WASH: Ink = Ink(0xf6, 0xe4, 0xd2);
/// Fill as an area.
pub(crate) const FILL_WASH: Ink = Ink(0xe4, 0xee, 0xdc);
/// Paving, pads and treads as an area.
pub(crate) const PAVED_WASH: Ink = Ink(0xf7, 0xf4, 0xee);
/// Stone and concrete as an area.
pub(crate) const STONE_WASH: Ink = Ink(0xec, 0xec, 0xea);
/// Paper.
pub(crate) const WHITE: Ink = Ink(0xff, 0xff, 0xff);

/// Widths of line in millimetres: hair for hatches, fine for dimensions, thin for what is seen beyond, medium for what
/// is seen, thick for what is cut.
pub(crate) const HAIR: f64 = 0.1;
pub(crate) const FINE: f64 = 0.15;
pub(crate) const THIN: f64 = 0.22;
pub(crate) const MEDIUM: f64 = 0.35;
pub(crate) const THICK: f64 = 0.6;

/// Type sizes in millimetres: small print, figures, names.
pub(crate) const SMALL: f64 = 2.0;
pub(crate) const FIGURE: f64 = 2.4;
pub(crate) const NAME: f64 = 3.0;

/// A dash for hidden edges.
pub(crate) const HIDDEN: &[f64] = &[1.6, 1.0];
/// A dash for the ground as it was.
pub(crate) const EXISTING: &[f64] = &[2.6, 1.2];
/// A chain for centre lines.
pub(crate) const CHAIN: &[f64] = &[6.0, 1.2, 0.8, 1.2];
/// A long chain for boundaries.
pub(crate) const BOUNDARY: &[f64] = &[10.0, 1.6, 1.0, 1.6, 1.0, 1.6];
/// Dots.
pub(crate) const DOTS: &[f64] = &[0.3, 0.9];

pub(crate) fn line(points: Vec<At>, pen: Pen) -> Item {
    Item::Line { points, pen }
}

pub(crate) fn stroke(a: At, b: At, pen: Pen) -> Item {
    Item::Line { points: vec![a, b], pen }
}

pub(crate) fn area(points: Vec<At>, pen: Option<Pen>, fill: Option<Ink>) -> Item {
    Item::Area { points, pen, fill }
}

pub(crate) fn circle(at: At, radius: f64, pen: Option<Pen>, fill: Option<Ink>) -> Item {
    Item::Circle { at, radius, pen, fill }
}

pub(crate) fn group(element: impl Into<String>, title: impl Into<String>, items: Vec<Item>) -> Item {
    Item::Group { element: element.into(), title: title.into(), items }
}

/// An upright rectangle from its left, top, right and bottom.
pub(crate) fn oblong(left: f64, top: f64, right: f64, bottom: f64) -> Vec<At> {
    vec![At::mm(left, top), At::mm(right, top), At::mm(right, bottom), At::mm(left, bottom)]
}
