//! Will a member carry it? Posts in the ground and in rock, timber, steel, concrete, masonry, grids, deadmen and fixings.
//!
//! One question each, with typed functions and the workings behind them:
//! - [`embed`]: how deep must a post stand under a horizontal push, by every accepted method, side by side; a hole stopped
//!   by rock; how far a post moves;
//! - [`timber`]: does a board or a post carry its bending moment and shear, how far does it bow, what is left in year 15;
//! - [`fix`]: what does a screw or bolt carry when it is pulled out or sheared;
//! - [`steel`], [`concrete`], [`masonry`], [`panel`]: does a post, a stem, a toe, a panel carry its moment and shear;
//! - [`grid`], [`anchor`]: does a layer of geogrid, a deadman, its rod hold;
//! - [`stone`]: how heavy is stone as it lies in a wall.
//!
//! Embedment is computed in kN, m and kPa, sections in N, mm and MPa (US rules for fixings in lb and in, as they are
//! published). This crate knows quantities and workings, and nothing of walls.

mod given;
mod root;
mod row;

pub mod anchor;
pub mod concrete;
pub mod embed;
pub mod fix;
pub mod grid;
pub mod masonry;
pub mod panel;
pub mod steel;
pub mod stone;
pub mod timber;

pub use row::Row;

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[
    &embed::RULE_OF_THUMB,
    &embed::IBC_FREE_LOAD,
    &embed::IBC_HELD_LOAD,
    &embed::IBC_FREE_DEPTH,
    &embed::IBC_FREE_TRIAL,
    &embed::IBC_HELD_DEPTH,
    &embed::BROMS_SAND_LOAD,
    &embed::BROMS_SAND_MOMENT,
    &embed::BROMS_SAND_DEPTH,
    &embed::BROMS_SAND_YIELD,
    &embed::BROMS_CLAY_LOAD,
    &embed::BROMS_CLAY_MOMENT,
    &embed::BROMS_CLAY_DEPTH,
    &embed::BROMS_CLAY_YIELD,
    &embed::HANSEN_PRESSURE,
    &embed::HANSEN_LOAD,
    &embed::HANSEN_DEPTH,
    &embed::HANSEN_MOMENT,
    &embed::HANSEN_YIELD,
    &embed::SAND_FRONT,
    &embed::CLAY_FRONT,
    &embed::ROW,
    &embed::DEFLECTION_SAND,
    &embed::DEFLECTION_CLAY,
    &embed::ELASTIC_POST,
    &embed::FIXED_EARTH,
    &embed::SHEET_WALL,
    &embed::ROCK_SOCKET,
    &embed::ROCK_SOCKET_LENGTH,
    &embed::ROCK_DOWELS,
    &embed::LEFT_OUT_POST,
    &timber::SECTION_RECTANGLE,
    &timber::SECTION_ROUND,
    &timber::SIZE,
    &timber::SPANS_EFFECTS,
    &timber::BOARD_BOW,
    &timber::POST_BEND,
    &timber::EN_BENDING,
    &timber::EN_SHEAR,
    &timber::NDS_BENDING,
    &timber::NDS_SHEAR,
    &timber::AS_STABILITY,
    &timber::AS_BENDING,
    &timber::AS_SHEAR,
    &timber::DECAY,
    &timber::ROT_IN_GROUND,
    &timber::EN_NOTCH,
    &timber::EN_BEARING,
    &timber::NDS_NOTCH,
    &timber::NDS_BEARING,
    &fix::EN_PULLED,
    &fix::EN_DECLARED,
    &fix::EN_HEAD,
    &fix::EN_SHEARED,
    &fix::NDS_WOOD_SCREW,
    &fix::NDS_LAG_SCREW,
    &fix::NDS_SHEARED,
    &fix::EN_DOUBLE,
    &fix::NDS_DOUBLE,
    &fix::BOLT_GROUP,
    &steel::SECTION_I,
    &steel::SECTION_CHANNEL,
    &steel::SECTION_HOLLOW,
    &steel::EN3_BENDING,
    &steel::EN3_SHEAR,
    &steel::AISC_BENDING,
    &steel::AISC_SHEAR,
    &steel::CORROSION,
    &concrete::EN2_BENDING,
    &concrete::EN2_SHEAR,
    &concrete::EN2_CRACKS,
    &concrete::EN2_LAP,
    &concrete::ACI_BENDING,
    &concrete::ACI_SHEAR,
    &concrete::ACI_LAP,
    &concrete::ACI_HOOK,
    &concrete::PLAIN_EN2,
    &concrete::PLAIN_ACI,
    &masonry::EN6_FLEXURE,
    &masonry::EN6_SHEAR,
    &masonry::EN6_REINFORCED,
    &masonry::TMS_PLAIN,
    &masonry::TMS_CRACKED,
    &masonry::TMS_SHEAR,
    &panel::PANEL_EFFECTS,
    &grid::GRID_STRENGTH_FHWA,
    &grid::GRID_STRENGTH_BS,
    &grid::GRID_LAYER,
    &grid::GRID_PULLOUT,
    &grid::GRID_CONNECTION,
    &anchor::BLOCK_SAND,
    &anchor::BLOCK_CLAY,
    &anchor::PLACE,
    &anchor::ROD,
    &stone::PACKED_STONE,
];
