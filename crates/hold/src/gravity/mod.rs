//! Does a wall that stands by its weight stand, as a whole and joint by joint? Shared by every system of that kind.
//!
//! Heights run from the underside of the base, `x` from the wall line, positive to the open side, both in metres.

mod base;
mod body;
mod joints;
mod judge;
mod lay;
mod loads;
mod remedies;
mod shown;

pub(crate) use base::{Asked, over, stands_on};
pub(crate) use body::{Body, Course};
pub(crate) use judge::{fails, first, judge, judge_quick, stands};
pub(crate) use lay::{Coursing, laid_out, strips};
pub(crate) use loads::{Spot, actions, behind, spots};
pub(crate) use remedies::{Way, mend_by};
pub(crate) use shown::{cross, faces};

use groundhold_earth::Combination;
use groundhold_finding::{Finding, Kind};
use groundhold_quantity::{Length, LineForce, Pressure};
use groundhold_working::{Refused, Trace};

use crate::{Check, CheckKind, Layout, LoadCase, Strip, Verdict, WallCase};

/// What a system that stands by its weight says of itself to the checks.
pub(crate) trait Gravity {
    /// The wall in section within a strip.
    fn body(&self, strip: &Strip) -> Body;
    /// How the underside rubs on the ground, as a share of the soil's friction angle: all of it where it is cast on the
    /// ground or keyed into it by stones, two thirds where it is smooth and precast. EN 1997-1:2004 6.5.3(10).
    fn rubs(&self) -> f64 {
        1.0
    }
    /// Rammed stone under the base: it spreads the load, one sideways for two down, before it comes to the ground. Common
    /// practice, as under footings in Das, Principles of Foundation Engineering, 7th ed. (2011), chapter 5.
    fn pad(&self) -> Length {
        Length::ZERO
    }
    /// Tangent of the friction angle in a joint between two courses, without any factor.
    fn joint_friction(&self) -> f64;
    /// What a joint holds beside its friction, whatever lies on it: lips and pins, by test. Nothing is usual.
    fn joint_grip(&self) -> LineForce {
        LineForce::ZERO
    }
    /// What the ground before a key under the base holds, with the factors of a combination and its working; nothing is
    /// usual.
    ///
    /// # Errors
    /// As its working refuses.
    fn key(&self, _case: &WallCase, _c: &Combination) -> Result<Option<(LineForce, Trace)>, Refused> {
        Ok(None)
    }
    /// Checks of its own beside those of a body: layers of grid, sections of concrete.
    ///
    /// # Errors
    /// As its workings refuse.
    fn own_checks(
        &self,
        _case: &WallCase,
        _spot: &Spot,
        _state: LoadCase,
        _c: &'static Combination,
    ) -> Result<Vec<Check>, Refused> {
        Ok(vec![])
    }
    /// Which of those checks make which finding.
    fn own_kinds(&self) -> &'static [(&'static [CheckKind], &'static Kind)] {
        &[]
    }
    /// What else there is to say about it.
    fn own_findings(&self, _case: &WallCase, _layout: &Layout, _verdict: &Verdict) -> Vec<Finding> {
        vec![]
    }
    /// Crushing strength of what it is built of, already allowable; `None` where stones carry far more than they are asked.
    fn crushing(&self) -> Option<(Pressure, &'static str)> {
        None
    }
    /// True where water runs out through the body, so that the wall is its own drain.
    fn drains_itself(&self) -> bool;
    /// Retained height at which guides for this kind of wall stop, what the kind is called, and who says so.
    fn guide(&self) -> (Length, &'static str);
    /// Widths of base to try, narrowest first, where none is given.
    fn widths(&self, strip: &Strip) -> Vec<Length>;
    /// The width that was given.
    fn given_width(&self) -> Option<Length>;
    /// Sizes that may be changed to mend it, each with values to try, the least change first.
    fn ways(&self, layout: &Layout) -> Vec<Way>;
}

/// The checks of this kind of wall for which a wider or deeper base is tried.
pub(crate) const KINDS: [CheckKind; 7] = [
    CheckKind::Sliding,
    CheckKind::Overturning,
    CheckKind::Eccentricity,
    CheckKind::Bearing,
    CheckKind::JointSliding,
    CheckKind::JointEccentricity,
    CheckKind::Crushing,
];

/// The case as the checks of this kind of wall see it: a body that drains itself has a drain, which can only fail by
/// accident.
pub(crate) fn seen(case: &WallCase, wall: &dyn Gravity) -> WallCase {
    let mut case = case.clone();
    case.water.drained |= wall.drains_itself();
    case
}

/// Gives every strip that was not given one the least width of base with which all ordinary checks pass, or the widest
/// that is tried.
pub(crate) fn solve_widths(case: &WallCase, wall: &dyn Gravity, strips: &mut [Strip]) {
    let case = seen(case, wall);
    for strip in strips {
        let at = |width: Length| {
            let mut placed = Strip { width, ..strip.clone() };
            placed.back = Length::m(-wall.body(&placed).at((placed.foot - placed.base).to_m()).1);
            placed
        };
        let width = wall.given_width().or_else(|| {
            let tries = wall.widths(strip);
            tries.iter().find(|w| judge::stands(&case, wall, &at(**w))).or(tries.last()).copied()
        });
        *strip = at(width.unwrap_or(strip.width));
    }
}

/// All checks, without what is said of them.
pub(crate) fn checks(case: &WallCase, wall: &dyn Gravity, layout: &Layout) -> Vec<crate::Check> {
    judge::all(&seen(case, wall), wall, layout)
}
