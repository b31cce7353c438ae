//! What do area, inertia and section modulus of a post or a board amount to, new and after years in the ground?

use groundhold_quantity::{Area, Length};
use groundhold_working::{Input, Limits, Number, Output, Result, Source, Trace, Unit, Working};

use crate::given::given;

/// A cross-section. `depth` lies in the direction of the load: a board flat against posts has its thickness as depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Section {
    /// A rectangle.
    Rectangle {
        /// Across the load.
        breadth: Length,
        /// In the direction of the load.
        depth: Length,
    },
    /// A full round.
    Round {
        /// Of the whole section.
        diameter: Length,
    },
}

impl Section {
    /// A rectangle.
    pub const fn rectangle(breadth: Length, depth: Length) -> Section {
        Section::Rectangle { breadth, depth }
    }
    /// A round.
    pub const fn round(diameter: Length) -> Section {
        Section::Round { diameter }
    }
    /// In the direction of the load.
    pub fn depth(&self) -> Length {
        match *self {
            Section::Rectangle { depth, .. } => depth,
            Section::Round { diameter } => diameter,
        }
    }
    /// Across the load.
    pub fn breadth(&self) -> Length {
        match *self {
            Section::Rectangle { breadth, .. } => breadth,
            Section::Round { diameter } => diameter,
        }
    }
    /// The larger of its two sides: the "width" of grading rules.
    pub fn wide_face(&self) -> Length {
        self.depth().max(self.breadth())
    }
    /// The smaller of its two sides: the "thickness" of grading rules.
    pub fn thickness(&self) -> Length {
        self.depth().min(self.breadth())
    }
    /// True for a round.
    pub fn is_round(&self) -> bool {
        matches!(self, Section::Round { .. })
    }
    /// Cross-section.
    pub fn area(&self) -> Area {
        Area::mm2(self.figures().area)
    }
    /// Second moment of area in mm⁴.
    pub fn inertia_mm4(&self) -> f64 {
        self.figures().inertia
    }
    /// Section modulus in mm³.
    pub fn modulus_mm3(&self) -> f64 {
        self.figures().modulus
    }
    /// Greatest shear stress over mean shear stress: 1.5 for a rectangle, 4/3 for a round.
    pub fn shear_shape(&self) -> f64 {
        if self.is_round() { 4.0 / 3.0 } else { 1.5 }
    }
    /// What is left when every face has lost `loss`; `None` where nothing is left.
    pub fn less(&self, loss: Length) -> Option<Section> {
        let left = |side: Length| Some(side - 2.0 * loss).filter(|s| 0.0 < s.to_m());
        Some(match *self {
            Section::Rectangle { breadth, depth } => Section::rectangle(left(breadth)?, left(depth)?),
            Section::Round { diameter } => Section::round(left(diameter)?),
        })
    }
    /// The working that shows area, inertia and modulus.
    ///
    /// # Errors
    /// Where a side lies outside the limits of the working.
    pub fn trace(&self) -> Result<Trace> {
        match *self {
            Section::Rectangle { breadth, depth } => {
                Ok(Rectangle { breadth: breadth.to_mm(), depth: depth.to_mm() }.traced(&SECTION_RECTANGLE)?.1)
            }
            Section::Round { diameter } => Ok(Round { diameter: diameter.to_mm() }.traced(&SECTION_ROUND)?.1),
        }
    }
    fn figures(&self) -> SectionFigures<f64> {
        match *self {
            Section::Rectangle { breadth, depth } => {
                rectangle(&Rectangle { breadth: breadth.to_mm(), depth: depth.to_mm() })
            }
            Section::Round { diameter } => round(&Round { diameter: diameter.to_mm() }),
        }
    }
}

given! {
    /// Sides of a rectangle, mm.
    Rectangle {
        /// Across the load.
        breadth,
        /// In the direction of the load.
        depth,
    }
}
given! {
    /// A round, mm.
    Round {
        /// Diameter.
        diameter,
    }
}

/// Figures of a section, mm, mm², mm³, mm⁴.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionFigures<N> {
    /// Cross-section.
    pub area: N,
    /// Second moment of area.
    pub inertia: N,
    /// Section modulus.
    pub modulus: N,
}

/// Area, inertia and modulus of a rectangle.
///
/// # Source
/// Elementary strength of materials; e.g. Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., Table A.1.
/// # Symbols
/// b across the load, h in the direction of the load, mm.
/// # Gives
/// A = bh, I = bh³/12, Z = bh²/6.
/// # Not for
/// Sawn sizes before planing: put in the real size.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// 200 × 50 flat: I = 200·50³/12 = 2 083 333 mm⁴, Z = 83 333 mm³.
pub fn rectangle<N: Number>(i: &Rectangle<N>) -> SectionFigures<N> {
    SectionFigures {
        area: (i.breadth * i.depth).named("A", Unit::MM2),
        inertia: (i.breadth * i.depth.cubed() / 12.0).named("I", Unit::MM4),
        modulus: (i.breadth * i.depth.squared() / 6.0).named("Z", Unit::MM3),
    }
}

/// Area, inertia and modulus of a round.
///
/// # Source
/// Elementary strength of materials; e.g. Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., Table A.1.
/// # Symbols
/// D diameter, mm.
/// # Gives
/// A = πD²/4, I = πD⁴/64, Z = πD³/32.
/// # Not for
/// Half-rounds. A tapered pole: put in the diameter where the moment acts.
/// # Errors
/// None in the formula; the working holds the limits.
/// # By hand
/// D = 150: Z = π·150³/32 = 331 340 mm³.
pub fn round<N: Number>(i: &Round<N>) -> SectionFigures<N> {
    let pi = N::constant(std::f64::consts::PI);
    SectionFigures {
        area: (pi * i.diameter.squared() / 4.0).named("A", Unit::MM2),
        inertia: (pi * i.diameter.powf(4.0) / 64.0).named("I", Unit::MM4),
        modulus: (pi * i.diameter.cubed() / 32.0).named("Z", Unit::MM3),
    }
}

const MECHANICS: Source = Source {
    work: "Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed.",
    place: "Table A.1, sections of a rectangle and a circle",
};
const OUTPUTS: &[Output] = &[
    Output { key: "area", words: "cross-section", unit: Unit::MM2 },
    Output { key: "inertia", words: "second moment of area", unit: Unit::MM4 },
    Output { key: "modulus", words: "section modulus", unit: Unit::MM3 },
];

/// Working of [`rectangle`].
pub static SECTION_RECTANGLE: Working = Working {
    name: "timber/section-rectangle",
    title: "Area, inertia and section modulus of a rectangle.",
    source: MECHANICS,
    not_for: "sawn sizes before planing: put in the real size",
    inputs: &[
        Input::new("breadth", "b", "side across the load", Unit::MM, Limits::ours(5.0, 1000.0)),
        Input::new("depth", "h", "side in the direction of the load", Unit::MM, Limits::ours(5.0, 1000.0)),
    ],
    outputs: OUTPUTS,
    run: |g| found(rectangle(&Rectangle::put(g)?)),
};

/// Working of [`round`].
pub static SECTION_ROUND: Working = Working {
    name: "timber/section-round",
    title: "Area, inertia and section modulus of a round.",
    source: MECHANICS,
    not_for: "half-rounds; for a tapered pole put in the diameter where the moment acts",
    inputs: &[Input::new("diameter", "D", "diameter", Unit::MM, Limits::ours(20.0, 1000.0))],
    outputs: OUTPUTS,
    run: |g| found(round(&Round::put(g)?)),
};

fn found(f: SectionFigures<groundhold_working::Shown<'_>>) -> Result<Vec<groundhold_working::Found<'_>>> {
    Ok([f.area, f.inertia, f.modulus].into_iter().map(groundhold_working::Found::One).collect())
}
