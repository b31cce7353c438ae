//! No place in particular: nothing is known, everything is asked. And what engineers ask for everywhere.

use groundhold_quantity::{Length, Units};

use super::READ;
use crate::{Condition, Consequence, Measured, Region, Status, Trigger, Words};

/// A pack in which nothing is known: what a region does not say is taken from here.
pub(super) const NOTHING_KNOWN: Region = Region {
    code: "generic",
    name: "this place, as no region is chosen",
    words: Words {
        permit: "permit",
        office: "the local building office",
        services: "the local enquiry service for buried services",
        skip: "skip",
        sleeper: "sleeper",
        turf: "turf",
        drain_stone: "drain stone",
    },
    units: Units::Metric,
    triggers: &[],
    steps: None,
    ramp: None,
    guard: None,
    handrail: None,
    excavation: None,
    frost: None,
    seismic: None,
    rain: None,
    timber: None,
    notes: &["Nothing is known about the rules of the place: ask before anything is dug or ordered."],
    date_read: READ,
};

/// No place in particular.
pub static REGION: Region = NOTHING_KNOWN;

const fn engineer(when: &'static [Condition], says: &'static str) -> Trigger {
    let source = "common practice, no source: an engineer is asked everywhere for loads, slopes and buildings behind";
    Trigger::new(Measured::Retained, Length::ZERO, when, Consequence::Engineer, says, source, Status::CommonPractice)
}

/// What an engineer is asked about at any height, in every place.
pub(crate) static EVERYWHERE: &[Trigger] = &[
    engineer(&[Condition::Vehicles], "Vehicles drive or stand on the ground behind."),
    engineer(&[Condition::Surcharge], "A load stands on the ground behind, or it rises steeper than 1:6."),
    engineer(&[Condition::BuildingWithinHeights(2.0)], "A building stands nearer than twice the retained height."),
    engineer(&[Condition::HoldsFill, Condition::BoundaryWithinHeight], "Fill is held beside a boundary."),
];
