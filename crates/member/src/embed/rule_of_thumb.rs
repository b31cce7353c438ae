//! How deep does the trade set a post without computing?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

given! {
    /// A retained height, m.
    Retained {
        /// Retained height.
        retained,
    }
}

/// Depth equal to the retained height: "half in, half out".
///
/// # Source
/// Common practice, no source.
/// # Symbols
/// H retained height.
/// # Gives
/// D = H. For posts 1.2 m apart in dry sand and 300 mm holes this is 1.7 of Broms' ultimate; wider bays, water, a fence
/// or a load behind use that up.
/// # Not for
/// Deciding alone: it knows neither soil nor spacing nor load.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// H 0.8 m: D = 0.8 m.
pub fn as_deep_as_high<N: Number>(i: &Retained<N>) -> N {
    i.retained.named("D", Unit::M)
}

/// Working of [`as_deep_as_high`].
pub static RULE_OF_THUMB: Working = Working {
    name: "embed/rule-of-thumb",
    title: "Post as deep as the wall is high (rule of thumb).",
    source: Source { work: "common practice, no source", place: "" },
    not_for: "deciding alone: it knows neither soil nor spacing nor load",
    inputs: &[Input::new("retained", "H", "retained height", Unit::M, Limits::ours(0.0, 10.0))],
    outputs: &[Output { key: "depth", words: "depth below the ground in front", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(as_deep_as_high(&Retained::put(g)?))]),
};
