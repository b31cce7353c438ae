//! Does each layer of grid hold: by its strength, behind the slip wedge, between the blocks, and does the fill slide on it?

use groundhold_earth::basis::Margin;
use groundhold_earth::{Active, Backfill, Combination, Method, Soil, WaterLevel};
use groundhold_member::grid::{
    GRID_CONNECTION, GRID_LAYER, GRID_PULLOUT, GRID_STRENGTH_FHWA, GridConnection, GridLayer, GridPullout, GridReduced,
    grid_connection, grid_layer, grid_pullout, grid_strength_fhwa,
};
use groundhold_quantity::{Angle, Length, WATER, math};
use groundhold_working::{Refused, Trace, Unit};

use super::body::Laid;
use crate::gravity::{Asked, Spot, actions, behind, over, stands_on};
use crate::loads::{NOTHING, is_accident, strips, thrust, water};
use crate::{Check, CheckKind, LoadCase, WallCase};

/// Factor on strength, pull-out and connection with loads as they are. FHWA-NHI-00-043 (2001), 4.3: 1.5, from memory.
const WANTED: f64 = 1.5;
/// The same in an accident, as the basis has it for sliding. Common practice, no source.
const IN_ACCIDENT: f64 = 1.2;
/// With factored loads: resistance factor 0.9 for geosynthetics. FHWA-NHI-10-024 (2009), Table 4-7, from memory.
const FACTORED: f64 = 1.0 / 0.9;
/// Sliding on a sheet or a grid, as a share of the fill's friction angle, without a test. FHWA-NHI-10-024 (2009), 4.4.6.
const ON_GRID: f64 = 2.0 / 3.0;
/// Length behind the slip wedge below which a layer does not count. FHWA-NHI-10-024 (2009), 4.4.7: 3 ft.
const BEHIND: Length = Length::m(1.0);
/// The grip of dry blocks on a grid where no test is at hand: no lip, this angle. From memory, a low figure.
pub(crate) const GRIP_ANGLE: Angle = Angle::deg(25.0);
/// A limit on that grip where none was given: the working's own.
const GRIP_MOST: f64 = 500.0;

/// What all layers of a strip have in common, in one state with one set of factors.
struct Fill<'a> {
    case: &'a WallCase,
    laid: &'a Laid<'a>,
    spot: &'a Spot,
    state: LoadCase,
    c: &'static Combination,
    soil: Soil,
    active: Active,
    /// Height of the fill behind the blocks.
    height: f64,
    /// Water above the base.
    water: f64,
    /// Weight of a rising ground over the grid, as an even load.
    slope: f64,
}

/// The worst layer of a strip in each respect.
///
/// # Errors
/// As a working refuses.
pub(crate) fn checks(
    case: &WallCase,
    laid: &Laid,
    spot: &Spot,
    state: LoadCase,
    c: &'static Combination,
) -> Result<Vec<Check>, Refused> {
    let strip = &spot.strip;
    let layers = laid.layers(strip);
    let b = behind(spot);
    if layers.is_empty() || strip.retained < NOTHING || b.ground < NOTHING.to_m() || state == LoadCase::Wind {
        return Ok(vec![]);
    }
    let mut raw = case.retained_soil.clone();
    raw.phi = laid.spec.fill_friction.unwrap_or(raw.phi);
    let soil = c.soil(&raw);
    let share = water(case, state).to_fraction();
    let water = if share > 0.0 { (b.front + strip.retained.to_m() * share).clamp(0.0, b.ground) } else { 0.0 };
    let moved = |s: groundhold_earth::Strip| {
        let from = (s.from - laid.spec.depth).max(Length::ZERO);
        groundhold_earth::Strip { from, to: s.to - laid.spec.depth, ..s }
    };
    let backfill = Backfill {
        strips: strips(case).into_iter().map(moved).filter(|s| s.from < s.to).collect(),
        water: if water > 0.0 { WaterLevel::At(Length::m(water)) } else { WaterLevel::Drained },
        ..Backfill::new(soil.clone(), Length::m(b.ground))
    };
    let active = thrust(case, state, Method::Rankine, &backfill)?;
    // FHWA-NHI-10-024 (2009), 4.4.7: the rise over 0.7 of the height, half of it as an even load.
    let slope = 0.5 * 0.7 * b.ground * b.slope.to_ratio().max(0.0) * laid.fill.to_kn_per_m3();
    let fill = Fill { case, laid, spot, state, c, soil, active, height: b.ground, water, slope };
    let mut worst: Vec<Asked> = vec![];
    for (i, k) in layers.iter().enumerate() {
        keep(&mut worst, fill.held(&layers, i)?);
        keep(&mut worst, fill.slides(*k, ON_GRID, "on the grid, two thirds of the fill's friction angle")?);
    }
    keep(&mut worst, fill.slides(0, 1.0, "through the fill at the base")?);
    Ok(worst.into_iter().map(|x| x.check(&strip.on, case, state, c.key)).collect())
}

/// Keeps the worst of each kind.
fn keep(worst: &mut Vec<Asked>, more: Vec<Asked>) {
    for asked in more {
        match worst.iter_mut().find(|w| w.kind == asked.kind) {
            Some(w) if over(w.demand, w.capacity) < over(asked.demand, asked.capacity) => *w = asked,
            Some(_) => {}
            None => worst.push(asked),
        }
    }
}

impl Fill<'_> {
    fn factor(&self) -> f64 {
        match self.case.basis.margin {
            Margin::PartialFactors => FACTORED,
            Margin::GlobalFactors if is_accident(self.case, self.state) => IN_ACCIDENT,
            Margin::GlobalFactors => WANTED,
        }
    }
    /// Horizontal pressure of weight, loads and water at a depth below the ground, factored.
    fn pressure(&self, depth: f64) -> f64 {
        let water_factor = if is_accident(self.case, self.state) { 1.0 } else { self.c.permanent };
        let at = Length::m(depth);
        let mut most = 0.0_f64;
        for pair in self.active.diagram.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            if a.depth <= at && at <= b.depth {
                let t = if b.depth > a.depth { (at - a.depth) / (b.depth - a.depth) } else { 1.0 };
                let mix =
                    |x: groundhold_quantity::Pressure, y: groundhold_quantity::Pressure| (x + (y - x) * t).to_kpa();
                let sum = mix(a.soil, b.soil) * self.c.permanent
                    + mix(a.surcharge, b.surcharge) * self.c.variable.max(self.c.permanent)
                    + mix(a.water, b.water) * water_factor;
                most = most.max(sum);
            }
        }
        most + self.active.coefficient * self.slope * self.c.permanent
    }
    /// Strength, pull-out and connection of a layer.
    fn held(&self, layers: &[usize], i: usize) -> Result<Vec<Asked>, Refused> {
        let spec = self.laid.spec;
        let h = spec.height.to_m();
        let z = |k: usize| (self.height - h * k as f64).max(0.0);
        // From half the way to the layer below, or the base, to half the way to the one above, or the top of the fill.
        let low = if i == 0 { self.height } else { (z(layers[i - 1]) + z(layers[i])) / 2.0 };
        let high = layers.get(i + 1).map_or(0.0, |k| (z(*k) + z(layers[i])) / 2.0);
        let (depth, spacing, middle) = (z(layers[i]), low - high, (low + high) / 2.0);
        if depth < 1e-3 {
            return Ok(vec![]);
        }
        let gamma = self.laid.fill.to_kn_per_m3();
        let k = self.active.coefficient;
        let (g, pull_trace) = GridLayer {
            depth: middle,
            unit_weight: gamma,
            surcharge: (self.pressure(middle) / k - gamma * middle).max(0.0),
            coefficient: k,
            spacing,
        }
        .traced(&GRID_LAYER)?;
        let pull = grid_layer(&g).pull;
        let mut all = vec![self.strength(pull, &pull_trace)?];
        all.extend(self.pull_out(pull, depth, &pull_trace)?);
        all.push(self.connection(pull, layers[i], &pull_trace)?);
        Ok(all)
    }
    fn asked(&self, kind: CheckKind, method: &'static str, pull: f64, capacity: f64, traces: Vec<Trace>) -> Asked {
        Asked { kind, method, demand: pull, capacity, unit: Unit::KN_M, traces }
    }
    fn strength(&self, pull: f64, pulled: &Trace) -> Result<Asked, Refused> {
        let g = &self.laid.spec.grid;
        let (s, trace) = GridReduced {
            ultimate: g.ultimate.to_kn_per_m(),
            creep: g.creep,
            damage: g.damage,
            durability: g.age,
            factor: self.factor(),
        }
        .traced(&GRID_STRENGTH_FHWA)?;
        let capacity = grid_strength_fhwa(&s).allowable;
        let method = "strength for good, FHWA-NHI-10-024 3.5";
        Ok(self.asked(CheckKind::GridStrength, method, pull, capacity, vec![trace, pulled.clone()]))
    }
    /// Pull-out, and the length behind the wedge below which a layer does not count.
    fn pull_out(&self, pull: f64, depth: f64, pulled: &Trace) -> Result<Vec<Asked>, Refused> {
        let gamma = self.laid.fill.to_kn_per_m3();
        let lifted = WATER.to_kn_per_m3() * (depth - (self.height - self.water)).max(0.0);
        let (p, trace) = GridPullout {
            pull,
            height: self.height,
            depth,
            length: self.spot.strip.width.to_m(),
            vertical: (gamma * depth - lifted).max(0.1),
            phi: self.soil.phi.to_deg(),
            grip: 2.0 / 3.0,
            stretch: 0.8,
            factor: self.factor(),
        }
        .traced(&GRID_PULLOUT)?;
        let out = grid_pullout(&p);
        let traces = vec![trace, pulled.clone()];
        let held =
            self.asked(CheckKind::GridPullout, "pull-out, FHWA-NHI-10-024 4.4.7", pull, out.capacity, traces.clone());
        let long = Asked {
            method: "a metre behind the slip wedge, FHWA-NHI-10-024 4.4.7",
            demand: BEHIND.to_mm(),
            capacity: out.behind * 1000.0,
            unit: Unit::MM,
            traces,
            ..held
        };
        Ok(if over(held.demand, held.capacity) > over(long.demand, long.capacity) {
            vec![self.asked(CheckKind::GridPullout, held.method, pull, out.capacity, long.traces)]
        } else {
            vec![long]
        })
    }
    /// Grip of the blocks; a wall that steps back rests on no more of its blocks than stand over one another.
    fn connection(&self, pull: f64, course: usize, pulled: &Trace) -> Result<Asked, Refused> {
        let spec = self.laid.spec;
        let above = (self.spot.strip.top - self.spot.strip.base).to_m() - spec.height.to_m() * course as f64;
        let lean = spec.setback.to_m() / spec.height.to_m();
        // FHWA-NHI-10-024 (2009), 4.4.7: hinge height 2 (W_u − G_u)/tan ω, the middle of a block at G_u = W_u/2.
        let hinge = if lean > 0.0 { spec.depth.to_m() / lean } else { f64::INFINITY };
        let grip = &spec.grid.grip;
        let tested = grip.base.is_some() || grip.angle.is_some();
        let angle = grip.angle.unwrap_or(if tested { Angle::ZERO } else { GRIP_ANGLE });
        let (g, trace) = GridConnection {
            pull,
            base: grip.base.map_or(0.0, |b| b.to_kn_per_m()),
            angle: angle.to_deg(),
            weight: spec.in_place().to_kn_per_m3() * spec.depth.to_m() * above.min(hinge),
            most: grip.most.map_or(GRIP_MOST, |m| m.to_kn_per_m()),
            factor: self.factor(),
        }
        .traced(&GRID_CONNECTION)?;
        let method = if tested { "connection, by test" } else { "connection, a low figure from memory" };
        let capacity = grid_connection(&g).capacity;
        Ok(self.asked(CheckKind::GridConnection, method, pull, capacity, vec![trace, pulled.clone()]))
    }
    /// All above a layer, or above the base, sliding with the fill over the length of the grid.
    fn slides(&self, course: usize, share: f64, method: &'static str) -> Result<Vec<Asked>, Refused> {
        let body = self.laid.body_on(&self.spot.strip, course);
        let z = self.laid.spec.height.to_m() * course as f64;
        let a = actions(self.case, self.c, self.state, self.spot, &body, z, self.c.permanent_favourable)?;
        let Some((s, traces)) = stands_on(&a, math::tan(self.soil.phi.to_rad() * share))? else { return Ok(vec![]) };
        let push = s.horizontal.to_kn_per_m();
        let capacity = s.factor_sliding * push / (self.c.wanted.sliding * self.c.sliding);
        Ok(vec![self.asked(CheckKind::GridSliding, method, push, capacity, traces)])
    }
}
