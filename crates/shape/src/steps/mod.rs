//! How are steps proportioned: one flight, the choice of risers, and a long rise split by landings?

mod choose;
mod flight;
mod proportion;
mod split;

pub use choose::{CHOOSE, Choice, choose};
pub use flight::{FLIGHT, Geometry, geometry};
pub use proportion::{COMFORT, COMFORT_RISER};
pub use split::{SPLIT, Split, split};

pub(crate) use proportion::{Proportion, StepLimitsMm, rank};

#[cfg(test)]
mod tests {
    #[test]
    fn the_published_cases_of_shaping_come_out() {
        let said = groundhold_reference::complaints(include_str!("../../../../reference/shape.toml"), crate::WORKINGS);
        assert!(said.is_empty(), "{said:#?}");
    }
}
