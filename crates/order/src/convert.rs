//! How many units of sale is a need?

use groundhold_quantity::Time;

use crate::{Measured, Need, Price, SoldBy};

/// Hours in a day of hire or labour, where the row does not say what a day holds.
const HOURS_A_DAY: f64 = 8.0;

/// Units of the row's kind that the need takes, net.
///
/// # Errors
/// In words, which figure is missing.
pub(crate) fn units_of(need: &Need, row: &Price) -> Result<f64, String> {
    let q = &need.quantity;
    if !(q.si().is_finite() && q.si() >= 0.0) {
        return Err(format!("{} of {} is not a quantity", q.kind(), q.si()));
    }
    if let Some(units) = held(q, row) {
        return Ok(units);
    }
    let density = row.density.or(need.density);
    let by_mass = |kg: f64| match row.unit {
        SoldBy::Kg => Some(kg),
        SoldBy::T => Some(kg / 1000.0),
        _ => row.mass.filter(|m| m.to_kg() > 0.0).map(|m| kg / m.to_kg()),
    };
    let found = match (q, row.unit) {
        (Measured::Count(n), u) if counts(u) => Some(*n),
        (Measured::Length(l), SoldBy::M) => Some(l.to_m()),
        (Measured::Pieces(_), SoldBy::M) => Some(q.si()),
        (Measured::Area(a), SoldBy::M2) => Some(a.to_m2()),
        (Measured::Volume(v), SoldBy::M3) => Some(v.to_m3()),
        (Measured::Volume(v), SoldBy::Litre) => Some(v.to_litre()),
        (Measured::Volume(v), SoldBy::Kg | SoldBy::T) => {
            let d = density.ok_or_else(|| format!("{} by the {} needs a density", q.kind(), row.unit.word()))?;
            by_mass(v.to_m3() * d.to_kg_per_m3())
        }
        (Measured::Mass(m), SoldBy::M3 | SoldBy::Litre) => {
            let d = density.ok_or_else(|| format!("{} by the {} needs a density", q.kind(), row.unit.word()))?;
            let m3 = m.to_kg() / d.to_kg_per_m3();
            Some(if row.unit == SoldBy::M3 { m3 } else { m3 * 1000.0 })
        }
        (Measured::Mass(m), _) => by_mass(m.to_kg()),
        (Measured::Time(t), SoldBy::Hour) => Some(t.to_h()),
        (Measured::Time(t), SoldBy::Day) => Some(*t / Time::h(HOURS_A_DAY)),
        _ => None,
    };
    found.filter(|u| u.is_finite()).ok_or_else(|| does_not_fit(q, row))
}

/// Units, where the row says what one holds in the same kind of figure.
fn held(q: &Measured, row: &Price) -> Option<f64> {
    if let (Measured::Length(l), Some(stick)) = (q, row.stock_length.filter(|_| row.unit != SoldBy::M)) {
        return (stick.to_m() > 0.0).then(|| *l / stick);
    }
    let one = row.holds.as_ref()?;
    let same = one.kind() == q.kind() || matches!((one, q), (Measured::Length(_), Measured::Pieces(_)));
    (same && one.si() > 0.0).then(|| q.si() / one.si())
}

fn counts(unit: SoldBy) -> bool {
    !matches!(unit, SoldBy::M | SoldBy::M2 | SoldBy::M3 | SoldBy::Litre | SoldBy::Kg | SoldBy::T)
}

fn does_not_fit(q: &Measured, row: &Price) -> String {
    let way_out = match q {
        Measured::Pieces(_) => "; a stock length is missing",
        Measured::Area(_) | Measured::Volume(_) | Measured::Length(_) if counts(row.unit) => {
            "; what one holds is missing"
        }
        _ => "",
    };
    format!("{} is needed, it is sold by `{}`{way_out}", q.kind(), row.unit.word())
}

/// The unit in which such a figure is usually bought, and the figure in it.
pub(crate) fn in_natural_unit(q: &Measured) -> (SoldBy, f64) {
    match q {
        Measured::Count(n) => (SoldBy::Each, *n),
        Measured::Length(l) => (SoldBy::M, l.to_m()),
        Measured::Area(a) => (SoldBy::M2, a.to_m2()),
        Measured::Volume(v) => (SoldBy::M3, v.to_m3()),
        Measured::Mass(m) => (SoldBy::Kg, m.to_kg()),
        Measured::Time(t) => (SoldBy::Hour, t.to_h()),
        Measured::Pieces(_) => (SoldBy::M, q.si()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use groundhold_quantity::{Area, Density, Length, Mass, Money, Volume};

    fn units(q: Measured, row: &Price) -> Result<f64, String> {
        units_of(&Need::new("x", "W1", "", q), row)
    }

    #[test]
    fn a_volume_is_bought_by_the_tonne_only_with_a_density() {
        let row = Price::new("x", SoldBy::T, Money::of(38.0));
        assert!(units(Measured::Volume(Volume::m3(2.0)), &row).unwrap_err().contains("density"));
        let need = Need::new("x", "W1", "", Measured::Volume(Volume::m3(2.0))).dense(Density::t_per_m3(1.5));
        assert_eq!(units_of(&need, &row), Ok(3.0));
        let row = Price { density: Some(Density::t_per_m3(1.6)), ..row };
        assert_eq!(units_of(&need, &row), Ok(3.2), "the supplier's density counts before ours");
    }

    #[test]
    fn a_roll_covers_what_it_says_it_holds() {
        let row = Price::new("x", SoldBy::Roll, Money::of(90.0));
        let q = Measured::Area(Area::m2(150.0));
        assert!(units(q.clone(), &row).unwrap_err().contains("what one holds"));
        assert_eq!(units(q, &row.holding(Measured::Area(Area::m2(100.0)))), Ok(1.5));
    }

    #[test]
    fn counts_masses_and_times_meet_their_units() {
        let row = |u| Price::new("x", u, Money::of(1.0));
        assert_eq!(units(Measured::Count(3.0), &row(SoldBy::Load)), Ok(3.0));
        assert!(units(Measured::Count(3.0), &row(SoldBy::M3)).is_err());
        assert!(units(Measured::Count(3.0), &row(SoldBy::Kg)).is_err());
        assert_eq!(units(Measured::Mass(Mass::kg(500.0)), &row(SoldBy::T)), Ok(0.5));
        let bag = row(SoldBy::Bag).weighing(Mass::kg(25.0));
        assert_eq!(units(Measured::Mass(Mass::kg(500.0)), &bag), Ok(20.0));
        assert_eq!(units(Measured::Time(Time::h(20.0)), &row(SoldBy::Day)), Ok(2.5));
        assert_eq!(units(Measured::Length(Length::m(7.0)), &row(SoldBy::M)), Ok(7.0));
        assert!(units(Measured::Length(Length::m(-7.0)), &row(SoldBy::M)).is_err());
        assert!(units(Measured::Area(Area::m2(f64::NAN)), &row(SoldBy::M2)).is_err());
    }
}
