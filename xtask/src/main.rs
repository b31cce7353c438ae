//! The chores. `cargo xtask` alone lists them all; everything is Rust, no shell.

mod bench;
mod browser;
mod crosscheck;
mod fuzz;
mod run;
mod tests;
mod tidy;
mod wasm;
mod web;
mod web_files;

use std::process::ExitCode;

use run::Outcome;

/// A chore: its name, what it does, and the function.
type Chore = (&'static str, &'static str, fn(&[String]) -> Outcome);

const CHORES: &[Chore] = &[
    (
        "test",
        "what CI runs: format, tidy, lints, tests, reference cases, licences, wasm, outside cross-checks",
        tests::all,
    ),
    ("quick", "format, tidy, lints and tests only", tests::quick),
    ("tidy", "the habits of this house that a machine can check", tidy::chore),
    ("demo", "plan the demo job and write everything into out/demo", tests::demo),
    ("verify", "run the published reference cases and print the pass rate per topic", tests::verify),
    ("wasm", "check that everything from `plan` down compiles for wasm32", wasm::chore),
    ("web", "make the page in target/web/dist (`--quick`: in target/web/trial, as the tests take it)", web::chore),
    (
        "browser",
        "make the page and test it in Chromium (`--made`: as it was made; `--shipped`: the one people get)",
        browser::chore,
    ),
    (
        "crosscheck",
        "compare with independent libraries from PyPI (triangulation, volumes, least squares, cutting)",
        crosscheck::chore,
    ),
    ("fuzz", "NAME MINUTES: a parser, the mesh or the plan against anything at all, guided by coverage", fuzz::chore),
    ("bench", "speeds, with a yardstick in the same run; `bench web`: of the page in Chromium", bench::chore),
];

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let Some(name) = args.first() else {
        println!("cargo xtask CHORE\n");
        CHORES.iter().for_each(|(name, about, _)| println!("  {name:<11} {about}"));
        return ExitCode::SUCCESS;
    };
    let Some((_, _, chore)) = CHORES.iter().find(|(n, _, _)| n == name) else {
        eprintln!("there is no chore `{name}`; `cargo xtask` alone lists them");
        return ExitCode::from(2);
    };
    match chore(&args[1..]) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("\nxtask {name}: {why}");
            ExitCode::FAILURE
        }
    }
}
