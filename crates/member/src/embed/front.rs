//! How much of the resistance is left where the ground in front falls away, or where posts stand close together?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::limits;
use crate::given::given;

given! {
    /// Ground of friction that falls away in front.
    SandFront {
        /// Friction angle.
        phi,
        /// Angle at which the ground falls away, positive down.
        fall,
    }
}
given! {
    /// Undrained clay that falls away in front.
    ClayFront {
        /// Angle at which the ground falls away, positive down.
        fall,
    }
}
given! {
    /// Posts in a row, pushed across the row.
    Row {
        /// Centre to centre.
        spacing,
        /// Bearing width.
        width,
    }
}

/// Passive coefficient of ground that slopes, and what is left of the level one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrontLeft<N> {
    /// Passive coefficient of level ground, no wall friction.
    pub level: N,
    /// Passive coefficient of ground that falls away.
    pub falling: N,
    /// The second over the first, at most 1.
    pub left: N,
}

/// What is left of the passive pressure of sand where the ground in front falls away.
///
/// # Source
/// EN 1997-1:2004, Annex C.2 (passive, no wall friction, vertical face), taken as a ratio to level ground. The use of the
/// ratio on posts is ours; the annex writes of walls. Formulas from memory.
/// # Symbols
/// φ friction angle, β angle of fall, m_t and m_w directions of the slip lines at surface and face, ν turn between them.
/// # Gives
/// K_γ(−β)/K_γ(0), 1 on level ground, falling as β grows.
/// # Not for
/// A fall steeper than φ, which does not stand; a slope that starts some way in front (then this is on the careful side).
/// # Errors
/// The working refuses β above φ.
/// # By hand
/// φ 30°, β 18.43° (1:3): m_t = 19.6°, ν = −28.8°, K_n = 1.575, K_γ = 1.42 against 3: 0.47 is left.
pub fn sand_front<N: Number>(i: &SandFront<N>) -> FrontLeft<N> {
    let n = N::constant;
    let s = i.phi.sin();
    let level = ((n(1.0) + s) / (n(1.0) - s)).named("K_p", Unit::NONE);
    if i.fall.value() == 0.0 {
        return FrontLeft { level, falling: level, left: N::constant(1.0).named("μ", Unit::NONE) };
    }
    let held = (i.fall.sin() / s).min(N::constant(1.0));
    let mt = ((held.acos() - i.phi + i.fall) / 2.0).named("m_t", Unit::DEG);
    let mw = ((N::degrees(90.0) - i.phi) / 2.0).named("m_w", Unit::DEG);
    let turn = (mt - i.fall - mw).named("ν", Unit::DEG);
    let kn = ((n(1.0) + s * (n(2.0) * mw + i.phi).sin()) / (n(1.0) - s * (n(2.0) * mt + i.phi).sin())
        * (n(2.0) * turn * i.phi.tan()).exp())
    .named("K_n", Unit::NONE);
    let falling = (kn * i.fall.cos().squared()).named("K_γ", Unit::NONE);
    FrontLeft { level, falling, left: (falling / level).min(N::constant(1.0)).named("μ", Unit::NONE) }
}

/// What is left of the resistance of undrained clay where the ground in front falls away.
///
/// # Source
/// Reese, Isenhower & Wang, Analysis and Design of Shallow and Deep Foundations (2006), p-y curves in sloping ground:
/// the wedge resistance in clay is divided by 1 + tan θ. From memory. Here it is put on the whole depth, which is careful.
/// # Symbols
/// β angle of fall.
/// # Gives
/// 1/(1 + tan β).
/// # Not for
/// Clay that drains: use the friction of [`sand_front`].
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// β 18.43° (1:3): 1/1.333 = 0.75.
pub fn clay_front<N: Number>(i: &ClayFront<N>) -> N {
    let n = N::constant;
    (n(1.0) / (n(1.0) + i.fall.tan())).named("μ", Unit::NONE)
}

/// What is left of each post's resistance where posts in a row push the ground across the row.
///
/// # Source
/// Reese & Van Impe, Single Piles and Pile Groups under Lateral Loading, side-by-side piles: β = 0.64 (s/b)^0.34 for
/// 1 ≤ s/b < 3.75, else 1. From memory.
/// # Symbols
/// s centre to centre, b bearing width, ζ = s/b.
/// # Gives
/// A share of 1.
/// # Not for
/// Posts one behind the other.
/// # Errors
/// The working refuses posts that touch.
/// # By hand
/// s/b = 2: 0.64·2^0.34 = 0.810.
pub fn row<N: Number>(i: &Row<N>) -> N {
    let n = N::constant;
    let ratio = (i.spacing / i.width).named("ζ", Unit::NONE);
    (n(0.64) * ratio.powf(0.34)).min(N::constant(1.0)).named("μ", Unit::NONE)
}

const LEFT: Output = Output { key: "left", words: "share of the resistance that is left", unit: Unit::NONE };
const FALL: Input =
    Input::new("fall", "β", "angle at which the ground in front falls away", Unit::DEG, Limits::ours(0.0, 45.0));

/// Working of [`sand_front`].
pub static SAND_FRONT: Working = Working {
    name: "embed/front-slope-friction",
    title: "What is left of the resistance where ground with friction falls away in front.",
    source: Source {
        work: "EN 1997-1:2004",
        place: "Annex C.2, passive, no wall friction, as a ratio to level ground; from memory",
    },
    not_for: "a slope that starts some way in front of the post (careful there); undrained clay",
    inputs: &[limits::PHI, FALL],
    outputs: &[
        Output { key: "kp", words: "passive coefficient of level ground", unit: Unit::NONE },
        Output { key: "kp_falling", words: "passive coefficient of ground that falls away", unit: Unit::NONE },
        LEFT,
    ],
    run: |g| {
        let i = SandFront::put(g)?;
        if i.phi.value() < i.fall.value() {
            return Err(
                g.no_answer("the ground in front falls more steeply than its friction angle: it does not stand")
            );
        }
        let f = sand_front(&i);
        Ok(vec![Found::One(f.level), Found::One(f.falling), Found::One(f.left)])
    },
};

/// Working of [`clay_front`].
pub static CLAY_FRONT: Working = Working {
    name: "embed/front-slope-clay",
    title: "What is left of the resistance where undrained clay falls away in front.",
    source: Source {
        work: "Reese, Isenhower & Wang, Analysis and Design of Shallow and Deep Foundations, 2006",
        place: "p-y curves for piles in sloping ground, clay; from memory",
    },
    not_for: "clay that drains over the years (embed/front-slope-friction)",
    inputs: &[FALL],
    outputs: &[LEFT],
    run: |g| Ok(vec![Found::One(clay_front(&ClayFront::put(g)?))]),
};

/// Working of [`row`].
pub static ROW: Working = Working {
    name: "embed/row",
    title: "What is left of a post's resistance in a row of close posts.",
    source: Source {
        work: "Reese & Van Impe, Single Piles and Pile Groups under Lateral Loading",
        place: "side-by-side reduction 0.64 (s/b)^0.34; from memory",
    },
    not_for: "posts one behind the other",
    inputs: &[
        Input::new("spacing", "s", "distance of the posts, centre to centre", Unit::M, Limits::ours(0.03, 50.0)),
        limits::WIDTH,
    ],
    outputs: &[LEFT],
    run: |g| {
        let i = Row::put(g)?;
        if i.spacing.value() < i.width.value() {
            return Err(g.no_answer(
                "posts closer than their bearing width overlap: judge them as a wall (embed/fixed-earth-depth)",
            ));
        }
        Ok(vec![Found::One(row(&i))])
    },
};
