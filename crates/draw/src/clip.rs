//! What of a drawing lies inside a frame?

use groundhold_quantity::math;

use crate::frame::Frame;
use crate::scene::{At, Item};

/// The parts inside a frame. A text is kept when its place lies inside.
pub(crate) fn clip(items: Vec<Item>, frame: &Frame) -> Vec<Item> {
    items.into_iter().flat_map(|i| clipped(i, frame)).collect()
}

fn clipped(item: Item, frame: &Frame) -> Vec<Item> {
    match item {
        Item::Line { points, pen } => {
            frame.clip_line(&points).into_iter().map(|points| Item::Line { points, pen: pen.clone() }).collect()
        }
        Item::Area { points, pen, fill } => {
            if points.iter().all(|p| frame.contains(*p)) {
                return vec![Item::Area { points, pen, fill }];
            }
            let inside = frame.clip_area(&points);
            let mut out = vec![];
            if inside.len() > 2 && fill.is_some() {
                out.push(Item::Area { points: inside, pen: None, fill });
            }
            if let (Some(pen), Some(first)) = (pen, points.first().copied()) {
                let mut closed = points;
                closed.push(first);
                out.extend(clipped(Item::Line { points: closed, pen }, frame));
            }
            out
        }
        Item::Circle { at, radius, pen, fill } => {
            if frame.inset(radius).contains(at) {
                return vec![Item::Circle { at, radius, pen, fill }];
            }
            clipped(Item::Area { points: ring(at, radius), pen, fill }, frame)
        }
        Item::Text(l) => frame.contains(l.at).then_some(Item::Text(l)).into_iter().collect(),
        Item::Group { element, title, items } => {
            let items = clip(items, frame);
            (!items.is_empty()).then_some(Item::Group { element, title, items }).into_iter().collect()
        }
    }
}

/// A circle as a polygon of 64 corners.
pub(crate) fn ring(at: At, radius: f64) -> Vec<At> {
    let turn = |i: i32| std::f64::consts::TAU * f64::from(i) / 64.0;
    (0..64).map(|i| At::mm(at.x + radius * math::cos(turn(i)), at.y + radius * math::sin(turn(i)))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pens::{BLACK, THIN};
    use crate::scene::Pen;

    #[test]
    fn nothing_of_a_circle_half_outside_is_drawn_outside() {
        let f = Frame::new(0.0, 0.0, 10.0, 10.0);
        let c =
            Item::Circle { at: At::mm(10.0, 5.0), radius: 3.0, pen: Some(Pen::new(THIN, BLACK)), fill: Some(BLACK) };
        let parts = clip(vec![c], &f);
        assert_eq!(parts.len(), 2, "a filling and one arc of the edge");
        for p in parts {
            let (Item::Line { points, .. } | Item::Area { points, .. }) = p else { panic!("a line or an area") };
            assert!(points.iter().all(|p| f.inset(-1e-9).contains(*p)));
        }
    }
}
