//! dig
