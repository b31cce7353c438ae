//! Which sizes of a wall of masonry or mass concrete can be written down, each in one row?

use groundhold_quantity::{Length, Slope};

use super::{Made, MassWallSpec};
use crate::{Field, Holds, Row, row};

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<MassWallSpec>] = &[
    row!(
        MassWallSpec,
        Field::new("made", "of what the wall is", Holds::OneOf(&["concrete", "block", "stone"])),
        [made],
        one of "concrete" => Made::Concrete, "block" => Made::Block, "stone" => Made::Stone
    ),
    row!(MassWallSpec, Field::new("top_width", "width at the top", Holds::Length).within(0.1, 1.5), top_width, Length),
    row!(
        MassWallSpec,
        Field::new("base_width", "width on the footing; left out, it is solved", Holds::Length).within(0.1, 2.5),
        base_width,
        Some Length
    ),
    row!(
        MassWallSpec,
        Field::new("batter", "batter of the face, run over rise", Holds::Slope).within(0.0, 0.34),
        batter,
        Slope
    ),
    row!(
        MassWallSpec,
        Field::new("footing", "thickness of the footing", Holds::Length).within(0.0, 1.0),
        footing,
        Length
    ),
    row!(MassWallSpec, Field::new("toe", "footing beyond the face", Holds::Length).within(0.0, 1.0), toe, Length),
    row!(MassWallSpec, Field::new("heel", "footing beyond the back", Holds::Length).within(0.0, 1.0), heel, Length),
    row!(
        MassWallSpec,
        Field::new("bury", "underside of the footing below the ground in front", Holds::Length).within(0.0, 2.0),
        bury,
        Length
    ),
    row!(
        MassWallSpec,
        Field::new("lift", "height between joints that are checked", Holds::Length).within(0.1, 2.0),
        lift,
        Length
    ),
    row!(
        MassWallSpec,
        Field::new("weight", "unit weight of the wall; left out, that of its kind", Holds::UnitWeight)
            .within(10_000.0, 32_000.0),
        weight,
        Some UnitWeight
    ),
    row!(
        MassWallSpec,
        Field::new("strength", "crushing strength, allowable with factored loads; left out, that of its kind", Holds::Pressure)
            .within(100_000.0, 30_000_000.0),
        strength,
        Some Pressure
    ),
    row!(
        MassWallSpec,
        Field::new("weeps", "distance of weep holes along the face", Holds::Length).within(0.5, 5.0),
        weeps,
        Length
    ),
];

impl MassWallSpec {
    /// Usual sizes. Common practice, no source: a footing as thick as it projects, 450 mm down, weep holes 1.5 m apart.
    pub fn blank() -> MassWallSpec {
        MassWallSpec {
            made: Made::Concrete,
            top_width: Length::mm(300.0),
            base_width: None,
            batter: Slope::LEVEL,
            footing: Length::mm(250.0),
            toe: Length::mm(150.0),
            heel: Length::mm(150.0),
            bury: Length::mm(450.0),
            lift: Length::mm(500.0),
            weight: None,
            strength: None,
            weeps: Length::m(1.5),
        }
    }
}
