//! What setting out has to say against itself.

use groundhold_finding::{Kind, Severity};

/// Two tapes cross too flat.
pub static TAPES_CROSS_FLAT: Kind = Kind {
    code: "S-001",
    name: "tapes cross too flat",
    severity: Severity::Watch,
    why: "Where two tapes cross at less than 30°, 5 mm on a tape moves the mark by 10 mm and more.",
    source: "geometry: the error along the bisector is that of the tape over the sine of half the angle",
    when_wrong: "none known",
};

/// A mark is farther from every peg than the tape reaches.
pub static BEYOND_THE_TAPE: Kind = Kind {
    code: "S-002",
    name: "beyond the tape",
    severity: Severity::Watch,
    why: "A distance measured in two pulls has twice the error and no check; a peg nearer by is quicker.",
    source: "common practice, no source",
    when_wrong: "a longer tape is at hand",
};

/// There is no base line.
pub static NO_BASE_LINE: Kind = Kind {
    code: "S-003",
    name: "no base line",
    severity: Severity::Watch,
    why: "Without two known pegs nothing can be set out again after the first peg is dug away.",
    source: "common practice, no source",
    when_wrong: "the job was planned from two numbers and is set out by eye",
};

/// A peg will be dug away.
pub static PEG_IN_THE_DIG: Kind = Kind {
    code: "S-004",
    name: "peg in the dig",
    severity: Severity::Watch,
    why: "A peg inside the dig is gone on the first day, and with it the datum or the base line.",
    source: "common practice, no source",
    when_wrong: "offset pegs stand already",
};

/// All of them.
pub static FINDINGS: &[&Kind] = &[&TAPES_CROSS_FLAT, &BEYOND_THE_TAPE, &NO_BASE_LINE, &PEG_IN_THE_DIG];
