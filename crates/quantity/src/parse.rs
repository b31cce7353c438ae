//! From the text people write ("4 ft 6 in", "1:40", "35 deg") to a quantity, or a message that says what was expected.

use crate::{Level, math};

/// Which quantity is being read; decides which units are understood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Kind {
    Length,
    Area,
    Volume,
    Angle,
    Slope,
    Share,
    Force,
    LineForce,
    Moment,
    Pressure,
    UnitWeight,
    Mass,
    Density,
    Flow,
    RainIntensity,
    Time,
    Level,
}

/// A quantity that can be read from text.
pub trait Quantity: Sized + Copy {
    /// What it is called in a message.
    const WORDS: &'static str;
    /// How it may be written.
    const EXAMPLE: &'static str;
    /// Which units it understands.
    const KIND: Kind;
    /// From the SI base unit.
    fn from_si(value: f64) -> Self;
    /// In the SI base unit.
    fn in_si(self) -> f64;
}

impl Quantity for Level {
    const WORDS: &'static str = "a level with its unit";
    const EXAMPLE: &'static str = "100.250 m";
    const KIND: Kind = Kind::Level;
    fn from_si(value: f64) -> Self {
        Level::m(value)
    }
    fn in_si(self) -> f64 {
        self.to_m()
    }
}

/// The text is not the quantity that was expected.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("found `{found}`, expected {expected}, for example {example}{hint}")]
pub struct NotAQuantity {
    /// What was written.
    pub found: String,
    /// What should stand there.
    pub expected: &'static str,
    /// How it may be written.
    pub example: &'static str,
    /// A way out, or empty.
    pub hint: String,
}

/// Reads a quantity with its unit. A number without a unit is refused, except a plain share.
///
/// # Errors
/// [`NotAQuantity`] says what was found, what was expected and gives an example.
///
/// ```
/// use groundhold_quantity::{parse, Length, Slope};
/// assert_eq!(parse::<Length>("4 ft 6 in").unwrap(), Length::inch(54.0));
/// assert!((parse::<Slope>("1:40").unwrap().to_percent() - 2.5).abs() < 1e-12);
/// assert!(parse::<Length>("1.2").unwrap_err().to_string().contains("unit"));
/// ```
pub fn parse<Q: Quantity>(text: &str) -> Result<Q, NotAQuantity> {
    let refuse = |hint: String| NotAQuantity {
        found: text.chars().take(60).collect(),
        expected: Q::WORDS,
        example: Q::EXAMPLE,
        hint,
    };
    let t = text.trim().replace('−', "-");
    if t.is_empty() {
        return Err(refuse("; it is empty".into()));
    }
    if t.len() > 60 {
        return Err(refuse("; it is too long".into()));
    }
    if let (Kind::Slope, Some(v)) = (Q::KIND, ratio(&t)) {
        return Ok(Q::from_si(v));
    }
    let mut sum = 0.0_f64;
    let mut rest = t.as_str();
    let negative = rest.starts_with('-');
    let mut first = true;
    while !rest.is_empty() {
        let (number, after) = leading_number(rest).ok_or_else(|| refuse(String::new()))?;
        let after = after.trim_start();
        let end = after.find(|c: char| c == '-' || c == '+' || c.is_whitespace()).unwrap_or(after.len());
        let (unit, next) = after.split_at(end);
        let size = unit_size(Q::KIND, unit).ok_or_else(|| refuse(hint_for(unit, Q::KIND)))?;
        let part = if Q::KIND == Kind::Slope && is_degree(unit) { math::tan(number * size) } else { number * size };
        let joins = Q::KIND == Kind::Length || Q::KIND == Kind::Level || Q::KIND == Kind::Time;
        if !first && (!joins || number < 0.0) {
            return Err(refuse(String::new()));
        }
        sum += if !first && negative { -part } else { part };
        first = false;
        rest = next.trim_start();
    }
    if !sum.is_finite() {
        return Err(refuse("; the number is too large".into()));
    }
    Ok(Q::from_si(sum))
}

fn ratio(t: &str) -> Option<f64> {
    let (a, b) = t.split_once(':')?;
    let (a, b): (f64, f64) = (a.trim().parse().ok()?, b.trim().parse().ok()?);
    (a.is_finite() && b.is_finite() && b != 0.0).then_some(a / b)
}

fn leading_number(t: &str) -> Option<(f64, &str)> {
    let end = t
        .char_indices()
        .find(|&(i, c)| !(c.is_ascii_digit() || c == '.' || (i == 0 && (c == '-' || c == '+'))))
        .map_or(t.len(), |(i, _)| i);
    let value: f64 = t[..end].parse().ok()?;
    value.is_finite().then_some((value, &t[end..]))
}

fn is_degree(unit: &str) -> bool {
    matches!(unit, "deg" | "°")
}

fn hint_for(unit: &str, kind: Kind) -> String {
    if unit.is_empty() {
        "; the unit is missing".into()
    } else if kind == Kind::Length && unit.contains(',') {
        "; write the decimal with a point".into()
    } else {
        format!("; `{unit}` is not a unit of it")
    }
}

fn unit_size(kind: Kind, unit: &str) -> Option<f64> {
    const FT: f64 = 0.3048;
    const LBF: f64 = 4.4482216152605;
    const LB: f64 = 0.45359237;
    let size = match (kind, unit) {
        (Kind::Length | Kind::Level, "m") => 1.0,
        (Kind::Length | Kind::Level, "mm") => 0.001,
        (Kind::Length | Kind::Level, "cm") => 0.01,
        (Kind::Length, "km") => 1000.0,
        (Kind::Length | Kind::Level, "ft" | "'") => FT,
        (Kind::Length | Kind::Level, "in" | "\"") => FT / 12.0,
        (Kind::Length, "yd") => 3.0 * FT,
        (Kind::Area, "m2" | "m²") => 1.0,
        (Kind::Area, "mm2" | "mm²") => 1e-6,
        (Kind::Area, "ft2" | "ft²") => FT * FT,
        (Kind::Volume, "m3" | "m³") => 1.0,
        (Kind::Volume, "l" | "L") => 0.001,
        (Kind::Volume, "yd3" | "yd³") => 27.0 * FT * FT * FT,
        (Kind::Volume, "ft3" | "ft³") => FT * FT * FT,
        (Kind::Angle | Kind::Slope, "deg" | "°") => std::f64::consts::PI / 180.0,
        (Kind::Angle, "rad") => 1.0,
        (Kind::Slope | Kind::Share, "%") => 0.01,
        (Kind::Share, "") => 1.0,
        (Kind::Force, "N") => 1.0,
        (Kind::Force, "kN") => 1000.0,
        (Kind::Force, "lbf") => LBF,
        (Kind::LineForce, "kN/m") => 1000.0,
        (Kind::LineForce, "N/m") => 1.0,
        (Kind::LineForce, "lbf/ft") => LBF / FT,
        (Kind::Moment, "kNm") => 1000.0,
        (Kind::Moment, "Nm") => 1.0,
        (Kind::Pressure, "Pa") => 1.0,
        (Kind::Pressure, "kPa" | "kN/m2" | "kN/m²") => 1000.0,
        (Kind::Pressure, "MPa" | "N/mm2" | "N/mm²") => 1e6,
        (Kind::Pressure, "psf") => LBF / (FT * FT),
        (Kind::Pressure, "psi") => LBF / (FT * FT) * 144.0,
        (Kind::UnitWeight, "kN/m3" | "kN/m³") => 1000.0,
        (Kind::UnitWeight, "pcf") => LBF / (FT * FT * FT),
        (Kind::Mass, "kg") => 1.0,
        (Kind::Mass, "g") => 0.001,
        (Kind::Mass, "t") => 1000.0,
        (Kind::Mass, "lb") => LB,
        (Kind::Density, "kg/m3" | "kg/m³") => 1.0,
        (Kind::Density, "t/m3" | "t/m³") => 1000.0,
        (Kind::Flow, "l/s") => 0.001,
        (Kind::Flow, "m3/s" | "m³/s") => 1.0,
        (Kind::RainIntensity, "mm/h") => 0.001 / 3600.0,
        (Kind::RainIntensity, "in/h") => FT / 12.0 / 3600.0,
        (Kind::Time, "s") => 1.0,
        (Kind::Time, "min") => 60.0,
        (Kind::Time, "h") => 3600.0,
        (Kind::Time, "day" | "days") => 8.0 * 3600.0,
        _ => return None,
    };
    Some(size)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Angle, Length, Pressure, RainIntensity, Share, Slope, Time};
    use proptest::prelude::*;

    #[test]
    fn what_people_write_is_understood() {
        assert_eq!(parse::<Length>("600 mm").unwrap(), Length::m(0.6));
        assert_eq!(parse::<Length>("-0.25 m").unwrap(), Length::m(-0.25));
        assert_eq!(parse::<Length>("-4 ft 6 in").unwrap(), Length::inch(-54.0));
        assert!((parse::<Slope>("14 deg").unwrap().to_ratio() - 0.24932800284318).abs() < 1e-12);
        assert_eq!(parse::<Angle>("35°").unwrap(), Angle::deg(35.0));
        assert_eq!(parse::<Share>("5 %").unwrap(), Share::percent(5.0));
        assert_eq!(parse::<Pressure>("2.5kPa").unwrap(), Pressure::kpa(2.5));
        assert_eq!(parse::<RainIntensity>("60 mm/h").unwrap(), RainIntensity::mm_per_h(60.0));
        assert_eq!(parse::<Time>("2 days").unwrap(), Time::h(16.0));
    }

    #[test]
    fn what_cannot_be_a_length_says_what_was_expected() {
        for (text, part) in [
            ("1,2 m", "a length"),
            ("1.2", "unit is missing"),
            ("", "empty"),
            ("12 kg", "`kg`"),
            ("NaN m", "a length"),
            ("1:40", "a length"),
        ] {
            let said = parse::<Length>(text).unwrap_err().to_string();
            assert!(said.contains(part), "{text}: {said}");
        }
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused_and_never_panics(t in "\\PC*") {
            let _ = parse::<Length>(&t);
            let _ = parse::<Slope>(&t);
        }

        #[test]
        fn a_length_written_in_mm_reads_back(v in -1e6f64..1e6) {
            let text = format!("{v:.3} mm");
            let read: Length = parse(&text).unwrap();
            prop_assert!((read.to_mm() - v).abs() < 1e-3);
        }
    }
}
