//! Does the page remember: undo to the beginning, versions by name, two of them compared on the drawing and in money?

use crate::findings::money;
use crate::{figure, figure_is, figure_is_not, open};
use groundhold_web_tests::{DESK, Page, element};

fn space_posts(page: &mut Page, spacing: &str) {
    let before = figure(page, "price");
    page.fill(&element("field-W1-spec.spacing"), spacing).unwrap();
    page.strike("Enter", false).unwrap();
    page.wait(&figure_is_not("price", &before), "the price follows").unwrap();
}

#[test]
fn every_change_is_taken_back_one_by_one_to_the_beginning_after_a_reload_too() {
    let (_served, mut page) = open(DESK);
    let mut prices = vec![figure(&mut page, "price")];
    page.tap(&element("pick-W1")).unwrap();
    for spacing in ["1.0 m", "0.9 m", "0.8 m", "0.7 m"] {
        space_posts(&mut page, spacing);
        prices.push(figure(&mut page, "price"));
    }
    page.reload().unwrap();
    page.wait(&figure_is("price", &prices[4]), "the reloaded page has every change").unwrap();
    for price in prices[..4].iter().rev() {
        page.tap(&element("undo")).unwrap();
        page.wait(&figure_is("price", price), "undo brings the price before").unwrap();
    }
    page.wait("document.querySelector('[data-test=undo]').disabled", "nothing is left to take back").unwrap();
    for price in &prices[1..] {
        page.tap(&element("redo")).unwrap();
        page.wait(&figure_is("price", price), "redo brings the price after").unwrap();
    }
    page.content().unwrap();
}

#[test]
fn two_versions_are_compared_on_the_drawing_and_in_money() {
    let (_served, mut page) = open(DESK);
    let before = figure(&mut page, "price");
    page.tap(&element("tab-job")).unwrap();
    page.fill(&element("version-name"), "As first thought").unwrap();
    page.tap(&element("keep-version")).unwrap();
    page.wait_for(&element("compare")).unwrap();
    page.tap(&element("tab-ground")).unwrap();
    page.tap(&element("pick-W2")).unwrap();
    page.wait_for(&element("grip")).unwrap();
    let (x, y) = page.middle(&element("grip")).unwrap();
    page.press(x, y).unwrap();
    for step in 1..=6 {
        page.slide(x + f64::from(step) * 5.0, y - f64::from(step) * 5.0).unwrap();
    }
    page.lift(x + 30.0, y - 30.0).unwrap();
    page.wait(&figure_is_not("price", &before), "the price follows the drag").unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the drag is kept").unwrap();
    let now = figure(&mut page, "price");
    page.tap(&element("tab-job")).unwrap();
    page.tap(&element("compare")).unwrap();
    page.wait("document.querySelector('[data-test=compared] tbody tr')", "what differs is listed").unwrap();
    let row =
        page.ask("[...document.querySelector('[data-test=compared] tbody tr').cells].map((c) => c.innerText)").unwrap();
    let cell = |i: usize| row[i].as_str().unwrap().to_string();
    assert!(cell(0).to_lowercase().contains("price"), "{row}");
    // The strip shows whole units of money.
    assert!((money(&cell(1)) - money(&before)).abs() < 0.51, "{row}: that version cost {before}");
    assert!((money(&cell(2)) - money(&now)).abs() < 0.51, "{row}: now it costs {now}");
    assert!(page.count(".other-version path").unwrap() > 0, "the other version is not on the drawing");
    page.shot("compared").unwrap();
    page.tap_named("Go back to it").unwrap();
    page.wait(&figure_is("price", &before), "the version is back").unwrap();
    page.content().unwrap();
}
