//! From areas of cross-sections to a volume: end areas and prismoids.

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

const AREA: Limits = Limits::ours(0.0, 1e6);

/// Volumes from a row of equally spaced sections: by average end areas and, where their number is odd, by the
/// prismoidal rule.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 8 (trapezoidal and prismoidal rules).
/// # Symbols
/// A_i areas (m²), D spacing (m).
/// # Gives
/// V_t = D·((A_1+A_n)/2 + ΣA_i) and V_p = D/3·(A_1 + 4ΣA_even + 2ΣA_odd + A_n), m³. With an even number of sections the
/// last interval of V_p is taken by end areas.
/// # Not for
/// Unequal spacing; end areas overstate a solid that tapers to a point by half.
/// # Errors
/// Fewer than two sections.
/// # By hand
/// Reference case EW-01.
pub(crate) fn end_areas<N: Number>(areas: &[N], spacing: N) -> Option<[N; 2]> {
    let (first, last) = (areas.first()?, areas.last()?);
    if areas.len() < 2 {
        return None;
    }
    let inner = &areas[1..areas.len() - 1];
    let mut sum = (*first + *last) / 2.0;
    for a in inner {
        sum = sum + *a;
    }
    let trapezoidal = (sum * spacing).named("V_t", Unit::M3);
    let odd = if areas.len() % 2 == 1 { areas.len() } else { areas.len() - 1 };
    let mut simpson = areas[0] + areas[odd - 1];
    for (i, a) in areas[..odd].iter().enumerate().skip(1).take(odd.saturating_sub(2)) {
        simpson = simpson + *a * if i % 2 == 1 { 4.0 } else { 2.0 };
    }
    let mut prismoidal = if odd > 1 { simpson * spacing / 3.0 } else { N::constant(0.0) };
    if odd < areas.len() {
        prismoidal = prismoidal + (areas[odd - 1] + areas[odd]) / 2.0 * spacing;
    }
    Some([trapezoidal, prismoidal.named("V_p", Unit::M3)])
}

/// The working of `end_areas`.
pub static END_AREAS: Working = Working {
    name: "earthwork/end-areas",
    title: "What volume lies between equally spaced cross-sections?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 8, p. 241" },
    not_for: "unequal spacing; end areas overstate a solid that tapers to a point by half",
    inputs: &[
        Input::new("areas", "A", "areas of the sections in order", Unit::M2, AREA),
        Input::new("spacing", "D", "distance between sections", Unit::M, Limits::ours(0.01, 1000.0)),
    ],
    outputs: &[
        Output { key: "trapezoidal", words: "by average end areas", unit: Unit::M3 },
        Output { key: "prismoidal", words: "by the prismoidal rule", unit: Unit::M3 },
    ],
    run: |g| {
        let found = end_areas(&g.many("areas")?, g.one("spacing")?)
            .ok_or_else(|| g.no_answer("at least two sections are needed"))?;
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Volume of a prismoid from its two ends and its middle, and by average end areas.
///
/// # Source
/// The prismoidal formula; Basak, Surveying and Levelling, ch. 8, p. 245.
/// # Symbols
/// A_1, A_2 end areas and A_m area halfway (m²), h distance between the ends (m).
/// # Gives
/// V_p = h(A_1 + 4A_m + A_2)/6 and V_e = h(A_1 + A_2)/2, m³.
/// # Not for
/// A_m taken as the mean of the ends: both then agree and nothing is gained.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-07: 40 × 30 base, sides 1:1, 5 m: 7916.7 and 8000.
pub(crate) fn prismoid<N: Number>(first: N, middle: N, last: N, height: N) -> [N; 2] {
    [
        (height * (first + middle * 4.0 + last) / 6.0).named("V_p", Unit::M3),
        (height * (first + last) / 2.0).named("V_e", Unit::M3),
    ]
}

/// The working of `prismoid`.
pub static PRISMOID: Working = Working {
    name: "earthwork/prismoid",
    title: "What is the volume of a prismoid, such as a pit with sloping sides?",
    source: Source { work: "Basak, Surveying and Levelling", place: "ch. 8, p. 245" },
    not_for: "a middle area taken as the mean of the ends",
    inputs: &[
        Input::new("first", "A_1", "area at one end", Unit::M2, AREA),
        Input::new("middle", "A_m", "area halfway", Unit::M2, AREA),
        Input::new("last", "A_2", "area at the other end", Unit::M2, AREA),
        Input::new("height", "h", "distance between the ends", Unit::M, Limits::ours(0.0, 1000.0)),
    ],
    outputs: &[
        Output { key: "prismoidal", words: "by the prismoidal formula", unit: Unit::M3 },
        Output { key: "end_areas", words: "by average end areas", unit: Unit::M3 },
    ],
    run: |g| {
        let found = prismoid(g.one("first")?, g.one("middle")?, g.one("last")?, g.one("height")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};
