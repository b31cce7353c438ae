//! hold
