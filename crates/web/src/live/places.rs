//! Where in plan is the thing that a finding or a list speaks of?

use groundhold_hold::Line;
use groundhold_plan::Plan;
use groundhold_quantity::{Length, Point, parse};

use super::structures::wall_line;

/// The place of an element, or of a place on it (`post 3`, `bay 2`, `chainage 4.20 m`); `None` for the whole job.
pub fn place_of(plan: &Plan, element: &str, on: &str) -> Option<Point> {
    let (element, on) = match element.split_once(' ') {
        Some((e, rest)) if on.is_empty() => (e, rest),
        _ => (element, on),
    };
    if let Some(wall) = plan.walls.iter().find(|w| w.id == element || w.of == element) {
        let number = |word: &str| on.strip_prefix(word).and_then(|n| n.trim().parse::<usize>().ok());
        let post = number("post").and_then(|n| wall.layout.post(n)).map(|p| p.at);
        let bay = number("bay").and_then(|n| wall.layout.bays.get(n.checked_sub(1)?));
        let bay = bay.map(|b| (b.chainage.0 + b.chainage.1) / 2.0);
        let chainage = on.strip_prefix("chainage").and_then(|c| parse::<Length>(c).ok()).or(bay);
        let along = chainage.filter(|_| wall.case.stations.len() > 1);
        let along = along.map(|c| Line::new(&wall.case.stations).at(c).at);
        return post.or(along).or_else(|| middle(&wall_line(wall)));
    }
    let pad = plan.shaped.pads.iter().find(|p| p.id == element).map(|p| p.polygon.centroid());
    let flight = plan.shaped.flights.iter().find(|f| f.id == element).map(|f| f.foot.towards(f.top, 0.5));
    let ramp = plan.shaped.ramps.iter().find(|r| r.id == element).and_then(|r| middle(&r.path));
    let near = plan.job.near.iter().find(|n| n.id == element).and_then(|n| middle(&n.line));
    let peg = (element == "peg").then(|| plan.job.measure.pegs.iter().find(|p| p.id == on).map(|p| p.at)).flatten();
    let point = plan.survey.points.iter().find(|p| (element == "point" && p.id == on) || p.id == element).map(|p| p.at);
    let outlet = (element == "outlet" || element == "drain").then_some(plan.job.drain.outlet).flatten().map(|o| o.0);
    pad.or(flight).or(ramp).or(near).or(peg).or(outlet).or(point)
}

fn middle(line: &[Point]) -> Option<Point> {
    let total: f64 = line.windows(2).map(|w| (w[1] - w[0]).length()).sum();
    let mut left = total / 2.0;
    for w in line.windows(2) {
        let d = (w[1] - w[0]).length();
        if left <= d && d > 0.0 {
            return Some(w[0].towards(w[1], left / d));
        }
        left -= d;
    }
    line.first().copied()
}

/// Low and high corner of the works, or of the whole survey where nothing is planned yet.
pub fn bounds(plan: &Plan) -> (Point, Point) {
    let mut all: Vec<Point> = plan.shaped.grounds.iter().flat_map(|g| g.facet.ring.iter().copied()).collect();
    all.extend(plan.walls.iter().flat_map(|w| w.layout.posts.iter().map(|p| p.at)));
    all.extend(plan.job.drain.outlet.map(|o| o.0));
    if all.is_empty() {
        all.extend(plan.survey.ground.points().iter().map(|p| p.at));
    } else {
        all.extend(plan.job.measure.pegs.iter().map(|p| p.at));
    }
    let start = (Point::m(f64::INFINITY, f64::INFINITY), Point::m(f64::NEG_INFINITY, f64::NEG_INFINITY));
    let (lo, hi) = all
        .iter()
        .fold(start, |(lo, hi), p| (Point::m(lo.x.min(p.x), lo.y.min(p.y)), Point::m(hi.x.max(p.x), hi.y.max(p.y))));
    if lo.x.is_finite() && hi.x.is_finite() { (lo, hi) } else { (Point::m(0.0, 0.0), Point::m(10.0, 10.0)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_finding_of_the_demo_about_an_element_has_a_place() {
        let job = crate::job::demo().read().whole().unwrap();
        let plan = groundhold_plan::plan(&job).unwrap();
        for id in job.ids() {
            assert!(place_of(&plan, id, "").is_some(), "{id}");
        }
        let post = plan.walls[0].layout.posts[2].at;
        assert_eq!(place_of(&plan, "W1", "post 3"), Some(post));
        assert_eq!(place_of(&plan, "W1 post 3", ""), Some(post));
        assert_eq!(place_of(&plan, "", ""), None);
    }
}
