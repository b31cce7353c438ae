//! What holds a screw that is pulled along its axis, by the US National Design Specification?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

use crate::given::given;

given! {
    /// A screw pulled out of side grain; in, lb.
    NdsPulled {
        /// Specific gravity of the timber.
        gravity,
        /// Diameter.
        diameter,
        /// Thread in the timber that holds the point.
        grip,
        /// Load duration.
        cd,
        /// Wet service.
        cm,
    }
}

/// Withdrawal of one screw.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NdsAxial<N> {
    /// Reference value per inch of thread, lb.
    pub per_inch: N,
    /// Allowable force, lb.
    pub allowable: N,
}

fn axial<N: Number>(i: &NdsPulled<N>, per_inch: N) -> NdsAxial<N> {
    let per_inch = per_inch.named("W", Unit::LB);
    NdsAxial { per_inch, allowable: (per_inch * i.grip * i.cd * i.cm).named("W'", Unit::LB) }
}

/// Withdrawal of a wood screw.
///
/// # Source
/// NDS 2018, 12.2.2 and Table 12.2B: W = 2850 G² D lb per inch of thread; W' = W p C_D C_M.
/// # Symbols
/// G specific gravity, D diameter, p thread in the main member.
/// # Gives
/// Reference value per inch and allowable force, lb.
/// # Not for
/// End grain; screws whose values a report declares.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// G 0.5, D 0.19: 135 lb/in (TI-07).
pub fn nds_wood_screw<N: Number>(i: &NdsPulled<N>) -> NdsAxial<N> {
    let n = N::constant;
    axial(i, n(2850.0) * i.gravity.squared() * i.diameter)
}

/// Withdrawal of a lag screw.
///
/// # Source
/// NDS 2018, 12.2.1 and Table 12.2A: W = 1800 G^1.5 D^0.75 lb per inch of thread; W' = W p C_D C_M.
/// # Symbols
/// As [`nds_wood_screw`]; D the unthreaded diameter.
/// # Gives
/// Reference value per inch and allowable force, lb.
/// # Not for
/// End grain; the tapered tip does not count as thread.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// G 0.5, D 0.5: 378 lb/in (TI-07).
pub fn nds_lag_screw<N: Number>(i: &NdsPulled<N>) -> NdsAxial<N> {
    let n = N::constant;
    axial(i, n(1800.0) * i.gravity.powf(1.5) * i.diameter.powf(0.75))
}

/// Wet service factor on withdrawal of screws, NDS 2018 Table 11.3.3 (from memory).
pub fn nds_wet_screw(wet: bool) -> f64 {
    if wet { 0.7 } else { 1.0 }
}

const fn inputs(least: f64, most: f64) -> [Input; 5] {
    [
        Input::new("gravity", "G", "specific gravity of the timber", Unit::NONE, Limits::ours(0.3, 0.8)),
        Input::new("diameter", "D", "diameter", Unit::INCH, Limits::author(least, most)),
        Input::new("grip", "p", "thread in the timber that holds the point", Unit::INCH, Limits::ours(0.0, 20.0))
            .or(1.0),
        Input::new("cd", "C_D", "load duration factor", Unit::NONE, Limits::ours(0.9, 2.0)).or(1.0),
        Input::new("cm", "C_M", "wet service factor", Unit::NONE, Limits::ours(0.2, 1.0)).or(1.0),
    ]
}
const OUTPUTS: &[Output] = &[
    Output { key: "per_inch", words: "reference value per inch of thread", unit: Unit::LB },
    Output { key: "allowable", words: "allowable force", unit: Unit::LB },
];
const WORK: &str = "National Design Specification for Wood Construction, 2018";

/// Working of [`nds_wood_screw`].
pub static NDS_WOOD_SCREW: Working = Working {
    name: "fix/withdrawal-wood-screw-nds",
    title: "Withdrawal of a wood screw by the NDS.",
    source: Source { work: WORK, place: "12.2.2, Table 12.2B" },
    not_for: "end grain; screws whose values a report declares",
    inputs: &inputs(0.13, 0.38),
    outputs: OUTPUTS,
    run: |g| {
        let a = nds_wood_screw(&NdsPulled::put(g)?);
        Ok(vec![Found::One(a.per_inch), Found::One(a.allowable)])
    },
};

/// Working of [`nds_lag_screw`].
pub static NDS_LAG_SCREW: Working = Working {
    name: "fix/withdrawal-lag-screw-nds",
    title: "Withdrawal of a lag screw by the NDS.",
    source: Source { work: WORK, place: "12.2.1, Table 12.2A" },
    not_for: "end grain; the tapered tip does not count as thread",
    inputs: &inputs(0.25, 1.25),
    outputs: OUTPUTS,
    run: |g| {
        let a = nds_lag_screw(&NdsPulled::put(g)?);
        Ok(vec![Found::One(a.per_inch), Found::One(a.allowable)])
    },
};
