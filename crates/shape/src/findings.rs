//! What can the shape of the ground have against itself?

use groundhold_finding::{Kind, Severity};

/// A pad reaches beyond the surveyed ground.
pub static PAD_OUTSIDE_SURVEY: Kind = Kind {
    code: "G-001",
    name: "pad outside the surveyed ground",
    severity: Severity::Stop,
    why: "What is dug and filled there, and what walls there hold, is not known.",
    source: "geometry",
    when_wrong: "None known: survey a few points further out, or move the pad.",
};

/// A pad cannot be shaped at all.
pub static PAD_CANNOT_BE_SHAPED: Kind = Kind {
    code: "G-002",
    name: "pad cannot be shaped",
    severity: Severity::Stop,
    why: "It is left out of the plan; everything that leads to it is left out too.",
    source: "geometry",
    when_wrong: "none known",
};

/// Two pads claim the same ground.
pub static PADS_OVERLAP: Kind = Kind {
    code: "G-003",
    name: "pads overlap",
    severity: Severity::Watch,
    why: "The earlier pad keeps the ground; where their levels differ a step remains that nothing holds.",
    source: "geometry",
    when_wrong: "Pads at one level that are meant to join.",
};

/// A batter does not come to daylight.
pub static BATTER_NO_DAYLIGHT: Kind = Kind {
    code: "G-004",
    name: "batter does not reach daylight",
    severity: Severity::Watch,
    why: "Within its width, or before the survey ends, the batter does not meet the ground; a step is left that nothing holds, and the dig is larger than shown.",
    source: "geometry; width of a batter at most 6 m (ours)",
    when_wrong: "The ground beyond the survey may be met soon after.",
};

/// A batter that is cut and one that is filled want the same ground.
pub static BATTERS_CLASH: Kind = Kind {
    code: "G-005",
    name: "cut and fill batters clash",
    severity: Severity::Watch,
    why: "Ground filled for one element would lie where ground is cut away for another; a step is left that nothing holds. A wall between them, a steeper batter or more distance is needed.",
    source: "geometry",
    when_wrong: "none known",
};

/// A step in the ground that neither a wall nor a batter holds.
pub static STEP_UNHELD: Kind = Kind {
    code: "G-006",
    name: "step in the ground that nothing holds",
    severity: Severity::Watch,
    why: "Bare earth does not stand upright for long; it comes down on what is below and takes away what is above.",
    source: "common practice, no source",
    when_wrong: "A low edge that paving or an edging board will hold.",
};

/// A pad reaches under a wall.
pub static PAD_UNDER_WALL: Kind = Kind {
    code: "G-007",
    name: "pad reaches under a wall",
    severity: Severity::Watch,
    why: "The ground of the pad lies on both sides of the wall: it would be cut or filled under its foot, and where both sides lie level the wall holds nothing.",
    source: "geometry",
    when_wrong: "A low wall that is wanted on the pad as a seat or an edge.",
};

/// A wall retains nothing anywhere.
pub static WALL_RETAINS_NOTHING: Kind = Kind {
    code: "G-010",
    name: "wall retains nothing",
    severity: Severity::Watch,
    why: "The ground behind is nowhere higher than in front: the wall is not needed, stands in the wrong place, or its retained side is named the wrong way round.",
    source: "geometry",
    when_wrong: "A wall that is wanted as an edge or a seat.",
};

/// A fading wall does not meet the ground.
pub static WALL_NEVER_FADES: Kind = Kind {
    code: "G-011",
    name: "wall never fades",
    severity: Severity::Watch,
    why: "Going on in its last direction its top does not meet the ground within reach, or before the survey ends: it needs a return, a given end or a lower pad.",
    source: "geometry; reach at most 30 m (ours)",
    when_wrong: "The ground may be met just beyond the survey.",
};

/// A fading wall ends before the point that was given.
pub static WALL_END_CUT_SHORT: Kind = Kind {
    code: "G-012",
    name: "wall end cut short",
    severity: Severity::Note,
    why: "The ground is met before the given point, so the wall ends earlier and is cheaper than drawn.",
    source: "geometry",
    when_wrong: "The wall is wanted on for its looks: keep the given end then.",
};

/// A wall cannot be shaped.
pub static WALL_CANNOT_BE_SHAPED: Kind = Kind {
    code: "G-013",
    name: "wall cannot be shaped",
    severity: Severity::Stop,
    why: "It is left out of the plan: it is neither checked nor ordered, and the ground behind it is not held.",
    source: "geometry",
    when_wrong: "none known",
};

/// Two walls cross.
pub static WALLS_CROSS: Kind = Kind {
    code: "G-014",
    name: "walls cross",
    severity: Severity::Stop,
    why: "Where two walls run through each other neither can be built as planned, and which of them holds the ground is not known.",
    source: "geometry",
    when_wrong: "none known",
};

/// A ramp is steeper than wished.
pub static RAMP_TOO_STEEP: Kind = Kind {
    code: "G-020",
    name: "ramp steeper than wished",
    severity: Severity::Watch,
    why: "A loaded barrow runs away downhill and cannot be pushed uphill.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// A ramp is steeper than the region allows.
pub static RAMP_OVER_LIMIT: Kind = Kind {
    code: "G-021",
    name: "ramp steeper than the region's limit",
    severity: Severity::Ask,
    why: "Local rules may not allow it for this use.",
    source: "the limit's source is named in the finding",
    when_wrong: "The limit may hold for access to buildings only: ask the authority.",
};

/// A ramp that a wheelchair user cannot climb alone.
pub static RAMP_NOT_SELF_PROPELLED: Kind = Kind {
    code: "G-022",
    name: "gradient too steep for a self-propelled wheelchair",
    severity: Severity::Note,
    why: "Above 1:12 few people can climb by their own arms, and going down is hard to brake.",
    source: "from memory: 1:12 is the steepest ramp of the 2010 ADA Standards for Accessible Design, section 405.2",
    when_wrong: "A ramp for barrows only.",
};

/// A ramp cannot be shaped.
pub static RAMP_CANNOT_BE_SHAPED: Kind = Kind {
    code: "G-023",
    name: "ramp cannot be shaped",
    severity: Severity::Stop,
    why: "It is left out of the plan.",
    source: "geometry",
    when_wrong: "none known",
};

/// No number of risers brings a flight within the limits.
pub static NO_FLIGHT_FITS: Kind = Kind {
    code: "G-030",
    name: "no flight fits the limits",
    severity: Severity::Stop,
    why: "Steps outside the limits are stumbled on; local rules may not allow them.",
    source: "the limits' source is named in the finding",
    when_wrong: "The limits may hold for buildings only.",
};

/// A riser is outside its limits.
pub static RISER_OUT_OF_LIMITS: Kind = Kind {
    code: "G-031",
    name: "riser out of limits",
    severity: Severity::Watch,
    why: "Too high is tiring and steep, too low is not seen and stumbled on.",
    source: "the limits' source is named in the finding",
    when_wrong: "The limits may hold for buildings only.",
};

/// A flight of one riser.
pub static SINGLE_STEP: Kind = Kind {
    code: "G-032",
    name: "single step",
    severity: Severity::Watch,
    why: "One step alone is easily overlooked and stumbled on; a ramp or two lower risers are seen.",
    source: "common practice, no source",
    when_wrong: "A threshold at a door or a gate is expected.",
};

/// A flight that leaves most of its run to a bare slope.
pub static FLIGHT_BETTER_SPLIT: Kind = Kind {
    code: "G-033",
    name: "flight better split with landings",
    severity: Severity::Note,
    why: "The way is longer than its risers need: one flight ends early and leaves a slope below it, and risers spread evenly break the stride.",
    source: "common practice, no source",
    when_wrong: "The slope below is gentle enough to walk as a path.",
};

/// A flight cannot be shaped.
pub static FLIGHT_CANNOT_BE_SHAPED: Kind = Kind {
    code: "G-034",
    name: "flight cannot be shaped",
    severity: Severity::Stop,
    why: "It is left out of the plan.",
    source: "geometry",
    when_wrong: "none known",
};

/// The ground at the foot is not level across the flight.
pub static BOTTOM_RISER_UNEQUAL: Kind = Kind {
    code: "G-035",
    name: "bottom riser unequal across its width",
    severity: Severity::Watch,
    why: "A riser that differs from the others is where people fall; the ground at the foot must be made level across.",
    source: "tolerance ±5 mm between risers: common practice, no source",
    when_wrong: "Paving at the foot is planned anyway and will be laid level across.",
};

/// A drop beside a place where people walk.
pub static DROP_WITHOUT_GUARD: Kind = Kind {
    code: "G-040",
    name: "drop over the guard height",
    severity: Severity::Ask,
    why: "People fall off edges; from a certain drop on local rules ask for a guard or a rail, and a fence adds wind to the wall.",
    source: "the trigger's source is named in the finding",
    when_wrong: "Nobody can reach the edge.",
};

/// Every kind of finding of this stage.
pub static FINDINGS: &[&Kind] = &[
    &PAD_OUTSIDE_SURVEY,
    &PAD_CANNOT_BE_SHAPED,
    &PADS_OVERLAP,
    &BATTER_NO_DAYLIGHT,
    &BATTERS_CLASH,
    &STEP_UNHELD,
    &PAD_UNDER_WALL,
    &WALL_RETAINS_NOTHING,
    &WALL_NEVER_FADES,
    &WALL_END_CUT_SHORT,
    &WALL_CANNOT_BE_SHAPED,
    &WALLS_CROSS,
    &RAMP_TOO_STEEP,
    &RAMP_OVER_LIMIT,
    &RAMP_NOT_SELF_PROPELLED,
    &RAMP_CANNOT_BE_SHAPED,
    &NO_FLIGHT_FITS,
    &RISER_OUT_OF_LIMITS,
    &SINGLE_STEP,
    &FLIGHT_BETTER_SPLIT,
    &FLIGHT_CANNOT_BE_SHAPED,
    &BOTTOM_RISER_UNEQUAL,
    &DROP_WITHOUT_GUARD,
];
