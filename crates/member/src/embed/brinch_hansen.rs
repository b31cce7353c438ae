//! When does soil with friction and cohesion fail beside a rigid post? After Brinch Hansen.

use groundhold_quantity::math;
use groundhold_working::{Found, Given, Input, Number, Output, Shown, Unit, Working};

use super::{
    hansen_pressure::{COHESION, Ends, PHI, SOURCE},
    ibc::MOST_DEPTH_M,
    limits,
};
use crate::{given::given, root::first_reach};

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
impl HansenPost<f64> {
    fn soil_only(&self) -> HansenYield<f64> {
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
/// Below this growth of K over the depth the integrals are summed as a series, where their closed form would lose digits.
const SLIGHT: f64 = 0.1;

/// One factor K between its ends as a function of depth: K = K^∞ + (K⁰ − K^∞)/(1 + αz).
#[derive(Clone, Copy)]
struct Blend {
    top: f64,
    deep: f64,
    /// α, 1/m.
    pace: f64,
}

impl Blend {
    /// ∫K dz, ∫K z dz, ∫K z² dz from 0 to x, exactly.
    fn integrals(&self, x: f64) -> [f64; 3] {
        let fading = fading(self.pace, x);
        let whole = [x, x * x / 2.0, x * x * x / 3.0];
        std::array::from_fn(|n| self.deep * whole[n] + (self.top - self.deep) * fading[n])
    }
}

/// ∫zⁿ/(1 + αz) dz from 0 to x for n = 0, 1, 2.
fn fading(pace: f64, x: f64) -> [f64; 3] {
    let u = pace * x;
    if u < SLIGHT {
        // xⁿ⁺¹ Σ (−u)^k/(n + 1 + k); seventeen terms of a tenth leave less than the last bit.
        let series = |first: f64| (0..17).rev().fold(0.0, |sum, k| 1.0 / (first + f64::from(k)) - u * sum);
        return [x * series(1.0), x * x * series(2.0), x * x * x * series(3.0)];
    }
    let zero = math::ln(1.0 + u) / pace;
    let one = (x - zero) / pace;
    [zero, one, (x * x / 2.0 - one) / pace]
}

/// The soil beside one post, ready for sums over depth. Depths are below the layer left out.
struct Beside {
    overburden: Blend,
    held: Blend,
    unit_weight: f64,
    cohesion: f64,
    /// Width times what is left of the resistance.
    bearing: f64,
}

impl Beside {
    fn of(i: &HansenYield<f64>) -> Beside {
        let ends = Ends::of(i.phi);
        let [overburden, held] = ends.blends().map(|(top, deep, pace)| Blend { top, deep, pace: pace / i.width });
        Beside { overburden, held, unit_weight: i.unit_weight, cohesion: i.cohesion, bearing: i.width * i.reduction }
    }
    /// Reaction from the top to `to`, kN, and its moment about the top, kNm.
    fn sums(&self, to: f64) -> (f64, f64) {
        let (mut force, mut moment) = (0.0, 0.0);
        if self.overburden.deep != 0.0 {
            let [_, one, two] = self.overburden.integrals(to);
            (force, moment) = (self.unit_weight * one, self.unit_weight * two);
        }
        if self.cohesion != 0.0 {
            let [zero, one, _] = self.held.integrals(to);
            (force, moment) = (force + self.cohesion * zero, moment + self.cohesion * one);
        }
        (force * self.bearing, moment * self.bearing)
    }
    /// What a post resists that stands `length` deep in this soil and is pushed `e` above it.
    fn ultimate(&self, length: f64, e: f64) -> HansenUltimate {
        if length <= 0.0 {
            return HansenUltimate { turning: length, above: 0.0, below: 0.0, force: 0.0 };
        }
        let (whole, whole_moment) = self.sums(length);
        // Moments about the push: of what lies above x, less what lies below it; grows with x.
        let turned = |x: f64| {
            let (force, moment) = self.sums(x);
            2.0 * (moment + e * force) - (whole_moment + e * whole)
        };
        let turning = first_reach(0.0, length, length, turned).unwrap_or(length);
        let above = self.sums(turning).0;
        let below = whole - above;
        HansenUltimate { turning, above, below, force: (above - below).max(0.0) }
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
/// Brinch Hansen 1961 as [`super::hansen_pressure`]: the turning point is where the moments about the push vanish. The
/// pressures are integrated over depth in closed form.
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
    let u = Beside::of(&i.soil_only()).ultimate(i.depth - i.neglected, i.arm + i.neglected);
    HansenUltimate { turning: u.turning + i.neglected, ..u }
}

/// Greatest moment in a rigid post under a push, and its depth below the ground in front, where the ultimate reaction
/// above it equals the push. `None` where the soil cannot take the push within 30 m.
///
/// # Source
/// Statics with the pressures of [`super::hansen_pressure`], as Broms does with his.
pub fn hansen_moment(i: &HansenPush<f64>) -> Option<(f64, f64)> {
    let soil = Beside::of(&i.soil_only());
    let x = first_reach(0.0, MOST_DEPTH_M, 1.0, |x| soil.sums(x).0 - i.force)?;
    let (force, moment) = soil.sums(x);
    let arm = i.arm + i.neglected + x;
    Some((x + i.neglected, i.force * arm - (force * x - moment)))
}

/// Least depth at which the ultimate push is the wanted factor times the push; `None` where 30 m are not enough.
pub fn hansen_depth(i: &HansenPush<f64>, factor: f64) -> Option<f64> {
    let soil = Beside::of(&i.soil_only());
    let e = i.arm + i.neglected;
    first_reach(i.neglected, MOST_DEPTH_M, 1.0, |d| soil.ultimate(d - i.neglected, e).force - factor * i.force)
}

/// Push at which a post with this yield moment yields, however deep it stands; `None` where it lies above 10 MN.
pub fn hansen_yield(i: &HansenPush<f64>, moment: f64) -> Option<f64> {
    let soil = Beside::of(&i.soil_only());
    let e = i.arm + i.neglected;
    // Under a push P the shear vanishes at x where the soil has given P; the moment there is P e and the soil's own about
    // its top. A push that the soil cannot take within 30 m counts as one that yields the post.
    let bent = |x: f64| {
        let (force, turn) = soil.sums(x);
        force * e + turn - moment
    };
    let x = first_reach(0.0, MOST_DEPTH_M, 1.0, bent).unwrap_or(MOST_DEPTH_M);
    Some(soil.sums(x).0).filter(|force| *force <= MOST_PUSH_KN)
}

/// Pushes beyond this are no posts of a garden.
const MOST_PUSH_KN: f64 = 10_000.0;
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
    s.remark("Reactions are the pressures integrated over depth; the turning point is where the moments about the push vanish:");
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
        g.sheet().remark("D is found by closing in on it:");
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
        g.sheet().remark("z_M is where the ultimate reaction above it, integrated over depth, equals the push:");
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
        g.sheet().remark("P_y is found by closing in on it; its greatest moment is the yield moment:");
        Ok(vec![Found::One(g.sheet().put("P_y", root, Unit::KN).named("P_y", Unit::KN))])
    },
};
