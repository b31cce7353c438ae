//! Where does each wall stand, where does it end, and what is to be said about it?

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Point, distance, distance_to_segment, segments_cross};
use groundhold_surface::Tin;

use crate::findings::{WALL_CANNOT_BE_SHAPED, WALL_END_CUT_SHORT, WALL_NEVER_FADES, WALL_RETAINS_NOTHING};
use crate::profile::{Line, Scene, Stretch, fade, stations, top_in};
use crate::shape::Laid;
use crate::{End, EndFound, Pad, Ramp, Top, TopLine, WallProfile, WallWish, Wish, batter};

/// Longest wall, metres (ours).
const LONGEST: f64 = 5000.0;
/// A fading wall is led on no farther than this, metres (ours).
const REACH: f64 = 30.0;
/// Beside an opening the batter of the ramp may bury a wall for this long without its ending there, metres (ours).
const BURIED: f64 = 0.5;
/// Walls are looked at again no more often than this.
const ROUNDS: usize = 4;
/// An end that moves by less than this has not moved, metres.
const MOVED: f64 = 1e-4;
/// An end that moves by no more than this is where it was given, metres.
const SAME_END: f64 = 0.1;

/// A wall that can be shaped: its line led on at fading ends, and where on it the given line lies.
pub(crate) struct Planned<'a> {
    wish: &'a WallWish,
    top: TopLine,
    given: Vec<Point>,
    reaching: Line,
    from: f64,
    to: f64,
}

/// A wall's line as it is built.
pub(crate) struct Found {
    pub line: Line,
    stretch: Option<Stretch>,
}

pub(crate) fn planned<'a>(w: &'a WallWish, pads: &[Pad], findings: &mut Vec<Finding>) -> Option<Planned<'a>> {
    match plan(w, pads) {
        Ok(p) => Some(p),
        Err(why) => {
            findings.push(Finding::new(&WALL_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            None
        }
    }
}

fn plan<'a>(w: &'a WallWish, pads: &[Pad]) -> Result<Planned<'a>, String> {
    if w.line.iter().any(|p| !(p.x.is_finite() && p.y.is_finite())) {
        return Err("a point of its line is not an ordinary position".into());
    }
    let mut given: Vec<Point> = vec![];
    for p in &w.line {
        if given.last().is_none_or(|q| distance(*q, *p).to_mm() > 1.0) {
            given.push(*p);
        }
    }
    if given.len() < 2 {
        return Err("its line needs at least two different points".into());
    }
    let long: f64 = given.windows(2).map(|p| distance(p[0], p[1]).to_m()).sum();
    if !(0.0..=LONGEST).contains(&long) {
        return Err(format!("its line is {long:.0} m long, expected no more than {LONGEST:.0} m"));
    }
    let thickness = w.thickness.to_m();
    if !(0.001..=5.0).contains(&thickness) {
        return Err(format!("its thickness is {thickness:.3} m, expected 0.001 m to 5 m"));
    }
    let top = match &w.top {
        Top::FollowGround { above } => TopLine::FollowsGround { above: *above },
        Top::LevelAt(l) => TopLine::Level(*l),
        Top::Above { pad, by } => {
            let p = pads.iter().find(|p| p.id == *pad).ok_or(format!("there is no pad {pad} for its top"))?;
            top_in(p.plane, *by)
        }
    };
    let mut points = given.clone();
    let n = points.len();
    if w.end == End::Fade {
        points[n - 1] = given[n - 1] + (given[n - 1] - given[n - 2]).unit() * REACH;
    }
    let mut from = 0.0;
    if w.start == End::Fade {
        points[0] = given[0] + (given[0] - given[1]).unit() * REACH;
        from = REACH;
    }
    let reaching = Line::new(points, thickness / 2.0, w.retains);
    Ok(Planned { wish: w, top, given, reaching, from, to: from + long })
}

/// Where the walls end: each in turn with the others as found so far, until none moves.
pub(crate) fn ends_met(ground: &Tin, walls: &[Planned<'_>], lay: impl Fn(&[Line]) -> Laid) -> Vec<Found> {
    let mut found: Vec<Found> = walls
        .iter()
        .map(|w| Found { line: Line::new(w.given.clone(), w.reaching.half, w.wish.retains), stretch: None })
        .collect();
    let mut open = vec![true; walls.len()];
    for _ in 0..ROUNDS {
        for (i, w) in walls.iter().enumerate() {
            if !std::mem::take(&mut open[i]) {
                continue;
            }
            let line = |(k, f): (usize, &Found)| if k == i { w.reaching.clone() } else { f.line.clone() };
            let lines: Vec<Line> = found.iter().enumerate().map(line).collect();
            let met = w.met(ground, &lay(&lines));
            let moved: Vec<Point> = [0, usize::MAX]
                .into_iter()
                .filter_map(|end| {
                    let of = |l: &Line| l.points[end.min(l.points.len() - 1)];
                    let (a, b) = (of(&met.line), of(&found[i].line));
                    (distance(a, b).to_m() > MOVED).then_some([a, b])
                })
                .flatten()
                .collect();
            for (k, other) in walls.iter().enumerate() {
                open[k] |= k != i && moved.iter().any(|p| other.is_near(*p));
            }
            found[i] = met;
        }
        if !open.contains(&true) {
            break;
        }
    }
    found
}

impl Planned<'_> {
    /// Whether batters of this wall's surroundings may reach a place.
    fn is_near(&self, p: Point) -> bool {
        let fades = self.wish.start == End::Fade || self.wish.end == End::Fade;
        let near = |s: &[Point]| distance_to_segment(p, s[0], s[1]).to_m() < 2.0 * batter::WIDEST;
        fades && self.reaching.points.windows(2).any(near)
    }

    /// Where its ends meet the ground.
    fn met(&self, ground: &Tin, laid: &Laid) -> Found {
        let w = self.wish;
        let openings = openings(&self.reaching, &laid.ramps);
        let fades = [w.start == End::Fade, w.end == End::Fade];
        let scene = laid.scene(ground);
        let stretch = fade(&scene, &self.reaching, (self.from, self.to), fades, &openings, BURIED);
        let points = stretch.map_or_else(|| self.given.clone(), |s| self.reaching.part(s.from, s.to));
        Found { line: Line::new(points, self.reaching.half, w.retains), stretch }
    }
}

/// Chainages between which ramps pass through a wall.
fn openings(line: &Line, ramps: &[Ramp]) -> Vec<(f64, f64)> {
    let mut found = vec![];
    let at = &line.at;
    for r in ramps {
        let mut path = r.path.clone();
        if let [.., a, b] = &mut path[..] {
            *b = *b + (*b - *a).unit();
        }
        for (i, w) in line.points.windows(2).enumerate() {
            for p in path.windows(2) {
                let Some((t, _)) = segments_cross(w[0], w[1], p[0], p[1]) else { continue };
                let (u, v) = ((w[1] - w[0]).unit(), (p[1] - p[0]).unit());
                let (sin, cos) = (u.cross(v).abs(), u.dot(v).abs());
                if sin > 0.2 {
                    let half = (r.width.to_m() / 2.0 + line.half * cos) / sin;
                    let middle = at[i] + t * (at[i + 1] - at[i]);
                    found.push((middle - half, middle + half));
                }
            }
        }
    }
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found
}

/// The wall on the finished ground, with what is to be said about it.
pub(crate) fn profile(
    w: &Planned<'_>,
    found: Found,
    scene: &Scene<'_>,
    ramps: &[Ramp],
    wish: &Wish,
    findings: &mut Vec<Finding>,
) -> Option<WallProfile> {
    let id = &w.wish.id;
    let line = found.line;
    let long = line.length();
    let stations = stations(scene, &line, &w.top);
    let asked = stations.len();
    let stations: Vec<_> = stations.into_iter().flatten().collect();
    if stations.len() < asked {
        let says = format!(
            "{id}: {} of {asked} places along it lie outside the surveyed ground; expected all inside.",
            asked - stations.len()
        );
        findings.push(Finding::new(&WALL_CANNOT_BE_SHAPED, Place::of(id), says));
    }
    if stations.len() < 2 {
        return None;
    }
    let openings = openings(&line, ramps)
        .into_iter()
        .map(|(a, b)| (Length::m(a.max(0.0)), Length::m(b.min(long))))
        .filter(|(a, b)| a < b)
        .collect();
    let ends = ends(w, found.stretch, &line, scene, wish, findings);
    let p = WallProfile {
        id: id.clone(),
        length: Length::m(long),
        thickness: w.wish.thickness,
        line: line.points,
        stations,
        ends,
        top: w.top,
        openings,
    };
    if found.stretch.is_none() {
        retains_nothing(&p, wish, findings);
    }
    Some(p)
}

fn retains_nothing(p: &WallProfile, wish: &Wish, findings: &mut Vec<Finding>) {
    let u = wish.units;
    let least = p.stations.iter().map(|s| s.retained).reduce(Length::min).unwrap_or(Length::ZERO);
    let hint = if least < Length::mm(-50.0) {
        format!(" The ground in front is up to {} higher: is the other side meant?", u.length(-least))
    } else {
        String::new()
    };
    let says = format!("{}: the ground behind is nowhere higher than in front.{hint}", p.id);
    findings.push(Finding::new(&WALL_RETAINS_NOTHING, Place::of(&p.id), says));
}

fn ends(
    w: &Planned<'_>,
    stretch: Option<Stretch>,
    line: &Line,
    scene: &Scene<'_>,
    wish: &Wish,
    findings: &mut Vec<Finding>,
) -> [EndFound; 2] {
    let (id, u) = (&w.wish.id, wish.units);
    let fades = [w.wish.start == End::Fade, w.wish.end == End::Fade];
    let Some(s) = stretch else { return [EndFound::Given; 2] };
    let at = [(s.from, w.from, 0.0, "start"), (s.to, w.to, line.length(), "end")];
    [0, 1].map(|k| {
        let (found, given, chainage, name) = at[k];
        if !fades[k] {
            return EndFound::Given;
        }
        if !s.met[k] {
            let spot = line.spot(scene, chainage);
            let holds = spot.behind.zip(spot.front).map_or(Length::ZERO, |(b, f)| b - f);
            let says = format!(
                "{id}: led on {REACH:.0} m beyond its {name}, or to the edge of the survey, it does not meet the ground; it ends at the given point, where it retains {}.",
                u.length(holds)
            );
            findings.push(Finding::new(&WALL_NEVER_FADES, Place::on(id, name), says));
            return EndFound::NeverFades;
        }
        let short = if k == 0 { found - given } else { given - found };
        if short > SAME_END {
            let says = format!(
                "{id}: the ground is met {} before the given {name}; the wall ends there.",
                u.run(Length::m(short))
            );
            findings.push(Finding::new(&WALL_END_CUT_SHORT, Place::on(id, name), says));
        }
        let at = line.points[if k == 0 { 0 } else { line.points.len() - 1 }];
        EndFound::Faded { chainage: Length::m(found - w.from), at }
    })
}
