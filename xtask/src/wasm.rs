//! Does everything from `plan` down compile for the browser?
//!
//! On most machines `rustup target add wasm32-unknown-unknown` is enough. Where that is not to be had, a newer Debian's
//! compiler with its wasm standard library is unpacked under `target/` and run through its own loader.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::run::{Outcome, cargo, need, quietly, root, step};

/// The browser, as compilers call it.
pub const TARGET: &str = "wasm32-unknown-unknown";
/// From `plan` down, plus what reads job text: no files, clocks or threads in any of these.
pub const CRATES: &[&str] = &["groundhold-plan", "groundhold-exchange", "groundhold-draw"];

/// How the wasm standard library was found.
pub enum Way {
    /// The toolchain has the target.
    Rustup,
    /// A compiler unpacked into this folder has it.
    Debian(PathBuf),
}

impl Way {
    /// Says which way was taken, and sends cargo that way.
    ///
    /// # Errors
    /// What could not be prepared.
    pub fn send(&self, cargo: &mut Command) -> Outcome {
        match self {
            Way::Rustup => println!("   wasm: the toolchain's own target"),
            Way::Debian(dir) => {
                println!("   wasm: a Debian compiler unpacked under target/, since the toolchain has no such target");
                prepare(cargo, dir)?;
            }
        }
        Ok(())
    }
}

/// Checks the crates for wasm32.
pub fn chore(_: &[String]) -> Outcome {
    let way = find_way()?;
    let mut args = vec!["check", "--target", TARGET, "--target-dir", "target/wasm"];
    CRATES.iter().for_each(|c| args.extend(["-p", c]));
    let mut check = cargo(&args);
    way.send(&mut check)?;
    step("wasm32 check of plan and below", &mut check)
}

/// Finds a wasm32 standard library, fetching one where there is none.
///
/// # Errors
/// What was tried and what to install by hand.
pub fn find_way() -> Result<Way, String> {
    let listed = Command::new("rustup").args(["target", "list", "--installed"]).output();
    let has = listed.is_ok_and(|o| String::from_utf8_lossy(&o.stdout).lines().any(|l| l.trim() == TARGET));
    if has || added_by_rustup() {
        return Ok(Way::Rustup);
    }
    let dir = root().join("target/wasm-toolchain");
    if !dir.join("usr/bin/rustc").exists() {
        unpack(&dir)?;
    }
    Ok(Way::Debian(dir))
}

/// Tries rustup, but not for longer than a minute where the network is closed.
fn added_by_rustup() -> bool {
    let Ok(mut child) =
        Command::new("rustup").args(["target", "add", TARGET]).stdout(Stdio::null()).stderr(Stdio::null()).spawn()
    else {
        return false;
    };
    for _ in 0..60 {
        match child.try_wait() {
            Ok(Some(status)) => return status.success(),
            Ok(None) => std::thread::sleep(std::time::Duration::from_secs(1)),
            Err(_) => break,
        }
    }
    let _ = child.kill();
    let _ = child.wait();
    false
}

fn unpack(dir: &Path) -> Outcome {
    need("mmdebstrap", "--version", "mmdebstrap")?;
    let mirror = mirror().ok_or("no Debian mirror is configured on this machine, and rustup has no wasm32 target")?;
    let parent = dir.parent().unwrap_or(dir);
    fs::create_dir_all(parent).map_err(|e| e.to_string())?;
    let fresh = parent.join("wasm-toolchain.part");
    let _ = fs::remove_dir_all(&fresh);
    println!("   unpacking a compiler with the wasm32 standard library (once, about 1.1 GB)");
    let done = quietly(Command::new("mmdebstrap").args([
        "--aptopt=Acquire::Check-Valid-Until \"false\"",
        "--variant=extract",
        "--include=rustc,libstd-rust-dev-wasm32",
        "forky",
        &fresh.to_string_lossy(),
        &mirror,
    ]));
    if !done || !fresh.join("usr/bin/rustc").exists() {
        return Err("the compiler with the wasm32 standard library could not be unpacked".into());
    }
    fs::rename(&fresh, dir).map_err(|e| e.to_string())
}

/// The mirror this machine itself uses.
fn mirror() -> Option<String> {
    let mut texts = vec![fs::read_to_string("/etc/apt/sources.list").unwrap_or_default()];
    if let Ok(entries) = fs::read_dir("/etc/apt/sources.list.d") {
        let mut paths: Vec<PathBuf> = entries.flatten().map(|e| e.path()).collect();
        paths.sort();
        texts.extend(paths.iter().filter_map(|p| fs::read_to_string(p).ok()));
    }
    let words = texts.iter().flat_map(|t| t.lines()).filter(|l| !l.trim_start().starts_with('#'));
    words
        .flat_map(str::split_whitespace)
        .find(|w| w.contains("://") && w.trim_end_matches('/').ends_with("/debian"))
        .map(String::from)
}

/// Points cargo at the unpacked compiler, through its own loader and libraries.
fn prepare(check: &mut Command, dir: &Path) -> Outcome {
    let wrapper = dir.join("rustc-wrapper");
    let lib = dir.join("usr/lib/x86_64-linux-gnu");
    let (lib, bin, sys) = (lib.display(), dir.join("usr/bin/rustc").display().to_string(), dir.join("usr"));
    let text = format!(
        "#!/bin/sh\nexec {lib}/ld-linux-x86-64.so.2 --library-path {lib} --argv0 {bin} {bin} --sysroot {} \"$@\"\n",
        sys.display()
    );
    fs::write(&wrapper, text).map_err(|e| e.to_string())?;
    make_executable(&wrapper)?;
    let sysroot = Command::new("rustc").args(["--print", "sysroot"]).output().map_err(|e| e.to_string())?;
    let sysroot = String::from_utf8_lossy(&sysroot.stdout).trim().to_string();
    let linker = format!("{sysroot}/lib/rustlib/x86_64-unknown-linux-gnu/bin/rust-lld");
    check.env("RUSTC", &wrapper).env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker);
    check.env_remove("RUSTUP_TOOLCHAIN");
    Ok(())
}

#[cfg(unix)]
fn make_executable(path: &Path) -> Outcome {
    use std::os::unix::fs::PermissionsExt;
    fs::set_permissions(path, fs::Permissions::from_mode(0o755)).map_err(|e| e.to_string())
}

#[cfg(not(unix))]
fn make_executable(_: &Path) -> Outcome {
    Ok(())
}
