//! Fuzzing with coverage as a guide, on the stable compiler: `cargo xtask fuzz NAME MINUTES`.
//!
//! The compiler's own coverage pass and the fuzzer's library are all it takes: no sanitizer, no other toolchain. What is
//! found is kept under `target/fuzz`, which is not part of the tree; a crash becomes a numbered test.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::run::{Outcome, cargo, root, step};

/// Target, what it does, and the files it begins from.
const TARGETS: &[(&str, &str, &[&str])] = &[
    ("job_file", "any text as a job file", &["demo/job.toml"]),
    ("tables", "any text as a level book, positions and spots", &["demo/levels.csv", "demo/positions.csv"]),
    ("prices", "any text as a price list", &["demo/prices.csv"]),
    ("record_file", "any text as the diary", &["fuzz/seeds/diary.toml"]),
    (
        "quantity",
        "any text as every quantity",
        &["fuzz/seeds/length.txt", "fuzz/seeds/slope.txt", "fuzz/seeds/level.txt"],
    ),
    (
        "reference",
        "any text as check cases, run",
        &["reference/levelling.toml", "reference/posts.toml", "reference/order.toml"],
    ),
    ("edit", "any field of any element set to any value", &["fuzz/seeds/spacing.txt", "fuzz/seeds/moved.txt"]),
    ("surface", "any points, break lines and boundary as ground", &[]),
    ("plan", "the demo with any of its numbers changed, planned", &[]),
];

/// What makes the compiler count which branches are taken, and tell the fuzzer what was compared.
const FLAGS: &str = "--cfg fuzzing -Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 \
                     -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table \
                     -Cllvm-args=-sanitizer-coverage-trace-compares";

/// An input that takes longer is reported, seconds.
const SLOW: u32 = 20;

/// Builds the targets and runs one of them.
pub fn chore(args: &[String]) -> Outcome {
    let named = args.first().and_then(|name| TARGETS.iter().find(|t| t.0 == name));
    let minutes = args.get(1).and_then(|m| m.parse::<f64>().ok()).filter(|m| *m > 0.0);
    let (Some((name, _, seeds)), Some(minutes)) = (named, minutes) else {
        let list: Vec<String> = TARGETS.iter().map(|(n, what, _)| format!("  {n:<12} {what}")).collect();
        return Err(format!(
            "expected a target and minutes, such as `cargo xtask fuzz job_file 5`:\n{}",
            list.join("\n")
        ));
    };
    let program = built()?;
    let kept = root().join("target/fuzz");
    let (corpus, crashes) = (kept.join("corpus").join(name), kept.join("crashes").join(name));
    for dir in [&corpus, &crashes] {
        fs::create_dir_all(dir).map_err(|e| format!("{}: {e}", dir.display()))?;
    }
    for seed in *seeds {
        let to = corpus.join(Path::new(seed).file_name().unwrap_or_default());
        fs::copy(root().join(seed), to).map_err(|e| format!("{seed}: {e}"))?;
    }
    let mut run = Command::new(program);
    run.env("GROUNDHOLD_FUZZ", name).arg(&corpus);
    run.arg(format!("-artifact_prefix={}/", crashes.display()));
    run.args([format!("-max_total_time={}", (minutes * 60.0).ceil()), format!("-timeout={SLOW}")]);
    run.args(["-detect_leaks=0", "-print_final_stats=1", "-rss_limit_mb=3000", "-verbosity=1"]);
    match *name {
        // A plan takes its time: small inputs of any length from the start, each four bytes one change.
        "plan" => run.args(["-max_len=48", "-len_control=0"]),
        _ => run.arg("-max_len=20000"),
    };
    step(&format!("fuzz {name} for {minutes} minutes"), &mut run)
        .map_err(|e| format!("{e}; what did it lies in {}", crashes.display()))
}

/// Builds the program of all targets with coverage, and gives its path.
fn built() -> Result<PathBuf, String> {
    let host = host()?;
    let dir = root().join("target/fuzz/build");
    let manifest = root().join("fuzz/Cargo.toml");
    let mut build = cargo(&["build", "--release", "--target", &host]);
    build.arg("--manifest-path").arg(manifest).arg("--target-dir").arg(&dir).env("RUSTFLAGS", FLAGS);
    step("build of the fuzz targets, with coverage", &mut build)?;
    Ok(dir.join(&host).join("release/groundhold-fuzz"))
}

/// The machine's own target: named, so that build scripts and macros are built without coverage.
fn host() -> Result<String, String> {
    let said = Command::new("rustc").arg("-vV").output().map_err(|e| format!("rustc cannot be started: {e}"))?;
    let text = String::from_utf8_lossy(&said.stdout);
    let host = text.lines().find_map(|l| l.strip_prefix("host: "));
    host.map(str::to_string).ok_or_else(|| "rustc does not say on which machine it runs".into())
}
