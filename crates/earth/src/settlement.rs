//! How much does a base sink and tilt, at once and over the years?

use groundhold_quantity::{Length, Pressure};
use groundhold_working::{
    Found, Given, Input, Limits, Number, Output, Refused, Result, Shown, Source, Trace, Unit, Working,
};

use crate::rows;

/// Steinbrenner's shape functions for the corner of a rectangle on a layer.
///
/// # Source
/// Steinbrenner, "Tafeln zur Setzungsberechnung", Die Straße 1 (1934); as in Das, Principles of Foundation Engineering, 5th
/// ed., eq. 5.25 to 5.32 (places from memory; F₁, F₂ of Ex. 5.4 seen).
/// # Symbols
/// | m, n | length over width, thickness of the layer over width, of the quarter | – | |
/// # Gives
/// (F₁, F₂).
/// # Not for
/// A layer that stiffens with depth.
/// # Errors
/// None here.
/// # By hand
/// m = 2, n = 10: F₁ = 0.641, F₂ = 0.031 (reference case SE-01).
pub fn steinbrenner<N: Number>(m: N, n: N) -> (N, N) {
    let one = N::constant(1.0);
    let (m2, n2) = (m.squared(), n.squared());
    let root = (m2 + n2 + 1.0).sqrt();
    let a0 = m * ((one + (m2 + 1.0).sqrt()) * (m2 + n2).sqrt() / (m * (one + root))).ln();
    let a1 = ((m + (m2 + 1.0).sqrt()) * (n2 + 1.0).sqrt() / (m + root)).ln();
    let f1 = ((a0 + a1) / std::f64::consts::PI).named("F_1", Unit::NONE);
    let f2 = (n / (2.0 * std::f64::consts::PI) * (m / (n * root)).atan()).named("F_2", Unit::NONE);
    (f1, f2)
}

/// Elastic settlement under the middle of a flexible rectangle on a layer.
///
/// # Source
/// As [`steinbrenner`]: S = q α B′ (1 − ν²)/E · I_s I_f with α = 4, B′ = B/2, I_s = F₁ + (1 − 2ν)/(1 − ν) F₂. (Editions of
/// Das that print (2 − ν) there come out larger.) A rigid base sinks 0.93 of it (Das, as above).
/// # Symbols
/// | q, B, L, H | pressure, size, thickness of the layer below | kPa, m | |
/// | E, ν, I_f | stiffness, Poisson's ratio, factor of depth | kPa, – | I_f ≤ 1 |
/// # Gives
/// (middle of a flexible base, rigid base) in m.
/// # Not for
/// Clay that consolidates afterwards: add it.
/// # Errors
/// None here.
/// # By hand
/// Reference case SE-02.
pub fn elastic<N: Number>(q: N, width: N, length: N, layer: N, stiffness: N, poisson: N, embedded: N) -> (N, N) {
    let half = width / 2.0;
    let (f1, f2) = steinbrenner(length / width, layer / half);
    let one = N::constant(1.0);
    let i_s = (f1 + (one - poisson * 2.0) / (one - poisson) * f2).named("I_s", Unit::NONE);
    let s = q * half * 4.0 * (one - poisson.squared()) / stiffness * i_s * embedded;
    let s = s.named("S_e", Unit::M);
    (s, (s * 0.93).named("S_r", Unit::M))
}

const PRESSURE: Input = Input::new("q", "q", "pressure under the base", Unit::KPA, Limits::ours(0.0, 5000.0));
const WIDTH: Input = Input::new("width", "B", "width", Unit::M, Limits::ours(0.05, 100.0));
const LENGTH: Input = Input::new("length", "L", "length, not under the width", Unit::M, Limits::ours(0.05, 1e6));
const STIFFNESS: Input = Input::new("stiffness", "E", "stiffness of the ground", Unit::KPA, Limits::ours(100.0, 1e7));
const POISSON: Input = Input::new("poisson", "ν", "Poisson's ratio", Unit::NONE, Limits::ours(0.0, 0.499)).or(0.3);

/// Elastic settlement.
pub static ELASTIC: Working = Working {
    name: "settlement/elastic",
    title: "How much does a base sink at once on a layer of even stiffness?",
    source: Source {
        work: "Steinbrenner, Tafeln zur Setzungsberechnung, Die Straße 1, 1934",
        place: "as in Das, Principles of Foundation Engineering, 5th ed., 5.6; rigid base 0.93 of the middle",
    },
    not_for: "clay that consolidates afterwards; stiffness that grows with depth (Schmertmann)",
    inputs: &[
        PRESSURE,
        WIDTH,
        LENGTH,
        Input::new("layer", "H", "thickness of the layer under the base", Unit::M, Limits::ours(0.01, 1000.0)),
        STIFFNESS,
        POISSON,
        Input::new("embedded", "I_f", "factor of depth, 1 at the surface", Unit::NONE, Limits::ours(0.4, 1.0)).or(1.0),
    ],
    outputs: &[
        Output { key: "middle", words: "middle of a flexible base", unit: Unit::M },
        Output { key: "rigid", words: "rigid base", unit: Unit::M },
        Output { key: "f1", words: "F₁", unit: Unit::NONE },
        Output { key: "f2", words: "F₂", unit: Unit::NONE },
    ],
    run: |g| {
        let (b, l, layer) = (g.one("width")?, g.one("length")?, g.one("layer")?);
        if l.value() < b.value() {
            return Err(g.no_answer("the length is under the width; swap them"));
        }
        let (middle, rigid) =
            elastic(g.one("q")?, b, l, layer, g.one("stiffness")?, g.one("poisson")?, g.one("embedded")?);
        let (m, n) = ((l / b).value(), (layer / (b / 2.0)).value());
        let (f1, f2) = steinbrenner(m, n);
        let put = |symbol, v: f64| g.sheet().put(symbol, v, Unit::NONE);
        Ok([middle, rigid, put("F_1", f1), put("F_2", f2)].map(Found::One).into())
    },
};

/// How strain is spread below a base: (share of the width, influence), straight between.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Influence {
    top: f64,
    peak_at: f64,
    peak: f64,
    end: f64,
}

/// Between a square (L/B = 1) and a strip (L/B ≥ 10), straight in L/B.
fn influence(length_over_width: f64, peak: f64) -> Influence {
    let t = ((length_over_width - 1.0) / 9.0).clamp(0.0, 1.0);
    Influence { top: 0.1 + 0.1 * t, peak_at: 0.5 + 0.5 * t, peak, end: 2.0 + 2.0 * t }
}

impl Influence {
    fn at(&self, depth_over_width: f64) -> f64 {
        let z = depth_over_width;
        if z < self.peak_at {
            self.top + (self.peak - self.top) * z / self.peak_at
        } else {
            (self.peak * (self.end - z) / (self.end - self.peak_at)).max(0.0)
        }
    }
}

/// Settlement of a base on sand from the sum over its layers.
///
/// # Source
/// Schmertmann, "Static cone to compute static settlement over sand", J. Soil Mech. Found. Div. ASCE 96(SM3) (1970);
/// Schmertmann, Hartman and Brown, J. Geotech. Eng. Div. ASCE 104(GT8) (1978); as in Das, Principles of Foundation
/// Engineering, 5th ed., Ex. 5.6.
/// # Symbols
/// | q, q₀ | pressure under the base, weight that lay there before | kPa | q > q₀ |
/// | S | Σ I_z Δz/E over the layers | m/kPa | |
/// | t | time | years | ≥ 0.1 |
/// # Gives
/// C₁ C₂ (q − q₀) S with C₁ = 1 − 0.5 q₀/(q − q₀) ≥ 0.5 and C₂ = 1 + 0.2 log₁₀(t/0.1).
/// # Not for
/// Clay; sand that was once loaded more, which sinks less.
/// # Errors
/// None here.
/// # By hand
/// q = 25, q₀ = 3.06 psi, t = 10 years, S = 0.0890 in/psi: 0.930 · 1.4 · 21.94 · 0.0890 = 2.54 in (reference case SE-03).
pub fn schmertmann<N: Number>(q: N, before: N, sum: N, years: N) -> N {
    let net = (q - before).named("Δq", Unit::KPA);
    let c1 = (N::constant(1.0) - before / net * 0.5).max(N::constant(0.5)).named("C_1", Unit::NONE);
    let c2 = ((years / 0.1).ln() / std::f64::consts::LN_10 * 0.2 + 1.0).named("C_2", Unit::NONE);
    (c1 * c2 * net * sum).named("S", Unit::M)
}

/// A layer of sand under a base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bed {
    /// How thick it is.
    pub thickness: Length,
    /// Its stiffness.
    pub stiffness: Pressure,
}

/// Settlement of a base on beds of sand, by the diagram of 1970 and 1978 with a peak of 0.5 + 0.1 √(Δq/σ′_p) where the
/// stress at the peak is given, else 0.5.
///
/// # Errors
/// A pressure not above what lay there before, no beds, or a value outside the working's limits.
pub fn on_sand(
    q: Pressure,
    before: Pressure,
    width: Length,
    length: Length,
    beds: &[Bed],
    years: f64,
) -> Result<(Length, Trace)> {
    let given = vec![
        q.to_kpa().into(),
        before.to_kpa().into(),
        width.to_m().into(),
        length.to_m().into(),
        beds.iter().map(|b| b.thickness.to_m()).collect::<Vec<_>>().into(),
        beds.iter().map(|b| b.stiffness.to_kpa()).collect::<Vec<_>>().into(),
        years.into(),
        0.0.into(),
    ];
    rows::check(&SCHMERTMANN, &given)?;
    let no = |why: &str| Refused::NoAnswer { working: SCHMERTMANN.name, why: why.into() };
    if q <= before {
        return Err(no(NO_MORE));
    }
    let thick: Vec<f64> = beds.iter().map(|b| b.thickness.to_m()).collect();
    let stiff: Vec<f64> = beds.iter().map(|b| b.stiffness.to_kpa()).collect();
    let shape = influence((length / width).max(1.0), 0.5);
    let sum = strain_sum(&shape, width.to_m(), &thick, &stiff).ok_or_else(|| no(NO_BEDS))?;
    let s = schmertmann(q.to_kpa(), before.to_kpa(), sum, years);
    Ok((Length::m(s), Trace::new(&SCHMERTMANN, given)))
}

const NO_MORE: &str =
    "the pressure under the base is not above the weight that lay there before; it does not sink by this";
const NO_BEDS: &str = "`thickness` and `stiffness` should have the same number of values, one per layer";

/// Σ I_z Δz/E: the influence is straight in pieces, so each layer is cut at the peak and at the end and met exactly.
fn strain_sum(shape: &Influence, width: f64, thickness: &[f64], stiffness: &[f64]) -> Option<f64> {
    if thickness.is_empty() || thickness.len() != stiffness.len() {
        return None;
    }
    let (mut top, mut sum) = (0.0, 0.0);
    for (t, e) in thickness.iter().zip(stiffness) {
        let bottom = top + t;
        let mut stops = vec![top];
        stops.extend([shape.peak_at * width, shape.end * width].iter().filter(|z| top < **z && **z < bottom));
        stops.push(bottom);
        let area: f64 =
            stops.windows(2).map(|w| 0.5 * (shape.at(w[0] / width) + shape.at(w[1] / width)) * (w[1] - w[0])).sum();
        sum += area / e;
        top = bottom;
    }
    Some(sum)
}

/// Settlement on sand.
pub static SCHMERTMANN: Working = Working {
    name: "settlement/schmertmann",
    title: "How much does a base sink on beds of sand?",
    source: Source {
        work: "Schmertmann, J. Soil Mech. Found. Div. ASCE 96(SM3), 1970; Schmertmann, Hartman and Brown, J. Geotech. Eng. Div. ASCE 104(GT8), 1978",
        place: "as in Das, Principles of Foundation Engineering, 5th ed., Ex. 5.6; between square and strip straight in L/B",
    },
    not_for: "clay",
    inputs: &[
        PRESSURE,
        Input::new("before", "q_0", "weight that lay at the underside before", Unit::KPA, Limits::ours(0.0, 1000.0))
            .or(0.0),
        WIDTH,
        LENGTH,
        Input::new(
            "thickness",
            "Δz",
            "thickness of each layer, from the underside down",
            Unit::M,
            Limits::ours(0.001, 1000.0),
        ),
        Input::new("stiffness", "E", "stiffness of each layer", Unit::KPA, Limits::ours(100.0, 1e7)),
        Input::new("years", "t", "time in years", Unit::NONE, Limits::ours(0.1, 100.0)).or(0.1),
        Input::new(
            "peak_stress",
            "σ_p",
            "effective stress at the peak of the influence, 0 for the diagram of 1970",
            Unit::KPA,
            Limits::ours(0.0, 1000.0),
        )
        .or(0.0),
    ],
    outputs: &[
        Output { key: "settlement", words: "settlement", unit: Unit::M },
        Output {
            key: "sum",
            words: "sum of influence times thickness over stiffness, times a thousand",
            unit: Unit::NONE,
        },
    ],
    run: run_schmertmann,
};

fn run_schmertmann<'s>(g: &Given<'s>) -> Result<Vec<Found<'s>>> {
    let (q, before, width, length) = (g.one("q")?, g.one("before")?, g.one("width")?, g.one("length")?);
    if q.value() <= before.value() {
        return Err(g.no_answer(NO_MORE));
    }
    if length.value() < width.value() {
        return Err(g.no_answer("the length is under the width; swap them"));
    }
    let list = |key: &str| -> Result<Vec<f64>> { Ok(g.many(key)?.iter().map(|v| v.value()).collect()) };
    let peak_stress = g.one("peak_stress")?.value();
    let peak = if peak_stress > 0.0 { 0.5 + 0.1 * ((q.value() - before.value()) / peak_stress).sqrt() } else { 0.5 };
    let shape = influence((length / width).value(), peak);
    let sum = strain_sum(&shape, width.value(), &list("thickness")?, &list("stiffness")?);
    let sum = sum.ok_or_else(|| g.no_answer(NO_BEDS))?;
    g.sheet().remark(format!(
        "I_z from {} at the underside to {} at {} B, to nothing at {} B; S is the sum of I_z Δz/E",
        shape.top, shape.peak, shape.peak_at, shape.end
    ));
    let shown = g.sheet().put("S", sum, Unit::NONE);
    let s = schmertmann(q, before, shown, g.one("years")?);
    Ok([s, g.sheet().put("1000 S", 1000.0 * sum, Unit::NONE)].map(Found::One).into())
}

/// Settlement of a clay layer as its water goes.
///
/// # Source
/// Terzaghi, Erdbaumechanik (1925); Terzaghi and Peck, Soil Mechanics in Engineering Practice (1948): compression on the
/// logarithm of stress, flatter up to the stress it once carried. As in Das, Principles of Geotechnical Engineering, 7th
/// ed., Ex. 11.4.
/// # Symbols
/// | C_c, C_s, e₀, H | compression, swelling index, void ratio, thickness | –, m | |
/// | σ₀, Δσ, σ_c | stress in the middle now, what is added, the most it carried | kPa | σ_c ≥ σ₀ |
/// # Gives
/// Settlement in m.
/// # Not for
/// Peat, whose creep is larger than this.
/// # Errors
/// None here.
/// # By hand
/// Reference cases SE-11 to SE-13.
pub fn consolidation<N: Number>(cc: N, cs: N, e0: N, h: N, now: N, more: N, most: N) -> N {
    let ten = std::f64::consts::LN_10;
    let end = now + more;
    let per = h / (e0 + 1.0);
    let settled = if end.value() <= most.value() {
        per * cs * ((end / now).ln() / ten)
    } else if most.value() <= now.value() {
        per * cc * ((end / now).ln() / ten)
    } else {
        per * (cs * ((most / now).ln() / ten) + cc * ((end / most).ln() / ten))
    };
    settled.named("S_c", Unit::M)
}

/// Settlement of clay.
pub static CONSOLIDATION: Working = Working {
    name: "settlement/consolidation",
    title: "How much does a clay layer sink in the end under more load?",
    source: Source {
        work: "Terzaghi and Peck, Soil Mechanics in Engineering Practice, Wiley, New York, 1948",
        place: "as in Das, Principles of Geotechnical Engineering, 7th ed., Ex. 11.4",
    },
    not_for: "peat",
    inputs: &[
        Input::new("cc", "C_c", "compression index", Unit::NONE, Limits::ours(0.001, 5.0)),
        Input::new(
            "cs",
            "C_s",
            "swelling index; 0 for a sixth of the compression index",
            Unit::NONE,
            Limits::ours(0.0, 1.0),
        )
        .or(0.0),
        Input::new("e0", "e_0", "void ratio", Unit::NONE, Limits::ours(0.1, 15.0)),
        Input::new("thickness", "H", "thickness of the clay", Unit::M, Limits::ours(0.01, 100.0)),
        Input::new("now", "σ'_0", "effective stress in its middle now", Unit::KPA, Limits::ours(0.1, 5000.0)),
        Input::new("more", "Δσ", "stress added there", Unit::KPA, Limits::ours(0.0, 5000.0)),
        Input::new(
            "most",
            "σ'_c",
            "the most it ever carried; 0 for what it carries now",
            Unit::KPA,
            Limits::ours(0.0, 10_000.0),
        )
        .or(0.0),
    ],
    outputs: &[Output { key: "settlement", words: "settlement in the end", unit: Unit::M }],
    run: |g| {
        let (cc, cs, now) = (g.one("cc")?, g.one("cs")?, g.one("now")?);
        let cs = if cs.value() > 0.0 { cs } else { (cc / 6.0).named("C_s", Unit::NONE) };
        let most = g.one("most")?;
        let most = if most.value() > now.value() { most } else { now };
        let (e0, h, more) = (g.one("e0")?, g.one("thickness")?, g.one("more")?);
        Ok(vec![Found::One(consolidation(cc, cs, e0, h, now, more, most))])
    },
};

/// Share of the settlement that has come by a time factor.
///
/// # Source
/// Terzaghi, Erdbaumechanik (1925): U = 1 − Σ (2/M²) e^(−M² T) with M = (2n + 1) π/2; for small T it is 2 √(T/π).
/// # Symbols
/// | T | c_v t/H_d² | – | ≥ 0 |
/// # Gives
/// U between 0 and 1.
/// # Not for
/// Drains at the side.
/// # Errors
/// None here.
/// # By hand
/// T = 0.197: U = 0.50.
pub fn degree<N: Number>(time_factor: N) -> N {
    // Below this the series needs many terms and the root is exact to all digits.
    if time_factor.value() <= 0.005 {
        return (time_factor * (4.0 / std::f64::consts::PI)).sqrt().named("U", Unit::NONE);
    }
    let mut left = N::constant(0.0);
    for n in 0..60 {
        let m = (2 * n + 1) as f64 * std::f64::consts::FRAC_PI_2;
        let term = (-(time_factor * (m * m))).exp() * (2.0 / (m * m));
        left = left + term;
        if term.value() < 1e-12 {
            break;
        }
    }
    (N::constant(1.0) - left).named("U", Unit::NONE)
}

/// How fast clay sinks.
pub static CONSOLIDATION_TIME: Working = Working {
    name: "settlement/consolidation-time",
    title: "How much of a clay layer's settlement has come after a time?",
    source: Source {
        work: "Terzaghi, Erdbaumechanik auf bodenphysikalischer Grundlage, Deuticke, Leipzig, 1925",
        place: "one-dimensional consolidation, even pressure; as in Das, Principles of Geotechnical Engineering, 7th ed., 11.14",
    },
    not_for: "drains at the side; load that comes slowly",
    inputs: &[
        Input::new("cv", "c_v", "coefficient of consolidation in m² a year", Unit::NONE, Limits::ours(0.001, 1e4)),
        Input::new(
            "path",
            "H_d",
            "longest way of the water: half the layer with drains above and below",
            Unit::M,
            Limits::ours(0.005, 100.0),
        ),
        Input::new("years", "t", "time in years", Unit::NONE, Limits::ours(0.0, 1000.0)),
    ],
    outputs: &[
        Output { key: "time_factor", words: "time factor", unit: Unit::NONE },
        Output { key: "degree", words: "share that has come", unit: Unit::NONE },
    ],
    run: |g| {
        let t = (g.one("cv")? * g.one("years")? / g.one("path")?.squared()).named("T_v", Unit::NONE);
        Ok([t, degree(t)].map(Found::One).into())
    },
};

/// Tilt of a rigid strip base by its moment.
///
/// # Source
/// Muskhelishvili (1953), rigid strip on an elastic half-plane: tan θ = 16 (1 − ν²) M/(π E B²); as in Poulos and Davis,
/// Elastic Solutions for Soil and Rock Mechanics (1974), chapter 7 (from memory).
/// # Symbols
/// | V, e, B | load and its eccentricity, width | kN/m, m | |
/// | E, ν | stiffness, Poisson's ratio | kPa, – | |
/// # Gives
/// Slope of the base, rise over run.
/// # Not for
/// A base whose heel lifts (e > B/6): it tilts more.
/// # Errors
/// None here.
/// # By hand
/// V = 100, e = 0.2, B = 1.5, E = 20 000, ν = 0.3: 16 · 0.91 · 20/(π · 20 000 · 2.25) = 0.00206 (reference case SE-20).
pub fn tilt<N: Number>(v: N, e: N, width: N, stiffness: N, poisson: N) -> N {
    let one = N::constant(1.0);
    let moment = (v * e).named("M", Unit::KNM);
    let k = (one - poisson.squared()) * (16.0 / std::f64::consts::PI);
    (k * moment / (stiffness * width.squared())).named("θ", Unit::NONE)
}

/// Tilt of a base.
pub static TILT: Working = Working {
    name: "settlement/tilt",
    title: "How much does a strip base tilt under an eccentric load, and how far does the top of its wall lean?",
    source: Source {
        work: "Muskhelishvili, Some Basic Problems of the Mathematical Theory of Elasticity, 1953",
        place: "rigid strip; as in Poulos and Davis, Elastic Solutions for Soil and Rock Mechanics, 1974, from memory",
    },
    not_for: "a base whose heel lifts, which tilts more; tilt that grows as clay consolidates",
    inputs: &[
        Input::new("v", "V", "vertical load", Unit::KN_M, Limits::ours(0.01, 1e5)),
        Input::new("e", "e", "its eccentricity towards the toe", Unit::M, Limits::ours(-50.0, 50.0)),
        WIDTH,
        STIFFNESS,
        POISSON,
        Input::new("height", "H", "height of the wall above the underside", Unit::M, Limits::ours(0.0, 30.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "tilt", words: "slope of the base", unit: Unit::NONE },
        Output { key: "lean", words: "how far the top leans", unit: Unit::M },
        Output { key: "whole", words: "yes where the whole base presses", unit: Unit::NONE },
    ],
    run: |g| {
        let (b, e): (Shown<'_>, Shown<'_>) = (g.one("width")?, g.one("e")?);
        if e.value().abs() >= b.value() / 2.0 {
            return Err(g.no_answer("the load lies outside the base; it has turned over"));
        }
        let t = tilt(g.one("v")?, e, b, g.one("stiffness")?, g.one("poisson")?);
        let lean = (t * g.one("height")?).named("y", Unit::M);
        let whole = e.value().abs() <= b.value() / 6.0;
        Ok(vec![Found::One(t), Found::One(lean), Found::Word(if whole { "yes" } else { "no" }.into())])
    },
};

/// What a wall leans by its tilt, for typed figures.
///
/// # Errors
/// A load outside the base, or a value outside the working's limits.
pub fn lean(
    v: groundhold_quantity::LineForce,
    e: Length,
    width: Length,
    stiffness: Pressure,
    height: Length,
) -> Result<(Length, Trace)> {
    let given = [v.to_kn_per_m(), e.to_m(), width.to_m(), stiffness.to_kpa(), 0.3, height.to_m()];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&TILT, &values)?;
    if e.abs() >= width / 2.0 {
        let why = "the load lies outside the base; it has turned over".into();
        return Err(Refused::NoAnswer { working: TILT.name, why });
    }
    let t = tilt(given[0], given[1], given[2], given[3], given[4]);
    Ok((Length::m(t * given[5]), Trace::new(&TILT, values)))
}

/// Time factor at which a share of the settlement has come: the other way round than [`degree`], by halving. For schedules
/// of building on clay; a share above 99.9 % is taken as that.
pub fn time_factor_of(share: f64) -> f64 {
    let wanted = share.clamp(0.0, 0.999);
    let (mut lo, mut hi) = (0.0, 4.0);
    for _ in 0..60 {
        let middle = 0.5 * (lo + hi);
        if degree(middle) < wanted { lo = middle } else { hi = middle }
    }
    0.5 * (lo + hi)
}

/// Settlement of a rigid base on a layer of even stiffness, at once, at the surface of it.
///
/// # Errors
/// A length under the width, or a value outside the working's limits.
pub fn on_layer(
    pressure: Pressure,
    width: Length,
    length: Length,
    layer: Length,
    stiffness: Pressure,
) -> Result<(Length, Trace)> {
    let given = [pressure.to_kpa(), width.to_m(), length.to_m(), layer.to_m(), stiffness.to_kpa(), 0.3, 1.0];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&ELASTIC, &values)?;
    if length < width {
        return Err(Refused::NoAnswer {
            working: ELASTIC.name,
            why: "the length is under the width; swap them".into(),
        });
    }
    let (_, rigid) = elastic(given[0], given[1], given[2], given[3], given[4], given[5], given[6]);
    Ok((Length::m(rigid), Trace::new(&ELASTIC, values)))
}
