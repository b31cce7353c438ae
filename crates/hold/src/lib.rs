//! Will the wall stand, and of which pieces is it made?
//!
//! A wall comes in as a [`WallCase`]: the ground along its line, soils, loads, what is near, what already stands, and the
//! sizes of its system. [`hold`] lays it out in whole pieces ([`Layout`]) and checks it ([`Verdict`]). This crate knows
//! soils and members below it and nothing of drains, spoil, prices or drawings.

mod case;
pub mod findings;
mod line;
mod parts;
mod system;
pub mod systems;
mod validity;
mod verdict;
pub mod workings;

pub use case::*;
pub use findings::FINDINGS;
pub use line::{Ground, Line};
pub use parts::*;
pub use system::{SYSTEMS, Spec, System, hold, hold_quick, judge, lay_out};
pub use verdict::*;
pub use workings::WORKINGS;

#[cfg(test)]
mod tests {
    #[test]
    fn the_reference_cases_agree() {
        let cases = include_str!("../../../reference/walls_in_pieces.toml");
        assert_eq!(groundhold_reference::complaints(cases, crate::WORKINGS), Vec::<String>::new());
    }

    #[test]
    fn every_finding_has_a_code_of_its_own() {
        for (i, k) in crate::FINDINGS.iter().enumerate() {
            assert_eq!(k.code, format!("H-{:03}", i + 1));
        }
    }
}
