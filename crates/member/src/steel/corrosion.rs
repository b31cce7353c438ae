//! How much steel does rust take from each face of a post over the years?

use groundhold_quantity::Length;
use groundhold_working::{Input, Limits, Number, Result, Source, Trace, Unit, Working, check_range};

use crate::given::{gives, takes};

/// What the steel stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Undisturbed natural soil: sand, silt, clay, schist.
    Natural,
    /// Polluted natural soil and industrial ground.
    Polluted,
    /// Aggressive natural soil: swamp, marsh, peat.
    Aggressive,
    /// Fill that is not compacted and not aggressive: clay, sand, silt.
    Fill,
    /// Fill that is not compacted and aggressive: ashes, slag.
    AggressiveFill,
    /// Open air away from the sea.
    Air,
    /// Open air near the sea.
    SeaAir,
}

/// Years of the columns of EN 1993-5, Table 4-1.
const YEARS: [f64; 5] = [5.0, 25.0, 50.0, 75.0, 100.0];

impl Exposure {
    /// Loss per face in mm after 5, 25, 50, 75 and 100 years.
    const fn losses(self) -> [f64; 5] {
        match self {
            Exposure::Natural => [0.00, 0.30, 0.60, 0.90, 1.20],
            Exposure::Polluted => [0.15, 0.75, 1.50, 2.25, 3.00],
            Exposure::Aggressive => [0.20, 1.00, 1.75, 2.50, 3.25],
            Exposure::Fill => [0.18, 0.70, 1.20, 1.70, 2.20],
            Exposure::AggressiveFill => [0.50, 2.00, 3.25, 4.50, 5.75],
            Exposure::Air => [0.05, 0.25, 0.50, 0.75, 1.00],
            Exposure::SeaAir => [0.10, 0.50, 1.00, 1.50, 2.00],
        }
    }
    /// The two columns of the table between which a number of years lies: years and loss, mm.
    fn between(self, years: f64) -> [(f64, f64); 2] {
        let losses = self.losses();
        let at = YEARS.iter().position(|y| years <= *y).unwrap_or(YEARS.len() - 1);
        let before = if at == 0 { (0.0, 0.0) } else { (YEARS[at - 1], losses[at - 1]) };
        [before, (YEARS[at], losses[at])]
    }
}

takes! {
    /// Loss between two columns of the table.
    Corroding {
        years: "n", "years", NONE, Limits::author(0.0, 100.0);
        years_before: "n₁", "years of the column before", NONE, Limits::author(0.0, 100.0);
        loss_before: "c₁", "loss per face in that column", MM, Limits::author(0.0, 6.0);
        years_after: "n₂", "years of the column after", NONE, Limits::author(5.0, 100.0);
        loss_after: "c₂", "loss per face in that column", MM, Limits::author(0.0, 6.0);
    }
}
gives! {
    /// Loss per face.
    Corroded {
        loss: MM, "loss per face";
    }
}

/// Loss per face, straight between the columns of the table.
///
/// # Source
/// EN 1993-5:2007, Table 4-1 (soils, with or without ground water) and 4.4 (0.01 mm a year in air, 0.02 near the sea),
/// which allows straight lines between the columns. From memory.
/// # Symbols
/// n years, c loss per face.
/// # Gives
/// Loss of thickness per face without any coating, mm.
/// # Not for
/// The ground line itself and splash, where rust is faster than in either: coat or sleeve the post there. Zinc and paint,
/// which delay all of it. Stray current.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// Natural soil, 40 years: 0.30 + 15/25·0.30 = 0.48 mm (ST-K-rust).
pub fn corrosion<N: Number>(i: &Corroding<N>) -> Corroded<N> {
    let share = (i.years - i.years_before) / (i.years_after - i.years_before);
    Corroded { loss: (i.loss_before + share * (i.loss_after - i.loss_before)).named("c", Unit::MM) }
}

/// Loss per face of bare steel after a number of years, with its working.
///
/// # Errors
/// For more than 100 years.
pub fn loss_per_side(exposure: Exposure, years: f64) -> Result<(Length, Trace)> {
    check_range(CORROSION.name, &YEARS_ROW, years)?;
    let [(years_before, loss_before), (years_after, loss_after)] = exposure.between(years);
    let (i, trace) = Corroding { years, years_before, loss_before, years_after, loss_after }.traced(&CORROSION)?;
    Ok((Length::mm(corrosion(&i).loss), trace))
}

const YEARS_ROW: Input = Corroding::INPUTS[0];

/// Working of [`corrosion`].
pub static CORROSION: Working = Working {
    name: "steel/corrosion-en1993-5",
    title: "What rust takes from each face of bare steel over the years.",
    source: Source { work: "EN 1993-5:2007", place: "Table 4-1 and 4.4; from memory" },
    not_for: "the ground line and splash, where rust is faster; coated steel; stray current",
    inputs: Corroding::INPUTS,
    outputs: Corroded::OUTPUTS,
    run: |g| {
        let i = Corroding::put(g)?;
        if i.years_after.value() <= i.years_before.value() {
            return Err(g.no_answer("the column after must have more years than the column before"));
        }
        corrosion(&i).found()
    },
};
