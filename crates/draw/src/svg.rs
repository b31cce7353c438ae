//! A sheet as SVG, to scale: one user unit is one millimetre of paper.

use std::fmt::Write;

use crate::scene::{Align, At, Ink, Item, Label, Pen, Scene, Weight};

/// The sheet as SVG text; the same sheet gives the same bytes everywhere.
pub fn to_svg(scene: &Scene) -> String {
    let (w, h) = (number(scene.width), number(scene.height));
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" role=\"img\" font-family=\"'Groundhold Sans', Inter, Arial, 'Liberation Sans', sans-serif\">\n<title>{}</title>\n<rect width=\"{w}\" height=\"{h}\" fill=\"#ffffff\"/>\n",
        escaped(&scene.title)
    );
    scene.items.iter().for_each(|i| item(&mut out, i));
    out.push_str("</svg>\n");
    out
}

/// At most three decimals, without trailing zeros.
fn number(v: f64) -> String {
    let s = format!("{v:.3}");
    let s = s.trim_end_matches('0').trim_end_matches('.');
    if s == "-0" { "0".into() } else { s.into() }
}

fn escaped(t: &str) -> String {
    t.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

fn hex(i: Ink) -> String {
    format!("#{:02x}{:02x}{:02x}", i.0, i.1, i.2)
}

fn stroke(pen: &Option<&Pen>) -> String {
    let Some(p) = pen else { return " stroke=\"none\"".into() };
    let dash = if p.dash.is_empty() {
        String::new()
    } else {
        format!(" stroke-dasharray=\"{}\"", p.dash.iter().map(|d| number(*d)).collect::<Vec<_>>().join(" "))
    };
    format!(" stroke=\"{}\" stroke-width=\"{}\"{dash}", hex(p.ink), number(p.width))
}

fn points(ps: &[At]) -> String {
    ps.iter().map(|p| format!("{},{}", number(p.x), number(p.y))).collect::<Vec<_>>().join(" ")
}

fn filling(fill: &Option<Ink>) -> String {
    fill.map_or("none".into(), hex)
}

fn item(out: &mut String, i: &Item) {
    // Writing to a String cannot fail.
    let _ = match i {
        Item::Line { points: ps, pen } => writeln!(
            out,
            "<polyline points=\"{}\" fill=\"none\"{} stroke-linejoin=\"round\" stroke-linecap=\"round\"/>",
            points(ps),
            stroke(&Some(pen))
        ),
        Item::Area { points: ps, pen, fill } => writeln!(
            out,
            "<polygon points=\"{}\" fill=\"{}\"{} stroke-linejoin=\"round\"/>",
            points(ps),
            filling(fill),
            stroke(&pen.as_ref())
        ),
        Item::Circle { at, radius, pen, fill } => writeln!(
            out,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"{}/>",
            number(at.x),
            number(at.y),
            number(*radius),
            filling(fill),
            stroke(&pen.as_ref())
        ),
        Item::Text(l) => writeln!(out, "{}", text(l)),
        Item::Group { element, title, items } => {
            let named =
                if element.is_empty() { String::new() } else { format!(" data-element=\"{}\"", escaped(element)) };
            let told = if title.is_empty() { String::new() } else { format!("<title>{}</title>", escaped(title)) };
            let _ = writeln!(out, "<g{named}>{told}");
            items.iter().for_each(|i| item(out, i));
            writeln!(out, "</g>")
        }
    };
}

fn text(l: &Label) -> String {
    let anchor = match l.align {
        Align::Start => "start",
        Align::Middle => "middle",
        Align::End => "end",
    };
    let weight = if l.weight == Weight::Bold { " font-weight=\"bold\"" } else { "" };
    let (x, y) = (number(l.at.x), number(l.at.y));
    let turn =
        if l.turn == 0.0 { String::new() } else { format!(" transform=\"rotate({} {x} {y})\"", number(-l.turn)) };
    let halo = if l.halo {
        format!(
            " stroke=\"#ffffff\" stroke-width=\"{}\" stroke-linejoin=\"round\" paint-order=\"stroke\"",
            number(l.size * 0.28)
        )
    } else {
        String::new()
    };
    format!(
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\" text-anchor=\"{anchor}\"{weight} fill=\"{}\"{halo}{turn}>{}</text>",
        number(l.size),
        hex(l.ink),
        escaped(&l.text)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sheet_is_as_large_as_it_says_and_its_text_is_escaped() {
        let mut s = Scene::new(100.0, 50.0, "a < b");
        s.push(Item::Line {
            points: vec![At::mm(0.0, 1.0 / 3.0), At::mm(10.0, 0.0)],
            pen: Pen::new(0.25, Ink(0, 0, 0)),
        });
        let svg = to_svg(&s);
        assert!(svg.contains("width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\""));
        assert!(svg.contains("a &lt; b") && svg.contains("points=\"0,0.333 10,0\""));
    }

    /// The text of `tests/snapshots/sample.svg` shows what a dimension, a hatch, stones and placed labels become.
    #[test]
    fn the_sample_sheet_is_drawn_as_it_was() {
        use crate::pens::{EARTH, HAIR, MEDIUM, oblong};
        let mut s = Scene::new(60.0, 40.0, "Sample");
        let ring = oblong(10.0, 12.0, 40.0, 24.0);
        s.items.extend(crate::hatch::lines(std::slice::from_ref(&ring), 45.0, 4.0, &Pen::new(HAIR, EARTH)));
        s.items.extend(crate::hatch::stones(&oblong(42.0, 12.0, 50.0, 18.0), 3.0));
        s.push(crate::pens::area(ring, Some(Pen::new(MEDIUM, EARTH)), None));
        s.items.extend(crate::dimension::dimension(At::mm(10.0, 24.0), At::mm(40.0, 24.0), -6.0, "1500"));
        let mut placer = crate::placer::Placer::new(crate::frame::Frame::new(0.0, 0.0, 60.0, 40.0));
        placer.heed(&s.items, 2.0);
        let wish = |x| crate::placer::Wish::new(At::mm(x, 12.0), "W1").and("top 101.93");
        s.items.extend(placer.place(vec![wish(12.0), wish(16.0)]));
        let svg = to_svg(&s);
        let kept = include_str!("../tests/snapshots/sample.svg");
        assert!(svg == kept, "the sample sheet is now:\n{svg}");
    }
}
