//! What does a place ask for, from which measure on, and who says so?

use groundhold_quantity::{Angle, Length, Slope, Units};

use crate::{FrostRule, LookUp, RainRule, TimberRule};

/// How far a row of a region pack is confirmed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Status {
    /// The page or a page that quotes it was read on the date.
    Read,
    /// From a published standard as known, not read again: check it before relying on it.
    FromMemory,
    /// Common practice, no source.
    CommonPractice,
}

impl Status {
    /// In words for a sheet.
    pub fn words(self) -> &'static str {
        match self {
            Status::Read => "read",
            Status::FromMemory => "from memory, not read again",
            Status::CommonPractice => "common practice, no source",
        }
    }
}

/// Which measure of which thing a trigger looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measured {
    /// A wall: ground behind above ground in front.
    Retained,
    /// A wall: top above ground in front.
    Exposed,
    /// A wall: top above the underside of its base.
    TotalFromBase,
    /// Walls that stand one above the other: their retained heights together.
    CombinedTiers,
    /// A wall and the fence on it: exposed height and fence together.
    WallAndFence,
    /// A pad: cut below existing ground.
    Cut,
    /// A pad: fill above existing ground.
    Fill,
    /// A pad: the larger of cut and fill.
    LevelChange,
    /// An excavation: its depth.
    ExcavationDepth,
}

impl Measured {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Measured::Retained => "retained height",
            Measured::Exposed => "exposed height",
            Measured::TotalFromBase => "height from the underside of the base",
            Measured::CombinedTiers => "retained height of the tiers together",
            Measured::WallAndFence => "height of wall and fence",
            Measured::Cut => "cut",
            Measured::Fill => "fill",
            Measured::LevelChange => "change of level",
            Measured::ExcavationDepth => "depth of excavation",
        }
    }
}

/// What else must hold for a trigger to fire. All conditions of a trigger must hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Condition {
    /// Boundary nearer than this.
    BoundaryWithin(Length),
    /// Boundary nearer than the retained height.
    BoundaryWithinHeight,
    /// Building nearer than this (for an excavation: the neighbour's).
    BuildingWithin(Length),
    /// Building nearer than this many times the retained height.
    BuildingWithinHeights(f64),
    /// Street nearer than this.
    StreetWithin(Length),
    /// Easement, sewer or main nearer than this.
    EasementWithin(Length),
    /// Another wall nearer than this.
    WallWithin(Length),
    /// Another wall nearer than this many times the lower wall's retained height.
    WallWithinHeights(f64),
    /// A load behind, or ground behind steeper than 1:6.
    Surcharge,
    /// Vehicles behind.
    Vehicles,
    /// A fence on top.
    Fence,
    /// The wall holds fill.
    HoldsFill,
    /// The excavation goes below the neighbour's foundation.
    BelowFoundation,
}

/// Who is to be asked when a trigger fires.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Consequence {
    /// A notice to a neighbour or an office.
    Notice,
    /// A permit, consent or planning approval.
    Permit,
    /// A licensed engineer.
    Engineer,
}

/// One trigger of a region.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trigger {
    /// What is measured.
    pub measured: Measured,
    /// It fires when the measure is more than this, or this much where `at_least` says so.
    pub above: Length,
    /// True where the rule bites at the limit itself ("less than 1 m is exempt").
    pub at_least: bool,
    /// And when all of these hold.
    pub when: &'static [Condition],
    /// Its rule in our words, for the sheet.
    pub says: &'static str,
    /// Who is to be asked.
    pub asks: Consequence,
    /// Title and place of the rule.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

impl Trigger {
    /// One that fires above a limit, under conditions.
    pub(crate) const fn new(
        measured: Measured,
        above: Length,
        when: &'static [Condition],
        asks: Consequence,
        says: &'static str,
        source: &'static str,
        status: Status,
    ) -> Trigger {
        Trigger { measured, above, at_least: false, when, says, asks, source, status }
    }
    /// The same, firing at the limit itself.
    pub(crate) const fn biting_at_the_limit(mut self) -> Trigger {
        self.at_least = true;
        self
    }
}

/// Limits for steps; `None` where the region's rule is silent or not known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepLimits {
    /// Least and most height of a riser.
    pub riser: (Option<Length>, Option<Length>),
    /// Least and most going of a tread.
    pub going: (Option<Length>, Option<Length>),
    /// Least and most of twice the riser and the going.
    pub two_r_plus_g: Option<(Length, Length)>,
    /// Steepest pitch.
    pub pitch_most: Option<Angle>,
    /// Most risers in one flight.
    pub risers_most: Option<u32>,
    /// Most rise of one flight.
    pub rise_most: Option<Length>,
    /// Most that risers of one flight may differ.
    pub riser_difference_most: Option<Length>,
    /// Who says so.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// A gradient and how far it may run without a landing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RampRow {
    /// Gradient at most.
    pub slope: Slope,
    /// Run in plan without a landing at most.
    pub run_most: Length,
}

/// Limits for ramps that somebody in a wheelchair uses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RampLimits {
    /// Steepest gradient of any row.
    pub steepest: Slope,
    /// Gradients and runs, steepest last.
    pub rows: &'static [RampRow],
    /// Length of a landing at least, where known.
    pub landing: Option<Length>,
    /// Crossfall at most, where known.
    pub crossfall_most: Option<Slope>,
    /// Who says so.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// The drop from which a guard is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuardTrigger {
    /// The drop; this much or more.
    pub drop: Length,
    /// Only where people walk nearer to the edge than this, where the rule says so.
    pub walked_within: Option<Length>,
    /// Least height of the guard, where known.
    pub height: Option<Length>,
    /// Who says so.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// From when on steps need a handrail.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HandrailRule {
    /// From this many risers on.
    pub risers_from: Option<u32>,
    /// Or from this rise on.
    pub rise_from: Option<Length>,
    /// Least and most height above the nosings, where known.
    pub height: (Option<Length>, Option<Length>),
    /// Who says so.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// Rules for excavations that people enter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ExcavationRule {
    /// From this depth on: support, notice, statement or licence, as `says` tells.
    pub support_from: Length,
    /// What is asked from there on.
    pub says: &'static str,
    /// Spoil and loads stay at least this far from the edge, where known.
    pub spoil_back: Option<Length>,
    /// Who says so.
    pub source: &'static str,
    /// How far it is confirmed.
    pub status: Status,
}

/// Words that differ from place to place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Words {
    /// The paper that allows to build.
    pub permit: &'static str,
    /// The office that gives it.
    pub office: &'static str,
    /// The enquiry for buried services.
    pub services: &'static str,
    /// Where soil is carried away in.
    pub skip: &'static str,
    /// A heavy baulk of timber laid in a wall.
    pub sleeper: &'static str,
    /// Grass cut to be laid again.
    pub turf: &'static str,
    /// Clean stone round a drain.
    pub drain_stone: &'static str,
}

/// A region pack: a snapshot of what a place asks for. Never complete; the local office decides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Region {
    /// Code in the job file: `uk-england`.
    pub code: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// Words of the place.
    pub words: Words,
    /// Units people speak there.
    pub units: Units,
    /// Triggers for walls, levels and excavations. Empty where none is known.
    pub triggers: &'static [Trigger],
    /// Steps.
    pub steps: Option<StepLimits>,
    /// Ramps.
    pub ramp: Option<RampLimits>,
    /// Guards.
    pub guard: Option<GuardTrigger>,
    /// Handrails.
    pub handrail: Option<HandrailRule>,
    /// Excavations.
    pub excavation: Option<ExcavationRule>,
    /// How deep a base goes for frost.
    pub frost: Option<FrostRule>,
    /// Where the earthquake to be reckoned with is found.
    pub seismic: Option<LookUp>,
    /// Design rain.
    pub rain: Option<RainRule>,
    /// Treatment of timber in and against the ground.
    pub timber: Option<TimberRule>,
    /// What is known to be missing or special, in sentences.
    pub notes: &'static [&'static str],
    /// The day of the snapshot.
    pub date_read: &'static str,
}
