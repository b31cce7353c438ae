//! What the browser is asked for: its elements, its clock, its storage, its other tabs, its sensors.

mod clock;
mod database;
mod elements;
mod sensors;
mod small_store;
mod tabs;

pub use clock::now;
pub use database::{BASES, Database, JOBS, JOURNAL, open};
pub use elements::{attribute_up, document, light, number_of, rect_of, window};
pub use sensors::{ask_to_keep, let_sleep, listen_to_tilt, stay_awake};
pub use small_store::{keep, kept};
pub use tabs::{Held, Word, lock};
