//! How many hours of people does a task take, and from whose experience?

use groundhold_quantity::Time;
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

use crate::{Head, Measured, Need};

/// Hours of one person for one unit of a task, as a range.
#[derive(Debug, Clone, PartialEq)]
pub struct Rate {
    /// When all goes well.
    pub low: f64,
    /// What to reckon with.
    pub likely: f64,
    /// When it does not.
    pub high: f64,
    /// Where it is known from; or "common practice, no source".
    pub source: String,
}

/// Work to be done.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// In words: "post holes by hand".
    pub what: String,
    /// The element by its id; empty for the whole job.
    pub element: String,
    /// How many units.
    pub quantity: f64,
    /// Its unit in words: `m³`, `hole`, `m²`.
    pub unit: String,
    /// Hours of one person a unit.
    pub rate: Rate,
}

/// Hours of one person for a task.
#[derive(Debug, Clone, PartialEq)]
pub struct Hours {
    /// When all goes well.
    pub low: Time,
    /// What to reckon with.
    pub likely: Time,
    /// When it does not.
    pub high: Time,
    /// The working of the likely figure.
    pub trace: Trace,
}

/// Hours of one person, and days of a crew.
///
/// # Source
/// Multiplication; the rate carries its own source.
/// # Symbols
/// | Q | units of the task | ≥ 0 |
/// | r | hours of one person a unit | ≥ 0 |
/// | c | people | 1–50 (ours) |
/// | d | working hours a day | 1–16 (ours) |
/// # Gives
/// Hours of one person; days of the crew, if the task can be shared among them.
/// # Not for
/// Waiting: concrete that sets, deliveries.
/// # Errors
/// None of its own; [`HOURS`] checks the limits.
/// # By hand
/// 7.2 m³ at 8 h / 3.5 m³ a person: 7.2 · 2.286 = 16.5 h; two people of 8 h: 1.03 days.
fn hours<N: Number>(quantity: N, rate: N, crew: N, day: N) -> (N, N) {
    let h = (quantity * rate).named("T", Unit::H);
    (h, (h / (crew * day)).named("D", Unit("days")))
}

/// `order/hours`: hours of people for a task.
pub static HOURS: Working = Working {
    name: "order/hours",
    title: "Hours of people for a task, and days of the crew.",
    source: Source {
        work: "Arithmetic of an estimate; the rate carries its own source",
        place: "common practice, no source",
    },
    not_for: "Waiting: concrete that sets, deliveries.",
    inputs: &[
        Input::new("quantity", "Q", "units of the task", Unit::NONE, Limits::ours(0.0, 1e7)),
        Input::new("rate", "r", "hours of one person a unit", Unit::H, Limits::ours(0.0, 1e4)),
        Input::new("crew", "c", "people", Unit::NONE, Limits::ours(1.0, 50.0)).or(1.0),
        Input::new("day", "d", "working hours a day", Unit::H, Limits::ours(1.0, 16.0)).or(8.0),
    ],
    outputs: &[
        Output { key: "hours", words: "hours of one person", unit: Unit::H },
        Output { key: "days", words: "days of the crew", unit: Unit("days") },
    ],
    run: |g| {
        let (h, d) = hours(g.one("quantity")?, g.one("rate")?, g.one("crew")?, g.one("day")?);
        Ok(vec![Found::One(h), Found::One(d)])
    },
};

/// Hours of one person for a task: low, likely, high.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] outside the limits of [`HOURS`].
pub fn hours_of(task: &Task) -> Result<Hours> {
    let of = |rate: f64| {
        check_range(HOURS.name, &HOURS.inputs[0], task.quantity)?;
        check_range(HOURS.name, &HOURS.inputs[1], rate)?;
        Ok(Time::h(hours(task.quantity, rate, 1.0, 8.0).0))
    };
    Ok(Hours {
        low: of(task.rate.low)?,
        likely: of(task.rate.likely)?,
        high: of(task.rate.high)?,
        trace: Trace::new(&HOURS, vec![task.quantity.into(), task.rate.likely.into(), 1.0.into(), 8.0.into()]),
    })
}

/// The likely hours of a task as a need for `item` ("labour") of the price list.
///
/// # Errors
/// As [`hours_of`].
pub fn labour_need(task: &Task, item: &str) -> Result<Need> {
    let h = hours_of(task)?;
    let what = format!("{} ({} {})", task.what, groundhold_quantity::trim(task.quantity, 2), task.unit);
    Ok(Need::new(item, task.element.as_str(), what, Measured::Time(h.likely)).under(Head::Labour).because(h.trace))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digging_seven_cubic_metres_by_hand_takes_two_to_three_and_a_half_person_days() {
        let rate = |per_day: f64| 8.0 / per_day;
        let rate =
            Rate { low: rate(3.5), likely: rate(2.75), high: rate(2.0), source: "common practice, no source".into() };
        let task = Task { what: "dig".into(), element: "P1".into(), quantity: 7.2, unit: "m³".into(), rate };
        let h = hours_of(&task).unwrap();
        let days = |t: Time| t.to_h() / 8.0;
        assert!((days(h.low) - 2.057).abs() < 0.001 && (days(h.high) - 3.6).abs() < 0.001);
        assert!(h.low <= h.likely && h.likely <= h.high);
        assert_eq!(labour_need(&task, "labour").unwrap().head, Head::Labour);
        assert!(hours_of(&Task { quantity: -1.0, ..task }).is_err());
    }
}
