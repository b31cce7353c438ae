//! Where does a dragged point come to lie: on another point, in line with one, or on the nearest round coordinate?

use groundhold_plan::job::Job;
use groundhold_quantity::{Point, round_to};

use super::{Grip, grips};

/// A place with the lines by which it was found.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Snapped {
    /// The place.
    pub at: Point,
    /// Points with which it is in line: each to be joined to it by a line.
    pub with: Vec<Point>,
}

/// The place near `to`, within `reach` metres; rounded to `step` where nothing is near.
pub fn snapped(job: &Job, grip: &Grip, to: Point, reach: f64, step: f64) -> Snapped {
    let key = grip.key();
    let ids = job.ids().into_iter().chain(["outlet"]);
    let all = ids.flat_map(|id| grips(job, id)).filter(|g| g.key() != key && !g.key().contains("Side"));
    let mut others: Vec<Point> =
        all.filter(|g| g.element != grip.element || grip.holds != super::Holds::Whole).map(|g| g.at).collect();
    others.extend(job.measure.pegs.iter().map(|p| p.at));
    let near = |a: f64, b: f64| (a - b).abs() <= reach;
    let on = others.iter().filter(|p| near(p.x, to.x) && near(p.y, to.y));
    if let Some(p) = on.min_by(|a, b| (**a - to).length().total_cmp(&(**b - to).length())) {
        return Snapped { at: *p, with: vec![*p] };
    }
    let round = |v: f64| if step > 0.0 { round_to(v, step) } else { v };
    let in_line = |get: fn(&Point) -> f64| {
        let close = others.iter().filter(|p| near(get(p), get(&to)));
        // Of several in line the nearest one on the ground is meant.
        close.min_by(|a, b| (**a - to).length().total_cmp(&(**b - to).length())).copied()
    };
    let (x, y) = (in_line(|p| p.x), in_line(|p| p.y));
    let at = Point::m(x.map_or_else(|| round(to.x), |p| p.x), y.map_or_else(|| round(to.y), |p| p.y));
    Snapped { at, with: x.into_iter().chain(y).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_corner_falls_on_a_corner_into_line_with_one_or_on_a_round_place() {
        let job = crate::job::demo().read().whole().unwrap();
        let grip = grips(&job, "W1").remove(1);
        let go = |x, y| snapped(&job, &grip, Point::m(x, y), 0.1, 0.05);
        assert_eq!(go(3.04, 8.66).at, Point::m(3.0, 8.7));
        let line = go(3.04, 10.61);
        assert!((line.at - Point::m(3.0, 10.6)).length() < 1e-9 && line.with.len() == 1);
        let free = go(4.52, 10.61);
        assert!((free.at - Point::m(4.5, 10.6)).length() < 1e-9 && free.with.is_empty());
    }

    #[test]
    fn a_corner_is_never_in_line_with_itself() {
        let job = crate::job::demo().read().whole().unwrap();
        let grip = grips(&job, "N3").remove(0);
        let s = snapped(&job, &grip, grip.at + groundhold_quantity::Vector::m(0.07, 0.07), 0.1, 0.05);
        assert!(s.at != grip.at);
    }
}
