//! Do ties and offsets find their points, and name the reading that does not fit?

use groundhold_measure::position::*;
use groundhold_quantity::{Length, Level, Point, distance};
use proptest::prelude::*;

fn peg(id: &str, x: f64, y: f64) -> Peg {
    Peg { id: id.into(), at: Point::m(x, y) }
}
fn tie(row: usize, point: &str, to: &str, m: f64) -> Reading {
    let measured = Measured::Tie { to: to.into(), tape: Length::m(m), lie: Lie::Level };
    Reading { row, point: point.into(), measured, sigma: None }
}
fn offset(row: usize, point: &str, along: f64, off: f64) -> Reading {
    let measured = Measured::Offset { from: "A".into(), to: "B".into(), along: Length::m(along), off: Length::m(off) };
    Reading { row, point: point.into(), measured, sigma: None }
}
fn hint(point: &str, side: Side) -> Hint {
    Hint { row: 99, point: point.into(), side, from: "A".into(), to: "B".into() }
}
fn corners() -> Vec<Peg> {
    vec![peg("A", 0.0, 0.0), peg("B", 12.0, 0.0), peg("C", 12.0, 9.0), peg("D", 0.0, 9.0)]
}
fn survey(pegs: Vec<Peg>, readings: Vec<Reading>) -> Survey {
    Survey { pegs, readings, ..Survey::default() }
}
fn said(s: &Survey) -> String {
    let wrong = locate(s).expect_err("the survey should be refused");
    wrong.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}
fn true_ties(row: usize, name: &str, p: Point, pegs: &[Peg]) -> Vec<Reading> {
    pegs.iter().enumerate().map(|(i, q)| tie(row + i, name, &q.id, distance(p, q.at).to_m())).collect()
}

#[test]
fn two_ties_and_a_side_fix_a_point_and_the_other_side_gives_its_mirror_image() {
    let mut s = survey(corners()[..2].to_vec(), vec![tie(2, "P", "A", 6.443), tie(3, "P", "B", 7.787)]);
    for (side, y) in [(Side::Left, 3.8), (Side::Right, -3.8)] {
        s.hints = vec![hint("P", side)];
        let found = locate(&s).unwrap();
        let p = &found.points[0];
        assert!((p.at.x - 5.2031).abs() < 5e-5 && (p.at.y - y).abs() < 5e-5, "{p:?}");
        assert_eq!((found.redundancy, found.sigma0), (0, None));
        assert_eq!(found.findings[0].kind.code, "M-007");
    }
}

#[test]
fn two_ties_without_a_side_are_asked_for_one_with_both_places() {
    let s = survey(corners()[..2].to_vec(), vec![tie(2, "P", "A", 6.443), tie(3, "P", "B", 7.787)]);
    let said = said(&s);
    assert!(said.contains("3.800") && said.contains("-3.800") && said.contains("`A`–`B`"), "{said}");
    assert!(said.contains("left or right"), "{said}");
}

#[test]
fn three_ties_to_pegs_in_one_line_still_fit_two_places() {
    let pegs = vec![peg("A", 0.0, 0.0), peg("B", 12.0, 0.0), peg("M", 5.0, 0.0)];
    let mut s = survey(pegs.clone(), true_ties(1, "P", Point::m(4.0, -6.0), &pegs));
    assert!(said(&s).contains("fit both"), "{}", said(&s));
    s.hints = vec![hint("P", Side::Right)];
    assert!(distance(locate(&s).unwrap().points[0].at, Point::m(4.0, -6.0)).to_m() < 1e-9);
}

#[test]
fn a_chain_of_more_points_than_can_be_found_together_is_refused() {
    let chain = |n: usize| {
        let name = |i: usize| format!("P{i:03}");
        let ties = (0..n).flat_map(|i| {
            let mut ties = true_ties(10 * i, &name(i), Point::m(1.0 + i as f64 / 50.0, 3.0), &corners()[..3]);
            if i > 0 {
                ties.push(tie(10 * i + 5, &name(i), &name(i - 1), 0.02));
            }
            ties
        });
        survey(corners(), ties.collect())
    };
    assert_eq!(locate(&chain(40)).unwrap().points.len(), 40);
    assert!(said(&chain(251)).contains("251 points from `P000` on"), "{}", said(&chain(251)));
}

#[test]
fn a_side_that_the_readings_contradict_is_refused() {
    let mut s = survey(corners(), true_ties(1, "P", Point::m(5.2, 3.8), &corners()));
    s.hints = vec![hint("P", Side::Right)];
    assert!(said(&s).contains("said to lie right of `A`–`B`"), "{}", said(&s));
}

#[test]
fn distances_that_do_not_meet_name_both_pegs_and_the_gap() {
    let s = survey(corners()[..2].to_vec(), vec![tie(2, "P", "A", 4.0), tie(3, "P", "B", 7.0)]);
    let short = said(&s);
    assert!(short.contains("`A` (row 2)") && short.contains("`B` (row 3)"), "{short}");
    assert!(short.contains("together too short by 1.000 m"), "{short}");
    let s = survey(corners()[..2].to_vec(), vec![tie(2, "P", "A", 20.0), tie(3, "P", "B", 7.0)]);
    assert!(said(&s).contains("too unlike by 1.000 m"), "{}", said(&s));
}

#[test]
fn ties_that_only_just_touch_leave_the_point_loose_and_say_so() {
    let s = survey(corners()[..2].to_vec(), vec![tie(2, "P", "A", 5.0), tie(3, "P", "B", 7.0)]);
    assert!(said(&s).contains("another direction"), "{}", said(&s));
}

#[test]
fn four_ties_give_the_published_place_and_a_trace_that_makes_it_again() {
    let d = [6.443, 7.787, 8.563, 7.352];
    let readings = corners().into_iter().zip(d).enumerate().map(|(i, (p, d))| {
        let mut r = tie(i + 1, "P", &p.id, d);
        r.sigma = Some(Length::mm(5.0));
        r
    });
    let found = locate(&survey(corners(), readings.collect())).unwrap();
    let p = &found.points[0];
    assert!((p.at.x - 5.2004).abs() < 1e-4 && (p.at.y - 3.7999).abs() < 1e-4, "{p:?}");
    assert!((found.sigma0.unwrap() - 0.0034584 / 0.005).abs() < 1e-4);
    assert!(found.findings.is_empty(), "{:?}", found.findings);
    let sheet = p.trace.sheet().unwrap();
    let groundhold_working::Value::One(x) = sheet.values[0] else { unreachable!("x is one number") };
    assert!((x - p.at.x).abs() < 1e-12, "{x}");
}

#[test]
fn one_misread_tie_of_four_is_named_set_aside_and_the_point_stands_on_the_rest() {
    let p = Point::m(5.2, 3.8);
    let mut readings = true_ties(11, "P", p, &corners());
    if let Measured::Tie { tape, .. } = &mut readings[2].measured {
        *tape += Length::mm(200.0);
    }
    let found = locate(&survey(corners(), readings)).unwrap();
    let f = found.findings.iter().find(|f| f.kind.code == "M-005").expect("the reading is named");
    assert!(f.says.contains("row 13") && f.says.contains("`C`") && f.says.contains("200 mm less"), "{}", f.says);
    assert!(f.says.contains("Without it the rest fit within 0 mm"), "{}", f.says);
    assert!(distance(found.points[0].at, p).to_mm() < 1e-3, "{:?}", found.points[0].at);
    assert_eq!(found.readings.iter().filter(|r| r.set_aside).map(|r| r.row).collect::<Vec<_>>(), [13]);
}

#[test]
fn one_misread_tie_of_three_cannot_be_told_from_the_others_and_all_are_named() {
    let pegs = corners()[..3].to_vec();
    let mut readings = true_ties(11, "P", Point::m(5.2, 3.8), &pegs);
    if let Measured::Tie { tape, .. } = &mut readings[0].measured {
        *tape += Length::mm(200.0);
    }
    let found = locate(&survey(pegs, readings)).unwrap();
    let f = &found.findings[0];
    assert_eq!((f.kind.code, found.findings.len()), ("M-006", 1));
    assert!(["row 11", "row 12", "row 13"].iter().all(|r| f.says.contains(r)), "{}", f.says);
    assert!(found.readings.iter().all(|r| !r.set_aside));
}

#[test]
fn an_offset_to_the_left_is_positive_and_mixes_with_ties() {
    let p = Point::m(3.0, 4.0);
    let alone = locate(&survey(corners(), vec![offset(1, "P", 3.0, 4.0)])).unwrap();
    assert_eq!(alone.points[0].at, p);
    assert_eq!(alone.points[0].trace.working.name, "position/offset");
    let both =
        survey(corners(), vec![offset(1, "P", 3.0, 4.0), tie(2, "P", "C", distance(p, Point::m(12.0, 9.0)).to_m())]);
    let both = locate(&both).unwrap();
    assert!(distance(both.points[0].at, p).to_m() < 1e-9);
    assert_eq!((both.redundancy, both.points[0].trace.working.name), (1, "position/readings"));
    assert!(both.points[0].sigma() < alone.points[0].sigma(), "a further reading makes the point surer");
    assert_eq!(both.points[0].trace.sheet().unwrap().values.len(), 6);
}

#[test]
fn a_tape_along_the_slope_is_reduced_to_plan_by_the_rise_or_by_the_levels() {
    let plan = 12.0;
    let rise = 5.0;
    let slope = 13.0;
    let mut r = tie(1, "A", "B", slope);
    r.measured = Measured::Tie { to: "B".into(), tape: Length::m(slope), lie: Lie::Sloping(Length::m(-rise)) };
    let mut s = survey(corners(), vec![r]);
    let by_rise = locate(&s).unwrap();
    assert!((by_rise.readings[0].read.to_m() - plan).abs() < 1e-12 && by_rise.findings.is_empty());
    s.readings[0].measured = Measured::Tie { to: "B".into(), tape: Length::m(slope), lie: Lie::Ground };
    assert!(said(&s).contains("row 1") && said(&s).contains("has no level"), "{}", said(&s));
    s.levels = [("A".into(), Level::m(100.0)), ("B".into(), Level::m(105.0))].into();
    assert_eq!(locate(&s).unwrap().readings[0].read, by_rise.readings[0].read);
    s.levels.insert("B".into(), Level::m(113.0));
    assert!(said(&s).contains("differ in height by 13.000 m"), "{}", said(&s));
}

#[test]
fn a_tape_between_two_pegs_that_contradicts_them_is_a_finding() {
    let fits = locate(&survey(corners(), vec![tie(1, "A", "C", 15.0)])).unwrap();
    assert!(fits.findings.is_empty() && fits.redundancy == 1);
    let not = locate(&survey(corners(), vec![tie(1, "A", "C", 15.2)])).unwrap();
    assert_eq!(not.findings[0].kind.code, "M-006");
    assert!(not.findings[0].says.contains("200 mm less"), "{}", not.findings[0].says);
}

#[test]
fn points_that_hang_on_each_other_are_found_together() {
    // Q hangs on one peg and on two points that hang on pegs.
    let (p, r, q) = (Point::m(3.0, 14.0), Point::m(9.0, 15.0), Point::m(6.0, 20.0));
    let d = |a: Point, b: Point| distance(a, b).to_m();
    let pegs = corners();
    let readings = vec![
        tie(1, "P", "C", d(p, pegs[2].at)),
        tie(2, "P", "D", d(p, pegs[3].at)),
        tie(3, "R", "C", d(r, pegs[2].at)),
        tie(4, "R", "D", d(r, pegs[3].at)),
        tie(5, "P", "R", d(p, r)),
        tie(6, "Q", "P", d(q, p)),
        tie(7, "Q", "R", d(q, r)),
        tie(8, "A", "Q", d(q, pegs[0].at)),
        tie(9, "B", "P", d(p, pegs[1].at)),
    ];
    let found = locate(&survey(pegs, readings)).unwrap();
    for (id, at) in [("P", p), ("Q", q), ("R", r)] {
        let f = found.points.iter().find(|f| f.id == id).unwrap();
        assert!(distance(f.at, at).to_m() < 1e-8, "{id}: {:?}", f.at);
        assert_eq!(f.redundancy, 3);
    }
}

#[test]
fn each_mistake_of_a_surveyor_is_named_with_its_row_and_what_was_expected() {
    for (reading, expected) in [
        (tie(7, "P", "Z", 3.0), "row 7: `Z` is not a known peg or point, expected one of `A`, `B`, `C`, `D`"),
        (tie(7, "P", "P", 3.0), "row 7: `P` is tied to itself"),
        (tie(7, "P", "A", -3.0), "row 7: the taped distance is -3 m, expected 0.01 m to 500 m"),
        (tie(7, "P", "A", f64::NAN), "row 7: the taped distance is NaN m"),
        (tie(7, "P", "A", 3.0), "`P` has 1 usable reading(s) (row 7), expected at least two distances"),
        (offset(7, "P", 3.0, 501.0), "row 7: the offset is 501 m, expected −500 m to 500 m"),
    ] {
        let said = said(&survey(corners(), vec![reading]));
        assert!(said.contains(expected), "{said}");
    }
    let mut s =
        survey(vec![peg("A", 0.0, 0.0), peg("B", 0.05, 0.0), peg("A", 1.0, 0.0)], vec![offset(7, "P", 3.0, 1.0)]);
    s.accuracy.tape = Length::ZERO;
    let said = said(&s);
    assert!(said.contains("`A` is given at two places") && said.contains("accuracy of the tape"), "{said}");
}

#[test]
fn a_point_far_off_a_short_base_is_weak() {
    let pegs = vec![peg("A", 0.0, 0.0), peg("B", 1.0, 0.0), peg("C", 2.0, 0.3)];
    let p = Point::m(1.0, 40.0);
    let found = locate(&survey(pegs.clone(), true_ties(1, "P", p, &pegs))).unwrap();
    assert!(found.findings.iter().any(|f| f.kind.code == "M-008"), "{:?}", found.findings);
}

fn spot() -> impl Strategy<Value = Point> {
    (0.5..11.5f64, 0.5..8.5f64).prop_map(|(x, y)| Point::m(x, y))
}

/// Three unknown points, each tied to all corners and to each other, with readings wrong by up to 3 mm.
fn network() -> impl Strategy<Value = (Vec<Point>, Vec<Reading>)> {
    (prop::collection::vec(spot(), 3), prop::collection::vec(-0.003..0.003f64, 15))
        .prop_filter("points apart", |(p, _)| (0..3).all(|i| (0..i).all(|j| distance(p[i], p[j]).to_m() > 1.0)))
        .prop_map(|(points, noise)| {
            let mut readings = vec![];
            for (i, p) in points.iter().enumerate() {
                readings.extend(true_ties(10 * i, &format!("P{i}"), *p, &corners()));
                let next = (i + 1) % 3;
                readings.push(tie(
                    10 * i + 9,
                    &format!("P{i}"),
                    &format!("P{next}"),
                    distance(*p, points[next]).to_m(),
                ));
            }
            for (r, n) in readings.iter_mut().zip(noise) {
                if let Measured::Tie { tape, .. } = &mut r.measured {
                    *tape += Length::m(n);
                }
            }
            (points, readings)
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn a_perfect_network_gives_back_its_points_and_a_noisy_one_within_the_noise((points, readings) in network()) {
        let found = locate(&survey(corners(), readings.clone())).unwrap();
        for (f, p) in found.points.iter().zip(&points) {
            prop_assert!(distance(f.at, *p).to_m() < 0.012, "{:?} {p:?}", f.at);
        }
        let mut exact = vec![];
        for (i, p) in points.iter().enumerate() {
            exact.extend(true_ties(10 * i, &format!("P{i}"), *p, &corners()));
        }
        let found = locate(&survey(corners(), exact)).unwrap();
        for (f, p) in found.points.iter().zip(&points) {
            prop_assert!(distance(f.at, *p).to_m() < 1e-8);
        }
        prop_assert!(found.sigma0.unwrap() < 1e-6);
    }

    #[test]
    fn one_gross_error_in_a_redundant_network_is_named_and_only_it(
        (points, mut readings) in network(), which in 0usize..15, metres in 0.25..2.0f64
    ) {
        let row = readings[which].row;
        if let Measured::Tie { tape, .. } = &mut readings[which].measured {
            *tape += Length::m(metres);
        }
        let found = locate(&survey(corners(), readings)).unwrap();
        let named: Vec<_> = found.readings.iter().filter(|r| r.set_aside).map(|r| r.row).collect();
        prop_assert_eq!(named, vec![row], "{:?}", found.findings);
        for (f, p) in found.points.iter().zip(&points) {
            prop_assert!(distance(f.at, *p).to_m() < 0.03, "{:?} {p:?}", f.at);
        }
    }

    #[test]
    fn shuffling_the_readings_changes_no_bit((_, readings) in network(), seed in 0usize..1000) {
        let straight = locate(&survey(corners(), readings.clone())).unwrap();
        let mut shuffled = readings;
        let n = shuffled.len();
        for i in 0..n {
            shuffled.swap(i, (i * 7 + seed) % n);
        }
        let again = locate(&survey(corners().into_iter().rev().collect(), shuffled)).unwrap();
        prop_assert_eq!(straight, again);
    }

    #[test]
    fn an_offset_and_its_mirror_lie_on_both_sides_of_the_base_line(along in -20.0..20.0f64, off in 0.01..20.0f64) {
        let found = locate(&survey(corners(), vec![offset(1, "L", along, off), offset(2, "R", along, -off)])).unwrap();
        let (l, r) = (found.points[0].at, found.points[1].at);
        prop_assert!((l.y - off).abs() < 1e-9 && (r.y + off).abs() < 1e-9 && (l.x - r.x).abs() < 1e-9);
    }

    #[test]
    fn no_survey_of_random_readings_panics(rows in prop::collection::vec(
        ("[A-DPQR]", "[A-DPQRZ]", -1.0..25.0f64, prop::bool::ANY), 0..10))
    {
        let readings = rows.into_iter().enumerate().map(|(i, (p, to, d, ground))| {
            let lie = if ground { Lie::Sloping(Length::m(1.0)) } else { Lie::Level };
            Reading { row: i, point: p, measured: Measured::Tie { to, tape: Length::m(d), lie }, sigma: None }
        }).collect();
        match locate(&survey(corners(), readings)) {
            Ok(found) => prop_assert!(found.points.iter().all(|p| p.at.x.is_finite() && p.at.y.is_finite())),
            Err(wrong) => prop_assert!(!wrong.is_empty()),
        }
    }
}
