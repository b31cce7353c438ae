//! Where does a flight start and end, and which steps does it take?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, Units, Vector, distance, segments_cross, trim};
use groundhold_surface::{Facet, Plane};

use crate::barrier::Barrier;
use crate::choose_flight::{Steps, choose_steps, nearest_pad_move};
use crate::findings::{
    BOTTOM_RISER_UNEQUAL, FLIGHT_BETTER_SPLIT, FLIGHT_CANNOT_BE_SHAPED, NO_FLIGHT_FITS, RISER_OUT_OF_LIMITS,
    SINGLE_STEP,
};
use crate::flight_turned::turned;
use crate::outline::{anticlockwise, outward};
use crate::ramp::pad_level;
use crate::reach::ALONG;
use crate::steps::{StepLimitsMm, choose, geometry, split};
use crate::{Flight, FlightWish, Pad, Tread, Wish};

/// Longest landing inside a split flight (ours).
const LANDING_MOST: Length = Length::mm(2500.0);
/// Risers may differ by this and feel the same (common practice, no source).
const EQUAL: Length = Length::mm(5.0);

/// A flight whose risers leave their limits by more than this share is not drawn (ours).
const FAR_OUT: f64 = 0.25;

/// Where a flight meets its pad.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Head {
    pub top: Point,
    /// On the pad's edge, square behind `top`.
    pub edge: Point,
    pub outward: Vector,
    pub level: Level,
}

/// Shapes a flight; `below` gives the ground at its foot.
pub(crate) fn flight(
    w: &FlightWish,
    pads: &[Pad],
    walls: &[(Barrier, f64)],
    wish: &Wish,
    below: &dyn Fn(Point) -> Option<Level>,
    findings: &mut Vec<Finding>,
) -> Option<Flight> {
    let shaped = if w.turns.is_empty() {
        head(w, pads, walls).and_then(|h| step_down(w, &h, wish, below, findings))
    } else {
        turned(w, pads, walls, wish, below, findings)
    };
    match shaped {
        Ok(f) => {
            across_the_foot(&f, wish, below, findings);
            Some(f)
        }
        Err(why) => {
            findings.push(Finding::new(&FLIGHT_CANNOT_BE_SHAPED, Place::of(&w.id), format!("{}: {why}.", w.id)));
            None
        }
    }
}

/// Where a flight leaves its pad.
pub(crate) fn leaves(w: &FlightWish, pads: &[Pad], walls: &[(Barrier, f64)]) -> Result<Head, String> {
    match w.turns.first() {
        Some(first) => head(&FlightWish { bottom: *first, ..w.clone() }, pads, walls),
        None => head(w, pads, walls),
    }
}

/// Where the line from `bottom` to the middle of the pad crosses the pad's edge, moved along it so that the whole width
/// has room, and out to the face of a wall that runs along there.
pub(crate) fn head(w: &FlightWish, pads: &[Pad], walls: &[(Barrier, f64)]) -> Result<Head, String> {
    let pad = pads.iter().find(|p| p.id == w.toward).ok_or(format!("there is no pad {} to lead to", w.toward))?;
    let width = w.width.to_m();
    if !(0.1..=50.0).contains(&width) {
        return Err(format!("its width is {width:.3} m, expected 0.1 m to 50 m"));
    }
    if !(w.bottom.x.is_finite() && w.bottom.y.is_finite()) {
        return Err("its bottom is not an ordinary position".into());
    }
    let ring = pad.finished.corners();
    if pad.finished.contains(w.bottom) {
        return Err(format!("its bottom lies on {}; expected a point beside it", pad.id));
    }
    let middle = pad.finished.centroid();
    let side = |i: usize| (ring[i], ring[(i + 1) % ring.len()]);
    let hair = (middle - w.bottom).unit().left() * 1e-7;
    let crossing = |shift: Vector| {
        (0..ring.len())
            .filter_map(|i| {
                let (a, b) = side(i);
                segments_cross(w.bottom + shift, middle + shift, a, b).map(|(t, u)| (t, u, i))
            })
            .reduce(|x, y| if y.0 < x.0 { y } else { x })
    };
    let (_, along, i) = crossing(Vector::m(0.0, 0.0))
        .or_else(|| crossing(hair))
        .ok_or(format!("the line from its bottom to the middle of {} does not cross its edge", pad.id))?;
    let (a, b) = side(i);
    let long = distance(a, b).to_m();
    let room = width / 2.0;
    let s = if long > width { (along * long).clamp(room, long - room) } else { long / 2.0 };
    let (u, out) = ((b - a).unit(), outward(a, b));
    let edge = a + u * s;
    let face = walls
        .iter()
        .filter_map(|(w, half)| {
            let (p, q) = (edge - out * 0.01, edge + out * ALONG);
            let (t, _) = segments_cross(p, q, w.a, w.b)?;
            Some(t * (q - p).length() - 0.01 + half)
        })
        .fold(0.0, f64::max);
    Ok(Head { top: edge + out * face, edge, outward: out, level: pad.plane.level_at(edge) })
}

fn step_down(
    w: &FlightWish,
    h: &Head,
    wish: &Wish,
    below: &dyn Fn(Point) -> Option<Level>,
    findings: &mut Vec<Finding>,
) -> Result<Flight, String> {
    if let Some(g) = w.going
        && !(Length::mm(100.0) <= g && g <= Length::m(3.0))
    {
        return Err(format!("its going is {:.0} mm, expected 100 mm to 3000 mm", g.to_mm()));
    }
    let out = |x: f64| h.top + h.outward * x.max(0.002);
    let ground = |x: f64| below(out(x));
    let limits = &wish.limits.steps;
    let way = (w.bottom - h.top).dot(h.outward);
    let whole = if way > 0.2 { ground(way).map(|z| (h.level - z, way)) } else { None };
    let found = choose_steps(h.level, &ground, w.going, limits);
    if let Some(s) = found.as_ref().filter(|s| s.out.fits()) {
        let f = lay(w, h, s)?;
        single_step(&f, wish, findings);
        if let Some((rise, way)) = whole {
            propose_split(&f, rise, way, wish, findings);
        }
        return Ok(f);
    }
    if let Some(f) = whole.and_then(|(rise, way)| lay_split(w, h, rise, Length::m(way), wish, findings)) {
        return Ok(f);
    }
    let s = found.ok_or("the ground below is nowhere lower than the pad where its steps would come down")?;
    let f = lay(w, h, &s)?;
    findings.push(no_fit(w, h, &f, wish, &ground));
    let (least, most) = limits.riser;
    if !(least * (1.0 - FAR_OUT) <= f.riser && f.riser <= most * (1.0 + FAR_OUT)) {
        return Err(format!("risers of {} are too far from the limits to be drawn", fine(wish, f.riser)));
    }
    if s.out.riser_mm != 0.0 {
        findings.push(riser_out(&f, wish));
    }
    single_step(&f, wish, findings);
    Ok(f)
}

/// The flight of the steps that were found.
fn lay(w: &FlightWish, h: &Head, s: &Steps) -> Result<Flight, String> {
    let going = s.going.to_m();
    let depths = vec![going; s.risers - 1];
    build(w, h, s.foot_level, s.risers, s.going, &depths)
}

/// A flight from its top down, with the depth of each tread in metres.
fn build(
    w: &FlightWish,
    h: &Head,
    foot_level: Level,
    risers: usize,
    going: Length,
    depths: &[f64],
) -> Result<Flight, String> {
    let rise = h.level - foot_level;
    let g = geometry(rise, risers, going).map_err(|e| e.to_string())?;
    let half = h.outward.left() * (w.width.to_m() / 2.0);
    let mut x = 0.0;
    let mut treads = vec![];
    let mut nosings = vec![(h.top, h.level)];
    for (k, depth) in depths.iter().enumerate() {
        let (a, b) = (h.top + h.outward * x, h.top + h.outward * (x + depth));
        let level = h.level - g.riser * (k + 1) as f64;
        treads.push(Tread { ring: anticlockwise(vec![a - half, b - half, b + half, a + half]), level });
        nosings.push((b, level));
        x += depth;
    }
    Ok(Flight {
        id: w.id.clone(),
        toward: w.toward.clone(),
        top: h.top,
        top_level: h.level,
        foot: h.top + h.outward * x,
        foot_level,
        outward: h.outward,
        foot_outward: h.outward,
        width: w.width,
        risers,
        riser: g.riser,
        going,
        run: Length::m(x),
        rise,
        two_r_plus_g: g.two_r_plus_g,
        pitch: g.pitch,
        landings: depths.iter().enumerate().filter(|(_, d)| **d > going.to_m() + 1e-6).map(|(i, _)| i).collect(),
        treads,
        nosings,
        trace: g.trace,
    })
}

/// Where one flight does not fit the ground: flights with landings all the way to the bottom that was named.
fn lay_split(
    w: &FlightWish,
    h: &Head,
    rise: Length,
    way: Length,
    wish: &Wish,
    findings: &mut Vec<Finding>,
) -> Option<Flight> {
    let limits = &wish.limits.steps;
    let (risers, going) = match w.going {
        None => choose(rise, Some(way), limits).ok().map(|c| (c.risers, c.going))?,
        Some(g) => {
            let mm = StepLimitsMm::from(limits);
            let fits = |n: usize| mm.check(rise.to_mm() / n as f64, g.to_mm(), n).fits();
            let most = (way / g) as usize + 1;
            let key = |n: &usize| (rise.to_mm() / *n as f64 - crate::steps::COMFORT_RISER.to_mm()).abs();
            let n = (1..=most.min(500)).filter(|n| fits(*n)).min_by(|a, b| key(a).total_cmp(&key(b)))?;
            (n, g)
        }
    };
    let s = split(rise, way, risers, going, LANDING_MOST).ok().filter(|s| s.flights.len() > 1)?;
    let mut depths = vec![];
    for (k, n) in s.flights.iter().rev().enumerate() {
        if k > 0 {
            depths.push(s.landing.to_m());
        }
        depths.extend(std::iter::repeat_n(going.to_m(), n - 1));
    }
    let f = build(w, h, h.level - rise, risers, going, &depths).ok()?;
    findings.push(
        Finding::new(&FLIGHT_BETTER_SPLIT, Place::of(&w.id), split_words(&f.id, rise, way, &s, wish, "is built as"))
            .with_trace(s.trace),
    );
    Some(f)
}

fn split_words(id: &str, rise: Length, way: Length, s: &crate::steps::Split, wish: &Wish, verb: &str) -> String {
    let u = wish.units;
    let parts: Vec<String> = s.flights.iter().map(usize::to_string).collect();
    format!(
        "{id}: {} over {} is gentler than one flight; {} each spread evenly would make 2R+G {}. It {verb} {} risers of {} with a going of {} and landings of {} between.",
        u.length(rise),
        u.run(way),
        u.length(s.even_going),
        u.length(s.even_two_r_plus_g),
        parts.join(" + "),
        fine(wish, s.riser),
        u.length(s.going),
        u.length(s.landing)
    )
}

/// Proposes flights with landings where the named bottom lies far beyond the foot and lower.
fn propose_split(f: &Flight, rise: Length, way: f64, wish: &Wish, findings: &mut Vec<Finding>) {
    if way < f.run.to_m() + 1.5 || rise < f.rise + wish.limits.steps.riser.0 {
        return;
    }
    let way = Length::m(way);
    let Ok(c) = choose(rise, Some(way), &wish.limits.steps) else { return };
    let Ok(s) = split(rise, way, c.risers, c.going, LANDING_MOST) else { return };
    if s.flights.len() < 2 {
        return;
    }
    let words = split_words(&f.id, rise, way, &s, wish, "could be");
    findings.push(Finding::new(&FLIGHT_BETTER_SPLIT, Place::of(&f.id), words).with_trace(s.trace));
}

/// A riser to the tenth of a millimetre, or to the eighth of an inch.
pub(crate) fn fine(wish: &Wish, l: Length) -> String {
    match wish.units {
        Units::Metric => format!("{} mm", trim(l.to_mm(), 1)),
        Units::Feet => wish.units.length(l),
    }
}

fn single_step(f: &Flight, wish: &Wish, findings: &mut Vec<Finding>) {
    if f.risers == 1 {
        let says = format!("{} is a single step of {}.", f.id, fine(wish, f.riser));
        findings.push(Finding::new(&SINGLE_STEP, Place::of(&f.id), says).with_trace(f.trace.clone()));
    }
}

fn riser_out(f: &Flight, wish: &Wish) -> Finding {
    let l = &wish.limits.steps;
    let says = format!(
        "{} has risers of {}, expected {} to {} ({}).",
        f.id,
        fine(wish, f.riser),
        fine(wish, l.riser.0),
        fine(wish, l.riser.1),
        l.source
    );
    let used = if f.riser > l.riser.1 { f.riser / l.riser.1 } else { l.riser.0 / f.riser };
    Finding::new(&RISER_OUT_OF_LIMITS, Place::of(&f.id), says).with_utilisation(used).with_trace(f.trace.clone())
}

/// No flight fits: says the nearest, and what would make one fit.
fn no_fit(w: &FlightWish, h: &Head, f: &Flight, wish: &Wish, ground: &dyn Fn(f64) -> Option<Level>) -> Finding {
    let limits = &wish.limits.steps;
    let says = format!(
        "{}: no number of equal risers keeps the limits ({}); the nearest is {} of {} with a going of {}, 2R+G {}, pitch {:.1}°.",
        w.id,
        limits.source,
        f.risers,
        fine(wish, f.riser),
        wish.units.length(f.going),
        wish.units.length(f.two_r_plus_g),
        f.pitch.to_deg()
    );
    let mut finding = Finding::new(&NO_FLIGHT_FITS, Place::of(&w.id), says).with_trace(f.trace.clone());
    if w.going.is_some()
        && let Some(free) = choose_steps(h.level, ground, None, limits).filter(|s| s.out.fits())
    {
        let mm = format!("{:.0} mm", free.going.to_mm());
        finding = finding.with_remedy(Remedy::ours(
            format!(
                "A going of {}: {} risers of {}.",
                wish.units.length(free.going),
                free.risers,
                fine(wish, free.riser)
            ),
            vec![Adjust { element: w.id.clone(), field: "going".into(), value: mm }],
        ));
    }
    if let Some((by, n)) = nearest_pad_move(h.level, ground, w.going, limits) {
        let way = if by.to_m() < 0.0 { "lower" } else { "higher" };
        finding = finding.with_remedy(Remedy::ours(
            format!("{} {} {way}: {n} risers fit then.", w.toward, wish.units.length(by.abs())),
            vec![Adjust {
                element: w.toward.clone(),
                field: "level".into(),
                value: format!("{:.3} m", pad_level(wish, &w.toward, by)),
            }],
        ));
    }
    finding
}

/// Says where the ground at the foot is not level across the flight.
fn across_the_foot(f: &Flight, wish: &Wish, below: &dyn Fn(Point) -> Option<Level>, findings: &mut Vec<Finding>) {
    let half = f.foot_outward.left() * (f.width.to_m() / 2.0);
    let foot = f.foot + f.foot_outward * 0.002;
    let (Some(a), Some(b)) = (below(foot + half), below(foot - half)) else { return };
    let worst = (a - f.foot_level).abs().max((b - f.foot_level).abs());
    if worst <= EQUAL {
        return;
    }
    let u = wish.units;
    let says = format!(
        "{}: the ground at its foot differs by {} across its width of {}; the bottom riser would be {} to {} high. Make the ground level across the foot.",
        f.id,
        u.length((a - b).abs()),
        u.length(f.width),
        u.length(f.riser - worst),
        u.length(f.riser + worst),
    );
    findings.push(
        Finding::new(&BOTTOM_RISER_UNEQUAL, Place::on(&f.id, "bottom riser"), says).with_utilisation(worst / EQUAL),
    );
}

/// The treads as pieces of ground.
pub(crate) fn facets(f: &Flight) -> impl Iterator<Item = Facet> {
    f.treads.iter().map(|t| Facet { ring: t.ring.clone(), plane: Plane::level(t.level) })
}

/// The bottom riser as a segment that no batter passes.
pub(crate) fn foot_line(f: &Flight) -> Barrier {
    let half = f.foot_outward.left() * (f.width.to_m() / 2.0);
    Barrier { a: f.foot - half, b: f.foot + half, of: crate::barrier::Of::Foot }
}
