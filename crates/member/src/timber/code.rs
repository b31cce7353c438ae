//! Under which rules is the timber judged, how wet does it stand, and how long does the load last?

use groundhold_quantity::{Force, Moment};
use groundhold_working::Trace;

use super::{Family, Grade};

/// How long a load lasts in total over the life of the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duration {
    /// Soil, self weight: for good.
    Permanent,
    /// Stored goods: up to ten years.
    Long,
    /// People, a parked car: up to some months.
    Medium,
    /// Snow, a filled drain: up to a week.
    Short,
    /// Wind, a blow: seconds to minutes.
    Instant,
}

impl Duration {
    /// Its place in the rows of duration factors, from long to short.
    pub(crate) const fn place(self) -> usize {
        self as usize
    }
}

/// Factors on loads; all 1 for allowable stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadFactors {
    /// On permanent load where it acts alone.
    pub permanent_alone: f64,
    /// On permanent load together with variable load.
    pub permanent: f64,
    /// On variable load.
    pub variable: f64,
}

impl LoadFactors {
    /// Loads as they are.
    pub const NONE: LoadFactors = LoadFactors { permanent_alone: 1.0, permanent: 1.0, variable: 1.0 };
    /// EN 1990:2002 Table A1.2(B), expression 6.10: 1.35 G + 1.5 Q.
    pub const EN_1990: LoadFactors = LoadFactors { permanent_alone: 1.35, permanent: 1.35, variable: 1.5 };
    /// AS/NZS 1170.0:2002 clause 4.2.2: 1.35 G, and 1.2 G + 1.5 Q (from memory).
    pub const AS_1170: LoadFactors = LoadFactors { permanent_alone: 1.35, permanent: 1.2, variable: 1.5 };
}

/// The rules for timber, with what they need to know of the place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Code {
    /// EN 1995-1-1, partial factors.
    En1995 {
        /// 1 heated, 2 under a roof, 3 out of doors or in the ground.
        service_class: u8,
        /// On loads.
        loads: LoadFactors,
    },
    /// National Design Specification for Wood Construction, allowable stress.
    Nds {
        /// Moisture above 19 % for long.
        wet: bool,
        /// On loads; [`LoadFactors::NONE`] for allowable stress design.
        loads: LoadFactors,
    },
    /// AS 1720.1, limit states.
    As1720 {
        /// Stands wet for long.
        wet: bool,
        /// Capacity factor φ of AS 1720.1 Table 2.1.
        capacity: f64,
        /// On loads.
        loads: LoadFactors,
    },
}

impl Code {
    /// The rules a grade belongs to, for timber in or against the ground: service class 3, wet.
    pub fn in_the_ground(grade: &Grade) -> Code {
        match grade.family {
            Family::En338 => Code::En1995 { service_class: 3, loads: LoadFactors::EN_1990 },
            Family::NdsDimension | Family::NdsSouthernPine | Family::NdsTimbers => {
                Code::Nds { wet: true, loads: LoadFactors::NONE }
            }
            // φ 0.90: category 1, grades up to F14 (AS 1720.1-2010 Table 2.1, from memory).
            Family::As1720 => Code::As1720 { wet: true, capacity: 0.9, loads: LoadFactors::AS_1170 },
        }
    }
    /// The same with other factors on loads, where they are already factored or another set is asked for.
    pub fn with_loads(self, loads: LoadFactors) -> Code {
        match self {
            Code::En1995 { service_class, .. } => Code::En1995 { service_class, loads },
            Code::Nds { wet, .. } => Code::Nds { wet, loads },
            Code::As1720 { wet, capacity, .. } => Code::As1720 { wet, capacity, loads },
        }
    }
    /// Its factors on loads.
    pub fn loads(&self) -> LoadFactors {
        match *self {
            Code::En1995 { loads, .. } | Code::Nds { loads, .. } | Code::As1720 { loads, .. } => loads,
        }
    }
    /// Its name on paper.
    pub fn words(&self) -> &'static str {
        match self {
            Code::En1995 { .. } => "EN 1995-1-1",
            Code::Nds { .. } => "NDS allowable stress",
            Code::As1720 { .. } => "AS 1720.1",
        }
    }
}

/// What acts on a section, before any factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Effects {
    /// Bending moment from permanent load.
    pub permanent_moment: Moment,
    /// Shear from permanent load.
    pub permanent_shear: Force,
    /// Bending moment from variable load.
    pub variable_moment: Moment,
    /// Shear from variable load.
    pub variable_shear: Force,
    /// How long the variable load lasts.
    pub variable: Duration,
}

impl Effects {
    /// Permanent load only.
    pub fn permanent(moment: Moment, shear: Force) -> Effects {
        Effects {
            permanent_moment: moment,
            permanent_shear: shear,
            variable_moment: Moment::ZERO,
            variable_shear: Force::ZERO,
            variable: Duration::Permanent,
        }
    }
    /// With a variable part.
    pub fn with_variable(mut self, moment: Moment, shear: Force, lasting: Duration) -> Effects {
        (self.variable_moment, self.variable_shear, self.variable) = (moment, shear, lasting);
        self
    }
}

/// Demand against capacity, in the worse of the two combinations.
#[derive(Debug, Clone, PartialEq)]
pub struct Use<Q> {
    /// What acts, factored as the rules say.
    pub demand: Q,
    /// What the section carries under these rules.
    pub capacity: Q,
    /// Demand over capacity; above 1 is too much.
    pub utilisation: f64,
    /// True where permanent and variable load together govern, false where permanent load alone does.
    pub with_variable: bool,
    /// Its working.
    pub trace: Trace,
}

/// A member judged in bending and shear.
#[derive(Debug, Clone, PartialEq)]
pub struct MemberCheck {
    /// Bending.
    pub bending: Use<Moment>,
    /// Shear.
    pub shear: Use<Force>,
}

impl MemberCheck {
    /// The worse of the two.
    pub fn utilisation(&self) -> f64 {
        self.bending.utilisation.max(self.shear.utilisation)
    }
}
