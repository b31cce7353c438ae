//! Do the other views live: elevation and section linked with the plan, beads of levels, the ground in three dimensions?

use crate::drawing::on_drawing;
use crate::{SERVER, figure, figure_is, figure_is_not, open};
use groundhold_web_tests::{Chromium, DESK, PHONE, Page, Served, element};
use std::cell::RefCell;
use std::rc::Rc;

#[test]
fn a_post_touched_in_the_elevation_is_lit_in_the_plan_and_the_other_way_round() {
    let (_served, mut page) = open(DESK);
    page.tap(&element("pick-W1")).unwrap();
    page.wait("document.querySelector('[data-test=views] [data-element*=\" post \"]')", "the elevation has its posts")
        .unwrap();
    let post =
        page.ask("document.querySelector('[data-test=views] [data-element*=\" post \"]').dataset.element").unwrap();
    let post = post.as_str().unwrap().to_string();
    page.tap(&format!("[data-test=views] [data-element=\"{post}\"]")).unwrap();
    let lit = |place: &str| {
        format!(
            "document.querySelector('{place} [data-element=\"{post}\"].lit, {place} [data-element=\"{post}\"] .lit')"
        )
    };
    page.wait(&lit("svg.ground"), "the post is lit in the plan").unwrap();
    page.wait(&lit("[data-test=views]"), "the post is lit in the elevation").unwrap();
    page.shot("linked").unwrap();
    let (x, y) = on_drawing(&mut page, "P1");
    page.tap_at(x, y).unwrap();
    page.wait("document.querySelector('[data-test=thing] h2').innerText.startsWith('P1')", "the pad is chosen")
        .unwrap();
    let (x, y) = on_drawing(&mut page, "W1");
    page.tap_at(x, y).unwrap();
    page.wait(
        "document.querySelector('[data-test=views] figcaption').innerText.includes('W1')",
        "its elevation is shown",
    )
    .unwrap();
    page.content().unwrap();
}

/// Slides a bead of the staff, and looks at the figures on the way.
fn slide_a_bead(page: &mut Page, bead: &str) {
    let bead = element(&format!("bead-{bead}"));
    page.wait_for(&bead).unwrap();
    let names = ["held", "spoil", "price"];
    let before: Vec<String> = names.iter().map(|n| figure(page, n)).collect();
    let (x, y) = page.middle(&bead).unwrap();
    page.press(x, y).unwrap();
    for step in 1..=10 {
        page.slide(x, y - f64::from(step) * 2.0).unwrap();
    }
    let changed: Vec<String> = names.iter().zip(&before).map(|(n, b)| figure_is_not(n, b)).collect();
    page.wait(&changed.join(" || "), "a figure moves while the bead is slid").unwrap();
    page.lift(x, y - 20.0).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the new level can be undone").unwrap();
    page.tap(&element("undo")).unwrap();
    page.wait(&figure_is("price", &before[2]), "undo brings the old level back").unwrap();
}

#[test]
fn a_pads_level_and_a_walls_top_are_slid_by_a_finger_and_the_figures_go_along() {
    let (_served, mut page) = open(PHONE);
    slide_a_bead(&mut page, "P1");
    slide_a_bead(&mut page, "W1");
    page.content().unwrap();
}

#[test]
fn a_pads_edge_is_dragged_and_keeps_its_direction() {
    let (_served, mut page) = open(DESK);
    page.tap(&element("pick-P1")).unwrap();
    page.wait_for(&element("grip")).unwrap();
    let side = page
        .ask("(() => { const g = [...document.querySelectorAll('[data-test=grip]')].find((g) => g.querySelector('title').textContent.includes('side')); const r = g.querySelector('.knob').getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2, g.querySelector('title').textContent]; })()")
        .unwrap();
    let (x, y) = (side[0].as_f64().unwrap(), side[1].as_f64().unwrap());
    let area = "[...document.querySelectorAll('[data-test=thing] dl div')].find((d) => d.innerText.startsWith('area')).innerText";
    let before = page.ask(area).unwrap();
    page.press(x, y).unwrap();
    for step in 1..=8 {
        page.slide(x + f64::from(step) * 4.0, y + f64::from(step) * 4.0).unwrap();
    }
    page.wait(&format!("{area} !== {before}"), "the area follows the finger").unwrap();
    page.lift(x + 32.0, y + 32.0).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the drag is kept").unwrap();
    let words = page.ask("document.querySelector('[data-test=undo]').getAttribute('aria-label')").unwrap();
    assert!(words.as_str().unwrap().contains("side"), "{words}");
    page.content().unwrap();
}

/// How many different colours the canvas shows, and a sum over its dots.
const LOOK: &str = "new Promise((r) => requestAnimationFrame(() => {
    const c = document.querySelector('[data-test=relief] canvas');
    const small = document.createElement('canvas');
    [small.width, small.height] = [96, 96];
    document.querySelector('[data-test=relief-slider]').dispatchEvent(new Event('input', { bubbles: true }));
    const d = small.getContext('2d');
    d.drawImage(c, 0, 0, 96, 96);
    const dots = new Uint32Array(d.getImageData(0, 0, 96, 96).data.buffer);
    r([new Set(dots).size, dots.reduce((a, b) => (a * 31 + b) >>> 0, 7)]);
}))";

#[test]
fn the_ground_in_three_dimensions_changes_from_before_to_after_with_the_slider_and_turns_by_key() {
    let (_served, mut page) = open(PHONE);
    page.tap(&element("relief-key")).unwrap();
    page.wait_for(&element("relief-slider")).unwrap();
    page.wait(&format!("{LOOK}.then((l) => l[0] > 20)"), "the ground is drawn").unwrap();
    let look = |page: &mut Page| page.ask(LOOK).unwrap()[1].clone();
    page.shot("relief-after").unwrap();
    let after = look(&mut page);
    assert_eq!(look(&mut page), after, "the same ground looks the same twice");
    page.ask("(() => { const s = document.querySelector('[data-test=relief-slider]'); s.value = 0; s.dispatchEvent(new Event('input', { bubbles: true })); })()")
        .unwrap();
    let before = look(&mut page);
    assert_ne!(before, after, "before and after look the same");
    page.shot("relief-before").unwrap();
    page.ask("document.querySelector('[data-test=relief] canvas').focus()").unwrap();
    page.strike("ArrowLeft", false).unwrap();
    assert_ne!(look(&mut page), before, "the arrow keys turn it");
    page.content().unwrap();
}

#[test]
fn without_a_graphics_unit_the_drawing_stays_and_the_page_says_so() {
    let served = Served::start(SERVER, None).unwrap();
    let browser = Rc::new(RefCell::new(Chromium::start().unwrap()));
    let mut page = Page::blank(&browser, PHONE).unwrap();
    page.call("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source":
        "const own = HTMLCanvasElement.prototype.getContext; HTMLCanvasElement.prototype.getContext = function (kind, ...more) { return kind.startsWith('webgl') ? null : own.call(this, kind, ...more); };"
    })).unwrap();
    page.go(&served.address).unwrap();
    page.tap(&element("relief-key")).unwrap();
    page.wait("document.querySelector('[data-test=toast]')?.innerText.includes('3-D')", "the page says so").unwrap();
    assert_eq!(page.count(&element("relief")).unwrap(), 0);
    assert!(page.count("svg.ground [data-element=W1]").unwrap() > 0, "the drawing stays");
    page.content().unwrap();
}

#[test]
fn cut_and_fill_differ_by_hatch_and_not_by_colour_alone() {
    let (_served, mut page) = open(DESK);
    let fills = page
        .ask("['cut', 'fill'].map((c) => [...document.querySelectorAll(`svg.ground .${c}`)].map((e) => getComputedStyle(e).fill)[0] ?? '')")
        .unwrap();
    let (cut, fill) = (fills[0].as_str().unwrap(), fills[1].as_str().unwrap());
    assert!(cut.contains("#hatch-cut") && fill.contains("#hatch-fill"), "{fills}");
    let shapes = page
        .ask("['cut', 'fill'].map((c) => document.querySelector(`#hatch-${c}`).firstElementChild.tagName)")
        .unwrap();
    assert_ne!(shapes[0], shapes[1], "strokes for the one, dots for the other");
}
