//! Which slopes can be judged with a pencil: endless slopes, plane wedges, charts?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::rows;

/// Factor of an endless slope with water flowing along it.
///
/// # Source
/// Skempton and DeLory (1957); as in Das, Principles of Geotechnical Engineering, Ex. 15.1.
/// # Symbols
/// | γ_sat, γ_w, c, φ, β, H | saturated weight, water, strength, slope, depth of the slip | kN/m³, kPa, angle, m | |
/// # Gives
/// F = c/(γ_sat H cos²β tan β) + (γ′/γ_sat)(tan φ/tan β).
/// # Not for
/// Slopes short against their depth.
/// # Errors
/// None here.
/// # By hand
/// Reference case SL-08.
pub fn infinite_with_seepage<N: Number>(gamma_sat: N, gamma_w: N, c: N, phi: N, beta: N, depth: N) -> N {
    let tan = beta.tan();
    let cohesive = c / (gamma_sat * depth * beta.cos().squared() * tan);
    let frictional = (gamma_sat - gamma_w) / gamma_sat * (phi.tan() / tan);
    (cohesive + frictional).named("F", Unit::NONE)
}

/// Endless slope.
pub static INFINITE_SLOPE: Working = Working {
    name: "slope/infinite",
    title: "What is the factor of safety of a long slope with water flowing along it, and how deep may it be for a wanted one?",
    source: Source {
        work: "Skempton and DeLory, Stability of natural slopes in London clay, Proc. 4th ICSMFE 2, 1957",
        place: "as in Das, Principles of Geotechnical Engineering, Ex. 15.1",
    },
    not_for: "slopes short against the depth of the slip",
    inputs: &[
        rows::GAMMA_SAT,
        rows::GAMMA_WATER,
        rows::COHESION,
        rows::PHI,
        Input::new("beta", "β", "slope of the ground", Unit::DEG, Limits::ours(0.5, 60.0)),
        Input::new("depth", "H", "depth of the slip", Unit::M, Limits::ours(0.01, 50.0)),
        Input::new("wanted", "F_w", "factor wanted", Unit::NONE, Limits::ours(1.0, 5.0)).or(2.0),
    ],
    outputs: &[
        Output { key: "factor", words: "factor of safety", unit: Unit::NONE },
        Output { key: "depth_wanted", words: "depth at which the wanted factor is met", unit: Unit::M },
    ],
    run: |g| {
        let (sat, w, c) = (g.one("gamma_sat")?, g.one("gamma_w")?, g.one("c")?);
        let (phi, beta, depth) = (g.one("phi")?, g.one("beta")?, g.one("depth")?);
        let f = infinite_with_seepage(sat, w, c, phi, beta, depth);
        let tan = beta.tan();
        let left = g.one("wanted")? - (sat - w) / sat * (phi.tan() / tan);
        let h = if left.value() > 0.0 {
            (c / (sat * beta.cos().squared() * tan * left)).named("H_w", Unit::M)
        } else {
            g.sheet().remark("friction alone meets the wanted factor at any depth");
            groundhold_working::Shown::constant(f64::INFINITY)
        };
        Ok([f, h].map(Found::One).into())
    },
};

/// Height of a plane-wedge slope for a wanted factor.
///
/// # Source
/// Culmann (1875); as in Das, Principles of Geotechnical Engineering, Ex. 15.2.
/// # Symbols
/// | γ, c, φ, β, F | weight, strength, face of the slope, factor on strength | kN/m³, kPa, angle, – | β > φ_d |
/// # Gives
/// (c_d, φ_d, H).
/// # Not for
/// Slopes flatter than about 60°, where round slips come first and Culmann is on the unsafe side.
/// # Errors
/// None here; the working refuses β ≤ φ_d.
/// # By hand
/// Reference case SL-09.
pub fn culmann<N: Number>(gamma: N, c: N, phi: N, beta: N, factor: N) -> (N, N, N) {
    let c_d = (c / factor).named("c_d", Unit::KPA);
    let phi_d = (phi.tan() / factor).atan().named("φ_d", Unit::DEG);
    let h = c_d * 4.0 / gamma * (beta.sin() * phi_d.cos() / (N::constant(1.0) - (beta - phi_d).cos()));
    (c_d, phi_d, h.named("H", Unit::M))
}

const FACE: Input = Input::new("beta", "β", "face of the slope", Unit::DEG, Limits::ours(5.0, 90.0));

/// Plane wedge.
pub static CULMANN: Working = Working {
    name: "slope/culmann",
    title: "How high may a bank with a plane slip stand, for a wanted factor?",
    source: Source {
        work: "Culmann, Die graphische Statik, 2nd ed., Zürich, 1875",
        place: "as in Das, Principles of Geotechnical Engineering, Ex. 15.2",
    },
    not_for: "faces flatter than about 60°, where round slips come first; cracks and water",
    inputs: &[
        rows::GAMMA,
        rows::COHESION,
        rows::PHI,
        FACE,
        Input::new("factor", "F", "factor wanted on strength", Unit::NONE, Limits::ours(1.0, 5.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "cd", words: "cohesion used", unit: Unit::KPA },
        Output { key: "phid", words: "friction angle used", unit: Unit::DEG },
        Output { key: "height", words: "height", unit: Unit::M },
    ],
    run: |g| {
        let (gamma, c, phi) = (g.one("gamma")?, g.one("c")?, g.one("phi")?);
        let (c_d, phi_d, h) = culmann(gamma, c, phi, g.one("beta")?, g.one("factor")?);
        if !h.value().is_finite() || g.one("beta")?.value() <= phi_d.value() {
            return Err(g.no_answer("a face no steeper than the friction angle stands at any height by this formula"));
        }
        Ok([c_d, phi_d, h].map(Found::One).into())
    },
};

/// Critical height from a stability number.
pub static TAYLOR_HEIGHT: Working = Working {
    name: "slope/taylor-critical-height",
    title: "How high may a bank stand before it slips, by Taylor's stability number?",
    source: Source {
        work: "Taylor, Stability of earth slopes, J. Boston Soc. Civ. Eng. 24, 1937",
        place: "H_c = c/(γ m), m read from the chart for the face (and φ)",
    },
    not_for: "layers, cracks, water",
    inputs: &[
        rows::GAMMA,
        Input::new("c", "c", "cohesion, or undrained strength", Unit::KPA, Limits::ours(0.01, 500.0)),
        Input::new("m", "m", "stability number from the chart", Unit::NONE, Limits::ours(0.001, 0.3)),
    ],
    outputs: &[Output { key: "height", words: "critical height", unit: Unit::M }],
    run: |g| {
        let h = (g.one("c")? / (g.one("gamma")? * g.one("m")?)).named("H_c", Unit::M);
        Ok(vec![Found::One(h)])
    },
};

/// The circle through the toe that goes with it.
pub static TOE_CIRCLE: Working = Working {
    name: "slope/toe-circle",
    title: "Where does the critical circle through the toe come out on top, and what is its radius?",
    source: Source {
        work: "Taylor, Stability of earth slopes, J. Boston Soc. Civ. Eng. 24, 1937",
        place: "angles α and θ from the chart; geometry as in Das, Principles of Geotechnical Engineering, Ex. 15.3",
    },
    not_for: "circles below the toe",
    inputs: &[
        rows::HEIGHT,
        FACE,
        Input::new("alpha", "α", "chord of the circle above horizontal", Unit::DEG, Limits::ours(1.0, 89.0)),
        Input::new("theta", "θ", "angle of the arc at the centre", Unit::DEG, Limits::ours(1.0, 179.0)),
    ],
    outputs: &[
        Output { key: "radius", words: "radius", unit: Unit::M },
        Output { key: "behind", words: "distance of its upper end behind the crest", unit: Unit::M },
    ],
    run: |g| {
        let (h, beta) = (g.one("height")?, g.one("beta")?);
        let (alpha, theta) = (g.one("alpha")?, g.one("theta")?);
        let r = (h / (alpha.sin() * (theta / 2.0).sin() * 2.0)).named("R", Unit::M);
        let one = groundhold_working::Shown::constant(1.0);
        let behind = (h * (one / alpha.tan() - one / beta.tan())).named("x", Unit::M);
        Ok([r, behind].map(Found::One).into())
    },
};

/// Bishop and Morgenstern's coefficients.
pub static BISHOP_MORGENSTERN: Working = Working {
    name: "slope/bishop-morgenstern",
    title: "What is the factor of safety from the coefficients of a chart?",
    source: Source {
        work: "Bishop and Morgenstern, Stability coefficients for earth slopes, Géotechnique 10(4), 1960",
        place: "F = m − n r_u",
    },
    not_for: "layers; pore pressure that is no steady share of the weight above",
    inputs: &[
        Input::new("m", "m", "coefficient m from the chart", Unit::NONE, Limits::ours(0.0, 10.0)),
        Input::new("n", "n", "coefficient n from the chart", Unit::NONE, Limits::ours(0.0, 10.0)),
        Input::new("ru", "r_u", "pore pressure as a share of the weight above", Unit::NONE, Limits::author(0.0, 0.7)),
    ],
    outputs: &[Output { key: "factor", words: "factor of safety", unit: Unit::NONE }],
    run: |g| Ok(vec![Found::One((g.one("m")? - g.one("n")? * g.one("ru")?).named("F", Unit::NONE))]),
};
