//! Which passive coefficient do the tables after Caquot and Kérisel give, for a curved slip?

use groundhold_quantity::Angle;
use groundhold_working::{Found, Input, Limits, Number, Output, Refused, Result, Shown, Source, Trace, Unit, Working};

use super::rankine;
use crate::rows;

/// Friction angles of the rows, degrees.
const PHI: [f64; 8] = [10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0];

/// Ratios δ/φ of the columns.
const RATIO: [f64; 9] = [1.0, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.0];

/// Reduction factor on the coefficient of full wall friction: NAVFAC DM-7.02 (1986), chapter 3, Fig. 6, from memory
/// (table EP-T7 of the list of checks). The last column times the coefficient of full friction is Rankine's.
const REDUCTION: [[f64; 9]; 8] = [
    [1.0, 0.978, 0.962, 0.946, 0.929, 0.912, 0.898, 0.881, 0.864],
    [1.0, 0.961, 0.934, 0.907, 0.881, 0.854, 0.830, 0.803, 0.775],
    [1.0, 0.939, 0.901, 0.862, 0.824, 0.787, 0.752, 0.716, 0.678],
    [1.0, 0.912, 0.860, 0.808, 0.759, 0.711, 0.666, 0.620, 0.574],
    [1.0, 0.878, 0.811, 0.746, 0.686, 0.627, 0.574, 0.520, 0.467],
    [1.0, 0.836, 0.752, 0.674, 0.603, 0.536, 0.475, 0.417, 0.362],
    [1.0, 0.783, 0.682, 0.592, 0.512, 0.439, 0.375, 0.316, 0.262],
    [1.0, 0.718, 0.600, 0.500, 0.414, 0.339, 0.276, 0.221, 0.174],
];

/// Reduction factor, straight between rows and columns of the table. φ in degrees, 10 to 45; ratio 0 to 1.
fn reduction(phi_deg: f64, ratio: f64) -> f64 {
    let row = PHI.iter().skip(1).position(|p| phi_deg <= *p).unwrap_or(PHI.len() - 2);
    let column = RATIO.iter().skip(1).position(|r| ratio >= *r).unwrap_or(RATIO.len() - 2);
    let down = (phi_deg - PHI[row]) / (PHI[row + 1] - PHI[row]);
    let along = (RATIO[column] - ratio) / (RATIO[column] - RATIO[column + 1]);
    let at = |r: usize| REDUCTION[r][column] + (REDUCTION[r][column + 1] - REDUCTION[r][column]) * along;
    at(row) + (at(row + 1) - at(row)) * down
}

/// Passive coefficient, level ground, vertical wall.
///
/// # Source
/// Caquot and Kérisel, Tables for the calculation of passive pressure, active pressure and bearing capacity, Paris (1948),
/// by the reduction factors of NAVFAC DM-7.02 (1986), chapter 3, Fig. 6, from memory. The coefficient of full friction is
/// Rankine's over the factor of no friction, which gives the chart's 3.0, 6.4, 10.2, 17.6 for φ = 20°, 30°, 35°, 40°.
/// # Symbols
/// | φ, δ | friction in the soil, on the wall | angle | 10°–45° (the table), 0 ≤ δ ≤ φ |
/// # Gives
/// K_p in the direction of δ. Times cos δ it is the part square to the wall.
/// # Not for
/// Ground that slopes or a wall that leans: use the log spiral.
/// # Errors
/// None here; the working refuses δ > φ.
/// # By hand
/// φ = 30°, δ = φ/2: 3/0.467 · 0.746 = 4.79 (reference case CK-30-50).
pub fn kp<N: Number>(phi: N, factor_here: N, factor_smooth: N) -> N {
    (rankine::kp(phi) * factor_here / factor_smooth).named("K_p", Unit::NONE)
}

/// The coefficient for typed angles, with its trace.
///
/// # Errors
/// Angles outside the table or δ > φ.
pub fn passive(phi: Angle, delta: Angle) -> Result<(f64, Trace)> {
    let given = vec![phi.to_deg().into(), delta.to_deg().into()];
    rows::check(&CAQUOT, &given)?;
    if delta.to_rad() > phi.to_rad() + 1e-9 {
        return Err(Refused::NoAnswer { working: CAQUOT.name, why: ROUGH.into() });
    }
    let ratio = (delta / phi).min(1.0);
    let k = kp(rows::radians(phi), reduction(phi.to_deg(), ratio), reduction(phi.to_deg(), 0.0));
    Ok((k, Trace::new(&CAQUOT, given)))
}

const ROUGH: &str = "wall friction δ is larger than the soil's own friction angle φ; take δ = φ at most";

/// Passive coefficient from the tables.
pub static CAQUOT: Working = Working {
    name: "earth-pressure/caquot-kerisel",
    title: "Which passive coefficient do the tables for curved slips give?",
    source: Source {
        work: "from memory: Caquot and Kérisel, Tables for the calculation of passive pressure, active pressure and bearing capacity of foundations, Gauthier-Villars, Paris, 1948",
        place: "by the reduction factors of NAVFAC DM-7.02, 1986, chapter 3, Fig. 6, straight between rows",
    },
    not_for: "sloping ground, leaning walls",
    inputs: &[Input { limits: Limits::author(10.0, 45.0), ..rows::PHI }, rows::DELTA],
    outputs: &[
        Output { key: "kp", words: "passive coefficient in the direction of δ", unit: Unit::NONE },
        Output { key: "kph", words: "its part square to the wall", unit: Unit::NONE },
        Output { key: "factor", words: "reduction on full wall friction", unit: Unit::NONE },
    ],
    run: |g| {
        let (phi, delta) = (g.one("phi")?, g.one("delta")?);
        if delta.value() > phi.value() + 1e-9 {
            return Err(g.no_answer(ROUGH));
        }
        let deg = phi.value().to_degrees().clamp(10.0, 45.0);
        let ratio = (delta.value() / phi.value()).min(1.0);
        let put = |symbol, v: f64| -> Shown<'_> { g.sheet().put(symbol, v, Unit::NONE) };
        let (here, smooth) = (put("R", reduction(deg, ratio)), put("R_0", reduction(deg, 0.0)));
        let k = kp(phi, here, smooth);
        Ok([k, (k * delta.cos()).named("K_ph", Unit::NONE), here].map(Found::One).into())
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_met_on_its_rows_and_between_them() {
        assert_eq!(reduction(30.0, 0.5), 0.746);
        assert_eq!(reduction(10.0, 1.0), 1.0);
        assert_eq!(reduction(45.0, 0.0), 0.174);
        assert!((reduction(32.5, 0.5) - 0.5 * (0.746 + 0.674)).abs() < 1e-12);
        assert!((reduction(30.0, 0.85) - 0.5 * (1.0 + 0.878)).abs() < 1e-12);
    }

    #[test]
    fn a_smooth_wall_is_rankines() {
        let (k, _) = passive(Angle::deg(33.0), Angle::ZERO).unwrap();
        assert!((k - rankine::kp(33f64.to_radians())).abs() < 1e-12);
    }
}
