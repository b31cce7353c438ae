//! Ireland: what does it ask for?

use groundhold_quantity::{Angle, Length, Units};

use super::{READ, kingdom};
use crate::{
    Consequence, ExcavationRule, FrostRule, GuardTrigger, HandrailRule, LookUp, Measured, RainRule, RampLimits, Region,
    Status, StepLimits, Trigger, Words,
};

const CLASS_5: &str = "Planning and Development Regulations 2001 (Ireland), Schedule 2, Part 1, Class 5, as a newspaper's planner quotes it";

/// Ireland.
pub static REGION: Region = Region {
    code: "ie",
    name: "Ireland",
    words: Words {
        permit: "planning permission",
        office: "the planning authority and building control of the county or city",
        ..kingdom::WORDS
    },
    units: Units::Metric,
    triggers: &[
        Trigger::new(
            Measured::WallAndFence,
            Length::m(1.2),
            &[],
            Consequence::Permit,
            "In front of a house a wall or fence of more than 1.2 m is not exempt; elsewhere the mark is 2 m. Levels outside the plot may count.",
            CLASS_5,
            Status::Read,
        ),
        Trigger::new(
            Measured::WallAndFence,
            Length::m(2.0),
            &[],
            Consequence::Permit,
            "A wall or fence of more than 2 m is not exempt anywhere in the plot.",
            CLASS_5,
            Status::Read,
        ),
        Trigger::new(
            Measured::LevelChange,
            Length::m(1.0),
            &[],
            Consequence::Permit,
            "Ground of a garden altered by more than 1 m above or below the ground beside it is not exempt.",
            "Planning and Development Regulations 2001 (Ireland), Schedule 2, Part 1, Class 6",
            Status::FromMemory,
        ),
    ],
    steps: Some(StepLimits {
        riser: (None, Some(Length::mm(220.0))),
        going: (Some(Length::mm(220.0)), None),
        two_r_plus_g: Some((Length::mm(550.0), Length::mm(700.0))),
        pitch_most: Some(Angle::deg(42.0)),
        risers_most: None,
        rise_most: None,
        riser_difference_most: None,
        source: "Technical Guidance Document K (Ireland, 2014), private stairs",
        status: Status::FromMemory,
    }),
    ramp: Some(RampLimits {
        source: "Technical Guidance Document M (Ireland, 2010), ramps of an approach",
        status: Status::FromMemory,
        ..kingdom::RAMP
    }),
    guard: Some(GuardTrigger {
        drop: Length::mm(600.0),
        walked_within: None,
        height: Some(Length::m(1.1)),
        source: "Technical Guidance Document K (Ireland, 2014), pedestrian guarding; height as for balconies",
        status: Status::FromMemory,
    }),
    handrail: Some(HandrailRule {
        risers_from: None,
        rise_from: Some(Length::mm(600.0)),
        height: (None, None),
        source: "Technical Guidance Document K (Ireland, 2014), handrails",
        status: Status::FromMemory,
    }),
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.25),
        says: "Every excavation that could fall is supported or laid back; from 1.25 m on nobody enters one that is neither.",
        spoil_back: None,
        source: "Safety, Health and Welfare at Work (Construction) Regulations 2013 (Ireland), part on excavations",
        status: Status::FromMemory,
    }),
    frost: Some(FrostRule {
        source: "Technical Guidance Document A (Ireland), strip foundations",
        status: Status::FromMemory,
        ..kingdom::FROST
    }),
    seismic: Some(LookUp {
        says: "Seismicity is very low; whether an earthquake is reckoned with is for the engineer.",
        source: "Irish National Annex to I.S. EN 1998-1",
        status: Status::FromMemory,
    }),
    rain: Some(RainRule {
        intensity: None,
        says: "Depth for the place by chance and duration, from the national weather service.",
        source: "Met Éireann, depth, duration and frequency of rainfall",
        status: Status::FromMemory,
    }),
    timber: Some(crate::TimberRule {
        source: "EN 335, use class 4 in contact with the ground; BS 8417 for what is ordered",
        status: Status::FromMemory,
        ..kingdom::TIMBER
    }),
    notes: &[
        "Plain blocks and mass concrete of an exempt wall in sight of a road are capped and rendered.",
        "Whether work is exempt is declared by the planning authority on request (Planning and Development Act 2000, s. 5).",
        "Building Control Acts 1990 to 2014: whether a wall is a building is for building control to say.",
        "No height is known here from which a garden wall needs an engineer by law: it is asked all the same.",
    ],
    date_read: READ,
};
