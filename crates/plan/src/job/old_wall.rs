//! Which walls stand already, and how were they found?

use groundhold_hold::standing::Seen;
use groundhold_quantity::Point;

/// A wall that stands already, measured as found.
#[derive(Debug, Clone, PartialEq)]
pub struct OldWall {
    /// Its id: `E1`.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// Its line in plan.
    pub line: Vec<Point>,
    /// True where it holds the ground on the left of its line.
    pub retains_left: bool,
    /// When it was looked at, as written: `2026-05-11`.
    pub looked_at: String,
    /// In words.
    pub note: String,
    /// What was seen and measured.
    pub seen: Seen,
    /// The wall of the job that takes its place, where that is decided.
    pub replaced_by: String,
}
