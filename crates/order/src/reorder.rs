//! After a change: what is still to buy, and what is left over?

use groundhold_quantity::Length;

use crate::{Effort, Need, Price, Saw, SoldBy, TakeOff, take_off_with};

/// Something that is bought already and not yet built in.
#[derive(Debug, Clone, PartialEq)]
pub struct OnHand {
    /// The item's name in the price list.
    pub item: String,
    /// Length of the bars, for boards, posts and rails.
    pub stock_length: Option<Length>,
    /// How many units, as the price list sells them.
    pub units: f64,
}

/// What of that is not needed any more.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOver {
    /// The item.
    pub item: String,
    /// Length of the bars, where it is sold so.
    pub stock_length: Option<Length>,
    /// The unit of `units`, where the price list knows the item.
    pub unit: Option<SoldBy>,
    /// How many units.
    pub units: f64,
}

/// What is still to buy for `needs` (all that is not built yet), with what lies on site used first. Boards on hand go
/// into the cutting list as bars without a price.
pub fn still_to_buy(needs: &[Need], prices: &[Price], saw: &Saw, on_hand: &[OnHand], effort: Effort) -> TakeOff {
    take_off_with(needs, prices, saw, on_hand, effort)
}

/// What lies on site and is not needed for `needs`.
pub fn left_over(needs: &[Need], prices: &[Price], saw: &Saw, on_hand: &[OnHand], effort: Effort) -> Vec<LeftOver> {
    take_off_with(needs, prices, saw, on_hand, effort).left_over
}
