//! Is the demo drawn, can everyone use it, and does everything move with the finger?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_web_tests::{DESK, Outcome, PHONE, Page, Screen, Served, element, judge};

const SERVER: &str = env!("CARGO_BIN_EXE_keep-serving");

fn open(screen: Screen) -> (Served, Page) {
    let served = Served::start(SERVER, None).unwrap();
    let page = Page::open(&served.address, screen).unwrap();
    (served, page)
}

fn figure(page: &mut Page, name: &str) -> String {
    page.text(&format!("{} .value", element(&format!("figure-{name}")))).unwrap()
}

/// Where an element of the job lies on the drawing: a place on its outline.
fn on_drawing(page: &mut Page, id: &str) -> (f64, f64) {
    let place = page
        .ask(&format!(
            "(() => {{
                const svg = document.querySelector('svg.ground').getBoundingClientRect();
                const shapes = document.querySelectorAll('svg.ground [data-element=\"{id}\"] :is(path, line, polyline, polygon)');
                for (const s of shapes) for (let i = 1; i < 40; i++) {{
                    const p = s.getPointAtLength(s.getTotalLength() * i / 40).matrixTransform(s.getScreenCTM());
                    if (p.x < svg.left || p.x > svg.right || p.y < svg.top || p.y > svg.bottom) continue;
                    const hit = document.elementFromPoint(p.x, p.y)?.closest('[data-element]');
                    if (hit?.getAttribute('data-element') === '{id}') return [p.x, p.y];
                }}
                return null;
            }})()"
        ))
        .unwrap();
    (place[0].as_f64().unwrap_or_else(|| panic!("{id} cannot be touched on the drawing")), place[1].as_f64().unwrap())
}

#[test]
fn the_demo_is_drawn_on_phone_and_desk_without_a_complaint() {
    for screen in [PHONE, DESK] {
        let (_served, mut page) = open(screen);
        assert!(page.text(&element("job-name")).unwrap().len() > 3);
        for id in ["W1", "P1", "S1"] {
            assert!(page.count(&format!("svg.ground [data-element=\"{id}\"]")).unwrap() > 0, "{id} is not drawn");
        }
        for name in ["held", "spoil", "price", "days"] {
            let shown = figure(&mut page, name);
            assert!(shown.chars().any(|c| c.is_ascii_digit()), "{name}: `{shown}`");
        }
        let wide = page.ask("document.documentElement.scrollWidth").unwrap();
        assert_eq!(wide, screen.width, "the page is wider than the screen");
        page.shot("drawing").unwrap();
        page.content().unwrap();
    }
}

#[test]
fn nothing_jumps_while_the_page_is_being_set_up() {
    let (served, mut page) = open(PHONE);
    page.call("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source":
        "window.shift = 0; new PerformanceObserver((l) => l.getEntries().forEach((e) => { if (!e.hadRecentInput) window.shift += e.value; })).observe({ type: 'layout-shift', buffered: true });"
    })).unwrap();
    page.go(&served.address).unwrap();
    page.wait("new Promise((r) => setTimeout(() => r(true), 1500))", "a moment has gone by").unwrap();
    let shift = page.ask("window.shift").unwrap().as_f64().unwrap();
    assert!(shift < 0.1, "layout shifted by {shift}; below 0.1 is called good in the Web Vitals");
}

#[test]
fn no_part_of_the_page_breaks_the_rules_of_wcag_2_2_aa_in_any_look() {
    for screen in [PHONE, DESK] {
        let (_served, mut page) = open(screen);
        let mut wrong = vec![];
        for tab in ["ground", "measure", "findings", "order", "job"] {
            page.tap(&element(&format!("tab-{tab}"))).unwrap();
            page.shot(&format!("tab-{tab}")).unwrap();
            wrong.extend(judge(&mut page).unwrap().into_iter().map(|w| format!("{} {tab}: {w}", screen.name)));
        }
        for look in ["dark", "light", "contrast"] {
            page.tap(&element("tab-job")).unwrap();
            page.tap(&element(&format!("look-{look}"))).unwrap();
            page.tap(&element("tab-ground")).unwrap();
            page.tap(&element("pick-W1")).unwrap();
            page.shot(&format!("look-{look}")).unwrap();
            wrong.extend(judge(&mut page).unwrap().into_iter().map(|w| format!("{} {look}: {w}", screen.name)));
            page.tap(&element("all-things")).unwrap();
        }
        page.tap(&element("tab-site")).unwrap();
        page.wait_for(&element("step")).unwrap();
        wrong.extend(judge(&mut page).unwrap().into_iter().map(|w| format!("{} site: {w}", screen.name)));
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        page.content().unwrap();
    }
}

/// Chooses a wall on the drawing and drags one of its grips; the figures are compared at every station.
fn drag_a_wall(page: &mut Page) -> Outcome<()> {
    let (x, y) = on_drawing(page, "W2");
    page.tap_at(x, y)?;
    page.wait_for(&element("grip"))?;
    let before: Vec<String> = ["held", "spoil", "price"].iter().map(|n| figure(page, n)).collect();
    let undo = format!("document.querySelector('{}').disabled", element("undo").replace('"', "\\\""));
    assert_eq!(page.ask(&undo)?, true, "nothing was done yet");
    let (x, y) = page.middle(&element("grip"))?;
    page.press(x, y)?;
    let mut moved = false;
    for step in 1..=14 {
        let by = f64::from(step) * 3.0;
        page.slide(x + by, y - by)?;
        let now: Vec<String> = ["held", "spoil", "price"].iter().map(|n| figure(page, n)).collect();
        moved |= now.iter().zip(&before).filter(|(a, b)| a != b).count() >= 2;
    }
    assert!(moved, "heights, spoil or price do not move while the finger is down: {before:?}");
    page.lift(x + 42.0, y - 42.0)?;
    page.wait(&format!("!({undo})"), "the drag can be undone")?;
    let after = figure(page, "price");
    assert_ne!(after, before[2], "the price is what it was");
    page.tap(&element("undo"))?;
    let back = format!("document.querySelector('[data-test=figure-price] .value').innerText === {:?}", before[2]);
    page.wait(&back, "undo brings the old price back")?;
    page.tap(&element("redo"))?;
    let again = format!("document.querySelector('[data-test=figure-price] .value').innerText === {after:?}");
    page.wait(&again, "redo brings the new price back")?;
    page.content()
}

#[test]
fn a_wall_dragged_by_a_finger_takes_heights_spoil_and_price_along_and_can_be_undone() {
    let (_served, mut page) = open(PHONE);
    drag_a_wall(&mut page).unwrap();
    page.shot("dragged").unwrap();
}

#[test]
fn a_wall_dragged_by_a_mouse_takes_heights_spoil_and_price_along_and_can_be_undone() {
    let (_served, mut page) = open(DESK);
    drag_a_wall(&mut page).unwrap();
    page.shot("dragged").unwrap();
}

#[test]
fn a_wall_is_moved_by_the_keyboard_alone() {
    let (_served, mut page) = open(DESK);
    page.walk_to(&element("pick-W2")).unwrap();
    page.strike("Enter", false).unwrap();
    page.wait_for(&element("grip")).unwrap();
    let before = figure(&mut page, "price");
    page.ask("document.querySelector('[data-test=drawing]').focus()").unwrap();
    page.strike("n", false).unwrap();
    for _ in 0..3 {
        page.strike("ArrowUp", true).unwrap();
    }
    let moved = format!("document.querySelector('[data-test=figure-price] .value').innerText !== {before:?}");
    page.wait(&moved, "the price follows the arrow keys").unwrap();
    page.content().unwrap();
}

#[test]
fn two_fingers_and_the_wheel_zoom_the_drawing_about_where_they_are() {
    let (_served, mut page) = open(PHONE);
    let width = |page: &mut Page| {
        page.ask("document.querySelector('svg.ground').viewBox.baseVal.width").unwrap().as_f64().unwrap()
    };
    let (x, y) = page.middle(&element("sight")).unwrap();
    let before = width(&mut page);
    page.touch("touchStart", &[(x - 30.0, y), (x + 30.0, y)]).unwrap();
    for step in 1..=6 {
        let apart = 30.0 + f64::from(step) * 10.0;
        page.touch("touchMove", &[(x - apart, y), (x + apart, y)]).unwrap();
    }
    page.touch("touchEnd", &[]).unwrap();
    let after = width(&mut page);
    assert!((after / before - 30.0 / 90.0).abs() < 0.05, "three times larger, from {before} to {after}");

    let (_served, mut page) = open(DESK);
    let before = width(&mut page);
    let (x, y) = page.middle(&element("sight")).unwrap();
    page.wheel(x, y, -200.0).unwrap();
    page.wait(
        &format!("document.querySelector('svg.ground').viewBox.baseVal.width < {before} * 0.8"),
        "the wheel zooms",
    )
    .unwrap();
    page.tap(&element("fit")).unwrap();
    page.wait(
        &format!("Math.abs(document.querySelector('svg.ground').viewBox.baseVal.width - {before}) < 0.01"),
        "all is shown again",
    )
    .unwrap();
    page.content().unwrap();
}

#[test]
fn the_page_fits_every_screen_from_360_pixels_to_4k() {
    let (_served, mut page) = open(PHONE);
    for (name, width, height) in [("small", 360, 640), ("sideways", 844, 390), ("wide", 3840, 2160)] {
        page.size(Screen { name, width, height, touch: width < 1000 }).unwrap();
        page.wait(&format!("innerWidth === {width}"), "the window has the new size").unwrap();
        assert_eq!(page.ask("document.documentElement.scrollWidth").unwrap(), width, "{name}: wider than the screen");
        let (_, y) = page.middle(&element("fit")).unwrap();
        assert!(y < f64::from(height), "{name}: the drawing's buttons are out of sight");
        page.shot("size").unwrap();
    }
    page.content().unwrap();
}
