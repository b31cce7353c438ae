//! How hard do layers push that have friction, cohesion and wall friction of their own, with water at any level?

use groundhold_quantity::{Angle, Length, LineForce, Pressure, WATER};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::{Spread, coulomb};
use crate::rows::{self, not_below_zero};
use crate::soil::Soil;

/// A layer behind a vertical wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Stratum {
    /// What it is made of.
    pub soil: Soil,
    /// How thick it is behind the wall.
    pub thickness: Length,
    /// δ against it.
    pub wall_friction: Angle,
    /// True to count its cohesion.
    pub counts_cohesion: bool,
}

/// The push of layers.
#[derive(Debug, Clone, PartialEq)]
pub struct Layers {
    /// Horizontal force of soil and load per metre run.
    pub soil: LineForce,
    /// Force of the water.
    pub water: LineForce,
    /// Height of both together above the base.
    pub arm: Length,
    /// Pressure of soil, load and water.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

struct Layer<N> {
    thickness: N,
    gamma: N,
    gamma_sat: N,
    phi: N,
    c: N,
    delta: N,
}

struct Sums<N> {
    soil: N,
    water: N,
    all: N,
    arm: N,
    depths: Vec<N>,
    pressures: Vec<N>,
    water_pressures: Vec<N>,
}

/// Active push of layers on a vertical wall, level ground.
///
/// # Source
/// Coulomb (1776), with δ = 0 Rankine (1857); cohesion K σ′ − 2c√K (EN 1997-1:2004 Annex C.1 with a = 0), tension cut off;
/// effective stress after Terzaghi. As in Das, Principles of Geotechnical Engineering, Ex. 13.4, layer by layer.
/// # Symbols
/// | h, γ, γ_sat, φ, c, δ | of each layer | m, kN/m³, angle, kPa | |
/// | z_w, q | depth of water, load on all the ground | m, kPa | |
/// # Gives
/// Force of the soil, of the water, both, their height above the base, and the pressures: at a border two, above and below.
/// # Not for
/// Sloping ground; water that flows.
/// # Errors
/// None here.
/// # By hand
/// Reference case ST-01 (as EP-02): 117.2 kN/m at 1.78 m.
fn sums<N: Number>(layers: &[Layer<N>], water_depth: N, q: N) -> Sums<N> {
    let zero = N::constant(0.0);
    let (mut depths, mut pressures, mut water_pressures) = (vec![], vec![], vec![]);
    let (mut top, mut stress) = (zero, q);
    for l in layers {
        let k = (coulomb::ka(l.phi, l.delta, zero, zero) * l.delta.cos()).named("K_h", Unit::NONE);
        let at = |s: N| if l.c.value() == 0.0 { k * s } else { not_below_zero(k * s - l.c * k.sqrt() * 2.0) };
        let bottom = top + l.thickness;
        let dry_end = if water_depth.value() >= bottom.value() { bottom } else { water_depth.max(top) };
        for (from, to, own) in [(top, dry_end, l.gamma), (dry_end, bottom, l.gamma_sat - WATER.to_kn_per_m3())] {
            if to.value() - from.value() <= 1e-12 {
                continue;
            }
            let end = (stress + own * (to - from)).named("σ'", Unit::KPA);
            let mut stops = vec![(from, stress)];
            if l.c.value() > 0.0 {
                // Where tension ends inside the stretch, so that the cut-off is met exactly.
                let (pa, pb) = (k * stress - l.c * k.sqrt() * 2.0, k * end - l.c * k.sqrt() * 2.0);
                if pa.value() < 0.0 && pb.value() > 0.0 {
                    let share = (-pa) / (pb - pa);
                    stops.push(((from + (to - from) * share).named("z_0", Unit::M), stress + (end - stress) * share));
                }
            }
            stops.push((to, end));
            for (z, s) in stops {
                depths.push(z);
                pressures.push(at(s).named("σ_h", Unit::KPA));
                let wet = not_below_zero(z - water_depth);
                water_pressures.push(if wet.value() > 0.0 { wet * WATER.to_kn_per_m3() } else { zero });
            }
            stress = end;
        }
        top = bottom;
    }
    let (soil, m_soil) = integrate(&depths, &pressures, top);
    let (water, m_water) = integrate(&depths, &water_pressures, top);
    let (soil, water) = (soil.named("P_a", Unit::KN_M), water.named("P_w", Unit::KN_M));
    let all = (soil + water).named("P", Unit::KN_M);
    let arm = if all.value() > 0.0 { (m_soil + m_water) / all } else { zero };
    Sums { soil, water, all, arm: arm.named("a", Unit::M), depths, pressures, water_pressures }
}

fn integrate<N: Number>(depths: &[N], p: &[N], base: N) -> (N, N) {
    let (mut force, mut moment) = (N::constant(0.0), N::constant(0.0));
    for i in 0..depths.len().saturating_sub(1) {
        let thick = depths[i + 1] - depths[i];
        if thick.value() <= 0.0 || (p[i].value() == 0.0 && p[i + 1].value() == 0.0) {
            continue;
        }
        let f = (p[i] + p[i + 1]) * thick / 2.0;
        moment = moment + f * (base - depths[i + 1]) + (p[i] * 2.0 + p[i + 1]) * thick.squared() / 6.0;
        force = force + f;
    }
    (force, moment)
}

/// The active push of layers, top down, with water at a depth below the ground and a load on all of it.
///
/// # Errors
/// No layer, δ > φ in one of them, or a value outside the working's limits.
pub fn active(layers: &[Stratum], water: Option<Length>, load: Pressure) -> Result<Layers> {
    let list = |f: &dyn Fn(&Stratum) -> f64| -> Vec<f64> { layers.iter().map(f).collect() };
    let columns = [
        list(&|l| l.thickness.to_m()),
        list(&|l| l.soil.unit_weight.to_kn_per_m3()),
        list(&|l| l.soil.unit_weight_saturated.to_kn_per_m3()),
        list(&|l| l.soil.phi.to_deg()),
        list(&|l| if l.counts_cohesion { l.soil.cohesion.to_kpa() } else { 0.0 }),
        list(&|l| l.wall_friction.to_deg()),
    ];
    let depth = water.map_or(NO_WATER, Length::to_m);
    let mut given: Vec<_> = columns.iter().map(|c| c.clone().into()).collect();
    given.extend([depth.into(), load.to_kpa().into()]);
    rows::check(&STRATA, &given)?;
    let no = |why: String| Refused::NoAnswer { working: STRATA.name, why };
    let layers: Vec<_> = (0..layers.len())
        .map(|i| Layer {
            thickness: columns[0][i],
            gamma: columns[1][i],
            gamma_sat: columns[2][i],
            phi: columns[3][i].to_radians(),
            c: columns[4][i],
            delta: columns[5][i].to_radians(),
        })
        .collect();
    possible(&layers).map_err(no)?;
    let s = sums(&layers, depth, load.to_kpa());
    let all: Vec<f64> = s.pressures.iter().zip(&s.water_pressures).map(|(a, b)| a + b).collect();
    Ok(Layers {
        soil: LineForce::kn_per_m(s.soil),
        water: LineForce::kn_per_m(s.water),
        arm: Length::m(s.arm),
        spread: Spread::of(&s.depths, &all),
        trace: Trace::new(&STRATA, given),
    })
}

fn possible<N: Number>(layers: &[Layer<N>]) -> std::result::Result<(), String> {
    if layers.is_empty() {
        return Err("there is no layer behind the wall".into());
    }
    match layers.iter().position(|l| l.delta.value() > l.phi.value() + 1e-9) {
        Some(i) => Err(format!("layer {}: wall friction δ is larger than the soil's friction angle φ", i + 1)),
        None => Ok(()),
    }
}

const NO_WATER: f64 = 1000.0;

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let columns =
        [g.many("thickness")?, g.many("gamma")?, g.many("gamma_sat")?, g.many("phi")?, g.many("c")?, g.many("delta")?];
    let n = columns[0].len();
    // A single value of cohesion or wall friction serves every layer.
    let each = |k: usize, i: usize| columns[k].get(i).or(columns[k].first()).copied();
    let short = columns[1..4].iter().any(|c| c.len() != n) || columns[4..].iter().any(|c| c.len() != n && c.len() != 1);
    if short {
        return Err(g.no_answer(
            "`thickness`, `gamma`, `gamma_sat` and `phi` should have one value per layer; `c` and `delta` one, or one for all",
        ));
    }
    let layer = |i: usize| {
        Some(Layer {
            thickness: each(0, i)?,
            gamma: each(1, i)?,
            gamma_sat: each(2, i)?,
            phi: each(3, i)?,
            c: each(4, i)?,
            delta: each(5, i)?,
        })
    };
    let layers: Vec<_> = (0..n).filter_map(layer).collect();
    possible(&layers).map_err(|why| g.no_answer(why))?;
    let s = sums(&layers, g.one("water_depth")?, g.one("q")?);
    Ok(vec![
        Found::One(s.soil),
        Found::One(s.water),
        Found::One(s.all),
        Found::One(s.arm),
        Found::Many(s.depths),
        Found::Many(s.pressures),
        Found::Many(s.water_pressures),
    ])
}

/// Push of layers.
pub static STRATA: Working = Working {
    name: "earth-pressure/strata",
    title: "How hard do layers with friction, cohesion and wall friction push, and how is the pressure spread?",
    source: Source {
        work: "Coulomb, 1776; Rankine, Phil. Trans. R. Soc. 147, 1857; cohesion: EN 1997-1:2004 Annex C.1 with a = 0",
        place: "effective stress after Terzaghi; layer by layer as in Das, Principles of Geotechnical Engineering, Ex. 13.4",
    },
    not_for: "sloping ground, water that flows, passive pressure",
    inputs: &[
        Input::new("thickness", "h", "thickness of each layer, top down", Unit::M, Limits::ours(0.01, 30.0)),
        rows::GAMMA,
        rows::GAMMA_SAT,
        rows::PHI,
        rows::COHESION,
        rows::DELTA,
        Input::new("water_depth", "z_w", "depth of the water below the ground", Unit::M, Limits::ours(0.0, NO_WATER))
            .or(NO_WATER),
        rows::SURCHARGE,
    ],
    outputs: &[
        Output { key: "soil", words: "horizontal force of soil and load", unit: Unit::KN_M },
        Output { key: "water", words: "force of the water", unit: Unit::KN_M },
        Output { key: "p", words: "both", unit: Unit::KN_M },
        Output { key: "arm", words: "their height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures of soil and load there", unit: Unit::KPA },
        Output { key: "u", words: "pressures of water there", unit: Unit::KPA },
    ],
    run,
};
