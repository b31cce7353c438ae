//! How hard does soil with cohesion push once it has cracked, dry and with rain standing in the crack?

use groundhold_quantity::{Length, LineForce, Pressure, WATER};
use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use super::{Spread, rankine};
use crate::rows::{self, not_below_zero};
use crate::soil::Soil;

/// What a smooth vertical wall feels of soil with cohesion, level ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Cracked {
    /// Depth of the crack.
    pub depth: Length,
    /// Horizontal force per metre run: the soil below the crack, and the water in it.
    pub horizontal: LineForce,
    /// Its height above the base.
    pub arm: Length,
    /// Pressures.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

struct Figures<N> {
    ka: N,
    depth: N,
    soil: N,
    water: N,
    all: N,
    arm: N,
    depths: Vec<N>,
    pressures: Vec<N>,
}

/// Soil with cohesion below its crack, and water in the crack.
///
/// # Source
/// Bell, Minutes of Proc. ICE 199 (1915), σ_a = K_a (γ z + q) − 2c √K_a, tension cut off; the crack as deep as the tension
/// reaches, z_c = 2c/(γ √K_a) − q/γ; water in it hydrostatic: Terzaghi, Theoretical Soil Mechanics (1943).
/// # Symbols
/// | H, γ, φ, c, q | height, weight, friction angle, cohesion (or φ = 0 and c_u), load | m, kN/m³, angle, kPa | |
/// | w | share of the crack that is full of water | – | 0–1 |
/// # Gives
/// z_c; force of the soil, of the water, both, and their height above the base.
/// # Not for
/// Cohesion that is lost with time: count none in fill and in a wall that must stand for years.
/// # Errors
/// None here.
/// # By hand
/// H = 6, γ = 16.5, c_u = 10, full: z_c = 1.212 m, 189.1 + ½ · 9.81 · 1.212² = 196.3 kN/m (reference case CW-01).
fn cracked<N: Number>(height: N, gamma: N, phi: N, c: N, q: N, share: N) -> Figures<N> {
    let ka = rankine::ka(phi);
    let tension = (c * 2.0 / (gamma * ka.sqrt()) - q / gamma).named("z_t", Unit::M);
    let crack = not_below_zero(tension).min(height);
    let depth = crack.named("z_c", Unit::M);
    let at = |z: N| not_below_zero(ka * (gamma * z + q) - c * ka.sqrt() * 2.0);
    let (top, base) = (at(depth), at(height).named("σ_H", Unit::KPA));
    let thick = height - depth;
    let soil = ((top + base) * thick / 2.0).named("P_a", Unit::KN_M);
    let stands = (depth * share).named("h_c", Unit::M);
    let foot = (stands * WATER.to_kn_per_m3()).named("u_c", Unit::KPA);
    let water = (foot * stands / 2.0).named("P_w", Unit::KN_M);
    let all = (soil + water).named("P", Unit::KN_M);
    let moment = (top * 2.0 + base) * thick.squared() / 6.0 + water * (thick + stands / 3.0);
    let arm = if all.value() > 0.0 { moment / all } else { N::constant(0.0) };
    let zero = N::constant(0.0);
    Figures {
        ka,
        depth,
        soil,
        water,
        all,
        arm: arm.named("a", Unit::M),
        depths: vec![zero, depth - stands, depth, depth, height],
        pressures: vec![zero, zero, foot, top, base],
    }
}

/// The push of soil with cohesion, cracked as deep as tension reaches, on a smooth wall and level ground. Undrained clay:
/// hand in φ = 0 and its undrained strength as cohesion.
///
/// # Errors
/// A value outside the working's limits.
pub fn on_wall(soil: &Soil, height: Length, load: Pressure, full: f64) -> Result<Cracked> {
    let given = [
        height.to_m(),
        soil.unit_weight.to_kn_per_m3(),
        soil.phi.to_deg(),
        soil.cohesion.to_kpa(),
        load.to_kpa(),
        full,
    ];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&CRACKED_WET, &values)?;
    let f = cracked(given[0], given[1], rows::radians(soil.phi), given[3], given[4], given[5]);
    Ok(Cracked {
        depth: Length::m(f.depth),
        horizontal: LineForce::kn_per_m(f.all),
        arm: Length::m(f.arm),
        spread: Spread::of(&f.depths, &f.pressures),
        trace: Trace::new(&CRACKED_WET, values),
    })
}

fn run<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (h, gamma, phi, c) = (g.one("height")?, g.one("gamma")?, g.one("phi")?, g.one("c")?);
    let f = cracked(h, gamma, phi, c, g.one("q")?, g.one("full")?);
    Ok(vec![
        Found::One(f.ka),
        Found::One(f.depth),
        Found::One(f.soil),
        Found::One(f.water),
        Found::One(f.all),
        Found::One(f.arm),
        Found::Many(f.depths),
        Found::Many(f.pressures),
    ])
}

/// Soil with cohesion, its crack dry or full.
pub static CRACKED_WET: Working = Working {
    name: "earth-pressure/cracked",
    title: "How hard does soil with cohesion push below its crack, with a load on it and water in the crack?",
    source: Source {
        work: "Bell, The lateral pressure and resistance of clay, Minutes of Proceedings ICE 199, 1915; Terzaghi, Theoretical Soil Mechanics, 1943",
        place: "tension cut off; water in the crack hydrostatic",
    },
    not_for: "fill, softened clay and walls that must stand for years, where no cohesion should be counted",
    inputs: &[
        rows::HEIGHT,
        rows::GAMMA,
        rows::PHI,
        rows::COHESION,
        rows::SURCHARGE,
        Input::new("full", "w", "share of the crack that is full of water", Unit::NONE, Limits::ours(0.0, 1.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "zc", words: "depth of the crack", unit: Unit::M },
        Output { key: "soil", words: "force of the soil", unit: Unit::KN_M },
        Output { key: "water", words: "force of water in the crack", unit: Unit::KN_M },
        Output { key: "p", words: "both", unit: Unit::KN_M },
        Output { key: "arm", words: "their height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures there", unit: Unit::KPA },
    ],
    run,
};
