//! Do independent libraries agree? Triangulation, volumes, contours, least squares and cutting lists against scipy.

use std::io::Write;
use std::process::{Command, Stdio};

use crate::run::{Outcome, cargo, have, need, quietly, root};

const PACKAGES: &[&str] = &["numpy", "scipy"];

/// Gets the libraries into a folder of their own and compares.
pub fn chore(_: &[String]) -> Outcome {
    println!("\n── independent libraries");
    need("python3", "--version", "python3")?;
    let python = environment()?;
    let mut numbers = cargo(&["run", "--quiet", "-p", "groundhold-plan", "--example", "numbers"]);
    let out = numbers.output().map_err(|e| format!("the engine's figures: {e}"))?;
    if !out.status.success() {
        return Err(format!("the engine's figures: {}", String::from_utf8_lossy(&out.stderr)));
    }
    let script = root().join("xtask/crosscheck.py");
    let mut child = Command::new(python)
        .arg(script)
        .stdin(Stdio::piped())
        .spawn()
        .map_err(|e| format!("python cannot be started: {e}"))?;
    if let Some(mut pipe) = child.stdin.take() {
        pipe.write_all(&out.stdout).map_err(|e| e.to_string())?;
    }
    let status = child.wait().map_err(|e| e.to_string())?;
    if status.success() { Ok(()) } else { Err("the engine and the independent libraries differ".into()) }
}

/// A Python that has the libraries: the machine's own, or one in a folder under target/.
fn environment() -> Result<String, String> {
    let imports = format!("import {}", PACKAGES.join(", "));
    if quietly(Command::new("python3").args(["-c", &imports])) {
        return Ok("python3".into());
    }
    let folder = root().join("target/python");
    let python = folder.join("bin/python3").to_string_lossy().into_owned();
    let mut make = Command::new("python3");
    make.args(["-m", "venv", &folder.to_string_lossy()]);
    if !have(&python, "--version") && !quietly(&mut make) {
        // On Debian the module is a package of its own; whether it came is seen by trying again.
        let _ = need("python3-venv", "--version", "python3-venv");
        if !quietly(&mut make) {
            return Err("a Python environment cannot be made; install the package python3-venv".into());
        }
    }
    if !quietly(Command::new(&python).args(["-c", &imports])) {
        println!("   getting {} (once)", PACKAGES.join(" and "));
        let mut get = Command::new(&python);
        get.args(["-m", "pip", "install", "--quiet"]).args(PACKAGES);
        if !quietly(&mut get) {
            return Err("numpy and scipy cannot be installed with pip".into());
        }
    }
    Ok(python)
}
