//! Are the sheets made in the page the same as those the terminal makes, byte for byte, and without a network too?

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use crate::SERVER;
use groundhold_web::job::demo;
use groundhold_web_tests::{DESK, Page, Served, element, folder};

/// A finished download ending so; the browser gives a file its name when it is whole.
pub fn downloaded(folder: &Path, ending: &str) -> PathBuf {
    let begun = Instant::now();
    while begun.elapsed() < Duration::from_secs(120) {
        let found = fs::read_dir(folder).unwrap().flatten().map(|e| e.path());
        if let Some(path) = found.into_iter().find(|p| p.extension().is_some_and(|e| e == ending)) {
            return path;
        }
        std::thread::sleep(Duration::from_millis(50));
    }
    panic!("no .{ending} was downloaded");
}

#[test]
fn the_pdf_made_in_the_page_is_the_native_one_byte_for_byte_and_again_with_the_network_gone() {
    let mut served = Served::start(SERVER, None).unwrap();
    let out = folder("sheets").unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    page.wait(
        "navigator.serviceWorker.ready.then((r) => r.active?.state === 'activated' && Boolean(navigator.serviceWorker.controller))",
        "the service worker looks after the page",
    )
    .unwrap();
    page.download_into(&out).unwrap();
    let day = |page: &mut Page| {
        let d = "(() => { const d = new Date(); return `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`; })()";
        page.ask(d).unwrap().as_str().unwrap().to_string()
    };
    let plan = groundhold_plan::plan_priced(&demo().read().whole().unwrap()).unwrap();
    for network in [true, false] {
        if !network {
            served.stop();
        }
        let before = day(&mut page);
        page.tap(&element("tab-job")).unwrap();
        page.tap(&element("make-pdf")).unwrap();
        let file = downloaded(&out, "pdf");
        let made = fs::read(&file).unwrap();
        let days = [before, day(&mut page)];
        let same = days.iter().any(|d| groundhold_paper::pdf_set(&plan, d).unwrap() == made);
        assert!(made.starts_with(b"%PDF-") && same, "{} bytes, on {days:?}, with the network: {network}", made.len());
        fs::remove_file(&file).unwrap();
        page.wait("!document.querySelector('[data-test=make-pdf]').disabled", "the next set can be asked for").unwrap();
    }
    fs::remove_dir_all(&out).unwrap();
}
