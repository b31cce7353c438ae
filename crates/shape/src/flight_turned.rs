//! Which steps does a flight take that turns on landings on its way down?
//!
//! It leaves the pad square to its edge and turns by a right angle on square landings whose middles are given. What the
//! goings leave over of a stretch between two landings makes the lower landing deeper, so that all treads are equal.
//! Number of risers and going follow from the ground at the foot without trial, as for a straight flight.

use groundhold_finding::{Finding, Place};
use groundhold_quantity::{Length, Level, Point, Vector};

use crate::barrier::Barrier;
use crate::choose_flight::goings;
use crate::findings::NO_FLIGHT_FITS;
use crate::flight::{fine, head};
use crate::outline::anticlockwise;
use crate::steps::{COMFORT, StepLimitsMm, geometry, rank};
use crate::{Flight, FlightWish, Pad, Tread, Wish};

/// Most risers in the last stretch.
const MOST: usize = 150;
/// A way on that leaves the right angle by more than this is no turn of a flight (cosine of 30°, ours).
const SQUARE: f64 = 0.866;

/// A stretch between two landings, or from the pad to the first one.
struct Leg {
    /// Middle of its upper edge.
    from: Point,
    way: Vector,
    /// To the near edge of the landing below it, metres.
    long: f64,
}

/// Steps that were found.
struct Found {
    fits: bool,
    amount: f64,
    order: (i64, f64),
    in_last: usize,
    going: f64,
    foot: Level,
}

/// Treads of a stretch for a going: how many, and whether a riser stands at its top.
fn treads_in(long: f64, going: f64, first: bool) -> (usize, bool) {
    let treads = ((long + 1e-9) / going).floor() as usize;
    // Landings that all but touch are one landing.
    (treads, first || treads > 0)
}

pub(crate) fn turned(
    w: &FlightWish,
    pads: &[Pad],
    walls: &[(Barrier, f64)],
    wish: &Wish,
    below: &dyn Fn(Point) -> Option<Level>,
    findings: &mut Vec<Finding>,
) -> Result<Flight, String> {
    let first = w.turns.first().copied().unwrap_or(w.bottom);
    let h = head(&FlightWish { bottom: first, ..w.clone() }, pads, walls)?;
    let half = w.width.to_m() / 2.0;
    let side = h.outward.left();
    // The first landing lies square off the edge.
    let top = h.top + side * (first - h.top).dot(side);
    let pad = pads.iter().find(|p| p.id == w.toward).ok_or("there is no pad to lead to")?;
    if ![half, -half].iter().all(|s| pad.finished.contains(h.edge + (top - h.top) + side * *s)) {
        return Err("its first landing does not lie square off the pad's edge with room for its width".into());
    }
    let (legs, last) = legs(w, top, h.outward, half)?;
    let limits = StepLimitsMm::from(&wish.limits.steps);
    let ground = |x: f64| below(last.from + last.way * x.max(0.002));
    let mut best: Option<Found> = None;
    for going in goings(w.going, &limits) {
        let g = going / 1000.0;
        let above: usize = legs
            .iter()
            .enumerate()
            .map(|(i, l)| {
                let (treads, riser) = treads_in(l.long, g, i == 0);
                treads + usize::from(riser)
            })
            .sum();
        for n in 1..=MOST {
            let Some(z) = ground((n - 1) as f64 * g) else { break };
            let rise = (h.level - z).to_mm();
            if rise < 10.0 {
                continue;
            }
            let riser = rise / (above + n) as f64;
            let out = limits.check(riser, going, above + n);
            let order = rank(riser, going);
            let better = best.as_ref().is_none_or(|b| match (out.fits(), b.fits) {
                (true, true) => order.0 < b.order.0 || (order.0 == b.order.0 && order.1 < b.order.1),
                (fits, had) => fits && !had || fits == had && out.amount() < b.amount,
            });
            if better {
                best = Some(Found { fits: out.fits(), amount: out.amount(), order, in_last: n, going: g, foot: z });
            }
        }
    }
    let Found { fits, in_last: n, going: g, foot, .. } =
        best.ok_or("the ground at its foot is nowhere lower than the pad")?;
    let f = build(w, top, h.level, &legs, &last, n, g, foot)?;
    if !fits {
        let says = format!(
            "{}: with its landings where they are no number of equal risers keeps the limits ({}); the nearest is {} of {} with a going of {}, 2R+G {} (comfort {}).",
            w.id,
            wish.limits.steps.source,
            f.risers,
            fine(wish, f.riser),
            wish.units.length(f.going),
            wish.units.length(f.two_r_plus_g),
            wish.units.length(COMFORT),
        );
        findings.push(Finding::new(&NO_FLIGHT_FITS, Place::of(&w.id), says).with_trace(f.trace.clone()));
    }
    Ok(f)
}

/// The stretches down to each landing, and the last one, which ends on the ground.
fn legs(w: &FlightWish, top: Point, outward: Vector, half: f64) -> Result<(Vec<Leg>, Leg), String> {
    let (mut from, mut way) = (top, outward);
    let mut legs = vec![];
    let mut middle = top;
    for (k, t) in w.turns.iter().enumerate() {
        let ahead = (*t - middle).dot(way);
        let long = ahead - half - if k == 0 { 0.0 } else { half };
        if long < -1e-6 {
            return Err(format!(
                "its landing at x {:.2} m, y {:.2} m lies {:.2} m too near to what is above it",
                t.x, t.y, -long
            ));
        }
        legs.push(Leg { from, way, long: long.max(0.0) });
        middle = middle + way * ahead;
        let next = w.turns.get(k + 1).copied().unwrap_or(w.bottom);
        let onward = (next - middle).unit();
        let turn = if onward.dot(way.left()) > 0.0 { way.left() } else { way.left() * -1.0 };
        if onward.dot(turn) < SQUARE {
            return Err(format!(
                "at its landing at x {:.2} m, y {:.2} m it does not turn by a right angle; flights turn by right angles",
                t.x, t.y
            ));
        }
        way = turn;
        from = middle + way * half;
    }
    Ok((legs, Leg { from, way, long: 0.0 }))
}

#[allow(clippy::too_many_arguments)]
fn build(
    w: &FlightWish,
    top: Point,
    top_level: Level,
    legs: &[Leg],
    last: &Leg,
    in_last: usize,
    going: f64,
    foot_level: Level,
) -> Result<Flight, String> {
    let rise = top_level - foot_level;
    let half = w.width.to_m() / 2.0;
    let above: usize = legs
        .iter()
        .enumerate()
        .map(|(i, l)| {
            let (treads, riser) = treads_in(l.long, going, i == 0);
            treads + usize::from(riser)
        })
        .sum();
    let risers = above + in_last;
    let g = geometry(rise, risers, Length::m(going)).map_err(|e| e.to_string())?;
    let rect = |leg: &Leg, a: f64, b: f64| {
        let (p, q, side) = (leg.from + leg.way * a, leg.from + leg.way * b, leg.way.left() * half);
        anticlockwise(vec![p - side, q - side, q + side, p + side])
    };
    let (mut treads, mut nosings, mut landings, mut run) = (vec![], vec![], vec![], 0.0);
    let mut down = 0;
    let level = |down: usize| top_level - g.riser * down as f64;
    for (i, leg) in legs.iter().enumerate() {
        let (count, riser) = treads_in(leg.long, going, i == 0);
        for k in 0..count {
            nosings.push((leg.from + leg.way * (going * k as f64), level(down)));
            down += 1;
            treads.push(Tread { ring: rect(leg, going * k as f64, going * (k + 1) as f64), level: level(down) });
        }
        let start = going * count as f64;
        if riser {
            nosings.push((leg.from + leg.way * start, level(down)));
            down += 1;
        }
        landings.push(treads.len());
        let end = leg.long + 2.0 * half;
        treads.push(Tread { ring: rect(leg, start, end), level: level(down) });
        run += end;
    }
    for k in 0..in_last {
        nosings.push((last.from + last.way * (going * k as f64), level(down)));
        down += 1;
        if k + 1 < in_last {
            treads.push(Tread { ring: rect(last, going * k as f64, going * (k + 1) as f64), level: level(down) });
        }
    }
    let in_last = going * (in_last - 1) as f64;
    Ok(Flight {
        id: w.id.clone(),
        toward: w.toward.clone(),
        top,
        top_level,
        foot: last.from + last.way * in_last,
        foot_level,
        outward: legs.first().map_or(last.way, |l| l.way),
        foot_outward: last.way,
        width: w.width,
        risers,
        riser: g.riser,
        going: Length::m(going),
        run: Length::m(run + in_last),
        rise,
        two_r_plus_g: g.two_r_plus_g,
        pitch: g.pitch,
        landings,
        treads,
        nosings,
        trace: g.trace,
    })
}
