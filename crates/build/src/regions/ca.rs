//! Canada, model code: what does it ask for, where a province has adopted it?

use groundhold_quantity::Units;

use super::{NOTHING_KNOWN, READ, canada};
use crate::Region;

/// Canada, model code.
pub static REGION: Region = Region {
    code: "ca",
    name: "Canada, model code",
    words: canada::WORDS,
    units: Units::Metric,
    steps: Some(canada::STEPS),
    ramp: Some(canada::RAMP),
    guard: Some(canada::GUARD),
    handrail: Some(canada::HANDRAIL),
    excavation: Some(canada::EXCAVATION),
    frost: Some(canada::FROST),
    seismic: Some(canada::SEISMIC),
    rain: Some(canada::RAIN),
    timber: Some(canada::TIMBER),
    notes: &[
        "The model code binds where a province has adopted it; permits for walls are set by provinces and municipalities, commonly from 1.0 m or 1.2 m on.",
        "Ontario and British Columbia have packs of their own.",
    ],
    date_read: READ,
    ..NOTHING_KNOWN
};
