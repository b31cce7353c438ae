//! United States, model codes: what do they ask for, where a town has adopted them?

use groundhold_quantity::{Length, Slope, Units};

use super::READ;
use crate::{
    Condition, Consequence, ExcavationRule, GuardTrigger, HandrailRule, Measured, RampLimits, RampRow, Region, Status,
    StepLimits, Trigger, Words,
};

const EXEMPT: &str =
    "International Building Code and International Residential Code, section 105.2, work exempt from permit";

/// United States, model codes.
pub static REGION: Region = Region {
    code: "us-model",
    name: "United States, model codes",
    words: Words {
        permit: "permit",
        office: "the building department",
        services: "the one-call service (811)",
        skip: "dumpster",
    },
    units: Units::Feet,
    triggers: &[
        Trigger::new(
            Measured::TotalFromBase,
            Length::ft(4.0),
            &[],
            Consequence::Permit,
            "A wall of more than 4 ft from the bottom of its footing to its top needs a permit.",
            EXEMPT,
            Status::Read,
        ),
        Trigger::new(
            Measured::Retained,
            Length::ZERO,
            &[Condition::Surcharge],
            Consequence::Permit,
            "A wall that supports a surcharge needs a permit at any height.",
            EXEMPT,
            Status::Read,
        ),
        Trigger::new(
            Measured::Retained,
            Length::inch(48.0),
            &[],
            Consequence::Engineer,
            "A wall with more than 48 in of unbalanced fill is designed, with 1.5 against sliding and overturning.",
            "International Residential Code, section R404.4 (24 in in the edition of 2009)",
            Status::Read,
        ),
    ],
    steps: Some(StepLimits {
        riser: (None, Some(Length::inch(7.75))),
        going: (Some(Length::inch(10.0)), None),
        two_r_plus_g: None,
        pitch_most: None,
        risers_most: None,
        riser_difference_most: Some(Length::inch(0.375)),
        source: "International Residential Code, section R311.7",
        status: Status::Read,
    }),
    ramp: Some(RampLimits {
        steepest: Slope::ratio(1.0 / 12.0),
        rows: &[RampRow { slope: Slope::ratio(1.0 / 12.0), run_most: Length::ft(30.0) }],
        landing: Some(Length::inch(60.0)),
        crossfall_most: Some(Slope::ratio(1.0 / 48.0)),
        source: "2010 ADA Standards, section 405: 1:12, 30 in of rise a run",
        status: Status::Read,
    }),
    guard: Some(GuardTrigger {
        drop: Length::inch(30.0),
        walked_within: Some(Length::inch(36.0)),
        source: "International Residential Code, section R312; disputed for walls that retain soil",
        status: Status::Read,
    }),
    handrail: Some(HandrailRule {
        risers_from: Some(4),
        rise_from: None,
        source: "International Residential Code, section R311.7.8",
        status: Status::Read,
    }),
    excavation: Some(ExcavationRule {
        support_from: Length::ft(5.0),
        says: "From 5 ft on a protective system unless in stable rock, below that where a cave-in may come; a ladder from 4 ft on.",
        spoil_back: Some(Length::ft(2.0)),
        source: "29 CFR 1926.651 and 1926.652",
        status: Status::Read,
    }),
    notes: &[
        "Model codes bind only where they are adopted, and towns change them.",
        "Some towns count tiers together.",
        "Guards at walls that retain soil are disputed.",
    ],
    date_read: READ,
};
