//! The plain facts that `build` needs: what is to be built, what a region's rules ask about, and labour to be priced.

use groundhold_build as build;
use groundhold_dig::{Dug, UnsupportedTrigger};
use groundhold_drain::Drained;
use groundhold_earth::soil::Frost;
use groundhold_finding::{Finding, Remedy};
use groundhold_hold::{NeighbourKind, Side, Spec, Stuff, WorkStep};
use groundhold_order::{Head, Measured, Need};
use groundhold_quantity::{Angle, Length, Level, Mass, Point, Pressure, Share, Slope, Volume};
use groundhold_shape::{self as shape, GroundKind, Shaped};
use groundhold_surface::Tin;

use crate::earthwork::{Moves, RAMP_BUILD_UP, TREAD_BUILD_UP, build_up};
use crate::job::{Event, Find, Job, NearKind};
use crate::near::everything;
use crate::needs;
use crate::walls::{WallPlan, distance_to_line};

/// Bank volume from which a small machine is reckoned with. Common practice, no source.
const MACHINE_FROM: Volume = Volume::m3(6.0);

pub(crate) fn crew(job: &Job) -> build::Crew {
    let people = job.order.people.round().clamp(1.0, 50.0) as u32;
    build::Crew { people, day: job.order.hours_per_day }
}

/// The limits of a region in the words of `shape`. Where it is silent, those of comfortable steps and of wheelchair ramps.
pub(crate) fn limits(region: &'static build::Region) -> shape::Limits {
    let comfort = shape::StepLimits::OUTDOOR_COMFORT;
    let steps = region.steps.map_or(comfort, |s| {
        let pair = |p: (Option<Length>, Option<Length>), d: (Length, Length)| (p.0.unwrap_or(d.0), p.1.unwrap_or(d.1));
        shape::StepLimits {
            riser: pair(s.riser, comfort.riser),
            going: pair(s.going, comfort.going),
            two_r_plus_g: s.two_r_plus_g.unwrap_or(comfort.two_r_plus_g),
            pitch_most: s.pitch_most.unwrap_or(Angle::deg(42.0)),
            source: s.source,
        }
    });
    // A garden ramp is held to what the job wishes; the region's limit for wheelchairs is a finding of its own.
    let ramp = shape::RampLimits { steepest: Slope::one_in(1.0), source: "the job's own wish" };
    let guard = region.guard.map(|g| shape::GuardTrigger { drop: g.drop, source: g.source });
    shape::Limits { steps, ramp, guard }
}

pub(crate) fn unsupported(region: &'static build::Region) -> Option<UnsupportedTrigger> {
    let rule = region.excavation?;
    Some(UnsupportedTrigger { most: rule.support_from, source: format!("{} ({})", rule.source, region.date_read) })
}

/// What is marked as built, by element; walls by post.
fn is_built(job: &Job, element: &str) -> bool {
    job.record.iter().any(|e| matches!(&e.event, Event::Built(b) if b.element == element && b.posts.is_empty()))
}

/// Findings after which an approval, an engineer or a neighbour has to be asked before the work.
pub(crate) const APPROVALS: &[&str] = &["B-001", "B-002", "B-003", "B-008", "B-011", "B-012"];

pub(crate) fn works(
    job: &Job,
    ground: &Tin,
    shaped: &Shaped,
    walls: &[WallPlan],
    drained: &Drained,
    moves: &[Moves],
    dug: &Dug,
) -> build::Works {
    let lowest = walls.iter().filter_map(base).reduce(Level::min).unwrap_or_default();
    let near = everything(job);
    let services = || near.iter().filter(|n| matches!(n.kind, NearKind::Service(_)));
    let clearance = services().filter_map(|n| nearest_dig(shaped, walls, &n.line)).reduce(Length::min);
    let heaviest =
        needs::lifted(job.about.units, walls, shaped).into_iter().reduce(|a, b| if b.mass > a.mass { b } else { a });
    let stripped = moves.iter().map(|m| m.volumes.cut_area + m.volumes.fill_area).sum();
    build::Works {
        walls: walls.iter().map(|w| wall(job, w, drained, shaped, lowest)).collect(),
        pads: shaped.pads.iter().map(|p| pad(job, p, moves, &pad_facts(job, ground, p, shaped))).collect(),
        flights: shaped.flights.iter().map(|f| flight(job, f, moves)).collect(),
        ramps: shaped.ramps.iter().map(|r| ramp(job, r, moves)).collect(),
        stripped: build::Stripped { area: stripped, turf: dug.turf.dug, topsoil: dug.topsoil.dug, complete: false },
        drainage: build::Drainage {
            collector: drained.pipes.iter().map(|p| p.trench.length).sum(),
            trench: drained.pipes.iter().map(|p| p.trench.dug).sum(),
            outlet: job.drain.outlet.map(|(at, l)| {
                let u = job.about.units;
                let run = |m: f64| u.run(Length::m(m));
                format!("at {} east, {} north, level {}", run(at.x), run(at.y), u.level(l))
            }),
            complete: false,
        },
        services_near: services().next().is_some(),
        service_clearance: clearance,
        tree: tree(job, shaped),
        deepest_open_cut: walls.iter().map(|w| w.layout.retained).reduce(Length::max).unwrap_or_default(),
        heaviest_piece: heaviest.as_ref().map_or(Mass::ZERO, |h| h.mass),
        heaviest_what: heaviest.map_or(String::new(), |h| h.what),
        treated_timber: walls.iter().any(|w| w.layout.pieces.iter().any(|p| p.stuff == Stuff::Timber)),
        cuts_stone: !shaped.flights.is_empty()
            || walls.iter().any(|w| w.layout.faces.iter().any(|f| is_stone(f.stuff))),
        footing_near: near.iter().any(|n| matches!(n.kind, NearKind::Footing(_))),
        public_near: near.iter().any(|n| matches!(n.kind, NearKind::Street)),
        ground_slope: mean_slope(ground),
        ground: build::GroundClass::Firm,
        dig: if dug.dug() > MACHINE_FROM { build::DigBy::Machine } else { build::DigBy::Hand },
        access: build::Access { haul: Length::m(20.0), narrowest: None },
        approval_needed: false,
        units: job.about.units,
    }
}

/// Whether it is cut with dust.
fn is_stone(stuff: Stuff) -> bool {
    matches!(stuff, Stuff::Stone | Stuff::Block)
}

/// The mean slope of the ground, area by area: what a machine or a barrow works on.
fn mean_slope(ground: &Tin) -> Slope {
    let (sum, area) = ground.facets().iter().fold((0.0, 0.0), |(s, a), f| {
        let part = f.area().to_m2();
        (s + part * f.plane.slope().to_ratio(), a + part)
    });
    if area > 0.0 { Slope::ratio(sum / area) } else { Slope::LEVEL }
}

fn base(w: &WallPlan) -> Option<Level> {
    w.layout.lowest_foot()
}

/// How near the dig comes to a line.
fn nearest_dig(shaped: &Shaped, walls: &[WallPlan], line: &[Point]) -> Option<Length> {
    let ground = shaped.grounds.iter().flat_map(|g| g.facet.ring.iter().copied());
    let holes = walls.iter().flat_map(|w| w.layout.holes.iter().map(|h| h.at));
    ground.chain(holes).map(|p| distance_to_line(p, line)).reduce(Length::min)
}

fn tree(job: &Job, shaped: &Shaped) -> Option<build::TreeNear> {
    let trees = job.near.iter().filter_map(|n| match n.kind {
        NearKind::Tree { trunk } => Some((n, trunk)),
        _ => None,
    });
    trees
        .filter_map(|(n, trunk)| {
            let distance = nearest_dig(shaped, &[], &n.line)?;
            Some(build::TreeNear { id: n.id.clone(), trunk, distance })
        })
        .min_by(|a, b| a.distance.to_m().total_cmp(&b.distance.to_m()))
}

fn wall(job: &Job, w: &WallPlan, drained: &Drained, shaped: &Shaped, lowest: Level) -> build::WallWorks {
    let l = &w.layout;
    let drain = drained.wall(&w.id).and_then(|d| d.zone.as_ref());
    let pipe = drained.pipe(&w.id);
    let standing = l.posts.iter().filter(|p| p.built).count();
    let behind = |ahead: bool| -> Vec<String> {
        let highest =
            w.case.stations.iter().max_by(|a, b| (a.behind - a.front).to_m().total_cmp(&(b.behind - b.front).to_m()));
        let Some(s) = highest else { return vec![] };
        let sign = if ahead { 1.0 } else { -1.0 };
        let on_side = shaped.pads.iter().filter(|p| (p.polygon.centroid() - s.at).dot(s.facing) * sign > 0.0);
        on_side.map(|p| p.id.clone()).collect()
    };
    build::WallWorks {
        id: w.id.clone(),
        length: l.length,
        retained: l.retained,
        exposed: l.exposed,
        total: l.total,
        base_above_lowest: base(w).map_or(Length::ZERO, |b| b - lowest),
        posts: l.posts.len(),
        holes: l.holes.len(),
        hole_depth: l.holes.iter().map(|h| h.depth).reduce(Length::max).unwrap_or_default(),
        hole_diameter: l.holes.iter().map(|h| h.diameter).reduce(Length::max).unwrap_or_default(),
        holes_volume: l.hole_spoil(),
        boards: l.boards.len(),
        base_dug: l.dig.trench,
        base_depth: l.dig.depth,
        laid: l.works.iter().map(laid).collect(),
        concrete: l.concrete(),
        trench: drain.map_or(Volume::ZERO, |z| z.in_ground),
        drain_stone: drain.map_or(Volume::ZERO, |z| z.stone),
        pipe: pipe.map_or(Length::ZERO, |p| p.behind_wall),
        fabric: drain.map_or(Default::default(), |z| z.fabric),
        backfill: drain.map_or(Volume::ZERO, |z| z.cap),
        capping: Length::ZERO,
        guard: if w.case.fence.is_some() { l.length } else { Length::ZERO },
        holds_fill_of: behind(false),
        stands_in_cut_of: behind(true),
        built: Share::fraction(if l.posts.is_empty() { 0.0 } else { standing as f64 / l.posts.len() as f64 }),
        cut_down: cut_down(job, w),
        complete: is_built(job, &w.id),
        water_found: job
            .record
            .iter()
            .any(|e| matches!(&e.event, Event::Find(Find::Water { element, .. }) if *element == w.id)),
    }
}

/// Less than this is not cut off.
const NOT_CUT: Length = Length::mm(5.0);

/// Posts that stand higher than they are planned now.
fn cut_down(job: &Job, w: &WallPlan) -> Vec<String> {
    let over = w.layout.posts.iter().filter_map(|p| Some((p.number, p.stands_to? - p.top)));
    let over = over.filter(|(_, by)| NOT_CUT < *by);
    over.map(|(number, by)| format!("post {number} by {}", job.about.units.length(by))).collect()
}

fn laid(w: &groundhold_hold::Work) -> build::Laid {
    build::Laid {
        step: match w.step {
            WorkStep::Base => build::LaidStep::Base,
            WorkStep::Courses => build::LaidStep::Courses,
        },
        name: w.name.clone(),
        amount: w.amount,
        unit: w.unit,
        hours: w.hours,
        people_most: w.people_most,
        source: w.source,
        how: w.how.clone(),
        checks: w.checks.clone(),
        sets_days: w.sets_days,
    }
}

fn of<'a>(moves: &'a [Moves], element: &'a str, kind: GroundKind) -> Option<&'a Moves> {
    moves.iter().find(|m| m.element == element && m.kind == kind)
}

fn pad(job: &Job, p: &shape::Pad, moves: &[Moves], depths: &build::PadFacts) -> build::PadWorks {
    let m = of(moves, &p.id, GroundKind::Pad);
    let batter = of(moves, &p.id, GroundKind::Batter);
    let both = |f: fn(&Moves) -> Volume| m.into_iter().chain(batter).map(f).sum::<Volume>();
    let area = m.map_or(p.area, |m| m.volumes.cut_area + m.volumes.fill_area);
    let thick = m.map_or(Length::ZERO, |m| build_up(job, m));
    build::PadWorks {
        id: p.id.clone(),
        area,
        cut: both(|m| m.volumes.cut),
        fill: both(|m| m.volumes.fill),
        topsoil: Volume::ZERO,
        turf: Default::default(),
        paving: if thick > Length::ZERO { area } else { Default::default() },
        cut_depth: depths.cut,
        fill_depth: depths.fill,
        complete: is_built(job, &p.id),
    }
}

fn flight(job: &Job, f: &shape::Flight, moves: &[Moves]) -> build::FlightWorks {
    let m = of(moves, &f.id, GroundKind::Tread);
    let treads = f.width * f.going * f.risers.saturating_sub(1) as f64;
    build::FlightWorks {
        id: f.id.clone(),
        risers: f.risers,
        width: f.width,
        rise: f.rise,
        cut: m.map_or(Volume::ZERO, |m| m.volumes.cut),
        base: treads * TREAD_BUILD_UP + m.map_or(Volume::ZERO, |m| m.volumes.fill),
        toward: f.toward.clone(),
        complete: is_built(job, &f.id),
    }
}

fn ramp(job: &Job, r: &shape::Ramp, moves: &[Moves]) -> build::RampWorks {
    let m = of(moves, &r.id, GroundKind::Ramp);
    let surface = r.length * r.width;
    build::RampWorks {
        id: r.id.clone(),
        length: r.length,
        width: r.width,
        cut: m.map_or(Volume::ZERO, |m| m.volumes.cut),
        fill: m.map_or(Volume::ZERO, |m| m.volumes.fill),
        base: surface * RAMP_BUILD_UP,
        surface,
        toward: r.toward.clone(),
        complete: is_built(job, &r.id),
    }
}

/// Person-hours of the programme as needs of the order, by element.
pub(crate) fn labour(programme: &build::Programme) -> Vec<Need> {
    programme
        .tasks
        .iter()
        .filter(|t| t.hours.likely.to_h() > 0.0)
        .map(|t| {
            Need::new("labour", &t.element, &t.name, Measured::Time(t.hours.likely))
                .under(Head::Labour)
                .because(t.trace.clone())
        })
        .collect()
}

/// Everything that a region's rules may ask about.
pub(crate) fn facts(job: &Job, ground: &Tin, shaped: &Shaped, walls: &[WallPlan]) -> build::Facts {
    let services = job.near.iter().filter(|n| matches!(n.kind, NearKind::Service(_)));
    let oldest = services.map(|n| n.age_days).fold(None, |worst: Option<Option<f64>>, a| match (worst, a) {
        (None, a) => Some(a),
        (Some(Some(w)), Some(a)) => Some(Some(w.max(a))),
        _ => Some(None),
    });
    build::Facts {
        units: job.about.units,
        walls: walls.iter().map(|w| wall_facts(job, ground, w)).collect(),
        pads: shaped.pads.iter().map(|p| pad_facts(job, ground, p, shaped)).collect(),
        edges: edges(walls),
        excavations: walls
            .iter()
            .filter(|w| stands_in_cut(w, ground))
            .map(|w| build::ExcavationFacts {
                element: w.id.clone(),
                on: String::new(),
                depth: w.layout.retained,
                neighbour_building: to_near(job, w, |k| matches!(k, NearKind::Footing(_))),
                below_its_foundation: None,
            })
            .collect(),
        flights: shaped
            .flights
            .iter()
            .map(|f| build::FlightFacts {
                id: f.id.clone(),
                risers: longest_flight(f) as u32,
                flight_rise: f.riser * longest_flight(f) as f64,
                rise: f.rise,
                side_drop: Length::ZERO,
                handrail: false,
            })
            .collect(),
        ramps: shaped
            .ramps
            .iter()
            .map(|r| build::RampFacts { id: r.id.clone(), slope: r.gradient, run: r.run, wheelchair: None })
            .collect(),
        enquiry: match oldest {
            Some(Some(days)) => build::Enquiry::Replied { days_ago: days.max(0.0) as u32 },
            _ => build::Enquiry::NotTold,
        },
        finds: job.record.iter().filter_map(|e| find(e, walls)).collect(),
        frost_line: job.ground.frost,
    }
}

/// Most risers between two landings.
fn longest_flight(f: &shape::Flight) -> usize {
    // After the riser that leads onto the landing the count begins anew.
    let ends = f.landings.iter().map(|t| t + 1).chain([f.risers]);
    ends.fold((0, 0), |(most, from), to| (most.max(to.saturating_sub(from)), to)).0
}

/// Underside of the base below the ground in front where that is least, and where.
fn shallowest(w: &WallPlan) -> Option<(Length, String)> {
    let posts = w.layout.posts.iter().map(|p| (p.depth, format!("post {}", p.number)));
    let strips = w.layout.strips.iter().map(|s| (s.front - s.base, s.on.clone()));
    let all: Vec<(Length, String)> = if w.layout.posts.is_empty() { strips.collect() } else { posts.collect() };
    all.into_iter().min_by(|a, b| a.0.to_m().total_cmp(&b.0.to_m()))
}

/// Whether the soil under it heaves; `None` for walls that drain themselves and may move a little.
fn heaves(w: &WallPlan) -> Option<bool> {
    let gives = matches!(w.case.spec, Spec::Gabion(_) | Spec::DryStone(_));
    let frost = w.case.founding_soil.frost.filter(|_| !gives)?;
    Some(matches!(frost, Frost::Medium | Frost::High))
}

fn timbers(w: &WallPlan) -> Vec<build::TimberFacts> {
    let Spec::TimberPosts(s) = &w.case.spec else { return vec![] };
    let of = |part, treatment: &str| build::TimberFacts { part, treatment: treatment.to_string() };
    vec![of(build::TimberPart::Post, &s.post.treatment), of(build::TimberPart::Board, &s.board.treatment)]
}

/// Says where the design rain is found, with the finding that there is none.
pub(crate) fn rain_said(region: &build::Region, findings: &mut [Finding]) {
    let Some(rule) = &region.rain else { return };
    let untold = findings.iter_mut().filter(|f| f.kind.code == groundhold_drain::RAIN_UNKNOWN.code);
    for f in untold {
        let figure = rule.intensity.map_or(String::new(), |i| {
            format!(" {:.0} mm/h is what the rule takes where nobody looks closer.", i.to_mm_per_h())
        });
        let cited = format!("({}; {}, {})", rule.source, rule.status.words(), region.date_read);
        f.remedies.push(Remedy::theirs(format!("{}{figure} {cited}", rule.says)));
    }
}

fn stands_in_cut(w: &WallPlan, ground: &Tin) -> bool {
    w.case.stations.iter().any(|s| {
        let front = Point::m(s.at.x + s.facing.x * 0.3, s.at.y + s.facing.y * 0.3);
        ground.level_at(front).is_some_and(|g| g - s.front > Length::mm(100.0))
    })
}

fn to_near(job: &Job, w: &WallPlan, wanted: impl Fn(&NearKind) -> bool) -> build::Near {
    let lines = job.near.iter().filter(|n| wanted(&n.kind));
    let gaps = lines.flat_map(|n| w.case.stations.iter().map(|s| distance_to_line(s.at, &n.line)));
    // Where the job says what is near, what it does not name is not there; a job that says nothing has not looked.
    let untold = if job.near.is_empty() { build::Near::NotTold } else { build::Near::Nothing };
    gaps.reduce(Length::min).map_or(untold, build::Near::At)
}

/// True where the ground behind the wall stands above what was there before.
fn holds_fill(ground: &Tin, w: &WallPlan) -> bool {
    w.case.stations.iter().any(|s| {
        let behind = Point::m(s.at.x - s.facing.x * 0.3, s.at.y - s.facing.y * 0.3);
        ground.level_at(behind).is_some_and(|g| s.behind - g > Length::mm(100.0))
    })
}

fn wall_facts(job: &Job, ground: &Tin, w: &WallPlan) -> build::WallFacts {
    let l = &w.layout;
    let load = w.case.loads.iter().filter(|x| x.from <= l.retained).map(|x| x.value).reduce(Pressure::max);
    let beside = w.case.neighbours.iter().filter_map(|n| match n.kind {
        NeighbourKind::Wall { retained } => Some(build::WallBeside {
            other: n.what.clone(),
            distance: n.distance,
            retained,
            is_lower: n.side == Side::InFront,
        }),
        _ => None,
    });
    let (base_depth, base_on) = shallowest(w).unzip();
    build::WallFacts {
        id: w.id.clone(),
        base_depth,
        base_on: base_on.unwrap_or_default(),
        heaves: heaves(w),
        timbers: timbers(w),
        retained: l.retained,
        exposed: l.exposed,
        total: l.total,
        fence: w.case.fence.as_ref().map_or(Length::ZERO, |f| f.height),
        surcharge: load.unwrap_or_default(),
        vehicles: w
            .case
            .loads
            .iter()
            .any(|x| ["car", "vehicle", "drive", "truck", "digger"].iter().any(|k| x.what.contains(k))),
        slope_behind: w.case.stations.iter().map(|s| s.slope_behind).reduce(Slope::max).unwrap_or_default(),
        holds_fill: holds_fill(ground, w),
        boundary: to_near(job, w, |k| matches!(k, NearKind::Boundary)),
        building: to_near(job, w, |k| matches!(k, NearKind::Footing(_))),
        street: to_near(job, w, |k| matches!(k, NearKind::Street)),
        easement: to_near(job, w, |k| matches!(k, NearKind::Service(_))),
        beside: beside.collect(),
    }
}

fn pad_facts(job: &Job, ground: &Tin, p: &shape::Pad, shaped: &Shaped) -> build::PadFacts {
    let mut cut = Length::ZERO;
    let mut fill = Length::ZERO;
    let ring = p.finished.corners().iter().copied();
    let inner = ground.points().iter().map(|g| g.at).filter(|at| p.finished.contains(*at));
    for at in ring.chain(inner) {
        let (Some(before), Some(after)) = (ground.level_at(at), shaped.level_at(ground, at)) else { continue };
        cut = cut.max(before - after);
        fill = fill.max(after - before);
    }
    let boundary = job.near.iter().filter(|n| matches!(n.kind, NearKind::Boundary));
    let gap =
        boundary.flat_map(|n| p.finished.corners().iter().map(|c| distance_to_line(*c, &n.line))).reduce(Length::min);
    build::PadFacts { id: p.id.clone(), cut, fill, boundary: gap.map_or(build::Near::NotTold, build::Near::At) }
}

/// The highest drop from each wall's top.
fn edges(walls: &[WallPlan]) -> Vec<build::EdgeFacts> {
    let worst = walls.iter().filter_map(|w| {
        let posts = w.layout.posts.iter().map(|p| (format!("post {}", p.number), p.exposed));
        let strips = w.layout.strips.iter().map(|s| (s.on.clone(), s.exposed()));
        let places: Vec<(String, Length)> = if w.layout.posts.is_empty() { strips.collect() } else { posts.collect() };
        let (on, drop) = places.into_iter().max_by(|a, b| a.1.to_m().total_cmp(&b.1.to_m()))?;
        Some(build::EdgeFacts {
            element: w.id.clone(),
            on,
            drop,
            walked: build::Near::NotTold,
            guarded: w.case.fence.is_some(),
        })
    });
    worst.collect()
}

fn find(entry: &crate::job::Entry, walls: &[WallPlan]) -> Option<build::GroundFind> {
    let Event::Find(f) = &entry.event else { return None };
    let (what, element, on, depth) = match f {
        Find::Rock { wall, post, depth, .. } => {
            (build::GroundFound::Rock, wall.clone(), format!("post {post}"), Some(*depth))
        }
        Find::Service { what, depth, .. } if what.contains("cable") => {
            (build::GroundFound::Cable, String::new(), what.clone(), Some(*depth))
        }
        Find::Service { what, depth, .. } => {
            (build::GroundFound::UnknownPipe, String::new(), what.clone(), Some(*depth))
        }
        Find::Water { element, depth } => (build::GroundFound::Water, element.clone(), String::new(), Some(*depth)),
        Find::LevelError { .. } => return None,
    };
    // A rock is settled when no post stands in its hole any more.
    let on_rock = |w: &WallPlan| w.layout.posts.iter().any(|p| p.refused_at.is_some() && p.refused_at == depth);
    let rock = walls.iter().find(|w| what == build::GroundFound::Rock && w.id == element);
    let settled = rock.is_some_and(|w| !on_rock(w));
    Some(build::GroundFind { what, element, on, depth, settled })
}
