//! How fast is it? The yardstick before and after, each figure as the median of many runs, and the ratio to the yardstick.

use crate::run::{Outcome, cargo, step};

/// Builds and runs the bench in release.
pub fn chore(_: &[String]) -> Outcome {
    step("bench", &mut cargo(&["run", "--quiet", "--release", "-p", "groundhold-cli", "--example", "bench"]))
}
