//! Does the wall slide on its base, turn over, or press too hard on the ground?

use groundhold_earth::basis::Margin;
use groundhold_earth::external::{Footing, Push, Stability, Weight, stability};
use groundhold_earth::{Combination, bearing};
use groundhold_quantity::{Length, LineForce, Pressure, math};
use groundhold_working::{Refused, Trace, Unit};

use super::loads::{self, Actions, Spot};
use super::{Body, Gravity};
use crate::loads::is_accident;
use crate::workings::{NET_WEIGHT, UNDRAINED_BASE, net_weight, undrained_base};
use crate::{Check, CheckKind, Line, LoadCase, Strip, WallCase};

/// Ground in front that falls more steeply does not weigh down what is beside the base. Ours.
const NEARLY_LEVEL: f64 = 0.1;

/// How a wall stands on a joint or on its base, with its workings; `None` where nothing pushes it.
pub(crate) fn stands_on(a: &Actions, friction: f64) -> Result<Option<(Stability, Vec<Trace>)>, Refused> {
    stands_with(a, friction, LineForce::ZERO)
}

/// The same with something beside friction that holds it from sliding.
pub(crate) fn stands_with(
    a: &Actions,
    friction: f64,
    held: LineForce,
) -> Result<Option<(Stability, Vec<Trace>)>, Refused> {
    if a.pushes.is_empty() {
        return Ok(None);
    }
    let arms: Vec<(f64, f64)> = a.weights.iter().map(|m| (m.force, (a.front - m.x).max(0.0))).collect();
    let weight = |(force, arm): (f64, f64)| Weight { force: LineForce::kn_per_m(force), arm: Length::m(arm) };
    let mut traces = vec![];
    let weights: Vec<Weight> = match &a.uplift {
        None => arms.iter().copied().map(weight).collect(),
        Some(u) => {
            let at = a.front - u.x;
            let (v, x) = net_weight(&arms, u.force, at);
            let list = |f: fn(&(f64, f64)) -> f64| arms.iter().map(f).collect::<Vec<_>>();
            let given = vec![list(|w| w.0).into(), list(|w| w.1).into(), u.force.into(), at.into()];
            traces.push(Trace::new(&NET_WEIGHT, given));
            if v <= 0.0 {
                return Err(Refused::NoAnswer {
                    working: NET_WEIGHT.name,
                    why: "the wall floats on the water under it".into(),
                });
            }
            vec![weight((v, x.max(0.0)))]
        }
    };
    let push = |(force, height): &(f64, f64)| Push { force: LineForce::kn_per_m(*force), height: Length::m(*height) };
    let pushes: Vec<Push> = a.pushes.iter().map(push).collect();
    let footing = Footing { width: Length::m(a.front - a.back), friction, adhesion: Pressure::ZERO, passive: held };
    let s = stability(&weights, &pushes, &footing)?;
    traces.insert(0, s.trace.clone());
    traces.extend(loads::pressure_trace(a));
    Ok(Some((s, traces)))
}

/// Demand over capacity; nothing asked is nothing used.
pub(crate) fn over(demand: f64, capacity: f64) -> f64 {
    match () {
        () if demand <= 0.0 => 0.0,
        () if capacity <= 0.0 => f64::INFINITY,
        () => demand / capacity,
    }
}

/// One check of a strip.
pub(crate) struct Asked {
    pub kind: CheckKind,
    pub method: &'static str,
    pub demand: f64,
    pub capacity: f64,
    pub unit: Unit,
    pub traces: Vec<Trace>,
}

impl Asked {
    pub fn check(self, on: &str, case: &WallCase, state: LoadCase, basis: &'static str) -> Check {
        Check {
            kind: self.kind,
            on: on.into(),
            case: state,
            method: self.method,
            basis,
            demand: self.demand,
            capacity: self.capacity,
            unit: self.unit,
            utilisation: over(self.demand, self.capacity),
            traces: self.traces,
            governs: crate::loads::governs(case, state),
        }
    }
}

/// Sliding, overturning, resultant and bearing of one strip in one state with one set of factors.
///
/// # Errors
/// As the pressure theory or a working refuses.
pub(crate) fn checks(
    case: &WallCase,
    wall: &dyn Gravity,
    spot: &Spot,
    body: &Body,
    state: LoadCase,
    c: &'static Combination,
) -> Result<Vec<Check>, Refused> {
    let a = loads::actions(case, c, state, spot, body, 0.0, c.permanent_favourable)?;
    let soil = c.soil(&case.founding_soil);
    let friction = math::tan(soil.phi.to_rad() * wall.rubs());
    let key = wall.key(case, c)?;
    let held = key.as_ref().map_or(LineForce::ZERO, |k| k.0);
    let Some((s, mut traces)) = stands_with(&a, friction, held)? else { return Ok(vec![]) };
    traces.extend(key.map(|k| k.1));
    let mut all = vec![
        sliding(case, c, (&s, held), &traces),
        Asked {
            kind: CheckKind::Overturning,
            method: "moments about the toe",
            demand: s.overturning.to_knm(),
            capacity: s.restoring.to_knm() / c.wanted.overturning,
            unit: Unit::KNM,
            traces: traces.clone(),
        },
        Asked {
            kind: CheckKind::Eccentricity,
            method: limit_words(case, state),
            demand: s.eccentricity.to_mm().max(0.0),
            capacity: limit(case, state, Length::m(a.front - a.back)).to_mm(),
            unit: Unit::MM,
            traces: traces.clone(),
        },
    ];
    let ground = Ground { case, strip: &spot.strip, c, width: a.front - a.back, pad: wall.pad() };
    let mut worst = bearing_of(&ground, &s, &traces);
    // A heavier wall is the worse for the ground under it where its own weight is raised like a load.
    if c.permanent > c.permanent_favourable {
        let heavy = loads::actions(case, c, state, spot, body, 0.0, c.permanent)?;
        if let Some((s, traces)) = stands_on(&heavy, friction)? {
            let other = bearing_of(&ground, &s, &traces);
            if over(other.demand, other.capacity) > over(worst.demand, worst.capacity) {
                worst = other;
            }
        }
    }
    all.push(worst);
    Ok(all.into_iter().map(|x| x.check(&spot.strip.on, case, state, c.key)).collect())
}

/// How far from the middle the resultant may come: a sixth of the width in ordinary use with loads as they are, a third
/// with factored loads and in an accident.
pub(crate) fn limit(case: &WallCase, state: LoadCase, width: Length) -> Length {
    match case.basis.margin {
        Margin::GlobalFactors if !is_accident(case, state) && state != LoadCase::Wind => width / 6.0,
        _ => width / 3.0,
    }
}

pub(crate) fn limit_words(case: &WallCase, state: LoadCase) -> &'static str {
    match case.basis.margin {
        Margin::GlobalFactors if !is_accident(case, state) && state != LoadCase::Wind => "middle third",
        _ => "a third of the width, EN 1997-1 6.5.4",
    }
}

/// Sliding: by friction, and on clay also by its undrained strength, whichever holds less.
fn sliding(case: &WallCase, c: &Combination, (s, key): (&Stability, LineForce), traces: &[Trace]) -> Asked {
    let push = s.horizontal.to_kn_per_m();
    let margin = c.wanted.sliding * c.sliding;
    let rubs = Asked {
        kind: CheckKind::Sliding,
        method: if key > LineForce::ZERO { "friction under the base and the key" } else { "friction under the base" },
        demand: push,
        capacity: s.factor_sliding * push / margin,
        unit: Unit::KN_M,
        traces: traces.to_vec(),
    };
    let Some(cu) = case.founding_soil.undrained.map(|cu| c.undrained(cu).to_kpa()) else { return rubs };
    let width = effective(s);
    // On clay the key adds nothing that is counted: its ground softens where it was cut.
    let held = cu * width / margin;
    if rubs.capacity <= held {
        return rubs;
    }
    let given = vec![cu.into(), width.max(0.01).into(), 0.0.into(), push.min(cu * width).into()];
    let trace = Trace::new(&UNDRAINED_BASE, given);
    let traces = std::iter::once(trace).chain(traces.iter().cloned()).collect();
    Asked { method: "undrained strength under the base", capacity: held, traces, ..rubs }
}

/// B − 2|e|, metres.
fn effective(s: &Stability) -> f64 {
    let middle = s.restoring.to_knm() - s.overturning.to_knm();
    let x = middle / s.vertical.to_kn_per_m();
    let half = x + s.eccentricity.to_m();
    (2.0 * half - 2.0 * s.eccentricity.to_m().abs()).max(0.0)
}

/// What the base stands on.
struct Ground<'a> {
    case: &'a WallCase,
    strip: &'a Strip,
    c: &'static Combination,
    width: f64,
    pad: Length,
}

/// Overburden beside the base that can be counted on.
fn overburden(case: &WallCase, strip: &Strip, pad: Length) -> Pressure {
    let places = Line::new(&case.stations).over(strip.chainage.0, strip.chainage.1);
    let falls = places.iter().any(|g| g.slope_front.to_ratio() > NEARLY_LEVEL);
    let depth = if falls { Length::ZERO } else { (strip.front - strip.base + pad).max(Length::ZERO) };
    case.founding_soil.overburden(depth)
}

/// The ground under the base, drained, and on clay undrained too, whichever carries less.
fn bearing_of(ground: &Ground, s: &Stability, traces: &[Trace]) -> Asked {
    let Ground { case, strip, c, width, pad } = *ground;
    let margin = c.wanted.bearing * c.bearing;
    let v = s.vertical.to_kn_per_m();
    let pressed = effective(s).min(width);
    let b = pressed + pad.to_m();
    let q = overburden(case, strip, pad);
    let soil = c.soil(&case.founding_soil);
    let asked = |method, capacity: f64, trace: Option<Trace>| Asked {
        kind: CheckKind::Bearing,
        method,
        demand: v,
        capacity: capacity / margin,
        unit: Unit::KN_M,
        traces: trace.into_iter().chain(traces.iter().cloned()).collect(),
    };
    if pressed < 0.01 {
        return asked("the resultant leaves the base", 0.0, None);
    }
    let drained = match bearing::strip(&soil, Length::m(b), q, s.vertical, s.horizontal) {
        Ok((r, trace)) => asked("EN 1997-1 Annex D.4, drained", r.to_kn_per_m(), Some(trace)),
        Err(_) => asked("it slides before it sinks", 0.0, None),
    };
    let Some(cu) = case.founding_soil.undrained.map(|cu| c.undrained(cu).to_kpa()) else { return drained };
    let h = s.horizontal.to_kn_per_m();
    let undrained = if h > cu * b {
        asked("it slides before it sinks", 0.0, None)
    } else {
        let (_, r, _) = undrained_base(cu, b, q.to_kpa(), h);
        let given = vec![cu.into(), b.into(), q.to_kpa().into(), h.into()];
        asked("EN 1997-1 Annex D.3, undrained", r, Some(Trace::new(&UNDRAINED_BASE, given)))
    };
    if undrained.capacity < drained.capacity { undrained } else { drained }
}
