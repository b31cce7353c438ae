//! How large must a pit be that stores the rain and lets it seep away, and where may it not lie?

use groundhold_finding::{Adjust, Finding, Place, Remedy};
use groundhold_quantity::{Length, Level, Point, RainIntensity, Share, Time, Volume, distance_to_segment, trim};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working, check_range};

use crate::findings::{SOAKAWAY_NEAR, SOAKAWAY_SLOW, SOAKAWAY_SMALL, SOAKAWAY_UNKNOWN};
use crate::rain::DURATIONS_MIN;
use crate::{DrainCase, WallLine};

const BRE: &str = "BRE Digest 365, Soakaway design (1991, revised 2016)";
const SECONDS: Unit = Unit("s");

/// Rate at which a trial pit empties, per area through which it empties.
///
/// # Source
/// BRE Digest 365 (1991, 2016): f = V_p75-25/(a_p50·t_p75-25).
/// # Symbols
/// l and w length and width of the pit, d its effective depth (m), t time in which the water falls from 75 % to 25 % of
/// that depth (s).
/// # Gives
/// V = l·w·d/2 (m³), a = l·w + 2(l+w)·d/2 (m²: the base and the walls to half the depth), f = V/(a·t) (m/s). Falls as t
/// grows.
/// # Not for
/// A pit that was filled once: the slowest of three fillings counts. Pits filled with stone.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-SK-1: 1.0 × 0.5 × 1.0 m in 3600 s: 0.25/(2.0·3600) = 3.47e-5 m/s.
pub(crate) fn rate<N: Number>(length: N, width: N, depth: N, time: N) -> [N; 3] {
    let volume = (length * width * depth / 2.0).named("V_p75-25", Unit::M3);
    let area = (length * width + (length + width) * depth).named("a_p50", Unit::M2);
    [volume, area, (volume / (area * time)).named("f", Unit::M_S)]
}

const LENGTH: Input = Input::new("length", "l", "length of the pit", Unit::M, Limits::ours(0.1, 100.0));
const WIDTH: Input = Input::new("width", "w", "width of the pit", Unit::M, Limits::ours(0.1, 20.0));
const DEPTH: Input =
    Input::new("depth", "d", "effective depth: from the incoming pipe to the base", Unit::M, Limits::ours(0.1, 10.0));

/// The working of `rate`.
pub static INFILTRATION: Working = Working {
    name: "soakaway/rate",
    title: "How fast does the ground take water, from a trial pit?",
    source: Source { work: BRE, place: "soil infiltration rate" },
    not_for: "a pit that was filled once: the slowest of three fillings counts",
    inputs: &[
        LENGTH,
        WIDTH,
        DEPTH,
        Input::new("time", "t_p75-25", "time from 75 % to 25 % of the depth", SECONDS, Limits::ours(1.0, 1e7)),
    ],
    outputs: &[
        Output { key: "volume", words: "water that left", unit: Unit::M3 },
        Output { key: "area", words: "area it left through", unit: Unit::M2 },
        Output { key: "rate", words: "infiltration rate", unit: Unit::M_S },
    ],
    run: |g| {
        let found = rate(g.one("length")?, g.one("width")?, g.one("depth")?, g.one("time")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Storage that one rain asks for and a pit has.
///
/// # Source
/// BRE Digest 365 (1991, 2016): I − O = S, with O through the walls to half the effective depth, the base not counted.
/// # Symbols
/// A area that drains, all of it (m²: area times runoff coefficient), R rain (mm) in D (min), l, w, d the pit (m), n share
/// of it that is empty, f infiltration rate (m/s).
/// # Gives
/// I = A·R (m³), a_s50 = (l+w)·d (m²), O = a_s50·f·D (m³), S = I − O (m³), S_a = l·w·d·n (m³), and the time to half empty
/// S/2/(a_s50·f) (h; from what is stored).
/// # Not for
/// Ground that takes no water; contaminated ground; a pit below the water table.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-SK-2.
pub(crate) fn storage<N: Number>(area: N, rain: N, minutes: N, pit: [N; 3], empty: N, f: N) -> [N; 6] {
    let [l, w, d] = pit;
    let comes = (area * rain / 1000.0).named("I", Unit::M3);
    let walls = ((l + w) * d).named("a_s50", Unit::M2);
    let leaves = (walls * f * minutes * 60.0).named("O", Unit::M3);
    let asked = (comes - leaves).max(N::constant(0.0)).named("S", Unit::M3);
    let has = (l * w * d * empty).named("S_a", Unit::M3);
    [comes, walls, leaves, asked, has, (asked / 2.0 / (walls * f) / 3600.0).named("t_s50", Unit::H)]
}

/// The working of `storage`.
pub static SOAKAWAY: Working = Working {
    name: "soakaway/storage",
    title: "How much of a rain must a soakaway store, and how fast is it half empty?",
    source: Source { work: BRE, place: "design of soakaways" },
    not_for: "ground that takes no water; contaminated ground; a pit below the water table",
    inputs: &[
        Input::new(
            "area",
            "A",
            "area that drains to it, times its runoff coefficient",
            Unit::M2,
            Limits::ours(0.0, 1e5),
        ),
        Input::new("rain", "R", "rain in the duration", Unit::MM, Limits::ours(0.0, 2000.0)),
        Input::new("minutes", "D", "duration", Unit("min"), Limits::ours(1.0, 20_000.0)),
        LENGTH,
        WIDTH,
        DEPTH,
        Input::new("empty", "n", "share of the pit that is empty", Unit::NONE, Limits::ours(0.05, 1.0)).or(0.30),
        Input::new("rate", "f", "infiltration rate", Unit::M_S, Limits::ours(1e-9, 0.1)),
    ],
    outputs: &[
        Output { key: "comes", words: "water that comes", unit: Unit::M3 },
        Output { key: "walls", words: "walls to half the depth", unit: Unit::M2 },
        Output { key: "leaves", words: "water that seeps away meanwhile", unit: Unit::M3 },
        Output { key: "asked", words: "storage asked for", unit: Unit::M3 },
        Output { key: "has", words: "storage it has", unit: Unit::M3 },
        Output { key: "hours", words: "hours until half empty", unit: Unit::H },
    ],
    run: |g| {
        let pit = [g.one("length")?, g.one("width")?, g.one("depth")?];
        let found = storage(g.one("area")?, g.one("rain")?, g.one("minutes")?, pit, g.one("empty")?, g.one("rate")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// What a soakaway should be.
#[derive(Debug, Clone, PartialEq)]
pub struct SoakawayWish {
    /// Middle, in plan.
    pub at: Point,
    /// Invert of the pipe that comes in.
    pub level: Level,
    /// Length; `None`: solved.
    pub length: Option<Length>,
    /// Width.
    pub width: Length,
    /// Effective depth, from the incoming pipe to the base.
    pub depth: Length,
    /// Share that is empty: 0.30 with stone, 0.95 with crates (common practice, no source).
    pub empty: Share,
    /// Infiltration rate of the ground, measured.
    pub rate: Option<RainIntensity>,
    /// Who measured it, when.
    pub source: String,
}

/// A soakaway as worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct Soakaway {
    /// The wish.
    pub wish: SoakawayWish,
    /// Length, given or solved to the next 100 mm.
    pub length: Length,
    /// Duration of the rain that asks most of it.
    pub duration: Time,
    /// Storage that rain asks for.
    pub asked: Volume,
    /// Storage it has.
    pub has: Volume,
    /// Until it is half empty.
    pub half_empty: Time,
    /// Dug for it from the base to the incoming pipe, bank; what lies above is in the trench.
    pub dug: Volume,
    /// Working of the rain that asks most.
    pub trace: Trace,
}

/// Longest soakaway that is solved for.
const LONGEST: f64 = 100.0;
/// A soakaway is half empty within a day: BRE Digest 365.
const DAY: Time = Time::h(24.0);
/// Distance kept from foundations and retaining walls: Approved Document H (England, 2015 ed.), 3.25, for buildings
/// (from memory); for retaining walls as English county drainage authorities ask.
const KEEP_OFF: Length = Length::m(5.0);
/// Height kept between the base and water in the ground: CIRIA C753, The SuDS Manual (2015), ch. 25, from memory.
const ABOVE_WATER: Length = Length::m(1.0);

/// The soakaway of the case for this area (with its runoff coefficient taken), and what stands against it.
pub(crate) fn soakaway(case: &DrainCase, runs_off_m2: f64) -> (Option<Soakaway>, Vec<Finding>) {
    let Some(wish) = &case.soakaway else { return (None, vec![]) };
    let mut said = places(case, wish);
    let here = || Place::on("drain", "soakaway");
    let rain = case.rain.as_ref().filter(|r| r.curve.len() >= 2);
    let (Some(rain), Some(rate)) = (rain, wish.rate.filter(|f| f.to_m_per_s() > 1e-9)) else {
        let missing =
            if rain.is_none() { "rain of several durations" } else { "an infiltration rate from a trial pit" };
        let says = format!("The soakaway is not sized: it needs {missing}.");
        said.push(Finding::new(&SOAKAWAY_UNKNOWN, here(), says));
        return (None, said);
    };
    let given = |length: f64, minutes: f64| {
        let depth = rain.depth(Time::min_(minutes)).to_mm();
        let pit = [length, wish.width.to_m(), wish.depth.to_m()];
        [runs_off_m2, depth, minutes, pit[0], pit[1], pit[2], wish.empty.to_fraction(), rate.to_m_per_s()]
    };
    let trial = given(1.0, 5.0);
    let bad = SOAKAWAY.inputs.iter().zip(trial).find_map(|(row, v)| check_range(SOAKAWAY.name, row, v).err());
    if let Some(why) = bad {
        said.push(Finding::new(&SOAKAWAY_UNKNOWN, here(), format!("The soakaway is not sized: {why}.")));
        return (None, said);
    }
    let longest_row = rain.curve.last().map_or(0.0, |r| r.0.to_min());
    let durations: Vec<f64> = DURATIONS_MIN.iter().copied().filter(|d| *d <= longest_row + 1e-9).collect();
    let worst = |length: f64| {
        let all = durations.iter().map(|d| {
            let [a, r, m, l, w, d2, n, f] = given(length, *d);
            (*d, storage(a, r, m, [l, w, d2], n, f))
        });
        all.max_by(|a, b| a.1[3].total_cmp(&b.1[3]))
    };
    let fits = |length: f64| worst(length).is_some_and(|(_, s)| s[3] <= s[4]);
    let solved =
        (1..=(LONGEST * 10.0) as u32).map(|k| f64::from(k) / 10.0).find(|l| *l >= wish.width.to_m() && fits(*l));
    let length = wish.length.map(Length::to_m).or(solved).unwrap_or(LONGEST);
    let Some((minutes, s)) = worst(length) else {
        said.push(Finding::new(
            &SOAKAWAY_UNKNOWN,
            here(),
            "The soakaway is not sized: no rain lasts five minutes or more.",
        ));
        return (None, said);
    };
    let found = Soakaway {
        length: Length::m(length),
        duration: Time::min_(minutes),
        asked: Volume::m3(s[3]),
        has: Volume::m3(s[4]),
        half_empty: Time::h(s[5]),
        dug: Volume::m3(length * wish.width.to_m() * wish.depth.to_m()),
        trace: Trace::new(&SOAKAWAY, given(length, minutes).map(Into::into).to_vec()),
        wish: wish.clone(),
    };
    said.extend(against(case, &found, solved));
    (Some(found), said)
}

fn against(case: &DrainCase, s: &Soakaway, solved: Option<f64>) -> Vec<Finding> {
    let here = || Place::on("drain", "soakaway");
    let mut said = vec![];
    if s.asked > s.has {
        let says = format!(
            "A rain of {} min asks for {} of storage, and the soakaway has {}.",
            trim(s.duration.to_min(), 0),
            case.units.volume(s.asked),
            case.units.volume(s.has)
        );
        let mut f = Finding::new(&SOAKAWAY_SMALL, here(), says)
            .with_utilisation(s.asked / s.has.max(Volume::litre(1.0)))
            .with_trace(s.trace.clone());
        f = match solved {
            Some(l) => {
                let change =
                    Adjust { element: "drain".into(), field: "soakaway.length".into(), value: format!("{l:.1} m") };
                f.with_remedy(Remedy::ours(format!("A soakaway {} long.", case.units.run(Length::m(l))), vec![change]))
            }
            None => f.with_remedy(Remedy::theirs("Another outlet: no soakaway of that width up to 100 m long does.")),
        };
        said.push(f);
    }
    if s.half_empty > DAY {
        let says =
            format!("The soakaway is half empty after {} h; it should be within 24 h.", trim(s.half_empty.to_h(), 1));
        said.push(
            Finding::new(&SOAKAWAY_SLOW, here(), says).with_utilisation(s.half_empty / DAY).with_trace(s.trace.clone()),
        );
    }
    said
}

/// What lies too near: foundations, walls of this plan, water in the ground.
fn places(case: &DrainCase, wish: &SoakawayWish) -> Vec<Finding> {
    let mut said = vec![];
    let half = 0.5 * wish.width.max(wish.length.unwrap_or(wish.width)).to_m();
    let mut near = |what: String, gap: f64| {
        let gap = (gap - half).max(0.0);
        if gap < KEEP_OFF.to_m() {
            let says = format!(
                "The soakaway lies {} from {what}; it keeps {} off.",
                case.units.run(Length::m(gap)),
                case.units.run(KEEP_OFF)
            );
            said.push(
                Finding::new(&SOAKAWAY_NEAR, Place::on("drain", "soakaway"), says)
                    .with_utilisation(KEEP_OFF.to_m() / gap.max(0.1))
                    .with_remedy(Remedy::theirs("Move it, downhill of walls and buildings, or choose another outlet.")),
            );
        }
    };
    for (what, line) in &case.footings {
        near(what.clone(), gap_to(wish.at, line));
    }
    for wall in &case.walls {
        near(wall.id.clone(), gap_to(wish.at, &line_of(wall)));
    }
    let base = wish.level - wish.depth;
    let water = case.ground.level_at(wish.at).zip(case.groundwater).map(|(g, d)| g - d);
    if let Some(water) = water.filter(|w| base - *w < ABOVE_WATER) {
        let says = format!(
            "The base of the soakaway at {} is {} above water seen in the ground; it keeps {} above it.",
            case.units.level(base),
            case.units.length(base - water),
            case.units.run(ABOVE_WATER)
        );
        said.push(Finding::new(&SOAKAWAY_NEAR, Place::on("drain", "soakaway"), says));
    }
    said
}

pub(crate) fn line_of(wall: &WallLine) -> Vec<Point> {
    wall.stations.iter().map(|s| s.at).collect()
}

/// Distance from a point to a line of points, m.
pub(crate) fn gap_to(p: Point, line: &[Point]) -> f64 {
    match line {
        [q] => (*q - p).length(),
        _ => line.windows(2).map(|w| distance_to_segment(p, w[0], w[1]).to_m()).fold(f64::INFINITY, f64::min),
    }
}
