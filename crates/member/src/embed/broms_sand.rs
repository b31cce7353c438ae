//! When does sand fail beside a short post, and where is the post bent most? After Broms.

use groundhold_working::{Found, Input, Number, Output, Source, Unit, Working};

use super::{ibc::MOST_DEPTH_M, limits};
use crate::{given::given, root::first_reach};

given! {
    /// A post of given depth in sand; kN, m.
    SandPost {
        /// Depth below the ground in front.
        depth,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle.
        phi,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A post under a given push in sand; kN, m.
    SandPush {
        /// Push on the post.
        force,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle.
        phi,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A post that bends before the soil fails, in sand; kN, m, kNm.
    SandYield {
        /// Moment at which the post yields.
        moment,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle.
        phi,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}

impl<N: Number> SandPush<N> {
    pub(super) fn at(&self, depth: N) -> SandPost<N> {
        SandPost {
            depth,
            arm: self.arm,
            width: self.width,
            unit_weight: self.unit_weight,
            phi: self.phi,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}
impl<N: Number> SandYield<N> {
    fn under(&self, force: N) -> SandPush<N> {
        SandPush {
            force,
            arm: self.arm,
            width: self.width,
            unit_weight: self.unit_weight,
            phi: self.phi,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}

/// What a short post in sand resists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SandUltimate<N> {
    /// Passive coefficient.
    pub kp: N,
    /// Ultimate push, kN.
    pub force: N,
}

/// Where a post in sand is bent most, and how much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SandMoment<N> {
    /// Depth of the greatest moment below the ground in front, m.
    pub depth: N,
    /// The greatest moment, kNm.
    pub moment: N,
}

/// Passive coefficient of Rankine, tan²(45° + φ/2).
fn passive<N: Number>(phi: N) -> N {
    (N::degrees(45.0) + phi / 2.0).tan().squared().named("K_p", Unit::NONE)
}

fn lowered<N: Number>(length: N, by: N, sign: f64, symbol: &'static str) -> N {
    if by.value() == 0.0 {
        return length;
    }
    let moved = if sign < 0.0 { (length - by).max(N::constant(0.0)) } else { length + by };
    moved.named(symbol, Unit::M)
}

/// Ultimate push on a short, free-headed post in sand.
///
/// # Source
/// Broms, Lateral Resistance of Piles in Cohesionless Soils, J. Soil Mech. Found. Div. ASCE 90 (SM3), 1964. As worked in
/// Reese & Van Impe, Single Piles and Pile Groups under Lateral Loading, App. A. Layer left out and reduction are ours.
/// # Symbols
/// γ unit weight, b bearing width, L depth below the layer left out, K_p passive coefficient, e height of the push.
/// # Gives
/// P_u = 0.5 γ b L³ K_p/(e + L), kN: the soil fails, no margin inside. Zero where the post ends in the layer left out.
/// # Not for
/// A post that bends first ([`sand_yield`]); loose fill; layered ground.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// γ 18, b 0.45, L 1.5, φ 30°, e 1: 0.5·18·0.45·3.375·3/2.5 = 16.40 kN (PO-07).
pub fn sand_ultimate<N: Number>(i: &SandPost<N>) -> SandUltimate<N> {
    let kp = passive(i.phi);
    SandUltimate { kp, force: short_post(i, kp) }
}

fn short_post<N: Number>(i: &SandPost<N>, kp: N) -> N {
    let length = lowered(i.depth, i.neglected, -1.0, "L");
    let e = lowered(i.arm, i.neglected, 1.0, "e");
    if length.value() == 0.0 {
        return N::constant(0.0);
    }
    let soil = N::constant(0.5) * i.reduction * i.unit_weight * i.width * length.cubed() * kp;
    (soil / (e + length)).named("P_u", Unit::KN)
}

/// Greatest moment in a post in sand under a push, and its depth, where the shear is zero.
///
/// # Source
/// Broms 1964 as [`sand_ultimate`]: 1.5 γ b K_p f² = P, M = P (e + 2f/3).
/// # Symbols
/// f depth of zero shear below the layer left out; else as [`sand_ultimate`].
/// # Gives
/// M in kNm and its depth. With the push at its ultimate the depth stays above L/√3.
/// # Not for
/// A push above the ultimate one.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// P 16.40: f = √(2·16.40/(3·18·0.45·3)) = 0.671 m, M = 16.40·(1 + 0.447) = 23.74 kNm (PO-07).
pub fn sand_moment<N: Number>(i: &SandPush<N>) -> SandMoment<N> {
    let n = N::constant;
    let kp = passive(i.phi);
    let e = lowered(i.arm, i.neglected, 1.0, "e");
    let f = (n(2.0) * i.force / (n(3.0) * i.reduction * i.unit_weight * i.width * kp)).sqrt().named("f", Unit::M);
    let moment = (i.force * (e + n(2.0) * f / 3.0)).named("M", Unit::KNM);
    SandMoment { depth: lowered(f, i.neglected, 1.0, "z_M"), moment }
}

/// Least depth at which the ultimate push is the wanted factor times the push; `None` where 30 m are not enough.
pub fn sand_depth(i: &SandPush<f64>, factor: f64) -> Option<f64> {
    let kp = passive(i.phi);
    first_reach(i.neglected, MOST_DEPTH_M, 1.0, |d| short_post(&i.at(d), kp) - factor * i.force)
}

/// Beyond any depth of zero shear that the limits of the inputs allow, m.
const MOST_SHEAR_FREE_M: f64 = 1000.0;

/// Push at which the post yields in sand, however deep it stands (Broms' long pile): [`sand_moment`] reaches the yield
/// moment.
pub fn sand_yield(i: &SandYield<f64>) -> f64 {
    // P = s f² and M = P (e + 2f/3) with f the depth of zero shear below the layer left out.
    let soil = 1.5 * i.reduction * i.unit_weight * i.width * passive(i.phi);
    let e = i.arm + i.neglected;
    let moment = |f: f64| soil * f * f * (e + 2.0 * f / 3.0);
    let f = first_reach(0.0, MOST_SHEAR_FREE_M, 1.0, |f| moment(f) - i.moment).unwrap_or(MOST_SHEAR_FREE_M);
    soil * f * f
}

const SOURCE: Source = Source {
    work: "Broms, Lateral Resistance of Piles in Cohesionless Soils, J. Soil Mech. Found. Div. ASCE 90 (SM3), 1964",
    place: "short and long free-headed piles; worked in Reese & Van Impe, Single Piles and Pile Groups, App. A",
};
const NOT_FOR: &str = "a post that bends before the soil fails (embed/broms-sand-yield), loose fill, layered ground; for \
                       soil with cohesion embed/brinch-hansen-load";
const DEPTH_INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    limits::WIDTH,
    limits::UNIT_WEIGHT,
    limits::PHI,
    limits::NEGLECTED,
    limits::REDUCTION,
    limits::FACTOR,
];
const PUSH_INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    limits::WIDTH,
    limits::UNIT_WEIGHT,
    limits::PHI,
    limits::NEGLECTED,
    limits::REDUCTION,
];
const OUT_KP: Output = Output { key: "kp", words: "passive coefficient", unit: Unit::NONE };

/// Working of [`sand_ultimate`], with the moment at that push.
pub static BROMS_SAND_LOAD: Working = Working {
    name: "embed/broms-sand-load",
    title: "Ultimate push on a short post in sand at a given depth (Broms).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: &[
        limits::DEPTH,
        limits::ARM,
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        limits::PHI,
        limits::NEGLECTED,
        limits::REDUCTION,
    ],
    outputs: &[OUT_KP, limits::OUT_ULTIMATE],
    run: |g| {
        let u = sand_ultimate(&SandPost::put(g)?);
        Ok(vec![Found::One(u.kp), Found::One(u.force)])
    },
};

/// Working of [`sand_moment`].
pub static BROMS_SAND_MOMENT: Working = Working {
    name: "embed/broms-sand-moment",
    title: "Greatest moment in a post in sand under a push (Broms).",
    source: SOURCE,
    not_for: "a push above the ultimate one",
    inputs: PUSH_INPUTS,
    outputs: &[limits::OUT_SHEAR_FREE, limits::OUT_MOMENT],
    run: |g| {
        let m = sand_moment(&SandPush::put(g)?);
        Ok(vec![Found::One(m.depth), Found::One(m.moment)])
    },
};

/// Working of [`sand_depth`].
pub static BROMS_SAND_DEPTH: Working = Working {
    name: "embed/broms-sand-depth",
    title: "Depth of a short post in sand for a wanted factor (Broms).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: DEPTH_INPUTS,
    outputs: &[limits::OUT_DEPTH, limits::OUT_ULTIMATE],
    run: |g| {
        let (i, factor) = (SandPush::put(g)?, g.one("factor")?);
        let root = sand_depth(&i.values(), factor.value())
            .ok_or_else(|| g.no_answer("even 30 m deep is not enough for this push"))?;
        g.sheet().remark("D is found by closing in on it; the ultimate push at that depth:");
        let depth = g.sheet().put("D", root, Unit::M).named("D", Unit::M);
        let u = sand_ultimate(&i.at(depth));
        let _ = (factor * i.force).named("P_F", Unit::KN);
        Ok(vec![Found::One(depth), Found::One(u.force)])
    },
};

/// Working of [`sand_yield`].
pub static BROMS_SAND_YIELD: Working = Working {
    name: "embed/broms-sand-yield",
    title: "Push at which the post itself yields in sand, however deep (Broms' long pile).",
    source: SOURCE,
    not_for: "a post too short to be held at its foot: there the soil fails first (embed/broms-sand-load)",
    inputs: &[
        limits::YIELD,
        limits::ARM,
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        limits::PHI,
        limits::NEGLECTED,
        limits::REDUCTION,
    ],
    outputs: &[limits::OUT_YIELD_PUSH, limits::OUT_SHEAR_FREE],
    run: |g| {
        let i = SandYield::put(g)?;
        let root = sand_yield(&i.values());
        g.sheet().remark("P_y is found by closing in on it; the moment under that push is the yield moment:");
        let force = g.sheet().put("P_y", root, Unit::KN).named("P_y", Unit::KN);
        let m = sand_moment(&i.under(force));
        Ok(vec![Found::One(force), Found::One(m.depth)])
    },
};
