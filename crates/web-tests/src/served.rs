//! Who serves the page to a test? A program of its own, so that stopping it is a network that is really gone.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use crate::Outcome;

/// A running server.
pub struct Served {
    child: Child,
    /// Where the page is.
    pub address: String,
}

/// The page as `cargo xtask web` made it: the folder that `cargo xtask browser` names, else the one that people get.
pub fn dist() -> PathBuf {
    let here = || Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/web/dist");
    std::env::var_os("GROUNDHOLD_PAGE").map_or_else(here, PathBuf::from)
}

/// A fresh folder of a test's own.
///
/// # Errors
/// When it cannot be made.
pub fn folder(name: &str) -> Outcome<PathBuf> {
    let path = std::env::temp_dir().join(format!("groundhold-test-{name}-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).map_err(|e| e.to_string())?;
    Ok(path)
}

impl Served {
    /// Serves the page; `program` is the path of `keep-serving`.
    ///
    /// # Errors
    /// When the page was not made or the server does not start.
    pub fn start(program: &str, job: Option<&Path>) -> Outcome<Served> {
        let dist = dist();
        if !dist.join("index.html").exists() {
            return Err("the page is not there: run `cargo xtask web` first".into());
        }
        let mut command = Command::new(program);
        command.arg(dist).args(job).stdout(Stdio::piped());
        let mut child = command.spawn().map_err(|e| format!("{program}: {e}"))?;
        let mut address = String::new();
        let out = child.stdout.take().ok_or("the server says nothing")?;
        BufReader::new(out).read_line(&mut address).map_err(|e| e.to_string())?;
        Ok(Served { child, address: address.trim().to_string() })
    }

    /// Stops it: from now on nobody answers there.
    pub fn stop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        self.stop();
    }
}
