//! What does an item cost, in which unit is it sold, and what does one unit hold?

use groundhold_quantity::{Density, Length, Mass, Money};

use crate::Measured;

/// The unit in which an item is sold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum SoldBy {
    /// By the piece.
    #[default]
    Each,
    /// By the bag.
    Bag,
    /// By the roll.
    Roll,
    /// By the box.
    Box,
    /// By the metre.
    M,
    /// By the square metre.
    M2,
    /// By the cubic metre.
    M3,
    /// By the litre.
    Litre,
    /// By the kilogram.
    Kg,
    /// By the tonne.
    T,
    /// By the hour.
    Hour,
    /// By the day of the job's working hours.
    Day,
    /// By the load of a vehicle.
    Load,
    /// For the whole, a lump sum.
    Sum,
}

/// A unit of sale that is not known.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("found `{found}`, expected one of {}", known_units())]
pub struct NotAUnit {
    /// What was written.
    pub found: String,
}

const UNITS: [(SoldBy, &str); 14] = [
    (SoldBy::Each, "each"),
    (SoldBy::Bag, "bag"),
    (SoldBy::Roll, "roll"),
    (SoldBy::Box, "box"),
    (SoldBy::M, "m"),
    (SoldBy::M2, "m2"),
    (SoldBy::M3, "m3"),
    (SoldBy::Litre, "l"),
    (SoldBy::Kg, "kg"),
    (SoldBy::T, "t"),
    (SoldBy::Hour, "h"),
    (SoldBy::Day, "day"),
    (SoldBy::Load, "load"),
    (SoldBy::Sum, "sum"),
];

fn known_units() -> String {
    UNITS.map(|(_, w)| w).join(", ")
}

impl SoldBy {
    /// Reads the word a price list uses: `each`, `bag`, `roll`, `box`, `m`, `m2`, `m3`, `l`, `kg`, `t`, `h`, `day`,
    /// `load`, `sum`.
    ///
    /// # Errors
    /// [`NotAUnit`] lists the words.
    pub fn parse(text: &str) -> Result<SoldBy, NotAUnit> {
        let t = text.trim().to_lowercase().replace('²', "2").replace('³', "3");
        UNITS.iter().find(|(_, w)| *w == t).map(|(u, _)| *u).ok_or_else(|| NotAUnit { found: text.trim().into() })
    }
    /// The word a price list uses.
    pub fn word(self) -> &'static str {
        match self {
            SoldBy::Each => "each",
            SoldBy::Bag => "bag",
            SoldBy::Roll => "roll",
            SoldBy::Box => "box",
            SoldBy::M => "m",
            SoldBy::M2 => "m2",
            SoldBy::M3 => "m3",
            SoldBy::Litre => "l",
            SoldBy::Kg => "kg",
            SoldBy::T => "t",
            SoldBy::Hour => "h",
            SoldBy::Day => "day",
            SoldBy::Load => "load",
            SoldBy::Sum => "sum",
        }
    }
    /// As it stands on paper: `m²`.
    pub fn shown(self) -> &'static str {
        match self {
            SoldBy::M2 => "m²",
            SoldBy::M3 => "m³",
            other => other.word(),
        }
    }
}

/// One row of a price list. Rows of one item differ in stock length, pack or supplier.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Price {
    /// The item's name, by which needs ask for it.
    pub item: String,
    /// The unit in which it is sold.
    pub unit: SoldBy,
    /// Price of one unit, before tax. Of a stock length sold `each`, the whole length; sold by the `m`, one metre.
    pub price: Money,
    /// Units in the smallest pack that is sold, above 0. Half a unit may be a pack: stone by the half tonne.
    pub pack: f64,
    /// Mass of one unit.
    pub mass: Option<Mass>,
    /// What one unit holds or covers: a bag 9.3 l of concrete, a roll 100 m² of fabric, a box 200 pieces.
    pub holds: Option<Measured>,
    /// As-delivered density, to turn a volume into tonnes. The need's own density is taken where this is `None`.
    pub density: Option<Density>,
    /// Length of the stock piece, for boards, posts, rails, bars.
    pub stock_length: Option<Length>,
    /// Section, width by thickness, for the mass of a piece.
    pub section: Option<(Length, Length)>,
    /// Who sells it.
    pub supplier: String,
    /// Anything else.
    pub note: String,
}

impl Price {
    /// A price of one unit, sold singly.
    pub fn new(item: impl Into<String>, unit: SoldBy, price: Money) -> Price {
        Price { item: item.into(), unit, price, pack: 1.0, ..Price::default() }
    }
    /// The same in packs of so many units.
    pub fn in_packs_of(mut self, units: f64) -> Price {
        self.pack = units;
        self
    }
    /// The same as a stock length.
    pub fn long(mut self, length: Length) -> Price {
        self.stock_length = Some(length);
        self
    }
    /// The same with what one unit holds.
    pub fn holding(mut self, what: Measured) -> Price {
        self.holds = Some(what);
        self
    }
    /// The same with the mass of one unit.
    pub fn weighing(mut self, mass: Mass) -> Price {
        self.mass = Some(mass);
        self
    }
    /// Price of one stock length, if it is one.
    pub(crate) fn bar_price(&self) -> Option<(Length, Money)> {
        let length = self.stock_length?;
        Some((length, if self.unit == SoldBy::M { self.price * length.to_m() } else { self.price }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_reads_back_from_its_word_and_an_unknown_one_is_named() {
        for (u, w) in UNITS {
            assert_eq!(SoldBy::parse(w), Ok(u));
            assert_eq!(u.word(), w);
        }
        assert_eq!(SoldBy::parse(" M² "), Ok(SoldBy::M2));
        let said = SoldBy::parse("furlong").unwrap_err().to_string();
        assert!(said.contains("`furlong`") && said.contains("each, bag"), "{said}");
    }
}
