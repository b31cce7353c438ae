//! How hard does the ground in front push back, by every accepted method side by side?

use groundhold_quantity::{Angle, Length, LineForce, Slope, WATER};
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Source, Trace, Unit, Working};

use super::{Spread, annex_c, caquot, coulomb, log_spiral, rankine};
use crate::rows;
use crate::soil::Soil;

/// By which method a passive coefficient is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Passive {
    /// Smooth wall: wall friction is not counted. The most cautious.
    Rankine,
    /// EN 1997-1 Annex C.2, a lower bound by plasticity.
    En1997,
    /// A logarithmic spiral, moments about its pole.
    LogSpiral,
    /// The tables after Caquot and Kérisel, level ground.
    CaquotKerisel,
    /// A plane wedge; overstates where δ is above φ/2.
    Coulomb,
}

impl Passive {
    /// All of them, the most cautious first.
    pub const ALL: [Passive; 5] =
        [Passive::Rankine, Passive::En1997, Passive::LogSpiral, Passive::CaquotKerisel, Passive::Coulomb];

    /// In words, for tables.
    pub fn name(self) -> &'static str {
        match self {
            Passive::Rankine => "Rankine",
            Passive::En1997 => "EN 1997-1 Annex C.2",
            Passive::LogSpiral => "logarithmic spiral",
            Passive::CaquotKerisel => "Caquot and Kérisel",
            Passive::Coulomb => "Coulomb",
        }
    }
    /// The coefficient square to a vertical wall, and how it was found. A slope in front that falls away is negative.
    ///
    /// # Errors
    /// Angles outside the method's limits, δ > φ, or ground that slopes where the method knows level ground only.
    pub fn coefficient(self, phi: Angle, delta: Angle, slope: Slope) -> Result<(f64, Trace)> {
        let cos = Number::cos(rows::radians(delta));
        match self {
            Passive::Rankine => {
                let given = vec![1.0.into(), 20.0.into(), phi.to_deg().into(), slope.to_angle().to_deg().into()];
                rows::check(&rankine::RANKINE, &given)?;
                let (phi, slope) = (rows::radians(phi), rows::radians(slope.to_angle()).abs());
                if slope > phi + 1e-9 {
                    return Err(rankine::steep(rankine::RANKINE.name, slope, phi));
                }
                let k = rankine::kp_slope(phi, slope) * Number::cos(slope);
                Ok((k, Trace::new(&rankine::RANKINE, given)))
            }
            Passive::En1997 => annex_c::coefficient(annex_c::State::Passive, phi, delta, slope),
            Passive::LogSpiral => log_spiral::passive(phi, delta, slope).map(|s| (s.weight * cos, s.trace)),
            Passive::CaquotKerisel if slope == Slope::LEVEL => caquot::passive(phi, delta).map(|(k, t)| (k * cos, t)),
            Passive::CaquotKerisel => Err(Refused::NoAnswer {
                working: caquot::CAQUOT.name,
                why: "the table is for level ground; on a slope take the logarithmic spiral or EN 1997-1".into(),
            }),
            Passive::Coulomb => coulomb_passive(phi, delta, slope, cos),
        }
    }
}

fn coulomb_passive(phi: Angle, delta: Angle, slope: Slope, cos: f64) -> Result<(f64, Trace)> {
    let degrees = [phi, delta, Angle::ZERO, slope.to_angle()].map(|a| a.to_deg().into());
    let given: Vec<_> = [1.0.into(), 20.0.into()].into_iter().chain(degrees).collect();
    rows::check(&coulomb::COULOMB_PASSIVE, &given)?;
    let [phi, delta, slope] = [phi, delta, slope.to_angle()].map(rows::radians);
    let k = coulomb::kp(phi, delta, 0.0, slope);
    if !k.is_finite() || k > 1000.0 || -slope > phi + 1e-9 {
        return Err(Refused::NoAnswer {
            working: coulomb::COULOMB_PASSIVE.name,
            why: "with these angles a plane wedge has no passive resistance that can be found".into(),
        });
    }
    Ok((k * cos, Trace::new(&coulomb::COULOMB_PASSIVE, given)))
}

/// The ground in front of a wall, of one soil, level at its top.
#[derive(Debug, Clone, PartialEq)]
pub struct Front {
    /// What it is made of. For a design value, hand in [`crate::Combination::soil`] of it.
    pub soil: Soil,
    /// How deep it reaches from its surface to the underside of the wall.
    pub depth: Length,
    /// What may be dug or washed away and is not counted, from the surface down.
    pub lost: Length,
    /// Water, as depth below the surface in front; none where `None`.
    pub water: Option<Length>,
    /// True to count cohesion.
    pub counts_cohesion: bool,
}

/// What the ground in front can push back with.
#[derive(Debug, Clone, PartialEq)]
pub struct Resistance {
    /// Square to the wall, per metre run, soil only; water in front is not counted.
    pub force: LineForce,
    /// Its height above the underside.
    pub arm: Length,
    /// The pressures, from the surface in front down.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

/// Limiting passive pressure at a depth.
///
/// # Source
/// Rankine (1857) with cohesion after Bell, Minutes of Proc. ICE 199 (1915): σ_p = K_p σ′_v + 2c √K_p.
/// # Symbols
/// | K_p, σ′_v, c | coefficient square to the wall, vertical effective stress, cohesion | –, kPa, kPa | |
/// # Gives
/// Pressure in kPa.
/// # Not for
/// Adhesion on the wall.
/// # Errors
/// None.
/// # By hand
/// K_p = 2.04, σ′ = 28.5, c = 40: 58.1 + 114.3 = 172.4 kPa (foot of reference case PA-01).
pub fn limit<N: Number>(k: N, stress: N, c: N) -> N {
    if c.value() == 0.0 {
        return (k * stress).named("σ_p", Unit::KPA);
    }
    (k * stress + c * k.sqrt() * 2.0).named("σ_p", Unit::KPA)
}

struct Reach<N> {
    force: N,
    arm: N,
    depths: Vec<N>,
    pressures: Vec<N>,
}

/// Depths, stresses and their sum, from the depth that is lost down.
fn reach<N: Number>(k: N, gamma: N, submerged: N, c: N, depth: N, lost: N, water: N) -> Reach<N> {
    let dry = if water.value() < depth.value() { water } else { depth };
    let stress = |z: N| {
        if z.value() <= dry.value() {
            gamma * (z - lost)
        } else {
            gamma * dry.max(lost) + submerged * (z - dry.max(lost)) - gamma * lost
        }
    };
    let mut depths = vec![lost];
    if lost.value() < dry.value() && dry.value() < depth.value() {
        depths.push(dry);
    }
    depths.push(depth);
    let pressures: Vec<N> = depths.iter().map(|z| limit(k, stress(*z), c)).collect();
    let zero = N::constant(0.0);
    let (mut force, mut moment) = (zero, zero);
    for i in 0..depths.len() - 1 {
        let (a, b, thick) = (pressures[i], pressures[i + 1], depths[i + 1] - depths[i]);
        let f = (a + b) * thick / 2.0;
        moment = moment + f * (depth - depths[i + 1]) + (a * 2.0 + b) * thick.squared() / 6.0;
        force = force + f;
    }
    let force = force.named("P_p", Unit::KN_M);
    let arm = if force.value() > 0.0 { moment / force } else { zero };
    Reach { force, arm: arm.named("a", Unit::M), depths, pressures }
}

impl Front {
    /// What the ground can push back with, by a coefficient square to the wall. The soil above `lost` is taken away with
    /// its weight.
    ///
    /// # Errors
    /// A value outside the working's limits, or more lost than there is.
    pub fn resistance(&self, coefficient: f64) -> Result<Resistance> {
        let (water, c) = (self.water.unwrap_or(Length::m(NO_WATER)), self.counts_cohesion);
        let c = if c { self.soil.cohesion.to_kpa() } else { 0.0 };
        let given = [
            self.depth.to_m(),
            self.lost.to_m(),
            self.soil.unit_weight.to_kn_per_m3(),
            self.soil.unit_weight_saturated.to_kn_per_m3(),
            coefficient,
            c,
            water.to_m(),
        ];
        let values: Vec<_> = given.map(Into::into).into();
        rows::check(&PASSIVE_FRONT, &values)?;
        if self.lost >= self.depth {
            return Err(Refused::NoAnswer { working: PASSIVE_FRONT.name, why: LOST.into() });
        }
        let submerged = given[3] - WATER.to_kn_per_m3();
        let r = reach(coefficient, given[2], submerged, c, given[0], given[1], given[6]);
        Ok(Resistance {
            force: LineForce::kn_per_m(r.force),
            arm: Length::m(r.arm),
            spread: Spread::of(&r.depths, &r.pressures),
            trace: Trace::new(&PASSIVE_FRONT, values),
        })
    }
}

const NO_WATER: f64 = 1000.0;
const LOST: &str = "as much ground may be lost as there is in front; nothing is left to push back";

/// Passive resistance of the ground in front.
pub static PASSIVE_FRONT: Working = Working {
    name: "earth-pressure/passive-front",
    title: "How hard can the ground in front push back, less what may be dug away?",
    source: Source {
        work: "Rankine, Phil. Trans. R. Soc. 147, 1857; cohesion: Bell, Minutes of Proceedings ICE 199, 1915",
        place: "σ_p = K_p σ′ + 2c√K_p; depth that may be lost: EN 1997-1:2004, 9.3.2.2",
    },
    not_for: "water that flows up in front (take its gradient off the weight), a slope in front without a coefficient for it",
    inputs: &[
        Input::new("depth", "D", "depth from the surface in front to the underside", Unit::M, Limits::ours(0.01, 30.0)),
        Input::new("lost", "Δ", "depth that may be dug or washed away", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
        rows::GAMMA,
        rows::GAMMA_SAT,
        Input::new("kp", "K_p", "passive coefficient square to the wall", Unit::NONE, Limits::ours(0.1, 100.0)),
        rows::COHESION,
        Input::new("water", "z_w", "depth of water below the surface in front", Unit::M, Limits::ours(0.0, NO_WATER))
            .or(NO_WATER),
    ],
    outputs: &[
        Output { key: "p", words: "force square to the wall", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the underside", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures there", unit: Unit::KPA },
    ],
    run: |g| {
        let (depth, lost) = (g.one("depth")?, g.one("lost")?);
        if lost.value() >= depth.value() {
            return Err(g.no_answer(LOST));
        }
        let submerged = g.one("gamma_sat")? - WATER.to_kn_per_m3();
        let r = reach(g.one("kp")?, g.one("gamma")?, submerged, g.one("c")?, depth, lost, g.one("water")?);
        Ok(vec![Found::One(r.force), Found::One(r.arm), Found::Many(r.depths), Found::Many(r.pressures)])
    },
};
