//! What CI runs, in the order in which a mistake shows soonest.

use crate::run::{Outcome, cargo, have, quietly, root, step};
use crate::{crosscheck, tidy, wasm};

/// Format, tidy, lints, tests.
pub fn quick(_: &[String]) -> Outcome {
    step("format", &mut cargo(&["fmt", "--all", "--check"]))?;
    tidy::chore(&[])?;
    step("lints", &mut cargo(&["clippy", "--workspace", "--all-targets", "--quiet", "--", "-D", "warnings"]))?;
    let mut tests = cargo(&["test", "--workspace", "--quiet", "--no-fail-fast"]);
    // The same cases of every property each time, so that a run says something about the change and not about chance; a
    // `cargo test` of one's own looks at others.
    if std::env::var_os("PROPTEST_RNG_SEED").is_none() {
        tests.env("PROPTEST_RNG_SEED", "20261125");
    }
    step("tests", &mut tests)
}

/// Everything.
pub fn all(args: &[String]) -> Outcome {
    quick(args)?;
    verify(&[])?;
    licences()?;
    wasm::chore(&[])?;
    crosscheck::chore(&[])?;
    println!("\nall passed");
    Ok(())
}

/// The published cases, with the pass rate per topic.
pub fn verify(_: &[String]) -> Outcome {
    step("reference cases", &mut cargo(&["run", "--quiet", "-p", "groundhold-cli", "--", "verify", "reference"]))
}

/// The demo job.
pub fn demo(args: &[String]) -> Outcome {
    let mut all = vec!["run", "--quiet", "--release", "-p", "groundhold-cli", "--", "demo"];
    all.extend(args.iter().map(String::as_str));
    step("demo", &mut cargo(&all))
}

/// Licences, sources and duplicates; known vulnerabilities too where their list can be fetched.
fn licences() -> Outcome {
    let tools = root().join("target/tools");
    let deny = tools.join("bin/cargo-deny").to_string_lossy().into_owned();
    let program = if have("cargo-deny", "--version") { "cargo-deny".to_string() } else { deny };
    if !have(&program, "--version") {
        println!("   cargo-deny is missing; building it once (some minutes)");
        let to = tools.to_string_lossy().into_owned();
        step("get cargo-deny", &mut cargo(&["install", "cargo-deny", "--locked", "--quiet", "--root", &to]))?;
    }
    let run = |checks: &[&str]| {
        let mut c = crate::run::command(&program, &["check"]);
        c.args(checks);
        c
    };
    step("licences, sources, duplicates", &mut run(&["licenses", "sources", "bans"]))?;
    let mut fetch = crate::run::command(&program, &["fetch", "db"]);
    if quietly(&mut fetch) {
        step("known vulnerabilities", &mut run(&["advisories"]))
    } else {
        println!("   known vulnerabilities: skipped, their list cannot be fetched from here");
        Ok(())
    }
}
