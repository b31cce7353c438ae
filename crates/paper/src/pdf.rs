//! Sheets as PDF: outlines and text as text, at true size, the same bytes for the same sheets.

use groundhold_draw::{Align, At, Ink, Item, Label, Pen, Weight, text_width};
use krilla::Document;
use krilla::color::rgb;
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};

use crate::sheet::Sheet;
use crate::typeface::{BOLD, REGULAR, in_our_letters};

/// Why there is no PDF.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PaperError {
    /// A font could not be read.
    #[error("the font {0} cannot be read")]
    Font(&'static str),
    /// A sheet without a size.
    #[error("sheet {number} is {size}, expected a width and a height above 0 mm")]
    Size {
        /// The sheet.
        number: usize,
        /// What it is.
        size: String,
    },
    /// The writer refused.
    #[error("the PDF cannot be written: {0}")]
    Writer(String),
}

/// Points of PDF in a millimetre.
const POINTS: f64 = 72.0 / 25.4;

struct Fonts {
    regular: Font,
    bold: Font,
}

/// The sheets as one PDF. `title` is what the document is called; no clock is asked.
///
/// # Errors
/// [`PaperError`] for a sheet without a size.
pub fn pdf(sheets: &[Sheet], title: &str) -> Result<Vec<u8>, PaperError> {
    let fonts = Fonts {
        regular: Font::new(REGULAR.into(), 0).ok_or(PaperError::Font("regular"))?,
        bold: Font::new(BOLD.into(), 0).ok_or(PaperError::Font("bold"))?,
    };
    let mut document = Document::new();
    let metadata = Metadata::new()
        .title(title.into())
        .creator("Groundhold".into())
        .language("en".into())
        .document_id(format!("{title}, {} sheets", sheets.len()));
    document.set_metadata(metadata);
    for sheet in sheets {
        let scene = &sheet.scene;
        let (w, h) = ((scene.width * POINTS) as f32, (scene.height * POINTS) as f32);
        let settings = PageSettings::from_wh(w, h).ok_or_else(|| PaperError::Size {
            number: sheet.number,
            size: format!("{} × {} mm", scene.width, scene.height),
        })?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        scene.items.iter().for_each(|i| item(&mut surface, &fonts, i));
        surface.finish();
        page.finish();
    }
    document.set_outline(outline(sheets));
    document.finish().map_err(|e| PaperError::Writer(format!("{e:?}")))
}

/// The parts of the set with their sheets, as a reader's list of contents.
fn outline(sheets: &[Sheet]) -> Outline {
    let mut outline = Outline::new();
    let node =
        |text: &str, index: usize| OutlineNode::new(text.into(), XyzDestination::new(index, Point::from_xy(0.0, 0.0)));
    let mut begun = 0;
    while begun < sheets.len() {
        let part = sheets[begun].part;
        let end = sheets[begun..].iter().position(|s| s.part != part).map_or(sheets.len(), |n| begun + n);
        let mut parent = node(part, begun);
        if end - begun > 1 {
            for (i, s) in sheets[begun..end].iter().enumerate() {
                parent.push_child(node(&format!("{}  {}", s.number, s.title), begun + i));
            }
        }
        outline.push_child(parent);
        begun = end;
    }
    outline
}

fn item(surface: &mut Surface, fonts: &Fonts, i: &Item) {
    match i {
        Item::Line { points, pen } => draw(surface, path(points, false), Some(pen), None),
        Item::Area { points, pen, fill } => draw(surface, path(points, true), pen.as_ref(), *fill),
        Item::Circle { at, radius, pen, fill } => draw(surface, circle(*at, *radius), pen.as_ref(), *fill),
        Item::Text(l) => text(surface, fonts, l),
        Item::Group { items, .. } => items.iter().for_each(|i| item(surface, fonts, i)),
    }
}

fn point(at: At) -> (f32, f32) {
    ((at.x * POINTS) as f32, (at.y * POINTS) as f32)
}

fn path(points: &[At], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    let (first, rest) = points.split_first()?;
    let (x, y) = point(*first);
    builder.move_to(x, y);
    for p in rest {
        let (x, y) = point(*p);
        builder.line_to(x, y);
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

/// How far the handles of a quarter circle reach, for a radius of 1: 4/3·(√2 − 1).
const HANDLE: f64 = 0.552_284_749_8;

fn circle(at: At, radius: f64) -> Option<Path> {
    let (r, h) = (radius, radius * HANDLE);
    let to = |x: f64, y: f64| point(At::mm(at.x + x, at.y + y));
    let mut builder = PathBuilder::new();
    let start = to(r, 0.0);
    builder.move_to(start.0, start.1);
    for [a, b, c] in [
        [(r, h), (h, r), (0.0, r)],
        [(-h, r), (-r, h), (-r, 0.0)],
        [(-r, -h), (-h, -r), (0.0, -r)],
        [(h, -r), (r, -h), (r, 0.0)],
    ] {
        let (a, b, c) = (to(a.0, a.1), to(b.0, b.1), to(c.0, c.1));
        builder.cubic_to(a.0, a.1, b.0, b.1, c.0, c.1);
    }
    builder.close();
    builder.finish()
}

fn colour(i: Ink) -> rgb::Color {
    rgb::Color::new(i.0, i.1, i.2)
}

fn filling(ink: Ink) -> Fill {
    Fill { paint: colour(ink).into(), opacity: NormalizedF32::ONE, rule: Default::default() }
}

fn stroke(pen: &Pen) -> Stroke {
    let dash = (!pen.dash.is_empty())
        .then(|| StrokeDash { array: pen.dash.iter().map(|d| (d * POINTS) as f32).collect(), offset: 0.0 });
    Stroke {
        paint: colour(pen.ink).into(),
        width: (pen.width * POINTS) as f32,
        line_cap: if dash.is_some() { LineCap::Butt } else { LineCap::Round },
        line_join: LineJoin::Round,
        dash,
        ..Stroke::default()
    }
}

fn draw(surface: &mut Surface, path: Option<Path>, pen: Option<&Pen>, fill: Option<Ink>) {
    let Some(path) = path else { return };
    if pen.is_none() && fill.is_none() {
        return;
    }
    surface.set_fill(fill.map(filling));
    surface.set_stroke(pen.map(stroke));
    surface.draw_path(&path);
}

/// Width of the white edge of a text, as a share of its size.
const HALO: f64 = 0.28;

fn text(surface: &mut Surface, fonts: &Fonts, l: &Label) {
    let text = in_our_letters(&l.text);
    if text.trim().is_empty() || l.size <= 0.0 {
        return;
    }
    let font = if l.weight == Weight::Bold { &fonts.bold } else { &fonts.regular };
    let width = text_width(&text, l.size, l.weight);
    let back = match l.align {
        Align::Start => 0.0,
        Align::Middle => width / 2.0,
        Align::End => width,
    };
    let (x, y) = point(l.at);
    surface.push_transform(&Transform::from_rotate_at(-l.turn as f32, x, y));
    let start = Point::from_xy(x - (back * POINTS) as f32, y);
    let size = (l.size * POINTS) as f32;
    if l.halo {
        // The edge is drawn as outlines, so that the text itself stands in the file once.
        surface.set_fill(None);
        surface.set_stroke(Some(stroke(&Pen::new(l.size * HALO, Ink(255, 255, 255)))));
        surface.draw_text(start, font.clone(), size, &text, true, TextDirection::LeftToRight);
    }
    surface.set_stroke(None);
    surface.set_fill(Some(filling(l.ink)));
    surface.draw_text(start, font.clone(), size, &text, false, TextDirection::LeftToRight);
    surface.pop();
}
