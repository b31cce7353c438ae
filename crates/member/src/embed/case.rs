//! What pushes the post, what does it stand in, and by which method is it judged?

use groundhold_quantity::{Angle, Force, Length, Moment, Pressure, Slope, UnitWeight};
use groundhold_working::Trace;

/// The soil that holds the post, below the ground in front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ground {
    /// Sand or gravel: friction only. `unit_weight` is the effective one below water.
    Sand {
        /// Effective friction angle.
        phi: Angle,
        /// Unit weight (effective below water).
        unit_weight: UnitWeight,
    },
    /// Clay that has no time to drain.
    Clay {
        /// Undrained shear strength.
        strength: Pressure,
        /// Unit weight.
        unit_weight: UnitWeight,
    },
    /// Soil with friction and cohesion: drained clay, silt.
    Mixed {
        /// Effective friction angle.
        phi: Angle,
        /// Effective cohesion.
        cohesion: Pressure,
        /// Unit weight (effective below water).
        unit_weight: UnitWeight,
    },
}

/// A post in the ground under a horizontal push.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// Resultant horizontal push on this post, as it shall be judged (already factored where the basis factors it).
    pub force: Force,
    /// Height of that push above the ground in front.
    pub arm: Length,
    /// Width that bears on the soil: the hole's diameter where the post is concreted in, the post's own width where the
    /// hole is filled with rammed earth or gravel.
    pub width: Length,
    /// The soil.
    pub ground: Ground,
    /// Presumptive lateral bearing for the IBC methods, pressure per metre of depth (kPa/m is kN/m³);
    /// see [`super::PRESUMPTIVE`]. `None` leaves the IBC methods out.
    pub presumptive: Option<UnitWeight>,
    /// IBC 1806.3.4: an isolated post that may move 12 mm at the surface takes twice the presumptive value.
    pub may_move: bool,
    /// Held at the ground surface by a rigid slab, so that it cannot move there.
    pub held_at_ground: bool,
    /// Soft, disturbed or frost-turned layer in front that is not counted on.
    pub neglected: Length,
    /// Ground in front falls away from the post at this slope (positive down).
    pub front_fall: Slope,
    /// Distance to the next post, centre to centre, where the row shall be reduced for closeness.
    /// `None` leaves the reduction out.
    pub spacing: Option<Length>,
    /// Retained height, for the rule of thumb. `None` leaves it out.
    pub retained: Option<Length>,
    /// Ultimate resistance over push that is wanted (1 where loads and soil are already factored). The IBC methods are
    /// allowable ones and do not use it.
    pub factor: f64,
}

/// A way to judge the depth of a post.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Method {
    /// Depth equals retained height.
    RuleOfThumb,
    /// International Building Code, post free at the ground.
    IbcFree,
    /// International Building Code, post held at the ground by a rigid slab.
    IbcHeld,
    /// Broms, short free-headed post in sand.
    BromsSand,
    /// Broms, short free-headed post in clay.
    BromsClay,
    /// Brinch Hansen, rigid post in soil with friction and cohesion.
    BrinchHansen,
}

/// What a resistance means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Compare with the push as it is; the margin is inside.
    Allowable,
    /// The soil fails here; divide by a factor.
    Ultimate,
}

/// How much push a post can take at a depth.
#[derive(Debug, Clone, PartialEq)]
pub struct Resistance {
    /// By which method.
    pub method: Method,
    /// Depth below the ground in front.
    pub depth: Length,
    /// Push at the arm of the case.
    pub force: Force,
    /// Allowable or ultimate.
    pub kind: Kind,
    /// Its working.
    pub trace: Trace,
}

/// How deep a post must stand.
#[derive(Debug, Clone, PartialEq)]
pub struct Required {
    /// By which method.
    pub method: Method,
    /// Depth below the ground in front.
    pub depth: Length,
    /// Its working.
    pub trace: Trace,
}

/// How a method judges a depth that is given.
#[derive(Debug, Clone, PartialEq)]
pub struct AtDepth {
    /// The depth given.
    pub depth: Length,
    /// Resistance over push. For the rule of thumb: depth over retained height.
    pub factor: f64,
    /// The factor is at least the wanted one.
    pub enough: bool,
    /// Its working.
    pub trace: Trace,
}

/// What one method says of a case. Accepted methods disagree; each stands in its own row.
#[derive(Debug, Clone, PartialEq)]
pub struct MethodDepth {
    /// The method.
    pub method: Method,
    /// The factor it is asked for: the case's for ultimate methods, 1 for allowable ones and the rule of thumb.
    pub wanted: f64,
    /// Required depth below the ground in front; `None` where the method gives none (see `note`).
    pub depth: Option<Length>,
    /// Working of the required depth.
    pub trace: Option<Trace>,
    /// Its judgement of the given depth.
    pub at: Option<AtDepth>,
    /// What a person must know when reading this row.
    pub note: String,
}

/// What is left of the resistance, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Reduction {
    /// Beside the falling ground; 1 on level ground.
    pub front: f64,
    /// In the row; 1 where the posts stand far apart or [`Case::spacing`] is `None`.
    pub row: f64,
    /// Workings of those that are below 1.
    pub traces: Vec<Trace>,
}

impl Reduction {
    /// Both together.
    pub fn share(&self) -> f64 {
        self.front * self.row
    }
}

/// Greatest moment in the post under its push, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct PostMoment {
    /// The moment.
    pub moment: Moment,
    /// Its depth below the ground in front.
    pub depth: Length,
    /// Its working.
    pub trace: Trace,
}

/// Push at which the post itself yields, however deep it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct YieldLoad {
    /// The push.
    pub force: Force,
    /// Its working.
    pub trace: Trace,
}

/// How stiff the ground is against the post.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Subgrade {
    /// Sand: growth of the horizontal stiffness with depth; see [`super::SAND_STIFFNESS`].
    Grows(UnitWeight),
    /// Stiff clay: modulus of subgrade reaction, the same at every depth; see [`super::clay_stiffness`].
    Even(UnitWeight),
}

/// How far a post moves in the ground under its push.
#[derive(Debug, Clone, PartialEq)]
pub struct Movement {
    /// At the ground in front.
    pub ground: Length,
    /// Its lean.
    pub lean: Slope,
    /// At the height asked for, the post itself unbent.
    pub top: Length,
    /// Its working.
    pub trace: Trace,
}

impl Method {
    /// Its name on paper.
    pub const fn words(self) -> &'static str {
        match self {
            Method::RuleOfThumb => "rule of thumb, as deep as high",
            Method::IbcFree => "IBC 1807.3.2.1, free at the ground",
            Method::IbcHeld => "IBC 1807.3.2.2, held at the ground",
            Method::BromsSand => "Broms, short post in sand",
            Method::BromsClay => "Broms, short post in clay",
            Method::BrinchHansen => "Brinch Hansen, rigid post",
        }
    }
    /// Whether its resistance has a margin inside already.
    pub const fn kind(self) -> Kind {
        match self {
            Method::RuleOfThumb | Method::IbcFree | Method::IbcHeld => Kind::Allowable,
            Method::BromsSand | Method::BromsClay | Method::BrinchHansen => Kind::Ultimate,
        }
    }
}
