//! What moves? Turf, topsoil and subsoil dug, put back, left over and brought in; loads, barrows, heaps and days; the
//! level at which nothing is left over; and the classic sums of earthwork (end areas, prismoids, sections, grids).
//!
//! Soil is counted in three states. *Bank* is the ground as it lies, *loose* is what lies in the barrow and on the
//! lorry, *compacted* is what has been put back in layers. [`dig`] takes what each element moves as numbers (the exact
//! volumes between two surfaces) and never looks at a surface itself.

mod balance;
mod by_hand;
mod carry;
mod case;
mod cheapest;
mod dug;
mod end_areas;
mod face;
mod findings;
mod formation;
mod grid;
mod handling;
mod haul;
mod heap;
mod ledger;
mod loads;
mod moisture;
mod remarks;
mod routes;
mod sections;
mod soil;
mod stockpile;
mod tiers;
mod transport;
mod turves;

pub use balance::{Balanced, NoBalance, balance};
pub use by_hand::{BARROW, BY_HAND, Ease, Task, carting_rate, person_days};
pub use carry::{Carried, Carry, Stock, carry};
pub use case::{
    BodyDug, DigCase, ElementKind, HeapSpace, Import, Moved, OpenCut, Trench, UnsupportedTrigger, Vehicle, WallDug,
};
pub use cheapest::cheapest;
pub use dug::{Bring, Dug, Earth, Keep, Row, Stream, dig, subsoil_over};
pub use end_areas::{END_AREAS, PRISMOID};
pub use face::{CUT_CLASSES, CutClass, Excavated, Face, Instead, OVER_DIG, STANDS, cut_class, excavate};
pub use findings::{FINDINGS, HEAP_HOMELESS, TRENCH_DEEP};
pub use formation::{FORMATION, OVER};
pub use grid::GRID;
pub use haul::{HAUL, in_states};
pub use heap::{HEAP, Heap, heap};
pub use loads::{LOADS, Loads, loads};
pub use moisture::{MOIST, at_moisture};
pub use routes::{Field, Way};
pub use sections::{LEVEL_SECTION, PRISMOIDAL_CORRECTION, THREE_LEVEL_SECTION, TWO_LEVEL_SECTION};
pub use soil::{FACTORS, Factors, STONE, TOPSOIL, TURF, factors};
pub use stockpile::{HeapSite, KeepOff, PlacedHeap, Stockpiled, stockpile};
pub use tiers::{FILL_TO_TOP, TIERS, Tiers, tiers};
pub use transport::{NoTransport, Transported, transport};
pub use turves::{TURF_PIECE, Turves, turves};

use groundhold_working::Working;

/// Every working of this crate.
pub static WORKINGS: &[&Working] = &[
    &BY_HAND,
    &END_AREAS,
    &FILL_TO_TOP,
    &FORMATION,
    &GRID,
    &HAUL,
    &HEAP,
    &LEVEL_SECTION,
    &LOADS,
    &MOIST,
    &OVER,
    &OVER_DIG,
    &PRISMOID,
    &PRISMOIDAL_CORRECTION,
    &THREE_LEVEL_SECTION,
    &TIERS,
    &TWO_LEVEL_SECTION,
];
