//! Ontario: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{READ, canada};
use crate::{Condition, Consequence, ExcavationRule, Measured, Region, Status, StepLimits, Trigger};

const DESIGNATED: &str =
    "Building Code of Ontario, division A, designated structures, as opinions and municipalities quote it";

const fn rule(when: &'static [Condition], asks: Consequence, says: &'static str) -> Trigger {
    Trigger::new(Measured::Exposed, Length::m(1.0), when, asks, says, DESIGNATED, Status::Read)
}

/// Ontario.
pub static REGION: Region = Region {
    code: "ca-on",
    name: "Ontario",
    words: canada::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(
            &[Condition::StreetWithin(Length::m(2.0))],
            Consequence::Permit,
            "A wall of more than 1.0 m beside public property is a designated structure: a permit, and designed by part 4 (beside: within 2 m, ours).",
        ),
        rule(
            &[Condition::BuildingWithin(Length::m(1.5))],
            Consequence::Permit,
            "A wall of more than 1.0 m beside the way into a building is a designated structure: a permit, and designed by part 4 (beside: within 1.5 m, ours).",
        ),
    ],
    steps: Some(StepLimits {
        source: "Building Code of Ontario, 9.8.4, private stairs, as the national code has them",
        ..canada::STEPS
    }),
    ramp: Some(canada::RAMP),
    guard: Some(canada::GUARD),
    handrail: Some(canada::HANDRAIL),
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.2),
        says: "Deeper than 1.2 m: supported, or laid back by the type of the soil, before anybody enters.",
        spoil_back: Some(Length::m(1.0)),
        source: "O. Reg. 213/91 (Ontario), s. 233 and 234",
        status: Status::FromMemory,
    }),
    frost: Some(canada::FROST),
    seismic: Some(canada::SEISMIC),
    rain: Some(canada::RAIN),
    timber: Some(canada::TIMBER),
    notes: &[
        "Private land to which the public is admitted counts as public property.",
        "A designated wall has guards where the public comes to its top (4.4.3 of the code, read).",
        "Municipalities and conservation authorities have by-laws on grading and fill of their own.",
    ],
    date_read: READ,
};
