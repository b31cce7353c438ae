//! What load per metre does one board carry?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Line load on a board from the pressure at its edges.
///
/// # Source
/// Statics: the mean of two pressures times the height between them.
/// # Symbols
/// | p_1, p_2 | pressure at the upper and lower edge | kPa | h | board height | m | γ | factor |
/// # Gives
/// w in kN/m.
/// # Not for
/// A pressure that bends between the edges, as from a point load close by.
/// # Errors
/// None but the limits.
/// # By hand
/// 3.6 and 4.8 kPa on 0.2 m: 0.84 kN/m (case `WP-03`).
pub fn board_load<N: Number>(upper: N, lower: N, height: N, factor: N) -> N {
    (factor * (upper + lower) / 2.0 * height).named("w", Unit::KN_M)
}

/// See [`board_load`].
pub static BOARD_LOAD: Working = Working {
    name: "wall/board-load",
    title: "What load per metre does one board carry?",
    source: Source { work: "statics", place: "" },
    not_for: "a pressure that bends between the edges",
    inputs: &[
        Input::new("upper", "p_1", "pressure at the upper edge", Unit::KPA, Limits::ours(0.0, 1000.0)),
        Input::new("lower", "p_2", "pressure at the lower edge", Unit::KPA, Limits::ours(0.0, 1000.0)),
        Input::new("height", "h", "board height", Unit::M, Limits::ours(0.01, 2.0)),
        Input::new("factor", "γ", "factor on the load", Unit::NONE, Limits::ours(0.0, 3.0)).or(1.0),
    ],
    outputs: &[Output { key: "load", words: "load per metre of board", unit: Unit::KN_M }],
    run: |g| Ok(vec![Found::One(board_load(g.one("upper")?, g.one("lower")?, g.one("height")?, g.one("factor")?))]),
};
