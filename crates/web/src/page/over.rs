//! What lies over the drawing in pixels: names, signs of findings, things to take hold of, the scale bar.

use groundhold_finding::Severity;
use groundhold_plan::Plan;
use groundhold_quantity::Point;

use super::marks;
use crate::live::{Drawing, Grip, Window, lettered, place_of};

/// A sign at a place, for all findings there.
#[derive(Debug, Clone, PartialEq)]
pub struct Sign {
    element: String,
    at: Point,
    gravest: Severity,
    count: usize,
}

/// The signs of a plan: one for each element with findings above a note.
pub fn signs(plan: &Plan) -> Vec<Sign> {
    let mut all: Vec<Sign> = vec![];
    for f in plan.findings.iter().filter(|f| f.severity > Severity::Note && !f.place.element.is_empty()) {
        if let Some(s) = all.iter_mut().find(|s| s.element == f.place.element) {
            s.count += 1;
            s.gravest = s.gravest.max(f.severity);
        } else if let Some(at) = place_of(plan, &f.place.element, &f.place.on) {
            all.push(Sign { element: f.place.element.clone(), at, gravest: f.severity, count: 1 });
        }
    }
    all
}

fn escaped(t: &str) -> String {
    t.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// The names; they keep clear of signs, of what can be taken hold of, of the bar of the scale and of the keys.
pub fn names(drawing: &Drawing, window: &Window, lit: &str, signs: &[Sign], grips: &[Grip]) -> String {
    let mut out = String::new();
    let mut free: Vec<[f64; 4]> =
        sign_places(signs, window).into_iter().map(|(x, y)| [x, y, x + SIGN, y + SIGN]).collect();
    free.extend(grips.iter().map(|g| window.pixel(g.at)).map(|(x, y)| [x - 12.0, y - 12.0, x + 12.0, y + 12.0]));
    free.push([0.0, 0.0, 150.0, 22.0]);
    free.push([0.0, window.height - 58.0, 330.0, window.height]);
    for p in lettered(&drawing.tags, window, &free) {
        let lit = if !lit.is_empty() && p.tag.element == lit { " lit" } else { "" };
        let size = p.tag.sort.size();
        let head = format!("<text class=\"{}{lit}\" x=\"{:.1}\" y=\"{:.1}\">", p.tag.sort.class(), p.x, p.y);
        out.push_str(&head);
        for (i, line) in p.tag.text[..p.lines].iter().enumerate() {
            if i == 0 {
                out.push_str(&escaped(line));
            } else {
                let dy = size * 1.2;
                out.push_str(&format!(
                    "<tspan class=\"second\" x=\"{:.1}\" dy=\"{dy:.1}\">{}</tspan>",
                    p.x,
                    escaped(line)
                ));
            }
        }
        out.push_str("</text>");
    }
    out
}

/// How wide and high a sign is, in pixels.
const SIGN: f64 = 18.0;

/// Left and top of each sign, in pixels: above its place, and beside one that is there already.
fn sign_places(signs: &[Sign], window: &Window) -> Vec<(f64, f64)> {
    let mut all: Vec<(f64, f64)> = vec![];
    for s in signs {
        let (x, y) = window.pixel(s.at);
        let (mut x, y) = (x - SIGN / 2.0, y - 36.0);
        while let Some(other) = all.iter().find(|o| (o.0 - x).abs() < SIGN && (o.1 - y).abs() < SIGN) {
            x = other.0 + SIGN + 4.0;
        }
        all.push((x, y));
    }
    all
}

/// The signs, above their places.
pub fn signs_svg(signs: &[Sign], window: &Window) -> String {
    let mut out = String::new();
    for (s, (x, y)) in signs.iter().zip(sign_places(signs, window)) {
        let words = format!("{}: {} findings, gravest: {}", s.element, s.count, s.gravest.word());
        out.push_str(&format!(
            "<g class=\"sign {}\" data-sign=\"{}\" transform=\"translate({:.1} {:.1})\"><title>{}</title><circle r=\"18\" cx=\"9\" cy=\"9\" fill=\"transparent\"/>{}</g>",
            marks::class(s.gravest),
            escaped(&s.element),
            x,
            y,
            escaped(&words),
            marks::shape(s.gravest)
        ));
    }
    out
}

/// The grips of the chosen element; `held` is the one under the finger or the keyboard.
pub fn grips_svg(grips: &[Grip], held: Option<usize>, window: &Window) -> String {
    let mut out = String::new();
    for (i, g) in grips.iter().enumerate() {
        let (x, y) = window.pixel(g.at);
        let knob = match g.holds {
            crate::live::Holds::Point(_) => "<circle class=\"knob\" r=\"9\"/>".to_string(),
            crate::live::Holds::Side(_) => {
                "<rect class=\"knob\" x=\"-8\" y=\"-8\" width=\"16\" height=\"16\" rx=\"2\"/>".into()
            }
            crate::live::Holds::Whole => "<path class=\"knob\" d=\"M0-12 12 0 0 12-12 0z\"/>".into(),
        };
        let held = if held == Some(i) { " held" } else { "" };
        out.push_str(&format!(
            "<g class=\"grip{held}\" data-grip=\"{i}\" data-test=\"grip\" transform=\"translate({x:.1} {y:.1})\"><title>{}</title><circle class=\"reach\" r=\"24\"/>{knob}</g>",
            escaped(&g.words)
        ));
    }
    out
}

/// Lines from a dragged point to those it is in line with.
pub fn lines(all: &[(Point, Point)], window: &Window) -> String {
    let one = |(a, b): &(Point, Point)| {
        let ((x1, y1), (x2, y2)) = (window.pixel(*a), window.pixel(*b));
        format!(
            "<path class=\"snap\" d=\"M{x1:.1} {y1:.1}L{x2:.1} {y2:.1}\"/><circle class=\"snap\" cx=\"{x1:.1}\" cy=\"{y1:.1}\" r=\"5\" fill=\"none\"/>"
        )
    };
    all.iter().map(one).collect()
}

/// A bar as long as a round length: how wide, its path, and what it stands for.
pub fn bar(window: &Window) -> (String, String, String) {
    let (metres, pixels) = window.bar(110.0);
    let text = if metres < 1.0 { format!("{:.0} mm", metres * 1000.0) } else { format!("{metres:.0} m") };
    let d = format!("M2 3V9H{:.1}V3", pixels + 2.0);
    (format!("{:.0}", pixels + 4.0), d, text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_signs_at_one_place_stand_side_by_side() {
        let sign = |x: f64| Sign { element: "W1".into(), at: Point::m(x, 0.0), gravest: Severity::Watch, count: 1 };
        let window = Window { width: 400.0, height: 300.0, scale: 20.0, centre: Point::default() };
        let all = sign_places(&[sign(0.0), sign(0.1), sign(0.2), sign(5.0)], &window);
        for (i, a) in all.iter().enumerate() {
            assert!(all[..i].iter().all(|b| (a.0 - b.0).abs() >= SIGN || (a.1 - b.1).abs() >= SIGN), "{all:?}");
        }
        assert_eq!(all[3], (200.0 + 5.0 * 20.0 - SIGN / 2.0, 150.0 - 36.0), "one that is alone stays where it is");
    }
}
