//! Which moments, shears and bows does a board have that runs over one or several equal bays?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

/// Most spans of one board.
pub const MOST_SPANS: usize = 20;

/// What a uniform load of 1 does to a beam over equal spans of 1, EI = 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpanFactors {
    /// Greatest moment anywhere, over w L².
    pub moment: f64,
    /// Greatest shear anywhere, over w L.
    pub shear: f64,
    /// Greatest reaction at a support, over w L.
    pub reaction: f64,
    /// Greatest bow anywhere, over w L⁴/EI.
    pub bow: f64,
}

/// Factors of a beam over `spans` equal spans with a uniform load on all of them, by Clapeyron's theorem of three moments:
/// M₍ᵢ₋₁₎ + 4 Mᵢ + M₍ᵢ₊₁₎ = −w L²/2. `spans` is held between 1 and [`MOST_SPANS`].
pub fn span_factors(spans: usize) -> SpanFactors {
    let spans = spans.clamp(1, MOST_SPANS);
    let at = support_moments(spans);
    let mut most = SpanFactors { moment: 0.0, shear: 0.0, reaction: 0.0, bow: 0.0 };
    let mut from_left = 0.0;
    for pair in at.windows(2) {
        let (left, right) = (pair[0], pair[1]);
        // Shear just right of the left support and just left of the right one.
        let start = 0.5 + right - left;
        let end = 1.0 - start;
        let in_span = left + start * start / 2.0;
        most.moment = most.moment.max(in_span.abs()).max(left.abs()).max(right.abs());
        most.shear = most.shear.max(start).max(end);
        most.reaction = most.reaction.max(from_left + start);
        most.bow = most.bow.max(greatest_bow(left, right));
        from_left = end;
    }
    most.reaction = most.reaction.max(from_left);
    most
}

/// Moments over the supports, sagging positive, ends zero; the tridiagonal system solved by elimination.
fn support_moments(spans: usize) -> Vec<f64> {
    let inner = spans - 1;
    let (mut over, mut right) = (vec![0.0; inner], vec![0.0; inner]);
    for i in 0..inner {
        let (before, known) = if i == 0 { (0.0, 0.0) } else { (over[i - 1], right[i - 1]) };
        let pivot = 4.0 - before;
        over[i] = 1.0 / pivot;
        right[i] = (-0.5 - known) / pivot;
    }
    let mut moments = vec![0.0; spans + 1];
    for i in (0..inner).rev() {
        moments[i + 1] = right[i] - over[i] * moments[i + 2];
    }
    moments
}

/// Greatest bow within a span of 1 under a load of 1, with these moments at its ends.
fn greatest_bow(left: f64, right: f64) -> f64 {
    // y'' = −M(x), M = left + (right − left) x + x(1 − x)/2, y(0) = y(1) = 0; y down positive.
    let step = right - left;
    let bent = |x: f64| -(left * x * x / 2.0 + step * x * x * x / 6.0 + x * x * x / 12.0 - x * x * x * x / 24.0);
    let tilt = -bent(1.0);
    let bow = |x: f64| tilt * x + bent(x);
    let slope = |x: f64| tilt - (left * x + step * x * x / 2.0 + x * x / 4.0 - x * x * x / 6.0);
    // Scan for sign changes of the slope, then halve; the bow is a quartic and has at most three.
    let mut most = 0.0f64;
    for k in 0..40 {
        let (mut a, mut b) = (f64::from(k) / 40.0, f64::from(k + 1) / 40.0);
        if slope(a) * slope(b) > 0.0 {
            continue;
        }
        for _ in 0..60 {
            let middle = (a + b) / 2.0;
            if slope(a) * slope(middle) <= 0.0 { b = middle } else { a = middle }
        }
        most = most.max(bow(a).abs());
    }
    most
}

given! {
    /// A board under a uniform load; kN/m, m, MPa, mm⁴.
    Spanning {
        /// Load along the board.
        load,
        /// Length of a bay, centre to centre of supports.
        span,
        /// How many bays it runs over.
        spans,
    }
}
given! {
    /// The bow of a board; kN/m, m, MPa, mm⁴.
    Bowing {
        /// Load that stays.
        permanent,
        /// Load that comes and goes.
        variable,
        /// Length of a bay.
        span,
        /// How many bays it runs over.
        spans,
        /// Modulus of elasticity.
        stiffness,
        /// Second moment of area.
        inertia,
        /// Final bow under load that stays, over its first bow.
        creep,
        /// The bow may be the span over this.
        limit,
    }
}

/// Moment, shear and reaction of a board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpanEffects<N> {
    /// Greatest moment, kNm.
    pub moment: N,
    /// Greatest shear, kN.
    pub shear: N,
    /// Greatest reaction at a support, kN.
    pub reaction: N,
}

/// Bow of a board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BowFigures<N> {
    /// At first, mm.
    pub first: N,
    /// In the end, mm.
    pub last: N,
    /// Allowed, mm.
    pub allowed: N,
    /// The end over the allowed.
    pub utilisation: N,
}

/// Greatest moment, shear and reaction of a board over equal bays under a uniform load.
///
/// # Source
/// Clapeyron's theorem of three moments (1857), e.g. Timoshenko, Strength of Materials, Part I; all bays loaded.
/// # Symbols
/// w load, L bay, k factors for the number of bays.
/// # Gives
/// M = k_M w L², V = k_V w L, R = k_R w L.
/// # Not for
/// Bays of different length; load on some bays only.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// One bay: 1/8, 1/2, 1/2. Two: 1/8, 5/8, 5/4. Three: 1/10, 6/10, 11/10.
pub fn spanning<N: Number>(i: &Spanning<N>, moment: N, shear: N, reaction: N) -> SpanEffects<N> {
    SpanEffects {
        moment: (moment * i.load * i.span.squared()).named("M", Unit::KNM),
        shear: (shear * i.load * i.span).named("V", Unit::KN),
        reaction: (reaction * i.load * i.span).named("R", Unit::KN),
    }
}

/// First and final bow of a board over equal bays, against span over a limit.
///
/// # Source
/// Clapeyron's theorem of three moments and elastic beam theory as [`spanning`]; final bow = first bow × creep factor for
/// load that stays (EN 1995-1-1 2.2.3: 1 + k_def; NDS 3.5.2: K_cr; AS 1720.1 2.4.1.2: j₂). The limit is common practice.
/// # Symbols
/// g, q loads, L bay, E stiffness, I inertia, v bow of a load of 1, c creep factor, n limit.
/// # Gives
/// Bow in mm; shear deformation is left out: about 15 (h/L)² of it with E/G = 16, 3 % where the bay is 24 thicknesses.
/// # Not for
/// Bays of different length; boards that are not held down at each post.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Reference case TI-04: 5·1.2·1200⁴/(384·11000·2 083 333) = 1.414 mm.
pub fn bowing<N: Number>(i: &Bowing<N>, factor: N) -> BowFigures<N> {
    let n = N::constant;
    // kN/m is N/mm; the span goes from m to mm.
    let span = (n(1000.0) * i.span).named("L", Unit::MM);
    let per_load = (factor * span.powf(4.0) / (i.stiffness * i.inertia)).named("v", Unit::MM2);
    let first = ((i.permanent + i.variable) * per_load).named("w₀", Unit::MM);
    let last = ((i.permanent * i.creep + i.variable) * per_load).named("w_∞", Unit::MM);
    let allowed = (span / i.limit).named("w_max", Unit::MM);
    BowFigures { first, last, allowed, utilisation: (last / allowed).named("w_∞/w_max", Unit::NONE) }
}

const BEAMS: Source = Source {
    work: "Clapeyron's theorem of three moments (1857), e.g. Timoshenko, Strength of Materials, Part I",
    place: "continuous beams, uniform load on all spans",
};
const LOAD: Input = Input::new("load", "q", "load along the board", Unit::KN_M, Limits::ours(0.0, 1000.0));
const SPAN: Input = Input::new("span", "ℓ", "bay, centre to centre of posts", Unit::M, Limits::ours(0.05, 10.0));
const SPANS: Input =
    Input::new("spans", "n", "bays that one board runs over", Unit::NONE, Limits::ours(1.0, MOST_SPANS as f64)).or(1.0);

/// Working of [`spanning`].
pub static SPANS_EFFECTS: Working = Working {
    name: "timber/board-effects",
    title: "Moment, shear and reaction of a board over equal bays under a uniform load.",
    source: BEAMS,
    not_for: "bays of different length; load on some bays only",
    inputs: &[LOAD, SPAN, SPANS],
    outputs: &[
        Output { key: "moment", words: "greatest moment", unit: Unit::KNM },
        Output { key: "shear", words: "greatest shear", unit: Unit::KN },
        Output { key: "reaction", words: "greatest reaction at a post", unit: Unit::KN },
    ],
    run: |g| {
        let i = Spanning::put(g)?;
        let k = span_factors(whole(i.spans.value()));
        let s = g.sheet();
        s.remark("Factors from the theorem of three moments:");
        let put = |symbol, v| s.put(symbol, v, Unit::NONE).named(symbol, Unit::NONE);
        let f = spanning(&i, put("k_M", k.moment), put("k_V", k.shear), put("k_R", k.reaction));
        Ok(vec![Found::One(f.moment), Found::One(f.shear), Found::One(f.reaction)])
    },
};

/// Working of [`bowing`].
pub static BOARD_BOW: Working = Working {
    name: "timber/board-bow",
    title: "Bow of a board over equal bays, at first and in the end.",
    source: Source {
        work: "Elastic beam theory; creep by EN 1995-1-1:2004 2.2.3, NDS 2018 3.5.2 or AS 1720.1-2010 2.4.1.2",
        place: "limit of the bow: common practice, no source",
    },
    not_for: "bays of different length; boards not held at each post",
    inputs: &[
        Input::new("permanent", "g", "load that stays", Unit::KN_M, Limits::ours(0.0, 1000.0)),
        Input::new("variable", "q", "load that comes and goes", Unit::KN_M, Limits::ours(0.0, 1000.0)).or(0.0),
        SPAN,
        SPANS,
        Input::new("stiffness", "E", "modulus of elasticity", Unit::MPA, Limits::ours(500.0, 30_000.0)),
        Input::new("inertia", "I", "second moment of area", Unit::MM4, Limits::ours(1.0, 1e12)),
        Input::new("creep", "c", "final over first bow under load that stays", Unit::NONE, Limits::ours(1.0, 5.0))
            .or(1.0),
        Input::new("limit", "n", "bow allowed is the bay over this", Unit::NONE, Limits::ours(20.0, 1000.0)).or(150.0),
    ],
    outputs: &[
        Output { key: "first", words: "first bow", unit: Unit::MM },
        Output { key: "last", words: "final bow", unit: Unit::MM },
        Output { key: "allowed", words: "allowed bow", unit: Unit::MM },
        Output { key: "utilisation", words: "final over allowed bow", unit: Unit::NONE },
    ],
    run: |g| {
        let i = Bowing::put(g)?;
        let k = span_factors(whole(i.spans.value()));
        let factor = g.sheet().put("k_w", k.bow, Unit::NONE).named("k_w", Unit::NONE);
        let f = bowing(&i, factor);
        Ok([f.first, f.last, f.allowed, f.utilisation].into_iter().map(Found::One).collect())
    },
};

/// A number of bays as it is used: rounded to the nearest whole one.
pub(super) fn whole(spans: f64) -> usize {
    // In range by the row of the working; a negative or undefined value becomes 0, which counts as 1.
    spans.round() as usize
}

#[cfg(test)]
mod tests {
    use super::span_factors;

    /// Classical tables of continuous beams, e.g. AISC Manual of Steel Construction, Table 3-23, cases 1, 29, 36, 42.
    #[test]
    fn the_factors_are_those_of_the_classical_tables() {
        let near = |a: f64, b: f64, by: f64| assert!((a - b).abs() <= by, "{a} {b}");
        for (n, m, v, r, w) in [
            (1, 0.125, 0.5, 0.5, 5.0 / 384.0),
            (2, 0.125, 0.625, 1.25, 1.0 / 184.6),
            (3, 0.100, 0.600, 1.10, 0.0069),
            (4, 0.1071, 0.607, 1.143, 0.0065),
        ] {
            let k = span_factors(n);
            near(k.moment, m, 5e-5);
            near(k.shear, v, 2e-4);
            near(k.reaction, r, 2e-4);
            near(k.bow, w, 5e-5);
        }
    }

    #[test]
    fn a_longer_board_bows_less_than_one_over_a_single_bay_and_never_as_little_as_a_fixed_one() {
        for n in 2..=20 {
            let k = span_factors(n).bow;
            assert!(1.0 / 384.0 < k && k < 5.0 / 384.0, "{n} {k}");
        }
    }

    #[test]
    fn no_span_counts_as_one() {
        assert_eq!(span_factors(0), span_factors(1));
    }
}
