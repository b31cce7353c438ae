//! Which sizes of a wall of blocks stacked dry can be written down, each in one row?

use groundhold_quantity::{Angle, Length, LineForce, Mass, Share, parse, trim};

use super::{DryBlockSpec, GridSpec, Grip};
use crate::{Field, Given, Holds, Row, other_kind, row};

/// A row of text that stands for a mass or a force along the wall: key, words, how it is spelt, limits, its place.
macro_rules! spelt {
    ($key:literal, $words:literal, $like:literal, $read:expr, $show:expr, $($place:ident).+) => {
        Row {
            field: Field::new($key, $words, Holds::Own { like: $like, whole: |t| $read(t).map(|_| ()) }),
            get: |s| Some(Given::Text($show(s.$($place).+))),
            set: |s, given| {
                let Given::Text(t) = given else { return Err(other_kind()) };
                s.$($place).+ = $read(t)?;
                Ok(())
            },
        }
    };
    ($key:literal, $words:literal, $like:literal, $read:expr, $show:expr, Some $($place:ident).+) => {
        Row {
            field: Field::new($key, $words, Holds::Own { like: $like, whole: |t| $read(t).map(|_| ()) }),
            get: |s| s.$($place).+.map(|v| Given::Text($show(v))),
            set: |s, given| {
                let Given::Text(t) = given else { return Err(other_kind()) };
                s.$($place).+ = Some($read(t)?);
                Ok(())
            },
        }
    };
}

/// The rows, in the order in which they are written.
pub(crate) static ROWS: &[Row<DryBlockSpec>] = &[
    row!(DryBlockSpec, Field::new("height", "height of a block", Holds::Length).within(0.05, 0.6), height, Length),
    row!(DryBlockSpec, Field::new("length", "length of a block", Holds::Length).within(0.1, 2.0), length, Length),
    row!(
        DryBlockSpec,
        Field::new("depth", "depth of a block across the wall", Holds::Length).within(0.1, 1.5),
        depth,
        Length
    ),
    row!(
        DryBlockSpec,
        Field::new("setback", "how far each course steps back", Holds::Length).within(0.0, 0.2),
        setback,
        Length
    ),
    spelt!("mass", "mass of one block, empty", "a mass from 2 kg to 3000 kg, such as \"36 kg\"", mass, show_mass, mass),
    row!(
        DryBlockSpec,
        Field::new("hollow", "share of a block that is hollow and filled with stone", Holds::Share).within(0.0, 0.6),
        hollow,
        Share
    ),
    row!(
        DryBlockSpec,
        Field::new("friction", "friction angle of block on block", Holds::Angle).within(0.35, 0.87),
        friction,
        Angle
    ),
    spelt!(
        "lip",
        "what lips or pins hold in a joint without weight on it, by test",
        "a force per length from 0 to 100 kN/m, such as \"2 kN/m\"",
        |t: &str| force(t, 0.0, 100.0),
        show_force,
        lip
    ),
    row!(
        DryBlockSpec,
        Field::new("bury", "underside of the lowest block below the ground in front", Holds::Length).within(0.0, 1.5),
        bury,
        Length
    ),
    row!(
        DryBlockSpec,
        Field::new("pad", "rammed stone under the lowest course", Holds::Length).within(0.0, 0.6),
        pad,
        Length
    ),
    row!(
        DryBlockSpec,
        Field::new("cap", "thickness of the cap; 0 for none", Holds::Length).within(0.0, 0.2),
        cap,
        Length
    ),
    row!(
        DryBlockSpec,
        Field::new("fill_friction", "friction angle of the fill behind; left out, that of the held soil", Holds::Angle)
            .within(0.35, 0.79),
        fill_friction,
        Some Angle
    ),
    row!(
        DryBlockSpec,
        Field::new("grid", "whether layers of grid are laid in the fill", Holds::OneOf(&["none", "layers"])),
        [grid.laid],
        one of "none" => false, "layers" => true
    ),
    row!(
        DryBlockSpec,
        Field::new("grid_length", "length of the grid from the face; left out, it is solved", Holds::Length)
            .within(0.5, 8.0),
        grid.length,
        Some Length
    ),
    row!(
        DryBlockSpec,
        Field::new("grid_every", "courses from one layer to the next; left out, they are solved", Holds::Whole)
            .within(1.0, 12.0),
        grid.every,
        Some Whole
    ),
    spelt!(
        "grid_ultimate",
        "ultimate strength of the grid as sold",
        "a force per length from 5 to 400 kN/m, such as \"35 kN/m\"",
        |t: &str| force(t, 5.0, 400.0),
        show_force,
        grid.ultimate
    ),
    spelt!(
        "grid_creep",
        "reduction of its strength for creep",
        "a number from 1 to 5, such as \"2.5\"",
        |t: &str| number(t, 1.0, 5.0),
        show_number,
        grid.creep
    ),
    spelt!(
        "grid_damage",
        "reduction of its strength for damage when laid",
        "a number from 1.05 to 3, such as \"1.5\"",
        |t: &str| number(t, 1.05, 3.0),
        show_number,
        grid.damage
    ),
    spelt!(
        "grid_age",
        "reduction of its strength for chemistry and age",
        "a number from 1.1 to 2, such as \"1.3\"",
        |t: &str| number(t, 1.1, 2.0),
        show_number,
        grid.age
    ),
    spelt!(
        "connection",
        "grip of the blocks on the grid without weight on it, by test of both together",
        "a force per length from 0 to 200 kN/m, such as \"6 kN/m\"",
        |t: &str| force(t, 0.0, 200.0),
        show_force,
        Some grid.grip.base
    ),
    row!(
        DryBlockSpec,
        Field::new("connection_angle", "growth of that grip with the weight above, by test", Holds::Angle)
            .within(0.0, 1.04),
        grid.grip.angle,
        Some Angle
    ),
    spelt!(
        "connection_most",
        "most that the test of that grip showed",
        "a force per length from 1 to 500 kN/m, such as \"20 kN/m\"",
        |t: &str| force(t, 1.0, 500.0),
        show_force,
        Some grid.grip.most
    ),
    row!(
        DryBlockSpec,
        Field::new("roll", "width of a roll of grid", Holds::Length).within(0.5, 6.0),
        grid.roll,
        Length
    ),
];

fn inside(t: &str, v: f64, least: f64, most: f64, unit: &str) -> Result<f64, String> {
    if least <= v && v <= most {
        return Ok(v);
    }
    Err(format!("found `{t}`, expected {} to {}{unit}", trim(least, 2), trim(most, 2)))
}

fn mass(t: &str) -> Result<Mass, String> {
    let m = parse::<Mass>(t).map_err(|e| e.to_string())?;
    inside(t, m.to_kg(), 2.0, 3000.0, " kg").map(|_| m)
}

fn force(t: &str, least: f64, most: f64) -> Result<LineForce, String> {
    let f = parse::<LineForce>(t).map_err(|e| e.to_string())?;
    inside(t, f.to_kn_per_m(), least, most, " kN/m").map(|_| f)
}

fn number(t: &str, least: f64, most: f64) -> Result<f64, String> {
    let v = t.trim().parse::<f64>().map_err(|_| format!("found `{t}`, expected a number"))?;
    inside(t, v, least, most, "")
}

fn show_mass(m: Mass) -> String {
    format!("{} kg", trim(m.to_kg(), 3))
}

fn show_force(f: LineForce) -> String {
    format!("{} kN/m", trim(f.to_kn_per_m(), 4))
}

fn show_number(v: f64) -> String {
    trim(v, 4)
}

impl DryBlockSpec {
    /// Usual sizes. Common practice, no source: hollow blocks of 36 kg, 20 mm back for 200 mm up, a course nearly buried.
    /// The reductions of the grid make 7 together, which FHWA-NHI-10-024 (2009) takes for a grid without reports: from
    /// memory.
    pub fn blank() -> DryBlockSpec {
        DryBlockSpec {
            height: Length::mm(200.0),
            length: Length::mm(400.0),
            depth: Length::mm(300.0),
            setback: Length::mm(20.0),
            mass: Mass::kg(36.0),
            hollow: Share::percent(35.0),
            friction: Angle::deg(30.0),
            lip: LineForce::ZERO,
            bury: Length::mm(150.0),
            pad: Length::mm(150.0),
            cap: Length::mm(50.0),
            fill_friction: None,
            grid: GridSpec {
                laid: false,
                length: None,
                every: None,
                ultimate: LineForce::kn_per_m(35.0),
                creep: 3.6,
                damage: 1.5,
                age: 1.3,
                grip: Grip::default(),
                roll: Length::m(2.0),
            },
        }
    }
}
