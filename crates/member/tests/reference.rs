//! Do the workings of posts, timber and fixings give the published figures?

use groundhold_member::WORKINGS;
use groundhold_reference::{complaints, read};

const POSTS: &str = include_str!("../../../reference/posts.toml");
const TIMBER: &str = include_str!("../../../reference/timber.toml");
const FIXINGS: &str = include_str!("../../../reference/fixings.toml");
const STEEL: &str = include_str!("../../../reference/steel.toml");
const CONCRETE: &str = include_str!("../../../reference/concrete.toml");
const MASONRY: &str = include_str!("../../../reference/masonry.toml");
const ANCHORS: &str = include_str!("../../../reference/anchors.toml");

#[track_caller]
fn fine(text: &str) {
    let said = complaints(text, WORKINGS);
    assert!(said.is_empty(), "{}", said.join("\n"));
}

#[test]
fn posts_give_the_published_figures() {
    fine(POSTS);
}

#[test]
fn timber_gives_the_published_figures() {
    fine(TIMBER);
}

#[test]
fn fixings_give_the_published_figures() {
    fine(FIXINGS);
}

#[test]
fn steel_gives_the_published_figures() {
    fine(STEEL);
}

#[test]
fn concrete_gives_the_published_figures() {
    fine(CONCRETE);
}

#[test]
fn masonry_panels_and_stone_give_the_published_figures() {
    fine(MASONRY);
}

#[test]
fn deadmen_and_grids_give_the_published_figures() {
    fine(ANCHORS);
}

#[test]
fn every_working_has_a_reference_case_and_its_own_name() {
    let cases: Vec<_> =
        [POSTS, TIMBER, FIXINGS, STEEL, CONCRETE, MASONRY, ANCHORS].iter().flat_map(|t| read(t).unwrap()).collect();
    let mut names = std::collections::BTreeSet::new();
    for w in WORKINGS {
        assert!(names.insert(w.name), "{} stands twice", w.name);
        assert!(cases.iter().any(|c| c.working == w.name), "{} has no case", w.name);
    }
}
