//! Does what stands above a joint of stacked timbers turn over, against its weight and its screws?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Moment that holds what stands above a joint, about the front edge of the joint.
///
/// # Source
/// Statics: weight and the pull of the screws at the middle of the thickness, at half of it from the front edge.
/// # Symbols
/// | W | weight above the joint | kN/m | n | screws per metre | 1/m | F | what one screw holds when it is pulled | kN | t | thickness | m |
/// # Gives
/// M_R = (W + n F) t/2, kNm per metre.
/// # Not for
/// Screws that stand nearer to the face than the middle.
/// # Errors
/// None but the limits.
/// # By hand
/// W 0.2, 2.5 screws of 2 kN, t 0.15: (0.2 + 5)·0.075 = 0.39 kNm (case `STK-05`).
pub fn over_joint<N: Number>(weight: N, screws: N, pull: N, thickness: N) -> N {
    ((weight + screws * pull) * thickness / 2.0).named("M_R", Unit::KNM)
}

/// See [`over_joint`].
pub static OVER_JOINT: Working = Working {
    name: "wall/over-joint",
    title: "What holds the timbers above a joint from turning over?",
    source: Source { work: "statics", place: "" },
    not_for: "screws that stand nearer to the face than the middle",
    inputs: &[
        Input::new("weight", "W", "weight above the joint", Unit::KN_M, Limits::ours(0.0, 1000.0)),
        Input::new("screws", "n", "screws per metre", Unit::NONE, Limits::ours(0.0, 50.0)),
        Input::new("pull", "F", "what one screw holds when it is pulled", Unit::KN, Limits::ours(0.0, 1000.0)),
        Input::new("thickness", "t", "thickness of the wall", Unit::M, Limits::ours(0.01, 2.0)),
    ],
    outputs: &[Output { key: "holds", words: "moment that holds, per metre", unit: Unit::KNM }],
    run: |g| Ok(vec![Found::One(over_joint(g.one("weight")?, g.one("screws")?, g.one("pull")?, g.one("thickness")?))]),
};
