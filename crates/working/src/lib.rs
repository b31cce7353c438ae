//! How was this figure worked out? Formulas that are written once, run fast, and can show themselves line by line.
//!
//! A formula is a function generic over [`Number`]. With `f64` it is plain arithmetic. With [`Shown`] it gives the
//! same bits and notes the lines a person would write by hand. A [`Working`] names such a formula, its inputs with
//! units and limits, its outputs and its published source. A [`Trace`] is a working together with the numbers that
//! were put in: what a plan keeps beside a figure, so that the sheet can be made again when somebody asks.
//!
//! ```
//! use groundhold_working::{Number, Sheet, Unit};
//!
//! fn active<N: Number>(phi: N) -> N {
//!     (N::degrees(45.0) - phi / 2.0).tan().squared().named("K_a", Unit::NONE)
//! }
//! let sheet = Sheet::new();
//! let shown = active(sheet.put("φ", 36.0, Unit::DEG));
//! assert_eq!(sheet.lines()[0].to_string(), "K_a = tan(45° − φ/2)² = tan(45° − 36°/2)² = 0.2596");
//! assert_eq!(shown.value().to_bits(), active(36f64.to_radians()).to_bits());
//! ```

mod number;
mod registry;
mod sheet;

pub use number::{Number, Unit};
pub use registry::{
    Found, Given, Input, Limits, Output, Refused, Result, Source, Trace, Value, Whose, Worked, Working, check_range,
};
pub use sheet::{Line, Sheet, Shown};
