//! Which names and figures are shown at this zoom, and where do they stand so that none covers another?

use groundhold_quantity::Point;

use super::Window;

/// What a text is; in this order they claim their places, and by it they look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// An element's name.
    Name,
    /// A peg's letter.
    Peg,
    /// Something to be heeded.
    Heed,
    /// Water.
    Water,
    /// A post's number.
    Number,
    /// A contour's level.
    Contour,
    /// A measured level.
    Spot,
}

impl Sort {
    /// Its class in the style sheet.
    pub fn class(self) -> &'static str {
        match self {
            Sort::Name => "tag name",
            Sort::Peg => "tag peg",
            Sort::Heed => "tag heed",
            Sort::Water => "tag water",
            Sort::Number => "tag number",
            Sort::Contour => "tag level",
            Sort::Spot => "tag spot",
        }
    }
    /// Its size of type in pixels.
    pub fn size(self) -> f64 {
        match self {
            Sort::Name | Sort::Peg => 14.0,
            Sort::Heed | Sort::Water | Sort::Number => 12.0,
            Sort::Contour | Sort::Spot => 11.0,
        }
    }
    /// Least pixels a metre at which it is shown.
    fn from(self) -> f64 {
        match self {
            Sort::Name | Sort::Peg => 0.0,
            Sort::Heed | Sort::Water => 14.0,
            Sort::Contour => 12.0,
            Sort::Number => 42.0,
            Sort::Spot => 60.0,
        }
    }
}

/// A text that wants a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Tag {
    /// On the ground.
    pub at: Point,
    /// Its lines.
    pub text: Vec<String>,
    /// What it is.
    pub sort: Sort,
    /// The element it belongs to; empty for none.
    pub element: String,
}

impl Tag {
    /// One line.
    pub fn new(at: Point, text: impl Into<String>, sort: Sort, element: &str) -> Tag {
        Tag { at, text: vec![text.into()], sort, element: element.into() }
    }
    /// With a line more.
    #[must_use]
    pub fn and(mut self, line: String) -> Tag {
        self.text.push(line);
        self
    }
}

/// A text with its place in pixels: the middle of its first line's base.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed<'a> {
    /// The text.
    pub tag: &'a Tag,
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
    /// How many of its lines there is room for.
    pub lines: usize,
}

/// Mean width of a letter over the size of the type; wide enough for the usual faces.
const LETTER: f64 = 0.63;
/// Height of a line over the size of the type.
const LINE: f64 = 1.25;

/// Places the texts, the weightiest first; nothing stands on what is kept free (left, top, right, bottom in pixels). One that finds no room is tried with its first line alone, then left out.
pub fn lettered<'a>(tags: &'a [Tag], window: &Window, kept_free: &[[f64; 4]]) -> Vec<Placed<'a>> {
    let mut order: Vec<&Tag> = tags.iter().filter(|t| window.scale >= t.sort.from()).collect();
    order.sort_by_key(|t| t.sort);
    let mut taken: Vec<[f64; 4]> = kept_free.to_vec();
    let mut out = vec![];
    for tag in order {
        let (x, y) = window.pixel(tag.at);
        let size = tag.sort.size();
        if x < -20.0 || y < -20.0 || x > window.width + 20.0 || y > window.height + 20.0 {
            continue;
        }
        for lines in (1..=tag.text.len()).rev() {
            let wide = tag.text[..lines].iter().map(|t| t.chars().count()).max().unwrap_or(0) as f64 * size * LETTER;
            // A name at the edge stays in sight.
            let cx = if wide < window.width { x.clamp(wide / 2.0 + 4.0, window.width - wide / 2.0 - 4.0) } else { x };
            let found = [0.0, -1.3, 1.3, -2.4, 2.4, -3.6, 3.6].into_iter().map(|k| y + k * size).find_map(|y| {
                let b = [
                    cx - wide / 2.0 - 2.0,
                    y - size,
                    cx + wide / 2.0 + 2.0,
                    y - size + lines as f64 * size * LINE + 2.0,
                ];
                let free = !taken.iter().any(|t| t[0] < b[2] && b[0] < t[2] && t[1] < b[3] && b[1] < t[3]);
                (free && b[1] > 0.0 && b[3] < window.height).then_some((y, b))
            });
            if let Some((y, b)) = found {
                taken.push(b);
                out.push(Placed { tag, x: cx, y, lines });
                break;
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn window(scale: f64) -> Window {
        Window { width: 400.0, height: 300.0, scale, centre: Point::m(0.0, 0.0) }
    }

    #[test]
    fn of_two_texts_in_one_place_the_name_stands_on_it_and_the_other_gives_way() {
        let at = Point::m(0.0, 0.0);
        let tags = [Tag::new(at, "101.20", Sort::Spot, ""), Tag::new(at, "W1 uphill wall", Sort::Name, "W1")];
        let w = window(80.0);
        let placed = lettered(&tags, &w, &[]);
        assert_eq!((placed[0].tag.sort, placed[0].y), (Sort::Name, 150.0));
        assert!(placed.len() == 2 && (placed[1].y - 150.0).abs() > 10.0);
    }

    #[test]
    fn small_figures_come_only_when_one_is_near_enough() {
        let tags = [Tag::new(Point::default(), "101.20", Sort::Spot, "")];
        assert_eq!(lettered(&tags, &window(30.0), &[]).len(), 0);
        assert_eq!(lettered(&tags, &window(90.0), &[]).len(), 1);
    }
}
