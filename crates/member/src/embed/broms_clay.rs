//! When does clay fail beside a short post before it can drain, and where is the post bent most? After Broms.

use groundhold_working::{Found, Input, Number, Source, Unit, Working};

use super::{ibc::MOST_DEPTH_M, limits};
use crate::{given::given, root::first_reach};

given! {
    /// A post of given depth in clay; kN, m, kPa.
    ClayPost {
        /// Depth below the ground in front.
        depth,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Undrained shear strength.
        strength,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A post under a given push in clay; kN, m, kPa.
    ClayPush {
        /// Push on the post.
        force,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Undrained shear strength.
        strength,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A post that bends before the soil fails, in clay; kN, m, kPa, kNm.
    ClayYield {
        /// Moment at which the post yields.
        moment,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Undrained shear strength.
        strength,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}

impl<N: Number> ClayPush<N> {
    pub(super) fn at(&self, depth: N) -> ClayPost<N> {
        ClayPost {
            depth,
            arm: self.arm,
            width: self.width,
            strength: self.strength,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}

/// What a short post in clay resists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClayUltimate<N> {
    /// Ultimate push, kN.
    pub force: N,
    /// Depth of zero shear below the ground in front, m.
    pub depth: N,
    /// Greatest moment under that push, kNm.
    pub moment: N,
}

/// Where a post in clay is bent most, and how much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClayMoment<N> {
    /// Depth of the greatest moment below the ground in front, m.
    pub depth: N,
    /// The greatest moment, kNm.
    pub moment: N,
}

/// Ultimate push on a short, free-headed post in clay, with the moment it gives.
///
/// # Source
/// Broms, Lateral Resistance of Piles in Cohesive Soils, J. Soil Mech. Found. Div. ASCE 90 (SM2), 1964: no reaction over
/// the top 1.5 b, 9 c_u b below; P = 9 c_u b f, M = P (e + 1.5b + f/2) = 2.25 c_u b g². As worked in Reese & Van Impe,
/// Single Piles and Pile Groups under Lateral Loading, App. A. Layer left out and reduction are ours.
/// # Symbols
/// c_u undrained strength, b bearing width, f depth of zero shear below 1.5 b, g what is left below it, e height of push.
/// # Gives
/// P_u in kN: the soil fails, no margin inside. Zero where the post ends within the top 1.5 b.
/// # Not for
/// Clay that drains (garden walls stand for years: use `embed/brinch-hansen-load` too); a post that bends first.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// b 0.305, e 0.61, L 2.44, c_u 47.9: f = 0.452 m, P = 59.5 kN, M = 77.0 kNm (PO-06).
pub fn clay_ultimate<N: Number>(i: &ClayPost<N>) -> ClayUltimate<N> {
    let n = N::constant;
    let crust = (i.neglected + n(1.5) * i.width).named("z_c", Unit::M);
    let length = (i.depth - crust).max(N::constant(0.0)).named("L'", Unit::M);
    let zero = N::constant(0.0);
    if length.value() == 0.0 {
        return ClayUltimate { force: zero, depth: crust, moment: zero };
    }
    let e = (i.arm + crust).named("e'", Unit::M);
    let half = (n(2.0) * e + length).named("B", Unit::M);
    let f = ((half.squared() + length.squared()).sqrt() - half).named("f", Unit::M);
    let force = (n(9.0) * i.reduction * i.strength * i.width * f).named("P_u", Unit::KN);
    let moment = (force * (e + f / 2.0)).named("M", Unit::KNM);
    ClayUltimate { force, depth: (crust + f).named("z_M", Unit::M), moment }
}

/// Greatest moment in a post in clay under a push, and its depth, where the shear is zero.
///
/// # Source
/// Broms 1964 as [`clay_ultimate`]: f = P/(9 c_u b), M = P (e + 1.5b + f/2).
/// # Symbols
/// As [`clay_ultimate`].
/// # Gives
/// M in kNm and its depth below the ground in front.
/// # Not for
/// A push above the ultimate one.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// PO-06 with P 59.5: M = 59.5·(0.61 + 0.4575 + 0.226) = 77.0 kNm.
pub fn clay_moment<N: Number>(i: &ClayPush<N>) -> ClayMoment<N> {
    let n = N::constant;
    let crust = (i.neglected + n(1.5) * i.width).named("z_c", Unit::M);
    let f = (i.force / (n(9.0) * i.reduction * i.strength * i.width)).named("f", Unit::M);
    let moment = (i.force * (i.arm + crust + f / 2.0)).named("M", Unit::KNM);
    ClayMoment { depth: (crust + f).named("z_M", Unit::M), moment }
}

/// Push at which the post yields in clay, however deep it stands (Broms' long pile): P (e + 1.5b + f/2) = M_y.
pub fn clay_yield<N: Number>(i: &ClayYield<N>) -> N {
    let n = N::constant;
    let arm = (i.arm + i.neglected + n(1.5) * i.width).named("e'", Unit::M);
    let grip = (n(9.0) * i.reduction * i.strength * i.width).named("p", Unit::KN_M);
    // P²/(2p) + P e' = M_y.
    (grip * ((arm.squared() + n(2.0) * i.moment / grip).sqrt() - arm)).named("P_y", Unit::KN)
}

/// Least depth at which the ultimate push is the wanted factor times the push; `None` where 30 m are not enough.
pub fn clay_depth(i: &ClayPush<f64>, factor: f64) -> Option<f64> {
    first_reach(i.neglected, MOST_DEPTH_M, 1.0, |d| clay_ultimate(&i.at(d)).force - factor * i.force)
}

const SOURCE: Source = Source {
    work: "Broms, Lateral Resistance of Piles in Cohesive Soils, J. Soil Mech. Found. Div. ASCE 90 (SM2), 1964",
    place: "short and long free-headed piles; worked in Reese & Van Impe, Single Piles and Pile Groups, App. A",
};
const NOT_FOR: &str =
    "clay that drains over the years (embed/brinch-hansen-load); a post that bends before the soil fails";
const DEPTH_INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    limits::WIDTH,
    limits::STRENGTH,
    limits::NEGLECTED,
    limits::REDUCTION,
    limits::FACTOR,
];
const PUSH_INPUTS: &[Input] =
    &[limits::FORCE, limits::ARM, limits::WIDTH, limits::STRENGTH, limits::NEGLECTED, limits::REDUCTION];

/// Working of [`clay_ultimate`].
pub static BROMS_CLAY_LOAD: Working = Working {
    name: "embed/broms-clay-load",
    title: "Ultimate push on a short post in undrained clay at a given depth (Broms).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: &[limits::DEPTH, limits::ARM, limits::WIDTH, limits::STRENGTH, limits::NEGLECTED, limits::REDUCTION],
    outputs: &[limits::OUT_ULTIMATE, limits::OUT_SHEAR_FREE, limits::OUT_MOMENT],
    run: |g| {
        let u = clay_ultimate(&ClayPost::put(g)?);
        Ok(vec![Found::One(u.force), Found::One(u.depth), Found::One(u.moment)])
    },
};

/// Working of [`clay_moment`].
pub static BROMS_CLAY_MOMENT: Working = Working {
    name: "embed/broms-clay-moment",
    title: "Greatest moment in a post in undrained clay under a push (Broms).",
    source: SOURCE,
    not_for: "a push above the ultimate one",
    inputs: PUSH_INPUTS,
    outputs: &[limits::OUT_SHEAR_FREE, limits::OUT_MOMENT],
    run: |g| {
        let m = clay_moment(&ClayPush::put(g)?);
        Ok(vec![Found::One(m.depth), Found::One(m.moment)])
    },
};

/// Working of [`clay_depth`].
pub static BROMS_CLAY_DEPTH: Working = Working {
    name: "embed/broms-clay-depth",
    title: "Depth of a short post in undrained clay for a wanted factor (Broms).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: DEPTH_INPUTS,
    outputs: &[limits::OUT_DEPTH, limits::OUT_ULTIMATE],
    run: |g| {
        let (i, factor) = (ClayPush::put(g)?, g.one("factor")?);
        let root = clay_depth(&i.values(), factor.value())
            .ok_or_else(|| g.no_answer("even 30 m deep is not enough for this push"))?;
        g.sheet().remark("D is found by closing in on it; the ultimate push at that depth:");
        let depth = g.sheet().put("D", root, Unit::M).named("D", Unit::M);
        let u = clay_ultimate(&i.at(depth));
        let _ = (factor * i.force).named("P_F", Unit::KN);
        Ok(vec![Found::One(depth), Found::One(u.force)])
    },
};

/// Working of [`clay_yield`].
pub static BROMS_CLAY_YIELD: Working = Working {
    name: "embed/broms-clay-yield",
    title: "Push at which the post itself yields in undrained clay, however deep (Broms' long pile).",
    source: SOURCE,
    not_for: "a post too short to be held at its foot: there the soil fails first (embed/broms-clay-load)",
    inputs: &[limits::YIELD, limits::ARM, limits::WIDTH, limits::STRENGTH, limits::NEGLECTED, limits::REDUCTION],
    outputs: &[limits::OUT_YIELD_PUSH],
    run: |g| Ok(vec![Found::One(clay_yield(&ClayYield::put(g)?))]),
};
