//! In what order is it built, what must be watched on the way, and what must be asked of whom before?
//!
//! [`plan_works`] turns the plain facts of a job ([`Works`]) into tasks with person-hours, precedence, working days, hold
//! points and cautions. [`check_region`] holds the facts of a job against the triggers of a region pack ([`REGIONS`]):
//! what is not known is said. Absent here: geometry, prices, clocks; nothing is decided for an authority or an engineer.

mod caution;
mod check;
mod facts;
pub mod findings;
mod flow;
mod locality;
mod network;
mod programme;
mod rates;
mod region;
mod region_rows;
pub mod regions;
mod sequence;
mod three_point;
mod tiers;
mod works;

pub use caution::{CAUTIONS, Caution, Cautioned};
pub use check::check_region;
pub use facts::{
    EdgeFacts, Enquiry, ExcavationFacts, Facts, FlightFacts, GroundFind, GroundFound, Near, PadFacts, RampFacts,
    TimberFacts, TimberPart, WallBeside, WallFacts,
};
pub use findings::FINDINGS;
pub use flow::{Levelled, level_people};
pub use locality::{FrostRule, LookUp, RainRule, TimberRule};
pub use network::{Activity, Arc, CRITICAL_PATH, Network, NotAPlan, Times};
pub use programme::{HoldPoint, Need, PersonHours, Programme, Task, plan_works};
pub use rates::{DURATION, RATES, Rate, TASK_HOURS};
pub use region::{
    Condition, Consequence, ExcavationRule, GuardTrigger, HandrailRule, Measured, RampLimits, RampRow, Region, Status,
    StepLimits, Trigger, Words,
};
pub use region_rows::{QUESTIONS, Row, rows};
pub use regions::{REGIONS, region};
pub use three_point::THREE_POINT;
pub use tiers::TIER_SPACING;
pub use works::{
    Access, Crew, DigBy, Drainage, FlightWorks, GroundClass, Laid, LaidStep, PadWorks, RampWorks, Stripped, TreeNear,
    WallWorks, Works,
};

/// All workings of this crate.
pub static WORKINGS: &[&groundhold_working::Working] =
    &[&TASK_HOURS, &DURATION, &CRITICAL_PATH, &THREE_POINT, &TIER_SPACING];
