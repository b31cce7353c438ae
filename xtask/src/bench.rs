//! How fast is it? The yardstick before and after, each figure as the median of many runs, and the ratio to the yardstick.

use crate::browser;
use crate::run::{Outcome, cargo, step};

/// Builds and runs the bench in release; with `web`, that of the page.
pub fn chore(args: &[String]) -> Outcome {
    if args.first().is_some_and(|a| a == "web") {
        return browser::bench(&args[1..]);
    }
    for example in ["bench", "walls"] {
        let run = ["run", "--quiet", "--release", "-p", "groundhold-cli", "--example", example];
        step(example, &mut cargo(&run))?;
    }
    Ok(())
}
