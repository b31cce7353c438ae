//! How much water runs off a surface in the rain?

use groundhold_quantity::{Area, Flow, RainIntensity};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working, check_range};

/// Share of the rain that runs off a surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Runoff {
    /// What the ground is covered with.
    pub surface: &'static str,
    /// Least of the published range.
    pub low: f64,
    /// Most of the published range: what the plan reckons with.
    pub high: f64,
}

/// Where the coefficients come from.
pub const RUNOFF_SOURCE: Source =
    Source { work: "FHWA HEC-22, Urban Drainage Design Manual, 3rd ed. (2009)", place: "Table 3-1" };

const fn row(surface: &'static str, low: f64, high: f64) -> Runoff {
    Runoff { surface, low, high }
}

/// Published runoff coefficients (FHWA HEC-22, Table 3-1).
pub static RUNOFF: &[Runoff] = &[
    row("business downtown", 0.7, 0.95),
    row("business neighbourhood", 0.5, 0.7),
    row("residential single family", 0.3, 0.5),
    row("residential suburban", 0.25, 0.4),
    row("lawn, sandy, flat (2 %)", 0.05, 0.1),
    row("lawn, sandy, 2 to 7 %", 0.1, 0.15),
    row("lawn, sandy, steep (over 7 %)", 0.15, 0.2),
    row("lawn, heavy soil, flat (2 %)", 0.13, 0.17),
    row("lawn, heavy soil, 2 to 7 %", 0.18, 0.22),
    row("lawn, heavy soil, steep (over 7 %)", 0.25, 0.35),
    row("asphalt", 0.7, 0.95),
    row("concrete", 0.8, 0.95),
    row("brick", 0.7, 0.85),
    row("drives and walks", 0.75, 0.85),
    row("roofs", 0.75, 0.95),
    row("parks", 0.1, 0.25),
    row("playgrounds", 0.2, 0.35),
    row("unimproved", 0.1, 0.3),
];

/// The row that holds every word of `described`; of several, the one with most runoff. `None` where no row does.
///
/// ```
/// use groundhold_drain::runoff;
/// assert_eq!(runoff("lawn heavy steep").unwrap().high, 0.35);
/// assert_eq!(runoff("lawn").unwrap().high, 0.35);
/// assert_eq!(runoff("lawn sandy flat").unwrap().high, 0.1);
/// assert!(runoff("moon").is_none() && runoff("").is_none());
/// ```
pub fn runoff(described: &str) -> Option<&'static Runoff> {
    let lower = described.to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).collect();
    if words.is_empty() {
        return None;
    }
    let fits = |r: &&Runoff| words.iter().all(|w| r.surface.contains(w));
    RUNOFF.iter().filter(fits).max_by(|a, b| a.high.total_cmp(&b.high))
}

/// Peak flow by the rational method.
///
/// # Source
/// FHWA HEC-22, 3rd ed. (2009), eq. 3-1 (Q = C·i·A/360 in mm/h and ha).
/// # Symbols
/// C runoff coefficient of each surface, A its area (m²), i rain intensity (mm/h).
/// # Gives
/// The coefficient weighted by area, and Q = Σ(C·A)·i/3600 in l/s.
/// # Not for
/// Catchments over 80 ha; springs and groundwater; rain shorter than the time the water needs to arrive.
/// # Errors
/// As many coefficients as areas are needed.
/// # By hand
/// Reference case HY-03.
pub(crate) fn rational_of<N: Number>(coefficients: &[N], areas: &[N], intensity: N) -> Option<[N; 2]> {
    if coefficients.len() != areas.len() {
        return None;
    }
    let mut pairs = coefficients.iter().zip(areas);
    let (c, a) = pairs.next()?;
    let (mut runs_off, mut area) = (*c * *a, *a);
    for (c, a) in pairs {
        runs_off = runs_off + *c * *a;
        area = area + *a;
    }
    let weighted = (runs_off / area).named("C_w", Unit::NONE);
    Some([weighted, (weighted * area * intensity / 3600.0).named("Q", Unit::L_S)])
}

/// The working of `rational_of`.
pub static RATIONAL: Working = Working {
    name: "water/rational",
    title: "What is the peak flow from a small catchment in the design rain?",
    source: Source { work: "FHWA HEC-22, Urban Drainage Design Manual, 3rd ed. (2009)", place: "eq. 3-1" },
    not_for: "catchments over 80 ha; springs and groundwater",
    inputs: &[
        Input::new("coefficients", "C", "runoff coefficient of each surface", Unit::NONE, Limits::author(0.0, 1.0)),
        Input::new("areas", "A", "area of each surface", Unit::M2, Limits::ours(1e-9, 8e5)),
        Input::new("intensity", "i", "rain intensity", Unit::MM_H, Limits::ours(0.0, 500.0)),
    ],
    outputs: &[
        Output { key: "coefficient", words: "runoff coefficient weighted by area", unit: Unit::NONE },
        Output { key: "flow", words: "peak flow", unit: Unit::L_S },
    ],
    run: |g| {
        let found = rational_of(&g.many("coefficients")?, &g.many("areas")?, g.one("intensity")?)
            .ok_or_else(|| g.no_answer("expected as many coefficients as areas"))?;
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Peak flow from one surface, with its working.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] for a coefficient, area or intensity outside the working's limits.
pub fn rational(coefficient: f64, area: Area, rain: RainIntensity) -> groundhold_working::Result<(Flow, Trace)> {
    let given = [coefficient, area.to_m2(), rain.to_mm_per_h()];
    RATIONAL.inputs.iter().zip(given).try_for_each(|(r, v)| check_range(RATIONAL.name, r, v))?;
    let flow = rational_of(&given[..1], &given[1..2], given[2]).map_or(0.0, |[_, q]| q);
    let lists = vec![vec![given[0]].into(), vec![given[1]].into(), given[2].into()];
    Ok((Flow::l_per_s(flow), Trace::new(&RATIONAL, lists)))
}
