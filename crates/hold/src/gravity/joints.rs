//! Does a course slide on the one below it, does a joint open, or is it crushed at its front?

use groundhold_earth::{Combination, basis::Margin};
use groundhold_quantity::{Length, LineForce};
use groundhold_working::{Refused, Unit};

use super::base::{Asked, limit, limit_words, over, stands_with};
use super::loads::{self, Spot};
use super::{Body, Gravity};
use crate::{Check, CheckKind, LoadCase, WallCase};

/// The worst joint of a strip of each kind, in one state with one set of factors.
///
/// # Errors
/// As the pressure theory refuses.
pub(crate) fn checks(
    case: &WallCase,
    wall: &dyn Gravity,
    spot: &Spot,
    body: &Body,
    state: LoadCase,
    c: &'static Combination,
) -> Result<Vec<Check>, Refused> {
    let mut worst: Vec<Asked> = vec![];
    for z in body.joints() {
        let a = loads::actions(case, c, state, spot, body, z, c.permanent_favourable)?;
        let friction = wall.joint_friction() / c.tan_phi;
        let Some((s, traces)) = stands_with(&a, friction, wall.joint_grip())? else { continue };
        let width = Length::m(a.front - a.back);
        let push = s.horizontal.to_kn_per_m();
        let mut all = vec![
            Asked {
                kind: CheckKind::JointSliding,
                method: if wall.joint_grip() > LineForce::ZERO {
                    "friction and grip in the joint"
                } else {
                    "friction in the joint"
                },
                demand: push,
                capacity: s.factor_sliding * push / (c.wanted.sliding * c.sliding),
                unit: Unit::KN_M,
                traces: traces.clone(),
            },
            Asked {
                kind: CheckKind::JointEccentricity,
                method: limit_words(case, state),
                demand: s.eccentricity.to_mm().max(0.0),
                capacity: limit(case, state, width).to_mm(),
                unit: Unit::MM,
                traces: traces.clone(),
            },
        ];
        if let Some((strength, method)) = wall.crushing() {
            let pressed = s.pressure_toe.map_or(f64::INFINITY, |p| p.to_kpa());
            // With loads as they are, half of what is allowed with factored ones.
            let share = if case.basis.margin == Margin::GlobalFactors { 0.5 } else { 1.0 };
            all.push(Asked {
                kind: CheckKind::Crushing,
                method,
                demand: pressed,
                capacity: strength.to_kpa() * share,
                unit: Unit::KPA,
                traces,
            });
        }
        for asked in all {
            match worst.iter_mut().find(|w| w.kind == asked.kind) {
                Some(w) if over(w.demand, w.capacity) < over(asked.demand, asked.capacity) => *w = asked,
                Some(_) => {}
                None => worst.push(asked),
            }
        }
    }
    Ok(worst.into_iter().map(|x| x.check(&spot.strip.on, case, state, c.key)).collect())
}
