//! earth
