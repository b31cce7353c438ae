//! By which letters do the drawings name each other, and where are the sections cut?

use groundhold_hold::{Cross, Line};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Level, Point, Slope, Units, Vector, math};

/// The letter of the site section.
pub(crate) const SITE: &str = "A";

/// The letter of a wall's section: B for the first wall, and so on; two letters after Z.
pub(crate) fn section_letter(plan: &Plan, wall: &str) -> String {
    let i = plan.walls.iter().position(|w| w.id == wall).unwrap_or(0) + 1;
    let c = char::from(b'A' + (i % 26) as u8);
    if i < 26 { c.to_string() } else { format!("{}{c}", i / 26) }
}

/// The chainage at which a wall's section is cut: where the wall is pushed hardest, else where it retains most.
pub(crate) fn section_chainage(wall: &WallPlan) -> Option<Length> {
    let pushed = wall.verdict.pushes.iter().find(|p| p.governs).map(|p| p.chainage);
    pushed.or_else(|| wall.layout.highest())
}

/// A wall cut across where its section is drawn; `None` where nothing stands.
pub(crate) fn section_place(wall: &WallPlan) -> Option<Cross> {
    (wall.case.stations.len() > 1).then_some(())?;
    groundhold_hold::cross(&wall.case, &wall.layout, section_chainage(wall)?)
}

/// The corner points of a wall's line with its ends, and their chainages.
pub(crate) fn wall_line(wall: &WallPlan) -> Vec<(Length, Point)> {
    let s = &wall.case.stations;
    if s.len() < 2 {
        return vec![];
    }
    let line = Line::new(s);
    let chainages =
        std::iter::once(line.start()).chain(wall.case.corners.iter().copied()).chain(std::iter::once(line.end()));
    chainages.map(|c| (c, line.at(c).at)).collect()
}

/// The same with the places between which the wall follows a curve.
pub(crate) fn wall_course(wall: &WallPlan) -> Vec<Point> {
    let s = &wall.case.stations;
    let ends = wall_line(wall);
    let mut out: Vec<Point> = vec![];
    for (i, st) in s.iter().enumerate() {
        let corner = ends.iter().any(|(c, _)| (*c - st.chainage).abs() < Length::mm(1.0));
        let bends = i > 0 && i + 1 < s.len() && {
            let (u, v) = (st.at - s[i - 1].at, s[i + 1].at - st.at);
            u.cross(v).abs() > 1e-5 * u.length() * v.length()
        };
        if corner || bends {
            out.push(st.at);
        }
    }
    if out.len() < 2 { ends.into_iter().map(|e| e.1).collect() } else { out }
}

/// 1 where the open side of a wall lies to the left of its line, −1 where it lies to the right.
pub(crate) fn open_side(wall: &WallPlan) -> f64 {
    let s = &wall.case.stations;
    if s.len() < 2 {
        return 1.0;
    }
    let line = Line::new(s);
    line.open_side((line.start() + line.end()) / 2.0)
}

/// A line moved sideways, to the left for positive distances in metres, mitred at corners.
pub(crate) fn beside(points: &[Point], left: f64) -> Vec<Point> {
    let n = points.len();
    let dir = |i: usize| (points[i + 1] - points[i]).unit();
    (0..n)
        .map(|i| {
            if n < 2 {
                return points[i];
            }
            let (u, v) = (if i > 0 { dir(i - 1) } else { dir(0) }, if i + 1 < n { dir(i) } else { dir(n - 2) });
            let sum = u.left() + v.left();
            let k = sum.dot(u.left());
            // A turn back on itself has no mitre: move square to the line before.
            let off = if k > 0.2 { sum * (left / k) } else { u.left() * left };
            points[i] + off
        })
        .collect()
}

/// The direction in which the ground rises on the whole, and by how much: the plane through all measured points.
pub(crate) fn uphill(plan: &Plan) -> (Vector, f64) {
    let pts = plan.survey.ground.points();
    let n = pts.len().max(1) as f64;
    let mean = |f: &dyn Fn(&groundhold_surface::GroundPoint) -> f64| pts.iter().map(f).sum::<f64>() / n;
    let (mx, my, mz) = (mean(&|p| p.at.x), mean(&|p| p.at.y), mean(&|p| p.level.to_m()));
    let s = |f: &dyn Fn(f64, f64, f64) -> f64| {
        pts.iter().map(|p| f(p.at.x - mx, p.at.y - my, p.level.to_m() - mz)).sum::<f64>()
    };
    let (xx, yy, xy) = (s(&|x, _, _| x * x), s(&|_, y, _| y * y), s(&|x, y, _| x * y));
    let (xz, yz) = (s(&|x, _, z| x * z), s(&|_, y, z| y * z));
    let det = xx * yy - xy * xy;
    if det.abs() < 1e-9 {
        return (Vector::m(0.0, 1.0), 0.0);
    }
    let g = Vector::m((xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det);
    let steep = g.length();
    if steep < 1e-6 { (Vector::m(0.0, 1.0), 0.0) } else { (g.unit(), steep) }
}

/// A level as written on a drawing, in metres to the millimetre or feet, without its unit where that is metres.
pub(crate) fn level(units: Units, l: Level) -> String {
    match units {
        Units::Metric => format!("{:.3}", l.to_m()).replace('-', "−"),
        Units::Feet => units.level(l),
    }
}

/// A level to the centimetre, for places where the millimetre would be too much.
pub(crate) fn level_short(units: Units, l: Level) -> String {
    match units {
        Units::Metric => format!("{:.2}", l.to_m()).replace('-', "−"),
        Units::Feet => units.level(l),
    }
}

/// A fall in words: `1:100`.
pub(crate) fn fall(s: Slope) -> String {
    Units::Metric.slope(s)
}

/// The place at a share of the length of a line, and its direction there.
pub(crate) fn along(points: &[Point], share: f64) -> Option<(Point, Vector)> {
    let total: f64 = points.windows(2).map(|w| (w[1] - w[0]).length()).sum();
    let mut left = total * share;
    for w in points.windows(2) {
        let d = (w[1] - w[0]).length();
        if left <= d && d > 0.0 {
            return Some((w[0].towards(w[1], left / d), (w[1] - w[0]).unit()));
        }
        left -= d;
    }
    None
}

/// Degrees by which a text must be turned to run along a direction on the ground and never stand on its head.
pub(crate) fn reading(v: Vector) -> f64 {
    let a = math::atan2(v.y, v.x).to_degrees();
    // Nearly upright lines are read from the right.
    if a > 93.0 {
        a - 180.0
    } else if a <= -87.0 {
        a + 180.0
    } else {
        a
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_beside_another_keeps_its_distance_round_a_corner() {
        let p = [Point::m(0.0, 0.0), Point::m(4.0, 0.0), Point::m(4.0, 3.0)];
        let b = beside(&p, 0.5);
        assert_eq!(b, vec![Point::m(0.0, 0.5), Point::m(3.5, 0.5), Point::m(3.5, 3.0)]);
    }

    #[test]
    fn a_text_along_a_line_is_never_upside_down() {
        for (x, y) in [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0), (-1.0, 1.0)] {
            let a = reading(Vector::m(x, y));
            assert!(-87.0 < a && a <= 93.0, "{x} {y} {a}");
        }
    }
}
