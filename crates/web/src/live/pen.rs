//! How is a line or an area on the ground written as SVG? Looks are left to the style sheet, by class.

use std::fmt::Write;

use groundhold_quantity::Point;

/// What a user wrote, safe inside SVG.
pub fn escaped(t: &str) -> String {
    t.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// A number of metres to the millimetre.
pub fn m(v: f64) -> String {
    let s = format!("{v:.3}");
    let s = s.trim_end_matches('0').trim_end_matches('.');
    if s == "-0" { "0".into() } else { s.into() }
}

fn path(points: &[Point], out: &mut String) {
    for (i, p) in points.iter().enumerate() {
        // Writing to a String cannot fail.
        let _ = write!(out, "{}{} {}", if i == 0 { "M" } else { "L" }, m(p.x), m(-p.y));
    }
}

/// An open line.
pub fn line(points: &[Point], class: &str) -> String {
    lines(&[points], class)
}

/// Several open lines as one path.
pub fn lines(all: &[&[Point]], class: &str) -> String {
    let mut d = String::new();
    all.iter().for_each(|points| path(points, &mut d));
    format!("<path class=\"{class}\" d=\"{d}\"/>")
}

/// Several closed areas as one path.
pub fn areas(rings: &[&[Point]], class: &str) -> String {
    let mut d = String::new();
    for ring in rings {
        path(ring, &mut d);
        d.push('Z');
    }
    format!("<path class=\"{class}\" d=\"{d}\"/>")
}

/// One closed area.
pub fn area(ring: &[Point], class: &str) -> String {
    areas(&[ring], class)
}

/// A circle.
pub fn circle(at: Point, radius_m: f64, class: &str) -> String {
    format!("<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>", m(at.x), m(-at.y), m(radius_m))
}

/// A group that belongs to an element.
pub fn group(element: &str, title: &str, inside: &str) -> String {
    format!("<g data-element=\"{}\"><title>{}</title>{inside}</g>", escaped(element), escaped(title))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn north_is_up_and_no_needless_figures_are_written() {
        let p = [Point::m(1.0, 2.0), Point::m(1.0 / 3.0, -0.0001)];
        assert_eq!(line(&p, "x"), "<path class=\"x\" d=\"M1 -2L0.333 0\"/>");
        assert_eq!(area(&p, "x"), "<path class=\"x\" d=\"M1 -2L0.333 0Z\"/>");
    }
}
