//! Areas of cross-sections with sloping sides: level, on a cross fall, and taken at three points.

use groundhold_working::{Found, Given, Input, Limits, Number, Output, Result, Shown, Source, Unit, Working};

const BASAK: &str = "Basak, Surveying and Levelling";
const WIDTH: Limits = Limits::ours(0.0, 1000.0);
const HEIGHT: Limits = Limits::ours(0.0, 100.0);
const SIDE: Limits = Limits::ours(0.0, 20.0);

/// Area of a section on level ground.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 8, p. 241.
/// # Symbols
/// b formation width (m), s run of the sides for one up, h height at the centre (m).
/// # Gives
/// A = (b + s·h)·h, m².
/// # Not for
/// A cross fall: use the two-level section.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-01-areas.
pub(crate) fn level_section<N: Number>(width: N, side: N, height: N) -> N {
    ((width + side * height) * height).named("A", Unit::M2)
}

/// The working of `level_section`.
pub static LEVEL_SECTION: Working = Working {
    name: "earthwork/level-section",
    title: "What is the area of a bank or cutting on level ground, from its centre height?",
    source: Source { work: BASAK, place: "ch. 8, p. 241" },
    not_for: "a cross fall: use the two-level section",
    inputs: &[
        Input::new("width", "b", "formation width", Unit::M, WIDTH),
        Input::new("side", "s", "run of the sides for one up", Unit::NONE, SIDE),
        Input::new("height", "h", "height at the centre, one or more", Unit::M, HEIGHT),
    ],
    outputs: &[Output { key: "area", words: "area of each section", unit: Unit::M2 }],
    run: |g| {
        let (b, s) = (g.one("width")?, g.one("side")?);
        Ok(vec![Found::Many(g.many("height")?.into_iter().map(|h| level_section(b, s, h)).collect())])
    },
};

/// Half widths and area of a section on a cross fall.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 8, p. 246.
/// # Symbols
/// b formation width (m), s run of the sides for one up, n run of the ground for one up across, h height at the
/// centre (m).
/// # Gives
/// b₁ = b/2 + ns/(n−s)·(h + b/2n), b₂ = b/2 + ns/(n+s)·(h − b/2n), A = ((b/2s + h)(b₁+b₂) − b²/2s)/2.
/// # Not for
/// Part cut, part fill (h < b/2n); ground as steep as the sides (n ≤ s).
/// # Errors
/// Both of these are refused.
/// # By hand
/// Reference case EW-03.
pub(crate) fn two_level_section<N: Number>(width: N, side: N, cross: N, height: N) -> [N; 3] {
    let half = width / 2.0;
    let lift = width / (cross * 2.0);
    let wide = (half + cross * side / (cross - side) * (height + lift)).named("b_1", Unit::M);
    let narrow = (half + cross * side / (cross + side) * (height - lift)).named("b_2", Unit::M);
    let peak = width / (side * 2.0);
    let area = (((peak + height) * (wide + narrow) - width.squared() / (side * 2.0)) / 2.0).named("A", Unit::M2);
    [wide, narrow, area]
}

/// The working of `two_level_section`.
pub static TWO_LEVEL_SECTION: Working = Working {
    name: "earthwork/two-level-section",
    title: "What is the area of a bank or cutting on a cross fall?",
    source: Source { work: BASAK, place: "ch. 8, p. 246" },
    not_for: "part cut, part fill; ground as steep as the sides",
    inputs: &[
        Input::new("width", "b", "formation width", Unit::M, WIDTH),
        Input::new("side", "s", "run of the sides for one up", Unit::NONE, Limits::ours(0.01, 20.0)),
        Input::new("cross", "n", "run of the ground for one up, across", Unit::NONE, Limits::ours(0.02, 1e6)),
        Input::new("height", "h", "height at the centre, one or more", Unit::M, HEIGHT),
    ],
    outputs: &[
        Output { key: "wide", words: "half width on the wide side", unit: Unit::M },
        Output { key: "narrow", words: "half width on the narrow side", unit: Unit::M },
        Output { key: "area", words: "area", unit: Unit::M2 },
    ],
    run: |g| {
        let (b, s, n) = (g.one("width")?, g.one("side")?, g.one("cross")?);
        if n.value() <= s.value() {
            return Err(g.no_answer("the ground is as steep as the sides, so they never meet (n must exceed s)"));
        }
        let heights = g.many("height")?;
        if heights.iter().any(|h| h.value() < b.value() / (2.0 * n.value())) {
            return Err(g.no_answer("the section is part cut, part fill (h is less than b/2n)"));
        }
        Ok(lists(heights.into_iter().map(|h| two_level_section(b, s, n, h)).collect()))
    },
};

fn lists<const K: usize>(rows: Vec<[Shown<'_>; K]>) -> Vec<Found<'_>> {
    (0..K).map(|k| Found::Many(rows.iter().map(|r| r[k]).collect())).collect()
}

/// Area of a section taken at the centre and the two side stakes.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 8, p. 248.
/// # Symbols
/// b formation width, h centre height, h₁ and h₂ heights at the side stakes, w₁ and w₂ their distances from the
/// centre (m).
/// # Gives
/// A = h(w₁+w₂)/2 + b(h₁+h₂)/4, m².
/// # Not for
/// Ground that bends between centre and stakes.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-05-1: 14.25 m².
pub(crate) fn three_level_section<N: Number>(width: N, centre: N, sides: [N; 2], out: [N; 2]) -> N {
    (centre * (out[0] + out[1]) / 2.0 + width * (sides[0] + sides[1]) / 4.0).named("A", Unit::M2)
}

/// The working of `three_level_section`.
pub static THREE_LEVEL_SECTION: Working = Working {
    name: "earthwork/three-level-section",
    title: "What is the area of a section taken at the centre and both side stakes?",
    source: Source { work: BASAK, place: "ch. 8, p. 248" },
    not_for: "ground that bends between centre and stakes",
    inputs: &[
        Input::new("width", "b", "formation width", Unit::M, WIDTH),
        Input::new("centre", "h", "height at the centre", Unit::M, HEIGHT),
        Input::new("left", "h_1", "height at the left stake", Unit::M, HEIGHT),
        Input::new("right", "h_2", "height at the right stake", Unit::M, HEIGHT),
        Input::new("out_left", "w_1", "distance of the left stake", Unit::M, WIDTH),
        Input::new("out_right", "w_2", "distance of the right stake", Unit::M, WIDTH),
    ],
    outputs: &[Output { key: "area", words: "area", unit: Unit::M2 }],
    run: |g| {
        let sides = [g.one("left")?, g.one("right")?];
        let out = [g.one("out_left")?, g.one("out_right")?];
        Ok(vec![Found::One(three_level_section(g.one("width")?, g.one("centre")?, sides, out))])
    },
};

/// Volume between two three-level sections and the prismoidal correction to it.
///
/// # Source
/// Basak, Surveying and Levelling, ch. 8, p. 248.
/// # Symbols
/// A_1, A_2 areas (m²), D distance (m), h and h′ centre heights, w and w′ whole widths between the stakes (m).
/// # Gives
/// V = D(A₁+A₂)/2, C_p = D(h−h′)(w−w′)/12, V − C_p, m³.
/// # Not for
/// Sections that are not three-level.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-05.
pub(crate) fn prismoidal_correction<N: Number>(areas: [N; 2], distance: N, centre: [N; 2], width: [N; 2]) -> [N; 3] {
    let volume = (distance * (areas[0] + areas[1]) / 2.0).named("V", Unit::M3);
    let correction = (distance * (centre[0] - centre[1]) * (width[0] - width[1]) / 12.0).named("C_p", Unit::M3);
    [volume, correction, (volume - correction).named("V_corr", Unit::M3)]
}

/// The working of `prismoidal_correction`.
pub static PRISMOIDAL_CORRECTION: Working = Working {
    name: "earthwork/prismoidal-correction",
    title: "By how much do end areas miss the prismoid between two three-level sections?",
    source: Source { work: BASAK, place: "ch. 8, p. 248" },
    not_for: "sections that are not three-level",
    inputs: &[
        Input::new("areas", "A", "the two areas", Unit::M2, Limits::ours(0.0, 1e6)),
        Input::new("distance", "D", "distance between them", Unit::M, Limits::ours(0.01, 1000.0)),
        Input::new("centres", "h", "the two centre heights", Unit::M, HEIGHT),
        Input::new("widths", "w", "the two widths from stake to stake", Unit::M, WIDTH),
    ],
    outputs: &[
        Output { key: "volume", words: "by average end areas", unit: Unit::M3 },
        Output { key: "correction", words: "prismoidal correction", unit: Unit::M3 },
        Output { key: "corrected", words: "corrected volume", unit: Unit::M3 },
    ],
    run: |g| {
        let found =
            prismoidal_correction(pair(g, "areas")?, g.one("distance")?, pair(g, "centres")?, pair(g, "widths")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

fn pair<'s>(g: &Given<'s>, key: &str) -> Result<[Shown<'s>; 2]> {
    let found: [Shown<'s>; 2] = g
        .many(key)?
        .try_into()
        .map_err(|v: Vec<Shown<'s>>| g.no_answer(format!("`{key}` has {} values, expected two", v.len())))?;
    Ok(found)
}
