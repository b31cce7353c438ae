//! Is bad input said with its place and what was expected, and is nothing planned from it?
#![allow(clippy::unwrap_used, missing_docs)]

use groundhold_cases::{DEMO, DEMO_TABLES, all_said, demo, found, has, planned, read};
use groundhold_finding::Severity;
use groundhold_plan::job::{Event, Find, PadLevel};
use groundhold_plan::{Part, Trouble, check, plan};
use groundhold_quantity::{Length, Point};

/// The demo with one of its tables changed.
fn with_table(name: &str, change: impl Fn(&str) -> String) -> Vec<(&'static str, String)> {
    DEMO_TABLES.iter().map(|(n, t)| (*n, if *n == name { change(t) } else { (*t).to_string() })).collect()
}

/// First lines of what reading says, each beginning with file and line.
fn refused(text: &str, tables: &[(&'static str, String)]) -> Vec<String> {
    let tables: Vec<(&str, &str)> = tables.iter().map(|(n, t)| (*n, t.as_str())).collect();
    let problems = read(text, &tables).unwrap_err();
    problems.iter().map(|p| p.to_string().lines().next().unwrap_or_default().to_string()).collect()
}

fn troubles(job: &groundhold_plan::job::Job) -> Vec<Trouble> {
    plan(job).err().unwrap_or_else(|| panic!("it was planned"))
}

#[test]
fn a_level_book_with_a_missing_backsight_is_refused_with_its_row() {
    let mut job = demo();
    let at = job.measure.book.iter().position(|b| b.station == "CP2").unwrap();
    job.measure.book[at].backsight = None;
    let row = job.measure.book[at].row;
    let t = troubles(&job);
    let said = t.iter().find(|t| t.of == Part::LevelBook && t.row == Some(row));
    assert!(
        said.is_some_and(|t| t.says.contains("CP2") && t.says.contains("expected a backsight")),
        "{}",
        all_said(&t)
    );
}

#[test]
fn a_level_book_that_begins_without_a_backsight_is_refused() {
    let mut job = demo();
    job.measure.book[0].backsight = None;
    job.measure.book[0].intermediate = Some(Length::m(1.4));
    let t = troubles(&job);
    assert!(t.iter().any(|t| t.of == Part::LevelBook && t.says.contains("backsight")), "{}", all_said(&t));
}

#[test]
fn a_book_that_does_not_close_is_a_finding_and_not_a_quiet_figure() {
    let mut job = demo();
    let last = job.measure.book.last_mut().unwrap();
    last.foresight = last.foresight.map(|f| f + Length::mm(60.0));
    let p = planned(&job);
    assert!(found(&p, "M-001").iter().any(|f| f.severity == Severity::Stop), "{}", groundhold_cases::said(&p));
}

#[test]
fn a_break_line_that_crosses_another_is_refused_with_the_points() {
    let mut job = demo();
    job.measure.break_lines.push(vec!["1".into(), "62".into()]);
    let t = troubles(&job);
    assert!(t.iter().any(|t| t.says.contains("cross") && t.of == Part::Survey), "{}", all_said(&t));
}

#[test]
fn a_break_line_through_an_unknown_point_is_refused_by_name() {
    let mut job = demo();
    job.measure.break_lines[0].push("ghost".into());
    let t = troubles(&job);
    assert!(t.iter().any(|t| t.says.contains("`ghost`")), "{}", all_said(&t));
}

#[test]
fn a_tape_that_does_not_fit_is_named() {
    let mut job = demo();
    let row = job.measure.positions.iter_mut().find(|r| r.point == "44").unwrap();
    row.ties[0].1 += Length::m(0.5);
    match plan(&job) {
        Ok(p) => {
            let says: Vec<&str> = p
                .findings
                .iter()
                .filter(|f| ["M-005", "M-006"].contains(&f.kind.code))
                .map(|f| f.says.as_str())
                .collect();
            assert!(says.iter().any(|s| s.contains("44")), "{}", groundhold_cases::said(&p));
        }
        Err(t) => assert!(t.iter().any(|t| t.of == Part::Positions && t.says.contains("44")), "{}", all_said(&t)),
    }
}

#[test]
fn a_pad_outside_the_surveyed_ground_is_a_stop_and_the_rest_holds() {
    for shift in [6.0, 30.0] {
        let mut job = demo();
        job.pads[0].corners.iter_mut().for_each(|c| *c = Point::m(c.x + shift, c.y));
        let p = planned(&job);
        let f = found(&p, "G-001");
        assert!(
            f.iter().any(|f| f.severity == Severity::Stop && f.place.element == "P1"),
            "{shift}: {}",
            groundhold_cases::said(&p)
        );
        assert_eq!(check(&p), [], "{shift}");
    }
}

#[test]
fn a_pad_level_far_from_the_ground_is_planned_or_refused_but_not_silent() {
    for level in [80.0, 140.0] {
        let mut job = demo();
        job.pads[0].level = PadLevel::At(groundhold_quantity::Level::m(level));
        match plan(&job) {
            Ok(p) => {
                assert_eq!(p.gravest(), Some(Severity::Stop), "{}", groundhold_cases::said(&p));
                assert_eq!(check(&p), []);
            }
            Err(t) => assert!(!t.is_empty()),
        }
    }
}

#[test]
fn a_missing_price_is_a_finding_and_the_quote_says_that_it_is_incomplete() {
    let whole = planned(&demo());
    assert!(whole.quote.is_complete() && !has(&whole, "O-001"), "{:?}", whole.quote.missing);
    for item in ["concrete bag 20 kg", "geotextile", "spoil away", "labour", "board 200x50 UC4 C24"] {
        let mut job = demo();
        job.order.prices.retain(|p| p.item != item);
        let p = planned(&job);
        assert!(found(&p, "O-001").iter().any(|f| f.says.contains(item)), "{item}: {}", groundhold_cases::said(&p));
        assert!(
            !p.quote.is_complete() && p.quote.missing.iter().any(|m| m.contains(item)),
            "{item}: {:?}",
            p.quote.missing
        );
        assert!(p.quote.total < whole.quote.total, "{item}");
        assert_eq!(check(&p), [], "{item}");
    }
}

#[test]
fn without_any_price_everything_but_the_money_is_there() {
    let mut job = demo();
    job.order.prices.clear();
    let p = planned(&job);
    assert!(has(&p, "O-001") && !p.quote.is_complete());
    assert_eq!(p.quote.total.amount(), 0.0);
    assert_eq!(p.walls.len(), planned(&demo()).walls.len());
    assert_eq!(check(&p), []);
}

#[test]
fn slips_in_the_files_are_said_with_file_line_and_expectation() {
    let all: Vec<(&str, String)> = DEMO_TABLES.iter().map(|(n, t)| (*n, (*t).to_string())).collect();
    let job = |from: &str, to: &str| refused(&DEMO.replacen(from, to, 1), &all);
    let table = |name: &'static str, from: &'static str, to: &'static str| {
        refused(DEMO, &with_table(name, |t| t.replacen(from, to, 1)))
    };
    let cases = [
        (job("apron   = \"0.6 m\"", "apron   = \"-0.6 m\""), "job.toml:", "from 0 to 10 m"),
        (job("level   = \"101.080 m\"", "level   = \"101.080\""), "job.toml:", "unit"),
        (
            job(
                "[\"9.6 m\", \"9.4 m\"], [\"9.6 m\", \"6.6 m\"]",
                "[\"9.6 m\", \"9.4 m\"], [\"4.0 m\", \"12 m\"], [\"4.0 m\", \"6.6 m\"]",
            ),
            "job.toml:",
            "may not cross itself",
        ),
        (table("levels.csv", "station,backsight", "station,backsite"), "levels.csv:1:", "backsight"),
        (table("positions.csv", "\n4,", "\n4,7,"), "positions.csv:5:", "expected"),
        (
            table("prices.csv", "item,unit,price,pack", "item,unit,price,colour"),
            "prices.csv:1:",
            "there is no column `colour`",
        ),
        (table("prices.csv", "each,16.20", "each,"), "prices.csv:2:", "has no price"),
        (table("levels.csv", "B,,1.077,,", "B,,x.077,,"), "levels.csv:3:", "expected a number of metres"),
    ];
    for (said, place, expected) in cases {
        assert!(said.iter().any(|s| s.starts_with(place) && s.contains(expected)), "{place} {expected}: {said:#?}");
    }
}

#[test]
fn ten_megabytes_of_noise_in_any_file_are_refused_with_few_words() {
    let noise: String =
        (0u32..10 << 20).map(|i| char::from((i.wrapping_mul(2_654_435_761) >> 24) as u8 % 94 + 33)).collect();
    for (name, _) in DEMO_TABLES {
        let said = refused(DEMO, &with_table(name, |_| noise.clone()));
        assert!((1..200).contains(&said.len()), "{name}: {} problems", said.len());
        assert!(said.iter().any(|s| s.starts_with(name)), "{name}: {said:?}");
    }
    let all: Vec<(&str, String)> = DEMO_TABLES.iter().map(|(n, t)| (*n, (*t).to_string())).collect();
    assert_eq!(refused(&noise, &all).len(), 1);
}

#[test]
fn words_that_no_table_knows_are_refused_with_those_that_it_does() {
    let cases: [(&str, &str, &str); 5] = [
        ("\"silty-clay\"", "\"blue-clay\"", "firm-clay"),
        ("\"working-stress\"", "\"by-eye\"", "en1997-da1"),
        ("\"generic\"", "\"atlantis\"", "nz"),
        ("\"lawn heavy steep\"", "\"moon dust\"", "lawn"),
        ("fill    = \"10-20\"", "fill    = \"marbles\"", "10-20"),
    ];
    for (from, to, known) in cases {
        assert!(DEMO.contains(from), "{from}");
        let job = groundhold_cases::job(&DEMO.replacen(from, to, 1), DEMO_TABLES);
        let t = troubles(&job);
        let word = to.rsplit('"').nth(1).unwrap();
        assert!(t.iter().any(|t| t.says.contains(word) && t.says.contains(known)), "{to}: {}", all_said(&t));
    }
}

#[test]
fn a_find_that_names_what_is_not_there_is_not_silent() {
    let events = [
        Event::Find(Find::LevelError { point: "999".into(), level: groundhold_quantity::Level::m(101.0) }),
        Event::Find(Find::Rock { wall: "W7".into(), post: 3, chainage: None, at: None, depth: Length::mm(400.0) }),
        Event::Find(Find::Rock { wall: "W1".into(), post: 99, chainage: None, at: None, depth: Length::mm(400.0) }),
        Event::Find(Find::Water { element: "W7".into(), depth: Length::mm(400.0) }),
    ];
    for (event, word) in events.into_iter().zip(["999", "W7", "99", "W7"]) {
        let what = format!("{event:?}");
        let says: Vec<String> = match plan(&groundhold_cases::demo_with(&[event])) {
            Ok(p) => p.findings.iter().map(|f| format!("{} {}", f.place, f.says)).collect(),
            Err(t) => t.iter().map(|t| t.says.clone()).collect(),
        };
        assert!(says.iter().any(|s| s.contains(word)), "{what}: nothing says {word}");
    }
}
