//! How hard do layers with a water table push?

use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Source, Unit, Working};

use super::{at_rest, rankine};
use crate::rows;

/// One layer, from its top down.
pub struct Layer<N> {
    /// Thickness.
    pub thickness: N,
    /// Unit weight: moist above water, saturated below.
    pub gamma: N,
    /// Its coefficient, active or at rest.
    pub k: N,
}

/// What layers do. Lists hold one value per layer.
pub struct Layered<N> {
    /// Force of the weight that lies on each layer.
    pub rectangles: Vec<N>,
    /// Force of each layer's own weight.
    pub triangles: Vec<N>,
    /// Force of the water.
    pub water: N,
    /// All of it.
    pub total: N,
    /// Its height above the base.
    pub arm: N,
}

/// Thrust of layers, each with its own coefficient, with still water from a depth down.
///
/// # Source
/// Effective stress (Terzaghi) with Rankine's or Jaky's coefficient; as in Das, Principles of Geotechnical Engineering,
/// Ex. 13.1 and 13.4.
/// # Symbols
/// | h, γ, K | of each layer | m, kN/m³, – | a layer lies wholly above or wholly below water |
/// | z_w, γ_w, q | depth of water, its weight, load on the ground | m, kN/m³, kPa | |
/// # Gives
/// Forces per layer (rectangle from above, triangle of its own), water, total and arm above the base.
/// # Not for
/// Cohesion, sloping ground.
/// # Errors
/// None here; the working refuses a layer that straddles the water.
/// # By hand
/// Reference case EP-02: 24 + 39.0 + 10.0 + 44.1 = 117.2 kN/m at 1.78 m.
pub fn thrust<N: Number>(layers: &[Layer<N>], water_depth: N, gamma_w: N, q: N) -> Layered<N> {
    let height = layers[1..].iter().fold(layers[0].thickness, |h, l| h + l.thickness).named("H", Unit::M);
    let (mut rectangles, mut triangles) = (vec![], vec![]);
    let (mut depth, mut stress) = (N::constant(0.0), q);
    let mut moments: Option<N> = None;
    let mut push = |m: N| moments = Some(moments.map_or(m, |sum| sum + m));
    for l in layers {
        let below = depth.value() >= water_depth.value() - 1e-9;
        let own = if below { (l.gamma - gamma_w).named("γ'", Unit::KN_M3) } else { l.gamma };
        let rectangle = (l.k * stress * l.thickness).named("P_above", Unit::KN_M);
        let triangle = (l.k * own * l.thickness.squared() * 0.5).named("P_own", Unit::KN_M);
        depth = depth + l.thickness;
        let base = height - depth;
        push(rectangle * (base + l.thickness / 2.0) + triangle * (base + l.thickness / 3.0));
        stress = (stress + own * l.thickness).named("σ'", Unit::KPA);
        rectangles.push(rectangle);
        triangles.push(triangle);
    }
    let wet = rows::not_below_zero(height - water_depth);
    let water = (gamma_w * wet.squared() * 0.5).named("P_w", Unit::KN_M);
    push(water * wet / 3.0);
    let soil = rectangles.iter().chain(&triangles).fold(N::constant(0.0), |sum, p| sum + *p);
    let total = (soil + water).named("P", Unit::KN_M);
    let m = moments.unwrap_or(N::constant(0.0)).named("M", Unit::KNM);
    let arm = if total.value() > 0.0 { (m / total).named("a", Unit::M) } else { N::constant(0.0) };
    Layered { rectangles, triangles, water, total, arm }
}

fn run<'s>(
    g: &Given<'s>,
    k: impl Fn(groundhold_working::Shown<'s>) -> groundhold_working::Shown<'s>,
) -> Result<Vec<Found<'s>>> {
    let (h, gamma, phi) = (g.many("thickness")?, g.many("gamma")?, g.many("phi")?);
    if h.is_empty() || h.len() != gamma.len() || h.len() != phi.len() {
        return Err(g.no_answer("`thickness`, `gamma` and `phi` should have the same number of values, one per layer"));
    }
    let water_depth = g.one("water_depth")?;
    let mut top = 0.0;
    for t in &h {
        let bottom = top + t.value();
        if top + 1e-9 < water_depth.value() && water_depth.value() < bottom - 1e-9 {
            return Err(g.no_answer(format!(
                "the layer from {top} m to {bottom} m straddles the water; split it at {} m, since it weighs differently above and below",
                water_depth.value()
            )));
        }
        top = bottom;
    }
    let layers: Vec<_> = (0..h.len()).map(|i| Layer { thickness: h[i], gamma: gamma[i], k: k(phi[i]) }).collect();
    let l = thrust(&layers, water_depth, g.one("gamma_w")?, g.one("q")?);
    Ok(vec![
        Found::Many(l.rectangles),
        Found::Many(l.triangles),
        Found::One(l.water),
        Found::One(l.total),
        Found::One(l.arm),
    ])
}

const THICKNESS: Input =
    Input::new("thickness", "h", "thickness of each layer, top down", Unit::M, Limits::ours(0.01, 30.0));
const WATER_DEPTH: Input =
    Input::new("water_depth", "z_w", "depth of the water below the ground", Unit::M, Limits::ours(0.0, 1000.0))
        .or(1000.0);
const OUTPUTS: &[Output] = &[
    Output { key: "rectangles", words: "force of what lies on each layer", unit: Unit::KN_M },
    Output { key: "triangles", words: "force of each layer's own weight", unit: Unit::KN_M },
    Output { key: "water", words: "force of the water", unit: Unit::KN_M },
    Output { key: "total", words: "total force", unit: Unit::KN_M },
    Output { key: "arm", words: "its height above the base", unit: Unit::M },
];

/// Active thrust of layers.
pub static RANKINE_LAYERED: Working = Working {
    name: "earth-pressure/rankine-layered",
    title: "How hard do layers of cohesionless soil with a water table push on a smooth wall?",
    source: Source {
        work: "Rankine, Phil. Trans. R. Soc. 147, 1857, with effective stress after Terzaghi",
        place: "as in Das, Principles of Geotechnical Engineering, Ex. 13.4",
    },
    not_for: "cohesion, sloping ground, moving water",
    inputs: &[THICKNESS, rows::GAMMA, rows::PHI, WATER_DEPTH, rows::GAMMA_WATER, rows::SURCHARGE],
    outputs: OUTPUTS,
    run: |g| run(g, rankine::ka),
};

/// At-rest thrust of layers.
pub static AT_REST_LAYERED: Working = Working {
    name: "earth-pressure/at-rest-layered",
    title: "How hard do layers with a water table push on a wall that cannot move?",
    source: Source {
        work: "Jaky, 1944; Mayne and Kulhawy, J. Geotech. Eng. Div. ASCE 108(GT6), 1982",
        place: "as in Das, Principles of Geotechnical Engineering, Ex. 13.1",
    },
    not_for: "sloping ground, swelling clay, moving water",
    inputs: &[THICKNESS, rows::GAMMA, rows::PHI, WATER_DEPTH, rows::GAMMA_WATER, rows::SURCHARGE, at_rest::OCR],
    outputs: OUTPUTS,
    run: |g| {
        let ocr = g.one("ocr")?;
        run(g, |phi| at_rest::k0(phi, ocr))
    },
};
