//! A page in the making: things on it, and the rectangles its texts take, so that nothing is printed over another.

use groundhold_draw::{Align, At, Ink, Item, Label, Pen, Weight, text_width};

use crate::paper_size::{Frame, Paper};
use crate::symbols;
use crate::typeface::in_our_letters;

pub(crate) const BLACK: Ink = Ink(24, 26, 28);
pub(crate) const GREY: Ink = Ink(98, 104, 110);
pub(crate) const RULE: Ink = Ink(90, 96, 102);
pub(crate) const HAIR: Ink = Ink(206, 210, 214);
pub(crate) const WASH: Ink = Ink(243, 244, 246);
pub(crate) const RED: Ink = Ink(168, 28, 28);

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Style {
    /// The em in millimetres.
    pub size: f64,
    pub weight: Weight,
    pub ink: Ink,
    /// True where `K_a` stands for a letter with an index.
    pub symbols: bool,
}

impl Style {
    pub const BODY: Style = Style { size: 3.0, weight: Weight::Regular, ink: BLACK, symbols: false };
    pub const SMALL: Style = Style { size: 2.6, weight: Weight::Regular, ink: GREY, symbols: false };

    pub const fn bold(mut self) -> Style {
        self.weight = Weight::Bold;
        self
    }
    pub const fn sized(mut self, size: f64) -> Style {
        self.size = size;
        self
    }
    pub const fn ink(mut self, ink: Ink) -> Style {
        self.ink = ink;
        self
    }
    pub const fn formula(mut self) -> Style {
        self.symbols = true;
        self
    }
    /// From one base line to the next.
    pub fn leading(&self) -> f64 {
        self.size * 1.4
    }
    /// From the top of a line to its base line.
    pub fn ascent(&self) -> f64 {
        self.size * 1.02
    }
    pub fn width(&self, text: &str) -> f64 {
        if self.symbols { symbols::width(text, self) } else { text_width(text, self.size, self.weight) }
    }
}

/// A text with the room it takes.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Block {
    pub frame: Frame,
    pub text: String,
}

/// A page in the making.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Leaf {
    pub paper: Paper,
    /// The heading of its part of the set.
    pub part: &'static str,
    pub title: String,
    pub scale: String,
    pub items: Vec<Item>,
    pub blocks: Vec<Block>,
}

impl Leaf {
    pub fn new(paper: Paper, part: &'static str, title: impl Into<String>) -> Leaf {
        Leaf { paper, part, title: title.into(), scale: String::new(), items: vec![], blocks: vec![] }
    }

    /// One line of text with its top at `top`; `x` is where it begins, its middle or its end.
    pub fn text(&mut self, text: &str, x: f64, top: f64, align: Align, style: &Style) {
        let text = in_our_letters(text);
        if text.trim().is_empty() {
            return;
        }
        let width = style.width(&text);
        let left = match align {
            Align::Start => x,
            Align::Middle => x - width / 2.0,
            Align::End => x - width,
        };
        let base = top + style.ascent();
        if style.symbols {
            self.items.extend(symbols::labels(&text, At::mm(left, base), style));
        } else {
            self.items.push(Item::Text(label(&text, At::mm(x, base), align, style)));
        }
        let frame = Frame { left, top, right: left + width, bottom: top + style.leading() };
        self.blocks.push(Block { frame, text });
    }

    pub fn rule(&mut self, from: (f64, f64), to: (f64, f64), width: f64, ink: Ink) {
        let points = vec![At::mm(from.0, from.1), At::mm(to.0, to.1)];
        self.items.push(Item::Line { points, pen: Pen::new(width, ink) });
    }

    pub fn fill(&mut self, f: Frame, ink: Ink) {
        let points =
            vec![At::mm(f.left, f.top), At::mm(f.right, f.top), At::mm(f.right, f.bottom), At::mm(f.left, f.bottom)];
        self.items.push(Item::Area { points, pen: None, fill: Some(ink) });
    }
}

/// A plain label.
pub(crate) fn label(text: &str, at: At, align: Align, style: &Style) -> Label {
    Label {
        at,
        text: text.into(),
        size: style.size,
        align,
        turn: 0.0,
        weight: style.weight,
        ink: style.ink,
        halo: false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_takes_the_room_where_it_stands() {
        let mut leaf = Leaf::new(Paper::A4, "", "");
        leaf.text("100", 50.0, 20.0, Align::End, &Style::BODY);
        let f = leaf.blocks[0].frame;
        assert!((f.right - 50.0).abs() < 1e-9 && f.left < 50.0 && (f.height() - 4.2).abs() < 1e-9);
    }
}
