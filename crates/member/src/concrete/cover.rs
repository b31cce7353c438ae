//! How much concrete must cover the steel?

use groundhold_quantity::Length;

use super::Rules;

/// What the concrete stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Dry or always under water (XC1).
    Dry,
    /// Wet, seldom dry: foundations (XC2), or moderately damp (XC3).
    Wet,
    /// Wet and dry by turns: a wall in the rain (XC4).
    Turns,
    /// Salt in the air, or spray from roads (XD1, XS1).
    Salt,
    /// Splash of salt water (XD3, XS3).
    Splash,
}

/// What the concrete is cast against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CastAgainst {
    /// A form.
    Form,
    /// A blinding or prepared ground.
    Blinding,
    /// Bare soil.
    Soil,
}

/// Nominal cover to the steel.
///
/// EN 1992-1-1:2004: Table 4.4N, structural class S4 (15, 25, 30, 35, 45 mm), 10 mm more for deviation (4.4.1.3), 40 mm on
/// prepared ground and 75 mm on soil. ACI 318-19, Table 20.5.1.3.1: 3 in on soil, 2 in exposed to weather (1.5 in for No. 5
/// and smaller, not used here), 1.5 in inside; salt and splash 2.5 in (R20.5.1.4, from memory).
pub fn least_cover(rules: Rules, exposure: Exposure, against: CastAgainst) -> Length {
    let mm = match rules {
        Rules::En1992 => {
            let durable = match exposure {
                Exposure::Dry => 15.0,
                Exposure::Wet => 25.0,
                Exposure::Turns => 30.0,
                Exposure::Salt => 35.0,
                Exposure::Splash => 45.0,
            };
            let ground: f64 = match against {
                CastAgainst::Form => 0.0,
                CastAgainst::Blinding => 40.0,
                CastAgainst::Soil => 75.0,
            };
            ground.max(durable + 10.0)
        }
        Rules::Aci318 => {
            let weather: f64 = match exposure {
                Exposure::Dry => 38.1,
                Exposure::Wet | Exposure::Turns => 50.8,
                Exposure::Salt | Exposure::Splash => 63.5,
            };
            if against == CastAgainst::Soil { weather.max(76.2) } else { weather }
        }
    };
    Length::mm(mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bare_soil_never_asks_for_less_cover_than_a_form_and_wetter_never_for_less() {
        use Exposure::*;
        for rules in [Rules::En1992, Rules::Aci318] {
            let mut before = Length::ZERO;
            for exposure in [Dry, Wet, Turns, Salt, Splash] {
                let form = least_cover(rules, exposure, CastAgainst::Form);
                assert!(before <= form && form <= least_cover(rules, exposure, CastAgainst::Soil));
                before = form;
            }
        }
        assert_eq!(least_cover(Rules::En1992, Turns, CastAgainst::Form), Length::mm(40.0));
    }
}
