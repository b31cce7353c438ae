//! What does a wall of blocks weigh, course by course, and up to where does a layer of grid make the fill part of it?

use groundhold_earth::Combination;
use groundhold_finding::{Finding, Kind};
use groundhold_quantity::{Length, LineForce, UnitWeight, math};
use groundhold_working::Refused;

use super::{DryBlockSpec, layers, said};
use crate::gravity::{Body, Course, Gravity, Spot, Way};
use crate::{Check, CheckKind, Layout, LoadCase, Strip, Stuff, Verdict, WallCase, findings};

/// The sizes with the distance of the layers found.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Laid<'a> {
    pub spec: &'a DryBlockSpec,
    /// Courses from one layer to the next.
    pub every: usize,
    /// Unit weight of the fill.
    pub fill: UnitWeight,
    /// Blocks alone, as they are drawn.
    pub bare: bool,
}

/// Cap of concrete. Common practice, no source: 22 kN/m³.
const CAP: UnitWeight = UnitWeight::kn_per_m3(22.0);
/// Retained heights at which guides for garden walls of this kind stop. Common practice, no source.
const GUIDE: [Length; 2] = [Length::m(0.9), Length::m(1.2)];

/// Which checks of the grid make which finding.
const KINDS: &[(&[CheckKind], &Kind)] = &[
    (&[CheckKind::GridStrength], &findings::GRID_TEARS),
    (&[CheckKind::GridPullout], &findings::GRID_PULLS_OUT),
    (&[CheckKind::GridConnection], &findings::GRID_LEAVES_BLOCKS),
    (&[CheckKind::GridSliding], &findings::GRID_LAYER_SLIDES),
];

impl Laid<'_> {
    /// Whether grid is laid in a strip: those that stand without have none.
    pub fn reinforced(&self, strip: &Strip) -> bool {
        self.spec.grid.laid && strip.width > self.spec.depth + Length::mm(1.0)
    }
    /// On how many courses each layer lies, from the lowest; at least one course lies on each.
    pub fn layers(&self, strip: &Strip) -> Vec<usize> {
        if !self.reinforced(strip) {
            return vec![];
        }
        let first = (self.every / 2).max(1);
        (first..strip.courses).step_by(self.every.max(1)).collect()
    }
    /// The wall with the fill of one course made part of it over the length of the grid.
    pub fn body_on(&self, strip: &Strip, wide: usize) -> Body {
        let s = self.spec;
        let (h, depth) = (s.height.to_m(), s.depth.to_m());
        let layers = self.layers(strip);
        let free = layers.last().copied().unwrap_or(0);
        let n = strip.courses.max(1);
        let mut courses: Vec<Course> = (0..n)
            .map(|i| {
                let front = -s.setback.to_m() * i as f64;
                let whole = !layers.is_empty() && i == wide && !self.bare;
                let long = if whole { strip.width.to_m() } else { depth };
                // Heavy blocks lie at the toe: their weight over the fill's is not counted in the common mass.
                let block = s.in_place();
                let unit_weight =
                    if whole { (block.min(self.fill) * depth + self.fill * (long - depth)) / long } else { block };
                Course {
                    height: (h * i as f64, h * (i + 1) as f64),
                    front: (front, front),
                    back: (front - long, front - long),
                    unit_weight,
                    stuff: Stuff::Block,
                    group: "blocks",
                    joint_below: i > 0 && free <= i,
                }
            })
            .collect();
        if s.cap > Length::ZERO {
            let last = &courses[n - 1];
            let (front, back) = (last.front.1, last.front.1 - depth);
            let z = h * n as f64;
            courses.push(Course {
                height: (z, z + s.cap.to_m()),
                front: (front, front),
                back: (back, back),
                unit_weight: CAP,
                stuff: Stuff::Concrete,
                group: "cap",
                joint_below: false,
            });
        }
        Body { courses }
    }
}

impl Gravity for Laid<'_> {
    fn body(&self, strip: &Strip) -> Body {
        self.body_on(strip, 0)
    }
    /// Cores filled with stone key into the pad; smooth undersides do not.
    fn rubs(&self) -> f64 {
        if self.spec.hollow.to_fraction() > 0.0 { 1.0 } else { 2.0 / 3.0 }
    }
    fn pad(&self) -> Length {
        self.spec.pad
    }
    fn joint_friction(&self) -> f64 {
        math::tan(self.spec.friction.to_rad())
    }
    fn joint_grip(&self) -> LineForce {
        self.spec.lip
    }
    fn drains_itself(&self) -> bool {
        false
    }
    fn guide(&self) -> (Length, &'static str) {
        if self.spec.grid.laid {
            (GUIDE[1], "garden walls of blocks with grid")
        } else {
            (GUIDE[0], "garden walls of blocks stacked dry without grid")
        }
    }
    fn widths(&self, _: &Strip) -> Vec<Length> {
        vec![self.spec.depth]
    }
    fn given_width(&self) -> Option<Length> {
        self.spec.grid.length.filter(|_| self.spec.grid.laid)
    }
    fn ways(&self, layout: &Layout) -> Vec<Way> {
        said::ways(self, layout)
    }
    fn own_checks(
        &self,
        case: &WallCase,
        spot: &Spot,
        state: LoadCase,
        c: &'static Combination,
    ) -> Result<Vec<Check>, Refused> {
        layers::checks(case, self, spot, state, c)
    }
    fn own_kinds(&self) -> &'static [(&'static [CheckKind], &'static Kind)] {
        KINDS
    }
    fn own_findings(&self, case: &WallCase, layout: &Layout, _: &Verdict) -> Vec<Finding> {
        said::findings(case, self, layout)
    }
}
