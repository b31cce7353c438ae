//! The workbook: order, quote, cutting list, posts, set-out, earthworks and findings.

use groundhold_plan::Plan;

/// A workbook that cannot be written.
#[derive(Debug, thiserror::Error)]
#[error("the spreadsheet cannot be written: {0}")]
pub struct NoSpreadsheet(#[from] rust_xlsxwriter::XlsxError);

/// The workbook as bytes.
///
/// # Errors
/// [`NoSpreadsheet`].
pub fn spreadsheet(_plan: &Plan, _date: &str) -> Result<Vec<u8>, NoSpreadsheet> {
    Ok(vec![])
}
