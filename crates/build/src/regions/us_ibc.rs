//! United States, building code: what does it ask for at other than houses of one or two dwellings, where it is adopted?

use groundhold_quantity::Length;

use super::us_model;
use crate::{GuardTrigger, HandrailRule, Region, Status, StepLimits};

/// United States, building code.
pub static REGION: Region = Region {
    code: "us-ibc",
    name: "United States, building code",
    steps: Some(StepLimits {
        riser: (Some(Length::inch(4.0)), Some(Length::inch(7.0))),
        going: (Some(Length::inch(11.0)), None),
        two_r_plus_g: None,
        pitch_most: None,
        risers_most: None,
        rise_most: Some(Length::ft(12.0)),
        riser_difference_most: Some(Length::inch(0.375)),
        source: "International Building Code, section 1011.5 and 1011.8",
        status: Status::FromMemory,
    }),
    guard: Some(GuardTrigger {
        drop: Length::inch(30.0),
        walked_within: Some(Length::inch(36.0)),
        height: Some(Length::inch(42.0)),
        source: "International Building Code, section 1015; disputed for walls that retain soil",
        status: Status::FromMemory,
    }),
    handrail: Some(HandrailRule {
        risers_from: Some(2),
        rise_from: None,
        height: (Some(Length::inch(34.0)), Some(Length::inch(38.0))),
        source: "International Building Code, section 1011.11 and 1014; on both sides",
        status: Status::FromMemory,
    }),
    notes: &[
        "For apartments, shops and public ground; houses of one and two dwellings go by the pack of the model codes.",
        "Model codes bind only where they are adopted, and towns change them.",
        "A single riser at a door has exceptions of its own.",
    ],
    ..us_model::PACK
};
