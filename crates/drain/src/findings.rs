//! What can the water have against a plan?

use groundhold_finding::{Kind, Severity};

/// The ground goes on rising beyond the survey.
pub static CATCHMENT_CUT: Kind = Kind {
    code: "W-001",
    name: "catchment cut by the survey's edge",
    severity: Severity::Watch,
    why: "Water from ground that was not measured runs to the wall as well; pipe and flow are too small by as much.",
    source: "geometry of the surveyed ground",
    when_wrong: "A ditch, kerb or wall just above the survey already takes that water.",
};

/// Nobody has said where the pipe ends.
pub static OUTLET_UNKNOWN: Kind = Kind {
    code: "W-002",
    name: "outlet not known",
    severity: Severity::Watch,
    why: "A drain without an outlet is a tank: it fills, and the wall carries water as well as soil, about twice the push.",
    source: "hydrostatics; the most often named cause of failure, common practice, no source",
    when_wrong: "Where the pipe ends in a soakaway that was tested and lies lower.",
};

/// The pipe falls less than is wished.
pub static FALL_SMALL: Kind = Kind {
    code: "W-003",
    name: "pipe laid flatter than wished",
    severity: Severity::Watch,
    why: "A flat pipe silts up, and a sag of a few millimetres holds water; it has to be laid to a level, not to the eye.",
    source: "common practice, no source: 1:80 to 1:100, never below 1:150",
    when_wrong: "A smooth pipe laid by laser on a firm bed.",
};

/// The outlet lies higher than the pipe can reach.
pub static OUTLET_TOO_HIGH: Kind = Kind {
    code: "W-004",
    name: "outlet higher than the pipe",
    severity: Severity::Stop,
    why: "Water does not leave; it stands behind the wall to the level of the outlet.",
    source: "levels of the plan",
    when_wrong: "Where the outlet's level was guessed.",
};

/// No pipe of the catalogue carries the flow.
pub static PIPE_TOO_SMALL: Kind = Kind {
    code: "W-005",
    name: "pipe too small for the flow",
    severity: Severity::Stop,
    why: "In the design rain the pipe runs over its mark and water rises in the stone behind the wall.",
    source: "Manning (1891); filled to three quarters at most: common practice, no source",
    when_wrong: "Where most of the surface water is caught above the wall before it reaches the stone.",
};

/// The stone alone does not keep the soil back.
pub static FABRIC_NEEDED: Kind = Kind {
    code: "W-006",
    name: "fabric between soil and stone",
    severity: Severity::Note,
    why: "Soil washes into the stone, the drain clogs and the ground behind sinks.",
    source: "USDA-NRCS NEH 633 ch. 26, Table 26-2",
    when_wrong: "Stiff clay that holds together; some builders leave fabric out because it clogs in silt.",
};

/// The stone is too fine to drain the soil.
pub static STONE_TOO_FINE: Kind = Kind {
    code: "W-007",
    name: "drain fill too fine",
    severity: Severity::Watch,
    why: "Water leaves the soil faster than the fill takes it, and pressure builds up behind the wall.",
    source: "USDA-NRCS NEH 633 ch. 26, least D15",
    when_wrong: "None known.",
};

/// The drain is left out on purpose.
pub static NO_DRAIN: Kind = Kind {
    code: "W-008",
    name: "wall without drain",
    severity: Severity::Watch,
    why: "The wall must carry water to its top; the push is about twice that of drained soil.",
    source: "hydrostatics",
    when_wrong: "Free-draining sand above any water, with open joints in the wall.",
};

/// There is no design rain.
pub static RAIN_UNKNOWN: Kind = Kind {
    code: "W-009",
    name: "design rain not given",
    severity: Severity::Watch,
    why: "Without it neither the flow nor the pipe's reserve can be worked out; the pipe is the usual one.",
    source: "rational method",
    when_wrong: "A wall with next to no ground above it.",
};

/// The pipe to the outlet runs under a wall.
pub static PIPE_UNDER_WALL: Kind = Kind {
    code: "W-010",
    name: "outlet pipe passes under a wall",
    severity: Severity::Watch,
    why: "A post hole may meet the pipe, and the trench loosens the ground that holds the wall's foot.",
    source: "geometry of the plan",
    when_wrong: "Where the pipe runs round the wall's end; the plan draws it straight.",
};

/// The outlet lies below the ground.
pub static OUTLET_BURIED: Kind = Kind {
    code: "W-011",
    name: "outlet below the ground",
    severity: Severity::Watch,
    why: "An open end in the ground chokes; it needs a ditch, a gully or a soakaway of its own.",
    source: "levels of the plan",
    when_wrong: "Where the pipe joins a drain or soakaway there.",
};

/// The pipe would hang above the ground.
pub static PIPE_ABOVE_GROUND: Kind = Kind {
    code: "W-012",
    name: "outlet pipe above the ground",
    severity: Severity::Watch,
    why: "A pipe in the air is kicked, frozen and cut; it sags and holds water.",
    source: "levels of the plan",
    when_wrong: "Where it follows the ground instead of the straight line.",
};

/// Where the water goes after the outlet.
pub static DISCHARGE: Kind = Kind {
    code: "W-013",
    name: "discharge agreed",
    severity: Severity::Note,
    why: "Water led onto a neighbour, a road or into a foul sewer brings claims and orders to remove the drain.",
    source: "common practice, no source; local rules decide",
    when_wrong: "None known.",
};

/// The grading of the soil is not known.
pub static GRADING_UNKNOWN: Kind = Kind {
    code: "W-014",
    name: "soil grading not known",
    severity: Severity::Note,
    why: "Whether the stone keeps the soil back cannot be said; fabric is then the usual answer.",
    source: "USDA-NRCS NEH 633 ch. 26",
    when_wrong: "None known.",
};

/// Water stands in the ground higher than the wall's foot.
pub static GROUNDWATER: Kind = Kind {
    code: "W-015",
    name: "groundwater behind the wall",
    severity: Severity::Watch,
    why: "It runs all year and is not in the flow from rain; the cut may slump while it is open.",
    source: "common practice, no source",
    when_wrong: "Water perched on a clay seam after rain only.",
};

/// Figures that cannot be a wall, a rain or a pipe.
pub static NOT_DRAINABLE: Kind = Kind {
    code: "W-016",
    name: "drain figures not understood",
    severity: Severity::Stop,
    why: "What cannot be worked out is left out, and the plan has no drain there.",
    source: "none needed",
    when_wrong: "None known.",
};

/// The pipe to the outlet leaves the survey.
pub static OUTLET_BEYOND_SURVEY: Kind = Kind {
    code: "W-017",
    name: "outlet pipe beyond the survey",
    severity: Severity::Watch,
    why: "How deep the trench is there is not known, nor whether the ground lies lower than the outlet.",
    source: "geometry of the surveyed ground",
    when_wrong: "None known.",
};

/// Every kind of this crate.
pub static FINDINGS: &[&Kind] = &[
    &CATCHMENT_CUT,
    &OUTLET_UNKNOWN,
    &FALL_SMALL,
    &OUTLET_TOO_HIGH,
    &PIPE_TOO_SMALL,
    &FABRIC_NEEDED,
    &STONE_TOO_FINE,
    &NO_DRAIN,
    &RAIN_UNKNOWN,
    &PIPE_UNDER_WALL,
    &OUTLET_BURIED,
    &PIPE_ABOVE_GROUND,
    &DISCHARGE,
    &GRADING_UNKNOWN,
    &GROUNDWATER,
    &NOT_DRAINABLE,
    &OUTLET_BEYOND_SURVEY,
];
