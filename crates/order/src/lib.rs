//! What do I buy, how is it cut, what does it cost, and what must be lifted and carried?
//!
//! Needs go in (so much of an item, for an element, and why), with a price list; out come lines rounded up to whole
//! packs, proven cutting lists, a quote whose parts add up to the cent, and findings where a price is missing or a
//! piece is heavy. Nothing here knows what a wall is.
//!
//! - [`take_off`] turns [`Need`]s into [`TakeOff`] lines; [`take_off_with`] reckons with what is on site already.
//! - [`cut`] and [`cut_all`] cut bars from stock lengths, with a proof or the gap to it.
//! - [`quote`] adds up; [`compare`] lays two quotes side by side.
//! - [`lifting`] and [`loads`] say what is carried.

mod apportion;
mod boards;
mod concrete;
mod convert;
mod cut;
mod findings;
mod fixings;
mod labour;
mod lift;
mod loads;
mod need;
mod packs;
mod price;
mod quote;
mod reorder;
mod stores;
mod take_off;

pub use concrete::{BAG_YIELD, BAGS, Bags, HOLE, Hole, bag_yield, concrete_bags, concrete_in_hole};
pub use cut::{Bar, Bars, CutError, CuttingPlan, DEFAULT_EFFORT, Demand, Effort, Piece, Saw, Stock, cut, cut_all};
pub use findings::{
    BOARD_LENGTH_UNKNOWN, CANNOT_BE_CUT, FINDINGS, HEAVY_PIECE, NOT_PROVEN, PRICE_MISSING, READY_MIX, UNIT_DIFFERS,
};
pub use fixings::{SCREWS, screws};
pub use labour::{HOURS, Hours, Rate, Task, hours_of, labour_need};
pub use lift::{BOARD_MASS, LIFT, LOAD_CONSTANT, LiftLimits, Lifted, lifting, piece_mass};
pub use loads::{LOADS, Loads, Vehicle, barrow, loads};
pub use need::{Head, Measured, Need};
pub use packs::PACKS;
pub use price::{NotAUnit, Price, SoldBy};
pub use quote::{Change, Part, Quote, QuoteLine, Side, Terms, compare, quote};
pub use reorder::{LeftOver, OnHand, left_over, still_to_buy};
pub use take_off::{Line, TakeOff, take_off, take_off_with};

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[&BAG_YIELD, &BAGS, &HOLE, &PACKS, &SCREWS, &BOARD_MASS, &LOADS, &LIFT, &HOURS];
