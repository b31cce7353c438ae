//! What is left of a geogrid's strength after the years, the stones and the chemistry?

use groundhold_working::{Limits, Number, Source, Unit, Working};

use crate::given::{gives, takes};

takes! {
    /// Long-term strength by FHWA; kN/m.
    GridReduced {
        ultimate: "T_ult", "ultimate strength, minimum average roll value", KN_M, Limits::ours(1.0, 1000.0);
        creep: "RF_CR", "reduction for creep: 1.6 to 2.5 polyester, 2.6 to 5 polyethylene and polypropylene", NONE,
            Limits::author(1.0, 5.0);
        damage: "RF_ID", "reduction for damage when laid, by the size of the fill", NONE, Limits::author(1.05, 3.0), 1.5;
        durability: "RF_D", "reduction for chemistry and age", NONE, Limits::author(1.1, 2.0), 1.3;
        factor: "FS", "factor for what is not known: 1.5 allowable stress, 1/0.9 load and resistance factors", NONE,
            Limits::ours(1.0, 3.0), 1.5;
    }
}
takes! {
    /// Design strength in the form of BS 8006-1; kN/m.
    GridReducedBs {
        characteristic: "T_char", "characteristic short-term strength", KN_M, Limits::ours(1.0, 1000.0);
        creep: "RF_CR", "reduction for creep over the design life", NONE, Limits::ours(1.0, 5.0);
        damage: "RF_ID", "reduction for damage when laid", NONE, Limits::ours(1.0, 3.0);
        weather: "RF_W", "reduction for weather", NONE, Limits::ours(1.0, 2.0), 1.0;
        chemistry: "RF_CH", "reduction for chemistry", NONE, Limits::ours(1.0, 3.0), 1.0;
        doubt: "f_s", "factor for the extrapolation of data", NONE, Limits::ours(1.0, 2.0), 1.0;
        ramification: "f_n", "factor for what a failure would do: 1.0 low, 1.1 high", NONE, Limits::author(1.0, 1.1), 1.1;
    }
}
gives! {
    /// Long-term strength by FHWA.
    GridLasting {
        reduction: NONE, "all reductions together";
        lasting: KN_M, "long-term strength";
        allowable: KN_M, "allowable strength";
    }
}
gives! {
    /// Design strength in the form of BS 8006-1.
    GridLastingBs {
        reduction: NONE, "all reductions together";
        design: KN_M, "design strength";
    }
}

/// Long-term and allowable strength.
///
/// # Source
/// FHWA-NHI-10-024 (2009), 3.5.2: T_al = T_ult/(RF_CR RF_ID RF_D); divided by FS for allowable stress (FHWA-NHI-00-043).
/// # Symbols
/// RF reductions, FS factor.
/// # Gives
/// All reductions together, T_al, T_al/FS.
/// # Not for
/// A grid without test reports: RF 7 in all is the default there (NHI-10-024, Table 3-12, from memory).
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// T_ult 55, 1.6·1.2·1.1 = 2.112: T_al 26.0, with FS 1.5 17.4 kN/m (GG-01).
pub fn grid_strength_fhwa<N: Number>(i: &GridReduced<N>) -> GridLasting<N> {
    let reduction = (i.creep * i.damage * i.durability).named("RF", Unit::NONE);
    let lasting = (i.ultimate / reduction).named("T_al", Unit::KN_M);
    GridLasting { reduction, lasting, allowable: (lasting / i.factor).named("T_a", Unit::KN_M) }
}

/// Design strength in the form of BS 8006-1.
///
/// # Source
/// BS 8006-1:2010, 5.3.3 and Annex A: T_D = T_char/(RF_ID RF_W RF_CH RF_CR f_s), with f_n for the ramification of failure. From memory.
/// # Symbols
/// RF reductions, f_s doubt, f_n ramification.
/// # Gives
/// All reductions together and T_D/f_n.
/// # Not for
/// A grid without certificate.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 55/(1.5·1.1·1.0·1.05·1.0·1.1) = 28.9 kN/m (GG-02).
pub fn grid_strength_bs<N: Number>(i: &GridReducedBs<N>) -> GridLastingBs<N> {
    let reduction = (i.creep * i.damage * i.weather * i.chemistry * i.doubt).named("f_m", Unit::NONE);
    GridLastingBs { reduction, design: (i.characteristic / (reduction * i.ramification)).named("T_D", Unit::KN_M) }
}

/// Working of [`grid_strength_fhwa`].
pub static GRID_STRENGTH_FHWA: Working = Working {
    name: "grid/strength-fhwa",
    title: "Long-term and allowable strength of a geogrid (FHWA).",
    source: Source { work: "FHWA-NHI-10-024, 2009", place: "3.5.2; from memory" },
    not_for: "a grid without test reports",
    inputs: GridReduced::INPUTS,
    outputs: GridLasting::OUTPUTS,
    run: |g| grid_strength_fhwa(&GridReduced::put(g)?).found(),
};

/// Working of [`grid_strength_bs`].
pub static GRID_STRENGTH_BS: Working = Working {
    name: "grid/strength-bs8006",
    title: "Design strength of a geogrid in the form of BS 8006-1.",
    source: Source { work: "BS 8006-1:2010", place: "5.3.3, Annex A; from memory" },
    not_for: "a grid without certificate",
    inputs: GridReducedBs::INPUTS,
    outputs: GridLastingBs::OUTPUTS,
    run: |g| grid_strength_bs(&GridReducedBs::put(g)?).found(),
};
