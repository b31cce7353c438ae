//! Northern Territory: what does it ask for?

use groundhold_quantity::{Length, Units};

use super::{NOTHING_KNOWN, READ, australia};
use crate::{Consequence, Measured, Region, Status, Trigger};

const RULE: &str = "Building Regulations 1993 (Northern Territory), reg. 3, which names what is exempt";

/// Northern Territory.
pub static REGION: Region = Region {
    code: "au-nt",
    name: "Northern Territory",
    words: australia::WORDS,
    units: Units::Metric,
    triggers: &[Trigger::new(
        Measured::Retained,
        Length::ZERO,
        &[],
        Consequence::Permit,
        "No retaining wall stands among the exempt works: in a building control area a permit is asked about at any height.",
        RULE,
        Status::Read,
    )],
    steps: Some(australia::STEPS),
    ramp: Some(australia::RAMP),
    guard: Some(australia::GUARD),
    handrail: Some(australia::HANDRAIL),
    excavation: Some(australia::EXCAVATION),
    seismic: Some(australia::SEISMIC),
    rain: Some(australia::RAIN),
    timber: Some(australia::TIMBER),
    notes: &[
        "Permits are asked for in building control areas only.",
        "No height is known here from which a wall needs an engineer by law: it is asked all the same.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
