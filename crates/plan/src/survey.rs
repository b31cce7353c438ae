//! What is the ground? From bookings, tapes and spots, or from two numbers, to one existing surface.

use groundhold_finding::Finding;
use groundhold_measure as measure;
use groundhold_quantity::{Length, Level, Point};
use groundhold_surface::{GroundPoint, Plane, Polygon, Tin};
use measure::level_book::{Benchmark, Levelled, Reduced, Role, Terms};
use measure::misclose::{MiscloseRule, Per};
use measure::position::{Hint, Located, Measured, Reading, Side};
use measure::spot::Surveyed;

use crate::job::{Event, Find, Job, Peg, PositionRow};
use crate::trouble::{Part, Trouble};

/// The ground as measured.
#[derive(Debug, Clone)]
pub struct Survey {
    /// The level book, reduced; `None` where there is none.
    pub reduced: Option<Reduced>,
    /// Positions, adjusted; `None` where there is no position book.
    pub located: Option<Located>,
    /// Every point of the surface.
    pub points: Vec<Surveyed>,
    /// The existing surface.
    pub ground: Tin,
    /// True where the ground is a plane in two numbers.
    pub quick: bool,
    /// What the survey has against itself.
    pub findings: Vec<Finding>,
}

/// Reduces, adjusts and triangulates.
///
/// # Errors
/// Everything that stops it, each with its row.
pub(crate) fn survey(job: &Job) -> Result<Survey, Vec<Trouble>> {
    let m = &job.measure;
    if let (Some(slope), true) = (&m.quick, m.book.is_empty() && m.spots.is_empty()) {
        return quick(slope).map_err(|t| vec![t]);
    }
    let (reduced, levelled) = levels(job)?;
    let located = positions(job, &levelled)?;
    let pegs: Vec<_> = m.pegs.iter().map(measured_peg).collect();
    let found = located.as_ref().map_or(&[][..], |l| &l.points[..]);
    let spots = measure::spot::merge(&pegs, found, &levelled);
    let mut points = spots.points;
    points.extend(m.spots.iter().map(|s| Surveyed {
        id: s.id.clone(),
        at: s.at,
        level: s.level,
        sigma_position: Length::ZERO,
        sigma_level: Length::ZERO,
    }));
    correct_levels(job, &mut points);
    let ground = triangulate(job, &points)?;
    let mut findings = reduced.as_ref().map_or(vec![], |r| r.findings.clone());
    findings.extend(located.iter().flat_map(|l| l.findings.clone()));
    findings.extend(spots.findings);
    Ok(Survey { reduced, located, points, ground, quick: false, findings })
}

/// How far a slope in two numbers is taken to go on beyond itself, at least, in metres.
const BEYOND: f64 = 3.0;

fn quick(slope: &crate::job::QuickSlope) -> Result<Survey, Trouble> {
    let (run, width) = (slope.over.to_m(), slope.width.to_m());
    // The slope goes on round the piece that was measured, so that banks and wings have ground to run out on.
    let m = (run / 2.0).max(BEYOND);
    let corners = vec![Point::m(-m, -m), Point::m(width + m, -m), Point::m(width + m, run + m), Point::m(-m, run + m)];
    let outline = Polygon::new(corners).map_err(|e| Trouble::new(Part::Survey, e))?;
    let plane = Plane { a: 0.0, b: slope.fall.to_m() / run, c: slope.foot.to_m() };
    let ground = Tin::from_plane(plane, &outline);
    let points = ground
        .points()
        .iter()
        .map(|p| Surveyed {
            id: p.id.clone(),
            at: p.at,
            level: p.level,
            sigma_position: Length::ZERO,
            sigma_level: Length::ZERO,
        })
        .collect();
    Ok(Survey { reduced: None, located: None, points, ground, quick: true, findings: vec![] })
}

fn levels(job: &Job) -> Result<(Option<Reduced>, Vec<Levelled>), Vec<Trouble>> {
    let m = &job.measure;
    if m.book.is_empty() {
        let datum = m.datum.iter().map(|d| Levelled {
            station: d.peg.clone(),
            level: d.level,
            sigma: Length::ZERO,
            role: Role::Benchmark,
            rows: vec![],
        });
        return Ok((None, datum.collect()));
    }
    let Some(datum) = &m.datum else {
        return Err(vec![Trouble::new(
            Part::Survey,
            "there is a level book but no datum: which station has a known level?",
        )]);
    };
    let mut terms = Terms::from_start(&datum.peg, datum.level);
    terms.start = Benchmark { station: datum.peg.clone(), level: datum.level };
    if let Some(k) = m.misclose_per_setup {
        terms.rule = MiscloseRule { k, per: Per::SetUp, words: "as the job says", key: "job", ..terms.rule };
    }
    match measure::level_book::reduce(&m.book, &terms) {
        Ok(reduced) => {
            let levelled = reduced.points();
            Ok((Some(reduced), levelled))
        }
        Err(errors) => Err(errors.iter().map(book_trouble).collect()),
    }
}

fn book_trouble(e: &measure::level_book::BookError) -> Trouble {
    let says = e.to_string();
    Trouble { of: Part::LevelBook, row: row_in(&says), says }
}

/// Reads the row out of a message that begins "row 12: …".
fn row_in(says: &str) -> Option<usize> {
    let rest = says.strip_prefix("row ")?;
    rest.split(|c: char| !c.is_ascii_digit()).next()?.parse().ok()
}

fn measured_peg(p: &Peg) -> measure::position::Peg {
    measure::position::Peg { id: p.id.clone(), at: p.at }
}

fn positions(job: &Job, levelled: &[Levelled]) -> Result<Option<Located>, Vec<Trouble>> {
    let m = &job.measure;
    if m.positions.is_empty() {
        return Ok(None);
    }
    let [first, second, ..] = &m.pegs[..] else {
        return Err(vec![Trouble::new(Part::Positions, "positions need at least two pegs for a base line")]);
    };
    let survey = measure::position::Survey {
        pegs: m.pegs.iter().map(measured_peg).collect(),
        readings: m.positions.iter().flat_map(|r| readings(r, first, second)).collect(),
        hints: m.positions.iter().filter_map(|r| hint(r, first, second)).collect(),
        levels: levelled.iter().map(|l| (l.station.clone(), l.level)).collect(),
        accuracy: measure::position::Accuracy::default(),
    };
    match measure::position::locate(&survey) {
        Ok(located) => Ok(Some(located)),
        Err(errors) => Err(errors
            .iter()
            .map(|e| {
                let says = e.to_string();
                Trouble { of: Part::Positions, row: row_in(&says), says }
            })
            .collect()),
    }
}

fn readings(row: &PositionRow, first: &Peg, second: &Peg) -> Vec<Reading> {
    let one = |measured| Reading { row: row.row, point: row.point.clone(), measured, sigma: None };
    let offset = row
        .offset
        .map(|(along, off)| one(Measured::Offset { from: first.id.clone(), to: second.id.clone(), along, off }));
    let ties = row
        .ties
        .iter()
        .map(|(to, tape)| one(Measured::Tie { to: to.clone(), tape: *tape, lie: measure::position::Lie::Level }));
    offset.into_iter().chain(ties).collect()
}

fn hint(row: &PositionRow, first: &Peg, second: &Peg) -> Option<Hint> {
    let side = if row.left? { Side::Left } else { Side::Right };
    Some(Hint { row: row.row, point: row.point.clone(), side, from: first.id.clone(), to: second.id.clone() })
}

/// Levels that turned out to be read wrong, as the record says.
fn correct_levels(job: &Job, points: &mut [Surveyed]) {
    for entry in &job.record {
        let Event::Find(Find::LevelError { point, level }) = &entry.event else { continue };
        if let Some(p) = points.iter_mut().find(|p| p.id == *point) {
            p.level = *level;
        }
    }
}

fn triangulate(job: &Job, points: &[Surveyed]) -> Result<Tin, Vec<Trouble>> {
    let m = &job.measure;
    let index = |id: &String| {
        points.iter().position(|p| p.id == *id).ok_or_else(|| {
            let known = if points.len() > 8 { String::new() } else { format!("; known are {}", names(points)) };
            Trouble::new(Part::Survey, format!("point `{id}` is named but has no position and level{known}"))
        })
    };
    let line = |ids: &Vec<String>| ids.iter().map(index).collect::<Result<Vec<_>, _>>();
    let mut troubles = vec![];
    let mut break_lines = vec![];
    for ids in &m.break_lines {
        match line(ids) {
            Ok(l) => break_lines.push(l),
            Err(t) => troubles.push(t),
        }
    }
    let boundary = match line(&m.boundary) {
        Ok(b) => (!b.is_empty()).then_some(b),
        Err(t) => {
            troubles.push(t);
            None
        }
    };
    if !troubles.is_empty() {
        return Err(troubles);
    }
    let ground: Vec<GroundPoint> =
        points.iter().map(|p| GroundPoint { id: p.id.clone(), at: p.at, level: p.level }).collect();
    Tin::build(&ground, &break_lines, boundary.as_deref()).map_err(|e| vec![Trouble::new(Part::Survey, e)])
}

fn names(points: &[Surveyed]) -> String {
    points.iter().map(|p| p.id.as_str()).collect::<Vec<_>>().join(", ")
}

/// Lowest and highest level of the ground.
pub(crate) fn range(ground: &Tin) -> (Level, Level) {
    ground
        .points()
        .iter()
        .fold((Level::m(f64::INFINITY), Level::m(f64::NEG_INFINITY)), |(lo, hi), p| (lo.min(p.level), hi.max(p.level)))
}
