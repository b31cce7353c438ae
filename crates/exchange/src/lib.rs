//! Job files in and out, tables, views and spreadsheets: text and bytes on one side, jobs and plans on the other.
//!
//! Nothing is opened here: whoever calls gives the text of a file and takes the text to write.

pub mod fields;

mod edit;
mod job_file;
mod page;
mod price_table;
mod problem;
mod record_file;
mod tables;
mod wall_spec;

pub use edit::{append_entry, apply_adjust};
pub use job_file::{Read, read_job};
pub use problem::Problem;
