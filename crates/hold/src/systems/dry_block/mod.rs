//! Blocks stacked dry with a setback at every course, on a pad of rammed stone; with layers of geogrid in the fill where
//! their own weight does not do.

mod body;
mod cross;
mod face;
mod layers;
mod rows;
mod said;
mod solve;
mod take_off;

use groundhold_quantity::{Angle, Length, LineForce, Mass, Share, UnitWeight};

use crate::gravity;
use crate::{CaseError, Check, CheckKind, Cross, Layout, System, Verdict, WallCase, by_rows};

/// How hard the blocks grip a grid, by a test of both together.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Grip {
    /// Without weight on the joint.
    pub base: Option<LineForce>,
    /// Growth with the weight above.
    pub angle: Option<Angle>,
    /// Most that the test showed.
    pub most: Option<LineForce>,
}

/// The grid and how it is laid.
#[derive(Debug, Clone, PartialEq)]
pub struct GridSpec {
    /// True where layers of it are laid.
    pub laid: bool,
    /// Length from the face; solved where none is given.
    pub length: Option<Length>,
    /// Courses from one layer to the next; solved where none are given.
    pub every: Option<u32>,
    /// Ultimate strength as sold.
    pub ultimate: LineForce,
    /// Reduction for creep.
    pub creep: f64,
    /// Reduction for damage when laid.
    pub damage: f64,
    /// Reduction for chemistry and age.
    pub age: f64,
    /// Grip between the blocks.
    pub grip: Grip,
    /// Width of a roll.
    pub roll: Length,
}

/// All sizes of a wall of blocks stacked dry.
#[derive(Debug, Clone, PartialEq)]
pub struct DryBlockSpec {
    /// Height of a block.
    pub height: Length,
    /// Length of a block along the face.
    pub length: Length,
    /// Depth of a block across the wall.
    pub depth: Length,
    /// By how much each course steps back.
    pub setback: Length,
    /// Mass of one block, empty.
    pub mass: Mass,
    /// Share of a block that is hollow and filled with clean stone.
    pub hollow: Share,
    /// Friction angle of block on block.
    pub friction: Angle,
    /// What lips or pins hold in a joint without weight on it, by test.
    pub lip: LineForce,
    /// Underside of the lowest block below the ground in front, least.
    pub bury: Length,
    /// Rammed stone under the lowest course.
    pub pad: Length,
    /// Thickness of the cap; nothing for none.
    pub cap: Length,
    /// Friction angle of the fill behind the blocks; the held soil's where none is given.
    pub fill_friction: Option<Angle>,
    /// The grid.
    pub grid: GridSpec,
}

/// Clean stone, shaken into the cores. Common practice, no source: 15 kN/m³.
const CORE: UnitWeight = UnitWeight::kn_per_m3(15.0);
/// The pad reaches this far beyond the blocks. Common practice, no source.
pub(crate) const BESIDE: Length = Length::mm(150.0);

impl DryBlockSpec {
    /// Unit weight of blocks with their cores filled.
    pub fn in_place(&self) -> UnitWeight {
        let room = (self.height * self.length * self.depth).to_m3();
        UnitWeight::kn_per_m3(self.mass.to_kg() * 9.81 / 1000.0 / room) + CORE * self.hollow.to_fraction()
    }
    /// Highest distance of layers in courses: 0.8 m and twice the depth of a block. FHWA-NHI-10-024 (2009), 4.4.7 and the
    /// rule of AASHTO 11.10 for blocks, from memory.
    pub(crate) fn most_courses(&self) -> usize {
        let most = Length::mm(800.0).min(self.depth * 2.0);
        (most / self.height + 1e-6).floor().clamp(1.0, 12.0) as usize
    }
    fn check(&self, case: &WallCase) -> Result<(), CaseError> {
        let u = case.units;
        let solid = (self.height * self.length * self.depth).to_m3() * (1.0 - self.hollow.to_fraction());
        let density = self.mass.to_kg() / solid;
        if !(1200.0..=2800.0).contains(&density) {
            let expected = format!(
                "a mass with which its solid part weighs 1200 to 2800 kg/m³: {} to {}",
                u.mass(Mass::kg(solid * 1200.0)),
                u.mass(Mass::kg(solid * 2800.0))
            );
            return Err(case.wrong("the mass of a block", u.mass(self.mass), &expected));
        }
        if self.depth <= self.setback * 2.0 {
            let expected = format!("less than half the depth of a block, {}", u.length(self.depth / 2.0));
            return Err(case.wrong("the setback", u.length(self.setback), &expected));
        }
        if let Some(n) = self.grid.every.filter(|n| *n as usize > self.most_courses()) {
            let expected = format!(
                "at most {}: layers stand no more than 0.8 m and twice the depth of a block apart",
                self.most_courses()
            );
            return Err(case.wrong("the courses between two layers of grid", n.to_string(), &expected));
        }
        let least = self.depth + Length::mm(100.0);
        if let Some(l) = self.grid.length.filter(|l| *l < least) {
            let expected = format!("at least a hand longer than the depth of a block, {}", u.length(least));
            return Err(case.wrong("the length of the grid", u.length(l), &expected));
        }
        Ok(())
    }
}

impl System for DryBlockSpec {
    fn key(&self) -> &'static str {
        "dry-block"
    }
    by_rows!(rows::ROWS);
    fn thickness(&self) -> Length {
        self.depth
    }
    fn back_to_line(&self) -> Length {
        self.depth
    }
    fn main_checks(&self) -> &'static [CheckKind] {
        if self.grid.laid {
            &[CheckKind::Sliding, CheckKind::Bearing, CheckKind::GridPullout, CheckKind::GridConnection]
        } else {
            &[CheckKind::Sliding, CheckKind::Overturning, CheckKind::Bearing]
        }
    }
    fn lay_out(&self, case: &WallCase) -> Result<Layout, CaseError> {
        self.check(case)?;
        let mut strips = solve::strips(case, self)?;
        let laid = solve::solve(case, self, &mut strips);
        let mut layout = gravity::laid_out(case, &laid, strips, Length::mm(200.0));
        face::fill(case, self, &mut layout);
        take_off::fill(case, &laid, &mut layout);
        Ok(layout)
    }
    fn judge(&self, case: &WallCase, layout: &Layout) -> Verdict {
        gravity::judge(case, &solve::laid(case, self, layout), layout)
    }
    fn judge_quick(&self, case: &WallCase, layout: &Layout) -> Verdict {
        gravity::judge_quick(case, &solve::laid(case, self, layout), layout)
    }
    fn checks(&self, case: &WallCase, layout: &Layout) -> Vec<Check> {
        gravity::checks(case, &solve::laid(case, self, layout), layout)
    }
    fn cross(&self, case: &WallCase, layout: &Layout, chainage: Length) -> Option<Cross> {
        cross::cross(case, &solve::laid(case, self, layout), layout, chainage)
    }
}
