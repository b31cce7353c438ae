//! build
