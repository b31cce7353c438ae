//! Does a finding say what its remedy costs before it is taken, and does every figure open to its working?

use crate::{figure, figure_is_not, open};
use groundhold_web_tests::{DESK, PHONE, Page, element};

/// The first number in a text, with its sign in words: "saves 3.20 EUR" is -3.20.
fn amount(text: &str) -> f64 {
    let digits: String =
        text.chars().skip_while(|c| !c.is_ascii_digit()).take_while(|c| c.is_ascii_digit() || *c == '.').collect();
    let size: f64 = digits.parse().unwrap_or_else(|_| panic!("no amount in `{text}`"));
    if text.contains("saves") { -size } else { size }
}

/// A figure of money as a number, whatever stands between its thousands.
pub fn money(text: &str) -> f64 {
    let digits: String = text.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
    digits.parse().unwrap_or_else(|_| panic!("no money in `{text}`"))
}

fn remedies_are_costed(page: &mut Page) {
    page.wait(
        "document.querySelector('[data-test=remedy] .cost') && ![...document.querySelectorAll('[data-test=remedy] .cost')].some((e) => e.innerText.includes('costing'))",
        "every remedy says what it costs",
    )
    .unwrap();
}

#[test]
fn a_remedy_costs_what_it_says_before_it_is_pressed() {
    let (_served, mut page) = open(PHONE);
    page.tap(&element("tab-findings")).unwrap();
    remedies_are_costed(&mut page);
    // The first that can be taken and changes the price.
    let picked = page
        .ask(
            "(() => {
                const e = [...document.querySelectorAll('[data-test=remedy]')].find((e) => /[1-9]/.test(e.querySelector('.cost').innerText));
                e?.setAttribute('data-picked', '');
                return e?.querySelector('.cost').innerText ?? '';
            })()",
        )
        .unwrap();
    let promised = amount(picked.as_str().unwrap());
    let before = figure(&mut page, "price");
    page.shot("remedies").unwrap();
    page.tap("[data-picked]").unwrap();
    page.wait(&figure_is_not("price", &before), "the price follows").unwrap();
    let after = figure(&mut page, "price");
    let paid = money(&after) - money(&before);
    assert!((paid - promised).abs() < 1.01, "promised {promised:.2}, and the price went from {before} to {after}");
    page.tap(&element("undo")).unwrap();
    page.wait(&crate::figure_is("price", &before), "undo takes the remedy back").unwrap();
    page.content().unwrap();
}

#[test]
fn the_working_behind_a_check_a_finding_and_a_figure_is_one_touch_away_with_its_source() {
    let (_served, mut page) = open(DESK);
    let opens = |page: &mut Page, key: &str| {
        page.tap(key).unwrap();
        page.wait("document.querySelector('dialog[open] .working-line')", &format!("{key} opens a working")).unwrap();
        let source = page.text("dialog[open] .source").unwrap();
        assert!(source.len() > "Source: ".len() + 8, "{key}: {source}");
        page.shot("working").unwrap();
        page.tap_named("Close").unwrap();
        page.wait("!document.querySelector('dialog[open]')", "it is closed again").unwrap();
    };
    for figure in ["spoil", "days"] {
        opens(&mut page, &element(&format!("figure-{figure}")));
    }
    page.tap(&element("pick-W1")).unwrap();
    opens(&mut page, &element("check"));
    page.tap(&element("tab-findings")).unwrap();
    opens(&mut page, &element("open-working"));
    page.tap(&element("tab-order")).unwrap();
    opens(&mut page, "[data-test=quote] .btn.plain");
    page.content().unwrap();
}
