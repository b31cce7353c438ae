//! Does a panel of concrete or timber between two steel posts carry the soil?

use groundhold_quantity::{Force, Length, Moment, Pressure};
use groundhold_working::{Limits, Number, Result, Source, Trace, Unit, Working};

use crate::{
    concrete::{self, Strip, StripCheck, check_strip},
    given::{gives, takes},
};

takes! {
    /// A panel on two supports under an even pressure; kPa, m.
    PanelLoad {
        pressure: "p", "pressure at its lower edge, even over its height", KPA, Limits::ours(0.0, 200.0);
        span: "L", "clear span and half of both bearings", M, Limits::ours(0.1, 6.0);
    }
}
gives! {
    /// What a panel is asked to carry, per metre of its height.
    PanelEffects {
        moment: KNM, "moment in the middle, per metre of height";
        shear: KN, "shear at the post, per metre of height";
    }
}

/// Moment and shear of a panel between two posts.
///
/// # Source
/// Statics of a beam on two supports: pL²/8, pL/2.
/// # Symbols
/// p pressure, L span.
/// # Gives
/// Per metre of the panel's height; careful, as the pressure of its lower edge is put on all of it.
/// # Not for
/// Panels held at three or four edges.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// p 8, L 2: 4 kNm/m, 8 kN/m (PA-01).
pub fn panel_effects<N: Number>(i: &PanelLoad<N>) -> PanelEffects<N> {
    PanelEffects {
        moment: (i.pressure * i.span.squared() / 8.0).named("M", Unit::KNM),
        shear: (i.pressure * i.span / 2.0).named("V", Unit::KN),
    }
}

/// Moment and shear of a panel per metre of its height, with their working. For timber put them times the board's height into
/// [`crate::timber::check_member`], or take [`crate::timber::check_board`] with one bay.
///
/// # Errors
/// Where a value is out of range.
pub fn panel(pressure: Pressure, span: Length) -> Result<(Moment, Force, Trace)> {
    let (i, trace) = PanelLoad { pressure: pressure.to_kpa(), span: span.to_m() }.traced(&PANEL_EFFECTS)?;
    let e = panel_effects(&i);
    Ok((Moment::knm(e.moment), Force::kn(e.shear), trace))
}

/// Judges a concrete panel: `factor` is put on the pressure (the codes for concrete want factored effects).
///
/// # Errors
/// Where a value is out of range, or the panel is too thin.
pub fn check_concrete_panel(
    strip: &Strip,
    rules: concrete::Rules,
    pressure: Pressure,
    factor: f64,
    span: Length,
) -> Result<(StripCheck, Trace)> {
    let (moment, shear, trace) = panel(factor * pressure, span)?;
    Ok((check_strip(strip, rules, (moment, shear))?, trace))
}

/// Working of [`panel_effects`].
pub static PANEL_EFFECTS: Working = Working {
    name: "panel/effects",
    title: "Moment and shear of a panel between two posts.",
    source: Source { work: "statics", place: "beam on two supports" },
    not_for: "panels held at three or four edges",
    inputs: PanelLoad::INPUTS,
    outputs: PanelEffects::OUTPUTS,
    run: |g| panel_effects(&PanelLoad::put(g)?).found(),
};
