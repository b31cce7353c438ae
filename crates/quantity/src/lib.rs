//! What is this number, and in which unit? Quantities, levels, points in plan, money, and the text people write for them.
//!
//! # Signs, datum, and which height
//!
//! ```text
//!   level (up is positive, metres above the job's datum)          north (y)
//!      ▲        top of wall ──┐                                      ▲
//!      │   ground behind ~~~~~█                                      │   a wall's chainage runs along its line;
//!      │                      █  ▲ retained  = ground behind − ground in front
//!      │                      █  │ exposed   = top of wall − ground in front
//!      │   ground in front ~~~█~~┴ total     = top of wall − underside of its base (post, footing)
//!      │                      ║                                      └──────▶ east (x)
//! ```
//!
//! Levels are positions: the difference of two is a [`Length`], and two are never added.
//! A cut is positive where ground is taken away, a fill is positive where ground is put. Angles turn anticlockwise
//! from east. A slope is rise over run. Everything is held in SI base units (m, N, Pa, kg, s, rad).

pub mod math;
mod money;
mod parse;
mod plane;
mod show;
mod types;

pub use money::{Currency, Money};
pub use parse::{NotAQuantity, Quantity, parse};
pub use plane::{Point, Vector, distance, distance_to_segment, nearest_on_segment, segments_cross};
pub use show::{Units, round_to, trim};
pub use types::*;
