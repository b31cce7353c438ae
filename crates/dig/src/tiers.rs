//! A plane slope turned into equal level tiers, each balanced in itself; or filled up to its top.

use groundhold_quantity::{Length, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working, check_range};

const GEOMETRY: Source = Source { work: "geometry of the wedge", place: "each tier lies at the middle of its strip" };

/// Equal balanced tiers on a plane slope.
#[derive(Debug, Clone, PartialEq)]
pub struct Tiers {
    /// Width of each tier down the slope.
    pub run: Length,
    /// Height of each wall between two tiers.
    pub wall: Length,
    /// Step at the outer edges, up at the top and down at the foot.
    pub edge: Length,
    /// Cut in all, bank.
    pub cut: Volume,
    /// Fill in all, the same figure, before any bulking.
    pub fill: Volume,
    /// Its working.
    pub trace: Trace,
}

/// Cut and fill of n equal level tiers, each at the middle level of its strip of a plane slope.
///
/// # Source
/// Geometry of the wedge.
/// # Symbols
/// D fall (m) over the run L (m), W width along the contour (m), n tiers.
/// # Gives
/// Tier run L/n, wall between tiers D/n, step at the outer edges D/2n, cut = fill = L·D·W/8n.
/// # Not for
/// Bulking, compaction, stripping: those come on top.
/// # Errors
/// None of its own.
/// # By hand
/// 0.60 over 7.0, 6.0 wide, two tiers: 7·0.6·6/16 = 1.575 m³ (reference case DIG-T1).
pub(crate) fn tiers_of<N: Number>(fall: N, run: N, width: N, count: N) -> [N; 4] {
    [
        (run / count).named("l", Unit::M),
        (fall / count).named("h", Unit::M),
        (fall / (count * 2.0)).named("h_e", Unit::M),
        (run * fall * width / (count * 8.0)).named("V", Unit::M3),
    ]
}

const FALL: Input = Input::new("fall", "D", "fall in all", Unit::M, Limits::ours(0.0, 50.0));
const RUN: Input = Input::new("run", "L", "run over which it falls", Unit::M, Limits::ours(0.1, 1000.0));
const WIDTH: Input = Input::new("width", "W", "width along the contour", Unit::M, Limits::ours(0.1, 1000.0));

/// The working of `tiers_of`.
pub static TIERS: Working = Working {
    name: "dig/tiers",
    title: "How much is cut and filled for equal level tiers on a plane slope, each balanced in itself?",
    source: GEOMETRY,
    not_for: "bulking, compaction and stripping, which come on top",
    inputs: &[FALL, RUN, WIDTH, Input::new("tiers", "n", "number of tiers", Unit::NONE, Limits::ours(1.0, 100.0))],
    outputs: &[
        Output { key: "tier_run", words: "width of each tier", unit: Unit::M },
        Output { key: "wall", words: "height of each wall between tiers", unit: Unit::M },
        Output { key: "edge", words: "step at the outer edges", unit: Unit::M },
        Output { key: "cut", words: "cut, bank", unit: Unit::M3 },
        Output { key: "fill", words: "fill", unit: Unit::M3 },
    ],
    run: |g| {
        let count = g.one("tiers")?;
        if count.value().fract() != 0.0 {
            return Err(g.no_answer("the number of tiers must be whole"));
        }
        let [run, wall, edge, volume] = tiers_of(g.one("fall")?, g.one("run")?, g.one("width")?, count);
        Ok([run, wall, edge, volume, volume].into_iter().map(Found::One).collect())
    },
};

/// Fill from a plane slope up to the level of its top.
///
/// # Source
/// Geometry of the wedge.
/// # Symbols
/// D fall (m) over the run L (m), W width along the contour (m).
/// # Gives
/// V = D·L·W/2, m³, compacted.
/// # Not for
/// Banks beyond the edge; they come on top.
/// # Errors
/// None of its own.
/// # By hand
/// 0.60·7.0·6.0/2 = 12.6 m³ (reference case DIG-T1-fill).
pub(crate) fn fill_to_top<N: Number>(fall: N, run: N, width: N) -> N {
    (fall * run * width / 2.0).named("V", Unit::M3)
}

/// The working of `fill_to_top`.
pub static FILL_TO_TOP: Working = Working {
    name: "dig/fill-to-top",
    title: "How much fill makes a plane slope level with its top?",
    source: GEOMETRY,
    not_for: "banks beyond the edge, which come on top",
    inputs: &[FALL, RUN, WIDTH],
    outputs: &[Output { key: "fill", words: "fill, compacted", unit: Unit::M3 }],
    run: |g| Ok(vec![Found::One(fill_to_top(g.one("fall")?, g.one("run")?, g.one("width")?))]),
};

/// Equal balanced tiers on a plane slope.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] for a fall, run, width or number of tiers outside the working's limits.
pub fn tiers(fall: Length, run: Length, width: Length, count: u32) -> groundhold_working::Result<Tiers> {
    let given = [fall.to_m(), run.to_m(), width.to_m(), f64::from(count)];
    TIERS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(TIERS.name, row, v))?;
    let [tier_run, wall, edge, volume] = tiers_of(given[0], given[1], given[2], given[3]);
    Ok(Tiers {
        run: Length::m(tier_run),
        wall: Length::m(wall),
        edge: Length::m(edge),
        cut: Volume::m3(volume),
        fill: Volume::m3(volume),
        trace: Trace::new(&TIERS, given.map(Into::into).to_vec()),
    })
}
