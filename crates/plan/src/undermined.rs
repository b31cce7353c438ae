//! Do cuts reach under houses, walls, fences and pools, and what is left of the bank that carries them?

use groundhold_earth::slip::{GroundLoad, Search, Section};
use groundhold_earth::{Soil, influence};
use groundhold_finding::{Finding, Kind, Place, Remedy, Severity};
use groundhold_quantity::{Length, Point, Pressure, Vector, math, trim};
use groundhold_shape::Shaped;
use groundhold_surface::Tin;

use crate::job::{Job, Near, NearKind};
use crate::near::along;
use crate::walls::WallPlan;

/// A cut near something that stands.
pub static UNDERMINED: Kind = Kind {
    code: "N-035",
    name: "something that stands near a cut",
    severity: Severity::Ask,
    why: "Ground spreads a footing's load downwards and aside. Cut into that ground and the footing follows, with the house, the \
          pool or the neighbour's fence on it.",
    source: "line at 45°: common practice, no source; bank with its load: Bishop, Géotechnique 5(1), 1955",
    when_wrong: "the footing goes deeper than is told, stands on rock, or the cut is held before it is dug",
};

/// A cut shallower than this undermines nothing. Common practice, no source.
const SHALLOW: Length = Length::mm(300.0);
/// How far from a footing cuts are looked for, and the step.
const LOOK: (f64, f64) = (6.0, 0.2);
/// Factor wanted of a bank that carries something. EN 1997-1 has partial factors; 1.5 is common practice, no source.
const WANTED: f64 = 1.5;
/// How far the section goes beyond the cut and the footing, and its step, metres.
const BEYOND: f64 = 6.0;
const STEP: f64 = 0.25;

/// What stands, as a strip of load: pressure and width. Common practice, no source.
fn load_of(words: &str) -> Option<(Pressure, Length)> {
    let rows: [(&[&str], f64, f64); 5] = [
        (&["pool", "tank"], 15.0, 3.0),
        (&["house", "building"], 80.0, 0.6),
        (&["garage", "shed"], 40.0, 0.4),
        (&["wall"], 30.0, 0.4),
        (&["fence", "footing"], 10.0, 0.3),
    ];
    let row = rows.iter().find(|(names, _, _)| names.iter().any(|n| words.contains(n)))?;
    Some((Pressure::kpa(row.1), Length::m(row.2)))
}

/// The cut that comes nearest to a footing's ground.
struct Cut {
    /// On the footing's line.
    from: Point,
    /// Towards the cut.
    way: Vector,
    /// How far.
    distance: Length,
    /// Finished ground there below the ground at the footing.
    depth: Length,
    /// Which element cuts.
    element: String,
}

/// What is asked: the ground before and after, the walls in it, the soil.
pub(crate) struct Site<'a> {
    pub job: &'a Job,
    pub ground: &'a Tin,
    pub shaped: &'a Shaped,
    pub walls: &'a [WallPlan],
    pub soil: &'a Soil,
    /// True where slips are searched.
    pub slips: bool,
}

/// Cuts near what stands, with the bank's factor before and after. The search costs time and is left out while a finger drags.
pub(crate) fn check(site: &Site) -> Vec<Finding> {
    let old = crate::as_found::as_near(site.job);
    let things = site.job.near.iter().chain(&old);
    things
        .filter_map(|near| {
            let (NearKind::Footing(words) | NearKind::Other(words)) = &near.kind else { return None };
            let load = load_of(words)?;
            let cut = worst(near, site.ground, site.shaped)?;
            finding(site, near, words, &cut, load)
        })
        .collect()
}

fn worst(near: &Near, ground: &Tin, shaped: &Shaped) -> Option<Cut> {
    let below = near.depth.unwrap_or(Length::ZERO);
    let mut found: Option<(Length, Cut)> = None;
    for from in along(&near.line) {
        let Some(here) = ground.level_at(from) else { continue };
        for i in 0..16 {
            let a = std::f64::consts::TAU * f64::from(i) / 16.0;
            let way = Vector::m(math::cos(a), math::sin(a));
            let mut away = LOOK.1;
            while away <= LOOK.0 {
                let q = from + way * away;
                let distance = Length::m(away);
                away += LOOK.1;
                let (Some(piece), Some(before)) = (shaped.ground_at(q), ground.level_at(q)) else { continue };
                let now = piece.facet.plane.level_at(q);
                let depth = here - now;
                if before - now < Length::mm(50.0) || depth < SHALLOW {
                    continue;
                }
                let left = below + distance - depth;
                if found.as_ref().is_none_or(|(l, _)| left < *l) {
                    found = Some((left, Cut { from, way, distance, depth, element: piece.of.clone() }));
                }
            }
        }
    }
    found.map(|f| f.1)
}

/// Ground along the way: x is metres from the footing, positive towards the cut.
fn profile(cut: &Cut, level: impl Fn(Point) -> Option<groundhold_quantity::Level>) -> Vec<Point> {
    let first = (-BEYOND / STEP) as i32;
    let last = ((cut.distance.to_m() + BEYOND) / STEP) as i32;
    (first..=last)
        .filter_map(|k| {
            let x = f64::from(k) * STEP;
            Some(Point::m(x, level(cut.from + cut.way * x)?.to_m()))
        })
        .collect()
}

/// The lowest tip of a post that the section passes: no slip goes between posts.
fn tip(cut: &Cut, walls: &[WallPlan]) -> Option<Point> {
    let posts = walls.iter().flat_map(|w| &w.layout.posts);
    let near = posts.filter_map(|p| {
        let d = p.at - cut.from;
        let x = d.dot(cut.way);
        let within = -0.5 <= x && x <= cut.distance.to_m() + 1.0 && d.cross(cut.way).abs() <= 1.5;
        within.then_some(Point::m(x, p.bottom.to_m()))
    });
    near.min_by(|a, b| a.y.total_cmp(&b.y))
}

fn factor(
    ground: Vec<Point>,
    soil: &Soil,
    load: (Pressure, Length),
    under: Option<Point>,
) -> Option<(f64, groundhold_working::Trace)> {
    if ground.len() < 3 {
        return None;
    }
    let mut section = Section::of(soil.clone(), ground);
    section.loads = vec![GroundLoad { value: load.0, from: -load.1, to: Length::ZERO }];
    let slip = section.critical(&Search { under, least_depth: Length::mm(300.0) }).ok()?;
    Some((slip.factor, slip.trace))
}

fn finding(site: &Site, near: &Near, words: &str, cut: &Cut, load: (Pressure, Length)) -> Option<Finding> {
    let Site { job, ground, shaped, walls, soil, slips } = *site;
    let u = job.about.units;
    let depth = near.depth.unwrap_or(Length::ZERO);
    let line = influence::line_45(cut.depth, depth, cut.distance).ok()?;
    let reach = influence::wedge_reach(soil, cut.depth);
    // Within twice the depth of a cut its bank is looked at, whatever the line says.
    if !line.undermines && cut.distance > cut.depth * 2.0 {
        return None;
    }
    let after =
        if slips { factor(profile(cut, |p| shaped.level_at(ground, p)), soil, load, tip(cut, walls)) } else { None };
    let before = if slips { factor(profile(cut, |p| ground.level_at(p)), soil, load, None) } else { None };
    let poor = after.as_ref().is_some_and(|(f, _)| *f < WANTED);
    if !line.undermines && !poor {
        return None;
    }
    let lies = match line.undermines {
        true => format!(
            "its underside lies {} above the line at 45° from the foot of the cut",
            u.length(line.below_line.abs())
        ),
        false => "its underside lies below the line at 45° from the foot of the cut".into(),
    };
    let wedge = if cut.distance < reach { ", and it stands on the wedge that pushes" } else { "" };
    let of =
        |f: &Option<(f64, groundhold_working::Trace)>| f.as_ref().map_or("none found".to_string(), |f| trim(f.0, 2));
    let bank = if slips {
        format!(
            " Slip of the bank with its load ({} over {}): factor {} before, {} after.",
            u.pressure(load.0),
            u.length(load.1),
            of(&before),
            of(&after)
        )
    } else {
        String::new()
    };
    let says = format!(
        "{} cuts {} deep, {} from {} ({words}): {lies}{wedge}.{bank}",
        cut.element,
        u.length(cut.depth),
        u.length(cut.distance),
        near.id
    );
    let mut severity = Severity::Ask;
    if after.as_ref().is_some_and(|(f, _)| *f < 1.0) {
        severity = Severity::Stop;
    }
    let apart = (cut.depth - depth).max(Length::ZERO);
    let farther = format!("Keep the foot of a cut of this depth {} or more from {}.", u.run(apart), near.id);
    let shallower = format!("Or cut no deeper than {} there.", u.length(cut.distance + depth));
    let mut finding = Finding::new(&UNDERMINED, Place::of(&near.id), says)
        .weighing(severity)
        .with_trace(after.map_or(line.trace, |(_, t)| t))
        .with_remedy(Remedy::theirs(farther))
        .with_remedy(Remedy::theirs(shallower));
    if poor {
        let engineer = "Have an engineer design the support before anything is dug, and dig in short lengths.";
        finding = finding.with_remedy(Remedy::theirs(engineer));
    }
    let wanted = cut.depth / (cut.distance + depth).max(Length::mm(1.0));
    Some(finding.with_utilisation(wanted))
}
