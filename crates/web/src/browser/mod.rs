//! What the browser is asked for: its elements, its clock, its storage, its sensors.

mod clock;
mod elements;

pub use clock::now;
pub use elements::{attribute_up, document, light, number_of, rect_of, selector_text, window};
