//! Is anything lost: without a network, on a reload, between two tabs, on the way out to a file and back?
#![allow(clippy::unwrap_used, missing_docs)]

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use groundhold_web_tests::{DESK, PHONE, Page, Served, element, folder};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

/// Changes the spacing of a wall's posts, and waits until it is taken.
fn change_a_wall(page: &mut Page, spacing: &str) {
    page.tap(&element("tab-ground")).unwrap();
    if page.count(&element("pick-W1")).unwrap() == 0 {
        page.tap(&element("all-things")).unwrap();
    }
    page.tap(&element("pick-W1")).unwrap();
    let field = element("field-W1-spec.spacing");
    page.fill(&field, spacing).unwrap();
    page.strike("Enter", false).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the change is taken").unwrap();
}

fn price(page: &mut Page) -> String {
    page.text("[data-test=figure-price] .value").unwrap()
}

/// Until the change stands in the browser's storage there is nothing to see; the page writes before it shows.
fn job_text(page: &mut Page) -> String {
    page.tap(&element("tab-job")).unwrap();
    page.ask("document.querySelector('[data-test=job-text]').closest('details').open = true").unwrap();
    page.ask("document.querySelector('[data-test=job-text]').value").unwrap().as_str().unwrap().to_string()
}

#[test]
fn with_the_network_gone_the_page_loads_again_and_has_everything() {
    let mut served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, PHONE).unwrap();
    page.wait(
        "navigator.serviceWorker.ready.then(async (r) => r.active?.state === 'activated' && (await caches.keys()).length > 0)",
        "the service worker has kept the page",
    )
    .unwrap();
    change_a_wall(&mut page, "1.0 m");
    let before = price(&mut page);
    served.stop();
    assert!(
        page.ask("fetch('files.json?' + Math.random(), { cache: 'no-store' }).then(() => 0)").is_err() || {
            // The worker may answer for a file it keeps; a question to the server itself must fail.
            page.ask("fetch('api/job').then(() => 0)").is_err()
        }
    );
    page.reload().unwrap();
    page.wait(
        &format!("document.querySelector('[data-test=figure-price] .value').innerText === {before:?}"),
        "the change is still there",
    )
    .unwrap();
    change_a_wall(&mut page, "0.9 m");
    assert_ne!(price(&mut page), before, "the engine works without a network");
    page.shot("offline").unwrap();
}

#[test]
fn a_closed_tab_loses_nothing_not_even_a_half_typed_field() {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    change_a_wall(&mut page, "1.0 m");
    let before = price(&mut page);
    page.fill(&element("field-W1-spec.spacing"), "0.7").unwrap();
    page.reload().unwrap();
    page.wait(
        &format!("document.querySelector('[data-test=figure-price] .value').innerText === {before:?}"),
        "the change is still there",
    )
    .unwrap();
    page.tap(&element("pick-W1")).unwrap();
    page.wait_for(&element("field-W1-spec.spacing")).unwrap();
    let typed = page.ask("document.querySelector('[data-test=\"field-W1-spec.spacing\"]').value").unwrap();
    assert_eq!(typed, "0.7", "what was being typed is still there");
    page.content().unwrap();
}

#[test]
fn a_second_tab_follows_the_first_and_does_not_write_over_it() {
    let served = Served::start(SERVER, None).unwrap();
    let mut first = Page::open(&served.address, DESK).unwrap();
    let mut second = first.beside(&served.address).unwrap();
    second.wait_for(&element("reader")).unwrap();
    change_a_wall(&mut first, "1.0 m");
    let now = price(&mut first);
    second
        .wait(
            &format!("document.querySelector('[data-test=figure-price] .value').innerText === {now:?}"),
            "the second tab follows",
        )
        .unwrap();
    first.content().unwrap();
    second.content().unwrap();
}

fn downloaded(folder: &Path) -> std::path::PathBuf {
    let begun = Instant::now();
    while begun.elapsed() < Duration::from_secs(30) {
        let found = fs::read_dir(folder).unwrap().flatten().map(|e| e.path());
        if let Some(path) = found.into_iter().find(|p| p.extension().is_some_and(|e| e == "txt")) {
            return path;
        }
        std::thread::sleep(Duration::from_millis(50));
    }
    panic!("nothing was downloaded");
}

#[test]
fn a_job_handed_out_as_a_file_comes_back_the_same_in_another_browser() {
    let served = Served::start(SERVER, None).unwrap();
    let out = folder("download").unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    change_a_wall(&mut page, "1.05 m");
    let (before, text) = (price(&mut page), job_text(&mut page));
    assert!(text.contains("1.05 m"));
    page.download_into(&out).unwrap();
    page.tap(&element("export")).unwrap();
    let file = downloaded(&out);
    page.content().unwrap();
    drop(page);

    let mut other = Page::open(&served.address, PHONE).unwrap();
    other.tap(&element("tab-job")).unwrap();
    other.choose_files(&element("import"), &[&file]).unwrap();
    other
        .wait(
            &format!("document.querySelector('[data-test=figure-price] .value').innerText === {before:?}"),
            "the job is there",
        )
        .unwrap();
    assert_eq!(job_text(&mut other), text);
    fs::write(&file, "this is no job").unwrap();
    other.choose_files(&element("import"), &[&file]).unwrap();
    other
        .wait(
            "document.querySelector('.toast.bad')?.innerText.includes('expected')",
            "the file is refused with a reason",
        )
        .unwrap();
    assert_eq!(job_text(&mut other), text, "and the job is what it was");
    other.content().unwrap();
    fs::remove_dir_all(&out).unwrap();
}

#[test]
fn a_served_job_is_shown_and_a_change_goes_back_to_its_folder() {
    let job = folder("served").unwrap();
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    for name in ["job.toml", "levels.csv", "positions.csv", "prices.csv"] {
        fs::copy(demo.join(name), job.join(name)).unwrap();
    }
    let text = fs::read_to_string(job.join("job.toml")).unwrap();
    let named = text.replacen("\"Shed terrace", "\"Served: shed terrace", 1);
    assert_ne!(named, text);
    fs::write(job.join("job.toml"), &named).unwrap();
    let served = Served::start(SERVER, Some(&job)).unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    page.wait(
        "document.querySelector('[data-test=job-name]').innerText.startsWith('Served: ')",
        "the served job is shown",
    )
    .unwrap();
    change_a_wall(&mut page, "1.05 m");
    let begun = Instant::now();
    while !fs::read_to_string(job.join("job.toml")).unwrap().contains("1.05 m") {
        assert!(begun.elapsed() < Duration::from_secs(30), "the change does not come back to the folder");
        std::thread::sleep(Duration::from_millis(50));
    }
    assert_eq!(fs::read_to_string(job.join("earlier/0001/job.toml")).unwrap(), named, "what was there is kept");
    page.content().unwrap();
    fs::remove_dir_all(&job).unwrap();
}

#[test]
fn what_is_wrong_stands_beside_its_field_and_what_was_typed_stays() {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, PHONE).unwrap();
    let before = price(&mut page);
    page.tap(&element("pick-W1")).unwrap();
    let field = element("field-W1-spec.spacing");
    page.fill(&field, "banana").unwrap();
    page.strike("Enter", false).unwrap();
    page.wait(
        "document.querySelector('[data-test=\"field-W1-spec.spacing\"]').getAttribute('aria-invalid') === 'true'",
        "the field is marked",
    )
    .unwrap();
    let says = page.ask("document.querySelector('[data-test=\"field-W1-spec.spacing\"]').closest('.field').querySelector('.wrong').innerText").unwrap();
    assert!(says.as_str().unwrap().contains("banana") && says.as_str().unwrap().contains("expected"), "{says}");
    assert_eq!(page.ask("document.querySelector('[data-test=\"field-W1-spec.spacing\"]').value").unwrap(), "banana");
    assert_eq!(price(&mut page), before, "the job is what it was");
    page.shot("wrong-field").unwrap();
    page.fill(&field, "3 ft 4 in").unwrap();
    page.strike("Enter", false).unwrap();
    page.wait(
        "document.querySelector('[data-test=\"field-W1-spec.spacing\"]').getAttribute('aria-invalid') === 'false'",
        "any unit is taken",
    )
    .unwrap();
    page.content().unwrap();
}
