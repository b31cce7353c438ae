//! New South Wales: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const CODES: &str = "State Environmental Planning Policy (Exempt and Complying Development Codes) 2008 (NSW), cl. 2.29-2.30, version of 2014";

const fn rule(measured: Measured, above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(measured, above, when, Consequence::Permit, says, CODES, Status::Read)
}

/// New South Wales.
pub static REGION: Region = Region {
    code: "au-nsw",
    name: "New South Wales",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(Measured::LevelChange, Length::mm(600.0), &[], "Cut or fill of more than 600 mm is not exempt."),
        rule(Measured::Exposed, Length::mm(600.0), &[], "A wall higher than 600 mm is not exempt."),
        rule(
            Measured::Exposed,
            Length::ZERO,
            &[Condition::BoundaryWithin(Length::m(1.0))],
            "A wall nearer than 1 m to a boundary of the lot is not exempt.",
        ),
        rule(
            Measured::Exposed,
            Length::ZERO,
            &[Condition::WallWithin(Length::m(2.0))],
            "A wall nearer than 2 m to another one is not exempt.",
        ),
        rule(
            Measured::Exposed,
            Length::ZERO,
            &[Condition::EasementWithin(Length::m(1.0))],
            "A wall nearer than 1 m to an easement, a sewer or a water main is not exempt.",
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
        "Not exempt within 40 m of a waterway, in heritage or flood land.",
        "The wall must be drained, and no water may go onto a neighbour's land.",
        "Fill deeper than 150 mm may cover at most a quarter of the lot, and must be clean excavated natural material.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
