//! What can the measuring itself have against its result?

use groundhold_finding::{Kind, Severity};

/// The book closes worse than the rule allows.
pub static MISCLOSE_TOO_LARGE: Kind = Kind {
    code: "M-001",
    name: "misclose larger than allowed",
    severity: Severity::Stop,
    why: "A staff was misread, misbooked or stood on a peg that moved; every level after it is wrong by as much, and walls and falls are set out from them.",
    source: "the rule named in the finding",
    when_wrong: "The closing level itself may be wrong, or the rule may be stricter than the job needs.",
};

/// The book ends on no known level.
pub static BOOK_NOT_CLOSED: Kind = Kind {
    code: "M-002",
    name: "level book not closed",
    severity: Severity::Watch,
    why: "Without a return to a known level nothing shows a misread change point, and every later level may be out by any amount.",
    source: "common practice, no source",
    when_wrong: "A single set-up with no change point has nothing to close; a second reading of the start still shows a moved instrument.",
};

/// One station came out at two levels.
pub static STATION_AT_TWO_LEVELS: Kind = Kind {
    code: "M-003",
    name: "station at two levels",
    severity: Severity::Watch,
    why: "One of the readings is wrong, or two places carry one name; the ground model would take a level that is neither.",
    source: "limit: three standard deviations of the difference (ours)",
    when_wrong: "The peg was moved or driven deeper between the two readings.",
};

/// The level written in the book is not what its readings give.
pub static BOOKED_LEVEL_DIFFERS: Kind = Kind {
    code: "M-004",
    name: "booked level differs from its readings",
    severity: Severity::Watch,
    why: "A slip of arithmetic at an intermediate sight is not seen by the sums of backsights and foresights.",
    source: "common practice, no source; worked example: reference case LV-01",
    when_wrong: "The book was adjusted for its misclose before the levels were written down.",
};

/// One tape reading does not fit the others, and they say which.
pub static READING_DOES_NOT_FIT: Kind = Kind {
    code: "M-005",
    name: "reading does not fit",
    severity: Severity::Watch,
    why: "A misread tape or a tie to the wrong peg; it is set aside, and the point stands on the rest.",
    source: "Baarda, A testing procedure for use in geodetic networks, Netherlands Geodetic Commission, Publ. on Geodesy 2(5), 1968: normalised residual above 3.29 (level 0.001); from memory",
    when_wrong: "The accuracy stated for the tape is better than the work was done.",
};

/// Readings disagree, and nothing says which is wrong.
pub static READINGS_DISAGREE: Kind = Kind {
    code: "M-006",
    name: "readings disagree",
    severity: Severity::Stop,
    why: "One of them is wrong, but there is no further reading that tells which; the point may be out by as much as they disagree.",
    source: "Baarda 1968, as for M-005; from memory",
    when_wrong: "The accuracy stated for the tape is better than the work was done.",
};

/// Points that no spare reading checks.
pub static POINT_UNCHECKED: Kind = Kind {
    code: "M-007",
    name: "position without a check",
    severity: Severity::Note,
    why: "With no more readings than unknowns a misread tape cannot show itself.",
    source: "common practice, no source",
    when_wrong: "Ground points between checked ones: a slip there shows as a kink in the contours.",
};

/// A point whose ties cross at a poor angle or whose readings leave it loose.
pub static POINT_WEAK: Kind = Kind {
    code: "M-008",
    name: "position is weak",
    severity: Severity::Watch,
    why: "Ties that meet at a flat angle leave the point free to slide across them: a millimetre on the tape becomes centimetres on the ground.",
    source: "limit: standard deviation above 50 mm (ours)",
    when_wrong: "A ground point on even ground may lie that loosely without harm.",
};

/// A point with a position and no level.
pub static POINT_WITHOUT_LEVEL: Kind = Kind {
    code: "M-009",
    name: "point without a level",
    severity: Severity::Watch,
    why: "It cannot take part in the ground model.",
    source: "common practice, no source",
    when_wrong: "Pegs and corners that were tied for position only.",
};

/// A point with a level and no position.
pub static POINT_WITHOUT_POSITION: Kind = Kind {
    code: "M-010",
    name: "point without a position",
    severity: Severity::Watch,
    why: "It cannot take part in the ground model.",
    source: "common practice, no source",
    when_wrong: "The station has another name in the list of ties.",
};

/// One line of a level net does not fit.
pub static LEVEL_LINE_DOES_NOT_FIT: Kind = Kind {
    code: "M-011",
    name: "levelled line does not fit",
    severity: Severity::Stop,
    why: "One of the lines of the loop was misread; all levels beyond it lean on it.",
    source: "Baarda 1968, as for M-005; from memory",
    when_wrong: "The accuracy stated for the levelling is better than the work was done.",
};

/// Every kind of finding of this stage.
pub static FINDINGS: &[&Kind] = &[
    &MISCLOSE_TOO_LARGE,
    &BOOK_NOT_CLOSED,
    &STATION_AT_TWO_LEVELS,
    &BOOKED_LEVEL_DIFFERS,
    &READING_DOES_NOT_FIT,
    &READINGS_DISAGREE,
    &POINT_UNCHECKED,
    &POINT_WEAK,
    &POINT_WITHOUT_LEVEL,
    &POINT_WITHOUT_POSITION,
    &LEVEL_LINE_DOES_NOT_FIT,
];
