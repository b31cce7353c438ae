//! Can a crew work from the page in a trench: one thing per screen, tick, undo, and a find when it is not so?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_web_tests::{PHONE, Page, Served, element};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

fn on_site() -> (Served, Page) {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, PHONE).unwrap();
    page.tap(&element("tab-site")).unwrap();
    page.wait_for(&element("step")).unwrap();
    (served, page)
}

#[test]
fn one_thing_stands_on_the_screen_and_goes_on_when_it_is_ticked() {
    let (_served, mut page) = on_site();
    for round in ["pegs", "posts", "cuts", "work"] {
        let key = element(&format!("round-{round}"));
        if page.count(&key).unwrap() == 0 {
            let all =
                page.ask("[...document.querySelectorAll('.site .pick')].map((e) => e.dataset.test).join(' ')").unwrap();
            panic!("there is no round of {round}; there are {all}");
        }
        page.tap(&key).unwrap();
        let first = page.text(&element("step")).unwrap();
        assert!(first.contains("1 of "), "{round}: {first}");
        page.shot(&format!("site-{round}")).unwrap();
        page.tap(&element("tick")).unwrap();
        page.wait(
            &format!("document.querySelector('[data-test=step]')?.innerText !== {first:?}"),
            "the next thing is shown",
        )
        .unwrap();
    }
    page.content().unwrap();
}

#[test]
fn keys_on_site_are_large_enough_for_gloves_and_the_words_for_an_arms_length() {
    let (_served, mut page) = on_site();
    let small = page
        .ask("[...document.querySelectorAll('.site footer button')].filter((b) => { const r = b.getBoundingClientRect(); return r.width < 48 || r.height < 48; }).map((b) => b.innerText)")
        .unwrap();
    assert_eq!(small, serde_json::json!([]));
    let size = page.ask("parseFloat(getComputedStyle(document.querySelector('.site .fact .value')).fontSize)").unwrap();
    assert!(size.as_f64().unwrap() >= 24.0, "{size} px");
}

#[test]
fn rock_found_in_a_hole_says_what_changes_before_it_is_written_and_can_be_taken_back() {
    let (_served, mut page) = on_site();
    page.tap(&element("round-posts")).unwrap();
    let price = "document.querySelector('[data-test=figure-price] .value').innerText";
    let before = page.ask(price).unwrap();
    page.tap(&element("not-so")).unwrap();
    page.wait_for(&element("find")).unwrap();
    page.tap(&element("find-write")).unwrap();
    page.wait("document.querySelector('[data-test=find-wrong]').innerText.length > 5", "a missing depth is asked for")
        .unwrap();
    page.fill(&element("find-depth"), "250 mm").unwrap();
    page.tap(&element("find-look")).unwrap();
    page.wait("document.querySelectorAll('[data-test=find] li').length > 0", "what would change is said").unwrap();
    page.shot("find").unwrap();
    assert_eq!(page.ask(price).unwrap(), before, "nothing is changed by asking");
    page.tap(&element("find-write")).unwrap();
    page.wait_for(&element("toast")).unwrap();
    page.tap(".site [aria-label=\"Undo\"]").unwrap();
    page.wait(&format!("{price} === {before}"), "the find is taken back").unwrap();
    page.content().unwrap();
}
