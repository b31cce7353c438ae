//! United States, model codes: what do they ask for, where a town has adopted them?

use groundhold_quantity::{Length, Slope, Units};

use super::READ;
use crate::locality::USE_CATEGORIES;
use crate::{
    Condition, Consequence, ExcavationRule, FrostRule, GuardTrigger, HandrailRule, LookUp, Measured, RainRule,
    RampLimits, RampRow, Region, Status, StepLimits, TimberRule, Trigger, Words,
};

const EXEMPT: &str =
    "International Building Code and International Residential Code, section 105.2, work exempt from permit";

/// United States, model codes: the pack, from which that of the building code takes what is the same.
pub(super) const PACK: Region = Region {
    code: "us-model",
    name: "United States, model codes",
    words: Words {
        permit: "permit",
        office: "the building department",
        services: "the one-call service (811)",
        skip: "dumpster",
        sleeper: "landscape tie",
        turf: "sod",
        drain_stone: "washed stone",
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
        Trigger::new(
            Measured::Retained,
            Length::inch(24.0),
            &[Condition::Surcharge],
            Consequence::Engineer,
            "A wall of more than 24 in that resists loads beside those of the soil is designed, with 1.5 against sliding and overturning.",
            "International Residential Code, section R404.4",
            Status::FromMemory,
        ),
    ],
    steps: Some(StepLimits {
        riser: (None, Some(Length::inch(7.75))),
        going: (Some(Length::inch(10.0)), None),
        two_r_plus_g: None,
        pitch_most: None,
        risers_most: None,
        rise_most: Some(Length::inch(151.0)),
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
        height: Some(Length::inch(36.0)),
        source: "International Residential Code, section R312; disputed for walls that retain soil",
        status: Status::Read,
    }),
    handrail: Some(HandrailRule {
        risers_from: Some(4),
        rise_from: None,
        height: (Some(Length::inch(34.0)), Some(Length::inch(38.0))),
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
    frost: Some(FrostRule {
        depth: Some(Length::inch(12.0)),
        local: true,
        says: "12 in or more below undisturbed ground, and below the frost line of the place.",
        source: "International Residential Code, sections R403.1.4 and R403.1.4.1, frost line by table R301.2",
        status: Status::Read,
    }),
    seismic: Some(LookUp {
        says: "Mapped accelerations and site class of the place, by address.",
        source: "ASCE/SEI 7, chapters 11, 20 and 22; International Residential Code, table R301.2",
        status: Status::FromMemory,
    }),
    rain: Some(RainRule {
        intensity: None,
        says: "Intensity for the place by chance and duration, from the national precipitation frequency atlas.",
        source: "NOAA Atlas 14, Precipitation-Frequency Atlas of the United States",
        status: Status::FromMemory,
    }),
    timber: Some(TimberRule {
        ladder: USE_CATEGORIES,
        post: "UC4A",
        board: "UC4A",
        relied_on: Some("UC4B"),
        source: "AWPA U1, use categories as pages quote it: 4A in contact with the ground, 4B where failure is critical or decay strong",
        status: Status::Read,
    }),
    notes: &[
        "Model codes bind only where they are adopted, and towns change them.",
        "Some towns count tiers together.",
        "Guards at walls that retain soil are disputed.",
    ],
    date_read: READ,
};

/// United States, model codes.
pub static REGION: Region = PACK;
