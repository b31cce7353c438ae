//! What does its push make of a post: the greatest moment and shear in it, and the lean of its top in the ground?

use groundhold_earth::Method as Theory;
use groundhold_earth::soil::Subgrade as Stiffness;
use groundhold_member::embed::{self, Subgrade};
use groundhold_quantity::{Force, Length, Moment};
use groundhold_working::{Refused, Trace};

use super::Posted;
use super::embedment::{deciding, member_case};
use super::loads::{self, PostPush, UNFACTORED};
use crate::workings::{POST_BEND, POST_SHEAR, post_bend, post_shear};
use crate::{Bay, LoadCase, Post, WallCase};

/// A post may lean by its height over this. Common practice, no source.
pub(crate) const LEAN_LIMIT: f64 = 50.0;

/// What a post is asked to carry, with loads and soil as they are.
#[derive(Debug, Clone)]
pub(crate) struct Bent {
    /// The push that does it.
    pub push: PostPush,
    /// Greatest moment, by the deciding method that gives most, with its working.
    pub moment: (Moment, Trace),
    /// Greatest shear, with its working.
    pub shear: (Force, Trace),
    /// Ground in front that is not counted on.
    neglected: Length,
}

/// The greatest moment and shear in a post in one state; nothing where nothing pushes it.
///
/// # Errors
/// As the pressure theory or the embedment method refuses.
pub(crate) fn bent(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    state: LoadCase,
) -> Result<Option<Bent>, Refused> {
    let push = loads::on_post(case, &UNFACTORED, state, Theory::Rankine, post)?;
    if push.force <= Force::ZERO {
        return Ok(None);
    }
    let mut most: Option<(Moment, Trace)> = None;
    let mut neglected = Length::ZERO;
    for method in deciding(case) {
        let member = member_case(case, wall, bays, post, &UNFACTORED, &push, *method);
        neglected = member.neglected;
        let m = embed::post_moment(&member)?;
        if most.as_ref().is_none_or(|(before, _)| *before < m.moment) {
            most = Some((m.moment, m.trace));
        }
    }
    let moment =
        most.ok_or_else(|| Refused::NoAnswer { working: "embed", why: "no method decides over this soil".into() })?;
    let given = [push.force.to_kn(), (push.arm + neglected).to_m(), (post.depth - neglected).to_m().max(0.05)];
    let shear = Force::kn(post_shear(given[0], given[1], given[2]));
    let shear = (shear, Trace::new(&POST_SHEAR, given.map(Into::into).to_vec()));
    Ok(Some(Bent { push, moment, shear, neglected }))
}

/// How far the top of a post moves: lean in the ground and bend above it.
#[derive(Debug, Clone)]
pub(crate) struct Movement {
    /// Lean and bend together, mm.
    pub top_mm: f64,
    /// What is allowed, mm.
    pub allowed_mm: f64,
    /// Workings of lean, bend and push.
    pub traces: Vec<Trace>,
}

/// Movement of the top of a post of this stiffness, MPa and mm⁴, whose bend grows by `creep`; nothing where the stiffness
/// of the ground is not known.
///
/// # Errors
/// As the working refuses.
pub(crate) fn movement(
    case: &WallCase,
    wall: &Posted,
    bays: &[Bay],
    post: &Post,
    bent: &Bent,
    (stiffness_mpa, inertia_mm4, creep): (f64, f64, f64),
) -> Result<Option<Movement>, Refused> {
    let push = &bent.push;
    let member = member_case(case, wall, bays, post, &UNFACTORED, push, deciding(case)[0]);
    let ground = match case.founding_soil.subgrade {
        Some(Stiffness::WithDepth(n)) => Subgrade::Grows(n),
        Some(Stiffness::Constant(k)) => Subgrade::Even(k / member.width),
        None => return Ok(None),
    };
    if post.depth <= bent.neglected || post.exposed <= Length::ZERO {
        return Ok(None);
    }
    let lean = embed::deflection(&member, post.depth, ground, post.exposed)?;
    let given = [
        push.force.to_kn(),
        (push.arm + bent.neglected).to_m(),
        (post.exposed + bent.neglected).to_m(),
        stiffness_mpa,
        inertia_mm4,
        creep,
    ];
    let bend = post_bend(given[0], given[1], given[2], given[3], given[4], given[5]);
    let trace = Trace::new(&POST_BEND, given.map(Into::into).to_vec());
    Ok(Some(Movement {
        top_mm: lean.top.to_mm() + bend,
        allowed_mm: post.exposed.to_mm() / LEAN_LIMIT,
        traces: [vec![lean.trace, trace], push.traces.clone()].concat(),
    }))
}
