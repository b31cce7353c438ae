//! Walls with their posts and holes, flights, ramps, drains and pegs.

use groundhold_hold::{Line, Spec};
use groundhold_plan::{Plan, WallPlan};
use groundhold_quantity::{Length, Point, Vector};

use super::lettering::{Sort, Tag};
use super::{Drawing, pen};

/// Corner points of a wall's line with its ends.
pub fn wall_line(wall: &WallPlan) -> Vec<Point> {
    if wall.case.stations.len() < 2 {
        return vec![];
    }
    let line = Line::new(&wall.case.stations);
    let inner = wall.case.corners.iter().copied();
    std::iter::once(line.start()).chain(inner).chain(std::iter::once(line.end())).map(|c| line.at(c).at).collect()
}

/// Walls: holes, boards, posts.
pub fn walls(plan: &Plan, d: &mut Drawing) {
    let units = plan.job.about.units;
    for wall in &plan.walls {
        let points = wall_line(wall);
        if points.len() < 2 {
            continue;
        }
        let mut svg = String::new();
        for hole in &wall.layout.holes {
            svg.push_str(&pen::circle(hole.at, hole.diameter.to_m() / 2.0, "hole"));
        }
        svg.push_str(&pen::line(&points, "reach"));
        svg.push_str(&pen::line(&points, "boards"));
        let (breadth, depth) = post_size(&wall.case.spec);
        for post in &wall.layout.posts {
            let (u, v) = (post.facing.left() * (breadth.to_m() / 2.0), post.facing * (depth.to_m() / 2.0));
            let ring = [post.at + u + v, post.at - u + v, post.at - u - v, post.at + u - v];
            let name = format!("{} post {}", wall.id, post.number);
            let class = if post.built { "post built" } else { "post" };
            svg.push_str(&pen::group(&name, &name, &pen::area(&ring, class)));
            d.tags.push(Tag::new(post.at + post.facing * 0.3, post.number.to_string(), Sort::Number, &name));
        }
        let name = plan.job.walls.iter().find(|w| w.id == wall.of).map_or("", |w| w.name.as_str());
        let retains = units.length(wall.layout.retained);
        let title = format!("Wall {} {name}, retains up to {retains}, {} posts", wall.id, wall.layout.posts.len());
        d.layer(format!("wall {}", wall.id), &wall.id, title, svg);
        let longest = points.windows(2).max_by(|a, b| (a[1] - a[0]).length().total_cmp(&(b[1] - b[0]).length()));
        if let Some(w) = longest {
            let facing = wall.layout.posts.first().map_or(Vector::m(0.0, -1.0), |p| p.facing);
            let across = (w[1] - w[0]).unit().left();
            let back = if across.dot(facing) > 0.0 { across * -1.0 } else { across };
            let at = w[0].towards(w[1], 0.5) + back * 0.5;
            d.tags.push(
                Tag::new(at, format!("{} {name}", wall.id), Sort::Name, &wall.of).and(format!("holds {retains}")),
            );
        }
    }
    // A wall that came to nothing is still there to be taken hold of.
    for wish in plan.job.walls.iter().filter(|w| !plan.walls.iter().any(|p| p.of == w.id)) {
        let title = format!("Wall {} {}, not laid out", wish.id, wish.name);
        d.layer(format!("wall {}", wish.id), &wish.id, title, pen::line(&wish.line, "boards ghost"));
        if let Some(p) = wish.line.first() {
            d.tags.push(Tag::new(*p, format!("{} {}", wish.id, wish.name), Sort::Name, &wish.id));
        }
    }
}

fn post_size(spec: &Spec) -> (Length, Length) {
    #[allow(unreachable_patterns, reason = "other systems have other uprights")]
    match spec {
        Spec::TimberPosts(s) => (s.post.breadth, s.post.depth),
        _ => (Length::mm(100.0), Length::mm(100.0)),
    }
}

/// Flights of steps, with an arrow upwards.
pub fn flights(plan: &Plan, d: &mut Drawing) {
    let units = plan.job.about.units;
    for f in &plan.shaped.flights {
        let half = f.outward.left() * (f.width.to_m() / 2.0);
        let nosings: Vec<Vec<Point>> = f.nosings.iter().map(|(p, _)| vec![*p + half, *p - half]).collect();
        let mut svg = pen::lines(&nosings.iter().map(Vec::as_slice).collect::<Vec<_>>(), "nosing");
        svg.push_str(&arrow(f.foot, f.top));
        let riser = units.length(f.riser);
        let title = format!("Steps {}, {} risers of {riser}, going {}", f.id, f.risers, units.length(f.going));
        d.layer(format!("flight {}", f.id), &f.id, title, svg);
        let at = f.foot.towards(f.top, 0.4) + f.outward.left() * (f.width.to_m() / 2.0 + 0.2);
        d.tags
            .push(Tag::new(at, format!("{} {} risers", f.id, f.risers), Sort::Name, &f.id).and(format!("of {riser}")));
    }
}

/// Ramps, with an arrow upwards.
pub fn ramps(plan: &Plan, d: &mut Drawing) {
    let units = plan.job.about.units;
    for r in &plan.shaped.ramps {
        let mut svg = pen::line(&r.path, "ramp-line");
        if let [.., a, b] = &r.path[..] {
            svg.push_str(&arrow(*a, *b));
        }
        let fall = units.slope(r.gradient);
        d.layer(format!("ramp {}", r.id), &r.id, format!("Ramp {}, {fall}, rises {}", r.id, units.length(r.rise)), svg);
        if let [a, b, ..] = &r.path[..] {
            d.tags.push(Tag::new(a.towards(*b, 0.5), format!("{} up {fall}", r.id), Sort::Name, &r.id));
        }
    }
}

fn arrow(from: Point, to: Point) -> String {
    let u = (to - from).unit();
    let (l, r) = (to - u * 0.22 + u.left() * 0.09, to - u * 0.22 - u.left() * 0.09);
    format!("{}{}", pen::line(&[from, to], "up-line"), pen::area(&[to, l, r], "up-head"))
}

/// Drains and their outlet.
pub fn drains(plan: &Plan, d: &mut Drawing) {
    let mut svg = String::new();
    for p in &plan.drained.pipes {
        let points: Vec<Point> = p.points.iter().map(|q| q.at).collect();
        svg.push_str(&pen::line(&points, "drain"));
    }
    let count = plan.drained.pipes.len();
    d.layer("drains", "drain", format!("{count} drain pipes"), svg);
    if let Some((at, level)) = &plan.job.drain.outlet {
        let said = plan.job.about.units.level(*level);
        d.layer("outlet", "outlet", format!("Outlet at level {said}"), pen::circle(*at, 0.16, "outlet"));
        d.tags.push(Tag::new(*at, "outlet", Sort::Water, "outlet").and(format!("▽ {said}")));
    }
}

/// Known pegs and measured points.
pub fn pegs(plan: &Plan, d: &mut Drawing) {
    let units = plan.job.about.units;
    let pegs = &plan.job.measure.pegs;
    let mut svg = String::new();
    for p in plan.survey.points.iter().filter(|p| !pegs.iter().any(|q| q.id == p.id)) {
        let r = 0.06;
        let (a, b) = (Vector::m(r, r), Vector::m(r, -r));
        let x = pen::lines(&[&[p.at - a, p.at + a], &[p.at - b, p.at + b]], "spot");
        svg.push_str(&pen::group(&format!("point {}", p.id), &format!("Point {}, {}", p.id, units.level(p.level)), &x));
        if !plan.survey.quick {
            d.tags.push(Tag::new(p.at, format!("{:.2}", p.level.to_m()), Sort::Spot, &format!("point {}", p.id)));
        }
    }
    d.layer("spots", "", "", svg);
    for p in pegs {
        let svg = format!("{}{}", pen::circle(p.at, 0.14, "peg"), pen::circle(p.at, 0.03, "peg-nail"));
        d.layer(format!("peg {}", p.id), &format!("peg {}", p.id), format!("Peg {}", p.id), svg);
        d.tags.push(Tag::new(p.at, p.id.clone(), Sort::Peg, &format!("peg {}", p.id)));
    }
    if let [a, b, ..] = &pegs[..] {
        d.layer("base line", "", format!("Base line {} to {}", a.id, b.id), pen::line(&[a.at, b.at], "base-line"));
    }
}
