//! New Zealand: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::READ;
use crate::{Condition, Consequence, ExcavationRule, GuardTrigger, Measured, Region, Status, Trigger, Words};

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
    steps: None,
    ramp: None,
    guard: Some(GuardTrigger {
        drop: Length::m(1.0),
        walked_within: None,
        source: "New Zealand Building Code, clause F4",
        status: Status::Read,
    }),
    handrail: None,
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.5),
        says: "An excavation of 1.5 m or more that people enter is notified to the regulator before work.",
        spoil_back: None,
        source: "Health and Safety in Employment Regulations 1995 (New Zealand), reg. 26",
        status: Status::FromMemory,
    }),
    notes: &[
        "On rural land to 3 m without consent where a chartered engineer designs it and it stands its height or more from boundaries and buildings (cl. 41).",
        "Work without consent must still meet the Building Code.",
    ],
    date_read: READ,
};
