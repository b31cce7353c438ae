//! From the plan's elements to what `setout` tabulates.

use groundhold_quantity::{Length, Level, Point};
use groundhold_setout as setout;
use groundhold_shape::Shaped;
use groundhold_surface::Tin;

use crate::job::Job;
use crate::walls::WallPlan;

/// Least and most staff on the datum that the staff columns are made for; a staff is four metres long.
const STAFF_ON_DATUM: (Length, Length) = (Length::m(1.5), Length::m(4.0));
/// Length of a usual tape.
const TAPE: Length = Length::m(30.0);

pub(crate) fn set_out(job: &Job, ground: &Tin, shaped: &Shaped, walls: &[WallPlan]) -> setout::SetOut {
    let datum = job.measure.datum.as_ref();
    let pegs = job.measure.pegs.iter().map(|p| setout::Peg {
        id: p.id.clone(),
        at: p.at,
        level: datum.filter(|d| d.peg == p.id).map(|d| d.level),
    });
    let (marks, posts) = (marks(job, ground, shaped, walls), posts(ground, walls));
    let case = setout::Case {
        staff_on_datum: staff_on_datum(job, &marks, &posts),
        pegs: pegs.collect(),
        marks,
        posts,
        corners: corners(shaped),
        lines: walls.iter().map(|w| (w.id.clone(), straights(w))).collect(),
        curves: curves(shaped),
        dug: shaped.grounds.iter().map(|g| g.facet.ring.clone()).collect(),
        tape: TAPE,
        units: job.about.units,
    };
    setout::set_out(&case)
}

/// Arcs of pads, ramps and walls, those of a wall on its middle line as given.
fn curves(shaped: &Shaped) -> Vec<setout::Arc> {
    let of = |id: &str, curves: &[groundhold_shape::Curve]| -> Vec<setout::Arc> {
        let arc = |c: &groundhold_shape::Curve| setout::Arc {
            element: id.to_string(),
            start: c.start,
            centre: c.centre,
            radius: Length::m(c.radius),
            turn: c.turn,
        };
        curves.iter().map(arc).collect()
    };
    let pads = shaped.pads.iter().flat_map(|p| of(&p.id, &p.curves));
    let ramps = shaped.ramps.iter().flat_map(|r| of(&r.id, &r.curves));
    let walls = shaped.walls.iter().flat_map(|w| of(&w.id, &w.curves));
    pads.chain(walls).chain(ramps).collect()
}

/// As low an instrument as sees over everything that is set out; the person adds the difference to what they read.
fn staff_on_datum(job: &Job, marks: &[setout::Mark], posts: &[setout::PostMark]) -> Length {
    let (least, most) = STAFF_ON_DATUM;
    let Some(datum) = job.measure.datum.as_ref().map(|d| d.level) else { return least };
    let highest = marks.iter().filter_map(|m| m.wanted).chain(posts.iter().map(|p| p.top)).reduce(Level::max);
    let over = highest.map_or(least, |h| h - datum + Length::mm(100.0));
    Length::m((over.to_m() * 10.0).ceil() / 10.0).max(least).min(most)
}

/// `a`, `b`, `c` …, then `aa`.
fn letter(i: usize) -> String {
    let c = char::from(b'a' + (i % 26) as u8);
    if i < 26 { c.to_string() } else { format!("{}{c}", letter(i / 26 - 1)) }
}

fn mark(ground: &Tin, id: String, element: &str, what: &str, at: Point, wanted: Option<Level>) -> setout::Mark {
    setout::Mark { id, element: element.into(), what: what.into(), at, wanted, ground: ground.level_at(at) }
}

fn marks(job: &Job, ground: &Tin, shaped: &Shaped, walls: &[WallPlan]) -> Vec<setout::Mark> {
    let mut all = vec![];
    for pad in &shaped.pads {
        // Of a curved outline the corners as given; its arcs have a table of their own.
        let corners =
            if pad.polygon.corners().len() > pad.corners.len() { &pad.corners } else { pad.polygon.corners() };
        for (i, at) in corners.iter().enumerate() {
            let wanted = Some(pad.plane.level_at(*at));
            all.push(mark(ground, format!("{}-{}", pad.id, letter(i)), &pad.id, "corner of the pad", *at, wanted));
        }
    }
    for wall in walls {
        for (i, at) in straights(wall).iter().enumerate() {
            all.push(mark(ground, format!("{}-{}", wall.id, letter(i)), &wall.of, "face line of the wall", *at, None));
        }
        all.extend(steps_of(ground, wall));
    }
    for f in &shaped.flights {
        let half = f.outward.left() * (f.width.to_m() / 2.0);
        let low = f.foot_outward.left() * (f.width.to_m() / 2.0);
        let (top, foot) = (Some(f.top_level), Some(f.foot_level + f.riser));
        all.push(mark(ground, format!("{}-a", f.id), &f.id, "top riser, left looking down", f.top + half, top));
        all.push(mark(ground, format!("{}-b", f.id), &f.id, "top riser, right looking down", f.top - half, top));
        all.push(mark(ground, format!("{}-c", f.id), &f.id, "bottom riser, right looking down", f.foot - low, foot));
        all.push(mark(ground, format!("{}-d", f.id), &f.id, "bottom riser, left looking down", f.foot + low, foot));
    }
    for r in &shaped.ramps {
        let corners = r.path.iter().zip(&r.corner).filter(|(_, corner)| **corner).map(|(p, _)| p);
        for (i, at) in corners.enumerate() {
            let wanted = shaped.level_at(ground, *at);
            all.push(mark(ground, format!("{}-{}", r.id, letter(i)), &r.id, "middle of the ramp", *at, wanted));
        }
    }
    if let Some((at, level)) = job.drain.outlet {
        all.push(mark(ground, "D-out".into(), "", "outlet of the drain", at, Some(level)));
    }
    all
}

/// Ends and steps of a wall without posts: how deep its base is dug, and where the string for its top hangs.
fn steps_of(ground: &Tin, wall: &WallPlan) -> Vec<setout::Mark> {
    if !wall.layout.posts.is_empty() || wall.case.stations.len() < 2 {
        return vec![];
    }
    let line = groundhold_hold::Line::new(&wall.case.stations);
    let mut all = vec![];
    for s in &wall.layout.strips {
        for (end, chainage) in [("start", s.chainage.0), ("end", s.chainage.1)] {
            let at = line.at(chainage).at;
            let sign = if end == "start" { 'a' } else { 'b' };
            let mut put = |what: &str, short: &str, level: Level| {
                let id = format!("{}-{}{sign}-{short}", wall.id, s.number);
                let what = format!("{what}, {end} of {}", s.on);
                all.push(mark(ground, id, &wall.of, &what, at, Some(level)));
            };
            put("underside of the base", "base", s.base);
            put("string for the top", "top", s.top);
        }
    }
    all
}

/// Ends and corners of the line on which posts and boards touch.
fn straights(wall: &WallPlan) -> Vec<Point> {
    let stations = &wall.case.stations;
    let turns =
        |s: &groundhold_hold::Station| wall.case.corners.iter().any(|c| (*c - s.chainage).abs() < Length::mm(1.0));
    let (Some(first), Some(last)) = (stations.first(), stations.last()) else { return vec![] };
    let inner = stations.iter().filter(|s| turns(s)).map(|s| s.at);
    let mut line: Vec<Point> = std::iter::once(first.at).chain(inner).chain([last.at]).collect();
    line.dedup_by(|a, b| groundhold_quantity::distance(*a, *b) < Length::mm(1.0));
    line
}

fn posts(ground: &Tin, walls: &[WallPlan]) -> Vec<setout::PostMark> {
    let of = |w: &WallPlan| {
        let holes = w.layout.holes.clone();
        let id = w.id.clone();
        let rows = w.layout.posts.iter().map(move |p| {
            let hole = holes.iter().find(|h| h.post == p.number);
            setout::PostMark {
                wall: id.clone(),
                number: p.number,
                at: p.at,
                chainage: p.chainage,
                top: p.top,
                ground: None,
                front: p.front,
                hole_bottom: hole.map_or(p.bottom, |h| h.bottom),
                hole_diameter: p.hole_diameter,
                built: p.built,
            }
        });
        rows.collect::<Vec<_>>()
    };
    let mut all: Vec<setout::PostMark> = walls.iter().flat_map(of).collect();
    for p in &mut all {
        p.ground = ground.level_at(p.at);
    }
    all
}

/// Elements whose diagonals and right angles are checked: pads with four corners.
fn corners(shaped: &Shaped) -> Vec<setout::Corner> {
    let four = shaped.pads.iter().filter(|p| p.polygon.corners().len() == 4);
    four.map(|p| setout::Corner {
        element: p.id.clone(),
        corners: p
            .polygon
            .corners()
            .iter()
            .enumerate()
            .map(|(i, at)| (format!("{}-{}", p.id, letter(i)), *at))
            .collect(),
    })
    .collect()
}
