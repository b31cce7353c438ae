//! What the provinces of Canada have in common.

use groundhold_quantity::{Length, Slope};

use crate::locality::USE_CATEGORIES_CANADA;
use crate::{
    ExcavationRule, FrostRule, GuardTrigger, HandrailRule, LookUp, RainRule, RampLimits, RampRow, Status, StepLimits,
    TimberRule, Words,
};

pub(super) const WORDS: Words = Words {
    permit: "building permit",
    office: "the municipality's building department",
    services: "the one-call centre of the province",
    skip: "bin",
    sleeper: "landscape tie",
    turf: "sod",
    drain_stone: "drain rock",
};

pub(super) const STEPS: StepLimits = StepLimits {
    riser: (Some(Length::mm(125.0)), Some(Length::mm(200.0))),
    going: (Some(Length::mm(255.0)), Some(Length::mm(355.0))),
    two_r_plus_g: None,
    pitch_most: None,
    risers_most: None,
    rise_most: Some(Length::m(3.7)),
    riser_difference_most: Some(Length::mm(5.0)),
    source: "National Building Code of Canada 2020, 9.8.3 and 9.8.4, private stairs",
    status: Status::FromMemory,
};

pub(super) const RAMP: RampLimits = RampLimits {
    steepest: Slope::ratio(1.0 / 12.0),
    rows: &[RampRow { slope: Slope::ratio(1.0 / 12.0), run_most: Length::m(9.0) }],
    landing: None,
    crossfall_most: None,
    source: "National Building Code of Canada 2020, 3.8.3, ramps in a barrier-free path",
    status: Status::FromMemory,
};

pub(super) const GUARD: GuardTrigger = GuardTrigger {
    drop: Length::mm(600.0),
    walked_within: Some(Length::m(1.2)),
    height: Some(Length::mm(900.0)),
    source: "National Building Code of Canada 2020, 9.8.8; 1070 mm high from a drop of 1.8 m on",
    status: Status::FromMemory,
};

pub(super) const HANDRAIL: HandrailRule = HandrailRule {
    risers_from: Some(4),
    rise_from: None,
    height: (Some(Length::mm(865.0)), Some(Length::mm(1070.0))),
    source: "National Building Code of Canada 2020, 9.8.7, exterior stairs of a single dwelling",
    status: Status::FromMemory,
};

pub(super) const EXCAVATION: ExcavationRule = ExcavationRule {
    support_from: Length::m(1.4),
    says: "Deeper than 1.4 m with sides of 45° or steeper: shored and braced as it is dug. Provinces have marks of their own.",
    spoil_back: Some(Length::m(1.0)),
    source: "Canada Occupational Health and Safety Regulations, SOR/86-304, s. 3.12, for federal workplaces",
    status: Status::Read,
};

pub(super) const FROST: FrostRule = FrostRule {
    depth: Some(Length::m(1.2)),
    local: true,
    says: "Under unheated work in clay, or in soil that is not clearly told, 1.2 m or more, and never less than the frost goes.",
    source: "National Building Code of Canada 2020, table 9.12.2.2",
    status: Status::FromMemory,
};

pub(super) const SEISMIC: LookUp = LookUp {
    says: "Spectral and peak accelerations of the place, from the national hazard values.",
    source: "National Building Code of Canada 2020, 1.1.3 and its seismic hazard values",
    status: Status::FromMemory,
};

pub(super) const RAIN: RainRule = RainRule {
    intensity: None,
    says: "Intensity for the place by chance and duration, from the national engineering climate data.",
    source: "Environment and Climate Change Canada, intensity, duration and frequency; 15-minute rain in NBC 2020, appendix C",
    status: Status::FromMemory,
};

pub(super) const TIMBER: TimberRule = TimberRule {
    ladder: USE_CATEGORIES_CANADA,
    post: "UC4.1",
    board: "UC4.1",
    relied_on: Some("UC4.2"),
    source: "CSA O80.1, use categories; walls of more than 1.2 m are treated by National Building Code of Canada",
    status: Status::FromMemory,
};
