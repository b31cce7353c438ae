//! Where does a swale run above a wall, how deep is it dug, and does its lining stand the water?

use groundhold_finding::{Finding, Place, Remedy};
use groundhold_quantity::{Flow, Length, Level, Point, Slope, Vector, Volume, trim};
use groundhold_surface::Tin;
use groundhold_working::Trace;

use crate::channel::{Channelled, LININGS, Lining, channelled, section_area};
use crate::findings::{LINING_WASHED, SWALE_NOT_LAID};
use crate::grade::grade_line;
use crate::linear::along;
use crate::soakaway::{gap_to, line_of};
use crate::{Arrival, Catchment, DrainCase, Station, WallLine};

/// Distance between places at which the ground is asked, m.
const STEP: f64 = 0.5;
/// How far the swale runs past the ends of the wall, m.
const PAST: f64 = 0.6;

/// What a swale or cut-off drain above a wall should be.
#[derive(Debug, Clone, PartialEq)]
pub struct SwaleWish {
    /// The wall above which it runs.
    pub above: String,
    /// Width of its bed; nothing for a vee.
    pub bed: Length,
    /// Run of its sides for one up.
    pub side: f64,
    /// Fall along it.
    pub fall: Slope,
    /// What it is lined with.
    pub lining: Lining,
    /// Height kept free above the water.
    pub freeboard: Length,
    /// Distance kept from the wall.
    pub offset: Length,
}

impl SwaleWish {
    /// A bed of 300 mm with sides of 1 in 3, grassed, falling 1:100, 150 mm free above the water, 1.5 m from the wall.
    /// Freeboard: FHWA HEC-22, 3rd ed. (2009), 5.1, from memory; the rest common practice, no source.
    pub fn above(wall: impl Into<String>) -> SwaleWish {
        SwaleWish {
            above: wall.into(),
            bed: Length::mm(300.0),
            side: 3.0,
            fall: Slope::one_in(100.0),
            lining: LININGS[1],
            freeboard: Length::mm(150.0),
            offset: Length::m(1.5),
        }
    }
}

/// A place along a swale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwalePoint {
    /// Along it from its high end.
    pub chainage: Length,
    /// In plan.
    pub at: Point,
    /// Existing ground.
    pub ground: Level,
    /// Its bed.
    pub invert: Level,
}

/// A swale as laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct Swale {
    /// The wish.
    pub wish: SwaleWish,
    /// From the high end to its outfall, falling all the way.
    pub points: Vec<SwalePoint>,
    /// Ground that drains to it.
    pub catchment: Catchment,
    /// How long water needs to it.
    pub arrival: Option<Arrival>,
    /// Flow in the design rain; `None` where no rain was given.
    pub flow: Option<Flow>,
    /// The water in it; `None` where the flow is not known or no depth carries it.
    pub water: Option<Channelled>,
    /// Depth of water and freeboard: dug at least.
    pub depth_least: Length,
    /// Dug at its deepest.
    pub depth_most: Length,
    /// Width from edge to edge at its deepest.
    pub width: Length,
    /// Its length.
    pub length: Length,
    /// Dug for it, bank.
    pub dug: Volume,
    /// Working of the flow.
    pub flow_trace: Option<Trace>,
}

/// The line of a swale on the ground, from its high end.
pub(crate) struct Line {
    pub wish: SwaleWish,
    /// Unit vector downhill, towards the wall.
    down: Vector,
    places: Vec<(Point, Level)>,
}

impl Line {
    /// The swale as a line that takes the water from above.
    pub fn as_wall(&self) -> WallLine {
        let mut chainage = 0.0;
        let mut stations = vec![];
        for (i, (at, level)) in self.places.iter().enumerate() {
            if let Some(before) = i.checked_sub(1).map(|k| self.places[k].0) {
                chainage += (*at - before).length();
            }
            let (a, b) = (self.places[i.saturating_sub(1)].0, self.places[(i + 1).min(self.places.len() - 1)].0);
            let way = (b - a).unit();
            stations.push(Station {
                chainage: Length::m(chainage),
                at: *at,
                behind: *level,
                front: *level,
                base: *level,
                facing: if way.left().dot(self.down) > 0.0 { way.left() } else { way.left() * -1.0 },
            });
        }
        WallLine { id: format!("swale above {}", self.wish.above), stations }
    }
}

/// Lays the line of every swale that is wished for, or says why it cannot lie.
pub(crate) fn lines(case: &DrainCase) -> (Vec<Line>, Vec<Finding>) {
    let (mut found, mut said) = (vec![], vec![]);
    for wish in &case.swales {
        let Some(wall) = case.walls.iter().find(|w| w.id == wish.above) else { continue };
        match line(case.ground, wall, wish) {
            Some(l) => found.push(l),
            None => {
                let says = format!(
                    "No line above {} keeps {} off it and falls {} past its ends within the survey.",
                    wall.id,
                    case.units.run(wish.offset),
                    case.units.slope(wish.fall)
                );
                said.push(Finding::new(&SWALE_NOT_LAID, Place::of(&wall.id), says).with_remedy(Remedy::theirs(
                    "Survey the ground above the wall further, or lay the swale by eye along the contour.",
                )));
            }
        }
    }
    (found, said)
}

/// Along the contour above a wall, falling as wished: from beyond its higher end to beyond its lower one. Where the
/// way comes too near to the wall it is begun further uphill.
fn line(ground: &Tin, wall: &WallLine, wish: &SwaleWish) -> Option<Line> {
    let run = |i: usize| {
        let s = &wall.stations;
        let (a, b) = (s[i.saturating_sub(1)].at, s[(i + 1).min(s.len() - 1)].at);
        (b - a).length()
    };
    let sum = wall.stations.iter().enumerate().fold(Vector::default(), |v, (i, s)| v + s.facing * run(i));
    let down = sum.unit();
    let across = down.left();
    let reach = |v: Vector| {
        let along = wall.stations.iter().map(|s| Vector::m(s.at.x, s.at.y).dot(v));
        along.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)))
    };
    let ((left, right), (uphill, _)) = (reach(across), reach(down));
    let offset = wish.offset.to_m();
    let place = |a: f64, up: f64| Point::m(0.0, 0.0) + across * a + down * (uphill - up);
    let level = |a: f64| ground.level_at(place(a, offset)).map(Level::to_m);
    let from_left = match (level(left), level(right)) {
        (Some(l), Some(r)) => l >= r,
        _ => true,
    };
    let (start, sign) = if from_left { (left - PAST, 1.0) } else { (right + PAST, -1.0) };
    let far = right - left + 2.0 * PAST;
    let walls = line_of(wall);
    (0..24).map(|k| offset + 0.25 * f64::from(k)).find_map(|up| {
        let places = graded(ground, place(start, up), across * sign, wish.fall.to_ratio(), far)?;
        let clear = places.iter().all(|(p, _)| gap_to(*p, &walls) >= offset - 1e-6);
        clear.then(|| Line { wish: wish.clone(), down, places })
    })
}

/// Follows the ground so that it falls by `fall`, from `start` on until `far` along `on`. `None` where the ground is
/// not known or turns away.
fn graded(ground: &Tin, start: Point, on: Vector, fall: f64, far: f64) -> Option<Vec<(Point, Level)>> {
    let mut at = start;
    let mut places = vec![(at, ground.level_at(at)?)];
    for _ in 0..4000 {
        if (at - start).dot(on) >= far {
            return Some(places);
        }
        let plane = ground.plane_at(at)?;
        let uphill = Vector::m(plane.a, plane.b);
        let steep = uphill.length();
        let way = if steep > fall {
            let down = uphill * (-1.0 / steep);
            let share = fall / steep;
            let level = down.left() * (1.0 - share * share).sqrt();
            let forward = if level.dot(on) >= 0.0 { level } else { level * -1.0 };
            down * share + forward
        } else {
            on
        };
        if way.dot(on) < 0.2 {
            return None;
        }
        at = at + way * STEP;
        places.push((at, ground.level_at(at)?));
    }
    None
}

/// Digs a swale along its line for a flow.
pub(crate) fn dug(
    line: Line,
    catchment: Catchment,
    arrival: Option<Arrival>,
    flow: Option<(Flow, Trace)>,
) -> (Swale, Vec<Finding>) {
    let wish = line.wish.clone();
    let mut said = vec![];
    let (flow, flow_trace) = flow.map_or((None, None), |(q, t)| (Some(q), Some(t)));
    let water = flow.and_then(|q| channelled(q, wish.bed, wish.side, wish.fall, &wish.lining));
    let depth = wish.freeboard + water.as_ref().map_or(Length::ZERO, |w| w.depth);
    let mut chainages = vec![0.0];
    for w in line.places.windows(2) {
        chainages.push(chainages.last().copied().unwrap_or(0.0) + (w[1].0 - w[0].0).length());
    }
    let base: Vec<(f64, f64)> =
        chainages.iter().zip(&line.places).map(|(c, (_, level))| (*c, (*level - depth).to_m())).collect();
    let grade = grade_line(&base, wish.fall.to_ratio());
    let points: Vec<SwalePoint> = chainages
        .iter()
        .zip(&line.places)
        .map(|(c, (at, ground))| SwalePoint {
            chainage: Length::m(*c),
            at: *at,
            ground: *ground,
            invert: Level::m(along(&grade, *c)),
        })
        .collect();
    let area = |p: &SwalePoint| section_area(wish.bed.to_m(), wish.side, (p.ground - p.invert).to_m());
    let volume: f64 =
        points.windows(2).map(|w| 0.5 * (area(&w[0]) + area(&w[1])) * (w[1].chainage - w[0].chainage).to_m()).sum();
    let most = points.iter().map(|p| p.ground - p.invert).fold(Length::ZERO, Length::max);
    if let Some(w) = water.as_ref().filter(|w| w.utilisation > 1.0) {
        said.push(washed(&wish, w, flow));
    }
    let swale = Swale {
        catchment,
        arrival,
        flow,
        water,
        depth_least: depth,
        depth_most: most,
        width: wish.bed + most * (2.0 * wish.side),
        length: points.last().map_or(Length::ZERO, |p| p.chainage),
        dug: Volume::m3(volume),
        flow_trace,
        points,
        wish,
    };
    (swale, said)
}

fn washed(wish: &SwaleWish, w: &Channelled, flow: Option<Flow>) -> Finding {
    let says = format!(
        "In the swale above {} water runs {} m/s and drags with {} Pa; {} stands {} m/s and {} Pa.",
        wish.above,
        trim(w.velocity_m_per_s, 2),
        trim(w.shear.to_pa(), 1),
        wish.lining.name,
        trim(wish.lining.velocity_m_per_s, 2),
        trim(wish.lining.shear.to_pa(), 1)
    );
    let stands = LININGS.iter().find(|l| {
        let again = flow.and_then(|q| channelled(q, wish.bed, wish.side, wish.fall, l));
        again.is_some_and(|c| c.utilisation <= 1.0)
    });
    let remedy = match stands {
        Some(l) => format!("Line it with {}.", l.name),
        None => "Lay it flatter, or lead the water down in a pipe.".into(),
    };
    let mut f = Finding::new(&LINING_WASHED, Place::on(&wish.above, "swale"), says).with_utilisation(w.utilisation);
    f.trace = w.traces.last().cloned();
    f.with_remedy(Remedy::theirs(remedy))
}
