//! The wall systems, one folder each.

pub mod timber_posts;
