//! What the states of Australia have in common.

use groundhold_quantity::{Length, Slope};

use crate::locality::HAZARD_CLASSES;
use crate::{
    ExcavationRule, GuardTrigger, HandrailRule, LookUp, RainRule, RampLimits, RampRow, Status, StepLimits, TimberRule,
    Words,
};

pub(super) const WORDS: Words = Words {
    permit: "approval",
    office: "the council",
    services: "the national enquiry service for buried services",
    skip: "skip bin",
    sleeper: "sleeper",
    turf: "turf",
    drain_stone: "drainage aggregate",
};

pub(super) const STEPS: StepLimits = StepLimits {
    riser: (Some(Length::mm(115.0)), Some(Length::mm(190.0))),
    going: (Some(Length::mm(240.0)), Some(Length::mm(355.0))),
    two_r_plus_g: Some((Length::mm(550.0), Length::mm(700.0))),
    pitch_most: None,
    risers_most: Some(18),
    rise_most: None,
    riser_difference_most: Some(Length::mm(5.0)),
    source: "National Construction Code of Australia, Housing Provisions, part 11.2",
    status: Status::FromMemory,
};

pub(super) const RAMP: RampLimits = RampLimits {
    steepest: Slope::ratio(1.0 / 14.0),
    rows: &[
        RampRow { slope: Slope::ratio(1.0 / 20.0), run_most: Length::m(15.0) },
        RampRow { slope: Slope::ratio(1.0 / 14.0), run_most: Length::m(9.0) },
    ],
    landing: Some(Length::m(1.2)),
    crossfall_most: None,
    source: "AS 1428.1, ramps and walkways",
    status: Status::Read,
};

pub(super) const GUARD: GuardTrigger = GuardTrigger {
    drop: Length::m(1.0),
    walked_within: None,
    height: Some(Length::m(1.0)),
    source: "National Construction Code of Australia, Housing Provisions, part 11.3",
    status: Status::FromMemory,
};

pub(super) const HANDRAIL: HandrailRule = HandrailRule {
    risers_from: None,
    rise_from: Some(Length::m(1.0)),
    height: (Some(Length::mm(865.0)), None),
    source: "National Construction Code of Australia, Housing Provisions, part 11.3",
    status: Status::FromMemory,
};

pub(super) const EXCAVATION: ExcavationRule = ExcavationRule {
    support_from: Length::m(1.5),
    says: "Work in or near a trench deeper than 1.5 m is high-risk construction work: a safe work method statement first.",
    spoil_back: None,
    source: "model Work Health and Safety Regulations (Australia), reg. 291",
    status: Status::FromMemory,
};

pub(super) const SEISMIC: LookUp = LookUp {
    says: "Hazard factor Z of the place, from the map or the table of towns.",
    source: "AS 1170.4, section 3",
    status: Status::FromMemory,
};

pub(super) const RAIN: RainRule = RainRule {
    intensity: None,
    says: "Intensity for the place by chance and duration, from the design rainfalls of the national weather service.",
    source: "AS/NZS 3500.3 and Australian Rainfall and Runoff, design rainfalls of 2016",
    status: Status::FromMemory,
};

pub(super) const TIMBER: TimberRule = TimberRule {
    ladder: HAZARD_CLASSES,
    post: "H4",
    board: "H4",
    relied_on: Some("H5"),
    source: "AS 1604.1, hazard classes as pages quote it: H4 in the ground, H5 in the ground where failure is critical",
    status: Status::Read,
};
