//! How strong is a piece of timber, by the grade stamped on it?

use groundhold_quantity::{Density, Length, Pressure};
use groundhold_working::Source;

use super::{Section, grades};

/// Which body of rules a grade belongs to, and with which its strengths may be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// EN 338 strength classes: characteristic values, for EN 1995-1-1.
    En338,
    /// NDS visually graded dimension lumber: reference values for allowable stress; the size factor C_F applies.
    NdsDimension,
    /// NDS Southern Pine dimension lumber: reference values by width, with the size factor already in them.
    NdsSouthernPine,
    /// NDS timbers 5 × 5 in and larger.
    NdsTimbers,
    /// AS 1720.1 stress grades and the like: characteristic values, for AS 1720.1.
    As1720,
}

impl Family {
    /// Its name on paper.
    pub const fn words(self) -> &'static str {
        match self {
            Family::En338 => "EN 338 strength class",
            Family::NdsDimension | Family::NdsSouthernPine => "NDS dimension lumber",
            Family::NdsTimbers => "NDS timbers",
            Family::As1720 => "AS 1720.1 stress grade",
        }
    }
}

/// A grade with its values. Characteristic values (EN, AS) or reference allowable values (NDS): see `family`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// As it is written in a job: `C24`, `SP No.2`, `F7`.
    pub name: &'static str,
    /// The rules it belongs to.
    pub family: Family,
    /// Wide faces for which this row holds, least and most.
    pub widths: (Length, Length),
    /// Thicknesses for which this row holds, least and most.
    pub thicknesses: (Length, Length),
    /// Bending.
    pub bending: Pressure,
    /// Shear along the grain.
    pub shear: Pressure,
    /// Tension along the grain.
    pub tension: Pressure,
    /// Compression along the grain.
    pub compression: Pressure,
    /// Compression across the grain (bearing); zero where the source used gives none.
    pub bearing: Pressure,
    /// Mean modulus of elasticity along the grain.
    pub stiffness: Pressure,
    /// Characteristic (5 %) density for EN grades; zero elsewhere.
    pub density_char: Density,
    /// Mean density for EN grades; zero elsewhere.
    pub density_mean: Density,
    /// Specific gravity for NDS grades; zero elsewhere.
    pub gravity: f64,
    /// Graded dry. An unseasoned grade is already wet; a seasoned one that gets wet loses strength.
    pub seasoned: bool,
    /// Where the values come from.
    pub source: Source,
}

/// No such grade, or not in this size.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum UnknownGrade {
    /// The name is not known.
    #[error("there is no timber grade `{name}`; known are {known}")]
    Name {
        /// What was written.
        name: String,
        /// What is known.
        known: String,
    },
    /// The name is known, but no row of it holds for this size.
    #[error("grade {name} has no values for a {thickness} x {width} mm section; its rows hold for {known}")]
    Size {
        /// The grade.
        name: &'static str,
        /// Smaller side, mm.
        thickness: String,
        /// Larger side, mm.
        width: String,
        /// The sizes it has.
        known: String,
    },
}

/// The row of a grade that holds for a section.
///
/// # Errors
/// [`UnknownGrade`] lists what is known.
pub fn grade(name: &str, section: &Section) -> Result<&'static Grade, UnknownGrade> {
    let rows: Vec<&'static Grade> = grades::all().filter(|g| g.name.eq_ignore_ascii_case(name.trim())).collect();
    let Some(first) = rows.first() else {
        return Err(UnknownGrade::Name { name: name.trim().into(), known: grade_names().join(", ") });
    };
    rows.iter().find(|g| g.holds_for(section)).copied().ok_or_else(|| UnknownGrade::Size {
        name: first.name,
        thickness: format!("{:.0}", section.thickness().to_mm()),
        width: format!("{:.0}", section.wide_face().to_mm()),
        known: rows.iter().map(|g| g.sizes()).collect::<Vec<_>>().join("; "),
    })
}

/// Names of all grades, each once, in the order of the tables.
pub fn grade_names() -> Vec<&'static str> {
    let mut names: Vec<&'static str> = vec![];
    for g in grades::all() {
        if !names.contains(&g.name) {
            names.push(g.name);
        }
    }
    names
}

impl Grade {
    /// Whether this row holds for a section of that size.
    pub fn holds_for(&self, section: &Section) -> bool {
        let within = |(least, most): (Length, Length), x: Length| least <= x && x <= most;
        within(self.widths, section.wide_face()) && within(self.thicknesses, section.thickness())
    }
    fn sizes(&self) -> String {
        let say = |(least, most): (Length, Length)| format!("{:.0} to {:.0} mm", least.to_mm(), most.to_mm());
        format!("thickness {}, width {}", say(self.thicknesses), say(self.widths))
    }
}
