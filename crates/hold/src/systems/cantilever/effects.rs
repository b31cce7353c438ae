//! With which moment and shear are stem, toe and heel bent?

use groundhold_earth::Combination;
use groundhold_earth::basis::Margin;
use groundhold_earth::external::Stability;
use groundhold_quantity::Length;
use groundhold_working::{Refused, Trace};

use super::body::Laid;
use super::{CONCRETE, Made};
use crate::gravity::{Gravity, Spot, actions, behind, stands_on};
use crate::loads::{UNFACTORED, is_accident, strips};
use crate::{LoadCase, Strip, WallCase};

/// What bends a section, per metre: kNm and kN.
#[derive(Debug, Clone)]
pub(crate) struct Effect {
    pub moment: f64,
    pub shear: f64,
    pub traces: Vec<Trace>,
}

/// All three sections.
pub(crate) struct Effects {
    pub stem: Effect,
    pub toe: Effect,
    pub heel: Effect,
}

/// Loads and soil as they are, and one factor over what they do: concrete by ACI 318 where the basis has global factors.
/// ASCE 7-16 2.3.1, 1.6 on earth; from memory.
const US: f64 = 1.6;
/// The same by EN 1992-1-1 with global factors: 1.35 on what stays, 1.5 on what comes and goes; 1.5 over all. EN 1990 A1.
const EN: f64 = 1.5;
/// In an accident, with loads as they are. ACI: common practice, no source. EN 1990 6.4.3.3: 1.0.
const US_ACCIDENT: f64 = 1.2;

/// The factors for the sections: those on the loads, and one over what they do.
fn factors(
    case: &WallCase,
    laid: &Laid,
    state: LoadCase,
    c: &'static Combination,
    part: Made,
) -> (&'static Combination, f64) {
    let eurocode = laid.spec.by_eurocode(case);
    let accident = is_accident(case, state);
    // TMS 402 takes effects as they are.
    if part == Made::Block && !eurocode {
        return (&UNFACTORED, 1.0);
    }
    match (case.basis.margin, eurocode, accident) {
        (Margin::PartialFactors, _, _) => (c, 1.0),
        (Margin::GlobalFactors, true, false) => (&UNFACTORED, EN),
        (Margin::GlobalFactors, true, true) => (&UNFACTORED, 1.0),
        (Margin::GlobalFactors, false, false) => (&UNFACTORED, US),
        (Margin::GlobalFactors, false, true) => (&UNFACTORED, US_ACCIDENT),
    }
}

/// What bends stem, toe and heel of a strip, in one state with one set of factors.
///
/// # Errors
/// As the pressure theory refuses, or where the wall floats.
pub(crate) fn of(
    case: &WallCase,
    laid: &Laid,
    spot: &Spot,
    state: LoadCase,
    c: &'static Combination,
) -> Result<Effects, Refused> {
    let stem = stem(case, laid, spot, state, factors(case, laid, state, c, laid.spec.made))?;
    let (comb, scale) = factors(case, laid, state, c, Made::Concrete);
    let (mut toe, mut heel) = footing(case, laid, spot, state, (comb, scale, comb.permanent_favourable))?;
    // Where weights are raised like loads, the worse of both.
    if comb.permanent > comb.permanent_favourable {
        let (t, h) = footing(case, laid, spot, state, (comb, scale, comb.permanent))?;
        toe = worse(toe, t);
        heel = worse(heel, h);
    }
    Ok(Effects { stem, toe, heel })
}

fn worse(a: Effect, b: Effect) -> Effect {
    let shear = a.shear.max(b.shear);
    if b.moment > a.moment { Effect { shear, ..b } } else { Effect { shear, ..a } }
}

fn stem(
    case: &WallCase,
    laid: &Laid,
    spot: &Spot,
    state: LoadCase,
    (c, scale): (&'static Combination, f64),
) -> Result<Effect, Refused> {
    let body = laid.body(&spot.strip);
    let a = actions(case, c, state, spot, &body, laid.spec.footing.to_m(), 1.0)?;
    let sum = |of: fn(&(f64, f64)) -> f64| a.pushes.iter().map(of).sum::<f64>() * scale;
    let traces = a.active.iter().map(|a| a.trace.clone()).collect();
    Ok(Effect { moment: sum(|p| p.0 * p.1), shear: sum(|p| p.0), traces })
}

/// Pressure of the ground along the base, from the toe: two straight pieces, the second of which may be nothing.
struct Pressed {
    toe: f64,
    heel: f64,
    from: f64,
    to: f64,
}

impl Pressed {
    fn of(s: &Stability, width: f64) -> Pressed {
        let (toe, heel) =
            (s.pressure_toe.map_or(f64::INFINITY, |p| p.to_kpa()), s.pressure_heel.map_or(0.0, |p| p.to_kpa()));
        let x = width / 2.0 - s.eccentricity.to_m();
        match () {
            () if heel <= 0.0 => Pressed { toe, heel: 0.0, from: 0.0, to: (3.0 * x).clamp(1e-6, width) },
            () if toe <= 0.0 => {
                Pressed { toe: 0.0, heel, from: (width - 3.0 * (width - x)).clamp(0.0, width - 1e-6), to: width }
            }
            () => Pressed { toe, heel, from: 0.0, to: width },
        }
    }
    fn at(&self, x: f64) -> f64 {
        self.toe + (self.heel - self.toe) * (x - self.from) / (self.to - self.from)
    }
    /// Force between two places, and its moment about `about`.
    fn between(&self, a: f64, b: f64, about: f64) -> (f64, f64) {
        let (a, b) = (a.max(self.from), b.min(self.to));
        if b <= a {
            return (0.0, 0.0);
        }
        let (p, q) = (self.at(a), self.at(b));
        let force = (p + q) / 2.0 * (b - a);
        let lever = |x: f64| (x - about).abs();
        // A trapezium: each end's ordinate with two thirds of the lever at its own end and a third at the other.
        let moment = (b - a) / 6.0 * (p * (2.0 * lever(a) + lever(b)) + q * (lever(a) + 2.0 * lever(b)));
        (force, moment)
    }
}

fn footing(
    case: &WallCase,
    laid: &Laid,
    spot: &Spot,
    state: LoadCase,
    (c, scale, own): (&'static Combination, f64, f64),
) -> Result<(Effect, Effect), Refused> {
    let (body, s) = (laid.body(&spot.strip), laid.spec);
    let a = actions(case, c, state, spot, &body, 0.0, own)?;
    let none = || Effect { moment: 0.0, shear: 0.0, traces: vec![] };
    let Some((stands, traces)) = stands_on(&a, 0.5)? else { return Ok((none(), none())) };
    let width = a.front - a.back;
    let pressed = Pressed::of(&stands, width);
    let weight = CONCRETE.to_kn_per_m3() * s.footing.to_m() * own;
    let toe_long = s.toe.to_m();
    let (up, turn) = pressed.between(0.0, toe_long, toe_long);
    let toe = Effect {
        moment: (turn - weight * toe_long * toe_long / 2.0) * scale,
        shear: (up - weight * toe_long) * scale,
        traces: traces.clone(),
    };
    let from = toe_long + s.stem.to_m();
    let long = (width - from).max(0.0);
    let (up, turn) = pressed.between(from, width, from);
    let b = behind(spot);
    let rise = b.slope.to_ratio().max(0.0);
    let gamma = case.retained_soil.unit_weight.to_kn_per_m3();
    let soil = gamma * ((b.ground - s.footing.to_m()).max(0.0) + rise * long / 2.0) * own;
    let down = weight + soil + loads_on_heel(case, laid, &spot.strip, c) / long.max(1e-6);
    // The thrust of a rising ground pulls down at the end of the heel.
    let turned = a.active.as_ref().map_or(0.0, |t| t.vertical.to_kn_per_m()) * c.permanent;
    let heel = Effect {
        moment: ((down * long / 2.0 + turned) * long - turn) * scale,
        shear: (down * long + turned - up) * scale,
        traces,
    };
    Ok((toe, heel))
}

/// Loads on the ground over the heel, kN/m.
fn loads_on_heel(case: &WallCase, laid: &Laid, strip: &Strip, c: &Combination) -> f64 {
    let (from, to) = (laid.spec.stem, strip.width);
    let one = |s: groundhold_earth::Strip| {
        let over: Length = s.to.min(to) - s.from.max(from);
        s.value.to_kpa() * over.to_m().max(0.0) * if s.permanent { c.permanent } else { c.variable }
    };
    strips(case).into_iter().map(one).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_triangle_of_pressure_bends_the_toe_as_by_hand() {
        // 60 kPa at the toe, nothing 0.9 m behind it; toe of 0.3 m: 60 and 40 kPa over it.
        let p = Pressed { toe: 60.0, heel: 0.0, from: 0.0, to: 0.9 };
        let (force, moment) = p.between(0.0, 0.3, 0.3);
        assert!((force - 15.0).abs() < 1e-9);
        // 40 · 0.3²/2 + 20/2 · 0.3 · 0.2 = 1.8 + 0.6.
        assert!((moment - 2.4).abs() < 1e-9, "{moment}");
        assert_eq!(p.between(0.95, 1.2, 0.95), (0.0, 0.0));
    }
}
