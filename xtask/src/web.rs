//! How is the page made? Compiled for wasm32, bound to script, shrunk where that can be had, packed with its assets.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Instant;

use crate::run::{Outcome, cargo, command, have, quietly, root, step};
use crate::wasm::{TARGET, Way, find_way};
use crate::web_files::{self, Part};

/// A crate that becomes a wasm module of the page.
struct Module {
    package: &'static str,
    part: Part,
}

const MODULES: &[Module] = &[
    Module { package: "groundhold-web", part: Part::First },
    Module { package: "groundhold-web-paper", part: Part::Later },
];
/// What a phone fetches before it can work, compressed: at most this.
const FIRST_LOAD: u64 = 1_000_000;
/// Proposals that today's browsers all have; with every proposal on, the result is refused at load.
const SHRINK: &[&str] = &[
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
    "-O3",
];
/// The shrinker's npm package, at the version that was tried.
const BINARYEN: &str = "binaryen@132";

/// For whom the page is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum For {
    /// People: small and fast, minutes to compile.
    People,
    /// Tests: as the other tests are compiled, with every check of a sum switched on.
    Tests,
}

impl For {
    /// Where the page's files lie when they are made.
    pub fn folder(self) -> PathBuf {
        root().join(match self {
            For::People => "target/web/dist",
            For::Tests => "target/web/trial",
        })
    }
}

/// Makes the page; `--quick` as the tests take it.
pub fn chore(args: &[String]) -> Outcome {
    make(if args.iter().any(|a| a == "--quick") { For::Tests } else { For::People })
}

/// Makes the page for people or for tests.
pub fn make(for_whom: For) -> Outcome {
    let begun = Instant::now();
    let parts = root().join("target/web/parts");
    let _ = fs::remove_dir_all(&parts);
    fs::create_dir_all(&parts).map_err(|e| format!("{}: {e}", parts.display()))?;
    let way = find_way()?;
    let built = target_dir(&way, for_whom);
    let (profile, below) = if for_whom == For::People { ("wasm", "wasm") } else { ("dev", "debug") };
    let mut build = cargo(&["build", "--profile", profile, "--target", TARGET]);
    let modules = || MODULES.iter().filter(|m| exists(m));
    modules().for_each(|m| _ = build.args(["-p", m.package]));
    build.arg("--target-dir").arg(&built);
    way.send(&mut build)?;
    step("compile the page", &mut build)?;
    let packed: Vec<(String, Part)> = modules().map(|m| (m.package.replace('-', "_"), m.part)).collect();
    for (name, _) in &packed {
        bind(&built.join(TARGET).join(below).join(format!("{name}.wasm")), &parts, name)?;
    }
    if for_whom == For::People {
        packed.iter().try_for_each(|(name, _)| shrink(&parts.join(format!("{name}_bg.wasm"))))?;
    }
    let (assets, dist) = (root().join("crates/web/assets"), for_whom.folder());
    web_files::assemble(&assets, &parts, &packed, &dist)?;
    let _ = fs::remove_dir_all(&parts);
    if for_whom == For::People {
        step("compress", &mut pack(&["gzip", &dist.to_string_lossy()]))?;
        sizes(&packed)?;
    }
    println!("   the page lies in {} ({:.0} s)", dist.display(), begun.elapsed().as_secs_f64());
    Ok(())
}

fn exists(module: &Module) -> bool {
    let folder = module.package.trim_start_matches("groundhold-");
    root().join("crates").join(folder).join("Cargo.toml").exists()
}

/// Another compiler gets a target directory of its own; the same one may find macros and build scripts compiled already.
fn target_dir(way: &Way, for_whom: For) -> PathBuf {
    if matches!(way, Way::Rustup) && for_whom == For::Tests {
        return std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from);
    }
    std::env::var_os("GROUNDHOLD_WASM_TARGET_DIR").map_or_else(|| root().join("target/web"), PathBuf::from)
}

fn pack(args: &[&str]) -> std::process::Command {
    let mut all = vec!["run", "--quiet", "-p", "xtask", "--features", "pack", "--bin", "pack", "--"];
    all.extend(args);
    cargo(&all)
}

fn bind(wasm: &Path, parts: &Path, name: &str) -> Outcome {
    step(&format!("bind {name}"), &mut pack(&["bind", &wasm.to_string_lossy(), &parts.to_string_lossy(), name]))
}

/// Shrinks a module where the shrinker can be had from npm; without it the module stays as it is.
fn shrink(wasm: &Path) -> Outcome {
    let tools = root().join("target/tools/npm");
    let program = tools.join("node_modules/.bin/wasm-opt");
    if !program.exists() && have("npm", "--version") {
        println!("   fetching {BINARYEN} from npm, once");
        let prefix = tools.to_string_lossy().into_owned();
        let _ = quietly(&mut command("npm", &["install", "--prefix", &prefix, "--no-audit", "--no-fund", BINARYEN]));
    }
    if !program.exists() {
        println!("   not shrunk: the npm package {BINARYEN} cannot be had here (npm comes with Node.js)");
        return Ok(());
    }
    let out = wasm.with_extension("small");
    let mut run = command(&program.to_string_lossy(), SHRINK);
    run.arg(wasm).arg("-o").arg(&out);
    step(&format!("shrink {}", wasm.file_name().unwrap_or_default().to_string_lossy()), &mut run)?;
    fs::rename(&out, wasm).map_err(|e| format!("{}: {e}", wasm.display()))
}

/// Prints every file's size and holds the first load to its limit.
fn sizes(packed: &[(String, Part)]) -> Outcome {
    println!("\n   {:<34} {:>10} {:>10}", "file", "bytes", "gzip");
    let mut first = 0;
    let dist = For::People.folder();
    for file in web_files::list(&dist)?.iter().filter(|f| !f.ends_with(".gz")) {
        let size = |name: &str| fs::metadata(dist.join(name)).ok().map(|m| m.len());
        let raw = size(file).unwrap_or_default();
        let gzip = size(&format!("{file}.gz")).unwrap_or(raw);
        let part = web_files::part(file, packed);
        println!("   {file:<34} {raw:>10} {gzip:>10}{}", if part == Part::Later { "  later" } else { "" });
        if part == Part::First {
            first += gzip;
        }
    }
    println!("   first load, compressed: {first} of {FIRST_LOAD} bytes");
    if first < FIRST_LOAD { Ok(()) } else { Err(format!("the first load is {first} bytes, the limit is {FIRST_LOAD}")) }
}
