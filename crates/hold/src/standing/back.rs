//! For each cause: what would have to be true, can it be, and do the signs speak for it?

use groundhold_earth::{settlement, soil::Kind};
use groundhold_member::embed::{self, Case, Ground, Method};
use groundhold_member::timber::{Climate, Durability, rot_of};
use groundhold_quantity::{Angle, Force, Length, LineForce, Pressure, Slope, math, trim};
use groundhold_working::{Trace, Value};

use super::bracket::{Crossing, crossing};
use super::signs::{SIGNS, Sign, SignRow, signs_of};
use super::weight::stand;
use super::{
    AboveIt, AsFound, BY_WEIGHT, ByWeight, Cause, Made, PUSH_AS_FOUND, PUSH_IN_CLAY, PostsFound, PushAsFound,
    SECTION_LEFT, Seen, Stands, push_as_found, push_in_clay, section_left,
};

/// What a cause needs to bring the wall to its limit.
#[derive(Debug, Clone, PartialEq)]
pub enum Need {
    /// This value: m, kPa or degrees.
    At(f64),
    /// Nothing of it: by these figures the wall is at its limit without it.
    Already,
    /// More than can be tried; this is the most.
    Beyond(f64),
    /// It cannot be solved before somebody measures this.
    Measure(&'static str),
}

/// How a cause comes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It can be, and the signs speak for it.
    Fits,
    /// It can be; the signs are silent.
    MayBe,
    /// Something must be measured first.
    Open,
    /// It cannot be by itself, or the signs speak against it.
    DoesNotFit,
}

impl Verdict {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Verdict::Fits => "fits",
            Verdict::MayBe => "may be",
            Verdict::Open => "measure first",
            Verdict::DoesNotFit => "does not fit by itself",
        }
    }
}

/// One cause, solved and weighed.
#[derive(Debug, Clone, PartialEq)]
pub struct Hypothesis {
    /// Which.
    pub cause: Cause,
    /// What it needs.
    pub need: Need,
    /// The same in a sentence.
    pub needs: String,
    /// What was seen, or can be at most.
    pub seen: String,
    /// Whether what it needs is within that; `None` where nobody looked.
    pub within: Option<bool>,
    /// Signs that speak for it or against it.
    pub signs: Vec<SignRow>,
    /// How it comes out.
    pub verdict: Verdict,
    /// Workings at the value that it needs.
    pub traces: Vec<Trace>,
}

impl Hypothesis {
    /// Signs for, less signs against.
    pub fn score(&self) -> i32 {
        self.signs.iter().map(|r| i32::from(r.weight)).sum()
    }
}

/// What came of a standing wall.
#[derive(Debug, Clone, PartialEq)]
pub struct BackAnalysis {
    /// Factor as found, dry, with what was seen; `None` where too little was measured.
    pub factor: Option<f64>,
    /// Factor with water to the ground behind.
    pub factor_wet: Option<f64>,
    /// Signs seen.
    pub signs: Vec<Sign>,
    /// Every cause that this wall can have, the likeliest first.
    pub hypotheses: Vec<Hypothesis>,
    /// Workings of the two factors.
    pub traces: Vec<Trace>,
}

/// What is asked of the wall: m, kPa, degrees.
#[derive(Debug, Clone, Copy)]
struct State {
    water: f64,
    q: f64,
    dug: f64,
    phi: f64,
    size: f64,
    cu: Option<f64>,
}

/// Most load that is tried.
const MOST_LOAD: f64 = 200.0;
/// Weakest soil that is tried, degrees.
const WEAKEST: f64 = 5.0;
/// Bending strength of a post in wet ground over years: C16, EN 338, times k_mod 0.50, EN 1995-1-1 Table 3.1 (from memory).
const STRENGTH: f64 = 16.0 * 0.5;
/// Service life taken for treated timber of which nothing is known. Common practice, no source.
const LIFE_YEARS: f64 = 15.0;
/// How much friction softening can take. Common practice, no source.
const SOFTENS_BY: f64 = 5.0;
/// Loads that come with what stands above, kPa. Common practice, no source.
const PEOPLE: f64 = 2.0;
const VEHICLE: f64 = 10.0;

/// Solves and weighs every cause. Pure; where too little was measured it says what to measure.
pub fn back_analysed(wall: &AsFound) -> BackAnalysis {
    let signs = signs_of(wall);
    let base = as_found(wall);
    let whole = total(wall);
    let mut traces = vec![];
    let mut factor_at = |s: &State| {
        let f = factor(wall, s).filter(|f| f.is_finite());
        if f.is_some() {
            traces.extend(traces_at(wall, s));
        }
        f
    };
    let dry = base.as_ref().and_then(&mut factor_at);
    let wet = base.as_ref().and_then(|b| factor_at(&State { water: whole, ..*b }));
    let causes = Cause::ALL.into_iter().filter(|c| *c != Cause::Rot || wall.seen.made.is_timber());
    let mut hypotheses: Vec<Hypothesis> = causes.map(|c| hypothesis(wall, base.as_ref(), c, &signs)).collect();
    // A stable sort keeps the order of the causes within one verdict and one score.
    hypotheses.sort_by_key(|h| (h.verdict, -h.score()));
    BackAnalysis { factor: dry, factor_wet: wet, signs, hypotheses, traces }
}

fn total(wall: &AsFound) -> f64 {
    let below = if wall.seen.posts.is_some() { Length::ZERO } else { wall.seen.below.unwrap_or(Length::ZERO) };
    (wall.seen.height + below).to_m()
}

/// The state as found and dry; `None` where the size is not known.
fn as_found(wall: &AsFound) -> Option<State> {
    let size = if wall.seen.posts.is_some() { wall.seen.below? } else { wall.seen.thickness? };
    Some(State {
        water: 0.0,
        q: wall.seen.load.map_or(0.0, |q| q.to_kpa()),
        dug: wall.seen.dug.map_or(0.0, |d| d.to_m()),
        phi: wall.soil.phi.to_deg(),
        size: size.to_m(),
        cu: None,
    })
}

/// Factor of a state: the least of overturning and sliding, or what the ground takes over the push on a post.
fn factor(wall: &AsFound, s: &State) -> Option<f64> {
    match wall.seen.posts {
        Some(p) => {
            let (case, depth) = post_case(wall, s, &p)?;
            let taken = embed::push_taken(&case, method(&case), depth).ok()?;
            Some(taken / case.force)
        }
        None => stands(wall, s).map(|g| g.overturn.min(g.slide)),
    }
}

fn body(wall: &AsFound, s: &State) -> ByWeight<f64> {
    let soil = &wall.soil;
    ByWeight {
        height: wall.seen.height.to_m(),
        below: wall.seen.below.unwrap_or(Length::ZERO).to_m(),
        dug: s.dug,
        width: s.size,
        lean: wall.seen.lean.to_m(),
        body: wall.seen.made.unit_weight().to_kn_per_m3(),
        gamma: soil.unit_weight.to_kn_per_m3(),
        gamma_sat: soil.unit_weight_saturated.to_kn_per_m3(),
        phi: s.phi.to_radians(),
        q: s.q,
        water: s.water,
        mu: friction(s.phi),
    }
}

/// Friction under a base: two thirds of the soil's own angle, as for wall friction (EN 1997-1:2004 9.5.1(6), from memory).
fn friction(phi_deg: f64) -> f64 {
    math::tan(phi_deg.to_radians() * groundhold_earth::soil::WALL_FRICTION_SHARE)
}

fn stands(wall: &AsFound, s: &State) -> Option<Stands<f64>> {
    let b = body(wall, s);
    let height = b.height + b.below;
    let (p, m) = pushed(wall, s, height);
    if p <= 0.0 {
        return None;
    }
    let mut g = stand(&b, height, p, m);
    if let Some(cu) = s.cu {
        g.slide = cu * b.width / p;
    }
    Some(g)
}

fn pushed(wall: &AsFound, s: &State, height: f64) -> (f64, f64) {
    let gamma = wall.soil.unit_weight.to_kn_per_m3();
    match s.cu {
        Some(cu) => push_in_clay(height, gamma, cu, s.q),
        None => push_as_found(&PushAsFound {
            height,
            gamma,
            gamma_sat: wall.soil.unit_weight_saturated.to_kn_per_m3(),
            phi: s.phi.to_radians(),
            q: s.q,
            water: s.water,
        }),
    }
}

fn post_case(wall: &AsFound, s: &State, p: &PostsFound) -> Option<(Case, Length)> {
    let (push, moment) = pushed(wall, s, wall.seen.height.to_m() + s.dug);
    let depth = s.size - s.dug;
    if push <= 0.0 || depth <= 0.0 {
        return None;
    }
    let soil = &wall.soil;
    let unit_weight = soil.unit_weight;
    let phi = Angle::deg(s.phi);
    let ground = match (s.cu, soil.kind) {
        (Some(cu), _) => Ground::Clay { strength: Pressure::kpa(cu), unit_weight },
        (None, Kind::Coarse) => Ground::Sand { phi, unit_weight },
        (None, Kind::Fine) => Ground::Mixed { phi, cohesion: soil.cohesion, unit_weight },
    };
    let case = Case {
        force: Force::kn(push * p.spacing.to_m()),
        arm: Length::m(moment / push),
        width: p.hole,
        ground,
        presumptive: None,
        may_move: false,
        held_at_ground: false,
        neglected: Length::ZERO,
        front_fall: Slope::LEVEL,
        spacing: None,
        retained: None,
        factor: 1.0,
    };
    Some((case, Length::m(depth)))
}

fn method(case: &Case) -> Method {
    match case.ground {
        Ground::Sand { .. } => Method::BromsSand,
        Ground::Clay { .. } => Method::BromsClay,
        Ground::Mixed { .. } => Method::BrinchHansen,
    }
}

fn traces_at(wall: &AsFound, s: &State) -> Vec<Trace> {
    let height = wall.seen.height.to_m();
    let gamma = wall.soil.unit_weight.to_kn_per_m3();
    let sat = wall.soil.unit_weight_saturated.to_kn_per_m3();
    let one = |v: &[f64]| v.iter().map(|v| Value::One(*v)).collect::<Vec<_>>();
    match (wall.seen.posts, s.cu) {
        (None, None) => {
            let b = body(wall, s);
            let given = [b.height, b.below, b.dug, b.width, b.lean, b.body, gamma, sat, s.phi, s.q, s.water, b.mu];
            vec![Trace::new(&BY_WEIGHT, one(&given))]
        }
        (None, Some(cu)) => vec![Trace::new(&PUSH_IN_CLAY, one(&[total(wall), gamma, cu, s.q]))],
        (Some(p), cu) => {
            let push = match cu {
                Some(cu) => Trace::new(&PUSH_IN_CLAY, one(&[height + s.dug, gamma, cu, s.q])),
                None => Trace::new(&PUSH_AS_FOUND, one(&[height + s.dug, gamma, sat, s.phi, s.q, s.water])),
            };
            let held = post_case(wall, s, &p).and_then(|(c, d)| embed::resistance(&c, method(&c), d).ok());
            std::iter::once(push).chain(held.map(|r| r.trace)).collect()
        }
    }
}

/// A value of one cause put into the state.
fn with(base: &State, cause: Cause, x: f64) -> State {
    match cause {
        Cause::Water => State { water: x, ..*base },
        Cause::Load => State { q: x, ..*base },
        Cause::ToeDug => State { dug: x, ..*base },
        Cause::TooSmall => State { size: x, ..*base },
        Cause::Softened => State { phi: x, ..*base },
        Cause::Rot => *base,
    }
}

/// From where to where a cause is tried: the wall falls from the first to the second.
fn span(wall: &AsFound, base: &State, cause: Cause) -> (f64, f64) {
    let most_size = if wall.seen.posts.is_some() { 3.0 } else { 3.0 * total(wall) };
    match cause {
        Cause::Water => (0.0, total(wall)),
        Cause::Load => (0.0, MOST_LOAD),
        Cause::ToeDug => (0.0, wall.seen.below.map_or(0.0, |b| b.to_m() * 0.999)),
        Cause::TooSmall => (most_size, 0.03 + base.dug),
        Cause::Softened => (base.phi, WEAKEST.min(base.phi)),
        Cause::Rot => (0.0, 0.0),
    }
}

fn solved(wall: &AsFound, base: &State, cause: Cause) -> Need {
    if cause == Cause::Rot {
        return rot_needed(wall, base);
    }
    let (from, to) = span(wall, base, cause);
    let at = |share: f64| from + (to - from) * share;
    if factor(wall, &with(base, cause, from)).is_none() {
        return Need::Measure("more of it: with what is known the formulas give no figure");
    }
    // A state that the formulas refuse at the far end has given way: nothing is left in the ground.
    let f = |share: f64| factor(wall, &with(base, cause, at(share))).map_or(-1.0, |f| f - 1.0);
    match crossing(0.0, 1.0, f) {
        Crossing::At(share) => Need::At(at(share)),
        Crossing::Before => Need::Already,
        Crossing::After => Need::Beyond(to),
    }
}

fn moment_at_ground(wall: &AsFound, base: &State, p: &PostsFound) -> f64 {
    pushed(wall, base, wall.seen.height.to_m() + base.dug).1 * p.spacing.to_m()
}

fn rot_needed(wall: &AsFound, base: &State) -> Need {
    let Some(p) = wall.seen.posts else { return Need::Measure("how deep a blade goes into each timber") };
    let moment = moment_at_ground(wall, base, &p);
    let half = p.breadth.min(p.depth).to_mm() / 2.0;
    let f = |loss: f64| section_left(moment, p.breadth.to_mm(), p.depth.to_mm(), loss, STRENGTH) - 1.0;
    match crossing(0.0, half, f) {
        Crossing::At(loss) => Need::At(loss / 1000.0),
        Crossing::Before => Need::Already,
        Crossing::After => Need::Beyond(half / 1000.0),
    }
}

/// The state without the cause: as it was built, as far as this cause goes.
fn before(base: &State, cause: Cause) -> State {
    match cause {
        Cause::Load => State { q: 0.0, ..*base },
        Cause::ToeDug => State { dug: 0.0, ..*base },
        _ => *base,
    }
}

fn hypothesis(wall: &AsFound, base: Option<&State>, cause: Cause, signs: &[Sign]) -> Hypothesis {
    let rows: Vec<SignRow> = SIGNS.iter().filter(|r| r.cause == cause && signs.contains(&r.sign)).copied().collect();
    let score: i32 = rows.iter().map(|r| i32::from(r.weight)).sum();
    // Without its size the wall can still be asked which size would be its limit.
    let sized = base.copied().or_else(|| {
        let unsized_ = AsFound {
            seen: Seen {
                below: wall.seen.below.or(Some(Length::ZERO)),
                thickness: Some(Length::m(1.0)),
                ..wall.seen.clone()
            },
            ..wall.clone()
        };
        as_found(&unsized_).filter(|_| cause == Cause::TooSmall)
    });
    let state = sized.map(|b| before(&b, cause));
    let missing = if wall.seen.posts.is_some() {
        "how deep a post stands, with a probe beside it"
    } else {
        "how thick it is, at an end or through a hole"
    };
    let need = match &state {
        Some(_) if cause == Cause::ToeDug && wall.seen.below.is_none() => {
            Need::Measure("how deep its foot stands, in a small pit beside its end")
        }
        Some(s) => solved(wall, s, cause),
        None => Need::Measure(missing),
    };
    let mut traces = vec![];
    if let (Some(s), Need::At(x)) = (&state, &need) {
        traces = if cause == Cause::Rot { rot_traces(wall, s, *x) } else { traces_at(wall, &with(s, cause, *x)) };
    }
    let (seen, within) = seen(wall, base, cause, &need);
    let needs = needs(wall, state.as_ref(), cause, &need);
    let verdict = verdict(&need, within, score);
    Hypothesis { cause, need, needs, seen, within, signs: rows, verdict, traces }
}

fn verdict(need: &Need, within: Option<bool>, score: i32) -> Verdict {
    match (need, within) {
        _ if score < 0 => Verdict::DoesNotFit,
        (Need::Beyond(_), _) | (Need::At(_), Some(false)) => Verdict::DoesNotFit,
        (Need::Measure(_), _) => Verdict::Open,
        (Need::At(_), Some(true)) if score > 0 => Verdict::Fits,
        // The figures alone do not need it: only signs can speak for it.
        (Need::Already, _) if score == 0 => Verdict::DoesNotFit,
        _ => Verdict::MayBe,
    }
}

fn rot_traces(wall: &AsFound, base: &State, loss_m: f64) -> Vec<Trace> {
    let Some(p) = wall.seen.posts else { return vec![] };
    let given = [moment_at_ground(wall, base, &p), p.breadth.to_mm(), p.depth.to_mm(), loss_m * 1000.0, STRENGTH];
    let left = Trace::new(&SECTION_LEFT, given.map(Value::One).into());
    std::iter::once(left).chain(rot_years(loss_m).map(|(_, t)| t)).collect()
}

/// Years until so much is lost, of treated timber of which nothing is known.
fn rot_years(loss_m: f64) -> Option<(f64, Trace)> {
    let (rate, lag, trace) = rot_of(Durability::Treated { life_years: LIFE_YEARS }, Climate::Temperate).ok()?;
    Some((lag + loss_m / rate.to_m(), trace))
}

/// What it needs, in a sentence.
fn needs(wall: &AsFound, base: Option<&State>, cause: Cause, need: &Need) -> String {
    let u = wall.units;
    let x = match need {
        Need::Already if cause == Cause::Softened && !clay_words(wall, base).is_empty() => {
            return format!("Drained it is at its limit already{}.", clay_words(wall, base));
        }
        Need::Already => {
            return "By these figures it is at its limit without it: the ground is stronger than its class.".into();
        }
        Need::Measure(what) => return format!("Measure first: {what}."),
        Need::Beyond(most) => {
            return match cause {
                Cause::TooSmall => "It would stand however small it is.".into(),
                Cause::Load => format!("More than {}.", u.pressure(Pressure::kpa(*most))),
                Cause::Softened => format!("Friction below {}°.", trim(*most, 0)),
                Cause::Water => "More than water to the ground behind.".into(),
                Cause::ToeDug => "More than all the ground in front.".into(),
                Cause::Rot => "More than all of the section.".into(),
            };
        }
        Need::At(x) => *x,
    };
    let length = |m: f64| u.length(Length::m(m));
    match cause {
        Cause::Water => {
            let below = total(wall) - wall.seen.height.to_m();
            let tilted = base.and_then(|b| tilt_words(wall, b, cause)).unwrap_or_default();
            format!("Water {} above the ground in front{tilted}.", length((x - below).max(0.0)))
        }
        Cause::Load => {
            let tilted = base.and_then(|b| tilt_words(wall, b, cause)).unwrap_or_default();
            format!("A load of {} on the ground behind{tilted}.", u.pressure(Pressure::kpa(x)))
        }
        Cause::ToeDug => format!("{} of the ground in front gone.", length(x)),
        Cause::TooSmall if wall.seen.posts.is_some() => format!("Posts no more than {} in the ground.", length(x)),
        Cause::TooSmall => format!("A body no more than {} thick.", length(x)),
        Cause::Rot => {
            let years = rot_years(x).map_or(String::new(), |(y, _)| {
                format!(", about {} years for treated timber of which nothing is known", trim(y, 0))
            });
            format!("{} lost from every face of the posts at the ground{years}.", length(x))
        }
        Cause::Softened => format!("Friction down to {}°{}.", trim(x, 1), clay_words(wall, base)),
    }
}

/// For clay: the undrained strength at which it gives way.
fn clay_words(wall: &AsFound, base: Option<&State>) -> String {
    let (Some(base), Kind::Fine) = (base, wall.soil.kind) else { return String::new() };
    let f = |share: f64| {
        let state = State { cu: Some(100.0 * (1.0 - share)), ..*base };
        // Clay that does not push at all stands by itself.
        factor(wall, &state).map_or_else(|| if share < 0.9 { 1.0 } else { -1.0 }, |f| f - 1.0)
    };
    match crossing(0.0, 1.0, f) {
        Crossing::At(share) => {
            format!(", or an undrained strength of {}", wall.units.pressure(Pressure::kpa(100.0 * (1.0 - share))))
        }
        _ => String::new(),
    }
}

/// Stiffness under a base where nothing was measured, kPa. Common practice, no source.
fn stiffness(kind: Kind) -> Pressure {
    Pressure::kpa(if kind == Kind::Coarse { 20_000.0 } else { 5_000.0 })
}

/// Where the heel begins to lift, and where the base tilts as far as the wall leans.
fn tilt_words(wall: &AsFound, base: &State, cause: Cause) -> Option<String> {
    if wall.seen.posts.is_some() {
        return None;
    }
    // As built it stood upright.
    let upright = AsFound { seen: Seen { lean: Length::ZERO, ..wall.seen.clone() }, ..wall.clone() };
    let (from, to) = span(wall, base, cause);
    let at = |share: f64| with(base, cause, from + (to - from) * share);
    let say = |share: f64| {
        let x = from + (to - from) * share;
        match cause {
            Cause::Load => wall.units.pressure(Pressure::kpa(x)),
            _ => wall.units.length(Length::m((x - (total(wall) - wall.seen.height.to_m())).max(0.0))),
        }
    };
    let third = |share: f64| stands(&upright, &at(share)).map_or(f64::NAN, |g| base.size / 6.0 - g.eccentricity);
    let mut words = match crossing(0.0, 1.0, third) {
        Crossing::At(share) => format!("; its heel begins to lift at {}", say(share)),
        Crossing::Before => "; its heel lifts without it".into(),
        Crossing::After => String::new(),
    };
    if wall.seen.lean > Length::ZERO {
        let tilt = |share: f64| {
            let Some(g) = stands(&upright, &at(share)) else { return f64::NAN };
            let e = Length::m(g.eccentricity.clamp(-0.49 * base.size, 0.49 * base.size));
            let size = Length::m(base.size);
            settlement::lean(LineForce::kn_per_m(g.weight), e, size, stiffness(wall.soil.kind), Length::m(total(wall)))
                .map_or(f64::NAN, |(l, _)| (wall.seen.lean - l).to_m())
        };
        match crossing(0.0, 1.0, tilt) {
            Crossing::At(share) => {
                words.push_str(&format!("; the base tilts as far as the lean seen at {}", say(share)))
            }
            Crossing::Before => words.push_str("; the base tilts as far as the lean seen without it"),
            Crossing::After => words.push_str("; the base does not tilt as far as the lean seen before it gives way"),
        }
    }
    Some(words)
}

/// What was seen or can be, and whether the need is within it.
fn seen(wall: &AsFound, base: Option<&State>, cause: Cause, need: &Need) -> (String, Option<bool>) {
    let u = wall.units;
    let x = if let Need::At(x) = need { Some(*x) } else { None };
    let up_to = |most: f64| x.map(|x| x <= most);
    match cause {
        Cause::Water => match wall.seen.wet_to {
            Some(wet) => {
                let below = total(wall) - wall.seen.height.to_m();
                (format!("Face wet to {}.", u.length(wet)), up_to(wet.to_m() + below))
            }
            None => {
                (format!("Water can stand to the ground behind, {}.", u.length(wall.seen.height)), up_to(total(wall)))
            }
        },
        Cause::Load => {
            let (most, what) = match wall.seen.load {
                Some(q) => (q.to_kpa(), "as reckoned"),
                None if wall.seen.above.contains(&AboveIt::Vehicle) => (VEHICLE, "a vehicle"),
                None if wall.seen.above.contains(&AboveIt::Load) => (f64::NAN, "a load, not reckoned"),
                None => (PEOPLE, "people"),
            };
            match most.is_nan() {
                true => (format!("{what}."), None),
                false => (format!("{}, {what}.", u.pressure(Pressure::kpa(most))), up_to(most)),
            }
        }
        Cause::ToeDug => match (wall.seen.dug, wall.seen.beneath.is_empty()) {
            (Some(d), _) => (format!("{} gone, measured.", u.length(d)), up_to(d.to_m())),
            (None, false) => ("Dug, depth not measured.".into(), None),
            (None, true) => ("No digging seen.".into(), Some(false)),
        },
        Cause::TooSmall => match base {
            Some(b) => {
                let what = if wall.seen.posts.is_some() { "in the ground" } else { "thick" };
                (format!("{} {what}, measured.", u.length(Length::m(b.size))), x.map(|x| b.size <= x))
            }
            None => ("Not measured.".into(), None),
        },
        Cause::Rot => rot_seen(wall, x),
        Cause::Softened => {
            let phi = wall.soil.phi.to_deg();
            let least = phi - SOFTENS_BY;
            let says =
                format!("{} has {}°; softening can take about {}°.", wall.soil.name, trim(phi, 1), trim(SOFTENS_BY, 0));
            (says, x.map(|x| x >= least))
        }
    }
}

fn rot_seen(wall: &AsFound, x: Option<f64>) -> (String, Option<bool>) {
    let soft = wall.seen.posts.and_then(|p| p.soft);
    match (soft, wall.seen.age, wall.seen.made) {
        (Some(s), _, Made::TimberPosts) => {
            (format!("A blade goes in {}.", wall.units.length(s)), x.map(|x| x <= s.to_m()))
        }
        (_, Some(age), _) => {
            let years = x.and_then(rot_years).map(|(y, _)| y);
            (format!("{} years old; nobody tried a blade.", trim(age, 0)), years.map(|y| y <= age))
        }
        _ => ("Age not known; nobody tried a blade.".into(), None),
    }
}
