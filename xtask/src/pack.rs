//! How does compiled wasm become files for a browser? Binds it to script, and compresses what will travel.
//!
//! A program of its own behind the feature `pack`, because binding takes longer to compile than all other chores together.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

const USAGE: &str = "pack bind IN.wasm FOLDER NAME, or pack gzip FOLDER";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    let done = match args.as_slice() {
        ["bind", wasm, folder, name] => bind(wasm, folder, name),
        ["gzip", folder] => gzip_all(Path::new(folder)),
        _ => Err(USAGE.into()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("pack: {why}");
            ExitCode::FAILURE
        }
    }
}

fn bind(wasm: &str, folder: &str, name: &str) -> Result<(), String> {
    let mut bindgen = wasm_bindgen_cli_support::Bindgen::new();
    let bindgen = bindgen.input_path(wasm).web(true).map_err(|e| e.to_string())?;
    bindgen.typescript(false).omit_default_module_path(false).out_name(name);
    bindgen.remove_name_section(true).remove_producers_section(true);
    bindgen.generate(folder).map_err(|e| format!("{wasm}: {e:#}"))
}

/// Puts a compressed file beside every file that gets smaller by a tenth or more.
fn gzip_all(folder: &Path) -> Result<(), String> {
    for path in files(folder)? {
        let failed = |e: std::io::Error| format!("{}: {e}", path.display());
        let bytes = fs::read(&path).map_err(failed)?;
        let mut encoder = flate2::write::GzEncoder::new(vec![], flate2::Compression::best());
        encoder.write_all(&bytes).map_err(failed)?;
        let packed = encoder.finish().map_err(failed)?;
        if packed.len() * 10 <= bytes.len() * 9 {
            let mut beside = path.clone().into_os_string();
            beside.push(".gz");
            fs::write(&beside, packed).map_err(failed)?;
        }
    }
    Ok(())
}

fn files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let mut found = vec![];
    for entry in fs::read_dir(folder).map_err(|e| format!("{}: {e}", folder.display()))?.flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path)?);
        } else if path.extension().is_none_or(|e| e != "gz") {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}
