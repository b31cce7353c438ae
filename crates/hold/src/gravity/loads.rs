//! With what is the wall pushed above a height, and what weighs it down there?

use groundhold_earth::{Active, Backfill, Combination, Method, WaterLevel};
use groundhold_quantity::{Length, Slope, WATER};
use groundhold_working::{Refused, Trace};

use super::Body;
use super::body::Mass;
use crate::loads::{NOTHING, is_accident, strips};
use crate::{Ground, Line, LoadCase, Strip, WallCase};

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

/// A place within a strip that may be the worst of it: the strip with the ground as it is there.
#[derive(Debug, Clone)]
pub(crate) struct Spot {
    /// Ground in front and behind and what is retained are those of the place.
    pub strip: Strip,
    /// Ground behind.
    pub slope: Slope,
}

/// Places whose ground differs by less are one.
const SAME: Length = Length::mm(1.0);

/// The places of a strip of which none is milder in everything than another; the one that holds most comes first.
pub(crate) fn spots(case: &WallCase, strip: &Strip) -> Vec<Spot> {
    let line = Line::new(&case.stations);
    let here = |g: Ground| Spot {
        strip: Strip { front: g.front, behind: g.behind, retained: g.retained(), ..strip.clone() },
        slope: g.slope_behind,
    };
    let mut all: Vec<Spot> = line.over(strip.chainage.0, strip.chainage.1).into_iter().map(here).collect();
    all.sort_by(|a, b| {
        let key = |s: &Spot| (s.strip.retained.to_m(), s.slope.to_ratio());
        key(b).0.total_cmp(&key(a).0).then(key(b).1.total_cmp(&key(a).1))
    });
    let milder = |a: &Spot, b: &Spot| {
        a.strip.retained <= b.strip.retained + SAME
            && a.strip.behind <= b.strip.behind + SAME
            && a.slope.to_ratio() <= b.slope.to_ratio() + 1e-3
    };
    let mut kept: Vec<Spot> = vec![];
    for s in all {
        if !kept.iter().any(|k| milder(&s, k)) {
            kept.push(s);
        }
    }
    kept
}

/// The ground at a spot as the body sees it.
pub(crate) struct Behind {
    pub slope: Slope,
    /// Ground behind, above the underside of the base.
    pub ground: f64,
    /// Ground in front, above the underside of the base.
    pub front: f64,
}

pub(crate) fn behind(spot: &Spot) -> Behind {
    let (ground, front) = grounds(spot);
    Behind { slope: spot.slope, ground, front }
}

/// Ground behind and in front above the underside of the base, metres.
fn grounds(spot: &Spot) -> (f64, f64) {
    let front = (spot.strip.front - spot.strip.base).to_m();
    (front + spot.strip.retained.to_m(), front)
}

/// The upright plane on which the soil pushes above a height, and the height of the ground over it.
fn plane(body: &Body, spot: &Spot, z: f64) -> (f64, f64) {
    let ground = grounds(spot).0;
    let back = body.at(z).1;
    // Above the wall's top the ground goes on as its slope says.
    let crest = body.at(ground.min(body.height() - 1e-6).max(0.0)).1;
    let rise = spot.slope.to_ratio().max(0.0);
    (back, ground + rise * (crest - back).max(0.0) - z)
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
    spot: &Spot,
    body: &Body,
    z: f64,
) -> Result<Option<Active>, Refused> {
    let front_ground = grounds(spot).1;
    let (back, height) = plane(body, spot, z);
    if spot.strip.retained < NOTHING || height < NOTHING.to_m() {
        return Ok(None);
    }
    let soil = combination.soil(&case.retained_soil);
    let water = match state {
        LoadCase::DrainBlocked => {
            let level = front_ground + spot.strip.retained.to_m() * case.water.blocked.to_fraction();
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
        slope: spot.slope,
        wall_friction: soil.delta_concrete,
        strips,
        water,
        ..Backfill::new(soil, Length::m(height))
    };
    crate::loads::thrust(case, state, method, &backfill).map(Some)
}

/// Everything that acts above a height, with the factors of a combination; own weight counts with `own`.
///
/// # Errors
/// As [`active`].
pub(crate) fn actions(
    case: &WallCase,
    combination: &Combination,
    state: LoadCase,
    spot: &Spot,
    body: &Body,
    z: f64,
    own: f64,
) -> Result<Actions, Refused> {
    let (ground, front_ground) = grounds(spot);
    let (front, back) = body.at(z);
    let (plane, height) = plane(body, spot, z);
    let active = active(case, combination, state, Method::Rankine, spot, body, z)?;
    let c = combination;
    let mut weights: Vec<Mass> = body.weights(z).into_iter().map(|m| Mass { force: m.force * own, ..m }).collect();
    let gamma = case.retained_soil.unit_weight.to_kn_per_m3();
    let soil = body.soil_on_back(z, plane, ground, spot.slope.to_ratio().max(0.0));
    let mut pushes = vec![];
    if let (LoadCase::Earthquake, Some(sideways)) = (state, case.shaking) {
        // The wall, and the soil that stands on it, are pushed sideways by their own weight (EN 1998-5:2004 7.3.2.2, from
        // memory); the soil at half its height.
        let on_it = soil.iter().map(|(area, _)| (area * gamma, (ground - z).max(0.0) / 2.0));
        pushes.extend(body.heights(z).into_iter().chain(on_it).map(|(w, y)| (w * sideways.to_fraction(), y)));
    }
    weights.extend(soil.into_iter().map(|(area, x)| Mass { force: area * gamma * own, x }));
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
        let down = spot.slope.to_ratio().max(0.0);
        let turned: f64 = parts[..3].iter().map(|(p, f)| p.horizontal.to_kn_per_m() * f * down).sum();
        if turned > 0.0 {
            weights.push(Mass { force: turned, x: plane });
        }
        uplift = (z == 0.0 && state == LoadCase::DrainBlocked).then(|| {
            let level = front_ground + spot.strip.retained.to_m() * case.water.blocked.to_fraction();
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
