//! Does the page do what a person needs of it, in a real browser? One program for all of these tests, so that it is built once.
#![allow(clippy::unwrap_used, missing_docs)]

mod drawing;
mod engine;
mod everyone;
mod findings;
mod keeping;
mod main_job;
mod measuring;
mod sheets;
mod site;
mod versions;
mod views;

use groundhold_web_tests::{Page, Screen, Served};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

/// The demo, served and opened.
fn open(screen: Screen) -> (Served, Page) {
    let served = Served::start(SERVER, None).unwrap();
    let page = Page::open(&served.address, screen).unwrap();
    (served, page)
}

/// A figure of the strip as it is read.
fn figure(page: &mut Page, name: &str) -> String {
    page.text(&format!("[data-test=\"figure-{name}\"] .value")).unwrap()
}

/// A script that is true when a figure reads so.
fn figure_is(name: &str, value: &str) -> String {
    format!("document.querySelector('[data-test=figure-{name}] .value').innerText === {value:?}")
}

/// A script that is true when a figure reads otherwise.
fn figure_is_not(name: &str, value: &str) -> String {
    format!("!({})", figure_is(name, value))
}
