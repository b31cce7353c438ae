//! Which part of the sheet is drawn on, and what of a line or an area lies in it?

use crate::scene::At;

/// An upright rectangle on paper, millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Frame {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Frame {
    pub fn new(left: f64, top: f64, right: f64, bottom: f64) -> Frame {
        Frame { left, top, right, bottom }
    }
    /// Round points; `None` without any.
    pub fn around(points: &[At]) -> Option<Frame> {
        let first = points.first()?;
        let start = Frame::new(first.x, first.y, first.x, first.y);
        Some(
            points
                .iter()
                .fold(start, |f, p| Frame::new(f.left.min(p.x), f.top.min(p.y), f.right.max(p.x), f.bottom.max(p.y))),
        )
    }
    pub fn width(&self) -> f64 {
        self.right - self.left
    }
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }
    pub fn middle(&self) -> At {
        At::mm((self.left + self.right) / 2.0, (self.top + self.bottom) / 2.0)
    }
    /// Smaller by so much all round.
    pub fn inset(&self, by: f64) -> Frame {
        Frame::new(self.left + by, self.top + by, self.right - by, self.bottom - by)
    }
    pub fn contains(&self, p: At) -> bool {
        self.left <= p.x && p.x <= self.right && self.top <= p.y && p.y <= self.bottom
    }
    pub fn holds(&self, f: &Frame) -> bool {
        self.left <= f.left && f.right <= self.right && self.top <= f.top && f.bottom <= self.bottom
    }
    pub fn overlaps(&self, f: &Frame) -> bool {
        self.left < f.right && f.left < self.right && self.top < f.bottom && f.top < self.bottom
    }
    /// True where a stroke passes through.
    pub fn is_crossed(&self, a: At, b: At) -> bool {
        self.part(a, b).is_some_and(|(t, u)| u - t > 1e-9)
    }
    /// The part of a stroke inside, as shares of its length.
    fn part(&self, a: At, b: At) -> Option<(f64, f64)> {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let (mut t, mut u) = (0.0_f64, 1.0_f64);
        for (p, q) in [(-dx, a.x - self.left), (dx, self.right - a.x), (-dy, a.y - self.top), (dy, self.bottom - a.y)] {
            if p == 0.0 {
                if q < 0.0 {
                    return None;
                }
            } else if p < 0.0 {
                t = t.max(q / p);
            } else {
                u = u.min(q / p);
            }
        }
        (t <= u).then_some((t, u))
    }
    /// The parts of a line inside.
    pub fn clip_line(&self, points: &[At]) -> Vec<Vec<At>> {
        let mut parts: Vec<Vec<At>> = vec![];
        let mut open = false;
        for w in points.windows(2) {
            let (a, b) = (w[0], w[1]);
            let Some((t, u)) = self.part(a, b) else {
                open = false;
                continue;
            };
            let at = |s: f64| At::mm(a.x + (b.x - a.x) * s, a.y + (b.y - a.y) * s);
            match parts.last_mut().filter(|_| open && t == 0.0) {
                Some(last) => last.push(at(u)),
                None => parts.push(vec![at(t), at(u)]),
            }
            open = u == 1.0;
        }
        parts
    }
    /// The part of an area inside; one ring, right for convex areas and for areas that are only cut at one side.
    pub fn clip_area(&self, points: &[At]) -> Vec<At> {
        let mut ring = points.to_vec();
        let sides: [&dyn Fn(At) -> f64; 4] =
            [&|p| p.x - self.left, &|p| self.right - p.x, &|p| p.y - self.top, &|p| self.bottom - p.y];
        for inside in sides {
            let mut next = vec![];
            for i in 0..ring.len() {
                let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
                let (da, db) = (inside(a), inside(b));
                if da >= 0.0 {
                    next.push(a);
                }
                if (da >= 0.0) != (db >= 0.0) {
                    let t = da / (da - db);
                    next.push(At::mm(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t));
                }
            }
            ring = next;
        }
        ring
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const F: Frame = Frame { left: 0.0, top: 0.0, right: 10.0, bottom: 10.0 };

    #[test]
    fn a_line_that_leaves_and_comes_back_is_two_lines() {
        let parts = F.clip_line(&[At::mm(5.0, 5.0), At::mm(15.0, 5.0), At::mm(15.0, 8.0), At::mm(5.0, 8.0)]);
        assert_eq!(parts, vec![vec![At::mm(5.0, 5.0), At::mm(10.0, 5.0)], vec![At::mm(10.0, 8.0), At::mm(5.0, 8.0)]]);
        assert!(F.clip_line(&[At::mm(11.0, 0.0), At::mm(11.0, 9.0)]).is_empty());
    }

    #[test]
    fn an_area_larger_than_the_frame_becomes_the_frame() {
        let ring = F.clip_area(&[At::mm(-5.0, -5.0), At::mm(15.0, -5.0), At::mm(15.0, 15.0), At::mm(-5.0, 15.0)]);
        assert_eq!(Frame::around(&ring), Some(F));
    }
}
