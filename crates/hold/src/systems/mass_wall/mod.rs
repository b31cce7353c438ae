//! Mortared masonry or mass concrete on a concrete footing: it stands by its weight, and its joints carry no tension.

mod rows;
mod take_off;

use groundhold_quantity::{Length, Pressure, Slope, UnitWeight, trim};

use crate::gravity::{self, Body, Course, Coursing, Gravity, Way};
use crate::{CaseError, Check, CheckKind, Cross, Layout, Note, Strip, Stuff, System, Verdict, WallCase, by_rows};

/// Of what the wall stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// Concrete without steel, cast against boards.
    Concrete,
    /// Solid dense blocks laid flat in mortar.
    Block,
    /// Natural stone in mortar.
    Stone,
}

/// All sizes of a wall of masonry or mass concrete.
#[derive(Debug, Clone, PartialEq)]
pub struct MassWallSpec {
    /// Of what.
    pub made: Made,
    /// Width at the top.
    pub top_width: Length,
    /// Width on the footing; solved where none is given.
    pub base_width: Option<Length>,
    /// Batter of the face, run over rise.
    pub batter: Slope,
    /// Thickness of the footing.
    pub footing: Length,
    /// How far the footing reaches beyond the face.
    pub toe: Length,
    /// How far it reaches beyond the back.
    pub heel: Length,
    /// Underside of the footing below the ground in front, least.
    pub bury: Length,
    /// Height between joints that are checked: a lift of concrete, some courses of masonry.
    pub lift: Length,
    /// Unit weight of the wall; that of its kind where none is given.
    pub weight: Option<UnitWeight>,
    /// Crushing strength, allowable with factored loads; that of its kind where none is given.
    pub strength: Option<Pressure>,
    /// Distance of weep holes along the face.
    pub weeps: Length,
}

/// Concrete, unreinforced: EN 1991-1-1:2002 Table A.1, 24 kN/m³.
const CONCRETE: UnitWeight = UnitWeight::kn_per_m3(24.0);
const WIDTH_STEP: Length = Length::mm(50.0);
/// Solid blocks and bricks come in this width: a wall of them grows by half a block with its joint. Common practice.
const HALF_BLOCK: Length = Length::mm(112.5);
const WIDEST: Length = Length::m(2.0);
/// Retained height above which guides for garden walls without steel stop.
const GUIDE: Length = Length::m(1.2);
const UNIT: Length = Length::m(2.0);

impl MassWallSpec {
    /// Unit weight of the wall. Concrete: EN 1991-1-1:2002 Table A.1; solid dense block 21 and stone in mortar 23 kN/m³:
    /// from memory, common practice.
    pub fn unit_weight(&self) -> UnitWeight {
        self.weight.unwrap_or(match self.made {
            Made::Concrete => CONCRETE,
            Made::Block => UnitWeight::kn_per_m3(21.0),
            Made::Stone => UnitWeight::kn_per_m3(23.0),
        })
    }
    fn stuff(&self) -> Stuff {
        match self.made {
            Made::Concrete => Stuff::Concrete,
            Made::Block => Stuff::Block,
            Made::Stone => Stuff::Stone,
        }
    }
    fn made_words(&self) -> &'static str {
        match self.made {
            Made::Concrete => "mass concrete",
            Made::Block => "solid block in mortar",
            Made::Stone => "stone in mortar",
        }
    }
    fn step(&self) -> Length {
        if self.made == Made::Block { HALF_BLOCK } else { WIDTH_STEP }
    }
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        if let Some(w) = self.base_width.filter(|w| *w < self.top_width) {
            let expected = format!("at least the width at the top, {}", case.units.length(self.top_width));
            return Err(case.wrong("the width on the footing", case.units.length(w), &expected));
        }
        // A footing without steel spreads its load at 45° or steeper.
        let most = self.toe.max(self.heel);
        if self.footing < most {
            let expected = format!("at least as thick as it projects, {}: it has no steel", case.units.length(most));
            return Err(case.wrong("the thickness of the footing", case.units.length(self.footing), &expected));
        }
        if self.lift < Length::mm(50.0) || self.top_width < Length::mm(90.0) {
            let found = case.units.length(self.top_width);
            return Err(case.wrong(
                "the size of the wall",
                found,
                "lifts of 50 mm or more and 90 mm or more at the top",
            ));
        }
        Ok(())
    }
    fn notes(&self, case: &WallCase, strip: &Strip, body: &Body) -> Vec<Note> {
        let u = case.units;
        let z = self.footing.to_m() + (body.height() - self.footing.to_m()) * 0.6;
        let weight = trim(self.unit_weight().to_kn_per_m3(), 1);
        let wall = Note {
            at: (Length::m(body.at(z).0), strip.base + Length::m(z)),
            says: vec![self.made_words().into(), format!("{weight} kN/m³, {} at the top", u.length(self.top_width))],
            lean: (1.0, 0.0),
            rank: 60,
            clear: 2.0,
        };
        let footing = Note {
            at: (self.toe * 0.5, strip.base + self.footing / 2.0),
            says: vec![format!("footing {} thick, concrete", u.length(self.footing))],
            lean: (1.0, 0.4),
            rank: 56,
            clear: 1.5,
        };
        vec![wall, footing]
    }
}

impl Gravity for MassWallSpec {
    fn body(&self, strip: &Strip) -> Body {
        let footing = self.footing.to_m();
        let height = (strip.top - strip.foot).to_m().max(0.01);
        let m = self.batter.to_ratio();
        let (base, top) = (strip.width.to_m(), self.top_width.to_m());
        let front = |z: f64| -m * z;
        let back = |z: f64| -base + (front(height) - top + base) * z / height;
        let mut courses = vec![];
        if footing > 0.0 {
            let (toe, heel) = (self.toe.to_m(), -base - self.heel.to_m());
            courses.push(Course {
                height: (0.0, footing),
                front: (toe, toe),
                back: (heel, heel),
                unit_weight: CONCRETE,
                stuff: Stuff::Concrete,
                group: "footing",
                joint_below: false,
            });
        }
        let n = (height / self.lift.to_m() - 1e-6).ceil().clamp(1.0, 400.0) as usize;
        courses.extend((0..n).map(|i| {
            let (a, b) = (height * i as f64 / n as f64, height * (i + 1) as f64 / n as f64);
            Course {
                height: (footing + a, footing + b),
                front: (front(a), front(b)),
                back: (back(a), back(b)),
                unit_weight: self.unit_weight(),
                stuff: self.stuff(),
                group: "wall",
                joint_below: true,
            }
        }));
        Body { courses }
    }
    /// Concrete on roughened concrete and mortar joints: 0.6, without their cohesion. EN 1992-1-1:2004 6.2.5(2), smooth
    /// surface, from memory.
    fn joint_friction(&self) -> f64 {
        0.6
    }
    /// Allowable with factored loads, from memory: EN 1996-1-1 for masonry in general-purpose mortar with γ_M 3.0, EN
    /// 1992-1-1 12.3 for plain concrete; low ends, since garden mortar is seldom tested.
    fn crushing(&self) -> Option<(Pressure, &'static str)> {
        let usual = match self.made {
            Made::Concrete => Pressure::kpa(4000.0),
            Made::Block => Pressure::kpa(1000.0),
            Made::Stone => Pressure::kpa(600.0),
        };
        let method = if self.strength.is_some() { "strength as given" } else { "low end for its kind, from memory" };
        Some((self.strength.unwrap_or(usual), method))
    }
    fn drains_itself(&self) -> bool {
        false
    }
    fn guide(&self) -> (Length, &'static str) {
        (GUIDE, "garden walls without steel")
    }
    fn widths(&self, _: &Strip) -> Vec<Length> {
        let n = ((WIDEST - self.top_width) / self.step() + 1e-9).floor().max(0.0) as usize;
        (0..=n).map(|i| self.top_width + self.step() * i as f64).collect()
    }
    fn given_width(&self) -> Option<Length> {
        self.base_width
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        let wide = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or(self.top_width);
        let mm = |l: Length| trim(l.to_mm(), 0);
        // A longer toe wants a thicker footing, which is then said by the check of its size.
        let toe = self.footing.min(Length::mm(600.0));
        vec![
            Way::lengths("base_width", wide, self.step(), WIDEST, |w| {
                format!("The wall {} mm wide on its footing instead of {} mm.", mm(w), mm(wide))
            }),
            Way::lengths("toe", self.toe, Length::mm(50.0), toe, |t| {
                format!("A footing that reaches {} mm beyond the face instead of {} mm.", mm(t), mm(self.toe))
            }),
            Way::lengths("heel", self.heel, Length::mm(50.0), toe, |t| {
                format!("A footing that reaches {} mm beyond the back instead of {} mm.", mm(t), mm(self.heel))
            }),
            Way::lengths("bury", self.bury, Length::mm(100.0), Length::mm(1200.0), |d| {
                format!("The underside {} mm below the ground in front.", mm(d))
            }),
        ]
    }
}

impl System for MassWallSpec {
    fn key(&self) -> &'static str {
        "mass-wall"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        self.top_width
    }
    fn back_to_line(&self) -> Length {
        self.top_width
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Sliding, CheckKind::Overturning, CheckKind::Bearing]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let block = self.made == Made::Block;
        let coursing = Coursing {
            unit: UNIT,
            whole_units: false,
            step: Length::mm(225.0),
            course: block.then_some(Length::mm(112.5)),
            below: self.footing,
            bury: self.bury,
        };
        let mut strips = gravity::strips(case, &coursing)?;
        gravity::solve_widths(case, self, &mut strips);
        let mut layout = gravity::laid_out(case, self, strips, Length::mm(150.0));
        layout.faces = gravity::faces(self, &layout.strips, None, &|_, _, _| String::new());
        take_off::fill(case, self, &mut layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        gravity::judge(case, self, layout)
    }
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        gravity::checks(case, self, layout)
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        gravity::cross(case, self, layout, chainage, &|s, b| self.notes(case, s, b))
    }
}
