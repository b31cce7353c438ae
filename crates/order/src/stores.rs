//! What lies on site, and what is left of it when the order has taken its part?

use groundhold_quantity::Length;

use crate::{LeftOver, OnHand, Price};

/// What is on site, as it is used up.
pub(crate) struct Stores(Vec<OnHand>);

impl Stores {
    pub(crate) fn new(on_hand: &[OnHand]) -> Stores {
        let mut all = on_hand.to_vec();
        all.retain(|o| o.units > 0.0);
        all.sort_by(|a, b| a.item.cmp(&b.item).then(length_key(b.stock_length).cmp(&length_key(a.stock_length))));
        Stores(all)
    }
    /// Units of an item without a stock length.
    pub(crate) fn units(&self, item: &str) -> f64 {
        self.0.iter().filter(|o| o.item == item && o.stock_length.is_none()).map(|o| o.units).sum()
    }
    /// Uses up so many units of an item without a stock length.
    pub(crate) fn use_up(&mut self, item: &str, mut units: f64) {
        for o in self.0.iter_mut().filter(|o| o.item == item && o.stock_length.is_none()) {
            let taken = o.units.min(units);
            o.units -= taken;
            units -= taken;
        }
    }
    /// Bars of an item: length and whole number.
    pub(crate) fn bars(&self, item: &str) -> Vec<(Length, u32)> {
        let bars = self.0.iter().filter(|o| o.item == item);
        bars.filter_map(|o| o.stock_length.map(|l| (l, o.units.floor().min(1e6) as u32))).collect()
    }
    /// Uses up one bar.
    pub(crate) fn use_bar(&mut self, item: &str, length: Length) {
        let same = |o: &&mut OnHand| o.item == item && length_key(o.stock_length) == length_key(Some(length));
        if let Some(o) = self.0.iter_mut().filter(same).find(|o| o.units >= 1.0) {
            o.units -= 1.0;
        }
    }
    /// True where the item is on site, but its lengths are not said.
    pub(crate) fn has_unsaid(&self, item: &str) -> bool {
        self.units(item) > 0.0
    }
    /// What is not used up.
    pub(crate) fn rest(self, prices: &[Price]) -> Vec<LeftOver> {
        let left = self.0.into_iter().filter(|o| o.units > 1e-9);
        let unit = |item: &str| prices.iter().find(|p| p.item == item).map(|p| p.unit);
        left.map(|o| LeftOver { unit: unit(&o.item), item: o.item, stock_length: o.stock_length, units: o.units })
            .collect()
    }
}

/// A length as a key to sort and compare by.
pub(crate) fn length_key(l: Option<Length>) -> i64 {
    l.map_or(0, crate::cut::to_units)
}
