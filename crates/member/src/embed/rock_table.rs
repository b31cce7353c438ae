//! How strong is rock that nobody has tested, by what a hammer and a knife do to it?

use groundhold_quantity::Pressure;
use groundhold_working::Source;

/// One class of rock, with the least strength of its class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rock {
    /// `extremely weak`, `very weak`, `weak`, `medium`, `strong`.
    pub name: &'static str,
    /// How it is told in the field.
    pub words: &'static str,
    /// Unconfined compressive strength, the least of the class.
    pub strength: Pressure,
    /// Ultimate bond of grout to the wall of a drilled hole, the least of the class.
    pub bond: Pressure,
}

/// Where the strengths of [`ROCK`] come from.
pub const ROCK_SOURCE: Source = Source {
    work: "ISRM, Suggested Methods for the Quantitative Description of Discontinuities in Rock Masses, 1978; the same \
           classes in ISO 14689",
    place: "grades R0 to R4, least value of each; from memory",
};
/// Where the bond of [`ROCK`] comes from.
pub const ROCK_BOND_SOURCE: Source = Source {
    work: "Littlejohn & Bruce, Rock Anchors: State of the Art, Ground Engineering, 1975-76",
    place: "a tenth of the unconfined compressive strength, at most 4.2 MPa in massive rock without tests; from memory; \
            held to 1.4 MPa here",
};

const fn row(name: &'static str, words: &'static str, strength_mpa: f64) -> Rock {
    let tenth = strength_mpa / 10.0;
    let bond = if tenth < 1.4 { tenth } else { 1.4 };
    Rock { name, words, strength: Pressure::mpa(strength_mpa), bond: Pressure::mpa(bond) }
}

/// Classes from weak to strong.
pub const ROCK: &[Rock] = &[
    row("extremely weak", "a thumbnail marks it; a spade may cut it", 0.25),
    row("very weak", "a knife peels it; it crumbles under firm blows of a hammer's point", 1.0),
    row("weak", "a knife peels it with difficulty; a firm blow of a hammer's point marks it", 5.0),
    row("medium", "a knife cannot peel it; one firm blow of a hammer breaks a piece in the hand", 25.0),
    row("strong", "more than one blow of a hammer is needed to break a piece", 50.0),
];

/// A row of [`ROCK`] by its name; `None` where the table has none.
pub fn rock(name: &str) -> Option<&'static Rock> {
    ROCK.iter().find(|r| r.name.eq_ignore_ascii_case(name.trim()))
}
