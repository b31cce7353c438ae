//! Wales: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{READ, kingdom};
use crate::{
    Condition, Consequence, GuardTrigger, HandrailRule, Measured, RampLimits, Region, Status, StepLimits, Trigger,
};

const ENCLOSURE: &str = "page of the Welsh Government on walls, fences and gates";

/// Wales.
pub static REGION: Region = Region {
    code: "uk-wales",
    name: "Wales",
    words: kingdom::WORDS,
    units: Units::Metric,
    triggers: &[
        Trigger::new(
            Measured::WallAndFence,
            Length::m(2.0),
            &[],
            Consequence::Permit,
            "A wall, fence or gate of more than 2 m needs planning permission.",
            ENCLOSURE,
            Status::Read,
        ),
        Trigger::new(
            Measured::WallAndFence,
            Length::m(1.0),
            &[Condition::StreetWithin(Length::m(1.0))],
            Consequence::Permit,
            "A wall, fence or gate of more than 1 m next to a highway used by vehicles, or its footway, needs planning permission (next to: within 1 m, ours).",
            ENCLOSURE,
            Status::Read,
        ),
        Trigger::new(
            Measured::Exposed,
            Length::ft(4.5),
            &[Condition::StreetWithin(Length::ft(12.0))],
            Consequence::Permit,
            "A wall within 4 yards (3.66 m) of a street and more than 4 ft 6 in (1.37 m) above it needs the council's approval.",
            "Highways Act 1980 (England and Wales), s. 167",
            Status::Read,
        ),
        Trigger::new(
            Measured::ExcavationDepth,
            Length::ZERO,
            &[Condition::BuildingWithin(Length::m(6.0)), Condition::BelowFoundation],
            Consequence::Notice,
            "Excavation within 3 m of a neighbour's building and below its foundation, or within 6 m and below a line of 45° from it, needs notice to the neighbour.",
            "Party Wall etc. Act 1996 (England and Wales), s. 6",
            Status::FromMemory,
        ),
    ],
    steps: Some(StepLimits {
        source: "Approved Document K (Wales), private stairs",
        status: Status::FromMemory,
        ..kingdom::STEPS
    }),
    ramp: Some(RampLimits {
        source: "Approved Documents K and M (Wales), ramps",
        status: Status::FromMemory,
        ..kingdom::RAMP
    }),
    guard: Some(GuardTrigger {
        drop: Length::mm(600.0),
        walked_within: None,
        height: Some(Length::m(1.1)),
        source: "Approved Document K (Wales), guarding; height as for balconies of dwellings",
        status: Status::FromMemory,
    }),
    handrail: Some(HandrailRule {
        risers_from: None,
        rise_from: Some(Length::mm(600.0)),
        height: (Some(Length::mm(900.0)), Some(Length::m(1.0))),
        source: "Approved Document K (Wales), handrails",
        status: Status::FromMemory,
    }),
    excavation: Some(kingdom::EXCAVATION),
    frost: Some(kingdom::FROST),
    seismic: Some(kingdom::SEISMIC),
    rain: Some(kingdom::RAIN),
    timber: Some(kingdom::TIMBER),
    notes: &[
        "No height is known here from which a garden wall needs an engineer by law: it is asked all the same.",
        "New paving of some size asks for approval of its drainage (sustainable drainage approving body).",
        "Listed buildings and conditions of earlier permissions have rules of their own.",
    ],
    date_read: READ,
};
