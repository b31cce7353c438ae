//! A stem of reinforced concrete or filled blocks with bars on a concrete footing with toe and heel: the soil on the heel
//! holds it.

mod body;
mod cross;
mod effects;
mod rows;
mod schedule;
mod sections;
mod solve;
mod steel;
mod take_off;

use groundhold_quantity::{Length, Pressure, UnitWeight};

use crate::gravity;
use crate::{CaseError, Check, CheckKind, Cross, Layout, Stuff, System, Verdict, WallCase, by_rows};

/// Of what the stem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// Reinforced concrete.
    Concrete,
    /// Hollow blocks, bars in their cells, every cell filled.
    Block,
}

/// By whose rules its sections are judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Code {
    /// As the basis of the job: EN 1992 and 1996 with EN 1997, else ACI 318 and TMS 402.
    ByBasis,
    /// EN 1992-1-1 and EN 1996-1-1.
    Eurocode,
    /// ACI 318 and TMS 402.
    Us,
}

/// All sizes of a wall with a reinforced stem.
#[derive(Debug, Clone, PartialEq)]
pub struct CantileverSpec {
    /// Of what.
    pub made: Made,
    /// Thickness of the stem at its foot.
    pub stem: Length,
    /// Thickness of the stem at its top; as at its foot where none is given. The face is upright.
    pub stem_top: Option<Length>,
    /// Thickness of the footing.
    pub footing: Length,
    /// How far the footing reaches beyond the face.
    pub toe: Length,
    /// How far it reaches beyond the back of the stem; solved where none is given.
    pub heel: Option<Length>,
    /// Depth of a key under the footing; nothing for none.
    pub key: Length,
    /// Underside of the footing below the ground in front, least.
    pub bury: Length,
    /// Blinding under the footing; nothing where it is cast on the ground.
    pub blinding: Length,
    /// Diameter of the bars of the stem; solved where none is given.
    pub bar: Option<Length>,
    /// Distance of the bars of the stem; solved where none is given.
    pub every: Option<Length>,
    /// Cover to the bars of the stem at the soil; the least of the rules where none is given.
    pub cover: Option<Length>,
    /// Cylinder strength of the concrete.
    pub strength: Pressure,
    /// Yield strength of the bars.
    pub yield_stress: Pressure,
    /// Compressive strength of the filled masonry; a low one of the rules where none is given.
    pub masonry: Option<Pressure>,
    /// By whose rules.
    pub rules: Code,
    /// Distance of weep holes along the face.
    pub weeps: Length,
}

/// Reinforced concrete: EN 1991-1-1:2002 Table A.1, 25 kN/m³; 24 without its steel is taken for the footing too.
const CONCRETE: UnitWeight = UnitWeight::kn_per_m3(24.0);
/// Dense blocks with every cell filled. Common practice, no source: 21 kN/m³.
const FILLED: UnitWeight = UnitWeight::kn_per_m3(21.0);
/// Height of a course and length of a block with its joint. Common practice, no source.
const COURSE: Length = Length::mm(200.0);
const BLOCK: Length = Length::mm(400.0);
/// Stretches between two steps of the footing. Common practice, no source.
const UNIT: Length = Length::m(2.0);

impl CantileverSpec {
    pub(crate) fn top_thickness(&self) -> Length {
        self.stem_top.unwrap_or(self.stem).min(self.stem)
    }
    pub(crate) fn unit_weight(&self) -> UnitWeight {
        if self.made == Made::Concrete { CONCRETE } else { FILLED }
    }
    pub(crate) fn stuff(&self) -> Stuff {
        if self.made == Made::Concrete { Stuff::Concrete } else { Stuff::Block }
    }
    pub(crate) fn words(&self) -> &'static str {
        if self.made == Made::Concrete { "reinforced concrete" } else { "filled block with bars" }
    }
    /// True where the sections are judged by the Eurocodes.
    pub(crate) fn by_eurocode(&self, case: &WallCase) -> bool {
        match self.rules {
            Code::Eurocode => true,
            Code::Us => false,
            Code::ByBasis => case.basis.key.starts_with("en1997"),
        }
    }
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        let u = case.units;
        if let Some(t) = self.stem_top.filter(|t| *t > self.stem) {
            let expected = format!("at most the thickness at its foot, {}", u.length(self.stem));
            return Err(case.wrong("the thickness of the stem at its top", u.length(t), &expected));
        }
        if self.made == Made::Block && self.stem_top.is_some_and(|t| t < self.stem) {
            let expected = "nothing: a stem of blocks is as thick at its top as at its foot";
            return Err(case.wrong("the thickness of the stem at its top", u.length(self.top_thickness()), expected));
        }
        if let Some(c) = self.cover.filter(|c| *c > self.stem * 0.5) {
            let expected = format!("less than half the stem, {}", u.length(self.stem * 0.5));
            return Err(case.wrong("the cover", u.length(c), &expected));
        }
        Ok(())
    }
}

impl System for CantileverSpec {
    fn key(&self) -> &'static str {
        "cantilever"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        self.stem
    }
    fn back_to_line(&self) -> Length {
        self.stem
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Sliding, CheckKind::Bearing, CheckKind::StemBending]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let strips = solve::strips(case, self)?;
        let laid = solve::with_steel(case, self, &strips);
        let mut layout = gravity::laid_out(case, &laid, strips, Length::mm(200.0));
        layout.faces = gravity::faces(&laid, &layout.strips, None, &|_, _, _| String::new());
        take_off::fill(case, &laid, &mut layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        gravity::judge(case, &solve::with_steel(case, self, &layout.strips), layout)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        gravity::judge_quick(case, &solve::with_steel(case, self, &layout.strips), layout)
    }
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        gravity::checks(case, &solve::with_steel(case, self, &layout.strips), layout)
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        cross::cross(case, &solve::with_steel(case, self, &layout.strips), layout, chainage)
    }
}
