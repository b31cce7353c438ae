//! How deep does the International Building Code want a post that is pushed sideways?

use groundhold_working::{Found, Input, Limits, Number, Output, Shown, Source, Unit, Working};

use super::limits;
use crate::{given::given, root::first_reach};

/// IBC 1807.3.2: depth that counts for the lateral pressure is not over 12 ft.
const DEEPEST_M: f64 = 12.0 * 0.3048;
/// Deepest post that is searched for.
pub(crate) const MOST_DEPTH_M: f64 = 30.0;

given! {
    /// A post of given depth; kN, m, kPa/m.
    IbcPost {
        /// Depth below the ground in front.
        depth,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Allowable lateral bearing per metre of depth.
        lateral,
        /// 2 for an isolated post that may move 12 mm at the surface, else 1 (1806.3.4).
        multiplier,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}
given! {
    /// A post of wanted depth; kN, m, kPa/m.
    IbcPush {
        /// Push on the post.
        force,
        /// Height of the push above the ground in front.
        arm,
        /// Bearing width.
        width,
        /// Allowable lateral bearing per metre of depth.
        lateral,
        /// 2 for an isolated post that may move 12 mm at the surface, else 1 (1806.3.4).
        multiplier,
        /// Layer in front that is not counted on.
        neglected,
        /// What is left of the resistance beside a slope or in a close row.
        reduction,
    }
}

impl<N: Number> IbcPush<N> {
    pub(super) fn at(&self, depth: N) -> IbcPost<N> {
        IbcPost {
            depth,
            arm: self.arm,
            width: self.width,
            lateral: self.lateral,
            multiplier: self.multiplier,
            neglected: self.neglected,
            reduction: self.reduction,
        }
    }
}

/// What a post of given depth may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IbcAllowed<N> {
    /// Allowable lateral bearing, S₁ or S₃, kPa.
    pub bearing: N,
    /// Allowable push, kN.
    pub force: N,
}

/// Allowable push on a post that is free at the ground.
///
/// # Source
/// International Building Code 2021, 1807.3.2.1, equation 18-1: d = 0.5 A (1 + √(1 + 4.36 h/A)), A = 2.34 P/(S₁ b),
/// solved for P: A = d²/(d + 1.09 h). The layer left out in front and the reduction are ours.
/// # Symbols
/// P push, h its height, b bearing width, d depth, S₁ allowable lateral bearing at a third of the depth (d not over 12 ft).
/// # Gives
/// Allowable push in kN, margin included; zero where the post does not reach below the neglected layer.
/// # Not for
/// Posts held at the surface ([`ibc_held`]); mud, peat and loose fill.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Reference cases PO-01, PO-05.
pub fn ibc_free<N: Number>(i: &IbcPost<N>) -> IbcAllowed<N> {
    let n = N::constant;
    let (d, h) = below(i);
    if d.value() == 0.0 {
        return IbcAllowed { bearing: d, force: d };
    }
    let s1 = (i.multiplier * i.reduction * i.lateral * d.min(N::constant(DEEPEST_M)) / 3.0).named("S₁", Unit::KPA);
    let a = (d.squared() / (d + n(1.09) * h)).named("A", Unit::M);
    IbcAllowed { bearing: s1, force: (a * s1 * i.width / 2.34).named("P", Unit::KN) }
}

/// One step of equation 18-1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IbcStep<N> {
    /// S₁ at a third of the depth tried, kPa.
    pub bearing: N,
    /// A of equation 18-1, m.
    pub a: N,
    /// Depth that the equation gives, below the ground in front, m.
    pub next: N,
}

/// Equation 18-1 as it stands, for a depth that is tried: S₁ depends on the depth, so a hand calculation goes round.
///
/// # Source
/// International Building Code 2021, 1807.3.2.1, equation 18-1.
/// # Symbols
/// As [`ibc_free`].
/// # Gives
/// S₁, A and the depth; the depth tried was right where both agree.
/// # Not for
/// A final depth: [`ibc_free_depth`].
/// # Errors
/// The working refuses a depth within the layer left out.
/// # By hand
/// P 3000 lb, S₁ 399 psf, b 1 ft: A = 17.59 ft (PO-04).
pub fn ibc_step<N: Number>(i: &IbcPush<N>, tried: N) -> IbcStep<N> {
    let n = N::constant;
    let (d, h) = below(&i.at(tried));
    let s1 = (i.multiplier * i.reduction * i.lateral * d.min(N::constant(DEEPEST_M)) / 3.0).named("S₁", Unit::KPA);
    let a = (n(2.34) * i.force / (s1 * i.width)).named("A", Unit::M);
    let right = (n(0.5) * a * (n(1.0) + (n(1.0) + n(4.36) * h / a).sqrt())).named("d", Unit::M);
    let next = if i.neglected.value() == 0.0 { right } else { (right + i.neglected).named("D", Unit::M) };
    IbcStep { bearing: s1, a, next }
}

/// Allowable push on a post that is held at the ground by a rigid slab.
///
/// # Source
/// International Building Code 2021, 1807.3.2.2, equation 18-2: d = √(4.25 P h/(S₃ b)), solved for P.
/// # Symbols
/// As [`ibc_free`]; S₃ allowable lateral bearing at the full depth (d not over 12 ft).
/// # Gives
/// Allowable push in kN, margin included.
/// # Not for
/// A lawn, paving slabs or gravel in front: they hold nothing. A push at ground level.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Reference case PO-03.
pub fn ibc_held<N: Number>(i: &IbcPost<N>) -> IbcAllowed<N> {
    let n = N::constant;
    let d = held_depth(i);
    let s3 = (i.multiplier * i.reduction * i.lateral * d.min(N::constant(DEEPEST_M))).named("S₃", Unit::KPA);
    IbcAllowed { bearing: s3, force: (s3 * i.width * d.squared() / (n(4.25) * i.arm)).named("P", Unit::KN) }
}

/// Depth that counts where the post is held: without the layer left out, which moves the soil no nearer to the slab.
fn held_depth<N: Number>(i: &IbcPost<N>) -> N {
    if i.neglected.value() == 0.0 { i.depth } else { (i.depth - i.neglected).max(N::constant(0.0)).named("d", Unit::M) }
}

fn below<N: Number>(i: &IbcPost<N>) -> (N, N) {
    if i.neglected.value() == 0.0 {
        return (i.depth, i.arm);
    }
    let d = (i.depth - i.neglected).max(N::constant(0.0)).named("d", Unit::M);
    (d, (i.arm + i.neglected).named("h'", Unit::M))
}

/// Least depth at which [`ibc_free`] allows the push; `None` where 30 m are not enough.
pub fn ibc_free_depth(i: &IbcPush<f64>) -> Option<f64> {
    first_reach(i.neglected, MOST_DEPTH_M, 1.0, |d| ibc_free(&i.at(d)).force - i.force)
}

/// Least depth at which [`ibc_held`] allows the push; `None` where 30 m are not enough.
pub fn ibc_held_depth(i: &IbcPush<f64>) -> Option<f64> {
    first_reach(i.neglected, MOST_DEPTH_M, 1.0, |d| ibc_held(&i.at(d)).force - i.force)
}

const WORK: &str = "International Building Code, 2021";
const FREE: Source = Source { work: WORK, place: "1807.3.2.1, equation 18-1; 1806.2, 1806.3.4" };
const HELD: Source = Source { work: WORK, place: "1807.3.2.2, equations 18-2 and 18-3; 1806.2, 1806.3.4" };
const LATERAL: Input =
    Input::new("lateral", "s", "allowable lateral bearing per metre of depth", Unit::KPA_M, Limits::ours(1.0, 1000.0));
const MULTIPLIER: Input = Input::new(
    "multiplier",
    "k",
    "2 for an isolated post that may move 12 mm, else 1",
    Unit::NONE,
    Limits::author(1.0, 2.0),
)
.or(1.0);
const DEPTH_INPUTS: &[Input] =
    &[limits::FORCE, limits::ARM, limits::WIDTH, LATERAL, MULTIPLIER, limits::NEGLECTED, limits::REDUCTION];
const OUT_A: Output = Output { key: "a", words: "A of equation 18-1", unit: Unit::M };
const TRIAL_INPUTS: &[Input] = &[
    limits::FORCE,
    limits::ARM,
    limits::WIDTH,
    LATERAL,
    MULTIPLIER,
    limits::NEGLECTED,
    limits::REDUCTION,
    limits::DEPTH,
];
const LOAD_INPUTS: &[Input] =
    &[limits::DEPTH, limits::ARM, limits::WIDTH, LATERAL, MULTIPLIER, limits::NEGLECTED, limits::REDUCTION];
const HELD_ARM: Input =
    Input::new("arm", "h", "height of the push above the ground in front", Unit::M, Limits::ours(0.01, 20.0));
const HELD_LOAD_INPUTS: &[Input] =
    &[limits::DEPTH, HELD_ARM, limits::WIDTH, LATERAL, MULTIPLIER, limits::NEGLECTED, limits::REDUCTION];
const HELD_DEPTH_INPUTS: &[Input] =
    &[limits::FORCE, HELD_ARM, limits::WIDTH, LATERAL, MULTIPLIER, limits::NEGLECTED, limits::REDUCTION];
const BEARING: Output = Output { key: "bearing", words: "allowable lateral bearing", unit: Unit::KPA };
const FORCE: Output = Output { key: "force", words: "allowable push", unit: Unit::KN };
const DEPTH: Output = Output { key: "depth", words: "required depth below the ground in front", unit: Unit::M };
const NOT_FREE: &str = "a post held by a slab (embed/ibc-held-depth); mud, peat, loose fill; doubled values where 12 mm of \
                        movement would do harm";
const NOT_HELD: &str = "a lawn, loose paving or gravel in front, which hold nothing; a push at ground level";

/// Working of [`ibc_free`].
pub static IBC_FREE_LOAD: Working = Working {
    name: "embed/ibc-free-load",
    title: "Push that a post free at the ground may take at a given depth (IBC).",
    source: FREE,
    not_for: NOT_FREE,
    inputs: LOAD_INPUTS,
    outputs: &[BEARING, FORCE],
    run: |g| {
        let a = ibc_free(&IbcPost::put(g)?);
        Ok(vec![Found::One(a.bearing), Found::One(a.force)])
    },
};

/// Working of [`ibc_held`].
pub static IBC_HELD_LOAD: Working = Working {
    name: "embed/ibc-held-load",
    title: "Push that a post held at the ground by a slab may take at a given depth (IBC).",
    source: HELD,
    not_for: NOT_HELD,
    inputs: HELD_LOAD_INPUTS,
    outputs: &[BEARING, FORCE],
    run: |g| {
        let a = ibc_held(&IbcPost::put(g)?);
        Ok(vec![Found::One(a.bearing), Found::One(a.force)])
    },
};

/// Working of [`ibc_free_depth`].
pub static IBC_FREE_DEPTH: Working = Working {
    name: "embed/ibc-free-depth",
    title: "Depth of a post free at the ground (IBC).",
    source: FREE,
    not_for: NOT_FREE,
    inputs: DEPTH_INPUTS,
    outputs: &[DEPTH, BEARING, OUT_A],
    run: |g| {
        let i = IbcPush::put(g)?;
        let root = ibc_free_depth(&i.values()).ok_or_else(|| too_deep(g))?;
        g.sheet().remark("D is found by closing in on it, since S₁ depends on it; equation 18-1 at that depth:");
        let depth = g.sheet().put("D", root, Unit::M).named("D", Unit::M);
        if root == i.neglected.value() {
            let nothing = Shown::constant(0.0);
            return Ok(vec![Found::One(depth), Found::One(nothing), Found::One(nothing)]);
        }
        let step = ibc_step(&i, depth);
        Ok(vec![Found::One(depth), Found::One(step.bearing), Found::One(step.a)])
    },
};

/// Working of [`ibc_held_depth`].
pub static IBC_HELD_DEPTH: Working = Working {
    name: "embed/ibc-held-depth",
    title: "Depth of a post held at the ground by a rigid slab (IBC).",
    source: HELD,
    not_for: NOT_HELD,
    inputs: HELD_DEPTH_INPUTS,
    outputs: &[DEPTH, BEARING, Output { key: "moment", words: "moment at the ground", unit: Unit::KNM }],
    run: |g| {
        let i = IbcPush::put(g)?;
        let root = ibc_held_depth(&i.values()).ok_or_else(|| too_deep(g))?;
        g.sheet().remark("D is found by closing in on it, since S₃ depends on it; equation 18-3 at that depth:");
        let depth = g.sheet().put("D", root, Unit::M).named("D", Unit::M);
        let d = held_depth(&i.at(depth));
        let s3 = (i.multiplier * i.reduction * i.lateral * d.min(Shown::constant(DEEPEST_M))).named("S₃", Unit::KPA);
        let moment = (i.force * i.arm).named("M_g", Unit::KNM);
        let _ = (Shown::constant(4.25) * moment / (s3 * i.width)).sqrt().named("d", Unit::M);
        Ok(vec![Found::One(depth), Found::One(s3), Found::One(moment)])
    },
};

/// Working of [`ibc_step`].
pub static IBC_FREE_TRIAL: Working = Working {
    name: "embed/ibc-free-trial",
    title: "One step by hand: the depth that equation 18-1 gives for a depth that is tried (IBC).",
    source: FREE,
    not_for: "a final depth: try again until both agree, or use embed/ibc-free-depth",
    inputs: TRIAL_INPUTS,
    outputs: &[BEARING, OUT_A, Output { key: "next", words: "depth that the equation gives", unit: Unit::M }],
    run: |g| {
        let (i, tried) = (IbcPush::put(g)?, g.one("depth")?);
        if tried.value() <= i.neglected.value() {
            return Err(g.no_answer("the depth that is tried lies within the layer that is not counted on"));
        }
        let step = ibc_step(&i, tried);
        Ok(vec![Found::One(step.bearing), Found::One(step.a), Found::One(step.next)])
    },
};

fn too_deep(g: &groundhold_working::Given<'_>) -> groundhold_working::Refused {
    g.no_answer("even 30 m deep is not enough for this push")
}
