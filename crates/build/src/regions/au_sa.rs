//! South Australia: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "page of a South Australian council on retaining walls (Onkaparinga)";

const fn rule(measured: Measured, above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(measured, above, when, Consequence::Permit, says, RULE, Status::Read)
}

/// South Australia.
pub static REGION: Region = Region {
    code: "au-sa",
    name: "South Australia",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(Measured::Retained, Length::m(1.0), &[], "A wall that retains more than 1 m needs approval."),
        rule(
            Measured::CombinedTiers,
            Length::m(1.0),
            &[Condition::WallWithinHeights(2.0)],
            "Tiers used together that retain more than 1 m need approval; twice their height apart is advised.",
        ),
        rule(
            Measured::WallAndFence,
            Length::m(2.1),
            &[Condition::Fence],
            "Wall and fence of more than 2.1 m from the lower side need approval.",
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
        "Approval in any case for heritage places, the hills face zone and flood land.",
        "Read from one council's page only.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
