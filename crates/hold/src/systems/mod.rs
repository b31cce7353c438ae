//! The wall systems, one folder each.

pub mod cantilever;
pub mod dry_block;
pub mod dry_stone;
pub mod gabion;
pub mod mass_wall;
pub mod stacked_timbers;
pub mod steel_posts;
pub mod timber_posts;
