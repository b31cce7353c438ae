//! How hard do soil and water push, what margin is wanted, and does the bank slip? Soils, pressures, design bases, slips.
//!
//! # Signs
//!
//! ```text
//!             ↓ q                      depth z is measured down from the ground at the wall
//!   0 ┌──────────── ground, β rising   height is measured up from the base of the pressure
//!     │ ◄── σ(z)                       thrust is positive towards the open side
//!     │ ◄────                          θ: back face from vertical, positive when the soil rests on the wall
//!   H └ ◄──────                        δ: friction between soil and wall, thrust turned down on the wall
//! ```
//!
//! Formulas run in m, kN, kPa, kN/m³ and radians. Wall quantities are per metre run. Nothing here prints or stores, and
//! nothing here knows a wall system: posts stand in `member`, walls in `hold`.

pub mod basis;
pub mod bearing;
pub mod external;
pub mod footing;
pub mod influence;
pub mod pressure;
mod rows;
pub mod settlement;
pub mod situation;
pub mod sliding;
pub mod slip;
pub mod soil;
pub mod stress;
pub mod wind;

pub use basis::{Basis, Combination};
pub use pressure::{Active, Backfill, Method, Ordinate, Part, Strip, WaterLevel};
pub use soil::{Class, Soil};

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[
    &pressure::rankine::RANKINE,
    &pressure::rankine::CHU,
    &pressure::coulomb::COULOMB,
    &pressure::coulomb::COULOMB_PASSIVE,
    &pressure::annex_c::ANNEX_C_ACTIVE,
    &pressure::annex_c::ANNEX_C_PASSIVE,
    &pressure::cohesive::C_PHI,
    &pressure::cohesive::MAZINDRANI,
    &pressure::layered::RANKINE_LAYERED,
    &pressure::layered::AT_REST_LAYERED,
    &pressure::at_rest::AT_REST,
    &pressure::seismic::MONONOBE_OKABE,
    &pressure::compaction::COMPACTION,
    &pressure::at_rest::AT_REST_WALL,
    &pressure::caquot::CAQUOT,
    &pressure::log_spiral::LOG_SPIRAL,
    &pressure::passive::PASSIVE_FRONT,
    &pressure::strata::STRATA,
    &pressure::crack::CRACKED_WET,
    &pressure::seepage::SOAKED,
    &pressure::creep::LINE_OF_CREEP,
    &pressure::compaction::COMPACTED,
    &pressure::seismic::MONONOBE_OKABE_PASSIVE,
    &pressure::seismic::HARDEST_SHAKING,
    &pressure::surcharge::UNIFORM,
    &pressure::surcharge::STRIP,
    &pressure::surcharge::STRIP_YIELDING,
    &pressure::surcharge::LINE,
    &pressure::surcharge::POINT,
    &pressure::surcharge::BLOCKED_DRAIN,
    &pressure::patch::PATCH,
    &pressure::heap::HEAP,
    &pressure::wedge::TRIAL_WEDGE,
    &pressure::wet_wedge::WET_WEDGE,
    &pressure::THRUST_RANKINE,
    &pressure::THRUST_COULOMB,
    &basis::DESIGN_STRENGTH,
    &wind::WIND_ON_FENCE,
    &influence::LINE_45,
    &influence::WEDGE_REACH,
    &influence::TERRACE,
    &slip::BISHOP_SEARCH,
    &slip::BISHOP_CIRCLE,
    &slip::BISHOP_GIVEN_SLICES,
    &slip::FELLENIUS_GIVEN_SLICES,
    &slip::hand::INFINITE_SLOPE,
    &slip::hand::CULMANN,
    &slip::hand::TAYLOR_HEIGHT,
    &slip::hand::TOE_CIRCLE,
    &slip::hand::BISHOP_MORGENSTERN,
    &external::EXTERNAL,
    &bearing::FACTORS,
    &bearing::EN1997_D4,
    &bearing::VESIC_STRIP,
    &bearing::MEYERHOF,
    &bearing::TERZAGHI_SQUARE,
    &footing::EN1997_BASE,
    &footing::VESIC_BASE,
    &footing::HANSEN_BASE,
    &footing::MEYERHOF_BASE,
    &sliding::SLIDING,
    &stress::UNDER_RECTANGLE,
    &settlement::ELASTIC,
    &settlement::SCHMERTMANN,
    &settlement::CONSOLIDATION,
    &settlement::CONSOLIDATION_TIME,
    &settlement::TILT,
    &soil::hazards::FROST_DEPTH,
];
