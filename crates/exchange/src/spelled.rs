//! How is a quantity spelled in a file, short where that is exact, so that it reads back bit for bit?

use groundhold_quantity::{
    Angle, Density, Length, Level, Mass, Pressure, Quantity, RainIntensity, Share, Slope, Time, UnitWeight, Volume,
    parse,
};

/// The first spelling that reads back as the same quantity, in quotes; the last where none does.
fn exact<Q: Quantity>(q: Q, spellings: impl IntoIterator<Item = String>) -> String {
    let mut last = String::new();
    for text in spellings {
        let same = parse::<Q>(&text).is_ok_and(|read| read.in_si().to_bits() == q.in_si().to_bits());
        last = text;
        if same {
            break;
        }
    }
    format!("\"{last}\"")
}

/// With at most so many decimals and without zeros at its end.
fn short(v: f64, decimals: usize) -> String {
    let text = format!("{v:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".into() } else { text.into() }
}

pub(crate) fn length(l: Length) -> String {
    let (mm, m) = (short(l.to_mm(), 1), format!("{:.3} m", l.to_m()));
    let small = l.to_m().abs() < 1.0;
    let near = if small { format!("{mm} mm") } else { short(l.to_m(), 2) + " m" };
    exact(l, [near, m, format!("{} m", l.to_m())])
}

/// A coordinate in metres.
pub(crate) fn metres(v: f64) -> String {
    exact(Length::m(v), [format!("{} m", short(v, 3)), format!("{v} m")])
}
pub(crate) fn level(l: Level) -> String {
    exact(l, [format!("{:.3} m", l.to_m()), format!("{} m", l.to_m())])
}
pub(crate) fn slope(s: Slope) -> String {
    let ratio = if s.to_ratio() == 0.0 { "0 %".into() } else { format!("1:{}", short(s.to_one_in(), 3)) };
    exact(s, [ratio, format!("{} %", short(s.to_percent(), 3)), format!("{}:1", s.to_ratio())])
}
pub(crate) fn share(s: Share) -> String {
    exact(s, [format!("{} %", short(s.to_percent(), 3)), format!("{}", s.to_fraction())])
}
pub(crate) fn pressure(p: Pressure) -> String {
    exact(p, [format!("{} kPa", short(p.to_kpa(), 4)), format!("{} Pa", p.to_pa())])
}
pub(crate) fn unit_weight(g: UnitWeight) -> String {
    exact(g, [format!("{} kN/m3", short(g.to_kn_per_m3(), 4)), format!("{} kN/m3", g.to_kn_per_m3())])
}
pub(crate) fn angle(a: Angle) -> String {
    exact(a, [format!("{} deg", short(a.to_deg(), 3)), format!("{} rad", a.to_rad())])
}
pub(crate) fn rain(r: RainIntensity) -> String {
    exact(r, [format!("{} mm/h", short(r.to_mm_per_h(), 3)), format!("{} mm/h", r.to_mm_per_h())])
}
pub(crate) fn mass(m: Mass) -> String {
    let tonnes = format!("{} t", short(m.to_t(), 3));
    let kilograms = [format!("{} kg", short(m.to_kg(), 4)), format!("{} kg", m.to_kg())];
    let heavy = (m.to_kg() >= 1000.0).then_some(tonnes);
    exact(m, heavy.into_iter().chain(kilograms))
}
pub(crate) fn volume(v: Volume) -> String {
    let litres = (v.to_litre() < 100.0).then(|| format!("{} l", short(v.to_litre(), 3)));
    exact(v, litres.into_iter().chain([format!("{} m3", short(v.to_m3(), 3)), format!("{} m3", v.to_m3())]))
}
pub(crate) fn time(t: Time) -> String {
    exact(t, [format!("{} h", short(t.to_h(), 3)), format!("{} s", t.to_s())])
}
pub(crate) fn density(d: Density) -> String {
    exact(d, [format!("{} kg/m3", short(d.to_kg_per_m3(), 3)), format!("{} kg/m3", d.to_kg_per_m3())])
}

/// A bare number.
pub(crate) fn number(v: f64) -> String {
    format!("{v}")
}

/// Two sizes in millimetres, without quotes: `125x125`.
pub(crate) fn sizes(a: Length, b: Length) -> String {
    format!("{}x{}", short(a.to_mm(), 3), short(b.to_mm(), 3))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_people_write_is_spelled_as_they_write_it() {
        assert_eq!(length(Length::mm(450.0)), "\"450 mm\"");
        assert_eq!(length(Length::m(1.2)), "\"1.2 m\"");
        assert_eq!(level(Level::m(101.08)), "\"101.080 m\"");
        assert_eq!(slope(Slope::one_in(1.5)), "\"1:1.5\"");
        assert_eq!(slope(Slope::LEVEL), "\"0 %\"");
        assert_eq!(share(Share::percent(21.0)), "\"21 %\"");
        assert_eq!(mass(Mass::t(2.5)), "\"2.5 t\"");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn any_length_level_and_slope_reads_back_bit_for_bit(v in -5000.0f64..5000.0) {
            let read = |t: String| t.trim_matches('"').to_string();
            prop_assert_eq!(parse::<Length>(&read(length(Length::m(v)))).unwrap(), Length::m(v));
            prop_assert_eq!(parse::<Level>(&read(level(Level::m(v)))).unwrap(), Level::m(v));
            prop_assert_eq!(parse::<Slope>(&read(slope(Slope::ratio(v)))).unwrap(), Slope::ratio(v));
            prop_assert_eq!(parse::<Pressure>(&read(pressure(Pressure::pa(v)))).unwrap(), Pressure::pa(v));
        }
    }
}
