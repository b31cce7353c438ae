//! How much push does a roller leave behind in compacted backfill?

use groundhold_quantity::{Length, LineForce};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use super::{Spread, rankine};
use crate::rows;
use crate::soil::Soil;

/// Pressure locked in behind a wall that can yield, by compaction close to it.
///
/// # Source
/// Ingold, "The effects of compaction on retaining walls", Géotechnique 29(3) (1979); formula from memory.
/// # Symbols
/// | p | weight of the roller per metre width, with its centrifugal force | kN/m | 0.5–200 (ours) |
/// | γ, φ | unit weight, friction angle | kN/m³, angle | φ ≥ 5° (ours) |
/// # Gives
/// (K_a, σ_hm, z_c, h_c): coefficient, locked-in pressure √(2pγ/π), depth from which it is full, depth from which the
/// soil's own active pressure is larger.
/// # Not for
/// Walls that cannot move; clay.
/// # Errors
/// None here.
/// # By hand
/// p = 20 kN/m, γ = 20, φ = 35°: 15.96 kPa between 0.216 and 2.94 m (reference case EP-20).
pub fn locked_in<N: Number>(p: N, gamma: N, phi: N) -> (N, N, N, N) {
    let ka = rankine::ka(phi);
    let pressure = (p * gamma * 2.0 / std::f64::consts::PI).sqrt().named("σ_hm", Unit::KPA);
    let root = (p * 2.0 / (gamma * std::f64::consts::PI)).sqrt();
    (ka, pressure, (ka * root).named("z_c", Unit::M), (root / ka).named("h_c", Unit::M))
}

/// Pressure locked in by compaction.
pub static COMPACTION: Working = Working {
    name: "surcharge/compaction",
    title: "How much pressure does compaction leave behind a wall that can yield?",
    source: Source {
        work: "Ingold, The effects of compaction on retaining walls, Géotechnique 29(3), 1979",
        place: "formula from memory",
    },
    not_for: "walls that cannot move, clay",
    inputs: &[
        Input::new(
            "p",
            "p",
            "weight of the roller per metre width, with its centrifugal force",
            Unit::KN_M,
            Limits::ours(0.5, 200.0),
        ),
        rows::GAMMA,
        Input { limits: Limits::ours(5.0, 50.0), ..rows::PHI },
    ],
    outputs: &[
        Output { key: "ka", words: "active coefficient", unit: Unit::NONE },
        Output { key: "sigma", words: "pressure locked in", unit: Unit::KPA },
        Output { key: "zc", words: "depth from which it is full", unit: Unit::M },
        Output { key: "hc", words: "depth from which active pressure is larger", unit: Unit::M },
    ],
    run: |g| {
        let (a, b, c, d) = locked_in(g.one("p")?, g.one("gamma")?, g.one("phi")?);
        Ok([a, b, c, d].into_iter().map(Found::One).collect())
    },
};

/// What a wall feels of backfill that was compacted close to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Compacted {
    /// Horizontal force per metre run.
    pub horizontal: LineForce,
    /// Its height above the base.
    pub arm: Length,
    /// Pressures over the depth: rising to the locked-in pressure, level, then the soil's own.
    pub spread: Spread,
    /// How it was worked out.
    pub trace: Trace,
}

struct Diagram<N> {
    force: N,
    arm: N,
    depths: Vec<N>,
    pressures: Vec<N>,
}

/// The diagram over a height. Source as [`locked_in`]: straight from nothing to σ_hm at z_c, σ_hm down to h_c, K_a γ z below.
fn diagram<N: Number>(height: N, p: N, gamma: N, phi: N) -> Diagram<N> {
    let (ka, locked, full, own) = locked_in(p, gamma, phi);
    let inside = |z: N| z.value() < height.value();
    let (mut depths, mut pressures) = (vec![N::constant(0.0)], vec![N::constant(0.0)]);
    if inside(full) {
        depths.push(full);
        pressures.push(locked);
    }
    if inside(own) {
        depths.push(own);
        pressures.push(locked);
    }
    let base = if !inside(full) {
        locked * height / full
    } else if inside(own) {
        ka * gamma * height
    } else {
        locked
    };
    depths.push(height);
    pressures.push(base.named("σ_H", Unit::KPA));
    let (mut force, mut moment) = (N::constant(0.0), N::constant(0.0));
    for i in 0..depths.len() - 1 {
        let (a, b, thick) = (pressures[i], pressures[i + 1], depths[i + 1] - depths[i]);
        let f = (a + b) * thick / 2.0;
        moment = moment + f * (height - depths[i + 1]) + (a * 2.0 + b) * thick.squared() / 6.0;
        force = force + f;
    }
    let force = force.named("P", Unit::KN_M);
    Diagram { force, arm: (moment / force).named("a", Unit::M), depths, pressures }
}

/// The push of compacted backfill over a height, by the weight of the roller per metre width with its centrifugal force.
///
/// # Errors
/// A value outside the working's limits.
pub fn compacted(soil: &Soil, height: Length, roller: LineForce) -> Result<Compacted> {
    let given = [height.to_m(), roller.to_kn_per_m(), soil.unit_weight.to_kn_per_m3(), soil.phi.to_deg()];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&COMPACTED, &values)?;
    let d = diagram(given[0], given[1], given[2], rows::radians(soil.phi));
    Ok(Compacted {
        horizontal: LineForce::kn_per_m(d.force),
        arm: Length::m(d.arm),
        spread: Spread::of(&d.depths, &d.pressures),
        trace: Trace::new(&COMPACTED, values),
    })
}

/// Push of compacted backfill.
pub static COMPACTED: Working = Working {
    name: "earth-pressure/compacted",
    title: "How hard does backfill push that was compacted close to a wall that can yield?",
    source: Source {
        work: "Ingold, The effects of compaction on retaining walls, Géotechnique 29(3), 1979",
        place: "formula and diagram from memory",
    },
    not_for: "walls that cannot move, clay, loads on the ground",
    inputs: &[
        rows::HEIGHT,
        Input::new(
            "p",
            "p",
            "weight of the roller per metre width, with its centrifugal force",
            Unit::KN_M,
            Limits::ours(0.5, 200.0),
        ),
        rows::GAMMA,
        Input { limits: Limits::ours(5.0, 50.0), ..rows::PHI },
    ],
    outputs: &[
        Output { key: "force", words: "force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the base", unit: Unit::M },
        Output { key: "depths", words: "depths", unit: Unit::M },
        Output { key: "sigma", words: "pressures there", unit: Unit::KPA },
    ],
    run: |g| {
        let d = diagram(g.one("height")?, g.one("p")?, g.one("gamma")?, g.one("phi")?);
        Ok(vec![Found::One(d.force), Found::One(d.arm), Found::Many(d.depths), Found::Many(d.pressures)])
    },
};
