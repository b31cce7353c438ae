//! Does a deadman buried behind the wall hold, how far back must it lie, and does its rod hold?

mod deadman;
mod rod;

pub use deadman::{
    BLOCK_CLAY, BLOCK_SAND, Buried, BuriedClay, BuriedHolds, Deadman, DeadmanCheck, PLACE, Placed, PlacedBack, Soil,
    buried_clay, buried_sand, check_deadman, placed,
};
pub use rod::{ROD, Rod, RodHolds, check_rod, rod};
