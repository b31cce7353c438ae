//! The page in a browser, with a job behind it.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Mutex;

use clap::Args;
use groundhold_server::{JobFolder, Listener, Pages, Pairing, Site, own_address, run};

use crate::{Ending, Refusal, say};

/// The port that is tried when none is asked for.
const PORT: u16 = 4780;

/// What to serve, and to whom.
#[derive(Args)]
pub struct ServeArgs {
    /// Folder of the job, or its job file; without one the page keeps its jobs in the browser only.
    job: Option<PathBuf>,
    /// Port to listen on; 4780, or any that is free, if left out.
    #[arg(long)]
    port: Option<u16>,
    /// Let devices of the local network in too, each with a pairing code that is shown here.
    #[arg(long)]
    share: bool,
    /// Serve the page from this folder instead of the one in the program.
    #[arg(long)]
    pages: Option<PathBuf>,
    /// Open a browser.
    #[arg(long)]
    open: bool,
}

/// Serves the page until interrupted.
pub fn serve(args: &ServeArgs) -> Result<Ending, Refusal> {
    let pages = args.pages.clone().map_or(Pages::Embedded, Pages::Folder);
    let own = listen(args.port)?;
    let port = own.address().map_err(|e| e.to_string())?.port();
    let mut listeners = vec![own];
    let mut pairing = None;
    if args.share {
        let address = own_address().ok_or("this machine has no address in a local network; --share needs one")?;
        listeners.push(Listener::network(address, port).map_err(|e| e.to_string())?);
        let fresh = Pairing::begin()?;
        say::line!("in the local network: http://{address}:{port}/");
        say::line!("  pairing code {} (for one device; the next code follows)", fresh.shown());
        say::line!(
            "  The connection is not encrypted: share only in a network you trust. Browsers keep a page for use without"
        );
        say::line!(
            "  a network, and give it a phone's sensors, only over an encrypted connection or on the machine itself."
        );
        pairing = Some(Mutex::new(fresh));
    }
    let job = args.job.as_deref().map(JobFolder::open).transpose()?;
    let tell_code = Box::new(|code: &str| {
        // A code that nobody hears is no reason to stop serving those who are in.
        let _ = say::text(&format!("  the next pairing code is {code}\n"));
    });
    let site = Site { pages, job, pairing, tell_code };
    announce(&site, port, args.job.as_deref(), args.open)?;
    match run(site, listeners) {
        Ok(never) => match never {},
        Err(e) => Err(e.to_string()),
    }
}

/// Serves a job that was just written, and shows it.
pub fn show(job: &Path, port: Option<u16>) -> Result<Ending, Refusal> {
    let job = Some(job.to_path_buf());
    serve(&ServeArgs { job, port, share: false, pages: None, open: true })
}

fn listen(port: Option<u16>) -> Result<Listener, Refusal> {
    match port {
        Some(port) => Listener::own(port),
        None => Listener::own(PORT).or_else(|_| Listener::own(0)),
    }
    .map_err(|e| e.to_string())
}

fn announce(site: &Site, port: u16, job: Option<&Path>, open: bool) -> Result<(), Refusal> {
    let address = format!("http://localhost:{port}/");
    let what = job.map_or("the page".into(), |j| j.display().to_string());
    say::line!("{what} at {address} (this machine only; stop with Ctrl-C)");
    if !site.pages.are_there() {
        say::line!("The page is not in this program: run `cargo xtask web`, then start this command again with cargo.");
    } else if open && !opened(&address) {
        say::line!("No browser could be started from here: open the address yourself.");
    }
    Ok(())
}

/// Asks the desktop for a browser.
fn opened(address: &str) -> bool {
    let tries: &[&[&str]] = if cfg!(target_os = "macos") {
        &[&["open"]]
    } else if cfg!(windows) {
        &[&["explorer"]]
    } else if std::env::var_os("DISPLAY").is_some() || std::env::var_os("WAYLAND_DISPLAY").is_some() {
        &[&["xdg-open"], &["gio", "open"]]
    } else {
        &[]
    };
    tries.iter().any(|words| {
        let mut command = Command::new(words[0]);
        command.args(&words[1..]).arg(address);
        command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).spawn().is_ok()
    })
}
