//! The targets, one file each.

mod demo;
mod edit;
mod job_file;
mod plan;
mod prices;
mod quantity;
mod record_file;
mod reference;
mod surface;
mod tables;

/// Name and function of each.
pub const TARGETS: &[(&str, fn(&[u8]))] = &[
    ("job_file", job_file::run),
    ("tables", tables::run),
    ("prices", prices::run),
    ("record_file", record_file::run),
    ("quantity", quantity::run),
    ("reference", reference::run),
    ("edit", edit::run),
    ("surface", surface::run),
    ("plan", plan::run),
];
