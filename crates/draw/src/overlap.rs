//! Do two texts on a sheet lie on each other, or does one leave it?

use crate::scene::{At, Item, Label};
use crate::type_metrics;

/// Every text on a sheet.
pub(crate) fn labels(items: &[Item]) -> Vec<&Label> {
    let mut all = vec![];
    for i in items {
        match i {
            Item::Text(l) => all.push(l),
            Item::Group { items, .. } => all.extend(labels(items)),
            _ => {}
        }
    }
    all
}

/// The box of a text, a hair smaller than it is.
fn corners(l: &Label) -> [At; 4] {
    let c = type_metrics::corners(l);
    let m = At::mm(c.iter().map(|p| p.x).sum::<f64>() / 4.0, c.iter().map(|p| p.y).sum::<f64>() / 4.0);
    c.map(|p| At::mm(m.x + (p.x - m.x) * 0.98, m.y + (p.y - m.y) * 0.9))
}

/// Two convex boxes meet unless a side of one separates them.
fn meet(a: &[At; 4], b: &[At; 4]) -> bool {
    let separates = |p: &[At; 4], q: &[At; 4]| {
        (0..4).any(|i| {
            let (u, v) = (p[i], p[(i + 1) % 4]);
            let (nx, ny) = (v.y - u.y, u.x - v.x);
            let far =
                |r: &[At; 4]| r.iter().map(|c| (c.x - u.x) * nx + (c.y - u.y) * ny).fold(f64::NEG_INFINITY, f64::max);
            let near =
                |r: &[At; 4]| r.iter().map(|c| (c.x - u.x) * nx + (c.y - u.y) * ny).fold(f64::INFINITY, f64::min);
            far(p) <= near(q) || far(q) <= near(p)
        })
    };
    !separates(a, b) && !separates(b, a)
}

/// Every pair of texts that lie on each other.
pub(crate) fn of(items: &[Item]) -> Vec<(String, String)> {
    let all: Vec<(&Label, [At; 4])> = labels(items).into_iter().map(|l| (l, corners(l))).collect();
    let mut found = vec![];
    for (i, (l, a)) in all.iter().enumerate() {
        for (m, b) in &all[i + 1..] {
            if meet(a, b) {
                found.push((l.text.clone(), m.text.clone()));
            }
        }
    }
    found
}

/// Every text that leaves a sheet.
pub(crate) fn outside(items: &[Item], width: f64, height: f64) -> Vec<String> {
    let in_it = |p: &At| -0.05 <= p.x && p.x <= width + 0.05 && -0.05 <= p.y && p.y <= height + 0.05;
    labels(items).into_iter().filter(|l| !corners(l).iter().all(in_it)).map(|l| l.text.clone()).collect()
}

mod tests {
    use super::*;

    #[test]
    fn texts_on_each_other_are_found_also_when_turned_and_neighbours_are_not() {
        let at = |x: f64, y: f64| Label::new(At::mm(x, y), "1200", 2.4);
        let pair = |a: Label, b: Label| of(&[a.into(), b.into()]).len();
        assert_eq!(pair(at(10.0, 10.0), at(12.0, 10.5)), 1);
        assert_eq!(pair(at(10.0, 10.0), at(12.0, 11.0).turned(90.0)), 1);
        assert_eq!(pair(at(10.0, 10.0), at(10.0, 13.0)), 0);
        assert_eq!(outside(&[at(98.0, 10.0).into()], 100.0, 50.0), vec!["1200".to_string()]);
    }
}
