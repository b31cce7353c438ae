//! England: what does it ask for?

use groundhold_quantity::{Angle, Length, Slope, Units};

use super::READ;
use crate::{
    Condition, Consequence, ExcavationRule, GuardTrigger, HandrailRule, Measured, RampLimits, RampRow, Region, Status,
    StepLimits, Trigger, Words,
};

/// England.
pub static REGION: Region = Region {
    code: "uk-england",
    name: "England",
    words: Words {
        permit: "permission",
        office: "the local planning authority and building control",
        services: "the owners' enquiry services for buried services",
        skip: "skip",
    },
    units: Units::Metric,
    triggers: &[
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
    steps: Some(StepLimits {
        riser: (Some(Length::mm(150.0)), Some(Length::mm(220.0))),
        going: (Some(Length::mm(220.0)), Some(Length::mm(300.0))),
        two_r_plus_g: Some((Length::mm(550.0), Length::mm(700.0))),
        pitch_most: Some(Angle::deg(42.0)),
        risers_most: None,
        riser_difference_most: Some(Length::mm(5.0)),
        source: "Approved Document K (England), private stairs",
        status: Status::Read,
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
        source: "Approved Documents K and M (England), ramps",
        status: Status::Read,
    }),
    guard: Some(GuardTrigger {
        drop: Length::mm(600.0),
        walked_within: None,
        source: "600 mm where people have access, by a warranty body for new homes, second-hand",
        status: Status::Read,
    }),
    handrail: Some(HandrailRule {
        risers_from: None,
        rise_from: Some(Length::mm(600.0)),
        source: "Approved Document K (England), handrails; height 900 to 1000 mm",
        status: Status::FromMemory,
    }),
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.0),
        says: "No depth is exempt: every excavation is assessed, and supported where it could fall. 1.0 m is this tool's mark, not the law's.",
        spoil_back: None,
        source: "Construction (Design and Management) Regulations 2015, reg. 22",
        status: Status::FromMemory,
    }),
    notes: &[
        "No height is known here from which a garden wall needs an engineer by law: it is asked all the same.",
        "Conservation areas, listed buildings and conditions of earlier permissions have rules of their own.",
        "The rows of steps are for private stairs in dwellings, and taken for gardens as a guide.",
    ],
    date_read: READ,
};
