//! Tasmania: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const LIMITS: &str = "Director's Determination, Categories of Building and Demolition Work (Tasmania), standard limitations of low-risk work, as the regulator's page tells them";

const fn rule(measured: Measured, above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(measured, above, when, Consequence::Permit, says, LIMITS, Status::Read)
}

/// Tasmania.
pub static REGION: Region = Region {
    code: "au-tas",
    name: "Tasmania",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(
            Measured::LevelChange,
            Length::mm(500.0),
            &[Condition::BoundaryWithin(Length::m(1.5))],
            "Cut or fill of more than 500 mm within 1.5 m of a boundary is not low-risk work.",
        ),
        rule(
            Measured::LevelChange,
            Length::m(1.2),
            &[],
            "Cut or fill of more than 1.2 m is not low-risk work of an owner; by a licensed builder the mark is 1.8 m.",
        ),
        rule(
            Measured::Retained,
            Length::mm(500.0),
            &[Condition::BoundaryWithin(Length::m(1.5))],
            "A wall that holds more than 500 mm of cut or fill within 1.5 m of a boundary is not low-risk work.",
        ),
        rule(
            Measured::Retained,
            Length::m(1.2),
            &[],
            "A wall that holds more than 1.2 m of cut or fill is not low-risk work of an owner; by a licensed builder the mark is 1.8 m.",
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
    notes: &[
        "In an easement, on landslip or flood land and by the coast a wall is not low-risk work at any height.",
        "Planning approval is a question of its own.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
