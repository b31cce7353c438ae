//! What is known about each wall, put together for `hold`: ground, soils, loads, neighbours, what stands already.

use groundhold_earth::{Basis, Soil};
use groundhold_hold as hold;
use groundhold_quantity::{Length, Point, Share, Vector, distance};
use groundhold_shape::{Shaped, WallProfile};
use groundhold_surface::Tin;
use hold::{Layout, Neighbour, NeighbourKind, Spec, Verdict, WallCase};

use crate::again::Earlier;
use crate::job::{Event, Find, Job, NearKind, WallWish};
use crate::trouble::{Part, Trouble};

/// One wall, laid out and judged.
#[derive(Debug, Clone)]
pub struct WallPlan {
    /// Its id; a wall that a ramp passes through has a second run `W2-2`.
    pub id: String,
    /// The wall of the job.
    pub of: String,
    /// All that was known.
    pub case: WallCase,
    /// In whole pieces.
    pub layout: Layout,
    /// Checked.
    pub verdict: Verdict,
}

/// Soils and basis that hold for all walls.
pub(crate) struct Common<'a> {
    pub job: &'a Job,
    pub ground: &'a Tin,
    pub shaped: &'a Shaped,
    pub soil: &'a Soil,
    pub basis: &'static Basis,
    /// How high water may stand behind each wall whose drain is blocked; all of it for a wall that is not named.
    pub blocked: &'a [(String, Share)],
    /// True where slips of the bank are searched, and remedies.
    pub slips: bool,
}

/// Lays out and judges every wall.
///
/// # Errors
/// Walls that cannot be laid out, each with its id.
pub(crate) fn walls(common: &Common, earlier: &Earlier) -> Result<Vec<WallPlan>, Vec<Trouble>> {
    let mut plans = vec![];
    let mut troubles = vec![];
    for profile in &common.shaped.walls {
        let Some(wish) = common.job.walls.iter().find(|w| w.id == profile.id) else { continue };
        for (id, from, to, spec) in runs(wish, profile) {
            let Some(case) = case(common, wish, spec, profile, &id, (from, to)) else { continue };
            if let Some(same) = earlier.wall(&case) {
                plans.push(same.clone());
                continue;
            }
            let held = if common.slips { hold::hold(&case) } else { hold::hold_quick(&case) };
            match held {
                Ok((layout, verdict)) => {
                    plans.push(WallPlan { id, of: wish.id.clone(), case, layout, verdict });
                }
                Err(e) => troubles.push(Trouble::new(Part::Element(wish.id.clone()), e)),
            }
        }
    }
    if troubles.is_empty() { Ok(plans) } else { Err(troubles) }
}

/// Shortest run of a wall that is built.
const SHORTEST: Length = Length::mm(300.0);

/// The runs of a wall between its openings, parted where it is made otherwise; each with what it is made of.
fn runs<'w>(wish: &'w WallWish, profile: &WallProfile) -> Vec<(String, Length, Length, &'w Spec)> {
    let mut edges = vec![Length::ZERO];
    for (a, b) in &profile.openings {
        edges.extend([*a, *b]);
    }
    edges.push(profile.length);
    let part_at = |c: Length| {
        let along = c - profile.given_from;
        wish.parts.iter().find(|p| p.from <= along && along < p.to).map_or(&wish.spec, |p| &p.spec)
    };
    let mut runs: Vec<(Length, Length, &Spec)> = vec![];
    for c in edges.chunks(2).filter(|c| c.len() == 2) {
        let ends = wish.parts.iter().flat_map(|p| [p.from + profile.given_from, p.to + profile.given_from]);
        let mut cuts: Vec<Length> = ends.filter(|e| c[0] + SHORTEST < *e && *e < c[1] - SHORTEST).collect();
        cuts.extend([c[0], c[1]]);
        cuts.sort_by(|a, b| a.to_m().total_cmp(&b.to_m()));
        runs.extend(cuts.windows(2).map(|w| (w[0], w[1], part_at((w[0] + w[1]) / 2.0))));
    }
    let long = runs.into_iter().filter(|r| r.1 - r.0 >= SHORTEST);
    long.enumerate()
        .map(|(i, r)| {
            let id = if i == 0 { profile.id.clone() } else { format!("{}-{}", profile.id, i + 1) };
            (id, r.0, r.1, r.2)
        })
        .collect()
}

fn case(
    common: &Common,
    wish: &WallWish,
    spec: &Spec,
    profile: &WallProfile,
    id: &str,
    (from, to): (Length, Length),
) -> Option<WallCase> {
    // From the middle of the wall back to the wall line.
    let back = spec.system().thickness() / 2.0 - spec.system().back_to_line();
    let mut stations: Vec<hold::Station> = vec![];
    for s in profile.stations.iter().filter(|s| from <= s.chainage && s.chainage <= to) {
        let chainage = s.chainage - from;
        if stations.last().is_some_and(|l| chainage - l.chainage < Length::mm(0.5)) {
            continue;
        }
        stations.push(hold::Station {
            chainage,
            at: s.at - s.facing * back.to_m(),
            behind: s.behind,
            front: s.front,
            slope_behind: s.slope_behind,
            slope_front: s.slope_front,
            wanted_top: s.wanted_top,
            facing: s.facing,
        });
    }
    let last = stations.last()?.chainage;
    let corners = profile.corners();
    let inner = corners.iter().map(|c| *c - from).filter(|c| *c > Length::ZERO && *c < last);
    let corners = inner.filter_map(|c| nearest_station(&stations, c)).collect();
    let mut case = WallCase {
        id: id.to_string(),
        corners,
        spec: spec.clone(),
        retained_soil: common.soil.clone(),
        founding_soil: common.soil.clone(),
        loads: loads(common.job, &wish.id, profile),
        fence: wish.fence.as_ref().map(|f| hold::Fence {
            height: f.height,
            wind: f.wind,
            solidity: f.solid,
            source: f.source.clone(),
        }),
        neighbours: neighbours(common, profile, from),
        bank: bank(common, profile, from),
        water: hold::Water { drained: common.job.drain.wanted, blocked: blocked(common, &wish.id) },
        must_meet: common.job.ground.must_meet.clone(),
        shaking: common.job.ground.shaking.as_ref().map(|s| s.0),
        basis: common.basis,
        search_slip: common.slips,
        built: crate::standing::posts(common.job, id, &stations),
        refusals: vec![],
        changes: wish.changes.clone(),
        units: common.job.about.units,
        stations,
    };
    case.refusals = refusals(common.job, &case);
    Some(case)
}

fn blocked(common: &Common, wall: &str) -> Share {
    common.blocked.iter().find(|b| b.0 == wall).map_or(Share::fraction(1.0), |b| b.1)
}

/// How far apart the ground is asked for in a section through the bank.
const BANK_STEP: f64 = 0.25;

/// The finished ground square through the wall at its highest place, three heights and at least 4 m to either side.
fn bank(common: &Common, profile: &WallProfile, from: Length) -> Option<hold::Bank> {
    let s = profile.highest()?;
    let reach = ((s.retained * 3.0).max(LOOK_LEAST).to_m() / BANK_STEP).ceil() as i32;
    let half = profile.thickness.to_m() / 2.0 + 0.001;
    let level = |x: f64| common.shaped.level_at(common.ground, s.at + s.facing * (x + half * x.signum()));
    let mut ground = vec![];
    let mut add = |x: f64| {
        if let Some(l) = level(x) {
            ground.push(Point::m(x, l.to_m()));
        }
    };
    (1..=reach).rev().for_each(|i| add(-f64::from(i) * BANK_STEP));
    ground.push(Point::m(0.0, s.behind.to_m()));
    ground.push(Point::m(0.0, s.front.to_m()));
    let mut add = |x: f64| {
        if let Some(l) = level(x) {
            ground.push(Point::m(x, l.to_m()));
        }
    };
    (1..=reach).for_each(|i| add(f64::from(i) * BANK_STEP));
    Some(hold::Bank { chainage: s.chainage - from, ground: without_straight(&ground) })
}

/// Points that lie this near to the line through their neighbours say nothing.
const STRAIGHT: f64 = 0.005;

/// The line without points that stand in a straight stretch of it (Douglas and Peucker, Cartographica 10 (1973)).
fn without_straight(line: &[Point]) -> Vec<Point> {
    let (Some(first), Some(last)) = (line.first(), line.last()) else { return vec![] };
    let off = |p: &Point| (p.y - first.y - (last.y - first.y) * (p.x - first.x) / (last.x - first.x)).abs();
    let inner = line.iter().enumerate().skip(1).take(line.len().saturating_sub(2));
    let farthest = inner.map(|(i, p)| (i, if last.x > first.x { off(p) } else { 0.0 }));
    match farthest.max_by(|a, b| a.1.total_cmp(&b.1)) {
        Some((i, d)) if d > STRAIGHT => {
            let mut kept = without_straight(&line[..=i]);
            kept.pop();
            kept.extend(without_straight(&line[i..]));
            kept
        }
        _ => vec![*first, *last],
    }
}

fn nearest_station(stations: &[hold::Station], chainage: Length) -> Option<Length> {
    let near = stations.iter().min_by(|a, b| {
        let d = |s: &hold::Station| (s.chainage - chainage).abs().to_m();
        d(a).total_cmp(&d(b))
    })?;
    Some(near.chainage)
}

/// Loads on ground that the wall holds, with their distance behind it.
fn loads(job: &Job, wall: &str, profile: &WallProfile) -> Vec<hold::Load> {
    let Some(highest) = profile.highest() else { return vec![] };
    let back = Vector::m(-highest.facing.x, -highest.facing.y);
    let mut found = vec![];
    for load in &job.loads {
        let span = if load.on.strip_prefix("behind ") == Some(wall) {
            Some((0.0, f64::INFINITY))
        } else {
            let pad = job.pads.iter().find(|p| p.id == load.on);
            pad.and_then(|p| span_behind(&p.corners, highest.at, back))
        };
        if let Some((from, to)) = span {
            found.push(hold::Load {
                value: load.value,
                from: Length::m(from),
                to: Length::m(to),
                permanent: true,
                what: load.what.clone(),
            });
        }
    }
    found
}

/// Nearest and farthest distance behind a point at which a polygon lies; `None` when it lies in front.
fn span_behind(corners: &[Point], at: Point, back: Vector) -> Option<(f64, f64)> {
    let along = corners.iter().map(|c| (*c - at).dot(back));
    let (from, to) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| (lo.min(v), hi.max(v)));
    (to > 0.0 && from + to > 0.0).then_some((from.max(0.0), to))
}

/// Ground this much lower or higher is not worth a look.
const SLIGHT: Length = Length::mm(100.0);
/// Distances that differ by less are the same on the ground.
const AS_NEAR: Length = Length::mm(20.0);
/// How far a neighbour is looked for, in retained heights of either wall and never less than this.
const LOOK_LEAST: Length = Length::m(4.0);

/// Walls and footings behind and in front, looked for square off the wall from each of its stations.
fn neighbours(common: &Common, profile: &WallProfile, from: Length) -> Vec<Neighbour> {
    let mut found: Vec<(Neighbour, Length)> = vec![];
    // The nearest place counts; of places as near, the one where the wall holds most.
    let mut keep =
        |n: Neighbour, retained: Length| match found.iter_mut().find(|f| f.0.what == n.what && f.0.side == n.side) {
            Some(f) => {
                let (nearer, as_near) = (n.distance + AS_NEAR < f.0.distance, n.distance < f.0.distance + AS_NEAR);
                if nearer || (as_near && retained > f.1) {
                    *f = (n, retained);
                }
            }
            None => found.push((n, retained)),
        };
    for s in profile.stations.iter().filter(|s| s.retained >= SLIGHT) {
        for (side, way) in [(hold::Side::Behind, -1.0), (hold::Side::InFront, 1.0)] {
            let ray = s.facing * way;
            for other in common.shaped.walls.iter().filter(|o| o.id != profile.id) {
                let Some((distance, retained)) = wall_along(other, s.at, ray) else { continue };
                let look = (s.retained.max(retained) * 4.0).max(LOOK_LEAST);
                if retained >= SLIGHT && distance <= look {
                    let kind = NeighbourKind::Wall { retained };
                    let chainage = s.chainage - from;
                    keep(Neighbour { what: other.id.clone(), side, distance, chainage, kind }, s.retained);
                }
            }
            for old in common.job.standing.iter().filter(|o| o.replaced_by.is_empty()) {
                let Some(distance) = line_along(&old.line, s.at, ray) else { continue };
                if distance <= (s.retained.max(old.seen.height) * 4.0).max(LOOK_LEAST) {
                    let kind = NeighbourKind::Wall { retained: old.seen.height };
                    keep(
                        Neighbour { what: old.id.clone(), side, distance, chainage: s.chainage - from, kind },
                        s.retained,
                    );
                }
            }
            for near in &common.job.near {
                let NearKind::Footing(what) = &near.kind else { continue };
                let Some(distance) = line_along(&near.line, s.at, ray) else { continue };
                if distance <= (s.retained * 4.0).max(LOOK_LEAST) {
                    let kind = NeighbourKind::Footing { depth: near.depth.unwrap_or(Length::ZERO), pressure: None };
                    let what = format!("{} ({what})", near.id);
                    keep(Neighbour { what, side, distance, chainage: s.chainage - from, kind }, s.retained);
                }
            }
        }
    }
    found.into_iter().map(|f| f.0).collect()
}

/// Where a ray meets another wall, and what that wall retains there.
fn wall_along(other: &WallProfile, at: Point, ray: Vector) -> Option<(Length, Length)> {
    let hits = other.stations.windows(2).filter_map(|w| {
        let d = ray_meets(at, ray, w[0].at, w[1].at)?;
        Some((d, w[0].retained.max(w[1].retained)))
    });
    hits.min_by(|a, b| a.0.to_m().total_cmp(&b.0.to_m()))
}

fn line_along(line: &[Point], at: Point, ray: Vector) -> Option<Length> {
    if let [p] = line {
        let along = (*p - at).dot(ray);
        return (along > 0.0 && (*p - at).cross(ray).abs() < 1.0).then_some(Length::m(along));
    }
    line.windows(2).filter_map(|w| ray_meets(at, ray, w[0], w[1])).min_by(|a, b| a.to_m().total_cmp(&b.to_m()))
}

/// Distance from `at` along the unit vector `ray` to the segment `a`–`b`.
fn ray_meets(at: Point, ray: Vector, a: Point, b: Point) -> Option<Length> {
    let side = b - a;
    let det = ray.cross(side);
    if det.abs() < 1e-12 {
        return None;
    }
    let t = (a - at).cross(side) / det;
    let u = (a - at).cross(ray) / det;
    (t > 1e-6 && (0.0..=1.0).contains(&u)).then_some(Length::m(t))
}

/// Holes that were refused, by chainage; a post known by its number only is looked up in the layout without refusals.
fn refusals(job: &Job, case: &WallCase) -> Vec<hold::Refusal> {
    let mut found: Vec<hold::Refusal> = vec![];
    for entry in &job.record {
        let Event::Find(Find::Rock { wall, post, chainage, at, depth }) = &entry.event else { continue };
        if *wall != case.id {
            continue;
        }
        let by_number = || hold::lay_out(case).ok()?.post(*post).map(|p| p.chainage);
        let place = match at {
            Some(at) => crate::standing::on_line(*at, &case.stations),
            None => chainage.or_else(by_number),
        };
        let Some(chainage) = place else { continue };
        found.retain(|r| (r.chainage - chainage).abs() > Length::mm(10.0));
        found.push(hold::Refusal { chainage, depth: *depth, what: "rock".into() });
    }
    found
}

/// Shortest distance from a point to a line of points.
pub(crate) fn distance_to_line(p: Point, line: &[Point]) -> Length {
    match line {
        [q] => distance(p, *q),
        _ => line
            .windows(2)
            .map(|w| groundhold_quantity::distance_to_segment(p, w[0], w[1]))
            .reduce(Length::min)
            .unwrap_or(Length::m(f64::INFINITY)),
    }
}
