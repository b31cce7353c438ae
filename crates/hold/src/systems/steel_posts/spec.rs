//! Which sizes does a wall of steel posts with panels have?

use groundhold_member::steel::{Exposure, Profile, Rules, Shape, Steel};
use groundhold_member::timber::Grade;
use groundhold_quantity::{Area, Force, Length, Mass, Moment, Pressure, Slope};

use crate::posted::{CourseFit, HoleSpec, Posted};
use crate::{Post, timber_text};

/// Grades of steel by name, with the rules they belong to.
pub(crate) const STEELS: [(&str, Steel, Rules); 5] = [
    ("S235", Steel::S235, Rules::En1993),
    ("S275", Steel::S275, Rules::En1993),
    ("S355", Steel::S355, Rules::En1993),
    ("A36", Steel::A36, Rules::Aisc),
    ("A992", Steel::A992, Rules::Aisc),
];

/// A post: its profile and its steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteelPost {
    /// Profile.
    pub profile: &'static Profile,
    /// Its steel as it is ordered: `S275`.
    pub grade: &'static str,
    /// Its steel.
    pub steel: Steel,
    /// The rules by which it is judged.
    pub rules: Rules,
}

/// What a concrete panel holds, from its maker or from its steel; never guessed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Carries {
    /// The maker states it for one panel.
    Stated {
        /// Moment.
        moment: Moment,
        /// Shear.
        shear: Force,
        /// True where it is compared with factored loads; false where with loads as they are.
        design: bool,
    },
    /// Computed from its steel.
    Bars {
        /// Bars near the face that is pulled.
        count: u32,
        /// Their diameter.
        diameter: Length,
        /// Concrete over them.
        cover: Length,
        /// Cylinder strength of the concrete.
        strength: Pressure,
        /// Yield strength of the bars.
        yield_stress: Pressure,
    },
}

/// Of what a panel is.
#[derive(Debug, Clone, PartialEq)]
pub enum Made {
    /// A timber board or sleeper.
    Timber {
        /// Strength class.
        grade: &'static Grade,
        /// Treatment or use class as ordered.
        treatment: String,
    },
    /// A cast panel.
    Concrete {
        /// What it holds; a wall without it is refused.
        carries: Option<Carries>,
    },
}

/// A panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Upright in the wall: the height of a course.
    pub height: Length,
    /// In the direction of the push.
    pub thickness: Length,
    /// As it is sold.
    pub length: Length,
    /// Of what.
    pub made: Made,
}

/// All sizes of a wall of steel posts with panels.
#[derive(Debug, Clone, PartialEq)]
pub struct SteelPostSpec {
    /// Posts.
    pub post: SteelPost,
    /// Posts at both ends; like the others where none is given.
    pub end_post: Option<SteelPost>,
    /// Panels.
    pub panel: Panel,
    /// Room between a panel's end and the web, at each end.
    pub clearance: Length,
    /// Holes.
    pub hole: HoleSpec,
    /// How far the lowest panel goes below the ground in front, at least.
    pub bury: Length,
    /// From where the courses are counted.
    pub fit: CourseFit,
    /// Ground in front that is not counted on.
    pub neglect_top: Length,
    /// Zinc on the posts, µm.
    pub zinc_um: u32,
    /// What takes zinc and steel where the post is bent most.
    pub exposure: Exposure,
    /// Years for which the posts are judged.
    pub years: u32,
}

/// Mass of steel. EN 10025-1; the same everywhere.
const STEEL_KG_M3: f64 = 7850.0;

impl SteelPost {
    /// As it is written in a job: `UC 152x152x23 S275`.
    pub fn text(&self) -> String {
        format!("{} {}", self.profile.name, self.grade)
    }
    /// Key of the material: `steel post UC 152x152x23 S275`.
    pub fn material(&self) -> String {
        format!("steel post {}", self.text())
    }
    /// Thickness of the web.
    pub fn web(&self) -> Length {
        match self.profile.shape {
            Shape::I { web, .. } | Shape::Channel { web, .. } => web,
            Shape::Hollow { wall, .. } => wall,
        }
    }
    /// Thickness of a flange and radius of its root.
    pub fn flange(&self) -> (Length, Length) {
        match self.profile.shape {
            Shape::I { flange, root, .. } | Shape::Channel { flange, root, .. } => (flange, root),
            Shape::Hollow { wall, .. } => (wall, Length::ZERO),
        }
    }
    /// How far a flange reaches beside the web.
    pub fn outstand(&self) -> Length {
        let (wide, web) = (self.profile.shape.width(), self.web());
        if matches!(self.profile.shape, Shape::Channel { .. }) { wide - web } else { (wide - web) / 2.0 }
    }
    /// Cross-section.
    pub fn area(&self) -> Area {
        self.profile.shape.figures().map_or(Area::ZERO, |(f, _)| Area::mm2(f.area))
    }
    /// Mass of a length of it.
    pub fn mass(&self, length: Length) -> Mass {
        Mass::kg((self.area() * length).to_m3() * STEEL_KG_M3)
    }
}

impl Panel {
    /// Key of the material: `panel 200x50 UC4 C24`, `concrete panel 200x80`.
    pub fn material(&self) -> String {
        match &self.made {
            Made::Timber { .. } => format!("panel {}", self.text()),
            Made::Concrete { .. } => format!("concrete panel {}", timber_text::spelled(self.height, self.thickness)),
        }
    }
    /// As it is written in a job: `200x50 UC4 C24`, `concrete 200x80`.
    pub fn text(&self) -> String {
        let size = timber_text::spelled(self.height, self.thickness);
        match &self.made {
            Made::Timber { grade, treatment } => [size.as_str(), treatment, grade.name]
                .into_iter()
                .filter(|w| !w.is_empty())
                .collect::<Vec<_>>()
                .join(" "),
            Made::Concrete { .. } => format!("concrete {size}"),
        }
    }
    /// True where it is cast.
    pub fn is_concrete(&self) -> bool {
        matches!(self.made, Made::Concrete { .. })
    }
}

impl SteelPostSpec {
    /// The post at an end.
    pub fn at_end(&self) -> &SteelPost {
        self.end_post.as_ref().unwrap_or(&self.post)
    }
    /// The post of a number among so many.
    pub fn post_of(&self, post: &Post, posts: usize) -> &SteelPost {
        if post.number == 1 || post.number == posts { self.at_end() } else { &self.post }
    }
    /// From web to web where a whole panel stands between.
    pub fn pitch(&self) -> Length {
        self.panel.length + self.clearance * 2.0 + self.post.web()
    }
    /// How far a panel reaches over a flange.
    pub fn seat(&self, post: &SteelPost) -> Length {
        post.outstand() - self.clearance
    }
    /// As layout and ground see it.
    pub(crate) fn posted(&self) -> Posted {
        let (shape, end) = (&self.post.profile.shape, self.at_end());
        let (wide, web) = (end.profile.shape.width(), end.web());
        let channel = matches!(end.profile.shape, Shape::Channel { .. });
        Posted {
            breadth: shape.width(),
            depth: shape.depth(),
            // The wall line is the inner side of the open flange, on which the panels press.
            out: self.post.flange().0 / shape.depth() - 0.5,
            end_breadth: wide,
            end_joint: if channel { web / 2.0 } else { wide / 2.0 },
            bay: self.pitch(),
            fits: super::panels::AS_SOLD,
            hole: self.hole,
            height: self.panel.height,
            gap: Length::ZERO,
            bury: self.bury,
            fit: self.fit,
            neglect_top: self.neglect_top,
            lean: Slope::LEVEL,
        }
    }
}
