//! Where does each wall stand, where does it end, and what is to be said about it?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, distance, distance_to_segment, segments_cross};
use groundhold_surface::Tin;

use crate::findings::{WALL_CANNOT_BE_SHAPED, WALL_END_CUT_SHORT, WALL_NEVER_FADES, WALL_RETAINS_NOTHING, WALLS_CROSS};
use crate::profile::{Faces, Line, Scene, Stretch, fade, stations, stepped, top_in};
use crate::shape::Laid;
use crate::{
    Alignment, Course, Curve, End, EndFound, Meeting, Pad, Ramp, Side, Station, Top, TopLine, WallProfile, WallWish,
    Wish, batter,
};

/// Longest wall, metres (ours).
const LONGEST: f64 = 5000.0;
/// A fading wall is led on no farther than this, metres (ours).
const REACH: f64 = 30.0;
/// It is led on no farther than this at first: most walls meet the ground soon, and little ground need be laid to see it.
const FIRST: f64 = 4.0;
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
    pub wish: &'a WallWish,
    top: Wanted,
    given: Line,
    /// Chainage along `given` of the first point of the line as wished; a return may lie before it.
    zero: f64,
    reaching: Line,
    /// The same, led on by [`FIRST`] only.
    nearer: Line,
    from: f64,
    to: f64,
    fades: [bool; 2],
    curves: Vec<Curve>,
}

/// Where the top is wanted, before the wall's ends are known. Chainages are along the line as wished.
enum Wanted {
    Is(TopLine),
    Along(Vec<(Length, Level)>),
    Stepped { above: Length, by: Length, least: Length },
}

/// A wall's line as it is built.
pub(crate) struct Found {
    pub line: Line,
    stretch: Option<Stretch>,
}

/// The walls that can be shaped; a wall that crosses an earlier one is left out.
pub(crate) fn planned<'a>(wish: &'a Wish, pads: &[Pad], findings: &mut Vec<Finding>) -> Vec<Planned<'a>> {
    let mut planned: Vec<Planned<'a>> = vec![];
    for w in &wish.walls {
        match plan(w, wish, pads) {
            Ok(p) => match planned.iter().find_map(|q| Some((q, crossing(&p.given, &q.given)?))) {
                Some((other, at)) => findings.push(crosses(&w.id, &other.wish.id, at, "It is left out.")),
                None => planned.push(p),
            },
            Err(why) => {
                findings.push(Finding::new(&WALL_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            }
        }
    }
    planned
}

pub(crate) fn crosses(id: &str, other: &str, at: Point, what: &str) -> Finding {
    let place = Place::on(id, format!("at x {:.2} m, y {:.2} m", at.x, at.y));
    let says = format!(
        "{id} crosses {other} at x {:.2} m, y {:.2} m; walls may meet at an end, not cross. {what}",
        at.x, at.y
    );
    let ends = Remedy::theirs(format!("Let {id} end at x {:.2} m, y {:.2} m, on {other}.", at.x, at.y));
    Finding::new(&WALLS_CROSS, place, says).with_remedy(ends)
}

/// An end this near to another wall's line stands at it, beyond both half thicknesses, metres (ours).
const AT_LINE: f64 = 0.05;

/// Where one wall runs through another, farther from the ends of both than an end that stands at the other.
pub(crate) fn crossing(a: &Line, b: &Line) -> Option<Point> {
    let room = a.half + b.half + AT_LINE;
    let ends = |l: &Line| [l.points[0], l.points[l.points.len() - 1]];
    let (lo, hi) = crate::index::bounds(&b.points);
    for p in a.points.windows(2) {
        if p[0].x.max(p[1].x) < lo.x
            || hi.x < p[0].x.min(p[1].x)
            || p[0].y.max(p[1].y) < lo.y
            || hi.y < p[0].y.min(p[1].y)
        {
            continue;
        }
        for q in b.points.windows(2) {
            let Some((t, _)) = segments_cross(p[0], p[1], q[0], q[1]) else { continue };
            let at = p[0].towards(p[1], t);
            if ends(a).iter().chain(&ends(b)).all(|e| distance(*e, at).to_m() > room) {
                return Some(at);
            }
        }
    }
    None
}

/// Where walls meet: an end of one at another.
pub(crate) fn meetings(walls: &[Planned<'_>], lines: &[Line]) -> Vec<Meeting> {
    let mut found: Vec<Meeting> = vec![];
    for (i, a) in lines.iter().enumerate() {
        for end in [a.points[0], a.points[a.points.len() - 1]] {
            for (k, b) in lines.iter().enumerate().filter(|(k, _)| *k != i) {
                let room = a.half + b.half + AT_LINE;
                let near = |s: &[Point]| distance_to_segment(end, s[0], s[1]).to_m() <= room;
                if !b.points.windows(2).any(near) {
                    continue;
                }
                let at_end = [b.points[0], b.points[b.points.len() - 1]];
                let corner = at_end.iter().any(|e| distance(*e, end).to_m() <= room);
                let said = found.iter().any(|m| m.wall == walls[k].wish.id && m.meets == walls[i].wish.id);
                if !(corner && said) {
                    let (wall, meets) = (walls[i].wish.id.clone(), walls[k].wish.id.clone());
                    found.push(Meeting { wall, meets, corner, at: end });
                }
            }
        }
    }
    found
}

/// Tiers upon tiers end somewhere (ours).
const TIERS: usize = 8;

/// The line of a wall as wished, with the arcs in it.
fn course(w: &WallWish, wish: &Wish, depth: usize) -> Result<Course, String> {
    let Some(beside) = &w.beside else {
        let line = Alignment { points: w.line.clone(), bends: w.bends.clone() };
        return line.course().map_err(|e| e.to_string());
    };
    let other = wish.walls.iter().find(|o| o.id == beside.wall && o.id != w.id);
    let other = other.ok_or(format!("there is no wall {} to run beside", beside.wall))?;
    if depth >= TIERS {
        return Err(format!("it runs beside {}, which in the end runs beside itself", beside.wall));
    }
    let line = course(other, wish, depth + 1)?;
    let left = if other.retains == Side::Left { beside.by } else { -beside.by };
    line.beside(left).map_err(|e| e.to_string())
}

/// The stub with which a return that fades begins, metres (ours).
const STUB: f64 = 0.1;

fn plan<'a>(w: &'a WallWish, wish: &Wish, pads: &[Pad]) -> Result<Planned<'a>, String> {
    let course = course(w, wish, 0)?;
    let long = course.length().to_m();
    if !(0.0..=LONGEST).contains(&long) {
        return Err(format!("its line is {long:.0} m long, expected no more than {LONGEST:.0} m"));
    }
    let faces = faces(w, long)?;
    let top = wanted(w, long, pads)?;
    let (mut points, mut corner) = (course.points.clone(), course.corners());
    let mut zero = 0.0;
    for (k, end) in [w.start, w.end].into_iter().enumerate() {
        let n = points.len();
        let (at, along) = if k == 0 {
            (points[0], (points[0] - points[1]).unit())
        } else {
            (points[n - 1], (points[n - 1] - points[n - 2]).unit())
        };
        match end {
            End::Fade | End::At => {}
            End::Return(leg) => {
                let leg = leg.map_or(STUB, Length::to_m);
                if !(0.05..=100.0).contains(&leg) {
                    return Err(format!("its return is {leg:.3} m long, expected 0.05 m to 100 m"));
                }
                // Looking out of the start, the retained side has changed hands.
                let left = (w.retains == Side::Left) == (k == 1);
                let new = at + along.left() * if left { leg } else { -leg };
                if k == 0 {
                    points.insert(0, new);
                    corner.insert(0, true);
                    zero += leg;
                } else {
                    points.push(new);
                    corner.push(true);
                }
            }
            End::Post(breadth) => {
                let back = breadth.to_m() / 2.0;
                let (i, inner) = if k == 0 { (0, points[1]) } else { (n - 1, points[n - 2]) };
                if !(back >= 0.0 && back < distance(at, inner).to_m() - 0.01) {
                    return Err(format!(
                        "the post at its end is {:.3} m broad, more than its last stretch is long",
                        2.0 * back
                    ));
                }
                points[i] = at - along * back;
                if k == 0 {
                    zero -= back;
                }
            }
        }
    }
    let fades = [w.start, w.end].map(|e| matches!(e, End::Fade | End::Return(None)));
    let given = Line::new(points.clone(), corner.clone(), faces.moved(zero), w.retains);
    let long = given.length();
    let n = points.len();
    let led_on = |by: f64| {
        let mut led = points.clone();
        if fades[1] {
            led[n - 1] = points[n - 1] + (points[n - 1] - points[n - 2]).unit() * by;
        }
        if fades[0] {
            led[0] = points[0] + (points[0] - points[1]).unit() * by;
        }
        Line::new(led, corner.clone(), faces.moved(zero + if fades[0] { by } else { 0.0 }), w.retains)
    };
    let from = if fades[0] { REACH } else { 0.0 };
    let (reaching, nearer) = (led_on(REACH), led_on(FIRST));
    Ok(Planned { wish: w, top, given, zero, reaching, nearer, from, to: from + long, fades, curves: course.curves })
}

fn faces(w: &WallWish, long: f64) -> Result<Faces, String> {
    let check = |thickness: f64, lean: f64| {
        if !(0.001..=5.0).contains(&thickness) {
            return Err(format!("its thickness is {thickness:.3} m, expected 0.001 m to 5 m"));
        }
        if !(0.0..=1.0).contains(&lean) {
            return Err(format!("its face leans by {lean:.3} for each unit of height, expected 0 to 1"));
        }
        Ok((thickness / 2.0, lean))
    };
    let plain = check(w.thickness.to_m(), w.lean.to_ratio())?;
    let mut parts: Vec<(f64, f64, f64, f64)> = vec![];
    for p in &w.parts {
        let (half, lean) = check(p.thickness.to_m(), p.lean.to_ratio())?;
        let (from, to) = (p.from.to_m(), p.to.to_m());
        if !(from < to && from < long) {
            return Err(format!(
                "its part from {from:.3} m to {to:.3} m is no stretch of a line {long:.3} m long; expected from below to"
            ));
        }
        if let Some(q) = parts.iter().find(|q| q.0 < to && from < q.1) {
            return Err(format!("its parts from {from:.3} m and from {:.3} m overlap", q.0));
        }
        parts.push((from, to, half, lean));
    }
    Ok(Faces { plain, parts })
}

fn wanted(w: &WallWish, long: f64, pads: &[Pad]) -> Result<Wanted, String> {
    let is = |top| Ok(Wanted::Is(top));
    match &w.top {
        Top::FollowGround { above } => is(TopLine::FollowsGround { above: *above }),
        Top::LevelAt(l) => is(TopLine::Level(*l)),
        Top::Above { pad, by } => {
            let p = pads.iter().find(|p| p.id == *pad).ok_or(format!("there is no pad {pad} for its top"))?;
            is(top_in(p.plane, *by))
        }
        Top::Raked { from, to } => Ok(Wanted::Along(vec![(Length::ZERO, *from), (Length::m(long), *to)])),
        Top::Line(levels) => {
            if levels.is_empty() || levels.iter().any(|(c, z)| !(c.is_finite() && z.is_finite())) {
                return Err("its top needs at least one chainage with a level".into());
            }
            if let Some(p) = levels.windows(2).find(|p| p[0].0 > p[1].0) {
                return Err(format!(
                    "the chainages of its top go back from {:.3} m to {:.3} m",
                    p[0].0.to_m(),
                    p[1].0.to_m()
                ));
            }
            Ok(Wanted::Along(levels.clone()))
        }
        Top::Stepped { above, by, least } => {
            if !(0.01..=3.0).contains(&by.to_m()) {
                return Err(format!("the steps of its top are {:.3} m high, expected 0.01 m to 3 m", by.to_m()));
            }
            Ok(Wanted::Stepped { above: *above, by: *by, least: (*least).max(Length::ZERO) })
        }
    }
}

/// Where the walls end: each in turn with the others as found so far, until none moves.
pub(crate) fn ends_met(
    ground: &Tin,
    walls: &[Planned<'_>],
    lay: impl Fn(&[Line], (Point, Point)) -> Laid,
) -> Vec<Found> {
    let mut found: Vec<Found> = walls.iter().map(|w| Found { line: w.given.clone(), stretch: None }).collect();
    let mut open = vec![true; walls.len()];
    for _ in 0..ROUNDS {
        for (i, w) in walls.iter().enumerate() {
            if !std::mem::take(&mut open[i]) {
                continue;
            }
            let with = |own: &Line| -> Vec<Line> {
                found.iter().enumerate().map(|(k, f)| if k == i { own.clone() } else { f.line.clone() }).collect()
            };
            if !w.fades.contains(&true) {
                // Whether it holds anything is seen on the surface as it is in the end.
                continue;
            }
            let seen = |line: &Line| w.met(ground, &lay(&with(line), crate::index::bounds(&line.points)), line);
            let near = seen(&w.nearer);
            let all_met = near.stretch.is_none_or(|s| (0..2).all(|k| s.met[k] || !w.fades[k]));
            let met = if all_met { near } else { seen(&w.reaching) };
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
    /// Its line as given, returns included.
    pub fn given(&self) -> &Line {
        &self.given
    }
    /// Whether batters of this wall's surroundings may reach a place.
    fn is_near(&self, p: Point) -> bool {
        let fades = self.fades.contains(&true);
        let near = |s: &[Point]| distance_to_segment(p, s[0], s[1]).to_m() < 2.0 * batter::WIDEST;
        fades && self.reaching.points.windows(2).any(near)
    }

    /// Where its ends meet the ground.
    fn met(&self, ground: &Tin, laid: &Laid, led_on: &Line) -> Found {
        let openings = openings(led_on, &laid.ramps);
        let scene = laid.scene(ground);
        // Chainages of the nearer line begin that much later.
        let off = if self.fades[0] { (self.reaching.length() - led_on.length()) / self.ends_led_on() } else { 0.0 };
        let given = (self.from - off, self.to - off);
        let stretch = fade(&scene, led_on, given, self.fades, &openings, BURIED);
        let stretch = stretch.map(|s| Stretch { from: s.from + off, to: s.to + off, ..s });
        let line = stretch.map_or_else(|| self.given.clone(), |s| self.reaching.part(s.from, s.to));
        Found { line, stretch }
    }

    /// What was found, or for a wall whose ends are given what the surface says in the end: whether it holds anything.
    pub fn settled(&self, ground: &Tin, last: &Laid, found: Found) -> Found {
        if self.fades.contains(&true) { found } else { self.met(ground, last, &self.reaching) }
    }

    fn ends_led_on(&self) -> f64 {
        self.fades.iter().filter(|f| **f).count().max(1) as f64
    }

    /// Where the line as wished begins, along a line as built.
    fn given_from(&self, stretch: Option<Stretch>) -> f64 {
        self.zero + stretch.map_or(0.0, |s| self.from - s.from)
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
    let given_from = Length::m(w.given_from(found.stretch));
    let top = match &w.top {
        Wanted::Is(top) => top.clone(),
        Wanted::Along(levels) => TopLine::Along(levels.iter().map(|(c, z)| (*c + given_from, *z)).collect()),
        Wanted::Stepped { above, by, least } => {
            let over: Vec<Station> =
                stations(scene, &line, &TopLine::FollowsGround { above: *above }).into_iter().flatten().collect();
            stepped(&over, *above, *by, *least)
        }
    };
    let stations = stations(scene, &line, &top);
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
        corner: line.corner,
        curves: w.curves.clone(),
        given_from,
        stations,
        ends,
        top,
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
    let fades = w.fades;
    let kept =
        [w.wish.start, w.wish.end].map(|e| if let End::Post(_) = e { EndFound::AtPost } else { EndFound::Given });
    let Some(s) = stretch else { return kept };
    let at = [(s.from, w.from, 0.0, "start"), (s.to, w.to, line.length(), "end")];
    [0, 1].map(|k| {
        let (found, given, chainage, name) = at[k];
        if !fades[k] {
            return kept[k];
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
        let returns = matches!([w.wish.start, w.wish.end][k], End::Return(_));
        if short > SAME_END && !(returns && short < 2.0 * STUB) {
            let says = format!(
                "{id}: the ground is met {} before the given {name}; the wall ends there.",
                u.run(Length::m(short))
            );
            findings.push(Finding::new(&WALL_END_CUT_SHORT, Place::on(id, name), says));
        }
        let at = line.points[if k == 0 { 0 } else { line.points.len() - 1 }];
        EndFound::Faded { chainage: Length::m(found - w.from - w.zero), at }
    })
}
