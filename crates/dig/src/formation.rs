//! From the finished surface down to what is dug and filled in subsoil: stripping and build-up taken into account.

use groundhold_quantity::{Area, Length, Volume};
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Value, Working};

const ARITHMETIC: Source = Source {
    work: "common practice, no source",
    place: "volume balance of layers of even thickness; exact wherever cut and fill are thicker than the layers",
};
const VOLUME: Limits = Limits::ours(0.0, 1e6);

/// Subsoil cut and fill down to the formation.
///
/// # Source
/// Common practice, no source: a balance of layers.
/// # Symbols
/// V_c cut and V_f fill between existing and finished surface (m³); A_c, A_f their plan areas (m²); s thickness
/// stripped (turf and topsoil, m); b thickness of what is laid on the formation (paving, stone, topsoil put back, m).
/// # Gives
/// Subsoil cut and subsoil fill, m³, both ≥ 0. Their difference is always V_c − V_f − s·(A_c+A_f) + b·(A_c+A_f).
/// # Not for
/// Layers of uneven thickness. Where cut is thinner than what is stripped, the lack counts as fill.
/// # Errors
/// None of its own; the rows' limits are checked when it is run as a working.
/// # By hand
/// Reference case DIG-FORM-1.
pub(crate) fn formation<N: Number>(cut: N, fill: N, cut_area: N, fill_area: N, strip: N, build: N) -> [N; 2] {
    let zero = N::constant(0.0);
    let c = (cut + (build - strip) * cut_area).named("V_c′", Unit::M3);
    let f = (fill + (strip - build) * fill_area).named("V_f′", Unit::M3);
    let dug = (c.max(zero) + (-f).max(zero)).named("V_dug", Unit::M3);
    let filled = (f.max(zero) + (-c).max(zero)).named("V_fill", Unit::M3);
    [dug, filled]
}

/// The working of `formation`.
pub static FORMATION: Working = Working {
    name: "dig/formation",
    title: "How much subsoil is dug and filled, below what is stripped and under what is laid on?",
    source: ARITHMETIC,
    not_for: "layers of uneven thickness; cut or fill thinner than the layers is right in sum, not in its parts",
    inputs: &[
        Input::new("cut", "V_c", "cut between the surfaces", Unit::M3, VOLUME),
        Input::new("fill", "V_f", "fill between the surfaces", Unit::M3, VOLUME),
        Input::new("cut_area", "A_c", "plan area in cut", Unit::M2, VOLUME),
        Input::new("fill_area", "A_f", "plan area in fill", Unit::M2, VOLUME),
        Input::new("strip", "s", "thickness of turf and topsoil", Unit::M, Limits::ours(0.0, 2.0)),
        Input::new("build", "b", "thickness laid on the formation", Unit::M, Limits::ours(0.0, 2.0)).or(0.0),
    ],
    outputs: &[
        Output { key: "dug", words: "subsoil dug, bank", unit: Unit::M3 },
        Output { key: "filled", words: "subsoil filled, compacted", unit: Unit::M3 },
    ],
    run: |g| {
        let [dug, filled] = formation(
            g.one("cut")?,
            g.one("fill")?,
            g.one("cut_area")?,
            g.one("fill_area")?,
            g.one("strip")?,
            g.one("build")?,
        );
        Ok(vec![Found::One(dug), Found::One(filled)])
    },
};

/// What is left over of the bank when the fill has been made from it; negative where it does not suffice.
///
/// # Source
/// US Army FM 5-434 (2000), Table 1-1, use of the factors.
/// # Symbols
/// B bank dug (m³), F fill to make, compacted (m³), k_c compacted volume from one of bank.
/// # Gives
/// Bank volume left over, m³.
/// # Not for
/// Soil that cannot serve as fill: all of B is then left over and all of F is short.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-08-short: 0 dug, 100 to fill in clay: 111.1 short.
pub(crate) fn over<N: Number>(bank: N, fill: N, to_compacted: N) -> [N; 2] {
    let used = (fill / to_compacted).named("B_used", Unit::M3);
    [used, (bank - used).named("B_over", Unit::M3)]
}

/// The working of `over`.
pub static OVER: Working = Working {
    name: "dig/over",
    title: "What is left over, or short, when the fill is made from what is dug?",
    source: Source { work: "US Army FM 5-434, Earthmoving Operations (2000)", place: "Table 1-1" },
    not_for: "soil that cannot serve as fill",
    inputs: &[
        Input::new("bank", "B", "dug, bank", Unit::M3, VOLUME),
        Input::new("fill", "F", "fill to make, compacted", Unit::M3, VOLUME),
        Input::new("to_compacted", "k_c", "compacted volume from one of bank", Unit::NONE, Limits::ours(0.5, 1.5)),
    ],
    outputs: &[
        Output { key: "used", words: "bank used for the fill", unit: Unit::M3 },
        Output { key: "over", words: "bank left over (negative: short)", unit: Unit::M3 },
    ],
    run: |g| {
        let [used, over] = over(g.one("bank")?, g.one("fill")?, g.one("to_compacted")?);
        Ok(vec![Found::One(used), Found::One(over)])
    },
};

/// Subsoil dug and filled by one element, with its working.
pub(crate) fn formation_of(cut: Volume, fill: Volume, areas: [Area; 2], strip: Length, build: Length) -> Formed {
    let v = [cut.to_m3(), fill.to_m3(), areas[0].to_m2(), areas[1].to_m2(), strip.to_m(), build.to_m()];
    let [dug, filled] = formation(v[0], v[1], v[2], v[3], v[4], v[5]);
    Formed {
        dug: Volume::m3(dug),
        filled: Volume::m3(filled),
        trace: Trace::new(&FORMATION, v.map(Value::One).to_vec()),
    }
}

/// Subsoil dug (bank) and filled (compacted).
pub(crate) struct Formed {
    pub dug: Volume,
    pub filled: Volume,
    pub trace: Trace,
}
