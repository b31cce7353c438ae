//! Which of all circles slips first?

use groundhold_quantity::{Angle, Length, Level, Point, Pressure, UnitWeight, math};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Source, Unit, Value, Working};

use super::bishop::{self, Look};
use super::profile::{Arc, Profile, Slice, arc_between};
use super::{Crack, GroundLoad, Layer, Pore, Search, Section};
use crate::soil::Soil;

/// How finely circles are tried before the search closes in.
struct Fineness {
    /// Places along the ground.
    places: usize,
    /// Depths between each pair of places.
    depths: usize,
    /// How many of the worst the search closes in on.
    starts: usize,
}

/// Anywhere in a slope.
const ANYWHERE: Fineness = Fineness { places: 26, depths: 22, starts: 6 };
/// Under a given point: one wall, one valley of the factor on either side of it, so fewer places find the same circle.
const UNDER: Fineness = Fineness { places: 12, depths: 8, starts: 3 };

fn fineness(search_under: bool) -> &'static Fineness {
    if search_under { &UNDER } else { &ANYWHERE }
}

pub(super) const NO_SLIP: &str =
    "no circle slips in this section: the ground may be level, too short, or hard too near the surface";

pub(super) struct Worst {
    pub factor: f64,
    pub arc: Arc,
    pub tried: usize,
    pub at_end: bool,
}

/// A circle by where it comes out, where it begins, and how deep it is: a share of the chord, or the depth below the
/// place it must pass under.
type Spot = [f64; 3];

struct Hunt<'p> {
    profile: &'p Profile,
    under: Option<(f64, f64)>,
    least_depth: f64,
    room: Vec<Slice<f64>>,
    tried: usize,
    look: Look,
}

impl Hunt<'_> {
    fn arc(&self, [exit, entry, depth]: Spot) -> Option<Arc> {
        let (a, b) = (self.profile.exit_at(exit), self.profile.entry_at(entry));
        let chord = math::hypot(b.0 - a.0, b.1 - a.1);
        if chord <= 0.0 || depth < 0.0 {
            return None;
        }
        let radius = match self.under {
            None => {
                let sagitta = depth * chord;
                if sagitta <= 0.0 {
                    return None;
                }
                (chord * chord / 4.0 + sagitta * sagitta) / (2.0 * sagitta)
            }
            Some(p) => {
                if !(exit < p.0 && p.0 < entry) {
                    return None;
                }
                through(a, (p.0, p.1 - depth), b)?
            }
        };
        arc_between(a, b, radius)
    }
    /// The factor of a circle that is possible and below `below`.
    fn factor_below(&mut self, spot: Spot, below: f64) -> Option<f64> {
        let arc = self.arc(spot)?;
        self.tried += 1;
        let (f, deepest) = bishop::factor_below(self.profile, &arc, self.look, below, &mut self.room)?;
        let passes = self.under.is_none_or(|p| {
            let dx = p.0 - arc.centre.0;
            arc.centre.1 - (arc.radius * arc.radius - dx * dx).max(0.0).sqrt() <= p.1 + 1e-6
        });
        (passes && deepest >= self.least_depth).then_some(f)
    }
    /// All pairs of places, all depths; circles that cannot be among the worst are left out.
    fn sweep(&mut self) -> Vec<(f64, Spot)> {
        let fine = fineness(self.under.is_some());
        let places = places(self.profile, self.under.map(|u| u.0), fine.places);
        let (lowest, highest) =
            self.profile.ground.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.1), b.max(p.1)));
        let rise = highest - lowest;
        let mut found = vec![];
        let mut worst = Worsts::new(2 * fine.starts, apart(self.profile, fine));
        for (i, exit) in places.iter().enumerate() {
            for entry in &places[i + 1..] {
                for k in 0..fine.depths {
                    let share = (k as f64 + 0.5) / fine.depths as f64;
                    let depth = match self.under {
                        None => 0.01 + 0.49 * share,
                        Some(_) => 2.0 * rise * (k as f64 / fine.depths as f64) * share,
                    };
                    let spot = [*exit, *entry, depth];
                    if let Some(f) = self.factor_below(spot, worst.bar()) {
                        found.push((f, spot));
                        worst.put(f, spot);
                    }
                }
            }
        }
        found.sort_by(|a, b| a.0.total_cmp(&b.0));
        found
    }
    /// Steps to the best neighbour until none is better, then halves the step.
    fn close_in(&mut self, start: (f64, Spot)) -> (f64, Spot) {
        let (lo, hi) = self.profile.ends();
        let width = (hi - lo) / fineness(self.under.is_some()).places as f64;
        let mut step = [width, width, if self.under.is_some() { width } else { 0.04 }];
        let mut best = start;
        let mut halvings = 0;
        let mut moves = 0;
        // A sketch is not sharp enough to close in further than this.
        let most = if self.look == Look::Sketch { 7 } else { 12 };
        while halvings < most && moves < 200 {
            let mut next = best;
            for n in 0..27 {
                let by = |axis: u32| (n / 3_i32.pow(axis) % 3 - 1) as f64;
                let spot: Spot = std::array::from_fn(|axis| {
                    let v = best.1[axis] + by(axis as u32) * step[axis];
                    if axis < 2 { v.clamp(lo, hi) } else { v.max(0.0) }
                });
                if n != 13
                    && let Some(f) = self.factor_below(spot, next.0)
                    && f < next.0
                {
                    next = (f, spot);
                }
            }
            moves += 1;
            if next.0 < best.0 * (1.0 - 1e-9) {
                best = next;
            } else {
                halvings += 1;
                step = step.map(|s| s / 2.0);
            }
        }
        best
    }
}

/// How far apart, along the ground, two circles begin or end to be worth a close look each.
fn apart(profile: &Profile, fine: &Fineness) -> f64 {
    let (lo, hi) = profile.ends();
    (hi - lo) / fine.places as f64
}

fn near(a: Spot, b: Spot, apart: f64) -> bool {
    (a[0] - b[0]).abs() < apart && (a[1] - b[1]).abs() < apart
}

/// The worst circles so far that lie apart, the worst first: what a new one has to be worse than.
struct Worsts {
    kept: Vec<(f64, Spot)>,
    most: usize,
    apart: f64,
}

impl Worsts {
    fn new(most: usize, apart: f64) -> Worsts {
        Worsts { kept: Vec::with_capacity(most + 1), most, apart }
    }
    fn bar(&self) -> f64 {
        if self.kept.len() < self.most { f64::INFINITY } else { self.kept[self.most - 1].0 }
    }
    fn put(&mut self, f: f64, spot: Spot) {
        if let Some(same) = self.kept.iter().position(|k| near(k.1, spot, self.apart)) {
            if self.kept[same].0 <= f {
                return;
            }
            self.kept.remove(same);
        }
        let at = self.kept.partition_point(|k| k.0 <= f);
        self.kept.insert(at, (f, spot));
        self.kept.truncate(self.most);
    }
}

/// Radius of the circle through three places; `None` where they lie on a line or the middle one lies above the chord.
fn through(a: (f64, f64), m: (f64, f64), b: (f64, f64)) -> Option<f64> {
    let cross = (m.0 - a.0) * (b.1 - a.1) - (m.1 - a.1) * (b.0 - a.0);
    if cross <= 1e-9 {
        return None;
    }
    let side = |p: (f64, f64), q: (f64, f64)| math::hypot(q.0 - p.0, q.1 - p.1);
    Some(side(a, m) * side(m, b) * side(a, b) / (2.0 * cross))
}

/// Even places along the ground, its own corners, and some close about each corner.
fn places(profile: &Profile, about: Option<f64>, count: usize) -> Vec<f64> {
    let (lo, hi) = profile.ends();
    let mut xs: Vec<f64> = (0..=count).map(|i| lo + (hi - lo) * i as f64 / count as f64).collect();
    let inner = profile.ground.iter().map(|p| p.0).filter(|x| lo < *x && *x < hi);
    let close = (hi - lo) / (3.0 * count as f64);
    for x in inner.chain(about) {
        xs.extend([x - close, x, x + close]);
    }
    xs.retain(|x| lo <= *x && *x <= hi);
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|a, b| (*a - *b).abs() < 1e-6 * (hi - lo));
    xs
}

pub(super) fn worst(profile: &Profile, search: &Search) -> Option<Worst> {
    let under = search.under.map(|p| (profile.inward(p.x), p.y));
    let look = if under.is_some() { Look::Sketch } else { Look::Fine };
    let mut hunt =
        Hunt { profile, under, least_depth: search.least_depth.to_m(), room: Vec::with_capacity(64), tried: 0, look };
    let found = hunt.sweep();
    let (lo, hi) = profile.ends();
    let fine = fineness(under.is_some());
    let apart = apart(profile, fine);
    let mut starts: Vec<(f64, Spot)> = vec![];
    for f in found {
        if !starts.iter().any(|s| near(s.1, f.1, apart)) {
            starts.push(f);
        }
        if starts.len() == fine.starts {
            break;
        }
    }
    let mut best = starts.into_iter().map(|s| hunt.close_in(s)).reduce(|a, b| if b.0 < a.0 { b } else { a })?;
    if hunt.look == Look::Sketch {
        hunt.look = Look::Fine;
        best.0 = hunt.factor_below(best.1, f64::INFINITY)?;
    }
    let rough = hunt.arc(best.1)?;
    // Made again from what the trace will hold, so that the sheet gives the same bits.
    let arc = profile.arc(rough.exit.0, rough.entry.0, rough.radius)?;
    let factor = bishop::factor(profile, &arc, &mut hunt.room)?;
    let end = 1e-6 * (hi - lo);
    let at_end = arc.exit.0 - lo < end || hi - arc.entry.0 < end;
    Some(Worst { factor, arc, tried: hunt.tried, at_end })
}

const NONE: f64 = 1e6;

const fn place(key: &'static str, symbol: &'static str, words: &'static str) -> Input {
    Input::new(key, symbol, words, Unit::M, Limits::ours(-NONE, NONE))
}

macro_rules! section_inputs {
    ($($more:expr),* $(,)?) => { &[
        place("xs", "x", "ground line: distances, never falling"),
        place("ys", "y", "ground line: levels"),
        Input::new("gamma", "γ", "unit weight of each layer, top down", Unit::KN_M3, Limits::ours(5.0, 30.0)),
        Input::new("gamma_sat", "γ_sat", "saturated unit weight of each layer; 0 for the same as above water", Unit::KN_M3, Limits::ours(0.0, 30.0)).or(0.0),
        Input::new("phi", "φ", "friction angle of each layer", Unit::DEG, Limits::ours(0.0, 50.0)),
        Input::new("c", "c", "cohesion of each layer", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0),
        Input::new("top_points", "n", "points of each layer's upper boundary, 0 for the first", Unit::NONE, Limits::ours(0.0, 1000.0)).or(0.0),
        place("top_xs", "x_t", "upper boundaries one after the other: distances").or(0.0),
        place("top_ys", "y_t", "upper boundaries one after the other: levels").or(0.0),
        Input::new("ru", "r_u", "pore pressure as a share of the weight above", Unit::NONE, Limits::ours(0.0, 1.0)).or(0.0),
        place("water_xs", "x_w", "water table: distances").or(0.0),
        place("water_ys", "y_w", "water table: levels; −1 000 000 for none").or(-NONE),
        Input::new("load_q", "q", "loads on the ground", Unit::KPA, Limits::ours(0.0, 5000.0)).or(0.0),
        place("load_from", "x_1", "where they begin").or(0.0),
        place("load_to", "x_2", "where they end").or(0.0),
        place("hard", "y_h", "level below which no circle goes; −1 000 000 for none").or(-NONE),
        Input::new("crack", "z_c", "depth of a crack at the upper end", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
        Input::new("crack_water", "h_c", "height of water in it", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
        $($more),*
    ] };
}

pub(super) const CIRCLE_INPUTS: &[Input] = section_inputs![
    place("exit", "x_e", "where the circle comes out"),
    place("entry", "x_b", "where it begins"),
    Input::new("radius", "R", "its radius", Unit::M, Limits::ours(0.01, NONE)),
];

/// Inputs of the search that the circle does not have.
pub(super) const ONLY_SEARCH: usize = 3;

/// One value per row of [`BISHOP_SEARCH`].
pub(super) fn given(section: &Section, search: &Search) -> Vec<Value> {
    let points = |list: &[Point], f: fn(&Point) -> f64| Value::Many(list.iter().map(f).collect());
    let soils = |f: fn(&Soil) -> f64| Value::Many(section.layers.iter().map(|l| f(&l.soil)).collect());
    let tops: Vec<Point> = section.layers.iter().skip(1).flat_map(|l| l.top.iter().copied()).collect();
    let counts = section.layers.iter().enumerate().map(|(i, l)| if i == 0 { 0.0 } else { l.top.len() as f64 });
    let (ru, table) = match &section.pore {
        Pore::Dry => (0.0, vec![]),
        Pore::Ratio(r) => (*r, vec![]),
        Pore::Table(t) => (0.0, t.clone()),
    };
    let loads = |f: fn(&GroundLoad) -> f64| Value::Many(section.loads.iter().map(f).collect());
    let crack = section.crack.unwrap_or(Crack { depth: Length::ZERO, water: Length::ZERO });
    let under = search.under.unwrap_or(Point::m(0.0, NONE));
    vec![
        points(&section.ground, |p| p.x),
        points(&section.ground, |p| p.y),
        soils(|s| s.unit_weight.to_kn_per_m3()),
        soils(|s| s.unit_weight_saturated.to_kn_per_m3()),
        soils(|s| s.phi.to_deg()),
        soils(|s| s.cohesion.to_kpa()),
        Value::Many(counts.collect()),
        points(&tops, |p| p.x),
        points(&tops, |p| p.y),
        ru.into(),
        points(&table, |p| p.x),
        points(&table, |p| p.y),
        loads(|l| l.value.to_kpa()),
        loads(|l| l.from.to_m().clamp(-NONE, NONE)),
        loads(|l| l.to.to_m().clamp(-NONE, NONE)),
        section.hard.map_or(-NONE, |h| h.to_m()).into(),
        crack.depth.to_m().into(),
        crack.water.to_m().into(),
        under.x.into(),
        under.y.into(),
        search.least_depth.to_m().into(),
    ]
}

/// Reads the inputs that both workings share.
pub(super) fn read(g: &Given<'_>) -> Result<Section> {
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let pairs = |a: &str, b: &str| -> Result<Vec<Point>> {
        let (xs, ys) = (list(a)?, list(b)?);
        if xs.len() != ys.len() {
            return Err(g.no_answer(format!("`{a}` has {} values and `{b}` {}; expected as many", xs.len(), ys.len())));
        }
        Ok(xs.into_iter().zip(ys).map(|(x, y)| Point::m(x, y)).collect())
    };
    let table = pairs("water_xs", "water_ys")?;
    let ru = g.one("ru")?.value();
    let pore = match (table.first(), ru) {
        (Some(p), _) if p.y > -NONE => Pore::Table(table),
        (_, 0.0) => Pore::Dry,
        _ => Pore::Ratio(ru),
    };
    let (q, from, to) = (list("load_q")?, list("load_from")?, list("load_to")?);
    if q.len() != from.len() || q.len() != to.len() {
        return Err(g.no_answer("`load_q`, `load_from` and `load_to` should have the same number of values"));
    }
    let loads = (0..q.len()).filter(|i| q[*i] > 0.0).map(|i| GroundLoad {
        value: Pressure::kpa(q[i]),
        from: Length::m(from[i]),
        to: Length::m(to[i]),
    });
    let hard = g.one("hard")?.value();
    let (depth, water) = (g.one("crack")?.value(), g.one("crack_water")?.value());
    Ok(Section {
        ground: pairs("xs", "ys")?,
        layers: layers(g, pairs("top_xs", "top_ys")?)?,
        pore,
        loads: loads.collect(),
        hard: (hard > -NONE).then(|| Level::m(hard)),
        crack: (depth > 0.0).then(|| Crack { depth: Length::m(depth), water: Length::m(water) }),
    })
}

fn layers(g: &Given<'_>, tops: Vec<Point>) -> Result<Vec<Layer>> {
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let (gamma, phi) = (list("gamma")?, list("phi")?);
    let (sat, c, counts) = (list("gamma_sat")?, list("c")?, list("top_points")?);
    let each = |v: &[f64], i: usize| v.get(i).or(v.first()).copied().unwrap_or(0.0);
    if gamma.len() != phi.len() || gamma.is_empty() {
        return Err(g.no_answer("`gamma` and `phi` should have the same number of values, one per layer"));
    }
    let mut rest = tops.into_iter();
    (0..gamma.len())
        .map(|i| {
            let n = if i == 0 { 0 } else { each(&counts, i) as usize };
            let top: Vec<Point> = rest.by_ref().take(n).collect();
            if i > 0 && (top.is_empty() || top.len() < n) {
                return Err(g.no_answer(format!("layer {} needs the points of its upper boundary", i + 1)));
            }
            let sat = if each(&sat, i) > 0.0 { each(&sat, i) } else { gamma[i] };
            let (gamma, sat) = (UnitWeight::kn_per_m3(gamma[i]), UnitWeight::kn_per_m3(sat));
            let mut soil = Soil::given("layer", gamma, sat, Angle::rad(phi[i]));
            soil.cohesion = Pressure::kpa(each(&c, i));
            Ok(Layer { soil, top })
        })
        .collect()
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let section = read(g)?;
    let (x, y) = (g.one("under_x")?.value(), g.one("under_y")?.value());
    let search =
        Search { under: (y < NONE).then(|| Point::m(x, y)), least_depth: Length::m(g.one("least_depth")?.value()) };
    let profile = Profile::of(&section, Angle::to_rad).map_err(|why| g.no_answer(why))?;
    let w = worst(&profile, &search).ok_or_else(|| g.no_answer(NO_SLIP))?;
    let sheet = g.sheet();
    sheet.remark(format!("{} circles tried, then closer about the worst; its slices: slope/bishop-circle", w.tried));
    let (centre, exit, entry) =
        (profile.outward(w.arc.centre), profile.outward(w.arc.exit), profile.outward(w.arc.entry));
    let figures = [
        sheet.put("F", w.factor, Unit::NONE),
        sheet.put("x_c", centre.x, Unit::M),
        sheet.put("y_c", centre.y, Unit::M),
        sheet.put("R", w.arc.radius, Unit::M),
        sheet.put("x_e", exit.x, Unit::M),
        sheet.put("x_b", entry.x, Unit::M),
    ];
    Ok(figures.map(Found::One).into())
}

/// The circle that slips first.
pub static BISHOP_SEARCH: Working = Working {
    name: "slope/bishop-search",
    title: "Which circle slips first, and with which factor of safety?",
    source: Source {
        work: "Bishop, The use of the slip circle in the stability analysis of slopes, Géotechnique 5(1), 1955",
        place: "simplified method; the search over circles is ours",
    },
    not_for: "slips that are not round, such as along a seam or a rock surface",
    inputs: section_inputs![
        place("under_x", "x_u", "circles must pass under this place: distance").or(0.0),
        place("under_y", "y_u", "circles must pass under this place: level; 1 000 000 for none").or(NONE),
        Input::new("least_depth", "d", "circles must reach this deep somewhere", Unit::M, Limits::ours(0.0, 100.0))
            .or(0.0),
    ],
    outputs: &[
        Output { key: "factor", words: "factor of safety", unit: Unit::NONE },
        Output { key: "xc", words: "centre, along the section", unit: Unit::M },
        Output { key: "yc", words: "centre, level", unit: Unit::M },
        Output { key: "radius", words: "radius", unit: Unit::M },
        Output { key: "exit", words: "where it comes out", unit: Unit::M },
        Output { key: "entry", words: "where it begins", unit: Unit::M },
    ],
    run,
};
