//! Can everyone use it? Every screen in every look, on phone and desk, against the rules of WCAG 2.2 AA.

use crate::open;
use groundhold_web_tests::{DESK, Outcome, PHONE, Page, Screen, element, judge};

const LOOKS: [&str; 3] = ["light", "dark", "contrast"];

/// Every screen there is, one after the other; `seen` is called at each with its name.
fn all_screens(page: &mut Page, seen: &mut impl FnMut(&mut Page, &str) -> Outcome<()>) -> Outcome<()> {
    for tab in ["measure", "findings", "order", "job", "ground"] {
        page.tap(&element(&format!("tab-{tab}")))?;
        page.ask("document.querySelectorAll('.panel details').forEach((d) => { d.open = true; })")?;
        seen(page, tab)?;
    }
    page.tap(&element("pick-W1"))?;
    page.wait_for(&element("check"))?;
    seen(page, "wall")?;
    page.tap(&element("check"))?;
    page.wait("document.querySelector('dialog[open] .source')", "the working is open")?;
    seen(page, "working")?;
    page.tap_named("Close")?;
    page.wait("!document.querySelector('dialog[open]')", "the working is closed")?;
    page.tap(&element("all-things"))?;
    page.tap(&element("relief-key"))?;
    page.wait_for(&element("relief-slider"))?;
    seen(page, "relief")?;
    page.tap(&element("relief-key"))?;
    page.tap(&element("tab-site"))?;
    page.wait_for(&element("step"))?;
    seen(page, "site")?;
    page.tap(&element("round-posts"))?;
    page.tap(&element("not-so"))?;
    page.wait_for(&element("find"))?;
    seen(page, "site-find")?;
    page.tap(&element("round-slope"))?;
    page.wait_for(&element("slope-dial"))?;
    seen(page, "site-slope")?;
    page.tap(&element("leave-site"))?;
    page.wait("!document.querySelector('[data-test=site]')", "site mode is left")
}

fn judged(screen: Screen) {
    let (_served, mut page) = open(screen);
    let mut wrong = vec![];
    for look in LOOKS {
        page.tap(&element("tab-job")).unwrap();
        page.tap(&element(&format!("look-{look}"))).unwrap();
        all_screens(&mut page, &mut |page: &mut Page, name: &str| {
            page.shot(&format!("{look}-{name}"))?;
            wrong.extend(judge(page)?.into_iter().map(|w| format!("{} {look} {name}: {w}", screen.name)));
            Ok(())
        })
        .unwrap();
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    page.content().unwrap();
}

#[test]
fn no_screen_breaks_the_rules_of_wcag_2_2_aa_in_any_look_on_a_phone() {
    judged(PHONE);
}

#[test]
fn no_screen_breaks_the_rules_of_wcag_2_2_aa_in_any_look_at_a_desk() {
    judged(DESK);
}

#[test]
fn keys_and_fields_are_large_enough_for_a_finger_on_a_phone() {
    let (_served, mut page) = open(PHONE);
    for tab in ["measure", "findings", "order", "job", "ground"] {
        page.tap(&element(&format!("tab-{tab}"))).unwrap();
        let small = page
            .ask(
                "[...document.querySelectorAll('button, input:not(.unseen), select')].filter((e) => e.checkVisibility())
                    .map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.width > 0 && (r.width < 24 || r.height < 24))
                    .map(([e, r]) => `${e.outerHTML.slice(0, 90)} ${r.width}x${r.height}`)",
            )
            .unwrap();
        assert_eq!(small, serde_json::json!([]), "{tab}: WCAG 2.2, success criterion 2.5.8, asks for 24 pixels");
    }
}
