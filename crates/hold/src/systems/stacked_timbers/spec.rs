//! Which sizes does a wall of stacked timbers have?

use groundhold_member::timber::Grade;
use groundhold_quantity::{Length, Slope, UnitWeight};

use crate::timber_text;

/// The timbers: all of one size.
#[derive(Debug, Clone, PartialEq)]
pub struct StackedTimber {
    /// Upright in the wall: the height of a course.
    pub height: Length,
    /// Across the wall.
    pub thickness: Length,
    /// Strength class.
    pub grade: &'static Grade,
    /// Treatment or use class as ordered.
    pub treatment: String,
}

/// The ties that hold the wall to the bank.
#[derive(Debug, Clone, PartialEq)]
pub struct TieSpec {
    /// Most distance from tie to tie in a row.
    pub spacing: Length,
    /// Courses from one row of ties to the next.
    pub every: u32,
    /// From the face to the back of the cross piece; solved where none is given.
    pub length: Option<Length>,
    /// Length of the cross piece along the wall.
    pub cross: Length,
    /// Screws through the head of a tie into the course below, and as many through its end into the cross piece.
    pub screws: u32,
}

/// The screws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CourseScrews {
    /// Outer diameter of the thread.
    pub diameter: Length,
    /// Length under the head.
    pub length: Length,
    /// Along each course, from one to the next.
    pub spacing: Length,
}

/// All sizes of a wall of stacked timbers.
#[derive(Debug, Clone, PartialEq)]
pub struct StackedTimberSpec {
    /// Timbers of the wall, its ties and cross pieces.
    pub timber: StackedTimber,
    /// Lengths in which they are sold.
    pub stock: Vec<Length>,
    /// Lean of the face into the bank, run over rise: each course stands back by that.
    pub batter: Slope,
    /// Underside of the lowest course below the ground in front, least.
    pub bury: Length,
    /// Rolled stone under the lowest course.
    pub bed: Length,
    /// Ties; none where the wall shall stand by its weight.
    pub tied: bool,
    /// How the ties are, where there are any.
    pub ties: TieSpec,
    /// Screws.
    pub screws: CourseScrews,
}

/// Unit weight of a grade for which its table has no density. Common practice, no source; on the light side.
const LIGHT: UnitWeight = UnitWeight::kn_per_m3(4.5);

impl StackedTimber {
    /// Key of the material: `timber 150x150 UC4 C16`.
    pub fn material(&self) -> String {
        format!("timber {}", self.text())
    }
    /// As it is written in a job: `150x150 UC4 C16`.
    pub fn text(&self) -> String {
        let size = timber_text::spelled(self.height, self.thickness);
        let words = [size.as_str(), &self.treatment, self.grade.name];
        words.into_iter().filter(|w| !w.is_empty()).collect::<Vec<_>>().join(" ")
    }
    /// Unit weight, dry: what holds the wall down shall not count on water.
    pub fn unit_weight(&self) -> UnitWeight {
        let density = self.grade.density_mean.to_kg_per_m3();
        if density > 0.0 { UnitWeight::kn_per_m3(density * 9.81 / 1000.0) } else { LIGHT }
    }
}

impl CourseScrews {
    /// Key of the material: `screw 10x280`.
    pub fn material(&self) -> String {
        format!("screw {}x{}", self.diameter.to_mm().round(), self.length.to_mm().round())
    }
}

impl StackedTimberSpec {
    /// The longest timber that is sold.
    pub fn longest(&self) -> Length {
        self.stock.iter().copied().reduce(Length::max).unwrap_or(Length::m(2.4))
    }
    /// Rows of ties in a strip of so many courses: each is the course in which the heads lie, counted from 0, from the
    /// highest down. The highest lies in the second course from the top; below a head there is always a course.
    pub fn rows(&self, courses: usize) -> Vec<usize> {
        if !self.tied || courses < 2 {
            return vec![];
        }
        let top = courses.saturating_sub(2).max(1);
        (0..)
            .map(|i| top as i64 - i * i64::from(self.ties.every.max(1)))
            .take_while(|k| 1 <= *k)
            .map(|k| k as usize)
            .collect()
    }
    /// Ties in a timber of this length that holds their heads.
    pub fn ties_in(&self, length: Length) -> usize {
        ((length / self.ties.spacing - 1e-6).ceil().max(1.0) as usize).max(2)
    }
}
