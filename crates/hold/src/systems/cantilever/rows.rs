//! Which sizes of a wall with a reinforced stem can be written down, each in one row?

use groundhold_quantity::{Length, Pressure};

use super::{CantileverSpec, Code, Made};
use crate::{Field, Holds, Row, row};

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<CantileverSpec>] = &[
    row!(
        CantileverSpec,
        Field::new("made", "of what the stem is", Holds::OneOf(&["concrete", "block"])),
        [made],
        one of "concrete" => Made::Concrete, "block" => Made::Block
    ),
    row!(
        CantileverSpec,
        Field::new("stem", "thickness of the stem at its foot", Holds::Length).within(0.14, 0.8),
        stem,
        Length
    ),
    row!(
        CantileverSpec,
        Field::new("stem_top", "thickness of the stem at its top; left out, as at its foot", Holds::Length)
            .within(0.1, 0.8),
        stem_top,
        Some Length
    ),
    row!(
        CantileverSpec,
        Field::new("footing", "thickness of the footing", Holds::Length).within(0.15, 1.0),
        footing,
        Length
    ),
    row!(CantileverSpec, Field::new("toe", "footing beyond the face", Holds::Length).within(0.0, 2.0), toe, Length),
    row!(
        CantileverSpec,
        Field::new("heel", "footing beyond the back of the stem; left out, it is solved", Holds::Length)
            .within(0.0, 4.0),
        heel,
        Some Length
    ),
    row!(
        CantileverSpec,
        Field::new("key", "depth of a key under the footing; 0 for none", Holds::Length).within(0.0, 0.8),
        key,
        Length
    ),
    row!(
        CantileverSpec,
        Field::new("bury", "underside of the footing below the ground in front", Holds::Length).within(0.0, 2.0),
        bury,
        Length
    ),
    row!(
        CantileverSpec,
        Field::new("blinding", "blinding under the footing; 0 where it is cast on the ground", Holds::Length)
            .within(0.0, 0.2),
        blinding,
        Length
    ),
    row!(
        CantileverSpec,
        Field::new("bar", "diameter of the bars of the stem; left out, it is solved", Holds::Length)
            .within(0.0095, 0.0195),
        bar,
        Some Length
    ),
    row!(
        CantileverSpec,
        Field::new("every", "distance of the bars of the stem; left out, it is solved", Holds::Length)
            .within(0.075, 0.6),
        every,
        Some Length
    ),
    row!(
        CantileverSpec,
        Field::new("cover", "cover to the bars of the stem at the soil; left out, the least of the rules", Holds::Length)
            .within(0.015, 0.15),
        cover,
        Some Length
    ),
    row!(
        CantileverSpec,
        Field::new("strength", "cylinder strength of the concrete", Holds::Pressure).within(17_000_000.0, 50_000_000.0),
        strength,
        Pressure
    ),
    row!(
        CantileverSpec,
        Field::new("yield", "yield strength of the bars", Holds::Pressure).within(400_000_000.0, 550_000_000.0),
        yield_stress,
        Pressure
    ),
    row!(
        CantileverSpec,
        Field::new("masonry", "compressive strength of the filled masonry; left out, a low one", Holds::Pressure)
            .within(8_000_000.0, 20_000_000.0),
        masonry,
        Some Pressure
    ),
    row!(
        CantileverSpec,
        Field::new("rules", "by whose rules its sections are judged", Holds::OneOf(&["by-basis", "eurocode", "us"])),
        [rules],
        one of "by-basis" => Code::ByBasis, "eurocode" => Code::Eurocode, "us" => Code::Us
    ),
    row!(
        CantileverSpec,
        Field::new("weeps", "distance of weep holes along the face", Holds::Length).within(0.5, 5.0),
        weeps,
        Length
    ),
];

impl CantileverSpec {
    /// Usual sizes. Common practice, no source: a stem of 200 mm on 250 mm of concrete, 500 mm down, on blinding.
    pub fn blank() -> CantileverSpec {
        CantileverSpec {
            made: Made::Concrete,
            stem: Length::mm(200.0),
            stem_top: None,
            footing: Length::mm(250.0),
            toe: Length::mm(300.0),
            heel: None,
            key: Length::ZERO,
            bury: Length::mm(500.0),
            blinding: Length::mm(50.0),
            bar: None,
            every: None,
            cover: None,
            strength: Pressure::mpa(25.0),
            yield_stress: Pressure::mpa(500.0),
            masonry: None,
            rules: Code::ByBasis,
            weeps: Length::m(1.5),
        }
    }
}
