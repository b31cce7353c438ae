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

/// A swale cannot be laid above a wall.
pub static SWALE_NOT_LAID: Kind = Kind {
    code: "W-018",
    name: "no line for a swale",
    severity: Severity::Watch,
    why: "Without it the surface water of the slope runs to the wall and into its stone.",
    source: "geometry of the surveyed ground",
    when_wrong: "Where it can be laid outside the survey.",
};

/// The lining of a swale does not stand the water.
pub static LINING_WASHED: Kind = Kind {
    code: "W-019",
    name: "lining of the swale washed out",
    severity: Severity::Watch,
    why: "The bed is torn out in the first storm, the swale cuts itself into the slope and the soil lies below.",
    source: "FHWA HEC-15: shear that a lining stands; velocities from memory",
    when_wrong: "Where the design rain is far above what grown grass sees.",
};

/// A pipe lies too shallow.
pub static COVER_SMALL: Kind = Kind {
    code: "W-020",
    name: "little cover on the outlet pipe",
    severity: Severity::Watch,
    why: "A spade, a wheel or frost reaches it.",
    source: "common practice, no source: 300 mm under grass, more where wheels go",
    when_wrong: "Near the outlet, or where the pipe is cast in or slabbed over.",
};

/// The soakaway does not hold the rain.
pub static SOAKAWAY_SMALL: Kind = Kind {
    code: "W-021",
    name: "soakaway too small",
    severity: Severity::Stop,
    why: "It fills, and the water stands in the pipe and behind the wall.",
    source: "BRE Digest 365 (1991, 2016)",
    when_wrong: "Where it has an overflow that leads on.",
};

/// The soakaway empties too slowly.
pub static SOAKAWAY_SLOW: Kind = Kind {
    code: "W-022",
    name: "soakaway empties slowly",
    severity: Severity::Watch,
    why: "It is still full when the next rain comes.",
    source: "BRE Digest 365 (1991, 2016): half empty within 24 hours",
    when_wrong: "None known.",
};

/// The soakaway lies where its water does harm.
pub static SOAKAWAY_NEAR: Kind = Kind {
    code: "W-023",
    name: "soakaway too near",
    severity: Severity::Stop,
    why: "Its water softens the ground under a foundation or stands behind a wall; in water it does not empty.",
    source: "Approved Document H (England, 2015 ed.), 3.25: 5 m from a building, from memory; retaining walls likewise: practice of drainage authorities",
    when_wrong: "Where an engineer found that the ground leads it away.",
};

/// What a soakaway is sized by is missing.
pub static SOAKAWAY_UNKNOWN: Kind = Kind {
    code: "W-024",
    name: "soakaway not sized",
    severity: Severity::Watch,
    why: "In clay a pit of any size stays full; only a trial pit tells, and only rains of several durations tell how much comes.",
    source: "BRE Digest 365 (1991, 2016)",
    when_wrong: "None known.",
};

/// Weep holes pass too little.
pub static WEEPS_SMALL: Kind = Kind {
    code: "W-025",
    name: "weep holes pass too little",
    severity: Severity::Watch,
    why: "With the pipe blocked, water rises above the holes until it runs over the ground behind.",
    source: "Torricelli with a discharge coefficient",
    when_wrong: "Where the pipe is kept open and rodded.",
};

/// Water stands on the finished surface.
pub static WATER_STANDS: Kind = Kind {
    code: "W-026",
    name: "water stands on the finished ground",
    severity: Severity::Watch,
    why: "It soaks in where it stands: behind a wall it adds to the push, against a building it comes in, on paving it freezes.",
    source: "levels of the plan; lowest way out by priority flood (Barnes, Lehman and Mulla, 2014)",
    when_wrong: "Where a gully or an open drain takes it there, or the ground drinks it.",
};

/// The finished surface falls towards a building.
pub static FALLS_TOWARDS: Kind = Kind {
    code: "W-027",
    name: "ground falls towards a building",
    severity: Severity::Ask,
    why: "Rain and melting snow run to its wall and into it.",
    source: "US International Residential Code, R401.3: 6 in of fall within 10 ft away from a building (2021 ed., from memory)",
    when_wrong: "Where a channel at the wall takes the water.",
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
    &SWALE_NOT_LAID,
    &LINING_WASHED,
    &COVER_SMALL,
    &SOAKAWAY_SMALL,
    &SOAKAWAY_SLOW,
    &SOAKAWAY_NEAR,
    &SOAKAWAY_UNKNOWN,
    &WEEPS_SMALL,
    &WATER_STANDS,
    &FALLS_TOWARDS,
];
