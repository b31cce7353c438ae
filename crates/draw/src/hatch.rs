//! How is an area filled with real lines and stones, spaced in millimetres of paper?

use groundhold_quantity::math;

use crate::frame::Frame;
use crate::pens::{FINE, GREY, HAIR, area, circle, stroke};
use crate::scene::{At, Ink, Item, Pen};

/// More lines than this are not drawn: the area is larger than any sheet.
const MOST: f64 = 4000.0;

/// Parallel lines at an angle (degrees, anticlockwise from the right) over an area of one or more rings, those inside
/// others being holes. Lines of neighbouring areas meet.
pub(crate) fn lines(rings: &[Vec<At>], angle: f64, spacing: f64, pen: &Pen) -> Vec<Item> {
    strokes(rings, angle, spacing).into_iter().map(|(a, b)| stroke(a, b, pen.clone())).collect()
}

/// The strokes of a hatch.
pub(crate) fn strokes(rings: &[Vec<At>], angle: f64, spacing: f64) -> Vec<(At, At)> {
    let turn = -angle.to_radians();
    let (s, c) = (math::sin(turn), math::cos(turn));
    let along = |p: At| p.x * c + p.y * s;
    let across = |p: At| p.y * c - p.x * s;
    let all = || rings.iter().flatten();
    let low = all().map(|p| across(*p)).fold(f64::INFINITY, f64::min);
    let high = all().map(|p| across(*p)).fold(f64::NEG_INFINITY, f64::max);
    let mut out = vec![];
    if !(low.is_finite() && high.is_finite() && spacing > 0.0 && (high - low) / spacing < MOST) {
        return out;
    }
    let (first, last) = ((low / spacing).ceil() as i64, (high / spacing).floor() as i64);
    for k in first..=last {
        // A hair off the grid, so that no line runs along an edge.
        let level = (k as f64 + 0.013) * spacing;
        let mut cuts: Vec<f64> = vec![];
        for ring in rings {
            for i in 0..ring.len() {
                let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
                let (u, v) = (across(a), across(b));
                if (u <= level) != (v <= level) {
                    let t = (level - u) / (v - u);
                    cuts.push(along(a) + (along(b) - along(a)) * t);
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        let back = |x: f64| At::mm(x * c - level * s, x * s + level * c);
        out.extend(cuts.chunks_exact(2).filter(|p| p[1] - p[0] > 0.05).map(|p| (back(p[0]), back(p[1]))));
    }
    out
}

/// True inside a ring.
pub(crate) fn inside(ring: &[At], p: At) -> bool {
    let mut odd = false;
    for i in 0..ring.len() {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            odd = !odd;
        }
    }
    odd
}

/// A number from 0 to 1 that looks thrown but is always the same for the same place.
fn thrown(i: i64, j: i64, k: u64) -> f64 {
    let mut h = (i as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ (j as u64).wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
    h ^= k.wrapping_mul(0x1656_67B1_9E37_79F9);
    h ^= h >> 31;
    h = h.wrapping_mul(0x7FB5_D329_728E_A185);
    h ^= h >> 27;
    (h >> 11) as f64 / (1_u64 << 53) as f64
}

/// Places on a loose grid inside an area, with their grid numbers.
fn places(ring: &[At], step: f64) -> Vec<(At, i64, i64)> {
    let Some(f) = Frame::around(ring) else { return vec![] };
    let cells = f.width() * f.height() / (step * step);
    if !cells.is_finite() || cells > MOST * 4.0 {
        return vec![];
    }
    let range = |a: f64, b: f64| (a / step).floor() as i64..=(b / step).ceil() as i64;
    let mut out = vec![];
    for j in range(f.top, f.bottom) {
        for i in range(f.left, f.right) {
            let shift = if j % 2 == 0 { 0.0 } else { 0.5 };
            let x = (i as f64 + shift + 0.5 * (thrown(i, j, 1) - 0.5)) * step;
            let y = (j as f64 + 0.5 * (thrown(i, j, 2) - 0.5)) * step;
            if inside(ring, At::mm(x, y)) {
                out.push((At::mm(x, y), i, j));
            }
        }
    }
    out
}

/// A pebble round a place: a polygon of six corners, never quite alike.
fn pebble(at: At, radius: f64, i: i64, j: i64) -> Vec<At> {
    let start = thrown(i, j, 3);
    (0..6)
        .map(|k| {
            let a = std::f64::consts::TAU * (f64::from(k) / 6.0 + start);
            let r = radius * (0.72 + 0.42 * thrown(i, j, 10 + k as u64));
            At::mm(at.x + r * math::cos(a), at.y + r * 0.82 * math::sin(a))
        })
        .collect()
}

/// Stones of about a size, those that lie wholly inside.
pub(crate) fn stones(ring: &[At], size: f64) -> Vec<Item> {
    places(ring, size)
        .into_iter()
        .map(|(at, i, j)| pebble(at, size * 0.46 * (0.7 + 0.4 * thrown(i, j, 4)), i, j))
        .filter(|p| p.iter().all(|q| inside(ring, *q)))
        .map(|p| area(p, Some(Pen::new(HAIR, GREY)), None))
        .collect()
}

/// Concrete: sparse small triangles and dots.
pub(crate) fn concrete(ring: &[At], step: f64) -> Vec<Item> {
    places(ring, step)
        .into_iter()
        .filter_map(|(at, i, j)| {
            if thrown(i, j, 5) < 0.4 {
                let p = pebble(at, step * 0.3, i, j);
                let corners = vec![p[0], p[2], p[4]];
                corners.iter().all(|q| inside(ring, *q)).then(|| area(corners, Some(Pen::new(HAIR, GREY)), None))
            } else {
                Some(circle(at, 0.12, None, Some(GREY)))
            }
        })
        .collect()
}

/// Dots, for topsoil and sand.
pub(crate) fn dots(ring: &[At], step: f64, ink: Ink) -> Vec<Item> {
    places(ring, step).into_iter().map(|(at, i, j)| circle(at, 0.1 + 0.08 * thrown(i, j, 6), None, Some(ink))).collect()
}

/// Firm ground: groups of three short slanting strokes, alternately leaning.
pub(crate) fn ground(ring: &[At], step: f64, ink: Ink) -> Vec<Item> {
    let pen = Pen::new(HAIR, ink);
    let mut out = vec![];
    for (at, i, j) in places(ring, step) {
        let lean = if (i + j) % 2 == 0 { 1.0 } else { -1.0 };
        for k in -1..=1 {
            let x = at.x + f64::from(k) * step * 0.13;
            let (a, b) = (
                At::mm(x - lean * step * 0.12, at.y + step * 0.12),
                At::mm(x + lean * step * 0.12, at.y - step * 0.12),
            );
            if inside(ring, a) && inside(ring, b) {
                out.push(stroke(a, b, pen.clone()));
            }
        }
    }
    out
}

/// Grass along a line: tufts of three blades that stand on it.
pub(crate) fn grass(points: &[At], ink: Ink) -> Vec<Item> {
    let pen = Pen::new(FINE, ink);
    let mut out = vec![];
    let mut next = 1.5;
    let mut done = 0.0;
    for w in points.windows(2) {
        let (dx, dy) = (w[1].x - w[0].x, w[1].y - w[0].y);
        let long = math::hypot(dx, dy);
        while next <= done + long && long > 0.0 && out.len() < 3000 {
            let t = (next - done) / long;
            let foot = At::mm(w[0].x + dx * t, w[0].y + dy * t);
            for lean in [-0.45, 0.0, 0.45] {
                out.push(stroke(foot, At::mm(foot.x + lean, foot.y - 1.1 + lean.abs() * 0.5), pen.clone()));
            }
            next += 2.8;
        }
        done += long;
    }
    out
}

/// A timber end: the growth rings as an arc or two, and the two diagonals that say "cut".
pub(crate) fn end_grain(ring: &[At], ink: Ink) -> Vec<Item> {
    let [a, b, c, d] = ring else { return vec![] };
    let pen = Pen::new(FINE, ink);
    vec![stroke(*a, *c, pen.clone()), stroke(*b, *d, pen)]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pens::oblong;

    fn length(s: &(At, At)) -> f64 {
        math::hypot(s.1.x - s.0.x, s.1.y - s.0.y)
    }

    #[test]
    fn lines_times_spacing_make_up_the_area_less_its_hole() {
        let rings = vec![oblong(0.0, 0.0, 40.0, 30.0), oblong(10.0, 10.0, 20.0, 20.0)];
        for angle in [0.0, 30.0, 45.0, 135.0] {
            let sum: f64 = strokes(&rings, angle, 0.5).iter().map(length).sum();
            assert!((sum * 0.5 - 1100.0).abs() < 12.0, "{angle}: {}", sum * 0.5);
        }
    }

    #[test]
    fn no_stone_lies_outside_and_the_same_place_has_the_same_stones() {
        let ring = oblong(3.0, 3.0, 23.0, 13.0);
        let stones_here = stones(&ring, 1.6);
        assert!(stones_here.len() > 40);
        assert_eq!(stones_here, stones(&ring, 1.6));
        for s in &stones_here {
            let Item::Area { points, .. } = s else { panic!("a stone is an area") };
            assert!(points.iter().all(|p| inside(&ring, *p)));
        }
    }

    #[test]
    fn an_area_beyond_all_sheets_is_not_hatched_for_ever() {
        assert!(strokes(&[oblong(0.0, 0.0, 1e9, 1e9)], 45.0, 1.0).is_empty());
        assert!(stones(&oblong(0.0, 0.0, 1e9, 1e9), 1.0).is_empty());
    }
}
