//! Does the stone keep the soil back and let the water through, or is a fabric needed between them?

use groundhold_quantity::{Length, trim};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::Grading;

const SIZE: Limits = Limits::ours(1e-5, 500.0);

/// Ratios of the old filter rules.
///
/// # Source
/// Terzaghi and Peck; USACE EM 1110-2-1901.
/// # Symbols
/// D sizes of the filter and d sizes of the soil behind it (mm); 15, 50, 85 the share finer.
/// # Gives
/// D15/d85 (keeps the soil back at 4 to 5 or less), D15/d15 (drains at 4 to 5 or more), D50/d50 (25 or less).
/// # Not for
/// Clay, which holds together: there the rule asks for more than is needed. Gap-graded soil.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-06.
pub(crate) fn terzaghi<N: Number>(filter15: N, filter50: N, soil: [N; 3]) -> [N; 3] {
    let [d15, d50, d85] = soil;
    [
        (filter15 / d85).named("r_piping", Unit::NONE),
        (filter15 / d15).named("r_drain", Unit::NONE),
        (filter50 / d50).named("r_50", Unit::NONE),
    ]
}

/// The working of `terzaghi`.
pub static TERZAGHI: Working = Working {
    name: "filter/terzaghi",
    title: "Does a granular filter keep a soil back and still drain, by the old ratios?",
    source: Source {
        work: "Terzaghi and Peck, Soil Mechanics in Engineering Practice; USACE EM 1110-2-1901",
        place: "filter criteria",
    },
    not_for: "clay, for which it asks more than needed; gap-graded soil",
    inputs: &[
        Input::new("filter15", "D_15", "filter size with 15 % finer", Unit::MM, SIZE),
        Input::new("filter50", "D_50", "filter size with 50 % finer", Unit::MM, SIZE),
        Input::new("d15", "d_15", "soil size with 15 % finer", Unit::MM, SIZE),
        Input::new("d50", "d_50", "soil size with 50 % finer", Unit::MM, SIZE),
        Input::new("d85", "d_85", "soil size with 85 % finer", Unit::MM, SIZE),
    ],
    outputs: &[
        Output { key: "piping", words: "D15/d85, keeps back at 4 to 5 or less", unit: Unit::NONE },
        Output { key: "draining", words: "D15/d15, drains at 4 to 5 or more", unit: Unit::NONE },
        Output { key: "middle", words: "D50/d50, 25 or less", unit: Unit::NONE },
    ],
    run: |g| {
        let soil = [g.one("d15")?, g.one("d50")?, g.one("d85")?];
        let found = terzaghi(g.one("filter15")?, g.one("filter50")?, soil);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Largest and least D15 of a filter for a soil, by category of its fines.
///
/// # Source
/// USDA-NRCS, NEH Part 633 ch. 26 (1994), Table 26-2; categories 2 and 3 from memory.
/// # Symbols
/// A fines of the soil finer than 0.075 mm (%), d85 and d15 its sizes (mm), all of the part finer than 4.75 mm.
/// # Gives
/// Category 1 (A > 85): 9·d85, not below 0.2. 2 (40 to 85): 0.7. 3 (15 to under 40): (40−A)/25·(4·d85 − 0.7) + 0.7,
/// with 4·d85 not below 0.7. 4 (under 15): 4·d85. Least: the larger of 4·d15 and 0.1 mm.
/// # Not for
/// Dispersive clay, which needs finer filters; soils that were not regraded on 4.75 mm.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-05: A 25, d85 0.8, d15 0.03: 2.2 and 0.12 mm.
pub(crate) fn nrcs<N: Number>(fines: N, d85: N, d15: N) -> (u8, [N; 2]) {
    let floor = |v: N, least: f64| v.max(N::constant(least));
    let (category, most) = match fines.value() {
        a if a > 85.0 => (1, floor(d85 * 9.0, 0.2)),
        a if a >= 40.0 => (2, N::constant(0.7)),
        a if a >= 15.0 => (3, (-fines + 40.0) / 25.0 * (floor(d85 * 4.0, 0.7) - 0.7) + 0.7),
        _ => (4, d85 * 4.0),
    };
    (category, [most.named("D_15max", Unit::MM), floor(d15 * 4.0, 0.1).named("D_15min", Unit::MM)])
}

/// The working of `nrcs`.
pub static NRCS: Working = Working {
    name: "filter/nrcs",
    title: "How coarse and how fine may a filter be against a soil?",
    source: Source {
        work: "USDA-NRCS, National Engineering Handbook Part 633, ch. 26 (1994)",
        place: "Table 26-2; categories 2 and 3 from memory",
    },
    not_for: "dispersive clay; soils not regraded on 4.75 mm",
    inputs: &[
        Input::new("fines", "A", "fines of the soil in per cent", Unit::NONE, Limits::author(0.0, 100.0)),
        Input::new("d85", "d_85", "soil size with 85 % finer", Unit::MM, SIZE),
        Input::new("d15", "d_15", "soil size with 15 % finer", Unit::MM, SIZE),
    ],
    outputs: &[
        Output { key: "most", words: "largest D15 that keeps the soil back", unit: Unit::MM },
        Output { key: "least", words: "least D15 that drains it", unit: Unit::MM },
        Output { key: "category", words: "category of the soil", unit: Unit::NONE },
    ],
    run: |g| {
        let (category, [most, least]) = nrcs(g.one("fines")?, g.one("d85")?, g.one("d15")?);
        g.sheet().remark(format!("The soil is of category {category}: D_15max = {} mm.", trim(most.value(), 3)));
        Ok(vec![Found::One(most), Found::One(least), Found::One(Number::constant(f64::from(category)))])
    },
};

/// Largest opening of a drainage fabric against a soil.
///
/// # Source
/// AASHTO M 288, subsurface drainage geotextile, from memory.
/// # Symbols
/// A fines of the soil finer than 0.075 mm (%).
/// # Gives
/// Apparent opening size O95 at most: 0.43 mm (A < 15), 0.25 mm (15 to 50), 0.22 mm (over 50).
/// # Not for
/// Fabric that may clog: silts with no cohesion, iron ochre; there a granular filter is surer.
/// # Errors
/// None of its own.
/// # By hand
/// Reference cases HY-M288-*.
pub(crate) fn fabric_opening<N: Number>(fines: N) -> N {
    let most = match fines.value() {
        a if a < 15.0 => 0.43,
        a if a <= 50.0 => 0.25,
        _ => 0.22,
    };
    N::constant(most)
}

/// The working of `fabric_opening`.
pub static FABRIC_OPENING: Working = Working {
    name: "filter/fabric-opening",
    title: "How large may the openings of a drainage fabric be against a soil?",
    source: Source {
        work: "AASHTO M 288, subsurface drainage geotextile",
        place: "permittivity and AOS table, from memory",
    },
    not_for: "cohesionless silt and iron ochre, which clog fabric",
    inputs: &[Input::new("fines", "A", "fines of the soil in per cent", Unit::NONE, Limits::author(0.0, 100.0))],
    outputs: &[Output { key: "opening", words: "largest apparent opening size O95", unit: Unit::MM }],
    run: |g| {
        let opening = fabric_opening(g.one("fines")?);
        g.sheet().remark(format!("The row of the table for these fines: O_95 = {} mm.", opening.value()));
        Ok(vec![Found::One(opening)])
    },
};

/// How stone and soil match.
#[derive(Debug, Clone, PartialEq)]
pub struct FilterMatch {
    /// Category of the soil by its fines, 1 to 4.
    pub category: u8,
    /// D15 of the stone.
    pub stone_d15: Length,
    /// Largest D15 that keeps the soil back.
    pub d15_most: Length,
    /// Least D15 that drains the soil.
    pub d15_least: Length,
    /// True when the stone alone keeps the soil back.
    pub keeps_back: bool,
    /// True when the stone is open enough to drain the soil.
    pub drains: bool,
    /// Terzaghi's ratios: D15/d85, D15/d15, D50/d50.
    pub terzaghi: [f64; 3],
    /// Largest opening of a fabric between them.
    pub fabric_opening: Length,
    /// Workings: NRCS, Terzaghi, fabric.
    pub traces: Vec<Trace>,
}

/// Matches a stone to a soil.
pub fn filter_match(soil: &Grading, stone: &Grading) -> FilterMatch {
    let fines = soil.fines.to_percent();
    let (d15, d50, d85) = (soil.d15.to_mm(), soil.d50.to_mm(), soil.d85.to_mm());
    let (category, [most, least]) = nrcs(fines, d85, d15);
    let ratios = terzaghi(stone.d15.to_mm(), stone.d50.to_mm(), [d15, d50, d85]);
    let list = |v: &[f64]| v.iter().map(|v| (*v).into()).collect();
    FilterMatch {
        category,
        stone_d15: stone.d15,
        d15_most: Length::mm(most),
        d15_least: Length::mm(least),
        keeps_back: stone.d15.to_mm() <= most,
        drains: stone.d15.to_mm() >= least,
        terzaghi: ratios,
        fabric_opening: Length::mm(fabric_opening(fines)),
        traces: vec![
            Trace::new(&NRCS, list(&[fines, d85, d15])),
            Trace::new(&TERZAGHI, list(&[stone.d15.to_mm(), stone.d50.to_mm(), d15, d50, d85])),
            Trace::new(&FABRIC_OPENING, list(&[fines])),
        ],
    }
}
