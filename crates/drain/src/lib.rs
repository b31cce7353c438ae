//! drain
