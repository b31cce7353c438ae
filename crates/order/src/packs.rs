//! How many packs is that, with the allowance for waste and less what is on site?

use groundhold_quantity::Share;
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Trace, Unit, Working, check_range};

/// What [`packs_of`] finds, in units of sale but for `packs`.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Packed {
    /// With the allowance.
    pub gross: f64,
    /// Whole packs to buy.
    pub packs: f64,
    /// Units in them.
    pub bought: f64,
    /// The working.
    pub trace: Trace,
}

/// Nearer than this share of itself a figure counts as the whole number it nearly is, so that 3 × 0.1 is not 4 tenths.
const NEARLY_WHOLE: f64 = 1e-9;

/// The least whole number not below `x`, forgiving the last digits of a sum.
pub(crate) fn round_up(x: f64) -> f64 {
    (x - NEARLY_WHOLE * x.abs().max(1.0)).ceil().max(0.0)
}

/// Rounds up and writes it as an addition, so that the sheet shows what was added.
pub(crate) fn up<N: Number>(x: N) -> N {
    x + (round_up(x.value()) - x.value())
}

/// Whole packs for a net quantity.
///
/// # Source
/// Arithmetic of every estimate; the shares for waste are common practice, no source: boards 5–10 %, stone 10 %,
/// blocks 5–10 %, turf 5 %.
/// # Symbols
/// | Q | net quantity, in units of sale | ≥ 0 |
/// | w | allowance for waste | 0–100 % (ours) |
/// | p | units in a pack | > 0 |
/// | h | units on hand already | ≥ 0 |
/// # Gives
/// Gross quantity, whole packs to buy, units in them. Never fewer units than the gross quantity less what is on hand.
/// # Not for
/// Boards cut to length: the cutting list counts its own offcuts.
/// # Errors
/// None of its own; [`PACKS`] checks the limits.
/// # By hand
/// 49.5 m² of fabric and 10 % on top is 54.45 m²; in packs of 25 m² that is 2.178, so 3 packs, 75 m².
pub(crate) fn packs<N: Number>(net: N, waste: N, pack: N, on_hand: N) -> (N, N, N) {
    let gross = (net * (waste / 100.0 + 1.0)).named("G", Unit::NONE);
    let exact = ((gross - on_hand) / pack).named("n₀", Unit::NONE);
    let whole = up(exact).named("n", Unit::NONE);
    let bought = (whole * pack).named("B", Unit::NONE);
    (gross, whole, bought)
}

/// `order/waste`: gross quantity and whole packs.
pub static PACKS: Working = Working {
    name: "order/waste",
    title: "Whole packs for a net quantity, with the allowance for waste and less what is on hand.",
    source: Source { work: "Common practice, no source", place: "arithmetic of an estimate" },
    not_for: "Boards cut to length: the cutting list counts its own offcuts.",
    inputs: &[
        Input::new("net", "Q", "net quantity in units of sale", Unit::NONE, Limits::ours(0.0, 1e9)),
        Input::new("waste", "w", "allowance for waste", Unit::PERCENT, Limits::ours(0.0, 100.0)).or(0.0),
        Input::new("pack", "p", "units in a pack", Unit::NONE, Limits::ours(1e-6, 1e9)).or(1.0),
        Input::new("on_hand", "h", "units on hand already", Unit::NONE, Limits::ours(0.0, 1e9)).or(0.0),
    ],
    outputs: &[
        Output { key: "gross", words: "quantity with waste", unit: Unit::NONE },
        Output { key: "packs", words: "whole packs", unit: Unit::NONE },
        Output { key: "bought", words: "units in them", unit: Unit::NONE },
    ],
    run: |g| {
        let (a, b, c) = packs(g.one("net")?, g.one("waste")?, g.one("pack")?, g.one("on_hand")?);
        Ok(vec![Found::One(a), Found::One(b), Found::One(c)])
    },
};

/// Whole packs of `pack` units for `net` units and an allowance, less `on_hand` units.
///
/// # Errors
/// [`groundhold_working::Refused::OutOfRange`] for a negative or undefined quantity, or a pack of nothing.
pub(crate) fn packs_of(net: f64, waste: Share, pack: f64, on_hand: f64) -> Result<Packed> {
    let given = [net, waste.to_percent(), pack, on_hand];
    PACKS.inputs.iter().zip(given).try_for_each(|(row, v)| check_range(PACKS.name, row, v))?;
    let (gross, whole, bought) = packs(net, waste.to_percent(), pack, on_hand);
    let trace = Trace::new(&PACKS, given.iter().map(|v| (*v).into()).collect());
    Ok(Packed { gross, packs: whole, bought, trace })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_pack_is_opened_only_when_it_is_needed() {
        assert_eq!(packs_of(200.0, Share::ZERO, 50.0, 0.0).unwrap().packs, 4.0);
        assert_eq!(packs_of(200.001, Share::ZERO, 50.0, 0.0).unwrap().packs, 5.0);
        assert_eq!(packs_of(0.1 + 0.2, Share::ZERO, 0.1, 0.0).unwrap().packs, 3.0);
        assert_eq!(packs_of(10.0, Share::ZERO, 1.0, 12.0).unwrap().packs, 0.0);
        assert!(packs_of(-1.0, Share::ZERO, 1.0, 0.0).is_err());
        assert!(packs_of(1.0, Share::ZERO, 0.0, 0.0).unwrap_err().to_string().contains("units in a pack"));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn what_is_bought_covers_the_gross_and_never_a_pack_more(q in 0.0f64..1e4, w in 0.0f64..30.0, p in 0.1f64..60.0) {
            let got = packs_of(q, Share::percent(w), p, 0.0).unwrap();
            prop_assert!(got.bought >= got.gross - 1e-6 * got.gross.max(1.0));
            prop_assert!(got.bought - p < got.gross || got.packs == 0.0);
            let sheet = got.trace.sheet().unwrap();
            prop_assert_eq!(&sheet.values[1], &groundhold_working::Value::One(got.packs));
        }
    }
}
