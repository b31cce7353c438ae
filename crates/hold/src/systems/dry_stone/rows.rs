//! Which sizes of a dry stone wall can be written down, each in one row?

use groundhold_quantity::{Angle, Length, Share, Slope, UnitWeight, math};

use super::DryStoneSpec;
use crate::{Field, Given, Holds, Row, other_kind, row};

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<DryStoneSpec>] = &[
    row!(
        DryStoneSpec,
        Field::new("top_width", "width under the cope", Holds::Length).within(0.25, 1.2),
        top_width,
        Length
    ),
    row!(
        DryStoneSpec,
        Field::new("base_width", "width of the foundation; left out, it is solved", Holds::Length).within(0.25, 2.5),
        base_width,
        Some Length
    ),
    row!(
        DryStoneSpec,
        Field::new("batter", "batter of the face, run over rise", Holds::Slope).within(0.0, 0.34),
        batter,
        Slope
    ),
    row!(
        DryStoneSpec,
        Field::new("bury", "underside of the foundation below the ground in front", Holds::Length).within(0.0, 1.5),
        bury,
        Length
    ),
    row!(
        DryStoneSpec,
        Field::new("lift", "height of a lift after which the wall is packed and levelled", Holds::Length)
            .within(0.1, 1.0),
        lift,
        Length
    ),
    row!(DryStoneSpec, Field::new("cope", "height of the cope", Holds::Length).within(0.0, 0.6), cope, Length),
    row!(
        DryStoneSpec,
        Field::new("throughs", "height between rows of through stones", Holds::Length).within(0.2, 1.5),
        throughs,
        Length
    ),
    row!(
        DryStoneSpec,
        Field::new("stone_weight", "unit weight of the solid stone", Holds::UnitWeight).within(18_000.0, 32_000.0),
        stone,
        UnitWeight
    ),
    row!(
        DryStoneSpec,
        Field::new("voids", "share of the wall that is air", Holds::Share).within(0.05, 0.5),
        voids,
        Share
    ),
    Row {
        field: Field::new("friction", "friction angle of stone on stone", Holds::Angle).within(0.35, 0.87),
        get: |s| Some(Given::Angle(Angle::deg(math::atan(s.friction).to_degrees()))),
        set: |s, given| {
            let Given::Angle(a) = given else { return Err(other_kind()) };
            s.friction = math::tan(a.to_rad());
            Ok(())
        },
    },
];

impl DryStoneSpec {
    /// Usual sizes. Common practice, no source: face 1 in 6, a quarter air, a foundation 200 mm down.
    pub fn blank() -> DryStoneSpec {
        DryStoneSpec {
            top_width: Length::mm(400.0),
            base_width: None,
            batter: Slope::ratio(1.0 / 6.0),
            bury: Length::mm(200.0),
            lift: Length::mm(300.0),
            cope: Length::mm(150.0),
            throughs: Length::mm(550.0),
            stone: UnitWeight::kn_per_m3(26.0),
            voids: Share::percent(25.0),
            friction: math::tan(35.0_f64.to_radians()),
        }
    }
}
