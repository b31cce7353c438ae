//! The paper: a drawing set to scale with schedules, order, set-out, order of work, findings and calculation sheets, as
//! PDF or as sheets for other formats.
//!
//! Pages are laid out here, without a browser or a typesetting program: see `docs/decisions/0002-pdf-writer.md`. Nothing
//! asks for a clock: the date comes in as text, and the same plan with the same date gives the same bytes.

mod as_found_sheets;
mod calculation;
mod calculation_sheets;
mod caution_sheets;
mod cover;
mod drain_schedule;
mod drawings;
mod earthwork_schedule;
mod finding_sheets;
mod flow;
mod leaf;
mod order_list;
mod paper_size;
mod pdf;
mod programme_sheets;
mod record_sheets;
mod set;
mod set_out_sheets;
mod sheet;
mod survey_sheets;
mod symbols;
mod table;
mod typeface;
mod wall_schedule;
mod wrap;

pub use groundhold_draw::{has_letter, text_width};
pub use paper_size::{Frame, Paper};
pub use pdf::{PaperError, pdf};
pub use set::{pdf_set, sheets};
pub use sheet::Sheet;

#[cfg(test)]
mod tests;
