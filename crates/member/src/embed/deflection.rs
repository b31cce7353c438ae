//! How far does a post move at the ground under its working load?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use super::limits;
use crate::given::given;

given! {
    /// A rigid post in ground whose stiffness is known; kN, m.
    Rigid {
        /// Push on the post.
        force,
        /// Height of the push above the ground in front.
        arm,
        /// Depth below the ground in front.
        depth,
        /// Bearing width.
        width,
        /// Stiffness of the ground, kN/m³ (sand: growth of it with depth; clay: modulus of subgrade reaction).
        stiffness,
        /// Layer in front that is not counted on.
        neglected,
        /// Height above the ground in front at which the movement is wanted too.
        height,
    }
}

/// How a rigid post moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moved<N> {
    /// At the ground in front, m.
    pub ground: N,
    /// Its lean, radians.
    pub lean: N,
    /// At the wanted height, m, the post itself unbent.
    pub top: N,
}

fn lever<N: Number>(i: &Rigid<N>) -> (N, N) {
    if i.neglected.value() == 0.0 {
        return (i.depth, i.arm);
    }
    ((i.depth - i.neglected).named("L", Unit::M), (i.arm + i.neglected).named("e", Unit::M))
}

fn moved<N: Number>(i: &Rigid<N>, top_of_soil: N, lean: N) -> Moved<N> {
    let ground =
        if i.neglected.value() == 0.0 { top_of_soil } else { (top_of_soil + lean * i.neglected).named("y_g", Unit::M) };
    Moved { ground, lean, top: (ground + lean * i.height).named("y_t", Unit::M) }
}

/// Movement of a short rigid post in ground whose stiffness grows with depth (sand).
///
/// # Source
/// Broms 1964 (cohesionless soils), working-load deflection of a short free-headed pile; from memory, and derived again
/// from equilibrium with a reaction n_h z y per metre: y₀ = 18 P (1 + 4e/3L)/(L² n_h), θ = 24 P (1 + 3e/2L)/(L³ n_h).
/// # Symbols
/// n_h growth of the horizontal stiffness with depth, L depth below the layer left out, e height of push, θ lean.
/// # Gives
/// Movement at ground and at a height, m, and lean.
/// # Not for
/// Pushes near the ultimate one; slender posts (η L above 2).
/// # Errors
/// None in the formula; the working refuses a post that ends in the layer left out.
/// # By hand
/// P 2, e 0.3, L 0.8, n_h 6600: y₀ = 36·1.5/4224 = 12.8 mm.
pub fn sand_moved<N: Number>(i: &Rigid<N>) -> Moved<N> {
    let n = N::constant;
    let (l, e) = lever(i);
    let y =
        (n(18.0) * i.force * (n(1.0) + n(4.0) * e / (n(3.0) * l)) / (l.squared() * i.stiffness)).named("y₀", Unit::M);
    let lean =
        (n(24.0) * i.force * (n(1.0) + n(3.0) * e / (n(2.0) * l)) / (l.cubed() * i.stiffness)).named("θ", Unit::NONE);
    moved(i, y, lean)
}

/// Movement of a short rigid post in ground of the same stiffness at every depth (stiff clay).
///
/// # Source
/// Broms 1964 (cohesive soils), working-load deflection of a short free-headed pile; from memory, and derived again from
/// equilibrium with a reaction k b y per metre: y₀ = 4 P (1 + 3e/2L)/(k b L), θ = 6 P (1 + 2e/L)/(k b L²).
/// # Symbols
/// k modulus of subgrade reaction, b width, K = kb; else as [`sand_moved`].
/// # Gives
/// Movement at ground and at a height, m, and lean.
/// # Not for
/// Pushes near the ultimate one; slender posts (β L above 1.5); creep of soft clay.
/// # Errors
/// None in the formula; the working refuses a post that ends in the layer left out.
/// # By hand
/// P 2, e 0.3, L 0.8, k b 10 000: y₀ = 8·1.5625/8000 = 1.56 mm.
pub fn clay_moved<N: Number>(i: &Rigid<N>) -> Moved<N> {
    let n = N::constant;
    let (l, e) = lever(i);
    let kb = (i.stiffness * i.width).named("K", Unit::KPA);
    let y = (n(4.0) * i.force * (n(1.0) + n(3.0) * e / (n(2.0) * l)) / (kb * l)).named("y₀", Unit::M);
    let lean = (n(6.0) * i.force * (n(1.0) + n(2.0) * e / l) / (kb * l.squared())).named("θ", Unit::NONE);
    moved(i, y, lean)
}

const SOURCE: &str = "Broms, Lateral Resistance of Piles, J. Soil Mech. Found. Div. ASCE 90 (SM2, SM3), 1964";
const INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    Input::new("depth", "D", "depth below the ground in front", Unit::M, Limits::ours(0.05, 30.0)),
    limits::WIDTH,
    Input::new(
        "stiffness",
        "k",
        "stiffness of the ground: n_h in sand, modulus of subgrade reaction in clay",
        Unit::KN_M3,
        Limits::ours(50.0, 1e6),
    ),
    limits::NEGLECTED,
    Input::new("height", "h_t", "height above ground at which it is wanted too", Unit::M, Limits::ours(0.0, 20.0))
        .or(0.0),
];
const OUTPUTS: &[Output] = &[
    Output { key: "ground", words: "movement at the ground", unit: Unit::M },
    Output { key: "lean", words: "lean of the post, rise over run", unit: Unit::NONE },
    Output { key: "top", words: "movement at the height", unit: Unit::M },
];
const SHALLOW: &str = "the post ends within the layer that is not counted on";

/// Working of [`sand_moved`].
pub static DEFLECTION_SAND: Working = Working {
    name: "embed/deflection-sand",
    title: "Movement of a short rigid post in sand under its working load (Broms).",
    source: Source { work: SOURCE, place: "working-load deflection, cohesionless; from memory, derived again" },
    not_for: "pushes near the ultimate one; slender posts",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| {
        let i = Rigid::put(g)?;
        if i.depth.value() <= i.neglected.value() {
            return Err(g.no_answer(SHALLOW));
        }
        let m = sand_moved(&i);
        Ok(vec![Found::One(m.ground), Found::One(m.lean), Found::One(m.top)])
    },
};

/// Working of [`clay_moved`].
pub static DEFLECTION_CLAY: Working = Working {
    name: "embed/deflection-clay",
    title: "Movement of a short rigid post in stiff clay under its working load (Broms).",
    source: Source { work: SOURCE, place: "working-load deflection, cohesive; from memory, derived again" },
    not_for: "pushes near the ultimate one; slender posts; creep of soft clay",
    inputs: INPUTS,
    outputs: OUTPUTS,
    run: |g| {
        let i = Rigid::put(g)?;
        if i.depth.value() <= i.neglected.value() {
            return Err(g.no_answer(SHALLOW));
        }
        let m = clay_moved(&i);
        Ok(vec![Found::One(m.ground), Found::One(m.lean), Found::One(m.top)])
    },
};
