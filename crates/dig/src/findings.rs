//! What can the moving of soil have against a plan?

use groundhold_finding::{Kind, Severity};

/// Soil is left over.
pub static SPOIL_LEFT_OVER: Kind = Kind {
    code: "D-001",
    name: "soil left over",
    severity: Severity::Note,
    why: "What is dug swells and must go somewhere: carted away at a price per load, or spread where it changes levels and water.",
    source: "US Army FM 5-434 (2000), Table 1-1 for the swell; loads by arithmetic",
    when_wrong: "Where the soil is wanted elsewhere on the plot and that place was not told.",
};

/// There is too little soil for the fill.
pub static MATERIAL_SHORT: Kind = Kind {
    code: "D-002",
    name: "fill short",
    severity: Severity::Watch,
    why: "Work stops until more is brought, or the gap is filled with what lies about: topsoil, turf and rubble, which settle.",
    source: "US Army FM 5-434 (2000), Table 1-1 for the shrinkage",
    when_wrong: "Where soil from another job is already promised.",
};

/// Topsoil as fill.
pub static TOPSOIL_AS_FILL: Kind = Kind {
    code: "D-003",
    name: "topsoil kept out of the fill",
    severity: Severity::Note,
    why: "Topsoil rots and settles; under paving or behind a wall it sinks, holds water and pushes harder. It belongs in the last 150 to 300 mm only.",
    source: "common practice, no source",
    when_wrong: "Planting mounds that may settle and carry nothing.",
};

/// Fill from elsewhere, or ground that was filled before.
pub static FILL_TO_BE_CHECKED: Kind = Kind {
    code: "D-004",
    name: "origin of fill checked",
    severity: Severity::Ask,
    why: "Free fill and made ground may hold rubble, asbestos, oil or roots; it ends up under a garden, and moving it may need papers.",
    source: "common practice, no source; local waste rules decide",
    when_wrong: "Fill with a certificate of origin and tests.",
};

/// A face stands open higher than a rule allows.
pub static UNSUPPORTED_CUT: Kind = Kind {
    code: "D-005",
    name: "open cut above the local trigger",
    severity: Severity::Ask,
    why: "A vertical face can fall without warning onto whoever stands at its foot; a cubic metre of soil weighs as much as a car.",
    source: "the region's rule named in the finding",
    when_wrong: "Where the face is laid back, propped or cut in short bays; the plan cannot see that.",
};

/// Nobody has said from which height an open face needs support here.
pub static CUT_TRIGGER_UNKNOWN: Kind = Kind {
    code: "D-006",
    name: "local rule for open cuts not known",
    severity: Severity::Ask,
    why: "Triggers for support, notice or a licensed person start between 1.0 and 1.5 m, in some places at any depth.",
    source: "common practice, no source; local rules decide",
    when_wrong: "None known.",
};

/// A heap behind a crest.
pub static HEAP_NEAR_CREST: Kind = Kind {
    code: "D-007",
    name: "heap near a crest",
    severity: Severity::Watch,
    why: "A heap is a load behind the cut or the wall: it brings the face down while people work under it, and clods roll in.",
    source: "29 CFR 1926.651(j)(2): at least 2 ft (0.6 m) from the edge, from memory; as far back as the cut is deep: common practice",
    when_wrong: "Where the face is shored for that load.",
};

/// There is too little room for the heaps.
pub static HEAP_SPACE_SHORT: Kind = Kind {
    code: "D-008",
    name: "heap space short",
    severity: Severity::Watch,
    why: "Soil that finds no place is heaped on the work, at the boundary or behind the wall, and is handled twice.",
    source: "geometry of the heap; loose volume by FM 5-434 (2000), Table 1-1",
    when_wrong: "Where soil is carted away as it is dug, or kept in bags and on boards elsewhere.",
};

/// The topsoil stripped does not cover what is to be covered.
pub static TOPSOIL_SHORT: Kind = Kind {
    code: "D-009",
    name: "topsoil short",
    severity: Severity::Note,
    why: "Banks and beds stay bare or are covered too thinly to hold plants and turf.",
    source: "volume balance",
    when_wrong: "Where topsoil lies on another part of the plot.",
};

/// The soil dug cannot serve as fill.
pub static SOIL_NOT_FIT_FOR_FILL: Kind = Kind {
    code: "D-010",
    name: "soil not fit for fill",
    severity: Severity::Watch,
    why: "Soft, wet or organic soil cannot be compacted; it settles for years and pushes on the wall like a liquid.",
    source: "common practice, no source",
    when_wrong: "Where it dries out before it is placed, or is only spread and planted.",
};

/// Fill is placed that must be compacted.
pub static FILL_IN_LAYERS: Kind = Kind {
    code: "D-011",
    name: "fill compacted in layers",
    severity: Severity::Watch,
    why: "Fill tipped in one go settles by a tenth and more; paving on it follows within one or two winters.",
    source: "common practice, no source: layers of 150 to 200 mm loose; only a hand-guided plate within 1 m of a wall",
    when_wrong: "Single-size stone, which needs no more than tamping.",
};

/// An input that cannot be dug.
pub static NOT_COUNTABLE: Kind = Kind {
    code: "D-012",
    name: "volume not countable",
    severity: Severity::Stop,
    why: "A volume, area or limit that is negative or not an ordinary number makes every load and price after it wrong.",
    source: "none needed",
    when_wrong: "None known.",
};

/// A face in ground that does not stand upright.
pub static FACE_RUNS: Kind = Kind {
    code: "D-013",
    name: "cut in ground that runs",
    severity: Severity::Watch,
    why: "Sand, gravel and wet ground slide into the dig within the hour, on whoever stands at its foot, and leave a hollow behind the wall.",
    source: "29 CFR 1926 Subpart P, Appendix B, Table B-1 (United States): 1.5 across for 1 up in the weakest class",
    when_wrong: "Where moist sand was seen to stand; it runs when it dries.",
};

/// Rock is dug.
pub static ROCK_BROKEN: Kind = Kind {
    code: "D-014",
    name: "rock to be broken out",
    severity: Severity::Watch,
    why: "It takes five to ten times as long as subsoil, needs other tools, and shakes what stands near.",
    source: "ILO/ASIST Technical Brief 2 (1998), from memory; the top of the rock is between the probes only",
    when_wrong: "Where the probes met stones and not rock.",
};

/// A heap for which there is no room.
pub static HEAP_HOMELESS: Kind = Kind {
    code: "D-015",
    name: "no room for a heap",
    severity: Severity::Watch,
    why: "Soil that must be kept is carted away and bought back, or heaped where it loads a wall, kills a tree or lies on a service.",
    source: "geometry of the plan; heights and slopes of heaps: common practice, no source",
    when_wrong: "Where there is ground beyond the survey to be used.",
};

/// A trench that is deep enough to bury somebody.
pub static TRENCH_DEEP: Kind = Kind {
    code: "D-016",
    name: "deep trench",
    severity: Severity::Stop,
    why: "Trenches kill: a side that slides holds a person down before anyone can dig.",
    source: "29 CFR 1926.652(a) (United States): protected from 5 ft on, and below that where it may cave in; the region's own rule comes first",
    when_wrong: "Where it is dug and filled without anybody in it.",
};

/// Every kind of this crate.
pub static FINDINGS: &[&Kind] = &[
    &SPOIL_LEFT_OVER,
    &MATERIAL_SHORT,
    &TOPSOIL_AS_FILL,
    &FILL_TO_BE_CHECKED,
    &UNSUPPORTED_CUT,
    &CUT_TRIGGER_UNKNOWN,
    &HEAP_NEAR_CREST,
    &HEAP_SPACE_SHORT,
    &TOPSOIL_SHORT,
    &SOIL_NOT_FIT_FOR_FILL,
    &FILL_IN_LAYERS,
    &NOT_COUNTABLE,
    &FACE_RUNS,
    &ROCK_BROKEN,
    &HEAP_HOMELESS,
    &TRENCH_DEEP,
];
