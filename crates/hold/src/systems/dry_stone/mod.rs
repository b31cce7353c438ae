//! Stones laid without mortar: a battered face, a heart packed by hand, through stones and a cope.

mod rows;
mod take_off;

use groundhold_quantity::{Length, Slope, UnitWeight, trim};

use crate::gravity::{self, Body, Course, Coursing, Gravity, Way};
use crate::{CaseError, Check, CheckKind, Cross, Layout, Note, Strip, Stuff, System, Verdict, WallCase, by_rows};

/// All sizes of a dry stone wall.
#[derive(Debug, Clone, PartialEq)]
pub struct DryStoneSpec {
    /// Width under the cope.
    pub top_width: Length,
    /// Width of the foundation; solved where none is given.
    pub base_width: Option<Length>,
    /// Batter of the face, run over rise.
    pub batter: Slope,
    /// Underside of the foundation below the ground in front, least.
    pub bury: Length,
    /// Height of a lift after which the wall is levelled and packed: its joints are checked.
    pub lift: Length,
    /// Height of the cope.
    pub cope: Length,
    /// Height of the first row of throughs above the foundation, and of each row above it.
    pub throughs: Length,
    /// Unit weight of the solid stone.
    pub stone: UnitWeight,
    /// Share of the wall that is air.
    pub voids: groundhold_quantity::Share,
    /// Tangent of the friction angle of stone on stone.
    pub friction: f64,
}

/// Widths are solved in steps of this: what a string and a tape hold.
const WIDTH_STEP: Length = Length::mm(50.0);
/// Widest foundation that is tried.
const WIDEST: Length = Length::m(2.5);
/// Retained height above which guides for dry stone garden walls stop.
const GUIDE: Length = Length::m(1.2);
/// Stretches between two steps of the base: as long as a builder keeps one level. Common practice, no source.
const UNIT: Length = Length::m(1.5);
/// Height of a step of the base.
const STEP: Length = Length::mm(150.0);

impl DryStoneSpec {
    fn in_place(&self) -> UnitWeight {
        self.stone * (1.0 - self.voids.to_fraction())
    }
    /// The narrowest base with which the back does not lean over the soil: face and back meet the top as given.
    fn narrowest(&self, strip: &Strip) -> Length {
        (self.top_width + (strip.top - strip.base) * self.batter.to_ratio() * 0.5).max(self.top_width)
    }
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        if let Some(w) = self.base_width.filter(|w| *w < self.top_width) {
            let expected = format!("at least the width under the cope, {}", case.units.length(self.top_width));
            return Err(case.wrong("the width of the foundation", case.units.length(w), &expected));
        }
        if self.lift < Length::mm(50.0) || self.top_width < Length::mm(150.0) {
            let expected = "lifts of 50 mm or more and 150 mm or more under the cope";
            return Err(case.wrong("the size of the wall", case.units.length(self.top_width), expected));
        }
        Ok(())
    }
    fn notes(&self, case: &WallCase, strip: &Strip, body: &Body) -> Vec<Note> {
        let u = case.units;
        let z = body.height() * 0.6;
        let face = body.at(z).0;
        let note = |at, says: Vec<String>, lean, rank| Note { at, says, lean, rank, clear: 2.0 };
        let weight = trim(self.in_place().to_kn_per_m3(), 1);
        let mut all = vec![note(
            (Length::m(face), strip.base + Length::m(z)),
            vec![format!("dry stone, face {}", u.slope(self.batter)), format!("{weight} kN/m³ in place")],
            (1.0, 0.0),
            60,
        )];
        let through = strip.base + self.throughs;
        if through < strip.top - self.cope {
            let back = body.at(self.throughs.to_m()).1;
            all.push(note(
                (Length::m(back), through),
                vec![format!("throughs every {}", u.length(self.throughs)), "one a metre".into()],
                (-1.0, -0.4),
                56,
            ));
        }
        all
    }
}

impl Gravity for DryStoneSpec {
    fn body(&self, strip: &Strip) -> Body {
        let height = (strip.top - strip.base).to_m().max(0.01);
        let m = self.batter.to_ratio();
        let (base, top) = (strip.width.to_m(), self.top_width.to_m());
        let front = |z: f64| -m * z;
        let back = |z: f64| -base + (front(height) - top + base) * z / height;
        let n = (height / self.lift.to_m() - 1e-6).ceil().clamp(1.0, 400.0) as usize;
        let courses = (0..n).map(|i| {
            let (a, b) = (height * i as f64 / n as f64, height * (i + 1) as f64 / n as f64);
            Course {
                height: (a, b),
                front: (front(a), front(b)),
                back: (back(a), back(b)),
                unit_weight: self.in_place(),
                stuff: Stuff::Stone,
                group: "dry stone",
                joint_below: true,
            }
        });
        Body { courses: courses.collect() }
    }
    fn joint_friction(&self) -> f64 {
        self.friction
    }
    fn drains_itself(&self) -> bool {
        true
    }
    fn guide(&self) -> (Length, &'static str) {
        (GUIDE, "dry stone garden walls")
    }
    fn widths(&self, strip: &Strip) -> Vec<Length> {
        let first = Length::mm((self.narrowest(strip) / WIDTH_STEP - 1e-9).ceil() * WIDTH_STEP.to_mm());
        let n = ((WIDEST - first) / WIDTH_STEP + 1e-9).floor().max(0.0) as usize;
        (0..=n).map(|i| first + WIDTH_STEP * i as f64).collect()
    }
    fn given_width(&self) -> Option<Length> {
        self.base_width
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        let wide = layout.strips.iter().map(|s| s.width).reduce(Length::max).unwrap_or(self.top_width);
        let batters = ["1:8", "1:6", "1:5", "1:4"];
        let flatter = batters.iter().filter(|b| {
            groundhold_quantity::parse::<Slope>(b).is_ok_and(|b| b.to_ratio() > self.batter.to_ratio() + 1e-6)
        });
        vec![
            Way::lengths("base_width", wide, WIDTH_STEP, WIDEST, |w| {
                format!("A foundation {} mm wide instead of {} mm.", trim(w.to_mm(), 0), trim(wide.to_mm(), 0))
            }),
            Way { key: "batter", tries: flatter.map(|b| (b.to_string(), format!("The face battered {b}."))).collect() },
            Way::lengths("bury", self.bury, Length::mm(100.0), Length::mm(1000.0), |d| {
                format!("The foundation {} mm below the ground in front.", trim(d.to_mm(), 0))
            }),
            Way::lengths("top_width", self.top_width, WIDTH_STEP, Length::m(1.2), |w| {
                format!("The wall {} mm wide under the cope.", trim(w.to_mm(), 0))
            }),
        ]
    }
}

impl System for DryStoneSpec {
    fn key(&self) -> &'static str {
        "dry-stone"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        self.top_width
    }
    fn back_to_line(&self) -> Length {
        self.top_width
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        &[CheckKind::Sliding, CheckKind::Eccentricity, CheckKind::JointEccentricity]
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let coursing =
            Coursing { unit: UNIT, whole_units: false, step: STEP, course: None, below: Length::ZERO, bury: self.bury };
        let mut strips = gravity::strips(case, &coursing)?;
        gravity::solve_widths(case, self, &mut strips);
        let mut layout = gravity::laid_out(case, self, strips, Length::mm(200.0));
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
