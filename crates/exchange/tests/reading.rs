//! What the demo job and broken job files are read as.

use groundhold_exchange::{Read, read_job};
use proptest::prelude::*;

const JOB: &str = include_str!("../../../demo/job.toml");

fn table(name: &str) -> Result<String, String> {
    match name {
        "levels.csv" => Ok(include_str!("../../../demo/levels.csv").into()),
        "positions.csv" => Ok(include_str!("../../../demo/positions.csv").into()),
        "prices.csv" => Ok(include_str!("../../../demo/prices.csv").into()),
        other => Err(format!("there is no `{other}`")),
    }
}

fn said(text: &str) -> Vec<String> {
    let Read { problems, .. } = read_job("job.toml", text, &table);
    problems.iter().map(ToString::to_string).collect()
}

/// Changes one piece of the demo job and gives the first line of every problem.
fn after(from: &str, to: &str) -> Vec<String> {
    assert!(JOB.contains(from), "the demo has no {from}");
    said(&JOB.replacen(from, to, 1)).iter().map(|s| s.lines().next().unwrap_or_default().to_string()).collect()
}

#[test]
fn the_demo_is_read_without_a_problem_and_whole() {
    let read = read_job("job.toml", JOB, &table);
    assert_eq!(read.problems, []);
    let job = read.job.unwrap();
    assert_eq!((job.pads.len(), job.walls.len(), job.flights.len(), job.ramps.len(), job.near.len()), (1, 2, 1, 1, 3));
    assert_eq!(job.measure.book.len(), 67);
    assert_eq!(job.measure.positions.len(), 62);
    assert!(job.order.prices.len() > 15);
}

#[test]
fn every_kind_of_slip_is_said_with_its_place() {
    let cases = [
        ("level   = \"101.080 m\"", "level   = \"101.080\"", "[[pad]] P1: level: found `101.080`", "unit is missing"),
        ("apron   = \"0.6 m\"", "aprn    = \"0.6 m\"", "[[pad]] P1: there is no `aprn`", "did you mean `apron`?"),
        ("apron   = \"0.6 m\"", "apron   = \"-0.6 m\"", "apron: found `-0.6 m`", "from 0 to 10 m"),
        ("apron   = \"0.6 m\"", "apron   = 0.6", "apron: found a number without a unit", "with its unit"),
        ("spacing = \"1.2 m\"", "# none", "`spacing` (largest distance of posts) is missing", "1.2 m"),
        ("to    = \"P1\"", "to    = \"P7\"", "there is no pad `P7`", "known are P1"),
        ("id      = \"W2\"", "id      = \"W1\"", "`W1` stands twice", "one thing"),
        ("on    = \"P1\"", "on    = \"P9\"", "there is no `P9`", "P1"),
        (
            "book      = \"levels.csv\"",
            "book      = \"level.csv\"",
            "the file `level.csv` cannot be read",
            "there is no",
        ),
        ("[\"16\", \"17\",", "[\"16\", \"99\",", "point `99` is not in the position book", ""),
        ("125x125 UC4 C24", "125x125 UC4", "without a strength class", "C24"),
        ("units    = \"metric\"", "units    = \"cubits\"", "found `cubits`", "metric, feet"),
        ("schema = 1", "schema = 2", "schema: found 2", "from 1 to 1"),
        ("retains = \"left\"", "retains = \"north\"", "found `north`", "left, right"),
    ];
    for (from, to, part, hint) in cases {
        let all = after(from, to);
        let found = all.iter().find(|s| s.contains(part) && s.contains(hint));
        assert!(found.is_some(), "{to}: expected `{part}` … `{hint}`, found {all:#?}");
        assert!(found.unwrap().starts_with("job.toml:"), "{found:?}");
    }
}

#[test]
fn a_wall_and_a_pad_that_cross_themselves_are_refused() {
    let all = after(
        "line    = [[\"2.4 m\", \"4.4 m\"], [\"2.4 m\", \"3.6 m\"], [\"9.6 m\", \"3.6 m\"], [\"9.6 m\", \"4.4 m\"]]",
        "line    = [[\"2 m\", \"4 m\"], [\"8 m\", \"4 m\"], [\"8 m\", \"6 m\"], [\"4 m\", \"6 m\"], [\"4 m\", \"3 m\"]]",
    );
    assert!(all.iter().any(|s| s.contains("may not cross itself")), "{all:?}");
    let all = after(
        "[[\"3.0 m\", \"4.2 m\"], [\"9.0 m\", \"4.2 m\"], [\"9.0 m\", \"8.7 m\"], [\"3.0 m\", \"8.7 m\"]]",
        "[[\"3.0 m\", \"4.2 m\"], [\"9.0 m\", \"8.7 m\"], [\"9.0 m\", \"4.2 m\"], [\"3.0 m\", \"8.7 m\"]]",
    );
    assert!(all.iter().any(|s| s.contains("give the corners in order")), "{all:?}");
}

#[test]
fn noise_is_refused_once_and_quickly() {
    let noise: String =
        (0u32..10 << 20).map(|i| char::from((i.wrapping_mul(2_654_435_761) >> 24) as u8 % 94 + 33)).collect();
    let all = said(&noise);
    assert_eq!(all.len(), 1);
    assert!(all[0].contains("bytes"), "{}", all[0]);
    let all = said(&noise[..100_000]);
    assert_eq!(all.len(), 1);
    assert!(all[0].contains("not TOML"), "{}", all[0]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_edit_of_the_demo_is_read_or_refused_and_never_panics(at in 0usize..6000, cut in 0usize..40, put in "\\PC{0,12}") {
        let start = (0..=at.min(JOB.len())).rev().find(|i| JOB.is_char_boundary(*i)).unwrap();
        let end = (start..=(start + cut).min(JOB.len())).rev().find(|i| JOB.is_char_boundary(*i)).unwrap();
        let text = format!("{}{put}{}", &JOB[..start], &JOB[end..]);
        let _ = said(&text);
    }

    #[test]
    fn any_text_is_read_or_refused_and_never_panics(text in "\\PC{0,400}") {
        let _ = said(&text);
    }
}
