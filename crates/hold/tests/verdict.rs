//! Does the verdict on a wall agree with hand calculation, and does it move the right way?

#![allow(clippy::unwrap_used)]

mod walls;

use groundhold_earth::basis::{EN1997_DA1, WORKING_STRESS};
use groundhold_earth::soil::{Soil, class};
use groundhold_finding::{Finding, Whose};
use groundhold_hold::systems::timber_posts::*;
use groundhold_hold::*;
use groundhold_quantity::{Length, Level, Pressure, Share, Slope};
use proptest::prelude::*;
use walls::*;

fn judged(c: &WallCase) -> (Layout, Verdict) {
    hold(c).unwrap()
}

fn has<'a>(v: &'a Verdict, code: &str) -> Option<&'a Finding> {
    v.findings.iter().find(|f| f.kind.code == code)
}

/// The wall of case T10: 0.8 m retained, bays of 1.2 m, holes of 300 mm, planned 800 deep.
fn t10() -> WallCase {
    let mut c = straight(6.0, 0.8, spec());
    spec_of(&mut c).hole.depth = Some(mm(800.0));
    c
}

fn factor(v: &Verdict, post: usize) -> f64 {
    let m = v.margins.iter().find(|m| m.post == post && m.governs && m.case == LoadCase::Drained).unwrap();
    m.factor.unwrap()
}

#[test]
fn t10_planned_as_deep_as_high_has_a_factor_of_1_69() {
    let (_, v) = judged(&t10());
    assert!((factor(&v, 3) - 1.69).abs() < 0.01, "{}", factor(&v, 3));
    assert!(has(&v, "H-001").is_none());
}

#[test]
fn t10_a_hole_refused_at_600_has_0_88_and_only_what_passes_there_is_offered() {
    let mut c = t10();
    c.refusals = vec![Refusal { chainage: Length::m(2.4), depth: mm(600.0), what: "rock".into() }];
    let (l, v) = judged(&c);
    assert_eq!(l.posts[2].depth, mm(600.0));
    assert!((factor(&v, 3) - 0.88).abs() < 0.01, "{}", factor(&v, 3));
    let f = has(&v, "H-015").unwrap();
    assert_eq!(f.place.on, "post 3");
    let said: Vec<&str> = f.remedies.iter().map(|r| r.says.as_str()).collect();
    assert!(said.iter().any(|s| s.contains("600 mm diameter")), "{said:?}");
    assert!(said.iter().any(|s| s.contains("posts more") && s.contains("1.80 m and 3.00 m")), "{said:?}");
    assert!(said.iter().any(|s| s.contains("dowelled into the rock")), "{said:?}");
    assert!(said.iter().any(|s| s.contains("lower by")), "{said:?}");
    assert!(!said.iter().any(|s| s.contains("450 mm diameter")), "450 mm gives only 1.31: {said:?}");
    assert!(f.remedies.iter().any(|r| r.whose == Whose::Theirs));
}

#[test]
fn t10_the_factors_of_the_options_at_600_are_1_75_and_1_31() {
    let at_600 = |change: fn(&mut WallCase)| {
        let mut c = t10();
        spec_of(&mut c).hole.depth = Some(mm(600.0));
        change(&mut c);
        let (_, v) = judged(&c);
        factor(&v, 3)
    };
    assert!((at_600(|c| spec_of(c).hole.diameter = mm(600.0)) - 1.75).abs() < 0.01);
    assert!((at_600(|c| spec_of(c).hole.diameter = mm(450.0)) - 1.31).abs() < 0.01);
    assert!((at_600(|c| spec_of(c).spacing = mm(600.0)) - 1.75).abs() < 0.02);
}

#[test]
fn t2_two_walls_nearer_than_twice_the_lower_one_act_together() {
    let mut c = straight(6.0, 0.9, spec());
    let upper = |distance| Neighbour {
        what: "W2".into(),
        side: Side::Behind,
        distance,
        chainage: Length::m(3.0),
        kind: NeighbourKind::Wall { retained: Length::m(0.6) },
    };
    c.neighbours = vec![upper(Length::m(1.0))];
    let (_, v) = judged(&c);
    let f = has(&v, "H-010").unwrap();
    assert!(f.says.contains("1800 mm"), "{}", f.says);
    c.neighbours = vec![upper(Length::m(1.81))];
    assert!(has(&judged(&c).1, "H-010").is_none());
}

#[test]
fn t5_half_buried_courses_cannot_give_600() {
    let mut s = spec();
    s.board.thickness = mm(100.0);
    s.board.grade = c24(100.0, 200.0);
    s.bury = mm(100.0);
    let c = straight(4.8, 0.6, s);
    let (l, v) = judged(&c);
    assert_eq!(l.bays[0].courses, 4);
    assert!((l.bays[0].top - Level::m(100.7)).abs() < mm(0.1));
    let f = has(&v, "H-017").unwrap();
    assert!(f.says.contains("4 whole courses give 700 mm, 3 give 500 mm"), "{}", f.says);
    assert_eq!(f.remedies[0].change[0].value, "200 mm");
    let mut c = c;
    spec_of(&mut c).bury = mm(200.0);
    let (l, v) = judged(&c);
    assert!((l.bays[0].top - Level::m(100.6)).abs() < mm(0.1) && has(&v, "H-017").is_none());
}

#[test]
fn a_solved_depth_passes_and_one_step_less_fails() {
    for retained in [0.5, 0.7, 0.9, 1.1] {
        let c = straight(6.0, retained, spec());
        let (l, v) = judged(&c);
        let p = &l.posts[2];
        let worst = |v: &Verdict| {
            v.checks
                .iter()
                .filter(|k| k.kind == CheckKind::Embedment && k.governs && k.on == "post 3")
                .map(|k| k.utilisation)
                .fold(0.0, f64::max)
        };
        assert!(worst(&v) <= 1.0, "{retained}");
        if p.depth > LEAST_DEPTH {
            let mut c = c.clone();
            spec_of(&mut c).hole.depth = Some(p.depth - DEPTH_STEP);
            assert!(worst(&judged(&c).1) > 1.0, "{retained} at {}", p.depth.to_mm());
        }
    }
}

#[test]
fn drained_clay_decides_beside_undrained_clay() {
    let mut c = straight(6.0, 0.8, spec());
    c.founding_soil = Soil::of(class("firm-clay").unwrap());
    let (_, v) = judged(&c);
    let methods: Vec<&str> = v.margins.iter().filter(|m| m.post == 3 && m.governs).map(|m| m.method).collect();
    assert!(methods.iter().any(|m| m.contains("clay")) && methods.iter().any(|m| m.contains("sand")), "{methods:?}");
}

#[test]
fn topsoil_is_not_to_bear_on_and_says_so() {
    let mut c = straight(6.0, 0.5, spec());
    c.founding_soil = Soil::of(class("topsoil").unwrap());
    assert!(has(&judged(&c).1, "H-013").is_some());
}

#[test]
fn ground_behind_steeper_than_its_friction_angle_stops_the_plan_and_is_not_a_number() {
    let mut c = straight(6.0, 0.5, spec());
    for s in &mut c.stations {
        s.slope_behind = Slope::ratio(0.7);
    }
    let (l, v) = judged(&c);
    assert!(has(&v, "H-014").is_some() && has(&v, "H-022").is_some());
    assert!(l.posts.iter().all(|p| p.depth.is_finite()));
}

#[test]
fn boards_in_front_hang_on_their_screws() {
    let mut c = straight(6.0, 1.0, spec());
    let (_, v) = judged(&c);
    assert!(v.worst(CheckKind::Screws).is_none());
    spec_of(&mut c).boards = Boards::InFront;
    let (_, v) = judged(&c);
    let k = v.worst(CheckKind::Screws).unwrap();
    assert!(k.demand > 0.0 && k.capacity > 0.0);
}

#[test]
fn a_wide_bay_bows_and_the_remedy_makes_it_pass() {
    let mut c = straight(9.6, 0.9, spec());
    spec_of(&mut c).spacing = mm(2400.0);
    let (_, v) = judged(&c);
    let f = has(&v, "H-004").unwrap();
    let thicker = f.remedies.iter().flat_map(|r| &r.change).find(|a| a.field == "spec.board").unwrap();
    assert_eq!(thicker.element, "W1");
    let (size, _) = thicker.value.split_once(' ').unwrap();
    let thickness: f64 = size.split_once('x').unwrap().1.parse().unwrap();
    spec_of(&mut c).board.thickness = mm(thickness);
    spec_of(&mut c).board.grade = c24(thickness, 200.0);
    assert!(has(&judged(&c).1, "H-004").is_none(), "{thickness}");
}

#[test]
fn the_drain_is_an_accident_where_one_is_planned_and_the_rule_where_none_is() {
    let mut c = straight(6.0, 0.8, spec());
    let (with, v) = judged(&c);
    assert!(has(&v, "H-006").is_some() && has(&v, "H-020").is_none());
    assert!(v.checks.iter().filter(|k| k.case == LoadCase::DrainBlocked).all(|k| !k.governs));
    c.water = Water::UNDRAINED;
    let (without, v) = judged(&c);
    assert!(has(&v, "H-020").is_some() && has(&v, "H-006").is_none());
    assert!(without.posts[2].depth > with.posts[2].depth);
}

#[test]
fn a_fence_in_the_wind_is_never_silent() {
    let mut c = straight(6.0, 1.0, spec());
    c.fence = Some(Fence {
        height: Length::m(1.8),
        wind: Pressure::kpa(1.0),
        solidity: Share::fraction(1.0),
        source: "invented".into(),
    });
    let (_, v) = judged(&c);
    let f = has(&v, "H-009").unwrap();
    // Moment 1.8·1.9 = 3.42 kNm/m against 3·1/3 = 1.0 kNm/m of the soil.
    assert!(f.says.contains("3.4 times"), "{}", f.says);
}

#[test]
fn both_combinations_of_the_eurocode_stand_in_the_checks() {
    let mut c = straight(6.0, 0.8, spec());
    c.basis = &EN1997_DA1;
    let (_, v) = judged(&c);
    for key in ["DA1-1", "DA1-2"] {
        assert!(v.checks.iter().any(|k| k.kind == CheckKind::Embedment && k.basis == key && k.governs), "{key}");
    }
}

#[test]
fn every_trace_of_a_verdict_makes_its_sheet_again() {
    let mut c = straight(6.0, 0.8, spec());
    c.basis = &EN1997_DA1;
    c.founding_soil = Soil::of(class("firm-clay").unwrap());
    c.loads = vec![Load {
        value: Pressure::kpa(2.5),
        from: Length::m(0.5),
        to: Length::m(f64::INFINITY),
        permanent: true,
        what: "tool shed".into(),
    }];
    spec_of(&mut c).boards = Boards::InFront;
    let (_, v) = judged(&c);
    let of_checks = v.checks.iter().flat_map(|k| &k.traces);
    let of_margins = v.margins.iter().filter_map(|m| m.trace.as_ref());
    let of_findings = v.findings.iter().filter_map(|f| f.trace.as_ref());
    let mut n = 0;
    for t in of_checks.chain(of_margins).chain(of_findings).chain(v.pushes.iter().map(|p| &p.trace)) {
        let sheet = t.sheet().unwrap_or_else(|e| panic!("{}: {e}", t.working.name));
        assert!(!sheet.values.is_empty());
        n += 1;
    }
    assert!(n > 100);
}

#[test]
fn a_steep_bank_slips_sooner_than_a_level_one_and_water_makes_it_worse() {
    let with = |slope: f64| {
        let mut c = straight(4.8, 0.9, spec());
        c.search_slip = true;
        for s in &mut c.stations {
            (s.slope_behind, s.slope_front) = (Slope::ratio(slope), Slope::ratio(slope));
        }
        judged(&c).1
    };
    let (level, steep) = (with(0.0), with(0.25));
    let factor = |v: &Verdict, case: LoadCase| {
        v.checks.iter().find(|k| k.kind == CheckKind::Slip && k.case == case).unwrap().capacity
    };
    assert!(factor(&steep, LoadCase::Drained) < factor(&level, LoadCase::Drained));
    assert!(factor(&steep, LoadCase::DrainBlocked) < factor(&steep, LoadCase::Drained));
    let circle = steep.slip.unwrap();
    assert!(circle.entry_x < Length::ZERO && Length::ZERO < circle.exit_x);
    assert_eq!(circle.factor, factor(&steep, LoadCase::Drained));
}

#[test]
fn a_cut_in_the_ground_that_holds_the_posts_stops_and_one_further_off_does_not() {
    let mut c = t10();
    let cut = |distance| Neighbour {
        what: "a pipe trench".into(),
        side: Side::InFront,
        distance,
        chainage: Length::m(3.0),
        kind: NeighbourKind::Cut { depth: Length::m(0.5) },
    };
    // 0.8 m deep, tan 60° = 1.732: the wedge reaches 1.386 m.
    c.neighbours = vec![cut(Length::m(1.38))];
    assert!(has(&judged(&c).1, "H-011").is_some());
    c.neighbours = vec![cut(Length::m(1.39))];
    assert!(has(&judged(&c).1, "H-011").is_none());
}

#[test]
fn a_hole_below_the_line_at_45_degrees_from_a_footing_asks() {
    let mut c = t10();
    let footing = |distance| Neighbour {
        what: "the garage".into(),
        side: Side::Behind,
        distance,
        chainage: Length::m(3.0),
        kind: NeighbourKind::Footing { depth: Length::m(0.5), pressure: None },
    };
    // Hole bottom 0.8 + 0.8 + 0.1 m below the ground behind: the line allows 0.5 m and the distance.
    c.neighbours = vec![footing(Length::m(1.19))];
    assert!(has(&judged(&c).1, "H-012").is_some());
    c.neighbours = vec![footing(Length::m(1.21))];
    assert!(has(&judged(&c).1, "H-012").is_none());
}

#[test]
fn above_the_height_of_the_guides_an_engineer_is_asked_for() {
    assert!(has(&judged(&straight(4.8, 1.0, spec())).1, "H-024").is_none());
    assert!(has(&judged(&straight(4.8, 1.01, spec())).1, "H-024").is_some());
}

#[test]
fn screws_that_end_in_the_board_are_too_short() {
    let mut c = straight(4.8, 0.6, spec());
    spec_of(&mut c).screws.length = mm(75.0);
    let (_, v) = judged(&c);
    assert_eq!(has(&v, "H-023").unwrap().remedies[0].change[0].value, "6x100");
}

fn embedment(v: &Verdict) -> f64 {
    v.worst(CheckKind::Embedment).map_or(0.0, |c| c.utilisation)
}

fn fixed(length: f64, retained: f64) -> WallCase {
    let mut c = straight(length, retained, spec());
    spec_of(&mut c).hole.depth = Some(mm(900.0));
    c
}

/// Any figure a person may write, sensible or not.
fn any_figure() -> impl Strategy<Value = f64> {
    prop_oneof![80 => -0.4f64..1.6, 1 => -1e4f64..1e4, 1 => Just(0.0), 1 => Just(f64::NAN), 1 => Just(f64::INFINITY)]
}

prop_compose! {
    fn any_case()(
        v in proptest::collection::vec(any_figure(), 24),
        soil in 0usize..10,
        flags in any::<[bool; 6]>(),
    ) -> WallCase {
        let at = |c: f64, i: usize| {
            let mut s = station(c, 100.0 + v[i], 100.0 + v[i + 1], 100.0 + v[i + 2]);
            (s.slope_behind, s.slope_front) = (Slope::ratio(v[i + 3]), Slope::ratio(v[i + 4]));
            s
        };
        let mut c = case(vec![at(0.0, 0), at(2.0 + v[5], 6), at(7.0, 12)], spec());
        let classes = groundhold_earth::soil::CLASSES;
        c.retained_soil = Soil::of(&classes[soil % classes.len()]);
        c.founding_soil = Soil::of(&classes[(soil * 7 + 3) % classes.len()]);
        let s = spec_of(&mut c);
        (s.bury, s.neglect_top) = (Length::m(v[18].abs() / 3.0), Length::m(v[19].abs() / 3.0));
        s.hole.depth = flags[0].then(|| Length::m(v[20]));
        s.boards = if flags[1] { Boards::InFront } else { Boards::Behind };
        s.spacing = Length::m(v[11].abs());
        c.refusals = vec![Refusal { chainage: Length::m(v[17]), depth: Length::m(v[23]), what: "rock".into() }];
        c.search_slip = flags[5];
        c.basis = if flags[2] { &EN1997_DA1 } else { &WORKING_STRESS };
        c.water.drained = flags[3];
        c.fence = flags[4].then(|| Fence {
            height: Length::m(v[21]),
            wind: Pressure::kpa(v[22]),
            solidity: Share::fraction(0.8),
            source: "invented".into(),
        });
        c.loads = vec![Load {
            value: Pressure::kpa(v[22].abs()),
            from: Length::m(v[23].abs()),
            to: Length::m(f64::INFINITY),
            permanent: flags[0],
            what: "a heap".into(),
        }];
        c
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_figures_are_judged_or_refused_and_never_panic(c in any_case()) {
        match hold(&c) {
            Err(e) => prop_assert!(e.to_string().contains("expected"), "{e}"),
            Ok((l, v)) => {
                prop_assert!(l.posts.iter().all(|p| p.depth.is_finite() && p.length.is_finite()));
                prop_assert!(v.checks.iter().all(|k| !k.utilisation.is_nan()));
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_higher_wall_is_never_used_less(a in 0.2f64..1.2, more in 0.01f64..0.4) {
        let (low, high) = (judged(&fixed(6.0, a)).1, judged(&fixed(6.0, a + more)).1);
        prop_assert!(embedment(&low) <= embedment(&high) + 1e-9);
        for kind in [CheckKind::PostBending, CheckKind::BoardBow] {
            let of = |v: &Verdict| v.worst(kind).map_or(0.0, |c| c.utilisation);
            prop_assert!(of(&low) <= of(&high) + 1e-9, "{:?}", kind);
        }
    }

    #[test]
    fn more_water_is_never_better(a in 0.3f64..1.0, low in 0.05f64..0.9, more in 0.01f64..0.1) {
        let with = |share| {
            let mut c = fixed(6.0, a);
            c.water = Water { drained: false, blocked: Share::fraction(share) };
            embedment(&judged(&c).1)
        };
        prop_assert!(with(low) <= with(low + more) + 1e-9);
    }

    #[test]
    fn closer_posts_never_stand_worse(a in 0.3f64..1.2, wide in 1.0f64..2.3) {
        let with = |spacing: f64| {
            let mut c = fixed(9.6, a);
            spec_of(&mut c).spacing = mm(spacing * 1000.0);
            embedment(&judged(&c).1)
        };
        prop_assert!(with(wide / 2.0) <= with(wide) + 1e-9);
    }

    #[test]
    fn a_wall_mirrored_in_plan_is_the_same_wall(a in 0.3f64..1.0, b in 0.3f64..1.0) {
        let c = case(vec![station(0.0, 100.0 + a, 100.0, 100.0 + a), station(7.3, 100.0 + b, 100.0, 100.0 + b)], spec());
        let mut m = c.clone();
        for s in &mut m.stations {
            s.at.y = -s.at.y;
            s.facing = s.facing * -1.0;
        }
        let ((l, v), (lm, vm)) = (judged(&c), judged(&m));
        prop_assert_eq!(v.utilisation().to_bits(), vm.utilisation().to_bits());
        for (p, q) in l.posts.iter().zip(&lm.posts) {
            prop_assert_eq!(p.depth, q.depth);
            prop_assert!((p.at.y + q.at.y).abs() < 1e-12);
        }
    }

    #[test]
    fn a_wall_told_from_its_other_end_is_used_alike(a in 0.3f64..1.0, b in 0.3f64..1.0, bays in 2usize..6) {
        let length = 1.2 * bays as f64;
        let there = case(vec![station(0.0, 100.0 + a, 100.0, 100.0 + a), station(length, 100.0 + b, 100.0, 100.0 + b)], spec());
        let back = case(vec![station(0.0, 100.0 + b, 100.0, 100.0 + b), station(length, 100.0 + a, 100.0, 100.0 + a)], spec());
        let (l, lb) = (judged(&there).0, judged(&back).0);
        let depths: Vec<f64> = l.posts.iter().map(|p| p.depth.to_mm().round()).collect();
        let mut turned: Vec<f64> = lb.posts.iter().map(|p| p.depth.to_mm().round()).collect();
        turned.reverse();
        prop_assert_eq!(depths, turned);
    }

    #[test]
    fn the_remedies_for_a_shallow_wall_make_it_stand(a in 0.7f64..1.1) {
        let mut c = straight(6.0, a, spec());
        spec_of(&mut c).hole.depth = Some(mm(500.0));
        let (_, v) = judged(&c);
        let f = has(&v, "H-001").unwrap();
        let ours: Vec<_> = f.remedies.iter().filter(|r| r.whose == Whose::Ours).collect();
        prop_assert!(!ours.is_empty());
        for r in ours {
            let mut mended = c.clone();
            let value: Length = groundhold_quantity::parse(&r.change[0].value).unwrap();
            let s = spec_of(&mut mended);
            match r.change[0].field.as_str() {
                "spec.hole_depth" => s.hole.depth = Some(value),
                "spec.hole_diameter" => s.hole.diameter = value,
                "spec.spacing" => s.spacing = value,
                other => panic!("{other}"),
            }
            prop_assert!(has(&judged(&mended).1, "H-001").is_none(), "{}", r.says);
        }
    }
}

#[test]
fn the_basis_named_first_is_working_stress() {
    assert_eq!(groundhold_earth::basis::BASES[0].key, WORKING_STRESS.key);
}
