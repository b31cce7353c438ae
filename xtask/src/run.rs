//! Running other programs, and getting those that are missing.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Done, or why not.
pub type Outcome = Result<(), String>;

/// The workspace's folder.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map(Path::to_path_buf).unwrap_or_default()
}

/// A command run in the workspace's folder.
pub fn command(program: &str, args: &[&str]) -> Command {
    let mut c = Command::new(program);
    c.args(args).current_dir(root());
    c
}

/// Cargo, as the one that runs this.
pub fn cargo(args: &[&str]) -> Command {
    command(&std::env::var("CARGO").unwrap_or_else(|_| "cargo".into()), args)
}

/// Says what is being done, does it, and fails if it fails.
pub fn step(what: &str, command: &mut Command) -> Outcome {
    println!("\n── {what}");
    let begun = std::time::Instant::now();
    let status = command.status().map_err(|e| format!("{what}: {} cannot be started: {e}", program(command)))?;
    println!("   {what}: {:.0} s", begun.elapsed().as_secs_f64());
    if status.success() { Ok(()) } else { Err(format!("{what} failed ({status})")) }
}

fn program(c: &Command) -> String {
    c.get_program().to_string_lossy().into_owned()
}

/// True when the program can be started.
pub fn have(program: &str, probe: &str) -> bool {
    Command::new(program).arg(probe).stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok_and(|s| s.success())
}

/// Runs quietly and tells whether it succeeded.
pub fn quietly(command: &mut Command) -> bool {
    command.stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok_and(|s| s.success())
}

/// Makes a program available from the system's packages where that is possible.
///
/// # Errors
/// Says what to install by hand.
pub fn need(program: &str, probe: &str, package: &str) -> Outcome {
    need_with(program, probe, package, &[])
}

/// The same without the packages that are only recommended beside it.
///
/// # Errors
/// As [`need`].
pub fn need_bare(program: &str, probe: &str, package: &str) -> Outcome {
    need_with(program, probe, package, &["--no-install-recommends"])
}

fn need_with(program: &str, probe: &str, package: &str, options: &[&str]) -> Outcome {
    if have(program, probe) {
        return Ok(());
    }
    println!("   `{program}` is missing; trying to install the package `{package}`");
    let _ = quietly(Command::new("apt-get").args(["update"]));
    let mut install = Command::new("apt-get");
    install.args(["install", "-y"]).args(options).arg(package).env("DEBIAN_FRONTEND", "noninteractive");
    let _ = quietly(&mut install);
    if have(program, probe) { Ok(()) } else { Err(format!("`{program}` is needed: install the package `{package}`")) }
}
