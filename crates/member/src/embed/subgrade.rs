//! How stiff is the ground against a post, where nobody has measured it?

use groundhold_quantity::{Length, Pressure, UnitWeight};
use groundhold_working::Source;

/// One row of Terzaghi's table for sand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SandStiffness {
    /// Density of packing: `loose`, `medium`, `dense`.
    pub name: &'static str,
    /// Growth of the horizontal stiffness with depth, dry or moist.
    pub moist: UnitWeight,
    /// The same below water.
    pub below_water: UnitWeight,
}

/// Where [`SAND_STIFFNESS`] comes from.
pub const SAND_STIFFNESS_SOURCE: Source = Source {
    work: "Terzaghi, Evaluation of Coefficients of Subgrade Reaction, Géotechnique 5 (1955)",
    place: "n_h of sand, 7, 21, 56 and 4, 14, 34 tons per cubic foot; from memory",
};

const fn row(name: &'static str, moist: f64, below_water: f64) -> SandStiffness {
    SandStiffness { name, moist: UnitWeight::kn_per_m3(moist), below_water: UnitWeight::kn_per_m3(below_water) }
}

/// Growth of stiffness with depth, by packing.
pub const SAND_STIFFNESS: &[SandStiffness] =
    &[row("loose", 2200.0, 1260.0), row("medium", 6600.0, 4400.0), row("dense", 17_600.0, 10_700.0)];

/// Modulus of subgrade reaction of clay, k = 67 c_u/b (Davisson, Lateral Load Capacity of Piles, Highway Research
/// Record 333, 1970; from memory).
pub fn clay_stiffness(strength: Pressure, width: Length) -> UnitWeight {
    strength * 67.0 / width
}
