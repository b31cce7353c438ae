//! What is typed, before it is understood: fields with their units, the level book, points.

mod book;
mod field;
mod points;
mod rows;

pub use book::{Book, Kind, Reckoned};
pub use field::{FormField, fields_of, kind_of, tried};
pub use points::{PointEntry, next_name};
pub use rows::Rows;
