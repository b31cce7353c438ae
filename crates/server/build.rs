//! Which files of the page go into the program? Those of `target/web/dist`, as `cargo xtask web` left them.

use std::fmt::Write;
use std::path::{Path, PathBuf};
use std::{env, fs};

fn main() {
    let here = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    let dist = here.join("../../target/web/dist");
    // The folder must be there to be watched: cargo rebuilds every time when a watched path is missing.
    let _ = fs::create_dir_all(&dist);
    println!("cargo::rerun-if-changed={}", dist.display());
    let mut names = vec![];
    collect(&dist, "", &mut names);
    names.sort();
    let mut text = String::from("pub(super) static FILES: &[(&str, &[u8], bool)] = &[\n");
    for name in names.iter().filter(|n| !n.ends_with(".gz")) {
        let packed = format!("{name}.gz");
        let gzip = names.binary_search(&packed).is_ok();
        let path = dist.join(if gzip { &packed } else { name });
        let path = fs::canonicalize(&path).unwrap_or(path);
        let _ = writeln!(text, "    ({name:?}, include_bytes!({:?}), {gzip}),", path.display().to_string());
    }
    text.push_str("];\n");
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default()).join("embedded.rs");
    if let Err(e) = fs::write(&out, text) {
        println!("cargo::error=the list of the page's files cannot be written: {e}");
    }
}

fn collect(dir: &Path, before: &str, names: &mut Vec<String>) {
    let Ok(entries) = fs::read_dir(dir) else { return };
    for entry in entries.flatten() {
        let name = format!("{before}{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() {
            collect(&entry.path(), &format!("{name}/"), names);
        } else {
            names.push(name);
        }
    }
}
