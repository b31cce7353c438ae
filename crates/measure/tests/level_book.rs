//! Do level books reduce, close and complain as they should?

use groundhold_measure::level_book::*;
use groundhold_measure::misclose::rule;
use groundhold_quantity::{Length, Level};
use proptest::prelude::*;

fn book(text: &str) -> Vec<Booking> {
    read_book(text).expect("the book is written rightly")
}
fn from_100() -> Terms {
    Terms::from_start("A", Level::m(100.0))
}
fn complaint(text: &str) -> String {
    let wrong = reduce(&book(text), &from_100()).expect_err("the book should be refused");
    wrong.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

/// The demo's kind of book: two change points, a close of 4 mm.
const LOOP: &str =
    "A BS 1.500; P1 IS 1.200; CP1 BS 1.800 FS 0.900; P2 IS -0.450; CP2 BS 0.700 FS 1.650; P3 IS 1.111; A FS 1.446";

#[test]
fn a_loop_closes_exactly_on_its_start_after_the_misclose_is_distributed() {
    let r = reduce(&book(LOOP), &from_100()).unwrap();
    assert!((r.misclose.unwrap().to_mm() - 4.0).abs() < 1e-9, "{:?}", r.misclose);
    assert!((r.allowed.unwrap().to_mm() - 5.0 * 3f64.sqrt()).abs() < 1e-9);
    assert!(r.accepted && r.findings.is_empty(), "{:?}", r.findings);
    assert!((r.rows[6].level.to_m() - 100.0).abs() < 1e-12);
    let shares: Vec<f64> = r.rows.iter().map(|r| (r.correction.to_mm() * 3.0).round()).collect();
    assert_eq!(shares, [0.0, -4.0, -4.0, -8.0, -8.0, -12.0, -12.0]);
    assert_eq!(r.rows[6].sigma, Length::ZERO, "the close is known");
    assert_eq!(r.traces.len(), 3);
}

#[test]
fn every_trace_of_a_book_makes_its_levels_again() {
    let r = reduce(&book(LOOP), &from_100()).unwrap();
    let raw: Vec<f64> = r.rows.iter().map(|r| r.level_raw.to_m()).collect();
    assert_eq!(r.traces[0].sheet().unwrap().values[0], raw.into());
    for t in &r.traces {
        assert!(!t.sheet().unwrap().lines.is_empty(), "{t:?}");
    }
}

#[test]
fn a_misclose_above_the_rule_is_a_stop_and_is_not_distributed() {
    let slipped = LOOP.replace("FS 1.650", "FS 1.750");
    let r = reduce(&book(&slipped), &from_100()).unwrap();
    assert!(!r.accepted && r.rows.iter().all(|r| r.correction == Length::ZERO));
    assert_eq!(r.findings[0].kind.code, "M-001");
    assert!(
        r.findings[0].says.contains("−96 mm") && r.findings[0].says.contains("1 × 0.1 m"),
        "{}",
        r.findings[0].says
    );
}

#[test]
fn the_largest_misclose_allowed_is_accepted_and_a_tenth_of_a_millimetre_more_is_not() {
    // One set-up by `construction` allows 5 mm.
    let at = |fs: &str| reduce(&book(&format!("A BS 1.0; A FS {fs}")), &from_100()).unwrap().accepted;
    assert!(at("0.99501") && at("1.00499"));
    assert!(!at("0.9949") && !at("1.0051"));
}

#[test]
fn a_book_may_close_on_another_known_level() {
    let mut terms = from_100();
    terms.close = Some(Benchmark { station: "B".into(), level: Level::m(100.303) });
    let r = reduce(&book("A BS 1.5; B FS 1.2"), &terms).unwrap();
    assert!((r.misclose.unwrap().to_mm() + 3.0).abs() < 1e-9 && r.accepted);
    let b = r.points().into_iter().find(|p| p.station == "B").unwrap();
    assert_eq!((b.level, b.sigma, b.role), (Level::m(100.303), Length::ZERO, Role::Benchmark));
    let wrong = reduce(&book("A BS 1.5; C FS 1.2"), &terms).unwrap_err()[0].to_string();
    assert!(wrong.contains("row 2") && wrong.contains("`C`") && wrong.contains("`B`"), "{wrong}");
}

#[test]
fn an_open_book_says_that_nothing_checks_it() {
    let r = reduce(&book("A BS 1.5; CP BS 1.1 FS 1.2; P IS 1.0; Q FS 0.4"), &from_100()).unwrap();
    assert_eq!((r.misclose, r.findings[0].kind.code), (None, "M-002"));
    let sigmas: Vec<f64> = r.rows.iter().map(|r| r.sigma.to_mm()).collect();
    let by_hand = [0.0, 2.0 * 2f64.sqrt(), 4.0, 4.0];
    assert!(sigmas.iter().zip(by_hand).all(|(s, h)| (s - h).abs() < 1e-12), "{sigmas:?}");
}

#[test]
fn each_mistake_of_a_booker_is_named_with_its_row_and_what_was_expected() {
    for (text, row, expected) in [
        ("A IS 1.2; B FS 1.0", "row 1 (A)", "expected only a backsight"),
        ("A BS 1.2 FS 1.0; B IS 1.0", "row 1 (A)", "expected only a backsight"),
        ("A BS 1.2; B FS 1.0; C IS 1.0", "row 2 (B)", "the book goes on in row 3"),
        ("A BS 1.2; B; C IS 1.0", "row 2 (B)", "there is no reading"),
        ("A BS 1.2; B IS 1.0 FS 1.0", "row 2 (B)", "expected the intermediate sight alone"),
        ("A BS 1.2; B BS 1.0; C IS 1.0", "row 2 (B)", "expected both in one row"),
        ("A BS 1.2; B IS 5.001", "row 2 (B)", "from −5 m to 5 m"),
        ("X BS 1.2; B IS 1.0", "row 1", "expected `A`"),
        ("", "empty", "`A`"),
    ] {
        let said = complaint(text);
        assert!(said.contains(row) && said.contains(expected), "{text}: {said}");
    }
    assert!(reduce(&book("A BS 5; B IS -5"), &from_100()).is_ok(), "a staff of 5 m either way up is read");
    assert_eq!(complaint("A IS 1.2; B; C IS 9").lines().count(), 3, "all mistakes are told at once");
}

#[test]
fn a_station_without_a_name_a_reading_that_is_no_number_and_a_useless_accuracy_are_refused() {
    let mut b = book("A BS 1.2; B IS 1.0");
    b[1].station = " ".into();
    b[1].intermediate = Some(Length::m(f64::NAN));
    let mut terms = from_100();
    terms.reading = Length::ZERO;
    terms.start.level = Level::m(f64::INFINITY);
    let said = reduce(&b, &terms).unwrap_err();
    assert_eq!(said.len(), 4, "{said:?}");
}

#[test]
fn a_rule_by_kilometres_asks_for_the_length_of_the_run() {
    let mut terms = from_100();
    terms.rule = *rule("third-order").unwrap();
    assert!(reduce(&book(LOOP), &terms).unwrap_err()[0].to_string().contains("length of the run"));
    terms.run = Some(Length::m(400.0));
    assert!((reduce(&book(LOOP), &terms).unwrap().allowed.unwrap().to_mm() - 7.589).abs() < 1e-3);
}

#[test]
fn a_station_read_twice_with_levels_apart_is_named_with_both_rows_and_agreeing_ones_are_averaged() {
    let apart = reduce(&book("A BS 1.5; P IS 1.200; P IS 1.240; A FS 1.500"), &from_100()).unwrap();
    assert_eq!(apart.findings[0].kind.code, "M-003");
    assert!(apart.findings[0].says.contains("row 2") && apart.findings[0].says.contains("40 mm apart"));
    let near = reduce(&book("A BS 1.5; P IS 1.200; P IS 1.204; A FS 1.500"), &from_100()).unwrap();
    assert!(near.findings.is_empty(), "{:?}", near.findings);
    let p = near.points().into_iter().find(|p| p.station == "P").unwrap();
    assert!((p.level.to_m() - 100.298).abs() < 1e-9 && p.rows == [2, 3] && p.role == Role::Spot, "{p:?}");
}

#[test]
fn the_stated_spread_of_every_level_is_that_of_its_readings_carried_through_the_reduction() {
    // A true loop of three set-ups: each reading is disturbed in turn, and the levels' answers add up in squares.
    let loop_ = LOOP.replace("FS 1.446", "FS 1.450");
    for text in [loop_.as_str(), "A BS 1.5; P IS 1.0; CP BS 1.1 FS 1.2; Q IS 1.0; CP2 BS 1.3 FS 0.4; R IS 2.0"] {
        let rows = book(text);
        let plain = reduce(&rows, &from_100()).unwrap();
        let mut variance = vec![0.0; rows.len()];
        let step = Length::mm(0.01);
        for i in 0..rows.len() {
            let disturb: [fn(&mut Booking) -> &mut Option<Length>; 3] =
                [|b| &mut b.backsight, |b| &mut b.intermediate, |b| &mut b.foresight];
            for which in disturb {
                let mut rows = rows.clone();
                let Some(reading) = which(&mut rows[i]) else { continue };
                *reading += step;
                let moved = reduce(&rows, &from_100()).unwrap();
                for (k, (a, b)) in plain.rows.iter().zip(&moved.rows).enumerate() {
                    let slope = (b.level - a.level) / step;
                    variance[k] += slope * slope;
                }
            }
        }
        for (v, r) in variance.iter().zip(&plain.rows) {
            assert!((v.sqrt() * READING.to_mm() - r.sigma.to_mm()).abs() < 1e-6, "{}: {v} {:?}", r.station, r.sigma);
        }
    }
}

#[test]
fn the_slip_in_the_printed_table_is_found_by_its_readings_and_not_by_the_sums() {
    let text = "BS 2.415; BS 3.600 FS 1.819; IS 4.680; IS 1.900; IS 1.817; BS 1.680 FS 0.919; IS 2.131; IS 2.797; IS 2.400; BS 3.100 FS 3.670; IS 3.801; IS 1.677; BS 0.700 FS 1.980; BS 2.708 FS 1.001; IS -1.500; IS 1.165; FS 3.999";
    let r = reduce(&book(text), &Terms::from_start("1", Level::m(22.0))).unwrap();
    assert!((r.checks.sum_backsights - r.checks.sum_foresights - r.checks.last_minus_first).to_m().abs() < 1e-9);
    let found = compare_booked(&r, &[(14, Level::m(24.106)), (16, Level::m(25.665)), (17, Level::m(22.815))]);
    assert_eq!(found.len(), 1);
    assert!(found[0].says.contains("Row 16") && found[0].says.contains("16 mm lower"), "{}", found[0].says);
}

fn reading() -> impl Strategy<Value = f64> {
    (-4000i32..4000).prop_map(|mm| f64::from(mm) / 1000.0)
}

/// A loop of up to six set-ups with intermediate sights, its close wrong by `off` millimetres.
fn a_loop() -> impl Strategy<Value = (Vec<Booking>, f64)> {
    let set_up = (reading(), prop::collection::vec(reading(), 0..4), reading());
    (prop::collection::vec(set_up, 1..6), -4.0..4.0f64).prop_map(|(set_ups, off)| {
        let mut rows: Vec<Booking> = vec![Booking { station: "A".into(), ..Booking::default() }];
        let mut height = 0.0;
        for (i, (back, between, fore)) in set_ups.iter().enumerate() {
            if let Some(last) = rows.last_mut() {
                last.backsight = Some(Length::m(*back));
            }
            for (k, r) in between.iter().enumerate() {
                rows.push(Booking {
                    station: format!("P{i}.{k}"),
                    intermediate: Some(Length::m(*r)),
                    ..Booking::default()
                });
            }
            let closes = i + 1 == set_ups.len();
            // The last foresight brings the run back to its start, whatever staff that would take.
            let fore = if closes { (height + back + off / 1000.0).clamp(-5.0, 5.0) } else { *fore };
            height += back - fore;
            let station = if closes { "A".into() } else { format!("CP{i}") };
            rows.push(Booking { station, foresight: Some(Length::m(fore)), ..Booking::default() });
        }
        rows.iter_mut().enumerate().for_each(|(i, b)| b.row = i + 2);
        (rows, height)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn both_methods_give_the_same_levels_and_all_sums_agree((rows, _) in a_loop()) {
        let r = reduce(&rows, &from_100()).unwrap();
        let c = r.checks;
        prop_assert!(c.methods_apart.to_m() < 1e-12, "{:?}", c.methods_apart);
        prop_assert!((c.sum_backsights - c.sum_foresights - c.last_minus_first).to_m().abs() < 1e-11);
        prop_assert!((c.sum_rises - c.sum_falls - c.last_row_minus_first).to_m().abs() < 1e-11);
        prop_assert!((c.sum_levels - c.sum_from_collimation).to_m().abs() < 1e-9);
        prop_assert!(c.sum_rises.to_m() >= 0.0 && c.sum_falls.to_m() >= 0.0);
    }

    #[test]
    fn a_distributed_misclose_leaves_none_and_shares_never_exceed_it((rows, height) in a_loop()) {
        let r = reduce(&rows, &from_100()).unwrap();
        let m = r.misclose.unwrap();
        prop_assert!((m.to_m() - height).abs() < 1e-11);
        let last = r.rows.last().unwrap();
        if r.accepted {
            prop_assert!((last.level.to_m() - 100.0).abs() < 1e-12);
            prop_assert!(r.rows.iter().all(|r| r.correction.abs().to_m() <= m.abs().to_m() + 1e-15));
        } else {
            prop_assert!(r.rows.iter().all(|r| r.level == r.level_raw));
        }
    }

    #[test]
    fn raising_the_start_raises_every_level_alike((rows, _) in a_loop(), by in -50.0..50.0f64) {
        let low = reduce(&rows, &from_100()).unwrap();
        let high = reduce(&rows, &Terms::from_start("A", Level::m(100.0 + by))).unwrap();
        for (a, b) in low.rows.iter().zip(&high.rows) {
            prop_assert!(((b.level - a.level).to_m() - by).abs() < 1e-10);
        }
    }

    #[test]
    fn no_book_of_random_rows_panics(rows in prop::collection::vec(
        (prop::option::of(-6.0..6.0f64), prop::option::of(-6.0..6.0f64), prop::option::of(-6.0..6.0f64), "[AB ]{0,2}"), 0..8))
    {
        let m = |v: Option<f64>| v.map(Length::m);
        let book: Vec<Booking> = rows.into_iter().enumerate().map(|(i, (b, s, f, station))| Booking {
            row: i, station, backsight: m(b), intermediate: m(s), foresight: m(f), remark: String::new(),
        }).collect();
        match reduce(&book, &from_100()) {
            Ok(r) => prop_assert_eq!(r.rows.len(), book.len()),
            Err(wrong) => prop_assert!(!wrong.is_empty()),
        }
    }
}
