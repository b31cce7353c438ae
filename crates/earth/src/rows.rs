//! What are the inputs called that most formulas of this crate share?

use groundhold_working::{Input, Limits, Unit};

pub(crate) const HEIGHT: Input =
    Input::new("height", "H", "height over which the soil pushes", Unit::M, Limits::ours(0.01, 30.0));
pub(crate) const GAMMA: Input =
    Input::new("gamma", "γ", "unit weight of the soil", Unit::KN_M3, Limits::ours(5.0, 30.0));
pub(crate) const GAMMA_SAT: Input =
    Input::new("gamma_sat", "γ_sat", "saturated unit weight", Unit::KN_M3, Limits::ours(9.9, 30.0));
pub(crate) const PHI: Input = Input::new("phi", "φ", "effective friction angle", Unit::DEG, Limits::ours(0.0, 50.0));
pub(crate) const COHESION: Input = Input::new("c", "c", "cohesion", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0);
pub(crate) const DELTA: Input =
    Input::new("delta", "δ", "friction angle between soil and wall", Unit::DEG, Limits::ours(0.0, 50.0)).or(0.0);
pub(crate) const SLOPE: Input =
    Input::new("alpha", "β", "slope of the ground, rising away from the wall", Unit::DEG, Limits::ours(-45.0, 45.0))
        .or(0.0);
pub(crate) const THETA: Input = Input::new(
    "theta",
    "θ",
    "back face from vertical, positive when the soil rests on the wall",
    Unit::DEG,
    Limits::ours(-30.0, 40.0),
)
.or(0.0);
pub(crate) const SURCHARGE: Input =
    Input::new("q", "q", "load on the ground", Unit::KPA, Limits::ours(0.0, 500.0)).or(0.0);
pub(crate) const GAMMA_WATER: Input =
    Input::new("gamma_w", "γ_w", "unit weight of water", Unit::KN_M3, Limits::ours(9.0, 11.0)).or(9.81);

/// An angle exactly as a sheet sees it: through degrees, so that the fast path and the sheet have the same bits.
pub(crate) fn radians(angle: groundhold_quantity::Angle) -> f64 {
    angle.to_deg().to_radians()
}

/// Refuses values outside the limits of a working's rows, before the fast path runs.
pub(crate) fn check(
    working: &'static groundhold_working::Working,
    given: &[groundhold_working::Value],
) -> groundhold_working::Result<()> {
    use groundhold_working::{Value, check_range};
    working.inputs.iter().zip(given).try_for_each(|(row, value)| match value {
        Value::One(v) => check_range(working.name, row, *v),
        Value::Many(vs) => vs.iter().try_for_each(|v| check_range(working.name, row, *v)),
        Value::Word(_) => Ok(()),
    })
}

/// Nothing, where a value is negative only through rounding or by a cut-off that the text around it explains.
pub(crate) fn not_below_zero<N: groundhold_working::Number>(value: N) -> N {
    if value.value() < 0.0 { N::constant(0.0) } else { value }
}
