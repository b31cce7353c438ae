//! With what is the wall pushed in each state, per metre and per post?

use groundhold_earth::{Active, Backfill, Combination, Method, WaterLevel};
use groundhold_quantity::{Force, Length, Moment, Slope};
use groundhold_working::{Refused, Trace};

use super::{Fill, Posted};
use crate::workings::{PUSH, push};
use crate::{Line, LoadCase, Post, WallCase};

pub(crate) use crate::loads::{
    NOTHING, UNFACTORED, beside, combinations, governs, in_state, is_accident, states, strips,
};

/// The active thrust over a retained height; nothing where there is nothing to hold.
///
/// # Errors
/// As the theory refuses: above all, where the ground behind is steeper than its soil's friction angle.
pub(crate) fn active(
    case: &WallCase,
    combination: &Combination,
    state: LoadCase,
    method: Method,
    retained: Length,
    slope: Slope,
) -> Result<Option<Active>, Refused> {
    if retained < NOTHING {
        return Ok(None);
    }
    let soil = combination.soil(&case.retained_soil);
    let water = match state {
        LoadCase::DrainBlocked => WaterLevel::At(retained * case.water.blocked.to_fraction()),
        _ => WaterLevel::Drained,
    };
    let backfill = Backfill {
        slope,
        wall_friction: soil.delta_timber,
        strips: strips(case),
        water,
        ..Backfill::new(soil, retained)
    };
    crate::loads::thrust(case, state, method, &backfill).map(Some)
}

/// What one post must carry in one state with one set of factors.
#[derive(Debug, Clone)]
pub(crate) struct PostPush {
    /// Factored force.
    pub force: Force,
    /// Its height above the ground in front.
    pub arm: Length,
    /// Factored moment about the ground in front.
    pub moment: Moment,
    /// Share of the force that comes and goes; in an accident the water is such a load.
    pub variable_force: f64,
    /// Share of the moment that comes and goes.
    pub variable_moment: f64,
    /// Workings of the push and of the pressure.
    pub traces: Vec<Trace>,
}

/// Wind on the fence per metre run, with its height above the ground in front.
fn wind(case: &WallCase, post: &Post) -> (f64, f64) {
    let Some(f) = &case.fence else { return (0.0, 0.0) };
    let force = f.wind.to_kpa() * f.solidity.to_fraction() * f.height.to_m();
    (force, post.exposed.to_m() + f.height.to_m() / 2.0)
}

/// The push on a post.
///
/// # Errors
/// As [`active`].
pub(crate) fn on_post(
    case: &WallCase,
    combination: &Combination,
    state: LoadCase,
    method: Method,
    post: &Post,
) -> Result<PostPush, Refused> {
    let slope = Line::new(&case.stations).at(post.chainage).slope_behind;
    let active = active(case, combination, state, method, post.retained, slope)?;
    let parts = active.as_ref().map_or([(0.0, 0.0); 4], |a| {
        [a.soil, a.permanent, a.variable, a.water].map(|p| (p.horizontal.to_kn_per_m(), p.arm().to_m()))
    });
    let wind = if state == LoadCase::Wind { wind(case, post) } else { (0.0, 0.0) };
    let c = combination;
    let forces = [parts[0].0, parts[1].0, parts[2].0, parts[3].0, wind.0];
    let arms = [parts[0].1, parts[1].1, parts[2].1, parts[3].1, wind.1];
    let factors = [c.permanent, c.permanent, c.variable, c.permanent, c.variable];
    let width = post.tributary.to_m();
    let p = push(&forces, &arms, &factors, width);
    let water = if is_accident(case, state) { 1.0 } else { 0.0 };
    let comes_and_goes = [0.0, 0.0, 1.0, water, 1.0];
    let share = |of: &dyn Fn(usize) -> f64| {
        let sum: f64 = (0..5).map(of).sum();
        let part: f64 = (0..5).map(|i| comes_and_goes[i] * of(i)).sum();
        if sum > 0.0 { part / sum } else { 0.0 }
    };
    let given = vec![forces.to_vec().into(), arms.to_vec().into(), factors.to_vec().into(), width.into()];
    Ok(PostPush {
        force: Force::kn(p.force),
        arm: Length::m(p.arm),
        moment: Moment::knm(p.moment),
        variable_force: share(&|i| factors[i] * forces[i]),
        variable_moment: share(&|i| factors[i] * forces[i] * arms[i]),
        traces: std::iter::once(Trace::new(&PUSH, given)).chain(active.map(|a| a.trace)).collect(),
    })
}

/// The width with which a post bears on the soil.
pub(crate) fn bearing_width(wall: &Posted, post: &Post) -> Length {
    match wall.hole.fill {
        Fill::Concrete => post.hole_diameter,
        Fill::Rammed => wall.breadth,
    }
}
