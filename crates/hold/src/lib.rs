//! Will the wall stand, and of which pieces is it made?
//!
//! A wall comes in as a [`WallCase`]: the ground along its line, soils, loads, what is near, what already stands, and the
//! sizes of its system. [`hold`] lays it out in whole pieces ([`Layout`]) and checks it ([`Verdict`]). This crate knows
//! soils and members below it and nothing of drains, spoil, prices or drawings.

mod case;
mod cross;
mod fields;
pub mod findings;
mod generic;
mod gravity;
mod line;
mod loads;
mod nearby;
mod parts;
pub(crate) mod posted;
mod said;
mod slip;
mod stand;
pub mod standing;
mod system;
pub mod systems;
mod timber_rules;
pub mod timber_text;
mod validity;
mod verdict;
pub mod workings;

pub use case::*;
pub use cross::*;
pub use fields::*;
pub use findings::FINDINGS;
pub use generic::*;
pub use line::{Ground, Line};
pub use parts::*;
pub use system::{Entry, SYSTEM_KEYS, SYSTEMS, Spec, System, cross, hold, hold_quick, judge, lay_out};
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
    fn the_reference_cases_of_standing_walls_agree() {
        let cases = include_str!("../../../reference/standing.toml");
        assert_eq!(groundhold_reference::complaints(cases, crate::WORKINGS), Vec::<String>::new());
    }

    #[test]
    fn every_finding_has_a_code_of_its_own() {
        let codes: Vec<&str> = crate::FINDINGS.iter().map(|k| k.code).collect();
        assert!(codes.iter().all(|c| c.len() == 5 && c.starts_with("H-")), "{codes:?}");
        assert!(codes.windows(2).all(|w| w[0] < w[1]), "{codes:?}");
    }
}
