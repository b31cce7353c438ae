//! draw
