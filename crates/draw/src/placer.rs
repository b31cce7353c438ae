//! Where does each label stand so that none lies on another, none leaves the sheet, and as few lines as can be are covered?
//!
//! Labels are set one after the other, the weightiest first. Each tries places round its anchor, near ones before far
//! ones; a place on another label or beyond the sheet is refused, a place on drawn lines is dearer. A label that had to
//! move away is tied to its anchor by a leader.

use groundhold_quantity::math;

use crate::frame::Frame;
use crate::pens::{BLACK, FIGURE, FINE, HAIR, stroke};
use crate::scene::{At, Ink, Item, Label, Pen, Weight};
use crate::type_metrics::{self, CAP, DESCENT};

/// A label that wants a place.
#[derive(Debug, Clone)]
pub(crate) struct Wish {
    /// What it names.
    pub anchor: At,
    /// Its lines of text.
    pub text: Vec<String>,
    /// Type size.
    pub size: f64,
    /// Weight of the first line; the others are regular.
    pub weight: Weight,
    /// Colour.
    pub ink: Ink,
    /// Larger is set earlier.
    pub rank: i32,
    /// How far the thing itself reaches round the anchor.
    pub clear: f64,
    /// Left out when only a place dearer than this is found; infinite for what must be said.
    pub dearest: f64,
    /// The element it belongs to.
    pub element: String,
    /// A direction on paper in which it had rather stand; nothing for none.
    pub lean: At,
    /// It is written on the thing itself.
    pub over: bool,
}

impl Wish {
    /// An ordinary label that must be set.
    pub fn new(anchor: At, text: impl Into<String>) -> Wish {
        Wish {
            anchor,
            text: vec![text.into()],
            size: FIGURE,
            weight: Weight::Regular,
            ink: BLACK,
            rank: 0,
            clear: 1.0,
            dearest: f64::INFINITY,
            element: String::new(),
            lean: At::default(),
            over: false,
        }
    }
    pub fn and(mut self, line: impl Into<String>) -> Wish {
        self.text.push(line.into());
        self
    }
    pub fn size(mut self, size: f64) -> Wish {
        self.size = size;
        self
    }
    pub fn bold(mut self) -> Wish {
        self.weight = Weight::Bold;
        self
    }
    pub fn ink(mut self, ink: Ink) -> Wish {
        self.ink = ink;
        self
    }
    pub fn rank(mut self, rank: i32) -> Wish {
        self.rank = rank;
        self
    }
    pub fn clear(mut self, clear: f64) -> Wish {
        self.clear = clear;
        self
    }
    pub fn optional(mut self, dearest: f64) -> Wish {
        self.dearest = dearest;
        self
    }
    pub fn of(mut self, element: &str) -> Wish {
        self.element = element.into();
        self
    }
    /// Stands on its anchor, or nowhere.
    pub fn over(mut self) -> Wish {
        self.over = true;
        self
    }
    pub fn lean(mut self, x: f64, y: f64) -> Wish {
        self.lean = At::mm(x, y);
        self
    }
    fn width(&self) -> f64 {
        let w = |(i, t): (usize, &String)| {
            type_metrics::width(t, self.size, if i == 0 { self.weight } else { Weight::Regular })
        };
        self.text.iter().enumerate().map(w).fold(0.0, f64::max)
    }
    fn height(&self) -> f64 {
        self.size * (CAP + DESCENT) + (self.text.len().saturating_sub(1)) as f64 * self.line_step()
    }
    fn line_step(&self) -> f64 {
        self.size * 1.22
    }
}

/// Where labels may stand.
#[derive(Debug, Clone)]
pub(crate) struct Placer {
    page: Frame,
    /// Nothing may stand on these.
    taken: Vec<Frame>,
    /// Better not to stand on these, each with what it costs.
    strokes: Vec<(At, At, f64)>,
}

/// Room left round every label.
const AIR: f64 = 0.45;

impl Placer {
    /// An empty sheet.
    pub fn new(page: Frame) -> Placer {
        Placer { page, taken: vec![], strokes: vec![] }
    }
    /// Nothing may stand here.
    pub fn block(&mut self, f: Frame) {
        self.taken.push(f);
    }
    /// Blocks where the texts of some items already stand, and makes their lines dear.
    pub fn heed(&mut self, items: &[Item], cost: f64) {
        for item in items {
            match item {
                // Hatches may be covered.
                Item::Line { points, pen } => self.avoid(points, if pen.width <= HAIR { cost * 0.1 } else { cost }),
                Item::Area { points, pen, .. } => {
                    let Some(pen) = pen else { continue };
                    let c = if pen.width <= HAIR { cost * 0.1 } else { cost };
                    self.avoid(points, c);
                    if let (Some(f), Some(l)) = (points.first(), points.last()) {
                        self.avoid(&[*l, *f], c);
                    }
                }
                Item::Circle { at, radius, .. } => {
                    let r = radius * 0.8;
                    self.avoid(&[At::mm(at.x - r, at.y), At::mm(at.x + r, at.y)], cost);
                    self.avoid(&[At::mm(at.x, at.y - r), At::mm(at.x, at.y + r)], cost);
                }
                Item::Text(l) => self.taken.extend(Frame::around(&type_metrics::corners(l))),
                Item::Group { items, .. } => self.heed(items, cost),
            }
        }
    }
    /// Standing on this line costs so much.
    pub fn avoid(&mut self, points: &[At], cost: f64) {
        self.strokes.extend(points.windows(2).map(|w| (w[0], w[1], cost)));
    }
    /// Sets labels, the weightiest first; those of one rank in the order given.
    pub fn place(&mut self, mut wishes: Vec<Wish>) -> Vec<Item> {
        wishes.sort_by_key(|w| std::cmp::Reverse(w.rank));
        wishes.iter().filter_map(|w| self.set(w)).collect()
    }
    /// A figure on a line, turned with it, where it covers the fewest other lines; `None` where there is no room.
    pub fn on_line(&mut self, points: &[At], text: &str, size: f64, ink: Ink) -> Option<Label> {
        let wide = type_metrics::width(text, size, Weight::Regular);
        let total: f64 = points.windows(2).map(|w| math::hypot(w[1].x - w[0].x, w[1].y - w[0].y)).sum();
        if total < wide + 8.0 {
            return None;
        }
        let n = ((total / 4.0) as usize).clamp(3, 120);
        let mut best: Option<(f64, Label, Frame)> = None;
        for k in 1..n {
            let Some((at, dx, dy)) = along(points, total * k as f64 / n as f64) else { continue };
            let a = math::atan2(-dy, dx).to_degrees();
            let turn = if a > 90.0 {
                a - 180.0
            } else if a <= -90.0 {
                a + 180.0
            } else {
                a
            };
            let r = -turn.to_radians();
            let down = size * 0.36;
            let base = At::mm(at.x - down * math::sin(r), at.y + down * math::cos(r));
            let label = Label::new(base, text, size).middle().turned(turn).ink(ink).halo();
            let Some(f) = Frame::around(&type_metrics::corners(&label)) else { continue };
            if !self.page.holds(&f) || self.taken.iter().any(|t| t.overlaps(&f)) {
                continue;
            }
            let middle = (k as f64 / n as f64 - 0.5).abs();
            let cost = self.strokes.iter().filter(|s| f.is_crossed(s.0, s.1)).map(|s| s.2).sum::<f64>() + middle;
            if best.as_ref().is_none_or(|b| cost < b.0) {
                best = Some((cost, label, f));
            }
        }
        let (_, label, f) = best?;
        self.taken.push(f);
        Some(label)
    }
    fn set(&mut self, w: &Wish) -> Option<Item> {
        let (wide, high) = (w.width(), w.height());
        if w.over {
            let (x, y) = (w.anchor.x, w.anchor.y);
            let f = Frame::new(x - wide / 2.0, y - high * 0.5, x + wide / 2.0, y + high * 0.5);
            let free = self.page.holds(&f) && !self.taken.iter().any(|t| t.overlaps(&f));
            self.taken.extend(free.then_some(f));
            return free.then(|| drawn(w, &f, None));
        }
        let mut best: Option<(f64, Frame)> = None;
        for (k, distance) in [0.0, 1.5, 3.5, 6.0, 9.0, 13.0, 18.0, 24.0, 32.0, 42.0, 55.0, 75.0].into_iter().enumerate()
        {
            let far = k as f64 * 2.0;
            if best.as_ref().is_some_and(|b| b.0 <= far) {
                break;
            }
            for turn in 0..16 {
                let f = candidate(w, wide, high, w.clear + distance, turn);
                if let Some(cost) = self.cost(w, &f, far, turn)
                    && best.as_ref().is_none_or(|b| cost < b.0)
                {
                    best = Some((cost, f));
                }
            }
        }
        let (cost, f) = best?;
        if cost > w.dearest {
            return None;
        }
        self.taken.push(f);
        let leader = leader(w, &f);
        if let Some((a, b)) = leader {
            self.strokes.push((a, b, 8.0));
        }
        Some(drawn(w, &f, leader))
    }
    fn cost(&self, w: &Wish, f: &Frame, far: f64, turn: usize) -> Option<f64> {
        let room = Frame::new(f.left - AIR, f.top - AIR, f.right + AIR, f.bottom + AIR);
        if !self.page.holds(&room) || self.taken.iter().any(|t| t.overlaps(&room)) {
            return None;
        }
        // To the right above, then the other corners, then straight.
        let habit = [0.3, 0.0, 0.1, 0.4, 0.6, 0.5, 0.3, 0.4, 0.5, 0.6, 0.5, 0.4, 0.5, 0.5, 0.4, 0.3][turn];
        let m = f.middle();
        let away = (m.x - w.anchor.x) * w.lean.x + (m.y - w.anchor.y) * w.lean.y;
        let long = math::hypot(m.x - w.anchor.x, m.y - w.anchor.y).max(1e-9) * math::hypot(w.lean.x, w.lean.y);
        let against = if long > 1e-6 { 2.0 * (1.0 - away / long) } else { 0.0 };
        let lines: f64 = self.strokes.iter().filter(|s| room.is_crossed(s.0, s.1)).map(|s| s.2).sum();
        let through = leader(w, f).map_or(0.0, |(a, b)| {
            let labels = self.taken.iter().filter(|t| t.is_crossed(a, b)).count() as f64 * 12.0;
            labels + 0.05 * math::hypot(b.x - a.x, b.y - a.y)
        });
        Some(far + habit + against + lines + through)
    }
}

/// The place so far along a line, with the direction there.
fn along(points: &[At], distance: f64) -> Option<(At, f64, f64)> {
    let mut left = distance;
    for w in points.windows(2) {
        let (dx, dy) = (w[1].x - w[0].x, w[1].y - w[0].y);
        let long = math::hypot(dx, dy);
        if left <= long && long > 0.0 {
            return Some((At::mm(w[0].x + dx * left / long, w[0].y + dy * left / long), dx / long, dy / long));
        }
        left -= long;
    }
    None
}

/// The place of a label at a distance from its anchor; 16 directions, beginning at the right and going up.
fn candidate(w: &Wish, wide: f64, high: f64, distance: f64, turn: usize) -> Frame {
    let a = std::f64::consts::TAU * turn as f64 / 16.0;
    let (c, s) = (math::cos(a), -math::sin(a));
    // The box touches the circle round the anchor with the side or corner that looks at it.
    let cx = w.anchor.x + c * distance + if c.abs() < 0.3 { 0.0 } else { c.signum() * wide / 2.0 };
    let cy = w.anchor.y + s * distance + if s.abs() < 0.3 { 0.0 } else { s.signum() * high / 2.0 };
    Frame::new(cx - wide / 2.0, cy - high / 2.0, cx + wide / 2.0, cy + high / 2.0)
}

/// From the anchor to the nearest edge of the box, where the two are apart.
fn leader(w: &Wish, f: &Frame) -> Option<(At, At)> {
    let x = w.anchor.x.clamp(f.left, f.right);
    let y = if w.anchor.x < f.left || w.anchor.x > f.right {
        // At the sides a leader meets the middle of the first line.
        f.top + w.size * CAP * 0.5
    } else {
        w.anchor.y.clamp(f.top, f.bottom)
    };
    let end = At::mm(
        x + if x > w.anchor.x {
            -0.5
        } else if x < w.anchor.x {
            0.5
        } else {
            0.0
        },
        y,
    );
    let (dx, dy) = (end.x - w.anchor.x, end.y - w.anchor.y);
    let long = math::hypot(dx, dy);
    (long > w.clear + 3.0).then(|| {
        let start = (w.clear * 0.7).min(long);
        (At::mm(w.anchor.x + dx / long * start, w.anchor.y + dy / long * start), end)
    })
}

fn drawn(w: &Wish, f: &Frame, leader: Option<(At, At)>) -> Item {
    let mut items = vec![];
    if let Some((a, b)) = leader {
        items.push(stroke(a, b, Pen::new(FINE, w.ink)));
        items.push(crate::pens::circle(a, 0.35, None, Some(w.ink)));
    }
    // Lines of text lean against the anchor.
    let middle = f.middle().x;
    let (x, side) = if w.anchor.x < f.left {
        (f.left, 0)
    } else if w.anchor.x > f.right {
        (f.right, 2)
    } else {
        (middle, 1)
    };
    for (i, t) in w.text.iter().enumerate() {
        let y = f.top + w.size * CAP + i as f64 * w.line_step();
        let l = Label::new(At::mm(x, y), t.clone(), w.size).ink(w.ink).halo();
        let l = match side {
            0 => l,
            1 => l.middle(),
            _ => l.end(),
        };
        items.push(if i == 0 && w.weight == Weight::Bold { l.bold() } else { l }.into());
    }
    if w.element.is_empty() && items.len() == 1 { items.remove(0) } else { crate::pens::group(&w.element, "", items) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::overlap;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]
        #[test]
        fn no_label_lies_on_another_or_beyond_the_sheet(
            places in proptest::collection::vec((0.0..180.0, 0.0..120.0, 1_usize..3), 0..40)
        ) {
            let mut p = Placer::new(Frame::new(0.0, 0.0, 180.0, 120.0));
            let wishes = places.iter().enumerate().map(|(i, (x, y, n))| {
                let w = Wish::new(At::mm(*x, *y), format!("W{i} post"));
                if *n == 2 { w.and("101.080 m") } else { w }
            }).collect();
            let items = p.place(wishes);
            prop_assert_eq!(overlap::of(&items), Vec::<(String, String)>::new());
            prop_assert_eq!(overlap::outside(&items, 180.0, 120.0), Vec::<String>::new());
        }
    }

    #[test]
    fn a_label_that_had_to_move_has_a_leader_and_one_that_had_not_has_none() {
        let mut p = Placer::new(Frame::new(0.0, 0.0, 100.0, 100.0));
        let near = p.place(vec![Wish::new(At::mm(50.0, 50.0), "A")]);
        assert!(matches!(near[0], Item::Text(_)));
        p.block(Frame::new(30.0, 30.0, 70.0, 70.0));
        let far = p.place(vec![Wish::new(At::mm(50.0, 50.0), "B")]);
        assert!(matches!(&far[0], Item::Group { items, .. } if matches!(items[0], Item::Line { .. })));
    }
}
