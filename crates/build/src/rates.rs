//! How many hours of one person does a unit of work take, and from whose experience?

use groundhold_quantity::{Length, Time};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::{GroundClass, PersonHours};

/// Hours of one person for one unit of work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// What is done.
    pub what: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// When all goes well.
    pub low: f64,
    /// What to reckon with.
    pub likely: f64,
    /// When it does not.
    pub high: f64,
    /// Most people who can usefully work on it together.
    pub people_most: u32,
    /// Where it is known from, with its mark.
    pub source: &'static str,
}

const NORMS: &str = "ILO/ASIST Technical Brief 2 (1998), from memory, not read again; range ours";
const PRACTICE: &str = "common practice, no source";
const OURS: &str = "our estimate from common practice, no source; put your own figure from the last job";

const fn rate(what: &'static str, unit: &'static str, range: [f64; 3], people_most: u32, source: &'static str) -> Rate {
    Rate { what, unit, low: range[0], likely: range[1], high: range[2], people_most, source }
}

/// From so many m³ a person-day: the norm, a fifth less, and three fifths of it, at 8 h a day.
const fn norm(what: &'static str, m3_per_day: f64) -> Rate {
    let h = 8.0 / m3_per_day;
    rate(what, "m³", [h, h / 0.8, h / 0.6], 4, NORMS)
}

pub(crate) static SURVEY: Rate = rate("measure and set out", "", [3.0, 4.0, 8.0], 2, OURS);
pub(crate) static LOCATE: Rate = rate("locate and expose services by hand", "", [2.0, 4.0, 8.0], 2, OURS);
pub(crate) static LOOK_FOR_SERVICES: Rate = rate("scan the line of the dig for services", "", [0.5, 1.0, 2.0], 1, OURS);
pub(crate) static ASK: Rate = rate("ask and file answers", "", [1.0, 2.0, 6.0], 1, OURS);
pub(crate) static PROTECT: Rate = rate("fence trees, boards on the access, barriers", "", [1.0, 2.0, 4.0], 2, OURS);
pub(crate) static STRIP_MACHINE: Rate = rate(
    "strip with a small excavator",
    "m³",
    [0.25, 0.35, 0.5],
    2,
    "common practice, no source: 4 to 8 m³/h to a heap, two people",
);
pub(crate) static DIG_MACHINE: Rate = rate(
    "dig with a small excavator and cart away",
    "m³",
    [0.5, 0.67, 1.0],
    2,
    "common practice, no source: 2 to 4 m³/h with barrow or dumper out, two people",
);
pub(crate) static HOLE_AUGER: Rate = rate(
    "post hole by machine auger",
    "hole",
    [0.17, 0.37, 0.75],
    2,
    "one builder's record of 55 holes of 230 mm by 0.9 m: 11 min each with moves, 3 to 5 min where easy; two people; high ours",
);
pub(crate) static HOLE_HAND: Rate = rate(
    "post hole by hand",
    "hole",
    [1.0, 1.5, 2.0],
    2,
    "common practice, no source: 1 to 2 h for 300 to 450 mm by 0.6 to 1.0 m in firm clay",
);
pub(crate) static POST: Rate = rate("set, line and brace a post", "post", [0.3, 0.5, 0.8], 2, OURS);
pub(crate) static CONCRETE: Rate = rate(
    "mix and place concrete",
    "m³",
    [2.0, 3.0, 6.7],
    2,
    "common practice, no source: two people 1 m³/h with a small mixer, 0.3 m³/h by hand",
);
pub(crate) static BOARD: Rate = rate("cut and fix a board", "board", [0.25, 0.4, 0.7], 2, OURS);
pub(crate) static PIPE: Rate = rate("lay and level subsoil pipe", "m", [0.1, 0.15, 0.3], 2, OURS);
pub(crate) static FABRIC: Rate = rate("place geotextile with its laps", "m²", [0.03, 0.05, 0.1], 2, OURS);
pub(crate) static STONE: Rate = rate(
    "barrow and place drainage stone",
    "m³",
    [1.9, 2.5, 3.3],
    4,
    "loading and wheeling by ILO/ASIST Technical Brief 2 (1998), from memory; high by one builder's record of 2.5 h a cubic yard",
);
pub(crate) static SPREAD: Rate = norm("spread", 13.5);
pub(crate) static COMPACT: Rate = norm("compact in layers", 9.0);
pub(crate) static LOAD: Rate = norm("load", 8.5);
pub(crate) static OUTLET: Rate = rate("build the outlet", "", [1.0, 2.0, 5.0], 2, OURS);
pub(crate) static SUMP: Rate = rate("sump, pump and dig out softened ground", "", [2.0, 4.0, 8.0], 2, OURS);
pub(crate) static RISER: Rate = rate("build a step", "riser", [1.5, 2.5, 4.0], 2, OURS);
pub(crate) static SURFACE: Rate = rate("lay a surface of loose stone or gravel", "m²", [0.15, 0.25, 0.5], 4, OURS);
pub(crate) static PAVE: Rate = rate("lay paving", "m²", [0.8, 1.2, 2.0], 4, OURS);
pub(crate) static CAP: Rate = rate("fix capping", "m", [0.15, 0.25, 0.4], 2, OURS);
pub(crate) static GUARD: Rate = rate("build guard or fence", "m", [0.5, 0.8, 1.5], 2, OURS);
pub(crate) static TURF: Rate = rate("rake, lay and roll turf, or seed", "m²", [0.08, 0.12, 0.25], 4, OURS);
pub(crate) static CLEAN: Rate = rate("clean up and take away", "", [2.0, 4.0, 8.0], 4, OURS);
pub(crate) static RECORD_IT: Rate = rate("measure as built and write the record", "", [1.5, 3.0, 6.0], 2, OURS);

/// Every fixed rate, for the manual. Digging by hand depends on the ground ([`dig_hand`]) and carting on the way.
pub static RATES: &[&Rate] = &[
    &SURVEY,
    &LOCATE,
    &LOOK_FOR_SERVICES,
    &ASK,
    &PROTECT,
    &STRIP_MACHINE,
    &DIG_MACHINE,
    &HOLE_AUGER,
    &HOLE_HAND,
    &POST,
    &CONCRETE,
    &BOARD,
    &PIPE,
    &FABRIC,
    &STONE,
    &SPREAD,
    &COMPACT,
    &LOAD,
    &OUTLET,
    &SUMP,
    &RISER,
    &SURFACE,
    &PAVE,
    &CAP,
    &GUARD,
    &TURF,
    &CLEAN,
    &RECORD_IT,
];

/// Least and most bank volume that one person digs in a day, m³. The most is the norm of ILO/ASIST Technical Brief 2 (1998),
/// from memory; the least is that of the next harder ground, for firm ground 2 m³ (common practice), for rock half the norm
/// (ours).
fn dug_in_a_day(ground: GroundClass) -> (f64, f64) {
    match ground {
        GroundClass::Soft => (3.5, 5.0),
        GroundClass::Firm => (2.0, 3.5),
        GroundClass::Hard => (2.0, 3.0),
        GroundClass::VeryHard => (0.8, 2.0),
        GroundClass::Rock => (0.4, 0.8),
    }
}

/// Digging by hand, a cubic metre in the bank.
pub(crate) fn dig_hand(ground: GroundClass) -> Rate {
    let (least, most) = dug_in_a_day(ground);
    let range = [8.0 / most, 16.0 / (least + most), 8.0 / least];
    let source = "ILO/ASIST Technical Brief 2 (1998), from memory, not read again; least in firm ground common practice, in rock ours";
    rate("dig by hand", "m³", range, 4, source)
}

/// Post hole by hand: that of firm ground, more or less as the ground digs, and more below 1 m in proportion to the depth.
pub(crate) fn hole_hand(ground: GroundClass, depth: Length) -> Rate {
    let harder = dug_in_a_day(GroundClass::Firm).1 / dug_in_a_day(ground).1;
    scaled(&HOLE_HAND, harder * Number::max(depth.to_m(), 1.0))
}

/// Wheeling by barrow. Beyond 80 m half a cubic metre a day less for each 20 m begun, not below 2 m³ (ours).
pub(crate) fn barrow(haul: Length) -> Rate {
    let d = haul.to_m();
    norm(
        "wheel by barrow",
        match d {
            _ if d <= 20.0 => 8.5,
            _ if d <= 40.0 => 7.0,
            _ if d <= 60.0 => 6.5,
            _ if d <= 80.0 => 5.5,
            _ => Number::max(5.5 - 0.5 * ((d - 80.0) / 20.0).ceil(), 2.0),
        },
    )
}

/// A rate times a factor.
pub(crate) fn scaled(r: &Rate, by: f64) -> Rate {
    Rate { low: r.low * by, likely: r.likely * by, high: r.high * by, ..*r }
}

/// Work done one after the other on the same unit.
pub(crate) fn together(what: &'static str, parts: &[Rate]) -> Rate {
    let sum = |f: fn(&Rate) -> f64| parts.iter().map(f).sum::<f64>();
    let range = [sum(|r| r.low), sum(|r| r.likely), sum(|r| r.high)];
    let first = parts.first();
    let people = parts.iter().map(|r| r.people_most).min().unwrap_or(1);
    rate(what, first.map_or("", |r| r.unit), range, people, first.map_or(PRACTICE, |r| r.source))
}

/// Hours of one person for a task.
///
/// # Source
/// Multiplication; the rate carries its own source.
/// # Symbols
/// | Q | units | ≥ 0 | · | r | hours of one person a unit | ≥ 0 |
/// # Gives
/// T, hours of one person.
/// # Not for
/// Waiting: concrete that sets, deliveries.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case BU-05: 7.2 · 2.286 = 16.46 h.
fn task_hours<N: Number>(quantity: N, rate: N) -> N {
    (quantity * rate).named("T", Unit::H)
}

/// `build/task-hours`: hours of one person for a task.
pub static TASK_HOURS: Working = Working {
    name: "build/task-hours",
    title: "Hours of one person for a task of the programme.",
    source: Source { work: "Arithmetic of an estimate; the rate carries its own source", place: PRACTICE },
    not_for: "Waiting: concrete that sets, deliveries.",
    inputs: &[
        Input::new("quantity", "Q", "units of the task", Unit::NONE, Limits::ours(0.0, 1e6)),
        Input::new("rate", "r", "hours of one person a unit", Unit::H, Limits::ours(0.0, 1e9)),
    ],
    outputs: &[Output { key: "hours", words: "hours of one person", unit: Unit::H }],
    run: |g| Ok(vec![Found::One(task_hours(g.one("quantity")?, g.one("rate")?))]),
};

/// Working days of a task.
///
/// # Source
/// Division.
/// # Symbols
/// | T | hours of one person | ≥ 0 | · | c | people on it | 1–50 (ours) | · | d | hours of a working day | 1–16 (ours) |
/// # Gives
/// D, working days.
/// # Not for
/// More people than can reach it.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case BU-06: 16.46/(2 · 8) = 1.03 days.
fn duration<N: Number>(hours: N, people: N, day: N) -> N {
    (hours / (people * day)).named("D", Unit("days"))
}

/// `build/duration`: working days of a task.
pub static DURATION: Working = Working {
    name: "build/duration",
    title: "Working days of a task for so many people.",
    source: Source { work: "Arithmetic", place: PRACTICE },
    not_for: "More people than can reach it.",
    inputs: &[
        Input::new("hours", "T", "hours of one person", Unit::H, Limits::ours(0.0, 1e9)),
        Input::new("people", "c", "people on it", Unit::NONE, Limits::ours(1.0, 50.0)),
        Input::new("day", "d", "hours of a working day", Unit::H, Limits::ours(1.0, 16.0)).or(8.0),
    ],
    outputs: &[Output { key: "days", words: "working days", unit: Unit("days") }],
    run: |g| Ok(vec![Found::One(duration(g.one("hours")?, g.one("people")?, g.one("day")?))]),
};

/// Hours of a quantity at a rate, with the working of the likely figure.
pub(crate) fn hours_of(quantity: f64, r: &Rate) -> (PersonHours, Trace) {
    let of = |rate: f64| Time::h(task_hours(quantity, rate));
    let trace = Trace::new(&TASK_HOURS, vec![quantity.into(), r.likely.into()]);
    (PersonHours { low: of(r.low), likely: of(r.likely), high: of(r.high) }, trace)
}

/// Working days of hours for people.
pub(crate) fn days_of(hours: Time, people: u32, day: Time) -> f64 {
    duration(hours.to_h(), f64::from(people), day.to_h())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rate_is_a_range_in_order_and_names_its_source() {
        let all = [GroundClass::Soft, GroundClass::Firm, GroundClass::Hard, GroundClass::VeryHard, GroundClass::Rock];
        let by_ground = all.iter().flat_map(|&g| [dig_hand(g), hole_hand(g, Length::m(0.8))]);
        for r in RATES.iter().map(|r| **r).chain(by_ground).chain([barrow(Length::m(500.0))]) {
            assert!(0.0 < r.low && r.low <= r.likely && r.likely <= r.high, "{r:?}");
            assert!(!r.source.is_empty() && r.people_most > 0, "{r:?}");
        }
    }

    #[test]
    fn harder_ground_and_a_longer_way_never_take_less_time() {
        let all = [GroundClass::Soft, GroundClass::Firm, GroundClass::Hard, GroundClass::VeryHard, GroundClass::Rock];
        for two in all.windows(2) {
            assert!(dig_hand(two[0]).likely < dig_hand(two[1]).likely);
            assert!(hole_hand(two[0], Length::m(0.8)).likely < hole_hand(two[1], Length::m(0.8)).likely);
        }
        for two in [0.0, 20.0, 20.1, 40.1, 60.1, 80.1, 100.1, 1e6].windows(2) {
            assert!(barrow(Length::m(two[0])).likely <= barrow(Length::m(two[1])).likely);
        }
    }

    #[test]
    fn seven_cubic_metres_of_firm_ground_take_two_to_three_and_a_half_person_days() {
        let (h, _) = hours_of(7.2, &dig_hand(GroundClass::Firm));
        assert!((h.low.to_h() / 8.0 - 2.057).abs() < 0.001 && (h.high.to_h() / 8.0 - 3.6).abs() < 0.001);
    }
}
