//! Does a neighbour stand within reach: a footing above a cut, a wall above a wall, a load above the wedge?

use groundhold_quantity::{Length, Pressure};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use crate::pressure::Strip;
use crate::rows;
use crate::soil::Soil;

/// How a footing lies to the line that rises at 45° from the foot of a cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Line45 {
    /// By how much the footing's underside lies below the line; negative where it is above and so bears on ground
    /// that the cut may take away.
    pub below_line: Length,
    /// True where the cut reaches into the ground the footing bears on.
    pub undermines: bool,
    /// How it was worked out.
    pub trace: Trace,
}

/// Depth of a footing's underside below the 45° line that rises from the foot of a cut.
///
/// # Source
/// Common practice, no source: load is taken to spread at 45° from a footing's underside.
/// # Symbols
/// | D, d, x | depth of the cut, depth of the footing, clear distance between | m | all from the same ground |
/// # Gives
/// d + x − D in m: below zero, the cut reaches into the ground the footing bears on.
/// # Not for
/// Soft or wet ground, where the reach is longer; ground that falls between the two.
/// # Errors
/// None here.
/// # By hand
/// D = 1.2, d = 0.45, x = 0.5: −0.25 m, undermined (case IN-01).
pub fn below_line_45<N: Number>(cut: N, footing: N, distance: N) -> N {
    (footing + distance - cut).named("s", Unit::M)
}

/// How a footing lies to the 45° line from the foot of a cut. All depths from the same ground.
///
/// # Errors
/// A value outside the working's limits.
pub fn line_45(cut: Length, footing: Length, distance: Length) -> Result<Line45> {
    let given = [cut.to_m(), footing.to_m(), distance.to_m()];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&LINE_45, &values)?;
    let s = below_line_45(given[0], given[1], given[2]);
    Ok(Line45 { below_line: Length::m(s), undermines: s < 0.0, trace: Trace::new(&LINE_45, values) })
}

/// How far behind a wall its wedge of pushing soil reaches on level ground: H tan(45° − φ/2), Rankine (1857). A load
/// further back than this is outside the plane wedge, though flatter slips still feel it.
pub fn wedge_reach(soil: &Soil, height: Length) -> Length {
    Length::m(reach(rows::radians(soil.phi), height.to_m()))
}

fn reach<N: Number>(phi: N, height: N) -> N {
    (height * (N::degrees(45.0) - phi / 2.0).tan()).named("r", Unit::M)
}

/// What an upper wall does to a lower one.
#[derive(Debug, Clone, PartialEq)]
pub struct Terrace {
    /// True where the walls are to be judged as one: the setback is under twice the lower wall's retained height.
    pub act_together: bool,
    /// Setback from which they stand apart.
    pub apart_from: Length,
    /// The soil behind the upper wall as a load on the lower one's ground, from the setback on, always there.
    pub load: Strip,
    /// How it was worked out.
    pub trace: Trace,
}

/// Setback from which two walls stand apart, and the upper soil as a load.
///
/// # Source
/// Common practice, no source: twice the retained height of the lower wall.
/// # Symbols
/// | H, h | retained heights of the lower and the upper wall | m | |
/// | s, γ | setback between them, unit weight behind the upper one | m, kN/m³ | |
/// # Gives
/// (2H, γh).
/// # Not for
/// Proving that two walls near each other stand: search a slip through both.
/// # Errors
/// None here.
/// # By hand
/// H = 0.9 m: apart from 1.8 m (test case T2).
pub fn terrace<N: Number>(lower: N, upper: N, gamma: N) -> (N, N) {
    ((lower * 2.0).named("s_apart", Unit::M), (gamma * upper).named("q", Unit::KPA))
}

/// What an upper wall set back from a lower one does to it. The load begins at the setback and has no far edge.
///
/// # Errors
/// A value outside the working's limits.
pub fn upper_wall(lower: Length, upper: Length, setback: Length, soil: &Soil) -> Result<Terrace> {
    let given = [lower.to_m(), upper.to_m(), setback.to_m(), soil.unit_weight.to_kn_per_m3()];
    let values: Vec<_> = given.map(Into::into).into();
    rows::check(&TERRACE, &values)?;
    let (apart, q) = terrace(given[0], given[1], given[3]);
    Ok(Terrace {
        act_together: given[2] < apart,
        apart_from: Length::m(apart),
        load: Strip { value: Pressure::kpa(q), from: setback, to: Length::m(f64::INFINITY), permanent: true },
        trace: Trace::new(&TERRACE, values),
    })
}

const COMMON: Source = Source { work: "common practice, no source", place: "" };

/// The 45° line.
pub static LINE_45: Working = Working {
    name: "influence/line-45",
    title: "Does a cut reach into the ground a footing bears on?",
    source: COMMON,
    not_for: "soft or wet ground, ground that falls between footing and cut",
    inputs: &[
        Input::new("cut", "D", "depth of the cut", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("footing", "d", "depth of the footing's underside", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("distance", "x", "clear distance between them", Unit::M, Limits::ours(0.0, 1000.0)),
    ],
    outputs: &[Output { key: "below", words: "underside below the line; negative is undermined", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(below_line_45(g.one("cut")?, g.one("footing")?, g.one("distance")?))]),
};

/// Reach of the wedge.
pub static WEDGE_REACH: Working = Working {
    name: "influence/wedge-reach",
    title: "How far behind the wall does the wedge of pushing soil reach?",
    source: Source { work: "Rankine, Phil. Trans. R. Soc. 147, 1857", place: "slip plane at 45° + φ/2" },
    not_for: "sloping ground (trial wedge)",
    inputs: &[rows::HEIGHT, rows::PHI],
    outputs: &[Output { key: "reach", words: "distance behind the wall at the ground", unit: Unit::M }],
    run: |g| Ok(vec![Found::One(reach(g.one("phi")?, g.one("height")?))]),
};

/// Two walls, one above the other.
pub static TERRACE: Working = Working {
    name: "influence/two-walls",
    title: "How far apart must two walls stand to be judged one by one?",
    source: Source { work: "common practice, no source", place: "twice the lower wall's retained height" },
    not_for: "proving that two walls near each other stand: search a slip through both",
    inputs: &[
        Input::new("lower", "H", "retained height of the lower wall", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("upper", "h", "retained height of the upper wall", Unit::M, Limits::ours(0.0, 20.0)),
        Input::new("setback", "s", "distance between their faces", Unit::M, Limits::ours(0.0, 1000.0)),
        rows::GAMMA,
    ],
    outputs: &[
        Output { key: "apart", words: "setback from which they stand apart", unit: Unit::M },
        Output { key: "q", words: "upper soil as a load", unit: Unit::KPA },
        Output { key: "verdict", words: "together or apart", unit: Unit::NONE },
    ],
    run: |g| {
        let (apart, q) = terrace(g.one("lower")?, g.one("upper")?, g.one("gamma")?);
        let together = g.one("setback")?.value() < apart.value();
        Ok(vec![Found::One(apart), Found::One(q), Found::Word(if together { "together" } else { "apart" }.into())])
    },
};
