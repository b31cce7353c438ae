//! Where is the ground, and what lies between two surfaces? Triangulated ground, planar facets, and exact volumes.
//!
//! Existing ground is a [`Tin`]: triangles between measured points that keep to the break lines. Finished ground is a
//! list of [`Facet`]s: convex pieces of plane. Between the two, [`cut_and_fill`] gives the exact volume of the prisms,
//! with no grid and no sampling: over each overlap of a facet and a triangle the difference of two planes is linear.
//!
//! Everything is in metres in the job's own grid. Two points nearer than a micrometre in plan are one place.
//! The crate knows no files, no formats and nothing of walls.

mod clip;
mod contour;
mod facet;
mod grid;
mod places;
mod plane;
mod polygon;
mod ring;
mod tin;
mod volume;

pub use clip::{clip_convex, clip_half, subtract_convex};
pub use contour::{Contour, contours_of_facets};
pub use facet::{Facet, pieces_above, pieces_below};
pub use plane::Plane;
pub use polygon::{Polygon, PolygonError};
pub use tin::{GroundPoint, SectionPoint, SurfaceError, Tin};
pub use volume::{CutFill, between, cut_and_fill, cut_and_fill_each, volume_above};

/// Two points nearer than this in plan are one place, metres (our choice: far below any tape, far above rounding).
pub(crate) const SAME_PLACE: f64 = 1e-6;
/// Two levels nearer than this meet, metres (our choice).
pub(crate) const MEETS: f64 = 1e-9;
