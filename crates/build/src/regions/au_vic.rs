//! Victoria: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "page of a Victorian council on retaining walls (Bendigo), quoting the Building Regulations";

const fn rule(above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(Measured::Retained, above, when, Consequence::Permit, says, RULE, Status::Read)
}

/// Victoria.
pub static REGION: Region = Region {
    code: "au-vic",
    name: "Victoria",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(Length::m(1.0), &[], "A wall of 1 m or more needs a building permit.").biting_at_the_limit(),
        rule(
            Length::ZERO,
            &[Condition::BoundaryWithinHeight],
            "A wall on a boundary, or nearer to it than its height, needs a building permit at any height.",
        ),
        rule(
            Length::ZERO,
            &[Condition::BuildingWithinHeights(1.0)],
            "A wall nearer to a building than its height needs a building permit at any height.",
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
    notes: &["Read from one council's page only."],
    date_read: READ,
    ..NOTHING_KNOWN
};
