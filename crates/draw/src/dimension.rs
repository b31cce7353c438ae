//! How is a length written on a drawing: extension lines, ticks and a figure that can be read from below or from the right?

use groundhold_quantity::{Length, Units, math, trim};

use crate::pens::{BLACK, FIGURE, FINE, GREY, HAIR, THIN, stroke};
use crate::scene::{At, Item, Label, Pen};
use crate::type_metrics;

/// A length as written on a dimension line: millimetres without unit, or feet and inches.
pub(crate) fn figure(units: Units, l: Length) -> String {
    match units {
        Units::Metric => trim(l.to_mm(), 0),
        Units::Feet => units.length(l),
    }
}

/// A dimension from one place to another, its line moved by `aside` to the left of the direction of travel (on paper,
/// seen with y downwards; negative to the right).
pub(crate) fn dimension(from: At, to: At, aside: f64, text: &str) -> Vec<Item> {
    sized(from, to, aside, text, FIGURE)
}

/// The same with its own type size.
pub(crate) fn sized(from: At, to: At, aside: f64, text: &str, size: f64) -> Vec<Item> {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        return vec![];
    }
    let (ux, uy) = (dx / long, dy / long);
    // To the left when looking along the line on paper.
    let (nx, ny) = (uy, -ux);
    let off = |p: At, d: f64| At::mm(p.x + nx * d, p.y + ny * d);
    let (a, b) = (off(from, aside), off(to, aside));
    let mut out = vec![];
    let sign = if aside < 0.0 { -1.0 } else { 1.0 };
    if aside.abs() > 2.0 {
        let thin = Pen::new(HAIR, GREY);
        for p in [from, to] {
            out.push(stroke(off(p, sign), off(p, aside + sign * 1.2), thin.clone()));
        }
    }
    out.push(stroke(a, b, Pen::new(FINE, BLACK)));
    // Ticks: short strokes at 45° to the line.
    let tick = 0.9;
    for p in [a, b] {
        let (tx, ty) = ((ux + nx) * tick * 0.7, (uy + ny) * tick * 0.7);
        out.push(stroke(At::mm(p.x - tx, p.y - ty), At::mm(p.x + tx, p.y + ty), Pen::new(THIN, BLACK)));
    }
    if !text.is_empty() {
        out.push(written(a, b, text, size).into());
    }
    out
}

/// An upright dimension that goes down from its first place; a figure too wide for it stands below, not above.
pub(crate) fn hanging(from: At, to: At, text: &str) -> Vec<Item> {
    let wide = type_metrics::width(text, FIGURE, Default::default());
    if wide + 1.0 <= (to.y - from.y).abs() {
        return dimension(to, from, 0.0, text);
    }
    let mut out = dimension(to, from, 0.0, "");
    let below = At::mm(to.x + FIGURE * 0.32, from.y.max(to.y) + 1.6 + wide / 2.0);
    out.push(Label::new(below, text, FIGURE).middle().turned(90.0).halo().into());
    out
}

/// A line that leans less than this (run over rise) is read from the right, as an upright one is.
const UPRIGHT: f64 = 0.05;

/// The figure on the middle of the line from `a` to `b`, or beyond its end where it is too short.
fn written(a: At, b: At, text: &str, size: f64) -> Label {
    // Read from below, or from the right for upright lines.
    let upright = (b.x - a.x).abs() <= UPRIGHT * (b.y - a.y).abs();
    let (a, b) = if upright && b.y > a.y || !upright && b.x < a.x { (b, a) } else { (a, b) };
    let long = math::hypot(b.x - a.x, b.y - a.y);
    let (ux, uy) = ((b.x - a.x) / long, (b.y - a.y) / long);
    let wide = type_metrics::width(text, size, Default::default());
    let above = size * 0.32;
    let along = if wide + 1.0 > long { long + 1.6 + wide / 2.0 } else { long / 2.0 };
    let at = At::mm(a.x + ux * along + uy * above, a.y + uy * along - ux * above);
    Label::new(at, text, size).middle().turned(-math::atan2(uy, ux).to_degrees()).halo()
}

/// A level mark: a small triangle that stands on the line it measures, with its figure.
pub(crate) fn level_mark(at: At, text: &str, leftwards: bool) -> Vec<Item> {
    use crate::pens::{WHITE, area};
    let pen = Pen::new(FINE, BLACK);
    let tri = vec![at, At::mm(at.x - 1.1, at.y - 1.7), At::mm(at.x + 1.1, at.y - 1.7)];
    let wide = type_metrics::width(text, FIGURE, Default::default()) + 2.0;
    let (far, label) = if leftwards {
        (at.x - wide, Label::new(At::mm(at.x - 1.6, at.y - 2.3), text, FIGURE).end())
    } else {
        (at.x + wide, Label::new(At::mm(at.x + 1.6, at.y - 2.3), text, FIGURE))
    };
    vec![
        stroke(At::mm(at.x, at.y - 1.7), At::mm(far, at.y - 1.7), pen.clone()),
        area(tri, Some(pen), Some(WHITE)),
        label.halo().into(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(items: &[Item]) -> Label {
        items.iter().find_map(|i| if let Item::Text(l) = i { Some(l.clone()) } else { None }).unwrap()
    }

    #[test]
    fn a_figure_is_never_upside_down() {
        for (x, y) in [(30.0, 0.0), (-30.0, 0.0), (0.1, 30.0), (-0.1, 30.0), (0.0, -30.0), (20.0, 20.0), (-20.0, 20.0)]
        {
            let l = text(&dimension(At::mm(50.0, 50.0), At::mm(50.0 + x, 50.0 + y), 5.0, "1200"));
            assert!(-87.0 < l.turn && l.turn <= 93.0, "{x} {y}: {}", l.turn);
        }
    }

    #[test]
    fn a_figure_too_wide_for_its_line_stands_beyond_its_end() {
        let l = text(&dimension(At::mm(0.0, 0.0), At::mm(3.0, 0.0), 0.0, "1200"));
        assert!(l.at.x > 3.0);
    }

    #[test]
    fn a_figure_too_wide_for_a_hanging_line_stands_below_it_and_any_other_on_it() {
        let long = text(&hanging(At::mm(0.0, 10.0), At::mm(0.0, 40.0), "depth 200"));
        assert!((20.0..30.0).contains(&long.at.y));
        let short = text(&hanging(At::mm(0.0, 10.0), At::mm(0.0, 14.0), "depth 200"));
        assert!(short.at.y > 18.0, "{:?}", short.at);
    }

    #[test]
    fn metric_dimensions_are_in_millimetres_and_the_others_in_feet() {
        assert_eq!(figure(Units::Metric, Length::m(1.2)), "1200");
        assert_eq!(figure(Units::Feet, Length::ft(4.5)), "4 ft 6 in");
    }
}
