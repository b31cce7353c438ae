//! What can a place, the ground or the order of work have against a plan?

use groundhold_finding::{Kind, Severity};

/// A permit is to be asked for.
pub static PERMIT: Kind = Kind {
    code: "B-001",
    name: "permit to be asked for",
    severity: Severity::Ask,
    why: "Work without it is stopped, and taken down at the builder's cost; an insurer will not pay for what falls.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where the local office has changed the rule, or an exemption applies that the plan does not know.",
};

/// An engineer is to be asked.
pub static ENGINEER: Kind = Kind {
    code: "B-002",
    name: "engineer to be asked",
    severity: Severity::Ask,
    why: "Above these marks walls fail in ways that rules of thumb do not see.",
    source: "the region's rule named in the finding, or common practice where it says so",
    when_wrong: "Where an engineer has already seen the plan.",
};

/// A notice is to be given.
pub static NOTICE: Kind = Kind {
    code: "B-003",
    name: "notice to be given",
    severity: Severity::Ask,
    why: "A neighbour or an office has a right to know before the work, often weeks before.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where notice was given and answered.",
};

/// The rule of the place is not known.
pub static RULE_NOT_KNOWN: Kind = Kind {
    code: "B-004",
    name: "local rule not known",
    severity: Severity::Ask,
    why: "What is not in the region pack is not therefore allowed.",
    source: "the region pack itself",
    when_wrong: "none known: ask the local office",
};

/// A fact that the rule asks about was not told.
pub static FACT_NOT_TOLD: Kind = Kind {
    code: "B-005",
    name: "fact that a rule asks about not told",
    severity: Severity::Ask,
    why: "Whether the rule bites depends on it.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where the thing asked about (a boundary, a building) is plainly far away: say so in the job.",
};

/// A wall stands near the boundary.
pub static NEAR_BOUNDARY: Kind = Kind {
    code: "B-006",
    name: "wall near the boundary",
    severity: Severity::Watch,
    why: "What leans, drains or is dug there is soon on somebody else's ground, and his ground may carry on our wall. It is the dearest mistake of this work.",
    source: "common practice, no source: nearer than the wall is high from its base",
    when_wrong: "Where both sides are one owner's.",
};

/// An excavation goes beside or below a neighbour's building.
pub static BESIDE_BUILDING: Kind = Kind {
    code: "B-007",
    name: "excavation beside a neighbour's building",
    severity: Severity::Ask,
    why: "Soil that carries a footing and is taken away, or dries, lets the building settle.",
    source: "common practice, no source: line of 45° from the underside of the footing, taken at the ground where its depth is not known",
    when_wrong: "Where the footing is known to go deeper than the dig.",
};

/// A wall stands near a street.
pub static NEAR_STREET: Kind = Kind {
    code: "B-008",
    name: "wall beside a street",
    severity: Severity::Ask,
    why: "A wall that holds up, or stands above, a public way has its own rules, and falls on strangers.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "none known",
};

/// An edge needs a guard.
pub static GUARD: Kind = Kind {
    code: "B-009",
    name: "guard at an edge",
    severity: Severity::Ask,
    why: "People fall off edges, at night and with a barrow first of all. A guard on the wall adds wind to it: put it into the plan, not on afterwards.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where planting or distance keeps everybody away and the rule allows for that.",
};

/// Walls act together.
pub static TIERS_TOGETHER: Kind = Kind {
    code: "B-010",
    name: "walls too near to count as two",
    severity: Severity::Ask,
    why: "The upper wall stands on the soil that pushes the lower one. Together they slip as one wall of both heights, and rules may count them as one.",
    source: "common practice, no source: independent from twice the lower wall's height",
    when_wrong: "Where the lower wall was designed for the upper one's weight.",
};

/// A wall stands near an easement.
pub static NEAR_EASEMENT: Kind = Kind {
    code: "B-011",
    name: "wall near an easement or a main",
    severity: Severity::Ask,
    why: "Its owner may dig there at any time, and may have a wall taken away.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where its owner has agreed in writing.",
};

/// Vehicles load the ground behind a wall.
pub static VEHICLES_BEHIND: Kind = Kind {
    code: "B-012",
    name: "vehicles behind a wall",
    severity: Severity::Ask,
    why: "A parked car adds as much push to a low wall as the soil does, and takes it out of most exemptions at any height.",
    source: "common practice, no source; regions' rules on loads behind",
    when_wrong: "Where vehicles are kept off, by more than a sign.",
};

/// Nobody has asked for buried services, or the answer is old.
pub static SERVICES_NOT_ASKED: Kind = Kind {
    code: "B-013",
    name: "services enquiry missing or old",
    severity: Severity::Ask,
    why: "Cables kill and gas burns, and records change. Nobody digs before they are located.",
    source: "common practice: replies are taken as good for 28 days, no source; local rules differ",
    when_wrong: "none known",
};

/// Water in the dig.
pub static WATER_IN_DIG: Kind = Kind {
    code: "B-014",
    name: "work stopped by water",
    severity: Severity::Stop,
    why: "A wet bottom goes soft under boots and settles under concrete, a wet face falls, and the wall will stand in water for good unless it is led away lower than its base.",
    source: "common practice, no source; weight of water by hydrostatics",
    when_wrong: "Rain that fell in and drained away overnight without softening the bottom.",
};

/// A pipe, cable or void that nobody knows.
pub static UNKNOWN_FOUND: Kind = Kind {
    code: "B-015",
    name: "work stopped by an unknown pipe, cable or void",
    severity: Severity::Stop,
    why: "It is live until its owner says otherwise. A capped drain floods somebody; a void under a slab swallows people.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// The ground is not what was reckoned with.
pub static GROUND_DIFFERS: Kind = Kind {
    code: "B-016",
    name: "ground not as reckoned",
    severity: Severity::Watch,
    why: "Rock, roots, old footings and soft ground change depth, method and price: agree on them before going on, not after.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// A ramp is too steep for a wheelchair.
pub static RAMP_FOR_WHEELCHAIR: Kind = Kind {
    code: "B-017",
    name: "ramp too steep for a wheelchair",
    severity: Severity::Watch,
    why: "Nobody pushes themselves up it, and going down the chair runs away.",
    source: "the region's rule named in the finding; without one 1:12, a limit in several codes",
    when_wrong: "A ramp that only barrows use: say `wheelchair = false`.",
};

/// Steps need a handrail.
pub static HANDRAIL: Kind = Kind {
    code: "B-018",
    name: "handrail at steps",
    severity: Severity::Ask,
    why: "Steps outdoors are wet, dark and icy in their turn.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where the rule is for buildings only and the local office says so.",
};

/// An excavation is deep enough for a rule.
pub static DEEP_EXCAVATION: Kind = Kind {
    code: "B-019",
    name: "excavation above the local mark",
    severity: Severity::Ask,
    why: "From there on support, a notice, a statement of method or a licence is asked for; a face that falls kills.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where the face is laid back or benched and the rule allows for that.",
};

/// More risers in one flight than allowed.
pub static FLIGHT_TOO_LONG: Kind = Kind {
    code: "B-020",
    name: "too many risers without a landing",
    severity: Severity::Ask,
    why: "Whoever stumbles falls the whole flight.",
    source: "the region's rule named in the finding, a snapshot with its date",
    when_wrong: "Where the rule is for buildings only and the local office says so.",
};

/// No region pack of this code.
pub static REGION_SILENT: Kind = Kind {
    code: "B-021",
    name: "nothing known about the rules of the place",
    severity: Severity::Ask,
    why: "Triggers for permits start at heights from 0.3 m on, and differ between neighbouring towns.",
    source: "the region pack itself",
    when_wrong: "none known: ask the local office",
};

/// A piece is too heavy for people.
pub static PIECE_TOO_HEAVY: Kind = Kind {
    code: "B-030",
    name: "piece too heavy for people",
    severity: Severity::Watch,
    why: "Backs and crushed fingers.",
    source: "common practice, no source: two people above 25 kg, a machine above 50 kg",
    when_wrong: "Where a machine or a hoist is there anyway.",
};

/// A piece for two and a crew of one.
pub static NOBODY_TO_LIFT: Kind = Kind {
    code: "B-031",
    name: "piece for two people and a crew of one",
    severity: Severity::Watch,
    why: "Backs and crushed fingers.",
    source: "common practice, no source: two people above 25 kg",
    when_wrong: "Where somebody comes for the lifts.",
};

/// The machine does not get in.
pub static NO_MACHINE_ACCESS: Kind = Kind {
    code: "B-032",
    name: "way in too narrow for a machine",
    severity: Severity::Watch,
    why: "The programme reckons with a machine that will stand in the street.",
    source: "common practice, no source: the narrowest small excavators are 700 to 750 mm wide",
    when_wrong: "Where it comes over the neighbour's or by crane.",
};

/// A cut stands open long.
pub static LONG_OPEN: Kind = Kind {
    code: "B-034",
    name: "cut open for long",
    severity: Severity::Note,
    why: "Every day that a face stands open it dries, cracks and takes in rain.",
    source: "common practice, no source: five working days are ours",
    when_wrong: "Faces that are laid back to a lasting slope.",
};

/// The order of work was made again because of water.
pub static BACK_TO_WORK_AFTER_WATER: Kind = Kind {
    code: "B-035",
    name: "order of work changed because of water",
    severity: Severity::Watch,
    why: "Concrete on a soft, wet bottom settles, and the water has come to stay.",
    source: "common practice, no source",
    when_wrong: "none known",
};

/// Timber is treated for less than it meets.
pub static TIMBER_CLASS: Kind = Kind {
    code: "B-036",
    name: "timber not treated for the ground",
    severity: Severity::Ask,
    why: "A post rots first where it leaves the ground, out of sight, and breaks there; the next class up lasts decades longer for a few per cent of the price.",
    source: "the region's timber classes named in the finding, a snapshot with its date",
    when_wrong: "Heartwood of a species that is durable in the ground without treatment, or another scheme's class that is as good.",
};

/// A base lies above the frost line.
pub static BASE_ABOVE_FROST_LINE: Kind = Kind {
    code: "B-037",
    name: "base above the frost line",
    severity: Severity::Watch,
    why: "Soil that heaves lifts the base in winter and lets it down softened in spring; each year the wall leans a little more.",
    source: "the region's rule named in the finding, or the frost line that the job gives",
    when_wrong: "Ground that never freezes so deep, or a base on rock or clean stone down to the frost line.",
};

/// All findings of this crate.
pub static FINDINGS: &[&Kind] = &[
    &PERMIT,
    &ENGINEER,
    &NOTICE,
    &RULE_NOT_KNOWN,
    &FACT_NOT_TOLD,
    &NEAR_BOUNDARY,
    &BESIDE_BUILDING,
    &NEAR_STREET,
    &GUARD,
    &TIERS_TOGETHER,
    &NEAR_EASEMENT,
    &VEHICLES_BEHIND,
    &SERVICES_NOT_ASKED,
    &WATER_IN_DIG,
    &UNKNOWN_FOUND,
    &GROUND_DIFFERS,
    &RAMP_FOR_WHEELCHAIR,
    &HANDRAIL,
    &DEEP_EXCAVATION,
    &FLIGHT_TOO_LONG,
    &REGION_SILENT,
    &PIECE_TOO_HEAVY,
    &NOBODY_TO_LIFT,
    &NO_MACHINE_ACCESS,
    &LONG_OPEN,
    &BACK_TO_WORK_AFTER_WATER,
    &TIMBER_CLASS,
    &BASE_ABOVE_FROST_LINE,
];
