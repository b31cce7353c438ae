//! The page: one live drawing of the ground, with the engine in it.
//!
//! What does not need a browser is pure and tested natively: `job` (texts, changes, journal), `live` (the drawing before it
//! is on a screen), `shown` (the plan and its figures), `entry` (what is typed), `site` (one thing at a time).

pub mod entry;
pub mod job;
pub mod live;
pub mod shown;
pub mod site;

#[cfg(target_arch = "wasm32")]
mod browser;
#[cfg(target_arch = "wasm32")]
mod page;
