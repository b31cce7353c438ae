//! What must the neighbours carry when one post of a row is left out?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// A row of posts from which one is left out; m.
    LeftOut {
        before: "s₁", "bay on the far side of the neighbour", M, Limits::ours(0.1, 10.0);
        left: "s₂", "bay between the neighbour and the post left out", M, Limits::ours(0.1, 10.0);
        right: "s₃", "bay behind the post left out", M, Limits::ours(0.1, 10.0);
    }
}
gives! {
    /// What a neighbour and the boards carry then.
    LeftOutDemand {
        usual: M, "width of wall that the neighbour carries as planned";
        carried: M, "width of wall that it carries with the post left out";
        times: NONE, "how many times the planned push";
        span: M, "span of the boards over the gap";
        bending: NONE, "how many times the bending of the longer bay";
        bow: NONE, "how many times the bow of the longer bay";
    }
}

/// What the neighbours must carry when one post of a row is left out, and what the boards over the gap.
///
/// # Source
/// Statics: boards that end on the posts give each half of their load; bending grows with the square, bow with the fourth
/// power of the span.
/// # Symbols
/// s₁, s₂, s₃ bays in order; the post between s₂ and s₃ is left out.
/// # Gives
/// Widths, ratios, the span.
/// # Not for
/// Boards that run through over the neighbour, which give it a quarter more of an even load (use the reactions of the spans).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Bays of 1.2 m: 1.8 m instead of 1.2 m, 1.5 times; span 2.4 m, 4 times the bending, 16 times the bow (RK-04).
pub fn left_out<N: Number>(i: &LeftOut<N>) -> LeftOutDemand<N> {
    let usual = ((i.before + i.left) / 2.0).named("w", Unit::M);
    let span = (i.left + i.right).named("s", Unit::M);
    let carried = ((i.before + span) / 2.0).named("w'", Unit::M);
    let ratio = span / i.left.max(i.right);
    LeftOutDemand {
        usual,
        carried,
        times: (carried / usual).named("w'/w", Unit::NONE),
        span,
        bending: ratio.squared().named("k_M", Unit::NONE),
        bow: ratio.powf(4.0).named("k_w", Unit::NONE),
    }
}

/// Working of [`left_out`].
pub static LEFT_OUT_POST: Working = Working {
    name: "embed/left-out-post",
    title: "What the neighbours and the boards carry when one post is left out.",
    source: Source { work: "statics", place: "boards that end on the posts" },
    not_for: "boards that run through over the neighbour",
    inputs: LeftOut::INPUTS,
    outputs: LeftOutDemand::OUTPUTS,
    run: |g| left_out(&LeftOut::put(g)?).found(),
};
