//! Australian Capital Territory: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "Planning (Exempt Development) Regulation 2023 (ACT), Schedule 1, section 1.50, as the territory's planning page tells it";

const fn rule(measured: Measured, above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(measured, above, when, Consequence::Permit, says, RULE, Status::Read)
}

/// Australian Capital Territory.
pub static REGION: Region = Region {
    code: "au-act",
    name: "Australian Capital Territory",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(
            Measured::Exposed,
            Length::mm(400.0),
            &[Condition::BoundaryWithin(Length::m(1.5))],
            "A wall of more than 0.4 m within 1.5 m of a boundary is not exempt.",
        ),
        rule(
            Measured::Retained,
            Length::m(1.0),
            &[Condition::HoldsFill],
            "A wall that holds more than 1 m of fill is not exempt.",
        ),
        rule(Measured::Retained, Length::m(1.2), &[], "A wall that holds a cut of more than 1.2 m is not exempt."),
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
        "The 0.4 m holds too between the front boundary and the building line.",
        "Exemption from planning approval is not exemption from building approval: Schedule 1 of the Building (General) Regulation 2008 was not read.",
        "Near a boundary only one such structure is exempt.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
