//! How near is near enough on site?

use groundhold_quantity::Length;

/// One tolerance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// Of what.
    pub what: &'static str,
    /// Plus or minus this much.
    pub within: Length,
    /// Over which distance or on what condition; empty for none.
    pub over: &'static str,
    /// Who says so.
    pub source: &'static str,
}

const CP: &str = "common practice, no source";

/// The usual tolerances of low garden walls, steps and paths.
pub static TOLERANCES: &[Tolerance] = &[
    Tolerance { what: "post, centre", within: Length::mm(10.0), over: "", source: CP },
    Tolerance { what: "post, plumb", within: Length::mm(5.0), over: "per metre of height", source: CP },
    Tolerance { what: "top line of a wall", within: Length::mm(5.0), over: "in 3 m", source: CP },
    Tolerance { what: "level of a board", within: Length::mm(5.0), over: "per bay", source: CP },
    Tolerance { what: "diagonals of a pad", within: Length::mm(10.0), over: "difference of the two", source: CP },
    Tolerance { what: "level of a pad", within: Length::mm(15.0), over: "", source: CP },
    Tolerance { what: "level of a path or ramp", within: Length::mm(10.0), over: "", source: CP },
    Tolerance { what: "level of a lawn", within: Length::mm(25.0), over: "", source: CP },
    Tolerance { what: "riser", within: Length::mm(5.0), over: "each to the next", source: CP },
];
