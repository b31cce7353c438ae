//! How a quantity is written for people, in metric or in feet and inches.

use crate::{Area, Force, Length, Level, Mass, Pressure, Slope, Volume};

/// Which units the people on this job speak. The inside is always SI.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Units {
    /// Metres, millimetres, kilograms, kilonewtons.
    #[default]
    Metric,
    /// Feet, inches, pounds.
    Feet,
}

/// Rounds to `step` (half away from zero).
pub fn round_to(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

/// A number with at most `decimals`, without trailing zeros.
pub fn trim(value: f64, decimals: usize) -> String {
    let mut s = format!("{value:.decimals$}");
    if s.contains('.') {
        s.truncate(s.trim_end_matches('0').trim_end_matches('.').len());
    }
    if s == "-0" { "0".into() } else { s.replace('-', "−") }
}

impl Units {
    /// A length as a builder reads it: whole millimetres, or feet and inches to the eighth.
    pub fn length(self, l: Length) -> String {
        match self {
            Units::Metric => format!("{} mm", trim(l.to_mm(), 0)),
            Units::Feet => feet_and_inches(l),
        }
    }
    /// A longer distance: metres to the centimetre, or feet and inches.
    pub fn run(self, l: Length) -> String {
        match self {
            Units::Metric => format!("{:.2} m", l.to_m()).replace('-', "−"),
            Units::Feet => feet_and_inches(l),
        }
    }
    /// A level above the datum.
    pub fn level(self, l: Level) -> String {
        match self {
            Units::Metric => format!("{:.3} m", l.to_m()).replace('-', "−"),
            Units::Feet => format!("{:.2} ft", Length::m(l.to_m()).to_ft()).replace('-', "−"),
        }
    }
    /// An area.
    pub fn area(self, a: Area) -> String {
        match self {
            Units::Metric => format!("{:.1} m²", a.to_m2()),
            Units::Feet => format!("{:.0} ft²", a.to_ft2()),
        }
    }
    /// A volume of ground, stone or concrete.
    pub fn volume(self, v: Volume) -> String {
        match self {
            Units::Metric => format!("{:.2} m³", v.to_m3()),
            Units::Feet => format!("{:.2} yd³", v.to_yd3()),
        }
    }
    /// A mass.
    pub fn mass(self, m: Mass) -> String {
        match self {
            Units::Metric if m.to_kg() >= 1000.0 => format!("{:.2} t", m.to_t()),
            Units::Metric => format!("{} kg", trim(m.to_kg(), 0)),
            Units::Feet => format!("{} lb", trim(m.to_lb(), 0)),
        }
    }
    /// A force.
    pub fn force(self, f: Force) -> String {
        match self {
            Units::Metric => format!("{:.2} kN", f.to_kn()),
            Units::Feet => format!("{} lbf", trim(f.to_lbf(), 0)),
        }
    }
    /// A pressure.
    pub fn pressure(self, p: Pressure) -> String {
        match self {
            Units::Metric if p.to_kpa().abs() >= 1000.0 => format!("{:.2} MPa", p.to_mpa()),
            Units::Metric => format!("{:.2} kPa", p.to_kpa()),
            Units::Feet => format!("{} psf", trim(p.to_psf(), 0)),
        }
    }
    /// A slope as people say it.
    pub fn slope(self, s: Slope) -> String {
        if s.to_ratio().abs() < 1e-9 { "level".into() } else { format!("1:{}", trim(s.to_one_in().abs(), 1)) }
    }
}

fn feet_and_inches(l: Length) -> String {
    let eighths = (l.to_inch().abs() * 8.0).round() as i64;
    let (feet, rest) = (eighths / 96, eighths % 96);
    let (inches, part) = (rest / 8, rest % 8);
    let part = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"][part as usize];
    let sign = if l.to_m() < 0.0 && eighths > 0 { "−" } else { "" };
    match (feet, inches, part) {
        (0, i, p) => format!("{sign}{i}{p} in"),
        (f, 0, "") => format!("{sign}{f} ft"),
        (f, i, p) => format!("{sign}{f} ft {i}{p} in"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn feet_are_written_with_inches_and_eighths() {
        assert_eq!(Units::Feet.length(Length::inch(54.25)), "4 ft 6¼ in");
        assert_eq!(Units::Feet.length(Length::ft(3.0)), "3 ft");
        assert_eq!(Units::Metric.length(Length::m(0.4504)), "450 mm");
    }
}
