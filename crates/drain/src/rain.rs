//! How hard does it rain for how long?

use groundhold_quantity::{Length, RainIntensity, Time, math};
use groundhold_working::{Found, Input, Limits, Number, Output, Result, Source, Unit, Working};

/// The rain that the drain is made for.
#[derive(Debug, Clone, PartialEq)]
pub struct Rain {
    /// Intensity that holds for every duration where no curve is given.
    pub intensity: RainIntensity,
    /// Who says so.
    pub source: String,
    /// Intensities by duration of one return period, shortest first; empty where only one intensity is known.
    pub curve: Vec<(Time, RainIntensity)>,
}

impl Rain {
    /// One intensity whatever the duration.
    pub fn steady(intensity: RainIntensity, source: impl Into<String>) -> Rain {
        Rain { intensity, source: source.into(), curve: vec![] }
    }
    /// The intensity of a rain of this duration: straight between two rows on logarithmic scales, that of the nearest
    /// row beyond the ends.
    pub fn at(&self, duration: Time) -> RainIntensity {
        let (Some(first), Some(last)) = (self.curve.first(), self.curve.last()) else { return self.intensity };
        if duration <= first.0 {
            return first.1;
        }
        if duration >= last.0 {
            return last.1;
        }
        let after = self.curve.iter().position(|row| row.0 >= duration).unwrap_or(1).max(1);
        let ((d0, i0), (d1, i1)) = (self.curve[after - 1], self.curve[after]);
        let found = between(duration.to_min(), [d0.to_min(), d1.to_min()], [i0.to_mm_per_h(), i1.to_mm_per_h()]);
        RainIntensity::mm_per_h(found)
    }
    /// Depth of rain that falls in this duration.
    pub fn depth(&self, duration: Time) -> Length {
        Length::m(self.at(duration).to_m_per_s() * duration.to_s())
    }
    /// Why the curve cannot be read; `None` where it can.
    pub(crate) fn wrong(&self) -> Option<String> {
        let all = std::iter::once(&self.intensity).chain(self.curve.iter().map(|r| &r.1));
        if let Some(i) = all.into_iter().find(|i| !(0.0..=500.0).contains(&i.to_mm_per_h())) {
            return Some(format!("the rain intensity is {} mm/h; expected 0 to 500 mm/h.", i.to_mm_per_h()));
        }
        if self.curve.iter().any(|r| !(r.0.to_min() > 0.0 && r.1.to_mm_per_h() > 0.0 && r.0.is_finite())) {
            return Some("a duration or an intensity of the rain is not above nothing.".into());
        }
        let back = self.curve.windows(2).position(|w| w[1].0 <= w[0].0)?;
        Some(format!("row {} of the rain lasts no longer than the row before; shortest first.", back + 2))
    }
}

/// Intensity between two rows of a table, straight on logarithmic scales.
///
/// # Source
/// Interpolation; curves of intensity against duration are nearly straight on logarithmic scales (FHWA HEC-22, 3rd ed.
/// (2009), 3.2.2.2, Figure 3-1, from memory).
/// # Symbols
/// D duration (min), D_i and i_i durations and intensities of the rows on both sides (min, mm/h).
/// # Gives
/// i = i_1·(D/D_1)^b with b = ln(i_2/i_1)/ln(D_2/D_1), mm/h.
/// # Not for
/// Durations outside the two rows.
/// # Errors
/// None of its own.
/// # By hand
/// Reference case HY-IDF.
pub(crate) fn between<N: Number>(duration: N, durations: [N; 2], intensities: [N; 2]) -> N {
    let b = (intensities[1] / intensities[0]).ln() / (durations[1] / durations[0]).ln();
    let b = b.named("b", Unit::NONE);
    let share = (b * (duration / durations[0]).ln()).exp();
    (intensities[0] * share).named("i", Unit::MM_H)
}

/// The working of `between`.
pub static RAIN_BETWEEN: Working = Working {
    name: "water/rain-between",
    title: "How hard does it rain for a duration between two rows of a rain table?",
    source: Source {
        work: "interpolation on logarithmic scales; FHWA HEC-22, 3rd ed. (2009)",
        place: "Figure 3-1, from memory",
    },
    not_for: "durations outside the two rows",
    inputs: &[
        Input::new("duration", "D", "duration", Unit("min"), Limits::ours(0.1, 20_000.0)),
        Input::new("durations", "D", "durations of the two rows", Unit("min"), Limits::ours(0.1, 20_000.0)),
        Input::new("intensities", "i", "intensities of the two rows", Unit::MM_H, Limits::ours(0.01, 500.0)),
    ],
    outputs: &[Output { key: "intensity", words: "rain intensity", unit: Unit::MM_H }],
    run: |g| {
        let two = |key: &str| -> Result<_> {
            g.many(key)?.try_into().map_err(|_| g.no_answer(format!("`{key}` needs two values")))
        };
        Ok(vec![Found::One(between(g.one("duration")?, two("durations")?, two("intensities")?))])
    },
};

/// Natural order of durations that a soakaway is tried with, minutes: BRE Digest 365 (1991), Table 1, from memory.
pub(crate) const DURATIONS_MIN: [f64; 10] = [5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0, 360.0, 600.0, 1440.0];

/// Share of one size between two others on a logarithmic scale.
pub(crate) fn log_share(x: f64, a: f64, b: f64) -> f64 {
    math::ln(x / a) / math::ln(b / a)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve() -> Rain {
        let row = |min: f64, mm: f64| (Time::min_(min), RainIntensity::mm_per_h(mm));
        Rain { curve: vec![row(5.0, 100.0), row(10.0, 75.0), row(60.0, 25.0)], ..Rain::steady(row(1.0, 60.0).1, "") }
    }

    #[test]
    fn the_rows_themselves_are_kept_and_the_ends_are_held() {
        let r = curve();
        for (d, i) in [(1.0, 100.0), (5.0, 100.0), (10.0, 75.0), (60.0, 25.0), (600.0, 25.0)] {
            assert!((r.at(Time::min_(d)).to_mm_per_h() - i).abs() < 1e-9, "{d} min");
        }
        let mid = r.at(Time::min_(20.0)).to_mm_per_h();
        assert!(mid < 75.0 && mid > 25.0);
        let steady = RainIntensity::mm_per_h(60.0);
        assert_eq!(Rain::steady(steady, "x").at(Time::h(3.0)), steady);
    }

    #[test]
    fn a_curve_that_goes_back_in_time_is_refused_with_its_row() {
        let mut r = curve();
        r.curve.swap(1, 2);
        assert!(r.wrong().unwrap().contains("row 3"), "{:?}", r.wrong());
        assert!(curve().wrong().is_none());
    }
}
