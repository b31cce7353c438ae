//! What can be wrong with an order.

use groundhold_finding::{Kind, Severity};

/// No row of the price list has the item.
pub static PRICE_MISSING: Kind = Kind {
    code: "O-001",
    name: "price missing",
    severity: Severity::Watch,
    why: "The quote is incomplete: the item is needed, but counts for nothing in the sum.",
    source: "Common practice, no source.",
    when_wrong: "The client supplies the item, or it lies on site already.",
};

/// The item is sold in a unit into which the need cannot be turned.
pub static UNIT_DIFFERS: Kind = Kind {
    code: "O-002",
    name: "unit of sale does not fit",
    severity: Severity::Watch,
    why: "A volume cannot be bought by the tonne without a density, nor an area by the roll without what a roll covers; \
          the line is left without an amount and the quote is incomplete.",
    source: "Common practice, no source.",
    when_wrong: "None known.",
};

/// A piece is longer than every stock length, or there is not enough stock.
pub static CANNOT_BE_CUT: Kind = Kind {
    code: "O-003",
    name: "piece cannot be cut from stock",
    severity: Severity::Stop,
    why: "The piece cannot be had in the listed lengths; a joint off a post or a splice would be a different wall.",
    source: "Common practice, no source.",
    when_wrong: "A longer length can be ordered: add it to the price list.",
};

/// The cutting list may not be the cheapest.
pub static NOT_PROVEN: Kind = Kind {
    code: "O-004",
    name: "cutting list not proven cheapest",
    severity: Severity::Note,
    why: "A cheaper list may exist, by at most the stated gap; the search was stopped at its limit of steps.",
    source: "Gilmore and Gomory, A Linear Programming Approach to the Cutting-Stock Problem, Operations Research 9 (1961): \
             the bound.",
    when_wrong: "The list is often the cheapest all the same; only the proof is missing.",
};

/// A piece is too heavy for one person.
pub static HEAVY_PIECE: Kind = Kind {
    code: "O-005",
    name: "piece heavy for one person",
    severity: Severity::Watch,
    why: "Backs are hurt by one bad lift. Limits are for a firm footing, close to the body and at waist height; on a \
          slope, far from the body or above the shoulder much less.",
    source: "From memory: HSE, Manual handling at work, INDG143 (25 kg, men, close at waist height); NIOSH 94-110 (1994), \
             23 kg load constant. Two persons and mechanical help: common practice, no source.",
    when_wrong: "The piece is slid or walked and never lifted, or the timber is drier than reckoned.",
};

/// So much bagged concrete that a truck or a hired mixer is worth asking for.
pub static READY_MIX: Kind = Kind {
    code: "O-006",
    name: "much concrete from bags",
    severity: Severity::Note,
    why: "Above about one cubic metre, ready-mixed concrete is usually cheaper and always quicker, where it can be \
          brought to the holes.",
    source: "Common practice, no source.",
    when_wrong: "No access for a truck, a pump or a barrow run.",
};

/// Boards are on hand, but how long is not said.
pub static BOARD_LENGTH_UNKNOWN: Kind = Kind {
    code: "O-007",
    name: "length of boards on hand unknown",
    severity: Severity::Watch,
    why: "Boards that are bought already cannot be used in the cutting list without their length; they are left out of it \
          and may be bought twice.",
    source: "Common practice, no source.",
    when_wrong: "None known.",
};

/// Every kind of this crate.
pub static FINDINGS: &[&Kind] =
    &[&PRICE_MISSING, &UNIT_DIFFERS, &CANNOT_BE_CUT, &NOT_PROVEN, &HEAVY_PIECE, &READY_MIX, &BOARD_LENGTH_UNKNOWN];
