//! Which sizes of a wall of baskets can be written down, each in one row?

use groundhold_quantity::{Angle, Length, Share, Slope, UnitWeight, math};

use super::{GabionSpec, Stepped, tan_deg};
use crate::{Field, Given, Holds, Row, other_kind, row};

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<GabionSpec>] = &[
    row!(GabionSpec, Field::new("course", "height of a basket", Holds::Length).within(0.3, 1.0), course, Length),
    row!(GabionSpec, Field::new("basket", "length of a basket", Holds::Length).within(0.5, 4.0), basket, Length),
    row!(
        GabionSpec,
        Field::new("top_width", "width of the top course across the wall", Holds::Length).within(0.3, 2.0),
        top_width,
        Length
    ),
    row!(
        GabionSpec,
        Field::new("base_width", "width of the lowest course; left out, it is solved", Holds::Length).within(0.3, 4.0),
        base_width,
        Some Length
    ),
    row!(
        GabionSpec,
        Field::new("stepped", "the side that is stepped", Holds::OneOf(&["back", "front"])),
        [stepped],
        one of "back" => Stepped::Back, "front" => Stepped::Front
    ),
    row!(
        GabionSpec,
        Field::new("lean", "lean of the wall into the bank, run over rise", Holds::Slope).within(0.0, 0.18),
        lean,
        Slope
    ),
    row!(
        GabionSpec,
        Field::new("bury", "underside below the ground in front", Holds::Length).within(0.0, 1.5),
        bury,
        Length
    ),
    row!(
        GabionSpec,
        Field::new("bed", "rolled stone under the lowest course", Holds::Length).within(0.0, 0.6),
        bed,
        Length
    ),
    row!(
        GabionSpec,
        Field::new("stone_weight", "unit weight of the solid stone", Holds::UnitWeight).within(18_000.0, 32_000.0),
        stone,
        UnitWeight
    ),
    row!(GabionSpec, Field::new("voids", "share of a basket that is air", Holds::Share).within(0.2, 0.5), voids, Share),
    Row {
        field: Field::new("friction", "friction angle of stone on stone in a joint", Holds::Angle).within(0.35, 0.87),
        get: |s| Some(Given::Angle(Angle::deg(math::atan(s.friction).to_degrees()))),
        set: |s, given| {
            let Given::Angle(a) = given else { return Err(other_kind()) };
            s.friction = tan_deg(a.to_deg());
            Ok(())
        },
    },
    Row {
        field: Field::new(
            "filling",
            "size of the stone as ordered",
            Holds::Own { like: "sizes in mm from and to, such as \"100-200\"", whole: sizes },
        ),
        get: |s| Some(Given::Text(s.filling.clone())),
        set: |s, given| {
            let Given::Text(t) = given else { return Err(other_kind()) };
            sizes(t)?;
            s.filling.clone_from(t);
            Ok(())
        },
    },
];

fn sizes(t: &str) -> Result<(), String> {
    match t.split_once('-').map(|(a, b)| (a.trim().parse::<f64>(), b.trim().parse::<f64>())) {
        Some((Ok(a), Ok(b))) if 20.0 <= a && a < b && b <= 500.0 => Ok(()),
        _ => Err(format!("found `{t}`, expected sizes in mm from and to, such as \"100-200\"")),
    }
}

impl GabionSpec {
    /// Usual sizes: courses of half a metre in baskets of two, 30 % air. Common practice, no source.
    pub fn blank() -> GabionSpec {
        GabionSpec {
            course: Length::mm(500.0),
            basket: Length::m(2.0),
            top_width: Length::mm(500.0),
            base_width: None,
            stepped: Stepped::Back,
            lean: Slope::LEVEL,
            bury: Length::mm(200.0),
            bed: Length::mm(150.0),
            stone: UnitWeight::kn_per_m3(26.0),
            voids: Share::percent(30.0),
            friction: tan_deg(35.0),
            filling: "100-200".into(),
        }
    }
}
