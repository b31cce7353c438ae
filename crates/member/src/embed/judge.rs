//! What does one method say of one post: its resistance at a depth, its depth, its moment, its movement?

use groundhold_quantity::{Angle, Force, Length, Moment, Pressure, Slope, UnitWeight};
use groundhold_working::{Refused, Result, Working, check_range};

use super::{
    brinch_hansen as hansen, broms_clay as clay, broms_sand as sand, case::*, deflection as moving, front, ibc,
    rule_of_thumb as thumb,
};

/// What is left of the resistance of this case: ground that falls away, posts close together.
///
/// # Errors
/// Where the ground in front is steeper than its friction angle, posts overlap, or a value is out of range.
pub fn reduction(case: &Case) -> Result<Reduction> {
    let mut found = Reduction { front: 1.0, row: 1.0, traces: vec![] };
    let fall = case.front_fall.to_angle().to_deg();
    if 0.0 < fall {
        let trace = match case.ground {
            Ground::Sand { phi, .. } | Ground::Mixed { phi, .. } if 0.0 < phi.to_rad() => {
                let (i, trace) = front::SandFront { phi: phi.to_deg(), fall }.traced(&front::SAND_FRONT)?;
                if i.phi < i.fall {
                    return trace.sheet().map(|_| found);
                }
                found.front = front::sand_front(&i).left;
                trace
            }
            _ => {
                let (i, trace) = front::ClayFront { fall }.traced(&front::CLAY_FRONT)?;
                found.front = front::clay_front(&i);
                trace
            }
        };
        found.traces.push(trace);
    }
    if let Some(spacing) = case.spacing {
        let (i, trace) = front::Row { spacing: spacing.to_m(), width: case.width.to_m() }.traced(&front::ROW)?;
        if i.spacing < i.width {
            return trace.sheet().map(|_| found);
        }
        found.row = front::row(&i);
        if found.row < 1.0 {
            found.traces.push(trace);
        }
    }
    Ok(found)
}

/// How much push the post can take at a depth below the ground in front, by a method.
///
/// # Errors
/// Where a value is out of range, or the method does not fit the case (see [`super::methods_for`]).
pub fn resistance(case: &Case, method: Method, depth: Length) -> Result<Resistance> {
    let left = reduction(case)?.share();
    let d = depth.to_m();
    let (force, trace) = match method {
        Method::RuleOfThumb => return Err(no(&thumb::RULE_OF_THUMB, "it knows a depth, and no resistance")),
        Method::IbcFree => {
            let (i, t) = case.ibc_post(d, left)?.traced(&ibc::IBC_FREE_LOAD)?;
            (ibc::ibc_free(&i).force, t)
        }
        Method::IbcHeld => {
            let (i, t) = case.ibc_post(d, left)?.traced(&ibc::IBC_HELD_LOAD)?;
            (ibc::ibc_held(&i).force, t)
        }
        Method::BromsSand => {
            let (i, t) = case.sand_push(left)?.at(d).traced(&sand::BROMS_SAND_LOAD)?;
            (sand::sand_ultimate(&i).force, t)
        }
        Method::BromsClay => {
            let (i, t) = case.clay_push(left)?.at(d).traced(&clay::BROMS_CLAY_LOAD)?;
            (clay::clay_ultimate(&i).force, t)
        }
        Method::BrinchHansen => {
            let (i, t) = case.hansen_push(left).at(d).traced(&hansen::HANSEN_LOAD)?;
            (hansen::hansen_ultimate(&i).force, t)
        }
    };
    Ok(Resistance { method, depth, force: Force::kn(force), kind: method.kind(), trace })
}

/// The push of [`resistance`] alone, without a trace: for a search that asks at many depths.
///
/// # Errors
/// As [`resistance`].
pub fn push_taken(case: &Case, method: Method, depth: Length) -> Result<Force> {
    let left = reduction(case)?.share();
    let d = depth.to_m();
    let force = match method {
        Method::RuleOfThumb => return Err(no(&thumb::RULE_OF_THUMB, "it knows a depth, and no resistance")),
        Method::IbcFree => ibc::ibc_free(&case.ibc_post(d, left)?.checked(&ibc::IBC_FREE_LOAD)?).force,
        Method::IbcHeld => ibc::ibc_held(&case.ibc_post(d, left)?.checked(&ibc::IBC_HELD_LOAD)?).force,
        Method::BromsSand => sand::sand_ultimate(&case.sand_push(left)?.at(d).checked(&sand::BROMS_SAND_LOAD)?).force,
        Method::BromsClay => clay::clay_ultimate(&case.clay_push(left)?.at(d).checked(&clay::BROMS_CLAY_LOAD)?).force,
        Method::BrinchHansen => {
            hansen::hansen_ultimate(&case.hansen_push(left).at(d).checked(&hansen::HANSEN_LOAD)?).force
        }
    };
    Ok(Force::kn(force))
}

/// How deep the post must stand below the ground in front, by a method, for the factor of the case (ultimate methods)
/// or as it is (allowable methods, rule of thumb).
///
/// # Errors
/// Where a value is out of range, the method does not fit the case, or 30 m are not enough.
pub fn required_depth(case: &Case, method: Method) -> Result<Required> {
    // The rule of thumb knows no soil: it answers also where the ground in front is refused.
    let left = if method == Method::RuleOfThumb { 1.0 } else { reduction(case)?.share() };
    let beside = [("factor", case.factor)];
    let deep = |w: &'static Working| no(w, "even 30 m deep is not enough for this push");
    let (depth, trace) = match method {
        Method::RuleOfThumb => {
            let height = case.retained.ok_or_else(|| no(&thumb::RULE_OF_THUMB, "the retained height is not given"))?;
            let (i, t) = thumb::Retained { retained: height.to_m() }.traced(&thumb::RULE_OF_THUMB)?;
            (thumb::as_deep_as_high(&i), t)
        }
        Method::IbcFree => {
            let (i, t) = case.ibc_push(left)?.traced(&ibc::IBC_FREE_DEPTH)?;
            (ibc::ibc_free_depth(&i).ok_or_else(|| deep(&ibc::IBC_FREE_DEPTH))?, t)
        }
        Method::IbcHeld => {
            let (i, t) = case.ibc_push(left)?.traced(&ibc::IBC_HELD_DEPTH)?;
            (ibc::ibc_held_depth(&i).ok_or_else(|| deep(&ibc::IBC_HELD_DEPTH))?, t)
        }
        Method::BromsSand => {
            let (i, t) = case.sand_push(left)?.traced_with(&sand::BROMS_SAND_DEPTH, &beside)?;
            (sand::sand_depth(&i, case.factor).ok_or_else(|| deep(&sand::BROMS_SAND_DEPTH))?, t)
        }
        Method::BromsClay => {
            let (i, t) = case.clay_push(left)?.traced_with(&clay::BROMS_CLAY_DEPTH, &beside)?;
            (clay::clay_depth(&i, case.factor).ok_or_else(|| deep(&clay::BROMS_CLAY_DEPTH))?, t)
        }
        Method::BrinchHansen => {
            let (i, t) = case.hansen_push(left).traced_with(&hansen::HANSEN_DEPTH, &beside)?;
            (hansen::hansen_depth(&i, case.factor).ok_or_else(|| deep(&hansen::HANSEN_DEPTH))?, t)
        }
    };
    Ok(Required { method, depth: Length::m(depth), trace })
}

/// Greatest moment in the post under its push: Broms' in sand and in clay, with Brinch Hansen's pressures in soil with
/// friction and cohesion.
///
/// # Errors
/// Where a value is out of range, or the soil cannot take the push within 30 m.
pub fn post_moment(case: &Case) -> Result<PostMoment> {
    let left = reduction(case)?.share();
    let (depth, moment, trace) = match case.ground {
        Ground::Sand { .. } => {
            let (i, t) = case.sand_push(left)?.traced(&sand::BROMS_SAND_MOMENT)?;
            let m = sand::sand_moment(&i);
            (m.depth, m.moment, t)
        }
        Ground::Clay { .. } => {
            let (i, t) = case.clay_push(left)?.traced(&clay::BROMS_CLAY_MOMENT)?;
            let m = clay::clay_moment(&i);
            (m.depth, m.moment, t)
        }
        Ground::Mixed { .. } => {
            let (i, t) = case.hansen_push(left).traced(&hansen::HANSEN_MOMENT)?;
            let (depth, moment) = hansen::hansen_moment(&i)
                .ok_or_else(|| no(&hansen::HANSEN_MOMENT, "the soil cannot take this push within 30 m"))?;
            (depth, moment, t)
        }
    };
    Ok(PostMoment { moment: Moment::knm(moment), depth: Length::m(depth), trace })
}

/// Push at which a post that yields at this moment yields, however deep it stands (a "long" post). Where it lies below
/// the [`resistance`] at the given depth, the post breaks before the soil fails.
///
/// # Errors
/// Where a value is out of range.
pub fn post_yields(case: &Case, yield_moment: Moment) -> Result<YieldLoad> {
    let left = reduction(case)?.share();
    let beside = [("moment", yield_moment.to_knm())];
    let (force, trace) = match case.ground {
        Ground::Sand { .. } => {
            let p = case.sand_push(left)?;
            let (i, t) = sand::SandYield {
                moment: yield_moment.to_knm(),
                arm: p.arm,
                width: p.width,
                unit_weight: p.unit_weight,
                phi: p.phi,
                neglected: p.neglected,
                reduction: p.reduction,
            }
            .traced(&sand::BROMS_SAND_YIELD)?;
            (sand::sand_yield(&i), t)
        }
        Ground::Clay { .. } => {
            let p = case.clay_push(left)?;
            let (i, t) = clay::ClayYield {
                moment: yield_moment.to_knm(),
                arm: p.arm,
                width: p.width,
                strength: p.strength,
                neglected: p.neglected,
                reduction: p.reduction,
            }
            .traced(&clay::BROMS_CLAY_YIELD)?;
            (clay::clay_yield(&i), t)
        }
        Ground::Mixed { .. } => {
            let (i, t) = case.hansen_push(left).soil_only().traced_with(&hansen::HANSEN_YIELD, &beside)?;
            let found = hansen::hansen_yield(&i.push(), yield_moment.to_knm())
                .ok_or_else(|| no(&hansen::HANSEN_YIELD, "the post yields only above 10 MN"))?;
            (found, t)
        }
    };
    Ok(YieldLoad { force: Force::kn(force), trace })
}

/// How far a post of this depth moves under its push, at the ground and at a height above it.
///
/// # Errors
/// Where a value is out of range, or the post ends within the layer that is not counted on.
pub fn deflection(case: &Case, depth: Length, subgrade: Subgrade, height: Length) -> Result<Movement> {
    let (working, stiffness): (&'static Working, UnitWeight) = match subgrade {
        Subgrade::Grows(n) => (&moving::DEFLECTION_SAND, n),
        Subgrade::Even(k) => (&moving::DEFLECTION_CLAY, k),
    };
    let (i, trace) = moving::Rigid {
        force: case.force.to_kn(),
        arm: case.arm.to_m(),
        depth: depth.to_m(),
        width: case.width.to_m(),
        stiffness: stiffness.to_kn_per_m3(),
        neglected: case.neglected.to_m(),
        height: height.to_m(),
    }
    .traced(working)?;
    if i.depth <= i.neglected {
        return Err(no(working, "the post ends within the layer that is not counted on"));
    }
    let m = match subgrade {
        Subgrade::Grows(_) => moving::sand_moved(&i),
        Subgrade::Even(_) => moving::clay_moved(&i),
    };
    Ok(Movement { ground: Length::m(m.ground), lean: Slope::ratio(m.lean), top: Length::m(m.top), trace })
}

pub(super) fn no(working: &'static Working, why: &str) -> Refused {
    Refused::NoAnswer { working: working.name, why: why.into() }
}

impl Case {
    fn ibc_push(&self, reduction: f64) -> Result<ibc::IbcPush<f64>> {
        let lateral = self
            .presumptive
            .ok_or_else(|| no(&ibc::IBC_FREE_DEPTH, "the presumptive lateral bearing of the soil is not given"))?;
        Ok(ibc::IbcPush {
            force: self.force.to_kn(),
            arm: self.arm.to_m(),
            width: self.width.to_m(),
            lateral: lateral.to_kn_per_m3(),
            multiplier: if self.may_move { 2.0 } else { 1.0 },
            neglected: self.neglected.to_m(),
            reduction,
        })
    }
    fn ibc_post(&self, depth: f64, reduction: f64) -> Result<ibc::IbcPost<f64>> {
        Ok(self.ibc_push(reduction)?.at(depth))
    }
    fn sand_push(&self, reduction: f64) -> Result<sand::SandPush<f64>> {
        let (Ground::Sand { phi, unit_weight } | Ground::Mixed { phi, unit_weight, .. }) = self.ground else {
            return Err(no(&sand::BROMS_SAND_DEPTH, "the ground is undrained clay; Broms has another formula for it"));
        };
        Ok(sand::SandPush {
            force: self.force.to_kn(),
            arm: self.arm.to_m(),
            width: self.width.to_m(),
            unit_weight: unit_weight.to_kn_per_m3(),
            phi: phi.to_deg(),
            neglected: self.neglected.to_m(),
            reduction,
        })
    }
    fn clay_push(&self, reduction: f64) -> Result<clay::ClayPush<f64>> {
        let Ground::Clay { strength, .. } = self.ground else {
            return Err(no(&clay::BROMS_CLAY_DEPTH, "the ground is not undrained clay"));
        };
        Ok(clay::ClayPush {
            force: self.force.to_kn(),
            arm: self.arm.to_m(),
            width: self.width.to_m(),
            strength: strength.to_kpa(),
            neglected: self.neglected.to_m(),
            reduction,
        })
    }
    fn hansen_push(&self, reduction: f64) -> hansen::HansenPush<f64> {
        let (phi, cohesion, unit_weight) = match self.ground {
            Ground::Sand { phi, unit_weight } => (phi, Pressure::ZERO, unit_weight),
            Ground::Clay { strength, unit_weight } => (Angle::ZERO, strength, unit_weight),
            Ground::Mixed { phi, cohesion, unit_weight } => (phi, cohesion, unit_weight),
        };
        hansen::HansenPush {
            force: self.force.to_kn(),
            arm: self.arm.to_m(),
            width: self.width.to_m(),
            unit_weight: unit_weight.to_kn_per_m3(),
            phi: phi.to_deg(),
            cohesion: cohesion.to_kpa(),
            neglected: self.neglected.to_m(),
            reduction,
        }
    }
    /// Refuses a case whose shared values make no sense, whichever method is asked.
    pub(super) fn check_factor(&self) -> Result<()> {
        check_range(sand::BROMS_SAND_DEPTH.name, &super::limits::FACTOR, self.factor)
    }
}
