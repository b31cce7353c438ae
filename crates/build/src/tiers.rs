//! How far apart must two walls stand to count as two?

use groundhold_quantity::Length;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

/// Distance over the one from which two walls are taken as independent.
///
/// # Source
/// Common practice: twice the lower wall's height.
/// # Symbols
/// | H | retained height of the lower wall | > 0 | · | s | clear distance in plan | ≥ 0 |
/// # Gives
/// The distance wanted, 2H, and how often it fits into the one at hand; above 1 they act together.
/// # Not for
/// Soft ground, water, or a slope between the walls: the whole bank is then checked for slip.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case BU-03: 2 · 0.90 = 1.80 m, and 1.80/1.00 = 1.8.
fn spacing<N: Number>(lower: N, distance: N) -> (N, N) {
    let wanted = (lower * 2.0).named("s_w", Unit::M);
    (wanted, (wanted / distance).named("u", Unit::NONE))
}

/// `build/tier-spacing`: whether two walls act together.
pub static TIER_SPACING: Working = Working {
    name: "build/tier-spacing",
    title: "Distance from which two walls, one above the other, are taken as independent.",
    source: Source { work: "common practice, no source", place: "twice the height of the lower wall" },
    not_for: "Soft ground, water or a slope between the walls: check the whole bank for slip.",
    inputs: &[
        Input::new("lower", "H", "retained height of the lower wall", Unit::M, Limits::ours(0.0, 1000.0)),
        Input::new("distance", "s", "clear distance of the walls in plan", Unit::M, Limits::ours(0.001, 1000.0)),
    ],
    outputs: &[
        Output { key: "wanted", words: "distance wanted", unit: Unit::M },
        Output { key: "utilisation", words: "wanted over given; above 1 they act together", unit: Unit::NONE },
    ],
    run: |g| {
        let (wanted, u) = spacing(g.one("lower")?, g.one("distance")?);
        Ok(vec![Found::One(wanted), Found::One(u)])
    },
};

/// Distance wanted, utilisation and its trace. A distance below 1 mm counts as 1 mm.
pub(crate) fn tier_spacing(lower: Length, distance: Length) -> (Length, f64, Trace) {
    let least = distance.max(Length::mm(1.0));
    let (wanted, u) = spacing(lower.to_m(), least.to_m());
    (Length::m(wanted), u, Trace::new(&TIER_SPACING, vec![lower.to_m().into(), least.to_m().into()]))
}
