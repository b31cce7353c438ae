//! British Columbia: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{READ, canada};
use crate::{Condition, Consequence, ExcavationRule, Measured, Region, Status, Trigger};

const PAGES: &str = "pages of municipalities in British Columbia (Kamloops, Port Alberni, Sechelt)";

const fn rule(
    measured: Measured,
    above: Length,
    when: &'static [Condition],
    asks: Consequence,
    says: &'static str,
) -> Trigger {
    Trigger::new(measured, above, when, asks, says, PAGES, Status::Read)
}

/// British Columbia.
pub static REGION: Region = Region {
    code: "ca-bc",
    name: "British Columbia",
    words: canada::WORDS,
    units: Units::Metric,
    triggers: &[
        rule(
            Measured::Retained,
            Length::m(1.2),
            &[],
            Consequence::Permit,
            "A wall of more than 1.2 m needs a building permit.",
        ),
        rule(
            Measured::Retained,
            Length::m(1.2),
            &[],
            Consequence::Engineer,
            "A wall of more than 1.2 m is designed and its building reviewed by a registered professional.",
        ),
        rule(
            Measured::CombinedTiers,
            Length::m(1.2),
            &[Condition::WallWithinHeights(2.0)],
            Consequence::Permit,
            "Walls nearer to each other than 2 across to 1 up that hold more than 1.2 m together count as one.",
        ),
        rule(
            Measured::Retained,
            Length::ZERO,
            &[Condition::BuildingWithinHeights(1.0)],
            Consequence::Engineer,
            "A wall that carries a building is designed by a registered professional at any height (nearer than its height, ours).",
        ),
    ],
    steps: Some(canada::STEPS),
    ramp: Some(canada::RAMP),
    guard: Some(canada::GUARD),
    handrail: Some(canada::HANDRAIL),
    excavation: Some(ExcavationRule {
        support_from: Length::m(1.2),
        says: "Deeper than 1.2 m: sloped, benched or shored before a worker enters; ground behind steeper than 3:1, vibration, water or a structure beside it: written instructions of an engineer.",
        spoil_back: None,
        source: "Occupational Health and Safety Regulation (British Columbia), 20.78 and 20.81",
        status: Status::Read,
    }),
    frost: Some(canada::FROST),
    seismic: Some(canada::SEISMIC),
    rain: Some(canada::RAIN),
    timber: Some(canada::TIMBER),
    notes: &[
        "Some municipalities ask for a permit at any height.",
        "Some measure from the underside of the footing.",
        "Steep slopes and land by water are development permit areas.",
    ],
    date_read: READ,
};
