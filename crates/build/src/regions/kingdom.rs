//! What the parts of the United Kingdom have in common.

use groundhold_quantity::{Angle, Length, RainIntensity, Slope};

use crate::locality::USE_CLASSES;
use crate::{ExcavationRule, FrostRule, LookUp, RainRule, RampLimits, RampRow, Status, StepLimits, TimberRule, Words};

pub(super) const WORDS: Words = Words {
    permit: "permission",
    office: "the local planning authority and building control",
    services: "the owners' enquiry services for buried services",
    skip: "skip",
    sleeper: "sleeper",
    turf: "turf",
    drain_stone: "clean shingle",
};

/// Private stairs of England, and of Wales in nearly the same words.
pub(super) const STEPS: StepLimits = StepLimits {
    riser: (Some(Length::mm(150.0)), Some(Length::mm(220.0))),
    going: (Some(Length::mm(220.0)), Some(Length::mm(300.0))),
    two_r_plus_g: Some((Length::mm(550.0), Length::mm(700.0))),
    pitch_most: Some(Angle::deg(42.0)),
    risers_most: None,
    rise_most: None,
    riser_difference_most: Some(Length::mm(5.0)),
    source: "Approved Document K (England), private stairs",
    status: Status::Read,
};

/// Ramps of England, Wales and, in the same figures, Ireland.
pub(super) const RAMP: RampLimits = RampLimits {
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
};

pub(super) const EXCAVATION: ExcavationRule = ExcavationRule {
    support_from: Length::m(1.0),
    says: "No depth is exempt: every excavation is assessed, and supported where it could fall. 1.0 m is this tool's mark, not the law's.",
    spoil_back: None,
    source: "Construction (Design and Management) Regulations 2015, reg. 22",
    status: Status::FromMemory,
};

pub(super) const FROST: FrostRule = FrostRule {
    depth: Some(Length::mm(450.0)),
    local: false,
    says: "In soil that heaves in frost the underside lies 450 mm or more below the finished ground.",
    source: "standards of a warranty body for new homes, 4.3.3 (2020), second-hand for walls; strip foundations of Approved Document A likewise",
    status: Status::Read,
};

pub(super) const SEISMIC: LookUp = LookUp {
    says: "Seismicity is very low; whether an earthquake is reckoned with is for the engineer.",
    source: "UK National Annex to BS EN 1998-1, and PD 6698",
    status: Status::FromMemory,
};

/// Rain of 0.014 l/s on every square metre, for paving.
pub(super) const RAIN: RainRule = RainRule {
    intensity: Some(RainIntensity::mm_per_h(50.4)),
    says: "0.014 l/s on every square metre of paving in normal situations; a garden below a hill asks for the rain of the place.",
    source: "Approved Document H (England, 2015), section 2 of H3, as building control tells it",
    status: Status::Read,
};

pub(super) const TIMBER: TimberRule = TimberRule {
    ladder: USE_CLASSES,
    post: "UC4",
    board: "UC4",
    relied_on: None,
    source: "BS 8417 with EN 335, as the trade press quotes it: use class 4 in contact with the ground; 15 or 30 years are ordered with it",
    status: Status::Read,
};
