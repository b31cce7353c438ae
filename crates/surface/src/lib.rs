//! surface
