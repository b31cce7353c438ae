//! Western Australia: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Condition, Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "pages of councils in Western Australia (Vincent, Serpentine Jarrahdale, Northam)";

const fn rule(above: Length, when: &'static [Condition], says: &'static str) -> Trigger {
    Trigger::new(Measured::Retained, above, when, Consequence::Permit, says, RULE, Status::Read)
}

/// Western Australia.
pub static REGION: Region = Region {
    code: "au-wa",
    name: "Western Australia",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(Length::mm(500.0), &[], "A wall of more than 0.5 m needs a permit."),
        rule(
            Length::ZERO,
            &[Condition::BoundaryWithinHeight],
            "A wall at a boundary, or one that protects adjoining land, needs a permit at any height.",
        ),
        rule(
            Length::mm(500.0),
            &[Condition::BoundaryWithin(Length::m(1.0))],
            "A wall of more than 0.5 m stands back 1 m from the boundary.",
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
    notes: &["Read from pages of three councils; \"at a boundary\" is taken as nearer than the wall's height (ours)."],
    date_read: READ,
    ..NOTHING_KNOWN
};
