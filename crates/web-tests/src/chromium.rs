//! How is Chromium started and spoken to? Messages of its DevTools protocol, ended by a zero byte, over two pipes.

use std::io::{BufRead, BufReader, Write};
use std::os::fd::OwnedFd;
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::time::{Duration, Instant};

use command_fds::{CommandFdExt, FdMapping};
use serde_json::{Value, json};

use crate::Outcome;

/// Names under which distributions install it.
const NAMES: &[&str] = &["chromium", "chromium-browser", "google-chrome"];
/// An answer that takes longer never comes.
const PATIENCE: Duration = Duration::from_secs(90);

/// A browser of a test's own, with a fresh profile.
pub struct Chromium {
    child: Child,
    to: std::io::PipeWriter,
    from: Receiver<Value>,
    next: u64,
    events: Vec<Value>,
    profile: PathBuf,
}

impl Chromium {
    /// Starts one.
    ///
    /// # Errors
    /// When it is not installed or does not answer.
    pub fn start() -> Outcome<Chromium> {
        static STARTED: AtomicU32 = AtomicU32::new(0);
        let number = STARTED.fetch_add(1, Ordering::Relaxed);
        let profile = std::env::temp_dir().join(format!("groundhold-browser-{}-{number}", std::process::id()));
        let (their_in, to) = std::io::pipe().map_err(|e| e.to_string())?;
        let (from, their_out) = std::io::pipe().map_err(|e| e.to_string())?;
        let mut command = Command::new(program()?);
        command.args([
            "--headless=new",
            "--remote-debugging-pipe",
            "--no-first-run",
            "--disable-background-networking",
        ]);
        // In a container of a build machine there is no user to be protected from the page, and often no way to.
        command.args(["--no-sandbox", "--disable-dev-shm-usage", "--enable-unsafe-swiftshader", "--hide-scrollbars"]);
        command.args(["--disable-backgrounding-occluded-windows", "--disable-renderer-backgrounding"]);
        command.arg(format!("--user-data-dir={}", profile.display())).arg("about:blank");
        command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
        let fd = |parent_fd: OwnedFd, child_fd| FdMapping { parent_fd, child_fd };
        command.fd_mappings(vec![fd(their_in.into(), 3), fd(their_out.into(), 4)]).map_err(|e| e.to_string())?;
        let child = command.spawn().map_err(|e| format!("Chromium cannot be started: {e}"))?;
        // The command holds the child's ends of the pipes; without it a dead browser is noticed.
        drop(command);
        let (tell, inbox) = channel();
        std::thread::spawn(move || {
            for message in BufReader::new(from).split(0).map_while(Result::ok) {
                let Ok(value) = serde_json::from_slice(&message) else { continue };
                if tell.send(value).is_err() {
                    return;
                }
            }
        });
        let mut chromium = Chromium { child, to, from: inbox, next: 1, events: vec![], profile };
        chromium.call(None, "Browser.getVersion", json!({}))?;
        Ok(chromium)
    }

    /// Asks one thing and waits for the answer; what else is said meanwhile is kept as events.
    ///
    /// # Errors
    /// What the browser refuses, or that it does not answer.
    pub fn call(&mut self, session: Option<&str>, method: &str, params: Value) -> Outcome<Value> {
        let id = self.next;
        self.next += 1;
        let mut message = json!({ "id": id, "method": method, "params": params });
        if let Some(session) = session {
            message["sessionId"] = session.into();
        }
        let mut bytes = message.to_string().into_bytes();
        bytes.push(0);
        self.to.write_all(&bytes).map_err(|e| format!("{method}: the browser is gone: {e}"))?;
        let until = Instant::now() + PATIENCE;
        loop {
            let answer = self.receive(until).map_err(|e| format!("{method}: {e}"))?;
            if answer["id"] == id {
                return match answer.get("error") {
                    Some(error) => Err(format!("{method}: {}", error["message"])),
                    None => Ok(answer["result"].clone()),
                };
            }
            self.events.push(answer);
        }
    }

    fn receive(&mut self, until: Instant) -> Outcome<Value> {
        match self.from.recv_timeout(until.saturating_duration_since(Instant::now())) {
            Ok(value) => Ok(value),
            Err(RecvTimeoutError::Timeout) => Err(format!("no answer within {} s", PATIENCE.as_secs())),
            Err(RecvTimeoutError::Disconnected) => Err("the browser is gone".into()),
        }
    }

    /// What was said unasked since the last time, by one page.
    pub fn events(&mut self, session: &str) -> Vec<Value> {
        self.events.extend(self.from.try_iter());
        let (its, rest) = std::mem::take(&mut self.events).into_iter().partition(|e| e["sessionId"] == session);
        self.events = rest;
        its
    }
}

impl Drop for Chromium {
    fn drop(&mut self) {
        let _ = self.call(None, "Browser.close", json!({}));
        let _ = self.child.kill();
        let _ = self.child.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

fn program() -> Outcome<String> {
    let found = |name: &&&str| {
        Command::new(name)
            .arg("--version")
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status()
            .is_ok_and(|s| s.success())
    };
    let name = NAMES.iter().find(found);
    name.map(ToString::to_string).ok_or(format!("Chromium is needed: install the package `{}`", NAMES[0]))
}
