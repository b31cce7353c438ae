//! How deep must a post stand in the ground under a horizontal push?
//!
//! Accepted methods disagree by a factor of two, so each stands in its own file and [`depths_by_method`] sets them side
//! by side. A depth is always measured from the ground in front down to the underside of the post.
//!
//! ```
//! use groundhold_member::embed::{Case, Ground, Method, depths_by_method, presumptive};
//! use groundhold_quantity::{Angle, Force, Length, Slope, UnitWeight};
//!
//! let case = Case {
//!     force: Force::kn(2.304), // 0.8 m retained, posts 1.2 m apart
//!     arm: Length::m(0.8 / 3.0),
//!     width: Length::mm(300.0), // concreted in a 300 mm hole
//!     ground: Ground::Sand { phi: Angle::deg(30.0), unit_weight: UnitWeight::kn_per_m3(18.0) },
//!     presumptive: presumptive("sand").map(|p| p.lateral),
//!     may_move: true,
//!     held_at_ground: false,
//!     neglected: Length::ZERO,
//!     front_fall: Slope::LEVEL,
//!     spacing: None,
//!     retained: Some(Length::mm(800.0)),
//!     factor: 1.5,
//! };
//! let rows = depths_by_method(&case, Some(Length::mm(800.0)));
//! let depths: Vec<_> = rows.iter().filter_map(|r| r.depth.map(|d| format!("{:.2} m", d.to_m()))).collect();
//! assert_eq!(depths, ["0.80 m", "1.19 m", "0.76 m", "1.00 m"]);
//! let broms = rows.iter().find(|r| r.method == Method::BromsSand).and_then(|r| r.at.as_ref());
//! assert_eq!(broms.map(|a| format!("{:.2}", a.factor)).as_deref(), Some("1.69"));
//! ```

mod beam_on_soil;
mod brinch_hansen;
mod broms_clay;
mod broms_sand;
mod case;
mod compare;
mod deflection;
mod elastic_post;
mod front;
mod hansen_pressure;
mod ibc;
mod judge;
mod left_out;
mod limits;
mod presumptive;
mod rock_dowels;
mod rock_socket;
mod rock_table;
mod rule_of_thumb;
mod short_or_long;
mod stopped;
mod subgrade;
mod wall_in_ground;

pub use brinch_hansen::{
    HANSEN_DEPTH, HANSEN_LOAD, HANSEN_MOMENT, HANSEN_YIELD, HansenPost, HansenPush, HansenUltimate, HansenYield,
    hansen_depth, hansen_moment, hansen_ultimate, hansen_yield,
};
pub use broms_clay::{
    BROMS_CLAY_DEPTH, BROMS_CLAY_LOAD, BROMS_CLAY_MOMENT, BROMS_CLAY_YIELD, ClayMoment, ClayPost, ClayPush,
    ClayUltimate, ClayYield, clay_depth, clay_moment, clay_ultimate, clay_yield,
};
pub use broms_sand::{
    BROMS_SAND_DEPTH, BROMS_SAND_LOAD, BROMS_SAND_MOMENT, BROMS_SAND_YIELD, SandMoment, SandPost, SandPush,
    SandUltimate, SandYield, sand_depth, sand_moment, sand_ultimate, sand_yield,
};
pub use case::{
    AtDepth, Case, Ground, Kind, Method, MethodDepth, Movement, PostMoment, Reduction, Required, Resistance, Subgrade,
    YieldLoad,
};
pub use compare::{depths_by_method, factors_by_method, judged, methods_for};
pub use deflection::{DEFLECTION_CLAY, DEFLECTION_SAND, Moved, Rigid, clay_moved, sand_moved};
pub use elastic_post::{
    BeamMoved, Collar, ELASTIC_POST, Elastic, ElasticMoved, PostBeam, beam_deflection, elastic_post,
};
pub use front::{CLAY_FRONT, ClayFront, FrontLeft, ROW, Row, SAND_FRONT, SandFront, clay_front, row, sand_front};
pub use hansen_pressure::{HANSEN_PRESSURE, HansenFactors, HansenSoil, hansen_pressure};
pub use ibc::{
    IBC_FREE_DEPTH, IBC_FREE_LOAD, IBC_FREE_TRIAL, IBC_HELD_DEPTH, IBC_HELD_LOAD, IbcAllowed, IbcPost, IbcPush,
    IbcStep, ibc_free, ibc_free_depth, ibc_held, ibc_held_depth, ibc_step,
};
pub use judge::{deflection, post_moment, post_yields, push_taken, reduction, required_depth, resistance};
pub use left_out::{LEFT_OUT_POST, LeftOut, LeftOutDemand, left_out};
pub use presumptive::{PRESUMPTIVE, PRESUMPTIVE_SOURCE, Presumptive, presumptive};
pub use rock_dowels::{DowelDemand, Dowels, ROCK_DOWELS, dowels};
pub use rock_socket::{
    ROCK_SOCKET, ROCK_SOCKET_LENGTH, RockPush, RockSocket, SocketUltimate, rock_share, rock_socket, rock_socket_length,
};
pub use rock_table::{ROCK, ROCK_BOND_SOURCE, ROCK_SOURCE, Rock, rock};
pub use rule_of_thumb::{RULE_OF_THUMB, Retained, as_deep_as_high};
pub use short_or_long::{GivesWay, GroundFactors, PostCapacity, short_or_long};
pub use stopped::{
    InRock, Neighbour, OnRock, OnRockDemand, SocketAnswer, neighbour_of_left_out, on_rock, socket_needed,
    socket_resistance,
};
pub use subgrade::{SAND_STIFFNESS, SAND_STIFFNESS_SOURCE, SandStiffness, clay_stiffness};
pub use wall_in_ground::{
    FIXED_EARTH, FixedEarth, FixedEarthDepth, SHEET_WALL, SheetFigures, SheetWall, fixed_earth, sheet_wall,
};
