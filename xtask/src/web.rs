//! How is the page made? Compiled for wasm32, bound to script, shrunk where that can be had, packed with its assets.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Instant;

use crate::run::{Outcome, cargo, command, have, quietly, root, step};
use crate::wasm::{TARGET, find_way};
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

/// Where the page's files lie when they are made.
pub fn dist() -> PathBuf {
    root().join("target/web/dist")
}

/// Makes the page. `--quick` leaves the shrinking out.
pub fn chore(args: &[String]) -> Outcome {
    let quick = args.iter().any(|a| a == "--quick");
    let begun = Instant::now();
    let built = target_dir();
    let parts = root().join("target/web/parts");
    let _ = fs::remove_dir_all(&parts);
    fs::create_dir_all(&parts).map_err(|e| format!("{}: {e}", parts.display()))?;
    let way = find_way()?;
    let mut packed = vec![];
    for module in MODULES.iter().filter(|m| exists(m)) {
        let mut build = cargo(&["build", "--profile", "wasm", "--target", TARGET, "-p", module.package]);
        build.arg("--target-dir").arg(&built);
        way.send(&mut build)?;
        step(&format!("compile {}", module.package), &mut build)?;
        let name = module.package.replace('-', "_");
        bind(&built.join(TARGET).join("wasm").join(format!("{name}.wasm")), &parts, &name)?;
        packed.push((name, module.part));
    }
    if !quick {
        packed.iter().try_for_each(|(name, _)| shrink(&parts.join(format!("{name}_bg.wasm"))))?;
    }
    let assets = root().join("crates/web/assets");
    web_files::assemble(&assets, &parts, &packed, &dist())?;
    let folder = dist().to_string_lossy().into_owned();
    step("compress", &mut pack(&["gzip", &folder]))?;
    sizes(&packed)?;
    println!("   the page lies in target/web/dist ({:.0} s)", begun.elapsed().as_secs_f64());
    Ok(())
}

fn exists(module: &Module) -> bool {
    let folder = module.package.trim_start_matches("groundhold-");
    root().join("crates").join(folder).join("Cargo.toml").exists()
}

/// A target directory of its own, since the compiler may be another one.
fn target_dir() -> PathBuf {
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
    for file in web_files::list(&dist())?.iter().filter(|f| !f.ends_with(".gz")) {
        let size = |name: &str| fs::metadata(dist().join(name)).ok().map(|m| m.len());
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
