//! Which part of the ground is looked at, and how large?

use groundhold_quantity::Point;

/// Pixels a metre, at least and at most.
const SCALES: (f64, f64) = (0.05, 1500.0);

/// The part of the ground that is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Pixels across.
    pub width: f64,
    /// Pixels down.
    pub height: f64,
    /// Pixels a metre.
    pub scale: f64,
    /// The place on the ground in the middle.
    pub centre: Point,
}

impl Default for Window {
    fn default() -> Window {
        Window { width: 360.0, height: 360.0, scale: 24.0, centre: Point::m(0.0, 0.0) }
    }
}

impl Window {
    /// Where a place on the ground is seen.
    pub fn pixel(&self, p: Point) -> (f64, f64) {
        (self.width / 2.0 + (p.x - self.centre.x) * self.scale, self.height / 2.0 - (p.y - self.centre.y) * self.scale)
    }
    /// The place on the ground that is seen at a pixel.
    pub fn ground(&self, x: f64, y: f64) -> Point {
        Point::m(
            self.centre.x + (x - self.width / 2.0) / self.scale,
            self.centre.y - (y - self.height / 2.0) / self.scale,
        )
    }
    /// All of a stretch of ground, with some room round it and more below, where buttons lie over it.
    #[must_use]
    pub fn fit(self, low: Point, high: Point) -> Window {
        let (side, top, below) = (14.0, 26.0, 64.0);
        let (w, h) = ((high.x - low.x).max(0.5), (high.y - low.y).max(0.5));
        let (wide, tall) = ((self.width - 2.0 * side).max(40.0), (self.height - top - below).max(40.0));
        let scale = (wide / w).min(tall / h).clamp(SCALES.0, SCALES.1);
        let middle = low.towards(high, 0.5);
        Window { scale, centre: Point::m(middle.x, middle.y - (below - top) / 2.0 / scale), ..self }
    }
    /// Larger by a factor, with the ground at a pixel kept where it is.
    #[must_use]
    pub fn zoomed(self, by: f64, x: f64, y: f64) -> Window {
        let held = self.ground(x, y);
        let scale = (self.scale * by).clamp(SCALES.0, SCALES.1);
        let next = Window { scale, ..self };
        let now = next.ground(x, y);
        Window { centre: self.centre + (held - now), ..next }
    }
    /// Moved by pixels, as a finger pushes it.
    #[must_use]
    pub fn pushed(self, right: f64, down: f64) -> Window {
        let centre = Point::m(self.centre.x - right / self.scale, self.centre.y + down / self.scale);
        Window { centre, ..self }
    }
    /// The window as an SVG view box, metres, `y` downwards.
    pub fn view_box(&self) -> String {
        let (w, h) = (self.width / self.scale, self.height / self.scale);
        format!("{:.5} {:.5} {:.5} {:.5}", self.centre.x - w / 2.0, -self.centre.y - h / 2.0, w, h)
    }
    /// A round length that is about so many pixels long, and its pixels: for a scale bar.
    pub fn bar(&self, pixels: f64) -> (f64, f64) {
        let steps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];
        let metres = steps.into_iter().rev().find(|s| s * self.scale <= pixels).unwrap_or(0.01);
        (metres, metres * self.scale)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn the_ground_under_the_finger_stays_there_while_one_zooms(
            x in 0.0..400.0f64, y in 0.0..700.0f64, by in 0.2..5.0f64, scale in 1.0..200.0f64
        ) {
            let w = Window { width: 400.0, height: 700.0, scale, centre: Point::m(7.0, -3.0) };
            let (p, q) = (w.ground(x, y), w.zoomed(by, x, y).ground(x, y));
            prop_assert!((p - q).length() < 1e-9);
            let back = w.pixel(p);
            prop_assert!((back.0 - x).abs() < 1e-6 && (back.1 - y).abs() < 1e-6);
        }
    }
}
