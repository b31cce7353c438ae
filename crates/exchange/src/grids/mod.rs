//! The tables of a plan, one file for each stage that has some.

mod as_found;
mod earthworks;
mod notes;
mod ordered;
mod pieces;
mod set_out;
mod water;
mod works;

pub(crate) use as_found::walls_as_found;
pub(crate) use earthworks::earthworks;
pub(crate) use notes::findings;
pub(crate) use ordered::{order, quote};
#[cfg(feature = "spreadsheet")]
pub(crate) use ordered::{quote_lines, sums};
pub(crate) use pieces::{boards, cutting_list};
pub(crate) use set_out::{checks, marks, pegs, posts};
pub(crate) use water::{carries, drainage};
pub(crate) use works::programme;
