//! Does a layer of geogrid in the fill hold: its strength for good, its length behind the slip, its grip on the blocks?
//!
//! [`check_layer`] judges one layer of a wall of dry-stacked blocks; the formulas are those of FHWA-NHI-10-024 and the form
//! of BS 8006-1.

mod layer;
mod strength;

pub use layer::{
    GRID_CONNECTION, GRID_LAYER, GRID_PULLOUT, Grid, GridConnection, GridConnectionFigures, GridDemand, GridLayer,
    GridPullout, GridPulloutFigures, Layer, LayerCheck, check_layer, grid_connection, grid_layer, grid_pullout,
};
pub use strength::{
    GRID_STRENGTH_BS, GRID_STRENGTH_FHWA, GridLasting, GridLastingBs, GridReduced, GridReducedBs, grid_strength_bs,
    grid_strength_fhwa,
};
