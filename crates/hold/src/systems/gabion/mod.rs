//! Baskets of wire filled with stone, laid in courses with a stepped face or a stepped back.

mod rows;
mod take_off;

use groundhold_quantity::{Length, Pressure, Share, Slope, UnitWeight, math, trim};

use crate::gravity::{self, Body, Course, Coursing, Gravity, Way};
use crate::{CaseError, Check, CheckKind, Cross, Layout, Note, Strip, Stuff, System, Verdict, WallCase, by_rows};

/// Which side of the wall is stepped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stepped {
    /// The open side: the back is one plane.
    Front,
    /// The soil side: the face is one plane.
    Back,
}

/// All sizes of a wall of baskets.
#[derive(Debug, Clone, PartialEq)]
pub struct GabionSpec {
    /// Height of a basket: of a course.
    pub course: Length,
    /// Length of a basket along the wall.
    pub basket: Length,
    /// Width of the top course across the wall.
    pub top_width: Length,
    /// Width of the lowest course; solved where none is given.
    pub base_width: Option<Length>,
    /// Which side is stepped.
    pub stepped: Stepped,
    /// Lean of the whole wall into the bank, run over rise: each course stands back by that.
    pub lean: Slope,
    /// Underside of the lowest course below the ground in front, least.
    pub bury: Length,
    /// Rolled stone under the lowest course.
    pub bed: Length,
    /// Unit weight of the solid stone.
    pub stone: UnitWeight,
    /// Share of the basket that is air.
    pub voids: Share,
    /// Friction angle of stone on stone through the mesh, as its tangent.
    pub friction: f64,
    /// Size of the filling as ordered: `100-200`.
    pub filling: String,
}

/// Baskets come this wide. Common practice, no source.
const WIDTH_STEP: Length = Length::mm(500.0);
/// Widest base that is tried: as wide as the wall is high and half a basket more.
const WIDEST: Length = Length::m(4.0);
/// Retained height above which guides for garden walls of baskets stop.
const GUIDE: Length = Length::m(1.5);

impl GabionSpec {
    /// Width of a course counted from 0 at the bottom, of `n`.
    fn width_of(&self, strip: &Strip, course: usize, n: usize) -> Length {
        let extra = ((strip.width - self.top_width) / WIDTH_STEP).round().max(0.0);
        if n <= 1 {
            return strip.width;
        }
        let share = (n - 1 - course) as f64 / (n - 1) as f64;
        // The base has all of it and the top none; between them no course is wider than the one below it.
        (self.top_width + WIDTH_STEP * (extra * share - 1e-9).ceil().max(0.0)).min(strip.width)
    }
    /// As it stands in the wall, with its voids.
    fn in_place(&self) -> UnitWeight {
        self.stone * (1.0 - self.voids.to_fraction())
    }
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        if let Some(w) = self.base_width.filter(|w| *w < self.top_width) {
            let expected = format!("at least the width of the top course, {}", case.units.length(self.top_width));
            return Err(case.wrong("the width of the lowest course", case.units.length(w), &expected));
        }
        if self.course < Length::mm(100.0) || self.basket < Length::mm(200.0) || self.top_width < Length::mm(200.0) {
            return Err(case.wrong(
                "the size of a basket",
                case.units.length(self.course),
                "at least 100 mm high, 200 mm wide and long",
            ));
        }
        Ok(())
    }
    fn notes(&self, case: &WallCase, strip: &Strip, body: &Body) -> Vec<Note> {
        let u = case.units;
        let top = body.at(body.height() - 1e-3);
        let says = vec![
            format!("{} courses of baskets {} high", strip.courses, u.length(self.course)),
            format!("stone {}, {} kN/m³ in place", self.filling, trim(self.in_place().to_kn_per_m3(), 1)),
        ];
        let at = (Length::m(top.0), strip.top - self.course / 2.0);
        let mut all = vec![Note { at, says, lean: (1.0, 0.0), rank: 60, clear: 2.0 }];
        if self.bed > Length::ZERO {
            let at = (Length::m(body.at(0.0).0 - 0.1), strip.base);
            let says = vec![format!("on {} of rolled stone", u.length(self.bed))];
            all.push(Note { at, says, lean: (1.0, 0.6), rank: 50, clear: 1.5 });
        }
        all
    }
}

impl Gravity for GabionSpec {
    fn body(&self, strip: &Strip) -> Body {
        let n = strip.courses.max(1);
        let h = self.course.to_m();
        let base = strip.width.to_m();
        let courses = (0..n).map(|i| {
            let w = self.width_of(strip, i, n).to_m();
            let back_by = self.lean.to_ratio() * h * i as f64;
            let front = -back_by - if self.stepped == Stepped::Front { base - w } else { 0.0 };
            Course {
                height: (h * i as f64, h * (i + 1) as f64),
                front: (front, front),
                back: (front - w, front - w),
                unit_weight: self.in_place(),
                stuff: Stuff::Basket,
                group: "baskets",
                joint_below: true,
            }
        });
        Body { courses: courses.collect() }
    }
    fn joint_friction(&self) -> f64 {
        self.friction
    }
    fn crushing(&self) -> Option<(Pressure, &'static str)> {
        None
    }
    fn drains_itself(&self) -> bool {
        true
    }
    fn guide(&self) -> (Length, &'static str) {
        (GUIDE, "garden walls of stone baskets")
    }
    fn widths(&self, _: &Strip) -> Vec<Length> {
        let n = ((WIDEST - self.top_width) / WIDTH_STEP + 1e-9).floor().max(0.0) as usize;
        (0..=n).map(|i| self.top_width + WIDTH_STEP * i as f64).collect()
    }
    fn given_width(&self) -> Option<Length> {
        self.base_width
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        let wide = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or(self.top_width);
        let leans = ["1:20", "1:10", "1:8", "1:6"];
        let steeper = leans.iter().filter(|l| {
            groundhold_quantity::parse::<Slope>(l).is_ok_and(|l| l.to_ratio() > self.lean.to_ratio() + 1e-6)
        });
        vec![
            Way::lengths("base_width", wide, WIDTH_STEP, WIDEST, |w| {
                format!("The lowest course {} m wide instead of {} m.", trim(w.to_m(), 1), trim(wide.to_m(), 1))
            }),
            Way::lengths("bury", self.bury, Length::mm(100.0), Length::mm(1000.0), |d| {
                format!("The underside {} mm below the ground in front.", trim(d.to_mm(), 0))
            }),
            Way {
                key: "lean",
                tries: steeper.map(|l| (l.to_string(), format!("The wall leaning {l} into the bank."))).collect(),
            },
        ]
    }
}

impl System for GabionSpec {
    fn key(&self) -> &'static str {
        "gabion"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        match self.stepped {
            Stepped::Back => self.top_width,
            Stepped::Front => self.base_width.unwrap_or(self.top_width),
        }
    }
    fn back_to_line(&self) -> Length {
        self.thickness()
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Sliding, CheckKind::Overturning, CheckKind::Bearing]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let coursing = Coursing {
            unit: self.basket,
            whole_units: true,
            step: self.course,
            course: Some(self.course),
            below: Length::ZERO,
            bury: self.bury,
        };
        let mut strips = gravity::strips(case, &coursing)?;
        gravity::solve_widths(case, self, &mut strips);
        let mut layout = gravity::laid_out(case, self, strips, Length::mm(300.0));
        layout.faces = gravity::faces(self, &layout.strips, Some(self.basket), &|_, row, n| format!("G{row}-{n}"));
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

/// Tangent of an angle in degrees.
fn tan_deg(degrees: f64) -> f64 {
    math::tan(degrees.to_radians())
}
