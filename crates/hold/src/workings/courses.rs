//! How many whole courses reach a height, and which height can be had exactly?

use groundhold_working::{Found, Input, Limits, Number, Output, Source, Unit, Working};

/// Whole courses for a wanted exposed height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CourseCount<N> {
    /// The fewest courses that reach it.
    pub up: N,
    /// Exposed height with them, m.
    pub exposed_up: N,
    /// One course fewer (or as many, where they fit exactly).
    pub down: N,
    /// Exposed height with those, m.
    pub exposed_down: N,
    /// How deep the lowest course must be buried for the wanted height exactly, with the courses of `up`, m.
    pub bury_exact: N,
}

/// A board that misses a height by less than a thousandth of a course fits.
pub(crate) const FITS: f64 = 1e-3;

/// Courses of boards or blocks of one height for a wanted exposed height.
///
/// # Source
/// Arithmetic.
/// # Symbols
/// | H | wanted exposed height | m | z | depth the lowest course is buried | m | h | course height | m | g | gap between courses | m |
/// # Gives
/// The fewest courses that reach H, the exposed height they and one fewer give, and the burial that meets H exactly.
/// # Not for
/// Courses of different heights.
/// # Errors
/// None but the limits.
/// # By hand
/// 600 mm wanted, 200 mm boards half buried: (0.6 + 0.1)/0.2 = 3.5, so 4 courses give 700 mm and 3 give 500 mm;
/// 600 mm exactly asks for the lowest to be buried by 200 mm (case `T5`).
pub fn courses<N: Number>(wanted: N, bury: N, height: N, gap: N) -> CourseCount<N> {
    let pitch = (height + gap).named("h_c", Unit::M);
    let exact = ((wanted + bury + gap) / pitch).named("n_exact", Unit::NONE);
    let up = N::constant((exact.value() - FITS).ceil().max(0.0)).named("n_up", Unit::NONE);
    let down = N::constant((exact.value() + FITS).floor().max(0.0)).named("n_down", Unit::NONE);
    CourseCount {
        up,
        exposed_up: (up * pitch - gap - bury).named("H_up", Unit::M),
        down,
        exposed_down: (down * pitch - gap - bury).named("H_down", Unit::M),
        bury_exact: (up * pitch - gap - wanted).named("z_exact", Unit::M),
    }
}

/// See [`courses`].
pub static COURSES: Working = Working {
    name: "wall/courses",
    title: "How many whole courses reach a height, and which height can be had exactly?",
    source: Source { work: "arithmetic", place: "" },
    not_for: "courses of different heights",
    inputs: &[
        Input::new("wanted", "H", "wanted exposed height", Unit::M, Limits::ours(-50.0, 50.0)),
        Input::new("bury", "z", "depth the lowest course is buried", Unit::M, Limits::ours(-1.0, 5.0)).or(0.0),
        Input::new("height", "h", "course height", Unit::M, Limits::ours(0.01, 2.0)),
        Input::new("gap", "g", "gap between courses", Unit::M, Limits::ours(0.0, 0.2)).or(0.0),
    ],
    outputs: &[
        Output { key: "up", words: "fewest courses that reach it", unit: Unit::NONE },
        Output { key: "exposed_up", words: "exposed height with them", unit: Unit::M },
        Output { key: "down", words: "courses that stay below it", unit: Unit::NONE },
        Output { key: "exposed_down", words: "exposed height with those", unit: Unit::M },
        Output { key: "bury_exact", words: "burial that meets the wanted height", unit: Unit::M },
    ],
    run: |g| {
        let c = courses(g.one("wanted")?, g.one("bury")?, g.one("height")?, g.one("gap")?);
        Ok([c.up, c.exposed_up, c.down, c.exposed_down, c.bury_exact].into_iter().map(Found::One).collect())
    },
};
