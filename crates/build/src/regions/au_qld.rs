//! Queensland: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "Building Regulation (Queensland) and pages of councils that quote it";

const fn rule(measured: Measured, above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(measured, above, when, Consequence::Permit, says, RULE, Status::Read)
}

/// Queensland.
pub static REGION: Region = Region {
    code: "au-qld",
    name: "Queensland",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(Measured::Retained, Length::m(1.0), &[], "Wall, cut or fill of more than 1 m needs approval."),
        rule(Measured::LevelChange, Length::m(1.0), &[], "Wall, cut or fill of more than 1 m needs approval."),
        rule(
            Measured::Retained,
            Length::ZERO,
            &[Condition::Surcharge],
            "A load within its zone of influence (1.5 m) needs approval at any height.",
        ),
        rule(
            Measured::Retained,
            Length::ZERO,
            &[Condition::BuildingWithin(Length::m(1.5))],
            "A wall nearer than 1.5 m to a building needs approval.",
        ),
        rule(
            Measured::Retained,
            Length::ZERO,
            &[Condition::WallWithin(Length::m(1.5))],
            "A wall nearer than 1.5 m to another one needs approval.",
        ),
        rule(
            Measured::WallAndFence,
            Length::m(2.0),
            &[Condition::Fence],
            "Wall and fence of more than 2 m together need approval.",
        ),
        rule(
            Measured::Retained,
            Length::m(1.0),
            &[Condition::BoundaryWithin(Length::m(1.5))],
            "More than 1 m within 1.5 m of a boundary needs approval of its siting.",
        ),
    ],
    steps: Some(australia::STEPS),
    ramp: Some(australia::RAMP),
    guard: Some(australia::GUARD),
    handrail: Some(australia::HANDRAIL),
    excavation: Some(australia::EXCAVATION),
    seismic: Some(australia::SEISMIC),
    rain: Some(australia::RAIN),
    timber: Some(australia::TIMBER),
    notes: &["Councils add rules of their own."],
    date_read: READ,
    ..NOTHING_KNOWN
};
