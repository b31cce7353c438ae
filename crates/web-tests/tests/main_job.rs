//! From nothing to a cutting list, by touch and by keyboard: the whole way a person goes with it.
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_web_tests::{DESK, PHONE, Page, Served, element};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

/// The cutting list as it is read: every bar with what is cut from it.
fn cutting_list(page: &mut Page) -> Vec<String> {
    page.wait_for(".cut-bar").unwrap();
    let bars = page.ask("[...document.querySelectorAll('.cut-bar')].map((e) => e.innerText)").unwrap();
    bars.as_array().unwrap().iter().map(|b| b.as_str().unwrap().to_string()).collect()
}

fn is_a_cutting_list(bars: &[String]) {
    assert!(!bars.is_empty());
    assert!(bars.iter().all(|b| b.contains('×') && b.contains("left over")), "{bars:?}");
}

#[test]
fn by_touch_from_two_numbers_to_a_cutting_list() {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, PHONE).unwrap();
    page.tap(&element("tab-job")).unwrap();
    page.fill(&element("new-name"), "Bank behind the shed").unwrap();
    page.fill(&element("new-fall"), "0.9 m").unwrap();
    page.fill(&element("new-over"), "23 ft").unwrap();
    page.tap(&element("new-slope")).unwrap();
    page.wait(
        "document.querySelector('[data-test=job-name]').innerText === 'Bank behind the shed'",
        "the new job is open",
    )
    .unwrap();
    page.tap(&element("tab-ground")).unwrap();
    page.wait_for(&element("pick-W1")).unwrap();
    page.tap(&element("pick-W1")).unwrap();
    page.fill(&element("field-W1-spec.spacing"), "1 m").unwrap();
    page.strike("Enter", false).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the spacing is taken").unwrap();
    page.tap(&element("tab-findings")).unwrap();
    page.wait_for(&element("findings")).unwrap();
    page.tap(&element("tab-order")).unwrap();
    let bars = cutting_list(&mut page);
    is_a_cutting_list(&bars);
    page.middle(".cut-bar").unwrap();
    page.shot("cutting-list").unwrap();
    page.content().unwrap();
}

#[test]
fn by_keyboard_from_two_numbers_to_a_cutting_list() {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, DESK).unwrap();
    page.walk_to(&element("tab-job")).unwrap();
    page.strike("Enter", false).unwrap();
    for (field, text) in [("new-name", "Bank behind the shed"), ("new-fall", "0.9 m"), ("new-over", "7 m")] {
        page.walk_to(&element(field)).unwrap();
        page.ask("document.activeElement.select()").unwrap();
        page.write(text).unwrap();
    }
    page.walk_to(&element("new-slope")).unwrap();
    page.strike("Enter", false).unwrap();
    page.wait(
        "document.querySelector('[data-test=job-name]').innerText === 'Bank behind the shed'",
        "the new job is open",
    )
    .unwrap();
    page.walk_to(&element("tab-ground")).unwrap();
    page.strike("Enter", false).unwrap();
    page.walk_to(&element("pick-W1")).unwrap();
    page.strike("Space", false).unwrap();
    page.walk_to(&element("field-W1-spec.spacing")).unwrap();
    page.ask("document.activeElement.select()").unwrap();
    page.write("1 m").unwrap();
    page.strike("Enter", false).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the spacing is taken").unwrap();
    page.walk_to(&element("tab-order")).unwrap();
    page.strike("Enter", false).unwrap();
    is_a_cutting_list(&cutting_list(&mut page));
    page.content().unwrap();
}

#[test]
fn a_level_book_is_booked_with_the_large_keys_and_reduces_as_one_types() {
    let served = Served::start(SERVER, None).unwrap();
    let mut page = Page::open(&served.address, PHONE).unwrap();
    page.tap(&element("tab-job")).unwrap();
    page.fill(&element("new-name"), "Levels only").unwrap();
    page.tap(&element("new-empty")).unwrap();
    page.wait("document.querySelector('[data-test=job-name]').innerText === 'Levels only'", "the new job is open")
        .unwrap();
    page.tap(&element("tab-measure")).unwrap();
    let keyed = |page: &mut Page, keys: &str, kind: &str| {
        page.tap_named(kind).unwrap();
        for key in keys.chars() {
            page.tap(&format!(".keys [aria-label=\"{key}\"]")).unwrap();
        }
        page.tap(&element("book-enter")).unwrap();
        page.wait("document.querySelector('[data-test=book-reading]').value === ''", "the reading is booked").unwrap();
    };
    page.fill(&element("book-station"), "A").unwrap();
    keyed(&mut page, "1.500", "Back");
    page.fill(&element("book-station"), "1").unwrap();
    keyed(&mut page, "2.100", "Between");
    let levels =
        page.ask("[...document.querySelectorAll('.book td.level')].map((e) => parseFloat(e.innerText))").unwrap();
    let levels: Vec<f64> = levels.as_array().unwrap().iter().filter_map(serde_json::Value::as_f64).collect();
    assert_eq!(levels.len(), 2, "{levels:?}");
    assert!(
        (levels[0] - levels[1] - 0.6).abs() < 1e-9,
        "a reading larger by 0.600 is a level lower by 0.600: {levels:?}"
    );
    page.fill(&element("book-reading"), "wet").unwrap();
    page.tap(&element("book-enter")).unwrap();
    page.wait("document.querySelector('#book-wrong').innerText.includes('wet')", "what is wrong stands beside it")
        .unwrap();
    page.shot("level-book").unwrap();
    page.content().unwrap();
}
