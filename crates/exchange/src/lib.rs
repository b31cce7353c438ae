//! Job files in and out, tables, views and spreadsheets: text and bytes on one side, jobs and plans on the other.
//!
//! Nothing is opened here: whoever calls gives the text of a file and takes the text to write.

pub mod fields;

mod bought_file;
mod edit;
mod grid;
mod grids;
mod ground_water;
mod job_file;
mod job_text;
mod line_text;
mod page;
mod price_table;
mod problem;
mod record_file;
mod schema;
mod situations;
mod spelled;
#[cfg(feature = "spreadsheet")]
mod spreadsheet;
mod standing_file;
mod tables;
mod tables_out;
mod tables_text;
mod view;
mod wall_spec;

pub use edit::{append_entry, apply_adjust};
pub use job_file::{Read, read_job};
pub use job_text::{job_tables, job_text};
pub use problem::Problem;
pub use schema::schema_json;
#[cfg(feature = "spreadsheet")]
pub use spreadsheet::{NoSpreadsheet, spreadsheet};
pub use standing_file::put_in_place;
pub use tables_out::tables_out;
pub use view::{difference_json, plan_json, verify_json, worked_json};
