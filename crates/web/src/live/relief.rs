//! The ground before and after as a mesh of squares, with the walls that stand in it.

use groundhold_hold::Line;
use groundhold_plan::Plan;
use groundhold_quantity::Point;

/// About so many squares along the longer side.
const ALONG: f64 = 150.0;

/// A mesh: for each corner east, north, level before, level after, and what it is; triangles by number of corner.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Relief {
    /// Five numbers a corner, metres from the middle; the fifth is 0 for ground, 1 for boards, 2 for posts.
    pub corners: Vec<f32>,
    /// Three a triangle.
    pub triangles: Vec<u32>,
    /// Half of the longer side, metres.
    pub reach: f32,
}

/// The mesh of a plan, over the ground that was measured.
pub fn relief(plan: &Plan) -> Relief {
    let (lo, hi) = super::bounds(plan);
    let (lo, hi) = (Point::m(lo.x - 1.0, lo.y - 1.0), Point::m(hi.x + 1.0, hi.y + 1.0));
    let step = ((hi.x - lo.x).max(hi.y - lo.y) / ALONG).max(0.01);
    let middle = lo.towards(hi, 0.5);
    let mut out = Relief { reach: ((hi.x - lo.x).max(hi.y - lo.y) / 2.0) as f32, ..Relief::default() };
    let (nx, ny) = (((hi.x - lo.x) / step).ceil() as usize + 1, ((hi.y - lo.y) / step).ceil() as usize + 1);
    let base = plan.survey.ground.points().iter().map(|p| p.level.to_m()).sum::<f64>()
        / plan.survey.ground.points().len().max(1) as f64;
    let mut numbers: Vec<Option<u32>> = Vec::with_capacity(nx * ny);
    for j in 0..ny {
        for i in 0..nx {
            let p = Point::m(lo.x + i as f64 * step, lo.y + j as f64 * step);
            let before = plan.survey.ground.level_at(p);
            let after = before.and_then(|_| plan.shaped.level_at(&plan.survey.ground, p));
            let number =
                before.zip(after).map(|(b, a)| corner(&mut out, p, middle, b.to_m() - base, a.to_m() - base, 0.0));
            numbers.push(number);
        }
    }
    for j in 1..ny {
        for i in 1..nx {
            let at = |i: usize, j: usize| numbers[j * nx + i];
            if let (Some(a), Some(b), Some(c), Some(d)) = (at(i - 1, j - 1), at(i, j - 1), at(i, j), at(i - 1, j)) {
                out.triangles.extend([a, b, c, a, c, d]);
            }
        }
    }
    walls(plan, middle, base, &mut out);
    out
}

fn corner(out: &mut Relief, p: Point, middle: Point, before: f64, after: f64, what: f32) -> u32 {
    let number = (out.corners.len() / 5) as u32;
    out.corners.extend([(p.x - middle.x) as f32, (p.y - middle.y) as f32, before as f32, after as f32, what]);
    number
}

/// Boards as upright strips, posts as upright strips before them; before the work they lie in the ground.
fn walls(plan: &Plan, middle: Point, base: f64, out: &mut Relief) {
    for w in plan.walls.iter().filter(|w| w.case.stations.len() > 1) {
        let line = Line::new(&w.case.stations);
        for bay in &w.layout.bays {
            let (a, b) = (line.at(bay.chainage.0).at, line.at(bay.chainage.1).at);
            strip(out, (a, b), middle, (bay.bottom.to_m() - base, bay.top.to_m() - base), 1.0);
        }
        for post in &w.layout.posts {
            let half = post.facing.left() * 0.06;
            let at = post.at + post.facing * 0.02;
            let ends = (at - half, at + half);
            strip(out, ends, middle, (post.front.to_m() - base - 0.1, post.top.to_m() - base), 2.0);
        }
    }
}

fn strip(out: &mut Relief, ends: (Point, Point), middle: Point, levels: (f64, f64), what: f32) {
    let (foot, top) = levels;
    // Before the work the strip is folded down to its foot, out of sight below the ground.
    let hidden = foot - 1.0;
    let a = corner(out, ends.0, middle, hidden, foot, what);
    let b = corner(out, ends.1, middle, hidden, foot, what);
    let c = corner(out, ends.1, middle, hidden, top, what);
    let d = corner(out, ends.0, middle, hidden, top, what);
    out.triangles.extend([a, b, c, a, c, d]);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mesh_of_the_demo_is_whole_and_shows_cut_and_fill() {
        let plan = groundhold_plan::plan(&crate::job::demo().read().whole().unwrap()).unwrap();
        let r = relief(&plan);
        let n = (r.corners.len() / 5) as u32;
        assert!(r.triangles.iter().all(|t| *t < n) && r.triangles.len() > 30_000);
        assert!(r.corners.iter().all(|v| v.is_finite()));
        let ground = || r.corners.chunks(5).filter(|c| c[4] == 0.0);
        assert!(ground().any(|c| c[3] < c[2] - 0.3) && ground().any(|c| c[3] > c[2] + 0.1));
    }
}
