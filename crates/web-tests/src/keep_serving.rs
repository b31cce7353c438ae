//! Serves a folder as the page, perhaps with a job behind it, until it is stopped; says its address on one line.

use std::path::Path;
use std::process::ExitCode;

use groundhold_server::{JobFolder, Listener, Pages, Site, run};

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    match serve(&args) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("keep-serving: {why}");
            ExitCode::FAILURE
        }
    }
}

fn serve(args: &[String]) -> Result<(), String> {
    let pages = args.first().ok_or("keep-serving PAGES [JOB]")?;
    let job = args.get(1).map(|j| JobFolder::open(Path::new(j))).transpose()?;
    let site = Site { pages: Pages::Folder(pages.into()), job, pairing: None, tell_code: Box::new(|_| {}) };
    let own = Listener::own(0).map_err(|e| e.to_string())?;
    println!("http://{}/", own.address().map_err(|e| e.to_string())?);
    match run(site, vec![own]) {
        Ok(never) => match never {},
        Err(e) => Err(e.to_string()),
    }
}
