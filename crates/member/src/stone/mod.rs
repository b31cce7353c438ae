//! How heavy is stone as it lies in a wall, and how well does one course hold on the next?

use groundhold_quantity::{Angle, UnitWeight};
use groundhold_working::{Limits, Number, Result, Source, Trace, Unit, Working};

use crate::given::{gives, takes};

/// A kind of stone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stone {
    /// `granite`, `limestone` …
    pub name: &'static str,
    /// Unit weight of the solid stone, the lower end of its usual range.
    pub solid: UnitWeight,
    /// Friction of rough stone on stone, the lower end of its usual range.
    pub friction: Angle,
}

/// Where [`STONES`] comes from.
pub const STONES_SOURCE: Source = Source {
    work: "EN 1991-1-1:2002, Table A.2 (natural stones) for weights; Goodman, Introduction to Rock Mechanics, 2nd ed., basic \
           friction angles of sawn surfaces, for friction",
    place: "lower ends of the ranges; from memory",
};

const fn row(name: &'static str, solid: f64, friction: f64) -> Stone {
    Stone { name, solid: UnitWeight::kn_per_m3(solid), friction: Angle::deg(friction) }
}

/// Stones by name, lower values.
pub const STONES: &[Stone] = &[
    row("granite", 27.0, 31.0),
    row("basalt", 27.0, 31.0),
    row("gneiss", 27.0, 26.0),
    row("limestone", 20.0, 31.0),
    row("dense limestone", 26.0, 31.0),
    row("sandstone", 21.0, 25.0),
    row("slate", 27.0, 25.0),
    row("concrete", 22.0, 31.0),
];

/// How stones lie in a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Packing {
    /// `dry stone, fitted` …
    pub name: &'static str,
    /// Voids as a share of the whole.
    pub voids: f64,
}

/// Where [`PACKINGS`] comes from.
pub const PACKINGS_SOURCE: Source = Source {
    work: "common practice, no source; gabions: 0.30 to 0.40 as usual in public works manuals",
    place: "upper ends of the ranges",
};

/// Ways to pack stone, with careful voids.
pub const PACKINGS: &[Packing] = &[
    Packing { name: "mortared", voids: 0.05 },
    Packing { name: "dry stone, fitted", voids: 0.20 },
    Packing { name: "dry stone, rubble", voids: 0.30 },
    Packing { name: "gabion, placed by hand", voids: 0.30 },
    Packing { name: "gabion, filled by machine", voids: 0.40 },
];

/// A row of [`STONES`] by its name.
pub fn stone(name: &str) -> Option<&'static Stone> {
    STONES.iter().find(|s| s.name.eq_ignore_ascii_case(name.trim()))
}
/// A row of [`PACKINGS`] by its name.
pub fn packing(name: &str) -> Option<&'static Packing> {
    PACKINGS.iter().find(|s| s.name.eq_ignore_ascii_case(name.trim()))
}

takes! {
    /// Stone as it lies; kN/m³.
    Packed {
        solid: "γ_s", "unit weight of the solid stone", KN_M3, Limits::ours(10.0, 35.0);
        voids: "n", "voids as a share of the whole", NONE, Limits::ours(0.0, 0.6);
        filled: "S", "share of the voids filled with water or soil of 10 kN/m³", NONE, Limits::ours(0.0, 1.0), 0.0;
    }
}
gives! {
    /// Stone as it lies.
    PackedWeight {
        weight: KN_M3, "unit weight of the wall";
    }
}

/// Unit weight of stone as it lies in a wall.
///
/// # Source
/// Definition of porosity: γ = γ_s (1 − n) + S n γ_w.
/// # Symbols
/// γ_s solid, n voids, S filled share.
/// # Gives
/// γ of the wall.
/// # Not for
/// Stability with S above 0: voids drain.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Granite 27, n 0.35: 17.55 kN/m³ (SN-01).
pub fn packed<N: Number>(i: &Packed<N>) -> PackedWeight<N> {
    let n = N::constant;
    PackedWeight { weight: (i.solid * (n(1.0) - i.voids) + i.filled * i.voids * 9.81).named("γ", Unit::KN_M3) }
}

/// Unit weight of a stone in a packing, drained, with its working.
///
/// # Errors
/// Where a value is out of range.
pub fn weight_of(stone: &Stone, packing: &Packing) -> Result<(UnitWeight, Trace)> {
    let (i, trace) =
        Packed { solid: stone.solid.to_kn_per_m3(), voids: packing.voids, filled: 0.0 }.traced(&PACKED_STONE)?;
    Ok((UnitWeight::kn_per_m3(packed(&i).weight), trace))
}

/// Working of [`packed`].
pub static PACKED_STONE: Working = Working {
    name: "stone/packed-weight",
    title: "Unit weight of stone as it lies in a wall or basket.",
    source: Source { work: "definition of porosity", place: "γ = γ_s (1 − n) + S n γ_w" },
    not_for: "stability with filled voids: they drain",
    inputs: Packed::INPUTS,
    outputs: PackedWeight::OUTPUTS,
    run: |g| packed(&Packed::put(g)?).found(),
};
