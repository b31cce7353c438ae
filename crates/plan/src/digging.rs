//! From walls, probes and finished ground to what `dig` asks: faces, rock, where soil lies and goes, and where heaps may stand.

use groundhold_dig::{self as dig, Carried, Earth, Field, HeapSite, KeepOff, Stock, Stockpiled};
use groundhold_drain::Drained;
use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, Vector, Volume, distance};
use groundhold_shape::Shaped;
use groundhold_surface::{CutFill, Facet, GroundPoint, Plane, Tin, cut_and_fill_each};

use crate::drainage;
use crate::earthwork::{Moves, build_up};
use crate::job::{Job, NearKind};
use crate::near::{along, root_radius};
use crate::walls::{WallPlan, distance_to_line};

/// Where the soil goes: carries and heaps.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Groundwork {
    /// Who fills what with the least work; `None` where it was not worked out.
    pub carried: Option<Carried>,
    /// Heaps in their places.
    pub stockpiled: Stockpiled,
    /// Where soil leaves and comes in, and whether the job says so (a street) or it was taken (a ramp's foot, the lowest corner).
    pub gate: Option<(Point, bool)>,
}

/// How the face behind each wall is dug.
pub(crate) fn excavated(
    job: &Job,
    ground: &Tin,
    walls: &[WallPlan],
    soil: &str,
    made: bool,
    limit: Option<&dig::UnsupportedTrigger>,
) -> Vec<dig::Excavated> {
    let class = dig::cut_class(soil, drainage::water(job).is_some(), made);
    let faces = walls.iter().map(|w| face(job, ground, w));
    faces.filter(|f| f.heights.iter().any(|h| h.1 > Length::ZERO)).map(|f| dig::excavate(&f, class, limit)).collect()
}

/// How far behind the boards the existing ground is asked for: behind the drainage zone, m.
const BEHIND: f64 = 0.3;

fn face(job: &Job, ground: &Tin, w: &WallPlan) -> dig::Face {
    let line = drainage::line(w);
    let heights = line.stations.iter().map(|s| {
        let old = ground.level_at(s.at - s.facing * BEHIND);
        (s.chainage, old.map_or(Length::ZERO, |l| (l.min(s.behind) - s.base).max(Length::ZERO)))
    });
    let mut free: Option<(Length, String)> = None;
    for near in job.near.iter().filter(|n| !matches!(n.kind, NearKind::Other(_))) {
        for p in along(&near.line) {
            for s in line.stations.iter().filter(|s| (p - s.at).dot(s.facing) < 0.0) {
                let gap = (distance(p, s.at) - near.clear.unwrap_or(Length::ZERO)).max(Length::ZERO);
                if free.as_ref().is_none_or(|f| gap < f.0) {
                    free = Some((gap, near.id.clone()));
                }
            }
        }
    }
    dig::Face { element: w.of.clone(), heights: heights.collect(), room: Length::ZERO, free }
}

/// The top of the rock: the ground lowered by depths between the probes weighted by the inverse square of their distance
/// (Shepard, Proc. 23rd ACM National Conference (1968) 517–524). `None` without probes on the survey.
fn rock(job: &Job, ground: &Tin) -> Option<Tin> {
    let probes: Vec<(Point, f64)> = job
        .ground
        .rock
        .iter()
        .filter(|(at, _)| ground.level_at(*at).is_some())
        .map(|(at, d)| (*at, d.to_m()))
        .collect();
    if probes.is_empty() {
        return None;
    }
    let depth = |p: Point| {
        let (mut sum, mut weights) = (0.0, 0.0);
        for (at, d) in &probes {
            let r = distance(p, *at).to_m();
            if r < 1e-3 {
                return *d;
            }
            sum += d / (r * r);
            weights += 1.0 / (r * r);
        }
        sum / weights
    };
    let old = ground.points().iter().map(|g| g.at);
    let mut at: Vec<Point> = old.collect();
    at.extend(probes.iter().map(|p| p.0));
    let points = at.iter().enumerate().filter_map(|(i, p)| {
        let level = ground.level_at(*p)? - Length::m(depth(*p));
        Some(GroundPoint { id: i.to_string(), at: *p, level })
    });
    let mut points: Vec<GroundPoint> = points.collect();
    points.dedup_by(|a, b| distance(a.at, b.at) < Length::mm(1.0));
    Tin::build(&points, &[], None).ok()
}

/// Rock above the formation of each entry of `moves`.
pub(crate) fn rock_cut(job: &Job, ground: &Tin, shaped: &Shaped, moves: &[Moves]) -> Vec<Volume> {
    let Some(rock) = rock(job, ground) else { return vec![Volume::ZERO; moves.len()] };
    let under = |m: &Moves| {
        let low = build_up(job, m).to_m();
        let pieces: Vec<Facet> = shaped
            .grounds
            .iter()
            .filter(|g| g.of == m.element && g.kind == m.kind)
            .map(|g| Facet { ring: g.facet.ring.clone(), plane: Plane { c: g.facet.plane.c - low, ..g.facet.plane } })
            .collect();
        cut_and_fill_each(&rock, &pieces).iter().map(|v: &CutFill| v.cut).sum()
    };
    moves.iter().map(under).collect()
}

/// Carries and heaps of a dig that is worked out, and what stands against them.
pub(crate) fn groundwork(
    job: &Job,
    ground: &Tin,
    shaped: &Shaped,
    walls: &[WallPlan],
    drained: &Drained,
    dug: &dig::Dug,
) -> (Groundwork, Vec<Finding>) {
    let gate = gate(job, ground, shaped);
    let places = Places { shaped, walls, drained };
    let heap = dig::HeapSpace::default();
    let heaps: Vec<(dig::Heap, Vec<Point>)> = dug
        .heaps
        .iter()
        .map(|h| {
            (
                h.clone(),
                dug.rows.iter().filter(|r| r.earth.words() == h.what).filter_map(|r| places.of(&r.element)).collect(),
            )
        })
        .collect();
    let stockpiled = dig::stockpile(&heaps, &site(job, ground, shaped, walls, drained), heap.side, heap.height_most);
    let said = stockpiled.homeless.iter().map(|(what, loose)| {
        let says = format!(
            "For the heap of {what} ({} loose) there is no room off walls, services, roots and the boundary, in one heap or in six.",
            job.about.units.volume(*loose)
        );
        Finding::new(&dig::HEAP_HOMELESS, Place::job(), says)
            .with_remedy(Remedy::theirs("Find ground beyond the survey, or dig in parts so that less waits at a time."))
    });
    let said = said.collect();
    let carried = gate.and_then(|(at, _)| carried(ground, shaped, &places, dug, &stockpiled, at));
    (Groundwork { carried, stockpiled, gate }, said)
}

/// Where soil leaves: the street, else the foot of a ramp, else the lowest corner of the survey.
fn gate(job: &Job, ground: &Tin, shaped: &Shaped) -> Option<(Point, bool)> {
    let middle = shaped.pads.first().map(|p| p.polygon.centroid()).unwrap_or_default();
    let streets = job.near.iter().filter(|n| matches!(n.kind, NearKind::Street)).flat_map(|n| along(&n.line));
    if let Some(p) = streets.min_by(|a, b| distance(*a, middle).to_m().total_cmp(&distance(*b, middle).to_m())) {
        return Some((p, true));
    }
    if let Some(p) = shaped.ramps.first().and_then(|r| r.path.first()) {
        return Some((*p, false));
    }
    let lowest = ground.points().iter().min_by(|a, b| a.level.to_m().total_cmp(&b.level.to_m()))?;
    Some((lowest.at, false))
}

struct Places<'a> {
    shaped: &'a Shaped,
    walls: &'a [WallPlan],
    drained: &'a Drained,
}

impl Places<'_> {
    /// The middle of an element, a wall, a trench or a swale; of all the finished ground for the whole job.
    fn of(&self, element: &str) -> Option<Point> {
        let (mut sum, mut area) = (Vector::default(), 0.0);
        for g in self.shaped.grounds.iter().filter(|g| element.is_empty() || g.of == element) {
            let part = g.facet.area().to_m2();
            let ring = &g.facet.ring;
            let n = ring.len().max(1) as f64;
            let middle = ring.iter().fold(Vector::default(), |v, p| v + Vector::m(p.x, p.y) * (1.0 / n));
            sum = sum + middle * part;
            area += part;
        }
        if area > 0.0 {
            return Some(Point::m(sum.x / area, sum.y / area));
        }
        if let Some(w) = self.walls.iter().find(|w| w.id == element || w.of == element) {
            return w.case.stations.get(w.case.stations.len() / 2).map(|s| s.at - s.facing * 0.6);
        }
        let pipe = self.drained.pipes.iter().find(|p| element.ends_with(&format!("of {}", p.wall)));
        let swale = self.drained.swales.iter().find(|s| element.ends_with(&format!("above {}", s.wish.above)));
        pipe.and_then(|p| p.points.last().map(|q| q.at))
            .or_else(|| swale.and_then(|s| s.points.get(s.points.len() / 2)).map(|p| p.at))
            .or_else(|| self.drained.soakaway.as_ref().filter(|_| element == "soakaway").map(|s| s.wish.at))
    }
}

/// Amounts below this are rounding, m³.
const ROUNDING: f64 = 1e-9;

fn carried(
    ground: &Tin,
    shaped: &Shaped,
    places: &Places,
    dug: &dig::Dug,
    heaps: &Stockpiled,
    gate: Point,
) -> Option<Carried> {
    let (mut there, mut wanted, mut later) = (vec![], vec![], (vec![], vec![]));
    for s in dug.streams() {
        let stock =
            |what: &str, at: Point, bank: f64| Stock { what: what.into(), earth: s.earth, at, bank: Volume::m3(bank) };
        let rows: Vec<&dig::Row> = dug.rows.iter().filter(|r| r.earth == s.earth).collect();
        let here = |r: &dig::Row| places.of(&r.element).unwrap_or(gate);
        let name = |r: &dig::Row| if r.element.is_empty() { "whole job".to_string() } else { r.element.clone() };
        let sources = rows.iter().filter(|r| r.dug.to_m3() > ROUNDING).map(|r| stock(&name(r), here(r), r.dug.to_m3()));
        there.extend(sources);
        let k = s.factors.bank_to_compacted;
        let asked: f64 = rows.iter().map(|r| r.placed.to_m3().max(0.0)).sum();
        let share = if asked > 0.0 { s.placed.to_m3() / asked } else { 0.0 };
        let sinks: Vec<Stock> = rows
            .iter()
            .filter(|r| r.placed.to_m3() * share > ROUNDING)
            .map(|r| stock(&name(r), here(r), r.placed.to_m3() * share / k))
            .collect();
        let parts: Vec<_> = heaps.placed.iter().filter(|h| h.what == s.earth.words()).collect();
        let heaped = matches!(s.earth, Earth::Turf | Earth::Topsoil) && s.used.to_m3() > ROUNDING && !parts.is_empty();
        let short = s.short.to_m3() / k;
        if heaped {
            let all: Volume = parts.iter().map(|h| h.volume).sum();
            let part =
                |h: &dig::PlacedHeap| stock(&format!("heap of {}", h.what), h.at, s.used.to_m3() * (h.volume / all));
            wanted.extend(parts.iter().map(|h| part(h)));
            later.0.extend(parts.iter().map(|h| part(h)));
            later.0.extend((short > ROUNDING).then(|| stock("gate", gate, short)));
            later.1.extend(sinks);
        } else {
            wanted.extend(sinks);
            there.extend((short > ROUNDING).then(|| stock("gate", gate, short)));
        }
        wanted.extend((s.over.to_m3() > ROUNDING).then(|| stock("gate", gate, s.over.to_m3())));
    }
    let lines: Vec<Vec<Point>> = places.walls.iter().flat_map(barriers).collect();
    let via: Vec<Point> = shaped.ramps.iter().flat_map(|r| r.path.iter().copied()).collect();
    let level = |p: Point| shaped.level_at(ground, p).map(Level::to_m);
    let field = Field { walls: &lines, via: &via, level: &level };
    let mut all = dig::carry(&there, &wanted, &field).ok()?;
    let then = dig::carry(&later.0, &later.1, &field).ok()?;
    all.work += then.work;
    all.bound += then.bound;
    all.carries.extend(then.carries);
    Some(all)
}

/// A step this high is not wheeled over.
const STEP: Length = Length::mm(250.0);

/// Stretches of a wall that nothing is wheeled over, by their corners.
fn barriers(w: &WallPlan) -> Vec<Vec<Point>> {
    let mut found: Vec<Vec<Point>> = vec![vec![]];
    for s in &w.case.stations {
        let high = s.behind - s.front >= STEP;
        match found.last_mut() {
            Some(line) if high => line.push(s.at),
            Some(line) if !line.is_empty() => found.push(vec![]),
            _ => {}
        }
    }
    found.retain(|l| l.len() >= 2);
    for line in &mut found {
        let straight = |a: Point, b: Point, c: Point| (b - a).unit().cross((c - b).unit()).abs() < 0.02;
        let kept: Vec<Point> = (0..line.len())
            .filter(|i| *i == 0 || *i + 1 == line.len() || !straight(line[i - 1], line[*i], line[i + 1]))
            .map(|i| line[i])
            .collect();
        *line = kept;
    }
    found
}

/// What heaps keep off, m, where the job says nothing else. Common practice, no source.
const OFF_WORK: f64 = 0.3;
const OFF_BOUNDARY: f64 = 0.5;
const OFF_SERVICE: f64 = 1.0;

fn site(job: &Job, ground: &Tin, shaped: &Shaped, walls: &[WallPlan], drained: &Drained) -> HeapSite {
    let line = |what: &str, points: Vec<Point>, off: f64| KeepOff {
        what: what.into(),
        points,
        filled: false,
        off: Length::m(off),
    };
    let mut keep: Vec<KeepOff> = shaped
        .grounds
        .iter()
        .map(|g| KeepOff { what: g.of.clone(), points: g.facet.ring.clone(), filled: true, off: Length::m(OFF_WORK) })
        .collect();
    // The wedge behind a wall that pushes on it, and as much in front of a cut: as far as the highest wall is high.
    let highest = walls.iter().map(|w| w.layout.retained).fold(Length::mm(600.0), Length::max).to_m();
    keep.extend(walls.iter().map(|w| {
        let off = highest;
        line(&w.of, w.case.stations.iter().map(|s| s.at).collect(), off)
    }));
    keep.extend(job.near.iter().map(|n| {
        let off = match &n.kind {
            NearKind::Tree { trunk } => root_radius(trunk.to_m()),
            NearKind::Service(_) => n.clear.map_or(OFF_SERVICE, Length::to_m),
            NearKind::Boundary => OFF_BOUNDARY,
            _ => n.clear.map_or(OFF_SERVICE, Length::to_m),
        };
        line(&n.id, n.line.clone(), off)
    }));
    keep.extend(drained.pipes.iter().map(|p| line("drain", p.points.iter().map(|q| q.at).collect(), OFF_WORK)));
    keep.extend(
        drained
            .swales
            .iter()
            .map(|s| line("swale", s.points.iter().map(|p| p.at).collect(), s.width.to_m() / 2.0 + OFF_WORK)),
    );
    keep.retain(|k| !k.points.is_empty());
    HeapSite { plots: ground.outline(), keep_off: keep }
}

/// How far the nearest heap's toe lies from a wall.
pub(crate) fn toe_from_walls(heaps: &Stockpiled, walls: &[WallPlan]) -> Option<Length> {
    let gaps = heaps.placed.iter().flat_map(|h| {
        walls.iter().map(move |w| {
            let line: Vec<Point> = w.case.stations.iter().map(|s| s.at).collect();
            (distance_to_line(h.at, &line) - h.radius).max(Length::ZERO)
        })
    });
    gaps.reduce(Length::min)
}
