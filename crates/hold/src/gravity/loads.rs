//! With what is the wall pushed above a height, and what weighs it down there?

use groundhold_earth::{Active, Backfill, Combination, Method, WaterLevel};
use groundhold_quantity::{Length, Slope, WATER};
use groundhold_working::{Refused, Trace};

use super::Body;
use super::body::Mass;
use crate::loads::{NOTHING, is_accident, strips};
use crate::{Line, LoadCase, Strip, WallCase};

/// Everything that acts above a height, factored.
#[derive(Debug, Clone)]
pub(crate) struct Actions {
    /// Weights that hold.
    pub weights: Vec<Mass>,
    /// Horizontal pushes with their heights above that height.
    pub pushes: Vec<(f64, f64)>,
    /// Water under the base: force and its place.
    pub uplift: Option<Mass>,
    /// Front and back of the joint or base.
    pub front: f64,
    pub back: f64,
    /// The pressure behind, where there is any.
    pub active: Option<Active>,
}

/// The ground behind a strip as the body sees it.
pub(crate) struct Behind {
    pub slope: Slope,
    /// Above the underside of the base.
    pub ground: f64,
    pub front: f64,
}

pub(crate) fn behind(case: &WallCase, strip: &Strip) -> Behind {
    let line = Line::new(&case.stations);
    let places = line.over(strip.chainage.0, strip.chainage.1);
    let slope = places.iter().map(|g| g.slope_behind).reduce(Slope::max).unwrap_or_default();
    // The place that holds most decides, not the difference between the highest and the lowest ground of a long strip.
    let front = strip.front;
    let ground = front + strip.retained;
    Behind { slope, ground: (ground - strip.base).to_m(), front: (front - strip.base).to_m() }
}

/// The upright plane on which the soil pushes above a height, and the height of the ground over it.
fn plane(body: &Body, b: &Behind, z: f64) -> (f64, f64) {
    let back = body.at(z).1;
    let crest = body.at(b.ground.clamp(z, body.height() - 1e-6).max(0.0)).1;
    let rise = b.slope.to_ratio().max(0.0);
    (back, b.ground + rise * (crest - back).max(0.0) - z)
}

/// The thrust above a height of the body by one theory; `None` where nothing is held there.
///
/// # Errors
/// As the theory refuses: above all, where the ground behind is steeper than its soil's friction angle.
pub(crate) fn active(
    case: &WallCase,
    combination: &Combination,
    state: LoadCase,
    method: Method,
    strip: &Strip,
    body: &Body,
    z: f64,
) -> Result<Option<Active>, Refused> {
    let b = behind(case, strip);
    let (back, height) = plane(body, &b, z);
    if strip.retained < NOTHING || height < NOTHING.to_m() {
        return Ok(None);
    }
    let soil = combination.soil(&case.retained_soil);
    let water = match state {
        LoadCase::DrainBlocked => {
            let level = b.front + strip.retained.to_m() * case.water.blocked.to_fraction();
            WaterLevel::At(Length::m((level - z).clamp(0.0, height)))
        }
        _ => WaterLevel::Drained,
    };
    // Loads are told from the wall line; the plane stands further back.
    let moved = |s: groundhold_earth::Strip| {
        let from = (s.from + Length::m(back)).max(Length::ZERO);
        groundhold_earth::Strip { from, to: s.to + Length::m(back), ..s }
    };
    let strips = strips(case).into_iter().map(moved).filter(|s| s.from < s.to).collect();
    let backfill = Backfill {
        slope: b.slope,
        wall_friction: soil.delta_concrete,
        strips,
        water,
        ..Backfill::new(soil, Length::m(height))
    };
    method.active(&backfill).map(Some)
}

/// Everything that acts above a height, with the factors of a combination; own weight counts with `own`.
///
/// # Errors
/// As [`active`].
pub(crate) fn actions(
    case: &WallCase,
    combination: &Combination,
    state: LoadCase,
    strip: &Strip,
    body: &Body,
    z: f64,
    own: f64,
) -> Result<Actions, Refused> {
    let b = behind(case, strip);
    let (front, back) = body.at(z);
    let (plane, height) = plane(body, &b, z);
    let active = active(case, combination, state, Method::Rankine, strip, body, z)?;
    let c = combination;
    let mut weights: Vec<Mass> = body.weights(z).into_iter().map(|m| Mass { force: m.force * own, ..m }).collect();
    let gamma = case.retained_soil.unit_weight.to_kn_per_m3();
    let soil = body.soil_on_back(z, plane, b.ground, b.slope.to_ratio().max(0.0));
    weights.extend(soil.into_iter().map(|(area, x)| Mass { force: area * gamma * own, x }));
    let mut pushes = vec![];
    let mut uplift = None;
    if let Some(a) = &active {
        let water = if is_accident(case, state) { 1.0 } else { c.permanent };
        let parts = [(a.soil, c.permanent), (a.permanent, c.permanent), (a.variable, c.variable), (a.water, water)];
        for (p, factor) in parts {
            let force = p.horizontal.to_kn_per_m();
            if force > 0.0 {
                pushes.push((force * factor, p.arm().to_m()));
            }
        }
        // The thrust of a rising ground turns down with it.
        let down = b.slope.to_ratio().max(0.0);
        let turned: f64 = parts[..3].iter().map(|(p, f)| p.horizontal.to_kn_per_m() * f * down).sum();
        if turned > 0.0 {
            weights.push(Mass { force: turned, x: plane });
        }
        uplift = (z == 0.0 && state == LoadCase::DrainBlocked).then(|| {
            let level = b.front + strip.retained.to_m() * case.water.blocked.to_fraction();
            let head = level.clamp(0.0, height);
            let wide = front - back;
            Mass { force: WATER.to_kn_per_m3() * head * wide / 2.0 * water, x: back + wide / 3.0 }
        });
    }
    if let (LoadCase::Wind, Some(f)) = (state, &case.fence) {
        let force = f.wind.to_kpa() * f.solidity.to_fraction() * f.height.to_m() * c.variable;
        pushes.push((force, body.height() - z + f.height.to_m() / 2.0));
    }
    pushes.retain(|p| p.0 > 0.0);
    Ok(Actions { weights, pushes, uplift: uplift.filter(|u| u.force > 0.0), front, back, active })
}

/// The working of the pressure, where there is any.
pub(crate) fn pressure_trace(a: &Actions) -> Vec<Trace> {
    a.active.iter().map(|a| a.trace.clone()).collect()
}
