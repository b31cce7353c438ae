//! At which scale does it fit, and where on paper does a place on the ground lie?

use groundhold_quantity::{Length, Point, Units, math};

use crate::frame::Frame;
use crate::pens::{BLACK, FIGURE, FINE, GREY, MEDIUM, SMALL, THIN, WHITE, area, circle, line, oblong, stroke};
use crate::scene::{At, Item, Label, Pen};

/// The scales in use, as the number after `1:`.
pub(crate) const SCALES: [f64; 6] = [10.0, 20.0, 25.0, 50.0, 100.0, 200.0];

/// The largest scale at which something of so many metres fits a width and height in millimetres; 1:500 and coarser
/// where none of the usual ones does.
pub(crate) fn scale_for(wide_m: f64, high_m: f64, width: f64, height: f64) -> f64 {
    scale_among(&SCALES, wide_m, high_m, width, height)
}

/// The same among some scales, the largest first.
pub(crate) fn scale_among(scales: &[f64], wide_m: f64, high_m: f64, width: f64, height: f64) -> f64 {
    let fits = |s: f64| wide_m * 1000.0 / s <= width + 1e-9 && high_m * 1000.0 / s <= height + 1e-9;
    let mut coarse = 500.0;
    let usual = scales.iter().copied().find(|s| fits(*s));
    usual.unwrap_or_else(|| {
        // 500, 1000, 2000, 5000, 10 000 … ; far beyond the earth there is an end.
        let steps = [2.0, 2.0, 2.5];
        for k in 0..30 {
            if fits(coarse) {
                break;
            }
            coarse *= steps[k % 3];
        }
        coarse
    })
}

/// From metres on the ground (or along a wall, and levels) to millimetres of paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct View {
    /// The number after `1:`.
    pub scale: f64,
    /// This place on the ground …
    pub ground: Point,
    /// … lies here on paper.
    pub paper: At,
}

impl View {
    /// A view with the middle of a stretch of ground in the middle of a frame.
    pub fn centred(scale: f64, low: Point, high: Point, frame: &Frame) -> View {
        View { scale, ground: low.towards(high, 0.5), paper: frame.middle() }
    }
    /// Metres to millimetres.
    pub fn mm(&self, metres: f64) -> f64 {
        metres * 1000.0 / self.scale
    }
    /// Millimetres to metres.
    pub fn metres(&self, mm: f64) -> f64 {
        mm * self.scale / 1000.0
    }
    /// A place on paper.
    pub fn at(&self, p: Point) -> At {
        At::mm(self.paper.x + self.mm(p.x - self.ground.x), self.paper.y - self.mm(p.y - self.ground.y))
    }
    /// The same for a pair.
    pub fn xy(&self, x: f64, y: f64) -> At {
        self.at(Point::m(x, y))
    }
    /// A line.
    pub fn line(&self, points: &[Point]) -> Vec<At> {
        points.iter().map(|p| self.at(*p)).collect()
    }
    /// A place on the ground.
    pub fn back(&self, at: At) -> Point {
        Point::m(self.ground.x + self.metres(at.x - self.paper.x), self.ground.y - self.metres(at.y - self.paper.y))
    }
    /// The scale in words: `1:50`.
    pub fn words(&self) -> String {
        format!("1:{}", self.scale.round())
    }
}

/// The unit of distances on the ground: how many metres it has, and its sign.
pub(crate) fn ground_unit(units: Units) -> (f64, &'static str) {
    match units {
        Units::Metric => (1.0, "m"),
        Units::Feet => (Length::ft(1.0).to_m(), "ft"),
    }
}

/// A scale bar that begins at a place: four fields, alternately filled, with metres or feet under it. Gives its length too.
pub(crate) fn scale_bar(view: &View, units: Units, at: At) -> (Vec<Item>, f64) {
    let (unit, sign) = ground_unit(units);
    let field = [0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0]
        .into_iter()
        .find(|f| view.mm(*f * unit) >= 9.0)
        .unwrap_or(view.metres(10.0) / unit);
    let step = view.mm(field * unit);
    let mut items = vec![];
    for i in 0..4 {
        let left = at.x + f64::from(i) * step;
        let fill = if i % 2 == 0 { BLACK } else { WHITE };
        items.push(area(oblong(left, at.y, left + step, at.y + 1.1), Some(Pen::new(FINE, BLACK)), Some(fill)));
    }
    for i in 0..=4 {
        let text = groundhold_quantity::trim(field * f64::from(i), 2);
        let text = if i == 4 { format!("{text} {sign}") } else { text };
        items.push(Label::new(At::mm(at.x + f64::from(i) * step, at.y + 3.6), text, SMALL).middle().into());
    }
    (items, 4.0 * step)
}

/// A north arrow: a needle, half of it filled, with its letter, its middle at a place.
pub(crate) fn north(at: At, high: f64) -> Vec<Item> {
    let (h, w) = (high / 2.0, high * 0.16);
    let (tip, tail, waist) = (At::mm(at.x, at.y - h), At::mm(at.x, at.y + h), At::mm(at.x, at.y + h * 0.55));
    let pen = Pen::new(FINE, BLACK);
    vec![
        area(vec![tip, At::mm(at.x - w, tail.y), waist], Some(pen.clone()), Some(WHITE)),
        area(vec![tip, At::mm(at.x + w, tail.y), waist], Some(pen), Some(BLACK)),
        Label::new(At::mm(at.x, tip.y - 1.0), "N", FIGURE).middle().bold().into(),
    ]
}

/// A frame round a plan with ticks and coordinates of the job's grid at a regular distance.
pub(crate) fn grid_frame(view: &View, units: Units, frame: &Frame) -> Vec<Item> {
    let (unit, _) = ground_unit(units);
    let step = [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0]
        .into_iter()
        .map(|s| s * unit)
        .find(|s| view.mm(*s) >= 24.0)
        .unwrap_or(view.metres(24.0));
    let (low, high) = (view.back(At::mm(frame.left, frame.bottom)), view.back(At::mm(frame.right, frame.top)));
    let mut items =
        vec![area(oblong(frame.left, frame.top, frame.right, frame.bottom), Some(Pen::new(THIN, BLACK)), None)];
    let pen = || Pen::new(FINE, GREY);
    let multiples =
        |a: f64, b: f64| ((a / step).ceil() as i64..=(b / step).floor() as i64).map(move |k| k as f64 * step);
    let xs: Vec<f64> = multiples(low.x, high.x).take(60).collect();
    let ys: Vec<f64> = multiples(low.y, high.y).take(60).collect();
    for x in &xs {
        let px = view.xy(*x, 0.0).x;
        items.push(stroke(At::mm(px, frame.bottom), At::mm(px, frame.bottom + 1.2), pen()));
        items.push(stroke(At::mm(px, frame.top), At::mm(px, frame.top - 1.2), pen()));
        let label =
            Label::new(At::mm(px, frame.bottom + 3.6), groundhold_quantity::trim(*x / unit, 1), SMALL).ink(GREY);
        items.push(label.middle().into());
    }
    for y in &ys {
        let py = view.xy(0.0, *y).y;
        items.push(stroke(At::mm(frame.left, py), At::mm(frame.left - 1.2, py), pen()));
        items.push(stroke(At::mm(frame.right, py), At::mm(frame.right + 1.2, py), pen()));
        let label = Label::new(At::mm(frame.left - 1.8, py), groundhold_quantity::trim(*y / unit, 1), SMALL).ink(GREY);
        items.push(label.middle().turned(90.0).into());
    }
    // Small crosses where the grid lines would meet.
    for x in &xs {
        for y in &ys {
            let p = view.xy(*x, *y);
            if frame.inset(1.5).contains(p) {
                items.push(stroke(At::mm(p.x - 0.8, p.y), At::mm(p.x + 0.8, p.y), Pen::new(0.08, GREY)));
                items.push(stroke(At::mm(p.x, p.y - 0.8), At::mm(p.x, p.y + 0.8), Pen::new(0.08, GREY)));
            }
        }
    }
    items
}

/// A scale of levels at the left of an elevation or section, from the lowest to the highest level in metres; its figures
/// are in the unit in which the job's levels are read.
pub(crate) fn level_scale(view: &View, units: Units, x: f64, low: f64, high: f64) -> Vec<Item> {
    let (unit, _) = ground_unit(units);
    let step = [0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0]
        .into_iter()
        .find(|s| view.mm(*s * unit) >= 5.0)
        .unwrap_or(view.metres(5.0) / unit);
    let (first, last) = ((low / unit / step).floor() as i64, (high / unit / step).ceil() as i64);
    let mut items = vec![];
    let y = |k: i64| view.xy(0.0, k as f64 * step * unit).y;
    for k in (first..last).take(200) {
        let fill = if k.rem_euclid(2) == 0 { BLACK } else { WHITE };
        items.push(area(oblong(x - 0.8, y(k + 1), x, y(k)), Some(Pen::new(FINE, BLACK)), Some(fill)));
    }
    let decimals = if (step * 10.0).fract() > 1e-9 { 2 } else { 1 };
    for k in (first..=last).take(201) {
        let text = format!("{:.decimals$}", k as f64 * step).replace('-', "−");
        items.push(Label::new(At::mm(x - 1.8, y(k) + SMALL * 0.36), text, SMALL).ink(GREY).end().into());
    }
    items
}

/// An arrow along a line, its head at the last point.
pub(crate) fn arrow(points: &[At], pen: Pen) -> Vec<Item> {
    let [.., a, b] = points else { return vec![] };
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        return vec![];
    }
    let (ux, uy) = (dx / long, dy / long);
    let (size, half) = (2.2, 0.7);
    let foot = At::mm(b.x - ux * size, b.y - uy * size);
    let head = vec![*b, At::mm(foot.x - uy * half, foot.y + ux * half), At::mm(foot.x + uy * half, foot.y - ux * half)];
    let ink = pen.ink;
    let mut shaft = points.to_vec();
    if let Some(last) = shaft.last_mut() {
        *last = foot;
    }
    vec![line(shaft, pen), area(head, None, Some(ink))]
}

/// A reference to a section: a ring with a letter and a filled arrow that looks along the view.
pub(crate) fn section_mark(at: At, letter: &str, look: (f64, f64)) -> Vec<Item> {
    let (ux, uy) = look;
    let tip = At::mm(at.x + ux * 4.6, at.y + uy * 4.6);
    let wing = |s: f64| At::mm(at.x + uy * s * 2.8 + ux * 0.6, at.y - ux * s * 2.8 + uy * 0.6);
    vec![
        area(vec![tip, wing(1.0), wing(-1.0)], None, Some(BLACK)),
        circle(at, 2.6, Some(Pen::new(MEDIUM, BLACK)), Some(WHITE)),
        Label::new(At::mm(at.x, at.y + FIGURE * 0.36), letter, FIGURE).middle().bold().into(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_largest_usual_scale_that_fits_is_taken() {
        assert_eq!(scale_for(10.0, 5.0, 200.0, 100.0), 50.0);
        assert_eq!(scale_for(10.01, 5.0, 200.0, 100.0), 100.0);
        assert_eq!(scale_for(0.5, 0.5, 100.0, 100.0), 10.0);
        assert_eq!(scale_for(300.0, 10.0, 400.0, 100.0), 1000.0);
        assert!(scale_for(f64::INFINITY, 10.0, 400.0, 100.0).is_finite());
    }

    #[test]
    fn a_metre_at_one_to_fifty_is_twenty_millimetres_and_up_is_up() {
        let v = View { scale: 50.0, ground: Point::m(0.0, 100.0), paper: At::mm(10.0, 80.0) };
        assert_eq!(v.at(Point::m(1.0, 101.0)), At::mm(30.0, 60.0));
        let b = v.back(At::mm(30.0, 60.0));
        assert!((b.x - 1.0).abs() < 1e-12 && (b.y - 101.0).abs() < 1e-12);
    }
}
