//! How hard does wind push a fence that stands on the wall?

use groundhold_quantity::{Length, LineForce, Pressure, Share};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use crate::rows;

/// Wind on a fence per metre run.
#[derive(Debug, Clone, PartialEq)]
pub struct Gust {
    /// Horizontal force, either way.
    pub force: LineForce,
    /// Its height above the level asked for.
    pub arm: Length,
    /// How it was worked out.
    pub trace: Trace,
}

/// Force of a net wind pressure on a fence, at mid-height of the fence.
///
/// # Source
/// Force = pressure times area. The pressure itself (with its shape factor) comes from a wind code or the region's data.
/// # Symbols
/// | w, s, h_f, h_0 | net pressure, solid share, height of the fence, height of its foot | kPa, –, m, m | |
/// # Gives
/// (force kN/m, arm m above the level from which h_0 is counted).
/// # Not for
/// Hedges and net that tear: their share changes with the wind.
/// # Errors
/// None here.
/// # By hand
/// 0.6 kPa on 1.8 m: 1.08 kN/m at 0.9 m above its foot (case WI-01).
pub fn wind_force<N: Number>(w: N, solidity: N, height: N, foot: N) -> (N, N) {
    ((w * solidity * height).named("F_w", Unit::KN_M), (foot + height / 2.0).named("a_w", Unit::M))
}

/// Wind on a fence whose foot is `foot` above the level that moments are taken about.
///
/// # Errors
/// A value outside the working's limits.
pub fn on_fence(pressure: Pressure, solidity: Share, height: Length, foot: Length) -> Result<Gust> {
    let given = [pressure.to_kpa(), solidity.to_fraction(), height.to_m(), foot.to_m()];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&WIND_ON_FENCE, &values)?;
    let (force, arm) = wind_force(given[0], given[1], given[2], given[3]);
    Ok(Gust { force: LineForce::kn_per_m(force), arm: Length::m(arm), trace: Trace::new(&WIND_ON_FENCE, values) })
}

/// Wind on a fence.
pub static WIND_ON_FENCE: Working = Working {
    name: "load/wind-on-fence",
    title: "How hard does wind push a fence on top of the wall, and how high?",
    source: Source { work: "force = pressure × area; the pressure is put in with its own source", place: "mechanics" },
    not_for: "finding the wind pressure itself",
    inputs: &[
        Input::new("w", "w", "net wind pressure on a solid face", Unit::KPA, Limits::ours(0.0, 5.0)),
        Input::new("solidity", "s", "share of the face that is solid", Unit::NONE, Limits::ours(0.0, 1.0)).or(1.0),
        Input::new("height", "h_f", "height of the fence", Unit::M, Limits::ours(0.0, 10.0)),
        Input::new("foot", "h_0", "height of its foot above the level of reference", Unit::M, Limits::ours(0.0, 30.0))
            .or(0.0),
    ],
    outputs: &[
        Output { key: "force", words: "force", unit: Unit::KN_M },
        Output { key: "arm", words: "its height above the level of reference", unit: Unit::M },
    ],
    run: |g| {
        let (f, a) = wind_force(g.one("w")?, g.one("solidity")?, g.one("height")?, g.one("foot")?);
        Ok([f, a].map(Found::One).into())
    },
};
