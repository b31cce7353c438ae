//! Can a crew work from the page in a trench: one thing per screen, tick, undo, and a find when it is not so?

use crate::SERVER;
use groundhold_web_tests::{PHONE, Page, Screen, Served, element};

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

#[test]
fn the_slope_is_read_from_how_the_phone_lies() {
    let (_served, mut page) = on_site();
    page.tap(&element("round-slope")).unwrap();
    page.wait_for(&element("slope-dial")).unwrap();
    let told = page.text(&element("slope-dial")).unwrap();
    assert!(!told.contains("per cent") || told.contains("0.0"), "nothing was measured yet: {told}");
    // Chromium tells tenths of a degree; the tangent of 2.9 degrees is 0.05066, which is one in 19.74.
    let lies = serde_json::json!({ "alpha": 0.0, "beta": 2.9, "gamma": 0.0 });
    page.call("DeviceOrientation.setDeviceOrientationOverride", lies).unwrap();
    page.wait("document.querySelector('[data-test=slope-dial]').innerText.includes('1:19.7')", "it is one in 19.7")
        .unwrap();
    let told = page.text(&element("slope-dial")).unwrap();
    assert!(told.contains("2.9°") && told.contains("5.1 %"), "{told}");
    page.shot("site-slope-read").unwrap();
    page.content().unwrap();
}

#[test]
fn site_mode_is_whole_on_a_phone_held_sideways() {
    let (_served, mut page) = on_site();
    page.size(Screen { name: "sideways", width: 844, height: 390, touch: true }).unwrap();
    page.wait("innerWidth === 844", "the window has the new size").unwrap();
    page.tap(&element("round-posts")).unwrap();
    let cut = page
        .ask("[...document.querySelectorAll('.site button, .site .fact .value')].filter((e) => { const r = e.getBoundingClientRect(); return r.left < 0 || r.right > innerWidth + 0.5 || (e.tagName === 'BUTTON' && (r.top < 0 || r.bottom > innerHeight + 0.5)); }).map((e) => e.innerText)")
        .unwrap();
    assert_eq!(cut, serde_json::json!([]), "out of sight");
    page.shot("site").unwrap();
    page.tap(&element("tick")).unwrap();
    page.wait("document.querySelector('[data-test=step]').innerText.includes('2 of')", "the next thing is shown")
        .unwrap();
    page.content().unwrap();
}
