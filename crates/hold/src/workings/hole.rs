//! What comes out of a post hole and what goes into it?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Volumes of one hole, m³.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleVolumes<N> {
    /// Dug out, in the bank.
    pub spoil: N,
    /// Gravel under the post.
    pub gravel: N,
    /// The filled part with the post in it.
    pub gross: N,
    /// Fill around the post.
    pub fill: N,
}

/// A round hole with gravel at its bottom, a rectangular post on the gravel and fill around the post.
///
/// # Source
/// Geometry.
/// # Symbols
/// | D | hole diameter | m | L | underside of the post below ground | m | t | gravel | m | z | top of the fill below ground | m |
/// | b, d | post section | m |
/// # Gives
/// Spoil (the whole hole, ground to bottom), gravel, gross and net fill, m³. Over-dig is not in it.
/// # Not for
/// A hole that is wider at its bottom; walls that fall in.
/// # Errors
/// A post that does not go into the hole.
/// # By hand
/// D = 0.3 m, L = 0.7 m, no post: π/4·0.3²·0.7 = 0.0495 m³ (case `WP-05`).
pub fn hole<N: Number>(diameter: N, depth: N, gravel: N, cover: N, breadth: N, across: N) -> HoleVolumes<N> {
    let area = (diameter.squared() * std::f64::consts::FRAC_PI_4).named("A", Unit::M2);
    let filled = (depth - cover).max(N::constant(0.0)).named("L_f", Unit::M);
    HoleVolumes {
        spoil: (area * (depth + gravel)).named("V_spoil", Unit::M3),
        gravel: (area * gravel).named("V_gravel", Unit::M3),
        gross: (area * filled).named("V_gross", Unit::M3),
        fill: ((area - breadth * across) * filled).named("V_fill", Unit::M3),
    }
}

/// See [`hole`].
pub static HOLE: Working = Working {
    name: "wall/hole",
    title: "What comes out of a post hole and what goes into it?",
    source: Source { work: "geometry", place: "" },
    not_for: "a hole that is wider at its bottom, or whose sides fall in",
    inputs: &[
        Input::new("diameter", "D", "hole diameter", Unit::M, Limits::ours(0.05, 2.0)),
        Input::new("depth", "L", "underside of the post below ground", Unit::M, Limits::ours(0.0, 6.0)),
        Input::new("gravel", "t", "gravel under the post", Unit::M, Limits::ours(0.0, 1.0)).or(0.0),
        Input::new("cover", "z", "top of the fill below ground", Unit::M, Limits::ours(0.0, 5.0)).or(0.0),
        Input::new("breadth", "b", "post breadth", Unit::M, Limits::ours(0.0, 1.0)).or(0.0),
        Input::new("across", "d", "post depth", Unit::M, Limits::ours(0.0, 1.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "spoil", words: "dug out, in the bank", unit: Unit::M3 },
        Output { key: "gravel", words: "gravel", unit: Unit::M3 },
        Output { key: "gross", words: "filled part with the post", unit: Unit::M3 },
        Output { key: "fill", words: "fill around the post", unit: Unit::M3 },
    ],
    run: |g| {
        let (b, d, dia) = (g.one("breadth")?, g.one("across")?, g.one("diameter")?);
        if b.value() * b.value() + d.value() * d.value() > dia.value() * dia.value() {
            return Err(g.no_answer("the post does not go into the hole"));
        }
        let v = hole(dia, g.one("depth")?, g.one("gravel")?, g.one("cover")?, b, d);
        Ok([v.spoil, v.gravel, v.gross, v.fill].into_iter().map(Found::One).collect())
    },
};
