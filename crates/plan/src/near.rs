//! What lies or stands near, and where does the work come too close to it?

use groundhold_finding::{Adjust, Finding, Kind, Place, Remedy, Severity};
use groundhold_hold::Hole;
use groundhold_quantity::{Area, Length, Point, Units, Vector, distance, math};
use groundhold_shape::Shaped;
use groundhold_surface::{Tin, clip_convex};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::job::{Event, Find, Job, Near, NearKind};
use crate::walls::{WallPlan, distance_to_line};

/// A hole is dug too near to a service.
pub static HOLE_NEAR_SERVICE: Kind = Kind {
    code: "N-001",
    name: "hole near a service",
    severity: Severity::Stop,
    why: "An auger or a bar through a cable kills; through a main it floods the dig. Services lie deeper, shallower and \
          farther aside than any drawing says.",
    source: "common practice, no source: locate first, expose by hand within half a metre to a metre",
    when_wrong: "the service was exposed by hand along the work and lies elsewhere",
};

/// The work comes inside the strip that belongs to a service.
pub static INSIDE_EASEMENT: Kind = Kind {
    code: "N-002",
    name: "work inside an easement",
    severity: Severity::Ask,
    why: "The owner of a main may dig it up and need not put back a wall that stands on it; many forbid building there.",
    source: "common practice, no source; the title or the owner of the service says what holds",
    when_wrong: "the owner agreed in writing",
};

/// The dig takes the cover off a service.
pub static COVER_LOST: Kind = Kind {
    code: "N-003",
    name: "cover of a service lost",
    severity: Severity::Stop,
    why: "A pipe without its cover freezes, is crushed by a wheel or is struck by the next spade.",
    source: "common practice, no source; the owner of the service says which cover it needs",
    when_wrong: "the service is moved or protected as its owner agreed",
};

/// Roots are dug.
pub static ROOTS_DUG: Kind = Kind {
    code: "N-004",
    name: "roots of a tree dug",
    severity: Severity::Watch,
    why: "A tree that loses too many roots dies in a few years or falls over; some trees are protected by law.",
    source: "BS 5837:2012, root protection area of radius 12 times the trunk's diameter (from memory); 10 % as the mark \
             between minor and major encroachment: AS 4970-2009 (from memory)",
    when_wrong: "an arborist dug by hand and found no roots there",
};

/// Nobody has said whether services were located.
pub static SERVICES_UNKNOWN: Kind = Kind {
    code: "N-005",
    name: "services not located",
    severity: Severity::Ask,
    why: "A buried cable or main that nobody asked about is found by the machine.",
    source: "common practice, no source: every country has an enquiry service; private lines are not on it",
    when_wrong: "it was asked and is not written into the job",
};

/// The answer of an enquiry is old.
pub static ENQUIRY_OLD: Kind = Kind {
    code: "N-006",
    name: "enquiry about services old",
    severity: Severity::Watch,
    why: "Marks on the ground wash away and new lines are laid; most enquiry services let an answer lapse after some weeks.",
    source: "common practice, no source; the answer itself says how long it holds",
    when_wrong: "the answer says that it holds longer",
};

/// Something unknown was found.
pub static UNKNOWN_SERVICE: Kind = Kind {
    code: "N-007",
    name: "unknown pipe or cable",
    severity: Severity::Stop,
    why: "A cable counts as live and a pipe as in use until somebody has traced them; a capped drain comes back as water \
          behind the wall.",
    source: "common practice, no source",
    when_wrong: "it was traced and is dead; then write that into the record",
};

/// All of them.
pub static FINDINGS: &[&Kind] = &[
    &HOLE_NEAR_SERVICE,
    &INSIDE_EASEMENT,
    &COVER_LOST,
    &ROOTS_DUG,
    &SERVICES_UNKNOWN,
    &ENQUIRY_OLD,
    &UNKNOWN_SERVICE,
    &crate::kept_clear::COVER_KEPT_OPEN,
    &crate::kept_clear::SOIL_AGAINST,
    &crate::standing::ENTRY_FITS_NOTHING,
    &crate::start::LEVEL_CARRIED,
    &crate::start::BASE_STEPS,
    &crate::existing::WALL_UNDRAINED,
    &crate::existing::WALL_TOPPED_UP,
    &crate::beside::TREATED_BESIDE,
    &crate::as_found::OUT_OF_LINE,
    &crate::as_found::AT_ITS_LIMIT,
    &crate::as_found::CAUSE_FITS,
    &crate::as_found::NOT_MEASURED,
    &crate::as_found::FOR_AN_ENGINEER,
    &crate::undermined::UNDERMINED,
];

/// Radius of the ground in which a tree's roots are protected.
///
/// # Source
/// BS 5837:2012, 4.6.1: 12 times the stem diameter at 1.5 m (from memory). AS 4970-2009 gives the same for its tree protection zone.
/// # Symbols
/// | D | diameter of the trunk at breast height | m | 0.075 to 2 |
/// # Gives
/// The radius, m, not less than 2 m and not more than 15 m.
/// # Not for
/// Palms and hedges.
/// # Errors
/// None.
/// # By hand
/// 500 mm: 6 m (reference case NR-01).
pub fn root_radius<N: Number>(diameter: N) -> N {
    (diameter * 12.0).max(N::constant(2.0)).min(N::constant(15.0)).named("r", Unit::M)
}

/// Working of [`root_radius`].
pub static ROOTS: Working = Working {
    name: "near/root-radius",
    title: "How far round a tree are its roots protected?",
    source: Source {
        work: "BS 5837:2012, Trees in relation to design, demolition and construction",
        place: "4.6.1 (from memory)",
    },
    not_for: "palms and hedges",
    inputs: &[Input::new("trunk", "D", "diameter of the trunk at breast height", Unit::M, Limits::ours(0.02, 5.0))],
    outputs: &[Output { key: "radius", words: "radius", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(root_radius(g.one("trunk")?))]),
};

/// Distance kept from a service when nothing else is said: within it, dig by hand.
const HAND_DIG: Length = Length::mm(500.0);
/// Cover that a service should keep when its owner has not said otherwise.
const COVER_LEAST: Length = Length::mm(450.0);
/// After this many days an answer is old. Common practice, no source.
const OLD_DAYS: f64 = 28.0;

/// Everything near, the finds among it.
pub fn everything(job: &Job) -> Vec<Near> {
    let mut all = job.near.clone();
    for (i, entry) in job.record.iter().enumerate() {
        if let Event::Find(Find::Service { what, line, depth }) = &entry.event {
            all.push(Near {
                id: format!("F{}", i + 1),
                kind: NearKind::Service(what.clone()),
                line: line.clone(),
                depth: Some(*depth),
                clear: None,
                source: format!("found {}", entry.at),
                age_days: None,
                level: None,
                holds: None,
            });
        }
    }
    all
}

/// Where the work comes too close.
pub(crate) fn check(job: &Job, ground: &Tin, shaped: &Shaped, walls: &[WallPlan]) -> Vec<Finding> {
    let units = job.about.units;
    let mut found = vec![];
    if !job.near.iter().any(|n| matches!(n.kind, NearKind::Service(_))) {
        let says = "No service is written into this job. Ask the enquiry service for public lines, look for private ones, and \
                    write down what was found, also when it is nothing.";
        found.push(Finding::new(&SERVICES_UNKNOWN, Place::job(), says));
    }
    for near in everything(job) {
        match &near.kind {
            NearKind::Service(what) => {
                found.extend(holes(&near, what, walls, units));
                found.extend(easement(&near, what, shaped, walls, units));
                found.extend(cover(&near, what, ground, shaped, units));
                found.extend(age(&near, what));
                if near.source.starts_with("found ") {
                    let says = format!(
                        "{what} {}: trace it, count it as live, and do not cap it. Write what it is into the record.",
                        near.source
                    );
                    found.push(Finding::new(&UNKNOWN_SERVICE, Place::of(&near.id), says));
                }
            }
            NearKind::Tree { trunk } => found.extend(roots(&near, *trunk, shaped, units)),
            _ => {}
        }
    }
    found
}

fn age(near: &Near, what: &str) -> Option<Finding> {
    let days = near.age_days.filter(|d| *d > OLD_DAYS)?;
    let says = format!("What is known of the {what} is {days:.0} days old; ask again before digging.");
    Some(Finding::new(&ENQUIRY_OLD, Place::of(&near.id), says))
}

fn holes(near: &Near, what: &str, walls: &[WallPlan], units: Units) -> Vec<Finding> {
    let keep = near.clear.unwrap_or(HAND_DIG).min(HAND_DIG).max(Length::mm(300.0));
    let mut found = vec![];
    for wall in walls {
        for hole in wall.layout.holes.iter().filter(|h| !h.built) {
            let gap = distance_to_line(hole.at, &near.line) - hole.diameter / 2.0;
            let reaches = near.depth.is_none_or(|d| hole.depth + keep > d);
            if gap >= keep || !reaches {
                continue;
            }
            let says = format!(
                "The hole of {} post {} comes within {} of the {what}{}; expose it by hand before this hole is dug.",
                wall.id,
                hole.post,
                units.length(gap.max(Length::ZERO)),
                near.depth.map_or(String::new(), |d| format!(" (top {} down)", units.length(d)))
            );
            let place = Place::on(&wall.of, format!("post {}", hole.post));
            let finding =
                Finding::new(&HOLE_NEAR_SERVICE, place, says).with_remedy(move_post(wall, hole, near, keep, units));
            found.push(finding.with_remedy(Remedy::theirs(format!("Have the {what} traced and moved by its owner."))));
        }
    }
    found
}

/// The nearest place along the wall at which the hole is clear of the line.
fn move_post(wall: &WallPlan, hole: &Hole, near: &Near, keep: Length, units: Units) -> Remedy {
    let Some(post) = wall.layout.post(hole.post) else {
        return Remedy::theirs("Move the post along the wall.");
    };
    let along = post.facing.left();
    let step = 0.05;
    let clear = (1..=30).flat_map(|k| [k as f64 * step, -(k as f64) * step]).find(|s| {
        let at = hole.at + Vector::m(along.x * s, along.y * s);
        distance_to_line(at, &near.line) - hole.diameter / 2.0 >= keep
    });
    match clear {
        Some(s) => {
            let shifted = post.chainage + Length::m(if forwards(wall, hole.post, along) { s } else { -s });
            let says = format!(
                "Set post {} at chainage {} instead of {}, where the hole is {} clear.",
                hole.post,
                units.run(shifted),
                units.run(post.chainage),
                units.length(keep)
            );
            let change = Adjust { element: wall.of.clone(), field: "posts.extra".into(), value: units.run(shifted) };
            Remedy::ours(says, vec![change])
        }
        None => {
            Remedy::theirs("No place within 1.5 m along the wall is clear: move the wall or have the service moved.")
        }
    }
}

fn forwards(wall: &WallPlan, post: usize, along: Vector) -> bool {
    let p = wall.layout.post(post).map(|p| p.at);
    let next = wall.layout.post(post + 1).map(|p| p.at);
    p.zip(next).is_some_and(|(a, b)| (b - a).dot(along) >= 0.0)
}

fn easement(near: &Near, what: &str, shaped: &Shaped, walls: &[WallPlan], units: Units) -> Vec<Finding> {
    let Some(clear) = near.clear else { return vec![] };
    let mut found = vec![];
    let mut say = |element: &str, words: &str, gap: Length| {
        let says = format!(
            "{words} comes within {} of the {what}; its easement is {} to each side.",
            units.length(gap),
            units.length(clear)
        );
        found.push(Finding::new(&INSIDE_EASEMENT, Place::of(element), says));
    };
    for wall in walls {
        let gap = wall.case.stations.iter().map(|s| distance_to_line(s.at, &near.line)).reduce(Length::min);
        if let Some(gap) = gap.filter(|g| *g < clear) {
            say(&wall.of, &format!("Wall {}", wall.id), gap);
        }
    }
    for flight in &shaped.flights {
        let corners = flight.treads.iter().flat_map(|t| t.ring.iter());
        let gap = corners.map(|p| distance_to_line(*p, &near.line)).reduce(Length::min);
        if let Some(gap) = gap.filter(|g| *g < clear) {
            say(&flight.id, &format!("Flight {}", flight.id), gap);
        }
    }
    for ramp in &shaped.ramps {
        if crosses(&ramp.path, &near.line) {
            say(&ramp.id, &format!("Ramp {} crosses it and", ramp.id), Length::ZERO);
        }
    }
    found
}

fn crosses(a: &[Point], b: &[Point]) -> bool {
    a.windows(2).any(|u| b.windows(2).any(|v| groundhold_quantity::segments_cross(u[0], u[1], v[0], v[1]).is_some()))
}

/// How far apart the cover over a line is looked at.
const LOOK_EVERY: f64 = 0.25;

fn cover(near: &Near, what: &str, ground: &Tin, shaped: &Shaped, units: Units) -> Option<Finding> {
    let depth = near.depth?;
    let mut worst: Option<(Length, String)> = None;
    for p in along(&near.line) {
        let Some(piece) = shaped.ground_at(p) else { continue };
        let Some(existing) = ground.level_at(p) else { continue };
        let left = depth - (existing - piece.facet.plane.level_at(p));
        if left < COVER_LEAST && left < depth && worst.as_ref().is_none_or(|(w, _)| left < *w) {
            worst = Some((left, piece.of.clone()));
        }
    }
    let (left, element) = worst?;
    let says = if left > Length::ZERO {
        format!(
            "{element} leaves {} of cover over the {what} of the {} it has.",
            units.length(left),
            units.length(depth)
        )
    } else {
        format!("{element} is dug {} below the top of the {what}.", units.length(-left))
    };
    let kind = if left > Length::ZERO { Severity::Ask } else { Severity::Stop };
    Some(
        Finding::new(&COVER_LOST, Place::of(&element), says)
            .weighing(kind)
            .with_remedy(Remedy::theirs("Ask its owner which cover it needs, or have it moved.")),
    )
}

pub(crate) fn along(line: &[Point]) -> Vec<Point> {
    let mut points: Vec<Point> = line.first().copied().into_iter().collect();
    for w in line.windows(2) {
        let n = (distance(w[0], w[1]).to_m() / LOOK_EVERY).ceil().clamp(1.0, 4000.0) as usize;
        points.extend((1..=n).map(|i| w[0].towards(w[1], i as f64 / n as f64)));
    }
    points
}

/// Sides of the polygon that stands for a circle.
const CIRCLE: usize = 48;

fn circle(at: Point, radius: f64) -> Vec<Point> {
    let turn = |i: usize| std::f64::consts::TAU * i as f64 / CIRCLE as f64;
    (0..CIRCLE).map(|i| Point::m(at.x + radius * math::cos(turn(i)), at.y + radius * math::sin(turn(i)))).collect()
}

fn ring_area(ring: &[Point]) -> f64 {
    let Some(o) = ring.first() else { return 0.0 };
    ring.windows(2).map(|w| (w[0] - *o).cross(w[1] - *o)).sum::<f64>() / 2.0
}

/// Share of encroachment above which an arborist is asked: AS 4970-2009, 10 % (from memory).
const MAJOR: f64 = 0.10;

fn roots(near: &Near, trunk: Length, shaped: &Shaped, units: Units) -> Option<Finding> {
    let at = *near.line.first()?;
    let radius = root_radius(trunk.to_m());
    let zone = circle(at, radius);
    let dug: f64 = shaped.grounds.iter().map(|g| ring_area(&clip_convex(&g.facet.ring, &zone))).sum();
    let share = dug / ring_area(&zone);
    if share < 0.001 {
        return None;
    }
    let says = format!(
        "{:.0} % of the root area of the tree {} (radius {}, {} of {}) is dug or filled.",
        share * 100.0,
        near.id,
        units.run(Length::m(radius)),
        units.area(Area::m2(dug)),
        units.area(Area::m2(ring_area(&zone)))
    );
    let weight = if share > MAJOR { Severity::Ask } else { Severity::Watch };
    Some(
        Finding::new(&ROOTS_DUG, Place::of(&near.id), says)
            .weighing(weight)
            .with_utilisation(share / MAJOR)
            .with_trace(Trace::new(&ROOTS, vec![trunk.to_m().into()]))
            .with_remedy(Remedy::theirs(
                "Dig by hand there, cut no root over 25 mm without an arborist, and keep machines and heaps off it.",
            )),
    )
}
