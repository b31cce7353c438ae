//! England: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{READ, kingdom};
use crate::{Condition, Consequence, GuardTrigger, HandrailRule, Measured, Region, Status, Trigger};

const ENCLOSURE: &str = "page of an English council (Darlington) on walls, fences and gates";

/// England.
pub static REGION: Region = Region {
    code: "uk-england",
    name: "England",
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
            "A wall, fence or gate of more than 1 m beside a highway used by vehicles needs planning permission (beside: within 1 m, ours).",
            ENCLOSURE,
            Status::Read,
        ),
        Trigger::new(
            Measured::Exposed,
            Length::ft(4.5),
            &[Condition::StreetWithin(Length::ft(12.0))],
            Consequence::Permit,
            "A wall within 4 yards (3.66 m) of a street and more than 4 ft 6 in (1.37 m) above it needs the council's approval.",
            "Highways Act 1980, s. 167",
            Status::Read,
        ),
        Trigger::new(
            Measured::LevelChange,
            Length::mm(300.0),
            &[],
            Consequence::Permit,
            "Raising or lowering the ground, or a platform, by more than 300 mm may need planning permission.",
            "Town and Country Planning (General Permitted Development) (England) Order 2015, as told in forums",
            Status::CommonPractice,
        ),
        Trigger::new(
            Measured::ExcavationDepth,
            Length::ZERO,
            &[Condition::BuildingWithin(Length::m(6.0)), Condition::BelowFoundation],
            Consequence::Notice,
            "Excavation within 3 m of a neighbour's building and below its foundation, or within 6 m and below a line of 45° from it, needs notice to the neighbour.",
            "Party Wall etc. Act 1996, s. 6",
            Status::FromMemory,
        ),
    ],
    steps: Some(kingdom::STEPS),
    ramp: Some(kingdom::RAMP),
    guard: Some(GuardTrigger {
        drop: Length::mm(600.0),
        walked_within: None,
        height: Some(Length::m(1.1)),
        source: "600 mm where people have access, by a warranty body for new homes, second-hand",
        status: Status::Read,
    }),
    handrail: Some(HandrailRule {
        risers_from: None,
        rise_from: Some(Length::mm(600.0)),
        height: (Some(Length::mm(900.0)), Some(Length::m(1.0))),
        source: "Approved Document K (England), handrails; height 900 to 1000 mm",
        status: Status::FromMemory,
    }),
    excavation: Some(kingdom::EXCAVATION),
    frost: Some(kingdom::FROST),
    seismic: Some(kingdom::SEISMIC),
    rain: Some(kingdom::RAIN),
    timber: Some(kingdom::TIMBER),
    notes: &[
        "No height is known here from which a garden wall needs an engineer by law: it is asked all the same.",
        "Conservation areas, listed buildings and conditions of earlier permissions have rules of their own.",
        "The rows of steps are for private stairs in dwellings, and taken for gardens as a guide.",
    ],
    date_read: READ,
};
