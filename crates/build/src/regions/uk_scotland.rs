//! Scotland: what does it ask for?

use groundhold_quantity::{Angle, Length, Slope, Units};

use super::{READ, kingdom};
use crate::{
    Condition, Consequence, FrostRule, GuardTrigger, HandrailRule, Measured, RainRule, RampLimits, RampRow, Region,
    Status, StepLimits, Trigger, Words,
};

const ENCLOSURE: &str = "Town and Country Planning (General Permitted Development) (Scotland) Order 1992, class 3E, as the government's page tells it";

/// Scotland.
pub static REGION: Region = Region {
    code: "uk-scotland",
    name: "Scotland",
    words: Words {
        permit: "permission or warrant",
        office: "the council, for planning permission and building warrant",
        ..kingdom::WORDS
    },
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
            &[Condition::StreetWithin(Length::m(20.0))],
            Consequence::Permit,
            "A wall, fence or gate of more than 1 m that faces a road, or stands before the front of the house, needs planning permission (20 m is the distance told for flats).",
            ENCLOSURE,
            Status::Read,
        ),
        Trigger::new(
            Measured::Exposed,
            Length::m(1.2),
            &[],
            Consequence::Permit,
            "A wall of more than 1.2 m may need a building warrant.",
            "Building (Scotland) Regulations 2004, schedule 3, work that needs no warrant",
            Status::FromMemory,
        ),
    ],
    steps: Some(StepLimits {
        riser: (Some(Length::mm(100.0)), Some(Length::mm(220.0))),
        going: (Some(Length::mm(225.0)), None),
        two_r_plus_g: Some((Length::mm(550.0), Length::mm(700.0))),
        pitch_most: Some(Angle::deg(42.0)),
        risers_most: Some(16),
        rise_most: None,
        riser_difference_most: None,
        source: "Building standards technical handbook, domestic (Scotland), 4.3, private stairs",
        status: Status::FromMemory,
    }),
    ramp: Some(RampLimits {
        steepest: Slope::ratio(1.0 / 12.0),
        rows: &[
            RampRow { slope: Slope::ratio(1.0 / 20.0), run_most: Length::m(10.0) },
            RampRow { slope: Slope::ratio(1.0 / 15.0), run_most: Length::m(5.0) },
            RampRow { slope: Slope::ratio(1.0 / 12.0), run_most: Length::m(2.0) },
        ],
        landing: None,
        crossfall_most: None,
        source: "Building standards technical handbook, domestic (Scotland), 4.3, ramps",
        status: Status::FromMemory,
    }),
    guard: Some(GuardTrigger {
        drop: Length::mm(600.0),
        walked_within: None,
        height: Some(Length::m(1.1)),
        source: "Building standards technical handbook, domestic (Scotland), 4.4",
        status: Status::FromMemory,
    }),
    handrail: Some(HandrailRule {
        risers_from: None,
        rise_from: Some(Length::mm(600.0)),
        height: (None, None),
        source: "Building standards technical handbook, domestic (Scotland), 4.3",
        status: Status::FromMemory,
    }),
    excavation: Some(kingdom::EXCAVATION),
    frost: Some(FrostRule {
        source: "standards of a warranty body for new homes, 4.3.3 (2020), second-hand for walls; colder glens ask for more",
        local: true,
        ..kingdom::FROST
    }),
    seismic: Some(kingdom::SEISMIC),
    rain: Some(RainRule {
        intensity: None,
        says: "Depth or intensity for the place by chance and duration, from the flood estimation service.",
        source: "Flood Estimation Handbook, rainfall of the place",
        status: Status::FromMemory,
    }),
    timber: Some(kingdom::TIMBER),
    notes: &[
        "The Party Wall Act does not hold here; support of neighbouring land is common law.",
        "In a conservation area or by a listed building no wall is permitted without asking.",
        "Work that needs no warrant must still meet the building regulations.",
    ],
    date_read: READ,
};
