//! What is kept of a job in the page: its texts, the changes made to them, and the journal of those changes.

mod change;
mod demo;
mod edits;
mod files;
mod fresh;
mod journal;
mod pack;

pub use change::{Change, Misfit, Splice};
pub use demo::demo;
pub use edits::{
    EditError, add_element, append, clear_field, field_text, level_text, metres, remove_element, set_field, set_point,
    set_points,
};
pub use files::{Files, JOB};
pub use fresh::{Slope, fresh, fresh_from};
pub use journal::{Deed, Entry, History, Version};
pub use pack::{NotAPack, pack, unpack};
