//! Do points come in by tapping, by tape and from a file, and does each say what is wrong with it?

use std::fs;

use crate::open;
use groundhold_web_tests::{DESK, PHONE, Page, element, folder};

fn point_is_in(page: &mut Page, name: &str) {
    page.wait(
        &format!("document.querySelector('[data-test=toast]')?.innerText.includes('Point {name} is in')"),
        "the page says that the point is in",
    )
    .unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "it can be undone").unwrap();
}

#[test]
fn a_point_tapped_on_the_drawing_comes_in_with_its_place_and_level() {
    let (_served, mut page) = open(PHONE);
    page.tap(&element("tab-measure")).unwrap();
    page.tap(&element("tap-point")).unwrap();
    let (x, y) = page.middle(&element("sight")).unwrap();
    page.tap_at(x + 11.0, y + 17.0).unwrap();
    let name = "document.querySelector('[data-test=point-name]').value";
    page.wait(&format!("{name} !== ''"), "the tap fills in a name and a place").unwrap();
    let name = page.ask(name).unwrap().as_str().unwrap().to_string();
    assert_ne!(page.ask("document.querySelector('[data-test=point-along]').value").unwrap(), "");
    page.fill(&element("point-level"), "330 ft 8 in").unwrap();
    page.tap(&element("point-in")).unwrap();
    point_is_in(&mut page, &name);
    page.content().unwrap();
}

#[test]
fn a_point_tied_by_tape_from_two_pegs_comes_in_and_an_impossible_tie_is_told() {
    let (_served, mut page) = open(DESK);
    page.tap(&element("tab-measure")).unwrap();
    let ties = "[...document.querySelectorAll('[data-test=points] .field label')].filter((l) => l.innerText.startsWith('Tape from')).map((l) => l.querySelector('input'))";
    assert!(page.ask(&format!("{ties}.length")).unwrap().as_u64().unwrap() >= 2, "there are two pegs to tie from");
    page.ask(&format!("{ties}.forEach((e, i) => e.setAttribute('data-tie', i))")).unwrap();
    // Its level comes from the level book; a level beside tapes is refused.
    page.fill(&element("point-name"), "T1").unwrap();
    // Two tapes too short to meet.
    page.fill("[data-tie=\"0\"]", "10 mm").unwrap();
    page.fill("[data-tie=\"1\"]", "10 mm").unwrap();
    page.tap(&element("point-in")).unwrap();
    page.wait(
        "document.querySelector('[data-test=points] [role=alert]').innerText.length > 10",
        "what is wrong is told",
    )
    .unwrap();
    assert_eq!(
        page.ask("document.querySelector('[data-test=point-name]').value").unwrap(),
        "T1",
        "what was typed stays"
    );
    page.fill("[data-tie=\"0\"]", "9 m").unwrap();
    page.fill("[data-tie=\"1\"]", "9 m").unwrap();
    page.tap(&element("point-in")).unwrap();
    point_is_in(&mut page, "T1");
    page.content().unwrap();
}

#[test]
fn a_table_is_taken_in_from_a_file_and_one_with_foreign_columns_is_refused_with_a_reason() {
    let (_served, mut page) = open(DESK);
    let dir = folder("table").unwrap();
    let (good, bad) = (dir.join("spots.csv"), dir.join("foreign.csv"));
    fs::write(&good, "point,east,north,level\nQ1,1 m,1 m,100.2 m\nQ2,2 m,8 m,101.1 m\nQ3,9 m,5 m,100.9 m\n").unwrap();
    fs::write(&bad, "colour,taste\nred,sweet\n").unwrap();
    page.tap(&element("tab-measure")).unwrap();
    page.choose_files(&element("import-table"), &[&bad]).unwrap();
    page.wait("document.querySelector('.toast.bad')?.innerText.includes('expected the columns')", "it is refused")
        .unwrap();
    assert_eq!(page.ask("document.querySelector('[data-test=undo]').disabled").unwrap(), true);
    page.choose_files(&element("import-table"), &[&good]).unwrap();
    page.wait("!document.querySelector('[data-test=undo]').disabled", "the table is taken in").unwrap();
    page.wait(
        "document.querySelector('[data-test=toast]')?.innerText.includes('was taken in as')",
        "and the page says so",
    )
    .unwrap();
    fs::remove_dir_all(&dir).unwrap();
    page.content().unwrap();
}
