//! New Zealand: what does it ask for?

use groundhold_quantity::{Angle, Length, Units};

use super::{NOTHING_KNOWN, READ};
use crate::locality::HAZARD_CLASSES;
use crate::{
    Condition, Consequence, ExcavationRule, GuardTrigger, HandrailRule, LookUp, Measured, RainRule, Region, Status,
    StepLimits, TimberRule, Trigger, Words,
};

const SCHEDULE: &str = "Building Act 2004 (New Zealand), Schedule 1, cl. 20, with the ministry's guidance";

const fn rule(above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(Measured::Retained, above, when, Consequence::Permit, says, SCHEDULE, Status::Read)
}

/// New Zealand.
pub static REGION: Region = Region {
    code: "nz",
    name: "New Zealand",
    words: Words {
        permit: "building consent",
        office: "the council",
        services: "the national enquiry service for buried services",
        skip: "skip bin",
        sleeper: "sleeper",
        turf: "turf",
        drain_stone: "drainage metal",
    },
    units: Units::Metric,
    triggers: &[
        rule(Length::m(1.5), &[], "A wall that retains more than 1.5 m needs a building consent."),
        rule(
            Length::ZERO,
            &[Condition::Surcharge],
            "A wall with a load behind it (car, building, steep slope) needs a building consent at any height.",
        ),
        rule(
            Length::ZERO,
            &[Condition::BuildingWithinHeights(1.0)],
            "A building nearer than the retained height loads the wall: building consent at any height (distance ours).",
        ),
    ],
    steps: Some(StepLimits {
        riser: (None, Some(Length::mm(190.0))),
        going: (Some(Length::mm(280.0)), None),
        two_r_plus_g: None,
        pitch_most: Some(Angle::deg(37.0)),
        risers_most: None,
        rise_most: Some(Length::m(4.0)),
        riser_difference_most: Some(Length::mm(5.0)),
        source: "Acceptable Solution D1/AS1 (New Zealand), table 6, main private stairs",
        status: Status::FromMemory,
    }),
    guard: Some(GuardTrigger {
        drop: Length::m(1.0),
        walked_within: None,
        height: Some(Length::m(1.0)),
        source: "New Zealand Building Code, clause F4",
        status: Status::Read,
    }),
    handrail: Some(HandrailRule {
        risers_from: Some(4),
        rise_from: None,
        height: (Some(Length::mm(900.0)), Some(Length::m(1.0))),
        source: "Acceptable Solution D1/AS1 (New Zealand), handrails: up to three risers of a single dwelling are exempt",
        status: Status::FromMemory,
    }),
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.5),
        says: "An excavation of 1.5 m or more that people enter is notified to the regulator before work.",
        spoil_back: None,
        source: "Health and Safety in Employment Regulations 1995 (New Zealand), reg. 26",
        status: Status::FromMemory,
    }),
    seismic: Some(LookUp {
        says: "Hazard factor Z or peak acceleration of the place; walls of more than 1.5 m, or that carry buildings, are designed for it.",
        source: "NZS 1170.5, and the ministry's guidance on earthquake geotechnical engineering",
        status: Status::FromMemory,
    }),
    rain: Some(RainRule {
        intensity: None,
        says: "Rain of a chance of 10 % in a year for water led away, 2 % for water kept out of buildings, from the national rain records of the place.",
        source: "New Zealand Building Code, clause E1",
        status: Status::Read,
    }),
    timber: Some(TimberRule {
        ladder: HAZARD_CLASSES,
        post: "H5",
        board: "H4",
        relied_on: None,
        source: "NZS 3640, hazard classes as the timber council tells them: H4 landscaping timbers, H5 retaining walls; H5 is taken for what carries (ours)",
        status: Status::Read,
    }),
    notes: &[
        "On rural land to 3 m without consent where a chartered engineer designs it and it stands its height or more from boundaries and buildings (cl. 41).",
        "Work without consent must still meet the Building Code.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
