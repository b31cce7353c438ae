//! When does soil with friction and cohesion fail beside a rigid post? After Brinch Hansen.

use groundhold_working::{Found, Given, Input, Number, Output, Shown, Unit, Working};

use super::{
    hansen_pressure::{COHESION, Ends, PHI, SOURCE},
    ibc::MOST_DEPTH_M,
    limits,
};
use crate::{bisect::least_enough, given::given};

given! {
    /// A rigid post of given depth; kN, m, kPa.
    HansenPost {
        /// Depth below the ground in front.
        depth,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle; 0 for undrained clay.
        phi,
        /// Cohesion.
        cohesion,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A rigid post under a given push; kN, m, kPa.
    HansenPush {
        /// Push on the post.
        force,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle; 0 for undrained clay.
        phi,
        /// Cohesion.
        cohesion,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}

given! {
    /// The soil and the arm of a post whose yielding is asked for; kN, m, kPa.
    HansenYield {
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Unit weight, effective below water.
        unit_weight,
        /// Friction angle; 0 for undrained clay.
        phi,
        /// Cohesion.
        cohesion,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}

impl HansenYield<f64> {
    pub(super) fn push(&self) -> HansenPush<f64> {
        HansenPush {
            force: 0.0,
            arm: self.arm,
            width: self.width,
            unit_weight: self.unit_weight,
            phi: self.phi,
            cohesion: self.cohesion,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}
impl HansenPush<f64> {
    pub(super) fn soil_only(&self) -> HansenYield<f64> {
        HansenYield {
            arm: self.arm,
            width: self.width,
            unit_weight: self.unit_weight,
            phi: self.phi,
            cohesion: self.cohesion,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}
impl<N: Number> HansenPush<N> {
    pub(super) fn at(&self, depth: N) -> HansenPost<N> {
        HansenPost {
            depth,
            arm: self.arm,
            width: self.width,
            unit_weight: self.unit_weight,
            phi: self.phi,
            cohesion: self.cohesion,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}
/// Strips into which a depth is divided for the sums.
const STRIPS: u32 = 64;

/// The soil beside one post, ready for sums over depth. Depths are below the layer left out.
struct Beside {
    ends: Ends<f64>,
    unit_weight: f64,
    cohesion: f64,
    width: f64,
    /// Width times what is left of the resistance.
    bearing: f64,
}

impl Beside {
    fn of(i: &HansenPost<f64>) -> Beside {
        Beside {
            ends: Ends::of(i.phi),
            unit_weight: i.unit_weight,
            cohesion: i.cohesion,
            width: i.width,
            bearing: i.width * i.reduction,
        }
    }
    /// Ultimate reaction, kN/m.
    fn reaction(&self, z: f64) -> f64 {
        let (kq, kc) = self.ends.at(z / self.width);
        (self.unit_weight * z * kq + self.cohesion * kc) * self.bearing
    }
    /// Reaction from the top to `to`, kN, and its moment about the top, kNm, by Simpson's rule.
    fn sums(&self, to: f64) -> (f64, f64) {
        let step = to / f64::from(STRIPS);
        let (mut force, mut moment) = (0.0, 0.0);
        for k in 0..=STRIPS {
            let weight = if k == 0 || k == STRIPS { 1.0 } else { 2.0 + 2.0 * f64::from(k % 2) };
            let z = step * f64::from(k);
            let p = self.reaction(z) * weight * step / 3.0;
            force += p;
            moment += p * z;
        }
        (force, moment)
    }
}

/// What a rigid post resists, and the sums behind it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HansenUltimate {
    /// Depth of the turning point below the ground in front, m.
    pub turning: f64,
    /// Reaction above the turning point, kN.
    pub above: f64,
    /// Reaction below it, in the opposite direction, kN.
    pub below: f64,
    /// Ultimate push, kN.
    pub force: f64,
}

/// Ultimate push on a rigid, free-headed post: the soil fails over its whole depth, forwards above the turning point and
/// backwards below it.
///
/// # Source
/// Brinch Hansen 1961 as [`super::hansen_pressure`]: the turning point is where the moments about the push vanish. Reactions
/// are summed by Simpson's rule over 64 strips each side.
/// # Symbols
/// As [`super::hansen_pressure`]; e height of the push.
/// # Gives
/// P_u in kN, no margin inside. Zero where the post ends in the layer left out.
/// # Not for
/// A post that bends first; layered ground.
/// # Errors
/// None.
/// # By hand
/// Weightless soil with φ = 0 and great depth over width tends to a uniform 8.12 c: see the tests.
pub fn hansen_ultimate(i: &HansenPost<f64>) -> HansenUltimate {
    let length = i.depth - i.neglected;
    if length <= 0.0 {
        return HansenUltimate { turning: i.depth, above: 0.0, below: 0.0, force: 0.0 };
    }
    let soil = Beside::of(i);
    let e = i.arm + i.neglected;
    let (whole, whole_moment) = soil.sums(length);
    // Moments about the push: of what lies above x, less what lies below it; grows with x.
    let turned = |x: f64| {
        let (force, moment) = soil.sums(x);
        2.0 * (moment + e * force) - (whole_moment + e * whole)
    };
    let x = least_enough(0.0, length, |x| 0.0 <= turned(x)).unwrap_or(length);
    let above = soil.sums(x).0;
    let below = whole - above;
    HansenUltimate { turning: x + i.neglected, above, below, force: (above - below).max(0.0) }
}

/// Greatest moment in a rigid post under a push, and its depth below the ground in front, where the ultimate reaction
/// above it equals the push. `None` where the soil cannot take the push within 30 m.
///
/// # Source
/// Statics with the pressures of [`super::hansen_pressure`], as Broms does with his.
pub fn hansen_moment(i: &HansenPush<f64>) -> Option<(f64, f64)> {
    let soil = Beside::of(&i.at(MOST_DEPTH_M));
    let x = least_enough(0.0, MOST_DEPTH_M, |x| i.force <= soil.sums(x).0)?;
    let (force, moment) = soil.sums(x);
    let arm = i.arm + i.neglected + x;
    Some((x + i.neglected, i.force * arm - (force * x - moment)))
}

/// Least depth at which the ultimate push is the wanted factor times the push; `None` where 30 m are not enough.
pub fn hansen_depth(i: &HansenPush<f64>, factor: f64) -> Option<f64> {
    least_enough(i.neglected, MOST_DEPTH_M, |d| factor * i.force <= hansen_ultimate(&i.at(d)).force)
}

/// Push at which a post with this yield moment yields, however deep it stands; `None` where it lies above 10 MN.
pub fn hansen_yield(i: &HansenPush<f64>, moment: f64) -> Option<f64> {
    let reached =
        |force: f64| hansen_moment(&HansenPush { force, ..*i }).is_none_or(|(_, greatest)| moment <= greatest);
    least_enough(0.0, 10_000.0, reached)
}

const NOT_FOR: &str = "a post that bends before the soil fails; layered ground: take the weakest layer";
const PUSH_INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    limits::WIDTH,
    limits::UNIT_WEIGHT,
    PHI,
    COHESION,
    limits::NEGLECTED,
    limits::REDUCTION,
];
fn shown<'s>(g: &Given<'s>, i: &HansenPost<f64>) -> (Shown<'s>, Shown<'s>) {
    let s = g.sheet();
    let u = hansen_ultimate(i);
    s.remark("Reactions are summed over 64 strips; the turning point is where the moments about the push vanish:");
    let x = s.put("x", u.turning, Unit::M).named("x", Unit::M);
    let above = s.put("R₁", u.above, Unit::KN).named("R₁", Unit::KN);
    let below = s.put("R₂", u.below, Unit::KN).named("R₂", Unit::KN);
    (x, (above - below).max(Shown::constant(0.0)).named("P_u", Unit::KN))
}

const TURNING: Output =
    Output { key: "turning", words: "depth of the turning point below the ground in front", unit: Unit::M };

/// Working of [`hansen_ultimate`].
pub static HANSEN_LOAD: Working = Working {
    name: "embed/brinch-hansen-load",
    title: "Ultimate push on a rigid post in soil with friction and cohesion (Brinch Hansen).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: &[
        limits::DEPTH,
        limits::ARM,
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        PHI,
        COHESION,
        limits::NEGLECTED,
        limits::REDUCTION,
    ],
    outputs: &[TURNING, limits::OUT_ULTIMATE],
    run: |g| {
        let i = HansenPost::put(g)?;
        Ends::of(i.phi);
        let (x, force) = shown(g, &i.values());
        Ok(vec![Found::One(x), Found::One(force)])
    },
};

/// Working of [`hansen_depth`].
pub static HANSEN_DEPTH: Working = Working {
    name: "embed/brinch-hansen-depth",
    title: "Depth of a rigid post in soil with friction and cohesion for a wanted factor (Brinch Hansen).",
    source: SOURCE,
    not_for: NOT_FOR,
    inputs: &[
        limits::FORCE,
        limits::ARM,
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        PHI,
        COHESION,
        limits::NEGLECTED,
        limits::REDUCTION,
        limits::FACTOR,
    ],
    outputs: &[limits::OUT_DEPTH, TURNING, limits::OUT_ULTIMATE],
    run: |g| {
        let (i, factor) = (HansenPush::put(g)?, g.one("factor")?);
        let root = hansen_depth(&i.values(), factor.value())
            .ok_or_else(|| g.no_answer("even 30 m deep is not enough for this push"))?;
        Ends::of(i.phi);
        g.sheet().remark("D is found by halving the interval:");
        let depth = g.sheet().put("D", root, Unit::M).named("D", Unit::M);
        let (x, force) = shown(g, &i.values().at(root));
        let _ = (factor * i.force).named("P_F", Unit::KN);
        Ok(vec![Found::One(depth), Found::One(x), Found::One(force)])
    },
};

/// Working of [`hansen_moment`].
pub static HANSEN_MOMENT: Working = Working {
    name: "embed/brinch-hansen-moment",
    title: "Greatest moment in a rigid post under a push, with Brinch Hansen's pressures.",
    source: SOURCE,
    not_for: "a push above the ultimate one",
    inputs: PUSH_INPUTS,
    outputs: &[limits::OUT_SHEAR_FREE, limits::OUT_MOMENT],
    run: |g| {
        let i = HansenPush::put(g)?;
        let (depth, moment) =
            hansen_moment(&i.values()).ok_or_else(|| g.no_answer("the soil cannot take this push within 30 m"))?;
        Ends::of(i.phi);
        g.sheet().remark("z_M is where the ultimate reaction above it, summed over 64 strips, equals the push:");
        let depth = g.sheet().put("z_M", depth, Unit::M).named("z_M", Unit::M);
        let moment = g.sheet().put("M", moment, Unit::KNM).named("M", Unit::KNM);
        Ok(vec![Found::One(depth), Found::One(moment)])
    },
};

/// Working of [`hansen_yield`].
pub static HANSEN_YIELD: Working = Working {
    name: "embed/brinch-hansen-yield",
    title: "Push at which the post itself yields, however deep, with Brinch Hansen's pressures.",
    source: SOURCE,
    not_for: "a post too short to be held at its foot: there the soil fails first",
    inputs: &[
        limits::YIELD,
        limits::ARM,
        limits::WIDTH,
        limits::UNIT_WEIGHT,
        PHI,
        COHESION,
        limits::NEGLECTED,
        limits::REDUCTION,
    ],
    outputs: &[limits::OUT_YIELD_PUSH],
    run: |g| {
        let (post, moment) = (HansenYield::put(g)?, g.one("moment")?);
        let root = hansen_yield(&post.values().push(), moment.value())
            .ok_or_else(|| g.no_answer("the post yields only above 10 MN"))?;
        g.sheet().remark("P_y is found by halving the interval; its greatest moment is the yield moment:");
        Ok(vec![Found::One(g.sheet().put("P_y", root, Unit::KN).named("P_y", Unit::KN))])
    },
};
