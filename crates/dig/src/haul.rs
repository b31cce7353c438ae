//! How much does bank soil come to, loose and compacted?

use groundhold_quantity::Volume;
use groundhold_working::{Found, Input, Limits, Number, Output, Source, Trace, Unit, Working};

use crate::Factors;

/// Bank volume loose and compacted, and the bank needed for as much compacted.
///
/// # Source
/// US Army FM 5-434 (2000), Table 1-1.
/// # Symbols
/// B bank volume (m³), k_l loose and k_c compacted volume from one of bank.
/// # Gives
/// Loose and compacted volume, and the bank volume from which B compacted is made, m³.
/// # Not for
/// Drying, wetting or mixing of soils; the factors are averages of a class.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case EW-08: clay, 100 bank: 143 loose, 90 compacted, 111.1 bank for 100 compacted.
pub(crate) fn haul<N: Number>(bank: N, to_loose: N, to_compacted: N) -> [N; 3] {
    [
        (bank * to_loose).named("V_loose", Unit::M3),
        (bank * to_compacted).named("V_comp", Unit::M3),
        (bank / to_compacted).named("B_needed", Unit::M3),
    ]
}

/// The working of `haul`.
pub static HAUL: Working = Working {
    name: "earthwork/haul",
    title: "What does bank soil come to, loose on the lorry and compacted in the fill?",
    source: Source { work: "US Army FM 5-434, Earthmoving Operations (2000)", place: "Table 1-1" },
    not_for: "drying, wetting or mixing of soils; the factors are averages of a class",
    inputs: &[
        Input::new("bank", "B", "volume in the bank", Unit::M3, Limits::ours(0.0, 1e6)),
        Input::new("to_loose", "k_l", "loose volume from one of bank", Unit::NONE, Limits::ours(1.0, 2.0)),
        Input::new("to_compacted", "k_c", "compacted volume from one of bank", Unit::NONE, Limits::ours(0.5, 1.5)),
    ],
    outputs: &[
        Output { key: "loose", words: "loose", unit: Unit::M3 },
        Output { key: "compacted", words: "compacted", unit: Unit::M3 },
        Output { key: "bank_for_compacted", words: "bank needed for as much compacted", unit: Unit::M3 },
    ],
    run: |g| {
        let found = haul(g.one("bank")?, g.one("to_loose")?, g.one("to_compacted")?);
        Ok(found.into_iter().map(Found::One).collect())
    },
};

/// Bank volume in the other two states, loose and compacted, with the working.
pub fn in_states(bank: Volume, soil: &Factors) -> (Volume, Volume, Trace) {
    let (b, l, c) = (bank.to_m3(), soil.bank_to_loose, soil.bank_to_compacted);
    let [loose, compacted, _] = haul(b, l, c);
    (Volume::m3(loose), Volume::m3(compacted), Trace::new(&HAUL, vec![b.into(), l.into(), c.into()]))
}
