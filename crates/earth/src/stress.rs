//! How much of a load on the ground is felt at a depth?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Vertical stress under a corner of a loaded rectangle, as a share of the load.
///
/// # Source
/// Boussinesq (1885), integrated by Newmark, "Simplified computation of vertical pressures in elastic foundations", Univ. of
/// Illinois Eng. Exp. Station Circular 24 (1935); as in Das, Principles of Foundation Engineering, 5th ed., Table 5.2.
/// # Symbols
/// | b, l, z | sides of the rectangle, depth | m | z > 0 |
/// # Gives
/// I = (1/2π)[atan(bl/(z R)) + blz/R (1/(b² + z²) + 1/(l² + z²))] with R = √(b² + l² + z²).
/// # Not for
/// Layers of very different stiffness.
/// # Errors
/// None here.
/// # By hand
/// b = 2.5, l = 5, z = 12.5 ft: 0.0328 (reference case BO-01).
pub fn corner<N: Number>(b: N, l: N, z: N) -> N {
    let r = (b.squared() + l.squared() + z.squared()).sqrt();
    let ends = N::constant(1.0) / (b.squared() + z.squared()) + N::constant(1.0) / (l.squared() + z.squared());
    let i = ((b * l / (z * r)).atan() + b * l * z / r * ends) / (2.0 * std::f64::consts::PI);
    i.named("I", Unit::NONE)
}

/// Vertical stress under the middle of a strip, as a share of the load.
///
/// # Source
/// Boussinesq's line load integrated: q/π (θ + sin θ) with tan(θ/2) = b/z; as in Das, Principles of Geotechnical
/// Engineering, 7th ed., 10.5 (place from memory).
/// # Symbols
/// | b, z | half the width, depth | m | z > 0 |
/// # Gives
/// A share between 0 and 1.
/// # Not for
/// Edges of the strip.
/// # Errors
/// None here.
/// # By hand
/// z = 2b: θ = 53.13°: 0.550.
pub fn under_strip<N: Number>(half: N, z: N) -> N {
    let theta = (half / z).atan() * 2.0;
    ((theta + theta.sin()) / std::f64::consts::PI).named("I", Unit::NONE)
}

/// Stress under a rectangle.
pub static UNDER_RECTANGLE: Working = Working {
    name: "stress/under-rectangle",
    title: "How much of a load on a rectangle is felt below its corner and its middle?",
    source: Source {
        work: "Newmark, Simplified computation of vertical pressures in elastic foundations, Univ. of Illinois Eng. Exp. Station Circular 24, 1935",
        place: "as in Das, Principles of Foundation Engineering, 5th ed., Table 5.2; spread 2:1: common practice, no source",
    },
    not_for: "layers of very different stiffness",
    inputs: &[
        Input::new("q", "q", "load", Unit::KPA, Limits::ours(0.0, 5000.0)),
        Input::new("width", "B", "width", Unit::M, Limits::ours(0.01, 1000.0)),
        Input::new("length", "L", "length", Unit::M, Limits::ours(0.01, 10_000.0)),
        Input::new("z", "z", "depth below it", Unit::M, Limits::ours(0.001, 1000.0)),
    ],
    outputs: &[
        Output { key: "corner", words: "stress below its corner", unit: Unit::KPA },
        Output { key: "middle", words: "stress below its middle", unit: Unit::KPA },
        Output { key: "spread", words: "mean stress when it spreads 2 down to 1 out", unit: Unit::KPA },
    ],
    run: |g| {
        let (q, b, l, z) = (g.one("q")?, g.one("width")?, g.one("length")?, g.one("z")?);
        let at_corner = (q * corner(b, l, z)).named("σ_c", Unit::KPA);
        let middle = (q * corner(b / 2.0, l / 2.0, z) * 4.0).named("σ_m", Unit::KPA);
        let spread = (q * b * l / ((b + z) * (l + z))).named("σ_s", Unit::KPA);
        Ok([at_corner, middle, spread].map(Found::One).into())
    },
};
